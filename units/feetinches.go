package units

import (
	"math/big"
	"strconv"
)

// appendFeetInches appends a length in feet, inches and sixteenths in lowest terms.
func appendFeetInches(b []byte, metres float64) []byte {
	inch := lengthDimension.unit("in")
	m, e := binary(metres)
	n, left, ok := inch.count(m, e, 16, 0)
	if !ok {
		return appendLongFeetInches(b, metres)
	}
	if left >= half {
		n++
	}
	if metres < 0 && n != 0 {
		b = append(b, '-')
	}
	b = strconv.AppendUint(b, n/(12*16), 10)
	return appendInches(b, n%(12*16))
}

// appendLongFeetInches does the same for lengths beyond 64 bits of sixteenths,
// which is about three light years.
func appendLongFeetInches(b []byte, metres float64) []byte {
	n := lengthDimension.unit("in").longSteps(metres, big.NewInt(16), HalfAway)
	if metres < 0 && n.Sign() != 0 {
		b = append(b, '-')
	}
	feet, rest := n.QuoRem(n, big.NewInt(12*16), new(big.Int))
	return appendInches(feet.Append(b, 10), rest.Uint64())
}

// appendInches appends the marks, and the inches between them: less than a foot,
// in sixteenths.
func appendInches(b []byte, sixteenths uint64) []byte {
	b = append(b, "' "...)
	b = strconv.AppendUint(b, sixteenths/16, 10)
	if over, under := sixteenths%16, uint64(16); over != 0 {
		for over%2 == 0 {
			over, under = over/2, under/2
		}
		b = append(b, ' ')
		b = strconv.AppendUint(b, over, 10)
		b = append(b, '/')
		b = strconv.AppendUint(b, under, 10)
	}
	return append(b, '"')
}
