package build

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/language"

	"capspan/build/diag"
	"capspan/build/search"
	"capspan/tables"
	"capspan/templates"
)

// The list from A to Z of a large chart leads to its rows over pages of their own: the names
// that begin alike, or the longer beginnings of those that are too many for a page. An
// address is the beginning itself, so it stays whatever is added beside it.

// nameNode is a beginning of names.
type nameNode struct {
	beginning string
	names     []record    // all that begin so
	below     []*nameNode // longer beginnings, when the names are too many for a page
}

// nameLine is a name of a row as the list has it. Names of rows that stand side by side and
// have the same size share a line.
type nameLine struct{ Text, Href, Size, Note string }

// namesDrafts are those pages.
func (s *site) namesDrafts() []rowDraft {
	s.byName = s.namedRows()
	listed := make([][]record, len(s.byName))
	for n, row := range s.byName {
		listed[n] = row.listed
	}
	var drafts []rowDraft
	var add func(node *nameNode, up templates.Link)
	add = func(node *nameNode, up templates.Link) {
		drafts = append(drafts, rowDraft{address: namesAddress(node.beginning), from: diag.Pos{File: "templates/names.html"}, beside: []string{s.namesPrint(node, up)},
			fill: func(s *site) (templates.Page, diag.Pos) { return s.namesPage(node, up) }})
		leads, _ := node.parted()
		for _, below := range leads {
			add(below, templates.Link{Href: s.at(namesAddress(node.beginning)), Text: s.word("a-z.begin", "beginning", node.beginning)})
		}
	}
	leads, _ := namesTree(sortRecords(s.again, "names sorted", s.jointList(), listed)).parted()
	for _, node := range leads {
		s.names = append(s.names, s.namesLink(node))
		add(node, templates.Link{Href: s.at(azAddress), Text: s.word("a-z.title")})
	}
	return drafts
}

// namesPrint sums up all that a page of names shows, for a build with a memory.
func (s *site) namesPrint(node *nameNode, up templates.Link) string {
	if s.again == nil {
		return ""
	}
	leads, own := node.parted()
	all := sha256.New()
	put(all, up, node.beginning)
	for _, below := range leads {
		put(all, below.beginning, len(below.names))
	}
	for _, r := range own {
		put(all, len(r.json))
		all.Write(r.json)
	}
	return string(all.Sum(nil))
}

// nameRecords are the names of a row.
func (s *site) nameRecords(joint *tables.Row, row *search.Named) []record {
	var records []record
	add := func(line nameLine) {
		if tails := search.Tails(line.Text); len(tails) > 0 {
			records = append(records, recordOf(tails[0], line))
		}
	}
	href := s.at(row.Address())
	add(nameLine{row.ID, href, s.keyOf(joint), row.Note})
	for _, name := range row.Also {
		add(nameLine{Text: name, Href: href, Note: s.word("a-z.also", "name", row.ID)})
	}
	return records
}

// namesTree puts sorted names under their beginnings.
func namesTree(records []record) *nameNode {
	nodes := map[string]*nameNode{"": {}}
	add := func(beginning string, names []record) {
		node := &nameNode{beginning: beginning, names: names}
		nodes[beginning] = node
		if beginning != "" {
			_, wide := utf8.DecodeLastRuneInString(beginning)
			above := nodes[beginning[:len(beginning)-wide]] // which came before
			above.below = append(above.below, node)
		}
	}
	takeApart(records, "", namesSize, add, add)
	return nodes[""]
}

// namesSize is how many bytes the names of a page come to at most, as records: some 700 names.
const namesSize = 120_000

// fewNames do not make a page: they stand on that of the shorter beginning.
const fewNames = 12

// parted are the beginnings that a page leads on to, and the names that stand on it.
func (n *nameNode) parted() (leads []*nameNode, own []record) {
	if len(n.below) == 0 {
		return nil, n.names
	}
	for _, node := range n.below {
		for len(node.below) == 1 && !node.below[0].whole() {
			node = node.below[0] // all names go on with the same character
		}
		if node.whole() || n.beginning != "" && len(node.names) < fewNames {
			own = append(own, node.names...)
		} else {
			leads = append(leads, node)
		}
	}
	return leads, own
}

// whole reports whether the beginning is a name, whose end comes next.
func (n *nameNode) whole() bool { return strings.HasSuffix(n.beginning, keyEnd) }

func (s *site) namesLink(node *nameNode) templates.Link {
	return templates.Link{Href: s.at(namesAddress(node.beginning)), Text: s.word("a-z.beginning", "beginning", node.beginning),
		Note: s.word("a-z.count", "n", len(node.names))}
}

// namesAddress is below the list from A to Z. Beginnings are letters and figures, and a point
// between figures; what an address would escape is written by its number.
func namesAddress(beginning string) string {
	var b strings.Builder
	for _, r := range beginning {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case r == '.':
			b.WriteByte('_')
		default:
			fmt.Fprintf(&b, "-%x-", r)
		}
	}
	return azAddress + b.String() + "/"
}

func (s *site) namesPage(node *nameNode, up templates.Link) (templates.Page, diag.Pos) {
	body := &templates.Names{Up: up}
	leads, own := node.parted()
	for _, below := range leads {
		body.Parts = append(body.Parts, s.namesLink(below))
	}
	lines := make([]nameLine, len(own))
	for n, r := range own {
		if err := json.Unmarshal(r.json, &lines[n]); err != nil {
			panic("internal error: " + err.Error()) // it was made from one
		}
	}
	find := search.In(language.Make(s.words.Language), "") // of this page, because pages are filled at the same time
	slices.SortFunc(lines, func(a, b nameLine) int { return find.Compare(a.Text, b.Text) })
	for n, line := range lines {
		link := templates.Link{Href: line.Href, Text: line.Text}
		if n > 0 && line.Size != "" && lines[n-1].Size == line.Size && lines[n-1].Note == line.Note {
			last := &body.Lines[len(body.Lines)-1]
			last.Rows = append(last.Rows, link)
			continue
		}
		body.Lines = append(body.Lines, templates.NamesLine{Rows: []templates.Link{link}, Note: line.Note})
	}
	title := s.word("a-z.begin", "beginning", node.beginning)
	return templates.Page{Address: namesAddress(node.beginning), Title: title, Sheet: title, About: s.word("a-z.begin-about"),
		Body: body}, diag.Pos{File: "templates/names.html"}
}
