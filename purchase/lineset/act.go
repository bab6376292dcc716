package lineset

import (
	"strconv"

	"example.com/steelyard/units"
)

// Act is what one step of an order does. The zero value is none and is refused.
type Act uint8

// What can be done.
const (
	HangItem   Act = iota + 1 // the deck hangs an item on the batten
	StripItem                 // the deck takes an item off
	AddPieces                 // the bridge puts pieces in, on top of those that are in
	TakePieces                // the bridge takes pieces out, from the top
	FlyTo                     // the batten flies to another trim: rope lock open, no held line set
	LockRope                  // the rope lock is shut
	UnlockRope                // the rope lock is opened
	SetLine                   // a line that holds batten or arbor by other means is set
	FreeLine                  // that line is freed
)

var actNames = [...]string{
	HangItem: "hang", StripItem: "strip", AddPieces: "add", TakePieces: "take", FlyTo: "fly",
	LockRope: "lock", UnlockRope: "unlock", SetLine: "set line", FreeLine: "free line",
}

const wantAct = `"hang", "strip", "add", "take", "fly", "lock", "unlock", "set line" or "free line"`

func (a Act) known() bool { return a >= HangItem && a <= FreeLine }

// String gives the word for it, as it is stored: "hang", "add", "fly".
func (a Act) String() string {
	if a.known() {
		return actNames[a]
	}
	return "Act(" + strconv.Itoa(int(a)) + ")"
}

// MarshalText writes the word; for any other value it gives a *units.FieldError.
func (a Act) MarshalText() ([]byte, error) {
	if !a.known() {
		return nil, &units.FieldError{Value: a.String(), Want: wantAct, Err: units.ErrUnknown}
	}
	return []byte(a.String()), nil
}

// UnmarshalText reads the word. Where it fails, with a *units.FieldError, the value is left as it was.
func (a *Act) UnmarshalText(text []byte) error {
	for i, name := range actNames {
		if name != "" && name == string(text) {
			*a = Act(i)
			return nil
		}
	}
	return &units.FieldError{Value: strconv.Quote(string(text)), Want: wantAct, Err: units.ErrUnknown}
}

// mirror is what undoes it.
func (a Act) mirror() Act {
	switch a {
	case HangItem:
		return StripItem
	case StripItem:
		return HangItem
	case AddPieces:
		return TakePieces
	case TakePieces:
		return AddPieces
	case LockRope:
		return UnlockRope
	case UnlockRope:
		return LockRope
	case SetLine:
		return FreeLine
	case FreeLine:
		return SetLine
	}
	return a
}

// crew is who does it: the deck, the bridge, or nobody that counts for a hand-over.
type crew uint8

const (
	nobody crew = iota
	deck
	bridge
)

func (a Act) crew() crew {
	switch a {
	case HangItem, StripItem:
		return deck
	case AddPieces, TakePieces:
		return bridge
	}
	return nobody
}

// handOvers counts the changes of side between steps: the first costs none, and lock, held lines and flights belong
// to neither side.
func handOvers(steps []OrderStep) (n int) {
	last := nobody
	for _, s := range steps {
		now := s.Act.crew()
		if now == nobody {
			continue
		}
		if last != nobody && last != now {
			n++
		}
		last = now
	}
	return n
}

// From is what hangs and what is in the arbor when an order begins. The zero value is no choice and is refused.
type From uint8

// Where an order may begin.
const (
	FromBare   From = iota + 1 // nothing hangs but what is said to, the pipe weight is in
	FromLoaded                 // all hangs, and the whole stack is in
)

var fromNames = [...]string{FromBare: "bare", FromLoaded: "loaded"}

const wantFrom = `"bare" or "loaded"`

func (f From) known() bool { return f == FromBare || f == FromLoaded }

// String names the choice: "bare", "loaded".
func (f From) String() string {
	if f.known() {
		return fromNames[f]
	}
	return "From(" + strconv.Itoa(int(f)) + ")"
}

// MarshalText writes the choice's name; for any other value it gives a *units.FieldError.
func (f From) MarshalText() ([]byte, error) {
	if !f.known() {
		return nil, &units.FieldError{Value: f.String(), Want: wantFrom, Err: units.ErrUnknown}
	}
	return []byte(f.String()), nil
}

// UnmarshalText reads a choice by name. Where it fails, with a *units.FieldError, the value is left as it was.
func (f *From) UnmarshalText(text []byte) error {
	for i, name := range fromNames {
		if name != "" && name == string(text) {
			*f = From(i)
			return nil
		}
	}
	return &units.FieldError{Value: strconv.Quote(string(text)), Want: wantFrom, Err: units.ErrUnknown}
}
