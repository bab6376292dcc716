package purchase_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// handed is a set of one weightless line in single purchase with a hand line over given stops: the arbor's top at 10 m, the batten at 2 m,
// the idler at 0.5 m, and the head block at 20 m.
func handed(lock units.Length, hand ...purchase.Stop) purchase.Reeving {
	r := reeved(stop("batten", purchase.Batten, 3, 0), stop("loft", purchase.Grid, 3, 20), stop("head", purchase.HeadBeam, 0, 20), stop("top", purchase.Arbor, 0, 0))
	r.Hand = purchase.Rope{Name: "hand", Path: hand}
	r.Idler, r.Lock = 0.5, lock
	return r
}

var (
	footStop  = stop("foot", purchase.Arbor, 0, -2)
	idlerStop = stop("idler", purchase.Idler, 0, 0)
	headStop  = stop("head", purchase.HeadBeam, 0, 20)
	topStop   = stop("top", purchase.Arbor, 0, 0)
	beamStop  = stop("beam", purchase.HeadBeam, 0, 20.5)
)

// handLines are hand lines that a layout does not lay.
func handLines() map[string]purchase.Reeving {
	thrice := handed(1.2, stop("rail end", purchase.Rail, 0, 1.1), footStop, idlerStop, headStop, topStop, beamStop, stop("other rail end", purchase.Rail, 0, 1))
	lift := thrice.Lift[0].Path
	thrice.Lift[0].Path = append(lift[:3:3], topStop, stop("beam of the line", purchase.HeadBeam, 0, 20.7), topStop)
	return map[string]purchase.Reeving{
		"plain":                        handed(0.8, footStop, idlerStop, headStop, topStop),
		"dead end at the lock":         handed(1.2, stop("rail end", purchase.Rail, 0, 1.2), stop("floor", purchase.Building, 0, 0.2), footStop, idlerStop, headStop, topStop, beamStop),
		"down to the rail once more":   handed(1.2, footStop, idlerStop, headStop, stop("rail", purchase.Rail, 0, 1), beamStop, topStop),
		"both dead ends at the rail":   thrice,
		"lock above the arbor's foot":  handed(19, footStop, idlerStop, headStop, topStop),
		"first to a sheave underneath": handed(0.8, footStop, idlerStop, stop("under", purchase.Arbor, 0, -1), stop("floor", purchase.Building, 0, 0.2), headStop, topStop, beamStop, topStop),
		"idler on one part":            handed(0.8, footStop, stop("floor", purchase.Building, 0, 0.5), stop("idler", purchase.Idler, 0.5, 0), stop("over it", purchase.HeadBeam, 0.5, 20), headStop, topStop),
	}
}

// What passes or ends at the lock's height is at the rail, an end just there too; what runs there is pulled by whoever wants the batten
// where it then flies, and a dead end, wherever along the path, stands still.
func TestRailRopesByHand(t *testing.T) {
	const third = 1.0 / 3
	dead := func(from, to string) purchase.RailRope { return purchase.RailRope{From: from, To: to} }
	inner := func(from, to string, speed float64) purchase.RailRope {
		return purchase.RailRope{Role: purchase.InnerRope, From: from, To: to, Moves: purchase.Out, Speed: speed}
	}
	outer := func(from, to string, speed float64) purchase.RailRope {
		return purchase.RailRope{Role: purchase.OuterRope, From: from, To: to, Moves: purchase.In, Speed: speed}
	}
	mixed := weightless(purchase.Double)
	mixed.Hand = purchase.Single
	lines := handLines()
	lines["single under double"] = mixed.Reeving()
	for name, want := range map[string][]purchase.RailRope{
		"plain":                        {inner("foot", "idler", 1), outer("idler", "head", 1)},
		"dead end at the lock":         {dead("rail end", "floor"), dead("floor", "foot"), inner("foot", "idler", 2), outer("idler", "head", 2)},
		"down to the rail once more":   {inner("foot", "idler", 1), outer("idler", "head", 1), inner("head", "rail", 1), outer("rail", "beam", 1)},
		"both dead ends at the rail":   {dead("rail end", "foot"), inner("foot", "idler", 2*third), outer("idler", "head", 2*third), dead("beam", "other rail end")},
		"lock above the arbor's foot":  {outer("idler", "head", 1), inner("head", "top", 1)},
		"first to a sheave underneath": {inner("foot", "idler", 1), outer("idler", "under", 1), inner("under", "floor", 3), outer("floor", "head", 3)},
		"idler on one part":            {inner("foot", "floor", 1), outer("idler", "over it", 1)},
		"single under double":          {inner(purchase.ArborFoot, purchase.IdlerBlock, 0.5), outer(purchase.IdlerBlock, purchase.HeadBlock, 0.5)},
	} {
		r, err := lines[name].Rig()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		got := r.RailRopes()
		if len(got) != len(want) {
			t.Errorf("%s: %+v, want %+v", name, got, want)
			continue
		}
		for i, is := range want {
			if !near.Rel(got[i].Speed, is.Speed, 1e-12) || (is.Speed == 0) != (got[i].Speed == 0) {
				t.Errorf("%s: %v runs at %v, want %v", name, got[i].From, got[i].Speed, is.Speed)
			}
			got[i].Speed = is.Speed
			if got[i] != is {
				t.Errorf("%s: %+v, want %+v", name, got[i], is)
			}
		}
	}
}

// Of two ropes that run alike a hand takes the one by the idler. By the equilibrium of the arbor, the idler W at rest between tensions
// t and K·t, and two turns more: out it takes
// L − A + (K⁴ − 1)·W/(1 + K), in (A − L + K·W/(1 + K))·K³ − W/(1 + K).
func TestHandTakesTheRopeByTheIdler(t *testing.T) {
	const k, weight, lift, arbor = 1.1, 300.0, 1000.0, 990.0
	re := handLines()["down to the rail once more"]
	for i := 1; i < lastStop(&re.Hand); i++ {
		re.Hand.Path[i].Drag = (k - 1) / (k + 1)
	}
	r, err := re.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: []units.Force{lift}, Arbor: units.Mass(arbor / g), Idler: units.Mass(weight / g)}
	slack := weight / (1 + k)
	got, err := r.Run(5, on, purchase.Out)
	if want := lift - arbor + (k*k*k*k-1)*slack; err != nil || got.Runs || got.Rope != purchase.InnerRope || !near.Rel(got.Pull.In(units.Newton), want, 1e-9) {
		t.Errorf("out: %v on the %v, %v; want %v", got.Pull, got.Rope, err, want)
	}
	// In: the rope runs from top to foot. Above the hand it bears P more than the idler's first part, and each of head block, rail and
	// beam takes a K off.
	got, err = r.Run(5, on, purchase.In)
	if want := (arbor-lift+k*slack)*k*k*k - slack; err != nil || got.Runs || got.Rope != purchase.OuterRope || !near.Rel(got.Pull.In(units.Newton), want, 1e-9) {
		t.Errorf("in: %v on the %v, %v; want %v", got.Pull, got.Rope, err, want)
	}
}

// What the lock holds does as much work as what is out of balance: of any hand line the difference at the lock times the rope that
// runs through it is the imbalance times the batten's way, whatever the ropes weigh.
func TestLockHoldsByWork(t *testing.T) {
	for name, re := range handLines() {
		for _, mass := range []units.LineMass{0, 0.3} {
			re.Lift[0].Mass, re.Hand.Mass = mass, 2*mass
			r, err := re.Rig()
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			for _, arbor := range []units.Mass{96, 100, 104} {
				s, err := r.At(5, purchase.Bodies{Pulls: []units.Force{1000}, Arbor: arbor.Scale(r.Ratio()), Idler: 90})
				if err != nil || !near.Abs(s.Lock.Scale(r.HandRatio()).In(units.Newton), s.Imbalance.In(units.Newton), 1e-9) || s.Imbalance == 0 {
					t.Errorf("%s: %v at the lock, %v out of balance, hand line at %v: %v", name, s.Lock, s.Imbalance, r.HandRatio(), err)
				}
			}
		}
	}
}

// Without drag nothing holds a set that is out of balance at all: the band in which it stays is one of nothing, its ends nought or, by
// rounding, a hair on either side of it.
func TestPropNothingStaysWithoutDrag(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawReeving(t)
		r, err := d.Rig()
		if err != nil {
			t.Fatal(err)
		}
		on := purchase.Bodies{Idler: units.Mass(rapid.Float64Range(5, 60).Draw(t, "idler"))}
		for range d.lines {
			on.Pulls = append(on.Pulls, units.Force(rapid.Float64Range(50, 2000).Draw(t, "pull")))
		}
		b, err := r.Stays(units.Length(rapid.Float64Range(7, 11).Draw(t, "trim")), on)
		if err != nil || b.ArborHeavy > 0 || b.ArborHeavy < -1e-8 || b.BattenHeavy < 0 || b.BattenHeavy > 1e-8 {
			t.Fatalf("stays in %+v, %v", b, err)
		}
	})
}

// A set half a newton out of balance takes half a newton, or is held back with as much.
func TestLittleOutOfBalance(t *testing.T) {
	r := mustRig(t, weightless(purchase.Single))
	for _, c := range []struct {
		heavy float64
		way   purchase.Way
		rope  purchase.Role
		runs  bool
	}{
		{0.5, purchase.Out, purchase.InnerRope, false}, {0.5, purchase.In, purchase.InnerRope, true},
		{-0.5, purchase.In, purchase.OuterRope, false}, {-0.5, purchase.Out, purchase.OuterRope, true},
	} {
		on := purchase.Bodies{Pulls: evenly(5, units.Force((500+c.heavy)/5)), Arbor: units.Mass(500 / g), Idler: 20}
		got, err := r.Run(9, on, c.way)
		if err != nil || !near.Abs(got.Pull.In(units.Newton), 0.5, 1e-9) || got.Rope != c.rope || got.Runs != c.runs || got.Slack {
			t.Errorf("%v N batten-heavy, %v: %v on the %v, runs %v, %v", c.heavy, c.way, got.Pull, got.Rope, got.Runs, err)
		}
	}
}

// The rope lock is pulled along its rope and never aside, whether or not a batten hangs a hair out of plumb.
func TestLockIsNotPulledAside(t *testing.T) {
	re := weightless(purchase.Double).Reeving()
	for i := range re.Lift {
		re.Lift[i].Path[0].Across += 5e-10
	}
	r, err := re.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: hundreds, Arbor: 990 * units.Pound, Idler: 60 * units.Pound}
	s, err := r.At(9, on)
	if lock := s.Load(purchase.RopeLock); err != nil || lock.Across != 0 || lock.Up == 0 {
		t.Errorf("%+v on the rope lock, %v", lock, err)
	}
}

// A state that is filled again is written over in place; a copy of one that is filled itself leaves it alone.
func TestFilledInPlace(t *testing.T) {
	r := mustRig(t, roped(purchase.Double))
	on := purchase.Bodies{Pulls: hundreds, Arbor: 1000 * units.Pound, Idler: 60 * units.Pound}
	var s purchase.State
	var run purchase.Running
	fill := func(s *purchase.State, run *purchase.Running, trim units.Length) {
		if err := r.AtInto(s, trim, on); err != nil {
			t.Fatal(err)
		}
		if err := r.RunInto(run, trim, on, purchase.Out); err != nil {
			t.Fatal(err)
		}
	}
	fill(&s, &run, 5)
	lift, parts, blocks, running := &s.Lift[0], &s.Hand.Parts[0], &s.Blocks[0], &run.Lift[0]
	fill(&s, &run, 9)
	if lift != &s.Lift[0] || parts != &s.Hand.Parts[0] || blocks != &s.Blocks[0] || running != &run.Lift[0] {
		t.Error("filled again, it has slices elsewhere")
	}
	other, ran := s, run
	fill(&other, &ran, 12)
	if !s.Equal(first(r.At(9, on))) || !run.Equal(first(r.Run(9, on, purchase.Out))) {
		t.Error("a copy that was filled itself has written over what it was copied from")
	}
	if !other.Equal(first(r.At(12, on))) || !ran.Equal(first(r.Run(12, on, purchase.Out))) {
		t.Error("a copy that was filled itself is of another trim")
	}
}

// Asked twice, a set says the same, to the letter; and ways and roles are written in words.
func TestAnswersInWords(t *testing.T) {
	r := mustRig(t, roped(purchase.Single))
	on := purchase.Bodies{Pulls: hundreds, Arbor: 500 * units.Pound, Idler: 60 * units.Pound}
	if a, b := fmt.Sprintf("%+v", first(r.At(9, on))), fmt.Sprintf("%+v", first(r.At(9, on))); a != b {
		t.Errorf("%s\nand then\n%s", a, b)
	}
	if a, b := fmt.Sprintf("%+v", first(r.Run(9, on, purchase.In))), fmt.Sprintf("%+v", first(r.Run(9, on, purchase.In))); a != b {
		t.Errorf("%s\nand then\n%s", a, b)
	}
	text, err := json.Marshal(r.RailRopes())
	const want = `[{"role":"inner rope","from":"arbor foot","to":"idler","moves":"out","speed":1},{"role":"outer rope","from":"idler","to":"head block","moves":"in","speed":1}]`
	if err != nil || string(text) != want {
		t.Errorf("%s, %v; want %s", text, err, want)
	}
}
