package purchase

import (
	"fmt"
	"strconv"

	"example.com/steelyard/units"
)

// Kind is the purchase of a set, with its ideal ratio: no drag, no rope weight,
// a weightless arbor. Its methods answer the one-line questions; for the rest,
// lay the ropes with a Layout.
//
// The zero Kind is not a purchase: which one a set has must be said. It, and any
// other value that is not named here, answers every question with zero.
type Kind uint8

// The purchases of a counterweight set (the ratios are common practice, and
// follow from the ropes: see Reeved.Ratio).
const (
	Single Kind = 1 // lift lines end on the arbor: it weighs what the batten weighs and travels as far
	Double Kind = 2 // lift lines pass under the arbor's sheave to a dead end: twice the weight, half the travel
	Triple Kind = 3 // they go on from there round a block at the head beam and end on the arbor: three times the weight, a third of the travel
)

// Ratio is the batten's travel for each unit of the arbor's: 1, 2 or 3, or 0 where
// the kind is unknown.
func (k Kind) Ratio() float64 {
	if k.known() {
		return float64(k)
	}
	return 0
}

func (k Kind) known() bool { return k >= Single && k <= Triple }

// Counterweight is the whole mass at the arbor that balances a batten load:
// the ratio times the load.
func (k Kind) Counterweight(load units.Mass) units.Mass { return load.Scale(k.Ratio()) }

// Load is the batten load that a mass at the arbor balances.
func (k Kind) Load(counterweight units.Mass) units.Mass {
	return counterweight.Scale(k.inverse())
}

// BattenTravel is how far the batten flies while the arbor travels the given way.
func (k Kind) BattenTravel(arbor units.Length) units.Length { return arbor.Scale(k.Ratio()) }

// ArborTravel is the arbor travel that a batten travel needs.
func (k Kind) ArborTravel(batten units.Length) units.Length { return batten.Scale(k.inverse()) }

// Imbalance is the out of balance referred to the batten: the weight of the load
// less the weight of what the counterweight balances, at standard gravity.
// Positive is batten-heavy, negative arbor-heavy. At the arbor it is the ratio
// times as much.
func (k Kind) Imbalance(load, counterweight units.Mass) units.Force {
	if !k.known() {
		return 0
	}
	return (load - k.Load(counterweight)).Weight(units.StandardGravity)
}

func (k Kind) inverse() float64 {
	if k.known() {
		return 1 / float64(k)
	}
	return 0
}

// String names the purchase: "single", "double", "triple".
func (k Kind) String() string {
	switch k {
	case Single:
		return "single"
	case Double:
		return "double"
	case Triple:
		return "triple"
	}
	return fmt.Sprintf("Kind(%d)", uint8(k))
}

// MarshalText writes "single", "double" or "triple"; any other kind is an error.
func (k Kind) MarshalText() ([]byte, error) {
	if !k.known() {
		return nil, fmt.Errorf("purchase %v %w; want %s", k, units.ErrUnknown, wantKind)
	}
	return []byte(k.String()), nil
}

// UnmarshalText reads "single", "double" or "triple". Where it fails, with a
// *units.FieldError, the kind is left as it was.
func (k *Kind) UnmarshalText(text []byte) error {
	switch string(text) {
	case "single":
		*k = Single
	case "double":
		*k = Double
	case "triple":
		*k = Triple
	default:
		return &units.FieldError{Value: strconv.Quote(string(text)), Want: wantKind, Err: units.ErrUnknown}
	}
	return nil
}

const wantKind = `"single", "double" or "triple"`
