package arbor

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Run is the stretch of wall in which an arbor flies: between its lower stop (at
// the deck, or on the locking rail where that is elevated) and its upper stop
// (under the head block). Heights are above the deck, up is positive; a lower
// stop in a pit is negative. What stands around the run is needed only for the
// questions about it; a zero says that it is not given, and then no clearance to
// it is told.
type Run struct {
	LowerStop units.Length `json:"lower_stop,omitzero"` // height of the arbor's foot when it rests on the stop
	UpperStop units.Length `json:"upper_stop"`          // height of the arbor's top when it is against the stop

	HeadBlock  units.Length `json:"head_block,omitzero"`  // height of the head block; zero: not given
	LoftBlocks units.Length `json:"loft_blocks,omitzero"` // height of the loft blocks, the lowest of them; zero: not given
	Grid       units.Length `json:"grid,omitzero"`        // height of the grid's underside; zero: not given
	Rail       units.Length `json:"rail,omitzero"`        // height of the underside of the locking rail, where people pass under it; zero: not given

	Bridges []Bridge `json:"bridges,omitempty"` // from which arbors are loaded; none: no question about them
}

// Validate reports all that is wrong with the run, joined: *units.FieldError
// with paths from the run itself. Whether an arbor fits in it is ValidateFor.
func (r Run) Validate() error {
	var p check.Problems
	r.check(&p)
	return p.Err()
}

// ValidateFor reports what Validate does and, as a fault of "upper_stop", an
// arbor that is longer than the run. An arbor that just fills its run is no
// fault: its travel is 0. Only the length of the frame is looked at.
func (r Run) ValidateFor(f Frame) error {
	var p check.Problems
	if r.check(&p) && check.Finite(&p, "length", f.Length) && r.Travel(f) < 0 {
		p.Add("upper_stop", check.Show(r.UpperStop), "at least "+check.Show(metres(nanometres(r.LowerStop)+nanometres(f.Length)))+
			", the top of the arbor on its lower stop", units.ErrOutOfRange)
	}
	return p.Err()
}

// check notes what is wrong, and reports whether the stops are in order.
func (r Run) check(p *check.Problems) bool {
	stops := r.checkStops(p)
	if head := height(p, "head_block", r.HeadBlock); head && stops && r.HeadBlock != 0 && r.HeadBlock < r.UpperStop {
		p.Add("head_block", check.Show(r.HeadBlock), "at least "+check.Show(r.UpperStop)+", the height of the upper stop", units.ErrOutOfRange)
	}
	height(p, "loft_blocks", r.LoftBlocks)
	height(p, "grid", r.Grid)
	height(p, "rail", r.Rail)
	checkBridges(p, r.Bridges)
	return stops
}

func (r Run) checkStops(p *check.Problems) bool {
	lower := height(p, "lower_stop", r.LowerStop)
	upper := height(p, "upper_stop", r.UpperStop)
	if !lower || !upper || r.UpperStop > r.LowerStop {
		return lower && upper
	}
	want := "the height of the upper stop, above the lower stop at " + check.Show(r.LowerStop)
	if r.UpperStop == 0 {
		p.Add("upper_stop", "", want, units.ErrMissing)
	} else {
		p.Add("upper_stop", check.Show(r.UpperStop), want, units.ErrOutOfRange)
	}
	return false
}

// height notes a fault where h is no height that a building can have.
func height(p *check.Problems, field string, h units.Length) bool {
	if !check.Finite(p, field, h) {
		return false
	}
	if units.Abs(h) > highestRoom {
		p.Add(field, check.Show(h), "from "+check.Show(-highestRoom)+" to "+check.Show(highestRoom), units.ErrOutOfRange)
		return false
	}
	return true
}

// Travel is how far the arbor can fly: what is left between the stops after its
// own length. Negative says that the arbor is longer than its run. The batten's
// travel is the ratio of the purchase times this: see Fly. Like the stack, it is
// exact and rounded once: an arbor that just fills its run has a travel of 0.
func (r Run) Travel(f Frame) units.Length {
	return metres(nanometres(r.UpperStop) - nanometres(r.LowerStop) - nanometres(f.Length))
}

// Tops gives the heights above the deck of the arbor's top when the arbor
// rests on its lower stop and when it is against its upper stop.
func (r Run) Tops(f Frame) (lowest, highest units.Length) {
	return metres(nanometres(r.LowerStop) + nanometres(f.Length)), metres(nanometres(r.UpperStop))
}
