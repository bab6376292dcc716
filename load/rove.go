package load

import (
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
// followed; so is the hogging moment, and the sagging one where the load hangs. Where the pipe sags most elsewhere, it is
// looked for at several places of the load and closed in on.
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
	found, err := r.rove(trim, mass, from, to, true)
	if err != nil {
		return Envelope{}, err
	}
	e := Envelope{
		Lines:   make([]LineRange, len(r.lines)),
		Sagging: MomentWith{units.Moment(found.Sag.Value), units.Length(found.Sag.At)},
		Hogging: MomentWith{units.Moment(found.Hog.Value), units.Length(found.Hog.At)},
	}
	e.Stress = max(e.Sagging.Moment, -e.Hogging.Moment).Stress(r.section)
	for i, line := range r.lines {
		most, least := found.Pulls[i].Most, found.Pulls[i].Least
		e.Lines[i] = LineRange{
			At:    line.at,
			Most:  TensionWith{units.Force(most.Value), units.Length(most.At)},
			Least: TensionWith{units.Force(least.Value), units.Length(least.At)},
		}
	}
	return e, nil
}

// rove is Envelope for arguments without faults; sagging moments are looked for only if they are wanted.
func (r *Rigged) rove(trim units.Length, mass units.Mass, from, to units.Length, sagging bool) (found beam.Roving, err error) {
	w := r.layout.Borrow()
	defer w.Return()
	carried, centre := r.lay(w, trim, false)
	for _, at := range []units.Length{from, to} {
		if tip := r.tip(trim, false, r.centreWith(carried, centre, mass, at)); tip.out() > r.reach() {
			return beam.Roving{}, tip
		}
	}
	weight := float64(mass.Weight(units.StandardGravity))
	if !w.Rove(weight, float64(from), float64(to), r.kernelReach(), sagging, &found) {
		return beam.Roving{}, r.tip(trim, false, centre)
	}
	return found, nil
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
