package units

import (
	"math"
	"math/big"
	"math/bits"
	"strconv"
)

// appendShortest appends x in the unit u with the fewest digits that parse reads
// back as x, laid out as appendPlain does.
func appendShortest(b []byte, x float64, u *unit) []byte {
	if math.Signbit(x) {
		b = append(b, '-')
	}
	if x == 0 {
		return append(b, '0')
	}
	number, ten := u.shortest(x)
	var room [20]byte
	digits := strconv.AppendUint(room[:0], number, 10)
	point := len(digits) + ten // the number is 0.digits × 10^point
	switch {
	case point < -5 || point > 21:
		b = append(b, digits[0])
		if len(digits) > 1 {
			b = append(append(b, '.'), digits[1:]...)
		}
		sign, exponent := byte('+'), point-1
		if exponent < 0 {
			sign, exponent = '-', -exponent
		}
		b = append(b, 'e', sign)
		if exponent < 10 {
			b = append(b, '0')
		}
		return strconv.AppendInt(b, int64(exponent), 10)
	case point <= 0:
		b = appendZeros(append(b, "0."...), -point)
		return append(b, digits...)
	case ten >= 0:
		return appendZeros(append(b, digits...), ten)
	}
	b = append(b, digits[:point]...)
	return append(append(b, '.'), digits[point:]...)
}

func appendZeros(b []byte, n int) []byte {
	for range n {
		b = append(b, '0')
	}
	return b
}

// shortest gives the decimal number × 10^ten with the fewest digits, and among
// those the nearest to x, that is read as the size of x, x not zero.
//
// All decimals between the midpoints to the two neighbours of x are read as x, and
// so are the midpoints themselves where the mantissa of x is even. The three are
// counted in steps that are fine enough to give x eighteen or nineteen digits, and
// tens are taken out of the steps as long as a number of them lies between.
func (u *unit) shortest(x float64) (number uint64, ten int) {
	m, e := binary(x)
	below := uint64(2) // quarters of the last bit of x down to the midpoint
	if m == 1<<52 && e > -1074 {
		below = 1 // the neighbour below a power of two is half as far
	}
	// From the lengths of the parts of x·den/num alone, 2^b ≤ it < 2^(b+3). With
	// 1233/4096 for log 2, 10^17 steps are the least but for 2 %, and there is room
	// for twice the most in a word.
	b := e + bits.Len64(m) - bits.Len64(u.num) + bits.Len64(max(u.den, 1)) - 2
	places := 17 - b*1233>>12 + u.tens

	low, left := u.countAny(4*m-below, e-2, places)
	if left != nothing || m%2 == 1 {
		low++
	}
	high, left := u.countAny(4*m+2, e-2, places)
	if left == nothing && m%2 == 1 {
		high--
	}
	middle, left := u.countAny(4*m, e-2, places)

	// More than ten steps lie between the ends, so step is at least ten in the end.
	ten = -places
	step := uint64(1)
	for (low+9)/10 <= high/10 {
		low, high, step, ten = (low+9)/10, high/10, step*10, ten+1
	}
	number = middle / step
	if rest := middle % step; rest > step/2 || rest == step/2 && (left != nothing || number%2 == 1) {
		number++
	}
	return min(max(number, low), high), ten
}

// countAny counts as count does, in numbers of any length where they do not fit.
func (u *unit) countAny(m uint64, e, places int) (uint64, part) {
	if n, left, ok := u.count(m, e, 1, places); ok {
		return n, left
	}
	n, left := u.longCount(m, e, shift(big.NewRat(1, 1), places))
	return n.Uint64(), left
}
