package translation

import (
	"path"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"pgregory.net/rapid"

	"capspan/build/diag"
)

// one is a folder with one English file of today and its translation, which is made of the
// English one and a line more.
func one(f file, english string, madeOf []byte) Sources {
	src := fstest.MapFS{f.at: {Data: []byte(english)}}
	content := fstest.MapFS{}
	if f.name == f.at && path.Ext(f.at) == ".md" {
		content = src
	}
	text, _ := f.text()
	content["es/"+f.name] = &fstest.MapFile{Data: []byte(text + "\n\n// es\n")}
	if madeOf != nil {
		content["es/"+madeOfName] = &fstest.MapFile{Data: madeOf}
	}
	return Sources{Content: content, Static: src}
}

// Any one part of any shipped page or script that changes is one problem, at its line; and
// settling the file clears it, twice to the same bytes.
func TestOneChange(t *testing.T) {
	files, err := shipped.files()
	if err != nil {
		t.Fatal(err)
	}
	changed := 0
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(files).Draw(t, "file")
		english, err := f.text()
		if err != nil {
			t.Fatal(err)
		}
		settled, _, problems := Settle(one(f, english, nil), "es", nil)
		if len(problems) > 0 || len(Check(one(f, english, settled), "es")) > 0 {
			t.Fatalf("%s is not settled: %v", f.name, problems)
		}
		part := rapid.SampledFrom(f.parts(english)).Draw(t, "part")
		other := changedPart(english, part)
		if other == "" {
			return // an entry without words
		}
		changed++
		found := Check(one(f, other, settled), "es")
		if len(found) != 1 || found[0].Pos.File != f.english || found[0].Pos.Line != part.line || found[0].Rule != "stale-translation" {
			t.Fatalf("%s:%d %s was changed, and found %v", f.english, part.line, part.name, found)
		}
		again, _, _ := Settle(one(f, other, settled), "es", []string{"content/es/" + f.name})
		twice, _, _ := Settle(one(f, other, again), "es", nil)
		// What the word took from the page is told on, which is another matter (content.Alike).
		left := slices.DeleteFunc(Check(one(f, other, again), "es"), func(p diag.Problem) bool { return strings.HasPrefix(p.Rule, "translation-") })
		if len(left) > 0 || string(again) != string(twice) {
			t.Fatalf("after settling %s: %v\n%s\n%s", f.name, left, again, twice)
		}
	})
	if changed < 30 {
		t.Errorf("only %d parts were changed", changed)
	}
}

// changedPart is the source with a word more in one part; empty for one without words.
func changedPart(source string, p part) string {
	lines := strings.SplitAfter(source, "\n")
	before, rest := strings.Join(lines[:p.line-1], ""), strings.Join(lines[p.line-1:], "")
	if strings.HasPrefix(source, "---") { // a page
		first, more, _ := strings.Cut(rest, "\n")
		return before + first + " qq\n" + more
	}
	// A script: the longest text of the entry, at its first place from the line on.
	all, longest := tokens(p.text), ""
	for _, token := range all[1:] {
		if strings.Contains("\"`", token.text[:1]) && len(token.text) > len(longest) {
			longest = token.text
		}
	}
	if len(longest) < 4 || longest == all[0].text || !strings.Contains(rest, longest) {
		return ""
	}
	return before + strings.Replace(rest, longest, longest[:1]+"qq "+longest[1:], 1)
}

// What two lists share is never new, whatever stands round it.
func TestDifferences(t *testing.T) {
	word := rapid.SliceOfN(rapid.SampledFrom([]string{"a", "b", "c", "d"}), 0, 12)
	rapid.Check(t, func(t *rapid.T) {
		was, is := word.Draw(t, "was"), word.Draw(t, "is")
		fresh, gone := differences(was, is)
		var kept []string
		for i, f := range fresh {
			if !f {
				kept = append(kept, is[i])
			}
		}
		rest := was
		for _, k := range kept { // in was too, in this order
			i := slices.Index(rest, k)
			if i < 0 {
				t.Fatalf("%q is no part of %q in order", kept, was)
			}
			rest = rest[i+1:]
		}
		same := slices.Equal(was, is)
		if same != (len(gone) == 0 && len(kept) == len(is)) {
			t.Fatalf("%q and %q: kept %q, gone %v", was, is, kept, gone)
		}
		if whole, more := differences(is, is); slices.Contains(whole, true) || len(more) > 0 {
			t.Fatalf("%q differs from itself", is)
		}
	})
}
