package arbor

import (
	"math"
	"strconv"

	"example.com/steelyard/units"
)

// The ledger counts in whole nanograms and nanometres: decimal units, so that
// what a person writes in kilograms, pounds, metres or inches is a whole number
// of them and adds up without rounding. A float64 enters by its shortest decimal
// text, rounded there, and not by a product that rounds before. 11 lb is
// 4.98951607 kg: as text that is the nearest float64, as 11*units.Pound it may be
// the next one (the constant was rounded before), and here both are the same
// 4 989 516 070 000 ng.

// most bounds what enters, so that a few of them can be added without overflow.
const most = 1_000_000_000_000_000_000

// nanograms gives a mass as the ledger holds it.
func nanograms(m units.Mass) int64 { return billionths(float64(m), 1e12, 12) }

// nanometres gives a length as the ledger holds it.
func nanometres(l units.Length) int64 { return billionths(float64(l), 1e9, 9) }

// kilograms gives back a mass from the ledger, rounded once.
func kilograms(ng int64) units.Mass { return units.Mass(rounded(ng, 1e12, 12)) }

// metres gives back a length from the ledger, rounded once.
func metres(nm int64) units.Length { return units.Length(rounded(nm, 1e9, 9)) }

// billionths is f·10^places, from f's shortest decimal text, rounded to a whole
// number half away from zero. It saturates at ±most; NaN gives 0. Scale is 10^places.
func billionths(f, scale float64, places int) int64 {
	// The text is within 2⁻⁵³ of f, and so is the product: where a rounding further from the half than both together leaves it
	// in no doubt, it wants no text. Nor does a whole number of up to 15 digits that is f again when it is divided: of such
	// decimals no two are nearest to one float64, and f's shortest text is no longer.
	if size := math.Abs(f * scale); size < 1e15 {
		n := int64(size + 0.5)
		if whole := float64(n); math.Abs(size-whole) < 0.5-float64(size*0x1p-50) || whole/scale == math.Abs(f) {
			if f < 0 {
				return -n
			}
			return n
		}
	}
	return fromText(f, places)
}

// fromText is billionths the long way.
func fromText(f float64, places int) int64 {
	if math.IsNaN(f) {
		return 0
	}
	var buf [32]byte
	text := strconv.AppendFloat(buf[:0], math.Abs(f), 'e', -1, 64)
	// d[.ddd]e±dd, at most 17 digits: they fit in int64 as they stand.
	var digits int64
	point, i := 0, 0
	for seen := false; i < len(text) && text[i] != 'e'; i++ {
		switch c := text[i]; {
		case c == '.':
			seen = true
		case c >= '0' && c <= '9':
			digits = digits*10 + int64(c-'0')
			if seen {
				point++
			}
		default: // +Inf
			digits = most
		}
	}
	exponent := 0
	if i < len(text) {
		exponent, _ = strconv.Atoi(string(text[i+1:]))
	}
	for shift := places + exponent - point; shift != 0 && digits != 0; {
		switch {
		case shift > 0 && digits > most/10:
			digits, shift = most, 0
		case shift > 0:
			digits *= 10
			shift--
		case shift == -1:
			digits = (digits + 5) / 10
			shift = 0
		default:
			// Only the last step rounds, by its one digit: what is cut before it
			// cannot take that digit to five or from it.
			digits /= 10
			shift++
		}
	}
	if f < 0 {
		return -digits
	}
	return digits
}

// rounded is n/10^places as the nearest float64. Scale is 10^places.
func rounded(n int64, scale float64, places int) float64 {
	if abs := max(n, -n); abs <= 1<<53 {
		// Both are whole and exact, so the quotient is rounded once.
		return float64(n) / scale
	}
	var buf [32]byte
	text := append(strconv.AppendInt(buf[:0], n, 10), "e-"...)
	text = strconv.AppendInt(text, int64(places), 10)
	f, _ := strconv.ParseFloat(string(text), 64)
	return f
}
