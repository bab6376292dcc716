package arbor

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// The exact product or quotient, and what it rounds to, in numbers that have no end.
func exactly(n int64, over, under *big.Rat, r rounding) int64 {
	q := new(big.Rat).Mul(new(big.Rat).SetInt64(n), new(big.Rat).Quo(over, under))
	two := big.NewInt(2)
	num, den := new(big.Int).Abs(q.Num()), q.Denom()
	whole, rest := new(big.Int).QuoRem(num, den, new(big.Int))
	switch {
	case r == nearest && new(big.Int).Mul(rest, two).Cmp(den) >= 0,
		r == up && rest.Sign() > 0 && n > 0:
		whole.Add(whole, big.NewInt(1))
	}
	if whole.Cmp(big.NewInt(most)) > 0 {
		whole.SetInt64(most)
	}
	if n < 0 {
		return -whole.Int64()
	}
	return whole.Int64()
}

func TestFractionIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(-most, most).Draw(t, "n")
		ratio := rapid.OneOf(rapid.Float64Range(leastRatio, mostRatio), rapid.SampledFrom([]float64{1, 2, 3, 0.5, 1.5, leastRatio, mostRatio, 4.0 / 3})).Draw(t, "ratio")
		f, r, one := fractionOf(ratio), new(big.Rat).SetFloat64(ratio), big.NewRat(1, 1)
		if got, want := f.times(n), exactly(n, r, one, nearest); got != want {
			t.Fatalf("%d·%v = %d, want %d", n, ratio, got, want)
		}
		if got, want := f.by(n), exactly(n, one, r, nearest); got != want {
			t.Fatalf("%d/%v = %d, want %d", n, ratio, got, want)
		}
		if got, want := f.byUp(n), exactly(n, one, r, up); got != want {
			t.Fatalf("%d/%v up = %d, want %d", n, ratio, got, want)
		}
	})
}

// A nanometre of trim wants the whole of one of the arbor's in double purchase, and three of them two.
func TestFractionOfANanometre(t *testing.T) {
	two := fractionOf(2)
	for n, want := range map[int64]int64{-3: -1, -1: 0, 0: 0, 1: 1, 2: 1, 3: 2} {
		if got := two.byUp(n); got != want {
			t.Errorf("%d/2 up = %d, want %d", n, got, want)
		}
	}
}

func TestNoFraction(t *testing.T) {
	for _, ratio := range []float64{0, -1, math.NaN(), math.Inf(1), 1e300, 1e-300, 16.1, 0.06} {
		if f := fractionOf(ratio); f != (fraction{}) || f.times(7) != 0 || f.by(7) != 0 {
			t.Errorf("%v: %v, want none, and no division by it", ratio, f)
		}
	}
}

// A quotient that does not fit is the most that there is; the first case is the
// least that 64 bits do not hold.
func TestMulDivSaturates(t *testing.T) {
	for _, c := range []struct {
		n    int64
		a, b uint64
		want int64
	}{
		{1 << 60, 1 << 10, 1 << 6, most},
		{-1 << 60, 1 << 10, 1 << 6, -most},
		{1 << 60, 1 << 10, 1 << 7, most},
		{math.MinInt64, math.MaxUint64, 1, -most},
		{most, 3, 3, most},
		{7, 5, 0, 0},
	} {
		if got := mulDiv(c.n, c.a, c.b, nearest); got != c.want {
			t.Errorf("%d·%d/%d = %d, want %d", c.n, c.a, c.b, got, c.want)
		}
	}
}
