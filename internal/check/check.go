// Package check collects what is wrong with a description, so that validation
// reports every problem at once, each with the path of its field.
package check

import (
	"errors"
	"math"
	"strconv"

	"example.com/steelyard/units"
)

// Problems collects faults. The zero value has none.
type Problems struct {
	errs []error
}

// Add notes one fault.
func (p *Problems) Add(field, value, want string, kind error) {
	p.errs = append(p.errs, &units.FieldError{Field: field, Value: value, Want: want, Err: kind})
}

// Within notes the faults of a part, under the part's field and name.
func (p *Problems) Within(field, of string, err error) {
	if err != nil {
		p.errs = append(p.errs, units.At(field, of, err))
	}
}

// Err gives all faults joined, or nil.
func (p *Problems) Err() error { return errors.Join(p.errs...) }

// limit bounds every quantity in SI units. It lies far outside anything that
// hangs in a theatre and far inside what float64 can multiply without overflow,
// so that valid input can never lead to an infinity.
const limit = 1e12

// smallest is the least positive value taken: below it a divisor is a slip of
// the unit, and quotients would overflow.
const smallest = 1e-9

// Finite reports whether q is a number of a size that can be computed with, and
// notes a fault where it is not.
//
// Of each of these the usual case stands alone, so that it is compiled in place.
func Finite[Q units.Quantity](p *Problems, field string, q Q) bool {
	return -limit <= q && q <= limit || infinite(p, field, q)
}

func infinite[Q units.Quantity](p *Problems, field string, q Q) bool {
	if f := float64(q); math.IsNaN(f) || math.IsInf(f, 0) {
		p.Add(field, Show(q), "a finite number", units.ErrNotFinite)
	} else {
		p.Add(field, Show(q), "at most "+Q(limit).String(), units.ErrOutOfRange)
	}
	return false
}

// NotNegative reports whether q is zero or more, and notes a fault where not.
func NotNegative[Q units.Quantity](p *Problems, field string, q Q) bool {
	return q >= 0 && q <= limit || negative(p, field, q)
}

func negative[Q units.Quantity](p *Problems, field string, q Q) bool {
	if Finite(p, field, q) {
		p.Add(field, Show(q), "0 or more", units.ErrNegative)
	}
	return false
}

// Positive reports whether q is more than zero, and notes a fault where not: a
// zero counts as missing. What says what the field should hold, such as "the
// height of the head block above the deck".
func Positive[Q units.Quantity](p *Problems, field string, q Q, what string) bool {
	return q >= smallest && q <= limit || notPositive(p, field, q, what)
}

func notPositive[Q units.Quantity](p *Problems, field string, q Q, what string) bool {
	switch {
	case !Finite(p, field, q):
	case q == 0:
		p.Add(field, "", what, units.ErrMissing)
	case q < 0:
		p.Add(field, Show(q), what+", more than 0", units.ErrNegative)
	default:
		p.Add(field, Show(q), what+", at least "+Q(smallest).String(), units.ErrOutOfRange)
	}
	return false
}

// IsPositive tells whether Positive finds nothing wrong: who asks often need not put a name together first.
func IsPositive[Q units.Quantity](q Q) bool { return q >= smallest && q <= limit }

// Show writes a quantity for an error message, in both systems: the reader of the
// message may have written it in either. The SI figure has nine digits: feet and
// inches alone could hide a fault, and more digits would only be rounding.
func Show[Q units.Quantity](q Q) string {
	f := float64(q)
	if math.IsNaN(f) || math.Abs(f) > limit {
		return q.String() // far too large to be read in feet
	}
	short, _ := strconv.ParseFloat(strconv.FormatFloat(f, 'g', 9, 64), 64) // within the limit it cannot fail
	return units.US.Format(q) + " (" + Q(short).String() + ")"
}
