package lineset_test

import (
	"errors"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// overBridge is a set of 200 lb on 20 pieces of an inch, over a bridge from which arms
// reach a foot: with the batten at 4 ft the arbor's foot is at 45 ft, level with the bridge, and 12 pieces are in
// reach; a foot further out the next 12 are.
func overBridge(t testing.TB) *lineset.Rigged {
	t.Helper()
	s := plain(t, purchase.Single, pounds("lamps", 200))
	s.Rigging.Run.Bridges = []arbor.Bridge{{Name: "loading bridge", Floor: 45 * units.Foot, High: 1 * units.Foot}}
	return rigTens(t, s)
}

// What arms do not reach cannot be put in: the set is loaded in two stages, though the limits ask for none.
func TestPlanWithinReach(t *testing.T) {
	r := overBridge(t)
	at := r.WorkTrims(4*units.Foot, 0)
	if len(at) != 2 || at[0] != (lineset.WorkTrim{Trim: 4 * units.Foot, Deck: true, Bridge: true}) ||
		at[1].Deck || !at[1].Bridge || !near.Abs(at[1].Trim.In(units.Foot), 5, 0.004) || at[1].Trim > 5*units.Foot {
		t.Fatalf("%+v", at)
	}
	at[1].Trim = 5 * units.Foot // to the millimetre, which is inclusive
	p := mustPlan(t, r, lineset.Loading, within(0, 200), at...)
	want := "hang lamps, add 12 of the 10, open the rope lock, fly to 5' 0\", shut the rope lock, add 8 of the 10"
	if got := calls(p.Order); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	back := mustPlan(t, r, lineset.Stripping, within(0, 200), at...)
	want = "take out 8 of the 10, open the rope lock, fly to 4' 0\", shut the rope lock, take out 12 of the 10, strip lamps"
	if got := calls(back.Order); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	var fe *units.FieldError
	if _, err := r.Order(lineset.Loading, within(0, 200)); !errors.Is(err, lineset.ErrOutOfReach) || !errors.As(err, &fe) || fe.Field != "trims" {
		t.Errorf("at the lowest trim alone: %v", err)
	}
	at[1].Deck, at[1].Bridge = true, false
	if _, err := r.Order(lineset.Loading, within(0, 200), at...); !errors.Is(err, lineset.ErrOutOfReach) || !errors.As(err, &fe) || fe.Value != "piece 13 from the bottom" {
		t.Errorf("with nobody on the bridge where the rest is in reach: %v", err)
	}
}

// Pipe weight is in reach below the show weight: with 4 pieces of it, 8 of the show weight are.
func TestPlanWithinReachOverPipeWeight(t *testing.T) {
	s := overBridge(t).Set()
	s.Rigging.Arbor.Tare -= 40 * units.Pound
	r := rigTens(t, s)
	at := []lineset.WorkTrim{{Trim: 4 * units.Foot, Deck: true, Bridge: true}, {Trim: 5 * units.Foot, Bridge: true}}
	want := "hang lamps, add 8 of the 10, open the rope lock, fly to 5' 0\", shut the rope lock, add 12 of the 10"
	if got := calls(mustPlan(t, r, lineset.Loading, within(0, 200), at...).Order); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}

// A plate between pipe and show weight, an inch thick, takes the room of a piece: over 4 pieces of the one 7 of the other are in reach.
func TestWithinReachOverAPlate(t *testing.T) {
	s := overBridge(t).Set()
	s.Rigging.Arbor.Tare -= 40 * units.Pound
	s.Rigging.Arbor.Plate = arbor.Plate{Mass: 1 * units.Pound, Thickness: 1 * units.Inch, Every: 100 * units.Inch}
	r, err := s.Rig(append(arbor.Stock{{Name: "5", Mass: 5 * units.Pound, Thickness: 1 * units.Inch, Count: 20}}, tens...))
	if err != nil {
		t.Fatal(err)
	}
	for n := 1; n <= 9; n++ {
		for _, piece := range []string{"10", "5"} { // as the pipe weight is, and other ones; both, from the fifth on
			steps := []lineset.OrderStep{of(lineset.AddPieces, piece, n)}
			if piece == "5" && n > 4 {
				steps = []lineset.OrderStep{of(lineset.AddPieces, piece, 4), of(lineset.AddPieces, "10", n-4)}
			}
			_, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: steps}, within(1000, 1000))
			if ok := !errors.Is(err, lineset.ErrOutOfReach); ok != (n <= 7) || ok && err != nil {
				t.Errorf("%d of the %s: %v", n, piece, err)
			}
		}
	}
}

func TestCheckOrderWithinReach(t *testing.T) {
	r := overBridge(t)
	for _, c := range []struct {
		name  string
		from  lineset.From
		steps []lineset.OrderStep
		ok    bool
	}{
		{"just in reach", lineset.FromBare, []lineset.OrderStep{add(12)}, true},
		{"the last one too high", lineset.FromBare, []lineset.OrderStep{add(13)}, false},
		{"flown in between", lineset.FromBare, []lineset.OrderStep{add(12), unlock, fly(5), lock, add(1)}, true},
		{"flown too early", lineset.FromBare, []lineset.OrderStep{unlock, fly(5), lock, add(1)}, false},
		{"taken from where it is too high", lineset.FromLoaded, []lineset.OrderStep{take(1)}, false},
		{"taken from where it is in reach", lineset.FromLoaded, []lineset.OrderStep{unlock, fly(5), lock, take(8)}, true},
		{"taken down to where it is too low", lineset.FromLoaded, []lineset.OrderStep{unlock, fly(5), lock, take(9)}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := r.CheckOrder(lineset.Order{From: c.from, Steps: c.steps}, within(1000, 1000))
			if ok := !errors.Is(err, lineset.ErrOutOfReach); ok != c.ok || ok && err != nil {
				t.Errorf("%v", err)
			}
		})
	}
}
