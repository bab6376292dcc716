package lineset

import (
	"slices"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// HandTerms is what the figures at the rail follow from, at one trim.
type HandTerms struct {
	Pulls []units.Force `json:"pulls"` // what each lift line bears at the batten
	Arbor units.Mass    `json:"arbor"` // with its stack
	Ratio float64       `json:"ratio"` // batten travel for each unit of arbor travel
	Parts float64       `json:"parts"` // of the hand line, at each end of the arbor

	Idler  units.Mass    `json:"idler"`         // free in its guides, its weight is shared by its two parts
	Base   units.Force   `json:"base,omitzero"` // of each of them, where it is held; zero: it is free
	ToLock units.Length  `json:"to_lock"`       // from the idler up to the rope lock
	Drag   purchase.Drag `json:"drag"`          // of every sheave

	Lift []RopeTerms `json:"lift"`
	Hand RopeTerms   `json:"hand"`
}

// RopeTerms is one rope along its path.
type RopeTerms struct {
	Name  string         `json:"name"`
	Mass  units.LineMass `json:"mass"`  // per length
	Stops []StopTerms    `json:"stops"` // in the order of its path, both ends among them
}

// StopTerms is what the tension meets up to a stop and at it.
type StopTerms struct {
	At   string        `json:"at"`   // its name
	On   purchase.Body `json:"on"`   // what it rides on
	Rise units.Length  `json:"rise"` // from the stop before: the tension grows by so much rope's weight; negative: down
	Turn units.Angle   `json:"turn"` // of the rope at a sheave
	// Factor is the tension past the sheave over that up to it, along the path, while the batten flies out. While it flies in
	// it is the inverse. 1 at an end.
	Factor float64 `json:"factor"`
}

func (r *Rigged) terms(s State) (HandTerms, error) {
	g, err := r.ropes.Geometry(s.Trim)
	if err != nil {
		return HandTerms{}, err
	}
	rigging := r.set.Rigging
	on := r.bodies(s.Share)
	t := HandTerms{
		Pulls: on.Pulls, Arbor: on.Arbor, Ratio: r.ropes.Ratio(), Parts: r.ropes.Ratio() * r.ropes.HandRatio(),
		Idler: on.Idler, Base: on.Base, ToLock: rigging.Rail - rigging.Idler.Height, Drag: rigging.Drag,
	}
	reeving := rigging.layout(nil).Reeving()
	datum := map[purchase.Body]units.Length{purchase.Batten: s.Trim, purchase.Arbor: g.ArborTop, purchase.Idler: reeving.Idler}
	for i, rope := range reeving.Lift {
		terms, err := ropeTerms(rope, g.Lift[i].Turns, datum)
		if err != nil {
			return HandTerms{}, err
		}
		t.Lift = append(t.Lift, terms)
	}
	t.Hand, err = ropeTerms(reeving.Hand, g.Hand.Turns, datum)
	return t, err
}

func ropeTerms(rope purchase.Rope, turns []purchase.Turn, datum map[purchase.Body]units.Length) (RopeTerms, error) {
	t := RopeTerms{Name: rope.Name, Mass: rope.Mass, Stops: make([]StopTerms, len(rope.Path))}
	var below units.Length
	for i, stop := range rope.Path {
		height := datum[stop.On] + stop.Height
		t.Stops[i] = StopTerms{At: stop.Name, On: stop.On, Factor: 1}
		if i > 0 {
			t.Stops[i].Rise = height - below
		}
		below = height
		if i == 0 || i == len(rope.Path)-1 {
			continue
		}
		t.Stops[i].Turn = min(turns[i-1].Angle, units.Turn/2)
		// A layout lays every rope the way in which it runs while the batten flies out: the tight side is the next stop's.
		var err error
		if t.Stops[i].Factor, err = stop.Drag.Factor(t.Stops[i].Turn); err != nil {
			return RopeTerms{}, err
		}
	}
	return t, nil
}

// whole tells whether the terms are those of a set.
func (t HandTerms) whole() bool {
	if len(t.Lift) == 0 || len(t.Lift) != len(t.Pulls) {
		return false
	}
	for _, rope := range append(slices.Clone(t.Lift), t.Hand) {
		if len(rope.Stops) < 2 || slices.ContainsFunc(rope.Stops, func(s StopTerms) bool { return !(s.Factor > 0) }) {
			return false
		}
	}
	idler := t.Hand.idler()
	return idler > 0 && idler < len(t.Hand.Stops)-1
}

// idler is the stop at it; none: −1.
func (t RopeTerms) idler() int {
	return slices.IndexFunc(t.Stops, func(s StopTerms) bool { return s.On == purchase.Idler })
}

// upToLock is what the tension gains from the idler up to the rope lock.
func (t HandTerms) upToLock() units.Force {
	return t.Hand.Mass.Over(t.ToLock).Weight(units.StandardGravity)
}

// gains is what the tension gains from its own weight between two stops that are neighbours.
func (t RopeTerms) gains(from, to int) units.Force {
	rise := t.Stops[max(from, to)].Rise
	if to < from {
		rise = -rise
	}
	return t.Mass.Over(rise).Weight(units.StandardGravity)
}

// past is the tension past a stop over that up to it on a walk along the path, step 1, or against it, −1, while
// the batten flies one way.
func (t RopeTerms) past(stop, step int, way purchase.Way) float64 {
	k := t.Stops[stop].Factor
	if (step < 0) != (way == purchase.In) {
		return 1 / k
	}
	return k
}
