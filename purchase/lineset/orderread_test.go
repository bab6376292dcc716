package lineset_test

import (
	"errors"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// What hands cannot do, or have done already.
func TestCheckOrderRefusesSlips(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60)))
	for _, row := range []struct {
		name  string
		steps []lineset.OrderStep
		want  error
	}{
		{"hung with the lock open", []lineset.OrderStep{unlock, hang("lamps")}, lineset.ErrUnlocked},
		{"weighted with the lock open", []lineset.OrderStep{unlock, fly(20), add(1)}, lineset.ErrUnlocked},
		{"locked twice", []lineset.OrderStep{lock}, lineset.ErrLockIsSo},
		{"opened twice", []lineset.OrderStep{unlock, fly(20), unlock}, lineset.ErrLockIsSo},
		{"no line to free", []lineset.OrderStep{{Act: lineset.FreeLine}}, lineset.ErrNoLine},
	} {
		_, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: row.steps}, within(100, 100))
		if !errors.Is(err, row.want) {
			t.Errorf("%s: %v", row.name, err)
		}
	}
	_, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("\x00\n")}}, within(100, 100))
	if err == nil || strings.ContainsAny(err.Error(), "\x00\n") {
		t.Errorf("%q", err)
	}
}

// Where no limit was given, that is read out; where nothing is out of balance there is nothing to limit.
func TestLinesWithoutLimit(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60)))
	o := lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("lamps"), add(6), add(1)}}
	c, err := r.CheckOrder(o, lineset.OrderLimits{ArborHeavy: lineset.ForceLimit{Max: 20 * units.PoundForce, Basis: "given in the test"}})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"begin at 4' 0\" balanced", "deck: hang lamps, then 60 lbf batten-heavy: rests on the stop; no limit given",
		"bridge: add 6 of the 10, then balanced", "bridge: add 1 of the 10, then 10 lbf arbor-heavy: would run out",
	}
	if diff := cmp.Diff(want, c.Lines(units.US)); diff != "" {
		t.Error(diff)
	}
}

// A flat that still stands when all is done is told of: how much it is, and that it comes onto the lines further out.
func TestWhatStillRestsOnTheDeck(t *testing.T) {
	flat := pounds("flat", 50)
	flat.Height, flat.OnDeck = 14*units.Foot, load.Stands
	s := plain(t, purchase.Single, pounds("lamps", 60), flat)
	s.Rigging.MadeOff = 4 * units.Foot
	r := rigTens(t, s)
	limits := within(50, 60)
	plan, err := r.Order(lineset.Loading, limits)
	if err != nil {
		t.Fatal(err)
	}
	lines := plan.Check.Lines(units.US)
	if got := plan.Check.OnDeck; !near.Abs(got.In(units.Pound), 50, 1e-9) || !strings.HasPrefix(lines[len(lines)-1], "50 lb still rests on the deck") {
		t.Errorf("%v; %q", got, lines)
	}
	// With the work trims it is loaded when it hangs clear, an inch above, and its stripping begins there.
	at := r.WorkTrims(0, 0)
	for _, job := range []lineset.Job{lineset.Loading, lineset.Stripping} {
		plan, err := r.Order(job, limits, at...)
		if err != nil {
			t.Fatal(err)
		}
		first, last := plan.Check.States[0], plan.Check.States[len(plan.Check.States)-1]
		clear := last
		if job == lineset.Stripping {
			clear = first
		}
		if clear.Trim != 14*units.Foot+units.Inch || plan.Check.OnDeck != 0 || plan.Check.Flights != 1 {
			t.Errorf("%v: %+v", job, plan.Check)
		}
	}
}

// What is printed of the smallest limit is enough.
func TestPropPrintedLimitIsEnough(t *testing.T) {
	number := regexp.MustCompile(`a limit of ([0-9.]+ lbf) \(([0-9.]+ N)\) both ways`)
	rapid.Check(t, func(rt *rapid.T) {
		s := plain(t, purchase.Single, pounds("a", rapid.Float64Range(1, 99).Draw(rt, "a")), pounds("b", rapid.Float64Range(1, 99).Draw(rt, "b")))
		r := rigTens(t, s)
		_, err := r.Order(lineset.Loading, within(0, 0))
		var none *lineset.NoOrderError
		if !errors.As(err, &none) {
			rt.Skip("balanced throughout")
		}
		printed := number.FindStringSubmatch(err.Error())
		if printed == nil {
			rt.Fatal(err)
		}
		for _, text := range printed[1:] {
			limit, err := units.Parse[units.Force](text)
			if err != nil {
				rt.Fatal(err)
			}
			if _, err := r.Order(lineset.Loading, within(limit.In(units.PoundForce), limit.In(units.PoundForce))); err != nil {
				rt.Fatalf("with what was printed: %v", err)
			}
			if limit < none.Either.Scale(1-1e-12) || limit > none.Either+0.1*units.PoundForce {
				rt.Fatalf("%v is printed for %v", limit, none.Either)
			}
		}
	})
}

// 7 ft is not quite 2 in and 82 in in float64, and 3 ft not quite the lowest trim: what is meant to be one trim is one.
func TestTrimsThatAreMeantToBeOne(t *testing.T) {
	length := func(text string) units.Length {
		l, err := units.Parse[units.Length](text)
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	for _, row := range []struct{ below, height, halt string }{
		{"2 in", "82 in", "7 ft"}, {"3 in", "129 in", "11 ft"}, {"1 in", "95 in", "8 ft"}, {"12 in", "132 in", "12 ft"},
	} {
		flat := pounds("flat", 300)
		flat.Below, flat.Height, flat.OnDeck = length(row.below), length(row.height), load.Stands
		r := rigTens(t, plain(t, purchase.Single, flat))
		limits := within(60, 60)
		limits.RestsOnStop = true
		c, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Trim: length(row.halt), Steps: []lineset.OrderStep{hang("flat")}}, limits)
		if err != nil {
			t.Fatal(err)
		}
		if s := c.States[1]; !s.Exceeds() || s.Imbalance != 0 || tidy(s.Balance.Demand.(units.Force)) != 300 {
			t.Errorf("%+v: standing it is %v, the worse is %v", row, s.Imbalance, s.Balance)
		}
	}
	for inches := range 48 {
		s := plain(t, purchase.Single, pounds("lamps", 60))
		s.Rigging.MadeOff = 3*units.Foot + units.Inch.Scale(float64(inches))
		flat := pounds("flat", 40)
		flat.Height, flat.OnDeck = s.Rigging.MadeOff, load.Stands
		standing := s
		standing.Hang = load.Hang{flat}
		if at := rigTens(t, standing).WorkTrims(0, 0); len(at) != 2 || !at[1].Trim.Within(s.Rigging.MadeOff+units.Inch, units.Millimetre) {
			t.Errorf("a flat of %v, made off there: halts at %v", flat.Height, at)
		}
		r := rigTens(t, s)
		limits := within(10, 10)
		limits.RestsOnStop = true
		c, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Trim: s.Rigging.MadeOff, Steps: []lineset.OrderStep{hang("lamps")}}, limits)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.States[1]; got.Hazard != lineset.RestsOnStop || got.Exceeds() {
			t.Errorf("made off at %v: %v", s.Rigging.MadeOff, got.Hazard)
		}
	}
}

// What exceeds is named: what rests on the stop at the end and would not be within the limit off it, the worst of a flight that ends
// within, an arbor over its capacity.
func TestWhatExceedsIsNamed(t *testing.T) {
	lines := func(s lineset.Set, o lineset.Order, limits lineset.OrderLimits) []string {
		c, err := rigTens(t, s).CheckOrder(o, limits)
		if err != nil {
			t.Fatal(err)
		}
		return c.Lines(units.US)
	}
	resting := within(50, 50)
	resting.RestsOnStop = true
	got := lines(plain(t, purchase.Single, pounds("lamps", 60)), lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("lamps")}}, resting)
	if want := "as it leaves the stop it is 60 lbf batten-heavy: would run in; exceeds the limit given"; got[len(got)-1] != want {
		t.Errorf("%q", got)
	}
	flat := pounds("flat", 50)
	flat.Height, flat.OnDeck = 16*units.Foot, load.Stands
	s := plain(t, purchase.Single, flat)
	s.Rigging.MadeOff = 4 * units.Foot
	got = lines(s, lineset.Order{From: lineset.FromLoaded, Steps: []lineset.OrderStep{unlock, fly(20)}}, within(40, 40))
	if want := "then balanced; on the way, at 4' 0\", 50 lbf arbor-heavy: would run out; exceeds the limit given"; !strings.HasSuffix(got[2], want) {
		t.Errorf("%q", got)
	}
	s = plain(t, purchase.Single, pounds("lamps", 60))
	s.Rigging.Arbor.Capacity = 30 * units.Pound
	got = lines(s, lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("lamps"), add(4)}}, within(100, 100))
	if want := "40 lb of counterweight exceeds the capacity of the arbor, 30 lb"; !strings.Contains(got[2], want) || strings.Contains(got[2], "limit given") {
		t.Errorf("%q", got)
	}
}

// A batten that is halted sways: what leaves the deck a quarter of an inch beside counts as at the halt, an inch away it does not.
func TestHaltsBesideWhereAPieceLeavesTheDeck(t *testing.T) {
	flat := pounds("flat", 300)
	flat.Height, flat.OnDeck = 14*units.Foot, load.Stands
	s := plain(t, purchase.Single, flat)
	s.Rigging.MadeOff = 4 * units.Foot
	r := rigTens(t, s)
	for _, row := range []struct {
		off  units.Length
		says string // as it begins with the flat hung and 15 pieces of 10 in
	}{
		{-1 * units.Inch, "150 lbf arbor-heavy: would run out"},
		{-units.Inch / 4, "150 lbf arbor-heavy: would run out; if it sways to 14' 0\", 150 lbf batten-heavy: would run in; exceeds the limit given"},
		{0, "150 lbf arbor-heavy: would run out; a hair higher 150 lbf batten-heavy: would run in; exceeds the limit given"},
		{units.Inch / 4, "150 lbf batten-heavy: would run in; exceeds the limit given"},
		{1 * units.Inch, "150 lbf batten-heavy: would run in; exceeds the limit given"},
	} {
		o := lineset.Order{From: lineset.FromBare, Trim: 14*units.Foot + row.off, Hung: []int{1}, Pieces: []lineset.PiecesOf{{Piece: "10", Count: 15}}}
		c, err := r.CheckOrder(o, within(160, 140))
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Lines(units.US)[0]; !strings.HasSuffix(got, " "+row.says) {
			t.Errorf("%v off: %q", row.off, got)
		}
		// With the whole stack in, a flat that may still stand is 300 arbor-heavy: within half an inch of it no order ends there.
		limits := within(200, 200)
		limits.RestsOnStop = true
		_, err = r.Order(lineset.Loading, limits,
			lineset.WorkTrim{Trim: 4 * units.Foot, Deck: true, Bridge: true}, lineset.WorkTrim{Trim: o.Trim, Bridge: true, End: true})
		if can := row.off > units.Inch/2; can != (err == nil) {
			t.Errorf("%v off: an order: %v", row.off, err)
		}
	}
}
