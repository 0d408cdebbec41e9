package build

import (
	"bytes"
	"crypto/sha512"
	"encoding/base64"
	"encoding/json"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"capspan/static"
)

var embedFront = regexp.MustCompile(`\}\)\((\{.*\})\);\n$`)

// The finder is the core and the chart of the site, byte for byte, and its small script
// names its parts by sums that hold.
func TestEmbedFiles(t *testing.T) {
	out := mustSite(t, Options{Base: "/sub/"})
	files := contents(out)
	small := files["embed/capspan.js"]
	front := embedFront.FindSubmatch(small)
	if front == nil {
		t.Fatalf("the script ends in %.200q", small[max(0, len(small)-200):])
	}
	var edition embedEdition
	if err := json.Unmarshal(front[1], &edition); err != nil {
		t.Fatal(err)
	}
	if edition.Language != "en" || edition.Direction != "ltr" || edition.Folder != "" {
		t.Errorf("edition %+v", edition)
	}
	for part, script := range map[embedPart]string{edition.Core: "matcher.js", edition.Late: "matcher-late.js"} {
		content := files[part.File]
		sum := sha512.Sum384(content)
		if want := "sha384-" + base64.StdEncoding.EncodeToString(sum[:]); part.Integrity != want {
			t.Errorf("%s: the sum is %s, the script says %s", part.File, want, part.Integrity)
		}
		if want := asset(t, files, script); !bytes.Contains(content, want) {
			t.Errorf("%s does not hold the bytes of %s", part.File, script)
		}
	}
	if !bytes.Equal(small, asset(t, files, "embed.js")) {
		t.Error("the script at the address that stays is not the one that can be pinned")
	}
	if !bytes.Equal(files["embed/chart.json"], asset(t, files, "chart.json")) {
		t.Error("the finder has another chart than the site")
	}
}

// asset is the content of the asset of a plain name.
func asset(t *testing.T, files map[string][]byte, name string) []byte {
	t.Helper()
	ext := path.Ext(name)
	form := regexp.MustCompile(`^assets/` + regexp.QuoteMeta(strings.TrimSuffix(name, ext)) + `\.[0-9a-f]{8}` + regexp.QuoteMeta(ext) + `$`)
	for file, content := range files {
		if form.MatchString(file) {
			return content
		}
	}
	t.Fatalf("no asset %s", name)
	return nil
}

// A chart of one's own may do without the finder: the rest of the site is there.
func TestWithoutEmbed(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, static.FS); err != nil {
		t.Fatal(err)
	}
	for _, name := range must(fs.Glob(static.FS, "parts/embed/*")) {
		if err := os.Remove(filepath.Join(dir, name)); err != nil {
			t.Fatal(err)
		}
	}
	src := inEnglish()
	src.Static = os.DirFS(dir)
	all, problems := load(src, Options{Language: "en"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	s := newSite(all[0], Options{})
	s.bundle()
	if problems := s.addEmbed(); problems.Blocked() {
		t.Fatal(problems)
	}
	for _, f := range s.files {
		if s.isEmbed(f.Path) {
			t.Errorf("%s is there", f.Path)
		}
	}
}
