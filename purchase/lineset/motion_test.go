package lineset_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// The demonstration house's sets stay within their band, or run to the stop that their worst side says; and what is felt is
// less than what moves wherever the arbor goes slower than the batten.
func TestMotionOfTheHouse(t *testing.T) {
	var described lineset.House
	if err := json.Unmarshal(houseText(t), &described); err != nil {
		t.Fatal(err)
	}
	house, err := described.Rig()
	if err != nil {
		t.Fatal(err)
	}
	for set := range house.Sets() {
		for _, trim := range []units.Length{set.Low().Trim, set.High().Trim} {
			hand, err := set.Hand(trim)
			if err != nil {
				t.Fatal(err)
			}
			run, err := set.LetGo(trim)
			if err != nil {
				t.Fatal(err)
			}
			for way, pull := range map[purchase.Way]lineset.HandPull{purchase.Out: hand.Out, purchase.In: hand.In} {
				if pull.Loose {
					continue
				}
				running, err := set.Run(trim, way)
				if err != nil || running.Pull != pull.Pull || running.Rope != pull.Rope || running.Way != way {
					t.Errorf("%s at %v, %v: runs with %v on the %v (%v), and the hand pulls %v on the %v",
						set.Set().Name, trim, way, running.Pull, running.Rope, err, pull.Pull, pull.Rope)
				}
			}
			want := purchase.Way(0)
			switch i := hand.Balance.Imbalance; {
			case hand.Loose:
				continue
			case i > hand.Stays.BattenHeavy:
				want = purchase.In
			case i < hand.Stays.ArborHeavy:
				want = purchase.Out
			}
			if run.Way != want {
				t.Errorf("%s at %v: runs %v, want %v", set.Set().Name, trim, run.Way, want)
			}
			stop := map[purchase.Way]units.Length{purchase.In: set.Travel().Lowest, purchase.Out: set.Travel().Highest}
			if run.AtStop && run.Ends != stop[run.Way] {
				t.Errorf("%s at %v: ends at %v, want %v", set.Set().Name, trim, run.Ends, stop[run.Way])
			}
			jolt, err := set.Jolt(run)
			if lines := set.Set().Rigging.Batten.Lines; lines[0].EA == 0 {
				var fe *units.FieldError
				if !errors.As(err, &fe) || fe.Field != "batten.lines[0].ea" {
					t.Errorf("%s: lines that do not give: %v, %v", set.Set().Name, jolt, err)
				}
			} else if err != nil || jolt < 1 {
				t.Errorf("%s: a jolt of %v (%v)", set.Set().Name, jolt, err)
			}
			felt, err := set.Felt(trim)
			if err != nil {
				t.Fatal(err)
			}
			if set.Set().Rigging.Purchase == purchase.Double && felt.Batten >= felt.Moving {
				t.Errorf("%s at %v: %v felt of %v", set.Set().Name, trim, felt.Batten, felt.Moving)
			}
			if arbor := felt.Rows[1]; !near.Rel(arbor.Mass.In(units.Kilogram), set.Counterweight().Arbor.In(units.Kilogram), 1e-15) {
				t.Errorf("%s: %v in the arbor, want %v", set.Set().Name, arbor.Mass, set.Counterweight().Arbor)
			}
		}
		travel := set.Travel()
		flown, err := set.Fly(travel.Lowest, travel.Highest, 1, 2*units.Second, 1)
		if err != nil || flown.Way != purchase.Out || flown.Most.Pull <= 0 {
			t.Errorf("%s: %+v %v", set.Set().Name, flown, err)
		}
		if _, err := set.Fly(travel.Lowest, travel.Highest+1, 1, 2*units.Second, 1); !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("%s: flown out of reach: %v", set.Set().Name, err)
		}
		if _, err := set.LetGo(travel.Lowest - 1); !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("%s: let go out of reach: %v", set.Set().Name, err)
		}
	}
	var none lineset.Rigged
	if _, err := none.LetGoAfter(lineset.Order{From: lineset.FromBare}); err == nil {
		t.Error("a set that Rig did not make runs away")
	}
	_, felt := none.Felt(1)
	_, letGo := none.LetGo(1)
	_, fly := none.Fly(1, 2, 1, 1, 1)
	if felt == nil || letGo == nil || fly == nil {
		t.Error("a set that Rig did not make moves")
	}
}

// Let go where an order has led: with all hung and all in it is the set itself; without drag it runs the way that the order's
// check names, from the trim that the order ends at, with what is carried and stacked then.
func TestLetGoAfterAnOrder(t *testing.T) {
	for _, described := range house().Sets {
		if described.Like != "" {
			described.Rigging, described.Like = house().Riggings[described.Like], ""
		}
		described.Rigging.Drag = 0
		set, err := described.Rig(stock)
		if err != nil {
			t.Fatal(err)
		}
		trim := set.High().Trim
		whole := lineset.Order{From: lineset.FromBare, Trim: trim}
		for i := range described.Hang {
			whole.Hung = append(whole.Hung, i+1)
		}
		for _, row := range set.Counterweight().Stack.Show {
			whole.Pieces = append(whole.Pieces, lineset.PiecesOf{Piece: row.Name, Count: row.Count})
		}
		want, err := set.LetGo(trim)
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range []lineset.Order{whole, {From: lineset.FromLoaded, Trim: trim}} {
			if got, err := set.LetGoAfter(o); err != nil || got != want {
				t.Errorf("%s, %v: %+v, %v; let go as it is %+v", described.Name, o.From, got, err, want)
			}
		}
		for i := range described.Hang {
			strip := lineset.Order{From: lineset.FromLoaded, Trim: trim, Steps: []lineset.OrderStep{{Act: lineset.StripItem, Place: i + 1}}}
			check, err := set.CheckOrder(strip, lineset.OrderLimits{})
			if err != nil {
				t.Fatal(err)
			}
			run, err := set.LetGoAfter(strip)
			if err != nil {
				t.Fatal(err)
			}
			state := check.States[1]
			way := map[lineset.Hazard]purchase.Way{lineset.RunsOut: purchase.Out, lineset.RunsIn: purchase.In}[state.Hazard]
			if run.Way != way || run.From != trim {
				t.Errorf("%s without item %d: %v from %v, and the hazard is %v", described.Name, i+1, run.Way, run.From, state.Hazard)
			}
		}
	}
	set, err := electric().Rig(stock)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := set.LetGoAfter(lineset.Order{}); !errors.Is(err, units.ErrMissing) {
		t.Errorf("an order from nowhere: %v", err)
	}
}

// Where an order has led the batten to tip, nobody can tell what becomes of it.
func TestLetGoTipping(t *testing.T) {
	r := rigTens(t, short(t, point("left", 120, 1), point("right", 120, 41)))
	for _, c := range []struct {
		steps []lineset.OrderStep
		tips  bool
	}{
		{nil, false},
		{[]lineset.OrderStep{strip("right")}, true},
		{[]lineset.OrderStep{strip("right"), strip("left")}, false},
	} {
		_, err := r.LetGoAfter(lineset.Order{From: lineset.FromLoaded, Steps: c.steps})
		if tip := (*load.TipError)(nil); errors.As(err, &tip) != c.tips || !c.tips && err != nil {
			t.Errorf("%v: %v", c.steps, err)
		}
	}
}
