package arbor_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

// What a stack and a change are called, and what they add up to, at the edges of what may be asked.

func TestRowBeyondTheLedger(t *testing.T) {
	// So many that whole nanograms no longer fit in 63 bits: told as a product of floats, and of the right sign.
	for _, c := range []struct {
		count int
		each  units.Mass
	}{
		{3, 4_000_000_000}, {-3, 4_000_000_000}, {3, -4_000_000_000}, {math.MaxInt32, 9_000_000_000}, {1_000_000, 10_000}, {1_000_001, 10_000}, {1, 4_000_000_000}, {0, 4_000_000_000},
	} {
		row := arbor.Row{Count: c.count, Mass: c.each, Thickness: units.Length(c.each)}
		want := float64(c.count) * float64(c.each)
		if got := float64(row.Total()); math.Abs(got-want) > 1e-12*math.Abs(want) {
			t.Errorf("%d of %v: %v kg, want %v", c.count, c.each, got, want)
		}
		if got := float64(row.Height()); math.Abs(got-want) > 1e-12*math.Abs(want) {
			t.Errorf("%d of %v: %v m, want %v", c.count, c.each, got, want)
		}
	}
}

// Three tenths, as a product of floats, are 0.30000000000000004.
func TestRowIsExact(t *testing.T) {
	r := arbor.Row{Count: 3, Mass: 0.1, Thickness: 0.1}
	if r.Total() != 0.3 || r.Height() != 0.3 {
		t.Errorf("%v and %v, want 0.3", float64(r.Total()), float64(r.Height()))
	}
	if r.Count = -3; r.Total() != -0.3 || r.Height() != -0.3 {
		t.Errorf("%v and %v, want -0.3", float64(r.Total()), float64(r.Height()))
	}
}

func TestKindsOnce(t *testing.T) {
	s := arbor.Stack{
		Pipe: []arbor.Row{{Name: "44", Count: 2}, {Name: "22", Count: 1}, {Name: "44", Count: 1}},
		Show: []arbor.Row{{Name: "22", Count: 3}, {Name: "11", Count: 4}, {Name: "11", Count: 1}, {Name: "5", Count: 2}},
	}
	var names []string
	counts := map[string]int{}
	for name, n := range s.Kinds() {
		names = append(names, name)
		counts[name] = n
	}
	if !slices.Equal(names, []string{"44", "22", "11", "5"}) || counts["5"] != 2 || counts["44"] != 3 || counts["22"] != 4 || counts["11"] != 5 {
		t.Errorf("%v with %v, want each kind once, from the bottom up", names, counts)
	}
	for stop := 1; stop <= 4; stop++ { // a walk that is left early
		seen := 0
		for range s.Kinds() {
			if seen++; seen == stop {
				break
			}
		}
		if seen != stop {
			t.Errorf("left after %d, not %d", seen, stop)
		}
	}
}

func TestCalls(t *testing.T) {
	rows := []arbor.Row{{Name: "44", Count: 2}}
	for _, c := range []struct{ name, got, want string }{
		{"no plate", arbor.Stack{Show: rows}.Call(), "2 of the 44"},
		{"a plate", arbor.Stack{Show: rows, Plates: 1}.Call(), "2 of the 44, with 1 spreader plate"},
		{"plates", arbor.Stack{Show: rows, Plates: 2}.Call(), "2 of the 44, with 2 spreader plates"},
		{"pipe alone", arbor.Stack{Pipe: rows}.Call(), "pipe weight 2 of the 44"},
		{"add a plate", arbor.Refilled{In: rows, Plates: 1}.Call(), "add 2 of the 44, 1 spreader plate"},
		{"add plates", arbor.Refilled{In: rows, Plates: 2}.Call(), "add 2 of the 44, 2 spreader plates"},
		{"a plate out", arbor.Refilled{Plates: -1}.Call(), "take out 1 spreader plate"},
		{"plates out", arbor.Refilled{Plates: -3}.Call(), "take out 3 spreader plates"},
		{"nothing", arbor.Refilled{}.Call(), "leave it as it is"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
}

func TestReferredWithinItsRatios(t *testing.T) {
	s := arbor.Stack{Error: 6}
	for _, c := range []struct {
		ratio float64
		want  units.Mass
	}{{1, 6}, {2, 3}, {1000, 0.006}, {0.001, 6000}} {
		if got, err := s.Referred(c.ratio); err != nil || math.Abs(float64(got-c.want)) > 1e-12*float64(c.want) {
			t.Errorf("at %v: %v, %v; want %v", c.ratio, got, err, c.want)
		}
	}
	for _, ratio := range []float64{0, -1, 0.0009, 1001, math.Inf(1), math.NaN()} {
		if got, err := s.Referred(ratio); got != 0 || !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("at %v: %v, %v; want nothing and a fault", ratio, got, err)
		}
	}
}

func TestNoStackSaysWhat(t *testing.T) {
	e := arbor.NoStackError{Wanted: arbor.Wanted{Pipe: 30 * units.Kilogram, Show: 50 * units.Kilogram}, Proven: true}
	if got := e.Error(); !strings.Contains(got, "pipe and show weight of 80 kg") || !strings.Contains(got, "fits") {
		t.Errorf("%q", got)
	}
	e.Pipe, e.Proven = true, false
	if got := e.Error(); !strings.Contains(got, "pipe weight of 30 kg") || !strings.Contains(got, "was found") {
		t.Errorf("%q", got)
	}
}

// A compact stack of nothing asks nothing of its pieces, and what a piece has no place for is refused.
func TestCompactOfNothing(t *testing.T) {
	var none arbor.Compact
	if got := none.Thickness(10 * units.Kilogram); got != 0 {
		t.Errorf("pieces of no stack may be %v thick, want 0", got)
	}
	c := arbor.Compact{Pieces: 100 * units.Kilogram, Height: 1 * units.Metre}
	if got := c.Thickness(10 * units.Kilogram); got != 0.1*units.Metre {
		t.Errorf("a tenth of the mass may be %v thick, want 0.1 m", got)
	}
	if got := c.Thickness(1 * units.Tonne); got != 10*units.Metre {
		t.Errorf("the heaviest piece may be %v thick, want 10 m", got)
	}
	c = arbor.Compact{Pieces: 0.5 * units.Kilogram, Height: 1 * units.Metre}
	if got := c.Thickness(50 * units.Gram); got != 0.1*units.Metre {
		t.Errorf("a tenth of half a kilogram may be %v thick, want 0.1 m", got)
	}
	for _, mass := range []units.Mass{0, -1, units.Mass(math.NaN()), units.Mass(math.Inf(1))} {
		if got := c.Thickness(mass); got != 0 {
			t.Errorf("a piece of %v may be %v thick, want 0", mass, got)
		}
	}
	if got, err := c.Density(0, 0.1); got != 0 || err == nil {
		t.Errorf("pieces without length: %v, %v", got, err)
	}
}

// Lead is 11.34 times as dense as water at its densest, to the four figures of engineering tables (from memory); rolled steel
// 7.85 times. A piece without a finite mass is none.
func TestBlocks(t *testing.T) {
	for _, c := range []struct {
		name    string
		density units.Density
		want    float64 // kilograms of 0.5 × 0.2 × 0.1 m
	}{{"lead", arbor.LeadDensity, 113.4}, {"steel", arbor.SteelDensity, 78.5}} {
		p := arbor.Block(c.name, 0.5, 0.2, 0.1, c.density, 7)
		if math.Abs(float64(p.Mass)-c.want) > 1e-9 || p.Name != c.name || p.Count != 7 || p.Thickness != 0.1 {
			t.Errorf("%+v, want %v kg", p, c.want)
		}
	}
	for _, length := range []float64{math.Inf(1), math.Inf(-1), math.NaN(), 1e308} {
		if p := arbor.Block("", units.Length(length), 1e300, 1, arbor.SteelDensity, 1); p.Mass != 0 {
			t.Errorf("%v long: %v", length, p.Mass)
		}
	}
}

// Names that are none: one past the last is refused, and so is any beyond.
func TestNamesThatAreNone(t *testing.T) {
	layers := 0
	for l := range arbor.LayerOf(20) {
		if _, err := l.MarshalText(); err == nil {
			layers++
		} else if !errors.Is(err, units.ErrUnknown) {
			t.Errorf("%v: %v", l, err)
		}
	}
	if layers == 0 || layers == 20 {
		t.Errorf("%d layers have names", layers)
	}
}
