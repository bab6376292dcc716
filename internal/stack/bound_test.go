package stack_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.com/steelyard/internal/stack"
	"pgregory.net/rapid"
)

// The bounds of a few kinds are what they are called: no looser than their words allow. Expected: every quotient, every multiple,
// as rational numbers or one by one.
func TestBoundsAreTight(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 3000 {
		var kinds []stack.Kind
		step := []int64{1, 2, 5}[r.IntN(3)]
		for range r.IntN(4) {
			kinds = append(kinds, stack.Kind{Mass: step * (1 + r.Int64N(8)), Thickness: 1 + r.Int64N(6), Count: r.Int64N(4)})
		}
		s := stack.NewSuffix(kinds)
		var mass, thickness, heaviest, thickest, divisor int64
		thinnest := int64(math.MaxInt64)
		dense, airy := new(big.Rat), new(big.Rat) // mass for thickness
		for _, k := range kinds {
			if k.Count == 0 {
				continue
			}
			mass, thickness = mass+k.Count*k.Mass, thickness+k.Count*k.Thickness
			heaviest, thickest, thinnest = max(heaviest, k.Mass), max(thickest, k.Thickness), min(thinnest, k.Thickness)
			d := big.NewRat(k.Mass, k.Thickness)
			if d.Cmp(dense) > 0 {
				dense = d
			}
			if airy.Sign() == 0 || d.Cmp(airy) < 0 {
				airy = d
			}
		}
		for d := heaviest; d > 0 && divisor == 0; d-- { // the greatest that divides all
			divisor = d
			for _, k := range kinds {
				if k.Count > 0 && k.Mass%d != 0 {
					divisor = 0
				}
			}
		}
		m, h := r.Int64N(80)>>r.IntN(8), r.Int64N(40)*r.Int64N(2)
		part := floor(new(big.Rat).Mul(big.NewRat(h, 1), dense))
		if got, want := s.Reach(m, h), min(m, mass, part); h < thickness && got != want || h >= thickness && got != min(m, mass) {
			t.Fatalf("%+v: reach within mass %d and thickness %d: got %d; all weigh %d, so much of the densest %d", kinds, m, h, got, mass, part)
		}
		if got, want := s.Lightest(h), ceil(new(big.Rat).Mul(big.NewRat(h, 1), airy)); got != want {
			t.Fatalf("%+v: lightest of thickness %d: got %d; so much of the airiest %d", kinds, h, got, want)
		}
		if got := s.Lightest(-h); got != 0 {
			t.Fatalf("%+v: lightest of thickness %d: got %d", kinds, -h, got)
		}
		short, least := r.Int64N(120)-30, r.Int64N(40)
		most := least + r.Int64N(60)
		heavy, light := r.IntN(3) > 0, r.IntN(3) > 0
		if got, want := s.Nearest(short, least, most, heavy, light), nearest(divisor, short, least, most, heavy, light); got != want {
			t.Fatalf("%+v: nearest to %d of %d … %d, heavy %v, light %v: got %d, of the multiples of %d it is %d", kinds, short, least, most, heavy, light, got, divisor, want)
		}
		if mass == 0 {
			continue
		}
		fewest := int64(0)
		for fewest*heaviest < m || fewest*thickest < h {
			fewest++
		}
		if got := s.Fewest(m, h); got != fewest {
			t.Fatalf("%+v: fewest of mass %d and thickness %d: got %d, want %d", kinds, m, h, got, fewest)
		}
		n := r.Int64N(9)
		lowest := int64(0)
		if n > 0 {
			lowest = max(n*thinnest, ceil(new(big.Rat).Quo(big.NewRat(m, 1), dense)))
		}
		if got := s.Lowest(n, m); got != lowest {
			t.Fatalf("%+v: lowest of %d pieces that weigh %d: got %d, want %d", kinds, n, m, got, lowest)
		}
	}
}

// The ladder takes whole and part pieces from the densest on, or from the airiest, with no more of a kind than there are.
func TestLadderIsTight(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 2000 {
		var kinds []stack.Kind
		all := int64(0)
		for range 1 + r.IntN(4) {
			k := stack.Kind{Mass: 1 + r.Int64N(30), Thickness: 1 + r.Int64N(9), Count: r.Int64N(4)}
			kinds, all = append(kinds, k), all+k.Count*k.Thickness
		}
		h := r.Int64N(all + 1)
		// A unit of thickness at a time, of the densest of which there is any left.
		most, least := new(big.Rat), new(big.Rat)
		for _, fill := range []struct {
			sum  *big.Rat
			sign int
		}{{most, 1}, {least, -1}} {
			left := make([]int64, len(kinds))
			for i, k := range kinds {
				left[i] = k.Count * k.Thickness
			}
			for range h {
				best := -1
				for i, k := range kinds {
					if left[i] > 0 && (best < 0 || fill.sign*big.NewRat(k.Mass, k.Thickness).Cmp(big.NewRat(kinds[best].Mass, kinds[best].Thickness)) > 0) {
						best = i
					}
				}
				left[best]--
				fill.sum.Add(fill.sum, big.NewRat(kinds[best].Mass, kinds[best].Thickness))
			}
		}
		if l, m := stack.Ladder(kinds, h); l != ceil(least) || m != floor(most) {
			t.Fatalf("%+v: thickness %d weighs %d to %d, want %v to %v", kinds, h, l, m, least, most)
		}
	}
}

// As many kinds as there may be, and more thickness than they have.
func TestLadderOfAllKinds(t *testing.T) {
	var kinds []stack.Kind
	for i := range int64(stack.MaxKinds) {
		kinds = append(kinds, stack.Kind{Mass: 1 + i, Thickness: 1, Count: 1})
	}
	const all = stack.MaxKinds * (stack.MaxKinds + 1) / 2
	if _, most := stack.Ladder(kinds, 2*stack.MaxKinds); most != all {
		t.Errorf("all weigh %d, want %d", most, all)
	}
	if least, _ := stack.Ladder(kinds, stack.MaxKinds); least != all {
		t.Errorf("all weigh %d, want %d", least, all)
	}
}

// nearest looks at every multiple, and of no pieces at nothing alone, whatever the limits.
func nearest(divisor, short, least, most int64, heavy, light bool) int64 {
	best := int64(math.MaxInt64)
	at := func(sum int64) {
		if sum == short || sum < short && light || sum > short && heavy {
			best = min(best, max(sum-short, short-sum))
		}
	}
	if divisor == 0 {
		at(0)
		return best
	}
	for sum := int64(0); sum <= most; sum += divisor {
		if sum >= least {
			at(sum)
		}
	}
	return best
}

func floor(x *big.Rat) int64 { return new(big.Int).Div(x.Num(), x.Denom()).Int64() }

func ceil(x *big.Rat) int64 { return -floor(new(big.Rat).Neg(x)) }

// Products and quotients keep all of their digits, and stop at Unlimited.
func TestPropQuotients(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(label string) int64 {
			return 1 + rapid.Int64Range(0, 1<<60-1).Draw(t, label)>>rapid.IntRange(0, 60).Draw(t, "shift")
		}
		a, b, c, d := number("a"), number("b"), number("c"), number("d")
		if rapid.IntRange(0, 3).Draw(t, "near") == 0 { // all but the same
			c, d = a-rapid.Int64Range(0, 1).Draw(t, "less"), b
		}
		if got, want := stack.RatioLess(a, b, c, d), d > 0 && big.NewRat(a, b).Cmp(big.NewRat(c, d)) < 0; c > 0 && got != want {
			t.Fatalf("%d/%d < %d/%d: got %v", a, b, c, d, got)
		}
		e := rapid.SampledFrom([]int64{a, 0, -a}).Draw(t, "signed")
		x := new(big.Rat).Mul(big.NewRat(max(e, 0), 1), big.NewRat(b, d))
		most := big.NewRat(stack.Unlimited, 1)
		if x.Cmp(most) > 0 {
			x = most
		}
		if got, want := stack.Scale(e, b, d, false), floor(x); got != want {
			t.Fatalf("%d·%d/%d down: got %d, want %d", e, b, d, got, want)
		}
		if got, want := stack.Scale(e, b, d, true), ceil(x); got != want {
			t.Fatalf("%d·%d/%d up: got %d, want %d", e, b, d, got, want)
		}
		y := big.NewRat(e, d)
		if stack.FloorDiv(e, d) != floor(y) || stack.CeilDiv(e, d) != ceil(y) {
			t.Fatalf("%d/%d: between %d and %d", e, d, stack.FloorDiv(e, d), stack.CeilDiv(e, d))
		}
		g := stack.GCD(a, b)
		if want := new(big.Int).GCD(nil, nil, big.NewInt(a), big.NewInt(b)).Int64(); g != want {
			t.Fatalf("gcd of %d and %d: got %d, want %d", a, b, g, want)
		}
	})
}

// Just where a quotient no longer fits into 64 bits.
func TestQuotientsThatDoNotFit(t *testing.T) {
	for _, up := range []bool{false, true} {
		if got := stack.Scale(1<<60, 1<<10, 1<<6, up); got != stack.Unlimited {
			t.Errorf("2^64: %d, want no more than counts as unlimited", got)
		}
		if got := stack.Scale(1<<60, 1<<10, 1<<10, up); got != stack.Unlimited {
			t.Errorf("2^60: %d, want %d", got, int64(stack.Unlimited))
		}
	}
}
