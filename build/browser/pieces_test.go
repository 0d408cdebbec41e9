//go:build browser

package browser

import (
	"bytes"
	"fmt"
	"net/http"
	"net/http/httptest"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/build"
	"capspan/build/synth/catalogue"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

// large is a site whose chart is just above the limit for pieces, and the core that has
// that chart whole.
type large struct {
	site  build.Output
	set   *tables.Set
	core  *matcher.Matcher
	chart matcher.Chart
}

var largeSite = sync.OnceValues(func() (large, error) {
	src, err := invented(2100)
	if err != nil {
		return large{}, err
	}
	out, problems := build.Site(src, build.Options{Base: base, Language: "en"})
	if problems.Blocked() {
		return large{}, fmt.Errorf("%v", problems)
	}
	set, chart, err := wholeChart(src)
	if err != nil {
		return large{}, err
	}
	core, err := wholeCore(src, chart)
	return large{out, set, core, chart}, err
})

// invented are the sources with an invented chart of so many rows, and a guide for it.
func invented(rows int) (build.Sources, error) {
	src := build.Embedded()
	made, err := catalogue.Make(catalogue.Options{Rows: rows, Seed: 1, Makers: catalogue.Makers}, src.Tables)
	if err != nil {
		return src, err
	}
	guide, err := catalogue.Guide(src.Content)
	src.Tables, src.Content = made.FS(), guide.FS()
	return src, err
}

func wholeCore(src build.Sources, chart matcher.Chart) (*matcher.Matcher, error) {
	bundle, problems := static.Core(src.Static)
	if problems.Blocked() {
		return nil, fmt.Errorf("%v", problems)
	}
	return matcher.New(bundle, chart)
}

func wholeChart(src build.Sources) (*tables.Set, matcher.Chart, error) {
	set, problems := tables.Load(src.Tables)
	if problems.Blocked() {
		return nil, matcher.Chart{}, fmt.Errorf("%v", problems)
	}
	return set, build.Chart(set), nil
}

func mustLarge(t testing.TB) large {
	t.Helper()
	l, err := largeSite()
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// fragments are questions in the form of addresses: every n-th row by its own figures, as a
// caliper has them, some with the cap alone, some beside every row.
func (l large) fragments(t testing.TB, n int) []string {
	t.Helper()
	var list []string
	for i, row := range l.chart.Rows {
		if i%n != 0 || row.Ends[0].Cap == nil || row.Ends[0].Across == nil {
			continue
		}
		end := row.Ends[0]
		q := matcher.Query{Ends: []matcher.QueryEnd{{Hold: end.Hold, Cap: []string{end.Cap.MM + " mm"}}}}
		switch len(list) % 6 {
		case 1: // the cap alone
		case 2: // read in the wrong unit
			q.Ends[0].Cap[0] = end.Cap.Text + " " + map[string]string{"in": "mm", "mm": "in"}[string(end.Cap.Unit)]
			q.Ends[0].Across = []string{end.Across.Text + " " + map[string]string{"in": "mm", "mm": "in"}[string(end.Across.Unit)]}
		case 3: // beside it
			q.Ends[0].Across = []string{end.Across.MM + "7 mm"}
			q.Ends[0].Cap[0] = strings.Replace(q.Ends[0].Cap[0], ".", ".4", 1)
		case 4: // two ends
			other := l.chart.Rows[(i+len(l.chart.Rows)/2)%len(l.chart.Rows)].Ends[0]
			q.Ends[0].Across = []string{end.Across.MM + " mm"}
			if other.Cap != nil && other.Across != nil {
				q.Ends = append(q.Ends, matcher.QueryEnd{Hold: other.Hold, Cap: []string{other.Cap.MM + " mm"}, Across: []string{other.Across.MM + " mm"}})
			}
		default:
			q.Ends[0].Across = []string{end.Across.MM + " mm"}
		}
		fragment, err := l.core.Address(q)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, fragment)
	}
	return list
}

// extremes ask for the row with the smallest cap and for that with the largest.
func (l large) extremes(t testing.TB) (smallest, largest matcher.Query) {
	t.Helper()
	var least, most float64
	for _, row := range l.chart.Rows {
		end := row.Ends[0]
		if end.Cap == nil || end.Across == nil || len(row.Ends) > 1 {
			continue
		}
		mm, err := strconv.ParseFloat(end.Cap.MM, 64)
		if err != nil {
			t.Fatal(err)
		}
		q := matcher.Query{Ends: []matcher.QueryEnd{{Hold: end.Hold, Cap: []string{end.Cap.MM + " mm"}, Across: []string{end.Across.MM + " mm"}}}}
		if least == 0 || mm < least {
			least, smallest = mm, q
		}
		if mm > most {
			most, largest = mm, q
		}
	}
	return smallest, largest
}

// verdictShown is what the page says of an answer, and the same made of the core's own.
type verdictShown struct {
	Verdict, Head string
	Names         []string
}

func (l large) says(t testing.TB, fragment string) verdictShown {
	t.Helper()
	q, complaints, err := l.core.Decode(fragment)
	if err != nil || len(complaints) > 0 {
		t.Fatalf("%s: %v %v", fragment, complaints, err)
	}
	answer, err := l.core.Identify(q)
	if err != nil {
		t.Fatal(err)
	}
	s := verdictShown{string(answer.Verdict), answer.Says.Head, []string{}}
	for _, sizes := range [][]matcher.Size{answer.Sizes, answer.SameFigures, answer.Near} {
		for _, size := range sizes {
			s.Names = append(s.Names, size.Names...)
		}
	}
	return s
}

const shownSays = `(() => {
	const head = document.querySelector("[data-verdict-head]");
	const verdict = /verdict--([a-z-]+)/.exec(head.innerHTML)?.[1] ?? "";
	return {Verdict: verdict, Head: head.querySelector(".verdict__head").textContent,
		Names: [...document.querySelectorAll("[data-verdict-body] article.size:not(.slip) .size__names a")].map((a) => a.textContent)};
})()`

// answered waits for a verdict, whatever it is, with the late part of the core in it.
const answered = `/verdict--/.test(document.querySelector("[data-verdict-head]").innerHTML) && CapspanCore.learned() !== undefined`

// Whatever is asked, the page says what the core says that has the whole chart.
func TestPiecesAnswer(t *testing.T) {
	l := mustLarge(t)
	h := newHost(t, build.Handler(l.site, base))
	b := openTab(t)
	b.own = h.origin()
	fragments := l.fragments(t, 41)
	if len(fragments) < 36 {
		t.Fatalf("%d questions are too few", len(fragments))
	}
	verdicts := map[string]int{}
	for n, fragment := range fragments {
		if n%8 == 0 { // else the pieces of the questions before are here
			b.visit(h, base)
			b.visit(h, base+"identify/#"+fragment)
			b.until("the form", ready)
		} else {
			b.do("ask", chromedp.Evaluate[chromedp.Void](`location.hash = `+quote("#"+fragment)))
			time.Sleep(20 * time.Millisecond) // the page hears of it
		}
		b.until("an answer", answered)
		want, got := l.says(t, fragment), see[verdictShown](b, shownSays)
		verdicts[want.Verdict]++
		if got.Verdict != want.Verdict || got.Head != want.Head || !slices.Equal(got.Names, want.Names) {
			t.Errorf("#%s\npage %+v\ncore %+v", fragment, got, want)
		}
	}
	b.calm("pieces")
	if len(verdicts) < 3 {
		t.Errorf("only %v were asked for", verdicts)
	}
	if h.hears("/assets/chart.") || !slices.ContainsFunc(l.site.Files, func(f build.File) bool { return strings.HasPrefix(f.Path, "assets/chart/") }) {
		t.Error("the chart was fetched whole")
	}
	t.Logf("%d questions: %v", len(fragments), verdicts)
}

// faulty is a host of the large site that does something else to pieces, or the directory.
type faulty struct {
	*host
	mu    sync.Mutex
	fault func(w http.ResponseWriter, r *http.Request, content []byte)
}

func newFaulty(t testing.TB, out build.Output, part string) *faulty {
	f := &faulty{}
	whole := build.Handler(out, base)
	f.host = newHost(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		f.mu.Lock()
		fault := f.fault
		f.mu.Unlock()
		if fault == nil || !strings.HasPrefix(r.URL.Path, base+part) {
			whole.ServeHTTP(w, r)
			return
		}
		r.Header.Del("Accept-Encoding")
		got := httptest.NewRecorder()
		whole.ServeHTTP(got, r)
		fault(w, r, got.Body.Bytes())
	}))
	return f
}

func (f *faulty) does(fault func(http.ResponseWriter, *http.Request, []byte)) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.fault = fault
}

func send(w http.ResponseWriter, content []byte) {
	w.Header().Set("Content-Type", "application/json")
	w.Header().Set("Cache-Control", "no-store")
	w.Write(content)
}

// pieceFaults are the ways in which pieces fail, and what a page says to each.
var pieceFaults = map[string]struct {
	does func(http.ResponseWriter, *http.Request, []byte)
	says string
}{
	"lost":       {func(w http.ResponseWriter, r *http.Request, _ []byte) { http.NotFound(w, r) }, "newer than this page"},
	"no answer":  {func(http.ResponseWriter, *http.Request, []byte) { panic(http.ErrAbortHandler) }, "could not be fetched"},
	"overloaded": {func(w http.ResponseWriter, _ *http.Request, _ []byte) { http.Error(w, "", 503) }, "could not be fetched"},
	"cut short, and said so": {func(w http.ResponseWriter, _ *http.Request, content []byte) {
		w.Header().Set("Content-Length", fmt.Sprint(len(content)))
		w.Write(content[:len(content)/2])
		panic(http.ErrAbortHandler)
	}, "could not be fetched"},
	"truncated": {func(w http.ResponseWriter, _ *http.Request, content []byte) { send(w, content[:len(content)-9]) }, "damaged"},
	"tampered": {func(w http.ResponseWriter, _ *http.Request, content []byte) {
		send(w, bytes.ReplaceAll(content, []byte("1"), []byte("2"))) // sound JSON with other figures
	}, "damaged"},
	"another piece": {func(w http.ResponseWriter, _ *http.Request, _ []byte) { send(w, []byte(`{"index":[]}`)) }, "damaged"},
}

// A piece that fails is told, with a way on; there is no verdict until it is mended, and the
// readings stay.
func TestPieceFaults(t *testing.T) {
	l := mustLarge(t)
	fragment := l.fragments(t, 41)[0]
	want := l.says(t, fragment)
	for name, fault := range pieceFaults {
		t.Run(name, func(t *testing.T) {
			h := newFaulty(t, l.site, "assets/chart/")
			h.does(fault.does)
			b := openTab(t)
			b.own = h.origin()
			b.visit(h.host, base+"identify/#"+fragment)
			b.until("the form", ready)
			b.until("the message", `document.querySelector("[data-verdict-head]").innerText.includes(`+quote(fault.says)+`)`)
			if see[bool](b, `/verdict--/.test(document.querySelector("[data-verdict-head]").innerHTML) || document.querySelector("[data-verdict-body] .size") !== null`) {
				t.Error("there is a verdict without the piece")
			}
			if chips := b.readings("cap"); len(chips) != 1 {
				t.Errorf("the readings are %q", chips)
			}
			h.does(nil)
			b.do("try again", chromedp.Click(chromedp.CSS(`[data-pieces-go]:last-of-type`)))
			b.until("an answer", answered)
			if got := see[verdictShown](b, shownSays); got.Verdict != want.Verdict || got.Head != want.Head {
				t.Errorf("mended: %+v, want %+v", got, want)
			}
		})
	}
}

// Late pieces: the page says that it waits, shows nothing of the answer before, stays
// usable, and answers the newest readings in the end.
func TestPieceLate(t *testing.T) {
	l := mustLarge(t)
	smallest, largest := l.extremes(t)
	first, err := l.core.Address(smallest)
	if err != nil {
		t.Fatal(err)
	}
	q := largest // in other pieces than the first
	h := newFaulty(t, l.site, "assets/chart/")
	b := openTab(t)
	b.own = h.origin()
	b.visit(h.host, base+"identify/#"+first)
	b.until("the form", ready)
	b.until("an answer", answered)
	before := see[string](b, verdictText)
	let := make(chan struct{})
	h.does(func(w http.ResponseWriter, r *http.Request, content []byte) {
		<-let
		send(w, content)
	})
	b.do("start over", chromedp.Click(chromedp.CSS(`[data-over]`)))
	b.do("millimetres", chromedp.SetValue(chromedp.CSS(`[data-setting="unit"]`), "mm"))
	b.choose("hold", string(q.Ends[0].Hold))
	b.do("cap", chromedp.SendKeys(chromedp.CSS(capField), q.Ends[0].Cap[0]+kb.Enter))
	b.until("the word that it waits", `document.querySelector("[data-verdict-head]").innerText.includes("until all are here")`)
	if now := see[string](b, `document.querySelector("[data-verdict]").innerText`); strings.Contains(now, before) {
		t.Errorf("the answer before is still shown: %s", now)
	}
	if see[string](b, `document.querySelector("[data-verdict-head]").ariaLive + document.querySelector("[data-verdict-head]").ariaBusy`) != "politefalse" {
		t.Error("the word is not read aloud")
	}
	b.do("across", chromedp.SendKeys(chromedp.CSS(acrossField), q.Ends[0].Across[0]+kb.Enter))
	if see[bool](b, `/verdict--/.test(document.querySelector("[data-verdict-head]").innerHTML)`) {
		t.Error("a verdict without pieces")
	}
	close(let)
	b.until("an answer", answered)
	time.Sleep(300 * time.Millisecond) // nothing older comes after it
	fragment := see[string](b, `location.hash.slice(1)`)
	want, got := l.says(t, fragment), see[verdictShown](b, shownSays)
	if got.Verdict != want.Verdict || got.Head != want.Head || !slices.Equal(got.Names, want.Names) || !strings.Contains(fragment, "across=") {
		t.Errorf("#%s\npage %+v\ncore %+v", fragment, got, want)
	}
}

// A directory that is damaged is no chart: the page says so and offers another try.
func TestDirectoryFaults(t *testing.T) {
	l := mustLarge(t)
	fragment := l.fragments(t, 41)[0]
	for name, fault := range map[string]func(http.ResponseWriter, *http.Request, []byte){
		"lost":      pieceFaults["lost"].does,
		"truncated": pieceFaults["truncated"].does,
		"tampered": func(w http.ResponseWriter, _ *http.Request, content []byte) {
			send(w, bytes.Replace(content, []byte(`"plain":`), []byte(`"plain":1`), 1))
		},
	} {
		t.Run(name, func(t *testing.T) {
			h := newFaulty(t, l.site, "assets/chart-directory")
			h.does(fault)
			b := openTab(t)
			b.own = h.origin()
			b.visit(h.host, base+"identify/#"+fragment)
			b.until("the message", `document.querySelector("[data-trouble] button")`)
			if !see[bool](b, `document.querySelector("[data-board]").hidden && document.querySelector("[data-by-hand]").open`) {
				t.Error("the form is there without a chart, or the method by hand is not")
			}
			h.does(nil)
			b.do("try again", chromedp.Click(chromedp.CSS(`[data-trouble] button`)))
			b.until("an answer", answered)
			if got, want := see[verdictShown](b, shownSays), l.says(t, fragment); got.Head != want.Head {
				t.Errorf("mended: %+v, want %+v", got, want)
			}
		})
	}
}
