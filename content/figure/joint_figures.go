package figure

// dimension writes the figures and marks the faces.
func (p *jointPlan) dimension() {
	p.spanLevel()
	p.capLevel()
	if !p.alike {
		p.spanUpright()
		p.capUpright()
	}
}

// spanLevel dimensions the across of the level end below the joint.
func (p *jointPlan) spanLevel() {
	a := p.level
	for _, side := range p.sides(a) {
		side.mark()
	}
	half := a.face * p.scale
	y := p.bottom + dimGap + lineSpace
	p.canvas.level(facesStyle, 0, p.centre.x-half, p.centre.x+half, y, p.centre.y+a.cap/2*p.scale, p.span(a))
	p.foot = y + lineSpace + 2
	if a.Across.Converted == "" {
		p.foot = y + 6
	}
}

// capLevel dimensions a cap of the level end, with its figure beside the line. A wing
// joint has no cap, so there is nothing to dimension.
func (p *jointPlan) capLevel() {
	a := p.level
	if a.Hold == wing || !a.Cap.known() {
		p.missingCap(a, point{p.right + dimGap, p.centre.y})
		return
	}
	x, half := p.right+dimGap, a.cap/2*p.scale
	p.standing(plainStyle, 0, p.centre.y-half, p.centre.y+half, x, p.centre.x+a.outer*p.scale, Dimension{})
	p.besideLine(point{x + 6, p.centre.y}, a.Cap)
}

// besideLine writes a cap's figure right of a place, the converted one below.
func (p *jointPlan) besideLine(at point, label Dimension) {
	p.text("", "start", point{at.x, at.y - textRise}, "⌀ "+label.Text)
	p.text("s", "start", point{at.x, at.y + lineSpace - 2}, label.bracketed())
}

// missingCap says in words why a cap has no figure.
func (p *jointPlan) missingCap(a arm, at point) {
	words := p.say("cap-not-known")
	if a.Hold == wing {
		words = p.say("no-round-cap")
	}
	p.text("s", "start", point{at.x, at.y - textRise}, words)
}

// spanUpright dimensions the across of the upright end, left of the joint.
func (p *jointPlan) spanUpright() {
	a := p.upright
	for _, side := range p.sides(a) {
		side.mark()
	}
	half := a.face * p.scale
	x := p.left - dimGap - lineSpace/2
	p.standing(facesStyle, 1, p.centre.y-half, p.centre.y+half, x, p.centre.x-a.cap/2*p.scale, p.span(a))
}

// capUpright dimensions the top cap: its line runs on to the right and carries the
// figure where nothing else is drawn.
func (p *jointPlan) capUpright() {
	a := p.upright
	y := p.top - dimGap
	half := a.cap / 2 * p.scale
	if a.Hold == wing || !a.Cap.known() {
		p.missingCap(a, point{p.centre.x + half, y})
		return
	}
	p.canvas.level(plainStyle, 1, p.centre.x-half, p.centre.x+half, y, p.centre.y-a.outer*p.scale, Dimension{})
	start := p.centre.x + half
	p.line(tag{class: "h"}, point{start, y}, point{start + 14 + textWidth("⌀ "+a.Cap.Text), y})
	p.besideLine(point{start + 14, y}, a.Cap)
}
