package load

import (
	"strconv"

	"example.com/steelyard/units"
)

// OnDeck is what an item does when it reaches the deck. The zero value is Hangs.
type OnDeck uint8

const (
	// Hangs is for what hangs clear: the batten always carries all of it.
	Hangs OnDeck = iota
	// Piles is for soft goods: they come to lie on the deck from the foot up, and the
	// batten carries the part that still hangs.
	Piles
	// Stands is for a stiff piece such as a flat: once its foot is on the deck the deck carries
	// all of it.
	Stands
)

var onDeckNames = [...]string{Hangs: "hangs", Piles: "piles", Stands: "stands"}

// String gives the name: hangs, piles or stands.
func (d OnDeck) String() string {
	if !d.known() {
		return "OnDeck(" + strconv.Itoa(int(d)) + ")"
	}
	return onDeckNames[d]
}

func (d OnDeck) known() bool { return int(d) < len(onDeckNames) }

func (d OnDeck) unknown(value string) error {
	return &units.FieldError{Value: value, Want: "hangs, piles or stands", Err: units.ErrUnknown}
}

// MarshalText gives the name. A value that has none is a *units.FieldError.
func (d OnDeck) MarshalText() ([]byte, error) {
	if !d.known() {
		return nil, d.unknown(d.String())
	}
	return []byte(onDeckNames[d]), nil
}

// UnmarshalText reads the name. Any other text is a *units.FieldError and leaves d alone.
func (d *OnDeck) UnmarshalText(text []byte) error {
	for i, name := range onDeckNames {
		if string(text) == name {
			*d = OnDeck(i)
			return nil
		}
	}
	return d.unknown(strconv.Quote(string(text)))
}
