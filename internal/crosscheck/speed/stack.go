package main

import (
	"strconv"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

// filling is an arbor to be filled, in whole half pounds and quarter inches.
type filling struct {
	mass, thick, count              []int
	wanted, room, capacity          int
	plateMass, plateThick, interval int
}

// fillings are of so many kinds of piece that trying every stack still ends.
func fillings() []filling {
	f := filling{wanted: 1247, room: 300, capacity: 2600, plateMass: 5, plateThick: 1, interval: 96}
	var all []filling
	for _, kinds := range []struct{ kinds, each int }{{2, 20}, {3, 15}, {4, 10}, {5, 7}} {
		f.mass, f.thick, f.count = nil, nil, nil
		for k := range kinds.kinds {
			f.mass = append(f.mass, []int{88, 47, 44, 23, 21}[k])
			f.thick = append(f.thick, []int{8, 5, 4, 3, 2}[k])
			f.count = append(f.count, kinds.each)
		}
		all = append(all, f)
	}
	return all
}

// stacks is how many there are to choose from.
func (f *filling) stacks() int {
	n := 1
	for _, c := range f.count {
		n *= c + 1
	}
	return n
}

// chosen is the best stack: how far off, by how many pieces, how high.
type chosen struct{ off, pieces, height int }

func (c chosen) better(than chosen) bool {
	switch {
	case c.off != than.off:
		return c.off < than.off
	case c.pieces != than.pieces:
		return c.pieces < than.pieces
	}
	return c.height < than.height
}

// exhaustive tries every stack there is, one kind after the other. It leaves out those that are too heavy or too high already, as
// anyone would.
func (f *filling) exhaustive() chosen {
	best := chosen{off: 1 << 30}
	f.try(0, 0, 0, 0, &best)
	return best
}

func (f *filling) try(kind, pieces, mass, height int, best *chosen) {
	if kind == len(f.count) {
		if pieces > 0 {
			plates := 1 + height/f.interval
			mass += plates * f.plateMass
			height += plates * f.plateThick
		}
		if mass > f.capacity || height > f.room {
			return
		}
		if c := (chosen{max(mass-f.wanted, f.wanted-mass), pieces, height}); c.better(*best) {
			*best = c
		}
		return
	}
	for n := 0; n <= f.count[kind] && mass <= f.capacity && height <= f.room; n++ {
		f.try(kind+1, pieces+n, mass, height, best)
		mass += f.mass[kind]
		height += f.thick[kind]
	}
}

const (
	half    = units.Pound / 2
	quarter = units.Inch / 4
)

// arbor gives the same to the library.
func (f *filling) arbor() (arbor.Frame, arbor.Wanted, arbor.Stock) {
	var stock arbor.Stock
	for k := range f.mass {
		stock = append(stock, arbor.Piece{
			Name: strconv.Itoa(k), Mass: half.Scale(float64(f.mass[k])), Thickness: quarter.Scale(float64(f.thick[k])), Count: f.count[k],
		})
	}
	room := quarter.Scale(float64(f.room))
	return arbor.Frame{
		Length: room, Room: room, Capacity: half.Scale(float64(f.capacity)),
		Plate: arbor.Plate{
			Mass: half.Scale(float64(f.plateMass)), Thickness: quarter.Scale(float64(f.plateThick)), Every: quarter.Scale(float64(f.interval)),
		},
	}, arbor.Wanted{Show: half.Scale(float64(f.wanted))}, stock
}
