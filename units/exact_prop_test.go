package units

import (
	"math"
	"math/big"
	"math/bits"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// The tests of this file stand inside the package because they hold the arithmetic
// in machine words against the arithmetic in math/big, which is not exported. That
// the latter is right is shown from outside, from the published definitions.

// everyUnit lists the units of the table with their dimensions.
func everyUnit() (list []unitOf) {
	for _, d := range dimensions {
		for i := range d.units {
			list = append(list, unitOf{d, &d.units[i]})
		}
	}
	return list
}

type unitOf struct {
	d *dimension
	u *unit
}

func (u unitOf) String() string { return u.d.name + " in " + u.u.symbol }

// anyFloat draws the numbers that people have and those that they do not.
func anyFloat() *rapid.Generator[float64] {
	return rapid.OneOf(
		rapid.Custom(func(t *rapid.T) float64 {
			f := math.Float64frombits(rapid.Uint64().Draw(t, "bits"))
			if !finite(f) {
				return 0
			}
			return f
		}),
		rapid.Custom(func(t *rapid.T) float64 {
			digits := rapid.Int64Range(-1e12, 1e12).Draw(t, "digits")
			return float64(digits) / math.Pow10(rapid.IntRange(0, 12).Draw(t, "decimals"))
		}),
		rapid.Custom(func(t *rapid.T) float64 { // beside a power of two, where the spacing changes
			f := math.Ldexp(1, rapid.IntRange(-1074, 1023).Draw(t, "exponent"))
			for range rapid.IntRange(0, 2).Draw(t, "steps") {
				f = math.Nextafter(f, rapid.SampledFrom([]float64{0, 2 * f}).Draw(t, "way"))
			}
			return f
		}),
		rapid.SampledFrom([]float64{0, math.Copysign(0, -1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64, 1e-300, 1e21, 1e-6}),
	)
}

// toSI is the exact value rounded once, or declines. It may not decline what people
// write.
func TestPropToSI(t *testing.T) {
	list := everyUnit()
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(list).Draw(t, "unit").u
		m := rapid.OneOf(rapid.Uint64(), rapid.Uint64Range(0, 1e12), rapid.Uint64Range(1<<53-2, 1<<53+10)).Draw(t, "m")
		per := rapid.OneOf(rapid.Just(uint64(1)), rapid.Uint64Range(1, 1000), rapid.Uint64Range(1, math.MaxUint64)).Draw(t, "per")
		ten := rapid.IntRange(-30, 30).Draw(t, "ten")
		got, ok := u.toSI(m, per, ten)
		if !ok {
			// The factor of an angle is long, and its last decimals may be in doubt too.
			if m < 1e12 && per == 1 && ten >= -11 && ten <= 0 && u.long == "" {
				t.Fatalf("%d × 10^%d %s does not fit", m, ten, u.symbol)
			}
			return
		}
		exact := shift(new(big.Rat).SetFrac(new(big.Int).SetUint64(m), new(big.Int).SetUint64(per)), ten)
		if want, _ := exact.Mul(exact, u.factor()).Float64(); math.Float64bits(got) != math.Float64bits(want) {
			t.Fatalf("%d/%d × 10^%d %s is %v, want %v", m, per, ten, u.symbol, got, want)
		}
	})
}

// Halfway between two float64 the even one is the nearest, and a hair beside it no
// longer.
func TestToSITies(t *testing.T) {
	metre := lengthDimension.unit("m")
	for _, row := range []struct {
		m, per uint64
		want   float64
		reason string
	}{
		{1<<53 + 1, 1, 1 << 53, "a tie, down to even"},
		{1<<53 + 3, 1, 1<<53 + 4, "a tie, up to even"},
		{1<<63 + 1<<10, 1, 1 << 63, "a tie in the last word"},
		{1<<63 + 1<<10 + 1, 1, 1<<63 + 1<<11, "a hair above it"},
		{1<<63 + 3<<10, 1, 1<<63 + 1<<12, "a tie, up to even"},
		{1<<63 + 3<<10 - 1, 1, 1<<63 + 1<<11, "a hair below it"},
		{math.MaxUint64, 1, 1 << 64, "carries into the next power"},
		{3 * (1<<53 + 1), 3, 1 << 53, "a tie that only the quotient shows"},
		{3*(1<<53+1) + 1, 3, 1<<53 + 2, "a third above it"},
		{3*(1<<53+1) - 1, 3, 1 << 53, "a third below it"},
	} {
		if got, ok := metre.toSI(row.m, row.per, 0); !ok || got != row.want {
			t.Errorf("%d/%d: got %v, %v, want %v: %s", row.m, row.per, got, ok, row.want, row.reason)
		}
	}
}

// Nothing is nothing in every unit, and what does not fit is declined before
// anything is divided by what is left of it.
func TestToSIEnds(t *testing.T) {
	for _, of := range everyUnit() {
		for ten := -20; ten < 20; ten++ {
			if got, ok := of.u.toSI(0, 1, ten); !ok || got != 0 {
				t.Errorf("nothing of %v is %v, %v", of, got, ok)
			}
		}
	}
	for _, ten := range []int{-3, -1, 0, 1, 3, 8} {
		if got, ok := massDimension.unit("oz").toSI(1, 1<<60, ten); ok {
			t.Errorf("2^60 × 16 fits in a word and gives %v", got)
		}
	}
}

// The digits of π are cut off in a word, and about one number in a thousand comes
// too near to a tie to be certain. Those are left to math/big.
func TestToSIWithoutEnd(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	declined := 0
	for range 20_000 {
		u := &angleDimension.units[1+r.IntN(3)]
		m := r.Uint64N(1e12)
		got, ok := u.toSI(m, 1, -2)
		if !ok {
			declined++
			continue
		}
		exact := shift(new(big.Rat).SetInt(new(big.Int).SetUint64(m)), -2)
		if want, _ := exact.Mul(exact, u.factor()).Float64(); got != want {
			t.Fatalf("%d/100 %s is %v, want %v", m, u.symbol, got, want)
		}
	}
	if declined == 0 || declined > 200 {
		t.Errorf("%d of 20000 declined", declined)
	}
}

// Dividends at a tie, and one off it, for which every bit counts.
func TestQuotient(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	for range 50_000 {
		q := max(r.Uint64()>>r.IntN(64), 1)
		odd := (r.Uint64N(1<<52)|1<<52)<<1 | 1 // a mantissa and half of its last bit
		w := wide{0, 0, q}
		w.times(odd)
		w.shift(r.IntN(10))
		if r.IntN(2) == 0 { // no room is left, so that halving loses a bit
			w.shift(bits.LeadingZeros64(w[1]))
		}
		if w[0] != 0 {
			continue
		}
		low, carry := bits.Add64(w[2], uint64(r.IntN(3)), 0)
		low, borrow := bits.Sub64(low, 1, 0)
		high := w[1] + carry - borrow
		e := r.IntN(55) - 27
		dividend := new(big.Int).Lsh(new(big.Int).SetUint64(high), 64)
		dividend.Or(dividend, new(big.Int).SetUint64(low))
		exact := new(big.Rat).SetFrac(dividend, new(big.Int).SetUint64(q))
		want, _ := exact.Float64()
		if got := quotient(high, low, q, e); got != math.Ldexp(want, e) {
			t.Fatalf("(%x %016x) / %x × 2^%d is %b, want %b", high, low, q, e, got, math.Ldexp(want, e))
		}
	}
}

func TestTimes(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	fits, not := 0, 0
	for range 20_000 {
		hi, lo, k := r.Uint64()>>r.IntN(65), r.Uint64(), r.Uint64()>>r.IntN(64)
		if r.IntN(4) == 0 { // the last word of the product just full, or just too full
			hi, lo = math.MaxUint64/max(k, 1), math.MaxUint64-r.Uint64N(1<<10)
		}
		want := new(big.Int).Lsh(new(big.Int).SetUint64(hi), 64)
		want.Mul(want.Or(want, new(big.Int).SetUint64(lo)), new(big.Int).SetUint64(k))
		over := times(&hi, &lo, k)
		if (over == 0) != (want.BitLen() <= 128) {
			t.Fatalf("%v has %d bits, and %d does not fit", want, want.BitLen(), over)
		}
		if over != 0 {
			not++
			continue
		}
		fits++
		got := new(big.Int).Lsh(new(big.Int).SetUint64(hi), 64)
		if got.Or(got, new(big.Int).SetUint64(lo)).Cmp(want) != 0 {
			t.Fatalf("got %v, want %v", got, want)
		}
	}
	if fits < 1000 || not < 1000 {
		t.Errorf("%d products fit and %d do not", fits, not)
	}
}

// So fine that the last steps of an angle are in doubt: what count gives is right,
// and what it cannot be sure of it declines.
func TestCountWithoutEnd(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	declined := 0
	for range 5_000 {
		u := &angleDimension.units[1+r.IntN(3)]
		m, e := binary(r.Float64() * 3)
		places := 15 + r.IntN(2)
		if _, _, ok := u.count(m, e, 1, places); !ok {
			declined++
		}
		checkCount(t, u, m, e, 1, places)
	}
	if declined == 0 || declined > 4_000 {
		t.Errorf("%d of 5000 declined", declined)
	}
}

// count is longCount where it fits.
func TestPropCount(t *testing.T) {
	list := everyUnit()
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(list).Draw(t, "unit").u
		m, e := binary(anyFloat().Draw(t, "x"))
		by := rapid.SampledFrom([]uint64{1, 1, 2, 16, 3}).Draw(t, "by")
		places := rapid.IntRange(-20, 40).Draw(t, "places")
		checkCount(t, u, m, e, by, places)
		// A count that lies just at a half, or at a whole.
		if e < 0 && e > -100 {
			halves := rapid.Uint64Range(0, 1000).Draw(t, "halves")
			x := new(big.Rat).SetFrac64(int64(halves), 2*int64(by))
			x = shift(x.Mul(x, u.factor()), -places)
			f, _ := x.Float64()
			m, e = binary(f)
			checkCount(t, u, m, e, by, places)
		}
	})
}

type fataler interface{ Fatalf(string, ...any) }

func checkCount(t fataler, u *unit, m uint64, e int, by uint64, places int) {
	n, left, ok := u.count(m, e, by, places)
	if !ok {
		return
	}
	steps := shift(new(big.Rat).SetInt(new(big.Int).SetUint64(by)), places)
	want, wantLeft := u.longCount(m, e, steps)
	if !want.IsUint64() || want.Uint64() != n || left != wantLeft {
		t.Fatalf("%d × 2^%d in %d × 10^%d steps of %s: %d and %d, want %v and %d", m, e, by, places, u.symbol, n, left, want, wantLeft)
	}
}

// Every way in which a division may end, for every shift, against math/big.
func TestWideDivide(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	seen := map[part]int{}
	for range 200_000 {
		w := wide{r.Uint64() >> r.IntN(65), r.Uint64() >> r.IntN(65), r.Uint64() >> r.IntN(65)}
		if r.IntN(2) == 0 {
			w[0] = 0
		}
		q := max(r.Uint64()>>r.IntN(64), 1)
		by := r.IntN([]int{200, 1200}[r.IntN(2)])
		if r.IntN(2) == 0 { // something near to a whole number of halves
			w = wide{0, 0, q}
			w.times(uint64(1 + r.IntN(9)))
			w.shift(min(max(by-1, 0), 150))
			switch r.IntN(3) {
			case 0:
				w[1+r.IntN(2)] |= 1 << r.IntN(64)
			case 1:
				w[2] -= min(1, w[2])
			}
		}
		n, left, ok := w.divide(q, by)
		exact := new(big.Int)
		for _, word := range w {
			exact.Lsh(exact, 64).Or(exact, new(big.Int).SetUint64(word))
		}
		divisor := new(big.Int).Lsh(new(big.Int).SetUint64(q), uint(by))
		want, rest := exact.QuoRem(exact, divisor, new(big.Int))
		if !ok {
			if want.IsUint64() {
				t.Fatalf("%x / (%d·2^%d) fits and is refused", w, q, by)
			}
			continue
		}
		wantLeft := []part{underHalf, half, overHalf}[1+new(big.Int).Lsh(rest, 1).Cmp(divisor)]
		if rest.Sign() == 0 {
			wantLeft = nothing
		}
		if !want.IsUint64() || want.Uint64() != n || left != wantLeft {
			t.Fatalf("%x / (%d·2^%d) = %d and %d, want %v and %d", w, q, by, n, left, want, wantLeft)
		}
		seen[left]++
	}
	for _, left := range []part{nothing, underHalf, half, overHalf} {
		if seen[left] < 1000 {
			t.Errorf("what is left was %d only %d times", left, seen[left])
		}
	}
}

// Text in words is the text of math/big, for every value, unit, number of places
// and rounding.
func TestPropDecimals(t *testing.T) {
	list := everyUnit()
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(list).Draw(t, "unit").u
		x := anyFloat().Draw(t, "x")
		places := rapid.IntRange(0, maxPlaces).Draw(t, "places")
		trim := rapid.Bool().Draw(t, "trim")
		for r := HalfAway; r <= TowardZero; r++ {
			if got, want := string(appendDecimals(nil, x, u, places, r, trim)), string(appendLongDecimals(nil, x, u, places, r, trim)); got != want {
				t.Fatalf("%v of %s, %d places, rounding %d: %s, want %s", x, u.symbol, places, r, got, want)
			}
		}
	})
}

func TestPropFeetInchesInWords(t *testing.T) {
	inch := lengthDimension.unit("in")
	rapid.Check(t, func(t *rapid.T) {
		x := anyFloat().Draw(t, "x")
		if rapid.Bool().Draw(t, "tie") { // odd thirty-seconds are ties, as near as a float64 comes
			x, _ = inch.toSI(rapid.Uint64Range(0, 1e6).Draw(t, "thirty-seconds"), 32, 0)
		}
		if got, want := string(appendFeetInches(nil, x)), string(appendLongFeetInches(nil, x)); got != want {
			t.Fatalf("%v: %s, want %s", x, got, want)
		}
	})
}

// What the words cannot hold they decline, and math/big does it: no figure that a
// person prints is among those.
func TestStepsFit(t *testing.T) {
	for _, of := range everyUnit() {
		for _, size := range []float64{1e-9, 1e-3, 0.1, 1, 12.34, 1e3, 1e6} {
			value, _ := new(big.Rat).Mul(new(big.Rat).SetFloat64(size), of.u.factor()).Float64()
			for places := range 7 {
				if of.u.long != "" && places > 4 {
					continue // the factor of an angle takes up the room
				}
				if _, ok := of.u.steps(value, places, AwayFromZero); !ok {
					t.Errorf("%v, %v to %d places", of, size, places)
				}
			}
		}
	}
}
