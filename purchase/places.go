package purchase

import (
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/slab"
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
	named int           // how many there are
	of    []blockNumber // by the number of the stop, the ropes one after the other
}

// blockNumber counts blocks from 0, as the paths meet them.
type blockNumber int16

// noBlock is that of a stop on the batten.
const noBlock blockNumber = -1

// What the ropes of a layout meet in every set, by the number of the block: the first line meets the head block and the arbor's
// top after its loft block.
const (
	atHead blockNumber = 1
	atTop  blockNumber = 2
)

// blocks is [Reeving.findBlocks] for the ropes that the layout lays, without mule blocks. Each line has a loft block and, but in
// single purchase, one at the head beam of its own; so has the hand line blocks of its own.
func (l Layout) blocks(room []blockNumber) blocks {
	b := blocks{of: slab.Enough(room, l.stops())[:0]}
	for i := range l.Loft {
		loft := b.add(1)
		if i == 0 {
			b.add(2) // head block and arbor's top
		}
		b.of = append(b.of, noBlock, loft, atHead, atTop)
		switch l.Kind {
		case Double:
			b.of = append(b.of, b.add(1))
		case Triple:
			b.of = append(b.of, b.add(1), atTop)
		}
	}
	switch l.handKind() {
	case Double:
		rail := b.add(4)
		b.of = append(b.of, rail, rail+1, rail+2, atHead, atTop, rail+3)
	case Triple:
		foot := b.add(4)
		b.of = append(b.of, foot, foot+1, foot, foot+2, atHead, atTop, foot+3, atTop)
	default:
		foot := b.add(2)
		b.of = append(b.of, foot, foot+1, atHead, atTop)
	}
	return b
}

// add numbers so many new blocks, and gives the number of the first.
func (b *blocks) add(n int) blockNumber {
	first := blockNumber(b.named)
	b.named += n
	return first
}

// newBlocks gives the blocks, with no load; then the rope lock, then nobody's, for stops on the batten.
func (r *Reeved) newBlocks() []Block {
	all := make([]Block, 0, r.named+2)
	for _, l := range r.all() {
		for i := range l.stations {
			if s := &l.rope.Path[i]; l.stations[i].block == len(all) {
				all = append(all, Block{Name: s.Name, On: s.On})
			}
		}
	}
	return append(all, Block{Name: RopeLock, On: Rail}, Block{})
}

// findBlocks makes sure that each name stands for one block. The rope lock has its name already.
func (r Reeving) findBlocks(p *check.Problems) blocks {
	met := make(places, 0, 8+2*len(r.Lift))
	b := blocks{of: make([]blockNumber, 0, r.stops())}
	field := func(rope, at int) string { return stopField(rope, at, len(r.Lift)) }
	before := []blockNumber(nil) // the blocks of the rope before, which a lift line mostly shares
	for i, rp := range r.ropes() {
		begin := len(b.of)
		for k := range rp.Path[:min(len(rp.Path), maxStops)] {
			s, number, guess := &rp.Path[k], int(noBlock), -1
			if k < len(before) {
				guess = int(before[k])
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
			b.of = append(b.of, blockNumber(number))
		}
		before = b.of[begin:]
	}
	b.named = len(met)
	return b
}
