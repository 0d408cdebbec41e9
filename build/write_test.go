package build

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// output makes an Output of "path=text" pairs; assets/ holds the assets.
func output(pairs ...string) Output {
	var out Output
	for _, pair := range pairs {
		name, text, _ := strings.Cut(pair, "=")
		stage := Pages
		if strings.HasPrefix(name, "assets/") {
			stage = Assets
		}
		out.Files = append(out.Files, File{Path: name, Bytes: []byte(text), Stage: stage})
	}
	return out
}

// folder reads everything below dir but our own dot files.
func folder(t *testing.T, dir string) map[string]string {
	t.Helper()
	got := map[string]string{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && name != ".":
			if entries, _ := os.ReadDir(filepath.Join(dir, name)); len(entries) == 0 {
				got[name+"/"] = "empty folder"
			}
		case d.IsDir() || name == manifestName || name == lockName:
		default:
			data, err := os.ReadFile(filepath.Join(dir, name))
			if err != nil {
				return err
			}
			got[name] = string(data)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func mustWrite(t *testing.T, dir string, out Output) Report {
	t.Helper()
	report, err := Write(dir, out)
	if err != nil {
		t.Fatal(err)
	}
	return report
}

func TestWriteOnlyTheDifference(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "dist")
	first := output("assets/a.1.css=one", "index.html=home", "joint/1310/index.html=joint")
	if diff := cmp.Diff(Report{Written: 3, Bytes: 12}, mustWrite(t, dir, first)); diff != "" {
		t.Errorf("first build (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(Report{Same: 3}, mustWrite(t, dir, first)); diff != "" {
		t.Errorf("same build again (-want +got):\n%s", diff)
	}
	second := output("assets/a.2.css=two!", "index.html=home")
	if diff := cmp.Diff(Report{Written: 1, Removed: 2, Same: 1, Bytes: 4}, mustWrite(t, dir, second)); diff != "" {
		t.Errorf("other build (-want +got):\n%s", diff)
	}
	// The folders joint/ and joint/1310/ are gone too.
	want := map[string]string{"assets/a.2.css": "two!", "index.html": "home"}
	if diff := cmp.Diff(want, folder(t, dir)); diff != "" {
		t.Errorf("folder (-want +got):\n%s", diff)
	}
}

// A file becomes a folder and the other way round.
func TestWriteChangesShape(t *testing.T) {
	dir := t.TempDir()
	shapes := []Output{
		output("chart=a file", "joint/1310/index.html=x"),
		output("chart/index.html=a folder", "joint=a file"),
		output("chart=a file", "joint/1310/index.html=x"),
	}
	for i, out := range shapes {
		mustWrite(t, dir, out)
		want := map[string]string{}
		for _, f := range out.Files {
			want[f.Path] = string(f.Bytes)
		}
		if diff := cmp.Diff(want, folder(t, dir)); diff != "" {
			t.Errorf("shape %d (-want +got):\n%s", i, diff)
		}
	}
}

func TestWriteRefuses(t *testing.T) {
	tests := []struct {
		name  string
		there string // "path=text" put there before
		after Output // written first, when the folder is ours
		out   Output
		want  string
	}{
		{name: "a folder of somebody else's", there: "letter.txt=dear", out: output("index.html=x"),
			want: `name a new or empty folder`},
		{name: "somebody's file in our folder", after: output("index.html=x"), there: "about.html=theirs",
			out: output("about.html=ours"), want: `about.html" is there already`},
		{name: "a path upwards", out: output("../index.html=x"), want: "no path for a file"},
		{name: "a rooted path", out: output("/index.html=x"), want: "no path for a file"},
		{name: "a drive's path", out: output(`a\..\..\b=x`), want: "no path for a file"},
		{name: "one of our own names", out: output(manifestName + "=x"), want: "no path for a file"},
		{name: "names that differ in case", out: output("Joint/a=x", "joint/a=y"), want: "would be one file"},
		{name: "no stage", out: Output{Files: []File{{Path: "a", Stage: 7}}}, want: "no stage"},
		{name: "a list that names a place outside", there: manifestName + "=" + manifestHead + "\n../letter.txt\n",
			out: output("index.html=x"), want: "no path of a written file"},
		{name: "a list that is not ours", there: manifestName + "=groceries", out: output("index.html=x"),
			want: "not a list of ours"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			dir := t.TempDir()
			if test.after.Files != nil {
				mustWrite(t, dir, test.after)
			}
			if name, text, ok := strings.Cut(test.there, "="); ok {
				if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			before := folder(t, dir)
			_, err := Write(dir, test.out)
			if err == nil || !strings.Contains(err.Error(), test.want) {
				t.Fatalf("got error %v, want one with %q", err, test.want)
			}
			if diff := cmp.Diff(before, folder(t, dir)); diff != "" {
				t.Errorf("the folder changed (-before +after):\n%s", diff)
			}
		})
	}
}

// A link in the output folder must not lead a build, or a removal, outside.
func TestWriteStaysInside(t *testing.T) {
	dir, outside := t.TempDir(), t.TempDir()
	if err := os.WriteFile(filepath.Join(outside, "index.html"), []byte("theirs"), 0o644); err != nil {
		t.Fatal(err)
	}
	mustWrite(t, dir, output("index.html=x", "joint/index.html=x", "page.html=x"))
	if err := os.RemoveAll(filepath.Join(dir, "joint")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(outside, filepath.Join(dir, "joint")); err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(filepath.Join(dir, "page.html")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(filepath.Join(outside, "index.html"), filepath.Join(dir, "page.html")); err != nil {
		t.Fatal(err)
	}
	if _, err := Write(dir, output("index.html=y", "joint/index.html=ours", "page.html=theirs")); err == nil {
		t.Error("a folder that leads outside was written to")
	}
	if _, err := Write(dir, output("index.html=y", "page.html=theirs")); err == nil {
		t.Error("a file behind a folder that leads outside was removed")
	}
	want := map[string]string{"index.html": "theirs"}
	if diff := cmp.Diff(want, folder(t, outside)); diff != "" {
		t.Errorf("outside (-want +got):\n%s", diff)
	}
	if info, err := os.Lstat(filepath.Join(dir, "page.html")); err != nil || !info.Mode().IsRegular() {
		t.Errorf("page.html is %v (%v), want a file in place of the link", info.Mode(), err)
	}
}

// A killed build leaves scratch files, and files its last list names in advance.
func TestWriteAfterKilledBuild(t *testing.T) {
	dir := t.TempDir()
	mustWrite(t, dir, output("joint/a/index.html=a"))
	for _, name := range []string{scratchName + "1", "joint/a/" + scratchName + "7", "joint/b.html"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("half"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	list := manifestHead + "\njoint/a/index.html\njoint/b.html\n"
	if err := os.WriteFile(filepath.Join(dir, manifestName), []byte(list), 0o644); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(Report{Removed: 1, Same: 1}, mustWrite(t, dir, output("joint/a/index.html=a"))); diff != "" {
		t.Errorf("report (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(map[string]string{"joint/a/index.html": "a"}, folder(t, dir)); diff != "" {
		t.Errorf("folder (-want +got):\n%s", diff)
	}
}

// Two builds into one folder, with a reader who looks all the time: every page is
// whole and finds the asset it names; at the end one of the builds is there entirely.
func TestWriteConcurrently(t *testing.T) {
	dir := t.TempDir()
	sites := make([]Output, 2)
	for i := range sites {
		pairs := []string{fmt.Sprintf("assets/%d.css=style %d", i, i)}
		for page := range 40 {
			pairs = append(pairs, fmt.Sprintf("joint/%d.html=assets/%d.css", page, i))
		}
		sites[i] = output(pairs...)
	}
	mustWrite(t, dir, sites[0])

	stop, looked := make(chan struct{}), make(chan error, 1)
	go func() {
		for page := 0; ; page = (page + 1) % 40 {
			select {
			case <-stop:
				looked <- nil
				return
			default:
			}
			name := filepath.Join(dir, fmt.Sprintf("joint/%d.html", page))
			asset, err := os.ReadFile(name)
			if err == nil {
				_, err = os.Stat(filepath.Join(dir, string(asset)))
			}
			if err != nil {
				// The page may have been replaced between the two looks: then its new asset counts.
				if again, _ := os.ReadFile(name); string(again) == string(asset) {
					looked <- fmt.Errorf("page %d, asset %q: %w", page, asset, err)
					return
				}
			}
		}
	}()
	var builds sync.WaitGroup
	for i := range 20 {
		builds.Go(func() {
			if _, err := Write(dir, sites[i%2]); err != nil {
				t.Error(err)
			}
		})
	}
	builds.Wait()
	close(stop)
	if err := <-looked; err != nil {
		t.Error(err)
	}
	got := folder(t, dir)
	last := got["joint/0.html"]
	for name, text := range got {
		if strings.HasPrefix(name, "joint/") && text != last {
			t.Errorf("%s says %q, joint/0.html %q: two builds are mixed", name, text, last)
		}
	}
	if len(got) != 41 {
		t.Errorf("%d files, want 41", len(got))
	}
}
