package purchase_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

func mustRig(t *testing.T, l purchase.Layout) *purchase.Reeved {
	t.Helper()
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func geometry(t *testing.T, r *purchase.Reeved, trim units.Length) purchase.Geometry {
	t.Helper()
	g, err := r.Geometry(trim)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// Lengths, speeds and turns by hand, for the five lines of weightless at a trim of
// 16 ft. The set was made off with the batten at 4 ft and the arbor's top at 58,
// so 12 ft of batten travel have brought the arbor 12, 6 or 4 ft down.
func TestGeometryByHand(t *testing.T) {
	for _, c := range []struct {
		kind, hand              purchase.Kind
		lift                    []float64 // lengths of the parts of line 2, at 16 ft across, in feet
		liftSpeed               []float64
		handLength              []float64
		handSpeed               []float64
		liftWhole, handWhole    float64
		liftTurns, handTurns    []float64 // degrees
		liftRims, handRims      []float64
		shortest, longestOfFive float64
	}{
		{
			kind: purchase.Single,
			lift: []float64{44, 16, 14}, liftSpeed: []float64{1, 1, 1}, liftWhole: 74,
			handLength: []float64{39, 59, 14}, handSpeed: []float64{1, 1, 1}, handWhole: 112,
			liftTurns: []float64{90, 90}, handTurns: []float64{180, 180},
			liftRims: []float64{1, 1}, handRims: []float64{1, 1},
			shortest: 64, longestOfFive: 104,
		},
		{
			kind: purchase.Double,
			lift: []float64{44, 16, 8, 9}, liftSpeed: []float64{1, 1, 1, 0}, liftWhole: 77,
			handLength: []float64{32, 33, 47, 8, 9}, handSpeed: []float64{0, 1, 1, 1, 0}, handWhole: 129,
			liftTurns: []float64{90, 90, 180}, handTurns: []float64{180, 180, 180, 180},
			liftRims: []float64{1, 1, .5}, handRims: []float64{.5, 1, 1, .5},
			shortest: 67, longestOfFive: 107,
		},
		{
			// With the arbor's foot at 46 ft, as in double, but a hand line that ends on it.
			kind: purchase.Double, hand: purchase.Single,
			lift: []float64{44, 16, 8, 9}, liftSpeed: []float64{1, 1, 1, 0}, liftWhole: 77,
			handLength: []float64{33, 47, 8}, handSpeed: []float64{.5, .5, .5}, handWhole: 88,
			liftTurns: []float64{90, 90, 180}, handTurns: []float64{180, 180},
			liftRims: []float64{1, 1, .5}, handRims: []float64{.5, .5},
			shortest: 67, longestOfFive: 107,
		},
		{
			kind: purchase.Triple,
			lift: []float64{44, 16, 6, 7, 7}, liftSpeed: []float64{1, 1, 1, 1. / 3, 1. / 3}, liftWhole: 80,
			handLength: []float64{34, 34, 35, 47, 6, 7, 7}, handSpeed: []float64{1. / 3, 1. / 3, 1, 1, 1, 1. / 3, 1. / 3}, handWhole: 170,
			liftTurns: []float64{90, 90, 180, 180}, handTurns: []float64{180, 180, 180, 180, 180, 180},
			liftRims: []float64{1, 1, 2. / 3, 1. / 3}, handRims: []float64{1. / 3, 2. / 3, 1, 1, 2. / 3, 1. / 3},
			shortest: 70, longestOfFive: 110,
		},
	} {
		l := weightless(c.kind)
		l.Hand, l.DeadEnd = c.hand, 61*units.Foot
		if c.kind != purchase.Single {
			l.Rail, l.Idler = 14*units.Foot, 13*units.Foot
		}
		g := geometry(t, mustRig(t, l), 16*units.Foot)
		one := func(r purchase.RopeGeometry, whole float64, lengths, speeds, turns, rims []float64) {
			t.Helper()
			if !near.Rel(r.Length.In(units.Foot), whole, 1e-12) || len(r.Parts) != len(lengths) || len(r.Turns) != len(turns) {
				t.Fatalf("%v: %s is %v ft long in %d parts with %d turns, want %v, %d, %d",
					c.kind, r.Name, r.Length.In(units.Foot), len(r.Parts), len(r.Turns), whole, len(lengths), len(turns))
			}
			for i, p := range r.Parts {
				if !near.Rel(p.Length.In(units.Foot), lengths[i], 1e-12) || !near.Abs(p.Speed, speeds[i], 1e-12) {
					t.Errorf("%v: %s, %s to %s: %v ft at speed %v, want %v at %v", c.kind, r.Name, p.From, p.To, p.Length.In(units.Foot), p.Speed, lengths[i], speeds[i])
				}
			}
			for i, turn := range r.Turns {
				if !near.Rel(turn.Angle.In(units.Degree), turns[i], 1e-12) || !near.Abs(turn.Speed, rims[i], 1e-12) || turn.At != r.Parts[i].To {
					t.Errorf("%v: %s turns at %s by %v degrees, rim at %v; want %v, %v", c.kind, r.Name, turn.At, turn.Angle.In(units.Degree), turn.Speed, turns[i], rims[i])
				}
			}
		}
		one(g.Lift[1], c.liftWhole, c.lift, c.liftSpeed, c.liftTurns, c.liftRims)
		one(g.Hand, c.handWhole, c.handLength, c.handSpeed, c.handTurns, c.handRims)
		if s, l := g.Lift[0].Length.In(units.Foot), g.Lift[4].Length.In(units.Foot); !near.Rel(s, c.shortest, 1e-12) || !near.Rel(l, c.longestOfFive, 1e-12) {
			t.Errorf("%v: short line %v ft, long line %v; want %v and %v", c.kind, s, l, c.shortest, c.longestOfFive)
		}
	}
}

// A turn of any size is found, from a hair to all but half a turn.
func TestTurnOfAnySize(t *testing.T) {
	for _, degrees := range []float64{1e-6, 0.01, 1, 30, 45, 60, 90, 120, 179, 179.99} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		// The line comes up plumb and leaves at the angle to where it was going.
		r, err := purchase.Reeving{Trim: 2, ArborTop: 3, Lift: []purchase.Rope{{Name: "line", Path: []purchase.Stop{
			{Name: "batten", On: purchase.Batten, Across: 10},
			{Name: "loft block", On: purchase.Grid, Across: 10, Height: 20},
			{Name: "mule block", Across: units.Length(10 - 5*sin), Height: units.Length(20 + 5*cos)},
			{Name: "head block", On: purchase.HeadBeam, Height: 21},
			{Name: "arbor", On: purchase.Arbor},
		}}}}.Rig()
		if err != nil {
			t.Fatal(err)
		}
		if got := geometry(t, r, 5).Lift[0].Turns[0].Angle.In(units.Degree); !near.Rel(got, degrees, 1e-8) {
			t.Errorf("turns by %v degrees, want %v", got, degrees)
		}
	}
}

func TestCut(t *testing.T) {
	r := purchase.RopeGeometry{Length: 74 * units.Foot}
	if got, err := r.Cut(3*units.Foot, 1*units.Foot); err != nil || !near.Rel(got.In(units.Foot), 78, 1e-15) {
		t.Errorf("cut %v, %v; want 78 ft", got.In(units.Foot), err)
	}
	for _, c := range []struct {
		first, last units.Length
		field       string
		kind        error
	}{
		{-1, 0, "first", units.ErrNegative},
		{0, units.Length(math.NaN()), "last", units.ErrNotFinite},
	} {
		got, err := r.Cut(c.first, c.last)
		var fe *units.FieldError
		if !errors.As(err, &fe) || fe.Field != c.field || !errors.Is(err, c.kind) || got != 0 {
			t.Errorf("cut %v, error %v; want none and %s %v", got, err, c.field, c.kind)
		}
	}
	if _, err := mustRig(t, weightless(purchase.Single)).Geometry(90 * units.Foot); !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("a trim above the loft blocks: error %v", err)
	}
}

// A rope is as long at every trim, its turns do not change, and what it runs at is
// the slope of its parts' lengths: from the far end of each part the rope runs on
// as it comes less what the part grows by.
func TestPropGeometry(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		r, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		lowest, highest := r.Reach()
		lo, hi := lowest.In(units.Metre), highest.In(units.Metre)
		at := func(trim float64) []purchase.RopeGeometry {
			g, err := r.Geometry(units.Length(trim))
			if err != nil {
				t.Fatal(err)
			}
			return append(g.Lift, g.Hand)
		}
		trim := lo + (hi-lo)*rapid.Float64Range(0.1, 0.8).Draw(t, "trim")
		const step = 0.05
		if trim+step >= hi {
			t.Skip("no room to fly out")
		}
		body := map[purchase.Body]float64{purchase.Batten: 1, purchase.Arbor: -1 / d.ratio()} // how fast each rises
		here, there := at(trim), at(trim+step)
		for i, rope := range d.ropes() {
			a, b := here[i], there[i]
			if !near.Abs(a.Length.In(units.Metre), b.Length.In(units.Metre), 1e-9) {
				t.Fatalf("%s is %v m long, further out %v", rope.Name, a.Length, b.Length)
			}
			// Rope runs into the first part as its end is taken along, plumb, or stands with the building.
			top, _ := r.ArborTop(units.Length(trim))
			rises := func(k int) float64 {
				z := func(s purchase.Stop) float64 { return d.height(s, trim, top.In(units.Metre)) }
				if rope.Path[k].Across != rope.Path[k+1].Across {
					return 0
				}
				return math.Copysign(1, z(rope.Path[k+1])-z(rope.Path[k]))
			}
			runs := body[rope.Path[0].On] * rises(0)
			for k, part := range a.Parts {
				if !near.Abs(part.Speed, runs, 1e-9) {
					t.Fatalf("%s, part %d runs at %v, want %v", rope.Name, k, part.Speed, runs)
				}
				if k == len(a.Parts)-1 {
					break
				}
				// Past the sheave: what comes in less what the part keeps, then what the next one gives up.
				next := rope.Path[k+1]
				past := runs - body[next.On]*rises(k)
				if turn := a.Turns[k]; !near.Abs(turn.Speed, past, 1e-9) || turn.Angle != b.Turns[k].Angle {
					t.Fatalf("%s, at %s: rim at %v, want %v; turns by %v, then by %v", rope.Name, turn.At, turn.Speed, past, turn.Angle, b.Turns[k].Angle)
				}
				runs = past + body[next.On]*rises(k+1)
			}
			// The last end takes the rope along as fast as it comes.
			last := len(rope.Path) - 1
			if want := body[rope.Path[last].On] * rises(last-1); !near.Abs(runs, want, 1e-9) {
				t.Fatalf("%s runs at %v into an end that moves at %v", rope.Name, runs, want)
			}
		}
	})
}

// Lines made off with the batten lower and the arbor where it was are longer by what LongerFor says, whatever the
// reeving: both lengths are measured along the paths.
func TestPropLongerFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		lower := units.Length(rapid.Float64Range(-1, 8).Draw(t, "lower"))
		r, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		g, err := r.Geometry(d.Trim)
		if err != nil {
			t.Fatal(err)
		}
		for i, rope := range append(g.Lift, g.Hand) {
			var before, after float64
			rp := d.ropes()[i]
			d.parts(rp, d.Trim.In(units.Metre), d.ArborTop.In(units.Metre), func(_, _ purchase.Stop, _, _, l float64) { before += l })
			d.parts(rp, (d.Trim - lower).In(units.Metre), d.ArborTop.In(units.Metre), func(_, _ purchase.Stop, _, _, l float64) { after += l })
			if got, err := rope.LongerFor(lower); err != nil || !near.Abs(got.In(units.Metre), after-before, 1e-9) {
				t.Fatalf("%s for %v lower: longer by %v, %v; want %v", rope.Name, lower, got, err, after-before)
			}
		}
	})
	if got, err := (purchase.RopeGeometry{AtBatten: 2}).LongerFor(0.9e12); err == nil || got != 0 {
		t.Errorf("longer than anything: %v, %v", got, err)
	}
	if got, err := (purchase.RopeGeometry{AtBatten: 1}).LongerFor(units.Length(math.NaN())); !errors.Is(err, units.ErrNotFinite) || got != 0 {
		t.Errorf("for no number: %v, %v", got, err)
	}
}
