package units_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/steelyard/units"
)

func TestTolerance(t *testing.T) {
	nan, inf := units.Length(math.NaN()), units.Length(math.Inf(1))
	for _, row := range []struct {
		name      string
		a, b, tol units.Length
		want      bool
		reason    string
	}{
		{"same", 3, 3, 0, true, "no tolerance is needed"},
		{"edge", 3, 3.5, 0.5, true, "at most, not less than"},
		{"edge below", 3.5, 3, 0.5, true, "either way"},
		{"beyond", 3, 3.5, 0.25, false, "too far"},
		{"last bit", 3 * units.Foot, units.Yard, 0, false, "the two constants differ there"},
		{"last bit forgiven", 3 * units.Foot, units.Yard, units.Millimetre / 1e6, true, "a nanometre"},
		{"signs", -1, 1, 1.5, false, "the distance, not the sizes"},
		{"negative tolerance", 3, 3, -1, false, "nothing is closer than not at all"},
		{"two zeros", 0, units.Length(math.Copysign(0, -1)), 0, true, "equal"},
		{"NaN", nan, nan, 1, false, "no number"},
		{"NaN on one side", 3, nan, inf, false, "no number"},
		{"NaN tolerance", 3, 3, nan, false, "no number"},
		{"infinities", inf, inf, 1, false, "their distance is no number"},
		{"infinity and a number", inf, 3, inf, false, "an infinite tolerance does not reach it"},
		{"any two numbers", -3, 3, inf, true, "an infinite tolerance reaches every number"},
		{"too far to tell", math.MaxFloat64, -math.MaxFloat64, inf, false, "their distance is no finite number"},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := row.a.Within(row.b, row.tol); got != row.want {
				t.Errorf("%v within %v of %v: %v, want %v: %s", row.a, row.tol, row.b, got, row.want, row.reason)
			}
			near := units.Near(row.tol)
			if near(row.a, row.b) != row.want || near(row.b, row.a) != row.want {
				t.Errorf("Near says otherwise, or not the same both ways: %s", row.reason)
			}
		})
	}
}

// Every quantity has Within, and it looks at both of its arguments.
func TestToleranceEveryQuantity(t *testing.T) {
	for _, k := range kinds {
		if !k.within(k.of(3), k.of(3.5), k.of(0.5)) || k.within(k.of(3), k.of(3.5), k.of(0.25)) || k.within(k.of(3), k.of(4), k.of(0.5)) {
			t.Errorf("%s: 3 within 0.5 of 3.5 and not within 0.25 of it, nor within 0.5 of 4", k.name)
		}
	}
}

// go-cmp calls a comparer for values of its own type at any depth. Its option for
// plain floats is deaf to a type made from one, which this shows: a test that used
// it would compare bit for bit.
func TestNearInDiff(t *testing.T) {
	type piece struct {
		Mass units.Mass
		At   []units.Length
	}
	want := piece{23.5 * units.Pound, []units.Length{units.Foot, units.Yard}}
	close := piece{want.Mass + units.Gram/2, []units.Length{units.Foot, 3 * units.Foot}}
	far := piece{want.Mass, []units.Length{units.Foot, units.Yard + 2*units.Millimetre}}
	options := cmp.Options{
		cmp.Comparer(units.Near(1 * units.Gram)),
		cmp.Comparer(units.Near(1 * units.Millimetre)),
	}
	if diff := cmp.Diff(want, close, options); diff != "" {
		t.Errorf("within the tolerances, and yet:\n%s", diff)
	}
	if cmp.Diff(want, far, options) == "" {
		t.Error("two millimetres passed for one")
	}
	if cmp.Diff(want, far, options[0]) == "" {
		t.Error("the tolerance of a mass let lengths through")
	}
	if cmp.Diff(want, close, cmpopts.EquateApprox(1, 1e9)) == "" {
		t.Error("EquateApprox now works on a defined float: Near is no longer needed for it")
	}
}
