package purchase

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/internal/slab"
	"example.com/steelyard/units"
)

// driven is what drag makes of a rope while batten and arbor move, and what comes of it.
type driven struct {
	*course
	grip [grips]int  // the part that a hand grips; −1: none
	at   []dragged   // each stop
	onto [2][]upward // what the rope pulls each body up with while it runs, out and in, by where a hand grips it: a lift line nowhere
}

// dragged is what drag makes of the tension at a stop.
type dragged struct {
	drag   float64    // coefficient
	tight  float64    // tight side over slack side
	factor [2]float64 // tension past it over that up to it, while the batten flies out and in
}

// upward is what a rope pulls the two bodies up with that it moves with: the one at which its tension is known, the batten of a
// lift line and the idler of the hand line, and the arbor.
type upward struct{ known, arbor rope.Tension }

func (u *upward) add(body Body, t *rope.Tension, along float64) {
	switch body {
	case Batten, Idler:
		u.known.Add(t, along)
	case Arbor:
		u.arbor.Add(t, along)
	}
}

// drive fills in what drag makes of it. The tight side of a sheave is the one the rope runs to; a rope that does not run past
// has no side to be tight.
func (l *laid) drive(d *driven, drag func(*Stop) float64) {
	for i := range d.at {
		at, k, past := &d.at[i], 1.0, d.past[i]
		at.drag = drag(&l.rope.Path[i])
		if at.drag != 0 && i > 0 && i < len(d.legs) {
			a, b := d.legs[i-1], d.legs[i]
			k = rope.DragRatio(at.drag, a.across, a.up, b.across, b.up)
		}
		at.tight = k
		switch {
		case math.Abs(past) < still:
			k = 1
		case past < 0:
			k = 1 / k
		}
		at.factor = [2]float64{k, 1 / k}
	}
	for way, onto := range d.onto {
		for role := range onto {
			onto[role] = l.forces(d, way, d.grip[role])
		}
	}
}

// drives is what drag makes of each rope, worked out when it is first asked.
func (r *Reeved) drives() []driven {
	return r.driven.Get(func() []driven {
		drives := r.newDrives()
		r.drive(drives, func(s *Stop) float64 { return float64(s.Drag) })
		return drives
	})
}

// newDrives has room for what drag makes of the lift lines and then of the hand line, and drive fills that in, with any drag
// at each sheave.
func (r *Reeved) newDrives() []driven {
	drives, motions := make([]driven, len(r.lift)+1), r.motions()
	stops := 0
	for _, l := range r.all() {
		stops += len(l.stations)
	}
	at, onto := make([]dragged, stops), make([]upward, 2*(len(r.lift)+grips))
	for i, l := range r.all() {
		roles, grip := nowhere+1, [grips]int{nowhere: -1}
		if i == len(r.lift) {
			roles, grip = grips, motions.grip
		}
		drives[i] = driven{course: &motions.courses[i], grip: grip, at: slab.Take(&at, len(l.stations)), onto: [2][]upward{slab.Take(&onto, roles), slab.Take(&onto, roles)}}
	}
	return drives
}

func (r *Reeved) drive(drives []driven, drag func(*Stop) float64) {
	for i, l := range r.all() {
		l.drive(&drives[i], drag)
	}
}

// rises is what the rope's own weight makes the tension grow along a part, in newtons.
func (l *laid) rises(part int) rope.Straight {
	return l.stations[part+1].hung.Less(l.stations[part].hung)
}

// rising is 1 where a part rises, else −1: above a hand that pulls down the rope bears the pull too.
func (d *direction) rising() float64 { return math.Copysign(1, d.up) }

// forces gives the upward force of the rope on each body that moves, while it runs and a hand pulls down on one of its
// parts, or on none (−1).
//
// A part of the mass m that runs lengthwise with the acceleration a wants m·a of the tensions at its ends, and a sheave its
// mass at the rim times that of the rope past it. Where rope runs past a sheave at a speed v seen from it, it
// presses on it with the tension less λv², λ its mass per length: so much it takes to turn the rope round.
func (l *laid) forces(d *driven, way, grip int) (onto upward) {
	mass := l.weight / units.StandardGravity.In(units.MetrePerSecondSquared)
	t := rope.Tension{PerStart: 1}
	for i := range d.legs {
		leg, past, rim := &d.legs[i], d.past[i], l.rope.Path[i].Rim.In(units.Kilogram) // at an end none runs past, and all this does nothing
		turning := float64(mass * float64(past*past))
		t.PerSquare -= turning
		t = t.Times(d.at[i].factor[way])
		if rim != 0 {
			t.PerAcceleration.Start += float64(l.gain(d, i, way) * float64(rim*past))
		}
		onto.add(l.on(i), &t, leg.up)
		t.PerSquare += turning
		t.Plain = t.Plain.Plus(l.rises(i))
		t.PerAcceleration = t.PerAcceleration.Plus(d.length[i].Times(float64(mass * d.speed[i])))
		if i == grip {
			t.PerPull += leg.rising()
		}
		next, arriving := d.past[i+1], t
		arriving.PerSquare -= float64(mass * float64(next*next))
		onto.add(l.on(i+1), &arriving, -leg.up)
	}
	return onto
}

// gain is how much more tension past a sheave a force takes that speeds it up.
func (l *laid) gain(d *driven, stop, way int) float64 {
	s, gain := &d.at[stop], 1.0
	if s.drag != 0 {
		a, b := d.legs[stop-1], d.legs[stop]
		gain = rope.DragGain(s.drag, a.across, a.up, b.across, b.up)
	}
	if s.factor[way] < 1 {
		gain = float64(gain * s.factor[way])
	}
	return gain
}

// start is the tension at the beginning of a lift line that bears a pull at the batten while it runs.
func (d *driven) start(way Way, pull, moved float64) float64 {
	t := &d.onto[way-Out][nowhere].known
	return (pull - t.Plain.At(moved)) / t.PerStart
}

// running fills in the tensions of the whole rope while it runs, and what it pulls its blocks with, from the tension at its
// beginning on. It gives the lowest: below zero it is not borne, and counts as zero.
func (l *laid) running(d *driven, parts []Part, blocks []Block, way Way, role int, start, pull, moved float64) (low float64) {
	grip := d.grip[role]
	t := start
	for i := range d.legs {
		leg := &d.legs[i]
		t = float64(t * d.at[i].factor[way-Out])
		from := t
		t += l.rises(i).At(moved)
		if i == grip {
			t += float64(pull * leg.rising())
		}
		to := t
		if from < 0 {
			low, from = min(low, from), 0
		}
		if to < 0 {
			low, to = min(low, to), 0
		}
		parts[i].TensionFrom, parts[i].TensionTo = units.Force(from), units.Force(to)
		a, b := &blocks[l.stations[i].block].Load, &blocks[l.stations[i+1].block].Load
		a.Across += units.Force(from * leg.across)
		a.Up += units.Force(from * leg.up)
		b.Across -= units.Force(to * leg.across)
		b.Up -= units.Force(to * leg.up)
	}
	return low
}

// slack finds where the rope would have to push the most while it runs as for running, as a fault of its path; nil where
// it is taut all along.
func (l *laid) slack(d *driven, field string, way Way, role int, start, pull, moved float64) error {
	grip := d.grip[role]
	var low float64
	var part int
	t := start
	for i := range d.legs {
		leg := &d.legs[i]
		t = float64(t * d.at[i].factor[way-Out])
		if t < low {
			low, part = t, i
		}
		t += l.rises(i).At(moved)
		if i == grip {
			t += float64(pull * leg.rising())
		}
		if t < low {
			low, part = t, i
		}
	}
	if low >= -slackened {
		return nil
	}
	return slackFault(field, part, l.named(part), check.Show(units.Force(low)))
}
