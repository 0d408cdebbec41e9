//go:build browser

package browser

import (
	"encoding/json"
	"net/http"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"capspan/build"
	"capspan/static/matcher"
)

// inParts is the large site with its chart cut so small that the directory is in parts, and
// what kind of file each of its files is.
func inParts(t testing.TB, l large) (build.Output, map[string]string) {
	t.Helper()
	var files []build.File
	kinds := map[string]string{}
	directory, err := matcher.Split(l.chart, 24, func(p matcher.Piece) (string, error) {
		content, err := json.Marshal(p)
		name := nameOf(content)
		var list []json.RawMessage
		kinds[name] = "part"
		if json.Unmarshal(content, &list) == nil {
			kinds[name] = map[bool]string{true: "piece", false: "roll"}[len(list) > 2]
		}
		files = append(files, build.File{Path: "assets/chart/" + name + ".json", Bytes: content, Stage: build.Assets})
		return name, err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(directory.Pieces) < 4 {
		t.Fatalf("the directory has %d parts", len(directory.Pieces))
	}
	text, err := json.Marshal(struct {
		matcher.Directory
		Packed int `json:"packed"`
	}{directory, 100_000})
	if err != nil {
		t.Fatal(err)
	}
	return withDirectory(t, l.site, text, files), kinds
}

// A part of the directory, a piece or a roll that fails is told, with a way on, and there is
// no verdict without it: what the page says then is what the core says that has all.
func TestPieceFaultsInParts(t *testing.T) {
	l := mustLarge(t)
	out, kinds := inParts(t, l)
	fragment := l.fragments(t, 41)[0]
	want := l.says(t, fragment)
	for _, kind := range []string{"part", "piece", "roll"} {
		for _, how := range []string{"lost", "no answer", "truncated", "tampered"} {
			t.Run(kind+" "+how, func(t *testing.T) {
				fault := pieceFaults[how]
				h := newFaulty(t, out, "assets/chart/")
				h.does(func(w http.ResponseWriter, r *http.Request, content []byte) {
					if kinds[strings.TrimSuffix(path.Base(r.URL.Path), ".json")] == kind {
						fault.does(w, r, content)
						return
					}
					send(w, content)
				})
				b := openTab(t)
				b.own = h.origin()
				b.visit(h.host, base+"identify/#"+fragment)
				b.until("the form", ready)
				b.until("the message", `document.querySelector("[data-verdict-head]").innerText.includes(`+quote(fault.says)+`)`)
				if see[bool](b, `/verdict--/.test(document.querySelector("[data-verdict-head]").innerHTML) || document.querySelector("[data-verdict-body] .size") !== null`) {
					t.Error("there is a verdict without it")
				}
				h.does(nil)
				b.do("try again", chromedp.Click(chromedp.CSS(`[data-pieces-go]:last-of-type`)))
				b.until("an answer", answered)
				if got := see[verdictShown](b, shownSays); got.Verdict != want.Verdict || got.Head != want.Head || !slices.Equal(got.Names, want.Names) {
					t.Errorf("mended: %+v, want %+v", got, want)
				}
			})
		}
	}
}

// A chart whose directory is in parts is kept with them: nothing of it is fetched any more.
func TestKeepInParts(t *testing.T) {
	l := mustLarge(t)
	out, kinds := inParts(t, l)
	h := newHost(t, build.Handler(out, base))
	b := openTab(t)
	b.own = h.origin()
	b.visit(h, base+"identify/")
	b.until("the form", ready)
	if h.hears("/assets/chart/") {
		t.Error("parts of the directory are fetched without being asked for")
	}
	b.do("keep", chromedp.Click(chromedp.CSS(keepGo)))
	b.waitsFor("The whole chart is on this device")
	h.hears("")
	for _, fragment := range l.fragments(t, 391) {
		b.visit(h, base)
		b.visit(h, base+"identify/#"+fragment)
		b.until("an answer", answered)
		if want, got := l.says(t, fragment), see[verdictShown](b, shownSays); got.Head != want.Head || !slices.Equal(got.Names, want.Names) {
			t.Errorf("#%s\npage %+v\ncore %+v", fragment, got, want)
		}
	}
	if h.hears("/assets/chart/") {
		t.Error("what is kept is fetched")
	}
	b.promised("each file to be there", `caches.keys().then(async (names) => {
		for (const name of names) if (name.startsWith("capspan-chart ")) return (await (await caches.open(name)).keys()).length;
		return 0;
	}).then((n) => n === `+strconv.Itoa(len(kinds))+`)`)
	b.waitsFor("The whole chart is on this device") // it knows after a reload, too
}
