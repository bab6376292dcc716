package purchase

import (
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// bounded reports whether a plain number lies between least and most, both
// included, and notes a fault where it does not. A zero that is too small counts
// as missing.
func bounded(p *check.Problems, field string, x, least, most float64, want string) bool {
	kind := units.ErrOutOfRange
	switch {
	case x >= least && x <= most:
		return true
	case math.IsNaN(x) || math.IsInf(x, 0):
		kind = units.ErrNotFinite
	case x == 0:
		p.Add(field, "", want, units.ErrMissing)
		return false
	case x < 0 && least >= 0:
		kind = units.ErrNegative
	}
	p.Add(field, plainText(x), want, kind)
	return false
}

// plainText writes a number for an error message, with digits enough to tell it from
// a bound that it has just passed.
func plainText(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
