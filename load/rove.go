package load

import (
	"errors"
	"math"

	"example.com/steelyard/internal/beam"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Envelope is how far everything goes while one more point load roves along a stretch of the
// batten.
type Envelope struct {
	Lines   []LineRange  `json:"lines"`   // in the order of the batten's lines
	Sagging MomentWith   `json:"sagging"` // the largest: zero or more
	Hogging MomentWith   `json:"hogging"` // the largest: zero or less
	Stress  units.Stress `json:"stress"`  // the largest bending stress
}

// LineRange is how much and how little a line carries while a load roves.
type LineRange struct {
	At    units.Length `json:"at"` // where it is made off, along the batten
	Most  TensionWith  `json:"most"`
	Least TensionWith  `json:"least"`
}

// TensionWith is a line's tension and where along the batten the roving load then hangs.
type TensionWith struct {
	Tension units.Force  `json:"tension"`
	Load    units.Length `json:"load"`
}

// MomentWith is a bending moment, positive where the pipe sags, and where along the batten
// the roving load then hangs.
type MomentWith struct {
	Moment units.Moment `json:"moment"`
	Load   units.Length `json:"load"`
}

// Envelope tells how far everything goes at a trim while one more mass, all of it carried, is moved
// from one place on the batten to another: a traveller's carriers, a lamp that has not found its
// place. With a mass of 0 it is the share as it is.
//
// Tensions are exact: between lines they are cubics of the place, and lines that go slack on the way are
// followed. The sagging moment is looked for at several places between any two loads and closed
// in on.
//
// The errors are a *[TipError] where the batten tips with the mass at one of the two places, and
// otherwise *units.FieldError: for a trim as in [Rigged.Share], and for mass, from and to.
func (r *Rigged) Envelope(trim units.Length, mass units.Mass, from, to units.Length) (Envelope, error) {
	var p check.Problems
	check.Finite(&p, "trim", trim)
	check.NotNegative(&p, "mass", mass)
	from, to = r.stretch(&p, from, to)
	if err := p.Err(); err != nil {
		return Envelope{}, err
	}
	w := r.layout.Borrow()
	defer w.Return()
	carried, centre := r.lay(w, trim, false)
	for _, at := range []units.Length{from, to} {
		if tip := r.tip(trim, false, r.centreWith(carried, centre, mass, at)); tip.out() > r.reach() {
			return Envelope{}, tip
		}
	}
	var found beam.Roving
	if !w.Rove(float64(mass.Weight(units.StandardGravity)), float64(from), float64(to), 2*float64(r.reach()), &found) {
		return Envelope{}, r.tip(trim, false, centre)
	}
	e := Envelope{
		Lines:   make([]LineRange, len(r.lines)),
		Sagging: MomentWith{units.Moment(found.Sag.Value), units.Length(found.Sag.At)},
		Hogging: MomentWith{units.Moment(found.Hog.Value), units.Length(found.Hog.At)},
	}
	e.Stress = max(e.Sagging.Moment, -e.Hogging.Moment).Stress(r.section)
	for i, at := range r.lines {
		most, least := found.Pulls[i].Most, found.Pulls[i].Least
		e.Lines[i] = LineRange{
			At:    at,
			Most:  TensionWith{units.Force(most.Value), units.Length(most.At)},
			Least: TensionWith{units.Force(least.Value), units.Length(least.At)},
		}
	}
	return e, nil
}

// stretch puts the ends of a stretch in order and onto the batten, and notes what is wrong with them.
func (r *Rigged) stretch(p *check.Problems, from, to units.Length) (units.Length, units.Length) {
	onBatten(p, "from", from, r.length)
	onBatten(p, "to", to, r.length)
	onto := func(at units.Length) units.Length { return max(0, min(at, r.length)) }
	return onto(min(from, to)), onto(max(from, to))
}

// centreWith is the centre of gravity with one more mass.
func (r *Rigged) centreWith(carried units.Mass, centre units.Length, mass units.Mass, at units.Length) units.Length {
	return centre + (at - centre).Scale(units.Ratio(mass, carried+mass))
}

// PointAllowed is the heaviest thing that may still be hung at one point.
type PointAllowed struct {
	Mass units.Mass   `json:"mass"` // zero or more
	At   units.Length `json:"at"`   // where along the stretch it is worst
	Line int          `json:"line"` // the place of the line that then meets its limit; −1: the pipe does, or the batten is about to tip
	Tips bool         `json:"tips"` // with more it would tip
}

// PointAllowed tells the heaviest mass that may be hung at one point anywhere from one place on the batten to
// another, between two lines or at one place, beside what hangs there, such that at the trim no
// line and no part of the pipe exceeds its limit and the batten does not tip. A little more does, at
// the place named. It is 0 where a limit is exceeded as it is.
//
// The errors are those of [Rigged.Share], and *units.FieldError for from, to and limits.
func (r *Rigged) PointAllowed(trim, from, to units.Length, limits Limits) (PointAllowed, error) {
	var p check.Problems
	check.Finite(&p, "trim", trim)
	from, to = r.stretch(&p, from, to)
	p.Within("limits", "", limits.faults())
	if err := p.Err(); err != nil {
		return PointAllowed{}, err
	}
	if _, err := r.Share(trim); err != nil {
		return PointAllowed{}, err
	}
	// Use grows with the mass without end, so that doubling must pass every limit. It is nearly straight over
	// the mass, so that false position is quick; where it makes no way, halving is.
	with := func(mass units.Mass) (float64, PointAllowed) {
		e, err := r.Envelope(trim, mass, from, to)
		if err != nil {
			tips := PointAllowed{Line: -1, At: to, Tips: true}
			if tip := (*TipError)(nil); errors.As(err, &tip) && tip.Centre < tip.First {
				tips.At = from
			}
			return math.Inf(1), tips
		}
		return e.use(limits)
	}
	used, found := with(0)
	if used >= 1 {
		return found, nil
	}
	var low units.Mass
	high := r.Carried(trim)
	usedHigh, found := with(high)
	for usedHigh < 1 && high < maxPoint {
		low, used = high, usedHigh
		high = high.Scale(2)
		usedHigh, found = with(high)
	}
	for i := 0; i < 200 && high-low > high.Scale(1e-12); i++ {
		share := 0.5
		if i%3 != 2 && !math.IsInf(usedHigh, 1) {
			share = (1 - used) / (usedHigh - used)
			share = max(1e-13, min(share, 1-1e-13))
		}
		middle := low + (high - low).Scale(share)
		if middle <= low || middle >= high {
			break
		}
		if u, f := with(middle); u > 1 {
			high, usedHigh, found = middle, u, f
		} else {
			low, used = middle, u
		}
	}
	found.Mass = low
	return found, nil
}

// maxPoint is beyond any load.
const maxPoint units.Mass = 1e12 * units.Kilogram

// use is how far the limits are used at worst, and by what.
func (e Envelope) use(l Limits) (used float64, found PointAllowed) {
	found.Line = -1
	if l.Stress > 0 {
		used = units.Ratio(e.Stress, l.Stress)
		found.At = e.Sagging.Load
		if -e.Hogging.Moment > e.Sagging.Moment {
			found.At = e.Hogging.Load
		}
	}
	for i, line := range e.Lines {
		if l.Line > 0 && units.Ratio(line.Most.Tension, l.Line) > used {
			used = units.Ratio(line.Most.Tension, l.Line)
			found.Line, found.At = i, line.Most.Load
		}
	}
	return used, found
}
