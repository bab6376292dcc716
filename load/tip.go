package load

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// TipError says that a batten has no equilibrium: its centre of gravity lies outside
// the outermost lift lines, or not under its only one. It would tip until something
// holds it.
type TipError struct {
	Trim        units.Length // the trim at which it is worst
	Above       bool         // it is so just above that trim, where a standing piece has lifted off
	Centre      units.Length // of gravity, along the batten
	First, Last units.Length // the outermost lines
}

// Error says where the centre of gravity is and where it ought to be.
func (e *TipError) Error() string {
	trim := "at trim "
	if e.Above {
		trim = "just above trim "
	}
	centre := ": the centre of gravity, " + check.Show(e.Centre)
	lines := ", is outside the outermost lines, " + check.Show(e.First) + " to " + check.Show(e.Last)
	if e.First == e.Last {
		lines = ", is not under the only line, " + check.Show(e.First)
	}
	return "tip the batten " + trim + check.Show(e.Trim) + centre + lines
}

// tips reports the trim at which the centre of gravity lies furthest outside, or nil
// where it never does. Between two breaks each item's carried mass is a straight
// line over trim, and so is the moment of all about a line: if the batten
// holds at both ends of such a stretch, it holds all along it.
//
// With one line the centre of gravity must be under it to a micrometre, which is
// rounding: nothing but the pipe's own stiffness at the clamp could hold more.
func (r *Rigged) tips() *TipError {
	var worst *TipError
	var furthest units.Length
	consider := func(trim units.Length, above bool, carried func(Item, units.Length) units.Mass) {
		t := r.tip(trim, above, r.centre(trim, carried))
		reach := (t.Last - t.First).Scale(1e-11)
		if len(r.lines) == 1 {
			reach = rounding
		}
		if out := max(t.First-t.Centre, t.Centre-t.Last); out > reach && out > furthest {
			worst, furthest = t, out
		}
	}
	if len(r.breaks) == 0 {
		consider(0, false, Item.Carried)
	}
	for _, trim := range r.breaks {
		consider(trim, false, Item.Carried)
		consider(trim, true, Item.CarriedAbove)
	}
	return worst
}

func (r *Rigged) tip(trim units.Length, above bool, centre units.Length) *TipError {
	return &TipError{Trim: trim, Above: above, Centre: centre, First: r.lines[0], Last: r.lines[len(r.lines)-1]}
}
