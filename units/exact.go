package units

import (
	"math"
	"math/bits"
)

// Conversion in whole numbers, for what fits in one or two machine words. It
// gives the same results as math/big, which does the rest, and is some fifty
// times as fast.
//
// A decimal number of units is m/per × 10^t, with t below zero for digits behind
// the point, and a factor is num/den × 10^tens. Since 10^k = 5^k × 2^k, and a
// power of two only moves the exponent of a float64, only fives take up room.

// fives holds the powers of five that fit in a word: 5^27 < 2^64 < 5^28.
var fives = [...]uint64{
	1, 5, 25, 125, 625, 3125, 15625, 78125, 390625, 1953125, 9765625, 48828125, 244140625, 1220703125, 6103515625,
	30517578125, 152587890625, 762939453125, 3814697265625, 19073486328125, 95367431640625, 476837158203125,
	2384185791015625, 11920928955078125, 59604644775390625, 298023223876953125, 1490116119384765625,
	7450580596923828125,
}

// tensUpTo19 holds the powers of ten that fit in a word.
var tensUpTo19 = [...]uint64{
	1, 10, 100, 1000, 10000, 100000, 1000000, 10000000, 100000000, 1000000000, 10000000000, 100000000000,
	1000000000000, 10000000000000, 100000000000000, 1000000000000000, 10000000000000000, 100000000000000000,
	1000000000000000000, 10000000000000000000,
}

// toSI gives m/per × 10^t of the unit in SI units, rounded once, to the nearest
// float64 and to even in a tie. It is false where the numbers do not fit:
//
//	m·num·5^(t+tens) < 2^128  and  per·den < 2^64      for t+tens ≥ 0
//	m·num < 2^128  and  per·den·5^-(t+tens) < 2^64     for t+tens < 0
//
// per is not zero. Twelve digits in any unit of the table fit, wherever the point
// stands within them, but for angles with more than a few decimals.
func (u *unit) toSI(m, per uint64, t int) (float64, bool) {
	if m == 0 {
		return 0, true
	}
	t += u.tens
	if t < -27 || t > 27 {
		return 0, false
	}
	hi, lo := bits.Mul64(m, u.num)
	over, under := uint64(0), per
	if u.den != 0 {
		over, under = bits.Mul64(per, u.den)
	}
	if t < 0 {
		var more uint64
		more, under = bits.Mul64(under, fives[-t])
		over |= more
	} else if t > 0 {
		over |= times(&hi, &lo, fives[t])
	}
	if over != 0 {
		return 0, false
	}
	// Two integers up to 2^53 are float64 themselves, and their quotient is rounded
	// once by the machine.
	if hi == 0 && lo <= 1<<53 && under <= 1<<53 { // a long num is more
		return float64(int64(lo)) / float64(int64(under)) * powerOfTwo(t), true
	}
	f := quotient(hi, lo, under, t)
	if u.long == "" {
		return f, true
	}
	// The digits of num are cut off: the factor lies between num and num+1, and the
	// result is certain where both ends round to the same float64.
	high, low := bits.Mul64(m, u.num+1)
	if t > 0 && times(&high, &low, fives[t]) != 0 {
		return 0, false
	}
	return f, f == quotient(high, low, under, t)
}

// times multiplies hi·2^64 + lo by k, and gives what does not fit.
func times(hi, lo *uint64, k uint64) (over uint64) {
	carry, low := bits.Mul64(*lo, k)
	over, high := bits.Mul64(*hi, k)
	high, out := bits.Add64(high, carry, 0)
	*hi, *lo = high, low
	return over + out
}

// quotient gives (hi·2^64 + lo) / q × 2^e, rounded to the nearest float64 and to
// even in a tie. The dividend and q are not zero; |e| ≤ 27 keeps the result far
// from the ends of the range.
func quotient(hi, lo, q uint64, e int) float64 {
	// With the top bits of dividend and divisor set, and the dividend halved where
	// it would overflow, the quotient has exactly 64 bits.
	if hi == 0 {
		hi, lo, e = lo, 0, e-64
	}
	n := bits.LeadingZeros64(hi)
	hi, lo = hi<<n|lo>>(64-n), lo<<n
	e -= n
	n = bits.LeadingZeros64(q)
	q <<= n
	e += n
	lost := uint64(0) // not zero where anything is left behind the 64 bits
	if hi >= q {
		lost = lo & 1
		hi, lo, e = hi>>1, hi<<63|lo>>1, e+1
	}
	digits, rest := bits.Div64(hi, lo, q)
	lost |= rest
	const dropped = 64 - 53
	mantissa, tail := digits>>dropped, digits&(1<<dropped-1)
	if half := uint64(1) << (dropped - 1); tail > half || tail == half && (lost != 0 || mantissa&1 != 0) {
		mantissa++
	}
	return float64(int64(mantissa)) * powerOfTwo(e+dropped)
}

// powerOfTwo gives 2^n for a normal float64.
func powerOfTwo(n int) float64 { return math.Float64frombits(uint64(1023+n) << 52) }
