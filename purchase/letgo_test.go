package purchase_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// followed is a runaway in small steps of time, after Runge and Kutta, with only what Gain says of each moment.
type followed struct {
	ends, time, speed, most float64 // SI
	atStop                  bool
}

func follow(t interface{ Fatal(...any) }, r *purchase.Reeved, on purchase.Bodies, way purchase.Way, from, stop, step float64) (f followed) {
	sign := 1.0
	if way == purchase.In {
		sign = -1
	}
	gain := func(way, v float64) float64 {
		x := math.Min(way, sign*(stop-from)) // a stage may look beyond the stop
		a, err := r.Gain(units.Length(from+sign*x), on, wayOf(sign), units.Speed(math.Max(v, 0)), purchase.Pulling{})
		if err != nil {
			t.Fatal(err)
		}
		return a.In(units.MetrePerSecondSquared)
	}
	after := func(s, v, h float64) (float64, float64) {
		a1 := gain(s, v)
		s2, v2 := s+h/2*v, v+h/2*a1
		a2 := gain(s2, v2)
		s3, v3 := s+h/2*v2, v+h/2*a2
		a3 := gain(s3, v3)
		s4, v4 := s+h*v3, v+h*a3
		a4 := gain(s4, v4)
		return s + h/6*(v+2*v2+2*v3+v4), v + h/6*(a1+2*a2+2*a3+a4)
	}
	length := sign * (stop - from)
	s, v := 0.0, 0.0
	for {
		next, faster := after(s, v, step)
		if next < length && faster > 0 {
			s, v = next, faster
			f.time += step
			f.most = math.Max(f.most, v)
			continue
		}
		low, high := 0.0, step
		for range 50 {
			mid := (low + high) / 2
			if next, faster = after(s, v, mid); next < length && faster > 0 {
				low = mid
			} else {
				high = mid
			}
		}
		next, faster = after(s, v, high)
		f.ends, f.speed, f.atStop = from+sign*next, faster, next > length-1e-6 && faster > 1e-6
		f.time += high
		f.most = math.Max(f.most, faster)
		return f
	}
}

func wayOf(sign float64) purchase.Way {
	if sign < 0 {
		return purchase.In
	}
	return purchase.Out
}

// drawRunaway draws a set of any kind, with a hand line of any kind, on ropes that may weigh more than what hangs on them, a
// little out of balance.
func drawRunaway(t *rapid.T) (*purchase.Reeved, purchase.Bodies, units.Length) {
	kinds := []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple}
	l := weightless(purchase.Double)
	l.Kind, l.Hand = rapid.SampledFrom(kinds).Draw(t, "kind"), rapid.SampledFrom(kinds).Draw(t, "hand line")
	l.Loft = l.Loft[:2]
	l.LiftMass = units.LineMass(rapid.SampledFrom([]float64{0, 0.2, 3}).Draw(t, "lift lines"))
	l.HandMass = units.LineMass(rapid.SampledFrom([]float64{0, 0.2}).Draw(t, "hand line's mass"))
	l.Drag = purchase.Drag(rapid.SampledFrom([]float64{0, 0.02, 0.06}).Draw(t, "drag"))
	l.Rim = units.Mass(rapid.SampledFrom([]float64{0, 3}).Draw(t, "rims"))
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	lowest, highest := r.Reach()
	from := lowest + (highest - lowest).Scale(rapid.Float64Range(0.1, 0.9).Draw(t, "let go at"))
	on := purchase.Bodies{Pulls: evenly(2, units.Force(rapid.SampledFrom([]float64{20, 600}).Draw(t, "pull"))), Idler: 40}
	if rapid.Bool().Draw(t, "idler held") {
		on.Base = 150
	}
	balanced, err := r.Counterweight(from, sumOf(on.Pulls).Mass(units.StandardGravity))
	if err != nil {
		t.Fatal(err)
	}
	on.Arbor = max(0, balanced.Scale(rapid.Float64Range(0.6, 1.4).Draw(t, "arbor over balance")))
	return r, on, from
}

// A runaway is what the motion's own law makes of it from moment to moment: where it ends, when, how fast, and how fast it
// was at most; what it carries into the stop; and the pull that would just have held it.
func TestPropRunawayInTime(t *testing.T) {
	ran, estimated := map[purchase.Way]int{}, 0
	rapid.Check(t, func(t *rapid.T) {
		r, on, from := drawRunaway(t)
		lowest, highest := r.Reach()
		low, high := lowest+units.Length(0.01), highest-units.Length(0.01)
		got, err := r.LetGo(purchase.LetGo{Trim: from, Low: low, High: high, On: on})
		if err != nil {
			t.Fatal(err)
		}
		if got.Way == 0 || got.Gain < 0.02 {
			return
		}
		ran[got.Way]++
		stop := high
		if got.Way == purchase.In {
			stop = low
		}
		want := follow(t, r, on, got.Way, from.In(units.Metre), stop.In(units.Metre), got.Time.In(units.Second)/150)
		is := func(what string, got, want float64) {
			if !near.Abs(got, want, 1e-6*math.Abs(want)) {
				t.Fatalf("%s: %v, followed in time %v", what, got, want)
			}
		}
		v := got.Speed.In(units.MetrePerSecond)
		felt, err := r.Felt(got.Ends, sumOf(on.Pulls).Mass(units.StandardGravity), on.Arbor)
		if err != nil || got.AtStop != want.atStop || got.From != from || got.AtStop && got.Ends != stop {
			t.Fatalf("%+v, followed in time %+v; %v", got, want, err)
		}
		is("ends", got.Ends.In(units.Metre), want.ends)
		is("time", got.Time.In(units.Second), want.time)
		is("speed", v, want.speed)
		is("most", got.Most.In(units.MetrePerSecond), want.most)
		is("energy", got.Energy.In(units.Joule), felt.Batten.In(units.Kilogram)*v*v/2)
		is("drop", got.Drop.In(units.Metre), v*v/2/g)
		if !(got.Error >= 0 && got.Error <= 1e-10) {
			t.Fatalf("the sum of its time is off by %v", got.Error)
		}
		if got.Error > 0 {
			estimated++
		}
		if still, err := r.Gain(from, on, got.Way, 0, got.Held); err != nil || !near.Abs(still.In(units.MetrePerSecondSquared), 0, 1e-9) {
			t.Fatalf("held with %+v it gains %v, %v", got.Held, still, err)
		}
		if first, err := r.Gain(from, on, got.Way, 0, purchase.Pulling{}); err != nil || !near.Rel(got.Gain.In(units.MetrePerSecondSquared), first.In(units.MetrePerSecondSquared), 1e-12) {
			t.Fatalf("gains %v in the first moment, want %v, %v", got.Gain, first, err)
		}
	})
	if ran[purchase.Out] == 0 || ran[purchase.In] == 0 {
		t.Errorf("ran %v: want both ways", ran)
	}
	if estimated == 0 {
		t.Error("no sum of a time was ever said to be off")
	}
}

// A heavy hand line over stiff sheaves slows a set down on its way in: the more of it the arbor pulls up, the more the sheave
// at its foot asks for. Let go from high enough it comes to rest on the way, a set from low down runs into the stop while it
// slows down already.
func TestRunawayComesToRest(t *testing.T) {
	l := oneLine(purchase.Double)
	l.HandMass, l.Drag = 4, 0.04
	r := mustRig(t, l)
	for _, c := range []struct {
		name   string
		low    units.Length
		atStop bool
		slows  bool
		from   units.Length
	}{
		{"comes to rest on the way", 1.5, false, true, 11},
		{"slows down, and runs into the stop", 5, true, true, 11},
		{"gains speed down to the stop", 9, true, false, 11},
	} {
		on := massed(73.3, 112.1, 59)
		got, err := r.LetGo(purchase.LetGo{Trim: c.from, Low: c.low, High: 16, On: on})
		if err != nil {
			t.Fatal(err)
		}
		want := follow(t, r, on, purchase.In, c.from.In(units.Metre), c.low.In(units.Metre), 0.02)
		if got.Way != purchase.In || got.AtStop != c.atStop || want.atStop != c.atStop || got.Error > 1e-11 {
			t.Fatalf("%s: %+v, followed in time %+v", c.name, got, want)
		}
		if slows := got.Most > got.Speed; slows != c.slows {
			t.Errorf("%s: at most %v, at the end %v", c.name, got.Most, got.Speed)
		}
		for what, is := range map[string][2]float64{
			"ends": {got.Ends.In(units.Metre), want.ends}, "most": {got.Most.In(units.MetrePerSecond), want.most},
			"time": {got.Time.In(units.Second), want.time},
		} {
			if !near.Abs(is[0], is[1], 1e-5*is[1]) {
				t.Errorf("%s, %s: %v, followed in time %v", c.name, what, is[0], is[1])
			}
		}
		switch {
		case c.atStop && !near.Abs(got.Speed.In(units.MetrePerSecond), want.speed, 1e-6):
			t.Errorf("%s: %v at the stop, followed in time %v", c.name, got.Speed, want.speed)
		case !c.atStop && (got.Speed != 0 || got.Energy != 0 || got.Drop != 0):
			t.Errorf("%s: at rest with %v, %v and a drop of %v", c.name, got.Speed, got.Energy, got.Drop)
		}
	}
}

// On ropes of 10 kg/m with next to nothing on them the mass that is felt grows by more than half on the way, which is then followed
// in more than one piece.
func TestRunawayOnRopesAlone(t *testing.T) {
	l := oneLine(purchase.Double)
	l.Kind, l.Hand, l.LiftMass, l.DeadEnd, l.Loft[0].Across = purchase.Triple, purchase.Single, 10, 65*units.Foot, 1
	r, on := mustRig(t, l), massed(0.34, 0, 20)
	before, err := r.Felt(13.55, 0.34, 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, low := range []units.Length{2.4, 3} {
		after, err := r.Felt(low, 0.34, 0)
		if err != nil || low < 2.5 && after.Batten < before.Batten.Scale(1.5) {
			t.Fatalf("%v is felt before and %v after, %v", before.Batten, after.Batten, err)
		}
		got, err := r.LetGo(purchase.LetGo{Trim: 13.55, Low: low, High: 15, On: on})
		if err != nil || got.Way != purchase.In || !got.AtStop {
			t.Fatalf("%+v, %v", got, err)
		}
		want := follow(t, r, on, purchase.In, 13.55, low.In(units.Metre), got.Time.In(units.Second)/500)
		v := got.Speed.In(units.MetrePerSecond)
		if !near.Rel(got.Time.In(units.Second)/want.time, 1, 1e-9) || !near.Rel(v/want.speed, 1, 1e-9) || got.Most != got.Speed ||
			!near.Rel(got.Energy.In(units.Joule), after.Batten.In(units.Kilogram)*v*v/2, 1e-12) || got.Error > 1e-11 {
			t.Errorf("%+v, followed in time %+v", got, want)
		}
	}
}

// Where the sheaves on the arbor hold as a rope that skids does, and the others run freely, a heavy hand line makes the mass that
// is felt grow by more than half before it brings the set to rest: it is followed beyond there, by the motion's law in time, to
// where it rests, and to a stop just before.
func TestRunawayComesToRestLate(t *testing.T) {
	l := oneLine(purchase.Single)
	l.Hand, l.DeadEnd, l.HandMass = purchase.Double, 65*units.Foot, 4
	reeving := l.Reeving()
	for i, s := range reeving.Hand.Path {
		if s.On == purchase.Arbor {
			reeving.Hand.Path[i].Drag = 0.6
		}
	}
	r, err := reeving.Rig()
	if err != nil {
		t.Fatal(err)
	}
	const from = 15.8
	on := massed(200, 32, 40)
	for _, c := range []struct {
		name   string
		low    float64
		atStop bool
	}{
		{"comes to rest", 2, false},
		{"a stop just before", 5.7, true},
	} {
		got, err := r.LetGo(purchase.LetGo{Trim: from, Low: units.Length(c.low), High: from, On: on})
		if err != nil {
			t.Fatal(err)
		}
		want := follow(t, r, on, purchase.In, from, c.low, 0.005)
		if got.Way != purchase.In || got.AtStop != c.atStop || want.atStop != c.atStop {
			t.Fatalf("%s: %+v, followed in time %+v", c.name, got, want)
		}
		for what, is := range map[string][2]float64{
			"ends": {got.Ends.In(units.Metre), want.ends}, "most": {got.Most.In(units.MetrePerSecond), want.most},
			"time": {got.Time.In(units.Second), want.time},
		} {
			if !near.Abs(is[0], is[1], 1e-5*is[1]) {
				t.Errorf("%s, %s: %v, followed in time %v", c.name, what, is[0], is[1])
			}
		}
		if c.atStop && !near.Abs(got.Speed.In(units.MetrePerSecond), want.speed, 1e-6) {
			t.Errorf("%s: %v at the stop, followed in time %v", c.name, got.Speed, want.speed)
		}
	}
}

// Let go a milligram or less out of balance, on ropes that drive it the harder the further it runs, a set all but stays at first: so long
// that the sum of the time does not settle. It is told all the same, with how far it may be off. By hand the law z” = (f + 2λgz)/m has
// z = f/(2λg)·(cosh kt − 1), k² = 2λg/m.
func TestLetGoNextToBalance(t *testing.T) {
	l := oneLine(purchase.Single)
	l.LiftMass = 0.3
	r := mustRig(t, l)
	balanced, err := r.Counterweight(10, 100)
	if err != nil {
		t.Fatal(err)
	}
	felt, err := r.Felt(10, 100, balanced)
	if err != nil {
		t.Fatal(err)
	}
	for _, light := range []float64{1e-6, 1e-9} {
		got, err := r.LetGo(purchase.LetGo{Trim: 10, Low: 4, High: 14, On: massed(100, balanced.In(units.Kilogram)-light, 20)})
		if err != nil || got.Way != purchase.In || !got.AtStop {
			t.Fatalf("%v kg out of balance: %+v, %v", light, got, err)
		}
		drift := 2 * 0.3 * g
		want := math.Acosh(1+6*drift/(light*g)) / math.Sqrt(drift/felt.Batten.In(units.Kilogram))
		if off := math.Abs(got.Time.In(units.Second)/want - 1); !(off <= got.Error) || !(got.Error > 1e-11 && got.Error < 0.5) {
			t.Errorf("%v kg out of balance: %v, off by %v as is told; by hand %v s, off by %v", light, got.Time, got.Error, want, off)
		}
	}
}

// 130 kg against 100 kg on one line without drag, by hand: it is driven by 30 kg's weight, which a hand on the inner rope holds
// back, or on the outer one where it is the arbor that is the heavier. The stops may be where it is let go, or not.
func TestLetGoByHand(t *testing.T) {
	r := mustRig(t, oneLine(purchase.Single))
	bare := oneLine(purchase.Single).Reeving()
	bare.Hand = purchase.Rope{}
	without, err := bare.Rig()
	if err != nil {
		t.Fatal(err)
	}
	held := func(role purchase.Role) purchase.Pulling {
		return purchase.Pulling{Pull: units.Force(30 * g), Rope: role}
	}
	for _, c := range []struct {
		name          string
		r             *purchase.Reeved
		batten, arbor float64
		trim, ends    units.Length
		way           purchase.Way
		held          purchase.Pulling
	}{
		{"batten-heavy, in", r, 130, 100, 10, 4, purchase.In, held(purchase.InnerRope)},
		{"arbor-heavy, out", r, 100, 130, 10, 14, purchase.Out, held(purchase.OuterRope)},
		{"batten-heavy, on the stop", r, 130, 100, 4, 4, purchase.In, held(purchase.InnerRope)},
		{"arbor-heavy, on the stop", r, 100, 130, 14, 14, purchase.Out, held(purchase.OuterRope)},
		{"arbor-heavy, from the stop", r, 100, 130, 4, 14, purchase.Out, held(purchase.OuterRope)},
		{"batten-heavy, from the stop", r, 130, 100, 14, 4, purchase.In, held(purchase.InnerRope)},
		{"in balance", r, 100, 100, 10, 10, 0, purchase.Pulling{}},
		{"no hand line", without, 130, 100, 10, 4, purchase.In, purchase.Pulling{}},
	} {
		got, err := c.r.LetGo(purchase.LetGo{Trim: c.trim, Low: 4, High: 14, On: massed(c.batten, c.arbor, 20)})
		if err != nil {
			t.Fatal(err)
		}
		if c.way == 0 {
			if want := (purchase.Runaway{From: c.trim, Ends: c.ends}); got != want {
				t.Errorf("%s: %+v, want %+v", c.name, got, want)
			}
			continue
		}
		gain := 30.0 / 230 * g
		way := math.Abs((c.ends - c.trim).In(units.Metre))
		v := math.Sqrt(2 * gain * way)
		if got.Way != c.way || got.From != c.trim || got.Ends != c.ends || !got.AtStop || got.Held.Rope != c.held.Rope {
			t.Errorf("%s: %+v", c.name, got)
		}
		for what, is := range map[string][2]float64{
			"gain": {got.Gain.In(units.MetrePerSecondSquared), gain}, "time": {got.Time.In(units.Second), v / gain}, "speed": {got.Speed.In(units.MetrePerSecond), v},
			"most": {got.Most.In(units.MetrePerSecond), v}, "energy": {got.Energy.In(units.Joule), 30 * g * way},
			"drop": {got.Drop.In(units.Metre), v * v / 2 / g}, "held": {got.Held.Pull.In(units.Newton), c.held.Pull.In(units.Newton)},
		} {
			if !near.Abs(is[0], is[1], 1e-9*(1+is[1])) {
				t.Errorf("%s, %s: %v, want %v", c.name, what, is[0], is[1])
			}
		}
	}
}

func TestLetGoRefused(t *testing.T) {
	r := mustRig(t, oneLine(purchase.Single))
	nan := units.Length(math.NaN())
	good := purchase.LetGo{Trim: 10, Low: 4, High: 14, On: massed(130, 100, 20)}
	for _, c := range []struct {
		name   string
		change func(*purchase.LetGo)
		field  string
		kind   error
		reason string
	}{
		{"from out of reach", func(l *purchase.LetGo) { l.Trim = 20 }, "trim", units.ErrOutOfRange, "the batten would be above its loft block"},
		{"from nowhere", func(l *purchase.LetGo) { l.Trim = nan }, "trim", units.ErrNotFinite, "no NaN goes in"},
		{"a low stop out of reach", func(l *purchase.LetGo) { l.Low = 0 }, "low", units.ErrOutOfRange, "the arbor would meet the head block before"},
		{"a high stop out of reach", func(l *purchase.LetGo) { l.High = 18 }, "high", units.ErrOutOfRange, "the arbor would meet the idler before"},
		{"a high stop nowhere", func(l *purchase.LetGo) { l.High = nan }, "high", units.ErrNotFinite, "no NaN goes in"},
		{"below its low stop", func(l *purchase.LetGo) { l.Low = 10.001 }, "low", units.ErrOutOfRange, "it would start beyond the stop"},
		{"above its high stop", func(l *purchase.LetGo) { l.High = 9.999 }, "high", units.ErrOutOfRange, "it would start beyond the stop"},
		{"stops swapped", func(l *purchase.LetGo) { l.Low, l.High = l.High, l.Low }, "low, high", units.ErrOutOfRange, "neither makes sense"},
		{"nowhere at all", func(l *purchase.LetGo) { l.Trim, l.Low, l.High = nan, 0, 20 }, "trim, low, high", units.ErrNotFinite, "all are told"},
		{"two pulls on one line", func(l *purchase.LetGo) { l.On.Pulls = evenly(2, 100) }, "on.pulls", units.ErrOutOfRange, "one for each line"},
		{"a line that pushes", func(l *purchase.LetGo) { l.On.Pulls = evenly(1, -100) }, "on.pulls[0]", units.ErrNegative, "ropes pull"},
		{"a trim and a line", func(l *purchase.LetGo) { l.Low = 11; l.On.Pulls = evenly(1, -100) }, "low, on.pulls[0]", units.ErrOutOfRange, "both are told"},
		{"an arbor that floats", func(l *purchase.LetGo) { l.On.Arbor = -1 }, "on.arbor", units.ErrNegative, "it weighs something"},
		{"an idler that floats", func(l *purchase.LetGo) { l.On.Idler = -1 }, "on.idler", units.ErrNegative, "it weighs something"},
		{"nothing that moves, above its high stop", func(l *purchase.LetGo) { l.On, l.High = massed(0, 0, 20), 9 }, "high", units.ErrOutOfRange, "a set that is described wrong is not looked at further"},
		{"nothing that moves, out of reach", func(l *purchase.LetGo) { l.On, l.Trim = massed(0, 0, 20), 50 }, "trim", units.ErrOutOfRange, "a set that is described wrong is not looked at further"},
		{"nothing that moves", func(l *purchase.LetGo) { l.On = massed(0, 0, 20) }, "on.pulls", units.ErrMissing, "no mass gains no speed"},
	} {
		l := good
		c.change(&l)
		got, err := r.LetGo(l)
		one(t, err, c.field, c.kind, c.name+": "+c.reason)
		if got != (purchase.Runaway{}) {
			t.Errorf("%s: refused, and yet %+v", c.name, got)
		}
	}
	for name, change := range map[string]func(*purchase.LetGo){
		"an arbor alone": func(l *purchase.LetGo) { l.On = massed(0, 100, 20) },
		"a batten alone": func(l *purchase.LetGo) { l.On = massed(100, 0, 20) },
		"stops where it is": func(l *purchase.LetGo) {
			l.Low, l.High = l.Trim, l.Trim
		},
	} {
		l := good
		change(&l)
		if got, err := r.LetGo(l); err != nil || got.Way == 0 || !got.AtStop {
			t.Errorf("%s: %+v, %v; want one that runs", name, got, err)
		}
	}
	heavy := oneLine(purchase.Single)
	heavy.LiftMass = 1
	if got, err := mustRig(t, heavy).LetGo(purchase.LetGo{Trim: 10, Low: 4, High: 14, On: massed(0, 0, 20)}); err != nil || got.Way == 0 {
		t.Errorf("ropes alone: %+v, %v; want one that runs", got, err)
	}
}
