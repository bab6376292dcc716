package load

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Deflection is how far the pipe bends out of the level.
type Deflection struct {
	Trim    units.Length `json:"trim"`    // of the batten
	Lowest  DeflectionAt `json:"lowest"`  // the place furthest below level
	Highest DeflectionAt `json:"highest"` // the place furthest above it, or least below
}

// DeflectionAt is how far the middle of the pipe stands below the straight level line through the ends of
// the lift lines, and where along the batten. Negative is above that line.
//
// The ends are taken as they would hang with no pull and no trim error. So a line that stretches, or has been
// left long, shows as deflection as well as the bending of the pipe.
type DeflectionAt struct {
	Below units.Length `json:"below"`
	At    units.Length `json:"at"` // along the batten
}

// Deflection gives the lowest and the highest place of the pipe at a trim, anywhere from end to end. Of places
// that are equally low or high to within rounding it is the one nearest the arbor. The errors are those of
// [Rigged.Share].
//
// It is in inverse proportion to the pipe's bending stiffness, Tube.Modulus times [Tube.SecondMoment]: unlike
// tensions on rigid lines it is no better than the modulus and the wall that were given. It is elastic, counts from a
// pipe that is straight when nothing pulls on it, and is for small slopes: a deflection of a tenth of the span is
// beyond it, whatever the figure. Give in joints and splices, and the set that a batten has taken, come on top.
//
// Where one line alone carries, the batten balances on it and nothing tells how it leans: it is taken as level over
// that line.
func (r *Rigged) Deflection(trim units.Length) (Deflection, error) {
	w := r.layout.Borrow()
	defer w.Return()
	if _, _, err := r.solve(w, trim); err != nil {
		return Deflection{}, err
	}
	low, high := w.Bend()
	below := func(p float64) units.Length { return units.Length(p / r.bending) }
	return Deflection{
		Trim:    trim,
		Lowest:  DeflectionAt{below(low.Value), units.Length(low.At)},
		Highest: DeflectionAt{below(high.Value), units.Length(high.At)},
	}, nil
}

// Give is how far pipe and lines give, at a place and a trim, under one more mass that is hung there at rest: the
// static stretch that [ImpactFactor] asks for. What hung before has moved them already and is not counted; where lines
// go slack or take load under the mass, that is. The errors are those of [Rigged.Share], of a batten that would tip with
// the mass too, and *units.FieldError for mass and at.
func (r *Rigged) Give(trim units.Length, mass units.Mass, at units.Length) (units.Length, error) {
	var p check.Problems
	check.Finite(&p, "trim", trim)
	check.NotNegative(&p, "mass", mass)
	if onBatten(&p, "at", at, r.length) {
		at = max(0, min(at, r.length))
	}
	if err := p.Err(); err != nil {
		return 0, err
	}
	w := r.layout.Borrow()
	defer w.Return()
	carried, centre, err := r.solve(w, trim)
	if err != nil {
		return 0, err
	}
	before := w.Level(float64(at))
	tip := r.tip(trim, false, r.centreWith(carried, centre, mass, at))
	w.AddPoint(float64(mass.Weight(units.StandardGravity)), float64(at))
	if tip.out() > r.reach() || !w.Hang(r.kernelReach()) {
		return 0, tip
	}
	return units.Length((w.Level(float64(at)) - before) / r.bending), nil
}
