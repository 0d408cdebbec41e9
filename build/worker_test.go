package build

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/tables"
)

// readWorker returns what the worker of an output is told.
func readWorker(t testing.TB, out Output) workerSite {
	t.Helper()
	script := contents(out)[workerName]
	list, _, found := bytes.Cut(bytes.TrimPrefix(script, []byte("const capspanSite=")), []byte(";\n"))
	var site workerSite
	if err := json.Unmarshal(list, &site); !found || err != nil {
		t.Fatalf("%s starts with %.80q: %v", workerName, script, err)
	}
	return site
}

// The list names every file a reader can ask for, once, with its own sum; the test has
// a rule of its own for which those are.
func TestWorkerList(t *testing.T) {
	for _, base := range []string{"/", "/shop/joints/"} {
		out := mustSite(t, Options{Base: base})
		site := readWorker(t, out)
		got := map[string]string{}
		for _, line := range slices.Concat(site.First, site.Rest) {
			sum, address, _ := strings.Cut(line, " ")
			if got[address] != "" {
				t.Errorf("%q is listed twice", address)
			}
			got[address] = sum
		}
		want := map[string]string{}
		for name, content := range contents(out) {
			hosting := strings.HasPrefix(name, "_") || strings.HasPrefix(name, "hosting/") || name == "SHA256SUMS.txt"
			embed := strings.HasPrefix(name, "embed/") || strings.HasPrefix(name, "assets/embed") // asked for by other pages
			if !hosting && !embed && name != "worker.js" && !ofVersion.MatchString(name) {
				want[strings.TrimSuffix(name, "index.html")] = fmt.Sprintf("%x", sha256.Sum256(content))[:12]
			}
		}
		for _, address := range slices.Sorted(maps.Keys(want)) {
			if got[address] != want[address] {
				t.Errorf("base %s: %q is listed with %q, want %q", base, address, got[address], want[address])
			}
			delete(got, address)
		}
		if len(got) > 0 {
			t.Errorf("base %s: listed, and no file: %v", base, got)
		}
		first := strings.Join(site.First, "\n")
		for _, address := range []string{" ", " identify/", " measure/", " chart/", " assets/chart.", " assets/drawings.", " 404.html", " not-kept.html"} {
			if !strings.Contains(first+"\n", address) {
				t.Errorf("%q is not among the first", address)
			}
		}
		if strings.Contains(first, " joint/") || strings.Contains(first, " data/") {
			t.Error("pages of rows or tables to download are among the first")
		}
	}
}

// One changed letter anywhere is another edition; none is the same.
func TestWorkerEdition(t *testing.T) {
	one := readWorker(t, mustSite(t, Options{}))
	if again := readWorker(t, mustSite(t, Options{})); again.Edition != one.Edition {
		t.Errorf("the same site is the editions %s and %s", one.Edition, again.Edition)
	}
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	s := &site{files: []File{{Path: "index.html", Bytes: []byte("a")}, {Path: "joint/x/index.html", Bytes: []byte("b")}}, inputs: inputs{set: set}, root: "/", base: "/"}
	before := s.keptList()
	s.files[1].Bytes = []byte("c")
	if after := s.keptList(); after.Edition == before.Edition {
		t.Error("a changed page does not change the edition")
	}
}

// While the site is watched no page registers a worker, and what stands at its address
// takes one away that is there.
func TestWorkerUnderWatch(t *testing.T) {
	files := contents(mustSite(t, Options{Live: "/_live"}))
	script := string(files[workerName])
	if !strings.Contains(script, "unregister") || strings.Contains(script, "capspanSite") {
		t.Errorf("%s is %.200q", workerName, script)
	}
	for name, content := range files {
		if strings.HasSuffix(name, ".html") && bytes.Contains(content, []byte("data-worker")) {
			t.Errorf("%s registers a worker", name)
		}
	}
}

// Every page registers the worker at the base, and names the manifest, which names
// pictures that are there.
func TestEveryPageIsKept(t *testing.T) {
	const base = "/shop/"
	files := contents(mustSite(t, Options{Base: base}))
	for name, content := range files {
		if !strings.HasSuffix(name, ".html") || name == "embed/frame/index.html" { // of which nothing is kept
			continue
		}
		for _, want := range []string{`data-worker="/shop/worker.js"`, `<link rel="manifest" href="/shop/site.webmanifest">`} {
			if n := bytes.Count(content, []byte(want)); n != 1 {
				t.Errorf("%s has %s %d times, want once", name, want, n)
			}
		}
	}
	var m webManifest
	if err := json.Unmarshal(files[webManifestName], &m); err != nil {
		t.Fatal(err)
	}
	if m.StartURL != base || m.Scope != base || m.ID != base || len(m.Icons) != 4 {
		t.Errorf("manifest: %+v", m)
	}
	for _, i := range m.Icons {
		if files[strings.TrimPrefix(i.Src, base)] == nil {
			t.Errorf("the manifest names %s, which is not there", i.Src)
		}
	}
}

// A chart of one's own may come without the worker, and with an icon that is no drawing
// of lines: it has no copy, and shows its icon as it is.
func TestWithoutWorker(t *testing.T) {
	src := inEnglish()
	folder := mapped(t, src.Static)
	delete(folder, "worker/worker.ts")
	folder["icons/icon.svg"] = &fstest.MapFile{Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 8 8"><circle r="4" cx="4" cy="4"/></svg>`)}
	src.Static = folder
	out, problems := siteOf(t, src, Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	files := contents(out)
	if files[workerName] != nil || bytes.Contains(files["index.html"], []byte("data-worker")) {
		t.Error("there is no worker, and pages register one")
	}
	if said := fmt.Sprint(problems); !strings.Contains(said, "icon-not-drawn") || !strings.Contains(said, "missing-part") {
		t.Errorf("problems: %s", said)
	}
	if bytes.Contains(files[webManifestName], []byte("image/png")) {
		t.Error("a picture was drawn of an icon that was not understood")
	}
}

// BenchmarkKept weighs what a device fetches and keeps, packed as on the way (brotli,
// quality 11): the first part of the list, the rest, and the worker itself.
//
//	go test -run '^$' -bench Kept -benchtime 1x ./build
func BenchmarkKept(b *testing.B) {
	out := mustSite(b, Options{})
	site := readWorker(b, out)
	files := contents(out)
	weigh := func(lines []string) (packed float64) {
		for _, line := range lines {
			_, address, _ := strings.Cut(line, " ")
			if address == "" || strings.HasSuffix(address, "/") {
				address += "index.html"
			}
			packed += float64(len(packBrotli(files[address], brotliLevel)))
		}
		return packed
	}
	var first, rest float64
	for b.Loop() {
		first, rest = weigh(site.First), weigh(site.Rest)
	}
	b.ReportMetric(float64(len(site.First)), "first-files")
	b.ReportMetric(first, "first-bytes")
	b.ReportMetric(float64(len(site.Rest)), "rest-files")
	b.ReportMetric(rest, "rest-bytes")
	b.ReportMetric(float64(len(packBrotli(files[workerName], brotliLevel))), "worker-bytes")
}

// Of a large chart a device keeps what a job begins with: neither the pages of sizes, groups
// and names nor what lies in drawers, nor pieces that nobody chose to keep. A page that is
// not kept is not said to be no page.
func TestWorkerOfLargeChart(t *testing.T) {
	out := buildOf(t, manySources(t), Options{Memory: testMemory})
	site := readWorker(t, out)
	weight := 0
	files := contents(out)
	for _, line := range slices.Concat(site.First, site.Rest) {
		_, address, _ := strings.Cut(line, " ")
		name := address
		if strings.HasSuffix(name, "/") || name == "" {
			name += "index.html"
		}
		weight += len(packGzip(files[name]))
		for _, folder := range []string{"size/", "assets/chart/", "assets/rows/", "assets/slips/", "assets/correct/", "data/"} {
			if strings.HasPrefix(address, folder) {
				t.Errorf("%s is kept", address)
			}
		}
		if parts := strings.Split(address, "/"); parts[0] == "chart" && len(parts) > 3 || parts[0] == "a-z" && len(parts) > 2 {
			t.Errorf("%s is kept", address)
		}
	}
	for _, needed := range []string{" ", " identify/", " chart/", " chart/joints-metric/", " measure/", " search/", " search/index.json", " a-z/", " order/", " contribute/correct/"} {
		if !slices.ContainsFunc(slices.Concat(site.First, site.Rest), func(line string) bool { return strings.HasSuffix(line, needed) }) {
			t.Errorf("%q is not kept", needed)
		}
	}
	if weight > 1_500_000 {
		t.Errorf("a device keeps %d bytes of gzip", weight)
	}
	if want := []string{"a-z/", "chart/", "size/"}; !slices.Equal(site.Apart, want) {
		t.Errorf("pages of %q may be there, want %q", site.Apart, want)
	}
	t.Logf("%d files, %d bytes of gzip", len(site.First)+len(site.Rest), weight)
}
