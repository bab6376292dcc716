package purchase_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// oneLine is a weightless set with one lift line.
func oneLine(kind purchase.Kind) purchase.Layout {
	l := weightless(kind)
	l.Loft = l.Loft[:1]
	return l
}

// massed is what hangs on one line.
func massed(batten, arbor, idler float64) purchase.Bodies {
	return purchase.Bodies{Pulls: []units.Force{units.Mass(batten).Weight(units.StandardGravity)}, Arbor: units.Mass(arbor), Idler: units.Mass(idler)}
}

// Problem:   two masses on one rope over a fixed sheave, and 2:1 with the heavier on the moving sheave
// Given:     single: 2 and 4 kg, 15 and 28 kg; double: batten and arbor in kg; printed with g 9.81, here scaled to it
// Expected:  a/g = (m2 − m1)/(m1 + m2); a/g = (B − A/2)/(B + A/4), downward positive
// Source:    Atwood problems, as on several teaching pages (3.27 and 2.966 m/s²); Engineering Mechanics, Example 14.23, for
// 2:1 with P 40 N on the single line, Q 60 N on the moving sheave, 1.783636 m/s²
// Tolerance: the sources' last place
func TestVerifyAtwoodInMotion(t *testing.T) {
	const g = 9.81
	for _, c := range []struct {
		name, source, place string
		kind                purchase.Kind
		batten, arbor       float64
		down, within        float64 // of the batten, m/s²
		why                 string
	}{
		{"2 and 4 kg", "Atwood problems", "", purchase.Single, 4, 2, 3.27, 1e-9, "a third of 9.81 is exact"},
		{"15 and 28 kg", "Atwood problems", "", purchase.Single, 28, 15, 2.966, 5e-4, "half the last digit"},
		{"2:1, 40 and 60 N", "Engineering Mechanics", "Example 14.23", purchase.Double, 40 / g, 60 / g, 1.783636, 5e-7, "half the last digit"},
	} {
		r, err := oneLine(c.kind).Rig()
		if err != nil {
			t.Fatal(err)
		}
		gain, err := r.Gain(30*units.Foot, massed(c.batten, c.arbor, 20), purchase.In, 0, purchase.Pulling{})
		if err != nil {
			t.Fatal(err)
		}
		verification.Row{Key: "atwood/in motion", Source: c.source, Place: c.place, What: "acceleration of a set let go", Why: c.why}.
			Of(c.name, "m/s²", c.down, c.within).Check(t, units.Ratio(gain, units.StandardGravity)*g)
	}
}

// Problem:   2:1 with the heavier on the moving sheave, at standard gravity
// Given:     batten and arbor, kg: 120 and 200, 100 and 240, 100 and 160
// Expected:  g(B − A/2)/(B + A/4), downward positive: 1.153724, −1.225831, 1.400950 m/s²
// Source:    conservation of energy
// Tolerance: half the last digit
func TestVerifyTwoToOneByEnergy(t *testing.T) {
	r, err := oneLine(purchase.Double).Rig()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ batten, arbor, down float64 }{{120, 200, 1.153724}, {100, 240, -1.225831}, {100, 160, 1.400950}} {
		gain, err := r.Gain(30*units.Foot, massed(c.batten, c.arbor, 20), purchase.In, 0, purchase.Pulling{})
		if err != nil {
			t.Fatal(err)
		}
		verification.Row{Key: "atwood/two to one", Source: "conservation of energy", Place: "g(B − A/2)/(B + A/4)", What: "acceleration of the batten", Why: "half the last digit"}.
			Of(fmt.Sprintf("%v and %v kg", c.batten, c.arbor), "m/s²", c.down, 5e-7).Check(t, gain.In(units.MetrePerSecondSquared))
	}
}

// Problem:   what a line bears under a weight that gains speed.
// Source:    Engineering Mechanics, Example 14.16 (a man of 500 N in a lift, 1 m/s²: 550.97 N as it starts up, 449.03 N as it
// slows down); Atwood problems (tension of the rope, the heavier mass going down)
// Given:     printed with a g of their own, here scaled to it
// Tolerance: half the last digit, but for 26.16 N, which is printed cut off as 26.1
func TestVerifyLinesWhileItGains(t *testing.T) {
	r, err := oneLine(purchase.Single).Rig()
	if err != nil {
		t.Fatal(err)
	}
	const half = "half the last digit"
	for _, c := range []struct {
		name, source, place string
		weight, gain, g     float64 // N, m/s², m/s²
		up                  bool
		start, stop, tol    float64 // N; a stop of 0 is not printed
		why                 string
	}{
		{"man of 500 N", "Engineering Mechanics", "Example 14.16", 500, 1, 9.81, true, 550.97, 449.03, 0.005, half},
		{"2 and 4 kg", "Atwood problems", "", 4 * 9.81, 9.81 / 3, 9.81, false, 26.1, 0, 0.1, "printed cut off"},
		{"5 and 2 kg", "Atwood problems", "", 5 * 9.8, 4.2, 9.8, false, 28, 0, 0.5, half},
		{"4 and 6 kg", "Atwood problems", "", 6 * 9.807, 9.807 / 5, 9.807, false, 47.1, 0, 0.05, half},
		{"15 and 28 kg", "Atwood problems", "", 28 * 9.81, 9.81 * 13 / 43, 9.81, false, 191.64, 0, 0.005, half},
	} {
		a := c.gain / c.g * units.StandardGravity.In(units.MetrePerSecondSquared)
		fly := purchase.Fly{From: 3, To: 9, Top: 1, Start: units.TimeSpan(1 / a), Stop: units.Length(1 / (2 * a)), On: massed(100, 100, 20)}
		if !c.up {
			fly.From, fly.To = fly.To, fly.From
		}
		got, err := r.Fly(fly)
		if err != nil {
			t.Fatal(err)
		}
		row := verification.Row{Key: "line while it gains/" + c.name, Source: c.source, Place: c.place, What: "pull of the line, " + c.name, Why: c.why}
		row.Of("starting", "N", c.start, c.tol).Check(t, c.weight*got.Phases[0].Lines)
		if c.stop != 0 {
			row.Of("stopping", "N", c.stop, c.tol).Check(t, c.weight*got.Phases[2].Lines)
		}
	}
}

// A balanced 500 lb set has 1000 lb moving in single and 1500 lb in double purchase, of which 1000 lb and 750 lb are felt.
//
// Source: conservation of energy: the arbor of a double purchase set runs half as fast, and a quarter of its mass is felt.
func TestVerifyFeltMass(t *testing.T) {
	for _, c := range []struct {
		kind         purchase.Kind
		moving, felt float64
	}{{purchase.Single, 1000, 1000}, {purchase.Double, 1500, 750}} {
		r, err := weightless(c.kind).Rig()
		if err != nil {
			t.Fatal(err)
		}
		f, err := r.Felt(20*units.Foot, 500*units.Pound, c.kind.Counterweight(500*units.Pound))
		if err != nil {
			t.Fatal(err)
		}
		set := verification.Row{Key: "felt/" + c.kind.String(), Source: "conservation of energy", What: "balanced 500 lb set", Why: "exact arithmetic, but for rounding"}
		set.Of("moving", "lb", c.moving, 1e-9).Check(t, f.Moving.In(units.Pound))
		set.Of("felt", "lb", c.felt, 1e-9).Check(t, f.Batten.In(units.Pound))
	}
}

// Ropes and rims by hand, double purchase, one line, from the batten at 3 m: 0.2 kg/m of wire from the batten up to the loft
// block, across and down to the arbor run at the batten's speed, the part to the dead end stands still; so with
// 0.3 kg/m of hand line, whose part at the rail stands still too. Sheaves: loft and head at the batten's speed, arbor's half.
func TestFeltOfRopesByHand(t *testing.T) {
	l := oneLine(purchase.Double)
	l.LiftMass, l.HandMass = 0.2, 0.3
	reeving := l.Reeving()
	reeving.Lift[0].Path[1].Rim, reeving.Lift[0].Path[2].Rim, reeving.Lift[0].Path[3].Rim = 2, 3, 4
	r, err := reeving.Rig()
	if err != nil {
		t.Fatal(err)
	}
	f, err := r.Felt(3, 100, 0)
	if err != nil {
		t.Fatal(err)
	}
	head, loft, dead := l.HeadBlock.In(units.Metre), l.Loft[0].Across.In(units.Metre), l.Idler.In(units.Metre)
	_ = dead
	top := l.ArborTop.In(units.Metre) - (3-l.Trim.In(units.Metre))/2
	foot := top - l.ArborLength.In(units.Metre)
	lift := 0.2 * ((head - 3) + loft + (head - top))
	hand := 0.3 * ((foot - l.Idler.In(units.Metre)) + (head - l.Idler.In(units.Metre)) + (head - top))
	want := 100 + lift + hand + 2 + 3 + 4.0/4
	if !near.Rel(f.Batten.In(units.Kilogram), want, 1e-12) {
		t.Errorf("%v felt, want %v kg: %+v", f.Batten, want, f.Rows)
	}
	if want := 100 + lift + hand + 9; !near.Rel(f.Moving.In(units.Kilogram), want, 1e-12) {
		t.Errorf("%v moves, want %v kg", f.Moving, want)
	}
}

// With drag, a single set by hand: each of the lift line's two sheaves q times as tight on the side it runs to, the hand
// line's head block and idler k times; the arbor's equation for the one acceleration.
func TestGainByHand(t *testing.T) {
	const c, batten, arbor, idler = 0.05, 120.0, 100.0, 20.0
	g := units.StandardGravity.In(units.MetrePerSecondSquared)
	k := (1 + c) / (1 - c)
	a, b := 1.0, 1-c*c // a is 1 − c² cos 90°
	q := (a + math.Sqrt(a*a-b*b)) / b
	l := oneLine(purchase.Single)
	l.Drag = c
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	// In: the batten sinks with x, the arbor rises with it. The lift line is q² times slacker at the arbor; the hand line
	// runs up to the idler from the head block: past the idler it is the tighter, at the foot, and slackest at the arbor's top.
	below := idler * g * k / (1 + k) // at the foot: the rope runs to it
	above := idler * g / (1 + k) / k
	// arbor·x = batten·(g − x)/q² + above − below − arbor·g
	want := (batten*g/q/q + above - below - arbor*g) / (arbor + batten/q/q)
	got, err := r.Gain(30*units.Foot, massed(batten, arbor, idler), purchase.In, 1, purchase.Pulling{})
	if err != nil || !near.Rel(got.In(units.MetrePerSecondSquared), want, 1e-12) {
		t.Errorf("%v, want %v m/s² (%v)", got, want, err)
	}
}

func drawMotion(t *rapid.T, drag bool) (*purchase.Reeved, purchase.Bodies) {
	l := weightless(rapid.SampledFrom([]purchase.Kind{purchase.Single, purchase.Double}).Draw(t, "kind"))
	l.LiftMass, l.HandMass = units.LineMass(rapid.Float64Range(0, 0.5).Draw(t, "lift")), units.LineMass(rapid.Float64Range(0, 0.5).Draw(t, "hand"))
	if drag {
		l.Drag = purchase.Drag(rapid.Float64Range(0.001, 0.1).Draw(t, "drag"))
	}
	reeving := l.Reeving()
	for _, rp := range append(reeving.Lift, reeving.Hand) {
		for i := 1; i < len(rp.Path)-1; i++ {
			rp.Path[i].Rim = units.Mass(rapid.Float64Range(0, 5).Draw(t, "rim"))
		}
	}
	r, err := reeving.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: evenly(5, units.Force(rapid.Float64Range(300, 900).Draw(t, "pull"))), Idler: 40}
	on.Arbor = units.Force(5 * rapid.Float64Range(0.7, 1.3).Draw(t, "arbor over batten") * on.Pulls[0].In(units.Newton) * r.Ratio()).Mass(units.StandardGravity)
	return r, on
}

func sumOf(forces []units.Force) (sum units.Force) {
	for _, f := range forces {
		sum += f
	}
	return sum
}

// Without drag the first moment's force is the imbalance and the mass the mass felt, whichever way it flies; and the energy
// at the stop is what the imbalance gave on the way, a straight line's area, all to rounding.
func TestPropRunawayConservesEnergy(t *testing.T) {
	ran := false
	rapid.Check(t, func(t *rapid.T) {
		r, on := drawMotion(t, false)
		from := units.Length(rapid.Float64Range(1.5, 16).Draw(t, "trim"))
		carried := sumOf(on.Pulls).Mass(units.StandardGravity)
		felt, err := r.Felt(from, carried, on.Arbor)
		if err != nil {
			t.Fatal(err)
		}
		imbalance := func(trim units.Length) float64 {
			i, err := r.Imbalance(trim, carried, on.Arbor)
			if err != nil {
				t.Fatal(err)
			}
			return i.In(units.Newton)
		}
		up, err := r.Gain(from, on, purchase.Out, 0, purchase.Pulling{})
		if err != nil {
			t.Fatal(err)
		}
		if want := -imbalance(from) / felt.Batten.In(units.Kilogram); !near.Abs(up.In(units.MetrePerSecondSquared), want, 1e-12) {
			t.Fatalf("gains %v, want %v", up, want)
		}
		v := units.Speed(rapid.Float64Range(0, 5).Draw(t, "speed"))
		out, _ := r.Gain(from, on, purchase.Out, v, purchase.Pulling{})
		in, _ := r.Gain(from, on, purchase.In, v, purchase.Pulling{})
		if !near.Abs(out.In(units.MetrePerSecondSquared), -in.In(units.MetrePerSecondSquared), 1e-12) {
			t.Fatalf("backwards it gains %v, forwards %v", in, out)
		}
		got, err := r.LetGo(purchase.LetGo{Trim: from, Low: 1.2, High: 16.5, On: on})
		if err != nil {
			t.Fatal(err)
		}
		if got.Way == 0 {
			return
		}
		ran = true
		work := math.Abs((got.Ends - from).In(units.Metre)) * math.Abs(imbalance(from)+imbalance(got.Ends)) / 2
		if !got.AtStop {
			if work > 1e-6 {
				t.Fatalf("comes to rest at %v with %v J to spend", got.Ends, work)
			}
			return
		}
		if !near.Abs(got.Energy.In(units.Joule), work, 1e-9*(1+work)) {
			t.Fatalf("%v at the stop, want %v J; %+v", got.Energy, work, got)
		}
		end, err := r.Felt(got.Ends, carried, on.Arbor)
		if err != nil {
			t.Fatal(err)
		}
		if want := math.Sqrt(2 * work / end.Batten.In(units.Kilogram)); !near.Rel(got.Speed.In(units.MetrePerSecond), want, 1e-9) {
			t.Fatalf("%v, want %v m/s", got.Speed, want)
		}
	})
	if !ran {
		t.Error("never a set that ran")
	}
}

// A pull that is asked for gives what it was asked for.
func TestPropHandForGives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, on := drawMotion(t, rapid.Bool().Draw(t, "drag"))
		trim := units.Length(rapid.Float64Range(1.5, 16).Draw(t, "trim"))
		s := purchase.Speeding{
			Way:   rapid.SampledFrom([]purchase.Way{purchase.Out, purchase.In}).Draw(t, "way"),
			Speed: units.Speed(rapid.Float64Range(0, 3).Draw(t, "speed")), Gain: units.Acceleration(rapid.Float64Range(-2, 2).Draw(t, "gain")),
		}
		hand, err := r.HandFor(trim, on, s)
		if err != nil {
			t.Fatal(err)
		}
		got, err := r.Gain(trim, on, s.Way, s.Speed, hand)
		if err != nil || !near.Abs(got.In(units.MetrePerSecondSquared), s.Gain.In(units.MetrePerSecondSquared), 1e-9) {
			t.Fatalf("%v with %+v, want %v (%v)", got, hand, s.Gain, err)
		}
	})
}

// Within the band of Stays a set that is let go stays.
func TestLetGoStays(t *testing.T) {
	l := weightless(purchase.Double)
	l.Drag = 0.03
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: evenly(5, 400), Idler: 40}
	stays, err := r.Stays(5, on)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		imbalance units.Force
		way       purchase.Way
	}{
		{stays.BattenHeavy.Scale(0.999), 0},
		{stays.BattenHeavy.Scale(1.001), purchase.In},
		{stays.ArborHeavy.Scale(0.999), 0},
		{stays.ArborHeavy.Scale(1.001), purchase.Out},
	} {
		on.Arbor = (2000 - c.imbalance).Scale(2).Mass(units.StandardGravity)
		got, err := r.LetGo(purchase.LetGo{Trim: 5, Low: 2, High: 15, On: on})
		if err != nil || got.Way != c.way {
			t.Errorf("%v out of balance, the band is %+v: runs %v (%v)", c.imbalance, stays, got.Way, err)
		}
	}
}

func BenchmarkLetGo(b *testing.B) {
	r, on := benchmarkSet(b)
	on.Arbor = 1000 * units.Pound
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.LetGo(purchase.LetGo{Trim: 50 * units.Foot, Low: 4 * units.Foot, High: 52 * units.Foot, On: on}); err != nil {
			b.Fatal(err)
		}
	}
}

// A balanced single set without drag by hand: 100 kg a side brought to 1 m/s in 2 s wants 200·0.5 N, nothing while it runs, and
// to stop it in half a metre 200·1 N the other way.
func TestFlyByHand(t *testing.T) {
	r, err := oneLine(purchase.Single).Rig()
	if err != nil {
		t.Fatal(err)
	}
	got, err := r.Fly(purchase.Fly{From: 3, To: 9, Top: 1, Start: 2, Stop: 0.5, On: massed(100, 100, 20)})
	if err != nil {
		t.Fatal(err)
	}
	is := func(what string, got, want float64) {
		t.Helper()
		if !near.Abs(got, want, 1e-9) {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	start, steady, stop := got.Phases[0], got.Phases[1], got.Phases[2]
	is("pull to start", start.First.Pull.In(units.Newton), 100)
	is("pull on the way", steady.Last.Pull.In(units.Newton), 0)
	is("pull to stop", stop.Last.Pull.In(units.Newton), 200)
	if start.First.Rope != purchase.InnerRope || stop.First.Rope != purchase.OuterRope || got.Most != stop.First && got.Most != stop.Last {
		t.Errorf("%+v", got)
	}
	is("up to speed at", start.To.In(units.Metre), 4)
	is("slows down at", stop.From.In(units.Metre), 8.5)
	is("time", got.Time.In(units.Second), 2+4.5+1)
	is("power", got.Power.In(units.Watt), 100)
	g := units.StandardGravity.In(units.MetrePerSecondSquared)
	is("lines while it starts", start.Lines, 1+0.5/g)
	is("lines while it stops", stop.Lines, 1-1/g)
	_, err = r.Fly(purchase.Fly{From: 3, To: 4, Top: 1, Start: 2, Stop: 0.5, On: massed(100, 100, 20)})
	var fe *units.FieldError
	if !errors.As(err, &fe) || fe.Field != "top" || !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("too short a way: %v", err)
	}
}

// A weight on a spring that it stretches by 20 mm, at 0.5 m/s, followed in small steps to its lowest: what the spring then
// bears, over the weight.
func TestJoltIsASpring(t *testing.T) {
	const g, stretch, speed = 9.80665, 0.02, 0.5
	x, v, most := stretch, speed, 0.0
	for dt := 1e-6; v > 0; {
		v += dt * (g - g*x/stretch)
		x += dt * v
		most = math.Max(most, x/stretch)
	}
	got, err := purchase.Jolt(speed, stretch)
	if err != nil || !near.Rel(got, most, 1e-5) {
		t.Errorf("%v, want %v (%v)", got, most, err)
	}
	if still, err := purchase.Jolt(0, stretch); err != nil || still != 1 {
		t.Errorf("at rest %v (%v)", still, err)
	}
	for _, refused := range []struct {
		speed   units.Speed
		stretch units.Length
		field   string
	}{{-1, 1, "speed"}, {1, 0, "stretch"}, {units.Speed(math.NaN()), 1, "speed"}, {1e300, 1e-300, "speed"}} {
		var fe *units.FieldError
		if got, err := purchase.Jolt(refused.speed, refused.stretch); !errors.As(err, &fe) || fe.Field != refused.field || got != 0 {
			t.Errorf("%v: %v, %v", refused, got, err)
		}
	}
}

// Energy lost is the work of drag: a single set by hand, which runs in with one acceleration all the way. What batten and arbor
// give up is the energy at the stop and, for each metre, the differences of tension at the four sheaves.
func TestRunawayLosesTheWorkOfDrag(t *testing.T) {
	const c, batten, arbor, idler = 0.05, 130.0, 100.0, 20.0
	g := units.StandardGravity.In(units.MetrePerSecondSquared)
	k := (1 + c) / (1 - c)
	b := 1 - c*c
	q := (1 + math.Sqrt(1-b*b)) / b // at a quarter of a turn
	l := oneLine(purchase.Single)
	l.Drag = c
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	got, err := r.LetGo(purchase.LetGo{Trim: 12, Low: 2, High: 15, On: massed(batten, arbor, idler)})
	if err != nil || got.Way != purchase.In || !got.AtStop {
		t.Fatalf("%+v %v", got, err)
	}
	line := batten * (g - got.Gain.In(units.MetrePerSecondSquared)) // at the batten
	slack := idler * g / (1 + k)                                    // of the idler's parts
	lost := (line - line/q) + (line/q - line/q/q) + (slack*k - slack) + (slack - slack/k)
	want := 10 * ((batten-arbor)*g - lost)
	if !near.Rel(got.Energy.In(units.Joule), want, 1e-9) {
		t.Errorf("%v at the stop, want %v J", got.Energy, want)
	}
	v := math.Sqrt(2 * 10 * got.Gain.In(units.MetrePerSecondSquared))
	if !near.Rel(got.Speed.In(units.MetrePerSecond), v, 1e-9) || !near.Rel(got.Time.In(units.Second), v/got.Gain.In(units.MetrePerSecondSquared), 1e-9) {
		t.Errorf("%v after %v, want %v m/s after %v s", got.Speed, got.Time, v, v/got.Gain.In(units.MetrePerSecondSquared))
	}
}
