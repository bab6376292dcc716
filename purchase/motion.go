package purchase

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// motion is what a set does while it flies one way: the batten's upward acceleration is
// −(force + square·v² + pull·P)/mass, with v its speed and P a hand's pull on one of the ropes at the rail. It is
// what keeps the arbor in its equilibrium with the ropes, referred to the batten; without drag force is the imbalance,
// mass the mass felt and square half of its slope.
type motion struct {
	force, mass  rope.Straight // by how far the arbor has moved
	square, pull float64
}

// motion works it out: the pull at the start of each rope is that which bears what hangs there, as it speeds up.
func (r *Reeved) motion(way Way, hand Role, on Bodies) motion {
	weight := on.Arbor.Weight(units.StandardGravity).In(units.Newton)
	g := units.StandardGravity.In(units.MetrePerSecondSquared)
	up := rope.Tension{Plain: rope.Straight{Start: -weight}, PerAcceleration: rope.Straight{Start: on.Arbor.In(units.Kilogram) / r.ratio}}
	drives := r.drives()
	for i := range r.lift {
		onto := &drives[i].onto[way-Out][nowhere]
		pull := on.Pulls[i].In(units.Newton)
		start := rope.Tension{Plain: rope.Straight{Start: pull}, PerAcceleration: rope.Straight{Start: pull / g}}
		up = up.Plus(started(onto.arbor, onto.known, start), 1)
	}
	if r.lock >= 0 {
		onto := &drives[len(r.lift)].onto[way-Out][hand]
		start := rope.Tension{Plain: rope.Straight{Start: on.onIdler(r.idlerParts)}}
		up = up.Plus(started(onto.arbor, onto.known, start), 1)
	}
	up = up.Times(r.perRatio)
	return motion{force: up.Plain, mass: up.PerAcceleration, square: up.PerSquare, pull: up.PerPull}
}

// started is what a rope does to one body once its tension at the beginning is such that it pulls another with what is
// wanted there.
func started(does, there, wanted rope.Tension) rope.Tension {
	start := wanted.Plus(there, -1)
	start = start.Times(1 / there.PerStart)
	return does.Plus(start, does.PerStart)
}

// at gives the batten's upward acceleration.
func (m *motion) at(moved, square, pull float64) float64 {
	return -(m.force.At(moved) + float64(m.square*square) + float64(m.pull*pull)) / m.mass.At(moved)
}

// Speeding is a set that speeds up or slows down.
type Speeding struct {
	Way   Way                `json:"way"`
	Speed units.Speed        `json:"speed"` // of the batten, that way: zero or more
	Gain  units.Acceleration `json:"gain"`  // how fast it gains speed that way; below zero it loses speed
}

// Pulling is a hand on a rope at the rail.
type Pulling struct {
	Pull units.Force `json:"pull"` // downwards, zero or more
	Rope Role        `json:"rope"` // inner or outer; without a pull it does not matter
}

// Gain tells how fast the set gains speed at a trim while a hand pulls: below zero it loses speed, or, with no speed yet,
// does not start that way. The drag is that of the tensions as they are while it speeds up. The errors are those of
// [Reeved.Run], and a *units.FieldError for a speed or a pull below zero and a rope that is not there to be pulled.
func (r *Reeved) Gain(trim units.Length, on Bodies, way Way, speed units.Speed, hand Pulling) (units.Acceleration, error) {
	moved, err := r.canMove(trim, on, way, speed)
	if err != nil {
		return 0, err
	}
	var p check.Problems
	check.NotNegative(&p, "pull", hand.Pull)
	if hand.Pull > 0 && r.motions().grip[min(hand.Rope, OuterRope)] < 0 {
		p.Add("rope", hand.Rope.String(), "a rope at the rail that moves the set: the inner or the outer one", units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return 0, err
	}
	if !r.weighs(on) {
		return 0, nothingMoves()
	}
	m := r.motion(way, min(hand.Rope, OuterRope), on)
	v := speed.In(units.MetrePerSecond)
	return units.Acceleration(way.sign() * m.at(moved, float64(v*v), hand.Pull.In(units.Newton))), nil
}

// HandFor is the pull that lets a set gain or lose speed as wanted at a trim, and the rope that it is on. Errors as for
// [Reeved.Gain].
func (r *Reeved) HandFor(trim units.Length, on Bodies, s Speeding) (Pulling, error) {
	moved, err := r.canMove(trim, on, s.Way, s.Speed)
	if err != nil {
		return Pulling{}, err
	}
	var p check.Problems
	check.Finite(&p, "gain", s.Gain)
	if err := p.Err(); err != nil {
		return Pulling{}, err
	}
	drives, ok := r.pullFor(moved, on, s, InnerRope)
	other, also := r.pullFor(moved, on, s, OuterRope)
	switch {
	case ok && drives.Pull >= 0:
		return drives, nil
	case also && other.Pull >= 0:
		return other, nil
	}
	p.Add("hand", "", "a rope at the rail whose pull moves the arbor that way", ErrNoTravel)
	return Pulling{}, p.Err()
}

// pullFor is the pull on a given rope, which may be below zero.
func (r *Reeved) pullFor(moved float64, on Bodies, s Speeding, rope Role) (Pulling, bool) {
	m := r.motion(s.Way, rope, on)
	if r.motions().grip[rope] < 0 || abs(m.pull) < still {
		return Pulling{}, false
	}
	v := s.Speed.In(units.MetrePerSecond)
	up := s.Way.sign() * s.Gain.In(units.MetrePerSecondSquared)
	wanted := -float64(up*m.mass.At(moved)) - m.force.At(moved) - float64(m.square*float64(v*v))
	return Pulling{Pull: units.Force(wanted / m.pull), Rope: rope}, true
}

func (r *Reeved) canMove(trim units.Length, on Bodies, way Way, speed units.Speed) (moved float64, err error) {
	if moved, err = r.moved(trim); err != nil {
		return 0, err
	}
	if err := r.canRun(way); err != nil {
		return 0, err
	}
	if err := on.validate(len(r.lift)); err != nil {
		return 0, err
	}
	var p check.Problems
	check.NotNegative(&p, "speed", speed)
	return moved, p.Err()
}

// weighs tells whether anything that moves has a mass.
func (r *Reeved) weighs(on Bodies) bool {
	weighs := on.Arbor > 0 || r.motions().felt.Start > 0
	for _, pull := range on.Pulls {
		weighs = weighs || pull > 0
	}
	return weighs
}

func nothingMoves() error {
	return &units.FieldError{Field: "pulls", Want: "something that moves, on the batten or in the arbor", Err: units.ErrMissing}
}

// sign is 1 while the batten flies out, −1 while it flies in.
func (w Way) sign() float64 {
	if w == In {
		return -1
	}
	return 1
}

func abs(x float64) float64 { return math.Abs(x) }
