package units

import (
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// In the SI unit the shortest text is that of strconv, which solves the same problem
// for a factor of one.
func TestPropShortestIsStrconv(t *testing.T) {
	metre := lengthDimension.unit("m")
	check := func(t fataler, x float64) {
		form := byte('f')
		if size := math.Abs(x); size != 0 && size < 1e-6 || size >= 1e21 {
			form = 'e'
		}
		if got, want := string(appendShortest(nil, x, metre)), strconv.FormatFloat(x, form, -1, 64); got != want {
			t.Fatalf("%b: %s, want %s", x, got, want)
		}
	}
	r := rand.New(rand.NewPCG(3, 3))
	for range 5_000 {
		if x := math.Float64frombits(r.Uint64()); finite(x) {
			check(t, x)
		}
		check(t, r.NormFloat64()*100)
	}
	for e := -1074; e < 1024; e++ { // where the spacing changes
		x := math.Ldexp(1, e)
		for _, x := range []float64{math.Nextafter(x, 0), x, math.Nextafter(x, 2*x)} {
			check(t, x)
		}
	}
	rapid.Check(t, func(t *rapid.T) { check(t, anyFloat().Draw(t, "x")) })
}

// The shortest text is read as the same bits; no text with a digit less is; and
// none as short is nearer.
func TestPropShortest(t *testing.T) {
	list := everyUnit()
	for _, of := range list { // the ends, and where the spacing changes
		for _, x := range []float64{math.SmallestNonzeroFloat64, 0x1p-1022, 0x1p-1021, 1, math.MaxFloat64} {
			checkShortest(t, of, x)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		x := math.Abs(anyFloat().Draw(t, "x"))
		if x != 0 {
			checkShortest(t, rapid.SampledFrom(list).Draw(t, "unit"), x)
		}
	})
}

func checkShortest(t fataler, of unitOf, x float64) {
	number, ten := of.u.shortest(x)
	reads := func(n *big.Int, ten int) bool {
		value := shift(new(big.Rat).SetInt(n), ten)
		f, _ := value.Mul(value, of.u.factor()).Float64()
		return f == x
	}
	n := new(big.Int).SetUint64(number)
	if !reads(n, ten) {
		t.Fatalf("%v: %v in %v is read as another value", x, number, of)
	}
	if number%10 == 0 {
		t.Fatalf("%v: %v in %v ends in a zero", x, number, of)
	}
	fewer := new(big.Int).Quo(n, big.NewInt(10))
	for range 2 {
		if fewer.Sign() > 0 && reads(fewer, ten+1) {
			t.Fatalf("%v: %v in %v, and %v is shorter", x, number, of, fewer)
		}
		fewer.Add(fewer, big.NewInt(1))
	}
	exact := new(big.Rat).SetFloat64(x)
	exact = shift(exact.Quo(exact, of.u.factor()), -ten) // in steps of the last digit
	off := func(n *big.Int) *big.Rat {
		d := new(big.Rat).Sub(new(big.Rat).SetInt(n), exact)
		return d.Abs(d)
	}
	for _, step := range []int64{-1, 1} {
		if other := new(big.Int).Add(n, big.NewInt(step)); reads(other, ten) && off(other).Cmp(off(n)) < 0 {
			t.Fatalf("%v: %v in %v, and %v is nearer", x, number, of, other)
		}
	}
}
