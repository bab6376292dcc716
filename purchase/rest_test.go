package purchase_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// A lift line of a single set by hand, no rope weight: with 100 N at the batten, the loft block lets anything between a
// q-th and q times of it past, the head block again; q is the factor at a quarter turn. The idler's parts
// are between W/(1+k) and kW/(1+k), with k that at half a turn.
func TestRestByHand(t *testing.T) {
	const c, load, idler = 0.05, 100.0, 210.0
	k := (1 + c) / (1 - c)
	a, b := 1.0, 1-c*c // a is 1 − c² cos 90°
	q := (a + math.Sqrt(a*a-b*b)) / b
	l := weightless(purchase.Single)
	l.Loft, l.Drag = l.Loft[:1], c
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	newtons := func(n float64) units.Mass { return units.Newton.Scale(n).Mass(units.StandardGravity) }
	got, err := r.Rest(20*units.Foot, purchase.Bodies{Pulls: evenly(1, load), Arbor: newtons(load), Idler: newtons(idler)})
	if err != nil {
		t.Fatal(err)
	}
	is := func(what string, got purchase.ForceBand, least, value, most float64) {
		t.Helper()
		if !near.Abs(got.Least.In(units.Newton), least, 1e-9) || !near.Abs(got.Value.In(units.Newton), value, 1e-9) || !near.Abs(got.Most.In(units.Newton), most, 1e-9) {
			t.Errorf("%s: %+v, want %v, %v and %v N", what, got, least, value, most)
		}
	}
	line := got.Lift[0].Parts
	is("at the batten", line[0].TensionFrom, load, load, load)
	is("past the loft block", line[1].TensionFrom, load/q, load, load*q)
	is("at the arbor", line[2].TensionTo, load/q/q, load, load*q*q)
	is("loft block, across", got.Load(purchase.LoftBlock(1)).Across, -load*q, -load, -load/q)
	is("loft block, up", got.Load(purchase.LoftBlock(1)).Up, -load, -load, -load)
	inner := got.Hand.Parts[0]
	is("inner rope", inner.TensionFrom, idler/(1+k), idler/2, idler*k/(1+k))
	is("idler", got.Load(purchase.IdlerBlock).Up, idler, idler, idler)
	// What the lift line leaves of the arbor's weight and adds the inner rope to, the rope over the head block holds.
	top := got.Hand.Parts[2]
	least, most := load-load*q*q+idler/(1+k), load-load/q/q+idler*k/(1+k)
	is("hand line at the arbor's top", top.TensionTo, least, idler/2, most)
	is("outer rope at the head block", got.Hand.Parts[1].TensionTo, least/k, idler/2, most*k)
	is("rope lock", got.Lock, idler/(1+k)-most*k, 0, idler*k/(1+k)-least/k)
	if want := load * q * q; !near.Abs(got.Lift[0].Greatest().In(units.Newton), want, 1e-9) {
		t.Errorf("greatest %v, want %v N", got.Lift[0].Greatest(), want)
	}
}

// corners gives every way in which sheaves 1 to n−2 of a rope may hold: the factor from each stop to the next.
func corners(k []float64, each func(factor []float64)) {
	factor := make([]float64, len(k))
	for bits := range 1 << len(k) {
		for i := range k {
			factor[i] = k[i]
			if bits>>i&1 != 0 {
				factor[i] = 1 / k[i]
			}
		}
		each(factor)
	}
}

// The ends are those over every corner of what the sheaves may hold, found by trying all of them: of each tension of the
// lift lines and of the idler's parts, on reevings with up to three parts at the batten and ten sheaves.
func TestPropRestIsTheWorstOfAllCorners(t *testing.T) {
	taut := 0
	defer func() {
		if taut == 0 {
			t.Error("never a rope that stays taut")
		}
	}()
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		for _, rp := range d.ropes() {
			for i := 1; i < len(rp.Path)-1; i++ {
				rp.Path[i].Drag = purchase.Drag(rapid.Float64Range(0, 0.2).Draw(t, "drag"))
			}
		}
		r, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		trim := units.Length(rapid.Float64Range(8, 9.5).Draw(t, "trim"))
		on := purchase.Bodies{Arbor: 400, Idler: units.Mass(rapid.Float64Range(10, 60).Draw(t, "idler"))}
		for range d.lines {
			on.Pulls = append(on.Pulls, units.Force(rapid.Float64Range(100, 900).Draw(t, "pull")))
		}
		got, err := r.Rest(trim, on)
		if err != nil {
			t.Fatal(err)
		}
		g, err := r.Geometry(trim)
		if err != nil {
			t.Fatal(err)
		}
		check := func(rp purchase.Rope, geometry purchase.RopeGeometry, parts []purchase.PartBand, body purchase.Body, sum float64) {
			n := len(parts)
			k := make([]float64, n-1)
			for i, turn := range geometry.Turns[:n-1] {
				if k[i], err = rp.Path[i+1].Drag.Factor(turn.Angle); err != nil {
					t.Fatal(err)
				}
			}
			w := rp.Mass.Weight(units.StandardGravity).In(units.NewtonPerMetre)
			top := g.ArborTop.In(units.Metre)
			least, most := make([]float64, 2*n), make([]float64, 2*n)
			for i := range least {
				least[i], most[i] = math.Inf(1), math.Inf(-1)
			}
			slack := false
			corners(k, func(factor []float64) {
				// tension at both ends of each part is grown times the first plus plain
				grown, plain := make([]float64, 2*n), make([]float64, 2*n)
				grown[0] = 1
				for i := range n {
					if i > 0 {
						grown[2*i], plain[2*i] = grown[2*i-1]*factor[i-1], plain[2*i-1]*factor[i-1]
					}
					rise := d.height(rp.Path[i+1], trim.In(units.Metre), top) - d.height(rp.Path[i], trim.In(units.Metre), top)
					grown[2*i+1], plain[2*i+1] = grown[2*i], plain[2*i]+w*rise
				}
				var a, b float64 // what pulls the body, for it is below all its parts or, the idler, above none
				for i := range n {
					if rp.Path[i].On == body {
						a, b = a+grown[2*i], b+plain[2*i]
					}
					if rp.Path[i+1].On == body && i < n {
						a, b = a+grown[2*i+1], b+plain[2*i+1]
					}
				}
				first := (sum - b) / a
				for i := range grown {
					tension := grown[i]*first + plain[i]
					slack = slack || tension < 0
					least[i], most[i] = math.Min(least[i], tension), math.Max(most[i], tension)
				}
			})
			if slack {
				return // what drag does to a rope that pushes means nothing
			}
			taut++
			for i, p := range parts {
				for end, band := range [2]purchase.ForceBand{p.TensionFrom, p.TensionTo} {
					lo, hi := least[2*i+end], most[2*i+end]
					if !near.Abs(band.Least.In(units.Newton), lo, 1e-8*(1+hi)) || !near.Abs(band.Most.In(units.Newton), hi, 1e-8*(1+hi)) {
						t.Fatalf("%s, part %d, end %d: %v to %v, want %v to %v N", rp.Name, i, end, band.Least, band.Most, lo, hi)
					}
				}
			}
		}
		for i, rp := range d.Lift {
			check(rp, g.Lift[i], got.Lift[i].Parts, purchase.Batten, on.Pulls[i].In(units.Newton))
		}
		// Up to the idler and a part beyond it, whose far end is the head block's: the lock lies between, so only the near
		// end counts there. The rope is laid as one that ends past the lock at the same height.
		idler := len(d.Hand.Path) - 3
		if d.hand == 2 {
			idler--
		}
		lower := d.Hand
		lower.Path = append([]purchase.Stop{}, lower.Path[:idler+2]...)
		parts := append([]purchase.PartBand{}, got.Hand.Parts[:idler+1]...)
		lower.Path[idler+1] = purchase.Stop{On: purchase.Rail, Height: lower.Path[idler].Height + d.Idler}
		parts[idler].TensionTo = parts[idler].TensionFrom
		geometry := g.Hand
		check(lower, geometry, parts, purchase.Idler, on.Idler.Weight(units.StandardGravity).In(units.Newton))
	})
}

// The bands hold the state without drag and both ways of running, whose lift lines reach their ends at the arbor; and
// without drag they are no bands.
func TestPropRestHoldsEveryState(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := weightless(rapid.SampledFrom([]purchase.Kind{purchase.Single, purchase.Double}).Draw(t, "kind"))
		l.LiftMass, l.HandMass = units.LineMass(rapid.Float64Range(0, 0.3).Draw(t, "lift")), units.LineMass(rapid.Float64Range(0, 0.3).Draw(t, "hand"))
		l.Drag = purchase.Drag(rapid.SampledFrom([]float64{0, 0.01, 0.2}).Draw(t, "drag"))
		r, err := l.Rig()
		if err != nil {
			t.Fatal(err)
		}
		on := purchase.Bodies{Pulls: evenly(5, units.Force(rapid.Float64Range(100, 900).Draw(t, "pull"))), Arbor: 200, Idler: 40}
		if rapid.Bool().Draw(t, "held") {
			on.Base = 150
		}
		trim := units.Length(rapid.Float64Range(2, 16).Draw(t, "trim"))
		rest, err := r.Rest(trim, on)
		if err != nil {
			t.Fatal(err)
		}
		at, err := r.At(trim, on)
		if err != nil {
			t.Fatal(err)
		}
		inside := func(what string, f units.Force, b purchase.ForceBand) {
			t.Helper()
			slop := units.Force(1e-9 * (1 + math.Abs(f.In(units.Newton))))
			if f < b.Least-slop || f > b.Most+slop || b.Value < b.Least || b.Value > b.Most {
				t.Fatalf("%s: %v is not in %+v", what, f, b)
			}
			if l.Drag == 0 && b.Most-b.Least > 1e-8*(1+units.Abs(f)) {
				t.Fatalf("%s: %+v without drag", what, b)
			}
		}
		for i, b := range at.Blocks {
			inside(b.Name, b.Load.Up, rest.Blocks[i].Up)
			inside(b.Name, b.Load.Across, rest.Blocks[i].Across)
		}
		inside("rope lock", at.Lock, rest.Lock)
		for _, way := range []purchase.Way{purchase.Out, purchase.In} {
			run, err := r.Run(trim, on, way)
			if err != nil {
				t.Fatal(err)
			}
			for i, rope := range run.Lift {
				for k, p := range rope.Parts {
					band := rest.Lift[i].Parts[k]
					inside(rope.Name, p.TensionFrom, band.TensionFrom)
					inside(rope.Name, p.TensionTo, band.TensionTo)
				}
				got, band := rope.Parts[2].TensionTo, rest.Lift[i].Parts[2].TensionTo
				end := band.Most
				if way == purchase.In {
					end = band.Least
				}
				if !near.Abs(got.In(units.Newton), end.In(units.Newton), 1e-8*(1+end.In(units.Newton))) {
					t.Fatalf("%v at the arbor flying %v, the end of its band is %v", got, way, end)
				}
			}
		}
	})
}

// Without a hand line there are the lift lines' bands.
func TestRestWithoutHandLine(t *testing.T) {
	l := weightless(purchase.Double)
	l.Drag = 0.02
	reeving := l.Reeving()
	reeving.Hand = purchase.Rope{}
	alone, err := reeving.Rig()
	if err != nil {
		t.Fatal(err)
	}
	whole, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: evenly(5, 100), Arbor: 100}
	got, err := alone.Rest(3, on)
	if err != nil {
		t.Fatal(err)
	}
	want, err := whole.Rest(3, on)
	if err != nil {
		t.Fatal(err)
	}
	same(t, want.Lift, got.Lift)
	same(t, want.Load(purchase.LoftBlock(2)), got.Load(purchase.LoftBlock(2)))
	if len(got.Hand.Parts) != 0 {
		t.Errorf("%+v", got.Hand)
	}
}

// borne is what a one-line set of weightless ropes bears: loads upward, N.
type borne struct{ top, head, beam, rail, lock, above float64 }

// whole works it out by hand, with the factor that each sheave happens to hold: the loads on the arbor's top, the head block and
// all of the head beam and the rail, what the lock is asked for, and the tension above it. A held idler lets the rope
// below the lock take what the rope above cannot give up.
func whole(kind purchase.Kind, pull, arbor, idler float64, held bool, f []float64) borne {
	atArbor := pull * f[0] * f[1]
	lifts, hand := atArbor, 1.0 // on the arbor; of the hand line there, for a unit above its head block
	foot := 1.0                 // of the inner rope and the dead end, for a unit of the inner rope
	deadLift, deadHand, deadRail := 0.0, 0.0, 0.0
	if kind == purchase.Double {
		deadLift, deadHand, deadRail = atArbor*f[5], f[6], f[7]
		lifts += deadLift
		hand += f[6]
		foot += f[7]
	}
	inner := idler / (1 + f[2])
	down := (arbor - lifts + inner*foot) / hand // past the head block, at the arbor's top
	if down < 0 && held {
		inner, down = (lifts-arbor)/foot, 0
	}
	below := inner * f[2]
	b := borne{above: down / f[3]}
	b.lock = below - b.above
	if down < 0 {
		down, b.above = 0, 0 // the lock alone does not hold it
	}
	b.top, b.head = lifts+down*hand, -atArbor-b.above-down
	b.beam, b.rail = b.head-deadLift-down*deadHand, inner*deadRail-(below-b.above)
	return b
}

// The ends of what is common to lift lines and hand line are those over every corner of the whole set, taut or not.
func TestRestOfTheWholeSet(t *testing.T) {
	const c = 0.02
	for _, one := range []struct {
		name               string
		kind               purchase.Kind
		pull, arbor, idler float64
		held               bool
	}{
		{"single", purchase.Single, 1000, 1000, 400, false},
		{"single, arbor-heavy", purchase.Single, 1000, 1150, 400, false},
		{"double", purchase.Double, 1000, 2050, 600, false},
		{"double, arbor-heavy", purchase.Double, 1000, 2300, 600, false},
		{"single, the lock may not hold it", purchase.Single, 1000, 950, 150, false},
		{"single, the lock does not hold it", purchase.Single, 1000, 800, 100, false},
		{"double, the lock does not hold it", purchase.Double, 1000, 1700, 100, false},
		{"single, held idler", purchase.Single, 1000, 950, 20, true},
		{"double, held idler", purchase.Double, 1000, 1990, 20, true},
		{"single, held idler below which the rope takes all", purchase.Single, 1000, 700, 20, true},
		{"double, held idler below which the rope takes all", purchase.Double, 1000, 1500, 20, true},
		{"double, held idler, taut", purchase.Double, 1000, 2050, 600, true},
	} {
		l := weightless(one.kind)
		l.Loft, l.Drag = l.Loft[:1], c
		r, err := l.Rig()
		if err != nil {
			t.Fatal(err)
		}
		k := (1 + c) / (1 - c)
		b := 1 - c*c
		q := (1 + math.Sqrt(1-b*b)) / b // at a quarter of a turn
		sheaves := []float64{q, q, k, k}
		if one.kind == purchase.Double {
			sheaves = append(sheaves, k, k, k, k)
		}
		none := borne{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}
		least, most := none, borne{-none.top, -none.top, -none.top, -none.top, -none.top, -none.top}
		corners(sheaves, func(f []float64) {
			b := whole(one.kind, one.pull, one.arbor, one.idler, one.held, f)
			least = borne{min(least.top, b.top), min(least.head, b.head), min(least.beam, b.beam), min(least.rail, b.rail), min(least.lock, b.lock), min(least.above, b.above)}
			most = borne{max(most.top, b.top), max(most.head, b.head), max(most.beam, b.beam), max(most.rail, b.rail), max(most.lock, b.lock), max(most.above, b.above)}
		})
		on := purchase.Bodies{Pulls: evenly(1, units.Force(one.pull)), Arbor: units.Force(one.arbor).Mass(units.StandardGravity), Idler: units.Force(one.idler).Mass(units.StandardGravity)}
		if one.held {
			on.Base, on.Idler = units.Force(one.idler/2), 0
		}
		got, err := r.Rest(6, on)
		if err != nil {
			t.Fatal(err)
		}
		outer := got.Hand.Parts[len(got.Hand.Parts)-2]
		if one.kind == purchase.Double {
			outer = got.Hand.Parts[2]
		}
		for _, is := range []struct {
			what        string
			got         purchase.ForceBand
			least, most float64
			load        bool
		}{
			{"arbor top", got.Load(purchase.ArborTop).Up, least.top, most.top, true},
			{"head block", got.Load(purchase.HeadBlock).Up, least.head, most.head, true},
			{"head beam", got.On(purchase.HeadBeam).Up, least.beam, most.beam, true},
			{"rail", got.On(purchase.Rail).Up, least.rail, most.rail, true},
			{"rope lock", got.Lock, least.lock, most.lock, false},
			{"above the lock", outer.TensionTo, least.above, most.above, false},
		} {
			low, high := is.got.Least.In(units.Newton), is.got.Most.In(units.Newton)
			exact := near.Abs(low, is.least, 1e-6) && near.Abs(high, is.most, 1e-6)
			if is.load && least.above == 0 {
				exact = low <= is.least+1e-6 && high >= is.most-1e-6 // where a rope may go slack it need only hold them
			}
			if !exact || is.got.Value < is.got.Least || is.got.Value > is.got.Most {
				t.Errorf("%s, %s: %v to %v, want %v to %v N", one.name, is.what, is.got.Least, is.got.Most, is.least, is.most)
			}
		}
		var bodies []purchase.Body
		for _, b := range got.Bodies {
			bodies = append(bodies, b.On)
		}
		same(t, []purchase.Body{purchase.Grid, purchase.HeadBeam, purchase.Rail}, bodies)
		if none := got.Load("no such block"); none != (purchase.BlockBand{}) {
			t.Errorf("%s: %+v of a block that is none", one.name, none)
		}
		if none := got.On(purchase.Arbor); none != (purchase.BlockBand{}) {
			t.Errorf("%s: %+v on a body that moves", one.name, none)
		}
	}
}
