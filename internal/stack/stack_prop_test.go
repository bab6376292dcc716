package stack_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/steelyard/internal/stack"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// exhaustive tries every choice there is, with the plates counted from their
// rule, and keeps the best by the order of preference. It shares nothing with
// the search.
func exhaustive(p stack.Problem) stack.Choice {
	return every(p, func(c stack.Choice) []int64 { return []int64{max(c.Error, -c.Error), c.Pieces, c.Height} })
}

// every keeps the allowed choice with the least key; no key is not allowed.
func every(p stack.Problem, key func(stack.Choice) []int64) stack.Choice {
	best := stack.Choice{Proven: true}
	var least []int64
	count := make([]int64, len(p.Kinds))
	var try func(i int)
	try = func(i int) {
		if i < len(p.Kinds) {
			for c := p.Kinds[i].Count; c >= 0; c-- {
				count[i] = c
				try(i + 1)
			}
			return
		}
		c := stack.Choice{Found: true, Proven: true}
		for i, n := range count {
			c.Pieces += n
			c.Mass += n * p.Kinds[i].Mass
			c.Height += n * p.Kinds[i].Thickness
		}
		if p.Plate.Every > 0 && c.Pieces > 0 {
			c.Plates = 1 + c.Height/p.Plate.Every
			c.Mass += c.Plates * p.Plate.Mass
			c.Height += c.Plates * p.Plate.Thickness
		}
		c.Error = c.Mass - p.Wanted
		if c.Mass > p.MaxMass || c.Height > p.MaxHeight || c.Error > 0 && !p.Heavy || c.Error < 0 && !p.Light {
			return
		}
		// Of choices that are equal in all else the first one met has more of
		// the earlier kinds.
		c.Count = slices.Clone(count)
		if k := key(c); k != nil && (!best.Found || slices.Compare(k, least) < 0) {
			best, least = c, k
		}
	}
	try(0)
	return best
}

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

// Both methods, the walk and the halves, against every choice there is.
func TestPropBestIsExhaustive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(t)
		want := exhaustive(p)
		for name, best := range map[string]func(stack.Problem, int) stack.Choice{"best": stack.Best, "meet": stack.Meet} {
			got := best(p, 1<<30)
			got.Nodes = 0
			if diff := cmp.Diff(want, got, cmpopts.EquateEmpty()); diff != "" {
				t.Fatalf("%s: %+v\n-want +got\n%s", name, p, diff)
			}
		}
	})
}

// changed counts the pieces put in and taken out.
func changed(count, today []int64) int64 {
	n := int64(0)
	for i := range today {
		n += max(count[i]-today[i], today[i]-count[i])
	}
	return n
}

// Refill, by either method, against every choice there is.
func TestPropRefillIsExhaustive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(t)
		var today []int64
		for range p.Kinds {
			today = append(today, rapid.Int64Range(0, 6).Draw(t, "today"))
		}
		within := rapid.SampledFrom([]int64{0, 0, 1, 3, 10, 40, 600}).Draw(t, "within")
		want := exhaustive(p)
		if want.Found {
			allowed := max(within, want.Error, -want.Error)
			want = every(p, func(c stack.Choice) []int64 {
				e := max(c.Error, -c.Error)
				if e > allowed {
					return nil
				}
				return []int64{changed(c.Count, today), e, c.Pieces, c.Height}
			})
		}
		type refill = func(stack.Problem, []int64, int64, int) stack.Choice
		for name, do := range map[string]refill{"refill": stack.Refill, "meet": stack.MeetRefill} {
			got := do(p, today, within, 1<<30)
			got.Nodes = 0
			if diff := cmp.Diff(want, got, cmpopts.EquateEmpty()); diff != "" {
				t.Fatalf("%s: %+v\ntoday %v, within %d\n-want +got\n%s", name, p, today, within, diff)
			}
		}
	})
}

// Thousands of problems drawn plainly, where shrinking is no matter: every choice
// tried, against both methods.
func TestBestIsExhaustive(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for n := range 6000 {
		p := stack.Problem{Wanted: r.Int64N(120), MaxMass: r.Int64N(200), MaxHeight: 5 + r.Int64N(60), Heavy: true, Light: true}
		few := 3 + r.Int64N(30) // few different masses and thicknesses: many ties
		for range 1 + r.IntN(4) {
			p.Kinds = append(p.Kinds, stack.Kind{Mass: 1 + r.Int64N(few), Thickness: 1 + r.Int64N(1+few/3), Count: r.Int64N(7)})
		}
		if n%2 == 0 {
			p.Plate = stack.Plate{Mass: r.Int64N(6), Thickness: r.Int64N(3), Every: 2 + r.Int64N(14)}
		}
		switch r.IntN(4) {
		case 0:
			p.Heavy = false
		case 1:
			p.Light = false
		}
		want := exhaustive(p)
		for name, best := range map[string]func(stack.Problem, int) stack.Choice{"best": stack.Best, "meet": stack.Meet} {
			got := best(p, 1<<30)
			got.Nodes = 0
			if diff := cmp.Diff(want, got, cmpopts.EquateEmpty()); diff != "" {
				t.Fatalf("%s: %+v\n-want +got\n%s", name, p, diff)
			}
		}
	}
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
		var mass, thickness, pieces int64
		for i, n := range c.Count {
			if n < 0 || n > p.Kinds[i].Count {
				t.Fatalf("count %d of kind %d", n, i)
			}
			mass += n * p.Kinds[i].Mass
			thickness += n * p.Kinds[i].Thickness
			pieces += n
		}
		var plates int64
		if p.Plate.Every > 0 && pieces > 0 {
			plates = 1 + thickness/p.Plate.Every
		}
		mass += plates * p.Plate.Mass
		height := thickness + plates*p.Plate.Thickness
		if c.Mass != mass || c.Height != height || c.Pieces != pieces || c.Plates != plates || c.Error != mass-p.Wanted {
			t.Fatalf("%+v\n%+v does not add up: mass %d, height %d, plates %d", p, c, mass, height, plates)
		}
		if mass < 0 || height < 0 || mass > p.MaxMass || height > p.MaxHeight || c.Error > 0 && !p.Heavy || c.Error < 0 && !p.Light {
			t.Fatalf("%+v\n%+v is not allowed", p, c)
		}
	})
}

// A search that is cut short proves its gap: no choice has a smaller error than
// |Error| less Gap. Without a cut the gap is nothing.
func TestPropGap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(t)
		want := exhaustive(p)
		limit := rapid.IntRange(1, 40).Draw(t, "limit")
		c := stack.Best(p, limit)
		switch {
		case c.Proven:
			if c.Gap != 0 || c.Found != want.Found || c.Error != want.Error {
				t.Fatalf("%+v\n got %+v\nwant %+v", p, c, want)
			}
		case c.Found:
			if least := max(want.Error, -want.Error); max(c.Error, -c.Error)-c.Gap > least || c.Gap < 0 {
				t.Fatalf("%+v\n got %+v: but there is an error of %d", p, c, least)
			}
		}
		today := make([]int64, len(p.Kinds))
		within := rapid.Int64Range(0, 50).Draw(t, "within")
		r := stack.Refill(p, today, within, limit)
		if r.Found {
			if least := max(want.Error, -want.Error); max(r.Error, -r.Error)-r.Gap > max(least, within) || r.Gap < 0 || r.Proven && r.Gap != 0 {
				t.Fatalf("%+v, within %d\n got %+v: but there is an error of %d", p, within, r, least)
			}
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
