package purchase

import (
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// laid is a rope made ready to be asked. Parts whose length changes hang plumb, so their directions do not change on
// the way, and all that the rope's own weight does goes straight with the arbor's travel: what does not depend
// on the trim is worked out here, once.
type laid struct {
	rope   Rope
	path   rope.Path
	weight float64 // N/m

	stations []station // of each stop
	legs     []leg     // of each part

	sheaves []sheave    // of each stop; of an end too
	onto    [2][]upward // what the rope pulls each body up with while it runs, by where a hand grips it: a lift line nowhere
	grip    [grips]int  // the part that a hand grips; −1: none

	rests rests
}

// upward is what a rope pulls the two bodies up with that it moves with: the one at which its tension is known, the batten of a
// lift line and the idler of the hand line, and the arbor.
type upward struct{ known, arbor rope.Tension }

func (u *upward) add(body int, t *rope.Tension, along float64) {
	switch Body(body) {
	case Batten, Idler:
		u.known.Add(t, along)
	case Arbor:
		u.arbor.Add(t, along)
	}
}

// Where a hand may grip a rope: nowhere, or at the rail on the part of a role.
const (
	nowhere = int(DeadRope)
	grips   = int(OuterRope) + 1
)

// rests is what makes the tension of a lift line at height 0 at rest without drag: a pull at the batten, and the rope's
// own weight.
type rests struct {
	perPull float64
	plain   rope.Straight // N
	stops   []station
	first   int // its first part among those of all lift lines
}

// station is a stop with all that is known of it before anything hangs on the ropes.
type station struct {
	hung  rope.Straight // what the rope's own weight makes the tension here more than at height 0 without drag, N
	pulls direction     // sum of the directions of the parts that meet here, away from it
	block int           // which of the reeving's blocks it belongs to; nobody's on the batten
	first bool          // no stop before it, of this rope or another, belongs to that block
}

// sheave is that of a stop.
type sheave struct {
	drag float64 // coefficient
	rim  float64 // mass of it at its rim
	past float64 // how fast the rope runs past, seen from it, while the batten flies out at a unit of speed

	tight  float64    // tight side over slack side
	factor [2]float64 // tension past it over that up to it, while the batten flies out and in
}

// leg is the same for a part.
type leg struct {
	runs   direction
	speed  float64       // of its rope towards the path's end, while the batten flies out at a unit of speed
	rises  rope.Straight // what the rope's own weight makes the tension grow along it, N
	length rope.Straight
	rising float64 // 1 where it rises, else −1: above a hand that pulls down the rope bears the pull too
}

// direction is that of a part, from the stop it leaves to the one it runs to.
type direction struct{ across, up float64 }

// ground is memory for ropes that are laid one after the other, made for all of them at once.
type ground struct {
	path     rope.Path
	stations []station
	legs     []leg
	sheaves  []sheave
	onto     []upward
	blocks   []int // of each stop; −1: none
	met      int   // blocks that ropes laid before meet: they are numbered as they are met
}

// take cuts the first n off.
func take[S ~[]E, E any](from *S, n int) S {
	first := (*from)[:n:n]
	*from = (*from)[n:]
	return first
}

// lay lays a rope along its path while the bodies are at heights h. Stops that belong to no block count with nobody's.
func (m *ground) lay(l *laid, rp *Rope, h *rope.Heights, grips, nobodys int) {
	n := len(rp.Path)
	l.rope, l.weight = *rp, rp.Mass.Weight(units.StandardGravity).In(units.NewtonPerMetre)
	l.path, l.stations, l.legs = take(&m.path, n), take(&m.stations, n), take(&m.legs, n-1)
	l.sheaves = take(&m.sheaves, n)
	l.onto = [2][]upward{take(&m.onto, grips), take(&m.onto, grips)}
	l.grip[nowhere] = -1 // what a hand finds at the rail comes later
	for i, block := range take(&m.blocks, n) {
		s := &rp.Path[i]
		l.path[i] = rope.Stop{Body: int(s.On), X: s.Across.In(units.Metre), Z: s.Height.In(units.Metre)}
		l.sheaves[i] = sheave{drag: float64(s.Drag), rim: s.Rim.In(units.Kilogram)}
		first := block < 0 || block == m.met // of nobody's nothing is kept
		switch {
		case block < 0:
			block = nobodys
		case first:
			m.met++
		}
		l.stations[i].block, l.stations[i].first = block, first
	}
	for i := range l.legs {
		across, up, length := l.path.Part(i, h)
		l.legs[i].runs, l.legs[i].length.Start = direction{across, up}, length
	}
}

// rate is how much more rope the path up to a stop wants for each unit that a body rises, as [rope.Path.Rate].
func (l *laid) rate(body Body, last int) (rate float64) {
	for i := range l.legs[:last] {
		up := l.legs[i].runs.up
		if Body(l.path[i].Body) == body {
			rate -= up
		}
		if Body(l.path[i+1].Body) == body {
			rate += up
		}
	}
	return rate
}

// settle fills in all of this but what drag and a hand do. While the arbor rises by a unit the bodies rise by travel, and
// while the batten flies out at one they rise as fast as out says.
func (l *laid) settle(at *rope.Heights, travel, out *rope.Speeds) {
	l.run(out)
	for i := range l.stations {
		l.stations[i].hung = l.height(i, at, travel).Times(l.weight)
	}
	for i := range l.legs {
		leg, from, to := &l.legs[i], &l.stations[i], &l.stations[i+1]
		across, up := leg.runs.across, leg.runs.up
		from.pulls.across += across
		from.pulls.up += up
		to.pulls.across -= across
		to.pulls.up -= up
		leg.rises = l.height(i+1, at, travel).Less(l.height(i, at, travel)).Times(l.weight)
		// A part whose length changes hangs plumb.
		leg.length.Rate = float64((travel[l.path[i+1].Body] - travel[l.path[i].Body]) * up)
		leg.rising = math.Copysign(1, up)
	}
	if parts, hung := l.pull(Batten, 0); parts > 0 {
		l.rests = rests{perPull: 1 / parts, plain: hung.Times(-1 / parts), stops: l.stations}
	}
}

// run fills in how fast the rope of each part runs while bodies move: that of the first part as its end's body takes it along, and
// past each sheave as fast as up to it, seen from the sheave.
func (l *laid) run(out *rope.Speeds) {
	for i := range l.legs {
		leg, by := &l.legs[i], out[l.path[i].Body]
		leg.speed = float64(by * leg.runs.up)
		if i > 0 {
			before := &l.legs[i-1]
			past := before.speed - float64(by*before.runs.up)
			l.sheaves[i].past = past
			leg.speed += past
		}
	}
}

func (l *laid) height(i int, at *rope.Heights, travel *rope.Speeds) rope.Straight {
	return rope.Straight{Start: l.path.Height(i, at), Rate: travel[l.path[i].Body]}
}

// pull is [rope.Path.Pull] on a body, of the stops from one on: how many parts pull it up, and what the rope's own
// weight adds to them.
func (l *laid) pull(body Body, from int) (parts float64, hung rope.Straight) {
	for i := from; i < len(l.stations); i++ {
		if Body(l.path[i].Body) == body {
			at := &l.stations[i]
			parts += at.pulls.up
			hung = hung.Plus(at.hung.Times(at.pulls.up))
		}
	}
	return parts, hung
}

// drive fills in what drag makes of the tension at each stop while batten and arbor move, and what comes of it. The
// tight side is the one the rope runs to; a rope that does not run past a sheave has no side to be tight.
func (l *laid) drive() {
	for i := range l.sheaves {
		s, k := &l.sheaves[i], 1.0
		if s.drag != 0 && i > 0 && i < len(l.legs) {
			a, b := l.legs[i-1].runs, l.legs[i].runs
			k = rope.DragRatio(s.drag, a.across, a.up, b.across, b.up)
		}
		s.tight = k
		switch {
		case math.Abs(s.past) < still:
			k = 1
		case s.past < 0:
			k = 1 / k
		}
		s.factor = [2]float64{k, 1 / k}
	}
	for way, onto := range l.onto {
		for role := range onto {
			if part := l.grip[role]; part >= 0 || role == nowhere { // nobody pulls on a part that is not there
				onto[role] = l.forces(way, part)
			}
		}
	}
}

// part is a part with the names of its stops, and no tension.
func (l *laid) part(i int) Part { return Part{From: l.rope.Path[i].Name, To: l.rope.Path[i+1].Name} }

// parts fills them in.
func (l *laid) parts(parts []Part) {
	for i := range parts {
		parts[i] = l.part(i)
	}
}

// forces gives the upward force of the rope on each body that moves, while it runs and a hand pulls down on one of its
// parts, or on none (−1).
//
// A part of the mass m that runs lengthwise with the acceleration a wants m·a of the tensions at its ends, and a sheave its
// mass at the rim times that of the rope past it. Where rope runs past a sheave at a speed v seen from it, it
// presses on it with the tension less λv², λ its mass per length: so much it takes to turn the rope round.
func (l *laid) forces(way, grip int) (onto upward) {
	mass := l.weight / units.StandardGravity.In(units.MetrePerSecondSquared)
	t := rope.Tension{PerStart: 1}
	for i := range l.legs {
		leg, s := &l.legs[i], &l.sheaves[i] // at an end no rope runs past it, and what it makes of the tension is nothing
		turning := float64(mass * float64(s.past*s.past))
		t.PerSquare -= turning
		t = t.Times(s.factor[way])
		if s.rim != 0 {
			t.PerAcceleration.Start += float64(l.gain(i, way) * float64(s.rim*s.past))
		}
		onto.add(l.path[i].Body, &t, leg.runs.up)
		t.PerSquare += turning
		t.Plain = t.Plain.Plus(leg.rises)
		t.PerAcceleration = t.PerAcceleration.Plus(leg.length.Times(float64(mass * leg.speed)))
		if i == grip {
			t.PerPull += leg.rising
		}
		next, arriving := l.sheaves[i+1].past, t
		arriving.PerSquare -= float64(mass * float64(next*next))
		onto.add(l.path[i+1].Body, &arriving, -leg.runs.up)
	}
	return onto
}

// gain is how much more tension past a sheave a force takes that speeds it up.
func (l *laid) gain(stop, way int) float64 {
	s, gain := &l.sheaves[stop], 1.0
	if s.drag != 0 {
		a, b := l.legs[stop-1].runs, l.legs[stop].runs
		gain = rope.DragGain(s.drag, a.across, a.up, b.across, b.up)
	}
	if s.factor[way] < 1 {
		gain = float64(gain * s.factor[way])
	}
	return gain
}

// start is the tension at the beginning of a lift line that bears a pull at the batten while it runs.
func (l *laid) start(way Way, pull, moved float64) float64 {
	t := &l.onto[way-Out][nowhere].known
	return (pull - t.Plain.At(moved)) / t.PerStart
}

// resting fills in the tensions of parts that follow each other between stops at rest without drag; c is the tension at
// height 0. It adds what the rope pulls with to the blocks, and gives the tension at the first stop and the last, and
// the lowest: below zero it is not borne, and counts as zero. Its loop is written out because this is asked more than all else.
func resting(parts []Part, stops []station, blocks []Block, c, moved float64) (first, last, low float64) {
	stops = stops[:len(parts)+1]
	t := c + stops[0].hung.At(moved)
	if t < 0 {
		low, t = t, 0
	}
	stops[0].pull(blocks, t)
	first, last = t, t
	for k := range parts {
		s := &stops[k+1]
		t = c + s.hung.At(moved)
		if t < 0 {
			low, t = min(low, t), 0
		}
		s.pull(blocks, t)
		p := &parts[k]
		p.TensionFrom, p.TensionTo = units.Force(last), units.Force(t)
		last = t
	}
	return first, last, low
}

// pull adds to its block what the rope pulls with there.
func (s *station) pull(blocks []Block, t float64) {
	load := &blocks[s.block].Load
	if s.first {
		*load = Vector{}
	}
	load.Across += units.Force(t * s.pulls.across)
	load.Up += units.Force(t * s.pulls.up)
}

// running does the same for the whole rope while it runs, from the tension at its beginning on.
func (l *laid) running(parts []Part, blocks []Block, way Way, role int, start, pull, moved float64) (low float64) {
	grip := l.grip[role]
	t := start
	for i := range l.legs {
		leg := &l.legs[i]
		t = float64(t * l.sheaves[i].factor[way-Out])
		from := t
		t += leg.rises.At(moved)
		if i == grip {
			t += float64(pull * leg.rising)
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
		a.Across += units.Force(from * leg.runs.across)
		a.Up += units.Force(from * leg.runs.up)
		b.Across -= units.Force(to * leg.runs.across)
		b.Up -= units.Force(to * leg.runs.up)
	}
	return low
}

// slack finds where the rope would have to push the most while it runs as for running, as a fault of its path; nil where
// it is taut all along.
func (l *laid) slack(field string, way Way, role int, start, pull, moved float64) error {
	grip := l.grip[role]
	var low float64
	var part int
	t := start
	for i := range l.legs {
		leg := &l.legs[i]
		t = float64(t * l.sheaves[i].factor[way-Out])
		if t < low {
			low, part = t, i
		}
		t += leg.rises.At(moved)
		if i == grip {
			t += float64(pull * leg.rising)
		}
		if t < low {
			low, part = t, i
		}
	}
	if low >= -slackened {
		return nil
	}
	return slackFault(field, part, l.part(part), check.Show(units.Force(low)))
}

func slackFault(rope string, part int, p Part, tension string) error {
	return &units.FieldError{
		Field: rope + ".path[" + strconv.Itoa(part) + "]", Value: strconv.Quote(p.From) + " to " + strconv.Quote(p.To) + " at " + tension,
		Want: "a rope that is taut all along, or figures do not add up", Err: ErrSlack,
	}
}

// slackened is how far below zero a tension must be, in newtons, for its rope to be slack: rounding may leave one that
// bears nothing a hair below.
const slackened = 1e-6 // untyped: newtons as the kernel takes them
