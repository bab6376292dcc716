package crosscheck

import (
	"math"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// hung is a batten with what it carries at one trim, in plain numbers and in SI. It is
// made from the description, not from what package load makes of that, so that a slip
// there does not come back here.
type hung struct {
	length  float64
	bending float64 // EI
	section float64 // section modulus
	ropes   []rope
	loads   []stretch // the bare batten, then all that is carried
}

// rope is a lift line: where it is made off, how much lower than the level batten its
// unstretched end hangs, and its stiffness, +Inf where it does not stretch.
type rope struct{ at, long, spring float64 }

// stretch is a weight from one place to another. Its weight per length goes straight from
// 1−taper to 1+taper of the mean. Where both places are equal it is a point.
type stretch struct{ from, to, weight, taper float64 }

func (s stretch) centre() float64 { return (s.from+s.to)/2 + s.taper*(s.to-s.from)/6 }

// per is the weight per length at a place inside.
func (s stretch) per(x float64) float64 {
	return s.weight / (s.to - s.from) * (1 + s.taper*(2*(x-s.from)/(s.to-s.from)-1))
}

// hangUp takes the description apart. Formulas: tube π(D⁴−d⁴)/64 and its like, Roark's
// Formulas for Stress and Strain, table of section properties.
func hangUp(b load.Batten, h load.Hang, trim units.Length) hung {
	outer := b.Pipe.Outer.In(units.Metre)
	inner := outer - 2*b.Pipe.Wall.In(units.Metre)
	second := math.Pi / 64 * (math.Pow(outer, 4) - math.Pow(inner, 4))
	length := b.Length.In(units.Metre)
	pipe := b.Pipe.Density.In(units.KilogramPerCubicMetre) * math.Pi / 4 * (outer*outer - inner*inner) * length
	g := units.StandardGravity.In(units.MetrePerSecondSquared)
	d := hung{
		length:  length,
		bending: b.Pipe.Modulus.In(units.Pascal) * second,
		section: second / (outer / 2),
		loads:   []stretch{{from: 0, to: length, weight: (pipe + b.Fittings.In(units.Kilogram)) * g}},
	}
	for _, l := range b.Lines {
		spring := math.Inf(1)
		if l.EA > 0 {
			spring = l.EA.In(units.Newton) / l.Path.In(units.Metre)
		}
		d.ropes = append(d.ropes, rope{l.At.In(units.Metre), l.Long.In(units.Metre), spring})
	}
	for _, i := range h {
		if share := offDeck(i, trim); share > 0 {
			weight := i.Mass.In(units.Kilogram) * g * share
			d.loads = append(d.loads, stretch{i.From.In(units.Metre), i.To.In(units.Metre), weight, i.Taper})
		}
	}
	return d
}

// offDeck is the share of an item that is not on the deck.
func offDeck(i load.Item, trim units.Length) float64 {
	above := (trim - i.Below).In(units.Metre)
	height := i.Height.In(units.Metre)
	switch {
	case i.OnDeck == load.Piles:
		return math.Min(1, math.Max(0, above/height))
	case i.OnDeck == load.Stands && !(trim > i.Below+i.Height):
		return 0
	}
	return 1
}

func (d hung) weight() (sum float64) {
	for _, l := range d.loads {
		sum += l.weight
	}
	return sum
}

func (d hung) centre() float64 {
	var about float64
	for _, l := range d.loads {
		about += l.weight * l.centre()
	}
	return about / d.weight()
}

func (d hung) span() float64 { return d.ropes[len(d.ropes)-1].at - d.ropes[0].at }

// sag is the measure of deflections: that of a beam of one span is some hundredths of it.
func (d hung) sag() float64 { return d.weight() * math.Pow(d.span(), 3) / d.bending }
