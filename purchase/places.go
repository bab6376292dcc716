package purchase

import (
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// blockSize is how far apart the sheaves of one block may stand in the plane of the set. The largest
// blocks of a counterweight set, with many sheaves side by side or staggered, stay well below it; an arbor's top and
// foot, two loft blocks, or the two ends of a head beam do not.
const blockSize = 1 * units.Metre

// places is where the first stop of each block stands, by the block's name.
type places map[string]place

// place is a stop of a rope, both counted from 0.
type place struct {
	rope, at int
	stop     Stop
}

// clash notes the place of a block, and says what would be right where a block of that name stands elsewhere: loads of both would be
// added up under one name. Field is how a place is called.
func (b places) clash(here place, field func(rope, at int) string) (want string) {
	s := here.stop
	if s.Name == "" { // a fault of its own
		return ""
	}
	first, ok := b[s.Name]
	if !ok {
		b[s.Name] = here
		return ""
	}
	switch dx, dz := (s.Across - first.stop.Across).In(units.Metre), (s.Height - first.stop.Height).In(units.Metre); {
	case s.On != first.stop.On:
		want = "on the " + first.stop.On.String()
	case math.Sqrt(float64(dx*dx)+float64(dz*dz)) > float64(blockSize.In(units.Metre)*(1+1e-9)):
		want = "more than " + check.Show(blockSize) + " from here"
	default:
		return ""
	}
	return "a name of its own: the block of this name, as " + field(first.rope, first.at) + " has it, is " + want
}

// checkBlocks makes sure that each name stands for one block. The rope lock has its name already.
func checkBlocks(p *check.Problems, ropes []Rope, lifts int) {
	b := make(places)
	field := func(rope, at int) string { return ropeField(rope, lifts) + ".path[" + strconv.Itoa(at) + "]" }
	for i, rp := range ropes {
		for k, s := range rp.Path[:min(len(rp.Path), maxStops)] {
			if s.On == Batten {
				continue
			}
			if s.Name == RopeLock {
				p.Add(field(i, k)+".name", strconv.Quote(s.Name), "another name: the rope lock, at the height that lock gives, has this one", units.ErrDuplicate)
				continue
			}
			if want := b.clash(place{i, k, s}, field); want != "" {
				p.Add(field(i, k), strconv.Quote(s.Name), want, units.ErrDuplicate)
			}
		}
	}
}
