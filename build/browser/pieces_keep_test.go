//go:build browser

package browser

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"capspan/build"
)

const (
	keepSaid = `document.querySelector("[data-keep-said]").textContent`
	keepGo   = `[data-keep-go]`
)

// piecesOf are the names of a site's pieces, in the order of its directory.
func piecesOf(t testing.TB, out build.Output) []string {
	t.Helper()
	var entries struct{ Names string }
	if err := json.Unmarshal(directoryOf(t, out)["entries"], &entries); err != nil {
		t.Fatal(err)
	}
	return strings.Fields(entries.Names)
}

// withDirectory is the site with another directory, and what else is given, under the names
// of their bytes.
func withDirectory(t testing.TB, out build.Output, directory []byte, pieces []build.File) build.Output {
	t.Helper()
	now := out
	now.Files = nil
	was := ""
	for _, f := range out.Files {
		if strings.HasPrefix(f.Path, "assets/chart-directory.") {
			was = f.Path
		}
	}
	is := "assets/chart-directory." + nameOf(directory) + ".json"
	for _, f := range out.Files {
		switch {
		case f.Path == was:
			f = build.File{Path: is, Bytes: directory, Stage: build.Assets}
		case pieces != nil && strings.HasPrefix(f.Path, "assets/chart/"):
			continue
		case f.Path == "identify/index.html":
			f = build.File{Path: f.Path, Bytes: bytes.ReplaceAll(f.Bytes, []byte(was), []byte(is)), Stage: f.Stage}
		}
		now.Files = append(now.Files, f)
	}
	now.Files = append(now.Files, pieces...)
	return now
}

// nameOf is a file's name as static/parts/pieces/sum.ts wants it.
func nameOf(content []byte) string {
	sum := sha256.Sum256(content)
	return hex.EncodeToString(sum[:])[:32]
}

// directoryOf is the directory of a site.
func directoryOf(t testing.TB, out build.Output) map[string]json.RawMessage {
	t.Helper()
	for _, f := range out.Files {
		if strings.HasPrefix(f.Path, "assets/chart-directory.") {
			var read map[string]json.RawMessage
			if err := json.Unmarshal(f.Bytes, &read); err != nil {
				t.Fatal(err)
			}
			return read
		}
	}
	t.Fatal("no directory")
	return nil
}

func (b *tab) waitsFor(text string) {
	b.t.Helper()
	end := time.Now().Add(10 * time.Second)
	for !see[bool](b, keepSaid+`.includes(`+quote(text)+`)`) {
		if time.Now().After(end) {
			b.t.Fatalf("it says %q, not %q", see[string](b, keepSaid), text)
		}
		time.Sleep(10 * time.Millisecond)
	}
}

// Much is not fetched before the reader says so, and is when they do.
func TestAskBeforeMuch(t *testing.T) {
	l := mustLarge(t)
	directory := directoryOf(t, l.site)
	directory["packed"] = json.RawMessage("9000000") // as if each piece were heavy
	text, err := json.Marshal(directory)
	if err != nil {
		t.Fatal(err)
	}
	h := newHost(t, build.Handler(withDirectory(t, l.site, text, nil), base))
	b := openTab(t)
	b.own = h.origin()
	fragment := l.fragments(t, 41)[1] // the cap alone
	b.visit(h, base+"identify/#"+fragment)
	b.until("the question", `document.querySelector("[data-pieces-go]")`)
	if head := see[string](b, verdictText); !strings.Contains(head, "MB to fetch") || !strings.Contains(head, "distance across") {
		t.Errorf("it says %s", head)
	}
	if h.hears("/assets/chart/") {
		t.Error("pieces were fetched before the reader agreed")
	}
	b.do("agree", chromedp.Click(chromedp.CSS(`[data-pieces-go]`)))
	b.until("an answer", answered)
	want, got := l.says(t, fragment), see[verdictShown](b, shownSays)
	if got.Verdict != want.Verdict || got.Head != want.Head || !slices.Equal(got.Names, want.Names) {
		t.Errorf("page %+v\ncore %+v", got, want)
	}
	b.calm("asking")
}

// The whole chart is kept when the reader says so and never before; then any reading is
// answered without a network. Of a later chart only what changed is fetched, and all goes
// when the reader says so.
func TestKeepWholeChart(t *testing.T) {
	l := mustLarge(t)
	pieces := piecesOf(t, l.site)
	n := len(pieces)
	h := newHost(t, build.Handler(l.site, base))
	b := openTab(t)
	b.own = h.origin()
	b.visit(h, base+"identify/")
	b.until("the form", ready)
	b.kept(20) // the worker is at work; it keeps no pieces
	b.promised("the worker's copy of the page", `caches.keys().then(async (names) => {
		for (const name of names) if (await (await caches.open(name)).match(location.origin + `+quote(base+"identify/")+`)) return true;
		return false;
	})`)
	if h.hears("/assets/chart/") || see[bool](b, keepSaid+` !== ""`) {
		t.Error("pieces are kept without being asked for")
	}
	b.do("keep", chromedp.Click(chromedp.CSS(keepGo)))
	b.waitsFor("The whole chart is on this device")
	h.down()
	for _, fragment := range l.fragments(t, 211) {
		b.visit(h, base)
		b.visit(h, base+"identify/#"+fragment)
		b.until("an answer without a network", answered)
		if want, got := l.says(t, fragment), see[verdictShown](b, shownSays); got.Head != want.Head {
			t.Errorf("#%s\npage %+v\ncore %+v", fragment, got, want)
		}
	}
	for _, f := range l.site.Files { // pages of sizes are too many to keep, and the reader is told so
		if strings.HasPrefix(f.Path, "size/") {
			b.visit(h, base+strings.TrimSuffix(f.Path, "index.html"))
			if title := see[string](b, `document.querySelector("h1").textContent`); title != "This page is not at hand" {
				t.Errorf("%s without a network: %q", f.Path, title)
			}
			break
		}
	}
	h.up()

	// A later chart, in which one piece is another.
	directory := directoryOf(t, l.site)
	was := pieces[0]
	first := l.site.Files[slices.IndexFunc(l.site.Files, func(f build.File) bool { return f.Path == "assets/chart/"+was+".json" })]
	content := append(slices.Clone(first.Bytes), '\n')
	for key, value := range directory {
		directory[key] = bytes.ReplaceAll(value, []byte(was), []byte(nameOf(content)))
	}
	text, err := json.Marshal(directory)
	if err != nil {
		t.Fatal(err)
	}
	later := withDirectory(t, l.site, text, nil)
	later.Files = append(later.Files, build.File{Path: "assets/chart/" + nameOf(content) + ".json", Bytes: content, Stage: build.Assets})
	h.publish(build.Handler(later, base))
	b.promised("the worker to go", `navigator.serviceWorker.getRegistrations().then((all) => Promise.all(all.map((r) => r.unregister()))).then(() => true)`)
	b.do("leave", chromedp.Navigate("about:blank")) // a worker goes with the last page it gave out
	b.visit(h, base+"identify/")
	b.until("the form", ready)
	b.waitsFor(fmt.Sprintf("%d of %d", n-1, n))
	h.hears("")
	b.do("bring it up to date", chromedp.Click(chromedp.CSS(keepGo)))
	b.waitsFor("The whole chart is on this device")
	h.mu.Lock()
	var fetched []string
	for _, path := range h.asked {
		if strings.Contains(path, "/assets/chart/") {
			fetched = append(fetched, path)
		}
	}
	h.mu.Unlock()
	if len(fetched) != 1 || !strings.Contains(fetched[0], nameOf(content)) {
		t.Errorf("for one piece that changed %q were fetched", fetched)
	}
	held := `caches.keys().then(async (names) => {
		for (const name of names) if (name.startsWith("capspan-chart ")) return (await (await caches.open(name)).keys()).length;
		return 0;
	})`
	b.promised("the old piece to go", held+`.then((n) => n === `+strconv.Itoa(2*n)+`)`) // each has a roll
	b.do("remove", chromedp.Click(chromedp.CSS(`[data-keep-remove]`)))
	b.waitsFor("was removed")
	b.promised("nothing to be left", held+`.then((n) => n === 0)`)
}

// What can go wrong while keeping is told, and what was kept stays: a store that refuses,
// one that is full, a piece that is lost, and the reader who stops it.
func TestKeepTroubles(t *testing.T) {
	l := mustLarge(t)
	h := newFaulty(t, l.site, "assets/chart/")
	b := openTab(t)
	b.own = h.origin()
	begin := func() {
		b.visit(h.host, base)
		b.visit(h.host, base+"identify/")
		b.until("the form", ready)
	}
	begin()
	b.do("refuse", chromedp.Evaluate[chromedp.Void](`caches.open = () => Promise.reject(new DOMException("", "SecurityError"))`))
	b.do("keep", chromedp.Click(chromedp.CSS(keepGo)))
	b.waitsFor("keeps nothing for this site")

	begin()
	b.do("fill", chromedp.Evaluate[chromedp.Void](`(() => {
		let left = 3;
		const put = Cache.prototype.put;
		Cache.prototype.put = async function (address, response) {
			const piece = (await response.clone().json()).length > 2; // a roll is kept before it
			if (piece && left-- <= 0) throw new DOMException("", "QuotaExceededError");
			return put.call(this, address, response);
		};
	})()`))
	b.do("keep", chromedp.Click(chromedp.CSS(keepGo)))
	b.waitsFor("There is no room for more")
	if text := see[string](b, keepSaid); !strings.Contains(text, "3 of ") {
		t.Errorf("three pieces were kept, and it says %s", text)
	}

	begin()
	b.waitsFor("3 of ")
	h.does(pieceFaults["lost"].does)
	b.do("keep", chromedp.Click(chromedp.CSS(keepGo)))
	b.waitsFor("newer than this page")
	let := make(chan struct{})
	h.does(func(w http.ResponseWriter, _ *http.Request, content []byte) {
		<-let
		send(w, content)
	})
	b.do("keep", chromedp.Click(chromedp.CSS(keepGo)))
	b.until("the bar", `document.querySelector("[data-keep-bar]").getClientRects().length > 0`)
	b.do("stop", chromedp.Click(chromedp.CSS(`[data-keep-stop]`)))
	b.waitsFor("Stopped. 3 of ")
	close(let)
	h.does(nil)
	b.do("keep", chromedp.Click(chromedp.CSS(keepGo)))
	b.waitsFor("The whole chart is on this device")
}
