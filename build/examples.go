package build

import (
	"strings"

	"capspan/content"
	"capspan/static/matcher"
)

// exampleCore puts the guide's worked examples to the core while the site is built, so
// that their results are the chart's of today. The core is loaded when the first page
// asks; pages are read one after the other, so one is enough.
type exampleCore struct {
	*site
	core       *matcher.Matcher
	err        error
	remembered *Memory
	hasty      bool // an answer of another chart will do
	stale      bool // and one did
}

func (e *exampleCore) load() (*matcher.Matcher, error) {
	if e.core == nil && e.err == nil {
		e.core, e.err = e.inCore()
	}
	return e.core, e.err
}

// answer is what the core says to a query in the form of the identify page's address.
func (e *exampleCore) answer(address string) (content.Answer, error) {
	key := answerKey{e.assets.Path("matcher.js") + e.assets.Path("matcher-late.js"), e.base, address}
	if e.remembered != nil {
		before, known := e.remembered.answers[key]
		if known && (e.hasty || before.chart == e.version.Name()) {
			e.stale = e.stale || before.chart != e.version.Name()
			return before.answer, nil
		}
	}
	made, err := e.ask(address)
	if err == nil && e.remembered != nil {
		e.remembered.answers[key] = answerOf{e.version.Name(), made}
	}
	return made, err
}

func (e *exampleCore) ask(address string) (content.Answer, error) {
	core, err := e.load()
	if err != nil {
		return content.Answer{}, err
	}
	query, complaints, err := core.Decode(address)
	if err != nil {
		return content.Answer{}, err
	}
	if len(complaints) > 0 {
		return content.Answer{}, &content.Refusal{Rule: "bad-query", Fact: "the query cannot be read: " + complaints[0].Says}
	}
	answer, err := core.Identify(query)
	if err != nil {
		return content.Answer{}, err
	}
	made := content.Answer{Verdict: answer.Verdict}
	for _, size := range answer.Sizes {
		for _, ref := range size.Rows {
			made.Rows = append(made.Rows, rowOf(ref))
		}
	}
	w := &guideWriter{}
	w.raw(`<div class="answer"><div class="verdict verdict--`).text(answer.Verdict).raw(`"><p class="verdict__stamp">`)
	w.text(e.word("verdict." + string(answer.Verdict))).raw(`</p><p class="verdict__head">`).text(answer.Says.Head).raw("</p></div>")
	w.sentences(e.word("guide.why"), answer.Says.Because)
	for _, reading := range answer.Readings {
		if len(reading.SetAside) > 0 {
			w.raw("<p>").text(e.word("guide.not-used", "readings", strings.Join(reading.SetAside, ", "), "why", reading.Why)).raw("</p>")
		}
	}
	for _, slip := range answer.Slips {
		w.raw("<p>").text(slip.Says).raw("</p>")
	}
	e.rowsLeft(w, made.Rows)
	w.sentences(e.word("guide.next"), answer.Says.Next)
	w.raw(`<p class="hint">`).text(e.workedOut()).raw(" ")
	w.link(e.at("/identify/")+"#"+address, e.word("guide.open-readings")).raw("</p></div>")
	made.HTML = w.html()
	return made, nil
}

// workedOut says which chart an answer rests on; in a large one, that changes with every
// row of it, only when.
func (e *exampleCore) workedOut() string {
	if e.large() {
		return e.word("guide.worked-out-then")
	}
	return e.word("guide.worked-out", "chart", e.version.Name())
}

// rowsLeft names the rows an answer leaves, with their figures.
func (e *exampleCore) rowsLeft(w *guideWriter, ids []string) {
	const most = 6
	if len(ids) == 0 {
		return
	}
	w.raw("<p>").text(e.word("guide.left")).raw(" ")
	for n, id := range ids[:min(len(ids), most)] {
		if n > 0 {
			w.raw("; ")
		}
		link := e.rowLink(e.set.Find(id))
		w.link(link.Href, link.Text).text(" (" + link.Note + ")")
	}
	if len(ids) > most {
		w.text("; " + e.word("guide.more-left", "n", len(ids)-most))
	}
	w.raw(".</p>")
}

func (w *guideWriter) sentences(title string, says []string) {
	if len(says) == 0 {
		return
	}
	w.raw("<p><strong>").text(title).raw("</strong></p><ul>")
	for _, s := range says {
		w.raw("<li>").text(s).raw("</li>")
	}
	w.raw("</ul>")
}
