package purchase

import (
	"math"

	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// Rest is a set at rest at one trim, rope lock shut, with what drag may make of it. A sheave at rest holds a difference
// of tension up to its drag, either way, as the set came to rest: so each force is a band. Value is that of [State],
// without drag; Least and Most are the ends, each for itself, for they do not all go together.
type Rest struct {
	Trim     units.Length `json:"trim"`
	ArborTop units.Length `json:"arbor_top"` // height above the deck
	Lift     []RopeBand   `json:"lift"`
	Hand     RopeBand     `json:"hand"`
	Blocks   []BlockBand  `json:"blocks"`
	// Lock is the difference of tension across the rope lock, positive when the rope below it is the tighter one.
	// It is never more than Most, nor less than Least.
	Lock ForceBand `json:"lock"`
}

// RopeBand is a rope with the bands of the tension along its path.
type RopeBand struct {
	Name  string     `json:"name"`
	Parts []PartBand `json:"parts"`
}

// PartBand is a straight piece of a rope between two stops.
type PartBand struct {
	From        string    `json:"from"`         // name of the stop it leaves
	To          string    `json:"to"`           // name of the stop it runs to
	TensionFrom ForceBand `json:"tension_from"` // at the end From; zero or more
	TensionTo   ForceBand `json:"tension_to"`   // at the end To; zero or more
}

// BlockBand is a block, a dead end or another fastening with the load of the ropes on it, as for [Block]. Where one rope
// comes to a block of a reeving of your own several times, the ends may lie further out than can be.
type BlockBand struct {
	Name   string    `json:"name"`
	On     Body      `json:"on"`
	Across ForceBand `json:"across"` // positive towards the far end of the batten
	Up     ForceBand `json:"up"`     // positive upward
}

// Greatest is the largest tension anywhere along the rope that drag can bring about.
func (r RopeBand) Greatest() units.Force {
	var t units.Force
	for _, p := range r.Parts {
		t = max(t, p.TensionFrom.Most, p.TensionTo.Most)
	}
	return t
}

// Load is the band of the load on the block or dead end of a name; the zero BlockBand where there is none of that name.
func (r Rest) Load(name string) BlockBand {
	for _, b := range r.Blocks {
		if b.Name == name {
			return b
		}
	}
	return BlockBand{}
}

// Rest gives the bands at a trim. What hangs on the lift lines is known at the batten, the idler's weight or base tension
// at the idler; from there each sheave multiplies the tension by anything between 1/K and K (see [Drag.Factor]),
// and the rope above the lock holds what the arbor then still wants. A tension is at the end of its band when it grows
// at every sheave on the way to it, or falls at every one. Errors as for [Reeved.At].
func (r *Reeved) Rest(trim units.Length, on Bodies) (Rest, error) {
	s, err := r.At(trim, on)
	if err != nil {
		return Rest{}, err
	}
	moved := r.movedTo(trim)
	out := Rest{Trim: trim, ArborTop: s.ArborTop, Lift: make([]RopeBand, len(s.Lift))}
	out.Blocks = make([]BlockBand, len(r.blocks)) // nobody's too
	for i, b := range s.Blocks {
		out.Blocks[i] = BlockBand{Name: b.Name, On: b.On, Across: ForceBand{Value: b.Load.Across}, Up: ForceBand{Value: b.Load.Up}}
	}
	at := func(l *laid, parts []PartBand, from, to int) stretch {
		return stretch{l: l, parts: parts, blocks: out.Blocks, from: from, to: to, moved: moved, taut: math.Inf(-1)}
	}

	weight := on.Arbor.Weight(units.StandardGravity).In(units.Newton)
	wanted := ends{weight, weight} // by the arbor, beside what the lift lines hold of it
	for i := range r.lift {
		out.Lift[i] = banded(s.Lift[i])
		l := &r.lift[i]
		pull := on.Pulls[i].In(units.Newton)
		wanted = wanted.less(at(l, out.Lift[i].Parts, 0, len(l.path)-1).fill(given{Batten, ends{pull, pull}}).arbor)
	}
	if r.lock >= 0 {
		hand := &r.hand
		out.Hand = banded(s.Hand)
		idler := on.onIdler(r.idlerParts)
		known := []given{{Idler, ends{idler, idler}}}
		lower, upper := at(hand, out.Hand.Parts, 0, r.lock), at(hand, out.Hand.Parts, r.lock+1, len(hand.path)-1)
		atLock := rope.Straight{Start: float64(hand.weight * r.lockHeight)}
		drop := atLock.Less(hand.stations[r.lock+1].hung).At(moved)
		upper.taut = -drop
		if on.Base > 0 {
			// Once the rope above the lock is slack, an idler that is held lets the rope below it take the rest.
			rest := wanted.less(lower.dry().fill(known...).arbor)
			asked := upper.loose().fill(given{Arbor, rest}).first.plus(drop)
			slack := upper.dry().fill(given{Arbor, ends{rest.least, rest.least}}).arbor
			switch taken := wanted.less(slack); {
			case asked.most < 0:
				known = []given{{Arbor, taken}}
			case asked.least < 0:
				known = append(known, given{Arbor, ends{taken.least, taken.least}})
			}
		}
		below := lower.fill(known...)
		wanted = wanted.less(below.arbor)
		grip := below.last.plus(atLock.Less(hand.stations[r.lock].hung).At(moved))
		asked := upper.loose().fill(given{Arbor, wanted}).first.plus(drop)
		left := upper.fill(given{Arbor, wanted}).first.plus(drop)
		out.Lock = grip.less(asked).band(s.Lock)
		out.Blocks[r.named].Up = left.less(grip).band(out.Blocks[r.named].Up.Value)
	}
	out.Blocks = out.Blocks[:len(s.Blocks)]
	for i := range out.Blocks {
		b := &out.Blocks[i]
		b.Across, b.Up = b.Across.about(), b.Up.about()
	}
	return out, nil
}

// banded gives a rope's bands their names and values.
func banded(s RopeState) RopeBand {
	b := RopeBand{Name: s.Name, Parts: make([]PartBand, len(s.Parts))}
	for i, p := range s.Parts {
		b.Parts[i] = PartBand{From: p.From, To: p.To, TensionFrom: ForceBand{Value: p.TensionFrom}, TensionTo: ForceBand{Value: p.TensionTo}}
	}
	return b
}

// stretch is a rope between two of its stops, with the bands that it is to fill in.
type stretch struct {
	l        *laid
	parts    []PartBand
	blocks   []BlockBand
	from, to int // stops; past the last the rope may go on, to where it is held otherwise, as it may come to the first
	moved    float64
	taut     float64 // the tension with which the rope comes to the first stop is not less: above the lock it bears itself at least
}

// given is what is known of a stretch: between which ends lies what it pulls a body up with.
type given struct {
	on  Body
	sum ends
}

// filled is what comes of a stretch: what it pulls the arbor up with, and the tensions with which the rope comes to its
// first stop and goes from its last.
type filled struct{ arbor, first, last ends }

// fill fills in the bands. At each stop all is at its ends while the tension grows, or falls, at every sheave on the way to
// it from either side, at its own sheave grows or falls, and the sum that is given is at one of its ends: it goes
// straight with each of them while the others stay.
func (s stretch) fill(all ...given) (out filled) {
	last := len(s.l.path) - 1
	for stop := s.from; stop <= s.to; stop++ {
		to, from, across, up := none(), none(), none(), none()
		for _, known := range all {
			for corner := range 8 {
				sum := known.sum.least
				if corner&4 != 0 {
					sum = known.sum.most
				}
				in, off := s.tensions(stop, corner&1 != 0, corner&2 != 0, known.on, sum)
				to, from = to.with(in), from.with(off)
				in, off = max(0, in), max(0, off)
				var pull direction
				if stop > 0 {
					d := s.l.legs[stop-1].runs
					pull.across -= float64(in * d.across)
					pull.up -= float64(in * d.up)
				}
				if stop < last {
					d := s.l.legs[stop].runs
					pull.across += float64(off * d.across)
					pull.up += float64(off * d.up)
				}
				across, up = across.with(pull.across), up.with(pull.up)
			}
		}
		if stop == s.from {
			out.first = to
		}
		if stop == s.to {
			out.last = from
		}
		if Body(s.l.path[stop].Body) == Arbor {
			out.arbor = ends{out.arbor.least + up.least, out.arbor.most + up.most}
		}
		if s.parts == nil {
			continue
		}
		if stop > 0 {
			p := &s.parts[stop-1].TensionTo
			*p = to.borne().band(p.Value)
		}
		if stop < last {
			p := &s.parts[stop].TensionFrom
			*p = from.borne().band(p.Value)
		}
		b := &s.blocks[s.l.stations[stop].block]
		b.Across, b.Up = b.Across.add(across), b.Up.add(up)
	}
	return out
}

// dry is the stretch with no bands to fill in.
func (s stretch) dry() stretch {
	s.parts, s.blocks = nil, nil
	return s
}

// loose is the same with a rope that may push where it comes to the first stop.
func (s stretch) loose() stretch {
	s.taut = math.Inf(-1)
	return s.dry()
}

// tensions gives the tension with which the rope comes to a stop and that with which it goes off, where it grows at every
// sheave on the way there (else it falls), grows over the stop's own, and pulls a body up with a sum.
func (s stretch) tensions(stop int, grows, over bool, on Body, sum float64) (in, off float64) {
	last := len(s.l.path) - 1
	t := rope.Tension{PerStart: 1}
	var up, atIn, atOff rope.Tension
	for i := s.from; i <= s.to; i++ {
		if i > s.from {
			t.Plain = t.Plain.Plus(s.l.legs[i-1].rises)
		}
		if i > 0 {
			atIn = pick(i == stop, t, atIn)
			if Body(s.l.path[i].Body) == on {
				up = up.Plus(t, -s.l.legs[i-1].runs.up)
			}
		}
		if i == last {
			break
		}
		if i > 0 {
			k := s.l.tight[i]
			// Beyond the stop a tension that grows towards it falls along the path.
			if along := (i < stop && grows) || (i == stop && over) || (i > stop && !grows); !along {
				k = 1 / k
			}
			t = t.Times(k)
		}
		atOff = pick(i == stop, t, atOff)
		if Body(s.l.path[i].Body) == on {
			up = up.Plus(t, s.l.legs[i].runs.up)
		}
	}
	start := max(s.taut, (sum-up.Plain.At(s.moved))/up.PerStart)
	at := func(t rope.Tension) float64 { return t.Plain.At(s.moved) + float64(t.PerStart*start) }
	return at(atIn), at(atOff)
}

func pick(ok bool, a, b rope.Tension) rope.Tension {
	if ok {
		return a
	}
	return b
}

// about puts the ends about the value, which only rounding can have left outside.
func (b ForceBand) about() ForceBand {
	return ForceBand{Value: b.Value, Least: min(b.Least, b.Value), Most: max(b.Most, b.Value)}
}

// ends are those of a band, in newtons.
type ends struct{ least, most float64 }

func none() ends { return ends{math.Inf(1), math.Inf(-1)} }

func (e ends) with(x float64) ends { return ends{min(e.least, x), max(e.most, x)} }
func (e ends) less(f ends) ends    { return ends{e.least - f.most, e.most - f.least} }
func (e ends) plus(x float64) ends { return ends{e.least + x, e.most + x} }
func (e ends) borne() ends         { return ends{max(0, e.least), max(0, e.most)} }

func (e ends) band(value units.Force) ForceBand {
	return ForceBand{Value: value, Least: units.Force(e.least), Most: units.Force(e.most)}.about()
}

// add is a load with that of another rope; the value has all of them from the outset.
func (b ForceBand) add(e ends) ForceBand {
	b.Least += units.Force(e.least)
	b.Most += units.Force(e.most)
	return b
}
