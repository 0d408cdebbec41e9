package build

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/google/go-cmp/cmp"

	"capspan/content"
	"capspan/templates"
)

func TestKeeper(t *testing.T) {
	for _, c := range []struct {
		name, yaml string
		want       templates.Keeper
	}{
		{"nothing", "# later\n", templates.Keeper{}},
		{"a name alone", "name: The shed\n", templates.Keeper{Name: "The shed", Units: "in"}},
		{"all", "demo: true\nname: A\nphone: 0049 (30) 901-820\nmail: a.b+c@example.org\naddress: 1 Road\nunits: mm\n",
			templates.Keeper{Demo: true, Name: "A", Phone: "0049 (30) 901-820", Dial: "004930901820", Mail: "a.b+c@example.org", Address: "1 Road", Units: "mm"}},
		{"where files are edited", "edit: https://code.example.org:8443/a/b/-/edit/main/{file}#L{line}\n", templates.Keeper{Edit: "https://code.example.org:8443/a/b/-/edit/main/{file}#L{line}", Units: "in"}},
		{"languages", "languages: [es, en]\n", templates.Keeper{Languages: []string{"es", "en"}, Units: "in"}},
		{"a number that is text", "phone: 0012345678\n", templates.Keeper{Phone: "0012345678", Dial: "0012345678", Units: "in"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, problems := loadKeeper(fstest.MapFS{"site.yaml": {Data: []byte(c.yaml)}, "es/about.md": {}})
			if len(problems) > 0 {
				t.Fatal(problems)
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
	if got, problems := loadKeeper(fstest.MapFS{}); !cmp.Equal(got, templates.Keeper{}) || len(problems) > 0 {
		t.Errorf("without the file: %+v, %v", got, problems)
	}
}

func TestKeeperProblems(t *testing.T) {
	for _, c := range []struct{ yaml, want string }{
		{"nmae: x\n", `content/site.yaml:1:1: site: unknown key "nmae" [unknown-key]`},
		{"name: x\nname: y\n", `content/site.yaml:2:1: site.name: the key "name" is given twice [duplicate-key]`},
		{"name:\n", `content/site.yaml:1:6: site.name: name is empty [empty-value]`},
		{"name: [a, b]\n", `content/site.yaml:1:7: site.name: name must be one line of text [keeper-value]`},
		{"name: " + strings.Repeat("x", 121) + "\n", `content/site.yaml:1:7: site.name: name must be one line of at most 120 bytes [keeper-value]`},
		{"name: &a x\nmail: *a\n", `content/site.yaml:2:7: site.mail: mail must be one line of text [keeper-value]`},
		{"phone: call me\n", `content/site.yaml:1:8: site.phone: phone is "call me" [bad-phone]`},
		{"phone: 12 3\n", `content/site.yaml:1:8: site.phone: phone is "12 3" [bad-phone]`},
		{"mail: a@b\n", `content/site.yaml:1:7: site.mail: mail is "a@b" [bad-mail]`},
		{"mail: \"A <a@example.org>\"\n", `content/site.yaml:1:7: site.mail: mail is "A <a@example.org>" [bad-mail]`},
		{"mail: a@example.org?bcc=b@example.org\n", `content/site.yaml:1:7: site.mail: mail is "a@example.org?bcc=b@example.org" [bad-mail]`},
		{"units: cm\n", `content/site.yaml:1:8: site.units: units is "cm" [keeper-value]`},
		{"edit: https://code.example.org/edit\n", `content/site.yaml:1:7: site.edit: edit is "https://code.example.org/edit" [bad-edit]`},
		{"edit: \"https://{file}.example.org/x\"\n", `[bad-edit]`},
		{"edit: https://code.example.org/{file}?by={who}\n", `[bad-edit]`},
		{"edit: javascript:alert({file})\n", `[bad-edit]`},
		{"edit: http://code.example.org/{file}\n", `[bad-edit]`},
		{"demo: maybe\n", `content/site.yaml:1:7: site.demo: demo is "maybe" [keeper-value]`},
		{"languages: es\n", `content/site.yaml:1:12: site.languages: languages is no list of languages [bad-languages]`},
		{"languages: []\n", `content/site.yaml:1:12: site.languages: languages is no list of languages [bad-languages]`},
		{"languages: [en, en]\n", `content/site.yaml:1:17: site.languages: the language "en" is given twice [bad-languages]` +
			"\n    hint: leave one of them out\n    note: first given at content/site.yaml:1:13"},
		{"languages: [en, Spanish]\n", `content/site.yaml:1:17: site.languages: "Spanish" is not the name of a language [bad-languages]`},
		{"languages: [en, ../..]\n", `content/site.yaml:1:17: site.languages: "../.." is not the name of a language [bad-languages]`},
		{"languages: [en, [es]]\n", `content/site.yaml:1:17: site.languages: "" is not the name of a language [bad-languages]`},
		{"languages: [en, es]\n", `content/site.yaml:1:17: site.languages: nothing is translated into "es": the folder content/es/ is not there [bad-languages]` +
			"\n    hint: make the folder, or leave the language out"},
		{"- name\n", `content/site.yaml:1:1: site: the file holds no keys [keeper-value]`},
		{"name: \"x\n", `[bad-yaml]`},
	} {
		_, problems := loadKeeper(fstest.MapFS{"site.yaml": {Data: []byte(c.yaml)}})
		if len(problems) != 1 || !strings.Contains(problems[0].String(), c.want) {
			t.Errorf("%q:\ngot  %v\nwant %s", c.yaml, problems, c.want)
		}
	}
}

// A file of 200 MB, and one that would grow to as much, are refused before they are read.
func TestHugeKeeper(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, keeperFile), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(filepath.Join(dir, keeperFile), 200<<20); err != nil {
		t.Fatal(err)
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, problems := loadKeeper(os.DirFS(dir))
	if runtime.ReadMemStats(&after); after.TotalAlloc-before.TotalAlloc > 1<<20 {
		t.Errorf("%d bytes were taken for it", after.TotalAlloc-before.TotalAlloc)
	}
	if len(problems) != 1 || problems[0].Rule != "file-size" {
		t.Errorf("got %v", problems)
	}
	bomb := "name: &a [x, x, x, x, x, x, x, x, x]\n"
	for c := 'b'; c <= 'z'; c++ {
		bomb += fmt.Sprintf("%c: &%c [*%c, *%c, *%c, *%c, *%c, *%c, *%c, *%c]\n", c, c, c-1, c-1, c-1, c-1, c-1, c-1, c-1, c-1)
	}
	start := time.Now()
	if _, problems := loadKeeper(fstest.MapFS{keeperFile: {Data: []byte(bomb)}}); !problems.Blocked() || time.Since(start) > 5*time.Second {
		t.Errorf("after %v: %v", time.Since(start), problems)
	}
}

// The shipped details are an invented example and say so; example.org is kept for
// documentation (RFC 2606), numbers 555-0100 to 0199 for fiction (North American Numbering Plan).
func TestShippedKeeper(t *testing.T) {
	got, problems := loadKeeper(content.FS)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if !got.Demo || !strings.HasSuffix(got.Mail, "@example.org") || !strings.Contains(got.Phone, "555 01") {
		t.Errorf("the shipped details are not marked as a demo or could be somebody's: %+v", got)
	}
}

// The details reach both pages as text and as what the links on the card are made from;
// a bad file stops the build.
func TestKeeperOnPages(t *testing.T) {
	out, problems := siteOf(t, spoiled(t, map[string]string{"site.yaml": "name: A <b>shed</b>\nphone: +1 555 0123\nmail: shed@example.org\nunits: mm\n"}), Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	files := contents(out)
	for path, wants := range map[string][]string{
		"send/index.html":         {`value="A &lt;b&gt;shed&lt;/b&gt;"`, `<option value="mm" selected>`, "&#43;1 555 0123"},
		"measure/card/index.html": {`data-mail="shed@example.org"`, `data-dial="&#43;15550123"`, "A &lt;b&gt;shed"},
	} {
		for _, want := range wants {
			if !strings.Contains(string(files[path]), want) {
				t.Errorf("%s lacks %s", path, want)
			}
		}
		if strings.Contains(string(files[path]), "invented") {
			t.Errorf("%s calls a keeper's own details invented", path)
		}
	}
	_, problems = siteOf(t, spoiled(t, map[string]string{"site.yaml": "mail: nowhere\n"}), Options{})
	if !problems.Blocked() || problems[0].Rule != "bad-mail" {
		t.Errorf("a bad address: %v", problems)
	}
}
