package lineset_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.com/steelyard/internal/near"
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
	_, felt := none.Felt(1)
	_, letGo := none.LetGo(1)
	_, fly := none.Fly(1, 2, 1, 1, 1)
	if felt == nil || letGo == nil || fly == nil {
		t.Error("a set that Rig did not make moves")
	}
}
