package stack_test

import (
	"slices"
	"testing"

	"example.com/steelyard/internal/stack"
	"pgregory.net/rapid"
)

// problems draws small problems in which ties, gcds, tight limits and plates are common.
func problems(t *rapid.T) stack.Problem {
	n := rapid.IntRange(0, 4).Draw(t, "kinds")
	unit := rapid.SampledFrom([]int64{1, 1, 2, 5}).Draw(t, "unit")
	p := stack.Problem{}
	for range n {
		p.Kinds = append(p.Kinds, stack.Kind{
			Mass:      unit * rapid.Int64Range(1, 40).Draw(t, "mass"),
			Thickness: rapid.Int64Range(1, 9).Draw(t, "thickness"),
			Count:     rapid.Int64Range(0, 5).Draw(t, "count"),
		})
	}
	if rapid.Bool().Draw(t, "sorted") {
		slices.SortFunc(p.Kinds, func(a, b stack.Kind) int { return int(b.Mass - a.Mass) })
	}
	p.Wanted = rapid.Int64Range(-30, 500).Draw(t, "wanted")
	p.MaxMass = rapid.Int64Range(-1, 600).Draw(t, "max mass")
	p.MaxHeight = rapid.Int64Range(-1, 120).Draw(t, "max height")
	if rapid.Bool().Draw(t, "lifted") {
		p.MaxMass, p.MaxHeight = stack.Unlimited, stack.Unlimited
	}
	if rapid.Bool().Draw(t, "plates") {
		p.Plate = stack.Plate{
			Mass:      rapid.Int64Range(0, 12).Draw(t, "plate mass"),
			Thickness: rapid.Int64Range(0, 3).Draw(t, "plate thickness"),
			Every:     rapid.Int64Range(1, 20).Draw(t, "every"),
		}
	}
	side := rapid.IntRange(0, 2).Draw(t, "side")
	p.Heavy, p.Light = side != 1, side != 2
	return p
}

// The walk, the halves, and the halves after a walk that was given up.
var bests = map[string]func(stack.Problem, int) stack.Choice{
	"best":  stack.Best,
	"walk":  func(p stack.Problem, limit int) stack.Choice { return stack.BestAfter(p, limit, limit) },
	"after": func(p stack.Problem, limit int) stack.Choice { return stack.BestAfter(p, limit, 1) },
	"meet":  stack.Meet,
}

var refills = map[string]func(p stack.Problem, today []int64, within int64, limit int) stack.Choice{
	"refill": stack.Refill,
	"walk": func(p stack.Problem, today []int64, within int64, limit int) stack.Choice {
		return stack.RefillAfter(p, today, within, limit, limit)
	},
	"after": func(p stack.Problem, today []int64, within int64, limit int) stack.Choice {
		return stack.RefillAfter(p, today, within, limit, 1)
	},
	"meet": stack.MeetRefill,
}

func TestPropBestIsExhaustive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(t)
		want := exhaustive(p)
		for name, best := range bests {
			if d := diff(want, best(p, 1<<30)); d != "" {
				t.Fatalf("%s: %+v\n-want +got\n%s", name, p, d)
			}
		}
	})
}

func TestPropRefillIsExhaustive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(t)
		var today []int64
		for range p.Kinds {
			today = append(today, rapid.Int64Range(0, 6).Draw(t, "today"))
		}
		within := rapid.SampledFrom([]int64{0, 0, 1, 3, 10, 40, 600}).Draw(t, "within")
		want := exhaustiveRefill(p, today, within)
		for name, refill := range refills {
			if d := diff(want, refill(p, today, within, 1<<30)); d != "" {
				t.Fatalf("%s: %+v\ntoday %v, within %d\n-want +got\n%s", name, p, today, within, d)
			}
		}
	})
}

// The same problem in far smaller units has the same answer: the sums reach
// as far up in int64 as a real arbor's, and beyond.
func TestPropBestScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(t)
		want := stack.Best(p, 1<<30)
		mass := rapid.SampledFrom([]int64{1_000_003, 1_000_000_000, 5_000_000_000_000}).Draw(t, "mass scale")
		length := rapid.SampledFrom([]int64{1_000_003, 1_000_000_000_000, 100_000_000_000_000}).Draw(t, "length scale")
		q := p
		q.Kinds = slices.Clone(p.Kinds)
		for i := range q.Kinds {
			q.Kinds[i].Mass *= mass
			q.Kinds[i].Thickness *= length
		}
		q.Wanted *= mass
		q.Plate = stack.Plate{Mass: p.Plate.Mass * mass, Thickness: p.Plate.Thickness * length, Every: p.Plate.Every * length}
		if p.MaxMass != stack.Unlimited {
			q.MaxMass *= mass
			q.MaxHeight *= length
		}
		got := stack.Best(q, 1<<30)
		if got.Found != want.Found || !got.Proven || got.Error != want.Error*mass || !slices.Equal(got.Count, want.Count) {
			t.Fatalf("%+v\n got %+v\nwant %+v scaled by %d, %d", p, got, want, mass, length)
		}
	})
}

// Whatever the numbers, what is found keeps to its limits and adds up, and
// the search ends.
func TestPropBestKeepsLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := stack.Problem{
			Wanted:    rapid.Int64().Draw(t, "wanted") >> rapid.IntRange(6, 63).Draw(t, "shift"),
			MaxMass:   rapid.Int64().Draw(t, "max mass"),
			MaxHeight: rapid.Int64().Draw(t, "max height"),
			Heavy:     rapid.Bool().Draw(t, "heavy"),
			Light:     rapid.Bool().Draw(t, "light"),
		}
		size := func(label string) int64 {
			return 1 + rapid.Int64Range(0, 1<<50-1).Draw(t, label)>>rapid.IntRange(0, 50).Draw(t, "shift")
		}
		for range rapid.IntRange(0, stack.MaxKinds).Draw(t, "kinds") {
			p.Kinds = append(p.Kinds, stack.Kind{Mass: size("mass"), Thickness: size("thickness"), Count: rapid.Int64Range(0, 1<<62).Draw(t, "count")})
		}
		if rapid.Bool().Draw(t, "plates") {
			p.Plate = stack.Plate{Mass: size("plate mass"), Thickness: size("plate thickness"), Every: size("every")}
		}
		const limit = 2000
		c := stack.Best(p, limit)
		if c.Nodes > limit+1 {
			t.Fatalf("%d nodes", c.Nodes)
		}
		if !c.Found {
			if p.MaxMass >= 0 && p.MaxHeight >= 0 && p.Heavy && p.Light && p.Wanted >= -1<<57 && p.Wanted <= 1<<57 {
				t.Fatalf("%+v: the empty stack was to be had: %+v", p, c)
			}
			return
		}
		if !adds(p, c) {
			t.Fatalf("%+v\n%+v does not add up or is not allowed", p, c)
		}
	})
}

// The ladder bounds what a thickness can weigh, and rises.
func TestPropLadder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(t)
		thickness := rapid.Int64Range(0, 120).Draw(t, "thickness")
		least, most := stack.Ladder(p.Kinds, thickness)
		count := make([]int64, len(p.Kinds))
		var mass, thick int64
		for i, k := range p.Kinds {
			count[i] = rapid.Int64Range(0, k.Count).Draw(t, "n")
			mass += count[i] * k.Mass
			thick += count[i] * k.Thickness
		}
		if thick <= thickness && mass > most || thick >= thickness && mass < least {
			t.Fatalf("%+v: %v weigh %d at %d; bounds %d and %d at %d", p.Kinds, count, mass, thick, least, most, thickness)
		}
		if l, m := stack.Ladder(p.Kinds, thickness+1); l < least || m < most {
			t.Fatalf("%+v: falls from %d, %d to %d, %d", p.Kinds, least, most, l, m)
		}
	})
}

// The set against a map.
func TestPropSet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom([]int{1, 63, 64, 65, 4095, 4096, 4097, 9261}).Draw(t, "size")
		s := stack.NewSet(size)
		in := map[int]bool{}
		for range rapid.IntRange(1, 40).Draw(t, "n") {
			i := rapid.IntRange(0, size-1).Draw(t, "i")
			if rapid.IntRange(0, 2).Draw(t, "drop") == 0 {
				if next := s.From(i); next >= 0 { // one that is in, where there is any
					i = next
				}
				s.Drop(i)
				delete(in, i)
			} else {
				s.Add(i)
				in[i] = true
			}
			at := rapid.IntRange(0, size).Draw(t, "at")
			before, from := -1, -1
			for k := range in {
				if k < at {
					before = max(before, k)
				} else if from < 0 || k < from {
					from = k
				}
			}
			if got := s.Before(at); got != before {
				t.Fatalf("before %d of %d: got %d, want %d", at, size, got, before)
			}
			if got := s.From(at); got != from {
				t.Fatalf("from %d of %d: got %d, want %d", at, size, got, from)
			}
		}
	})
}
