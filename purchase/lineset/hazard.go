package lineset

import (
	"slices"
	"strconv"

	"example.com/steelyard/units"
)

// Hazard is what an out of balance would do, were the set let go. It speaks of the figures without drag, whether the
// rope lock is shut or not: a rope lock is made to keep a balanced set where it is, not to hold one that is out of
// balance.
type Hazard uint8

// The hazards.
const (
	Balanced    Hazard = iota // neither side is the heavier
	RunsOut                   // arbor-heavy: the arbor would run down and the batten out
	RunsIn                    // batten-heavy away from the stop: the batten would run in
	RestsOnStop               // batten-heavy at the lowest trim: the stop holds it
	HeldByLine                // a line that is set holds it
)

var hazards = [...]string{
	Balanced:    "balanced",
	RunsOut:     "arbor-heavy: would run out",
	RunsIn:      "batten-heavy: would run in",
	RestsOnStop: "batten-heavy: rests on the stop",
	HeldByLine:  "held by the line that is set",
}

// String says it in words: "arbor-heavy: would run out".
func (h Hazard) String() string {
	if int(h) < len(hazards) {
		return hazards[h]
	}
	return "Hazard(" + strconv.Itoa(int(h)) + ")"
}

// MarshalText writes it as it is printed.
func (h Hazard) MarshalText() ([]byte, error) { return []byte(h.String()), nil }

// UnmarshalText reads what MarshalText wrote. Where it fails, with a *units.FieldError, the value is left as it was.
func (h *Hazard) UnmarshalText(text []byte) error {
	i := slices.Index(hazards[:], string(text))
	if i < 0 {
		return &units.FieldError{Value: strconv.Quote(string(text)), Want: "a hazard as it is printed, such as " + strconv.Quote(hazards[RunsOut]), Err: units.ErrUnknown}
	}
	*h = Hazard(i)
	return nil
}
