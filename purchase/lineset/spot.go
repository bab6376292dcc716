package lineset

import (
	"math"
	"slices"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// spot is a trim at which a state is looked at, or the place just above it, where a standing piece is off the deck
// and the arbor off its upper stop.
type spot struct {
	trim  units.Length
	above bool
}

// onStop tells whether the arbor is against its upper stop.
func (r *Rigged) onStop(s spot) bool { return !s.above && s.trim <= r.travel.Lowest+hair }

// hair is how far two trims that are meant to be one may lie apart: 7 ft, and 2 in more than 82 in, are two numbers. No rope
// holds a batten nearer than that, by far.
const hair = 1e-6 * units.Metre

// leaves tells whether an item is a standing piece that leaves the deck at a trim.
func leaves(item load.Item, trim units.Length) bool {
	return item.OnDeck == load.Stands && trim.Within(item.Below+item.Height, hair)
}

// sway is how far a batten that is halted may come to lie or move by itself, up or down: no rope holds it nearer, while things are
// hung and pieces put in.
const sway = units.Inch / 2

// beside tells whether a standing piece leaves the deck at a trim to which a batten that is halted at another may sway:
// then what is carried just below and just above is as much of the halt as what is carried at its own trim. On the stop it
// lies still, and beyond the ends of the reach it cannot go.
func (r *Rigged) beside(halt, trim units.Length) bool {
	return halt > r.travel.Lowest+hair && trim > r.travel.Lowest+hair && trim < r.travel.Highest && trim.Within(halt, sway) && r.jumps(trim)
}

// swayed lists where pieces leave the deck between a halt and how far it sways, one way.
func (r *Rigged) swayed(out []spot, halt, low, high units.Length) []spot {
	for _, trim := range r.breaks {
		if low < trim && trim < high && r.beside(halt, trim) {
			out = append(out, spot{trim: trim}, spot{trim, true})
		}
	}
	return out
}

func (r *Rigged) jumps(trim units.Length) bool {
	return slices.ContainsFunc(r.set.Hang, func(i load.Item) bool { return leaves(i, trim) })
}

// rests is how much of the whole hang is not carried at a trim: it rests on the deck.
func (r *Rigged) rests(trim units.Length) units.Mass {
	var sum int64
	for _, item := range r.set.Hang {
		sum += nanograms(item.Mass) - carriedAt(item, spot{trim: trim})
	}
	return kilograms(sum)
}

// way lists where a batten that flies between two trims is looked at, from the lower to the higher, both included:
// between two of those the imbalance of any choice of items is a straight line over trim, so that none in between is
// worse than both. Trims of halts in between are listed too. At both ends it is halted, and looked at as far as it sways.
// With both trims the same it is where a halted batten is looked at.
func (r *Rigged) way(low, high units.Length, halts ...units.Length) []spot {
	out := append(r.swayed(nil, low, low-2*sway, low-hair), spot{trim: low})
	turns := slices.Concat([]units.Length{low}, halts, r.breaks)
	slices.Sort(turns)
	for _, trim := range slices.Compact(turns) {
		if trim < low || trim >= high {
			continue
		}
		if trim > low {
			out = append(out, spot{trim: trim})
		}
		// With the trim itself as lowest, it is also where the stop lets go.
		if trim <= r.travel.Lowest+hair || r.jumps(trim) {
			out = append(out, spot{trim, true})
		}
	}
	if high > low {
		out = append(out, spot{trim: high})
	}
	if r.beside(high, high) {
		out = append(out, spot{high, true})
	}
	return r.swayed(out, high, high+hair, high+2*sway)
}

// Masses are summed in whole nanograms, so that an order ends with just what the stack weighs, in whatever order it
// was put in, and a plan and its check agree to the last bit.
const nanogramsPerKilogram = 1e12

// heaviestOrder is the most that an order may handle: what is heavier is a slip of the unit, and more of it could not
// be counted in nanograms.
const heaviestOrder = 1000 * units.Tonne

func nanograms(m units.Mass) int64 {
	return int64(math.Round(m.In(units.Kilogram) * nanogramsPerKilogram))
}

func kilograms(ng int64) units.Mass { return units.Mass(float64(ng) / nanogramsPerKilogram) }

// carriedAt is what is carried of one item, in nanograms.
func carriedAt(item load.Item, s spot) int64 {
	switch {
	case !leaves(item, s.trim):
		return nanograms(item.Carried(s.trim))
	case s.above:
		return nanograms(item.Mass)
	}
	return 0
}

// unbalanced is the imbalance at a trim, batten-heavy positive, with the batten and so many nanograms of what hangs
// on the lift lines. What is no more than rounding is nothing.
func (r *Rigged) unbalanced(trim units.Length, carried int64, arbor units.Mass) units.Force {
	onLines := r.load.Bare() + kilograms(carried)
	i, err := r.ropes.Imbalance(trim, onLines, arbor)
	if err != nil || units.Abs(i) <= (onLines+arbor).Weight(units.StandardGravity).Scale(tie) {
		return 0 // the trims and masses of an order were looked at before
	}
	return i
}
