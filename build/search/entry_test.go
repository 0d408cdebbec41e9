package search

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestNew(t *testing.T) {
	for _, test := range []struct {
		name string
		got  Entry
		want Entry
	}{
		{"a row with another name", english.New(Row, "/joint/1310/", "1310", "1.062 in", []string{"12-60"}, "The 1310 is light."),
			Entry{Kind: Row, Address: "joint/1310/", Title: "1310", Note: "1.062 in", Also: []string{"12-60"},
				Names: "1310 1260", Words: "1310 12 60 1260", Text: "1.062 light"}},
		{"a word with two names", english.New(Word, "/w/#hold", "Snap ring, clip", "", nil, ""),
			Entry{Kind: Word, Address: "w/#hold", Title: "Snap ring, clip", Names: "snapring clip snapringclip",
				Words: "snap ring snapring clip ringclip snapringclip"}},
		{"a heading too long for a name", english.New(Guide, "/g/#a", "How to measure a cap that is worn", "in: Caps", nil, "Wipe it. Wipe it."),
			Entry{Kind: Guide, Address: "g/#a", Title: "How to measure a cap that is worn", Note: "in: Caps",
				Words: "measure cap worn measurecap capworn", Text: "caps wipe"}},
		{"nothing but passing words", english.New(Guide, "/h/", "How is it?", "", nil, ""),
			Entry{Kind: Guide, Address: "h/", Title: "How is it?", Names: "howisit", Words: "how is it howis isit howisit"}},
	} {
		if diff := cmp.Diff(test.want, test.got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", test.name, diff)
		}
	}
}

const guide = `<p>Before &amp; after.</p><svg><text>26.97</text></svg>
<h2 id="a-b">A <em>b</em></h2><p>One<br>two.</p>
<h3 id="c">C</h3><ul><li><strong>Float:</strong> how far <a href="/x/">it</a> moves.</li><li><strong>Not</strong> a word.</li></ul>`

func TestSections(t *testing.T) {
	want := []Section{{Text: "Before & after."}, {ID: "a-b", Heading: "A b", Text: "One two."},
		{ID: "c", Heading: "C", Text: "Float: how far it moves. Not a word."}}
	if diff := cmp.Diff(want, Sections(guide)); diff != "" {
		t.Error(diff)
	}
}

func TestTerms(t *testing.T) {
	want := []Term{{Section: "c", Name: "Float", Says: "how far it moves."}}
	if diff := cmp.Diff(want, Terms(guide)); diff != "" {
		t.Error(diff)
	}
}

func TestLetters(t *testing.T) {
	var got [][]string
	for _, letter := range english.Letters([]Entry{english.New(Row, "/10c/", "10c", "", nil, ""), english.New(Row, "/9c/", "9c", "", []string{"Älter", "ash"}, ""),
		english.New(Row, "/b/", "b", "", nil, ""), english.New(Guide, "/q/", "“Quoted”", "", nil, "")}) {
		line := []string{letter.Name}
		for _, l := range letter.Lines {
			line = append(line, l.Text)
		}
		got = append(got, line)
	}
	want := [][]string{{"0–9", "9c", "10c"}, {"A", "Älter", "ash"}, {"B", "b"}, {"Q", "“Quoted”"}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}
