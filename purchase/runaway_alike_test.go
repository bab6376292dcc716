package purchase_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

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

// On heavy ropes of a high house, with many parts at the arbor and next to nothing on them, the mass that is felt grows or shrinks a good deal
// on the way. Without drag the speed at each place is still that of the energy that the imbalance gives, a straight line's area, and the time
// is the sum of the way over it.
func TestPropRunawayInAHighHouse(t *testing.T) {
	grown, shrunk := 0.0, math.Inf(1)
	rapid.Check(t, func(t *rapid.T) {
		mass := units.LineMass(rapid.SampledFrom([]float64{1e-3, 1, 20}).Draw(t, "lines"))
		path := []purchase.Stop{stop("batten", purchase.Batten, 1, 0), stop("loft", purchase.Grid, 1, 100), stop("head", purchase.HeadBeam, 0, 100), stop("top", purchase.Arbor, 0, 0)}
		for range rapid.SampledFrom([]int{0, 1, 4, 9}).Draw(t, "turns back to the arbor") {
			path = append(path, stop("beam", purchase.HeadBeam, 0, 101), stop("top", purchase.Arbor, 0, 0))
		}
		reeving := reeved(path...)
		reeving.Lift[0].Mass, reeving.ArborTop = mass, 99
		r, err := reeving.Rig()
		if err != nil {
			t.Fatal(err)
		}
		lowest, highest := r.Reach()
		low, high := lowest+0.01, highest-0.01
		from := low + (high - low).Scale(rapid.SampledFrom([]float64{0, 0.2, 0.5, 0.999, 1}).Draw(t, "from"))
		carried := mass.Over(units.Length(rapid.Float64Range(0.1, 60).Draw(t, "metres of line on the batten")))
		balanced, err := r.Counterweight(from, carried)
		if err != nil {
			t.Fatal(err)
		}
		on := massed(float64(carried), max(0, float64(balanced))*rapid.SampledFrom([]float64{0, 0.5, 0.9, 1.1, 3}).Draw(t, "arbor over balance"), 20)
		got, err := r.LetGo(purchase.LetGo{Trim: from, Low: low, High: high, On: on})
		if err != nil {
			t.Fatal(err)
		}
		if got.Way == 0 || got.Ends == from || got.Gain < 0.05 {
			return
		}
		at := func(trim units.Length) (imbalance, felt float64) {
			i, err := r.Imbalance(trim, carried, on.Arbor)
			f, also := r.Felt(trim, carried, on.Arbor)
			if err != nil || also != nil {
				t.Fatal(err, also)
			}
			return i.In(units.Newton), f.Batten.In(units.Kilogram)
		}
		first, before := at(from)
		way := (got.Ends - from).In(units.Metre)
		square := func(z float64) float64 { // of the speed
			i, felt := at(from + units.Length(z))
			return -(first + i) * z / felt
		}
		_, after := at(got.Ends)
		grown, shrunk = max(grown, after/before), min(shrunk, after/before)
		if v := math.Sqrt(square(way)); !got.AtStop || !near.Abs(float64(got.Speed)/v, 1, 1e-11) || got.Most != got.Speed {
			t.Fatalf("%+v; want %v m/s at the stop", got, v)
		}
		const steps = 2000 // Simpson's, finer towards the beginning: z = way·s²
		sum := 0.0
		for i := 1; i <= steps; i++ {
			s := float64(i) / steps
			w := 4.0
			switch {
			case i == steps:
				w = 1
			case i%2 == 0:
				w = 2
			}
			sum += w * 2 * math.Abs(way) * s / math.Sqrt(square(way*s*s))
		}
		sum += math.Sqrt(2 * math.Abs(way) / float64(got.Gain))
		if want := sum / 3 / steps; !near.Abs(got.Time.In(units.Second)/want, 1, 1e-8) || got.Error > 1e-10 {
			t.Fatalf("%v, want %v s; %+v", got.Time, want, got)
		}
	})
	if grown < 1.8 || shrunk > 0.55 {
		t.Errorf("the mass felt grew to %v times and shrank to %v: want about twice and half", grown, shrunk)
	}
}
