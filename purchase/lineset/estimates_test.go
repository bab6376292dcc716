package lineset_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// 60 lb and 40 lb within 20 arbor-heavy and 50 batten-heavy, and everything flown out
// balanced. By head: before the arbor is weighted there is no room to be heavier than 50 of 60;
// balanced, all of it may be 50 of 100 heavier or 20 of 100 lighter.
func TestEstimatesByHand(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60), pounds("cloth", 40)))
	limits := within(20, 50)
	limits.RestsOnStop = true
	o := lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("lamps"), add(8), hang("cloth"), add(2), unlock, fly(20)}}
	e, err := r.Estimates(o, limits)
	if err != nil {
		t.Fatal(err)
	}
	type row struct {
		HeavierFree, LighterFree bool
		Heavier, Lighter         float64 // per cent, rounded
		HeavierStep, LighterStep int
	}
	rows := func(list ...lineset.Allowance) (out []row) {
		for _, a := range list {
			out = append(out, row{a.Heavier.Free, a.Lighter.Free, percent(a.Heavier.Share), percent(a.Lighter.Share), a.Heavier.Step, a.Lighter.Step})
		}
		return out
	}
	want := []row{
		{true, true, 0, 0, 0, 0},   // nothing hangs
		{true, true, 0, 0, 0, 0},   // rests on the stop; nothing at all would balance
		{true, false, 0, 0, 0, 2},  // 80 against 60: just the limit
		{true, false, 0, 40, 0, 3}, // 20 batten-heavy: 40 of 100 may be missing
		{true, false, 0, 20, 0, 4},
		{true, false, 0, 20, 0, 5},
		{false, false, 50, 20, 6, 6}, // off the stop
	}
	if diff := cmp.Diff(want, rows(e.Steps...)); diff != "" {
		t.Errorf("steps: %s", diff)
	}
	if diff := cmp.Diff([]row{{false, false, 50, 0, 6, 2}}, rows(e.All)); diff != "" {
		t.Errorf("all: %s", diff)
	}
	// 50 of 60 and of 40; of the cloth 20 of 40 may be missing once it hangs, of the lamps nothing after step 2.
	if diff := cmp.Diff([]row{{false, false, 83.33, 0, 6, 2}, {false, false, 125, 50, 6, 4}}, rows(e.Items...)); diff != "" {
		t.Errorf("items: %s", diff)
	}
	if e.Matters != 1 || !near.Abs(e.Items[1].Lighter.Mass.In(units.Pound), 20, 1e-9) || !near.Abs(e.All.Heavier.Mass.In(units.Pound), 50, 1e-9) {
		t.Errorf("%+v", e)
	}
}

func percent(share float64) float64 { return float64(int(share*1e4+0.5)) / 1e2 }

// A line that is set holds both ways; a limit that is passed already leaves no room, and what matters is told by the
// states that pass none.
func TestEstimatesHeldAndPassed(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Double, pounds("lamps", 60)))
	limits := within(20, 50)
	limits.HeldLine = lineset.ForceLimit{Max: 180 * units.PoundForce, Basis: "given in the test"}
	e, err := r.Estimates(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("lamps"), {Act: lineset.SetLine, On: purchase.Arbor}}}, limits)
	if err != nil {
		t.Fatal(err)
	}
	if h := e.Steps[1].Heavier; !h.Passed || h.Free || h.Mass != 0 {
		t.Errorf("60 unanswered of 50 allowed: %+v", h)
	}
	if !e.All.Heavier.Passed || e.All.Heavier.Step != 1 || e.Matters != 1 {
		t.Errorf("passed at step 1, half as much again at step 2: %+v", e)
	}
	if h := e.Steps[2].Heavier; !near.Abs(h.Share, 0.5, 1e-9) {
		t.Errorf("90 at the batten is 180 at the arbor: %+v", h)
	}
	if l := e.Steps[2].Lighter; !l.Free {
		t.Errorf("without the lamps there is nothing to hold: %+v", l)
	}
}

// Of 300 lb and a tag of 1 lb, 59 beyond what the arbor answers with 50 allowed, no estimate is to blame: not even a tag that
// weighs nothing would help. Once they balance within 50, the heavy one matters.
func TestWhatIsPassedBlamesNoEstimate(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("flat", 300), pounds("tag", 1)))
	limits := within(50, 50)
	o := lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("flat"), hang("tag"), add(24)}}
	for _, row := range []struct {
		more    []lineset.OrderStep
		matters int
	}{{nil, 0}, {[]lineset.OrderStep{add(4)}, 1}} {
		o.Steps = append(o.Steps, row.more...)
		e, err := r.Estimates(o, limits)
		if err != nil {
			t.Fatal(err)
		}
		if e.Matters != row.matters || !e.Items[1].Heavier.Passed || !e.All.Heavier.Passed {
			t.Errorf("%+v", e)
		}
	}
}

// A batten of 42 ft on lines from 8 to 34 ft, with 170 lb at its one end and 190 lb at the other: each lifts it about the line next
// to it on an arm of 8 ft, held down by the other end on 34 ft and by the batten itself, some 114 lb, on 13 ft. The batten
// alone holds 170 lb, not 190.
func TestEstimatesLookAtTipping(t *testing.T) {
	s := plain(t, purchase.Single,
		load.Item{Name: "near end", Mass: 170 * units.Pound}, load.Item{Name: "far end", Mass: 190 * units.Pound, From: 42 * units.Foot, To: 42 * units.Foot})
	s.Rigging.Batten.Lines = load.Spaced(8*units.Foot, 13*units.Foot, 3)
	r := rigTens(t, s)
	limits := within(1000, 1000)
	bare := r.Bare().In(units.Pound) * 13
	e, err := r.Estimates(lineset.Order{From: lineset.FromLoaded}, limits)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name string
		got  lineset.Tolerance
		want float64
	}{
		{"near end heavier", e.Items[0].Heavier, (bare + 190*34 - 170*8) / 8},
		{"near end lighter", e.Items[0].Lighter, 170 - (190*8-bare)/34},
		{"far end heavier", e.Items[1].Heavier, (bare + 170*34 - 190*8) / 8},
	} {
		if !row.got.Tips || row.got.Passed || !near.Abs(row.got.Mass.In(units.Pound), row.want, 1e-9) {
			t.Errorf("%s: %+v, by hand %v lb", row.name, row.got, row.want)
		}
	}
	if !e.Items[1].Lighter.Free {
		t.Errorf("without the far end: %+v", e.Items[1].Lighter)
	}
	if e.All.Heavier.Tips || e.All.Lighter.Tips {
		t.Errorf("both ends off by the same factor tip nothing: %+v", e.All)
	}
}

// A hang that is off by just what is allowed is within the limits, by more it exceeds.
func TestPropEstimates(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := drawSet(rt)
		r, err := s.Rig(stock)
		if err != nil || len(s.Hang) == 0 {
			rt.Skip("nothing to be wrong about")
		}
		// Limits that the set as it is written keeps to, but for pieces that leave the deck beside a halt.
		pounds := func(name string, f units.Force) float64 {
			return max(0, f.In(units.PoundForce)) + rapid.Float64Range(1, 300).Draw(rt, name)
		}
		limits := within(pounds("arbor-heavy", -r.Balance().Least.Imbalance), pounds("batten-heavy", r.Balance().Most.Imbalance))
		o := lineset.Order{From: lineset.FromLoaded, Trim: r.Low().Trim, Steps: []lineset.OrderStep{unlock, {Act: lineset.FlyTo, Trim: r.High().Trim}}}
		e, err := r.Estimates(o, limits)
		if err != nil {
			rt.Fatal(err)
		}
		exceeds := func(change func(int, *load.Item)) bool {
			off := s
			off.Hang = append(load.Hang(nil), s.Hang...)
			for i := range off.Hang {
				change(i, &off.Hang[i])
			}
			// The stack that was chosen for the masses as written is all that there is, so it is called piece by piece.
			o := lineset.Order{From: lineset.FromBare, Trim: r.Low().Trim}
			for i := range off.Hang {
				o.Hung = append(o.Hung, i+1)
			}
			for _, row := range r.Counterweight().Stack.Show {
				o.Pieces = append(o.Pieces, lineset.PiecesOf{Piece: row.Name, Count: row.Count})
			}
			o.Steps = []lineset.OrderStep{unlock, {Act: lineset.FlyTo, Trim: r.High().Trim}}
			rigged, err := off.Rig(stock)
			if err != nil {
				rt.Skip(err) // off by so much that the batten tips
			}
			c, err := rigged.CheckOrder(o, limits)
			if err != nil {
				rt.Fatal(err)
			}
			for _, s := range c.States {
				if s.Balance.Verdict == lineset.Exceeds {
					return true
				}
			}
			return false
		}
		if exceeds(func(int, *load.Item) {}) {
			rt.Skip("a limit is passed as it is written")
		}
		try := func(name string, a lineset.Allowance, off func(by float64) func(int, *load.Item)) {
			for _, side := range []struct {
				way float64
				t   lineset.Tolerance
			}{{1, a.Heavier}, {-1, a.Lighter}} {
				if side.t.Free || side.t.Share > 20 {
					continue
				}
				for _, by := range []struct {
					share float64
					want  bool
				}{{side.t.Share - 1e-6, false}, {side.t.Share + 1e-6, true}} {
					share := side.way * by.share
					if share <= -1 {
						continue
					}
					if exceeds(off(1+share)) != by.want {
						rt.Fatalf("%s off by %v: exceeds %v", name, share, !by.want)
					}
				}
			}
		}
		try("all", e.All, func(by float64) func(int, *load.Item) {
			return func(_ int, item *load.Item) { item.Mass = item.Mass.Scale(by) }
		})
		for k, a := range e.Items {
			try(a.Name, a, func(by float64) func(int, *load.Item) {
				return func(i int, item *load.Item) {
					if i == k {
						item.Mass = item.Mass.Scale(by)
					}
				}
			})
		}
	})
}
