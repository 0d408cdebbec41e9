package translation

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/content"
)

// Check holds the pages and scripts of a language to the English ones of today. Every
// problem is at the English line, and names the file to mend.
func Check(src Sources, language string) diag.List {
	made, problems := readMadeOf(src.Content, language)
	if problems.Blocked() {
		return problems // nothing can be told
	}
	files, err := src.files()
	if err != nil {
		problems.Add(unreadable("content", err))
	}
	known := map[string]bool{}
	for _, f := range files {
		known[f.name] = true
		problems.Add(f.check(src, language, made)...)
	}
	problems.Add(src.unused(language, known)...)
	problems.Sort()
	return problems
}

// check holds one file.
func (f file) check(src Sources, language string, made map[string][]string) diag.List {
	mine := "content/" + language + "/" + f.name
	at := diag.Pos{File: f.english, Line: 1, Col: 1}
	english, err := f.text()
	if err != nil {
		return diag.List{unreadable(f.english, err)}
	}
	translated, err := read(src.Content, language+"/"+f.name)
	switch _, settled := made[f.name]; {
	case errors.Is(err, fs.ErrNotExist):
		missing := diag.Problem{Pos: at, Rule: "missing-translation", Fact: fmt.Sprintf("is not in %q", language),
			Hints: []string{fmt.Sprintf("make %s; capspan translate %s --start copies the English file there", mine, language)}}
		if path.Ext(f.name) == ".md" {
			missing.Level = diag.Warning // a keeper may say something in one language alone
		}
		return diag.List{missing}
	case err != nil:
		return diag.List{unreadable(mine, err)}
	case string(translated) == english:
		return diag.List{{Pos: at, Rule: "missing-translation", Fact: fmt.Sprintf("stands in English in %q", mine), Hints: []string{"translate it there"}}}
	case !settled:
		return diag.List{{Pos: at, Rule: "unsettled-translation", Fact: fmt.Sprintf("nobody has said which English %s was made of", mine),
			Hints: []string{fmt.Sprintf("compare the two, then capspan translate %s --settle %s", language, mine)}}}
	}
	problems := f.parted(mine, language, english, string(translated), made[f.name])
	if path.Ext(f.name) == ".md" && len(problems) == 0 { // of today's English, but has every figure come along?
		problems = content.Alike(f.name, []byte(english), language+"/"+f.name, translated)
	}
	return problems
}

// mostCompared bounds the table that parts are aligned by: two thousand of each, ten times
// what the longest file has.
const mostCompared = 4 << 20

// parted compares part by part.
func (f file) parted(mine, language, english, translated string, made []string) diag.List {
	var problems diag.List
	parts := f.parts(english)
	theirs := f.parts(translated)
	keys := map[string]bool{}
	for _, p := range theirs {
		for key := p.key; key != ""; key = upper(key) {
			keys[key] = true
		}
	}
	// lacking is the path of an entry that is not there: its own, or that of the outermost
	// object about it that is not. Of an object that the translation makes some other way,
	// nothing is lacking.
	lacking := func(key string) string {
		lost := ""
		for ; key != "" && !keys[key]; key = upper(key) {
			lost = key
		}
		if lost != "" && key != "" && !slices.ContainsFunc(theirs, func(p part) bool { return strings.HasPrefix(p.key, key+level) }) {
			return ""
		}
		return lost
	}
	if len(parts)*len(made) > mostCompared {
		return diag.List{f.stale(diag.Pos{File: f.english, Line: 1, Col: 1}, "", "has too many parts to be compared with what "+mine+" was made of", mine, language)}
	}
	told := map[string]bool{}
	stale, gone := differences(made, sums(parts))
	for i, p := range parts {
		at := diag.Pos{File: f.english, Line: p.line, Col: 1}
		lost := lacking(p.key)
		switch {
		case told[lost]:
		case lost != "":
			told[lost] = true
			problems.Add(diag.Problem{Pos: at, Path: strings.ReplaceAll(lost, level, "."), Rule: "missing-translation", Fact: fmt.Sprintf("is not in %s", mine), Hints: []string{"add it there"}})
		case stale[i]:
			problems.Add(f.stale(at, p.name, "has changed or is new since "+mine+" was made", mine, language))
		}
	}
	for _, before := range gone {
		at := diag.Pos{File: f.english, Line: 1, Col: 1}
		name := ""
		if len(parts) > 0 {
			p := parts[min(before, len(parts)-1)]
			at.Line, name = p.line, p.name
		}
		problems.Add(f.stale(at, name, "something that stood here is gone since "+mine+" was made", mine, language))
	}
	return problems
}

func (f file) stale(at diag.Pos, name, fact, mine, language string) diag.Problem {
	return diag.Problem{Pos: at, Path: name, Rule: "stale-translation", Fact: fact,
		Hints: []string{fmt.Sprintf("mend it there, then capspan translate %s --settle %s", language, mine)}}
}

// upper is the path above one: that of words.slips is that of words.
func upper(key string) string {
	return key[:max(strings.LastIndex(key, level), 0)]
}

// differences aligns what a translation was made of with what there is, and tells which of
// the latter are new, and before which of them something is gone that nothing new stands for.
func differences(was, is []string) (fresh []bool, gone []int) {
	if slices.Equal(was, is) { // as a rule
		return make([]bool, len(is)), nil
	}
	// longest[i][j] is how many the rests from i and from j have in common, in order.
	longest := make([][]int, len(was)+1)
	for i := range longest {
		longest[i] = make([]int, len(is)+1)
	}
	for i := len(was) - 1; i >= 0; i-- {
		for j := len(is) - 1; j >= 0; j-- {
			if was[i] == is[j] {
				longest[i][j] = longest[i+1][j+1] + 1
			} else {
				longest[i][j] = max(longest[i+1][j], longest[i][j+1])
			}
		}
	}
	fresh = make([]bool, len(is))
	i, j := 0, 0
	for i < len(was) || j < len(is) {
		if i < len(was) && j < len(is) && was[i] == is[j] {
			i, j = i+1, j+1
			continue
		}
		lost, new := 0, 0 // up to the next they share
		for (i < len(was) || j < len(is)) && !(i < len(was) && j < len(is) && was[i] == is[j]) {
			if j == len(is) || i < len(was) && longest[i+1][j] >= longest[i][j+1] {
				i, lost = i+1, lost+1
			} else {
				fresh[j] = true
				j, new = j+1, new+1
			}
		}
		if lost > 0 && new == 0 {
			gone = append(gone, j)
		}
	}
	return fresh, gone
}

// unused are the files of a language that translate nothing.
func (s Sources) unused(language string, known map[string]bool) diag.List {
	var problems diag.List
	report := func(name string) {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "content/" + language + "/" + name}, Rule: "unused-translation", Fact: "there is no English file of this name"})
	}
	err := content.Walk(s.Content, language, func(name string) error {
		if !known[name] {
			report(name)
		}
		return nil
	})
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		problems.Add(unreadable("content/"+language, err))
	}
	for _, folder := range []string{"scripts", "matcher", "driveline"} {
		entries, _ := fs.ReadDir(s.Content, language+"/"+folder) // what is not there has been reported
		for _, e := range entries {
			if name := folder + "/" + e.Name(); !known[name] {
				report(name)
			}
		}
	}
	return problems
}
