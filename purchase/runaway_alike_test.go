package purchase_test

import (
	"math"
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

// On heavy ropes of a high house, with many parts at the arbor and next to nothing on them, the mass that is felt grows or shrinks a good deal
// on the way. Without drag the speed at each place is still that of the energy that the imbalance gives, a straight line's area, and the time
// is the sum of the way over it.
func TestRunawayInAHighHouse(t *testing.T) {
	grown, shrunk := 0.0, math.Inf(1)
	for _, turns := range []int{0, 1, 4, 9} {
		for _, mass := range []units.LineMass{1e-3, 1, 20} {
			path := []purchase.Stop{stop("batten", purchase.Batten, 1, 0), stop("loft", purchase.Grid, 1, 100), stop("head", purchase.HeadBeam, 0, 100), stop("top", purchase.Arbor, 0, 0)}
			for range turns {
				path = append(path, stop("beam", purchase.HeadBeam, 0, 101), stop("top", purchase.Arbor, 0, 0))
			}
			reeving := reeved(path...)
			reeving.Lift[0].Mass, reeving.ArborTop = mass, 99
			r, err := reeving.Rig()
			if err != nil {
				t.Fatal(err)
			}
			lowest, highest := r.Reach()
			for _, from := range []float64{0, 0.5, 0.999} {
				for _, metres := range []units.Length{0.1, 3, 40} {
					trim, carried := lowest+0.01+(highest-lowest-0.02).Scale(from), mass.Over(metres)
					balanced, err := r.Counterweight(trim, carried)
					if err != nil {
						t.Fatal(err)
					}
					for _, over := range []float64{0, 0.9, 1.1, 3} {
						arbor := max(0, balanced).Scale(over)
						before, after := runInAHighHouse(t, r, trim, carried, arbor)
						grown, shrunk = max(grown, after/before), min(shrunk, after/before)
					}
				}
			}
		}
	}
	if grown < 1.8 || shrunk > 0.55 {
		t.Errorf("the mass felt grew to %v times and shrank to %v: want about twice and half", grown, shrunk)
	}
}

// runInAHighHouse gives the mass felt where it is let go and where it ends.
func runInAHighHouse(t *testing.T, r *purchase.Reeved, from units.Length, carried, arbor units.Mass) (before, after float64) {
	t.Helper()
	lowest, highest := r.Reach()
	on := massed(float64(carried), float64(arbor), 0)
	got, err := r.LetGo(purchase.LetGo{Trim: from, Low: lowest + 0.005, High: highest - 0.005, On: on})
	if err != nil {
		t.Fatal(err)
	}
	if got.Way == 0 || got.Gain < 0.05 {
		return 1, 1
	}
	at := func(trim units.Length) (imbalance, felt float64) {
		i, err := r.Imbalance(trim, carried, arbor)
		f, also := r.Felt(trim, carried, arbor)
		if err != nil || also != nil {
			t.Fatal(err, also)
		}
		return i.In(units.Newton), f.Batten.In(units.Kilogram)
	}
	first, before := at(from)
	_, after = at(got.Ends)
	way := (got.Ends - from).In(units.Metre)
	square := func(z float64) float64 { // of the speed
		i, felt := at(from + units.Length(z))
		return -(first + i) * z / felt
	}
	if v := math.Sqrt(square(way)); !got.AtStop || !near.Abs(float64(got.Speed)/v, 1, 1e-11) || got.Most != got.Speed {
		t.Fatalf("%+v; want %v m/s at the stop", got, v)
	}
	const steps = 400 // Simpson's, finer towards the beginning: z = way·s²
	sum := math.Sqrt(2 * math.Abs(way) / float64(got.Gain))
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
	if want := sum / 3 / steps; !near.Abs(got.Time.In(units.Second)/want, 1, 1e-8) || got.Error > 1e-10 {
		t.Fatalf("%v, want %v s; %+v", got.Time, want, got)
	}
	return before, after
}

// A set that is in balance to rounding stays where it is let go, on whatever ropes.
func TestLetGoInBalance(t *testing.T) {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple} {
		for i := range 100 {
			l := weightless(purchase.Double)
			l.Kind, l.LiftMass, l.HandMass = kind, units.LineMass(0.01*float64(i)), units.LineMass(0.007*float64(i))
			r := mustRig(t, l)
			trim := 2 + units.Length(0.0317*float64(i))
			on := purchase.Bodies{Pulls: evenly(5, units.Force(100+3.3*float64(i))), Idler: 40}
			var err error
			if on.Arbor, err = r.Counterweight(trim, sumOf(on.Pulls).Mass(units.StandardGravity)); err != nil {
				t.Fatal(err)
			}
			got, err := r.LetGo(purchase.LetGo{Trim: trim, Low: 1.5, High: 10, On: on})
			if want := (purchase.Runaway{From: trim, Ends: trim}); err != nil || got != want {
				t.Fatalf("%v at %v: %+v, %v", kind, trim, got, err)
			}
		}
	}
}

// A set that a heavy hand line over stiff sheaves slows down is the fastest where it is driven no more, however near that is: about half way
// to where it comes to rest.
func TestRunawayIsFastestWhereItIsDrivenNoMore(t *testing.T) {
	l := oneLine(purchase.Double)
	l.HandMass, l.Drag = 4, 0.04
	r, on := mustRig(t, l), massed(73.3, 112.1, 59)
	low, high := units.Length(3), units.Length(11)
	for range 60 {
		mid := (low + high).Scale(0.5)
		gain, err := r.Gain(mid, on, purchase.In, 0, purchase.Pulling{})
		if err != nil {
			t.Fatal(err)
		}
		if gain > 0 {
			high = mid
		} else {
			low = mid
		}
	}
	for _, above := range []units.Length{0.01, 0.1, 0.4, 0.9, 1.5} {
		from := high + above
		got, err := r.LetGo(purchase.LetGo{Trim: from, Low: 1.5, High: 16, On: on})
		if err != nil || got.AtStop || got.Way != purchase.In {
			t.Fatalf("from %v: %+v, %v", from, got, err)
		}
		want := follow(t, r, on, purchase.In, from.In(units.Metre), 1.5, got.Time.In(units.Second)/400)
		if !near.Abs(float64(got.Most)/want.most, 1, 1e-4) || !near.Abs(got.Ends.In(units.Metre), want.ends, 1e-5) || !near.Abs(got.Time.In(units.Second)/want.time, 1, 1e-4) {
			t.Errorf("from %v: %+v, followed in time %+v", from, got, want)
		}
		if way := (from - got.Ends).In(units.Metre); !near.Abs(way/above.In(units.Metre), 2, 0.1) {
			t.Errorf("from %v above where it is driven no more it runs %v m", above, way)
		}
	}
}
