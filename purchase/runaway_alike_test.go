package purchase_test

import (
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// A set of a thousandth of every mass, or of a thousand times, runs away just the same, for all forces go with the masses: only its
// energy and what would hold it are so many times as large. So it is where the ropes are nearly all that moves, so that the mass that
// is felt grows by more than half, and where it slows down on the way.
func TestRunawayIsTheSameForAllMassesAlike(t *testing.T) {
	ropes := oneLine(purchase.Double)
	ropes.Kind, ropes.Hand, ropes.LiftMass, ropes.DeadEnd, ropes.Loft[0].Across = purchase.Triple, purchase.Single, 10, 65*units.Foot, 1
	rests := oneLine(purchase.Double)
	rests.HandMass, rests.Drag = 4, 0.04
	for _, c := range []struct {
		name   string
		set    purchase.Layout
		let    purchase.LetGo
		atStop bool
	}{
		{"ropes alone", ropes, purchase.LetGo{Trim: 13.55, Low: 2.4, High: 15, On: massed(0.34, 0, 20)}, true},
		{"comes to rest", rests, purchase.LetGo{Trim: 11, Low: 1.5, High: 16, On: massed(73.3, 112.1, 59)}, false},
		{"slows down", rests, purchase.LetGo{Trim: 11, Low: 5, High: 16, On: massed(73.3, 112.1, 59)}, true},
	} {
		want, err := mustRig(t, c.set).LetGo(c.let)
		if err != nil || want.AtStop != c.atStop {
			t.Fatalf("%s: %+v, %v", c.name, want, err)
		}
		for _, times := range []float64{1e-6, 1e-3, 1e3} {
			set, let := c.set, c.let
			set.LiftMass, set.HandMass = set.LiftMass.Scale(times), set.HandMass.Scale(times)
			let.On = purchase.Bodies{Pulls: evenly(1, let.On.Pulls[0].Scale(times)), Arbor: let.On.Arbor.Scale(times), Idler: let.On.Idler.Scale(times)}
			got, err := mustRig(t, set).LetGo(let)
			if err != nil || got.Way != want.Way || got.AtStop != want.AtStop || got.Held.Rope != want.Held.Rope || got.Error > 1e-11 {
				t.Fatalf("%s, %v times the mass: %+v, %v; want %+v", c.name, times, got, err, want)
			}
			for what, is := range map[string][2]float64{
				"ends": {got.Ends.In(units.Metre), want.Ends.In(units.Metre)}, "gain": {float64(got.Gain), float64(want.Gain)},
				"time": {got.Time.In(units.Second), want.Time.In(units.Second)}, "speed": {float64(got.Speed), float64(want.Speed)},
				"most": {float64(got.Most), float64(want.Most)}, "drop": {got.Drop.In(units.Metre), want.Drop.In(units.Metre)},
				"energy": {got.Energy.In(units.Joule) / times, want.Energy.In(units.Joule)}, "held": {got.Held.Pull.In(units.Newton) / times, want.Held.Pull.In(units.Newton)},
			} {
				if !near.Rel(is[0], is[1], 1e-9) {
					t.Errorf("%s, %v times the mass, %s: %v, want %v", c.name, times, what, is[0], is[1])
				}
			}
		}
	}
}
