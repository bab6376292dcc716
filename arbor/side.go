package arbor

import (
	"strconv"

	"example.com/steelyard/units"
)

// Side says on which side of balance a stack may err. The zero Side is
// EitherSide: too heavy and too light count alike.
type Side uint8

const (
	EitherSide       Side = iota // the nearest stack, whichever side it is on
	NeverArborHeavy              // no more than is wanted: the batten side never flies out by itself
	NeverBattenHeavy             // no less than is wanted: the batten side never runs in by itself
)

var sideNames = [...]string{"either", "never arbor-heavy", "never batten-heavy"}

// sidesWanted lists the texts that a Side can have.
const sidesWanted = `"either", "never arbor-heavy" or "never batten-heavy"`

// String gives the text of the side: "either", "never arbor-heavy" or "never batten-heavy".
func (s Side) String() string {
	if int(s) < len(sideNames) {
		return sideNames[s]
	}
	return "Side(" + strconv.Itoa(int(s)) + ")"
}

// MarshalText gives the same text as String. A Side that is none of the
// constants is a *units.FieldError.
func (s Side) MarshalText() ([]byte, error) {
	if err := s.fault(); err != nil {
		return nil, err
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads what MarshalText wrote; no text at all is EitherSide, as
// a field that is left out. Any other text is a *units.FieldError and leaves the
// Side as it was.
func (s *Side) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*s = EitherSide
		return nil
	}
	for i, name := range sideNames {
		if string(text) == name {
			*s = Side(i)
			return nil
		}
	}
	return &units.FieldError{Field: "side", Value: strconv.Quote(string(text)), Want: sidesWanted, Err: units.ErrUnknown}
}

func (s Side) fault() error {
	if int(s) < len(sideNames) {
		return nil
	}
	return &units.FieldError{Field: "side", Value: s.String(), Want: sidesWanted, Err: units.ErrUnknown}
}
