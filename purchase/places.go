package purchase

import (
	"math"
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// blockSize is how far apart the sheaves of one block may stand in the plane of the set. The largest
// blocks of a counterweight set, with many sheaves side by side or staggered, stay well below it; an arbor's top and
// foot, two loft blocks, or the two ends of a head beam do not.
const blockSize = 1 * units.Metre

// places is where the first stop of each block stands.
type places []place

// place is a stop of a rope, both counted from 0.
type place struct {
	rope, at int
	stop     *Stop
}

// clash notes the place of a block and gives its number. It says what would be right where a block of that name stands elsewhere:
// loads of both would be added up under one name. Guess is a number that it may have, or −1; field is how a place is called.
func (b *places) clash(here place, guess int, field func(rope, at int) string) (number int, want string) {
	s := here.stop
	if s.Name == "" || !placed(s) { // a fault of its own
		return 0, ""
	}
	all := *b
	if guess >= 0 && guess < len(all) && all[guess].stop.Name == s.Name {
		number = guess
	}
	for number < len(all) && all[number].stop.Name != s.Name {
		number++
	}
	if number == len(all) {
		*b = append(all, here)
		return number, ""
	}
	first := &all[number]
	switch dx, dz := (s.Across - first.stop.Across).In(units.Metre), (s.Height - first.stop.Height).In(units.Metre); {
	case s.On != first.stop.On:
		want = "on the " + first.stop.On.String()
	case math.Sqrt(float64(dx*dx)+float64(dz*dz)) > float64(blockSize.In(units.Metre)*(1+1e-9)):
		want = "more than " + check.Show(blockSize) + " from here"
	default:
		return number, ""
	}
	return number, "a name of its own: the block of this name, as " + field(first.rope, first.at) + " has it, is " + want
}

// blocks is which block each stop of a reeving is.
type blocks struct {
	named []Block // with no load
	of    []int   // by the number of the stop, the ropes one after the other; −1: none
}

// add gives a block the next number.
func (b *blocks) add(s *Stop) int {
	b.named = append(b.named, Block{Name: s.Name, On: s.On})
	return len(b.named) - 1
}

// blocks is [Reeving.findBlocks] for the ropes that the layout lays, without mule blocks. Each line has a loft block and, but in
// single purchase, one at the head beam of its own; all else is where the first line meets it.
func (l Layout) blocks(r *Reeving) blocks {
	b := blocks{named: make([]Block, 0, 8+2*len(r.Lift)), of: make([]int, 0, r.stops())}
	const loft, beam = 1, 4 // on the path of a lift line, over head block and arbor
	b.meet(r.Lift[0].Path)
	first := b.of
	for _, rp := range r.Lift[1:] {
		of := b.of[len(b.of):][:len(first)]
		copy(of, first)
		of[loft] = b.add(&rp.Path[loft])
		if len(of) > beam {
			of[beam] = b.add(&rp.Path[beam])
		}
		b.of = b.of[:len(b.of)+len(first)]
	}
	b.meet(r.Hand.Path)
	return b
}

// meet numbers the blocks along a path as they are met.
func (b *blocks) meet(path []Stop) {
	for k := range path {
		number := -1
		if s := &path[k]; s.On != Batten {
			if number = slices.IndexFunc(b.named, func(b Block) bool { return b.Name == s.Name }); number < 0 {
				number = b.add(s)
			}
		}
		b.of = append(b.of, number)
	}
}

// findBlocks makes sure that each name stands for one block. The rope lock has its name already.
func (r Reeving) findBlocks(p *check.Problems) blocks {
	met := make(places, 0, 8+2*len(r.Lift))
	b := blocks{of: make([]int, 0, r.stops())}
	field := func(rope, at int) string { return stopField(rope, at, len(r.Lift)) }
	before := []int(nil) // the blocks of the rope before, which a lift line mostly shares
	for i, rp := range r.ropes() {
		begin := len(b.of)
		for k := range rp.Path[:min(len(rp.Path), maxStops)] {
			s, number, guess := &rp.Path[k], -1, -1
			if k < len(before) {
				guess = before[k]
			}
			switch {
			case s.On == Batten:
			case s.Name == RopeLock:
				p.Add(field(i, k)+".name", strconv.Quote(s.Name), "another name: the rope lock, at the height that lock gives, has this one", units.ErrDuplicate)
			default:
				var want string
				if number, want = met.clash(place{i, k, s}, guess, field); want != "" {
					p.Add(field(i, k), strconv.Quote(s.Name), want, units.ErrDuplicate)
				}
			}
			b.of = append(b.of, number)
		}
		before = b.of[begin:]
	}
	b.named = make([]Block, 0, len(met)+2)
	for _, p := range met {
		b.add(p.stop)
	}
	return b
}
