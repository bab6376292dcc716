package purchase_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// pulled is what the hands read on a set whose drag is known.
func pulled(t interface{ Fatal(...any) }, r *purchase.Reeved, trim units.Length, on purchase.Bodies) (out, in purchase.Pulled) {
	read := func(way purchase.Way) purchase.Pulled {
		run, err := r.Run(trim, on, way)
		if err != nil {
			t.Fatal(err)
		}
		return purchase.Pulled{Pull: run.Pull, Runs: run.Runs}
	}
	return read(purchase.Out), read(purchase.In)
}

// drawWeighing is a random reeving with random drag and load, weighed by running it.
func drawWeighing(t *rapid.T) (r *purchase.Reeved, w purchase.Weighing, carried, drag float64) {
	d := drawReeving(t)
	drag = rapid.Float64Range(0, 0.08).Draw(t, "drag")
	if rapid.IntRange(0, 9).Draw(t, "one in ten has none") == 0 {
		drag = 0
	}
	for _, rope := range d.ropes() {
		for i := 1; i < len(rope.Path)-1; i++ {
			rope.Path[i].Drag = purchase.Drag(drag)
		}
	}
	r, err := d.Rig()
	if err != nil {
		t.Fatal(err)
	}
	w.Trim, w.On.Idler = 9, units.Mass(rapid.Float64Range(10, 60).Draw(t, "idler"))
	for range d.lines {
		pull := rapid.Float64Range(50, 2000).Draw(t, "pull")
		carried += pull
		w.On.Pulls = append(w.On.Pulls, units.Force(pull))
	}
	balancing, err := r.Counterweight(w.Trim, units.Mass(carried/g))
	if err != nil {
		t.Fatal(err)
	}
	w.On.Arbor = max(0, balancing+units.Mass(rapid.Float64Range(-40, 40).Draw(t, "too much")))
	w.Out, w.In = pulled(t, r, w.Trim, w.On)
	return r, w, carried, drag
}

// Run forward, weigh, and load and drag come back: the layout's own drag and the size of the pulls given for the
// shares do not matter.
func TestPropWeighIsRunTheOtherWay(t *testing.T) {
	ran := 0
	rapid.Check(t, func(t *rapid.T) {
		r, w, carried, drag := drawWeighing(t)
		if w.Out.Runs || w.In.Runs {
			ran++
		}
		k := rapid.Float64Range(0.01, 3).Draw(t, "shares given otherwise")
		for i := range w.On.Pulls {
			w.On.Pulls[i] = w.On.Pulls[i].Scale(k)
		}
		got, err := r.Weigh(w)
		if err != nil {
			t.Fatal(err)
		}
		if !near.Rel(got.Carried.Value.In(units.Kilogram), carried/g, 1e-9) {
			t.Fatalf("weighed %v kg, %v kg hang there", got.Carried.Value.In(units.Kilogram), carried/g)
		}
		if !near.Abs(float64(got.Drag.Value), drag, 1e-9*drag+1e-11) {
			t.Fatalf("drag %v, was %v", got.Drag.Value, drag)
		}
		want, err := r.Imbalance(w.Trim, units.Mass(carried/g), w.On.Arbor)
		if err != nil || !near.Abs(got.Imbalance.Value.In(units.Newton), want.In(units.Newton), 1e-9*(1+carried)) {
			t.Fatalf("out of balance by %v, want %v, %v", got.Imbalance.Value, want, err)
		}
		if got.Carried.Least > got.Carried.Value || got.Carried.Most < got.Carried.Value || !near.Rel(float64(got.Carried.Least), float64(got.Carried.Most), 1e-9) {
			t.Fatalf("a perfect scale leaves no band, got %v", got.Carried)
		}
	})
	if ran == 0 {
		t.Error("no set ran by itself: holding back was not tried")
	}
}

// Wherever a scale is off by no more than was said, the truth is inside the bands; and the ends of the bands are
// reached by a scale that is off as far as it may be.
func TestPropWeighBands(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, w, carried, drag := drawWeighing(t)
		w.Scale = units.Force(rapid.Float64Range(0.1, 30).Draw(t, "scale"))
		exact := w
		off := func(p purchase.Pulled, by units.Force) purchase.Pulled {
			signed := p.Pull + by
			if p.Runs {
				signed = -p.Pull + by
			}
			return purchase.Pulled{Pull: units.Abs(signed), Runs: signed < 0}
		}
		w.Out = off(w.Out, w.Scale.Scale(rapid.Float64Range(-1, 1).Draw(t, "off out")))
		w.In = off(w.In, w.Scale.Scale(rapid.Float64Range(-1, 1).Draw(t, "off in")))
		got, err := r.Weigh(w)
		if err != nil {
			t.Fatal(err)
		}
		hung := units.Mass(carried / g)
		slack := hung.Scale(1e-9)
		if hung < got.Carried.Least-slack || hung > got.Carried.Most+slack {
			t.Fatalf("%v kg hang there, weighed %+v", hung, got.Carried)
		}
		if c := purchase.Drag(drag); c < got.Drag.Least-1e-9 || c > got.Drag.Most+1e-9 {
			t.Fatalf("drag %v, weighed %+v", c, got.Drag)
		}
		imbalance, _ := r.Imbalance(w.Trim, hung, w.On.Arbor)
		if imbalance < got.Imbalance.Least-1e-6 || imbalance > got.Imbalance.Most+1e-6 {
			t.Fatalf("out of balance by %v, weighed %+v", imbalance, got.Imbalance)
		}
		// At the corners, with a perfect scale.
		corner := exact
		corner.Out, corner.In, corner.Scale = off(exact.Out, w.Scale), off(exact.In, -w.Scale), 0
		exact.Scale = w.Scale
		band, err := r.Weigh(exact)
		if err != nil {
			t.Fatal(err)
		}
		if end, err := r.Weigh(corner); err == nil && !near.Rel(float64(end.Carried.Value), float64(band.Carried.Most), 1e-9) {
			t.Fatalf("at the corner %v, the band ends at %v", end.Carried.Value, band.Carried.Most)
		}
		corner.Out, corner.In = off(exact.Out, w.Scale), off(exact.In, w.Scale)
		if end, err := r.Weigh(corner); err != nil || !near.Rel(float64(end.Drag.Value), float64(band.Drag.Most), 1e-9) {
			t.Fatalf("at the corner drag %v, the band ends at %v, %v", end.Drag.Value, band.Drag.Most, err)
		}
	})
}

// Without drag and rope weight, by hand: a single set 20 N batten-heavy takes 20 N on the inner rope to fly out, and 20 N to hold
// back on the way in, on the same rope.
func TestWeighWithoutDrag(t *testing.T) {
	r, err := weightless(purchase.Single).Rig()
	if err != nil {
		t.Fatal(err)
	}
	w := purchase.Weighing{
		Trim: 20 * units.Foot, On: purchase.Bodies{Pulls: []units.Force{1, 1, 1, 1, 1}, Arbor: units.Mass(1000 / g), Idler: 20},
		Out: purchase.Pulled{Pull: 20}, In: purchase.Pulled{Pull: 20, Runs: true}, Scale: 1,
	}
	got, err := r.Weigh(w)
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct{ got, want float64 }{
		"carried": {got.Carried.Value.In(units.Kilogram) * g, 1020}, "least": {got.Carried.Least.In(units.Kilogram) * g, 1019},
		"most": {got.Carried.Most.In(units.Kilogram) * g, 1021}, "imbalance": {got.Imbalance.Value.In(units.Newton), 20},
		"drag": {float64(got.Drag.Value), 0}, "least drag": {float64(got.Drag.Least), 0},
	} {
		if !near.Abs(c.got, c.want, 1e-9) {
			t.Errorf("%s: %v, want %v", name, c.got, c.want)
		}
	}
	if got.Drag.Most <= 0 {
		t.Error("a scale that may be off leaves room for some drag")
	}
	w.In.Pull = 21.5 // holding takes more than driving: below no drag, though within the scale's accuracy
	if got, err = r.Weigh(w); err != nil || got.Drag.Value != 0 || !near.Abs(got.Imbalance.Value.In(units.Newton), 20.75, 1e-9) {
		t.Errorf("drag %v, imbalance %v, %v", got.Drag.Value, got.Imbalance.Value, err)
	}
	// What both scales may say then: out 19 to 21, in 20.5 to 22.5; they agree from 20.5 to 21.
	if !near.Abs(got.Imbalance.Least.In(units.Newton), 20.5, 1e-9) || !near.Abs(got.Imbalance.Most.In(units.Newton), 21, 1e-9) {
		t.Errorf("band %+v, want 20.5 to 21", got.Imbalance)
	}
}

// Rounding in the pulls of a set without drag is not taken for drag below zero.
func TestWeighForgivesRounding(t *testing.T) {
	r, err := roped(purchase.Double).Rig()
	if err != nil {
		t.Fatal(err)
	}
	for i := range 200 {
		w := purchase.Weighing{Trim: units.Length(5 + 0.05*float64(i)), On: purchase.Bodies{Arbor: 430, Idler: 20}}
		for k := range 5 {
			w.On.Pulls = append(w.On.Pulls, units.Force(300.1+1.7*float64(i*k%7)))
		}
		w.Out, w.In = pulled(t, r, w.Trim, w.On)
		for _, p := range []*purchase.Pulled{&w.Out, &w.In} {
			if !p.Runs {
				p.Pull = p.Pull.Scale(1 - 4e-16) // driving takes a hair less than holding
			}
		}
		if got, err := r.Weigh(w); err != nil || got.Drag.Value > 1e-12 {
			t.Fatalf("at %v: drag %v, %v", w.Trim, got.Drag.Value, err)
		}
	}
}

func TestWeighRefused(t *testing.T) {
	l := weightless(purchase.Double)
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	bare := l.Reeving()
	bare.Hand = purchase.Rope{}
	without, err := bare.Rig()
	if err != nil {
		t.Fatal(err)
	}
	good := purchase.Weighing{
		Trim: 20 * units.Foot, On: purchase.Bodies{Pulls: []units.Force{1, 1, 1, 1, 1}, Arbor: 400, Idler: 20},
		Out: purchase.Pulled{Pull: 50}, In: purchase.Pulled{Pull: 60},
	}
	if _, err := r.Weigh(good); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		on     *purchase.Reeved
		change func(*purchase.Weighing)
		field  string
		kind   error
		reason string
	}{
		{"trim out of reach", r, func(w *purchase.Weighing) { w.Trim = 90 }, "trim", units.ErrOutOfRange, "no rope reaches there"},
		{"no hand line", without, func(*purchase.Weighing) {}, "hand", units.ErrMissing, "nothing to pull on"},
		{"too few shares", r, func(w *purchase.Weighing) { w.On.Pulls = w.On.Pulls[:2] }, "on.pulls", units.ErrOutOfRange, "one for each line"},
		{"no shares", r, func(w *purchase.Weighing) { w.On.Pulls = make([]units.Force, 5) }, "on.pulls", units.ErrMissing, "a share of nothing is no share"},
		{"negative pull", r, func(w *purchase.Weighing) { w.Out.Pull = -1 }, "out.pull", units.ErrNegative, "hands pull down; the other rope holds back"},
		{"NaN pull", r, func(w *purchase.Weighing) { w.In.Pull = units.Force(math.NaN()) }, "in.pull", units.ErrNotFinite, "no NaN goes in"},
		{"infinite scale", r, func(w *purchase.Weighing) { w.Scale = units.Force(math.Inf(1)) }, "scale", units.ErrNotFinite, "no infinity goes in"},
		{"runs both ways", r, func(w *purchase.Weighing) { w.Out.Runs, w.In.Runs = true, true }, "out.pull", purchase.ErrUnexplained, "drag would have to push"},
		{"holds more than it drives", r, func(w *purchase.Weighing) { w.In.Runs = true }, "out.pull", purchase.ErrUnexplained, "drag below zero"},
		{"no drag is so large", r, func(w *purchase.Weighing) { w.Out.Pull, w.In.Pull = 1e11, 1e11 }, "out.pull", purchase.ErrUnexplained, "drag of one and more"},
		{"lighter than nothing", r, func(w *purchase.Weighing) { w.Out.Pull, w.Out.Runs, w.In.Pull = 5000, true, 5100 }, "out.pull", purchase.ErrUnexplained, "more than the arbor weighs"},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := good
			c.change(&w)
			_, err := c.on.Weigh(w)
			one(t, err, c.field, c.kind, c.reason)
		})
	}
}

// What cannot be explained is told with both pulls, and why: too little for any drag, too much for one, or less than nothing on the
// batten, to the newton. A scale that may be off by as much explains it.
func TestWeighUnexplained(t *testing.T) {
	r := mustRig(t, weightless(purchase.Single))
	on := purchase.Bodies{Pulls: evenly(5, 1), Arbor: units.Mass(1000 / g), Idler: 20}
	pulled := func(signed float64) purchase.Pulled {
		return purchase.Pulled{Pull: units.Force(math.Abs(signed)), Runs: signed < 0}
	}
	for _, c := range []struct {
		name    string
		out, in float64 // N; below zero it is held back
		scale   units.Force
		says    string // nothing: it is explained
		carried float64
	}{
		{"in balance", 0, 0, 0, "", 1000},
		{"20 N batten-heavy", 20, -20, 0, "", 1020},
		{"20 N arbor-heavy", -20, 20, 0, "", 980},
		{"holds 2 N more than it drives", 19, -21, 0, "larger pulls", 0},
		{"holds 2 N more than it drives, by a scale 0.9 N off", 19, -21, 0.9, "larger pulls", 0},
		{"holds 2 N more than it drives, by a scale 1.1 N off", 19, -21, 1.1, "", 1020},
		{"nothing on the batten", -1000, 1000, 0, "", 0},
		{"2 N less than nothing", -1002, 1002, 0, "pulls that leave something on the batten", 0},
		{"2 N less than nothing, by a scale 1.9 N off", -1002, 1002, 1.9, "pulls that leave something on the batten", 0},
		{"2 N less than nothing, by a scale 2.1 N off", -1002, 1002, 2.1, "", 0},
		{"drag beyond sense", 1e6, 1e6, 0, "up to 0.9", 0},
		{"drag beyond sense, by a scale that is off", 1e6, 1e6, 10, "up to 0.9", 0},
	} {
		got, err := r.Weigh(purchase.Weighing{Trim: 5, On: on, Out: pulled(c.out), In: pulled(c.in), Scale: c.scale})
		if c.says != "" {
			if one(t, err, "out.pull", purchase.ErrUnexplained, c.name); err != nil && (!strings.Contains(err.Error(), c.says) || !strings.Contains(err.Error(), " out and ")) {
				t.Errorf("%s: %v, want it to say %q", c.name, err, c.says)
			}
			if got != (purchase.Weighed{}) {
				t.Errorf("%s: unexplained, and yet %+v", c.name, got)
			}
			continue
		}
		newtons := got.Carried.Value.In(units.Kilogram) * g
		if err != nil || !near.Abs(newtons, c.carried, 1e-6) || !near.Abs(got.Imbalance.Value.In(units.Newton), c.carried-1000, 1e-6) {
			t.Errorf("%s: %v N on the batten and %v, %v; want %v N", c.name, newtons, got.Imbalance.Value, err, c.carried)
		}
		if got.Carried.Least < 0 || got.Carried.Least > got.Carried.Value || got.Carried.Most < got.Carried.Value || got.Drag.Value > 1e-9 {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

// However stiff the sheaves, what they are is found to the last bits, and so is what hangs; by a scale that may be off, the pulls
// of each end of the band are those that the scale may have meant.
func TestWeighStiffSheaves(t *testing.T) {
	for _, drag := range []float64{1e-6, 0.001, 0.0199, 0.0201, 0.079, 0.081, 0.2, 0.299, 0.301, 0.6, 0.89} {
		l := weightless(purchase.Single)
		l.Drag, l.HandMass, l.LiftMass = purchase.Drag(drag), 0.1, 0.05
		r := mustRig(t, l)
		w := purchase.Weighing{Trim: 5, On: purchase.Bodies{Pulls: []units.Force{100, 150, 200, 150, 100}, Arbor: 80, Idler: 60}}
		w.Out, w.In = pulled(t, r, w.Trim, w.On)
		got, err := r.Weigh(w)
		if err != nil || !near.Rel(float64(got.Drag.Value)/drag, 1, 1e-8) || !near.Rel(got.Carried.Value.In(units.Kilogram), 700/g, 1e-9) {
			t.Errorf("drag %v: %+v, %v", drag, got, err)
		}
		if got.Drag.Least != got.Drag.Value || got.Drag.Most != got.Drag.Value {
			t.Errorf("drag %v: %+v by a scale that is right", drag, got.Drag)
		}
		if w.Scale = w.Out.Pull.Scale(0.01); drag > 0.8 {
			continue // more would be beyond what is looked for
		}
		band, err := r.Weigh(w)
		if err != nil || !(band.Drag.Least < got.Drag.Value && band.Drag.Most > got.Drag.Value && band.Carried.Least < got.Carried.Value && band.Carried.Most > got.Carried.Value) {
			t.Errorf("drag %v: %+v by a scale that may be off, %v", drag, band, err)
		}
		if !near.Rel(float64(band.Drag.Value), float64(got.Drag.Value), 1e-12) || !near.Rel(float64(band.Carried.Value), float64(got.Carried.Value), 1e-12) {
			t.Errorf("drag %v: the scale shifts the value to %+v", drag, band)
		}
	}
}

func BenchmarkWeigh(b *testing.B) {
	r, err := roped(purchase.Double).Rig()
	if err != nil {
		b.Fatal(err)
	}
	w := purchase.Weighing{
		Trim: 20 * units.Foot, On: purchase.Bodies{Pulls: []units.Force{1, 1, 1, 1, 1}, Arbor: 400, Idler: 20},
		Out: purchase.Pulled{Pull: 50}, In: purchase.Pulled{Pull: 60}, Scale: 5,
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.Weigh(w); err != nil {
			b.Fatal(err)
		}
	}
}

// Weighing looks at drags of its own: the set answers as before.
func TestWeighLeavesTheSetAlone(t *testing.T) {
	l := roped(purchase.Double)
	l.Drag = 0.02
	r := mustRig(t, l)
	on := purchase.Bodies{Pulls: hundreds, Arbor: 1000 * units.Pound, Idler: 60 * units.Pound}
	ask := func() purchase.Running {
		run, err := r.Run(9, on, purchase.Out)
		if err != nil {
			t.Fatal(err)
		}
		return run
	}
	before := ask()
	if _, err := r.Weigh(purchase.Weighing{Trim: 9, On: on, Out: purchase.Pulled{Pull: 300}, In: purchase.Pulled{Pull: 100}}); err != nil {
		t.Fatal(err)
	}
	if after := ask(); !after.Equal(before) {
		t.Errorf("%+v, before it was weighed %+v", after, before)
	}
}
