package purchase

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// Geometry is how the ropes of a set lie at one trim, and how they run as it
// leaves it. Nothing in it depends on what hangs or on drag.
type Geometry struct {
	Trim     units.Length   `json:"trim"`
	ArborTop units.Length   `json:"arbor_top"` // height above the deck
	Lift     []RopeGeometry `json:"lift"`
	Hand     RopeGeometry   `json:"hand"` // zero without a hand line
}

// RopeGeometry is one rope along its path.
type RopeGeometry struct {
	Name string `json:"name"`
	// Length is from end to end along the path. It is the same at every trim: what a
	// part loses another gains. So it is the length under tension that a lift line
	// stretches over, and with what is made off at its ends the length to cut, enough for
	// all of Reach.
	Length units.Length `json:"length"`
	// AtBatten is how many plumb parts hold the batten: see LongerFor. It is 0 for the hand line.
	AtBatten float64        `json:"at_batten,omitzero"`
	Parts    []PartGeometry `json:"parts"`
	Turns    []Turn         `json:"turns"` // at its sheaves, in the order of the path
}

// PartGeometry is a straight piece of a rope between two stops.
type PartGeometry struct {
	From   string       `json:"from"`   // name of the stop it leaves
	To     string       `json:"to"`     // name of the stop it runs to
	Length units.Length `json:"length"` // at this trim
	// Fleet is the part's angle to the planes of the sheaves at its ends, which are all parallel to the plane of the
	// set: how far one end stands off more than the other, over the length at this trim, by the arctangent. It
	// is never negative, and 0 for a part at the batten, which hangs plumb.
	Fleet units.Angle `json:"fleet,omitzero"`
	// Speed is how fast the rope of this part runs while the batten flies out at one
	// unit of speed: positive towards To, negative towards From, zero for a part that
	// stands still. While the batten flies in every sign is the other one.
	Speed float64 `json:"speed"`
}

// Turn is what the rope does at a sheave.
type Turn struct {
	At string `json:"at"` // name of the sheave's stop
	On Body   `json:"on"`
	// Angle is that by which the rope turns, its contact with the sheave: more than 0,
	// up to half a turn, for sheaves are points.
	Angle units.Angle `json:"angle"`
	// SheaveRatio is the sheave's tread over the rope's diameter; 0: not both are given.
	SheaveRatio float64 `json:"sheave_ratio,omitzero"`
	// Speed is how fast the rope runs past the sheave, seen from it, while the batten
	// flies out at one unit of speed: the speed of its rim. Signs as for the parts.
	Speed float64 `json:"speed"`
}

// Geometry gives lengths, turns, fleet angles and speeds of all ropes at a trim. A rope runs as
// its first end is taken along, and past each sheave as fast as up to it, seen
// from the sheave. The error tells a trim beyond Reach.
func (r *Reeved) Geometry(trim units.Length) (Geometry, error) {
	if _, err := r.moved(trim); err != nil {
		return Geometry{}, err
	}
	return r.geometry(trim), nil
}

// geometry is Geometry at a trim that is known to be inside Reach.
func (r *Reeved) geometry(trim units.Length) Geometry {
	y := r.top + r.movedTo(trim)
	h := r.heights(y)
	g := Geometry{Trim: trim, ArborTop: units.Length(y), Lift: make([]RopeGeometry, len(r.lift))}
	courses := r.motions().courses
	for i := range r.lift {
		g.Lift[i] = r.lift[i].geometry(&h, &courses[i])
	}
	if r.lock >= 0 {
		g.Hand = r.hand.geometry(&h, &courses[len(r.lift)])
	}
	return g
}

// still is a speed, as a share of the batten's, that only rounding has left.
const still = 1e-12 // untyped: a plain ratio

func (l *laid) geometry(h *rope.Heights, course *course) RopeGeometry {
	last := l.last()
	out := RopeGeometry{Name: l.rope.Name, Parts: make([]PartGeometry, last), Turns: make([]Turn, last-1)}
	out.AtBatten, _ = l.pull(Batten, 0)
	for i := range out.Parts {
		_, _, length := l.part(i, h)
		out.Length += units.Length(length)
		a, b := &l.rope.Path[i], &l.rope.Path[i+1]
		out.Parts[i] = PartGeometry{From: a.Name, To: b.Name, Length: units.Length(length), Speed: unlessStill(course.speed[i])}
		if off := units.Abs(b.Offset - a.Offset).In(units.Metre); off > 0 && a.On != Batten && b.On != Batten {
			out.Parts[i].Fleet = units.Angle(rope.FleetAngle(off, max(length, plumb)))
		}
	}
	for i := range out.Turns {
		s := l.rope.Path[i+1]
		out.Turns[i] = Turn{At: s.Name, On: s.On, Angle: units.Angle(l.turn(i+1, h)), Speed: unlessStill(course.past[i+1])}
		if s.Tread > 0 && l.rope.Diameter > 0 {
			out.Turns[i].SheaveRatio = units.Ratio(s.Tread, l.rope.Diameter)
		}
	}
	return out
}

// turn is [rope.Turn] at a sheave.
func (l *laid) turn(stop int, h *rope.Heights) float64 {
	ux, uz, _ := l.part(stop-1, h)
	vx, vz, _ := l.part(stop, h)
	return rope.Turn(ux, uz, vx, vz)
}

func unlessStill(speed float64) float64 {
	if math.Abs(speed) < still {
		return 0
	}
	return speed
}

// Cut is the length to cut: the rope's own, along its path, and what its
// termination takes at the first end and at the last. An allowance that is
// negative or not finite is a *units.FieldError.
//
// For a wanted travel, say in the Layout or Reeving at which trim the batten is while the arbor's top is
// where: the lowest trim with the arbor at its highest. The rope is then cut for the highest trim too, if Reach
// goes so far and the arbor finds the room.
func (r RopeGeometry) Cut(first, last units.Length) (units.Length, error) {
	var p check.Problems
	check.NotNegative(&p, "first", first)
	check.NotNegative(&p, "last", last)
	if err := p.Err(); err != nil {
		return 0, err
	}
	return r.Length + first + last, nil
}

// LongerFor is how much longer a lift line must be for the batten to hang lower by a length while the arbor is
// where it was; negative lengths are higher, and shorter. One part at the batten wants as much rope, two want
// twice as much. It is zero for the hand line. The error is a *units.FieldError for a length that is not finite.
func (r RopeGeometry) LongerFor(lower units.Length) (units.Length, error) {
	var p check.Problems
	longer := lower.Scale(r.AtBatten)
	if check.Finite(&p, "lower", lower) {
		check.Finite(&p, "at_batten", longer)
	}
	if err := p.Err(); err != nil {
		return 0, err
	}
	return longer, nil
}
