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

type place struct {
	field string
	stop  Stop
}

// check notes the place of a block, and a fault where a block of that name stands elsewhere: loads of both would be
// added up under one name.
func (b places) check(p *check.Problems, field string, s Stop) {
	if s.Name == "" { // a fault of its own
		return
	}
	first, ok := b[s.Name]
	if !ok {
		b[s.Name] = place{field, s}
		return
	}
	want := ""
	switch dx, dz := (s.Across - first.stop.Across).In(units.Metre), (s.Height - first.stop.Height).In(units.Metre); {
	case s.On != first.stop.On:
		want = "on the " + first.stop.On.String()
	case math.Sqrt(float64(dx*dx)+float64(dz*dz)) > float64(blockSize.In(units.Metre)*(1+1e-9)):
		want = "more than " + check.Show(blockSize) + " from here"
	default:
		return
	}
	p.Add(field, strconv.Quote(s.Name), "a name of its own: the block of this name, as "+first.field+" has it, is "+want, units.ErrDuplicate)
}

// checkBlocks makes sure that each name stands for one block. The rope lock has its name already.
func checkBlocks(p *check.Problems, ropes []Rope, lifts int) {
	b := make(places)
	for i, rp := range ropes {
		for k, s := range rp.Path[:min(len(rp.Path), maxStops)] {
			if s.On == Batten {
				continue
			}
			field := ropeField(i, lifts) + ".path[" + strconv.Itoa(k) + "]"
			if s.Name == RopeLock {
				p.Add(field+".name", strconv.Quote(s.Name), "another name: the rope lock, at the height that lock gives, has this one", units.ErrDuplicate)
				continue
			}
			b.check(p, field, s)
		}
	}
}
