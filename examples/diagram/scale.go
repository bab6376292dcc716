package diagram

import (
	"strings"

	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// heights is the scale of heights, the same for all sets of a picture.
type heights struct{ low, high units.Length }

// scaleHeights reaches from the deck, or from what lies lowest under it, to the highest block.
func scaleHeights(views []view) heights {
	var h heights
	for _, v := range views {
		r := v.rig
		h.low = min(h.low, r.Idler.Height, r.Run.LowerStop)
		h.high = max(h.high, r.HeadBlock, r.DeadEnds, r.LoftBlocks)
		for _, l := range r.Loft {
			h.high = max(h.high, l.Height)
			for _, m := range l.Mules {
				h.high = max(h.high, m.Height)
			}
		}
	}
	return h
}

// y is where a height stands in the picture.
func (h heights) y(at units.Length) float64 {
	return elevationBottom - units.Ratio(at-h.low, h.high-h.low)*(elevationBottom-elevationTop)
}

// marks are the heights that are marked: round ones, not too close.
func (h heights) marks(sys units.System) (marks []units.Length) {
	step := units.Foot
	if sys == units.Metric {
		step = units.Metre
	}
	step = rounded(step, func(l units.Length) bool { return h.y(0)-h.y(l) >= 26 })
	for at := units.Length(0); at <= h.high; at += step {
		marks = append(marks, at)
	}
	return marks
}

// scale writes the heights at the left.
func (h heights) scale(pic *svg.Picture, sys units.System) {
	for _, at := range h.marks(sys) {
		pic.Text(svg.Point{X: 46, Y: h.y(at) + 4}, strings.TrimSuffix(sys.FormatPlaces(at, 0), " "+sys.Symbol(at)), svg.Letter{Size: 11, Anchor: svg.End})
	}
	pic.Text(svg.Point{X: 20, Y: (elevationTop + elevationBottom) / 2}, "height above the deck, "+sys.Symbol(units.Length(0)),
		svg.Letter{Size: 11, Anchor: svg.Middle, Up: true})
}

// grid draws a faint line behind the set at each of them; the deck is a stronger one.
func (p panel) grid() {
	for _, at := range p.marks(p.sys) {
		pen := svg.Pen{Colour: svg.Faint, Width: 0.8}
		if at == 0 {
			pen.Width = 3
		}
		p.pic.Line(svg.Point{X: p.x - 8, Y: p.y(at)}, svg.Point{X: p.x + elevationWide - 8, Y: p.y(at)}, pen)
	}
}

// rounded makes a quantity larger until it will do: 1, 2, 5, 10 times and so on.
func rounded[Q units.Quantity](q Q, will func(Q) bool) Q {
	for _, times := range []float64{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 1e4, 2e4, 5e4, 1e5} {
		if will(Q(times) * q) {
			return Q(times) * q
		}
	}
	return 1e6 * q
}

// forces is the scale of forces: how much so long an arrow is. At the rail, where pulls are most often small, arrows are
// some times as long.
type forces struct {
	per    units.Force
	atRail float64
}

// How long arrows are at the most.
const (
	arrowLong = 96.0 // of the weight of the heaviest body, with what the hand line adds to it
	railLong  = 70.0 // of what acts at the rail
)

func scaleForces(views []view) forces {
	f := forces{atRail: 0.1}
	var most units.Force
	for _, v := range views {
		f.per = max(f.per, v.heaviest+v.rig.Idler.Mass.Weight(units.StandardGravity)/2+v.rig.Idler.Base)
		most = max(most, v.run.Pull, v.load(purchase.IdlerBlock).Size(), v.hand.Greatest())
	}
	for _, times := range []float64{0.2, 0.5, 1, 2, 4, 5, 10} {
		if times*f.long(most) <= railLong {
			f.atRail = times
		}
	}
	return f
}

// long is how long an arrow is.
func (f forces) long(force units.Force) float64 { return units.Ratio(force, f.per) * arrowLong }

// key says how long an arrow is for how much, and which kinds of them there are.
func (f forces) key(pic *svg.Picture, sys units.System) {
	unit := units.Newton
	if sys == units.US {
		unit = units.PoundForce
	}
	x := 16.0
	say := func(text string, long float64, pen svg.Pen) {
		pic.Text(svg.Point{X: x, Y: 50}, text, plain)
		x += plain.Width(text) + 8
		pic.Arrow(svg.Point{X: x, Y: 46}, svg.Point{X: x + long, Y: 46}, pen)
		x += long + 16
	}
	round := rounded(unit, func(u units.Force) bool { return f.long(u) >= 36 })
	say("Arrows: so long is "+sys.Format(round), f.long(round), pull)
	if f.atRail != 1 {
		round := rounded(unit, func(u units.Force) bool { return f.long(u)*f.atRail >= 28 })
		say("at the rail "+sys.Format(round), f.long(round)*f.atRail, pull)
	}
	say("weight", 30, weight)
	say("hand", 30, hand)
}

// Ropes are grey; what acts is stronger: pulls of ropes, weights, and the hand.
var (
	rope     = svg.Pen{Width: 1.2, Colour: svg.Grey}
	bundle   = svg.Pen{Width: 2.4, Colour: svg.Grey}
	handLine = svg.Pen{Width: 1.4, Colour: svg.Grey, Dash: "6 2.5"}
	edge     = svg.Pen{Width: 1.3}
	pull     = svg.Pen{Width: 2, Colour: svg.Blue}
	weight   = svg.Pen{Width: 2.6, Colour: svg.Red}
	hand     = svg.Pen{Width: 3.2}
)

// say writes a force as a person would: to a pound, or to ten newtons.
func (v view) force(f units.Force) string {
	if v.sys == units.Metric {
		return v.sys.FormatPlaces(f, 2)
	}
	return v.sys.FormatPlaces(f, 0)
}

// bare is the same without its unit.
func (v view) bare(f units.Force) string {
	return strings.TrimSuffix(v.force(f), " "+v.sys.Symbol(f))
}

// shorten cuts words that are too long for their place.
func shorten(text string, wide float64, l svg.Letter) string {
	if l.Width(text) <= wide {
		return text
	}
	letters := []rune(text)
	for len(letters) > 0 && l.Width(string(letters)+"...") > wide {
		letters = letters[:len(letters)-1]
	}
	return strings.TrimSpace(string(letters)) + "..."
}
