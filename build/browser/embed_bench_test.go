//go:build browser

package browser

import (
	"net/http/httptest"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// typing at once: the readings are there as soon as the form is, so what is timed is the
// finder and not the person.
const typingAtOnce = `(() => {
	window.times = {};
	const painted = (what) => requestAnimationFrame(() => setTimeout(() => { times[what] ??= performance.now(); }));
	addEventListener("joint-answer", () => painted("whole"));
	const look = () => {
		const root = document.querySelector("joint-finder")?.shadowRoot;
		if (!root?.querySelector("[data-form]")) return setTimeout(look, 5);
		painted("form");
		for (const [quantity, readings] of [["cap", "26.95; 26.97"], ["across", "81.75; 81.78; 81.76"]]) {
			const field = root.querySelector("[data-quantity=" + quantity + "]");
			field.querySelector("[data-reading]").value = readings;
			field.querySelector("[data-add]").click();
		}
		if (root.querySelector(".verdict__stamp") && root.querySelector(".verdict--identified")) painted("verdict");
	};
	look();
})()`

// BenchmarkEmbed is the median of nine first visits to a page of somebody else's with the
// finder in it, by the phone of [BenchmarkSpeed]: until its form is painted, until the first
// verdict is, with readings that are there at once, and until the answer is told, which
// waits for the late part. ns/op means nothing here.
//
//	go test -tags browser -run '^$' -bench Embed -benchtime 1x ./build/browser
func BenchmarkEmbed(b *testing.B) {
	host := packedHost(b)
	s := newShop(b)
	s.policy = strings.ReplaceAll(s.policy, origin, host)
	s.pages["/"] = s.page(`<script src="typing.js" async></script>`, strings.ReplaceAll(strings.Replace(examples(b, "html")[0], `unit="mm"`, `unit="mm" hold="outside-clip"`, 1), origin, host))
	s.pages["/typing.js"] = typingAtOnce
	server := httptest.NewServer(s)
	defer server.Close()
	type times struct{ Form, Verdict, Whole float64 }
	var all []times
	for b.Loop() {
		for range visits {
			t := openTab(b)
			t.phone()
			link := &network.Conditions{Latency: roundTrip, DownloadThroughput: bytesPerSecond, UploadThroughput: bytesPerSecond}
			_, err := chromedp.Call(t.ctx, network.EmulateNetworkConditionsByRule,
				network.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*network.Conditions{link}})
			if err == nil {
				_, err = chromedp.Call(t.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: slower})
			}
			if err != nil {
				b.Fatal(err)
			}
			t.do("open the shop", chromedp.Navigate(server.URL+"/"))
			t.until("the whole answer", `window.times?.whole && times.verdict`)
			all = append(all, see[times](t, `({Form: times.form, Verdict: times.verdict, Whole: times.whole})`))
			if err := chromedp.Cancel(t.ctx); err != nil {
				b.Fatal(err)
			}
		}
	}
	for name, part := range map[string]func(times) float64{
		"form-ms":    func(t times) float64 { return t.Form },
		"verdict-ms": func(t times) float64 { return t.Verdict },
		"told-ms":    func(t times) float64 { return t.Whole },
	} {
		var list []float64
		for _, t := range all {
			list = append(list, part(t))
		}
		slices.Sort(list)
		b.ReportMetric(list[len(list)/2], name)
		b.Logf("%s: %.0f", name, list)
	}
}
