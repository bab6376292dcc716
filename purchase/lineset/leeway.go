package lineset

import (
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// The bounds of a state: on the imbalance to both sides, in newtons, and on what holds the batten down about its first
// and its last lift line, as mass times arm in kilogram metres.
const (
	battenHeavy = iota
	arborHeavy
	aboutFirst
	aboutLast
	bounds
)

// leeway is how much one state of an order leaves free.
type leeway struct {
	at    Tolerance // its step and trim
	bound [bounds]bound
}

// bound is how much of one kind is left, and whether it is used up beyond what rounding explains.
type bound struct {
	given, passed bool
	left          float64
}

func (w *walked) leeway(step int, at spot) leeway {
	now := w.unbalanced(at.trim, w.carried(at), w.arbor())
	light, heavy := w.limits.ArborHeavy, w.limits.heavy(w.onStop(at))
	if w.held != purchase.Building {
		line := w.limits.HeldLine
		line.Max = line.Max.Scale(1 / w.heldBy())
		light, heavy = line, line
	}
	l := leeway{at: Tolerance{Step: step, Trim: at.trim}}
	l.bound[battenHeavy] = bound{heavy.given(), passes(now, heavy.Max), float64(heavy.Max - now)}
	l.bound[arborHeavy] = bound{light.given(), passes(-now, light.Max), float64(light.Max + now)}
	if w.over {
		about, rounds := w.steady(at, func(place int) bool { return w.hung[place] })
		for k, left := range about {
			l.bound[aboutFirst+k] = bound{true, left < -rounds, left}
		}
	}
	return l
}

// passed tells whether any bound is, with all as it is written.
func (l leeway) passed() bool {
	for _, b := range l.bound {
		if b.given && b.passed {
			return true
		}
	}
	return false
}

// part is some of the hang: how much it is, and how much of each bound it uses; below zero, it adds to it.
type part struct {
	mass int64 // in nanograms, carried or not
	uses [bounds]float64
}

func (w *walked) part(item load.Item, at spot) part {
	carried := kilograms(carriedAt(item, at))
	weight := float64(carried.Weight(units.StandardGravity))
	first, last := w.outermost()
	centre := centreOf(item)
	p := part{mass: nanograms(item.Mass)}
	p.uses[battenHeavy], p.uses[arborHeavy] = weight, -weight
	p.uses[aboutFirst], p.uses[aboutLast] = float64(carried)*(first-centre), float64(carried)*(centre-last)
	return p
}

// and is both parts.
func (p part) and(other part) part {
	p.mass += other.mass
	for k, uses := range other.uses {
		p.uses[k] += uses
	}
	return p
}

// off is how far a part of the hang may be off in a state: what is so much heavier than written uses so much more.
func (l leeway) off(p part) Allowance {
	a := Allowance{Heavier: Tolerance{Free: true}, Lighter: Tolerance{Free: true}}
	for k, uses := range p.uses {
		b, to, least := l.bound[k], &a.Heavier, uses
		if uses < 0 {
			to, least = &a.Lighter, -uses
		}
		// Nothing at all is as light as can be.
		if !b.given || uses == 0 || uses < 0 && b.left >= least {
			continue
		}
		t := l.at
		t.Tips, t.Passed = k >= aboutFirst, b.passed
		if !b.passed {
			t.Share = max(b.left, 0) / least
			t.Mass = kilograms(p.mass).Scale(t.Share)
		}
		tighten(to, t)
	}
	return a
}
