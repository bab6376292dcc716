package purchase

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Imbalance is how far the set is out of balance at a trim, without drag: the
// force, referred to the batten, that would hold it. Positive is batten-heavy,
// negative arbor-heavy; at the arbor it is Ratio times as much. Carried is what
// hangs on the lift lines, the batten included; arbor is the arbor with all that
// is in it. Rope weight is counted where it hangs at this trim.
//
// It is the upward pull of all ropes on the arbor less the arbor's weight,
// divided by the ratio, with tensions from the walk along each path (see State).
// The error is about the trim, or a mass that is not finite or of no possible
// size.
func (r *Reeved) Imbalance(trim units.Length, carried, arbor units.Mass) (units.Force, error) {
	moved, ok := r.runs(trim)
	if !ok {
		return 0, r.beyond(trim)
	}
	if !fair(carried) || !fair(arbor) {
		if err := possible(carried, arbor); err != nil {
			return 0, err
		}
	}
	i := r.imbalance(moved, carried.Weight(units.StandardGravity).In(units.Newton), arbor.Weight(units.StandardGravity).In(units.Newton))
	return units.Force(i), nil
}

// Counterweight is the whole mass at the arbor, the arbor itself included, that
// balances a carried mass at a trim. It falls below zero where the ropes alone
// outweigh what is carried. Errors as for Imbalance.
func (r *Reeved) Counterweight(trim units.Length, carried units.Mass) (units.Mass, error) {
	i, err := r.Imbalance(trim, carried, 0)
	if err != nil {
		return 0, err
	}
	return i.Scale(r.ratio).Mass(units.StandardGravity), nil
}

// RopeImbalance is the part of the imbalance that the ropes' own weight makes at
// a trim: it shifts from the batten's side to the arbor's as the batten flies
// out. Positive is batten-heavy. Errors as for Imbalance.
func (r *Reeved) RopeImbalance(trim units.Length) (units.Force, error) {
	return r.Imbalance(trim, 0, 0)
}

// imbalance works in newtons, with carried and arbor as weights.
func (r *Reeved) imbalance(moved, carried, arbor float64) float64 {
	return r.ropes.At(moved) + (carried - float64(arbor*r.perRatio))
}

func possible(carried, arbor units.Mass) error {
	var p check.Problems
	check.Finite(&p, "carried", carried)
	check.Finite(&p, "arbor", arbor)
	return p.Err()
}

func notBelow(carried, arbor units.Mass) error {
	var p check.Problems
	check.NotNegative(&p, "carried", carried)
	check.NotNegative(&p, "arbor", arbor)
	return p.Err()
}
