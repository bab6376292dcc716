package units

import (
	"iter"
	"strings"
)

// Unit gives the unit that a symbol stands for, as a value of one: Unit[Length]("ft")
// is [Foot]. Every spelling that [Parse] reads is known.
//
// The error is a *[FieldError] of kind ErrUnknown, ErrWrongQuantity for a unit of
// another quantity, or ErrAmbiguousUnit, and says what would be right.
func Unit[Q Quantity](symbol string) (Q, error) {
	var q Q
	d := q.dimension()
	key := unitKey(fold(symbol))
	if u := d.spelled(key); u != nil {
		size, _ := u.factor().Float64()
		return Q(size), nil
	}
	fault := &FieldError{Value: quote(symbol), Want: "a unit of " + d.name + ": " + strings.Join(symbols(d), ", "), Err: ErrUnknown}
	if choices := ambiguous(key); choices != "" {
		fault.Err, fault.Want = ErrAmbiguousUnit, choices
		return 0, fault
	}
	for _, other := range dimensions {
		if other.spelled(key) != nil {
			fault.Err = ErrWrongQuantity
		}
	}
	return 0, fault
}

// Symbols goes through the symbols of the units of Q as they are printed, the SI
// unit first: for a list to choose from. [Unit] gives the unit of each.
func Symbols[Q Quantity]() iter.Seq[string] {
	return func(yield func(string) bool) {
		var q Q
		for _, u := range q.dimension().units {
			if !yield(u.symbol) {
				return
			}
		}
	}
}

// symbols lists what Symbols goes through.
func symbols(d *dimension) []string {
	list := make([]string, len(d.units))
	for i := range d.units {
		list[i] = d.units[i].symbol
	}
	return list
}
