package units

import (
	"math"
	"math/big"
	"math/bits"
)

// part is what is left of a value behind the whole steps that were counted.
type part uint8

const (
	nothing part = iota
	underHalf
	half
	overHalf
)

// binary takes the size of a finite x apart: |x| = m × 2^e, exactly.
func binary(x float64) (m uint64, e int) {
	b := math.Float64bits(x)
	m, e = b&(1<<52-1), int(b>>52&0x7ff)
	if e == 0 {
		return m, -1074
	}
	return m | 1<<52, e - 1075
}

// count gives how many steps there are in m × 2^e SI units, by × 10^places steps
// to the unit, and what is left. All of it is exact:
//
//	m × 2^e × by × 10^places / (num/den × 10^tens) = m·den·by × 5^k × 2^(e+k) / num, k = places − tens
//
// It is false where the numerator does not fit in 192 bits, or the divisor or the
// number of steps in 64. Whatever people hang or measure, printed to a few places,
// fits.
func (u *unit) count(m uint64, e int, by uint64, places int) (uint64, part, bool) {
	k := places - u.tens
	a, num := wide{0, 0, m}, u.num
	fits := a.times(by) && a.times(max(u.den, 1))
	switch {
	case k > 2*27 || k < -27:
		return 0, 0, false
	case k > 27:
		fits = fits && a.times(fives[27]) && a.times(fives[k-27])
	case k > 0:
		fits = fits && a.times(fives[k])
	}
	by5 := fives[max(-k, 0)]
	over, under := bits.Mul64(num, by5)
	fits = fits && over == 0 && a.shift(e+k)
	if !fits {
		return 0, 0, false
	}
	n, left, ok := a.divide(under, -(e + k))
	if u.long == "" || !ok {
		return n, left, ok
	}
	// The digits of num are cut off, so the truth lies between this and a division
	// by num+1.
	over, under = bits.Mul64(num+1, by5)
	low, lowLeft, ok := a.divide(under, -(e + k))
	return n, left, ok && over == 0 && n == low && left == lowLeft
}

// longCount does the work of count for numbers of any length, with by steps to
// the unit.
func (u *unit) longCount(m uint64, e int, by *big.Rat) (*big.Int, part) {
	exact := new(big.Rat).SetInt(new(big.Int).SetUint64(m))
	power := new(big.Rat).SetInt(new(big.Int).Lsh(big.NewInt(1), uint(max(e, -e))))
	if e < 0 {
		power.Inv(power)
	}
	exact.Mul(exact, power)
	exact.Quo(exact, u.factor())
	exact.Mul(exact, by)
	n, rest := new(big.Int).QuoRem(exact.Num(), exact.Denom(), new(big.Int))
	switch rest.Lsh(rest, 1).Cmp(exact.Denom()) {
	case 1:
		return n, overHalf
	case 0:
		return n, half
	}
	if rest.Sign() != 0 {
		return n, underHalf
	}
	return n, nothing
}

// wide is a whole number of 192 bits, the highest word first.
type wide [3]uint64

// times multiplies by k and reports whether the product fits.
func (w *wide) times(k uint64) bool {
	var carry uint64
	for i := 2; i >= 0; i-- {
		high, low := bits.Mul64(w[i], k)
		sum, c := bits.Add64(low, carry, 0)
		w[i], carry = sum, high+c
	}
	return carry == 0
}

// shift multiplies by 2^n, n > 0, and reports whether the product fits.
func (w *wide) shift(n int) bool {
	for ; n > 0; n -= 63 {
		if !w.times(1 << min(n, 63)) {
			return false
		}
	}
	return true
}

// divide gives w / (q·2^r); a negative r counts as 0.
func (w *wide) divide(q uint64, r int) (n uint64, left part, ok bool) {
	r = max(r, 0)
	// high is w / 2^r; first is the bit behind it, and more tells of any other.
	high := *w
	var first, more uint64
	for ; r >= 64; r -= 64 {
		more |= first | high[2]<<1
		first = high[2] >> 63
		high = wide{0, high[0], high[1]}
	}
	if r > 0 {
		more |= first | high[2]<<(65-r)
		first = high[2] >> (r - 1) & 1
		high[2] = high[2]>>r | high[1]<<(64-r)
		high[1] = high[1]>>r | high[0]<<(64-r)
		high[0] >>= r
	}
	if high[0] != 0 || high[1] >= q {
		return 0, 0, false
	}
	n, rest := bits.Div64(high[1], high[2], q)
	// What is left is rest + first/2 + more, of q; rest ≤ q−1.
	switch short := q - rest; {
	case rest|first|more == 0:
		left = nothing
	case rest > short, rest == short && first|more != 0, rest+1 == short && first != 0 && more != 0:
		left = overHalf
	case rest == short, rest+1 == short && first != 0:
		left = half
	default:
		left = underHalf
	}
	return n, left, true
}
