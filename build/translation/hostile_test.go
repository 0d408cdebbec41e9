package translation

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"time"
)

// Whatever a stranger sends in is split in no time, and into lines that are there.
func FuzzParts(f *testing.F) {
	for _, seed := range []string{"---\ntitle: a\n---\n\n- b\n```\nc\n", "export const a = { b: `${c({ d: \"}\" })}`, \"e.f\": /[/]/, };", "/*", "`${", "\"\\", "export", ";", "---", "```\n", "async"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, source string) {
		for _, split := range []func(string) []part{pageParts, scriptParts} {
			last := 1
			for _, p := range split(source) {
				if p.line < last || p.line > strings.Count(source, "\n")+1 {
					t.Fatalf("%q: a part is at line %d after %d", source, p.line, last)
				}
				last = p.line
			}
		}
	})
}

func TestHugeFiles(t *testing.T) {
	start := time.Now()
	many := strings.Repeat("- a\n", 20000)
	src := Sources{Content: fstest.MapFS{
		"cap.md": {Data: []byte("---\ntitle: Cap\n---\n\n" + many)}, "es/cap.md": {Data: []byte("---\ntitle: Dado\n---\n")},
		"wing.md": {Data: []byte("---\ntitle: Wing\n---\n")}, "es/wing.md": {Data: make([]byte, biggest+1)},
		"es/made-of.yaml": {Data: []byte("cap.md: " + strings.Repeat("1a2b3c4d ", 20000) + "\n")},
	}, Static: fstest.MapFS{"matcher/speech.ts": {Data: []byte("export const a = " + strings.Repeat("`${{", 20000))}, "words/en/x.ts": {Data: []byte(strings.Repeat("{[(", 20000))}}}
	got := fmt.Sprint(Check(src, "es"))
	for _, want := range []string{"content/cap.md:1:1: has too many parts to be compared", "content/es/wing.md: more than 1048576 bytes [unreadable]"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in %s", want, got)
		}
	}
	for _, text := range []string{strings.Repeat("`${{", 200000), strings.Repeat("a{b:", 200000), strings.Repeat("/", 200000), strings.Repeat("export const a={", 20000)} {
		scriptParts(text)
		pageParts(text)
	}
	if took := time.Since(start); took > 20*time.Second {
		t.Errorf("took %v", took)
	}
}
