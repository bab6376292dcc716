package purchase_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// grooved is the double set of weightless with everything that fleet angles and sheave ratios want.
//
// Line 1 lies 1 in upstage in the head block, 0.5 in on the arbor, 2 in at its dead end; its loft block stands 3 in
// upstage. Line 2 goes over a mule block 4 in downstage. The rest is in the plane.
func grooved() purchase.Layout {
	l := weightless(purchase.Double)
	l.Loft[0].Offsets = purchase.LineOffsets{Loft: 3 * units.Inch, Head: 1 * units.Inch, Arbor: units.Inch.Scale(0.5), Beam: 2 * units.Inch}
	l.Loft[1].Mules = []purchase.Mule{{Name: "mule block", Across: 8 * units.Foot, Height: 66 * units.Foot, Offset: -4 * units.Inch}}
	l.LiftDiameter, l.HandDiameter = units.Inch.Scale(0.25), units.Inch.Scale(0.75)
	l.Sheaves = purchase.Sheaves{
		Loft: 8 * units.Inch, Mule: 6 * units.Inch, Head: 12 * units.Inch, Arbor: 7 * units.Inch,
		HandHead: 10 * units.Inch, Idler: 9 * units.Inch, HandArbor: units.Inch.Scale(7.5),
	}
	return l
}

// Fleet angles by hand, opposite over adjacent in inches. At a trim of 4 ft the arbor's top is at 58 ft, 2 ft under the
// head block and 3 ft under the dead end; at 24 ft it is at 48 ft.
func TestFleetByHand(t *testing.T) {
	const none = 0
	for _, c := range []struct {
		trim, headToArbor, arborToDeadEnd float64 // ft; in
	}{{4.5, 27, 39}, {24, 144, 156}} {
		g := geometry(t, mustRig(t, grooved()), units.Foot.Scale(c.trim))
		for i, want := range [][]struct{ off, along float64 }{
			{{none, 1}, {2, 72}, {0.5, c.headToArbor}, {1.5, c.arborToDeadEnd}},
			// The mule block stands 8 ft toward the arbor from loft block 2 and 6 ft up: 10 ft; then 8 ft and 6 ft down: 10 ft.
			{{none, 1}, {4, 120}, {4, 120}, {none, 1}, {none, 1}},
			{{none, 1}, {none, 1}, {none, 1}, {none, 1}},
		} {
			if len(g.Lift[i].Parts) != len(want) {
				t.Fatalf("line %d has %d parts, want %d", i+1, len(g.Lift[i].Parts), len(want))
			}
			for k, part := range g.Lift[i].Parts {
				if angle := math.Atan(want[k].off / want[k].along); !near.Rel(part.Fleet.In(units.Radian), angle, 1e-12) {
					t.Errorf("trim %v ft, %s to %s: fleet angle %v°, want %v°", c.trim, part.From, part.To, part.Fleet.In(units.Degree), angle*180/math.Pi)
				}
			}
		}
		for _, part := range g.Hand.Parts {
			if part.Fleet != 0 {
				t.Errorf("hand line, %s to %s: fleet angle %v, want none in the plane", part.From, part.To, part.Fleet)
			}
		}
	}
}

// A triple line's second part to the arbor comes down from a block at the head beam: 1.5 in off over 39 in each.
func TestFleetOfTripleByHand(t *testing.T) {
	l := grooved()
	l.Kind, l.Trim, l.ArborTop = purchase.Triple, 4*units.Foot, units.Foot.Scale(57.75)
	parts := geometry(t, mustRig(t, l), 4*units.Foot).Lift[0].Parts
	for k, want := range []float64{0, math.Atan(2. / 72), math.Atan(.5 / 27), math.Atan(1.5 / 39), math.Atan(1.5 / 39)} {
		if got := parts[k].Fleet.In(units.Radian); !near.Rel(got, want, 1e-12) {
			t.Errorf("%s to %s: fleet angle %v, want %v", parts[k].From, parts[k].To, got, want)
		}
	}
}

// Sheave ratios by hand: tread over diameter, in inches.
func TestSheaveRatiosByHand(t *testing.T) {
	g := geometry(t, mustRig(t, grooved()), 24*units.Foot)
	ratios := func(r purchase.RopeGeometry) (got []float64) {
		for _, turn := range r.Turns {
			got = append(got, math.Round(turn.SheaveRatio*1e9)/1e9)
		}
		return got
	}
	for _, c := range []struct {
		name string
		rope purchase.RopeGeometry
		want []float64
	}{
		{"loft, head, arbor", g.Lift[0], []float64{32, 48, 28}},
		{"loft, mule, head, arbor", g.Lift[1], []float64{32, 24, 48, 28}},
		{"arbor's foot, idler, head, arbor's top", g.Hand, []float64{10, 12, 13.333333333, 10}},
	} {
		if diff := cmp.Diff(c.want, ratios(c.rope)); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
	// A triple set has sheaves at head beam and rail too; a diameter that is not given leaves no ratio.
	l := grooved()
	l.Kind, l.Sheaves.Beam, l.Sheaves.HandBeam = purchase.Triple, 5*units.Inch, 6*units.Inch
	g = geometry(t, mustRig(t, l), 24*units.Foot)
	if diff := cmp.Diff([]float64{32, 48, 28, 20}, ratios(g.Lift[0])); diff != "" {
		t.Errorf("triple lift line: %s", diff)
	}
	if diff := cmp.Diff([]float64{8, 10, 12, 13.333333333, 10, 8}, ratios(g.Hand)); diff != "" {
		t.Errorf("triple hand line: %s", diff)
	}
	l.LiftDiameter, l.Sheaves.Idler = 0, 0
	g = geometry(t, mustRig(t, l), 24*units.Foot)
	if diff := cmp.Diff([]float64{0, 0, 0, 0}, ratios(g.Lift[0])); diff != "" {
		t.Errorf("without a diameter: %s", diff)
	}
	if diff := cmp.Diff([]float64{8, 10, 0, 13.333333333, 10, 8}, ratios(g.Hand)); diff != "" {
		t.Errorf("without an idler's tread: %s", diff)
	}
}

// The worst lead is the short one between arbor and dead end while the arbor is high; half way out it is the lead over the mule block.
func TestGeometryUse(t *testing.T) {
	r := mustRig(t, grooved())
	limits := purchase.GeometryLimits{Fleet: purchase.FleetLimit, LiftRatio: 24, HandRatio: 8}
	low, high := units.Foot.Scale(4.5), 44*units.Foot
	u, err := r.GeometryUse(low, high, limits)
	if err != nil {
		t.Fatal(err)
	}
	angle := math.Atan(1.5/39) * 180 / math.Pi // 2.203°
	if l := u.Lead; l.Trim != low || l.Rope != "lift line 1" || l.Part != 3 || l.From != purchase.ArborTop || l.To != purchase.DeadEnd(1) ||
		!near.Rel(l.Angle.In(units.Degree), angle, 1e-12) || l.Limit != purchase.FleetLimit || !near.Rel(l.Use, angle/1.5, 1e-12) {
		t.Errorf("worst lead %+v, want arbor to dead end 1 at %v, %v°", l, low, angle)
	}
	// 24 over 24 is just within, and more of its limit than 8 over 10.
	want := purchase.SheaveUse{Rope: "lift line 2", Turn: 1, At: "mule block", On: purchase.Building, Ratio: u.Sheave.Ratio, Limit: 24, Use: u.Sheave.Use}
	if u.Sheave != want || !near.Rel(u.Sheave.Ratio, 24, 1e-12) || !near.Rel(u.Sheave.Use, 1, 1e-12) || u.Unknown != 0 {
		t.Errorf("worst sheave %+v with %d unknown, want the mule block at 24", u.Sheave, u.Unknown)
	}

	g := geometry(t, r, 24*units.Foot)
	u, err = g.Use(limits)
	angle = math.Atan(4./120) * 180 / math.Pi // 1.909°, the same on both sides of the mule block
	if l := u.Lead; err != nil || l.Rope != "lift line 2" || l.Part != 1 || l.Trim != 24*units.Foot || !near.Rel(l.Angle.In(units.Degree), angle, 1e-12) {
		t.Errorf("half way worst lead %+v, %v; want loft block 2 to mule block at %v°", l, err, angle)
	}

	// The hand line has a limit of its own; a limit that is not given names nothing.
	u, err = g.Use(purchase.GeometryLimits{HandRatio: 20})
	if err != nil || u.Lead != (purchase.LeadUse{}) || u.Sheave.Rope != "hand line" || u.Sheave.At != purchase.ArborFoot || !near.Rel(u.Sheave.Use, 2, 1e-12) {
		t.Errorf("hand line alone: %+v, %v; want the arbor's foot at 10 against 20", u, err)
	}

	// What is not known is counted, not passed over: no diameter of the lift lines, no tread of the idler.
	l := grooved()
	l.LiftDiameter, l.Sheaves.Idler = 0, 0
	u, err = geometry(t, mustRig(t, l), 24*units.Foot).Use(limits)
	if err != nil || u.Unknown != 4*3+4+1 || u.Sheave.Rope != "hand line" {
		t.Errorf("unknown: %d with worst %+v, %v; want 17 and the hand line", u.Unknown, u.Sheave, err)
	}
}

func TestGeometryUseRefused(t *testing.T) {
	r := mustRig(t, grooved())
	nan := math.NaN()
	good := purchase.GeometryLimits{Fleet: purchase.FleetLimit}
	for _, c := range []struct {
		name      string
		low, high units.Length
		limits    purchase.GeometryLimits
		field     string
		kind      error
	}{
		{"no limits", 5, 6, purchase.GeometryLimits{}, "limits", units.ErrMissing},
		{"negative fleet", 5, 6, purchase.GeometryLimits{Fleet: -1}, "limits.fleet", units.ErrNegative},
		{"fleet in degrees taken for radians", 5, 6, purchase.GeometryLimits{Fleet: 1.5}, "limits.fleet", units.ErrOutOfRange},
		{"NaN fleet", 5, 6, purchase.GeometryLimits{Fleet: units.Angle(nan)}, "limits.fleet", units.ErrNotFinite},
		{"ratio turned over", 5, 6, purchase.GeometryLimits{LiftRatio: 1. / 24}, "limits.lift_ratio", units.ErrOutOfRange},
		{"NaN ratio", 5, 6, purchase.GeometryLimits{LiftRatio: nan}, "limits.lift_ratio", units.ErrNotFinite},
		{"ratio beyond sense", 5, 6, purchase.GeometryLimits{HandRatio: 1001}, "limits.hand_ratio", units.ErrOutOfRange},
		{"low trim under reach", -50, 6, good, "low", units.ErrOutOfRange},
		{"high trim over reach", 5, 60, good, "high", units.ErrOutOfRange},
		{"trims swapped", 6, 5, good, "high", units.ErrOutOfRange},
		{"NaN trim", units.Length(nan), 5, good, "low", units.ErrNotFinite},
	} {
		t.Run(c.name, func(t *testing.T) {
			u, err := r.GeometryUse(c.low, c.high, c.limits)
			if one(t, err, c.field, c.kind, c.name); u != (purchase.GeometryUse{}) {
				t.Errorf("refused, and yet it says %+v", u)
			}
		})
	}
}

// Problem:   the fleet angle of a lead of 25 ft that stands off by 7.8 in.
// Source:    fleet angle primer (common practice): 7.8 in, from distance × 0.026, is what 1.5 degrees allow
// Tolerance: 0.012 degrees, for 0.026 stands for tan 1.5° = 0.026186
//
// Problem:   a 10 in sheave under a rope of 1/2 in.
// Source:    bending efficiency table, printed alike on suppliers' pages (common practice): at a ratio of 20 wire rope keeps 91 %
// Tolerance: exact arithmetic
func TestVerifyLeadAndSheave(t *testing.T) {
	l := weightless(purchase.Single)
	l.Loft = []purchase.Loft{{Across: 25 * units.Foot, Height: 60 * units.Foot, Offsets: purchase.LineOffsets{Loft: units.Inch.Scale(7.8)}}}
	l.LiftDiameter, l.Sheaves.Loft = units.Inch.Scale(0.5), 10*units.Inch
	line := geometry(t, mustRig(t, l), 20*units.Foot).Lift[0]
	got := line.Parts[1].Fleet
	if got > purchase.FleetLimit {
		t.Errorf("fleet angle %v°, over 1.5", got.In(units.Degree))
	}
	verification.Row{
		Key: "fleet/lead of 25 ft", Source: "fleet angle primer", What: "fleet angle of a lead of 25 ft that stands off by 7.8 in", Unit: "°",
		Theirs: 1.5, Tol: 0.012, Why: "its 0.026 stands for tan 1.5° = 0.026186",
	}.Check(t, got.In(units.Degree))
	keeps, err := purchase.BendingKeeps(line.Turns[0].SheaveRatio)
	if err != nil || line.Turns[0].SheaveRatio != 20 {
		t.Errorf("ratio %v, %v; want 20", line.Turns[0].SheaveRatio, err)
	}
	verification.Row{
		Key: "rope/bending/10 in sheave under 1/2 in", Source: "bending efficiency table", What: "share of strength kept by a line of a set", Theirs: 0.91, Why: "exact arithmetic",
	}.Check(t, keeps)
}

// Offsets make fleet angles by the arctangent of what they differ by over the part's length, whichever side is
// upstage, and change nothing else; the worst over a travel is never less than at any trim of it, and is that at one of
// its ends.
func TestPropFleetOfLeads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		plain, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		off, mirrored := d.Reeving, d.Reeving
		off.Lift, mirrored.Lift = nil, nil
		offsets := func(r purchase.Rope, n int) (purchase.Rope, purchase.Rope) {
			a, b := r, r
			a.Path, b.Path = append([]purchase.Stop{}, r.Path...), append([]purchase.Stop{}, r.Path...)
			for k := range r.Path {
				if r.Path[k].On != purchase.Batten {
					o := units.Length(rapid.Float64Range(-1, 1).Draw(t, fmt.Sprintf("offset %d.%d", n, k)))
					a.Path[k].Offset, b.Path[k].Offset = o, -o
				}
			}
			return a, b
		}
		for i, rp := range d.Lift {
			a, b := offsets(rp, i)
			off.Lift, mirrored.Lift = append(off.Lift, a), append(mirrored.Lift, b)
		}
		off.Hand, mirrored.Hand = offsets(d.Hand, len(d.Lift))
		r, err := off.Rig()
		if err != nil {
			t.Fatal(err)
		}
		rm, err := mirrored.Rig()
		if err != nil {
			t.Fatal(err)
		}
		lowest, highest := r.Reach()
		span := highest - lowest
		low := lowest + span.Scale(rapid.Float64Range(0.001, 0.9).Draw(t, "low"))
		high := low + (lowest + span.Scale(0.999) - low).Scale(rapid.Float64Range(0, 1).Draw(t, "high"))
		limits := purchase.GeometryLimits{Fleet: purchase.FleetLimit}
		worst, err := r.GeometryUse(low, high, limits)
		if err != nil {
			t.Fatal(err)
		}
		at := func(r *purchase.Reeved, trim units.Length) purchase.Geometry {
			g, err := r.Geometry(trim)
			if err != nil {
				t.Fatal(err)
			}
			return g
		}
		greatest := 0.0
		const steps = 16
		for step := range steps + 1 {
			trim := low + (high - low).Scale(float64(step)/steps)
			g := at(r, trim)
			if diff := cmp.Diff(g, at(rm, trim)); diff != "" {
				t.Fatalf("with downstage for upstage: %s", diff)
			}
			top, _ := r.ArborTop(trim)
			ropes := append(append([]purchase.RopeGeometry{}, g.Lift...), g.Hand)
			for i, rp := range append(append([]purchase.Rope{}, off.Lift...), off.Hand) {
				k := 0
				d.parts(rp, trim.In(units.Metre), top.In(units.Metre), func(a, b purchase.Stop, _, _, length float64) {
					want := math.Atan2(math.Abs((a.Offset - b.Offset).In(units.Metre)), length)
					if a.On == purchase.Batten || b.On == purchase.Batten {
						want = 0
					}
					if got := ropes[i].Parts[k].Fleet.In(units.Radian); !near.Abs(got, want, 1e-9) {
						t.Fatalf("%s, %s to %s: fleet angle %v, want %v", rp.Name, a.Name, b.Name, got, want)
					}
					greatest = max(greatest, want)
					ropes[i].Parts[k].Fleet = 0
					k++
				})
			}
			if diff := cmp.Diff(at(plain, trim), g); diff != "" {
				t.Fatalf("offsets change more than fleet angles: %s", diff)
			}
		}
		if got := worst.Lead.Angle.In(units.Radian); !near.Abs(got, greatest, 1e-9) || (worst.Lead.Trim != low && worst.Lead.Trim != high) {
			t.Fatalf("worst from %v to %v: %+v, want %v", low, high, worst.Lead, greatest)
		}
	})
}

// Limits are taken up to their own bounds, and of leads and sheaves that are used alike the first is told: on the first line, at the
// low trim, first along the path.
func TestGeometryUseAtItsBounds(t *testing.T) {
	for _, c := range []struct {
		name   string
		limits purchase.GeometryLimits
		field  string
	}{
		{"45 degrees", purchase.GeometryLimits{Fleet: 45 * units.Degree}, ""},
		{"a hair more", purchase.GeometryLimits{Fleet: units.Degree.Scale(45.0001)}, "limits.fleet"},
		{"ratios of 1", purchase.GeometryLimits{LiftRatio: 1, HandRatio: 1}, ""},
		{"ratios of 1000", purchase.GeometryLimits{LiftRatio: 1000, HandRatio: 1000}, ""},
		{"a lift ratio under 1", purchase.GeometryLimits{LiftRatio: 0.999, HandRatio: 1}, "limits.lift_ratio"},
		{"a hand ratio under 1", purchase.GeometryLimits{LiftRatio: 1, HandRatio: 0.999}, "limits.hand_ratio"},
		{"a lift ratio over 1000", purchase.GeometryLimits{LiftRatio: 1000.001}, "limits.lift_ratio"},
		{"all wrong", purchase.GeometryLimits{Fleet: -1, LiftRatio: -1, HandRatio: -1}, "limits.fleet, limits.lift_ratio, limits.hand_ratio"},
	} {
		_, err := mustRig(t, grooved()).GeometryUse(5, 6, c.limits)
		if c.field != "" {
			one(t, err, c.field, faults(t, err)[0].Err, c.name)
		} else if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	l := weightless(purchase.Double)
	l.LiftDiameter, l.HandDiameter = 0.01, 0.02
	l.Sheaves = purchase.Sheaves{Loft: 0.01, Head: 0.01, Arbor: 0.01, HandHead: 0.02, Idler: 0.02, HandArbor: 0.02}
	limits := purchase.GeometryLimits{Fleet: purchase.FleetLimit, LiftRatio: 2, HandRatio: 2}
	all := purchase.GeometryUse{
		Lead:   purchase.LeadUse{Trim: 5, Rope: "lift line 1", Part: 0, From: "batten at line 1", To: purchase.LoftBlock(1), Limit: purchase.FleetLimit},
		Sheave: purchase.SheaveUse{Rope: "lift line 1", Turn: 0, At: purchase.LoftBlock(1), On: purchase.Grid, Ratio: 1, Limit: 2, Use: 2},
	}
	if u, err := mustRig(t, l).GeometryUse(5, 12, limits); err != nil || u != all {
		t.Errorf("all alike: %+v, %v; want %+v", u, err, all)
	}
	// One line off the plane all along its level run alone: as much at every trim.
	l.Loft[2].Offsets = purchase.LineOffsets{Loft: 0.1}
	u, err := mustRig(t, l).GeometryUse(5, 12, purchase.GeometryLimits{Fleet: purchase.FleetLimit})
	if err != nil || u.Lead.Trim != 5 || u.Lead.Rope != "lift line 3" || u.Lead.Part != 1 || u.Sheave != (purchase.SheaveUse{}) || u.Unknown != 0 {
		t.Errorf("the same at both trims: %+v, %v", u, err)
	}
	// The last sheave of the hand line alone too small; a limit for it alone, and one for the lift lines alone.
	l.Sheaves.HandArbor = 0.03
	u, err = mustRig(t, l).GeometryUse(5, 12, purchase.GeometryLimits{HandRatio: 3})
	if want := (purchase.SheaveUse{Rope: "hand line", Turn: 1, At: purchase.IdlerBlock, On: purchase.Idler, Ratio: 1, Limit: 3, Use: 3}); err != nil || u.Sheave != want || u.Lead != (purchase.LeadUse{}) {
		t.Errorf("the hand line's idler: %+v, %v; want %+v", u, err, want)
	}
	// Treads or diameters that are not given leave sheaves unknown only where there is a limit for them.
	l.Sheaves.Idler = 0
	if u, err = mustRig(t, l).GeometryUse(5, 12, limits); err != nil || u.Unknown != 1 {
		t.Errorf("no tread of the idler: %d unknown, %v", u.Unknown, err)
	}
	if u, err = mustRig(t, l).GeometryUse(5, 12, purchase.GeometryLimits{LiftRatio: 2}); err != nil || u.Unknown != 0 {
		t.Errorf("no limit for the hand line: %d unknown, %v", u.Unknown, err)
	}
	// Of a geometry of the caller's own, angles and ratios that are none count as no lead and as unknown.
	g := purchase.Geometry{Lift: []purchase.RopeGeometry{{
		Parts: []purchase.PartGeometry{{Fleet: units.Angle(math.NaN())}, {Fleet: -1}, {Fleet: 7}, {Fleet: units.Turn}},
		Turns: []purchase.Turn{{SheaveRatio: math.NaN()}, {SheaveRatio: math.Inf(1)}, {SheaveRatio: 0.999}, {SheaveRatio: 1}, {SheaveRatio: math.MaxFloat64}},
	}}}
	if u, err = g.Use(limits); err != nil || u.Lead.Part != 3 || u.Unknown != 3 || u.Sheave.Turn != 3 {
		t.Errorf("figures that are none: %+v, %v", u, err)
	}
}
