package translation

import (
	"strings"
	"testing"

	"capspan/content"
	"capspan/static"
	"capspan/templates"
)

var shipped = Sources{Content: content.FS, Static: static.FS, Templates: templates.FS}

// The shipped pages and scripts are split fine enough to name what changed: no part is the
// whole of a long file, and every text in quotes is in one.
func TestShippedParts(t *testing.T) {
	files, err := shipped.files()
	if err != nil || len(files) < 90 {
		t.Fatalf("%d files: %v", len(files), err)
	}
	for _, f := range files {
		text, err := f.text()
		if err != nil {
			t.Fatal(err)
		}
		parts := f.parts(text)
		last := 0
		all := ""
		for _, p := range parts {
			if p.line < last || p.line > strings.Count(text, "\n")+1 {
				t.Errorf("%s: %q is at line %d, after one at %d", f.english, p.name, p.line, last)
			}
			if len(p.text) > 3000 {
				t.Errorf("%s:%d: %q has %d bytes", f.english, p.line, p.name, len(p.text))
			}
			last, all = p.line, all+p.text
		}
		if strings.HasSuffix(f.name, ".ts") {
			for _, token := range tokens(text) {
				if strings.Contains(token.text, " ") && !strings.Contains(all, token.text) {
					t.Errorf("%s:%d: %s is in no part", f.english, token.line, token.text)
				}
			}
		}
	}
}
