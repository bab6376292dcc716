package arbor

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Reach is what arms reach of an arbor from a loading bridge while the batten is
// at one trim.
type Reach struct {
	Bridge string       `json:"bridge"`
	Trim   units.Length `json:"trim"` // of the batten, above the deck
	Foot   units.Length `json:"foot"` // height of the arbor's foot above the deck

	// Any tells whether any of the room on the rods is in reach. Then From and To are the heights on the rods between
	// which it is, counted from the underside of the lowest piece as heights in a stack are: from 0 to the frame's room.
	Any  bool         `json:"any"`
	From units.Length `json:"from,omitzero"` // on the rods
	To   units.Length `json:"to,omitzero"`   // on the rods

	// First and Last are the pieces that are wholly in reach, counted from 1 at the bottom, pipe weight and show weight
	// as one; both 0: none is. Below and Above count the rest; a piece that sticks out of the band at both ends is below.
	First int `json:"first,omitzero"`
	Last  int `json:"last,omitzero"`
	Below int `json:"below"` // pieces that are not in reach because they lie too low
	Above int `json:"above"` // pieces that are not in reach because they lie too high
}

// Reach tells what arms reach from the bridge of that name while the batten is at
// a trim: of the rods, and of the pieces of a stack, which may be empty. A piece
// is in reach where all of its thickness is between the lowest and the highest
// that arms reach, both inclusive.
//
// An unknown bridge, a trim that the set does not reach and a stack that is
// taller than the room are *units.FieldError, joined.
func (f Flight) Reach(bridge string, trim units.Length, s Stack) (Reach, error) {
	var p check.Problems
	b, err := f.Run.bridge(bridge)
	p.Within("", "", err)
	top, err := f.top(trim)
	p.Within("", "", err)
	pieces, err := pileOf(s, f.Frame)
	p.Within("", "", err)
	if err := p.Err(); err != nil {
		return Reach{}, err
	}
	foot := top - nanometres(f.Frame.Length)
	low, high := f.onRods(b, foot)
	first, end := pieces.between(low, high)
	out := Reach{Bridge: bridge, Trim: trim, Foot: metres(foot), Below: first, Above: pieces.pieces - end}
	if first < end {
		out.First, out.Last = first+1, end
	}
	if low, high = max(low, 0), min(high, nanometres(f.Frame.Room)); low < high {
		out.Any, out.From, out.To = true, metres(low), metres(high)
	}
	return out, nil
}

// onRods gives the band of a bridge as heights on the rods of an arbor whose foot is at a height.
func (f Flight) onRods(b Bridge, foot int64) (low, high int64) {
	low, high = b.band()
	bed := foot + nanometres(f.Ride.Bed)
	return low - bed, high - bed
}

// Window is the trims of the batten at which something holds.
type Window struct {
	Ever bool         `json:"ever"`          // false: at no trim that the set reaches
	Low  units.Length `json:"low,omitzero"`  // lowest of the trims, inclusive
	High units.Length `json:"high,omitzero"` // highest of the trims, inclusive
}

// Window gives the trims at which arms reach, from the bridge of that name, all
// that lies between two heights on the rods: the bottom and the top of a piece,
// counted as heights in a stack are. The lower the piece, the higher the arbor
// and the lower the batten that brings it into reach.
//
// An unknown bridge and heights that are not on the rods, from the bed to the
// frame's room, are *units.FieldError, joined.
func (f Flight) Window(bridge string, bottom, top units.Length) (Window, error) {
	var p check.Problems
	b, err := f.Run.bridge(bridge)
	p.Within("", "", err)
	if check.NotNegative(&p, "bottom", bottom) && check.NotNegative(&p, "top", top) {
		if nanometres(top) > nanometres(f.Frame.Room) {
			p.Add("top", check.Show(top), "at most "+check.Show(f.Frame.Room)+", the room on the rods", units.ErrOutOfRange)
		}
		if bottom > top {
			p.Add("bottom", check.Show(bottom), "at most the top, "+check.Show(top), units.ErrOutOfRange)
		}
	}
	if err := p.Err(); err != nil {
		return Window{}, err
	}
	return f.window(b, nanometres(bottom), nanometres(top)), nil
}

func (f Flight) window(b Bridge, bottom, top int64) Window {
	low, high := f.tops(b, bottom, top)
	if low > high {
		return Window{}
	}
	return Window{true, metres(f.trim(high)), metres(f.trim(low))}
}

// tops gives the heights of the arbor's top, within its run, at which what lies
// from bottom to top on its rods is in reach: none where low is above high.
func (f Flight) tops(b Bridge, bottom, top int64) (low, high int64) {
	from, to := b.band()
	rods := nanometres(f.Ride.Bed) - nanometres(f.Frame.Length) // of the bed, from the arbor's top
	low, high = max(from-bottom-rods, nanometres(f.LowestTop)), min(to-top-rods, nanometres(f.HighestTop))
	return low, high
}
