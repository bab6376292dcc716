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

// 120 kg and 100 kg on one line, no drag, no rope weight, by hand: 220 kg speed up in 2 s to 1 m/s, a metre on, and come to
// rest in half a metre. Pulls are N on the rope that drives; below zero it is the other one that holds back.
func TestFlyOutOfBalanceByHand(t *testing.T) {
	single, mixed := oneLine(purchase.Single), oneLine(purchase.Double)
	mixed.Hand = purchase.Single
	const heavy = 20 * g
	for _, c := range []struct {
		name                 string
		set                  purchase.Layout
		batten, arbor        float64
		from, to             units.Length
		drives, holds        purchase.Role
		start, steady, stop  float64
		power                float64
		startsAt, slowsAt    units.Length
		linesStart, linesEnd float64
	}{
		{"batten-heavy, out", single, 120, 100, 3, 9, purchase.InnerRope, purchase.OuterRope, 110 + heavy, heavy, heavy - 220, 110 + heavy, 4, 8.5, 1 + 0.5/g, 1 - 1/g},
		{"batten-heavy, in", single, 120, 100, 9, 3, purchase.OuterRope, purchase.InnerRope, 110 - heavy, -heavy, -heavy - 220, 0, 8, 3.5, 1 - 0.5/g, 1 + 1/g},
		{"arbor-heavy, out", single, 100, 120, 3, 9, purchase.InnerRope, purchase.OuterRope, 110 - heavy, -heavy, -heavy - 220, 0, 4, 8.5, 1 + 0.5/g, 1 - 1/g},
		{"arbor-heavy, in", single, 100, 120, 9, 3, purchase.OuterRope, purchase.InnerRope, 110 + heavy, heavy, heavy - 220, 110 + heavy, 8, 3.5, 1 - 0.5/g, 1 + 1/g},
		// Double lift lines with a single hand line, in balance: 120 + 240/4 kg are felt at the batten. The hand line runs half as
		// fast as it, and takes twice the pull.
		{"in balance, a hand line half as fast", mixed, 120, 240, 3, 9, purchase.InnerRope, purchase.OuterRope, 180, 0, -360, 90, 4, 8.5, 1 + 0.5/g, 1 - 1/g},
		{"just way enough", single, 120, 100, 3, 4.5, purchase.InnerRope, purchase.OuterRope, 110 + heavy, heavy, heavy - 220, 110 + heavy, 4, 4, 1 + 0.5/g, 1 - 1/g},
	} {
		got, err := mustRig(t, c.set).Fly(purchase.Fly{From: c.from, To: c.to, Top: 1, Start: 2, Stop: 0.5, On: massed(c.batten, c.arbor, 20)})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		is := func(what string, got, want float64) {
			t.Helper()
			if !near.Abs(got, want, 1e-9) {
				t.Errorf("%s, %s: %v, want %v", c.name, what, got, want)
			}
		}
		way := math.Abs((c.to - c.from).In(units.Metre))
		steady := way - 1.5
		for i, phase := range []struct {
			from, to   units.Length
			time, gain float64
			pull       float64
			lines      float64
		}{
			{c.from, c.startsAt, 2, 0.5, c.start, c.linesStart}, {c.startsAt, c.slowsAt, steady, 0, c.steady, 1}, {c.slowsAt, c.to, 1, -1, c.stop, c.linesEnd},
		} {
			got := got.Phases[i]
			is("from", got.From.In(units.Metre), phase.from.In(units.Metre))
			is("to", got.To.In(units.Metre), phase.to.In(units.Metre))
			is("time", got.Time.In(units.Second), phase.time)
			is("gain", got.Gain.In(units.MetrePerSecondSquared), phase.gain)
			is("lines", got.Lines, phase.lines)
			rope := c.drives
			if phase.pull < 0 {
				rope = c.holds
			}
			for _, hand := range []purchase.Pulling{got.First, got.Last} {
				is("pull", hand.Pull.In(units.Newton), math.Abs(phase.pull))
				if phase.pull != 0 && hand.Rope != rope {
					t.Errorf("%s, phase %d: on the %v, want the %v", c.name, i, hand.Rope, rope)
				}
			}
		}
		is("time", got.Time.In(units.Second), 3+steady)
		is("power", got.Power.In(units.Watt), c.power)
		most := max(math.Abs(c.start), math.Abs(c.steady), math.Abs(c.stop))
		is("most", got.Most.Pull.In(units.Newton), most)
		if got.Phases[2].To != c.to || (got.Way == purchase.Out) != (c.to > c.from) {
			t.Errorf("%s: flies %v to %v", c.name, got.Way, got.Phases[2].To)
		}
	}
}

// On ropes of some weight and with drag each phase begins and ends with the pull that its trim, speed and gain ask for, the hardest
// of them is the one told, and the hand gives most where it drives the fastest and hardest.
func TestPropFlyPhaseByPhase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, on := drawMotion(t, true)
		f := purchase.Fly{From: units.Length(rapid.Float64Range(1.5, 7).Draw(t, "from")), To: units.Length(rapid.Float64Range(9, 16).Draw(t, "to")), On: on}
		drives := purchase.InnerRope
		if rapid.Bool().Draw(t, "in") {
			f.From, f.To, drives = f.To, f.From, purchase.OuterRope
		}
		f.Top, f.Start = units.Speed(rapid.Float64Range(0.1, 1).Draw(t, "top")), units.TimeSpan(rapid.Float64Range(0.5, 1).Draw(t, "start"))
		f.Stop = units.Length(rapid.Float64Range(0.1, 1).Draw(t, "stop"))
		got, err := r.Fly(f)
		if err != nil {
			t.Fatal(err)
		}
		var most, power float64
		at, time := f.From, units.TimeSpan(0)
		for i, phase := range got.Phases {
			if !near.Abs(phase.From.In(units.Metre), at.In(units.Metre), 1e-12) {
				t.Fatalf("phase %d begins at %v, the one before ends at %v", i, phase.From, at)
			}
			at, time = phase.To, time+phase.Time
			for k, hand := range []purchase.Pulling{phase.First, phase.Last} {
				s := purchase.Speeding{Way: got.Way, Speed: f.Top, Gain: phase.Gain}
				trim := []units.Length{phase.From, phase.To}[k]
				if i == 0 && k == 0 || i == 2 && k == 1 {
					s.Speed = 0
				}
				if want, err := r.HandFor(trim, on, s); err != nil || hand != want {
					t.Fatalf("phase %d at %v: %+v, want %+v, %v", i, trim, hand, want, err)
				}
				most = max(most, hand.Pull.In(units.Newton))
				if hand.Rope == drives {
					power = max(power, hand.Pull.In(units.Newton)*s.Speed.In(units.MetrePerSecond)*r.HandRatio())
				}
			}
		}
		if at != f.To || !near.Rel(got.Time.In(units.Second), time.In(units.Second), 1e-12) || got.Most.Pull.In(units.Newton) != most ||
			!near.Rel(got.Power.In(units.Watt), power, 1e-12) {
			t.Fatalf("%+v; want to end at %v after %v with %v N at most and %v W", got, f.To, time, most, power)
		}
	})
}

// A set in balance takes as much to stop as to start, on the other rope: of the two the first is told as the hardest.
func TestFlyTellsTheFirstOfEqualPulls(t *testing.T) {
	r := mustRig(t, oneLine(purchase.Single))
	for way, f := range map[purchase.Way]purchase.Fly{purchase.Out: {From: 4, To: 12}, purchase.In: {From: 12, To: 4}} {
		f.Top, f.Start, f.Stop, f.On = 1, 2, 1, massed(100, 100, 20)
		got, err := r.Fly(f)
		if err != nil {
			t.Fatal(err)
		}
		if start, stop := got.Phases[0].First, got.Phases[2].Last; start.Pull != stop.Pull || start.Rope == stop.Rope || got.Most != start {
			t.Errorf("%v: starts with %+v, stops with %+v, at most %+v", way, start, stop, got.Most)
		}
	}
}

// On lines of 20 kg/m a set that is batten-heavy as it starts is arbor-heavy a little further out: the inner rope is then wanted
// in the first moment alone, and told of though it is not there; or in the last, where it is flown in.
func TestFlyRefusedForOneMomentAlone(t *testing.T) {
	l := oneLine(purchase.Single)
	l.Rail, l.Loft[0].Height, l.LiftMass = units.Foot.Scale(54.5), 7*units.Foot, 20
	r := mustRig(t, l)
	balanced, err := r.Counterweight(1.25, 100)
	if err != nil {
		t.Fatal(err)
	}
	f := purchase.Fly{From: 1.2, To: 2, Top: 0.1, Start: 10, Stop: 0.1, On: massed(100, float64(balanced), 20)}
	got, err := r.Fly(f)
	if one(t, err, "hand", purchase.ErrNoTravel, "no inner rope at the rail"); got != (purchase.Flown{}) {
		t.Errorf("refused, and yet %+v", got)
	}
	f.From, f.To, f.Start, f.Stop = 1.9, 1.2, 2, 0.5 // and in: it is batten-heavy in the last moment alone
	got, err = r.Fly(f)
	if one(t, err, "hand", purchase.ErrNoTravel, "no inner rope at the rail"); got != (purchase.Flown{}) {
		t.Errorf("refused, and yet %+v", got)
	}
	f.From, f.To, f.Start, f.Stop = 1.3, 2, 10, 0.1
	if got, err = r.Fly(f); err != nil || got.Most.Rope != purchase.OuterRope {
		t.Errorf("from where it is arbor-heavy: %+v, %v", got, err)
	}
}

func TestFlyRefused(t *testing.T) {
	r := mustRig(t, oneLine(purchase.Single))
	bare := oneLine(purchase.Single).Reeving()
	bare.Hand = purchase.Rope{}
	without, err := bare.Rig()
	if err != nil {
		t.Fatal(err)
	}
	nan := math.NaN()
	good := purchase.Fly{From: 3, To: 9, Top: 1, Start: 2, Stop: 0.5, On: massed(100, 100, 20)}
	for _, c := range []struct {
		name   string
		on     *purchase.Reeved
		change func(*purchase.Fly)
		field  string
		kind   error
		says   string
	}{
		{"from out of reach", r, func(f *purchase.Fly) { f.From = 0.1 }, "from", units.ErrOutOfRange, "a trim above 2' 0\""},
		{"to out of reach", r, func(f *purchase.Fly) { f.To = 18 }, "to", units.ErrOutOfRange, "below 55' 0\""},
		{"the other way, from out of reach", r, func(f *purchase.Fly) { f.From, f.To = 18, 3 }, "from", units.ErrOutOfRange, "below 55' 0\""},
		{"from nowhere", r, func(f *purchase.Fly) { f.From = units.Length(nan) }, "from", units.ErrNotFinite, "a trim above"},
		{"out of reach at both ends", r, func(f *purchase.Fly) { f.From, f.To = 0, 20 }, "from, to", units.ErrOutOfRange, "a trim above"},
		{"nowhere to go", r, func(f *purchase.Fly) { f.To = f.From }, "to", units.ErrOutOfRange, "another trim"},
		{"no speed", r, func(f *purchase.Fly) { f.Top = 0 }, "top", units.ErrMissing, "the batten's speed"},
		{"backwards", r, func(f *purchase.Fly) { f.Top = -1 }, "top", units.ErrNegative, "more than 0"},
		{"at once", r, func(f *purchase.Fly) { f.Start = 0 }, "start", units.ErrMissing, "the time"},
		{"no way to stop in", r, func(f *purchase.Fly) { f.Stop = 0 }, "stop", units.ErrMissing, "the way"},
		{"speed, time and way", r, func(f *purchase.Fly) { f.Top, f.Start, f.Stop = 0, 0, units.Length(nan) }, "top, start, stop", units.ErrMissing, "the batten's speed"},
		{"a line that pushes", r, func(f *purchase.Fly) { f.On.Pulls = evenly(1, -1) }, "on.pulls[0]", units.ErrNegative, "0 or more"},
		{"no hand line", without, func(*purchase.Fly) {}, "hand", units.ErrMissing, "a hand line to pull on"},
		{"no hand line and no speed", without, func(f *purchase.Fly) { f.Top = 0 }, "top, hand", units.ErrMissing, "a hand line to pull on"},
		{"no rope that drives it out", deaf(t), func(f *purchase.Fly) { f.From, f.To, f.Start, f.Stop, f.Top = 1, 2, 0.2, 0.1, 0.5 }, "hand", purchase.ErrNoTravel, "a rope at the rail"},
		{"no rope that stops it", deaf(t), func(f *purchase.Fly) { f.From, f.To, f.Start, f.Stop, f.Top = 2, 1, 0.2, 0.1, 0.5 }, "hand", purchase.ErrNoTravel, "a rope at the rail"},
		// With a metre to start in and half a metre to stop in, 1.2 m leave 0.7 m to start in, at 0.7 m/s.
		{"too short a way", r, func(f *purchase.Fly) { f.To = 4.2 }, "top", units.ErrOutOfRange, "at most 2.3 ft/s (0.7 m/s)"},
		{"too short a way in", r, func(f *purchase.Fly) { f.From, f.To = 4.2, 3 }, "top", units.ErrOutOfRange, "at most 2.3 ft/s (0.7 m/s)"},
		{"too short a way to stop", r, func(f *purchase.Fly) { f.To = 3.4 }, "top", units.ErrOutOfRange, "at most 0 ft/s (0 m/s)"},
	} {
		f := good
		c.change(&f)
		got, err := c.on.Fly(f)
		one(t, err, c.field, c.kind, c.name)
		if err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want it to say %q", c.name, err, c.says)
		}
		if got != (purchase.Flown{}) {
			t.Errorf("%s: refused, and yet %+v", c.name, got)
		}
	}
}

// deaf is a set of 5 ft of travel, whose rope lock sits beside the arbor all the way, between foot and top: no rope that flies the
// batten out passes there.
func deaf(t *testing.T) *purchase.Reeved {
	t.Helper()
	l := oneLine(purchase.Single)
	l.Rail, l.Loft[0].Height = units.Foot.Scale(54.5), 7*units.Foot
	return mustRig(t, l)
}

func TestMotionRefused(t *testing.T) {
	r := mustRig(t, oneLine(purchase.Single))
	bare := oneLine(purchase.Single).Reeving()
	bare.Hand = purchase.Rope{}
	without, err := bare.Rig()
	if err != nil {
		t.Fatal(err)
	}
	nan := math.NaN()
	on := massed(100, 100, 20)
	gain := func(r *purchase.Reeved, trim units.Length, on purchase.Bodies, way purchase.Way, v units.Speed, hand purchase.Pulling) error {
		got, err := r.Gain(trim, on, way, v, hand)
		if got != 0 {
			t.Errorf("refused with %v, and yet it gains %v", err, got)
		}
		return err
	}
	handFor := func(r *purchase.Reeved, trim units.Length, on purchase.Bodies, s purchase.Speeding) error {
		got, err := r.HandFor(trim, on, s)
		if got != (purchase.Pulling{}) {
			t.Errorf("refused with %v, and yet it is %+v", err, got)
		}
		return err
	}
	no := purchase.Pulling{}
	out := purchase.Speeding{Way: purchase.Out}
	for _, c := range []struct {
		name  string
		err   error
		field string
		kind  error
	}{
		{"gain out of reach", gain(r, 50, on, purchase.Out, 0, no), "trim", units.ErrOutOfRange},
		{"gain neither way", gain(r, 5, on, 0, 0, no), "way", units.ErrMissing},
		{"gain without a hand line", gain(without, 5, on, purchase.Out, 0, no), "hand", units.ErrMissing},
		{"gain of two lines", gain(r, 5, purchase.Bodies{Pulls: evenly(2, 1)}, purchase.Out, 0, no), "pulls", units.ErrOutOfRange},
		{"gain backwards", gain(r, 5, on, purchase.Out, -1, no), "speed", units.ErrNegative},
		{"gain at no speed that is a number", gain(r, 5, on, purchase.Out, units.Speed(nan), no), "speed", units.ErrNotFinite},
		{"a hand that pushes", gain(r, 5, on, purchase.Out, 0, purchase.Pulling{Pull: -1, Rope: purchase.InnerRope}), "pull", units.ErrNegative},
		{"a hand on the dead end", gain(r, 5, on, purchase.Out, 0, purchase.Pulling{Pull: 1}), "rope", units.ErrOutOfRange},
		{"a hand on a rope that is not there", gain(deaf(t), 1.5, on, purchase.Out, 0, purchase.Pulling{Pull: 1, Rope: purchase.InnerRope}), "rope", units.ErrOutOfRange},
		{"gain of nothing", gain(r, 5, massed(0, 0, 20), purchase.Out, 0, no), "pulls", units.ErrMissing},
		{"hand out of reach", handFor(r, 50, on, out), "trim", units.ErrOutOfRange},
		{"hand for neither way", handFor(r, 5, on, purchase.Speeding{Way: 3}), "way", units.ErrUnknown},
		{"hand for a gain that is no number", handFor(r, 5, on, purchase.Speeding{Way: purchase.Out, Gain: units.Acceleration(nan)}), "gain", units.ErrNotFinite},
		{"hand for a speed below nothing", handFor(r, 5, on, purchase.Speeding{Way: purchase.Out, Speed: -1}), "speed", units.ErrNegative},
		{"hand on a rope that is not there", handFor(deaf(t), 1.5, massed(120, 100, 20), out), "hand", purchase.ErrNoTravel},
	} {
		one(t, c.err, c.field, c.kind, c.name)
	}
	// A rope that does not matter without a pull, one of a role beyond the last that is taken as the outer one, and an outer rope
	// that is there though the inner one is not.
	if got, err := r.Gain(5, massed(120, 100, 20), purchase.Out, 0, purchase.Pulling{Pull: 0, Rope: purchase.DeadRope}); err != nil || !near.Rel(got.In(units.MetrePerSecondSquared), -20*g/220, 1e-12) {
		t.Errorf("no hand: %v, %v", got, err)
	}
	if got, err := r.Gain(5, massed(120, 100, 20), purchase.In, 0, purchase.Pulling{Pull: 22, Rope: 9}); err != nil || !near.Rel(got.In(units.MetrePerSecondSquared), (20*g+22)/220, 1e-12) {
		t.Errorf("a rope beyond the outer one: %v, %v", got, err)
	}
	if got, err := deaf(t).HandFor(1.5, massed(100, 120, 20), out); err != nil || got.Rope != purchase.OuterRope || !near.Rel(got.Pull.In(units.Newton), 20*g, 1e-12) {
		t.Errorf("held on the outer rope: %+v, %v", got, err)
	}
}

// Where a rope at the rail is missing, neither a slow run nor a weighing can be told of, and both say so.
func TestNoInnerRopeAtTheRail(t *testing.T) {
	r := deaf(t)
	for _, rope := range r.RailRopes() {
		if rope.Role == purchase.InnerRope {
			t.Fatalf("%+v: no inner rope is meant to come up to the rail", r.RailRopes())
		}
	}
	run, err := r.Run(1.5, massed(120, 100, 20), purchase.Out)
	if one(t, err, "hand", purchase.ErrNoTravel, "only the inner rope flies it out"); run.Hand.Parts != nil {
		t.Errorf("%+v", run)
	}
	_, err = r.Run(1.5, massed(120, 100, 20), purchase.In)
	one(t, err, "hand", purchase.ErrNoTravel, "only the inner rope holds it back")
	if run, err = r.Run(1.5, massed(100, 120, 20), purchase.In); err != nil || run.Rope != purchase.OuterRope || !near.Rel(run.Pull.In(units.Newton), 20*g, 1e-12) {
		t.Errorf("%v on the %v, %v; the outer rope flies it in", run.Pull, run.Rope, err)
	}
	w := purchase.Weighing{Trim: 1.5, On: massed(100, 120, 20), Out: purchase.Pulled{Pull: 200, Runs: true}, In: purchase.Pulled{Pull: 200}}
	_, err = r.Weigh(w)
	one(t, err, "hand", purchase.ErrNoTravel, "two live ropes are pulled to weigh")
}
