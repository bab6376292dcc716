package lineset

import (
	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

// Counterweight is what answers the batten: the mass that is wanted at the
// arbor, and the pieces chosen for it.
type Counterweight struct {
	Ratio   float64   `json:"ratio"`   // batten travel for each unit of arbor travel
	Balance BalanceAt `json:"balance"` // where it is to balance
	Ropes   Ropes     `json:"ropes"`

	Loaded Demand     `json:"loaded"` // with what hangs
	Bare   Demand     `json:"bare"`   // the batten with nothing on it
	Tare   units.Mass `json:"tare"`   // the empty arbor

	// What is wanted in pieces: pipe weight answers the bare batten and stays, show
	// weight answers what hangs. Pipe weight below zero means that the empty arbor
	// already outweighs the bare batten.
	Pieces arbor.Wanted `json:"pieces"`

	Stack arbor.Stack `json:"stack"` // the best that fits
	Ideal arbor.Stack `json:"ideal"` // what it would take if room, capacity and stock were no limit
	Arbor units.Mass  `json:"arbor"` // the arbor with the stack in it
}

// Demand is the whole mass that is wanted at the arbor, the arbor included, and
// what it is to balance: the mean of the imbalance at two trims, worked out with
// nothing at the arbor. Where the set is to balance at one trim, both are that.
type Demand struct {
	Most   Point      `json:"most"`
	Least  Point      `json:"least"`
	Wanted units.Mass `json:"wanted"`
}

// Fits tells whether the stack that fits comes as close to what is wanted as any
// stack of these pieces could.
func (c Counterweight) Fits() bool {
	return units.Abs(c.Stack.Error) <= units.Abs(c.Ideal.Error)
}

// counterweight works out what is wanted at the arbor and fills it.
func (r *Rigged) counterweight(stock arbor.Stock) (Counterweight, error) {
	frame := r.set.Rigging.Arbor
	c := Counterweight{Ratio: r.ropes.Ratio(), Balance: r.set.Balance, Ropes: r.ropeMasses(), Tare: frame.Tare}
	var err error
	if c.Loaded, err = r.demand(r.hung); err != nil {
		return c, err
	}
	if c.Bare, err = r.demand(r.bare); err != nil {
		return c, err
	}
	c.Pieces = arbor.Wanted{Pipe: c.Bare.Wanted - c.Tare, Show: c.Loaded.Wanted - c.Bare.Wanted}
	if c.Stack, err = frame.Fill(c.Pieces, stock, arbor.EitherSide); err != nil {
		return c, err
	}
	if c.Ideal, err = frame.Ideal(c.Pieces, stock, arbor.EitherSide); err != nil {
		return c, err
	}
	c.Arbor = c.Tare + c.Stack.Mass
	return c, nil
}

// demand works out what balances where the set asks for it. The imbalance falls
// by g/ratio for each unit of mass at the arbor, at every trim alike, so the mass
// that makes the extremes equal and opposite is the one that balances their mean.
func (r *Rigged) demand(carried func(units.Length, bool) units.Mass) (Demand, error) {
	curve, err := r.curve(0, carried)
	if err != nil {
		return Demand{}, err
	}
	var d Demand
	switch r.set.Balance {
	case AtLow:
		d.Most, d.Least = curve[0], curve[0]
	case AtHigh:
		last := len(curve) - 1
		d.Most, d.Least = curve[last], curve[last]
	default:
		d.Most, d.Least = extremes(curve)
	}
	mean := (d.Most.Imbalance + d.Least.Imbalance) / 2
	d.Wanted = mean.Scale(r.ropes.Ratio()).Mass(units.StandardGravity)
	return d, nil
}
