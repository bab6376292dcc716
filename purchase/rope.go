package purchase

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/steelyard/units"
)

// Body is what a stop of a rope rides on. Grid, HeadBeam, Rail and Building stand
// still; Batten, Arbor and Idler move up and down.
type Body uint8

// The bodies of a set.
const (
	Building Body = iota // any fixed part that has no name of its own
	Grid                 // what carries the loft blocks
	HeadBeam             // what carries the head block and the dead ends beside it
	Rail                 // the locking rail
	Batten               // datum: the batten's trim
	Arbor                // datum: the arbor's top
	Idler                // the tension block in its guides; datum: where it rests
	bodies
)

var bodyNames = [bodies]string{"building", "grid", "head beam", "rail", "batten", "arbor", "idler"}

// String names the body.
func (b Body) String() string {
	if b < bodies {
		return bodyNames[b]
	}
	return "unknown body"
}

// MarshalText writes the body's name; an unknown body is an error.
func (b Body) MarshalText() ([]byte, error) {
	if b >= bodies {
		return nil, fmt.Errorf("body %d %w", uint8(b), units.ErrUnknown)
	}
	return []byte(bodyNames[b]), nil
}

// UnmarshalText reads a body by its name. Where it fails, with a
// *units.FieldError, the body is left as it was.
func (b *Body) UnmarshalText(text []byte) error {
	for i, name := range bodyNames {
		if name == string(text) {
			*b = Body(i)
			return nil
		}
	}
	return &units.FieldError{Value: strconv.Quote(string(text)), Want: "one of " + strings.Join(bodyNames[:], ", "), Err: units.ErrUnknown}
}

// Stop is a place on a rope's path: its first and last stops are ends, made off
// there; those between are sheaves, taken as points, and the rope turns at each of
// them. Stops of the same name, on one rope or several, are one block, with a sheave
// for each: their loads are added up. So they ride on one body and stand within a
// metre of the first of them, for a block is no larger.
// The batten's ends are no block: each line bears its own.
//
// A rope lies in the plane of the set all along, but for its Offset. That makes fleet
// angles and nothing else: lengths, turns and tensions are those in the plane. At the
// usual limit of a fleet angle, 1.5 degrees, whose cosine is 0.9997, a part is 3 in
// 10 000 longer than that.
type Stop struct {
	Name   string       `json:"name"`
	On     Body         `json:"on"`
	Across units.Length `json:"across"`          // from the arbor's centre line, positive towards the far end of the batten
	Height units.Length `json:"height"`          // above the deck on what stands still; above the datum of a body that moves
	Offset units.Length `json:"offset,omitzero"` // off the plane of the set, positive upstage, at most 1 m; none on the batten, which hangs plumb under its blocks
	Tread  units.Length `json:"tread,omitzero"`  // diameter of the sheave at the bottom of its groove; zero: not given; an end has none
	Drag   Drag         `json:"drag,omitzero"`   // of the sheave; an end has none
	// Rim is the mass that would be as hard to set turning, all of it at the groove: units.Inertia.Mass of the sheave and the
	// radius there, half the mass of a plain disc. Zero: left out. On a body that moves, the sheave's own mass is the body's.
	Rim units.Mass `json:"rim,omitzero"`
}

// Rope is a rope of given mass per length over its stops.
type Rope struct {
	Name     string         `json:"name"`
	Mass     units.LineMass `json:"mass"`
	Diameter units.Length   `json:"diameter,omitzero"` // nominal; zero: not given
	Path     []Stop         `json:"path"`
}

// Reeving is the ropes of a set, any number of parts: what Layout lays for the
// standard single, double and triple purchase, or paths of your own. Parts between the
// building and a body that moves must hang plumb.
type Reeving struct {
	Lift []Rope `json:"lift"` // from the batten over the blocks to the arbor, in the order of the batten's lines
	Hand Rope   `json:"hand"` // from the arbor's foot round the idler and over the head block to its top; without a path: no hand line

	// Where everything stood when the ropes were made off. A rope's length does
	// not change, so this fixes it.
	Trim     units.Length `json:"trim"`      // the batten's
	ArborTop units.Length `json:"arbor_top"` // the height of the arbor's top
	Idler    units.Length `json:"idler"`     // where the idler rests

	Lock units.Length `json:"lock"` // height of the rope lock
}
