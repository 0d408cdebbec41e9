// Package pseudo makes up a language for tests: the English words in brackets, with an
// accent on every vowel and each vowel twice, so that they are two fifths longer. What
// does not fit, is cut off or came past the words of the language is seen at once.
//
// The language is a folder of content as any other; see [Folder].
package pseudo

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"
	"testing/fstest"

	"go.yaml.in/yaml/v4"

	"capspan/build/translation"
	"capspan/static"
	"capspan/tables"
	"capspan/templates"
	"capspan/templates/words"
)

// Language is its name. No such language has been registered: the letters qaa to qtz are
// for private use (ISO 639-2).
const Language = "qaa"

// Decimal is the sign it writes before decimals.
const Decimal = ","

// Words says a phrase of the interface in it.
func Words(text string) string { return "[" + Prose(text) + "]" }

// plain are the parts of a text that no language changes: values, addresses, code, marks
// that are written with a backslash, and numbers with what hangs on them.
var plain = regexp.MustCompile("\\$?\\{[^{}]*\\}|\\]\\([^)]*\\)|`[^`]*`|<[^>]*>|&[a-z]+;|\\\\.[0-9a-f]*|https?:[^ ]+")

var vowels = strings.NewReplacer("a", "áá", "e", "éé", "i", "íí", "o", "óó", "u", "úú", "A", "Áá", "E", "Éé", "I", "Íí", "O", "Óó", "U", "Úú")

// Prose says a text in it without brackets.
func Prose(text string) string {
	var b strings.Builder
	last := 0
	for _, at := range plain.FindAllStringIndex(text, -1) {
		b.WriteString(vowels.Replace(text[last:at[0]]))
		b.WriteString(text[at[0]:at[1]])
		last = at[1]
	}
	return b.String() + vowels.Replace(text[last:])
}

// Folder adds the language to a copy of the folder content, and names it beside English in
// site.yaml, with the lines that are added.
func Folder(content fs.FS, lines ...string) (fstest.MapFS, error) {
	files := fstest.MapFS{}
	put := func(name, text string) { files[name] = &fstest.MapFile{Data: []byte(text)} }
	err := each(content, ".", func(name, text string) error {
		put(name, text)
		return nil
	})
	if err != nil {
		return nil, err
	}
	var site string
	if before := files["site.yaml"]; before != nil {
		site = languages.ReplaceAllString(string(before.Data), "") + "\n"
	}
	put("site.yaml", site+"languages: [en, "+Language+"]\n"+strings.Join(lines, "\n")+"\n")
	src := translation.Sources{Content: content, Static: static.FS, Templates: templates.FS}
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		return nil, fmt.Errorf("the chart: %s", problems.Summary())
	}
	begun, err := translation.Start(src, Language, translation.TableTexts(tables.FS, set))
	if err != nil {
		return nil, err
	}
	for name, text := range begun {
		said := string(text)
		switch path.Ext(name) {
		case ".yaml":
			if said, err = phrases(text); err != nil {
				return nil, fmt.Errorf("%s: %w", name, err)
			}
		case ".md":
			said = page(said)
		case ".ts":
			said = script(said) + "// " + Language + "\n"
			if path.Base(name) == "speech-number.ts" && strings.Contains(name, "/matcher/") {
				said = strings.Replace(said, "return text;", `return text.replace(/(\d)\.(?=\d)/g, "$1`+Decimal+`");`, 1)
			}
		}
		put(name, said)
	}
	src.Content = files
	madeOf, _, problems := translation.Settle(src, Language, nil)
	if problems.Blocked() {
		return nil, fmt.Errorf("the made-up language: %v", problems)
	}
	put(translation.MadeOfName(Language), string(madeOf))
	return files, nil
}

var languages = regexp.MustCompile(`(?m)^languages:.*$`)

func each(fsys fs.FS, root string, visit func(name, text string) error) error {
	return fs.WalkDir(fsys, root, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(fsys, name)
		if err != nil {
			return err
		}
		return visit(name, string(text))
	})
}

// phrases translates a file of words that has been begun: each phrase beside the English it
// is of.
func phrases(begun []byte) (string, error) {
	var root yaml.Node
	if err := yaml.Unmarshal(begun, &root); err != nil {
		return "", err
	}
	var b strings.Builder
	list := root.Content[0].Kind == yaml.SequenceNode
	for i, n := range root.Content[0].Content {
		switch {
		case list:
			fmt.Fprintf(&b, "- %s\n", said(n))
		case i%2 == 0:
			fmt.Fprintf(&b, "%s: ", n.Value)
		default:
			fmt.Fprintf(&b, "%s\n", said(n))
		}
	}
	return b.String(), nil
}

// said fills in what an entry is.
func said(entry *yaml.Node) string {
	of, is := entry.Content[1].Value, entry.Content[3]
	switch {
	case of == ".":
		return fmt.Sprintf("{of: %q, is: %q}", of, Decimal)
	case is.Kind == yaml.ScalarNode:
		return fmt.Sprintf("{of: %s, is: %s}", words.Quoted(of), words.Quoted(Words(of)))
	}
	var forms []string
	for i := 0; i < len(is.Content); i += 2 {
		category := is.Content[i].Value
		_, form, _ := strings.Cut(of, category+" ")
		if i+2 < len(is.Content) {
			form, _, _ = strings.Cut(form, " "+is.Content[i+2].Value+" ")
		}
		forms = append(forms, category+": "+words.Quoted(Words(form)))
	}
	return fmt.Sprintf("{of: %s, is: {%s}}", words.Quoted(of), strings.Join(forms, ", "))
}

// page translates a page: its title in brackets, and its text but for directives, code and
// headings, which addresses lead to.
func page(text string) string {
	lines := strings.Split(text, "\n")
	fences, code := 0, false
	for i, line := range lines {
		name, value, _ := strings.Cut(line, ": ")
		switch {
		case line == "---" && fences < 2:
			fences++
		case fences == 1 && (name == "title" || name == "about"):
			said := Prose(strings.Trim(value, `"`))
			if name == "title" {
				said = "[" + said + "]"
			}
			lines[i] = fmt.Sprintf("%s: %q", name, said)
		case fences < 2:
		case strings.HasPrefix(strings.TrimSpace(line), "```"):
			code = !code
		case code, strings.HasPrefix(line, ":"), strings.HasPrefix(line, "#"):
		default:
			lines[i] = Prose(line)
		}
	}
	return strings.Join(lines, "\n")
}
