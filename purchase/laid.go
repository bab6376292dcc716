package purchase

import (
	"strconv"

	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// laid is a rope made ready to be asked. Parts whose length changes hang plumb, so their directions do not change on
// the way, and all that the rope's own weight does goes straight with the arbor's travel: what does not depend
// on the trim is worked out here, once.
type laid struct {
	rope   *Rope
	path   rope.Path
	weight float64 // N/m

	stations []station // of each stop
	legs     []leg     // of each part

	past []float64  // how fast the rope runs past each stop, seen from it, while the batten flies out at a unit of speed
	grip [grips]int // the part that a hand grips; −1: none
}

// Where a hand may grip a rope: nowhere, or at the rail on the part of a role.
const (
	nowhere = int(DeadRope)
	grips   = int(OuterRope) + 1
)

// rests is what makes the tension at height 0 of a rope at rest without drag: what is known to pull on it, a lift line at the
// batten, and the rope's own weight.
type rests struct {
	perPull float64
	plain   rope.Straight // N
	begin   *station
	stops   []station // those after it
	first   int       // its first part among those of all ropes
}

// station is a stop with all that is known of it before anything hangs on the ropes.
type station struct {
	hung  rope.Straight // what the rope's own weight makes the tension here more than at height 0 without drag, N
	pulls direction     // sum of the directions of the parts that meet here, away from it
	block int           // which of the reeving's blocks it belongs to; nobody's on the batten
}

// leg is the same for a part.
type leg struct {
	runs   direction
	speed  float64 // of its rope towards the path's end, while the batten flies out at a unit of speed
	length rope.Straight
}

// direction is that of a part, from the stop it leaves to the one it runs to.
type direction struct{ across, up float64 }

// ground is memory for ropes that are laid one after the other, made for all of them at once.
type ground struct {
	path     rope.Path
	stations []station
	legs     []leg
	past     []float64
	blocks   []int // of each stop; −1: none
}

// take cuts the first n off.
func take[S ~[]E, E any](from *S, n int) S {
	first := (*from)[:n:n]
	*from = (*from)[n:]
	return first
}

// lay lays a rope along its path while the bodies are at heights h. Stops that belong to no block count with nobody's.
func (m *ground) lay(l *laid, rp *Rope, h *rope.Heights, nobodys int) {
	n := len(rp.Path)
	l.rope, l.weight = rp, rp.Mass.Weight(units.StandardGravity).In(units.NewtonPerMetre)
	l.path, l.stations, l.legs = take(&m.path, n), take(&m.stations, n), take(&m.legs, n-1)
	l.past = take(&m.past, n)
	l.grip[nowhere] = -1 // what a hand finds at the rail comes later
	for i, block := range take(&m.blocks, n) {
		s := &rp.Path[i]
		l.path[i] = rope.Stop{Body: int(s.On), X: s.Across.In(units.Metre), Z: s.Height.In(units.Metre)}
		if block < 0 {
			block = nobodys
		}
		l.stations[i].block = block
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

// settle fills in all of this but what a hand grips, and gives how a lift line rests. While the arbor rises by a unit the bodies
// rise by travel, and while the batten flies out at one they rise as fast as out says.
func (l *laid) settle(at *rope.Heights, travel, out *rope.Speeds) (lift rests) {
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
		// A part whose length changes hangs plumb.
		leg.length.Rate = float64((travel[l.path[i+1].Body] - travel[l.path[i].Body]) * up)
	}
	if parts, hung := l.pull(Batten, 0); parts > 0 {
		lift = rests{perPull: 1 / parts, plain: hung.Times(-1 / parts), begin: &l.stations[0], stops: l.stations[1:]}
	}
	return lift
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
			l.past[i] = past
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

// part is a part with the names of its stops, and no tension.
func (l *laid) part(i int) Part { return Part{From: l.rope.Path[i].Name, To: l.rope.Path[i+1].Name} }

// parts fills them in.
func (l *laid) parts(parts []Part) {
	for i := range parts {
		parts[i] = l.part(i)
	}
}

// rest fills in the tensions of all ropes at rest without drag, and what they pull their blocks with, from what pulls on each
// of r.rests. A tension below zero is not borne, and counts as zero. Its loops are written out because this is asked more
// than all else.
func (r *Reeved) rest(m *memory, moved float64) {
	blocks := m.blocks
	for i := range blocks {
		blocks[i].Load = Vector{}
	}
	rests := r.rests
	ropes, bear, known := m.ropes[:len(rests)], m.bear[:len(rests)], m.known[:len(rests)]
	for i := range rests {
		l := &rests[i]
		c := l.plain.At(moved) + float64(l.perPull*known[i])
		slack := false
		first, parts := l.begin, bear[i]
		stops := l.stops[:len(parts)]
		last := c + first.hung.At(moved)
		if last < 0 {
			slack, last = last < -slackened, 0
		}
		first.pull(blocks, last)
		for k := range parts {
			s, p := &stops[k], &parts[k]
			t := c + s.hung.At(moved)
			if t < 0 {
				slack, t = slack || t < -slackened, 0
			}
			s.pull(blocks, t)
			p.TensionFrom, p.TensionTo = units.Force(last), units.Force(t)
			last = t
		}
		ropes[i].Parts, ropes[i].Slack = parts, slack
	}
}

// pull adds to its block what the rope pulls with there.
func (s *station) pull(blocks []Block, t float64) {
	load := &blocks[s.block].Load
	load.Across += units.Force(t * s.pulls.across)
	load.Up += units.Force(t * s.pulls.up)
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
