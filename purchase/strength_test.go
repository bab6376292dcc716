package purchase_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Problem:   what 1/4 in 7x19 may carry with a design factor of 8.
// Source:    FAA AC 43.13-1B, Table 7-3 (7000 lb); US Army TM 5-3810-305-10, Table 4 (clips 80, sleeve 95 per cent)
// Tolerance: exact arithmetic
func TestVerifyRopeLimit(t *testing.T) {
	for _, row := range []struct {
		name string
		keep float64
		want float64
	}{ // of 7000 lb, which is from the first source; the shares are from the second
		{"clips", purchase.ClipsKeep, 700},
		{"sleeve", purchase.SleeveKeeps, 831.25},
		{"swaged socket", purchase.SwagedSocketKeeps, 831.25},
		{"socket", purchase.SocketKeeps, 875},
		{"sleeve on fibre core", purchase.SleeveOnFibreCoreKeeps, 809.375},
		{"tucked splice", purchase.TuckedSpliceKeeps, 752.5},
		{"stainless splice", purchase.StainlessSpliceKeeps, 665},
		{"wedge socket", purchase.WedgeSocketKeeps, 656.25},
	} {
		use := purchase.RopeUse{Rope: stock(t, "1/4 in 7x19 galvanised"), Termination: row.keep, Bending: purchase.NothingLost}
		got, err := use.Limit(8)
		if err != nil {
			t.Fatal(err)
		}
		verification.Row{Key: "rope/limit", Source: "US Army TM 5-3810-305-10", Place: "Table 4", What: "pull on 1/4 in 7x19 of 7000 lb with a design factor of 8", Why: "exact arithmetic, but for rounding"}.
			Of(row.name, "lbf", row.want, 1e-14*row.want).Check(t, got.In(units.PoundForce))
	}
}

// Problem:   what bending over a sheave leaves.
// Source:    bending efficiency table, printed alike on three suppliers' pages (common practice): its rows, and 10 in over 1/2 in
// Tolerance: exact at the rows; between the two rows around elsewhere
func TestVerifyBending(t *testing.T) {
	for _, row := range []struct{ ratio, low, high float64 }{
		{1, .50, .50},
		{2, .65, .65},
		{4, .75, .75},
		{6, .79, .79},
		{8, .83, .83},
		{10, .86, .86},
		{15, .89, .89},
		{20, .91, .91},
		{30, .93, .93},
		{40, .95, .95},
		{25, .9199, .9201},
		{35, .9399, .9401},
		{3, .6999, .7001},
		{41, .95, .95},
		{1e9, .95, .95},
	} {
		got, err := purchase.BendingKeeps(row.ratio)
		if err != nil || got < row.low-1e-15 || got > row.high+1e-15 {
			t.Errorf("ratio %v: %v, %v; want %v to %v", row.ratio, got, err, row.low, row.high)
		}
		if row.low == row.high && row.ratio <= 40 {
			verification.Row{Key: "rope/bending", Source: "bending efficiency table", What: "share of strength kept over a sheave", Why: "as printed, but for rounding"}.
				Of(fmt.Sprint("ratio ", row.ratio), "", row.low, 1e-15).Check(t, got)
		}
	}
	ratio, err := purchase.SheaveRatio(10*units.Inch, 0.5*units.Inch)
	if err != nil {
		t.Fatal(err)
	}
	verification.Row{
		Key: "rope/sheave ratio", Source: "bending efficiency table", Place: "its example", What: "10 in sheave over 1/2 in rope", Theirs: 20, Tol: 20e-14, Why: "exact arithmetic, but for rounding",
	}.Check(t, ratio)
}

// Problem:   how many rope diameters a sheave of 9 in is for rope of 1/2 in, 6x37.
// Source:    US Army TB 43-0142, Table A-1, in which 18 of them are 9 in
// Tolerance: exact arithmetic, but for rounding
func TestVerifySheaveForRope(t *testing.T) {
	ratio, err := purchase.SheaveRatio(9*units.Inch, 0.5*units.Inch)
	if err != nil {
		t.Fatal(err)
	}
	verification.Row{Key: "rope/sheave ratio/9 in", Source: "US Army TB 43-0142", Place: "Table A-1", What: "9 in sheave over 1/2 in rope", Theirs: 18, Tol: 18e-14, Why: "exact arithmetic, but for rounding"}.
		Check(t, ratio)
}

// A larger sheave never costs more, and no step is larger than the table's own slope
// there, which is steepest at its start: 0.15 for a ratio of 1.
func TestPropBending(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		small := rapid.Float64Range(1, 50).Draw(t, "small")
		large := rapid.Float64Range(small, 50).Draw(t, "large")
		a, errA := purchase.BendingKeeps(small)
		b, errB := purchase.BendingKeeps(large)
		if errA != nil || errB != nil || b < a || b-a > 0.15*(large-small)+1e-12 {
			t.Fatalf("%v at %v, %v at %v: %v %v", a, small, b, large, errA, errB)
		}
	})
}

// The terms of a check belong together: the weaker place decides, the factor reached
// is at least the one wanted just where the pull is within the limit, and the
// margin is what is left.
func TestPropRopeCheck(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		use := purchase.RopeUse{
			Rope:        purchase.RopeStock{Diameter: 5 * units.Millimetre, Breaking: units.Force(rapid.Float64Range(1e3, 1e5).Draw(t, "breaking"))},
			Termination: rapid.Float64Range(0.3, 1).Draw(t, "termination"), Bending: rapid.Float64Range(0.3, 1).Draw(t, "bending"),
		}
		wanted := rapid.Float64Range(1, 12).Draw(t, "wanted")
		pull := units.Force(rapid.Float64Range(1, 2e4).Draw(t, "pull"))
		c, err := use.Check(pull, wanted)
		if err != nil {
			t.Fatal(err)
		}
		weaker := min(use.Termination, use.Bending) * float64(use.Rope.Breaking)
		if !near.Rel(float64(c.Strength), weaker, 1e-14) || !near.Rel(float64(c.Limit)*wanted, weaker, 1e-14) {
			t.Fatalf("%+v: strength of the weaker place %v", c, weaker)
		}
		limit, err := use.Limit(wanted)
		if err != nil || limit != c.Limit || c.Margin() != c.Limit-pull || c.Within() != (c.Margin() >= 0) {
			t.Fatalf("%+v: limit %v, %v", c, limit, err)
		}
		if !near.Rel(c.Factor*float64(pull), weaker, 1e-13) || !near.Rel(c.Use*c.Factor, wanted, 1e-13) {
			t.Fatalf("%+v: factor and use", c)
		}
		if at, err := use.Check(c.Limit, wanted); err != nil || !at.Within() || at.Use != 1 {
			t.Fatalf("at the limit: %+v, %v", at, err)
		}
	})
}
