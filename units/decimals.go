package units

import (
	"math"
	"math/big"
	"strconv"
)

// maxPlaces is the most decimals that are shown: a float64 has 17 digits to tell.
const maxPlaces = 20

// appendDecimals appends x in the unit u with the given places, 0 to maxPlaces, and
// cuts zeros at the end where trim is set. A value that rounds to zero has no sign.
func appendDecimals(b []byte, x float64, u *unit, places int, r Rounding, trim bool) []byte {
	n, ok := u.steps(x, places, r)
	if !ok || places >= len(tensUpTo19) {
		return appendLongDecimals(b, x, u, places, r, trim)
	}
	if x < 0 && n != 0 {
		b = append(b, '-')
	}
	whole, rest := n/tensUpTo19[places], n%tensUpTo19[places]
	b = strconv.AppendUint(b, whole, 10)
	for trim && places > 0 && rest%10 == 0 {
		rest, places = rest/10, places-1
	}
	if places == 0 {
		return b
	}
	b = append(b, '.')
	for p := places - 1; p > 0 && rest < tensUpTo19[p]; p-- {
		b = append(b, '0')
	}
	return strconv.AppendUint(b, rest, 10)
}

// steps gives how many steps of 10^-places units are shown for the size of x, in
// whole numbers where they fit.
func (u *unit) steps(x float64, places int, r Rounding) (uint64, bool) {
	m, e := binary(x)
	n, left, ok := u.count(m, e, 1, places)
	if !ok {
		return 0, false
	}
	nearest := n
	if left >= half {
		nearest++
	}
	if r.directed() && left != nothing {
		back, ok := u.toSI(nearest, 1, -places)
		if !ok {
			return 0, false
		}
		if back == math.Abs(x) {
			return nearest, true
		}
	}
	if r.up(n, left) {
		n++
	}
	return n, true
}

// longSteps does the work of steps for numbers of any length, in steps of 1/by.
func (u *unit) longSteps(x float64, by *big.Int, r Rounding) *big.Int {
	m, e := binary(x)
	n, left := u.longCount(m, e, new(big.Rat).SetInt(by))
	one := big.NewInt(1)
	if r.directed() && left != nothing {
		nearest := new(big.Int).Set(n)
		if left >= half {
			nearest.Add(nearest, one)
		}
		shown := new(big.Rat).SetFrac(nearest, by)
		if back, _ := shown.Mul(shown, u.factor()).Float64(); back == math.Abs(x) {
			return nearest
		}
	}
	if r.up(uint64(n.Bit(0)), left) {
		n.Add(n, one)
	}
	return n
}

// appendLongDecimals does the work of appendDecimals for numbers of any length.
func appendLongDecimals(b []byte, x float64, u *unit, places int, r Rounding, trim bool) []byte {
	n := u.longSteps(x, powerOfTen(places), r)
	if x < 0 && n.Sign() != 0 {
		b = append(b, '-')
	}
	digits := n.Append(nil, 10)
	for len(digits) <= places {
		digits = append([]byte{'0'}, digits...)
	}
	whole, rest := digits[:len(digits)-places], digits[len(digits)-places:]
	for trim && len(rest) > 0 && rest[len(rest)-1] == '0' {
		rest = rest[:len(rest)-1]
	}
	b = append(b, whole...)
	if len(rest) > 0 {
		b = append(append(b, '.'), rest...)
	}
	return b
}
