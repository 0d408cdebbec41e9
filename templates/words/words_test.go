package words

import (
	"path"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"capspan/build/diag"
)

// load reads a language of words that are given as files: "en/x.yaml", "es/x.yaml".
func load(files map[string]string, lang string) (*Catalogue, diag.List) {
	templates, content := fstest.MapFS{}, fstest.MapFS{}
	for name, text := range files {
		folder, file := path.Split(name)
		if folder == "en/" {
			templates["words/en/"+file] = &fstest.MapFile{Data: []byte(text)}
			continue
		}
		content[folder+"words/"+file] = &fstest.MapFile{Data: []byte(text)}
	}
	return Load(templates, content, lang)
}

func lines(problems diag.List) string {
	var b strings.Builder
	if err := problems.Print(&b); err != nil {
		panic(err)
	}
	return b.String()
}

func mustLoad(t *testing.T, text string) *Catalogue {
	t.Helper()
	c, problems := load(map[string]string{"en/a.yaml": text}, English)
	if len(problems) > 0 {
		t.Fatal(lines(problems))
	}
	return c
}

func TestSay(t *testing.T) {
	c := mustLoad(t, `
plain: "What it is: * [this] (that) & <so>"
named: "{id} of {table}, {id}"
rows: {one: "1 row of {table}", other: "{n} rows of {table}"}
folded: >-
  one
  line
bare: 12
`)
	for _, tt := range []struct {
		key   string
		named []any
		want  string
	}{
		{"a.plain", nil, "What it is: * [this] (that) & <so>"},
		{"a.named", []any{"table", "inch", "id", "1310"}, "1310 of inch, 1310"},
		{"a.rows", []any{"n", 1, "table", "inch"}, "1 row of inch"},
		{"a.rows", []any{"n", 0, "table", "inch"}, "0 rows of inch"},
		{"a.rows", []any{"n", 22, "table", "inch"}, "22 rows of inch"},
		{"a.folded", nil, "one line"},
		{"a.bare", nil, "12"},
	} {
		if got := c.Say(tt.key, tt.named...); got != tt.want {
			t.Errorf("%s %v: got %q, want %q", tt.key, tt.named, got, tt.want)
		}
	}
}

// The forms of Polish, after CLDR's plural rules: 1 is one; 2 to 4 few, but not 12 to 14;
// whole numbers else many.
func TestSayInForms(t *testing.T) {
	english := `a: {one: "{n} cap", other: "{n} caps"}`
	polish := `a: {of: 'one {n} cap other {n} caps', is: {one: "{n} one", few: "{n} few", many: "{n} many", other: "{n} other"}}`
	c, problems := load(map[string]string{"en/x.yaml": english, "pl/x.yaml": polish}, "pl")
	if len(problems) > 0 {
		t.Fatal(lines(problems))
	}
	for n, want := range map[int]string{0: "0 many", 1: "1 one", 2: "2 few", 4: "4 few", 5: "5 many", 12: "12 many", 22: "22 few", 112: "112 many"} {
		if got := c.Say("x.a", "n", n); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestLoadProblems(t *testing.T) {
	for name, tt := range map[string]struct{ text, want string }{
		"twice": {"a: \"one\"\nb: \"two\"\na: \"three\"\n",
			"templates/words/en/x.yaml:3:1: the key \"a\" is given twice [duplicate-key]\n    note: first given at templates/words/en/x.yaml:1:1\n"},
		"no yaml":         {"a: \"one\n", "templates/words/en/x.yaml:2:1: found unexpected end of stream [bad-yaml]\n"},
		"a list":          {"- one\n", "templates/words/en/x.yaml: the file holds no phrases [no-words]\n    hint: write one a line: key: \"words\"\n"},
		"capital key":     {"One: \"one\"\n", "templates/words/en/x.yaml:1:1: x.One: the key \"One\" is not lower-case words with dashes [bad-key]\n"},
		"nothing":         {"a:\n", "templates/words/en/x.yaml:1:3: x.a: nothing is said [empty-value]\n"},
		"blanks":          {"a: \" \"\n", "templates/words/en/x.yaml:1:4: x.a: nothing is said [empty-value]\n"},
		"two lines":       {"a: |\n  one\n  two\n", "templates/words/en/x.yaml:1:4: x.a: a phrase is one line [bad-words]\n    hint: fold a long one with >-\n"},
		"open brace":      {"a: \"one {n\"\n", "templates/words/en/x.yaml:1:4: x.a: a brace has no partner in \"one {n\" [bad-words]\n"},
		"bad name":        {"a: \"one {N o}\"\n", "templates/words/en/x.yaml:1:4: x.a: \"N o\" is no name: write lower-case letters and digits [bad-words]\n"},
		"value in a link": {"a: \"[one {n}](to)\"\n", "templates/words/en/x.yaml:1:4: x.a: a value stands inside \"[one {n}](to)\", where only words can [bad-words]\n"},
		"unknown form":    {"a: {one: \"x\", more: \"y\", other: \"z\"}\n", "templates/words/en/x.yaml:1:15: x.a: \"more\" is no plural form [plural-form]\n    hint: CLDR has zero, one, two, few, many and other\n"},
		"no other":        {"a: {one: \"x\"}\n", "templates/words/en/x.yaml:1:4: x.a: the form \"other\" is missing [plural-form]\n"},
		"link in a form":  {"a: {other: \"[x](to)\"}\n", "templates/words/en/x.yaml:1:12: x.a: a plural form has no links and no ** in it [bad-words]\n"},
		"list of words":   {"a: [x]\n", "templates/words/en/x.yaml:1:4: x.a: a phrase is text, or plural forms of it [bad-words]\n    hint: write key: \"words\", or key: {one: \"...\", other: \"...\"}\n"},
	} {
		t.Run(name, func(t *testing.T) {
			_, problems := load(map[string]string{"en/x.yaml": tt.text}, English)
			if diff := cmp.Diff(tt.want, lines(problems)); diff != "" {
				t.Errorf("problems differ (-want +got):\n%s", diff)
			}
		})
	}
	t.Run("no folder", func(t *testing.T) {
		_, problems := load(nil, English)
		if got, want := lines(problems), "templates/words/en: no file of words is there [no-words]\n"; got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	})
}

func TestCheck(t *testing.T) {
	c := mustLoad(t, `plain: "x"
named: "{id} is here"
rows: {one: "1 row", other: "{n} rows"}
prose: "[go](to), **now**"
`)
	at := diag.Pos{File: "templates/x.html", Line: 4, Col: 2}
	all := []Use{{Key: "a.plain", Pos: at}, {Key: "a.named", Names: []string{"id"}, Pos: at},
		{Key: "a.rows", Names: []string{"n"}, Pos: at}, {Key: "a.prose", Names: []string{"to"}, Prose: true, Pos: at}}
	if problems := c.Check(all); len(problems) > 0 {
		t.Fatalf("nothing is wrong, and got %s", lines(problems))
	}
	for name, tt := range map[string]struct {
		drop int // of the uses above
		use  Use
		want string
	}{
		"unknown key": {-1, Use{Key: "a.plane", Pos: at},
			"templates/x.html:4:2: a.plane: no words are called \"a.plane\" [unknown-words]\n    hint: did you mean \"a.plain\"?\n"},
		"nobody says it": {0, Use{Key: "a.named", Names: []string{"id"}},
			"templates/words/en/a.yaml:1:1: a.plain: nobody says it [unused-words]\n"},
		"not given": {-1, Use{Key: "a.named", Pos: at},
			"templates/words/en/a.yaml:2:1: a.named: {id} is not given [unknown-placeholder]\n    note: said at templates/x.html:4:2\n"},
		"not said": {-1, Use{Key: "a.plain", Names: []string{"id"}, Pos: at},
			"templates/words/en/a.yaml:1:1: a.plain: {id} is given and not said [placeholder-left-out]\n    note: said at templates/x.html:4:2\n"},
		"no number": {-1, Use{Key: "a.rows", Pos: at},
			"templates/words/en/a.yaml:3:1: a.rows: the plural forms wait for {n}, which is not given [unknown-placeholder]\n    note: said at templates/x.html:4:2\n" +
				"templates/words/en/a.yaml:3:1: a.rows: {n} is not given [unknown-placeholder]\n    note: said at templates/x.html:4:2\n"},
		"a link in plain words": {-1, Use{Key: "a.prose", Names: []string{"to"}, Pos: at},
			"templates/words/en/a.yaml:4:1: a.prose: links and ** cannot be shown where it is said [marks-not-here]\n    note: said at templates/x.html:4:2\n"},
	} {
		t.Run(name, func(t *testing.T) {
			uses := []Use{tt.use}
			for n, use := range all {
				if n != tt.drop {
					uses = append(uses, use)
				}
			}
			if diff := cmp.Diff(tt.want, lines(c.Check(uses))); diff != "" {
				t.Errorf("problems differ (-want +got):\n%s", diff)
			}
		})
	}
}

// A second language is one folder: every English phrase, beside the words it was made of.
func TestTranslation(t *testing.T) {
	english := "here: \"It is here.\"\nids: \"{id} is here\"\n"
	for name, tt := range map[string]struct{ text, want string }{
		"whole": {"here: {of: \"It is here.\", is: \"Está aquí.\"}\nids: {of: \"{id} is here\", is: \"{id} está aquí\"}\n", ""},
		"missing": {"ids: {of: \"{id} is here\", is: \"{id} está aquí\"}\n",
			"templates/words/en/x.yaml:1:1: x.here: has no words in \"es\" [missing-translation]\n    hint: add it to content/es/words/x.yaml\n"},
		"stale": {"here: {of: \"It was here.\", is: \"Estaba aquí.\"}\nids: {of: \"{id} is here\", is: \"{id} está aquí\"}\n",
			"templates/words/en/x.yaml:1:1: x.here: now says \"It is here.\", and its translation was made of \"It was here.\" [stale-translation]\n" +
				"    hint: put the words right, then what they are of\n    note: translated at content/es/words/x.yaml:1:12\n"},
		"a value lost": {"here: {of: \"It is here.\", is: \"Está aquí.\"}\nids: {of: \"{id} is here\", is: \"está aquí\"}\n",
			"content/es/words/x.yaml:2:1: x.ids: has the values [], and the English words have [\"id\"] [other-values]\n    note: in English at templates/words/en/x.yaml:2:1\n"},
		"too much": {"here: {of: \"It is here.\", is: \"Está aquí.\"}\nids: {of: \"{id} is here\", is: \"{id} está aquí\"}\nmore: {of: \"x\", is: \"y\"}\n",
			"content/es/words/x.yaml:3:1: x.more: is no phrase of the English words [unused-words]\n"},
		"no of": {"here: \"Está aquí.\"\nids: {of: \"{id} is here\", is: \"{id} está aquí\"}\n",
			"content/es/words/x.yaml:1:7: x.here: a translation says what it is of, and what it is [bad-translation]\n    hint: write {of: \"the English words\", is: \"yours\"}\n" +
				"templates/words/en/x.yaml:1:1: x.here: has no words in \"es\" [missing-translation]\n    hint: add it to content/es/words/x.yaml\n"},
	} {
		t.Run(name, func(t *testing.T) {
			c, problems := load(map[string]string{"en/x.yaml": english, "es/x.yaml": tt.text}, "es")
			if diff := cmp.Diff(tt.want, lines(problems)); diff != "" {
				t.Errorf("problems differ (-want +got):\n%s", diff)
			}
			if len(problems) == 0 && c.Say("x.ids", "id", "1310") != "1310 está aquí" {
				t.Errorf("got %q", c.Say("x.ids", "id", "1310"))
			}
		})
	}
	t.Run("no file", func(t *testing.T) {
		_, problems := load(map[string]string{"en/x.yaml": english, "en/y.yaml": "a: \"A\"\n", "es/y.yaml": "a: {of: \"A\", is: \"A\"}\n"}, "es")
		want := "templates/words/en/x.yaml:1:1: is not in \"es\" [missing-translation]\n    hint: make content/es/words/x.yaml\n"
		if got := lines(problems); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	})
	t.Run("no language", func(t *testing.T) {
		_, problems := load(map[string]string{"en/x.yaml": english}, "qwertyuiop")
		if !strings.Contains(lines(problems), `"qwertyuiop" is the name of no language [bad-language]`) {
			t.Errorf("got %s", lines(problems))
		}
	})
}
