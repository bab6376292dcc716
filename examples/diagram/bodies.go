package diagram

import (
	"strconv"
	"strings"

	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// bodyTop is where a body that is cut free stands, so that arrows have room over it.
const bodyTop = bodiesTop + 154

// head writes over a body what it is, and what is to be said of it.
func (p panel) head(x float64, body string, l svg.Letter, words ...string) {
	p.pic.Text(svg.Point{X: x, Y: bodiesTop + 12}, body, name)
	for i, text := range words {
		p.pic.Text(svg.Point{X: x, Y: bodiesTop + 27 + 13*float64(i)}, text, l)
	}
}

// batten draws the batten cut free: the lift lines pull it up, the weight of what it carries pulls it down at its centre of gravity.
func (p panel) batten(x float64) {
	const wide = 182.0
	along := func(at units.Length) float64 { return x + 8 + units.Ratio(at, p.rig.Batten.Length)*wide }
	p.pic.Line(svg.Point{X: x + 8, Y: bodyTop}, svg.Point{X: x + 8 + wide, Y: bodyTop}, svg.Pen{Width: 5})
	tip := p.push(svg.Point{X: along(min(max(p.centre, 0), p.rig.Batten.Length)), Y: bodyTop}, -p.carried, weight)

	var up units.Force
	room, widest := wide, 0.0
	tips := make([]svg.Point, len(p.lift))
	for i, line := range p.lift {
		pulls := atBatten(line)
		tips[i] = p.push(svg.Point{X: along(p.rig.Batten.Lines[i].At), Y: bodyTop - 2}, pulls, pull)
		up += pulls
		widest = max(widest, small.Width(p.bare(pulls)))
		if i > 0 {
			room = min(room, tips[i].X-tips[i-1].X)
		}
	}
	for i, line := range p.lift {
		over, place := svg.Letter{Size: 11, Anchor: svg.Middle}, svg.Point{X: tips[i].X, Y: tips[i].Y - 5}
		if room <= widest+3 {
			over.Up, over.Anchor = true, svg.Start
			place.X += 4
		}
		if room > 12 {
			p.pic.Text(place, p.bare(atBatten(line)), over)
		}
	}
	under, text := svg.Letter{Size: 11, Anchor: svg.Middle}, "carries "+p.force(p.carried)
	half := under.Width(text) / 2
	p.pic.Text(svg.Point{X: min(max(tip.X, x+half), x+16+wide-half), Y: tip.Y + 15}, text, under)
	p.head(x, "Batten", small, "up "+p.force(up)+", down "+p.force(p.carried))
}

// arbor draws the arbor cut free: lift lines and hand line pull it up; its weight, and the hand line under it, pull it down.
func (p panel) arbor(x float64) {
	const apart, half, high = 16.0, 30.0, 42.0
	middle := x + 120.0
	p.pic.Rect(svg.Box{X: middle - half, Y: bodyTop, W: 2 * half, H: high}, svg.Sand, edge)

	// Over it the parts stand as they do in the elevation.
	lift, line := p.liftAtArbor(), at(p.hand, purchase.ArborTop)
	over := append(append([]units.Force{line[0]}, lift...), line[1:]...)
	next := middle + apart*float64(len(over)-1)/2
	var up units.Force
	for _, pulls := range over {
		p.push(svg.Point{X: next, Y: bodyTop}, pulls, pull)
		next -= apart
		up += pulls
	}

	tip := p.push(svg.Point{X: middle, Y: bodyTop + high/2}, -p.weight, weight)
	down := p.weight
	under := p.underArbor()
	for i, r := range under {
		p.push(svg.Point{X: middle + 20 - 12*float64(len(under)-1-i) - 16*min(1, float64(len(under)-1-i)), Y: bodyTop + high}, -r.top, pull)
		down += r.top
	}

	lines := strconv.Itoa(len(p.lift)) + " lines"
	if len(p.lift) == 1 {
		lines = "the line"
	}
	p.beside(middle+half+10, bodiesTop+62, svg.Start, "from head block", lines, p.force(lift[0]), "hand line", p.force(line[0]))
	away := []string{"to the dead ends"}
	if p.rig.Purchase == purchase.Triple {
		away[0] = "round the beam"
	}
	if len(lift) > 1 {
		away = append(away, lines, p.all(lift[1:]))
	}
	if len(line) > 1 {
		away = append(away, "hand line", p.all(line[1:]))
	}
	if len(away) > 1 {
		p.beside(middle-half-10, bodiesTop+62, svg.End, away...)
	}
	for i, r := range under {
		if last := len(under) - 1; i < last {
			p.beside(middle-half-6, bodyTop+high+13+28*float64(i), svg.End, "", "rail "+r.name, p.force(r.top))
		} else {
			p.beside(middle+half+6, bodyTop+high+13, svg.Start, "", r.name, p.force(r.top))
		}
	}
	// Under its arrow, or beside it where the ropes' arrows are longer.
	says, centred, y := "weighs "+p.force(p.weight), svg.Letter{Size: 11, Anchor: svg.Middle}, max(tip.Y+15, bodyTop+high+42)
	aside := half + 10 + centred.Width(says)/2
	p.write(says, centred, svg.Point{X: middle, Y: y}, svg.Point{X: middle - aside, Y: y}, svg.Point{X: middle + aside, Y: y}, svg.Point{X: middle - aside, Y: y - 28})
	p.head(x, "Arbor", small, "up "+p.force(up)+", down "+p.force(down))
}

// underArbor are the parts of the hand line that pull at the arbor's foot.
func (v view) underArbor() []railRope {
	ropes := v.railRopes()
	return ropes[:len(ropes)-1] // the outer one goes past
}

// beside writes lines of words beside an arrow: the first and every second of those after it are what it is, and pale, and the others
// how much.
func (p panel) beside(x, y float64, anchor svg.Anchor, words ...string) {
	for i, text := range words {
		l := svg.Letter{Size: 11, Anchor: anchor}
		switch {
		case i == 0 && text == "":
			continue
		case i == 0:
			l.Italic = true
		case i%2 == 1:
			l.Colour = svg.Grey
		}
		p.pic.Text(svg.Point{X: x, Y: y}, text, l)
		y += 13
	}
}

// all writes several forces that add up.
func (v view) all(forces []units.Force) string {
	var text strings.Builder
	for _, f := range forces[:len(forces)-1] {
		text.WriteString(v.bare(f) + " + ")
	}
	return text.String() + v.force(forces[len(forces)-1])
}
