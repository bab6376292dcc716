package stack_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/steelyard/internal/stack"
)

// few draws a problem with few different masses and thicknesses: many ties.
func few(r *rand.Rand, n int) stack.Problem {
	p := stack.Problem{Wanted: r.Int64N(120), MaxMass: r.Int64N(200), MaxHeight: 5 + r.Int64N(60)}
	values := 3 + r.Int64N(30)
	for range 1 + r.IntN(4) {
		p.Kinds = append(p.Kinds, stack.Kind{Mass: 1 + r.Int64N(values), Thickness: 1 + r.Int64N(1+values/3), Count: r.Int64N(7)})
	}
	if n%2 == 0 {
		p.Plate = stack.Plate{Mass: r.Int64N(6), Thickness: r.Int64N(3), Every: 1 + r.Int64N(15)}
	}
	sides(r, &p)
	return p
}

// crowded draws a problem with so many kinds that the lists of the halves run over many blocks, and in which thickness has
// little to do with mass: next to the wish hardly any pair fits the room.
func crowded(r *rand.Rand, n int) stack.Problem {
	var p stack.Problem
	step := []int64{1, 1, 2, 7}[r.IntN(4)]
	values := []int64{6, 40, 1000, 100_000}[r.IntN(4)]
	thick := []int64{3, 12, 100, 3_000_000}[r.IntN(4)]
	var mass, thickness int64
	for range 5 + r.IntN(2) {
		k := stack.Kind{Mass: step * (1 + r.Int64N(values)), Thickness: 1 + r.Int64N(thick), Count: 1 + r.Int64N(4)}
		p.Kinds = append(p.Kinds, k)
		mass, thickness = mass+k.Count*k.Mass, thickness+k.Count*k.Thickness
	}
	p.Wanted = r.Int64N(mass + mass/10 + 1)
	p.MaxMass, p.MaxHeight = mass, 1+r.Int64N(thickness)
	if r.IntN(3) == 0 { // the wish is past the capacity or just within it
		p.MaxMass = p.Wanted + r.Int64N(1+mass/10) - mass/20
	}
	if n%2 == 0 {
		p.Plate = stack.Plate{Mass: r.Int64N(1 + values/4), Thickness: r.Int64N(1 + thick/4), Every: 1 + r.Int64N(1+thickness/3)}
	}
	sides(r, &p)
	return p
}

func sides(r *rand.Rand, p *stack.Problem) {
	side := r.IntN(4)
	p.Heavy, p.Light = side != 0, side != 1
}

// stockToday draws what is in today, of each kind perhaps more than there may be.
func stockToday(r *rand.Rand, p stack.Problem) ([]int64, int64) {
	var today []int64
	for _, k := range p.Kinds {
		today = append(today, r.Int64N(k.Count+2))
	}
	return today, []int64{0, 1, 1 + r.Int64N(1+max(p.Wanted, 0)/4)}[r.IntN(3)]
}

// Problems drawn plainly, where shrinking is no matter: every choice tried, against all methods.
func TestDrawnAreExhaustive(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for n := range 1600 {
		p := few(r, n)
		if n%8 == 0 {
			p = crowded(r, n/8)
		}
		want := exhaustive(p)
		for name, best := range bests {
			if d := diff(want, best(p, 1<<30)); d != "" {
				t.Fatalf("%s: %+v\n-want +got\n%s", name, p, d)
			}
		}
		if n%4 > 0 {
			continue
		}
		today, within := stockToday(r, p)
		want = exhaustiveRefill(p, today, within)
		for name, refill := range refills {
			if d := diff(want, refill(p, today, within, 1<<30)); d != "" {
				t.Fatalf("%s: %+v\ntoday %v, within %d\n-want +got\n%s", name, p, today, within, d)
			}
		}
	}
}

// Next to the wish stand more choices of one half than are tried one by one, and none of them leaves room for the rest; the
// first that does stands at the edge of a block of sixteen.
func TestFarFromTheWish(t *testing.T) {
	for _, p := range []stack.Problem{
		{Kinds: []stack.Kind{{1, 2, 57}, {2, 2, 31}, {131, 1, 2}, {166, 70, 2}}, Wanted: 342, MaxMass: stack.Unlimited, MaxHeight: 99, Heavy: true},
		{Kinds: []stack.Kind{{1, 4, 58}, {3, 4, 38}, {77, 1, 2}, {93, 46, 2}}, Wanted: 344, MaxMass: stack.Unlimited, MaxHeight: 87, Light: true},
		{Kinds: []stack.Kind{{1, 3, 43}, {3, 4, 37}, {164, 1, 1}, {58, 21, 2}}, Wanted: 476, MaxMass: stack.Unlimited, MaxHeight: 126, Light: true},
	} {
		for _, unit := range []int64{1, 1 << 43} { // of height, far beyond any arbor's
			q := p
			q.Kinds, q.MaxHeight = slices.Clone(p.Kinds), p.MaxHeight*unit
			for i := range q.Kinds {
				q.Kinds[i].Thickness *= unit
			}
			want := exhaustive(q)
			for name, best := range bests {
				if d := diff(want, best(q, 1<<30)); d != "" {
					t.Errorf("%s: %+v\n-want +got\n%s", name, q, d)
				}
			}
		}
	}
}

// Two pieces of one mass that bring the second plate and just fill the room, one of each half.
func TestJustTheRoom(t *testing.T) {
	p := stack.Problem{
		Kinds: []stack.Kind{{6, 1, 1}, {6, 1, 1}, {6, 4, 1}, {6, 8, 1}}, Wanted: 12 + 2, MaxMass: stack.Unlimited, MaxHeight: 12,
		Plate: stack.Plate{Mass: 1, Every: 10}, Heavy: true, Light: true,
	}
	want := stack.Choice{Count: []int64{0, 0, 1, 1}, Pieces: 2, Plates: 2, Mass: 14, Height: 12, Found: true, Proven: true}
	for name, best := range bests {
		if d := diff(want, best(p, 1<<30)); d != "" {
			t.Errorf("%s: -want +got\n%s", name, d)
		}
	}
}
