package catalogue

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"capspan/tables"
)

func mustMake(t *testing.T, rows int, seed uint64) Files {
	t.Helper()
	files, err := Make(Options{Rows: rows, Seed: seed, Makers: Makers}, tables.FS)
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func mustLoad(t *testing.T, files Files) *tables.Set {
	t.Helper()
	set, problems := tables.Load(files.FS())
	for _, p := range problems {
		t.Error(p)
	}
	return set
}

// Equal options give equal bytes, another seed others.
func TestEqualSeedsGiveEqualBytes(t *testing.T) {
	first, again, other := mustMake(t, 400, 7), mustMake(t, 400, 7), mustMake(t, 400, 8)
	if !slices.Equal(first.Names(), again.Names()) {
		t.Fatalf("%v and %v", first.Names(), again.Names())
	}
	for _, name := range first.Names() {
		if !bytes.Equal(first[name], again[name]) {
			t.Errorf("%s differs", name)
		}
	}
	if bytes.Equal(first["joints-metric.yaml"], other["joints-metric.yaml"]) {
		t.Error("two seeds give the same rows")
	}
}

// A catalogue has the rows asked for and no problem, not even a warning, whatever the seed
// and the number of makers; each file is in the written order and says what it is.
func TestCatalogueLoadsClean(t *testing.T) {
	for _, opt := range []Options{{1, 1, 1}, {7, 2, 3}, {300, 3, 1}, {300, 4, 26}, {2000, 5, Makers}} {
		files, err := Make(opt, tables.FS)
		if err != nil {
			t.Fatal(err)
		}
		rows := 0
		for _, table := range mustLoad(t, files).Tables {
			if table.Joint() {
				rows += len(table.Rows)
			}
		}
		if rows != opt.Rows {
			t.Errorf("%+v: %d rows", opt, rows)
		}
		for name, data := range files {
			formatted, problems := tables.Format("tables/"+name, data)
			if len(problems) > 0 || !bytes.Equal(formatted, data) {
				t.Errorf("%s is not in the written order: %v", name, problems)
			}
			if !bytes.Contains(bytes.ToLower(data), []byte("invented")) {
				t.Errorf("%s does not say what is invented", name)
			}
			if strings.HasPrefix(name, "joints-") && !bytes.Contains(data, []byte(invented)) {
				t.Errorf("%s does not say that it is invented", name)
			}
			if len(data) > 1<<20 {
				t.Errorf("%s has %d bytes", name, len(data))
			}
		}
	}
}

func TestMakeRefuses(t *testing.T) {
	for _, opt := range []Options{{0, 1, 1}, {1, 1, 0}, {1, 1, mostMakers + 1}} {
		if _, err := Make(opt, tables.FS); err == nil {
			t.Errorf("%+v is made", opt)
		}
	}
}

// What sizes say has the shares of the chart, by Pearson's chi-square with gonum's
// distribution. Sizes are counted and not kits, which repeat what their size says.
func TestSharesFollowTheChart(t *testing.T) {
	chart := sharesOf(mustLoad(t, onlyTables(t)))
	made := sharesOf(mustLoad(t, mustMake(t, 6000, 1)))
	for what, want := range chart {
		got := made[what]
		statistic, kinds := 0.0, 0
		total, all := sum(want), sum(got)
		for kind, n := range want {
			expected := all * n / total
			if expected < 5 {
				t.Errorf("%s %s: only %.1f expected", what, kind, expected)
			}
			statistic += (got[kind] - expected) * (got[kind] - expected) / expected
			kinds++
		}
		for kind := range got {
			if want[kind] == 0 {
				t.Errorf("%s: %s is not in the chart", what, kind)
			}
		}
		if p := 1 - (distuv.ChiSquared{K: float64(kinds - 1)}).CDF(statistic); p < 0.001 {
			t.Errorf("%s: chi-square %.1f of %d kinds, p = %.5f\nchart %v\nmade  %v", what, statistic, kinds, p, want, got)
		}
	}
}

func onlyTables(t *testing.T) Files {
	files := Files{}
	entries, err := tables.FS.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		data, err := tables.FS.ReadFile(e.Name())
		if err != nil {
			t.Fatal(err)
		}
		files[e.Name()] = data
	}
	return files
}

func sum(counts map[string]float64) float64 {
	all := 0.0
	for _, n := range counts {
		all += n
	}
	return all
}

// sharesOf counts, of one kit of each size, how it is held, printed, believed and
// contradicted, and how many joints have two ends. That of the first
// maker is taken, who has chosen by chance how it is printed. A size of several rows of the chart
// counts each, because it is drawn as often.
func sharesOf(set *tables.Set) map[string]map[string]float64 {
	out := map[string]map[string]float64{}
	count := func(what, kind string) {
		if out[what] == nil {
			out[what] = map[string]float64{}
		}
		out[what][kind]++
	}
	for _, size := range set.Sizes() {
		rows := size
		if strings.HasPrefix(size[0].Table.Title, "Invented") {
			rows = []*tables.Row{slices.MinFunc(size, func(a, b *tables.Row) int { return strings.Compare(a.ID, b.ID) })}
		}
		for _, row := range rows {
			count("ends", fmt.Sprint(len(row.Ends)))
			if len(row.Ends) == 2 {
				continue
			}
			end := row.Ends[0]
			count("hold", end.Hold.Word())
			count("cap printed", printedAs(end.Cap))
			count("across printed", printedAs(end.Across))
			count("basis", string(row.Basis))
			count("faces", string(end.Across.Faces))
			count("others", fmt.Sprint(min(len(end.Cap.Others)+len(end.Across.Others), 2)))
		}
	}
	return out
}

func printedAs(v tables.Value) string {
	if v.Quantity.IsZero() {
		return v.Word()
	}
	p := figureOf(v.Quantity).print
	return fmt.Sprintf("%s %d %d", p.unit, p.decimals, p.parts)
}

// Twins, joints that share a cap, and how far joints reach are as in the chart: while there
// is room, the middle of caps and of ratios stays where it was, and sizes have half of the makers.
func TestSizesFollowTheChart(t *testing.T) {
	chart, made := mustLoad(t, onlyTables(t)), mustLoad(t, mustMake(t, 3000, 1))
	for what, of := range map[string]func(tables.End) float64{
		"cap":   func(e tables.End) float64 { return e.Cap.Quantity.Float() },
		"ratio": func(e tables.End) float64 { return e.Across.Quantity.Float() / e.Cap.Quantity.Float() },
	} {
		want, got := middle(chart, of), middle(made, of)
		if got < want/1.25 || got > want*1.25 {
			t.Errorf("the middle %s is %.2f, in the chart %.2f", what, got, want)
		}
	}
	kits, sizes := 0, made.Sizes()
	for _, size := range sizes {
		kits += len(size)
	}
	if each := float64(kits) / float64(len(sizes)); each < 0.9*Makers/2 || each > 1.1*Makers/2 {
		t.Errorf("%.2f kits a size", each)
	}
}

func middle(set *tables.Set, of func(tables.End) float64) float64 {
	var list []float64
	for _, size := range set.Sizes() {
		if x := of(size[0].Ends[0]); len(size[0].Ends) == 1 && x > 0 && !math.IsInf(x, 0) {
			list = append(list, x)
		}
	}
	slices.Sort(list)
	return stat.Quantile(0.5, stat.Empirical, list, nil)
}

// What is printed is near what was meant, by half a step, and reads back as a number.
func TestPrintings(t *testing.T) {
	for _, text := range []string{"27", "27.0", "26.97", "1.062 in", "55/64 in", "1 3/16 in", "2 1/8 in"} {
		digits, inch := strings.CutSuffix(text, " in")
		unit := tables.Millimetre
		if inch {
			unit = tables.Inch
		}
		q, err := tables.ParseQuantity(digits, unit)
		if err != nil {
			t.Fatal(err)
		}
		p := figureOf(q).print
		for mm := 3.0; mm < 200; mm += 0.37 {
			written, shown := p.write(mm)
			back, err := tables.ParseQuantity(written, unit)
			if err != nil || math.Abs(back.Float()-shown) > 1e-9 {
				t.Fatalf("%s: %.3f is printed %q, which is %.4f: %v", text, mm, written, back.Float(), err)
			}
			most := p.step()/2 + 1e-9
			if p.parts > 0 {
				most += p.step() // a whole inch is no fraction
			}
			if math.Abs(shown-mm) > most {
				t.Errorf("%s: %.3f is printed %q", text, mm, written)
			}
		}
	}
}

// The guide has nothing left that asks for a row.
func TestGuideAsksForNoRow(t *testing.T) {
	const page = "A {row 1310}.\n\n::: figure joint row=1310 alt=\"x\"\nDrawn.\n:::\n\n:: answer expect=identified query=\"a\"\n:: table joints-wing\n::: caution\nKept.\n:::\n"
	if got, want := withoutRows(page), "A 1310.\n\n\n::: caution\nKept.\n:::\n"; got != want {
		t.Errorf("%q", got)
	}
}
