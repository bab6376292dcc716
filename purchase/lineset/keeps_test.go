package lineset_test

import (
	"encoding/json"
	"fmt"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// What was rigged does not change with the caller's slices and maps.
func TestRiggedKeepsItsOwn(t *testing.T) {
	h := house()
	rigged, err := h.Rig()
	if err != nil {
		t.Fatal(err)
	}
	want, err := json.Marshal(rigged.Report())
	if err != nil {
		t.Fatal(err)
	}
	h.Stock[0].Name, h.Stock[0].Count = "other", 0
	h.Sets[0].Hang[0].Mass = 1
	h.Sets[0].Rigging.Batten.Lines[0].At = 2
	h.Sets[1].Name = "other"
	delete(h.Riggings, "single")
	for s := range rigged.Sets() {
		s.Checks()[0].Verdict = lineset.Exceeds
	}
	got, err := json.Marshal(rigged.Report())
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("a rigged house changed (-want +got):\n%s", diff)
	}
	was := house()
	if diff := cmp.Diff(was.Stock, rigged.House().Stock); diff != "" {
		t.Errorf("the house's stock changed (-want +got):\n%s", diff)
	}
	if got := rigged.House(); len(got.Riggings) != 1 || got.Sets[1].Name != "border" || got.Sets[0].Hang[0].Mass != was.Sets[0].Hang[0].Mass {
		t.Errorf("the house changed: %+v", got)
	}
	border, _ := rigged.Set("border")
	if again, err := border.Set().Rig(stock); err != nil || !cmp.Equal(again.Travel(), border.Travel()) {
		t.Errorf("the set of a rigged one cannot be rigged by itself: %v", err)
	}
}

// Nor does a set change with what it was rigged from: its lines, their own blocks, the bridges and the stock.
func TestRiggedSetKeepsItsOwn(t *testing.T) {
	s, pieces := muled(), fifties(40)
	s.Rigging.Run.Bridges = bridged().Rigging.Run.Bridges
	r, err := s.Rig(pieces)
	if err != nil {
		t.Fatal(err)
	}
	want, err := json.Marshal(r.Set())
	if err != nil {
		t.Fatal(err)
	}
	pieces[0].Count = 0
	s.Hang[0].Name, s.Rigging.Batten.Lines[1].At = "other", 1
	s.Rigging.Loft[3].Height, s.Rigging.Loft[3].Mules[0].Name, s.Rigging.Run.Bridges[0].Name = 1, "other", "other"
	got, err := json.Marshal(r.Set())
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("a rigged set changed (-want +got):\n%s", diff)
	}
	o := lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{of(lineset.AddPieces, "50", 1)}}
	if _, err := r.CheckOrder(o, within(5000, 5000)); err != nil {
		t.Errorf("%v; want a piece that is in stock", err)
	}
}

// One rigged set answers sixty-four goroutines alike, whatever they ask. The race detector looks on.
func TestConcurrentQuestions(t *testing.T) {
	described := electric()
	described.Rigging.Drag = 0.02
	r := mustRig(t, described)
	limit := lineset.ForceLimit{Max: 50 * units.PoundForce, Basis: "test"}
	limits := lineset.OrderLimits{ArborHeavy: limit, BattenHeavy: limit, RestsOnStop: true}
	ask := func() string {
		trim := 17 * units.Foot
		state, err := r.At(trim)
		all := []any{state.Carried, state.Share, state.Ropes.Lift, state.Ropes.Blocks, err, r.Checks(), r.Balance(), r.Travel()}
		add := func(answer any, err error) { all = append(all, answer, err) }
		running, err := r.Run(trim, purchase.In)
		add(running.Blocks, err)
		hand, err := r.Hand(trim)
		add(hand.Working(units.US), err)
		letGo, err := r.LetGo(trim)
		add(letGo, err)
		felt, err := r.Felt(trim)
		add(felt, err)
		flown, err := r.Fly(5*units.Foot, trim, 1, 2*units.Second, 1)
		add(flown, err)
		plan, err := r.Order(lineset.Loading, limits)
		add(plan, err)
		estimates, err := r.Estimates(plan.Order, limits)
		add(estimates, err)
		cuts, err := r.Load().Cuts(trim, 1, 5, 9)
		add(cuts, err)
		bent, err := r.Load().Deflection(trim)
		add(bent, err)
		add(r.WorkTrims(trim, trim), nil)
		return fmt.Sprintf("%+v", all)
	}
	want := ask()
	var wg sync.WaitGroup
	for range 64 {
		wg.Go(func() {
			for range 3 {
				if got := ask(); got != want {
					t.Errorf("another answer:\n%.500s\nwant\n%.500s", got, want)
				}
			}
		})
	}
	wg.Wait()
}
