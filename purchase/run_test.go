package purchase_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

func same[T any](t *testing.T, want, got T) {
	t.Helper()
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func evenly(lines int, each units.Force) []units.Force {
	pulls := make([]units.Force, lines)
	for i := range pulls {
		pulls[i] = each
	}
	return pulls
}

// Three ropes at the rail in double purchase, two of them live and as fast as the batten; two in single (common
// practice, no source).
func TestRailRopes(t *testing.T) {
	for _, c := range []struct {
		kind purchase.Kind
		want []purchase.RailRope
	}{
		{purchase.Single, []purchase.RailRope{
			{Role: purchase.InnerRope, From: purchase.ArborFoot, To: purchase.IdlerBlock, Moves: purchase.Out, Speed: 1},
			{Role: purchase.OuterRope, From: purchase.IdlerBlock, To: purchase.HeadBlock, Moves: purchase.In, Speed: 1},
		}},
		{purchase.Double, []purchase.RailRope{
			{Role: purchase.DeadRope, From: purchase.RailDeadEnd, To: purchase.ArborFoot},
			{Role: purchase.InnerRope, From: purchase.ArborFoot, To: purchase.IdlerBlock, Moves: purchase.Out, Speed: 1},
			{Role: purchase.OuterRope, From: purchase.IdlerBlock, To: purchase.HeadBlock, Moves: purchase.In, Speed: 1},
		}},
	} {
		r, err := weightless(c.kind).Rig()
		if err != nil {
			t.Fatal(err)
		}
		same(t, c.want, r.RailRopes())
	}
}

// Ways and roles are words in JSON.
func TestRailRopesInJSON(t *testing.T) {
	r, err := weightless(purchase.Double).Rig()
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(r.RailRopes()[1])
	if want := `{"role":"inner rope","from":"arbor foot","to":"idler","moves":"out","speed":1}`; err != nil || string(text) != want {
		t.Errorf("%s %v, want %s", text, err, want)
	}
}

// Without drag and rope weight the hand pulls what is out of balance, on the rope that flies the batten the way wanted or
// holds it back: ratio over hand line parts times the imbalance, which is the imbalance itself on the standard sets.
func TestRunWithoutDrag(t *testing.T) {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double} {
		r, err := weightless(kind).Rig()
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name  string
			heavy float64 // lb on the batten
			way   purchase.Way
			pull  float64
			on    purchase.Role
			runs  bool
		}{
			{"balanced, out", 0, purchase.Out, 0, purchase.InnerRope, false},
			{"balanced, in", 0, purchase.In, 0, purchase.OuterRope, false},
			{"batten-heavy, out: the inner rope drives", 20, purchase.Out, 20, purchase.InnerRope, false},
			{"batten-heavy, in: it runs, and the inner rope holds it back", 20, purchase.In, 20, purchase.InnerRope, true},
			{"arbor-heavy, out: it runs, and the outer rope holds it back", -20, purchase.Out, 20, purchase.OuterRope, true},
			{"arbor-heavy, in: the outer rope drives", -20, purchase.In, 20, purchase.OuterRope, false},
		} {
			on := purchase.Bodies{
				Pulls: evenly(5, units.PoundForce.Scale((500+c.heavy)/5)), Arbor: units.Pound.Scale(500 * kind.Ratio()), Idler: 60 * units.Pound,
			}
			got, err := r.Run(20*units.Foot, on, c.way)
			if err != nil {
				t.Fatal(err)
			}
			if !near.Abs(got.Pull.In(units.PoundForce), c.pull, 1e-9) || c.pull > 0 && (got.Rope != c.on || got.Runs != c.runs) {
				t.Errorf("%v, %s: %v on the %v, runs %v", kind, c.name, got.Pull, got.Rope, got.Runs)
			}
		}
	}
}

// A single and a double set with one line by hand, no rope weight: every tension in a row along its rope. k is the
// factor at half a turn, q at a quarter of one.
func TestRunByHand(t *testing.T) {
	const c, load, idler = 0.05, 800.0, 200.0
	k := (1 + c) / (1 - c)
	a, b := 1.0, 1-c*c // a is 1 − c² cos 90°
	q := (a + math.Sqrt(a*a-b*b)) / b
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double} {
		l := weightless(kind)
		l.Loft, l.Drag = l.Loft[:1], c
		r, err := l.Rig()
		if err != nil {
			t.Fatal(err)
		}
		newtons := func(n float64) units.Mass { return units.Newton.Scale(n).Mass(units.StandardGravity) }
		arborWeight := load * kind.Ratio()
		on := purchase.Bodies{Pulls: evenly(1, units.Force(load)), Arbor: newtons(arborWeight), Idler: newtons(idler)}

		// Out: the lift line is tighter past each block on its way to the arbor. The idler's slack side is the part
		// that comes down to it, T and kT with T(1 + k) its weight.
		lift := load * q * q
		below := idler / (1 + k)
		up := below * k * k // past the head block
		lifts, hand := lift, up
		if kind == purchase.Double {
			lifts += lift * k
			hand += up * k
		}
		// At the foot the inner rope pulls down with the pull and what is below the hand, and in double the dead end
		// with a kth of that.
		foot := lifts + hand - arborWeight
		if kind == purchase.Double {
			foot /= 1 + 1/k
		}
		got, err := r.Run(20*units.Foot, on, purchase.Out)
		if err != nil {
			t.Fatal(err)
		}
		if want := foot - below; !near.Rel(got.Pull.In(units.Newton), want, 1e-9) || got.Rope != purchase.InnerRope || got.Runs {
			t.Errorf("%v, out: %v on the %v, want %v N", kind, got.Pull, got.Rope, want)
		}

		// In: the other way about at every sheave; the hand is on the outer rope, which above it bears the pull too.
		lift = load / q / q
		below = idler / (1 + 1/k) // the inner rope, tight
		lifts = lift
		if kind == purchase.Double {
			lifts += lift / k
		}
		feet := below
		if kind == purchase.Double {
			feet += below * k // the rope runs from idler over the foot's sheave to the dead end
		}
		// arbor: lifts + top − feet = weight
		top := arborWeight + feet - lifts
		if kind == purchase.Double {
			top /= 1 + 1/k
		}
		want := top*k - below/k
		if got, err = r.Run(20*units.Foot, on, purchase.In); err != nil {
			t.Fatal(err)
		}
		if !near.Rel(got.Pull.In(units.Newton), want, 1e-9) || got.Rope != purchase.OuterRope || got.Runs {
			t.Errorf("%v, in: %v on the %v, want %v N", kind, got.Pull, got.Rope, want)
		}
	}
}

// drawRun is a random reeving whose sheaves drag, with what hangs on it.
func drawRun(t *rapid.T) (drawn, *purchase.Reeved, purchase.Bodies) {
	d := drawReeving(t)
	drag := rapid.Custom(func(t *rapid.T) purchase.Drag {
		return purchase.Drag(rapid.SampledFrom([]float64{0, 0.01, 0.02, 0.06}).Draw(t, "drag"))
	})
	for _, rp := range d.Lift {
		for i := 1; i < len(rp.Path)-1; i++ {
			rp.Path[i].Drag = drag.Draw(t, "lift")
		}
	}
	for i := 1; i < len(d.Hand.Path)-1; i++ {
		d.Hand.Path[i].Drag = drag.Draw(t, "hand")
	}
	r, err := d.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Idler: units.Mass(rapid.Float64Range(300, 600).Draw(t, "idler"))}
	var sum units.Force
	for range d.lines {
		pull := units.Force(rapid.Float64Range(500, 1500).Draw(t, "pull"))
		on.Pulls = append(on.Pulls, pull)
		sum += pull
	}
	balanced := sum.Mass(units.StandardGravity).Scale(r.Ratio())
	on.Arbor = balanced.Scale(rapid.Float64Range(0.85, 1.15).Draw(t, "arbor"))
	return d, r, on
}

// Run keeps every body in balance, and what hand and weights do goes into drag, sheave by sheave, and never out of it.
func TestPropRun(t *testing.T) {
	runs := 0
	rapid.Check(t, func(t *rapid.T) {
		d, r, on := drawRun(t)
		trim := units.Length(rapid.Float64Range(7, 11).Draw(t, "trim"))
		for _, way := range []purchase.Way{purchase.Out, purchase.In} {
			s, err := r.Run(trim, on, way)
			if err != nil {
				t.Fatal(err)
			}
			if s.Slack || s.Hand.Slack {
				continue
			}
			if s.Runs {
				runs++
			}
			weight := on.Arbor.Weight(units.StandardGravity).In(units.Newton)
			idler := on.Idler.Weight(units.StandardGravity).In(units.Newton)
			var onArbor, onIdler, onBatten float64
			sum := func(rp purchase.Rope, st purchase.RopeState) {
				i := 0
				d.parts(rp, trim.In(units.Metre), s.ArborTop.In(units.Metre), func(a, b purchase.Stop, za, zb, length float64) {
					up := (zb - za) / length
					from, to := st.Parts[i].TensionFrom.In(units.Newton), st.Parts[i].TensionTo.In(units.Newton)
					for _, end := range []struct {
						on purchase.Body
						up float64
					}{{a.On, from * up}, {b.On, -to * up}} {
						switch end.on {
						case purchase.Arbor:
							onArbor += end.up
						case purchase.Idler:
							onIdler += end.up
						case purchase.Batten:
							onBatten += end.up
						}
					}
					i++
				})
			}
			var carried float64
			for i, rp := range d.Lift {
				sum(rp, s.Lift[i])
				carried += on.Pulls[i].In(units.Newton)
			}
			sum(d.Hand, s.Hand)
			if !near.Rel(onArbor, weight, 1e-9) || !near.Rel(onIdler, idler, 1e-9) || !near.Rel(onBatten, carried, 1e-9) {
				t.Fatalf("%v: arbor %v of %v, idler %v of %v, batten %v of %v", way, onArbor, weight, onIdler, idler, onBatten, carried)
			}
			// Power for a batten at 1 m/s: what the hand puts in and the weights give up. Rope weight is in Imbalance.
			imbalance, err := r.Imbalance(trim, units.Force(carried).Mass(units.StandardGravity), on.Arbor)
			if err != nil {
				t.Fatal(err)
			}
			up := 1.0
			if way == purchase.In {
				up = -1
			}
			hand := s.Pull.In(units.Newton) * r.HandRatio()
			if s.Runs {
				hand = -hand
			}
			if lost := hand - up*imbalance.In(units.Newton); lost < -1e-6 {
				t.Fatalf("%v: drag gives %v W", way, -lost)
			}
		}
	})
	if runs == 0 {
		t.Error("no set ever ran by itself: the draw does not test what it should")
	}
}

// At the two edges of the band the pull is just nothing; the band holds a balanced set; no drag, no band.
func TestPropStays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r, on := drawRun(t)
		trim := units.Length(rapid.Float64Range(7, 11).Draw(t, "trim"))
		band, err := r.Stays(trim, on)
		if err != nil {
			t.Fatal(err)
		}
		if band.ArborHeavy > 1e-9 || band.BattenHeavy < -1e-9 {
			t.Fatalf("%+v", band)
		}
		var carried units.Force
		for _, pull := range on.Pulls {
			carried += pull
		}
		balance, err := r.Counterweight(trim, carried.Mass(units.StandardGravity))
		if err != nil {
			t.Fatal(err)
		}
		for _, edge := range []struct {
			imbalance units.Force
			way       purchase.Way
		}{{band.ArborHeavy, purchase.Out}, {band.BattenHeavy, purchase.In}} {
			on.Arbor = balance - edge.imbalance.Scale(r.Ratio()).Mass(units.StandardGravity)
			if on.Arbor < 0 {
				continue // the drag is more than all that hangs
			}
			s, err := r.Run(trim, on, edge.way)
			if err != nil {
				t.Fatal(err)
			}
			if s.Pull > carried.Scale(1e-9) {
				t.Fatalf("at the edge %v the pull is %v", edge, s.Pull)
			}
		}
	})
}

// More drag never makes the hand's work less: the pull out is no less than without drag, and so is the pull in.
func TestPropDragIsNoHelp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, r, on := drawRun(t)
		free := d.Reeving
		free.Lift = nil
		for _, rp := range d.Lift {
			rp.Path = append([]purchase.Stop{}, rp.Path...)
			for i := range rp.Path {
				rp.Path[i].Drag = 0
			}
			free.Lift = append(free.Lift, rp)
		}
		free.Hand.Path = append([]purchase.Stop{}, d.Hand.Path...)
		for i := range free.Hand.Path {
			free.Hand.Path[i].Drag = 0
		}
		f, err := free.Rig()
		if err != nil {
			t.Fatal(err)
		}
		for _, way := range []purchase.Way{purchase.Out, purchase.In} {
			with, err := r.Run(9, on, way)
			if err != nil {
				t.Fatal(err)
			}
			without, err := f.Run(9, on, way)
			if err != nil {
				t.Fatal(err)
			}
			signed := func(s purchase.Running) units.Force {
				if s.Runs {
					return -s.Pull
				}
				return s.Pull
			}
			if signed(with) < signed(without)-1e-6 {
				t.Fatalf("%v: %v with drag, %v without", way, signed(with), signed(without))
			}
		}
	})
}

func TestRunFaults(t *testing.T) {
	r, err := weightless(purchase.Double).Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: evenly(5, 100), Arbor: 100, Idler: 20}
	headless := weightless(purchase.Double).Reeving()
	headless.Hand = purchase.Rope{}
	noHand, err := headless.Rig()
	if err != nil {
		t.Fatal(err)
	}
	few := on
	few.Pulls = few.Pulls[1:]
	for _, c := range []struct {
		name, field string
		kind        error
		ask         func() error
	}{
		{"neither way", "way", units.ErrMissing, func() error { _, err := r.Run(5, on, 0); return err }},
		{"no such way", "way", units.ErrUnknown, func() error { _, err := r.Run(5, on, 3); return err }},
		{"a trim out of reach", "trim", units.ErrOutOfRange, func() error { _, err := r.Run(500, on, purchase.In); return err }},
		{"too few pulls", "pulls", units.ErrOutOfRange, func() error { _, err := r.Run(5, few, purchase.In); return err }},
		{"no hand line to pull", "hand", units.ErrMissing, func() error { _, err := noHand.Run(5, on, purchase.In); return err }},
		{"no hand line to feel", "hand", units.ErrMissing, func() error { _, err := noHand.Feel(5, on); return err }},
		{"no idler to raise", "hand", units.ErrMissing, func() error { _, err := noHand.RaiseIdler(1, 20); return err }},
		{"raised downwards", "by", units.ErrNegative, func() error { _, err := r.RaiseIdler(-1, 20); return err }},
		{"a base below nothing", "base", units.ErrNegative, func() error { b := on; b.Base = -1; _, err := r.Run(5, b, purchase.In); return err }},
		{"stays at no trim", "trim", units.ErrNotFinite, func() error { _, err := r.Stays(units.Length(math.NaN()), on); return err }},
	} {
		one(t, c.ask(), c.field, c.kind, c.name)
	}
}

// Lock shut, no rope weight: at one height the inner rope less the outer one above the lock is the imbalance on the
// standard sets. The idler is lifted when the outer rope has given up all of half its weight.
func TestFeel(t *testing.T) {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double} {
		r, err := weightless(kind).Rig()
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			heavy        float64 // lb on the batten
			inner, outer float64
			tight        purchase.Role
			more, spare  float64
			held         bool
		}{
			{20, 30, 10, purchase.InnerRope, 20, 10, true},
			{-20, 30, 50, purchase.OuterRope, 20, 50, true},
			{0, 30, 30, purchase.InnerRope, 0, 30, true},
			{35, 30, 0, purchase.InnerRope, 35, -5, false},
		} {
			got, err := r.Feel(20*units.Foot, purchase.Bodies{
				Pulls: evenly(5, units.PoundForce.Scale((500+c.heavy)/5)), Arbor: units.Pound.Scale(500 * kind.Ratio()), Idler: 60 * units.Pound,
			})
			if err != nil {
				t.Fatal(err)
			}
			lbf := func(f units.Force) float64 { return f.In(units.PoundForce) }
			if !near.Abs(lbf(got.Inner), c.inner, 1e-9) || !near.Abs(lbf(got.Outer), c.outer, 1e-9) || !near.Abs(lbf(got.More), c.more, 1e-9) ||
				!near.Abs(lbf(got.Spare), c.spare, 1e-9) || got.Held != c.held || c.more > 1 && got.Tight != c.tight {
				t.Errorf("%v, %v lb batten-heavy: %+v", kind, c.heavy, got)
			}
		}
	}
}

// A held idler: each of its parts bears the base tension that is given. Raising a free one gives two lengths of rope and
// takes its weight once that is slack.
func TestIdler(t *testing.T) {
	r, err := weightless(purchase.Double).Rig()
	if err != nil {
		t.Fatal(err)
	}
	got, err := r.Feel(20*units.Foot, purchase.Bodies{
		Pulls: evenly(5, 100*units.PoundForce), Arbor: 1000 * units.Pound, Idler: 60 * units.Pound, Base: 45 * units.PoundForce,
	})
	if err != nil || !near.Abs(got.Inner.In(units.PoundForce), 45, 1e-9) {
		t.Errorf("%+v %v: want 45 lbf in the inner rope", got, err)
	}
	raised, err := r.RaiseIdler(3*units.Inch, 60*units.Pound)
	if err != nil || !near.Abs(raised.Slack.In(units.Inch), 6, 1e-9) || !near.Abs(raised.Force.In(units.PoundForce), 60, 1e-9) {
		t.Errorf("%+v %v", raised, err)
	}
	if raised, err = r.RaiseIdler(0, 60*units.Pound); err != nil || raised != (purchase.RaisedIdler{}) {
		t.Errorf("not raised: %+v %v", raised, err)
	}
}

// Where the lines were made off does not tell which ropes are at the rail: with the arbor's foot below it there, the inner rope
// is still the one to pull further up.
func TestRailRopesAreThoseOfTheWholeWay(t *testing.T) {
	l := purchase.Layout{
		Kind: purchase.Single, HeadBlock: 20, Rail: 1, Idler: 0, ArborLength: 2, Trim: 15.5, ArborTop: 2.5,
		Loft: []purchase.Loft{{Across: 3, Height: 20}},
	}
	low, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	l.Trim, l.ArborTop = 1, 17
	high, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: []units.Force{1000}, Arbor: 90, Idler: 30}
	want, err := high.Run(5, on, purchase.Out)
	if err != nil {
		t.Fatal(err)
	}
	got, err := low.Run(5, on, purchase.Out)
	if err != nil || got.Rope != purchase.InnerRope || !near.Rel(got.Pull.In(units.Newton), want.Pull.In(units.Newton), 1e-9) {
		t.Errorf("%v on the %v, %v; want %v", got.Pull, got.Rope, err, want.Pull)
	}
}

// A held idler does not rise: the lock holds, and what the rope above it cannot give up the one below takes.
func TestHeldIdlerHolds(t *testing.T) {
	r, err := weightless(purchase.Double).Rig()
	if err != nil {
		t.Fatal(err)
	}
	s, err := r.At(20*units.Foot, purchase.Bodies{Pulls: evenly(5, 120*units.PoundForce), Arbor: 1000 * units.Pound, Base: 30 * units.PoundForce})
	if err != nil {
		t.Fatal(err)
	}
	inner, above := s.Hand.Parts[1].TensionFrom.In(units.PoundForce), s.Hand.Parts[2].TensionTo.In(units.PoundForce)
	if !s.Held() || !near.Abs(inner, 100, 1e-9) || !near.Abs(above, 0, 1e-9) {
		t.Errorf("held %v, %v lbf below and %v above the lock: want 100 and none", s.Held(), inner, above)
	}
}

// A rope of some weight with nothing on it at the batten cannot push the arbor up from below.
func TestRunTellsOfSlack(t *testing.T) {
	l := weightless(purchase.Single)
	l.LiftMass = 0.5 * units.KilogramPerMetre
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: evenly(5, 200), Arbor: 100, Idler: 30}
	if s, err := r.Run(15, on, purchase.Out); err != nil || s.Slack {
		t.Errorf("slack %v, %v", s.Slack, err)
	}
	on.Pulls[1] = 0
	s, err := r.Run(15, on, purchase.Out)
	if err != nil || !s.Slack {
		t.Errorf("slack %v, %v: want it told", s.Slack, err)
	}
	// 3.29 m of line hang from the loft block on the batten's side, 0.5 kg/m of them; on the arbor's side more than that would have to.
	for i, line := range s.Lift {
		if last := line.Parts[2]; line.Slack != (i == 1) || (last.TensionTo == 0) != (i == 1) || last.TensionTo < 0 || last.TensionFrom <= 0 {
			t.Errorf("line %d: slack %v, %+v", i+1, line.Slack, last)
		}
	}
}

// The idler rises to the rope lock and no further: 3 ft here, for its rest at 1 ft and the lock at 4 ft.
func TestRaiseIdlerToTheLock(t *testing.T) {
	r := mustRig(t, weightless(purchase.Single))
	if got, err := r.RaiseIdler(3*units.Foot, 20); err != nil || !near.Rel(got.Slack.In(units.Foot), 6, 1e-12) {
		t.Errorf("raised to the lock: %+v, %v; want 6 ft of slack", got, err)
	}
	got, err := r.RaiseIdler(units.Foot.Scale(3.001), 20)
	var fe *units.FieldError
	if !errors.As(err, &fe) || fe.Field != "by" || !errors.Is(err, units.ErrOutOfRange) || got != (purchase.RaisedIdler{}) {
		t.Errorf("raised beyond the lock: %+v, error %v", got, err)
	}
}
