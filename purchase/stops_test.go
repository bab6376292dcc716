package purchase_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// The sheaves of one block stand within a metre of where the first of them is, whichever way; 0.7 m across and up is 0.99 m, 0.71 m of
// each 1.004 m. What is a metre but for rounding, as from 3.3 to 4.3 m, is a metre.
func TestSheavesOfOneBlock(t *testing.T) {
	for _, c := range []struct {
		across, height units.Length // of the first
		dx, dz         units.Length
		one            bool
	}{
		{3, 19, 1, 0, true},
		{3, 19, -1, 0, true},
		{3, 19, 0, 1, true},
		{3, 19, 0, -1, true},
		{3, 19, 0.6, 0.8, true},
		{3, 19, -0.8, 0.6, true},
		{3, 19, 0.7, 0.7, true},
		{3, 19, 0.7, -0.7, true},
		{3, 19, 0.71, 0.71, false},
		{3, 19, -0.71, 0.71, false},
		{3, 19, 0.71, -0.71, false},
		{3, 19, -0.71, -0.71, false},
		{3, 19, 1.000001, 0, false},
		{3, 19, -1.000001, 0, false},
		{3, 19, 0, -1.000001, false},
		{3, 19, 1.1, 1.1, false},
		{3, 19, 1.2, 0.9, false},
		{0.1, 19, 1, 0, true},
		{0.3, 19, 1, 0, true},
		{1.7, 19, 1, 0, true},
		{3.3, 19, 1, 0, true},
		{3, 17.9, 0, 1, true},
		{3, 19.3, 0.28, 0.96, true},
		{0.9, 19.7, 0.6, -0.8, true},
	} {
		l := weightless(purchase.Double)
		l.Loft[1].Mules, l.Loft[2].Mules = mules(mule("m", c.across, c.height)), mules(mule("m", c.across+c.dx, c.height+c.dz))
		err := l.Validate()
		if c.one {
			if err != nil {
				t.Errorf("%v across and %v up from %v, %v: %v", c.dx, c.dz, c.across, c.height, err)
			}
			continue
		}
		one(t, err, "loft[2].mules[0]", units.ErrDuplicate, "more than a metre away")
	}
}

// lastStop is the number of a path's last one.
func lastStop(rp *purchase.Rope) int { return len(rp.Path) - 1 }

// Every fault of a stop is told once, with its field and no other beside it, at either end of a lift line and of the hand line and at
// the sheaves between.
func TestFaultsOfAStop(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name   string
		change func(*purchase.Stop)
		field  string
		sheave error // what is wrong with it at a sheave; none: nothing
		end    error // at an end
	}{
		{"no name", func(s *purchase.Stop) { s.Name = "" }, "name", units.ErrMissing, units.ErrMissing},
		{"no body", func(s *purchase.Stop) { s.Name, s.On = "stray", 200 }, "on", units.ErrUnknown, units.ErrUnknown},
		{"a drag", func(s *purchase.Stop) { s.Drag = 0.02 }, "drag", nil, units.ErrOutOfRange},
		{"the most drag", func(s *purchase.Stop) { s.Drag = 0.9 }, "drag", nil, units.ErrOutOfRange},
		{"a drag of one", func(s *purchase.Stop) { s.Drag = 1 }, "drag", units.ErrOutOfRange, units.ErrOutOfRange},
		{"a drag below nothing", func(s *purchase.Stop) { s.Drag = -0.02 }, "drag", units.ErrNegative, units.ErrNegative},
		{"a rim", func(s *purchase.Stop) { s.Rim = 0.5 }, "rim", nil, units.ErrOutOfRange},
		{"a rim of a kilogram", func(s *purchase.Stop) { s.Rim = 1 }, "rim", nil, units.ErrOutOfRange},
		{"a rim below nothing", func(s *purchase.Stop) { s.Rim = -1 }, "rim", units.ErrNegative, units.ErrNegative},
		{"a rim without a number", func(s *purchase.Stop) { s.Rim = units.Mass(nan) }, "rim", units.ErrNotFinite, units.ErrNotFinite},
		{"a tread", func(s *purchase.Stop) { s.Tread = 0.2 }, "tread", nil, units.ErrOutOfRange},
		{"a tread of a metre", func(s *purchase.Stop) { s.Tread = 1 }, "tread", nil, units.ErrOutOfRange},
		{"a tread without a number", func(s *purchase.Stop) { s.Tread = units.Length(nan) }, "tread", units.ErrNotFinite, units.ErrNotFinite},
		{"a metre and a bit off the plane", func(s *purchase.Stop) { s.Offset = -1.001 }, "offset", units.ErrOutOfRange, units.ErrOutOfRange},
		{"no number off the plane", func(s *purchase.Stop) { s.Offset = units.Length(nan) }, "offset", units.ErrNotFinite, units.ErrNotFinite},
	} {
		for rope := range 2 {
			for at := range 5 + rope {
				r := weightless(purchase.Double).Reeving()
				rp, path := &r.Lift[2], "lift[2].path["
				if rope == 1 {
					rp, path = &r.Hand, "hand.path["
				}
				c.change(&rp.Path[at])
				kind := c.sheave
				if at == 0 || at == lastStop(rp) {
					kind = c.end
				}
				_, err := r.Rig()
				if kind == nil {
					if err != nil {
						t.Errorf("%s at a sheave, %s%d]: %v", c.name, path, at, err)
					}
					continue
				}
				one(t, err, path+strconv.Itoa(at)+"]."+c.field, kind, c.name)
			}
		}
	}
}

// The batten hangs plumb under its blocks: off the plane it is nowhere, by however little or much, and by too much it is told only of that.
func TestBattenOffThePlane(t *testing.T) {
	for _, off := range []units.Length{0.001, 1, -1, 1.001, -30} {
		r := weightless(purchase.Double).Reeving()
		r.Lift[4].Path[0].Offset = off
		_, err := r.Rig()
		one(t, err, "lift[4].path[0].offset", units.ErrOutOfRange, "it hangs plumb")
	}
}

// A stop in the place of the one before it is told of beside other faults, before any rope is laid, wherever on a rope it is and
// whatever else is said of it; and by its name.
func TestStopsInOnePlaceBesideOtherFaults(t *testing.T) {
	for rope := range 2 {
		for at := 1; at <= 5+rope; at++ {
			for _, off := range []units.Length{0, 0.1} {
				r := weightless(purchase.Double).Reeving()
				r.Lock = units.Length(math.NaN())
				rp, field := &r.Lift[2], fmt.Sprintf("lift[2].path[%d]", at)
				if rope == 1 {
					rp, field = &r.Hand, fmt.Sprintf("hand.path[%d]", at)
				}
				again := rp.Path[at-1]
				again.Name = "again"
				if again.On != purchase.Batten {
					again.Offset = off
				}
				rp.Path = slices.Insert(rp.Path, at, again)
				_, err := r.Rig()
				one(t, err, "lock, "+field, units.ErrNotFinite, "both are told")
				if all := faults(t, err); len(all) == 2 && (!errorsIsDuplicate(all[1]) || all[1].Value != `"again"`) {
					t.Errorf("%s: %v of %s", field, all[1], all[1].Value)
				}
			}
		}
	}
}

func errorsIsDuplicate(err *units.FieldError) bool { return err.Err == units.ErrDuplicate }

// Stops next to each other may share all of their figures on two bodies, and on one body their height or how far across they are,
// whatever else is said of them.
func TestNeighboursThatShareFigures(t *testing.T) {
	for _, said := range []func(*purchase.Stop){
		func(*purchase.Stop) {},
		func(s *purchase.Stop) { s.Offset = 0.1 },
		func(s *purchase.Stop) { s.Tread = 0.3 },
		func(s *purchase.Stop) { s.Rim = 2 },
	} {
		path := []purchase.Stop{
			stop("batten", purchase.Batten, 3, 0), stop("loft", purchase.Building, 3, 20), stop("level with it", purchase.Building, 2, 20),
			stop("under that", purchase.Building, 2, 19), stop("level with that", purchase.Building, 1, 19), stop("over that", purchase.Grid, 1, 20),
			stop("level again", purchase.HeadBeam, 0, 20), stop("arbor", purchase.Arbor, 0, 0),
		}
		for i := 1; i < len(path)-1; i++ {
			said(&path[i])
		}
		r := reeved(path...)
		// The arbor's foot is 2 m below its top at 10 m, and the idler's sheave 2 m below its datum at 4 m.
		r.Hand = purchase.Rope{Name: "hand", Path: []purchase.Stop{
			stop("foot", purchase.Arbor, 0, -2), stop("idler", purchase.Idler, 0, -2), stop("head", purchase.HeadBeam, 0, 20.5), stop("top", purchase.Arbor, 0, 0),
		}}
		r.Idler, r.Lock = 4, 3
		said(&r.Hand.Path[1])
		rigged, err := r.Rig()
		if err != nil || !near.Rel(rigged.Ratio(), 1, 1e-12) {
			t.Fatalf("ratio %v, %v", rigged.Ratio(), err)
		}
	}
}

// Lift lines whose stops have no names at all are told of each of them, and of nothing else.
func TestStopsWithoutNames(t *testing.T) {
	r := weightless(purchase.Double).Reeving()
	r.Lift, r.Hand = r.Lift[:2], purchase.Rope{}
	var fields []string
	for i := range r.Lift {
		for k := range r.Lift[i].Path {
			r.Lift[i].Path[k].Name = ""
			fields = append(fields, fmt.Sprintf("lift[%d].path[%d].name", i, k))
		}
	}
	_, err := r.Rig()
	one(t, err, strings.Join(fields, ", "), units.ErrMissing, "loads are asked for by name")
}

// As far off as a length may be, a stop is still somewhere: its load is its own. From a loft block a million million metres up the
// line comes down plumb to a low block, a metre across and 5 m under the head block.
func TestStopAsFarOffAsMayBe(t *testing.T) {
	slant := 100 / math.Sqrt(26)
	for _, c := range []struct {
		name  string
		path  []purchase.Stop
		loads map[string]purchase.Vector
	}{
		{"up", []purchase.Stop{
			stop("batten", purchase.Batten, 3, 0), stop("loft", purchase.Grid, 3, 1e12), stop("low", purchase.Grid, 1, 15),
			stop("head", purchase.HeadBeam, 0, 20), stop("arbor", purchase.Arbor, 0, 0),
		}, map[string]purchase.Vector{
			"loft": {Up: -200}, "low": {Across: units.Force(-slant), Up: units.Force(100 + 5*slant)}, "head": {Across: units.Force(slant), Up: units.Force(-100 - 5*slant)},
		}},
		{"across", []purchase.Stop{
			stop("batten", purchase.Batten, 1e12, 0), stop("loft", purchase.Grid, 1e12, 20), stop("head", purchase.HeadBeam, 0, 20), stop("arbor", purchase.Arbor, 0, 0),
		}, map[string]purchase.Vector{"loft": {Across: -100, Up: -100}, "head": {Across: 100, Up: -100}}},
	} {
		rigged, err := reeved(c.path...).Rig()
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		s, err := rigged.At(2, purchase.Bodies{Pulls: []units.Force{100}, Arbor: units.Mass(100 / g)})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		for block, want := range c.loads {
			got := s.Load(block)
			if !near.Abs(got.Across.In(units.Newton), want.Across.In(units.Newton), 1e-6) || !near.Abs(got.Up.In(units.Newton), want.Up.In(units.Newton), 1e-6) {
				t.Errorf("%s: %+v on the %s block, want %+v", c.name, got, block, want)
			}
		}
	}
}

// What the caller does with a reeving once it is rigged does not matter, and rigging it leaves the caller's own slices alone.
func TestReevingIsTheCallersOwn(t *testing.T) {
	mine := weightless(purchase.Double).Reeving()
	lift, hand := &mine.Lift[0].Path[0], &mine.Hand.Path[0]
	r, err := mine.Rig()
	if err != nil {
		t.Fatal(err)
	}
	if lift != &mine.Lift[0].Path[0] || hand != &mine.Hand.Path[0] {
		t.Error("the caller's paths were put elsewhere")
	}
	on := purchase.Bodies{Pulls: hundreds, Arbor: 1000 * units.Pound, Idler: 60 * units.Pound}
	before := first(r.At(9, on))
	for i := range mine.Lift {
		mine.Lift[i].Name = "mine"
		for k := range mine.Lift[i].Path {
			mine.Lift[i].Path[k] = stop("mine", purchase.Building, 7, 7)
		}
	}
	for k := range mine.Hand.Path {
		mine.Hand.Path[k] = stop("mine", purchase.Building, 7, 7)
	}
	if after := first(r.At(9, on)); !after.Equal(before) {
		t.Errorf("%+v, before the caller's changes %+v", after, before)
	}
}
