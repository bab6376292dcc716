package arbor

import (
	"math"
	"math/bits"
)

// A ratio times a length, or a length by a ratio, is found here as if no number
// were ever rounded but the last: a float64 ratio is a fraction over a power of
// two, and the product goes through 128 bits.

// The ratios that are taken. A rope that makes more is no counterweight set.
const (
	leastRatio = 1.0 / 16
	mostRatio  = 16.0
)

// fraction is a ratio as a quotient of whole numbers. The zero fraction is none,
// and makes every product zero.
type fraction struct{ over, under uint64 }

// fractionOf gives the exact value of a ratio from leastRatio to mostRatio; of
// another, none.
func fractionOf(ratio float64) fraction {
	if !(ratio >= leastRatio && ratio <= mostRatio) {
		return fraction{}
	}
	part, exponent := math.Frexp(ratio)
	over, shift := uint64(part*(1<<53)), 53-exponent // shift is from 48 to 56
	zeros := min(bits.TrailingZeros64(over), shift)
	return fraction{over >> zeros, 1 << (shift - zeros)}
}

// times is n·f, and by is n/f, rounded to the nearest whole number, half away
// from zero.
func (f fraction) times(n int64) int64 { return mulDiv(n, f.over, f.under, nearest) }
func (f fraction) by(n int64) int64    { return mulDiv(n, f.under, f.over, nearest) }

// byUp is n/f rounded up: an arbor travel that is enough.
func (f fraction) byUp(n int64) int64 { return mulDiv(n, f.under, f.over, up) }

type rounding uint8

const (
	nearest rounding = iota // half away from zero
	up                      // towards +∞
)

// mulDiv is n·a/b, at most ±most; zero where b is zero.
func mulDiv(n int64, a, b uint64, r rounding) int64 {
	size := uint64(n)
	if n < 0 {
		size = -size
	}
	hi, lo := bits.Mul64(size, a)
	switch {
	case b == 0:
		return 0
	case hi >= b: // the quotient would not fit
		lo = most
	default:
		var rest uint64
		lo, rest = bits.Div64(hi, lo, b)
		if r == nearest && rest >= b-rest || r == up && rest > 0 && n > 0 {
			lo++
		}
	}
	if q := int64(min(lo, most)); n >= 0 {
		return q
	} else {
		return -q
	}
}
