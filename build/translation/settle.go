package translation

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/templates/words"
)

// Settle says that pages and scripts of a language are made of the English of today: those
// named, or all that are there. It returns made-of.yaml as it then is, and what it settled. A
// file that is still the English one is not settled, and said so when it was named.
func Settle(src Sources, language string, names []string) (madeOf []byte, settled []string, problems diag.List) {
	made, problems := readMadeOf(src.Content, language)
	if problems.Blocked() {
		return nil, nil, problems
	}
	files, err := src.files()
	if err != nil {
		problems.Add(unreadable("content", err))
		return nil, nil, problems
	}
	now := map[string][]string{}
	asked := map[string]bool{}
	for _, name := range names {
		asked[shortName(name, language)] = false
	}
	for _, f := range files {
		if sums, there := made[f.name]; there {
			now[f.name] = sums
		}
		_, named := asked[f.name]
		asked[f.name] = true
		if len(names) > 0 && !named {
			continue
		}
		english, err := f.text()
		translated, wrong := read(src.Content, language+"/"+f.name)
		switch {
		case errors.Is(wrong, fs.ErrNotExist) && !named:
			delete(now, f.name)
		case err != nil || wrong != nil:
			problems.Add(unreadable("content/"+language+"/"+f.name, cmp.Or(wrong, err)))
		case string(translated) != english:
			now[f.name] = sums(f.parts(english))
			settled = append(settled, "content/"+language+"/"+f.name)
		case named:
			problems.Add(diag.Problem{Pos: diag.Pos{File: "content/" + language + "/" + f.name}, Rule: "missing-translation",
				Fact: "is still the English text", Hints: []string{"translate it first"}})
		}
	}
	for _, name := range names {
		if short := shortName(name, language); !asked[short] {
			problems.Add(diag.Problem{Pos: diag.Pos{File: name}, Rule: "unused-translation", Fact: "translates no English page or script",
				Hints: diag.Nearest(short, namesOf(files))})
		}
	}
	return writtenMadeOf(language, now), settled, problems
}

// shortName is a file's name in the folder of the language, however it was given.
func shortName(name, language string) string {
	name = path.Clean(strings.ReplaceAll(name, `\`, "/"))
	if _, short, found := strings.Cut(name, "content/"+language+"/"); found {
		return short
	}
	return name
}

func namesOf(files []file) []string {
	list := make([]string, len(files))
	for i, f := range files {
		list[i] = f.name
	}
	return list
}

// MadeOfName is where made-of.yaml stands in the folder content.
func MadeOfName(language string) string { return language + "/" + madeOfName }

// Start makes what a language lacks, each by its name in the folder content: pages and
// scripts as they are in English, words of the interface and of the tables with nothing
// said yet.
func Start(src Sources, language string, texts []Text) (map[string][]byte, error) {
	all := map[string][]byte{}
	files, err := src.files()
	if err != nil {
		return nil, err
	}
	for _, f := range files {
		text, err := f.text()
		if err != nil {
			return nil, err
		}
		all[f.name] = []byte(text)
	}
	english, err := fs.Glob(src.Templates, "words/"+words.English+"/*.yaml")
	if err != nil {
		return nil, err
	}
	for _, name := range english {
		text, err := read(src.Templates, name)
		if err != nil {
			return nil, err
		}
		if all["words/"+path.Base(name)], err = words.Begin(text); err != nil {
			return nil, fmt.Errorf("templates/%s: %w", name, err)
		}
	}
	all[tablesName] = beginTables(texts)
	missing := map[string][]byte{}
	for name, text := range all {
		_, err := fs.Stat(src.Content, language+"/"+name)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return nil, err
		}
		if err != nil {
			missing[language+"/"+name] = text
		}
	}
	return missing, nil
}

// beginTables is tables.yaml with nothing said yet.
func beginTables(texts []Text) []byte {
	var b strings.Builder
	var seen []string
	for _, text := range texts {
		if text.Name || slices.Contains(seen, text.Says) {
			continue
		}
		seen = append(seen, text.Says)
		fmt.Fprintf(&b, "- {of: %s, is: \"\"}\n", words.Quoted(text.Says))
	}
	return []byte(b.String())
}
