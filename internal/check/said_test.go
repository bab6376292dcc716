package check_test

import (
	"errors"
	"math"
	"testing"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Every refusal names the field, the value as the reader may have written it, and what would be right.
func TestSaid(t *testing.T) {
	for _, c := range []struct {
		name string
		note func(*check.Problems)
		want string
	}{
		{
			"not finite", func(p *check.Problems) { check.Finite(p, "mass", units.Mass(math.NaN())) },
			"mass: NaN kg is not a finite number; want a finite number",
		},
		{
			"too much", func(p *check.Problems) { check.Finite(p, "mass", units.Mass(-2e12)) },
			"mass: -2000000000000 kg is out of range; want at most 1000000000000 kg",
		},
		{
			"negative", func(p *check.Problems) { check.NotNegative(p, "trim", -12*units.Foot) },
			`trim: -12' 0" (-3.6576 m) is negative; want 0 or more`,
		},
		{
			"missing", func(p *check.Problems) { check.Positive(p, "trim", 0*units.Foot, "the height of the grid") },
			"trim: is missing; want the height of the grid",
		},
		{
			"negative where nothing is missing", func(p *check.Problems) { check.Positive(p, "trim", -12*units.Foot, "the height of the grid") },
			`trim: -12' 0" (-3.6576 m) is negative; want the height of the grid, more than 0`,
		},
		{
			"next to nothing", func(p *check.Problems) { check.Positive(p, "pull", units.Force(4e-10), "the pull") },
			"pull: 0 lbf (4e-10 N) is out of range; want the pull, at least 1e-09 N",
		},
		{
			"each and in order", func(p *check.Problems) {
				p.Add("a", "", "a name", units.ErrMissing)
				p.Within("lines", `set "Border"`, &units.FieldError{Field: "at", Err: units.ErrNegative})
				p.Within("b", "", nil)
			},
			"a: is missing; want a name\n" + `lines.at (set "Border"): is negative`,
		},
	} {
		var p check.Problems
		c.note(&p)
		if err := p.Err(); err == nil || err.Error() != c.want {
			t.Errorf("%s:\n got %v\nwant %s", c.name, err, c.want)
		}
	}
	var p check.Problems
	p.Within("field", "name", nil)
	if err := p.Err(); err != nil {
		t.Errorf("nothing wrong gives %v", err)
	}
}

// The SI figure has nine digits, and what no one reads in feet has no feet.
func TestShown(t *testing.T) {
	for _, c := range []struct {
		name string
		got  string
		want string
	}{
		{"nine digits", check.Show(units.Length(1.234567876)), `4' 0 5/8" (1.23456788 m)`},   // 48.605 in; ⅝ is 0.625
		{"the most", check.Show(units.Mass(1e12)), "2204622621848.78 lb (1000000000000 kg)"}, // 1e12/0.45359237
		{"more", check.Show(units.Mass(-1.1e12)), "-1100000000000 kg"},
		{"infinite", check.Show(units.Mass(math.Inf(-1))), "-Inf kg"},
		{"the largest there is", check.Show(units.Mass(math.MaxFloat64)), "1.7976931348623157e+308 kg"},
	} {
		if c.got != c.want {
			t.Errorf("%s: got %s, want %s", c.name, c.got, c.want)
		}
	}
}

// The limits themselves are inside.
func TestLimits(t *testing.T) {
	above := math.Nextafter(1e12, math.Inf(1))
	for _, c := range []struct {
		name string
		ok   func(*check.Problems) bool
		want error
	}{
		{"the most", func(p *check.Problems) bool { return check.Finite(p, "m", units.Mass(1e12)) }, nil},
		{"the most below", func(p *check.Problems) bool { return check.Finite(p, "m", units.Mass(-1e12)) }, nil},
		{"a hair above", func(p *check.Problems) bool { return check.Finite(p, "m", units.Mass(above)) }, units.ErrOutOfRange},
		{"a hair below", func(p *check.Problems) bool { return check.Finite(p, "m", units.Mass(-above)) }, units.ErrOutOfRange},
		{"a hair under nothing", func(p *check.Problems) bool {
			return check.NotNegative(p, "m", units.Mass(-math.SmallestNonzeroFloat64))
		}, units.ErrNegative},
		{"a negative nothing", func(p *check.Problems) bool { return check.NotNegative(p, "m", units.Mass(math.Copysign(0, -1))) }, nil},
		{"a hair under the least", func(p *check.Problems) bool {
			return check.Positive(p, "m", units.Mass(math.Nextafter(1e-9, 0)), "a mass")
		}, units.ErrOutOfRange},
	} {
		var p check.Problems
		if ok := c.ok(&p); ok != (c.want == nil) || !errors.Is(p.Err(), c.want) {
			t.Errorf("%s: %v, %v; want %v", c.name, ok, p.Err(), c.want)
		}
	}
}
