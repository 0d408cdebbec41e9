//go:build browser

package browser

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"capspan/build"
)

// published is the site as one that knows its own address: it then says more of its data.
func published(t *testing.T) build.Output {
	t.Helper()
	dir, src := t.TempDir(), build.Embedded()
	if err := os.CopyFS(dir, src.Content); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "site.yaml"), []byte("web: https://joints.example.org\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	src.Content = os.DirFS(dir)
	out, problems := siteOf(src, build.Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return out
}

var linkedData = regexp.MustCompile(`(?s)<script type="application/ld\+json">(.*?)</script>`)

// The JSON-LD of every page has types and properties of schema.org only, each with a
// value that schema.org allows. The vocabulary is the published one, as the npm package
// schema-dts turns it into types; the type checker compares. The lines that must fail
// show that it does.
func TestSchemaOrg(t *testing.T) {
	var b strings.Builder
	b.WriteString("import type { Dataset, HowTo, WithContext } from \"schema-dts\";\n")
	count := 0
	for _, f := range slices.Concat(site.Files, published(t).Files) {
		found := linkedData.FindSubmatch(f.Bytes)
		if found == nil || !strings.HasSuffix(f.Path, ".html") {
			continue
		}
		var kind struct {
			Type string `json:"@type"`
		}
		if err := json.Unmarshal(found[1], &kind); err != nil {
			t.Fatalf("%s: %v", f.Path, err)
		}
		count++
		fmt.Fprintf(&b, "// %s\nexport const page%d: WithContext<%s> = %s;\n", f.Path, count, kind.Type, found[1])
	}
	if count < 22 {
		t.Fatalf("%d pages with JSON-LD, want those of the guide with steps, the chart and its six tables", count)
	}
	for n, wrong := range []string{
		`WithContext<HowTo> = {"@context":"https://schema.org","@type":"HowTo","steps":[{"@type":"HowToStep","words":"x"}]}`,
		`WithContext<HowTo> = {"@context":"https://schema.org","@type":"HowTo","step":[{"@type":"PropertyValue","name":"x"}]}`,
		`WithContext<Dataset> = {"@context":"https://schema.org","@type":"Dataset","distribution":[{"@type":"DataDownload","contentUrl":5}]}`,
		`WithContext<Dataset> = {"@context":"https://schema.org","@type":"Dataset","isAccessibleForFree":{"@type":"HowToStep"}}`,
	} {
		fmt.Fprintf(&b, "// @ts-expect-error\nexport const wrong%d: %s;\n", n, wrong)
	}
	dir := t.TempDir()
	types, err := filepath.Abs(tools)
	if err != nil {
		t.Fatal(err)
	}
	settings, err := json.Marshal(map[string]any{"files": []string{"pages.ts"}, "compilerOptions": map[string]any{
		"strict": true, "noEmit": true, "skipLibCheck": true, "module": "esnext", "moduleResolution": "bundler", "types": []string{},
		"paths": map[string][]string{"*": {filepath.Join(types, "*")}}}})
	if err != nil {
		t.Fatal(err)
	}
	for name, content := range map[string][]byte{"pages.ts": []byte(b.String()), "tsconfig.json": settings} {
		if err := os.WriteFile(filepath.Join(dir, name), content, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if said, err := exec.Command(filepath.Join(tools, ".bin", "tsc"), "-p", dir).CombinedOutput(); err != nil {
		t.Errorf("the type checker says (%v; build/test.sh installs it and schema-dts):\n%.4000s", err, said)
	}
}
