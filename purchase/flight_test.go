package purchase_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// roped is a set with five lines of 0.11 lb/ft and a reach of 55 ft and more.
func roped(kind purchase.Kind) purchase.Layout {
	l := weightless(kind)
	l.HeadBlock, l.ArborTop, l.LiftMass = 64*units.Foot, 62*units.Foot, 11*units.PoundPerHundredFeet
	if kind == purchase.Double {
		l.DeadEnd = 65 * units.Foot
	}
	for i := range l.Loft {
		l.Loft[i].Height = 64 * units.Foot
	}
	return l
}

// Problem:   how much the lift lines' weight shifts over the travel.
// Given:     five 1/4 in lines of 0.11 lb/ft, 55 ft of batten travel
// Expected:  5·0.11·55·(1 + 1/N): 60.5 lb in single purchase, 45.375 lb in double (as is said in the trade: 60 and 45)
// Source:    counterweight practice; equilibrium
// Tolerance: rounding; half a pound and more where the trade rounds
func TestVerifyDriftOfFiveLines(t *testing.T) {
	said := map[purchase.Kind]float64{purchase.Single: 60, purchase.Double: 45}
	for kind, want := range map[purchase.Kind]float64{purchase.Single: 60.5, purchase.Double: 45.375} {
		r, err := roped(kind).Rig()
		if err != nil {
			t.Fatal(err)
		}
		d, err := r.Drift(purchase.Flight{Low: 3 * units.Foot, High: 58 * units.Foot, Carried: 500 * units.Pound, Arbor: 500 * units.Pound})
		if err != nil {
			t.Fatal(err)
		}
		got := (d.Low.Imbalance - d.High.Imbalance).In(units.PoundForce)
		row := verification.Row{Key: "drift/" + kind.String(), Source: "equilibrium", Place: "5·0.11·55·(1 + 1/N)", What: "drift of five lines of 0.11 lb/ft over 55 ft, " + kind.String(), Why: "exact arithmetic, but for rounding"}
		row.Of("worked out", "lbf", want, 1e-9).Check(t, got)
		row.From("counterweight practice", "as is said").Because("said in round numbers").Of("said", "lb", said[kind], 0.5+1e-9).Check(t, got)
		if d.Most != d.Low || d.Least != d.High || d.Turn != d.Low {
			t.Errorf("%v: ropes alone make it straight, batten-heavy below: %+v", kind, d)
		}
	}
}

// The chain that takes the drift out, by hand: w = 0.55 lb/ft of lines drifts (1 + 1/N)·w for each foot; on the batten a piled
// chain answers that with its own mass, on the arbor with 1/N² of it, and a looped one with half.
func TestEvenChain(t *testing.T) {
	for _, c := range []struct {
		name   string
		kind   purchase.Kind
		chain  purchase.Chain
		want   float64 // lb/ft
		reason string
	}{
		{"single, arbor, piled", purchase.Single, purchase.Chain{On: purchase.Arbor, Below: 6 * units.Foot, Hung: purchase.Piled, Length: 60 * units.Foot}, 1.1, "twice the lines"},
		{"single, arbor, looped", purchase.Single, purchase.Chain{On: purchase.Arbor, Below: 6 * units.Foot, Hung: purchase.Looped, To: 30 * units.Foot, Length: 30 * units.Foot}, 2.2, "half as much moves over"},
		{"single, batten, piled", purchase.Single, purchase.Chain{On: purchase.Batten, Hung: purchase.Piled, Length: 60 * units.Foot}, 1.1, "the batten goes as far as the arbor"},
		{"double, batten, looped", purchase.Double, purchase.Chain{On: purchase.Batten, Hung: purchase.Looped, To: 32 * units.Foot, Length: 30 * units.Foot}, 1.65, "one and a half times the lines, and twice that"},
		{"double, arbor, piled", purchase.Double, purchase.Chain{On: purchase.Arbor, Below: 6 * units.Foot, Hung: purchase.Piled, Floor: 14 * units.Foot, Length: 60 * units.Foot}, 3.3, "half the way and half the pull"},
		{"double, arbor, looped", purchase.Double, purchase.Chain{On: purchase.Arbor, Below: 6 * units.Foot, Hung: purchase.Looped, To: 42 * units.Foot, Length: 16 * units.Foot}, 6.6, "and half again"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := roped(c.kind).Rig()
			if err != nil {
				t.Fatal(err)
			}
			f := purchase.Flight{Low: 4 * units.Foot, High: 58 * units.Foot, Carried: 500 * units.Pound, Arbor: 1000 * units.Pound, Chain: c.chain}
			m, err := r.EvenChain(f)
			if err != nil {
				t.Fatal(err)
			}
			if got := m.In(units.PoundPerFoot); !near.Rel(got, c.want, 1e-9) {
				t.Errorf("chain of %v lb/ft, want %v: %s", got, c.want, c.reason)
			}
			f.Chain.Mass = m
			d, err := r.Drift(f)
			if err != nil {
				t.Fatal(err)
			}
			if shift := (d.Most.Imbalance - d.Least.Imbalance).In(units.Newton); !near.Abs(shift, 0, 1e-9) {
				t.Errorf("with it the balance still drifts by %v N", shift)
			}
			if d.Most != d.Low || d.Least != d.Low {
				t.Errorf("of equals the lowest is told, not %v and %v", d.Most.Trim, d.Least.Trim)
			}
			f.Arbor = d.Even
			if d, err = r.Drift(f); err != nil {
				t.Fatal(err)
			}
			if first, last, ok := d.Balanced(); !ok || first != f.Low || last != f.High {
				t.Errorf("balanced from %v to %v, %v; want all the way", first, last, ok)
			}
		})
	}
}

// drawChain hangs a chain that fits the flight, and may run out on the way.
func drawChain(t *rapid.T, r *purchase.Reeved, low, high units.Length) purchase.Chain {
	c := purchase.Chain{On: purchase.Arbor, Floor: -30, Mass: units.LineMass(rapid.Float64Range(0, 5).Draw(t, "chain mass"))}
	if rapid.Bool().Draw(t, "on the batten") {
		c.On = purchase.Batten
	}
	c.Below = units.Length(rapid.Float64Range(0, 3).Draw(t, "chain below"))
	c.Hung = purchase.Piled
	c.Length = units.Length(rapid.Float64Range(20, 60).Draw(t, "chain length"))
	if rapid.Bool().Draw(t, "looped") {
		c.Hung, c.To = purchase.Looped, units.Length(rapid.Float64Range(0, 15).Draw(t, "chain to"))
		c.Length = units.Length(rapid.Float64Range(45, 120).Draw(t, "loop length"))
	}
	return c
}

func drawFlight(t *rapid.T) (drawn, *purchase.Reeved, purchase.Flight) {
	d := drawReeving(t)
	r, err := d.Rig()
	if err != nil {
		t.Fatal(err)
	}
	lowest, highest := r.Reach()
	span := highest - lowest
	f := purchase.Flight{
		Low: lowest + span.Scale(rapid.Float64Range(0.01, 0.5).Draw(t, "low")), High: lowest + span.Scale(rapid.Float64Range(0.5, 0.99).Draw(t, "high")),
		Carried: units.Mass(rapid.Float64Range(0, 1000).Draw(t, "carried")), Arbor: units.Mass(rapid.Float64Range(0, 2000).Draw(t, "arbor")),
	}
	if rapid.Bool().Draw(t, "chain") {
		f.Chain = drawChain(t, r, f.Low, f.High)
	}
	return d, r, f
}

// energy is the potential energy of what hangs, ropes and chain, added up from masses and heights alone.
func (d drawn) energy(r *purchase.Reeved, f purchase.Flight, trim units.Length) float64 {
	top, err := r.ArborTop(trim)
	if err != nil {
		return math.NaN()
	}
	x, y := trim.In(units.Metre), top.In(units.Metre)
	e := g * (f.Carried.In(units.Kilogram)*x + f.Arbor.In(units.Kilogram)*y)
	for _, rope := range d.ropes() {
		w := rope.Mass.In(units.KilogramPerMetre) * g
		d.parts(rope, x, y, func(_, _ purchase.Stop, za, zb, l float64) { e += w * l * (za + zb) / 2 })
	}
	c := f.Chain
	z := y
	if c.On == purchase.Batten {
		z = x
	}
	z -= c.Below.In(units.Metre)
	floor, to, length := c.Floor.In(units.Metre), c.To.In(units.Metre), c.Length.In(units.Metre)
	leg := func(top, foot float64) float64 { return (top - foot) * (top + foot) / 2 }
	var chain float64
	switch {
	case c.Hung == purchase.Looped && (z+to-length)/2 > floor:
		foot := (z + to - length) / 2
		chain = leg(z, foot) + leg(to, foot)
	case c.Hung == purchase.Looped:
		chain = leg(z, floor) + leg(to, floor) + (length-(z-floor)-(to-floor))*floor
	case z-floor > length:
		chain = leg(z, z-length)
	default:
		chain = leg(z, floor) + (length-(z-floor))*floor
	}
	return e + g*c.Mass.In(units.KilogramPerMetre)*chain
}

// The area under the drift is the energy that the flight takes: the imbalance is its slope, and turns where Drift
// says and nowhere else.
func TestPropDriftIsTheEnergyOfTheFlight(t *testing.T) {
	turned := 0
	rapid.Check(t, func(t *rapid.T) {
		d, r, f := drawFlight(t)
		got, err := r.Drift(f)
		if err != nil {
			t.Fatal(err)
		}
		if got.Turn != got.Low {
			turned++
		}
		area := func(a, b purchase.FlightPoint) float64 {
			return ((a.Imbalance + b.Imbalance).Scale(0.5)).Work(b.Trim - a.Trim).In(units.Joule)
		}
		for _, part := range [][2]purchase.FlightPoint{{got.Low, got.Turn}, {got.Turn, got.High}} {
			want := d.energy(r, f, part[1].Trim) - d.energy(r, f, part[0].Trim)
			if !near.Abs(area(part[0], part[1]), want, 1e-6) {
				t.Fatalf("from %v to %v it takes %v J, the area is %v", part[0].Trim, part[1].Trim, want, area(part[0], part[1]))
			}
		}
		// The slope at a trim between: a piece is a quadratic, for which a central difference is exact.
		a, b := got.Turn, got.High
		if rapid.Bool().Draw(t, "below the turn") {
			a, b = got.Low, got.Turn
		}
		if b.Trim-a.Trim > 0.1 {
			var p [3]purchase.FlightPoint
			part := f
			part.Low, part.High = a.Trim, b.Trim
			if err := r.Curve(part, p[:]); err != nil {
				t.Fatal(err)
			}
			step := (b.Trim - a.Trim).Scale(0.4)
			slope := (d.energy(r, f, p[1].Trim+step) - d.energy(r, f, p[1].Trim-step)) / (2 * step.In(units.Metre))
			if got := p[1].Imbalance.In(units.Newton); !near.Rel(got, slope, 1e-7) {
				t.Fatalf("imbalance %v N, slope of the energy %v N", got, slope)
			}
		}
	})
	if turned == 0 {
		t.Error("no chain ran out: the turn was not tried")
	}
}

// The curve never leaves the extremes, meets the ends exactly, and is Imbalance itself with the chain's share added.
func TestPropCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r, f := drawFlight(t)
		d, err := r.Drift(f)
		if err != nil {
			t.Fatal(err)
		}
		points := make([]purchase.FlightPoint, rapid.IntRange(1, 30).Draw(t, "points"))
		if err := r.Curve(f, points); err != nil {
			t.Fatal(err)
		}
		if points[0] != d.Low || (len(points) > 1 && points[len(points)-1] != d.High) {
			t.Fatal("the curve does not end where the drift does")
		}
		for _, p := range points {
			plain, err := r.Imbalance(p.Trim, f.Carried, f.Arbor)
			if err != nil {
				t.Fatal(err)
			}
			if !near.Rel((plain + p.Chain).In(units.Newton), p.Imbalance.In(units.Newton), 1e-12) {
				t.Fatalf("imbalance %v and chain %v make %v", plain, p.Chain, p.Imbalance)
			}
			if !near.Rel((d.Carried + p.Ropes + p.Chain - d.Arbor).In(units.Newton), p.Imbalance.In(units.Newton), 1e-9) {
				t.Fatalf("the terms do not add up: %+v", p)
			}
			if p.Imbalance > d.Most.Imbalance+1e-8 || p.Imbalance < d.Least.Imbalance-1e-8 {
				t.Fatalf("%v lies outside %v to %v", p.Imbalance, d.Least.Imbalance, d.Most.Imbalance)
			}
		}
	})
}

// With Even at the arbor the extremes are equal and opposite, and where the set is said to balance it does.
func TestPropEvenAndBalanced(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r, f := drawFlight(t)
		d, err := r.Drift(f)
		if err != nil {
			t.Fatal(err)
		}
		if d.Even >= 0 && rapid.Bool().Draw(t, "even") {
			// With a heavier arbor two ends were one that lay within a part in 10^12 of its weight.
			tol := 1e-9*max(1, d.Carried.In(units.Newton)) + 1e-11*d.Arbor.In(units.Newton)
			f.Arbor = d.Even
			if d, err = r.Drift(f); err != nil {
				t.Fatal(err)
			}
			if sum := d.Most.Imbalance + d.Least.Imbalance; !near.Abs(sum.In(units.Newton), 0, tol) {
				t.Fatalf("extremes %v and %v", d.Most.Imbalance, d.Least.Imbalance)
			}
		}
		first, last, ok := d.Balanced()
		if !ok {
			if d.Most.Imbalance > 0 && d.Least.Imbalance < 0 {
				t.Fatal("somewhere between batten-heavy and arbor-heavy it balances")
			}
			return
		}
		for _, x := range []units.Length{first, last} {
			if x < f.Low || x > f.High {
				t.Fatalf("%v is not between the trims", x)
			}
			at := f
			at.Low, at.High = x, x
			p, err := r.Drift(at)
			if err != nil {
				t.Fatal(err)
			}
			if !near.Abs(p.Low.Imbalance.In(units.Newton), 0, 1e-8) {
				t.Fatalf("at %v it is out of balance by %v", x, p.Low.Imbalance)
			}
		}
	})
}

// A piled chain that leaves the floor turns the drift, so that the set balances twice: the lines of a double set drift by
// 0.825 lbf/ft, a chain of 1.65 lb/ft on the batten makes that rise until it is all in the air.
func TestBalancedTwice(t *testing.T) {
	r, err := roped(purchase.Double).Rig()
	if err != nil {
		t.Fatal(err)
	}
	f := purchase.Flight{
		Low: 4 * units.Foot, High: 58 * units.Foot, Carried: 500 * units.Pound,
		Chain: purchase.Chain{On: purchase.Batten, Hung: purchase.Piled, Length: 30 * units.Foot, Mass: 1.65 * units.PoundPerFoot},
	}
	d, err := r.Drift(f)
	if err != nil {
		t.Fatal(err)
	}
	if d.Turn != d.Most || !near.Abs(d.Turn.Trim.In(units.Foot), 30, 1e-9) {
		t.Fatalf("turns at %v, want at 30 ft where the chain leaves the deck", d.Turn.Trim)
	}
	f.Arbor = units.Mass(d.Turn.Imbalance.Scale(r.Ratio()).Mass(units.StandardGravity)) - 2*8.25*units.Pound
	if d, err = r.Drift(f); err != nil {
		t.Fatal(err)
	}
	first, last, ok := d.Balanced()
	if !ok || !near.Abs(first.In(units.Foot), 20, 1e-6) || !near.Abs(last.In(units.Foot), 40, 1e-6) {
		t.Errorf("balanced at %v and %v ft, want at 20 and 40", first.In(units.Foot), last.In(units.Foot))
	}
}

// Of equals the lowest is told however much hangs beside: a chain that keeps a set even keeps it so under a batten of a hundred tonnes, whose
// weight alone rounds to more than what the ropes weigh a part in 10^12 of.
func TestEqualsBesideMuch(t *testing.T) {
	l := roped(purchase.Single)
	l.LiftMass = 1e-5
	r := mustRig(t, l)
	f := purchase.Flight{Low: 2, High: 9, Chain: purchase.Chain{On: purchase.Batten, Hung: purchase.Piled, Length: 20}}
	var err error
	if f.Chain.Mass, err = r.EvenChain(f); err != nil {
		t.Fatal(err)
	}
	for i := range 50 {
		heavy := units.Mass(1e5 + 137*float64(i))
		for _, loads := range [][2]units.Mass{{heavy, 0}, {0, heavy}, {heavy, heavy}} {
			f.Carried, f.Arbor = loads[0], loads[1]
			d, err := r.Drift(f)
			if err != nil || d.Most != d.Low || d.Least != d.Low {
				t.Fatalf("%v and %v: %+v, %v", f.Carried, f.Arbor, d, err)
			}
		}
	}
}

// The imbalance is what the ropes make of it and the weight carried less the arbor's over the ratio, whatever the masses: also one below
// nothing, as of what is taken off, and one larger than any set's.
func TestPropImbalanceIsTheSumOfItsTerms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		r, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		lowest, highest := r.Reach()
		trim := lowest + (highest - lowest).Scale(rapid.Float64Range(0.01, 0.99).Draw(t, "trim"))
		masses := rapid.SampledFrom([]units.Mass{0, 1, 750, -5, -2e6, 3e6})
		carried, arbor := masses.Draw(t, "carried"), masses.Draw(t, "arbor")
		ropes, err := r.RopeImbalance(trim)
		whole, also := r.Imbalance(trim, carried, arbor)
		if err != nil || also != nil {
			t.Fatal(err, also)
		}
		want := (float64(carried) - float64(arbor)/d.ratio()) * g
		if got := (whole - ropes).In(units.Newton); !near.Rel(got, want, 1e-9) {
			t.Fatalf("%v and %v: imbalance %v, of which the ropes' %v; want the rest to be %v N", carried, arbor, whole, ropes, want)
		}
		// A rope without weight makes none of it.
		for _, rope := range append(d.Lift, d.Hand) {
			if rope.Mass != 0 {
				return
			}
		}
		if ropes != 0 {
			t.Fatalf("ropes without weight make %v", ropes)
		}
	})
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple} {
		l := roped(kind)
		l.DeadEnd, l.LiftMass = 65*units.Foot, 0
		if ropes, err := mustRig(t, l).RopeImbalance(5); err != nil || ropes != 0 {
			t.Errorf("%v: ropes without weight make %v, %v", kind, ropes, err)
		}
	}
}
