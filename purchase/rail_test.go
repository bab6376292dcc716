package purchase_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// triple is a weightless set in triple purchase.
func triple() purchase.Layout {
	l := weightless(purchase.Double)
	l.Kind = purchase.Triple
	return l
}

// Four ropes at the rail in triple purchase, in two of which it runs a third as fast as in the others. A hand takes the fast one: then it pulls
// what is out of balance at the batten, as in single and double purchase.
func TestTripleAtTheRail(t *testing.T) {
	r := mustRig(t, triple())
	ropes := r.RailRopes()
	for i := range ropes {
		if ropes[i].Speed < 0.5 {
			ropes[i].Speed *= 3 // a third is no binary number
		}
		if !near.Rel(ropes[i].Speed, 1, 1e-12) {
			t.Errorf("%+v: want a speed of one or a third", ropes[i])
		}
		ropes[i].Speed = 0
	}
	same(t, []purchase.RailRope{
		{Role: purchase.InnerRope, From: purchase.ArborFoot, To: purchase.RailBlock, Moves: purchase.Out},
		{Role: purchase.OuterRope, From: purchase.RailBlock, To: purchase.ArborFoot, Moves: purchase.In},
		{Role: purchase.InnerRope, From: purchase.ArborFoot, To: purchase.IdlerBlock, Moves: purchase.Out},
		{Role: purchase.OuterRope, From: purchase.IdlerBlock, To: purchase.HeadBlock, Moves: purchase.In},
	}, ropes)
	for _, c := range []struct {
		heavy float64 // lb on the batten
		way   purchase.Way
		on    purchase.Role
		runs  bool
	}{
		{20, purchase.Out, purchase.InnerRope, false},
		{20, purchase.In, purchase.InnerRope, true},
		{-20, purchase.Out, purchase.OuterRope, true},
		{-20, purchase.In, purchase.OuterRope, false},
	} {
		on := purchase.Bodies{Pulls: evenly(5, units.PoundForce.Scale((500+c.heavy)/5)), Arbor: 1500 * units.Pound, Idler: 60 * units.Pound}
		got, err := r.Run(20*units.Foot, on, c.way)
		if err != nil {
			t.Fatal(err)
		}
		if !near.Rel(got.Pull.In(units.PoundForce), 20, 1e-9) || got.Rope != c.on || got.Runs != c.runs {
			t.Errorf("%v lb batten-heavy, %v: %v on the %v, runs %v", c.heavy, c.way, got.Pull, got.Rope, got.Runs)
		}
		for _, rope := range append(got.Lift, got.Hand) {
			if rope.Name == "" || rope.Slack || rope.Parts[0].From == "" || rope.Parts[0].To == "" {
				t.Errorf("%+v: names are missing", rope)
			}
		}
	}
	feel, err := r.Feel(20*units.Foot, purchase.Bodies{Pulls: hundreds, Arbor: 1440 * units.Pound, Idler: 60 * units.Pound})
	if err != nil || feel.Trim != 20*units.Foot || feel.Tight != purchase.InnerRope || !near.Rel(feel.More.In(units.PoundForce), 20, 1e-9) || !near.Rel(feel.Outer.In(units.PoundForce), 10, 1e-9) {
		t.Errorf("60 lb light at the arbor: %+v, %v; want the inner rope 20 lbf tighter", feel, err)
	}
}

// The idler's own pull is what the lock can give up, to the last: with just so much asked of it the rope above hangs slack and the set is
// held; with a hair more it is not.
func TestLockAtItsLimit(t *testing.T) {
	r := mustRig(t, weightless(purchase.Single))
	for _, c := range []struct {
		heavy  float64 // N
		held   bool
		slack  bool
		above  float64
		onRail float64 // N down
	}{{49, true, false, 1, 49}, {50, true, false, 0, 50}, {51, false, true, 0, 50}} {
		on := purchase.Bodies{Pulls: evenly(5, units.Force((500+c.heavy)/5)), Arbor: units.Force(500).Mass(units.StandardGravity), Idler: units.Force(100).Mass(units.StandardGravity)}
		s, err := r.At(5, on)
		if err != nil {
			t.Fatal(err)
		}
		above := s.Hand.Parts[1].TensionTo.In(units.Newton)
		if c.heavy != 50 && (s.Held() != c.held || s.Hand.Slack != c.slack) || !near.Abs(above, c.above, 1e-9) || !near.Abs(-s.Load(purchase.RopeLock).Up.In(units.Newton), c.onRail, 1e-9) {
			t.Errorf("%v N batten-heavy: held %v, slack %v, %v N above the lock, %v on the rail", c.heavy, s.Held(), s.Hand.Slack, above, s.Load(purchase.RopeLock))
		}
		if !near.Abs(s.Lock.In(units.Newton), c.heavy, 1e-9) || !near.Abs(s.Grip.In(units.Newton), 50, 1e-9) || s.Load(purchase.RopeLock) != s.On(purchase.Rail) {
			t.Errorf("%v N batten-heavy: asked %v of %v", c.heavy, s.Lock, s.Grip)
		}
	}
}

// A state is of its trim, and names the ropes and blocks as the layout does; filled again at another trim it is that one's.
func TestStateIsFilledAgain(t *testing.T) {
	r := mustRig(t, roped(purchase.Double))
	on := purchase.Bodies{Pulls: hundreds, Arbor: 1000 * units.Pound, Idler: 60 * units.Pound}
	light := on
	light.Pulls = evenly(5, 0)
	var s purchase.State
	var run purchase.Running
	for _, c := range []struct {
		trim units.Length
		on   purchase.Bodies
	}{{5, on}, {12, light}, {9, on}, {9, on}} {
		if err := r.AtInto(&s, c.trim, c.on); err != nil {
			t.Fatal(err)
		}
		// Made off at 4 ft, with the arbor's top at 62 ft.
		if top := 62*units.Foot - (c.trim - 4*units.Foot).Scale(0.5); !s.ArborTop.Within(top, 1e-12) {
			t.Errorf("at %v the arbor's top is at %v, want %v", c.trim, s.ArborTop, top)
		}
		fresh, err := r.At(c.trim, c.on)
		if err != nil || !s.Equal(fresh) || s.Trim != c.trim || s.Lift[1].Name != "lift line 2" || s.Hand.Name != "hand line" || len(s.Blocks) == 0 {
			t.Errorf("at %v: %+v, asked anew %+v, %v", c.trim, s, fresh, err)
		}
		other, err := r.At(c.trim+1, c.on)
		if err != nil || s.Equal(other) {
			t.Errorf("equal at two trims, %v", err)
		}
	}
	for _, way := range []purchase.Way{purchase.Out, purchase.In, purchase.Out} {
		if err := r.RunInto(&run, 9, on, way); err != nil {
			t.Fatal(err)
		}
		if top := 62*units.Foot - (9 - 4*units.Foot).Scale(0.5); !run.ArborTop.Within(top, 1e-12) {
			t.Errorf("running, the arbor's top is at %v, want %v", run.ArborTop, top)
		}
		fresh, err := r.Run(9, on, way)
		if err != nil || !run.Equal(fresh) || run.Way != way || run.Trim != 9 || run.Lift[1].Name != "lift line 2" || run.Hand.Name != "hand line" {
			t.Errorf("%v: %+v, asked anew %+v, %v", way, run, fresh, err)
		}
		other, err := r.Run(10, on, way)
		if err != nil || run.Equal(other) {
			t.Errorf("equal at two trims, %v", err)
		}
	}
}

// A State that a set with a hand line has filled says nothing of one when a set without fills it.
func TestFilledBySetsInTurn(t *testing.T) {
	with := mustRig(t, roped(purchase.Double))
	re := roped(purchase.Double).Reeving()
	re.Hand = purchase.Rope{}
	without, err := re.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: hundreds, Arbor: 1100 * units.Pound, Idler: 60 * units.Pound}
	var s purchase.State
	for _, r := range []*purchase.Reeved{with, without, with, without} {
		if err := r.AtInto(&s, 9, on); err != nil {
			t.Fatal(err)
		}
		if fresh, err := r.At(9, on); err != nil || !s.Equal(fresh) {
			t.Errorf("%+v, asked anew %+v, %v", s, fresh, err)
		}
		if r == without && (s.Lock != 0 || s.Grip != 0 || len(s.Hand.Parts) != 0) || r == with && len(s.Hand.Parts) == 0 {
			t.Errorf("hand line %+v, lock %v, grip %v", s.Hand, s.Lock, s.Grip)
		}
	}
}

// Past a sheave between the arbor and the dead end the rope does not run: whatever its drag, it bears as much on both sides.
func TestRopeThatDoesNotRun(t *testing.T) {
	re := roped(purchase.Double).Reeving()
	path := re.Lift[0].Path
	end := path[len(path)-1]
	turn := end
	turn.Name, turn.Drag = "turn", 0.1
	end.Across += 3
	re.Lift[0].Path = append(path[:len(path)-1:len(path)-1], turn, end)
	r, err := re.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: hundreds, Arbor: 1100 * units.Pound, Idler: 60 * units.Pound}
	for _, way := range []purchase.Way{purchase.Out, purchase.In} {
		run, err := r.Run(9, on, way)
		if err != nil {
			t.Fatal(err)
		}
		parts := run.Lift[0].Parts
		last := parts[len(parts)-1]
		if before := parts[len(parts)-2].TensionTo; before != last.TensionFrom || before < 100 {
			t.Errorf("%v: %v before the sheave, %v after it", way, before, last.TensionFrom)
		}
	}
}

// Let go without a hand line, nothing is known of a pull that would hold it.
func TestLetGoWithoutAHandLine(t *testing.T) {
	re := roped(purchase.Double).Reeving()
	re.Hand = purchase.Rope{}
	r, err := re.Rig()
	if err != nil {
		t.Fatal(err)
	}
	run, err := r.LetGo(purchase.LetGo{Trim: 9, Low: 2, High: 12, On: purchase.Bodies{Pulls: hundreds, Arbor: 1300 * units.Pound}})
	if err != nil || run.Way != purchase.Out || run.Held != (purchase.Pulling{}) {
		t.Errorf("%+v, %v", run, err)
	}
}

// A rope that would have to push by half a newton somewhere is slack, and one that just pulls there is not. The lines weigh
// 11 lb in 100 ft. In single purchase the arbor's top sinks as far as the batten rises, from 62 ft with the batten at 4 ft.
func TestSlackByHalfANewton(t *testing.T) {
	r := mustRig(t, roped(purchase.Single))
	const trim = 12.0
	top := (66 - trim/0.3048) * 0.3048
	less := 11 * 0.45359237 / 30.48 * g * (trim - top)
	for _, c := range []struct {
		more  float64
		slack bool
	}{{-0.5, true}, {0.5, false}} {
		on := purchase.Bodies{Pulls: evenly(5, units.Force(less+c.more)), Arbor: 10, Idler: 20}
		s, err := r.At(trim, on)
		if err != nil {
			t.Fatal(err)
		}
		parts := s.Lift[2].Parts
		if end := parts[len(parts)-1].TensionTo; s.Lift[2].Slack != c.slack || !end.Within(units.Force(max(c.more, 0)), 1e-9) {
			t.Errorf("by %v N: slack %v, %v at the arbor", c.more, s.Lift[2].Slack, end)
		}
		run, err := r.Run(trim, on, purchase.Out)
		if err != nil {
			t.Fatal(err)
		}
		for _, part := range run.Lift[2].Parts {
			if min(part.TensionFrom, part.TensionTo) < 0 {
				t.Errorf("by %v N, running: %+v", c.more, part)
			}
		}
	}
}

// A line that bears half a newton bears half a newton while it runs too.
func TestLittleIsSomething(t *testing.T) {
	r := mustRig(t, weightless(purchase.Single))
	on := purchase.Bodies{Pulls: evenly(5, 0.5), Arbor: units.Force(2.5).Mass(units.StandardGravity), Idler: units.Force(1).Mass(units.StandardGravity)}
	run, err := r.Run(9, on, purchase.Out)
	if err != nil {
		t.Fatal(err)
	}
	for _, rope := range append(run.Lift, run.Hand) {
		for _, part := range rope.Parts {
			if !part.TensionFrom.Within(0.5, 1e-12) || !part.TensionTo.Within(0.5, 1e-12) {
				t.Errorf("%s: %+v, want half a newton", rope.Name, part)
			}
		}
	}
}

// With nothing on it at all a set takes no pull, and does not run by itself.
func TestNothingDoesNotRun(t *testing.T) {
	r := mustRig(t, weightless(purchase.Double))
	for way, rope := range map[purchase.Way]purchase.Role{purchase.Out: purchase.InnerRope, purchase.In: purchase.OuterRope} {
		if got, err := r.Run(5, purchase.Bodies{Pulls: evenly(5, 0)}, way); err != nil || got.Pull != 0 || got.Runs || got.Rope != rope {
			t.Errorf("%v: %v on the %v, runs %v, %v", way, got.Pull, got.Rope, got.Runs, err)
		}
	}
}

// Of blocks that bear alike the one nearest the arbor is told, of others the most loaded; of none no line and no load.
func TestHeaviest(t *testing.T) {
	r := mustRig(t, weightless(purchase.Double))
	for _, c := range []struct {
		name  string
		pulls []units.Force
		of    func(int) string
		line  int
		load  float64
	}{
		{"all alike", evenly(5, 100), purchase.DeadEnd, 1, 100},
		{"the last", []units.Force{100, 100, 100, 100, 101}, purchase.DeadEnd, 5, 101},
		{"one between", []units.Force{100, 100, 130, 120, 130}, purchase.LoftBlock, 3, 130 * math.Sqrt2},
		{"but for rounding", []units.Force{100, 100 + 1e-12, 99, 99, 99}, purchase.DeadEnd, 1, 100},
		{"none there", evenly(5, 100), purchase.BeamBlock, 0, 0},
		{"nothing on them", evenly(5, 0), purchase.DeadEnd, 0, 0},
	} {
		s, err := r.At(5, purchase.Bodies{Pulls: c.pulls, Arbor: 100, Idler: 20})
		if err != nil {
			t.Fatal(err)
		}
		if line, load := s.Heaviest(c.of); line != c.line || !near.Abs(load.In(units.Newton), c.load, 1e-9) {
			t.Errorf("%s: line %d bears %v, want line %d and %v N", c.name, line, load, c.line, c.load)
		}
	}
}

// It does not matter from which end a lift line is described: laid from the arbor to the batten it bears and moves the same.
func TestPropLinesLaidTheOtherWayAbout(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, r, on := drawRun(t)
		other := d.Reeving
		other.Lift = slices.Clone(d.Lift)
		for i, rp := range d.Lift {
			other.Lift[i].Path = slices.Clone(rp.Path)
			slices.Reverse(other.Lift[i].Path)
		}
		back, err := other.Rig()
		if err != nil || !near.Rel(back.Ratio(), r.Ratio(), 1e-12) {
			t.Fatalf("ratio %v, want %v, %v", back.Ratio(), r.Ratio(), err)
		}
		trim := units.Length(rapid.Float64Range(7, 11).Draw(t, "trim"))
		is := func(what string, got, want units.Force) {
			if !near.Abs(got.In(units.Newton), want.In(units.Newton), 1e-7) {
				t.Fatalf("%s: %v, laid from the batten %v", what, got, want)
			}
		}
		for _, way := range []purchase.Way{purchase.Out, purchase.In} {
			a, errA := r.Run(trim, on, way)
			b, errB := back.Run(trim, on, way)
			if errA != nil || errB != nil || a.Rope != b.Rope || a.Runs != b.Runs {
				t.Fatalf("%v: %+v, %v; %+v, %v", way, a, errA, b, errB)
			}
			is("pull", b.Pull, a.Pull)
			for _, block := range a.Blocks {
				is(block.Name, b.Load(block.Name).Up, block.Load.Up)
				is(block.Name, b.Load(block.Name).Across, block.Load.Across)
			}
			u, errU := r.Gain(trim, on, way, 1, purchase.Pulling{})
			v, errV := back.Gain(trim, on, way, 1, purchase.Pulling{})
			if errU != nil || errV != nil || !near.Abs(u.In(units.MetrePerSecondSquared), v.In(units.MetrePerSecondSquared), 1e-9) {
				t.Fatalf("%v: gains %v, laid from the batten %v; %v, %v", way, v, u, errV, errU)
			}
		}
		a, errA := r.Rest(trim, on)
		b, errB := back.Rest(trim, on)
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		for _, block := range a.Blocks {
			for _, end := range [][2]purchase.ForceBand{{b.Load(block.Name).Up, block.Up}, {b.Load(block.Name).Across, block.Across}} {
				is(block.Name, end[0].Least, end[1].Least)
				is(block.Name, end[0].Value, end[1].Value)
				is(block.Name, end[0].Most, end[1].Most)
			}
		}
		is("lock", b.Lock.Most, a.Lock.Most)
		is("imbalance", first(back.Imbalance(trim, 100, 90)), first(r.Imbalance(trim, 100, 90)))
	})
}

// A layout of no kind that is known lays single purchase, for Validate to look at; dead ends a hair above the arbor's top are
// found by the ropes that would end there.
func TestLayoutsThatAreNot(t *testing.T) {
	l := weightless(purchase.Single)
	want := l.Reeving()
	l.Kind = 9
	same(t, want, l.Reeving())
	one(t, l.Validate(), "kind", units.ErrUnknown, "there are three")
	l = oneLine(purchase.Double)
	l.Hand, l.DeadEnd = purchase.Single, l.ArborTop+5e-10
	_, err := l.Rig()
	one(t, err, "lift[0].path[4]", units.ErrDuplicate, "its last part would have no direction")
}

func first[T any](answer T, _ error) T { return answer }
