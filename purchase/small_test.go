package purchase_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Forces of less than a newton are felt at the rail as larger ones are, by hand: half the idler's weight in the inner rope, and what is out
// of balance less in the outer one.
func TestFeelOfNextToNothing(t *testing.T) {
	r := mustRig(t, oneLine(purchase.Single))
	for _, c := range []struct {
		heavy              float64 // N on the batten
		outer, more, spare float64
		tight              purchase.Role
		held               bool
	}{
		{0.2, 0.1, 0.2, 0.1, purchase.InnerRope, true},
		{-0.2, 0.5, 0.2, 0.5, purchase.OuterRope, true},
		{0.4, 0, 0.4, -0.1, purchase.InnerRope, false},
	} {
		newtons := func(n float64) units.Mass { return units.Mass(n / g) }
		got, err := r.Feel(5, purchase.Bodies{Pulls: evenly(1, units.Force(2+c.heavy)), Arbor: newtons(2), Idler: newtons(0.6)})
		if err != nil || got.Tight != c.tight || got.Held != c.held || !near.Abs(float64(got.Inner), 0.3, 1e-12) || !near.Abs(float64(got.Outer), c.outer, 1e-12) ||
			!near.Abs(float64(got.More), c.more, 1e-12) || !near.Abs(float64(got.Spare), c.spare, 1e-12) {
			t.Errorf("%v N batten-heavy: %+v, %v; want %+v", c.heavy, got, err, c)
		}
	}
}

// A part that stands still, to a dead end and on round a fixed sheave, has no speed, not even one that rounding leaves; and neither rope
// nor rim there is moved or felt.
func TestPropWhatStandsStill(t *testing.T) {
	still := 0
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		bare, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		lowest, highest := bare.Reach()
		trim := lowest + (highest - lowest).Scale(0.5)
		g, err := bare.Geometry(trim)
		if err != nil {
			t.Fatal(err)
		}
		for _, rope := range append(g.Lift, g.Hand) {
			for _, part := range rope.Parts {
				if math.Abs(part.Speed) < 1e-9 {
					still++
					if part.Speed != 0 {
						t.Fatalf("%s from %s to %s stands still at %v", rope.Name, part.From, part.To, part.Speed)
					}
				}
			}
			for _, turn := range rope.Turns {
				if math.Abs(turn.Speed) < 1e-9 && turn.Speed != 0 {
					t.Fatalf("%s at %s stands still at %v", rope.Name, turn.At, turn.Speed)
				}
			}
		}
		last := d.Lift[0].Path[len(d.Lift[0].Path)-1]
		if last.On == purchase.Arbor {
			return
		}
		before, err := bare.Felt(trim, 100, 200)
		if err != nil {
			t.Fatal(err)
		}
		longer := d.Reeving
		longer.Lift = append([]purchase.Rope{}, d.Lift...)
		path := append([]purchase.Stop{}, d.Lift[0].Path...)
		path[len(path)-1].Rim = 7
		longer.Lift[0].Path = append(path, stop("beyond", purchase.Building, -1, last.Height-1))
		r, err := longer.Rig()
		if err != nil {
			t.Fatal(err)
		}
		after, err := r.Felt(trim, 100, 200)
		if err != nil || !near.Rel(float64(after.Moving), float64(before.Moving), 1e-12) || !near.Rel(float64(after.Batten), float64(before.Batten), 1e-12) || len(after.Rows) != len(before.Rows) {
			t.Fatalf("with a rim of 7 kg that stands still %+v, %v; without %+v", after, err, before)
		}
	})
	if still == 0 {
		t.Error("never a part that stands still")
	}
}

// Of leads and sheaves that are used alike but for rounding the first is told, and a sheave is held against a least ratio of one too.
func TestUsedAlikeButForRounding(t *testing.T) {
	l := weightless(purchase.Single)
	l.Loft = nil
	for i := range 40 {
		k := 1 + 0.37*float64(i)
		l.Loft = append(l.Loft, purchase.Loft{Across: units.Length(3 * k), Height: l.HeadBlock, Offsets: purchase.LineOffsets{Loft: units.Length(0.07 * k / 3), Head: units.Length(0)}})
	}
	first := mustRig(t, l)
	u, err := first.GeometryUse(5, 12, purchase.GeometryLimits{Fleet: purchase.FleetLimit})
	if err != nil || u.Lead.Rope != "lift line 1" || u.Lead.Part != 1 || u.Lead.Trim != 5 {
		t.Errorf("leads alike: %+v, %v; want the first line's", u.Lead, err)
	}
	for i := range 200 {
		k := 1 + 0.37*float64(i)
		l.LiftDiameter, l.Sheaves.Loft, l.Sheaves.Head = units.Length(0.01), 0.03, 0.03
		l.HandDiameter, l.Sheaves.HandHead, l.Sheaves.Idler = units.Length(0.001*k), units.Length(0.003*k), units.Length(0.003*k)
		u, err := mustRig(t, l).GeometryUse(5, 12, purchase.GeometryLimits{LiftRatio: 1, HandRatio: 1})
		if err != nil || u.Sheave.Rope != "lift line 1" || u.Sheave.Turn != 0 || !near.Rel(u.Sheave.Use, 1./3, 1e-12) {
			t.Fatalf("sheaves alike: %+v, %v; want the first line's loft block", u.Sheave, err)
		}
	}
	var none *purchase.Reeved
	_, err = none.GeometryUse(5, 12, purchase.GeometryLimits{LiftRatio: 1})
	one(t, err, "reeving", units.ErrMissing, "there is nothing whose trims could be wrong")
}

// So it is where many parts hold the arbor: what runs up to a dead end is what a sixth or a tenth of the batten's speed, taken as often as
// there are parts, leaves of it.
func TestDeadEndOfManyParts(t *testing.T) {
	for _, parts := range []int{2, 4, 6, 10, 12, 14, 22} {
		path := []purchase.Stop{stop("batten", purchase.Batten, 1, 0), stop("loft", purchase.Grid, 1, 20), stop("head", purchase.HeadBeam, 0, 20)}
		for range parts / 2 {
			path = append(path, stop("top", purchase.Arbor, 0, 0), stop("beam", purchase.HeadBeam, 0, 21))
		}
		r, err := reeved(path...).Rig()
		if err != nil {
			t.Fatal(err)
		}
		line := geometry(t, r, 2).Lift[0]
		for i := range parts {
			want := 1 - 2/float64(parts)*float64((i+1)/2)
			if got := line.Parts[i+2].Speed; !near.Abs(got, want, 1e-12) || i == parts-1 && got != 0 {
				t.Errorf("%d parts, part %d runs at %v, want %v", parts, i+1, got, want)
			}
		}
	}
}
