package purchase

import "example.com/steelyard/internal/rope"

// motions is how the ropes run, whatever their drag.
type motions struct {
	courses []course // of each lift line, then of the hand line
	rail    []railRope
	grip    [grips]int    // the part of the hand line that a hand grips; −1: none. Nobody grips where there is no hand line
	felt    rope.Straight // mass of ropes and sheaves felt at the batten, kg, with the arbor's top moved up
}

// Where a hand may grip a rope: nowhere, or at the rail on the part of a role.
const (
	nowhere = int(DeadRope)
	grips   = int(OuterRope) + 1
)

// course is how a rope runs while the batten flies out at a unit of speed.
type course struct {
	legs   []direction     // of each part, from the stop it leaves to the one it runs to
	speed  []float64       // of the rope of each part, towards the path's end
	past   []float64       // of the rope past each stop, seen from it
	length []rope.Straight // of each part, with the arbor's top moved up
}

// motions is worked out when it is first asked.
func (r *Reeved) motions() *motions {
	return r.moving.Get(func() *motions {
		m := &motions{courses: make([]course, 0, len(r.lift)+1)}
		at, travel, out := r.heights(r.top), r.travel(), rope.Speeds{Batten: 1, Arbor: -r.perRatio}
		for _, l := range r.all() {
			m.courses = append(m.courses, l.course(&at, &travel, &out))
		}
		if r.lock >= 0 {
			m.rail = r.findRail(&m.courses[len(r.lift)])
			m.grip = [grips]int{nowhere: -1, InnerRope: partOf(m.rail, InnerRope), OuterRope: partOf(m.rail, OuterRope)}
		}
		m.felt = r.ropesFelt(m.courses)
		return m
	})
}

// travel is how fast the bodies rise while the arbor rises at a unit of speed.
func (r *Reeved) travel() rope.Speeds { return rope.Speeds{Batten: -r.ratio, Arbor: 1} }

// course gives that of a rope: while the arbor rises by a unit the bodies rise by travel, and while the batten flies out at one
// they rise as fast as out says. The first part runs as its end's body takes it along, and past each sheave the rope runs as
// fast as up to it, seen from the sheave.
func (l *laid) course(at *rope.Heights, travel, out *rope.Speeds) course {
	parts := l.last()
	figures := make([]float64, 2*parts+1)
	c := course{legs: make([]direction, parts), speed: figures[:parts:parts], past: figures[parts:], length: make([]rope.Straight, parts)}
	for i := range c.legs {
		across, up, length := l.part(i, at)
		c.legs[i] = direction{across, up}
		by := out[l.on(i)]
		c.speed[i] = float64(by * up)
		if i > 0 {
			c.past[i] = c.speed[i-1] - float64(by*c.legs[i-1].up)
			c.speed[i] += c.past[i]
		}
		// A part whose length changes hangs plumb.
		c.length[i] = rope.Straight{Start: length, Rate: float64((travel[l.on(i+1)] - travel[l.on(i)]) * up)}
	}
	return c
}
