package lineset_test

import (
	"encoding/json"
	"math"
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// A house with seven pieces of each kind: what its sets get is within the stock, their errors are said as they are at the
// batten, and with what is to be hired every set is as near as it would be alone.
func TestHouseAllot(t *testing.T) {
	var h lineset.House
	if err := json.Unmarshal(houseText(t), &h); err != nil {
		t.Fatal(err)
	}
	for k := range h.Stock {
		h.Stock[k].Count = 7
	}
	rigged, err := h.Rig()
	if err != nil {
		t.Fatal(err)
	}
	got, err := rigged.Allot()
	if err != nil {
		t.Fatal(err)
	}
	var worst float64
	i := 0
	for set := range rigged.Sets() {
		worst = math.Max(worst, math.Abs(got.Stacks[i].Error.In(units.Kilogram))/set.Counterweight().Ratio)
		i++
	}
	if !near.Rel(got.Worst.In(units.Kilogram), worst, 1e-9) || got.Worst == 0 {
		t.Errorf("worst %v, want %v kg", got.Worst, worst)
	}
	for _, p := range h.Stock {
		n := 0
		for _, s := range got.Stacks {
			n += s.Used(p.Name)
		}
		if n > p.Count {
			t.Errorf("%d of the %s, of %d", n, p.Name, p.Count)
		}
	}
	if len(got.Hire) == 0 {
		t.Error("nothing to hire")
	}
	for _, hire := range got.Hire {
		for k := range h.Stock {
			if h.Stock[k].Name == hire.Name {
				h.Stock[k].Count += hire.Count
			}
		}
	}
	if rigged, err = h.Rig(); err != nil {
		t.Fatal(err)
	}
	if got, err = rigged.Allot(); err != nil {
		t.Fatal(err)
	}
	i = 0
	for set := range rigged.Sets() {
		alone := set.Counterweight().Stack
		if units.Abs(got.Stacks[i].Error) > units.Abs(alone.Error)+1e-6*units.Kilogram {
			t.Errorf("%s: %v off with all that was hired, %v alone", set.Set().Name, got.Stacks[i].Error, alone.Error)
		}
		i++
	}
}
