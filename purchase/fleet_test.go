package purchase_test

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Problem:   how far a block may stand off at 25 ft with 1.5 degrees; the angle of 1 in 40.
// Source:    a trade primer (common practice): 0.65 ft or 7.8 in, and 1 in 40 as within 1.5 degrees
// Tolerance: 0.005 ft and 0.06 in, the last digit; 1e-4 degrees from the arctangent
func TestVerifyFleet(t *testing.T) {
	offset, err := purchase.FleetOffset(25*units.Foot, purchase.FleetLimit)
	if err != nil || !near.Abs(offset.In(units.Foot), 0.65, 0.005) || !near.Abs(offset.In(units.Inch), 7.8, 0.06) {
		t.Errorf("offset %v ft, %v; printed 0.65", offset.In(units.Foot), err)
	}
	angle, err := purchase.FleetAngle(1*units.Inch, 40*units.Inch)
	if err != nil || !near.Abs(angle.In(units.Degree), 1.4321, 1e-4) || angle > purchase.FleetLimit {
		t.Errorf("1 in 40: %v degrees, %v; want 1.4321", angle.In(units.Degree), err)
	}
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
		name      string
		got       units.Force
		unit      units.Force
		want, tol float64
	}{
		{"start, men", purchase.StartingPullMen, units.Newton, 200, 4},
		{"start, women", purchase.StartingPullWomen, units.Newton, 150, 4},
		{"keep moving, men", purchase.SteadyPullMen, units.Newton, 100, 4},
		{"keep moving, women", purchase.SteadyPullWomen, units.Newton, 70, 4},
		{"standing", purchase.StandingPullLimit, units.PoundForce, 50, 1},
		{"arm", purchase.ArmPullLimit, units.PoundForce, 24, 1},
		{"downward", purchase.DownwardPull, units.Newton, 107, 0.5},
		{"overhead, men", purchase.OverheadMostMen, units.Newton, 400, 0},
		{"overhead, women", purchase.OverheadMostWomen, units.Newton, 244, 0},
	} {
		if got := row.got.In(row.unit); !near.Abs(got, row.want, row.tol) {
			t.Errorf("%s: %v, printed %v", row.name, got, row.want)
		}
	}
}
