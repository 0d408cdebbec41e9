package build

import (
	"encoding/xml"
	"html"
	"strings"

	"capspan/templates"
)

// The feed of changes, after RFC 4287: an entry for each recorded issue. Its ids are full
// addresses, which only the keeper knows; without one there is no feed.
const feedName = "changes/feed.atom"

func (s *site) feedAddress() string {
	if s.keeper.Web == "" {
		return ""
	}
	return s.at("/" + feedName)
}

type atomLink struct {
	Rel  string `xml:"rel,attr,omitempty"`
	Type string `xml:"type,attr,omitempty"`
	Href string `xml:"href,attr"`
}

type atomText struct {
	Type string `xml:"type,attr"`
	Text string `xml:",chardata"`
}

type atomEntry struct {
	ID      string     `xml:"id"`
	Title   string     `xml:"title"`
	Updated string     `xml:"updated"`
	Link    []atomLink `xml:"link"`
	Summary string     `xml:"summary"`
	Content atomText   `xml:"content"`
}

type atomFeed struct {
	XMLName xml.Name    `xml:"http://www.w3.org/2005/Atom feed"`
	ID      string      `xml:"id"`
	Title   string      `xml:"title"`
	Updated string      `xml:"updated"`
	Author  string      `xml:"author>name"`
	Link    []atomLink  `xml:"link"`
	Entry   []atomEntry `xml:"entry"`
}

// addFeed writes it. A day has no hour here: the beginning of it is as good as any, and
// two issues of one day are told apart by their ids (RFC 4287, 4.2.6).
func (s *site) addFeed() {
	if s.keeper.Web == "" {
		return
	}
	page := s.full(changesAddress)
	author := s.keeper.Name
	if author == "" {
		author = s.word("site.app-name")
	}
	feed := atomFeed{ID: page, Title: s.word("changes.title"), Updated: instant(s.version.Date), Author: author,
		Link: []atomLink{{Rel: "self", Type: types[".atom"], Href: s.full("/" + feedName)}, {Rel: "alternate", Type: "text/html", Href: page}}}
	for _, r := range s.set.History {
		at := page + "#" + releaseID(r)
		entry := atomEntry{ID: at, Title: r.Chart, Updated: instant(r.Date), Summary: sentence(r.Why),
			Link: []atomLink{{Rel: "alternate", Type: "text/html", Href: at}}}
		var b strings.Builder
		b.WriteString("<p>" + html.EscapeString(sentence(r.Why)) + "</p><ul>")
		for _, c := range r.Changes {
			b.WriteString("<li>" + html.EscapeString(feedLine(s.recordedLine(c))) + "</li>")
		}
		b.WriteString("</ul>")
		entry.Content = atomText{"html", b.String()}
		feed.Entry = append(feed.Entry, entry)
	}
	if len(s.set.History) > 0 {
		feed.Updated = instant(s.set.History[0].Date)
	}
	s.addXML(feedName, feed)
}

func instant(day string) string { return day + "T00:00:00Z" }

func feedLine(c templates.ChangeLine) string {
	line := c.Of.Text + ": " + c.What
	if c.Old.Text != "" || c.New.Text != "" {
		line += ": " + feedCell(c.Old) + " → " + feedCell(c.New)
	}
	if c.Why != "" {
		line += " (" + c.Why + ")"
	}
	return line
}

func feedCell(c templates.Cell) string {
	switch {
	case c.Text == "":
		return "–"
	case c.Converted == "":
		return c.Text
	}
	return c.Text + " (≈ " + c.Converted + ")"
}
