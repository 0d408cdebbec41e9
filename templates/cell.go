package templates

import (
	"html/template"
	"strings"

	"capspan/build/diag"
	"capspan/templates/words"
)

// What stands on pages of joints many times over is written by hand, for the same reason as
// tables are: cells with their evidence, lists of rows, the kits of a size. The bytes are
// those that html/template would write.

// pieceWords are what this file says of the catalogue.
var pieceWords = []words.Use{
	{Key: "cell.elsewhere", Prose: true, Names: []string{"figure"}, Pos: diag.Pos{File: "templates/cell.go"}},
	pieceWord("size.also", "names"), pieceWord("size.from"), pieceWord("size.enquiry"), pieceWord("size.enquiry-for", "kit"), pieceWord("size.correct"),
}

func pieceWord(key string, names ...string) words.Use {
	return words.Use{Key: key, Names: names, Pos: diag.Pos{File: "templates/cell.go"}}
}

// asTemplate escapes as html/template does between tags and in a quoted attribute.
var asTemplate = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;", "'", "&#39;", "+", "&#43;", "\x00", "\uFFFD")

// pieces returns the functions of templates that write such pieces.
func pieces(base string, set *Set) template.FuncMap {
	write := func(what func(w *pieceWriter)) template.HTML {
		w := &pieceWriter{words: set.words, lang: set.Lang, base: base}
		what(w)
		return template.HTML(w.b.String())
	}
	return template.FuncMap{
		"cell":  func(c Cell) template.HTML { return write(func(w *pieceWriter) { w.cell(c) }) },
		"other": func(c Cell) template.HTML { return write(func(w *pieceWriter) { w.other(c) }) },
		"from": func(sources []Link, at string) template.HTML {
			return write(func(w *pieceWriter) { w.from(sources, at) })
		},
		"related": func(title, about string, links []Link) template.HTML {
			return write(func(w *pieceWriter) { w.related(title, about, links) })
		},
		"kits": func(kits []Kit) template.HTML { return write(func(w *pieceWriter) { w.kits(kits) }) },
	}
}

type pieceWriter struct {
	b     strings.Builder
	words *words.Catalogue
	lang  func(text string) template.HTMLAttr
	base  string
}

// raw writes markup of ours.
func (w *pieceWriter) raw(markup ...string) {
	for _, m := range markup {
		w.b.WriteString(m)
	}
}

func (w *pieceWriter) text(text string) { asTemplate.WriteString(&w.b, text) }

func (w *pieceWriter) word(key string, named ...any) { w.text(w.words.Say(key, named...)) }

// span writes a text in an element of that class; nothing for no text.
func (w *pieceWriter) span(class, before, text string) {
	if text != "" {
		w.raw(`<span class="`, class, `">`, before)
		w.text(text)
		w.raw("</span>")
	}
}

// href writes the attribute; an address that is none is not followed.
func (w *pieceWriter) href(address string) {
	if !plainAddress(address) {
		address = "#"
	}
	w.raw(` href="`)
	w.text(address)
	w.raw(`"`)
}

func (w *pieceWriter) link(l Link) {
	w.raw("<a")
	w.href(l.Href)
	w.raw(">")
	w.text(l.Text)
	w.raw("</a>")
}

// cell is a figure and, in the next column, why it is believed.
func (w *pieceWriter) cell(c Cell) {
	w.raw(`<td class="num"`, string(w.lang(c.Text)), ">")
	w.text(c.Text)
	w.span("converted", "≈ ", c.Converted)
	w.span("note", "", c.Note)
	w.span("note", "", c.Measured)
	for _, other := range c.Others {
		w.raw(`<span class="note">`)
		for _, piece := range w.words.Find("cell.elsewhere").Text() {
			if piece.Name == "" {
				w.text(piece.Words)
			} else {
				w.other(other)
			}
		}
		w.raw("</span>")
	}
	w.raw("</td><td>")
	if c.Basis != "" {
		w.span("basis basis--"+kind(w.words, c.Basis), "", c.Basis)
	}
	w.from(c.Sources, c.At)
	if c.Correct.Href != "" {
		w.correct("correct", c.Correct.Href, c.Correct.Text+": "+c.Correct.Note, c.Correct.Text)
	}
	w.raw("</td>")
}

// correct is the way to correct a value; its name says of what.
func (w *pieceWriter) correct(class, address, name, text string) {
	w.raw("<a")
	if class != "" {
		w.raw(` class="`, class, `"`)
	}
	w.href(address)
	w.raw(` aria-label="`)
	w.text(name)
	w.raw(`">`)
	w.text(text)
	w.raw("</a>")
}

// other is what else is printed of a figure.
func (w *pieceWriter) other(c Cell) {
	w.text(c.Text)
	if c.Converted != "" {
		w.raw(" (≈ ")
		w.text(c.Converted)
		w.raw(")")
	}
	if c.Basis != "" {
		w.raw(", ")
		w.text(c.Basis)
	}
	w.from(c.Sources, c.At)
}

// from is where a figure comes from.
func (w *pieceWriter) from(sources []Link, at string) {
	for i, source := range sources {
		if i > 0 {
			w.raw(";")
		}
		w.raw(" ")
		w.link(source)
	}
	if at != "" {
		w.raw(", ")
		w.text(at)
	}
}

// related are a list of rows or sizes under a heading; nothing when there are none.
func (w *pieceWriter) related(title, about string, links []Link) {
	if len(links) == 0 {
		return
	}
	w.raw("\n<section>\n<h2>")
	w.text(title)
	w.raw("</h2>\n<p class=\"hint\">")
	w.text(about)
	w.raw("</p>\n<ul class=\"rows\">")
	for _, l := range links {
		w.raw("\n<li>")
		w.link(l)
		if l.Note != "" {
			w.raw(" ")
			w.span("hint", "", l.Note)
		}
		w.raw("</li>")
	}
	w.raw("\n</ul>\n</section>")
}

// kits are the joints of a size, each under its id.
func (w *pieceWriter) kits(kits []Kit) {
	w.raw(`<ul class="kits">`)
	for _, kit := range kits {
		w.raw("\n<li id=\"")
		w.text(kit.ID)
		w.raw(`"><strong>`)
		w.text(kit.ID)
		w.raw("</strong>")
		if len(kit.Also) > 0 {
			w.raw(" ")
			w.span("hint", "", w.words.Say("size.also", "names", strings.Join(kit.Also, ", ")))
		}
		for _, formerly := range kit.Formerly {
			w.span("note", "", formerly)
		}
		if kit.Note != "" {
			w.raw(`<span class="note"`, string(w.lang(kit.Note)), ">")
			w.text(kit.Note)
			w.raw("</span>")
		}
		for _, from := range kit.From {
			w.raw(`<span class="note">`)
			if len(kit.From) > 1 {
				w.text(from.Of + ":")
			} else {
				w.word("size.from")
			}
			w.from(from.Sources, from.At)
			w.raw("</span>")
		}
		w.ways(kit)
		w.raw("</li>")
	}
	w.raw("\n</ul>")
}

// ways are what can be done with a kit: ask for it, or correct what is said of it.
func (w *pieceWriter) ways(kit Kit) {
	w.raw("\n<span class=\"kits__ways\">")
	w.correct("", at(w.base, "/order/")+"#row="+kit.ID, w.words.Say("size.enquiry-for", "kit", kit.ID), w.words.Say("size.enquiry"))
	if len(kit.Correct) > 0 {
		w.raw(` <span class="kits__correct">`)
		w.word("size.correct")
		for _, l := range kit.Correct {
			w.raw(" ")
			w.correct("", l.Href, l.Note, l.Text)
		}
		w.raw("</span>")
	}
	w.raw("</span>")
}
