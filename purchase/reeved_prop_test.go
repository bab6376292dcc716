package purchase_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

const g = 9.80665 // m/s², standard gravity, exact

// A rope keeps its length while the set runs, whatever its reeving, and the
// ratio is the parts at the arbor over those at the batten.
func TestPropTravelIsConserved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		r, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		if !near.Rel(r.Ratio(), d.ratio(), 1e-12) {
			t.Fatalf("ratio %v, want %v", r.Ratio(), d.ratio())
		}
		if want := float64(d.hand) / d.ratio(); !near.Rel(r.HandRatio(), want, 1e-12) {
			t.Fatalf("hand line runs %v for each unit of the batten's, want %v", r.HandRatio(), want)
		}
		lowest, highest := r.Reach()
		lo, hi := lowest.In(units.Metre), highest.In(units.Metre)
		trim := lo + (hi-lo)*rapid.Float64Range(0.01, 0.99).Draw(t, "trim")
		top, err := r.ArborTop(units.Length(trim))
		if err != nil {
			t.Fatal(err)
		}
		for _, rope := range d.ropes() {
			var before, after float64
			d.parts(rope, d.Trim.In(units.Metre), d.ArborTop.In(units.Metre), func(_, _ purchase.Stop, _, _, l float64) { before += l })
			d.parts(rope, trim, top.In(units.Metre), func(_, _ purchase.Stop, _, _, l float64) { after += l })
			if !near.Abs(before, after, 1e-9) {
				t.Fatalf("%s is %v m long, was made off at %v m", rope.Name, after, before)
			}
		}
	})
}

// The imbalance is the slope of the potential energy over the batten's trim. The
// energy is added up here from masses and heights alone, with no tension in it;
// with plumb parts it is a quadratic, for which the central difference is exact.
func TestPropImbalanceIsTheSlopeOfEnergy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		r, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		carried := rapid.Float64Range(0, 1000).Draw(t, "carried")
		arbor := rapid.Float64Range(0, 2000).Draw(t, "arbor")
		lowest, highest := r.Reach()
		lo, hi := lowest.In(units.Metre), highest.In(units.Metre)
		trim := lo + (hi-lo)*rapid.Float64Range(0.1, 0.9).Draw(t, "trim")
		energy := func(x float64) float64 {
			top, err := r.ArborTop(units.Length(x))
			if err != nil {
				t.Fatal(err)
			}
			y := top.In(units.Metre)
			e := g * (carried*x + arbor*y)
			for _, rope := range d.ropes() {
				w := rope.Mass.In(units.KilogramPerMetre) * g
				d.parts(rope, x, y, func(_, _ purchase.Stop, za, zb, l float64) { e += w * l * (za + zb) / 2 })
			}
			return e
		}
		step := (hi - lo) / 20
		slope := (energy(trim+step) - energy(trim-step)) / (2 * step)
		got, err := r.Imbalance(units.Length(trim), units.Mass(carried), units.Mass(arbor))
		if err != nil {
			t.Fatal(err)
		}
		if !near.Rel(got.In(units.Newton), slope, 1e-7) {
			t.Fatalf("imbalance %v N, slope of the energy %v N", got.In(units.Newton), slope)
		}
		balancing, err := r.Counterweight(units.Length(trim), units.Mass(carried))
		if err != nil {
			t.Fatal(err)
		}
		if left, _ := r.Imbalance(units.Length(trim), units.Mass(carried), balancing); !near.Abs(left.In(units.Newton), 0, 1e-8) {
			t.Fatalf("with its counterweight the set is out of balance by %v", left)
		}
	})
}

// The formula for plain vertical paths with one part at the batten:
// I(x) = carried·g + w·(y − x) + w_h·a·M/N − A·g/N.
func TestPropImbalanceClosedForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		if d.atBatten != 1 {
			t.Skip("the formula is for one part at the batten")
		}
		r, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		// The formula takes the deck ends of a rope at the height of what it is tied
		// to, so every fixed stop may be anywhere.
		carried := rapid.Float64Range(0, 1000).Draw(t, "carried")
		arbor := rapid.Float64Range(0, 2000).Draw(t, "arbor")
		x := rapid.Float64Range(8, 10).Draw(t, "trim")
		top, err := r.ArborTop(units.Length(x))
		if err != nil {
			t.Fatal(err)
		}
		w := float64(d.lines) * d.Lift[0].Mass.In(units.KilogramPerMetre) * g
		wh := d.Hand.Mass.In(units.KilogramPerMetre) * g
		n, m := float64(d.atArbor), float64(d.hand)
		want := carried*g + w*(top.In(units.Metre)-x) + wh*d.arborLength*m/n - arbor*g/n
		got, err := r.Imbalance(units.Length(x), units.Mass(carried), units.Mass(arbor))
		if err != nil {
			t.Fatal(err)
		}
		if !near.Rel(got.In(units.Newton), want, 1e-9) {
			t.Fatalf("imbalance %v N, formula %v N", got.In(units.Newton), want)
		}
	})
}

// Every body is in balance: the ropes hold each one's weight, and the building
// holds everything that hangs plumb.
func TestPropForcesBalanceOnEveryBody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		r, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		// Far enough from slack: what is out of balance stays below half the idler's weight.
		on := purchase.Bodies{Idler: units.Mass(rapid.Float64Range(100, 500).Draw(t, "idler"))}
		var carried float64
		for range d.lines {
			pull := rapid.Float64Range(500, 3000).Draw(t, "pull")
			carried += pull
			on.Pulls = append(on.Pulls, units.Force(pull))
		}
		const trim = 9.5
		balancing, err := r.Counterweight(trim, units.Mass(carried/g))
		if err != nil {
			t.Fatal(err)
		}
		on.Arbor = max(balancing+units.Mass(rapid.Float64Range(-10, 10).Draw(t, "too much")), 0)
		st, err := r.At(trim, on)
		if err != nil {
			t.Fatal(err)
		}
		for _, rope := range append(st.Lift, st.Hand) {
			if rope.Slack {
				t.Skip("a slack rope cannot hold what is out of balance")
			}
		}
		top, _ := r.ArborTop(trim)
		plumbRope := 0.0 // the weight of all rope that hangs: what a level run weighs is left out
		for _, rope := range d.ropes() {
			w := rope.Mass.In(units.KilogramPerMetre) * g
			d.parts(rope, trim, top.In(units.Metre), func(a, b purchase.Stop, za, zb, l float64) {
				plumbRope += w * math.Abs(zb-za) * math.Abs(zb-za) / l
			})
		}
		var building purchase.Vector
		for _, body := range []purchase.Body{purchase.Building, purchase.Grid, purchase.HeadBeam, purchase.Rail} {
			building = building.Add(st.On(body))
		}
		arbor, idler := on.Arbor.In(units.Kilogram)*g, on.Idler.In(units.Kilogram)*g
		if got := st.On(purchase.Arbor).Up.In(units.Newton); !near.Rel(got, arbor, 1e-9) {
			t.Fatalf("ropes hold the arbor up with %v N, it weighs %v N", got, arbor)
		}
		if got := st.On(purchase.Idler).Up.In(units.Newton); !near.Rel(got, idler, 1e-9) {
			t.Fatalf("ropes hold the idler up with %v N, it weighs %v N", got, idler)
		}
		slanting := d.slanting()
		if got, want := -building.Up.In(units.Newton), carried+arbor+idler+plumbRope; !slanting && !near.Rel(got, want, 1e-9) {
			t.Fatalf("building holds %v N, what hangs weighs %v N", got, want)
		}
		if got := building.Across.In(units.Newton); !slanting && !near.Abs(got, 0, 1e-6) {
			t.Fatalf("the building is pushed sideways by %v N", got)
		}
	})
}

// slanting tells whether some run between fixed blocks is neither plumb nor
// level. Its own weight across the run is left out, so sums over the building
// miss it.
func (d drawn) slanting() bool {
	found := false
	for _, rope := range d.ropes() {
		d.parts(rope, 9, 11, func(a, b purchase.Stop, za, zb, _ float64) {
			found = found || (a.Across != b.Across && za != zb && rope.Mass != 0)
		})
	}
	return found
}

// An extra fixed sheave changes no frictionless tension beyond it.
func TestPropExtraFixedSheave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := weightless(purchase.Double)
		l.LiftMass = units.LineMass(rapid.Float64Range(0, 1).Draw(t, "lift line mass"))
		plain := l.Reeving()
		extra := l.Reeving()
		mule := purchase.Stop{Name: "mule block", On: purchase.Building, Across: 1, Height: units.Length(rapid.Float64Range(12, 25).Draw(t, "height"))}
		for i := range extra.Lift {
			path := extra.Lift[i].Path
			extra.Lift[i].Path = append(append(append([]purchase.Stop{}, path[:2]...), mule), path[2:]...)
		}
		on := purchase.Bodies{Pulls: make([]units.Force, 5), Arbor: 400, Idler: 30}
		for i := range on.Pulls {
			on.Pulls[i] = units.Force(rapid.Float64Range(300, 900).Draw(t, "pull"))
		}
		a, b := state(t, plain, on), state(t, extra, on)
		for i := range a.Lift {
			pa, pb := a.Lift[i].Parts, b.Lift[i].Parts
			if !near.Rel(pa[2].TensionTo.In(units.Newton), pb[3].TensionTo.In(units.Newton), 1e-12) {
				t.Fatalf("at the arbor %v with the mule block, %v without", pb[3].TensionTo, pa[2].TensionTo)
			}
		}
		if !near.Rel(a.Imbalance.In(units.Newton), b.Imbalance.In(units.Newton), 1e-9) {
			t.Fatalf("imbalance %v with the mule block, %v without", b.Imbalance, a.Imbalance)
		}
	})
}

func state(t *rapid.T, r purchase.Reeving, on purchase.Bodies) purchase.State {
	rigged, err := r.Rig()
	if err != nil {
		t.Fatal(err)
	}
	st, err := rigged.At(20*units.Foot, on)
	if err != nil {
		t.Fatal(err)
	}
	return st
}
