package build

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"math"
	"path"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

// chartOf writes the files of a chart alone.
func chartOf(t testing.TB, set *tables.Set, folder string) *site {
	t.Helper()
	s := &site{inputs: inputs{set: set, english: set, cut: cutOnce(set), folder: folder}, version: set.Version(), root: "/", base: "/" + folder}
	if problems := s.addChart(); len(problems) > 0 {
		t.Fatal(problems)
	}
	return s
}

// Every file of a large chart has the name of its bytes, the directory names the pieces
// there are and no others, and no device is made to keep them.
func TestPieceFiles(t *testing.T) {
	s := chartOf(t, manySet(t), "")
	var directory struct {
		Format  int
		Packed  int
		Version string
		Entries struct{ Names string }
	}
	var written, named []string
	bytes := 0
	for _, f := range s.files {
		sum := sha256.Sum256(f.Bytes)
		base := strings.TrimSuffix(strings.TrimPrefix(path.Base(f.Path), "chart-directory."), ".json")
		if whole := hex.EncodeToString(sum[:]); len(base) < 32 || !strings.HasPrefix(whole, base) {
			t.Errorf("%s has bytes of the sum %s", f.Path, whole)
		}
		if f.Path == s.chart {
			if err := json.Unmarshal(f.Bytes, &directory); err != nil {
				t.Fatal(err)
			}
			if !s.isKept(f) {
				t.Error("without the directory the page does not open where there is no network")
			}
			continue
		}
		if path.Dir(f.Path) != "assets/chart" || f.Stage != Assets || s.isKept(f) {
			t.Errorf("%s: stage %d, kept by every device: %v", f.Path, f.Stage, s.isKept(f))
		}
		written, bytes = append(written, base), bytes+len(f.Bytes)
	}
	// The directory leads to the pieces, and they to their rolls.
	for _, name := range strings.Fields(directory.Entries.Names) {
		var piece []json.RawMessage
		var roll string
		n := slices.IndexFunc(s.files, func(f File) bool { return f.Path == pieceFolder+name+".json" })
		if n < 0 || json.Unmarshal(s.files[n].Bytes, &piece) != nil || json.Unmarshal(piece[0], &roll) != nil {
			t.Fatalf("the piece %s is not there, or leads to no roll", name)
		}
		named = append(named, name, roll)
	}
	slices.Sort(written)
	slices.Sort(named)
	named = slices.Compact(named)
	if diff := cmp.Diff(named, written); diff != "" || len(named) < 7 {
		t.Errorf("named and written differ:\n%s", diff)
	}
	if directory.Format != 3 || directory.Version != s.version.Name() || directory.Packed <= bytes/10 || directory.Packed >= bytes {
		t.Errorf("format %d, version %s, %d bytes packed of %d", directory.Format, directory.Version, directory.Packed, bytes)
	}
}

// A chart up to the limit is one file, as ever.
func TestWholeChartIsOneFile(t *testing.T) {
	set, _ := tables.Load(Embedded().Tables)
	s := chartOf(t, set, "")
	if len(s.files) != 1 || s.files[0].Path != s.chart || !strings.HasPrefix(s.chart, "assets/chart.") {
		t.Errorf("%d files, the chart is %s", len(s.files), s.chart)
	}
}

// Another language has a directory with its own titles of tables, and the same pieces.
func TestPiecesOfLanguages(t *testing.T) {
	set := manySet(t)
	n := slices.IndexFunc(set.Tables, (*tables.Table).Joint)
	said := set.Spoken(func(english string) string {
		if english == set.Tables[n].Title {
			return "Crucetas"
		}
		return english
	})
	first, other := chartOf(t, set, ""), chartOf(t, said, "es/")
	other.cut = first.cut // as load gives it
	other.files = nil
	if problems := other.addChart(); len(problems) > 0 || len(other.files) != 1 || other.chart == first.chart {
		t.Fatalf("%v; %d files of the other language, the directory is %s", problems, len(other.files), other.chart)
	}
	own, err := cutPieces(Chart(said), nil)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := string(other.files[0].Bytes), string(own.in(said)); got != want || !strings.Contains(got, `"Crucetas"`) {
		t.Error("the directory is not that of the chart as the language says it")
	}
}

// One row that is edited makes few pieces new: readers who keep the chart fetch those.
func TestOneRowChangesFewPieces(t *testing.T) {
	chart := Chart(manySet(t))
	before, err := cutPieces(chart, nil)
	if err != nil {
		t.Fatal(err)
	}
	row := &chart.Rows[len(chart.Rows)/2]
	row.Also = append(slices.Clone(row.Also), "another name")
	after, err := cutPieces(chart, nil)
	if err != nil {
		t.Fatal(err)
	}
	fresh := 0
	for name := range after.files {
		if before.files[name] == nil {
			fresh++
		}
	}
	if fresh == 0 || fresh > 2 {
		t.Errorf("%d of %d pieces are new, want those that hold the row", fresh, len(after.files))
	}
}

// The build's own core answers from those files what it answers from the whole chart.
func TestCoreOfPieceFiles(t *testing.T) {
	set := manySet(t)
	assets, problems := static.BundlePieced(static.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	in := inputs{set: set, assets: assets, cut: cutOnce(set)}
	pieced, err := in.inCore()
	if err != nil {
		t.Fatal(err)
	}
	whole, err := matcher.New(assets.Core(), Chart(set))
	if err != nil {
		t.Fatal(err)
	}
	for n, row := range Chart(set).Rows {
		if n%97 != 0 {
			continue
		}
		end := row.Ends[0]
		q := matcher.Query{Ends: []matcher.QueryEnd{{Hold: end.Hold}}}
		if end.Cap != nil {
			q.Ends[0].Cap = []string{end.Cap.Text + " " + string(end.Cap.Unit)}
		}
		if end.Across != nil {
			q.Ends[0].Across = []string{end.Across.Text + " " + string(end.Across.Unit)}
		}
		want, err := whole.Identify(q)
		if err != nil {
			t.Fatal(err)
		}
		got, err := pieced.Identify(q)
		if err != nil {
			t.Fatal(err)
		}
		for ref, at := range got.At { // only a large chart has pages of sizes
			if place := (&site{inputs: inputs{set: set}}).placeOf(set.Find(ref)); "/"+at != place {
				t.Errorf("%s stands at %s, not at %s", ref, place, at)
			}
		}
		if got.At == nil && len(got.Sizes) > 0 {
			t.Errorf("%s: no page is named of %d sizes", row.Ref, len(got.Sizes))
		}
		got.At = nil
		if diff := cmp.Diff(want, got, cmp.Comparer(sameWeight)); diff != "" {
			t.Errorf("%s: whole and in pieces differ:\n%s", row.Ref, diff)
		}
	}
}

// sameWeight is equal but for the order in which weights are added up.
func sameWeight(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a)) }
