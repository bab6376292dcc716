package main

import (
	"math"
	"math/rand/v2"
	"runtime/debug"
	"slices"
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// A race is worth nothing unless both arrive at the same place: every number of the floor against the library's, at
// random trims of sets with all kinds of masses, and where things come to the deck. The two share no code: the floor solves
// the three-moment equation and has the ropes of a double purchase set written out, the library relaxes a beam on
// lines that may be slack and walks along paths.
func TestFloorIsTheLibrary(t *testing.T) {
	const within = 1e-9 // of the size of the figures of its kind: some ten thousand roundings
	rng := rand.New(rand.NewPCG(7, 10))
	for number := range 6 {
		s := wholeSet(number)
		w, err := newWhole(s)
		if err != nil {
			t.Fatal(err)
		}
		f := newFloor(s, w.arbor)
		var n numbers
		at := rounds(s)
		all := at[:]
		for range 100 {
			all = append(all, s.Low+(s.High-s.Low).Scale(rng.Float64()))
		}
		for _, item := range s.Hang {
			if foot := item.Below + item.Height; foot > s.Low && foot < s.High {
				all = append(all, foot)
			}
		}
		for _, trim := range all {
			if err := w.statics(trim); err != nil {
				t.Fatal(err)
			}
			f.statics(trim.In(units.Metre), &n)
			share, state := w.answer.share, w.answer.state
			weight := share.Weight.In(units.Newton)
			same := func(what string, got, want, size float64) {
				t.Helper()
				if !(math.Abs(got-want) <= within*size) {
					t.Errorf("set %d, trim %v, %s: the library has %v, plain code %v", number, trim, what, got, want)
				}
			}
			force := func(what string, got units.Force, want float64) {
				t.Helper()
				same(what, got.In(units.Newton), want, weight)
			}
			place := func(what string, got units.Length, want float64) {
				t.Helper()
				same(what, got.In(units.Metre), want, 20)
			}
			moment := func(what string, got units.Moment, want float64) {
				t.Helper()
				same(what, got.In(units.NewtonMetre), want, weight)
			}
			vector := func(what string, across, up float64) {
				t.Helper()
				v := state.Load(what)
				force(what+", across", v.Across, across)
				force(what+", up", v.Up, up)
			}
			force("carried", share.Weight, n.carried)
			same("mass carried", share.Carried.In(units.Kilogram), n.carried/9.80665, weight/9.80665)
			place("centre", share.Centre, n.centre)
			moment("sagging", share.Sagging.Moment, n.sag)
			moment("hogging", share.Hogging.Moment, n.hog)
			force("shear", share.Shear.Force, n.shear)
			place("sagging at", share.Sagging.At, n.sagAt)
			place("hogging at", share.Hogging.At, n.hogAt)
			place("shear at", share.Shear.At, n.shearAt)
			same("stress", share.Stress.In(units.Pascal), n.stress, n.stress)
			place("arbor's top", state.ArborTop, n.arborTop)
			force("imbalance", state.Imbalance, n.imbalance)
			force("lock", state.Lock, n.lock)
			force("grip", state.Grip, n.grip)
			for i, line := range share.Lines {
				force("tension", line.Tension, n.tension[i])
				if line.Slack || line.Gap != 0 || line.Stretch != 0 {
					t.Errorf("set %d, trim %v: line %d is %+v, and plain code knows nothing of that", number, trim, i, line)
				}
			}
			for i, rope := range state.Lift {
				for k, part := range rope.Parts {
					force(part.From, part.TensionFrom, n.lift[i][2*k])
					force(part.To, part.TensionTo, n.lift[i][2*k+1])
				}
				vector(purchase.LoftBlock(i+1), n.loftAcross[i], n.loftUp[i])
				vector(purchase.DeadEnd(i+1), 0, n.deadUp[i])
			}
			for k, part := range state.Hand.Parts {
				force(part.From, part.TensionFrom, n.hand[2*k])
				force(part.To, part.TensionTo, n.hand[2*k+1])
			}
			vector(purchase.HeadBlock, n.headAcross, n.headUp)
			vector(purchase.ArborTop, 0, n.topUp)
			vector(purchase.ArborFoot, 0, n.footUp)
			vector(purchase.IdlerBlock, 0, n.idlerUp)
			vector(purchase.RailDeadEnd, 0, n.railUp)
			vector(purchase.HandDeadEnd, 0, n.handEndUp)
			vector(purchase.RopeLock, 0, n.lockUp)
			if lift, hand, blocks := len(state.Lift[0].Parts), len(state.Hand.Parts), len(state.Blocks); lift != 4 || hand != 5 || blocks != 2*lines+7 {
				t.Fatalf("%d parts of a lift line, %d of the hand line, %d blocks: plain code has not been asked for all of them", lift, hand, blocks)
			}
			for i, got := range w.answer.curve {
				force("curve", got, n.curve[i])
			}
			if t.Failed() {
				t.FailNow()
			}
		}
	}
}

// The answer of the rigged set itself is the answer of its rooms.
func TestFreshIsTheSame(t *testing.T) {
	s := wholeSet(0)
	w, err := newWhole(s)
	if err != nil {
		t.Fatal(err)
	}
	for _, trim := range rounds(s) {
		if err := w.statics(trim); err != nil {
			t.Fatal(err)
		}
		state, share := w.answer.state, w.answer.share
		if err := w.fresh(trim); err != nil {
			t.Fatal(err)
		}
		if !state.Equal(w.answer.state) || share.Weight != w.answer.share.Weight || share.Sagging != w.answer.share.Sagging {
			t.Fatalf("trim %v: %+v\nand %+v", trim, w.answer, state)
		}
	}
}

// Asked into the same memory nothing is allocated, limits and all.
func TestWholeDoesNotAllocate(t *testing.T) {
	if info, ok := debug.ReadBuildInfo(); ok && slices.Contains(info.Settings, debug.BuildSetting{Key: "-race", Value: "true"}) {
		t.Skip("the race detector lets pools forget on purpose")
	}
	s := wholeSet(0)
	w, err := newWhole(s)
	if err != nil {
		t.Fatal(err)
	}
	at, i := rounds(s), 0
	if n := testing.AllocsPerRun(len(at), func() {
		if err := w.statics(at[i%len(at)]); err != nil {
			t.Fatal(err)
		}
		w.exceeds()
		i++
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}
