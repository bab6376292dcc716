package load

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// TipError says that a batten has no equilibrium: its centre of gravity lies outside
// the outermost lift lines, or not under its only one. It would tip until something
// holds it. What helps is a lift line on each side of the centre of gravity, or a load that is
// moved.
type TipError struct {
	Trim        units.Length // the trim that was asked; of a range the one at which it is worst
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
	return "the batten would tip " + trim + check.Show(e.Trim) + centre + lines
}

// out is how far outside the lines the centre of gravity lies; negative where it is inside.
func (e *TipError) out() units.Length { return max(e.First-e.Centre, e.Centre-e.Last) }

// Tips tells whether the batten tips anywhere between two trims, both included, in
// either order. It gives nil, or a *[TipError] for the trim at which the centre of
// gravity lies furthest outside; that may be just above a trim between them at which a
// standing piece lifts off. For a trim that is not finite or of no possible
// size the error is a *units.FieldError at from or to.
//
// Between two breaks the mass carried and its moment about any line are straight
// over trim. So the centre of gravity moves one way along such a stretch, and is
// furthest out at one of its ends.
func (r *Rigged) Tips(from, to units.Length) error {
	var p check.Problems
	check.Finite(&p, "from", from)
	check.Finite(&p, "to", to)
	if err := p.Err(); err != nil {
		return err
	}
	from, to = min(from, to), max(from, to)
	var worst *TipError
	furthest := r.reach()
	consider := func(trim units.Length, above bool) {
		centre := r.centre(trim, above)
		if out := max(r.lines[0].at-centre, centre-r.lines[len(r.lines)-1].at); out > furthest {
			worst, furthest = r.tip(trim, above, centre), out
		}
	}
	consider(from, false)
	for _, trim := range r.breaks {
		if trim < from || trim > to {
			continue
		}
		consider(trim, false)
		if trim < to {
			consider(trim, true)
		}
	}
	consider(to, false)
	if worst == nil {
		return nil
	}
	return worst
}

// reach is how far outside the lines the centre of gravity may lie: rounding. With one line
// it must be under it to a micrometre; nothing but the pipe's own stiffness at the clamp could
// hold more.
func (r *Rigged) reach() units.Length {
	if len(r.lines) == 1 {
		return rounding
	}
	return (r.lines[len(r.lines)-1].at - r.lines[0].at).Scale(1e-11)
}

// kernelReach is reach as the kernel is asked with it, which heeds it on one line alone: twice as far, so that rounding does not
// have it refuse what is let pass here.
func (r *Rigged) kernelReach() float64 { return 2 * float64(r.reach()) }

func (r *Rigged) tip(trim units.Length, above bool, centre units.Length) *TipError {
	return &TipError{Trim: trim, Above: above, Centre: centre, First: r.lines[0].at, Last: r.lines[len(r.lines)-1].at}
}
