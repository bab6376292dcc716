package lineset_test

import (
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
	"fmt"
	"testing"
)

func TestZ(t *testing.T) {
	r := mustRig(t, electric())
	lim := lineset.OrderLimits{ArborHeavy: lineset.ForceLimit{Max: 100 * units.PoundForce, Basis: "h"}, BattenHeavy: lineset.ForceLimit{Max: 350 * units.PoundForce, Basis: "h"}}
	for _, l := range []float64{400, 350, 300} {
		lim.BattenHeavy.Max = units.PoundForce.Scale(l)
		for _, j := range []lineset.Job{lineset.Loading, lineset.Stripping} {
			p, err := r.Order(j, lim)
			fmt.Println(err, p.Check.HandOvers)
			for _, s := range p.Check.States {
				fmt.Println(s.Step, s.Did.Call(units.US), units.US.Format(s.Imbalance), s.Hazard, "|", s.Balance)
			}
		}
	}
	lim.BattenHeavy = lineset.ForceLimit{}
	lim.RestsOnStop = true
	p, err := r.Order(lineset.Loading, lim)
	fmt.Println(err, p.Check.HandOvers)
	for _, s := range p.Check.States {
		fmt.Println(s.Step, s.Did.Call(units.US), units.US.Format(s.Imbalance), s.Hazard, "|", s.Balance)
	}
}
