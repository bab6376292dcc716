package crosscheck

import (
	"math"
	"math/rand/v2"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// maxDrawn is the most lines that a drawn batten has: to enumerate takes twice as long for
// each more.
const maxDrawn = 10

// drawn is a batten, its hang and a trim, all by chance.
type drawn struct {
	batten load.Batten
	hang   load.Hang
	trim   units.Length
}

// draw makes the same batten of the same two numbers, so that one that fails can be had again.
func draw(seed, number uint64) drawn {
	rng := rand.New(rand.NewPCG(seed, number))
	between := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	spread := func(low, high float64) float64 { return low * math.Pow(high/low, rng.Float64()) } // even in its logarithm
	one := func(of int) bool { return rng.IntN(of) == 0 }

	var d drawn
	b := &d.batten
	b.Pipe = tubes[rng.IntN(len(tubes))]
	if !one(3) {
		b.Fittings = units.Kilogram.Scale(between(0, 20))
	}
	// Lines: uneven, some at the batten's very ends.
	n := 1 + rng.IntN(maxDrawn)
	scale := spread(0.6, 3.5)
	var at float64
	if !one(4) {
		at = between(0, 1.5)
	}
	for range n {
		b.Lines = append(b.Lines, load.Line{At: units.Metre.Scale(at)})
		at += scale * between(0.3, 1)
	}
	b.Length = b.Lines[n-1].At
	if !one(4) || n == 1 {
		b.Length += units.Metre.Scale(between(0.2, 1.5))
	}

	// Ropes: all rigid, all springs, or some of each; and how well they are trimmed.
	ropes := rng.IntN(3)
	ea, path := spread(2e5, 5e6), between(5, 60)
	worst := []float64{0, 0, 0.002, 0.008, 0.05}[rng.IntN(5)]
	for i := range b.Lines {
		l := &b.Lines[i]
		if ropes == 1 || ropes == 2 && one(2) {
			l.EA = units.Newton.Scale(ea)
			l.Path = units.Metre.Scale(path + 2*float64(i))
		}
		if worst > 0 {
			l.Long = units.Metre.Scale(between(-worst, worst))
		}
	}

	// What hangs: now and then hundreds of items at one place.
	somewhere := func() units.Length {
		if one(4) {
			return b.Lines[rng.IntN(n)].At
		}
		return b.Length.Scale(rng.Float64())
	}
	if one(20) {
		place := somewhere()
		for range 300 {
			d.hang = append(d.hang, load.Item{Mass: units.Kilogram.Scale(between(0.01, 1)), From: place, To: place})
		}
	}
	for range rng.IntN(9) {
		from, to := somewhere(), somewhere()
		if one(3) {
			to = from
		}
		i := load.Item{
			Mass: units.Kilogram.Scale(spread(0.5, 300)), From: min(from, to), To: max(from, to),
			Below: units.Metre.Scale(between(0, 2)), Height: units.Metre.Scale(between(0.5, 8)),
			OnDeck: load.OnDeck(rng.IntN(3)),
		}
		switch rng.IntN(4) {
		case 0:
			i.Taper = between(-1, 1)
		case 1:
			i.Taper = float64(2*rng.IntN(2) - 1) // down to nothing at one end
		}
		d.hang = append(d.hang, i)
	}
	d.trim = units.Metre.Scale(between(0, 12))

	if n == 1 { // the one line goes where the load is
		b.Lines[0].At = units.Metre.Scale(hangUp(*b, d.hang, d.trim).centre())
	}
	return d
}
