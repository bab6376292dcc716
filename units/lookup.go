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
	u, err := q.dimension().named(symbol)
	if err != nil {
		return 0, err
	}
	size, _ := u.factor().Float64()
	return Q(size), nil
}

// named finds a unit by any spelling, or says what would be right.
func (d *dimension) named(symbol string) (*unit, error) {
	key := unitKey(fold(symbol))
	if u := d.spelled(key); u != nil {
		return u, nil
	}
	fault := &FieldError{Value: quote(symbol), Want: "a unit of " + d.name + ": " + strings.Join(symbols(d), ", "), Err: ErrUnknown}
	if choices := ambiguous(key); choices != "" {
		fault.Err, fault.Want = ErrAmbiguousUnit, choices
		return nil, fault
	}
	for _, other := range dimensions {
		if other.spelled(key) != nil {
			fault.Err = ErrWrongQuantity
		}
	}
	return nil, fault
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
