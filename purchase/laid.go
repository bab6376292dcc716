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
	weight   float64     // N/m
	stations []station   // of each stop
	legs     []direction // of each part, from the stop it leaves to the one it runs to
}

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

// ground is memory for ropes that are laid one after the other, made for all of them at once.
type ground struct {
	stations []station
	legs     []direction
	blocks   []blockNumber // of each stop
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
	l.stations, l.legs = take(&m.stations, n), take(&m.legs, n-1)
	for i, block := range take(&m.blocks, n) {
		l.stations[i].block = int(block)
		if block == noBlock {
			l.stations[i].block = nobodys
		}
	}
	for i := range l.legs {
		from, to := &l.stations[i], &l.stations[i+1]
		across, up, _ := l.part(i, h)
		l.legs[i] = direction{across, up}
		from.pulls.across += across
		from.pulls.up += up
		to.pulls.across -= across
		to.pulls.up -= up
	}
}

// on is the body that a stop rides on, and height how high the stop is.
func (l *laid) on(stop int) Body { return l.rope.Path[stop].On }

func (l *laid) height(stop int, h *rope.Heights) float64 {
	s := &l.rope.Path[stop]
	return s.Height.In(units.Metre) + h[s.On]
}

// part is [rope.Part] for a part, and apart how far its ends are apart across and in height.
func (l *laid) part(i int, h *rope.Heights) (across, up, length float64) {
	return rope.Part(l.apart(i, h))
}

func (l *laid) apart(i int, h *rope.Heights) (across, up float64) {
	a, b := &l.rope.Path[i], &l.rope.Path[i+1]
	return b.Across.In(units.Metre) - a.Across.In(units.Metre), l.height(i+1, h) - l.height(i, h)
}

// rate is how much more rope the path up to a stop wants for each unit that a body rises, as [rope.Path.Rate].
func (l *laid) rate(body Body, last int) (rate float64) {
	for i := range l.legs[:last] {
		up := l.legs[i].up
		if l.on(i) == body {
			rate -= up
		}
		if l.on(i+1) == body {
			rate += up
		}
	}
	return rate
}

// settle fills in what the rope's own weight does, and gives how a lift line rests. While the arbor rises by a unit the bodies rise
// by travel.
func (l *laid) settle(at *rope.Heights, travel *rope.Speeds) (lift rests) {
	for i := range l.stations {
		l.stations[i].hung = rope.Straight{Start: l.height(i, at), Rate: travel[l.on(i)]}.Times(l.weight)
	}
	if parts, hung := l.pull(Batten, 0); parts > 0 {
		lift = rests{perPull: 1 / parts, plain: hung.Times(-1 / parts), begin: &l.stations[0], stops: l.stations[1:]}
	}
	return lift
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
