package arbor

import (
	"slices"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Flight is what a run gives to an arbor and to the batten that answers it. Fly
// makes it; the descriptions that it was made from stand in it. Heights and trims
// are above the deck.
type Flight struct {
	Run   Run   `json:"run"`
	Frame Frame `json:"frame"`
	Ride  Ride  `json:"ride"`

	Arbor  units.Length `json:"arbor"`  // the arbor's travel between its stops
	Batten units.Length `json:"batten"` // the batten's: the ratio times the arbor's

	Lowest  units.Length `json:"lowest"`  // the batten's lowest trim, with the arbor against its upper stop
	Highest units.Length `json:"highest"` // the batten's highest trim, with the arbor on its lower stop

	LowestTop  units.Length `json:"lowest_top"`  // height of the arbor's top when it rests on its lower stop
	HighestTop units.Length `json:"highest_top"` // height of the arbor's top when it is against its upper stop

	UnderHead Clearance `json:"under_head_block"`  // from the arbor's top at its highest up to the head block
	UnderLoft Clearance `json:"under_loft_blocks"` // from the batten at its highest up to the loft blocks
	UnderGrid Clearance `json:"under_grid"`        // from the batten at its highest up to the grid
	UnderRail Clearance `json:"under_rail"`        // from the deck up to the underside of the locking rail

	UnderArbor units.Length `json:"under_arbor"` // from the deck up to the arbor's foot at its lowest; negative in a pit
}

// Clearance is the clear height between two things, where the place of both is
// given.
type Clearance struct {
	Given bool         `json:"given"`          // false: the run does not say where the other thing is
	Clear units.Length `json:"clear,omitzero"` // negative: the way ends so much before the stop does
}

// Fly lets an arbor fly in the run: how far it goes and the batten with it, and
// what is clear around them. Figures are exact and rounded once.
//
// The error joins a *units.FieldError for everything that is wrong: with the
// run, under its own fields; with the arbor and the ride under "frame." and
// "ride.".
func (r Run) Fly(f Frame, ride Ride) (Flight, error) {
	var p check.Problems
	frame := f.Validate()
	if frame == nil {
		p.Within("", "", r.ValidateFor(f))
		p.Within("ride", "", ride.validateFor(f))
	} else {
		p.Within("", "", r.Validate())
		p.Within("frame", "", frame)
		p.Within("ride", "", ride.Validate())
	}
	if err := p.Err(); err != nil {
		return Flight{}, err
	}
	r.Bridges = slices.Clone(r.Bridges)
	return r.fly(f, ride), nil
}

// fly is Fly of what was found right.
func (r Run) fly(f Frame, ride Ride) Flight {
	lower, upper, made := nanometres(r.LowerStop), nanometres(r.UpperStop), nanometres(ride.MadeOff)
	arbor := upper - lower - nanometres(f.Length)
	batten := fractionOf(ride.Ratio).times(arbor)
	above := func(from int64, to units.Length) Clearance {
		if to == 0 {
			return Clearance{}
		}
		return Clearance{true, metres(nanometres(to) - from)}
	}
	return Flight{
		Run: r, Frame: f, Ride: ride,
		Arbor: metres(arbor), Batten: metres(batten),
		Lowest: metres(made), Highest: metres(made + batten),
		LowestTop: metres(upper - arbor), HighestTop: metres(upper),
		UnderHead: above(upper, r.HeadBlock), UnderLoft: above(made+batten, r.LoftBlocks), UnderGrid: above(made+batten, r.Grid),
		UnderRail: above(0, r.Rail), UnderArbor: metres(lower),
	}
}

// Top is the height of the arbor's top while the batten is at a trim, to the
// nanometre. A trim that the set does not reach is a *units.FieldError.
func (f Flight) Top(trim units.Length) (units.Length, error) {
	top, err := f.top(trim)
	return metres(top), err
}

func (f Flight) top(trim units.Length) (int64, error) {
	var p check.Problems
	if check.Finite(&p, "trim", trim) && !f.reaches(trim) {
		p.Add("trim", check.Show(trim), "from "+check.Show(f.Lowest)+" to "+check.Show(f.Highest)+", what the set reaches", units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return 0, err
	}
	top := nanometres(f.Run.UpperStop) - fractionOf(f.Ride.Ratio).by(nanometres(trim)-nanometres(f.Ride.MadeOff))
	// Under a ratio below 1 a nanometre of trim is many of the arbor: it does not leave its run for them.
	return max(top, nanometres(f.LowestTop)), nil
}

// reaches tells whether the batten comes to a trim. That is a question of whole
// nanometres: as float64, two ways to the same height may differ in the last bit.
func (f Flight) reaches(trim units.Length) bool {
	x := nanometres(trim)
	return x >= nanometres(f.Lowest) && x <= nanometres(f.Highest)
}

// Trim is the batten's trim while the arbor's top is at a height, to the
// nanometre. A height that the arbor's top does not come to is a
// *units.FieldError.
func (f Flight) Trim(top units.Length) (units.Length, error) {
	var p check.Problems
	if y := nanometres(top); check.Finite(&p, "top", top) && (y < nanometres(f.LowestTop) || y > nanometres(f.HighestTop)) {
		p.Add("top", check.Show(top), "from "+check.Show(f.LowestTop)+" to "+check.Show(f.HighestTop)+", where the arbor's top can be", units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return 0, err
	}
	return metres(f.trim(nanometres(top))), nil
}

func (f Flight) trim(top int64) int64 {
	return nanometres(f.Ride.MadeOff) + fractionOf(f.Ride.Ratio).times(nanometres(f.Run.UpperStop)-top)
}
