package lineset

import (
	"errors"
	"strconv"

	"example.com/steelyard/internal/strictjson"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// What cannot be done in an order, for use with errors.Is. Each comes in a *units.FieldError with the path of the
// step's field; so do units.ErrUnknown for an item that is not in the hang or a piece that is not in the stock, and
// units.ErrOutOfRange for a trim that the set does not reach and for pieces that are not there or have no room.
// ErrDiffers is of a change-over, where two houses are not one.
var (
	ErrHung       = errors.New("hangs already")
	ErrNotHung    = errors.New("does not hang")
	ErrNotIn      = errors.New("is not in the arbor")
	ErrNotOnTop   = errors.New("lies under other pieces")
	ErrLocked     = errors.New("is not to be flown with the rope lock shut")
	ErrHeld       = errors.New("is not to be flown while a line holds it")
	ErrOutOfReach = errors.New("is out of reach")
	ErrDiffers    = errors.New("is not the same")
	ErrNotWanted  = errors.New("is not wanted here")
	ErrLineSet    = errors.New("has a line set already")
	ErrNoLine     = errors.New("has no line set")
	ErrUnlocked   = errors.New("is not to be worked on with the rope lock open")
	ErrLockIsSo   = errors.New("is so already")
)

// Order is in which order deck, loading bridge and rail hang, strip, weight and fly a set: plain data. It begins with
// the rope lock shut and no line set. Which items and pieces there are is told by the set and its stock.
type Order struct {
	From From         `json:"from"`          // must be said
	Trim units.Length `json:"trim,omitzero"` // of the batten at first; zero: the lowest that the set reaches

	// What there is at first beside the bare batten and its pipe weight, where the order is from bare: places in the
	// hang, counted from 1, and show weight, from the bottom up. Neither: nothing.
	Hung   []int       `json:"hung,omitempty"`
	Pieces []PiecesOf  `json:"pieces,omitempty"`
	Steps  []OrderStep `json:"steps,omitempty"`
}

// PiecesOf is so many pieces of one kind.
type PiecesOf struct {
	Piece string `json:"piece"` // what the kind is called in the stock
	Count int    `json:"count"` // how many of it
}

// OrderStep is one step. Its Act says which of the other fields it needs; the others are to be left out.
type OrderStep struct {
	Act Act `json:"act"`

	// To hang and strip: which item of the hang. By its name; or by its place, counted from 1, where it has no name
	// of its own. Both must be of one item.
	Item  string `json:"item,omitempty"`
	Place int    `json:"place,omitzero"`

	// To add and take: which kind of piece and how many.
	Piece string `json:"piece,omitempty"`
	Count int    `json:"count,omitzero"`

	Trim units.Length  `json:"trim,omitzero"` // to fly: where to
	On   purchase.Body `json:"on,omitzero"`   // to set a line: what it holds, the batten or the arbor
}

// UnmarshalJSON decodes an order as House.UnmarshalJSON decodes a house.
func (o *Order) UnmarshalJSON(text []byte) error {
	type plain Order // without this method, so that the decoder looks at the fields
	var p plain
	if err := strictjson.Decode(text, &p); err != nil {
		return err
	}
	*o = Order(p)
	return nil
}

// Call is the step as it is read out: hang border, add 5 of the 44, fly to 20' 0". That of no step is "begin".
func (s OrderStep) Call(sys units.System) string {
	switch s.Act {
	case HangItem, StripItem:
		if s.Item == "" {
			return s.Act.String() + " item " + strconv.Itoa(s.Place)
		}
		return s.Act.String() + " " + strictjson.Line(s.Item)
	case AddPieces:
		return "add " + callPieces(s.Count, s.Piece)
	case TakePieces:
		return "take out " + callPieces(s.Count, s.Piece)
	case FlyTo:
		return "fly to " + sys.Format(s.Trim)
	case LockRope:
		return "shut the rope lock"
	case UnlockRope:
		return "open the rope lock"
	case SetLine:
		return "set a line on the " + s.On.String()
	case FreeLine:
		return "free the line"
	}
	return "begin"
}

func callPieces(n int, name string) string {
	return strconv.Itoa(n) + " of the " + strictjson.Line(name)
}
