package arbor

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Stops answers how high the lower stop may be, with the locking rail where that
// carries it, in two readings: with the lines made off anew, so that the arbor
// stands against its upper stop at low trim; and made off as they are today.
type Stops struct {
	Anew  Stop `json:"anew"`
	Today Stop `json:"today"`
}

// Stop is the highest lower stop over which an arbor still gives the trims wanted.
type Stop struct {
	LowerStop units.Length `json:"lower_stop"` // height above the deck
	Freed     units.Length `json:"freed"`      // how much higher that is than the run's lower stop; negative: that must come down by so much
	MadeOff   units.Length `json:"made_off"`   // trim of the batten with the arbor against its upper stop

	// Short is how far low trim lies below the lowest that the batten reaches as it is made off. No lower stop cures
	// that. Zero: none.
	Short units.Length `json:"short"`
}

// HighestStop gives the highest lower stop over which the arbor still gives a low
// and a high trim. The run's own lower stop is only what it is compared with: an
// arbor that does not fit over it is no fault. Arbor travel is rounded up to the
// nanometre, so that the batten is never short for it.
//
// The error joins a *units.FieldError for everything that is wrong, as that of
// Fly, with those of the trims under "low_trim" and "high_trim".
func (r Run) HighestStop(f Frame, ride Ride, low, high units.Length) (Stops, error) {
	if err := r.validateInverse(f, ride, low, high); err != nil {
		return Stops{}, err
	}
	return r.highestStop(f, ride, low, high), nil
}

func (r Run) highestStop(f Frame, ride Ride, low, high units.Length) Stops {
	one := func(made units.Length) Stop {
		stop := nanometres(r.UpperStop) - arborTravel(ride, made, high) - nanometres(f.Length)
		return Stop{
			LowerStop: metres(stop), Freed: metres(stop - nanometres(r.LowerStop)),
			MadeOff: made, Short: shortAtLow(made, low),
		}
	}
	return Stops{Anew: one(low), Today: one(ride.MadeOff)}
}

// Lengths answers how long an arbor may be, in the two readings of Stops.
type Lengths struct {
	Anew  Longest `json:"anew"`
	Today Longest `json:"today"`
}

// Longest is the longest arbor that still gives the trims wanted between the
// stops of a run.
type Longest struct {
	Length units.Length `json:"length"` // overall; zero or less: no arbor, however short, gives the trims

	// Room is that on its rods, where everything else in the arbor keeps its height; zero or less: the arbor would hold
	// no pieces.
	Room    units.Length `json:"room"`
	Longer  units.Length `json:"longer"`   // how much longer than the frame given; negative: so much shorter
	MadeOff units.Length `json:"made_off"` // trim of the batten with the arbor against its upper stop
	Short   units.Length `json:"short"`    // as in Stop: no shorter arbor cures it
}

// Of is the frame given, as long as this, with its room. Where there is no such
// arbor, Validate refuses it.
func (l Longest) Of(f Frame) Frame {
	f.Length, f.Room = l.Length, l.Room
	return f
}

// LongestArbor gives the longest arbor, and so the highest stack, that still gives
// a low and a high trim over the run's lower stop. Errors and rounding are those
// of HighestStop.
func (r Run) LongestArbor(f Frame, ride Ride, low, high units.Length) (Lengths, error) {
	if err := r.validateInverse(f, ride, low, high); err != nil {
		return Lengths{}, err
	}
	return r.longestArbor(f, ride, low, high), nil
}

func (r Run) longestArbor(f Frame, ride Ride, low, high units.Length) Lengths {
	one := func(made units.Length) Longest {
		length := nanometres(r.UpperStop) - nanometres(r.LowerStop) - arborTravel(ride, made, high)
		longer := length - nanometres(f.Length)
		return Longest{
			Length: metres(length), Room: metres(nanometres(f.Room) + longer), Longer: metres(longer),
			MadeOff: made, Short: shortAtLow(made, low),
		}
	}
	return Lengths{Anew: one(low), Today: one(ride.MadeOff)}
}

// arborTravel is how far the arbor must come down from its upper stop for the
// batten to come to high trim, made off as given. A batten that is there already
// needs none.
func arborTravel(ride Ride, made, high units.Length) int64 {
	return max(0, fractionOf(ride.Ratio).byUp(nanometres(high)-nanometres(made)))
}

func shortAtLow(made, low units.Length) units.Length {
	return metres(max(0, nanometres(made)-nanometres(low)))
}

// validateInverse looks at what the inverse questions are asked of. Whether the
// arbor fits in the run is what they answer, and no fault.
func (r Run) validateInverse(f Frame, ride Ride, low, high units.Length) error {
	var p check.Problems
	p.Within("", "", r.Validate())
	if frame := f.Validate(); frame == nil {
		p.Within("ride", "", ride.validateFor(f))
	} else {
		p.Within("frame", "", frame)
		p.Within("ride", "", ride.Validate())
	}
	checkTrims(&p, low, high)
	return p.Err()
}
