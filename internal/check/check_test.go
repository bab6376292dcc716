package check_test

import (
	"errors"
	"math"
	"testing"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

func TestRanges(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name                          string
		value                         float64
		finite, notNegative, positive error
	}{
		{"ordinary", 3, nil, nil, nil},
		{"zero", 0, nil, nil, units.ErrMissing},
		{"negative", -3, nil, units.ErrNegative, units.ErrNegative},
		{"least", 1e-9, nil, nil, nil},
		{"below the least", 9e-10, nil, nil, units.ErrOutOfRange},
		{"most", 1e12, nil, nil, nil},
		{"above the most", 1.1e12, units.ErrOutOfRange, units.ErrOutOfRange, units.ErrOutOfRange},
		{"far below", -1.1e12, units.ErrOutOfRange, units.ErrOutOfRange, units.ErrOutOfRange},
		{"NaN", nan, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite},
		{"infinite", inf, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite},
		{"infinite below", -inf, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := units.Mass(c.value)
			expect := func(what string, want error, test func(*check.Problems) bool) {
				var p check.Problems
				ok := test(&p)
				var fe *units.FieldError
				if joined, many := p.Err().(interface{ Unwrap() []error }); many && len(joined.Unwrap()) > 1 {
					t.Errorf("%s: %d faults of one value: %v", what, len(joined.Unwrap()), p.Err())
				}
				switch err := p.Err(); {
				case ok != (want == nil) || !errors.Is(err, want):
					t.Errorf("%s: %v, error %v; want %v", what, ok, err, want)
				case want != nil && (!errors.As(err, &fe) || fe.Field != "mass" || fe.Want == ""):
					t.Errorf("%s: error %v does not name the field and a remedy", what, err)
				}
			}
			expect("finite", c.finite, func(p *check.Problems) bool { return check.Finite(p, "mass", m) })
			expect("not negative", c.notNegative, func(p *check.Problems) bool { return check.NotNegative(p, "mass", m) })
			expect("positive", c.positive, func(p *check.Problems) bool { return check.Positive(p, "mass", m, "a mass") })
		})
	}
}

func TestShow(t *testing.T) {
	if got, want := check.Show(43*units.Foot), `43' 0" (13.1064 m)`; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := check.Show(units.Mass(math.NaN())), "NaN kg"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
