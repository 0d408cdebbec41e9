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

	"capspan/static"
	"capspan/templates"
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
		if path.Ext(name) == ".md" {
			put(Language+"/"+name, page(text))
		}
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
	err = each(templates.FS, "words/en", func(name, text string) error {
		said, err := phrases(text)
		put(Language+"/words/"+path.Base(name), said)
		return err
	})
	if err != nil {
		return nil, err
	}
	err = each(static.FS, "words/en", func(name, text string) error {
		put(Language+"/scripts/"+path.Base(name), script(text))
		return nil
	})
	return files, err
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

// phrases translates a file of words: each phrase beside the English it was made of.
func phrases(text string) (string, error) {
	var root yaml.Node
	if err := yaml.Unmarshal([]byte(text), &root); err != nil {
		return "", err
	}
	var b strings.Builder
	for i, n := range root.Content[0].Content {
		switch {
		case i%2 == 0:
			fmt.Fprintf(&b, "%s: ", n.Value)
		case n.Kind == yaml.ScalarNode && n.Value == ".":
			fmt.Fprintf(&b, "{of: %q, is: %q}\n", n.Value, Decimal)
		case n.Kind == yaml.ScalarNode:
			fmt.Fprintf(&b, "{of: %q, is: %q}\n", n.Value, Words(n.Value))
		default:
			var parts, forms []string
			for j := 0; j < len(n.Content); j += 2 {
				category, said := n.Content[j].Value, n.Content[j+1].Value
				parts = append(parts, category, said)
				forms = append(forms, fmt.Sprintf("%s: %q", category, Words(said)))
			}
			fmt.Fprintf(&b, "{of: %q, is: {%s}}\n", strings.Join(parts, " "), strings.Join(forms, ", "))
		}
	}
	return b.String(), nil
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
