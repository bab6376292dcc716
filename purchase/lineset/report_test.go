package lineset_test

import (
	"math"
	"reflect"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// A report tells the same of either end, whether the checks were asked before it or with it, and the same as when it is asked alone.
func TestReportOfTheEnds(t *testing.T) {
	cloth := pounds("cloth", 90)
	cloth.Below, cloth.Height, cloth.OnDeck = 4*units.Foot, 12*units.Foot, load.Piles
	legs := pounds("legs", 40)
	legs.Height, legs.OnDeck = 9*units.Foot, load.Stands
	for _, s := range []lineset.Set{plain(t, purchase.Double, cloth, legs), plain(t, purchase.Single), electric()} {
		for _, before := range []bool{false, true} {
			r := mustRig(t, s)
			if before {
				r.Checks()
			}
			report, alone := r.Report(), mustRig(t, s)
			low, err := alone.Hand(s.Low)
			if err != nil {
				t.Fatal(err)
			}
			high, err := alone.Hand(s.High)
			if err != nil {
				t.Fatal(err)
			}
			if !reflect.DeepEqual(report.Low, alone.Low()) || !reflect.DeepEqual(report.High, alone.High()) {
				t.Errorf("%s, checks before: %v: at %v and %v", s.Name, before, report.Low.Trim, report.High.Trim)
			}
			if !reflect.DeepEqual(report.LowHand, low) || !reflect.DeepEqual(report.HighHand, high) {
				t.Errorf("%s, checks before: %v: %+v at low trim, %+v at high trim", s.Name, before, report.LowHand, report.HighHand)
			}
		}
	}
}

// Of a load in parts that no decimal writes a billionth of a milligram may be left over in the sum; that is no imbalance. Thirds and
// sevenths of 10 to 200 lb on pieces of 10 lb end balanced.
func TestRoundingIsNoImbalance(t *testing.T) {
	rounded := 0
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double} {
		for lb := 10.0; lb <= 200; lb += 10 {
			for _, n := range []int{1, 3, 7} {
				var hang load.Hang
				for range n {
					hang = append(hang, pounds("part", lb/float64(n)))
				}
				r := rigTens(t, plain(t, kind, hang...))
				p := mustPlan(t, r, lineset.Loading, within(1000, 1000))
				end := p.Check.States[len(p.Check.States)-1]
				if end.Imbalance != 0 || end.Hazard != lineset.Balanced {
					t.Errorf("%v lb in %d parts, %v purchase: %v, %v", lb, n, kind, end.Imbalance, end.Hazard)
				}
				at, err := r.Imbalance(end.Trim)
				if err != nil || math.Abs(at.In(units.PoundForce)) > 1e-9 {
					t.Errorf("%v lb in %d parts, %v purchase: %v, %v", lb, n, kind, at, err)
				}
				if at != 0 {
					rounded++
				}
			}
		}
	}
	if rounded == 0 {
		t.Error("no sum was rounded")
	}
}

// The least that is no rounding has its side: a thousandth of a pound on pieces of 10 lb.
func TestTheLeastHasItsSide(t *testing.T) {
	for _, c := range []struct {
		lb   float64
		want lineset.Hazard
	}{
		{60.1, lineset.RestsOnStop}, {60.001, lineset.RestsOnStop}, {60, lineset.Balanced}, {59.999, lineset.RunsOut}, {59.9, lineset.RunsOut},
	} {
		p := mustPlan(t, rigTens(t, plain(t, purchase.Single, pounds("lamps", c.lb))), lineset.Loading, within(100, 100))
		if end := p.Check.States[len(p.Check.States)-1]; end.Hazard != c.want || math.Abs(end.Imbalance.In(units.PoundForce)-(c.lb-60)) > 1e-9 {
			t.Errorf("%v lb: %v, %v", c.lb, end.Imbalance, end.Hazard)
		}
	}
}
