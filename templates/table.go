package templates

import (
	"html"
	"html/template"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/templates/words"
)

// tableHTML writes the rows of a table page by hand. Whatever comes from the chart
// goes through text or attr; the literals here are the only markup.
func tableHTML(t *Table, set *Set) template.HTML {
	w := &tableWriter{words: set.words, lang: set.Lang}
	w.raw(`<table class="chart-table" data-table><caption>`)
	w.chartText(t.Title)
	w.raw(` <span class="chart-table__version">`)
	w.word("table.version-short", "version", t.Version)
	w.raw(`</span></caption>`)
	w.head(t)
	w.raw("<tbody>")
	for _, row := range t.Rows {
		w.row(t, row)
	}
	w.raw("</tbody></table>")
	return template.HTML(w.b.String())
}

// tableWords are what this file says of the catalogue.
var tableWords = []words.Use{
	tableWord("table.row"), tableWord("table.basis"), tableWord("table.other-end"), tableWord("table.version-short", "version"),
	tableWord("table.also", "names"), tableWord("cell.elsewhere", "figure"),
}

func tableWord(key string, names ...string) words.Use {
	return words.Use{Key: key, Names: names, Pos: diag.Pos{File: "templates/table.go"}}
}

type tableWriter struct {
	b     strings.Builder
	words *words.Catalogue
	lang  func(text string) template.HTMLAttr // of a text of the chart
}

func (w *tableWriter) raw(markup string) { w.b.WriteString(markup) }

// text writes words between tags or inside a quoted attribute: EscapeString covers
// <, >, &, ' and ", which is all that either place needs.
func (w *tableWriter) text(words string) { w.b.WriteString(html.EscapeString(words)) }

// chartText writes a text of the chart, in a span where it is in another language.
func (w *tableWriter) chartText(text string) {
	lang := string(w.lang(text))
	if lang == "" {
		w.text(text)
		return
	}
	w.raw("<span" + lang + ">")
	w.text(text)
	w.raw("</span>")
}

func (w *tableWriter) word(key string, named ...any) { w.text(w.words.Say(key, named...)) }

func (w *tableWriter) attr(name, value string) {
	w.raw(" " + name + `="`)
	w.text(value)
	w.raw(`"`)
}

// link writes an anchor, or the bare words when there is nowhere safe to go.
func (w *tableWriter) link(l Link) {
	if !plainAddress(l.Href) {
		w.text(l.Text)
		return
	}
	w.raw("<a")
	w.attr("href", l.Href)
	w.raw(string(w.lang(l.Text)) + ">")
	w.text(l.Text)
	w.raw("</a>")
}

// plainAddress reports whether an address stays a page: rooted, a fragment, or the
// web. Anything with another scheme, such as a script, is refused.
func plainAddress(href string) bool {
	if href == "" || strings.HasPrefix(href, "//") || strings.HasPrefix(href, `/\`) {
		return false
	}
	return href[0] == '/' || href[0] == '#' || strings.HasPrefix(href, "https://")
}

func (w *tableWriter) head(t *Table) {
	w.raw(`<thead><tr><th scope="col" data-sort="text">`)
	w.word("table.row")
	w.raw("</th>")
	for _, c := range t.Columns {
		w.raw(`<th scope="col"`)
		if c.Unit != "" {
			w.raw(` class="num" data-sort="number"`)
		} else {
			w.raw(` data-sort="text"`)
		}
		w.raw(">")
		if c.Method.Href != "" {
			w.link(Link{Href: c.Method.Href, Text: c.Label})
		} else {
			w.chartText(c.Label)
		}
		if c.Unit != "" {
			w.raw(`<span class="unit">, `)
			w.text(c.Unit)
			w.raw("</span>")
		}
		w.raw("</th>")
	}
	w.raw(`<th scope="col" data-sort="text">`)
	w.word("table.basis")
	w.raw("</th></tr></thead>")
}

func (w *tableWriter) row(t *Table, row TableRow) {
	w.raw("<tr")
	if row.Anchor != "" {
		w.attr("id", row.Anchor)
	}
	w.attr("data-words", row.Search)
	w.attr("data-caps", strings.Join(row.Caps, " "))
	w.attr("data-acrosses", strings.Join(row.Acrosses, " "))
	if len(row.Holds) > 0 {
		w.attr("data-holds", strings.Join(row.Holds, " "))
	}
	w.raw(`><th scope="row">`)
	w.link(row.Row)
	if len(row.Also) > 0 {
		w.raw(`<span class="also">`)
		w.word("table.also", "names", strings.Join(row.Also, ", "))
		w.raw("</span>")
	}
	w.raw("</th>")
	for i, cells := range row.Cells {
		if i < len(t.Columns) && t.Columns[i].Unit != "" {
			w.raw(`<td class="num">`)
		} else {
			w.raw("<td>")
		}
		for j, cell := range cells {
			if j > 0 {
				w.raw(`<span class="other-end">`)
				w.word("table.other-end")
				w.raw("</span>")
			}
			w.cell(cell, row)
		}
		w.raw("</td>")
	}
	w.raw("<td>")
	w.basis(row.Basis)
	if row.Anchor != "" { // no page of its own names them
		w.notes(row.titles()...)
		w.notes(row.Note)
		for _, measured := range row.Says {
			w.raw(`<span class="note chart-table__measured">`)
			w.text(measured)
			w.raw("</span>")
		}
		w.correct(row.Correct)
	}
	w.raw("</td></tr>")
}

// correct writes the way to correct a value; its name says of what.
func (w *tableWriter) correct(l Link) {
	if !plainAddress(l.Href) {
		return
	}
	w.raw(`<a class="correct"`)
	w.attr("href", l.Href)
	w.attr("aria-label", l.Text+": "+l.Note)
	w.raw(">")
	w.text(l.Text)
	w.raw("</a>")
}

// titles are those of the sources of the figures that have the row's basis.
func (row TableRow) titles() []string {
	var all []string
	for _, c := range slices.Concat(row.Cells...) {
		for _, title := range titles(c.Sources) {
			if c.Basis == row.Basis && !slices.Contains(all, title) {
				all = append(all, title)
			}
		}
	}
	return all
}

func titles(sources []Link) []string {
	var all []string
	for _, source := range sources {
		all = append(all, source.Text)
	}
	return all
}

// notes writes each that says something on a line of its own.
func (w *tableWriter) notes(notes ...string) {
	for _, note := range notes {
		if note != "" {
			w.raw(`<span class="note"` + string(w.lang(note)) + `>`)
			w.text(note)
			w.raw("</span>")
		}
	}
}

// cell says a basis only where it differs from the row's, so that the eye finds the
// figures that are better founded than the rest.
func (w *tableWriter) cell(c Cell, row TableRow) {
	w.chartText(c.Text)
	if c.Converted != "" {
		w.raw(`<span class="converted">≈ `)
		w.text(c.Converted)
		w.raw("</span>")
	}
	w.notes(c.Note, c.Measured)
	if c.Basis != "" && c.Basis != row.Basis {
		w.basis(c.Basis)
		if row.Anchor != "" {
			w.notes(titles(c.Sources)...)
		}
	}
	for _, other := range c.Others {
		w.notes(w.words.Say("cell.elsewhere", "figure", other.Text))
		if row.Anchor != "" && !slices.Equal(titles(other.Sources), titles(c.Sources)) {
			w.notes(titles(other.Sources)...)
		}
	}
}

func (w *tableWriter) basis(words string) {
	if words == "" {
		return
	}
	w.raw("<span")
	w.attr("class", "basis basis--"+kind(w.words, words))
	w.raw(">")
	w.text(words)
	w.raw("</span>")
}
