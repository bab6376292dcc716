package lineset_test

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// off is a tolerance as it is told, in pounds and feet.
type off struct {
	Pounds       float64
	Step         int
	Trim         float64
	Tips, Passed bool
	Free         bool
}

// tellOff takes a tolerance of so many pounds as they are written apart; its share of them must be its mass.
func tellOff(t *testing.T, of float64, a lineset.Tolerance) off {
	t.Helper()
	if !near.Abs(a.Share*of, a.Mass.In(units.Pound), 1e-9) {
		t.Errorf("%v of %v lb: %+v", a.Share, of, a)
	}
	return off{whole(a.Mass, units.Pound), a.Step, whole(a.Trim, units.Foot), a.Tips, a.Passed, a.Free}
}

// Lamps of 60 lb and a cloth of 40, 16 ft tall, of which at 8 ft 20 lb are carried: with the whole stack of 100 lb in it is 20 lb
// arbor-heavy there. What is off by a share of all of it is off by that share of what is carried. What is carried may be lighter until
// the arbor-heavy limit is met, and where even nothing at all would not meet it, by any amount.
func TestEstimatesAtTheirLimits(t *testing.T) {
	cloth := pounds("cloth", 40)
	cloth.Height, cloth.OnDeck = 16*units.Foot, load.Piles
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60), cloth))
	at := func(lb float64) off { return off{Pounds: lb, Trim: 8} }
	free, passed := off{Free: true}, off{Trim: 8, Passed: true}
	type row struct{ Heavier, Lighter off }
	for _, c := range []struct {
		name              string
		arbor, batten     float64
		all, lamps, cloth row
		matters           int
	}{
		{"room both ways", 30, 50, row{at(87.5), at(12.5)}, row{at(70), at(10)}, row{at(140), at(20)}, 1}, // 70 and 10 of what is carried
		{"just the limit", 20, 50, row{at(87.5), at(0)}, row{at(70), at(0)}, row{at(140), at(0)}, 1},
		{"passed", 19, 50, row{at(87.5), passed}, row{at(70), passed}, row{at(140), passed}, 0},
		{"no cloth at all is just the limit", 40, 50, row{at(87.5), at(25)}, row{at(70), at(20)}, row{at(140), free}, 1},
		{"no cloth at all is over the limit", 39, 50, row{at(87.5), at(23.75)}, row{at(70), at(19)}, row{at(140), at(38)}, 1},
		{"no lamps at all are just the limit", 80, 50, row{at(87.5), at(75)}, row{at(70), free}, row{at(140), free}, 1},
		{"no lamps at all are over the limit", 79, 50, row{at(87.5), at(73.75)}, row{at(70), at(59)}, row{at(140), free}, 1},
		{"nothing at all is just the limit", 100, 50, row{at(87.5), free}, row{at(70), free}, row{at(140), free}, 1},
		{"nothing at all is over the limit", 99, 50, row{at(87.5), at(98.75)}, row{at(70), free}, row{at(140), free}, 1},
		{"no limit for the arbor", -1, 0, row{at(25), free}, row{at(20), free}, row{at(40), free}, 1},
		{"no limit for the batten", 30, -1, row{free, at(12.5)}, row{free, at(10)}, row{free, at(20)}, 1},
		{"no limits", -1, -1, row{free, free}, row{free, free}, row{free, free}, 0},
	} {
		limits := within(c.arbor, c.batten)
		if c.arbor < 0 {
			limits.ArborHeavy = lineset.ForceLimit{}
		}
		if c.batten < 0 {
			limits.BattenHeavy = lineset.ForceLimit{}
		}
		o := lineset.Order{From: lineset.FromLoaded, Trim: 8 * units.Foot, Steps: []lineset.OrderStep{unlock, lock}} // which alters nothing
		e, err := r.Estimates(o, limits)
		if err != nil {
			t.Fatal(err)
		}
		tell := func(of float64, a lineset.Allowance) row {
			return row{tellOff(t, of, a.Heavier), tellOff(t, of, a.Lighter)}
		}
		if diff := cmp.Diff([]row{c.all, c.lamps, c.cloth}, []row{tell(100, e.All), tell(60, e.Items[0]), tell(40, e.Items[1])}); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
		if e.Matters != c.matters || len(e.Steps) != 3 || e.Items[0].Name != "lamps" || e.Items[0].Place != 1 || e.Items[1].Name != "cloth" || e.Items[1].Place != 2 {
			t.Errorf("%s: %d matters: %+v", c.name, e.Matters, e.Items)
		}
		for i, s := range e.Steps {
			for _, a := range []*row{&c.all} {
				now := *a
				if now.Heavier.Free == false {
					now.Heavier.Step = i
				}
				if now.Lighter.Free == false {
					now.Lighter.Step = i
				}
				if diff := cmp.Diff(now, tell(100, s)); diff != "" {
					t.Errorf("%s, after step %d: %s", c.name, i, diff)
				}
			}
		}
	}
}

// Over an order the tightest place is told, the first of those alike; but a limit that is passed as it is written before all, and of
// those again the first.
func TestEstimatesTellTheTightestPlace(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60)))
	o := lineset.Order{From: lineset.FromBare, Hung: []int{1}, Trim: 20 * units.Foot, Steps: []lineset.OrderStep{add(6), add(1), add(1), take(1), unlock, fly(10)}}
	for _, c := range []struct {
		arbor, batten    float64
		heavier, lighter off
		matters          int
	}{
		{25, 100, off{Pounds: 40, Trim: 20}, off{Pounds: 5, Step: 3, Trim: 20}, 1}, // 60 unanswered; 80 against 60
		{20, 60, off{Trim: 20}, off{Step: 3, Trim: 20}, 1},
		{9, 59, off{Trim: 20, Passed: true}, off{Step: 2, Trim: 20, Passed: true}, 1}, // 1 of the steps passes none: balanced
		{19, 100, off{Pounds: 40, Trim: 20}, off{Step: 3, Trim: 20, Passed: true}, 1},
	} {
		e, err := r.Estimates(o, within(c.arbor, c.batten))
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range []lineset.Allowance{e.All, e.Items[0]} {
			if diff := cmp.Diff([]off{c.heavier, c.lighter}, []off{tellOff(t, 60, a.Heavier), tellOff(t, 60, a.Lighter)}); diff != "" {
				t.Errorf("within %v and %v: %s", c.arbor, c.batten, diff)
			}
		}
		if e.Matters != c.matters {
			t.Errorf("within %v and %v: %d matters", c.arbor, c.batten, e.Matters)
		}
	}
	// What cannot be gone through cannot be told of.
	if e, err := r.Estimates(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{lock}}, within(1, 1)); !errors.Is(err, lineset.ErrLockIsSo) || e.Items != nil {
		t.Errorf("%+v, %v", e, err)
	}
}

// Of two items the one matters that may be off by the smaller share, be it heavier or lighter.
func TestWhatMattersTheMost(t *testing.T) {
	for _, c := range []struct {
		name          string
		first, second float64
		arbor, batten float64
		want          int
	}{
		{"the heavier, first", 60, 40, 20, 30, 1},
		{"the heavier, second", 40, 60, 20, 30, 2},
		{"too heavy", 40, 60, 30, 20, 2},
		{"the first of two alike", 50, 50, 20, 30, 1},
		{"little lighter, though it may be much heavier", 60, 40, 6, 50, 1}, // 6 of 60 is less than 6 of 40 and 50 of either
		{"what may be lighter does not count where nothing at all would do", 20, 30, 60, 100, 2},
	} {
		r := rigTens(t, plain(t, purchase.Single, pounds("first", c.first), pounds("second", c.second)))
		e, err := r.Estimates(lineset.Order{From: lineset.FromLoaded, Trim: 20 * units.Foot}, within(c.arbor, c.batten))
		if err != nil || e.Matters != c.want {
			t.Errorf("%s: %d, %v; want %d", c.name, e.Matters, err, c.want)
		}
	}
}

// However little a thing weighs, it may not be as heavy as it will: with a tag of an eighth of a pound beside lamps that are balanced, 50 lb
// batten-heavy are 49 7/8 more.
func TestALightThingMayBeHeavier(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60), pounds("tag", 0.125)))
	e, err := r.Estimates(lineset.Order{From: lineset.FromLoaded, Trim: 20 * units.Foot}, within(50, 50))
	if err != nil {
		t.Fatal(err)
	}
	if tag := e.Items[1]; tellOff(t, 0.125, tag.Heavier) != (off{Pounds: 49.875, Trim: 20}) || !tag.Lighter.Free || e.Matters != 1 {
		t.Errorf("%+v", tag)
	}
}
