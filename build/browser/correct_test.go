//go:build browser

package browser

import (
	"io/fs"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	cdpbrowser "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/tables"
	"capspan/tables/compare"
)

const (
	correctReady = `document.querySelector("[data-correct][data-ready]")`
	corrected    = `!document.querySelector("[data-out]").hidden`
)

// fill writes into a field of the form as somebody would, or ticks and picks it.
func (b *tab) fill(field, value string) {
	b.t.Helper()
	b.do("fill "+field, chromedp.Evaluate[chromedp.Void](`(e => {
		if (e.type === "radio" || e.type === "checkbox") e.click();
		else { e.value = `+quote(value)+`; e.dispatchEvent(new Event("input", {bubbles: true})); e.dispatchEvent(new Event("change", {bubbles: true})); }
	})(document.querySelector(`+quote(field)+`))`))
}

// correct opens the form for a value and fills it; pairs are a field and what is put there.
func (b *tab) correct(fragment string, pairs ...string) {
	b.t.Helper()
	b.open("/404.html")
	b.open("/contribute/correct/#" + fragment)
	b.until("the form", correctReady)
	for i := 0; i < len(pairs); i += 2 {
		b.fill(pairs[i], pairs[i+1])
	}
}

func (b *tab) makeLine() {
	b.t.Helper()
	b.do("make the line", chromedp.SendKeys(chromedp.CSS(`[data-form] [type="submit"]`), kb.Enter))
}

// From a row on a phone to a patch that git applies: the reader measured a cap, and that is
// all that changes. The readings are invented.
func TestCorrectFromRowToPatch(t *testing.T) {
	b := openTab(t)
	b.phone()
	b.open("/joint/1310/")
	b.do("correct the cap", chromedp.Click(chromedp.CSS(`a.correct[href*="column=cap"]`)))
	b.until("the form", correctReady)
	if now := see[string](b, `document.querySelector("[data-now]").innerText`); now != "1.062 in, common practice" {
		t.Errorf("the chart is said to have %q", now)
	}
	b.fill(`[data-way][value="measured"]`, "")
	b.fill(`[data-field="tool"]`, "micrometer")
	b.fill(`[data-field="readings"]`, "1,061\n26.98 mm\n1 1/16")
	b.fill(`[data-field="on"]`, "2026-11-20")
	b.fill(`[data-field="by"]`, "red-shed")
	b.makeLine()
	b.until("the correction", corrected)
	if wide := see[int](b, `document.documentElement.scrollWidth`); wide > 360 {
		t.Errorf("the page is %d px wide on a phone of 360", wide)
	}
	if focused := see[string](b, `document.activeElement.getAttribute("aria-labelledby")`); focused != "correction" {
		t.Errorf("the focus is not on what came out but on %q", focused)
	}
	const want = `    cap:    {is: 1.062, basis: common-practice, others: [{is: 27, unit: mm, basis: memory}], measured: [{readings: [1.061 in, 26.98 mm, 1 1/16 in], tool: micrometer, condition: used, on: 2026-11-20, by: red-shed}]}`
	if put := see[string](b, `document.querySelector("[data-put]").textContent`); put != want {
		t.Errorf("put %q\nwant %q", put, want)
	}
	if says := see[string](b, `document.querySelector("[data-worth]").innerText`); !strings.Contains(says, "from 3 readings with a micrometer") || !strings.Contains(says, "agrees with 1.062 in as printed") {
		t.Errorf("the readings are worth %q", says)
	}
	line := lineOf(t, "joints-inch.yaml", "    cap:    {is: 1.062, basis: common-practice, others: [{is: 27, unit: mm, basis: memory}]}", "1310")
	if edit := see[string](b, `document.querySelector("[data-edit-there]").href`); edit != "https://code.example.org/three-gauge/chart/edit/main/tables/joints-inch.yaml#L"+line {
		t.Errorf("edited at %s, want line %s", edit, line)
	}
	letter, err := url.Parse(see[string](b, `document.querySelector("[data-mail-there]").href`))
	if err != nil {
		t.Fatal(err)
	}
	if body := letter.Query().Get("body"); letter.Scheme != "mailto" || letter.Opaque != "workshop@example.org" || !strings.Contains(body, "tables/joints-inch.yaml:"+line) || !strings.Contains(body, want) {
		t.Errorf("the mail is %s", letter)
	}

	older, newer := b.applied(t)
	d := compare.Sets(older, newer)
	if len(d.Changes) != 1 || d.Changes[0].Path() != "joints-inch/1310.cap" || len(d.Changes[0].Parts) != 1 || d.Changes[0].Parts[0].What != "measured" ||
		d.Changes[0].Parts[0].New.Text != "1.061 in, 26.98 mm, 1 1/16 in by micrometer, used, 2026-11-20, from red-shed" {
		t.Errorf("changes %+v", d.Changes)
	}
	b.calm("the correction")
}

// lineOf is the number of the line in a row of a shipped table.
func lineOf(t *testing.T, file, line, row string) string {
	t.Helper()
	text, err := fs.ReadFile(tables.FS, file)
	if err != nil {
		t.Fatal(err)
	}
	inside := false
	for n, l := range strings.Split(string(text), "\n") {
		if id, is := strings.CutPrefix(l, "  - id: "); is {
			inside = strings.Trim(id, `"`) == row
		}
		if inside && l == line {
			return strconv.Itoa(n + 1)
		}
	}
	t.Fatalf("%s of %s has no line %q", row, file, line)
	return ""
}

// applied downloads the patch, has git apply it to the shipped tables, and loads both.
func (b *tab) applied(t *testing.T) (older, newer *tables.Set) {
	t.Helper()
	downloads, root := t.TempDir(), t.TempDir()
	if _, err := chromedp.Call(b.ctx, cdpbrowser.SetDownloadBehavior, cdpbrowser.SetDownloadBehaviorParams{
		Behavior: cdpbrowser.SetDownloadBehaviorBehaviorAllow, DownloadPath: downloads,
		BrowserContextID: chromedp.FromContext(b.ctx).BrowserContextID}); err != nil {
		t.Fatal(err)
	}
	b.do("download the patch", chromedp.Click(chromedp.CSS("[data-patch]")))
	var patch []byte
	for end := time.Now().Add(10 * time.Second); time.Now().Before(end) && len(patch) == 0; time.Sleep(20 * time.Millisecond) {
		if found, _ := filepath.Glob(downloads + "/*.patch"); len(found) == 1 {
			patch, _ = os.ReadFile(found[0])
		}
	}
	if err := os.CopyFS(filepath.Join(root, "tables"), tables.FS); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(root, "it.patch"), patch, 0o644); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"init", "-q"}, {"apply", "it.patch"}} {
		git := exec.Command("git", args...)
		git.Dir = root
		git.Env = append(os.Environ(), "GIT_CONFIG_GLOBAL="+os.DevNull, "GIT_CONFIG_SYSTEM="+os.DevNull)
		if out, err := git.CombinedOutput(); err != nil {
			t.Fatalf("git %v: %v\n%s\n%s", args, err, out, patch)
		}
	}
	older, problems := tables.Load(tables.FS)
	newer, more := tables.Load(os.DirFS(filepath.Join(root, "tables")))
	if problems.Blocked() || more.Blocked() {
		t.Fatal(problems, more)
	}
	return older, newer
}

// What is wrong is said at its field, the first of them gets the focus, and mending it
// takes the complaint away as one types.
func TestCorrectComplains(t *testing.T) {
	b := openTab(t)
	b.phone()
	b.correct("table=joints-inch&row=1310&column=across", `[data-field="is"]`, "32.19", `[data-field="at"]`, "page \u202e9")
	b.makeLine()
	error := func(name string) string {
		return see[string](b, `document.querySelector('[data-error="`+name+`"]').textContent`)
	}
	for name, want := range map[string]string{"is": "32.19 in is outside 1 to 12 in", "source": "Name the document", "at": "U+202E"} {
		if got := error(name); !strings.Contains(got, want) {
			t.Errorf("%s: %q, want %q in it", name, got, want)
		}
	}
	if field := see[string](b, `document.activeElement.dataset.field`); field != "is" {
		t.Errorf("the focus is on %q", field)
	}
	if see[bool](b, corrected) {
		t.Error("a line is shown all the same")
	}
	b.fill(`[data-field="is"]`, `3-7/32"`)
	if got := error("is"); got != "" {
		t.Errorf("mended, and still %q", got)
	}
	if got := see[string](b, `document.querySelector("[data-understood]").innerText`); got != "Understood as 3 7/32 in (≈ 81.756 mm)." {
		t.Errorf("understood %q", got)
	}
	b.fill(`[data-field="at"]`, "page 9")
	b.fill(`[data-field="source"]`, "+")
	b.fill(`[data-field="title"]`, `<img src=x onerror=window.bent=1> "A list"`)
	b.fill(`[data-field="publisher"]`, "</script><script>window.bent=1</script>")
	b.fill(`[data-field="where"]`, "javascript:window.bent=1")
	b.until("the correction", corrected)
	if see[bool](b, "window.bent === 1 || document.querySelectorAll('main img, main script').length > 0") {
		t.Error("what was typed became markup")
	}
	older, newer := b.applied(t)
	d := compare.Sets(older, newer)
	if len(d.Changes) != 2 || d.Changes[0].Path() != "joints-inch/1310.across" || d.Changes[1].Path() != "sources/img-src-x-onerror-window-bent-1" {
		t.Errorf("changes %+v", d.Changes)
	}
	b.calm("the complaints")
}

// Another row or table is chosen on the page, and the address follows; what an address names
// and is not there is said.
func TestCorrectFindsTheValue(t *testing.T) {
	b := openTab(t)
	b.correct("table=fasteners&row=no-such-row")
	trouble := `document.querySelector("[data-correct] > [data-trouble]").innerText`
	if got := see[string](b, trouble); !strings.Contains(got, "no row “no-such-row”") {
		t.Errorf("says %q", got)
	}
	b.fill("[data-table]", "flanges-male")
	b.until("the other table", `document.querySelector("[data-place]").innerText.startsWith("tables/flanges-male.yaml")`)
	if hash := see[string](b, "location.hash"); !strings.HasPrefix(hash, "#table=flanges-male&row=") {
		t.Errorf("the address is %s", hash)
	}
	b.correct("table=nowhere")
	if got := see[string](b, trouble); !strings.Contains(got, "no table “nowhere”") {
		t.Errorf("says %q", got)
	}
	if tables := see[string](b, `[...document.querySelector("[data-table]").options].map(o => o.value).join(" ")`); strings.Contains(tables, "joints-conversion") {
		t.Errorf("a table without values of its own is offered: %s", tables)
	}
	b.calm("choosing")
}

// Without script the link leads to how it is done by hand, with every file.
func TestCorrectWithoutScript(t *testing.T) {
	b := openTab(t)
	if _, err := chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
		t.Fatal(err)
	}
	b.open("/contribute/correct/#table=joints-inch&row=1310&column=cap")
	for _, want := range []string{"basis: published", "measured: [{readings:", "tables/joints-inch.yaml"} {
		if !strings.Contains(see[string](b, "document.querySelector('main').innerText"), want) {
			t.Errorf("without script the page lacks %q", want)
		}
	}
	if see[bool](b, `[...document.querySelectorAll("main input, main button, main select")].some(e => e.getClientRects().length > 0)`) {
		t.Error("a control is shown that does nothing")
	}
	b.calm("without script")
}
