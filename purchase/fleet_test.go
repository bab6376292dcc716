package purchase_test

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Problem:   how far a block may stand off at 25 ft with 1.5 degrees; the angle of 1 in 40.
// Source:    fleet angle primer (common practice): 0.65 ft or 7.8 in, and 1 in 40 as within 1.5 degrees
// Tolerance: 0.005 ft and 0.06 in, the last digit; 1e-4 degrees from the arctangent
func TestVerifyFleet(t *testing.T) {
	offset, err := purchase.FleetOffset(25*units.Foot, purchase.FleetLimit)
	if err != nil {
		t.Fatal(err)
	}
	primer := verification.Row{Key: "fleet", Source: "fleet angle primer", What: "offset at 25 ft that 1.5° allow", Why: "half the last digit"}
	primer.Of("offset in feet", "ft", 0.65, 0.005).Check(t, offset.In(units.Foot))
	primer.Of("offset in inches", "in", 7.8, 0.06).Because("the last digit, made from 0.65 ft").Check(t, offset.In(units.Inch))
	unit, err := purchase.FleetOffset(1*units.Foot, purchase.FleetLimit)
	if err != nil {
		t.Fatal(err)
	}
	primer.Of("offset over the lead", "", 0.026, 5e-4).Check(t, unit.In(units.Foot))
	angle, err := purchase.FleetAngle(1*units.Inch, 40*units.Inch)
	if err != nil || angle > purchase.FleetLimit {
		t.Errorf("1 in 40: %v degrees, %v; within 1.5", angle.In(units.Degree), err)
	}
	verification.Row{
		Key: "fleet/1 in 40", Source: "fleet angle primer", What: "angle of 1 in 40, which passes for 1.5°", Unit: "°", Theirs: 1.4321, Tol: 1e-4, Why: "its arctangent to four decimals",
	}.Check(t, angle.In(units.Degree))
}

// What stands off by the offset allowed has the angle that was the limit; to either
// side alike.
func TestPropFleet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		limit := units.Degree.Scale(rapid.Float64Range(0.1, 45).Draw(t, "limit"))
		lead := units.Length(rapid.Float64Range(0.1, 50).Draw(t, "lead"))
		offset, err := purchase.FleetOffset(lead, limit)
		if err != nil {
			t.Fatal(err)
		}
		for _, side := range []units.Length{offset, -offset} {
			if got, err := purchase.FleetAngle(side, lead); err != nil || !near.Rel(got.In(units.Radian), limit.In(units.Radian), 1e-13) {
				t.Fatalf("%v off: angle %v, %v; want %v", side, got, err, limit)
			}
		}
	})
}

// The figures of people are those printed: HSE L23 rounds 20, 15, 10 and 7 kg to 200, 150, 100 and 70 N
// (4 N); Ergonomic Design for People at Work rounds 225 N to 50 lbf and 110 N to 24 lbf (1 lbf);
// 24 lb is 107 N beside it (0.5 N).
func TestVerifyPeople(t *testing.T) {
	for _, row := range []struct {
		name, source string
		got          units.Force
		unit         units.Force
		symbol       string
		want, tol    float64
		why          string
	}{
		{"start, men", "HSE L23", purchase.StartingPullMen, units.Newton, "N", 200, 4, "rounded from 20 kg"},
		{"start, women", "HSE L23", purchase.StartingPullWomen, units.Newton, "N", 150, 4, "rounded from 15 kg"},
		{"keep moving, men", "HSE L23", purchase.SteadyPullMen, units.Newton, "N", 100, 4, "rounded from 10 kg"},
		{"keep moving, women", "HSE L23", purchase.SteadyPullWomen, units.Newton, "N", 70, 4, "rounded from 7 kg"},
		{"standing", "Ergonomic Design for People at Work", purchase.StandingPullLimit, units.PoundForce, "lbf", 50, 1, "rounded from 225 N"},
		{"standing, in newtons", "Ergonomic Design for People at Work", purchase.StandingPullLimit, units.Newton, "N", 225, 0, "as printed"},
		{"arm, in newtons", "Ergonomic Design for People at Work", purchase.ArmPullLimit, units.Newton, "N", 110, 0, "as printed"},
		{"arm", "Ergonomic Design for People at Work", purchase.ArmPullLimit, units.PoundForce, "lbf", 24, 1, "rounded from 110 N"},
		{"downward", "car industry guidelines", purchase.DownwardPull, units.Newton, "N", 107, 0.5, "rounded from 24 lbf"},
		{"overhead, men", "Int. J. Occupational Safety and Ergonomics", purchase.OverheadMostMen, units.Newton, "N", 400, 0, "as printed"},
		{"overhead, women", "Int. J. Occupational Safety and Ergonomics", purchase.OverheadMostWomen, units.Newton, "N", 244, 0, "as printed"},
	} {
		verification.Row{Key: "people", Source: row.source, What: "pull that people can be asked for", Why: row.why}.
			Of(row.name, row.symbol, row.want, row.tol).Check(t, row.got.In(row.unit))
	}
}
