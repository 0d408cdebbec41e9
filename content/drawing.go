package content

import (
	"fmt"
	"html"
	"html/template"
	"strconv"
	"strings"

	"capspan/content/figure"
)

// Words of the chart that a drawing takes.
var (
	holdNames  = []string{"outside-clip", "inside-clip", "plate", "strap", "wing", "injected", "staked", "unknown"}
	facesNames = []string{"over-caps", "groove-inner", "groove-outer", "under-plates", "hole-centres", "wing-outer"}
	yokeNames  = []string{"full-round", "inside-clip", "plate", "half-round"}
)

// drawing is one kind of figure: the parameters it takes besides alt, and how it is made. The
// maker reports what is wrong with its parameters and then returns nothing.
type drawing struct {
	takes []string
	draw  func(r *resolving, p *parameters, prefix string) template.HTML
}

var drawings = map[string]drawing{
	"hold": {[]string{"hold"}, func(r *resolving, p *parameters, prefix string) template.HTML {
		hold, ok := p.oneOf("hold", holdNames)
		if !ok {
			return ""
		}
		return r.words.Hold(prefix, hold)
	}},
	"faces": {[]string{"hold", "faces"}, func(r *resolving, p *parameters, prefix string) template.HTML {
		hold, held := p.oneOf("hold", holdNames)
		faces, known := p.oneOf("faces", facesNames)
		if !held || !known {
			return ""
		}
		return r.words.Faces(prefix, hold, faces)
	}},
	"jaws": {[]string{"hold", "faces"}, func(r *resolving, p *parameters, prefix string) template.HTML {
		hold, held := p.oneOf("hold", holdNames)
		faces, known := p.oneOf("faces", facesNames)
		if !held || !known {
			return ""
		}
		return r.words.Jaws(prefix, hold, faces)
	}},
	"section": {[]string{"hold"}, func(r *resolving, p *parameters, prefix string) template.HTML {
		hold, ok := p.oneOf("hold", holdNames)
		if !ok {
			return ""
		}
		return r.words.Section(prefix, hold)
	}},
	"yoke": {[]string{"kind"}, func(r *resolving, p *parameters, prefix string) template.HTML {
		kind, ok := p.oneOf("kind", yokeNames)
		if !ok {
			return ""
		}
		return r.words.Yoke(prefix, kind)
	}},
	"wing-cap": {nil, func(r *resolving, _ *parameters, prefix string) template.HTML { return r.words.WingCap(prefix) }},
	"joint": {[]string{"row"}, func(r *resolving, p *parameters, prefix string) template.HTML {
		row, ok := p.need("row")
		if !ok || r.chart.Figure == nil {
			return ""
		}
		joint, err := r.chart.Figure(row.value)
		if err != nil {
			r.refuse(row.at, err)
			return ""
		}
		return r.words.Joint(prefix, joint)
	}},
	"instrument": {[]string{"kind", "reading"}, drawInstrument},
}

// drawInstrument shows an instrument that reads a length such as "26.97 mm".
func drawInstrument(r *resolving, p *parameters, prefix string) template.HTML {
	kind, known := p.oneOf("kind", instruments)
	reading, given := p.need("reading")
	if !known || !given {
		return ""
	}
	digits, unit, _ := strings.Cut(reading.value, " ")
	length, err := strconv.ParseFloat(digits, 64)
	if err != nil || (unit != "mm" && unit != "in") {
		r.problem(reading.at, "bad-parameter", fmt.Sprintf("%q is no reading", reading.value), `write reading="26.97 mm" or reading="1.062 in"`)
		return ""
	}
	if unit == "in" {
		length *= figure.MMPerInch
	}
	shown := figure.Reading{Kind: kind, MM: length, Unit: unit}
	if err := shown.Check(); err != nil {
		r.problem(reading.at, "bad-parameter", err.Error())
		return ""
	}
	return r.words.Instrument(prefix, shown)
}

var instruments = []string{"digital", "dial", "vernier", "micrometer"}

// figure makes a drawing by name and numbers. Its text in the page is the caption; alt
// says what it shows to those who cannot see it.
func (r *resolving) figure(c *container) {
	list := r.attributes(c.rest, c.at)
	if len(list) == 0 || list[0].key != "" {
		r.problem(c.Pos(), "missing-parameter", `"figure" needs the name of a drawing`, hintOf("", drawingNames)...)
		return
	}
	name := list[0].value
	made, known := drawings[name]
	if !known {
		r.problem(list[0].offset, "unknown-figure", fmt.Sprintf("unknown drawing %q", name), hintOf(name, drawingNames)...)
		return
	}
	p := r.parameters(name, c.Pos(), list[1:], 0, append([]string{"alt"}, made.takes...)...)
	alt, described := p.keyed["alt"]
	if !described || alt.value == "" {
		r.problem(c.Pos(), "missing-alt", fmt.Sprintf("figure %q has no text for those who cannot see it", name), `write alt="what it shows"`)
	}
	r.figures++
	svg := made.draw(r, p, ordinal(r.figures))
	if svg == "" {
		return
	}
	c.html = fmt.Sprintf("<figure class=\"figure\" aria-label=\"%s\">\n%s\n", html.EscapeString(alt.value), svg)
}

// drawingNames are listed in the order a page would choose them.
var drawingNames = []string{"hold", "faces", "jaws", "section", "yoke", "wing-cap", "joint", "instrument"}
