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
	rope     *Rope
	weight   float64   // N/m
	batten   float64   // how many parts hold up the batten
	arbor    float64   // and the arbor
	stations []station // of each stop
}

// last is the number of its last stop, counted from 0, and so that of its parts.
func (l *laid) last() int { return len(l.stations) - 1 }

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

// direction is that of a part, or a sum of such.
type direction struct{ across, up float64 }

// lay lays a rope along its path while the bodies are at heights h, and tells whether it is plain that nothing is wrong with its
// parts: see checkParts. Stations are to be its own and are nought yet; blocks is the block that each stop is, and those that are
// none count with nobody's.
func (l *laid) lay(rp *Rope, h *rope.Heights, stations []station, blocks []blockNumber, nobodys int) (plain bool) {
	path := rp.Path
	l.rope, l.weight, l.stations = rp, rp.Mass.Weight(units.StandardGravity).In(units.NewtonPerMetre), stations
	for i := range stations {
		if stations[i].block = int(blocks[i]); blocks[i] == noBlock {
			stations[i].block = nobodys
		}
	}
	plain = true
	var last direction
	a := &path[0]
	ax, az := a.Across.In(units.Metre), heightOf(a, h)
	for i := range path[1:] {
		b := &path[i+1]
		bx, bz := b.Across.In(units.Metre), heightOf(b, h)
		across, up := bx-ax, bz-az
		if level := across <= plumb && across >= -plumb; level && up < plumb && up > -plumb || !level && a.On != b.On && (moves(a) || moves(b)) {
			plain = false
		}
		var leg direction
		leg.across, leg.up, _ = rope.Part(across, up)
		turn := direction{leg.across - last.across, leg.up - last.up}
		// A change of direction by far more than noTurn is one, with no root taken.
		if float64(turn.across*turn.across)+float64(turn.up*turn.up) < 1e-12 {
			plain = false
		}
		stations[i].pulls = turn
		l.holds(a.On, turn.up)
		a, ax, az, last = b, bx, bz, leg
	}
	stations[len(path)-1].pulls = direction{-last.across, -last.up}
	l.holds(a.On, -last.up)
	return plain
}

// holds adds parts that hold up a body.
func (l *laid) holds(body Body, parts float64) {
	switch body {
	case Batten:
		l.batten += parts
	case Arbor:
		l.arbor += parts
	}
}

// on is the body that a stop rides on, and height how high the stop is.
func (l *laid) on(stop int) Body { return l.rope.Path[stop].On }

func (l *laid) height(stop int, h *rope.Heights) float64 { return heightOf(&l.rope.Path[stop], h) }

// part is [rope.Part] for a part.
func (l *laid) part(i int, h *rope.Heights) (across, up, length float64) {
	return rope.Part(apart(&l.rope.Path[i], &l.rope.Path[i+1], h))
}

func heightOf(s *Stop, h *rope.Heights) float64 { return s.Height.In(units.Metre) + h[s.On] }

// apart is how far the stop b is from a, across and upwards.
func apart(a, b *Stop, h *rope.Heights) (across, up float64) {
	return b.Across.In(units.Metre) - a.Across.In(units.Metre), heightOf(b, h) - heightOf(a, h)
}

func moves(s *Stop) bool { return s.On == Batten || s.On == Arbor }

// settle fills in what a rope's own weight does, and gives what it adds to what holds up batten and arbor: see pull. It finds how
// far the arbor may move before two stops of a part meet, too. While the arbor rises by a unit the bodies rise by travel.
func (r *Reeved) settle(l *laid, at *rope.Heights, travel *rope.Speeds) (batten, arbor rope.Straight) {
	var last rope.Straight
	path := l.rope.Path
	for i := range path {
		here, s := &l.stations[i], &path[i]
		z := rope.Straight{Start: heightOf(s, at), Rate: travel[s.On]}
		here.hung = z.Times(l.weight)
		switch s.On {
		case Batten:
			batten = batten.Plus(here.hung.Times(here.pulls.up))
		case Arbor:
			arbor = arbor.Plus(here.hung.Times(here.pulls.up))
		}
		if v := z.Rate - last.Rate; i > 0 && v != 0 {
			if meet := (last.Start - z.Start) / v; meet > 0 {
				r.up = min(r.up, meet)
			} else {
				r.down = max(r.down, meet)
			}
		}
		last = z
	}
	return batten, arbor
}

// rests gives how a lift line rests of which its own weight adds so much to what holds the batten.
func (l *laid) rests(hung rope.Straight, first int) rests {
	return rests{perPull: 1 / l.batten, plain: hung.Times(-1 / l.batten), begin: &l.stations[0], stops: l.stations[1:], first: first}
}

// pull is [rope.Path.Pull] on a body, of the stops from one on: how many parts pull it up, and what the rope's own
// weight adds to them.
func (l *laid) pull(body Body, from int) (parts float64, hung rope.Straight) {
	for i := from; i < len(l.stations); i++ {
		if l.on(i) == body {
			at := &l.stations[i]
			parts += at.pulls.up
			hung = hung.Plus(at.hung.Times(at.pulls.up))
		}
	}
	return parts, hung
}

// named is a part with the names of its stops, and no tension.
func (l *laid) named(i int) Part { return Part{From: l.rope.Path[i].Name, To: l.rope.Path[i+1].Name} }

// parts fills them in.
func (l *laid) parts(parts []Part) {
	for i := range parts {
		parts[i] = l.named(i)
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
