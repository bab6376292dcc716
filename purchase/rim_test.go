package purchase_test

import (
	"math"
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// A sheave's rim takes a pull to speed it up, which presses on the pin as well and drags: what a rim of a gram does to a set that
// gains speed, against the equilibrium of both sheaves, T₂ − T₁ = c·|R| + M·a with the part before it plumb and the part behind
// it level, or the other way about.
func TestRimDragsToo(t *testing.T) {
	const (
		m1, m2, c = 100.0, 300.0, 0.2
		rim       = 1e-3
	)
	gain := func(rim float64) float64 {
		l := weightless(purchase.Single)
		l.Loft = l.Loft[:1]
		re := l.Reeving()
		loft, head := &re.Lift[0].Path[1], &re.Lift[0].Path[2]
		loft.Drag, head.Drag, head.Rim = c, c, units.Mass(rim)
		r, err := re.Rig()
		if err != nil {
			t.Fatal(err)
		}
		a, err := r.Gain(9, purchase.Bodies{Pulls: []units.Force{m1 * g}, Arbor: m2}, purchase.Out, 0, purchase.Pulling{})
		if err != nil {
			t.Fatal(err)
		}
		return float64(a)
	}
	root := func(low, high float64, f func(float64) float64) float64 { // f falls
		for range 200 {
			if mid := (low + high) / 2; f(mid) > 0 {
				low = mid
			} else {
				high = mid
			}
		}
		return low
	}
	byHand := func(rim float64) float64 {
		past := func(before, turning float64) float64 {
			return root(before, 3*before, func(t float64) float64 { return before + turning + c*math.Hypot(before, t) - t })
		}
		return root(0, g, func(a float64) float64 { return m2*(g-a) - past(past(m1*(g+a), 0), rim*a) })
	}
	if !near.Rel(gain(0), byHand(0), 1e-12) {
		t.Errorf("without a rim %v m/s², by hand %v", gain(0), byHand(0))
	}
	const large = 1000 * rim // by hand, where halving rounds more
	ours, theirs := (gain(rim)-gain(0))/rim, (byHand(large)-byHand(0))/large
	if !near.Abs(ours, theirs, 0.01*math.Abs(theirs)) || !(ours < 0) {
		t.Errorf("a kilogram at the rim changes it by %v, by hand %v", ours, theirs)
	}
}
