package main

import (
	"net/url"
	"regexp"
	"strings"

	"capspan/static/matcher"
)

// partPage finds the table in the address of its page.
var partPage = regexp.MustCompile(`/identify/part/([^/]+)/?$`)

// address reads the address of an identification as it was sent.
func (v *identifyVerb) address() (asked, error) {
	before, fragment, split := strings.Cut(v.Query, "#")
	if !split || !strings.Contains(fragment, "=") {
		return asked{}, misuse("what is %q?\n    hint: give a reading with --cap or --across; a dash alone reads a query from standard input, and the address of an identification has a # with readings behind it", v.Query)
	}
	out := asked{address: fragment, name: nameInAddress, part: v.Part}
	if found := partPage.FindStringSubmatch(before); found != nil {
		name, err := url.PathUnescape(found[1])
		if err != nil {
			return asked{}, misuse("the address names no table: %v", err)
		}
		out.part = name
	}
	return out, nil
}

// decode makes a query about a joint of the address, and says which chart it was made with.
func (q *asked) decode(m *matcher.Matcher) (made string, err error) {
	var lost []matcher.Complaint
	if q.query, lost, err = m.Decode(q.address); err != nil {
		return "", err
	}
	if len(lost) > 0 {
		return "", misuse("%s", complaints(lost, q.name))
	}
	return m.MadeWith(q.address)
}

func nameInAddress(matcher.Complaint) string { return "address" }

// told is what has changed since an address was made; nil where it names no chart, or this one.
func told(made string, ask func() (matcher.Since, error)) (*matcher.Since, error) {
	if made == "" {
		return nil, nil
	}
	since, err := ask()
	if err != nil || since.Head == "" {
		return nil, err
	}
	return &since, nil
}

func (p *printer) since(s *matcher.Since) {
	if s == nil {
		return
	}
	p.title(p.word("since"))
	p.para("  ", s.Head)
	for _, c := range s.Changes {
		p.item("  - ", c)
	}
}
