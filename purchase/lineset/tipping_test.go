package lineset_test

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// short is a set whose lines stand from 11 to 31 ft of a 42 ft batten, which weighs 114 lb: about its first line the
// batten balances 114 lb 10 ft out.
func short(t testing.TB, hang ...load.Item) lineset.Set {
	t.Helper()
	s := plain(t, purchase.Single, hang...)
	s.Rigging.Batten.Lines = load.Spaced(11*units.Foot, 5*units.Foot, 5)
	return s
}

func point(name string, lb, feet float64) load.Item {
	return load.Item{Name: name, Mass: units.Pound.Scale(lb), From: units.Foot.Scale(feet), To: units.Foot.Scale(feet)}
}

// What hangs beyond the lines may not hang alone, so it is not hung first though the list has it first.
func TestPlanDoesNotTip(t *testing.T) {
	left, right, middle := point("left", 120, 1), point("right", 120, 41), point("middle", 50, 21)
	limits := within(0, 0)
	limits.RestsOnStop = true
	r := rigTens(t, short(t, left, right, middle))
	if got, want := calls(mustPlan(t, r, lineset.Loading, limits).Order), "hang middle, hang left, hang right, add 29 of the 10"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	c, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("left"), hang("right"), hang("middle")}}, limits)
	if err != nil {
		t.Fatal(err)
	}
	for i, tips := range []bool{false, true, false, false} {
		if c.States[i].Tips != tips || c.States[i].Exceeds() != tips {
			t.Errorf("state %d: tips %v, want %v", i, c.States[i].Tips, tips)
		}
	}
	if c.Worst != 1 || !c.Exceeds {
		t.Errorf("worst is state %d", c.Worst)
	}
	// Without the middle neither can be hung before the other.
	_, err = rigTens(t, short(t, left, right)).Order(lineset.Loading, limits)
	var none *lineset.NoOrderError
	if !errors.As(err, &none) || !none.Tips {
		t.Errorf("%v", err)
	}
}

// Two that weigh the same are not alike where it matters which side they hang on: with 10 lb at 12 ft the right one may
// hang alone and the left one may not. Pounds times feet about the line at 11 ft: 114·10 + 10·1 − 120·10 is less than
// nothing; about that at 31 ft: 114·10 + 10·19 − 120·10 is more.
func TestSidesAreNotAlike(t *testing.T) {
	limits := within(0, 0)
	limits.RestsOnStop = true
	r := rigTens(t, short(t, point("left", 120, 1), point("right", 120, 41), point("small", 10, 12)))
	if got, want := calls(mustPlan(t, r, lineset.Loading, limits).Order), "hang small, hang right, hang left, add 25 of the 10"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// An item that leans by 0.6 towards its end at the batten's has its centre at 8 ft of 20, 3 ft beyond the line: the
// batten's 1140 lb·ft hold 380 lb there.
func TestTaperTips(t *testing.T) {
	for _, c := range []struct {
		lb   float64
		tips bool
	}{{370, false}, {390, true}} {
		leaning := load.Item{Name: "leaning", Mass: units.Pound.Scale(c.lb), To: 20 * units.Foot, Taper: -0.6}
		r := rigTens(t, short(t, leaning, point("middle", 30, 21)))
		check, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("leaning")}}, within(1000, 1000))
		if err != nil || check.States[1].Tips != c.tips {
			t.Errorf("%v lb: %v, %v", c.lb, check.States[1].Tips, err)
		}
	}
}

// What stays keeps the batten from tipping, too.
func TestChangeOverDoesNotTip(t *testing.T) {
	house := func(hang ...load.Item) *lineset.RiggedHouse {
		return mustRigHouse(t, lineset.House{Name: "Quillmoor Playhouse", Stock: tens, Sets: []lineset.Set{short(t, hang...)}})
	}
	limits := within(0, 0)
	limits.RestsOnStop = true
	middle := point("middle", 50, 21)
	c, err := house(middle).ChangeOver(house(middle, point("left", 120, 1), point("right", 120, 41)), limits, nil)
	if err != nil {
		t.Fatal(err)
	}
	if s := c.Sets[0]; len(s.Stays) != 1 || calls(s.Load.Order) != "hang left, hang right, add 24 of the 10" {
		t.Errorf("%v stays: %s", s.Stays, calls(s.Load.Order))
	}
}

// Whether a part of the hang tips the batten is what package load says of that part.
func TestPropTipsAsLoadDoes(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := short(t)
		for range rapid.IntRange(1, 5).Draw(rt, "items") {
			from := rapid.Float64Range(0, 12).Draw(rt, "from")
			s.Hang = append(s.Hang, load.Item{
				Name: "item", Mass: units.Mass(rapid.Float64Range(1, 90).Draw(rt, "mass")),
				From: units.Length(from), To: units.Length(rapid.Float64Range(from, 12.8).Draw(rt, "to")),
				Taper: rapid.Float64Range(-1, 1).Draw(rt, "taper"), Height: 3, OnDeck: rapid.SampledFrom([]load.OnDeck{load.Hangs, load.Piles}).Draw(rt, "on deck"),
			})
		}
		r, err := s.Rig(stock)
		if err != nil {
			rt.Skip(err) // all of it tips
		}
		var part load.Hang
		o := lineset.Order{From: lineset.FromBare}
		for i, item := range s.Hang {
			if rapid.Bool().Draw(rt, "hangs") {
				o.Hung = append(o.Hung, i+1)
				part = append(part, item)
			}
		}
		c, err := r.CheckOrder(o, within(1e4, 1e4))
		if err != nil {
			rt.Fatal(err)
		}
		alone, err := s.Rigging.Batten.Rig(part)
		if err != nil {
			rt.Fatal(err)
		}
		low := r.Travel().Lowest
		if tips := alone.Tips(low, low) != nil; tips != c.States[0].Tips {
			rt.Fatalf("tips %v, package load says %v", c.States[0].Tips, tips)
		}
		limits := within(1e4, 1e4)
		p, err := r.Order(lineset.Loading, limits)
		if none := (*lineset.NoOrderError)(nil); errors.As(err, &none) && none.Tips {
			return
		}
		if err != nil || p.Check.Exceeds {
			rt.Fatalf("%v, exceeds %v", err, p.Check.Exceeds)
		}
	})
}

// Where nothing hangs outside the lines nothing can tip, and things that weigh the same are alike wherever they hang: so many more of them can
// be planned.
func TestAlikeWhereNothingTips(t *testing.T) {
	along := func(last float64) (hang load.Hang) {
		for i := range 24 {
			hang = append(hang, point("item", 10, 11+20.0/23*float64(i)))
		}
		hang[23].From, hang[23].To = units.Foot.Scale(last), units.Foot.Scale(last)
		return hang
	}
	for feet, ok := range map[float64]bool{30.99: true, 31.01: false} { // the last line is at 31 ft
		_, err := rigTens(t, short(t, along(feet)...)).Order(lineset.Loading, within(20, 20))
		if (err == nil) != ok {
			t.Errorf("the last at %v ft: %v", feet, err)
		}
	}
	for feet, ok := range map[float64]bool{11.01: true, 10.99: false} { // the first at 11 ft
		hang := along(30)
		hang[0].From, hang[0].To = units.Foot.Scale(feet), units.Foot.Scale(feet)
		_, err := rigTens(t, short(t, hang...)).Order(lineset.Loading, within(20, 20))
		if (err == nil) != ok {
			t.Errorf("the first at %v ft: %v", feet, err)
		}
	}
}

// A batten of which one end is just held down by its own weight does not tip, whatever rounding makes of it, and no more may be hung there: with a
// millionth more it tips. The batten's arm about its first line is 10 ft, that of what hangs there between 1 and 10.
func TestJustHeldDown(t *testing.T) {
	for eighths := range 80 {
		feet := float64(eighths) / 8
		for _, c := range []struct {
			more float64
			tips bool
		}{{1, false}, {1 + 1e-6, true}, {1 - 1e-6, false}} {
			s := short(t, point("left", 1, feet), point("right", 1, 42-feet), point("middle", 3000, 21))
			bare := s.Rigging.Batten.BareMass()
			s.Hang[0].Mass = bare.Scale(10 / (11 - feet) * c.more)
			s.Hang[1].Mass = s.Hang[0].Mass
			r := rigTens(t, s)
			for place := 1; place <= 2; place++ {
				o := lineset.Order{From: lineset.FromBare, Hung: []int{place}}
				check, err := r.CheckOrder(o, within(1e4, 1e4))
				if err != nil || check.States[0].Tips != c.tips {
					t.Errorf("%v of what balances at %v ft, place %d: tips %v, %v", c.more, feet, place, check.States[0].Tips, err)
				}
				e, err := r.Estimates(o, within(1e4, 1e4))
				if err != nil {
					t.Fatal(err)
				}
				h := e.Items[place-1].Heavier
				if h.Passed != c.tips || !h.Tips || h.Share > 1.1e-6 {
					t.Errorf("%v of what balances at %v ft, place %d: %+v", c.more, feet, place, h)
				}
			}
		}
	}
}
