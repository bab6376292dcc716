package lineset_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// An order as it is read out to deck, bridge and rail, word by word: who does what, with how many plates, how the set then stands, what holds it,
// what exceeds what. Reckoned by head as in the test of every figure: a piece of 10 lb answers 5 lb, a plate of 2 lb answers 1 lb, of the
// cloth of 80 lb 20 are carried at 4 ft and 60 at 12 ft.
func TestAnOrderReadOut(t *testing.T) {
	cloth := pounds("cloth", 80)
	cloth.Height, cloth.OnDeck = 16*units.Foot, load.Piles
	s := plain(t, purchase.Double, pounds("lamps", 60), cloth)
	frame := &s.Rigging.Arbor
	frame.Plate = arbor.Plate{Mass: 2 * units.Pound, Thickness: 0.125 * units.Inch, Every: 3 * units.Inch}
	frame.Capacity, frame.Room = 80*units.Pound, 8.25*units.Inch
	r := rigTens(t, s)
	limits := within(20, 70)
	limits.RestsOnStop = true
	limits.HeldLine = lineset.ForceLimit{Max: 100 * units.PoundForce, Basis: "the line's rating"}
	lineOn := func(on purchase.Body) lineset.OrderStep { return lineset.OrderStep{Act: lineset.SetLine, On: on} }
	free := lineset.OrderStep{Act: lineset.FreeLine}
	for _, c := range []struct {
		name   string
		limits lineset.OrderLimits
		steps  []lineset.OrderStep
		sys    units.System
		want   []string
	}{
		{"deck, bridge and rail", limits, []lineset.OrderStep{
			hang("lamps"), hang("cloth"), add(2), add(4), unlock, fly(12), lock, lineOn(purchase.Batten), free, lineOn(purchase.Arbor), take(6), free, strip("lamps"), strip("cloth"),
		}, units.US, []string{
			"begin at 4' 0\" balanced",
			"deck: hang lamps, then 60 lbf batten-heavy: rests on the stop",
			"deck: hang cloth, then 80 lbf batten-heavy: rests on the stop",
			"bridge: add 2 of the 10 with 1 spreader plate, then 69 lbf batten-heavy: rests on the stop",
			"bridge: add 4 of the 10 with 2 spreader plates, then 47 lbf batten-heavy: rests on the stop",
			"rail: open the rope lock, then 47 lbf batten-heavy: rests on the stop",
			"rail: fly to 12' 0\", then 87 lbf batten-heavy: would run in; exceeds the limit given",
			"rail: shut the rope lock, then 87 lbf batten-heavy: would run in; exceeds the limit given",
			"rail: set a line on the batten, then 87 lbf batten-heavy: held by the line that is set with 87 lbf",
			"rail: free the line, then 87 lbf batten-heavy: would run in; exceeds the limit given",
			"rail: set a line on the arbor, then 87 lbf batten-heavy: held by the line that is set with 174 lbf; exceeds the limit given",
			"bridge: take out 6 of the 10 with 3 spreader plates, then 120 lbf batten-heavy: held by the line that is set with 240 lbf; exceeds the limit given",
			"rail: free the line, then 120 lbf batten-heavy: would run in; exceeds the limit given",
			"deck: strip lamps, then 60 lbf batten-heavy: would run in",
			"deck: strip cloth, then balanced",
		}},
		{"over capacity and room", limits, []lineset.OrderStep{add(8), take(1)}, units.US, []string{
			"begin at 4' 0\" balanced",
			"bridge: add 8 of the 10 with 3 spreader plates, then 43 lbf arbor-heavy: would run out; exceeds the limit given; " +
				"86 lb of counterweight exceeds the capacity of the arbor, 80 lb; a stack of 0' 8 3/8\" exceeds the room on the rods, 0' 8 1/4\"",
			"bridge: take out 1 of the 10, then 38 lbf arbor-heavy: would run out; exceeds the limit given",
		}},
		{"no limits", lineset.OrderLimits{}, []lineset.OrderStep{hang("lamps"), add(8), lineOn(purchase.Arbor)}, units.Metric, []string{
			"begin at 1.219 m balanced",
			"deck: hang lamps, then 0.267 kN batten-heavy: rests on the stop; no limit given",
			"bridge: add 8 of the 10 with 3 spreader plates, then 0.076 kN batten-heavy: rests on the stop; 39.01 kg of counterweight exceeds the capacity of the arbor, 36.29 kg; a stack of 0.213 m exceeds the room on the rods, 0.21 m; no limit given",
			"rail: set a line on the arbor, then 0.076 kN batten-heavy: held by the line that is set with 0.151 kN; 39.01 kg of counterweight exceeds the capacity of the arbor, 36.29 kg; a stack of 0.213 m exceeds the room on the rods, 0.21 m; no limit given",
		}},
	} {
		check, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: c.steps}, c.limits)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(c.want, check.Lines(c.sys)); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
}

// Where the set is at its worst is read out where that is not as it stands: beside a halt always, on the way of a flight where it exceeds. A
// flat of 40 lb, which leaves the deck at 20 ft, is answered by 2 pieces of 10: it is 20 arbor-heavy below and 20 batten-heavy above.
func TestTheWorstReadOut(t *testing.T) {
	const leaves = 20 * units.Foot
	const out, in, exceeds = "20 lbf arbor-heavy: would run out", "20 lbf batten-heavy: would run in", "; exceeds the limit given"
	for _, c := range []struct {
		name          string
		lamps         float64 // lb besides
		trim          units.Length
		fly           float64 // ft; 0: it does not
		arbor, batten float64
		want          string
	}{
		{"flown past it, within both limits", 0, 10 * units.Foot, 30, 20, 20, in},
		{"flown past it, arbor-heavy the nearer to its limit", 0, 10 * units.Foot, 30, 30, 40, in},
		{"flown past it, arbor-heavy over its limit", 0, 10 * units.Foot, 30, 19, 30, in + "; on the way, at 10' 0\", " + out + exceeds},
		{"flown past it, batten-heavy over its limit", 0, 10 * units.Foot, 30, 30, 19, in + exceeds},
		{"flown in past it, batten-heavy over its limit", 0, 30 * units.Foot, 10, 30, 19, out + "; on the way, at 20' 0\", " + in + exceeds},
		{"flown to it, arbor-heavy the nearer to its limit", 0, 10 * units.Foot, 20, 30, 40, out},
		{"flown to it, batten-heavy the nearer to its limit", 0, 10 * units.Foot, 20, 40, 30, out + "; a hair higher " + in},
		{"halted there", 0, leaves, 0, 40, 30, out + "; a hair higher " + in},
		{"halted there, over the limit clear", 0, leaves, 0, 40, 19, out + "; a hair higher " + in + exceeds},
		{"halted there, over the limit standing", 0, leaves, 0, 19, 40, out + exceeds},
		{"halted there, batten-heavy both ways", 30, leaves, 0, 40, 60, "10 lbf batten-heavy: would run in; a hair higher 50 lbf batten-heavy: would run in"},
		{"halted just below", 0, leaves - units.Inch/4, 0, 40, 30, out + "; if it sways to 20' 0\", " + in},
		{"halted just above", 0, leaves + units.Inch/4, 0, 30, 40, in + "; if it sways to 20' 0\", " + out},
		{"halted just above, over the limit", 0, leaves + units.Inch/4, 0, 19, 40, in + "; if it sways to 20' 0\", " + out + exceeds},
		{"halted just above, the other nearer to its limit", 0, leaves + units.Inch/4, 0, 40, 30, in},
		{"halted well below", 0, leaves - units.Inch, 0, 40, 30, out},
	} {
		s := plain(t, purchase.Single, standing(20))
		o := lineset.Order{From: lineset.FromBare, Trim: c.trim, Hung: []int{1}, Pieces: []lineset.PiecesOf{{Piece: "10", Count: 2}}}
		if c.lamps > 0 {
			s.Hang, o.Hung = append(s.Hang, pounds("lamps", c.lamps)), []int{1, 2}
		}
		want := "begin at " + units.US.Format(c.trim) + " " + c.want
		if c.fly > 0 {
			o.Steps = []lineset.OrderStep{unlock, fly(c.fly)}
			want = "rail: " + fly(c.fly).Call(units.US) + ", then " + c.want
		}
		check, err := rigTens(t, s).CheckOrder(o, within(c.arbor, c.batten))
		if err != nil {
			t.Fatal(err)
		}
		if got := check.Lines(units.US)[len(o.Steps)]; got != want {
			t.Errorf("%s: %q, want %q", c.name, got, want)
		}
	}
}

// A batten that tips is said to tip, whatever limit is exceeded besides; what rests on the deck or on the stop at the end is told in lines
// of their own.
func TestWhatIsReadOutBesides(t *testing.T) {
	tipsy := rigTens(t, short(t, point("left", 120, 1), point("right", 120, 41)))
	check, err := tipsy.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("left"), hang("right")}}, within(0, 0))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"begin at 4' 0\" balanced", "deck: hang left, then 120 lbf batten-heavy: rests on the stop; the batten tips",
		"deck: hang right, then 240 lbf batten-heavy: rests on the stop; exceeds the limit given",
		"as it leaves the stop it is 240 lbf batten-heavy: would run in; exceeds the limit given",
	}
	if diff := cmp.Diff(want, check.Lines(units.US)); diff != "" {
		t.Error(diff)
	}
	resting := within(50, 50)
	resting.RestsOnStop = true
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60), standing(20)))
	check, err = r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("lamps"), hang("flat")}}, resting)
	if err != nil {
		t.Fatal(err)
	}
	want = []string{
		"begin at 4' 0\" balanced", "deck: hang lamps, then 60 lbf batten-heavy: rests on the stop", "deck: hang flat, then 60 lbf batten-heavy: rests on the stop",
		"40 lb still rests on the deck: it comes onto the lines as the batten flies out",
		"as it leaves the stop it is 60 lbf batten-heavy: would run in; exceeds the limit given",
	}
	if diff := cmp.Diff(want, check.Lines(units.US)); diff != "" {
		t.Error(diff)
	}
}
