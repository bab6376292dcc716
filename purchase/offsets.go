package purchase

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// LineOffsets is how far a lift line stands off the plane of the set, positive upstage, on
// its way from the batten, which hangs plumb under the loft block: what fleet angles come from.
// The lines' grooves lie side by side in the head block and their fastenings side by side on
// the arbor, and where the two differ the short part between them at low trim has the worst
// angle. The hand line runs in the plane.
type LineOffsets struct {
	Loft  units.Length `json:"loft,omitzero"`  // of the loft block
	Head  units.Length `json:"head,omitzero"`  // of its groove in the head block
	Arbor units.Length `json:"arbor,omitzero"` // of its fastening or sheave on the arbor's top, in triple purchase of both
	Beam  units.Length `json:"beam,omitzero"`  // of its dead end in double purchase, of its block at the head beam in triple
}

// mostOffset is how far a stop may stand off: beyond it a rope is no longer one in the plane of the set.
const mostOffset = 1 * units.Metre

func checkOffset(p *check.Problems, field string, o units.Length) (ok bool) {
	ok = check.Finite(p, field, o)
	if ok && units.Abs(o) > mostOffset {
		p.Add(field, check.Show(o), "at most "+check.Show(mostOffset)+" to either side: the ropes are taken to lie in one plane", units.ErrOutOfRange)
		return false
	}
	return ok
}

// Sheaves is the diameters of a layout's sheaves, each at the bottom of its groove; a zero is not
// given, and one that the layout has no sheave for is not used. Lift lines and hand line run in grooves
// of their own, in the head block too.
type Sheaves struct {
	Loft  units.Length `json:"loft,omitzero"`  // of every loft block
	Mule  units.Length `json:"mule,omitzero"`  // of every mule block
	Head  units.Length `json:"head,omitzero"`  // of the head block, under the lift lines
	Arbor units.Length `json:"arbor,omitzero"` // on the arbor's top, of each lift line: double and triple purchase
	Beam  units.Length `json:"beam,omitzero"`  // of the blocks at the head beam, of each lift line: triple purchase

	HandHead  units.Length `json:"hand_head,omitzero"`  // of the head block, under the hand line
	Idler     units.Length `json:"idler,omitzero"`      // of the idler
	HandArbor units.Length `json:"hand_arbor,omitzero"` // on the arbor's top and foot: double and triple hand line
	HandBeam  units.Length `json:"hand_beam,omitzero"`  // of the blocks at the head beam and at the rail: triple hand line
}

func (s Sheaves) check(p *check.Problems, lift, hand units.Length) {
	checkTread(p, "sheaves.loft", s.Loft, lift)
	checkTread(p, "sheaves.mule", s.Mule, lift)
	checkTread(p, "sheaves.head", s.Head, lift)
	checkTread(p, "sheaves.arbor", s.Arbor, lift)
	checkTread(p, "sheaves.beam", s.Beam, lift)
	checkTread(p, "sheaves.hand_head", s.HandHead, hand)
	checkTread(p, "sheaves.idler", s.Idler, hand)
	checkTread(p, "sheaves.hand_arbor", s.HandArbor, hand)
	checkTread(p, "sheaves.hand_beam", s.HandBeam, hand)
}

// checkTread makes sure of a sheave's diameter where one is given.
func checkTread(p *check.Problems, field string, tread, rope units.Length) {
	if tread == 0 || !check.Positive(p, field, tread, "the diameter of the sheave at the bottom of its groove, or none") {
		return
	}
	if tread < rope {
		p.Add(field, check.Show(tread), "at least the rope's diameter, "+check.Show(rope), units.ErrOutOfRange)
	}
}

// checkDiameter makes sure of a rope's diameter where one is given, and gives it; none where it is wrong, that sheaves are not
// blamed for it.
func checkDiameter(p *check.Problems, field string, d units.Length) units.Length {
	if d != 0 && !check.Positive(p, field, d, "the nominal diameter of the rope, or none") {
		return 0
	}
	return d
}
