package purchase_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// dragged gives every sheave of a reeving one drag.
func dragged(r purchase.Reeving, drag purchase.Drag) purchase.Reeving {
	for i := range r.Lift {
		for k := 1; k < lastStop(&r.Lift[i]); k++ {
			r.Lift[i].Path[k].Drag = drag
		}
	}
	for k := 1; k < lastStop(&r.Hand); k++ {
		r.Hand.Path[k].Drag = drag
	}
	return r
}

// Whatever drags lie near, also those at which the search looks first, drag and load are found: 400 loads of 50 to 250 kg, nearly in
// balance.
func TestWeighAnyDrag(t *testing.T) {
	for i, drag := range []purchase.Drag{0.02, 0.08, 0.3, 0.0200001, 0.0799999, 0.15, 0.5, 0.85} {
		l := weightless(purchase.Single)
		l.Drag, l.HandMass = drag, 0.2
		r := mustRig(t, l)
		for k := range 50 {
			carried := 50 + 4*float64(k) + 0.37*float64(i)
			w := purchase.Weighing{Trim: 5, On: purchase.Bodies{Pulls: evenly(5, units.Force(carried/5*g)), Arbor: units.Mass(carried + 3 - float64(k%7)), Idler: 40}}
			w.Out, w.In = pulled(t, r, w.Trim, w.On)
			got, err := r.Weigh(w)
			if err != nil || !near.Rel(float64(got.Drag.Value), float64(drag), 1e-9) || !near.Rel(got.Carried.Value.In(units.Kilogram), carried, 1e-9) {
				t.Fatalf("drag %v, %v kg: %+v, %v", drag, carried, got, err)
			}
		}
	}
}

// A model of a set, a thousandth as heavy, is weighed as well: its pulls are fractions of a newton.
func TestPropWeighAModel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		drag := rapid.Float64Range(0, 0.06).Draw(t, "drag")
		r, err := dragged(weightless(purchase.Double).Reeving(), purchase.Drag(drag)).Rig()
		if err != nil {
			t.Fatal(err)
		}
		carried := rapid.Float64Range(0.05, 0.5).Draw(t, "kg carried")
		w := purchase.Weighing{Trim: 5, On: purchase.Bodies{
			Pulls: evenly(5, units.Force(carried/5*g)), Arbor: units.Mass(2*carried + rapid.Float64Range(-0.05, 0.05).Draw(t, "kg too much")), Idler: 0.03,
		}}
		w.Out, w.In = pulled(t, r, w.Trim, w.On)
		got, err := r.Weigh(w)
		if err != nil || !near.Rel(got.Carried.Value.In(units.Kilogram), carried, 1e-7) || !near.Abs(float64(got.Drag.Value), drag, 1e-7) {
			t.Fatalf("%v kg, drag %v: %+v, %v", carried, drag, got, err)
		}
	})
}

// Nothing on the batten is found as nothing, whatever the arbor weighs and however its pulls are rounded, and no less than nothing is the
// least and most of it where the scale is right.
func TestWeighNothing(t *testing.T) {
	r := mustRig(t, triple())
	for i := range 300 {
		arbor := units.Mass(0.1 + 3.7*float64(i))
		pull := arbor.Scale(1.0 / 3).Weight(units.StandardGravity)
		on := purchase.Bodies{Pulls: evenly(5, 1), Arbor: arbor, Idler: 10}
		got, err := r.Weigh(purchase.Weighing{Trim: 5, On: on, Out: purchase.Pulled{Pull: pull, Runs: true}, In: purchase.Pulled{Pull: pull}})
		if err != nil || got.Carried.Value < 0 || got.Carried.Least < 0 || got.Carried.Most > arbor.Scale(1e-12) || got.Drag.Value > 1e-12 {
			t.Fatalf("an arbor of %v alone: %+v, %v", arbor, got, err)
		}
	}
	// And with nothing in the arbor, where only the hand line's own weight is felt.
	l := weightless(purchase.Single)
	l.HandMass = 0.3
	r = mustRig(t, l)
	for i := range 100 {
		trim := units.Length(2 + 0.1*float64(i))
		on := purchase.Bodies{Pulls: evenly(5, 0), Idler: 25}
		out, in := pulled(t, r, trim, on)
		on.Pulls = evenly(5, 1)
		got, err := r.Weigh(purchase.Weighing{Trim: trim, On: on, Out: out, In: in})
		if err != nil || got.Carried.Value < 0 || got.Carried.Most > 1e-12 {
			t.Fatalf("nothing at all at %v: %+v, %v", trim, got, err)
		}
	}
}

// No batten is lighter than nothing: by a scale that may be off by 5 N, 2 N may be nothing, and 7 N at the most.
func TestWeighLittleByACoarseScale(t *testing.T) {
	r := mustRig(t, weightless(purchase.Single))
	on := purchase.Bodies{Pulls: evenly(5, 1), Arbor: units.Mass(1000 / g), Idler: 20}
	got, err := r.Weigh(purchase.Weighing{Trim: 5, On: on, Out: purchase.Pulled{Pull: 998, Runs: true}, In: purchase.Pulled{Pull: 998}, Scale: 5})
	if err != nil || !near.Abs(got.Carried.Value.In(units.Kilogram)*g, 2, 1e-9) || got.Carried.Least != 0 || !near.Abs(got.Carried.Most.In(units.Kilogram)*g, 7, 1e-9) {
		t.Errorf("%+v, %v; want 2 N, 0 to 7", got.Carried, err)
	}
	if !near.Abs(got.Imbalance.Least.In(units.Newton), -1000, 1e-9) || !near.Abs(got.Imbalance.Value.In(units.Newton), -998, 1e-9) || !near.Abs(got.Imbalance.Most.In(units.Newton), -993, 1e-9) {
		t.Errorf("%+v; want 998 N arbor-heavy, 993 to 1000", got.Imbalance)
	}
}

// Where pulls are explained by a drag just below the most that is looked for, and by a scale that may be off by a hundredth they might mean
// more than that, nothing is said.
func TestWeighAtTheMostDrag(t *testing.T) {
	l := weightless(purchase.Single)
	l.Drag = 0.899
	r := mustRig(t, l)
	w := purchase.Weighing{Trim: 5, On: purchase.Bodies{Pulls: evenly(5, 200), Arbor: units.Mass(1000 / g), Idler: 40}}
	w.Out, w.In = pulled(t, r, w.Trim, w.On)
	if got, err := r.Weigh(w); err != nil || !near.Rel(float64(got.Drag.Value), 0.899, 1e-9) {
		t.Errorf("%+v, %v", got, err)
	}
	w.Scale = w.Out.Pull.Scale(0.05)
	got, err := r.Weigh(w)
	one(t, err, "out.pull", purchase.ErrUnexplained, "drag beyond sense")
	if got != (purchase.Weighed{}) {
		t.Errorf("and yet %+v", got)
	}
}

// A line that holds the arbor up by three parts and down by two, over floor blocks, would not hold it up at all on the way in over sheaves
// with a drag of 0.101, for which K² is one and a half. What a large pull says of the load jumps there from far below to far above what
// the other one says: they agree nowhere. Small ones agree at less drag, with which the set takes them.
func TestWeighOverAJump(t *testing.T) {
	re := handLines()["plain"]
	re.Lift[0].Path = []purchase.Stop{
		stop("batten", purchase.Batten, 3, 0), stop("loft", purchase.Grid, 3, 20), headStop, topStop, beamStop, stop("floor", purchase.Building, 0, 0.2), footStop,
		stop("other floor", purchase.Building, 0, 0.3), stop("other beam", purchase.HeadBeam, 0, 20.7), topStop,
	}
	r, err := re.Rig()
	if err != nil || !near.Rel(r.Ratio(), 1, 1e-12) {
		t.Fatalf("ratio %v, %v", r.Ratio(), err)
	}
	w := purchase.Weighing{Trim: 4, On: purchase.Bodies{Pulls: []units.Force{1}, Arbor: 100, Idler: 100}, Out: purchase.Pulled{Pull: 100}}
	for _, c := range []struct {
		in    units.Force
		jumps bool
	}{{100, false}, {500, false}, {1500, true}, {6000, true}} {
		w.In.Pull = c.in
		got, err := r.Weigh(w)
		if c.jumps {
			if one(t, err, "out.pull", purchase.ErrUnexplained, "they agree nowhere"); err != nil && !strings.Contains(err.Error(), "up to 0.9") {
				t.Errorf("in %v: %v", c.in, err)
			}
			continue
		}
		if err != nil {
			t.Fatalf("in %v: %v", c.in, err)
		}
		stiff, err := dragged(re, got.Drag.Value).Rig()
		if err != nil {
			t.Fatal(err)
		}
		on := w.On
		on.Pulls = []units.Force{got.Carried.Value.Weight(units.StandardGravity)}
		if out, in := pulled(t, stiff, 4, on); out.Runs || in.Runs || !near.Rel(out.Pull.In(units.Newton), 100, 1e-9) || !near.Rel(in.Pull.In(units.Newton), c.in.In(units.Newton), 1e-9) {
			t.Errorf("%+v takes %v out and %v in, weighed with 100 N and %v", got, out, in, c.in)
		}
	}
}

// A hand line whose last part comes down to the rail goes slack there on the way in, where stiff sheaves keep the pull of a light idler
// from it; the way out keeps it taut. Weighing tells of it as running does, by the drag that it has found and no other.
func TestWeighTellsOfSlackOnTheWayIn(t *testing.T) {
	re := handLines()["both dead ends at the rail"]
	re.Hand.Mass = 0.8
	r, err := dragged(re, 0.1).Rig()
	if err != nil {
		t.Fatal(err)
	}
	const trim = 8
	w := purchase.Weighing{Trim: trim, On: purchase.Bodies{Pulls: []units.Force{3000}, Arbor: 300, Idler: 10}}
	w.Out, w.In = pulled(t, r, trim, w.On)
	for _, scale := range []units.Force{0, 30} {
		w.Scale = scale
		w.On.Idler = 10
		if _, err := r.Weigh(w); err != nil {
			t.Errorf("with an idler of 10 kg, by a scale %v off: %v", scale, err)
		}
		for _, light := range []units.Mass{9.99, 9} {
			w.On.Idler = light
			if _, err := r.Run(trim, w.On, purchase.In); err == nil {
				t.Fatalf("with an idler of %v it is taut", light)
			}
			_, err := r.Weigh(w)
			one(t, err, "hand.path[5]", purchase.ErrSlack, "the idler is too light")
		}
	}
}
