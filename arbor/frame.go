package arbor

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Plate is the spreader plate: a thin plate that keeps the arbor's rods apart.
// The zero Plate says that none is used; otherwise all three are needed.
//
// One plate lies under the first piece of show weight, and one more after each
// full Every of show weight stacked on it. The interval is counted over the
// thickness of the show pieces alone, plates left out: 1 + ⌊thickness/Every⌋
// plates in all, none where there is no show weight. So a 60 in stack with a plate
// every 24 in has the one underneath and two more, at 24 and 48 in; where the
// stack ends just at a full interval, that plate lies on top. The rule is common
// practice; the arbor's maker decides.
type Plate struct {
	Mass      units.Mass   `json:"mass"`      // of one plate
	Thickness units.Length `json:"thickness"` // of one plate
	Every     units.Length `json:"every"`     // thickness of show weight from one plate to the next
}

// Lock is what is locked on the rods above the stack so that no piece can leave
// them: the lock plate, or the collars. It stays on the rods, over an empty arbor
// too. Given here it counts into mass, height and error; so leave it out of the
// Tare. The zero Lock leaves it out; otherwise both are needed.
type Lock struct {
	Mass      units.Mass   `json:"mass"`      // of all that is locked on
	Thickness units.Length `json:"thickness"` // height that it takes on the rods
}

// Frame is the arbor itself, the carriage in its guides. Length, Room and
// Capacity must be given.
type Frame struct {
	Tare     units.Mass   `json:"tare,omitzero"` // of the empty arbor; zero leaves it out
	Length   units.Length `json:"length"`        // overall, from foot to top
	Room     units.Length `json:"room"`          // height on the rods for pieces, plates and lock plate
	Capacity units.Mass   `json:"capacity"`      // most mass of pipe weight, show weight, plates and lock plate that it may hold
	Plate    Plate        `json:"plate,omitzero"`
	Lock     Lock         `json:"lock,omitzero"`
}

const (
	closestPlates = units.Millimetre
	highestRoom   = 1000 * units.Metre
	heaviestFill  = 50 * units.Tonne
)

// Validate reports all that is wrong with the frame, joined: *units.FieldError
// with paths from the frame itself, such as "room" or "plate.every".
func (f Frame) Validate() error {
	var p check.Problems
	check.NotNegative(&p, "tare", f.Tare)
	length := within(&p, "length", f.Length, thinnestPiece, highestRoom, "the overall length of the arbor")
	room := within(&p, "room", f.Room, thinnestPiece, highestRoom, "the height on the rods for pieces and plates")
	if length && room && f.Room > f.Length {
		p.Add("room", check.Show(f.Room), "at most the arbor's length, "+check.Show(f.Length), units.ErrOutOfRange)
	}
	capacity := within(&p, "capacity", f.Capacity, lightestPiece, heaviestFill, "the most mass that the arbor may hold")
	if f.Plate != (Plate{}) {
		var plate check.Problems
		within(&plate, "mass", f.Plate.Mass, lightestPiece, heaviestPiece, "the mass of one spreader plate")
		within(&plate, "thickness", f.Plate.Thickness, thinnestPiece, thickestPiece, "the thickness of one spreader plate")
		within(&plate, "every", f.Plate.Every, closestPlates, highestRoom, "the height of stack from one spreader plate to the next")
		p.Within("plate", "", plate.Err())
	}
	if f.Lock != (Lock{}) {
		var lock check.Problems
		if within(&lock, "mass", f.Lock.Mass, lightestPiece, heaviestPiece, "the mass of the lock plate") && capacity && f.Lock.Mass > f.Capacity {
			lock.Add("mass", check.Show(f.Lock.Mass), "at most the arbor's capacity, "+check.Show(f.Capacity), units.ErrOutOfRange)
		}
		if within(&lock, "thickness", f.Lock.Thickness, thinnestPiece, thickestPiece, "the height that the lock plate takes") && room && f.Lock.Thickness > f.Room {
			lock.Add("thickness", check.Show(f.Lock.Thickness), "at most the room on the rods, "+check.Show(f.Room), units.ErrOutOfRange)
		}
		p.Within("lock", "", lock.Err())
	}
	return p.Err()
}
