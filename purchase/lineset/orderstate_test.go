package lineset_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// whole is a quantity in whole units, quarters and eighths too, where it is one to within rounding.
func whole[Q units.Quantity](q, unit Q) float64 {
	x := units.Ratio(q, unit)
	for n := range 16001 {
		if eighths := float64(n-8000) / 8; near.Abs(x, eighths, 1e-9) {
			return eighths
		}
	}
	return x
}

// told is a check as it is told: in pounds and pounds-force, inches and feet.
type told struct {
	Name, Where          string
	Trim                 float64
	Demand, Limit, Ratio float64
	Verdict              lineset.Verdict
	Basis                string
}

func tell(c lineset.Check) told {
	number := func(v units.Value) float64 {
		switch q := v.(type) {
		case units.Force:
			return whole(q, units.PoundForce)
		case units.Mass:
			return whole(q, units.Pound)
		case units.Length:
			return whole(q, units.Inch)
		}
		return -1
	}
	if margin := number(c.Limit) - number(c.Demand); number(c.Margin) != margin {
		return told{Name: "margin of " + c.Name}
	}
	ratio := c.Ratio
	if c.Verdict != lineset.NoLimit && near.Abs(ratio*number(c.Limit), number(c.Demand), 1e-9) {
		ratio = 0 // as it should be
	}
	return told{c.Name, c.Where, whole(c.Trim, units.Foot), number(c.Demand), number(c.Limit), ratio, c.Verdict, c.Basis}
}

// Every figure of every state, reckoned by head. In double purchase a piece of 10 lb answers 5 lb, a spreader plate of 2 lb, one under
// the first piece and one more for every 3 in, answers 1 lb. The lock plate of 5 lb and a quarter of an inch stays on the rods. The cloth
// of 80 lb is 16 ft tall: at 4 ft 20 lb of it are carried, at 12 ft 60 lb.
func TestEveryFigureOfAState(t *testing.T) {
	cloth := pounds("cloth", 80)
	cloth.Height, cloth.OnDeck = 16*units.Foot, load.Piles
	s := plain(t, purchase.Double, pounds("lamps", 60), cloth)
	frame := &s.Rigging.Arbor
	frame.Lock = arbor.Lock{Mass: 5 * units.Pound, Thickness: 0.25 * units.Inch}
	frame.Plate = arbor.Plate{Mass: 2 * units.Pound, Thickness: 0.125 * units.Inch, Every: 3 * units.Inch}
	frame.Tare -= frame.Lock.Mass
	frame.Capacity, frame.Room = 80*units.Pound, 8.5*units.Inch
	r := rigTens(t, s)
	limits := within(20, 70)
	limits.RestsOnStop = true
	limits.HeldLine = lineset.ForceLimit{Max: 100 * units.PoundForce, Basis: "the line's rating"}
	lineOn := func(on purchase.Body) lineset.OrderStep { return lineset.OrderStep{Act: lineset.SetLine, On: on} }
	free := lineset.OrderStep{Act: lineset.FreeLine}
	c, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{
		{Act: lineset.HangItem, Place: 1},
		add(8), hang("cloth"), unlock, fly(12), lock,
		lineOn(purchase.Batten), free, lineOn(purchase.Arbor), take(2), free, strip("lamps"),
		{Act: lineset.StripItem, Place: 2},
	}}, limits)
	if err != nil {
		t.Fatal(err)
	}
	const given, stop, in, out, held = "given in the test", "batten-heavy: rests on the stop", "batten-heavy: would run in", "arbor-heavy: would run out", "held by the line that is set"
	rests := func(lb float64) told {
		return told{Name: "batten-heavy", Where: stop, Trim: 4, Demand: lb, Basis: "rests on the stop, as said"}
	}
	runsIn := func(lb float64, v lineset.Verdict) told {
		return told{Name: "batten-heavy", Where: in, Trim: 12, Demand: lb, Limit: 70, Verdict: v, Basis: given}
	}
	runsOut := func(lb float64, v lineset.Verdict) told {
		return told{Name: "arbor-heavy", Where: out, Trim: 12, Demand: lb, Limit: 20, Verdict: v, Basis: given}
	}
	holds := func(on string, lbf float64, v lineset.Verdict) told {
		return told{Name: "held line", Where: "on the " + on, Trim: 12, Demand: lbf, Limit: 100, Verdict: v, Basis: "the line's rating"}
	}
	level := rests(0)
	level.Where = "balanced"
	type row struct {
		Did                          lineset.OrderStep
		Trim, Hung, Carried, Arbor   float64 // ft, lb; carried beside the batten, in the arbor beside what balances it
		Pieces, Plates               int
		Imbalance, Held              float64
		Locked                       bool
		Hazard                       lineset.Hazard
		Balance                      told
		Capacity, Room               float64
		CapacityVerdict, RoomVerdict lineset.Verdict
		Exceeds                      bool
	}
	lamps := lineset.OrderStep{Act: lineset.HangItem, Item: "lamps", Place: 1}
	hungCloth := lineset.OrderStep{Act: lineset.HangItem, Item: "cloth", Place: 2}
	noLamps, noCloth := lamps, hungCloth
	noLamps.Act, noCloth.Act = lineset.StripItem, lineset.StripItem
	const ok, over = lineset.Within, lineset.Exceeds
	want := []row{
		{lineset.OrderStep{}, 4, 0, 0, 0, 0, 0, 0, 0, true, lineset.Balanced, level, 5, 0.25, ok, ok, false},
		{lamps, 4, 60, 60, 0, 0, 0, 60, 0, true, lineset.RestsOnStop, rests(60), 5, 0.25, ok, ok, false},
		{add(8), 4, 60, 60, 86, 8, 3, 17, 0, true, lineset.RestsOnStop, rests(17), 91, 8.625, over, over, true},
		{hungCloth, 4, 140, 80, 86, 8, 3, 37, 0, true, lineset.RestsOnStop, rests(37), 91, 8.625, over, over, true},
		{unlock, 4, 140, 80, 86, 8, 3, 37, 0, false, lineset.RestsOnStop, rests(37), 91, 8.625, over, over, true},
		{fly(12), 12, 140, 120, 86, 8, 3, 77, 0, false, lineset.RunsIn, runsIn(77, over), 91, 8.625, over, over, true},
		{lock, 12, 140, 120, 86, 8, 3, 77, 0, true, lineset.RunsIn, runsIn(77, over), 91, 8.625, over, over, true},
		{lineOn(purchase.Batten), 12, 140, 120, 86, 8, 3, 77, 77, true, lineset.HeldByLine, holds("batten", 77, ok), 91, 8.625, over, over, true},
		{free, 12, 140, 120, 86, 8, 3, 77, 0, true, lineset.RunsIn, runsIn(77, over), 91, 8.625, over, over, true},
		{lineOn(purchase.Arbor), 12, 140, 120, 86, 8, 3, 77, 154, true, lineset.HeldByLine, holds("arbor", 154, over), 91, 8.625, over, over, true},
		{take(2), 12, 140, 120, 66, 6, 3, 87, 174, true, lineset.HeldByLine, holds("arbor", 174, over), 71, 6.625, ok, ok, true},
		{free, 12, 140, 120, 66, 6, 3, 87, 0, true, lineset.RunsIn, runsIn(87, over), 71, 6.625, ok, ok, true},
		{noLamps, 12, 80, 60, 66, 6, 3, 27, 0, true, lineset.RunsIn, runsIn(27, ok), 71, 6.625, ok, ok, false},
		{noCloth, 12, 0, 0, 66, 6, 3, -33, 0, true, lineset.RunsOut, runsOut(33, over), 71, 6.625, ok, ok, true},
	}
	if len(c.States) != len(want) {
		t.Fatalf("%d states", len(c.States))
	}
	balances := s.Rigging.Arbor.Tare + frame.Lock.Mass
	for i, s := range c.States {
		capacity, room := tell(s.Capacity), tell(s.Room)
		got := row{
			s.Did, whole(s.Trim, units.Foot), whole(s.Hung, units.Pound), whole(s.Carried-r.Bare(), units.Pound), whole(s.Arbor-balances, units.Pound),
			s.Pieces, s.Plates, tidy(s.Imbalance), tidy(s.Held), s.Locked, s.Hazard, tell(s.Balance),
			capacity.Demand, room.Demand, capacity.Verdict, room.Verdict, s.Exceeds(),
		}
		if diff := cmp.Diff(want[i], got); diff != "" || s.Step != i || s.Tips {
			t.Errorf("state %d: %s", i, diff)
		}
		capacity.Demand, room.Demand, capacity.Verdict, room.Verdict = 0, 0, 0, 0
		if capacity != (told{Name: "counterweight mass", Limit: 80, Basis: "capacity of the arbor, as given"}) ||
			room != (told{Name: "stack height", Limit: 8.5, Basis: "room on the arbor's rods, as given"}) {
			t.Errorf("state %d: %+v, %+v", i, capacity, room)
		}
	}
}
