package lineset

import (
	"fmt"
	"strconv"

	"example.com/steelyard/internal/strictjson"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// Set is a line set with what a show hangs on it: plain data, to be written as a
// literal, decoded from JSON or filled from a database. Rig makes it ready to be
// asked.
type Set struct {
	Name string `json:"name"`

	// What is installed: either Rigging itself, or Like, the name of one of the
	// house's Riggings. Exactly one of the two.
	Rigging Rigging `json:"rigging,omitzero"`
	Like    string  `json:"like,omitempty"`

	Low     units.Length `json:"low_trim"`         // the lowest that the show needs
	High    units.Length `json:"high_trim"`        // the highest that the show needs
	Balance BalanceAt    `json:"balance,omitzero"` // where the counterweight is to balance; must be said
	Hang    load.Hang    `json:"hang,omitempty"`   // what hangs beside the batten itself; none: an empty set
}

// UnmarshalJSON decodes a set as House.UnmarshalJSON decodes a house.
func (s *Set) UnmarshalJSON(text []byte) error {
	type plain Set // without this method, so that the decoder looks at the fields
	var p plain
	if err := strictjson.Decode(text, &p); err != nil {
		return err
	}
	*s = Set(p)
	return nil
}

// BalanceAt says at which trim the counterweight is to balance what is carried.
// It matters because rope weight shifts and because piled and standing things
// leave the deck as the batten flies. The zero value is no choice and is refused.
type BalanceAt uint8

// Where a set may be asked to balance.
const (
	AtLow  BalanceAt = iota + 1 // at low trim, with what is carried there
	AtHigh                      // at high trim, with what is carried there
	Even                        // batten-heavy and arbor-heavy extremes over the travel equal and opposite
)

var balanceNames = [...]string{AtLow: "low", AtHigh: "high", Even: "even"}

const wantBalance = `"low", "high" or "even"`

func (b BalanceAt) known() bool { return b >= AtLow && b <= Even }

// String names the choice: "low", "high", "even".
func (b BalanceAt) String() string {
	if b.known() {
		return balanceNames[b]
	}
	return fmt.Sprintf("BalanceAt(%d)", uint8(b))
}

// MarshalText writes the choice's name; any other value is an error.
func (b BalanceAt) MarshalText() ([]byte, error) {
	if !b.known() {
		return nil, fmt.Errorf("balance %v %w; want %s", b, units.ErrUnknown, wantBalance)
	}
	return []byte(b.String()), nil
}

// UnmarshalText reads a choice by name. Where it fails, with a *units.FieldError,
// the value is left as it was.
func (b *BalanceAt) UnmarshalText(text []byte) error {
	for i, name := range balanceNames {
		if name != "" && name == string(text) {
			*b = BalanceAt(i)
			return nil
		}
	}
	return &units.FieldError{Value: strconv.Quote(string(text)), Want: wantBalance, Err: units.ErrUnknown}
}
