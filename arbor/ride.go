package arbor

import (
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Ride is how an arbor rides in its run, in what neither the run nor the frame
// tells: how the batten answers it, and where in it the pieces stand.
type Ride struct {
	// Ratio is the batten's travel for each unit of the arbor's: 1 in single purchase, 2 in double. It must be given.
	Ratio float64 `json:"ratio"`

	// MadeOff says how the lift lines are made off: the batten's trim while the arbor stands against its upper stop.
	// Zero: the batten then lies on the deck.
	MadeOff units.Length `json:"made_off,omitzero"`

	// Bed is from the arbor's foot up to the underside of its lowest piece. Zero: the pieces stand at its foot. Only
	// the questions about loading bridges look at it.
	Bed units.Length `json:"bed,omitzero"`
}

// Validate reports all that is wrong with the ride, joined: *units.FieldError
// with paths from the ride itself. Whether the bed leaves the frame its room is
// told by Fly.
func (r Ride) Validate() error {
	var p check.Problems
	checkRatio(&p, "ratio", r.Ratio)
	height(&p, "made_off", r.MadeOff)
	if check.NotNegative(&p, "bed", r.Bed) && r.Bed > highestRoom {
		p.Add("bed", check.Show(r.Bed), "at most "+check.Show(highestRoom), units.ErrOutOfRange)
	}
	return p.Err()
}

// validateFor is Validate and whether bed and room are within the frame, which was found right.
func (r Ride) validateFor(f Frame) error {
	var p check.Problems
	p.Within("", "", r.Validate())
	if p.Err() == nil && nanometres(r.Bed)+nanometres(f.Room) > nanometres(f.Length) {
		p.Add("bed", check.Show(r.Bed), "at most "+check.Show(metres(nanometres(f.Length)-nanometres(f.Room)))+
			", what the arbor's length leaves beside the room on its rods", units.ErrOutOfRange)
	}
	return p.Err()
}

// checkRatio notes a fault where a ratio is none that a counterweight set has.
func checkRatio(p *check.Problems, field string, ratio float64) {
	if ratio >= leastRatio && ratio <= mostRatio {
		return
	}
	const want = "batten travel for each unit of arbor travel, such as 1 or 2"
	value := strconv.FormatFloat(ratio, 'g', -1, 64)
	switch {
	case math.IsNaN(ratio) || math.IsInf(ratio, 0):
		p.Add(field, value, want, units.ErrNotFinite)
	case ratio == 0:
		p.Add(field, "", want, units.ErrMissing)
	case ratio < 0:
		p.Add(field, value, want, units.ErrNegative)
	default:
		p.Add(field, value, want+", from 1/16 to 16", units.ErrOutOfRange)
	}
}
