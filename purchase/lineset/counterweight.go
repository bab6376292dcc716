package lineset

import (
	"errors"
	"slices"

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

	Stack arbor.Stack `json:"stack"`           // the best that fits
	Ideal arbor.Stack `json:"ideal"`           // what it would take if room, capacity and stock were no limit
	Short []string    `json:"short,omitempty"` // what keeps the stack from that: any of "room", "capacity", "stock"; none: it comes as close
	Arbor units.Mass  `json:"arbor"`           // the arbor with the stack in it
}

// Demand is the whole mass that is wanted at the arbor, the arbor included, and
// what it is to balance: the mean of the imbalance at two trims, worked out with
// nothing at the arbor. Where the set is to balance at one trim, both are that.
type Demand struct {
	Most   Point      `json:"most"`
	Least  Point      `json:"least"`
	Wanted units.Mass `json:"wanted"`
}

// fillArbor works out what is wanted at the arbor and fills it.
//
// Pipe weight belongs to what is installed: it makes the bare batten even over
// all that the set reaches, whatever the show's trims, so that it need not be
// changed with them. What the show asks beyond that is show weight.
func (r *Rigged) fillArbor(stock arbor.Stock) (err error) {
	c, frame := &r.counter, &r.set.Rigging.Arbor
	c.Ratio, c.Balance, c.Ropes, c.Tare = r.ropes.Ratio(), r.set.Balance, r.ropeMasses(), frame.Tare
	if c.Bare, err = r.demand(Even, r.travel.Lowest, r.travel.Highest, r.bare); err != nil {
		return massFault("rigging", " to be carried with nothing hung", err)
	}
	c.Loaded = c.Bare
	if len(r.set.Hang) > 0 {
		low, high := r.travel.reached()
		if c.Loaded, err = r.demand(r.set.Balance, low, high, r.hung); err != nil {
			return massFault("hang", " to be carried", err)
		}
	}
	// A light hang may ask for less than the pipe weight that stays; no piece is taken out for it.
	c.Pieces = arbor.Wanted{Pipe: c.Bare.Wanted - c.Tare, Show: max(c.Loaded.Wanted-c.Bare.Wanted, 0)}
	short, err := frame.Shortfall(c.Pieces, stock, arbor.EitherSide)
	if err != nil {
		return wantedFault(err)
	}
	c.Stack, c.Ideal, c.Short = short.Fits, short.Ideal, short.Binds()
	c.Arbor = c.Tare + c.Stack.Mass
	if len(c.Short) == 0 {
		return nil
	}
	enough := slices.Clone(stock)
	for i := range enough {
		enough[i].Count = plenty
	}
	ample, err := frame.Fill(c.Pieces, enough, arbor.EitherSide)
	r.ample = &ample
	return wantedFault(err)
}

// plenty is more pieces of a kind than any arbor takes.
const plenty = 10_000

// wantedFault says of a counterweight that no arbor could hold which field it
// follows from.
func wantedFault(err error) error {
	field := "hang"
	if fe := (*units.FieldError)(nil); errors.As(err, &fe) && fe.Field == "wanted.pipe" {
		field = "rigging"
	}
	return massFault(field, " of counterweight for it", err)
}

// massFault says of a figure that is too large to be reckoned with which field it follows from, and what it is.
func massFault(field, what string, err error) error {
	var fe *units.FieldError
	if !errors.As(err, &fe) {
		return err
	}
	return &units.FieldError{Field: field, Value: fe.Value + what, Want: fe.Want, Err: fe.Err}
}

// demand works out what balances where the set asks for it. The imbalance falls
// by g/ratio for each unit of mass at the arbor, at every trim alike, so the mass
// that makes the extremes equal and opposite is the one that balances their mean.
func (r *Rigged) demand(at BalanceAt, low, high units.Length, carried func(units.Length, bool) units.Mass) (Demand, error) {
	var few [24]Point
	curve, err := r.curve(few[:0], low, high, 0, carried)
	if err != nil {
		return Demand{}, err
	}
	var d Demand
	switch at {
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
