package lineset_test

import (
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func fives(n int) lineset.OrderStep {
	return lineset.OrderStep{Act: lineset.AddPieces, Piece: "5", Count: n}
}

// What is left to do when an order ends is counted item by item and, of the pieces, kind by kind beyond the pipe weight, which is
// neither missing nor to be taken out. The arbor is 25 lb too light for the bare batten, so that the pipe weight is 2 of the 10 and 1 of
// the 5; the show weight for 105 lb is 10 of the 10 and 1 of the 5.
func TestWhatIsLeftAtTheEnd(t *testing.T) {
	cloth := pounds("cloth", 45)
	cloth.Height, cloth.OnDeck = 12*units.Foot, load.Piles // 15 lb of it are carried at 4 ft, 30 rest on the deck
	s := plain(t, purchase.Single, pounds("lamps", 60), cloth)
	s.Rigging.Arbor.Tare -= 25 * units.Pound
	r, err := s.Rig(arbor.Stock{
		{Name: "10", Mass: 10 * units.Pound, Thickness: 1 * units.Inch, Count: 20},
		{Name: "5", Mass: 5 * units.Pound, Thickness: 0.5 * units.Inch, Count: 20},
	})
	if err != nil {
		t.Fatal(err)
	}
	limits := within(200, 10)
	limits.RestsOnStop = true
	type left struct {
		toHang, toStrip, toAdd, toTake int
		onDeck, offStop                float64 // lb, lbf
	}
	for _, c := range []struct {
		name  string
		from  lineset.From
		trim  units.Length
		steps []lineset.OrderStep
		want  left
	}{
		{"nothing done", lineset.FromBare, 0, nil, left{2, 0, 11, 0, 0, 0}},
		{"all there", lineset.FromLoaded, 0, nil, left{0, 2, 0, 11, 30, 0}}, // 75 lb carried against 105
		{"all there, further out", lineset.FromLoaded, 8 * units.Foot, nil, left{0, 2, 0, 11, 15, 0}},
		{"all there, clear of the deck", lineset.FromLoaded, 12 * units.Foot, nil, left{0, 2, 0, 11, 0, 0}},
		{"lamps alone", lineset.FromBare, 0, []lineset.OrderStep{hang("lamps")}, left{1, 1, 11, 0, 0, 60}},
		{"lamps off the stop", lineset.FromBare, 5 * units.Foot, []lineset.OrderStep{hang("lamps")}, left{1, 1, 11, 0, 0, 0}},
		{"cloth alone", lineset.FromBare, 0, []lineset.OrderStep{hang("cloth")}, left{1, 1, 11, 0, 30, 15}},
		{"too many of the one kind", lineset.FromBare, 0, []lineset.OrderStep{fives(3)}, left{2, 0, 10, 3, 0, 0}},
		{"too many of the other", lineset.FromBare, 0, []lineset.OrderStep{add(12)}, left{2, 0, 1, 12, 0, 0}},
		{"some stripped and taken", lineset.FromLoaded, 0, []lineset.OrderStep{strip("cloth"), {Act: lineset.TakePieces, Piece: "5", Count: 1}, take(4)}, left{1, 1, 5, 6, 0, 0}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := r.CheckOrder(lineset.Order{From: c.from, Trim: c.trim, Steps: c.steps}, limits)
			if err != nil {
				t.Fatal(err)
			}
			rests := left{got.ToHang, got.ToStrip, got.ToAdd, got.ToTake, whole(got.OnDeck, units.Pound), 0}
			if off := tell(got.OffStop); got.OffStop != (lineset.Check{}) {
				rests.offStop = off.Demand
				want := told{"batten-heavy", "batten-heavy: would run in", 4, off.Demand, 10, 0, lineset.Exceeds, "given in the test"}
				if off != want {
					t.Errorf("off the stop %+v, want %+v", off, want)
				}
			}
			if rests != c.want {
				t.Errorf("%+v, want %+v", rests, c.want)
			}
		})
	}
}

// The worst state is the first of those that exceed the most; where none does, the first of those that come nearest to a limit. What
// has no limit is never the worst where anything has, a full arbor is as it should be, and nothing is worse than a batten that tips.
func TestTheWorstState(t *testing.T) {
	clear := plain(t, purchase.Single, pounds("lamps", 60), pounds("cloth", 20))
	narrow, light := clear, clear
	narrow.Rigging.Arbor.Room = 8 * units.Inch
	narrow.Rigging.Arbor.Plate = arbor.Plate{Mass: 1 * units.Pound, Thickness: 0.5 * units.Inch, Every: 24 * units.Inch}
	light.Rigging.Arbor.Capacity = 70 * units.Pound
	tipsy := short(t, point("left", 120, 1), point("right", 120, 41))
	onlyArbor, none := lineset.OrderLimits{ArborHeavy: within(40, 0).ArborHeavy}, lineset.OrderLimits{}
	for _, c := range []struct {
		name    string
		set     lineset.Set
		limits  lineset.OrderLimits
		steps   []lineset.OrderStep
		worst   int
		exceeds bool
	}{
		{"nothing out of balance", clear, within(40, 80), []lineset.OrderStep{unlock, lock}, 0, false},
		{"nearest to its limit", clear, within(40, 120), []lineset.OrderStep{hang("lamps"), add(6), add(3), strip("lamps")}, 4, true},
		{"nearest to its own limit, not the furthest off", clear, within(40, 120), []lineset.OrderStep{hang("lamps"), add(9)}, 2, false}, // 60 of 120, 30 of 40
		{"both as near", clear, within(40, 80), []lineset.OrderStep{hang("lamps"), add(9)}, 1, false},
		{"both as near, the other first", clear, within(40, 80), []lineset.OrderStep{add(3), hang("lamps"), take(3)}, 1, false}, // 30 of 40, then 60 of 80
		{"the first of those alike", clear, within(40, 80), []lineset.OrderStep{hang("lamps"), unlock, lock}, 1, false},
		{"the one that exceeds the most", clear, within(10, 50), []lineset.OrderStep{hang("lamps"), hang("cloth"), add(6), add(4), take(1)}, 4, true}, // 60 and 80 of 50, 20 of 10
		{"what has no limit", clear, onlyArbor, []lineset.OrderStep{hang("lamps"), add(6), add(1)}, 3, false},
		{"no limit at all", clear, none, []lineset.OrderStep{hang("lamps"), add(6), add(1)}, 0, false},
		{"nothing at all is allowed", clear, within(0, 0), []lineset.OrderStep{hang("lamps")}, 1, true},
		{"a full arbor", light, within(400, 400), []lineset.OrderStep{add(7), take(6), hang("lamps")}, 1, false}, // 70 of 70, and 70 of 400
		{"an arbor over its capacity", light, within(400, 400), []lineset.OrderStep{hang("lamps"), add(8), add(1)}, 3, true},
		{"a stack over its room", narrow, within(400, 400), []lineset.OrderStep{hang("lamps"), add(7), add(1)}, 3, true}, // half an inch of plate is under them
		{"over the room by less than the limit by more", narrow, within(400, 10), []lineset.OrderStep{hang("lamps"), add(8)}, 1, true},
		{"a batten that tips, whatever else", tipsy, within(1, 1), []lineset.OrderStep{add(60), hang("left"), hang("right"), strip("left")}, 2, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := rigTens(t, c.set).CheckOrder(lineset.Order{From: lineset.FromBare, Steps: c.steps}, c.limits)
			if err != nil {
				t.Fatal(err)
			}
			if got.Worst != c.worst || got.Exceeds != c.exceeds {
				t.Errorf("worst is state %d, exceeds %v; want %d, %v", got.Worst, got.Exceeds, c.worst, c.exceeds)
			}
			exceeds := false
			for _, s := range got.States {
				exceeds = exceeds || s.Exceeds()
			}
			if exceeds != c.exceeds {
				t.Errorf("some state exceeds: %v", exceeds)
			}
		})
	}
}

// A change of side between two steps is a hand-over: the first step costs none, and the rail is no side.
func TestHandOversAndFlights(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60), pounds("cloth", 20)))
	free := lineset.OrderStep{Act: lineset.FreeLine}
	held := lineset.OrderStep{Act: lineset.SetLine, On: purchase.Batten}
	for _, c := range []struct {
		name           string
		steps          []lineset.OrderStep
		hands, flights int
	}{
		{"nothing", nil, 0, 0},
		{"deck alone", []lineset.OrderStep{hang("lamps"), hang("cloth"), strip("lamps")}, 0, 0},
		{"bridge alone", []lineset.OrderStep{add(3), take(1), add(1)}, 0, 0},
		{"there and back", []lineset.OrderStep{hang("lamps"), add(6), strip("lamps"), take(6)}, 3, 0},
		{"the rail in between", []lineset.OrderStep{unlock, lock, hang("lamps"), held, hang("cloth"), free, unlock, fly(8), lock, add(6), unlock, fly(4)}, 1, 2},
		{"one flight after the other", []lineset.OrderStep{unlock, fly(8), fly(9), fly(4)}, 0, 3},
	} {
		got, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: c.steps}, within(100, 100))
		if err != nil || got.HandOvers != c.hands || got.Flights != c.flights {
			t.Errorf("%s: %d hand-overs, %d flights, %v; want %d, %d", c.name, got.HandOvers, got.Flights, err, c.hands, c.flights)
		}
	}
}
