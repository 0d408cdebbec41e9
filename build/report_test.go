package build

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What a page loads by itself counts once; links, other hosts and what a script fetches
// later do not.
func TestLoads(t *testing.T) {
	page := `<link rel="stylesheet" href="/sub/assets/a.css"><link rel="icon" href="/sub/assets/i.svg">
		<script src="/sub/assets/a.js" defer></script><script src="/sub/assets/a.js"></script>
		<div data-chart="/sub/assets/chart.json" data-drawings="/sub/assets/late.svg"></div>
		<a href="/sub/assets/link.svg">x</a><img src="https://example.org/assets/x.png"><img src="/assets/outside.png">
		<link rel="canonical" href="/sub/chart/"><img src="data:,x">`
	want := []string{"assets/a.css", "assets/i.svg", "assets/a.js", "assets/chart.json"}
	if diff := cmp.Diff(want, loads([]byte(page), "/sub/")); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestWeigh(t *testing.T) {
	noise := strings.Builder{} // that packs badly
	for i := range uint32(40_000) {
		noise.WriteByte(byte('!' + (i*i*2654435761>>13)%90))
	}
	out := output("index.html=home", "measure/a/index.html=a", "measure/b/index.html=<script src='/sub/assets/big.js'></script>",
		"joint/1310/index.html=row", "joint/1310/paper/index.html=sheet", "chart/x/index.html=table", "404.html=none", "data/x.csv=1",
		"assets/big.js="+noise.String())
	out.Base = "/sub/"
	weights := Weigh(out)
	var got []string
	for _, w := range weights {
		got = append(got, w.Kind+" "+w.Address)
		if over := w.Address == "/sub/measure/b/"; w.Over != over || over && w.Visit < 30_000 || !over && w.Visit > 100 {
			t.Errorf("%+v", w)
		}
		if w.Visit < w.Packed || w.Bytes == 0 {
			t.Errorf("%+v", w)
		}
	}
	want := []string{"home /sub/", "row /sub/joint/1310/", "guide /sub/measure/b/", "guide /sub/measure/a/", "table /sub/chart/x/",
		"paper /sub/joint/1310/paper/", "other /sub/404.html"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("pages (-want +got):\n%s", diff)
	}
}

// The shipped pages keep to their budgets.
func TestBudgets(t *testing.T) {
	kinds := map[string]int{}
	for _, w := range Weigh(mustSite(t, Options{})) {
		kinds[w.Kind]++
		if w.Over {
			t.Errorf("%s: a first visit weighs %d bytes, a page of the kind %s may weigh %d", w.Address, w.Visit, w.Kind, w.Budget)
		}
	}
	for kind := range Budgets {
		if kinds[kind] == 0 {
			t.Errorf("no page is of the kind %s", kind)
		}
	}
}
