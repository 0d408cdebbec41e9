package build

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/mail"
	"regexp"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"capspan/build/diag"
	"capspan/content"
	"capspan/templates"
	catalogue "capspan/templates/words"
)

// keeperFile holds the details of who keeps the chart, in the folder content.
const keeperFile = "site.yaml"

// longestDetail is in bytes: one line on a phone's card, with room.
const longestDetail = 120

// loadKeeper reads content/site.yaml. A file that is not there is a keeper who gives
// no details; every line of it may be left out.
func loadKeeper(fsys fs.FS) (templates.Keeper, diag.List) {
	k := keeperReader{file: "content/" + keeperFile, folder: fsys}
	k.load(fsys)
	return k.keeper, k.problems
}

// load reads the file at the root of the folder.
func (k *keeperReader) load(fsys fs.FS) {
	src, err := readKeeper(fsys)
	if errors.Is(err, fs.ErrNotExist) {
		return
	}
	if err != nil {
		k.fail(nil, "", "unreadable", "the file cannot be read: "+err.Error())
		return
	}
	if len(src) > biggestKeeper {
		k.fail(nil, "", "file-size", fmt.Sprintf("the file is larger than %d bytes", biggestKeeper), "it holds a few lines; what does the rest say?")
		return
	}
	var root yaml.Node
	if err := yaml.Unmarshal(src, &root); err != nil {
		at := &yaml.Node{Line: 1, Column: 1}
		var broken *yaml.LoadError
		if errors.As(err, &broken) {
			at.Line, at.Column = broken.Mark.Line, max(broken.Mark.Column, 1)
			err = errors.New(broken.Message)
		}
		k.fail(at, "", "bad-yaml", strings.TrimPrefix(err.Error(), "yaml: "))
		return
	}
	if root.Kind == yaml.DocumentNode && len(root.Content) == 1 {
		k.read(root.Content[0])
	}
	k.problems.Sort()
}

// biggestKeeper is in bytes: seven lines and their comments, many times over.
const biggestKeeper = 16 << 10

// readKeeper reads no more than shows that the file is too large.
func readKeeper(fsys fs.FS) ([]byte, error) {
	file, err := fsys.Open(keeperFile)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, biggestKeeper+1))
}

// keeperReader walks the nodes of the file and gathers problems.
type keeperReader struct {
	file     string
	folder   fs.FS    // content
	more     []string // keys that are known here besides, and kept as they are in values
	values   map[string]*yaml.Node
	keeper   templates.Keeper
	problems diag.List
}

func (k *keeperReader) fail(n *yaml.Node, key, rule, fact string, hints ...string) {
	p := diag.Problem{Pos: diag.Pos{File: k.file}, Rule: rule, Fact: fact, Hints: hints, Path: "site"}
	if n != nil {
		p.Pos.Line, p.Pos.Col = n.Line, n.Column
	}
	if key != "" {
		p.Path += "." + key
	}
	k.problems.Add(p)
}

func (k *keeperReader) read(root *yaml.Node) {
	if root.Kind == yaml.ScalarNode && root.Tag == "!!null" {
		return // comments only
	}
	if root.Kind != yaml.MappingNode {
		k.fail(root, "", "keeper-value", "the file holds no keys", `write "name: ..." and so on, one a line`)
		return
	}
	k.values = map[string]*yaml.Node{}
	k.each(root, "", slices.Concat(keeperKeys, k.more), func(key, value *yaml.Node) {
		if slices.Contains(k.more, key.Value) {
			k.values[key.Value] = value
			return
		}
		k.detail(key, value)
	})
	if k.keeper.Units == "" {
		k.keeper.Units = "in"
	}
}

// keeperKeys are the lines of the file: each holds one text, but for the languages.
var keeperKeys = []string{"demo", "name", "phone", "mail", "address", "units", "web", "edit", "languages"}

// each goes through a mapping of which the keys are known; one that is given twice counts once.
func (k *keeperReader) each(mapping *yaml.Node, path string, known []string, visit func(key, value *yaml.Node)) {
	if mapping.Kind != yaml.MappingNode {
		k.fail(mapping, path, "keeper-value", fmt.Sprintf("%s must be keys, one a line", path), "the keys are "+strings.Join(known, ", "))
		return
	}
	first := map[string]*yaml.Node{}
	for i := 0; i+1 < len(mapping.Content); i += 2 {
		key, value := mapping.Content[i], mapping.Content[i+1]
		if before := first[key.Value]; before != nil {
			k.fail(key, strings.TrimPrefix(path+"."+key.Value, "."), "duplicate-key", fmt.Sprintf("the key %q is given twice", key.Value))
			last := &k.problems[len(k.problems)-1]
			last.Notes = []diag.Note{{Text: "first given at", Pos: diag.Pos{File: k.file, Line: before.Line, Col: before.Column}}}
			continue
		}
		first[key.Value] = key
		if !slices.Contains(known, key.Value) {
			last := len(known) - 1
			k.fail(key, path, "unknown-key", fmt.Sprintf("unknown key %q", key.Value), "the keys are "+strings.Join(known[:last], ", ")+" and "+known[last])
			continue
		}
		visit(key, value)
	}
}

// detail takes one line of the file. The text of a value is what was written: a phone
// number never passes through a number.
func (k *keeperReader) detail(key, value *yaml.Node) {
	if key.Value == "languages" {
		k.languages(value)
		return
	}
	text := value.Value
	switch {
	case value.Kind != yaml.ScalarNode:
		k.fail(value, key.Value, "keeper-value", fmt.Sprintf("%s must be one line of text", key.Value))
		return
	case strings.TrimSpace(text) == "":
		k.fail(value, key.Value, "empty-value", fmt.Sprintf("%s is empty", key.Value), "fill it in or leave the line out")
		return
	case strings.ContainsAny(text, "\n\r\t") || len(text) > longestDetail:
		k.fail(value, key.Value, "keeper-value", fmt.Sprintf("%s must be one line of at most %d bytes", key.Value, longestDetail))
		return
	}
	switch key.Value {
	case "demo":
		if text != "true" && text != "false" {
			k.fail(value, key.Value, "keeper-value", fmt.Sprintf("demo is %q", text), "write true or false")
		}
		k.keeper.Demo = text == "true"
	case "name":
		k.keeper.Name = text
	case "address":
		k.keeper.Address = text
	case "phone":
		if !phoneForm.MatchString(text) || len(dialled(text)) < 6 || len(dialled(text)) > 16 {
			k.fail(value, key.Value, "bad-phone", fmt.Sprintf("phone is %q", text),
				`write digits, spaces and dashes, with the country code first: "+1 555 0100"`)
			return
		}
		k.keeper.Phone, k.keeper.Dial = text, dialled(text)
	case "mail":
		if a, err := mail.ParseAddress(text); err != nil || a.Address != text || !mailForm.MatchString(text) {
			k.fail(value, key.Value, "bad-mail", fmt.Sprintf("mail is %q", text), `write one address alone: "workshop@example.org"`)
			return
		}
		k.keeper.Mail = text
	case "units":
		if text != "in" && text != "mm" {
			k.fail(value, key.Value, "keeper-value", fmt.Sprintf("units is %q", text), "write in or mm")
			return
		}
		k.keeper.Units = text
	case "web":
		if !webForm.MatchString(text) {
			k.fail(value, key.Value, "bad-web", fmt.Sprintf("web is %q", text),
				`write https:// and the name of the host alone: "https://joints.example.org"; a path under it goes into --base`)
			return
		}
		k.keeper.Web = text
	case "edit":
		if !editForm.MatchString(text) || !strings.Contains(text, "{file}") || strings.ContainsAny(places.Replace(text), "{}") {
			k.fail(value, key.Value, "bad-edit", fmt.Sprintf("edit is %q", text),
				`write the address where a file of the chart is edited, with {file} and, if it has a place for it, {line}: "https://code.example.org/shed/chart/edit/main/{file}#L{line}"`)
			return
		}
		k.keeper.Edit = text
	}
}

// languages takes the list of languages: English, and those that have a folder. The name
// of one is a folder of the site too.
func (k *keeperReader) languages(list *yaml.Node) {
	const form = `write a list of languages, the one for the root first: "[en, es]"`
	if list.Kind != yaml.SequenceNode || len(list.Content) == 0 {
		k.fail(list, "languages", "bad-languages", "languages is no list of languages", form)
		return
	}
	first := map[string]*yaml.Node{}
	for _, n := range list.Content {
		if n.Kind != yaml.ScalarNode || n.Value != content.English && !content.LanguageFolder(n.Value) {
			k.fail(n, "languages", "bad-languages", fmt.Sprintf("%q is not the name of a language", n.Value),
				"write it as in the attribute lang: en, es, pt-BR")
			continue
		}
		if before := first[n.Value]; before != nil {
			k.fail(n, "languages", "bad-languages", fmt.Sprintf("the language %q is given twice", n.Value), "leave one of them out")
			last := &k.problems[len(k.problems)-1]
			last.Notes = []diag.Note{{Text: "first given at", Pos: diag.Pos{File: k.file, Line: before.Line, Col: before.Column}}}
			continue
		}
		first[n.Value] = n
		if info, err := fs.Stat(k.folder, n.Value); n.Value != catalogue.English && (err != nil || !info.IsDir()) {
			k.fail(n, "languages", "bad-languages", fmt.Sprintf("nothing is translated into %q: the folder content/%s/ is not there", n.Value, n.Value),
				"make the folder, or leave the language out")
			continue
		}
		k.keeper.Languages = append(k.keeper.Languages, n.Value)
	}
}

// places are what an edit address has places for.
var places = strings.NewReplacer("{file}", "", "{line}", "")

var (
	// Plain signs of an address (RFC 3986) and braces; it begins with a host that no place can change.
	editForm  = regexp.MustCompile(`^https://[a-z0-9]([a-z0-9.-]*[a-z0-9])?(:[0-9]{1,5})?/[A-Za-z0-9._~/?#&=:@+,;%{}-]+$`)
	phoneForm = regexp.MustCompile(`^\+?[0-9][0-9 ()/.-]*[0-9]$`)
	// Plain signs only, of those RFC 5322 allows: the address goes into a mailto: link.
	mailForm = regexp.MustCompile(`^[A-Za-z0-9._+-]+@[A-Za-z0-9-]+(\.[A-Za-z0-9-]+)+$`)
)

// dialled is a number as a tel: or sms: link wants it (RFC 3966): digits, and a plus in front.
func dialled(phone string) string {
	return strings.Map(func(r rune) rune {
		if r == '+' || r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, phone)
}
