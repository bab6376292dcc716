package purchase

import (
	"fmt"
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Chain is a compensating chain, or a heavy rope: hung from the batten or the arbor so that the body bears more of
// it the higher it is, by as much as the lift lines' weight moves the other way. One of both ends is made off on the
// body, Below its datum; what becomes of the other is Hung:
//
//	piled    it lies in a heap on the floor under the body: of each metre that the body rises it lifts a metre of chain
//	looped   it is made off on the building at the height To, and the chain hangs between them in a bight: of each metre that
//	         the body rises it takes half a metre over from the building
//
// Half way up the body's travel is the best place for To: there the shortest chain will do, half the travel and the bight. The
// body bears the chain from its end down to the heap or the foot of the bight. A piled chain that is too short leaves the
// floor, and the body then bears all of it; a bight that is too long comes to lie on the floor, and the chain is
// then as one that piles. Ends of a bight are taken as one above the other. The pull on the building is left out, and so is how the chain
// swings and what it does to the mass that moves.
//
// The arrangements are common practice; the zero Chain is none.
type Chain struct {
	On     Body           `json:"on"`             // batten or arbor
	Below  units.Length   `json:"below,omitzero"` // from the body's datum down to where the chain is made off on it: the arbor's length, for its foot
	Hung   ChainHung      `json:"hung"`           // piled or looped
	Floor  units.Length   `json:"floor,omitzero"` // height of what lies under it; zero: the deck
	To     units.Length   `json:"to,omitzero"`    // looped only: height of its end on the building
	Length units.Length   `json:"length"`         // of the whole chain
	Mass   units.LineMass `json:"mass,omitzero"`  // zero: weightless
}

// ChainHung is where the end of a chain is that is not on the body. The zero value is neither.
type ChainHung uint8

// Where a chain's other end is.
const (
	Piled  ChainHung = 1 // in a heap on the floor
	Looped ChainHung = 2 // made off on the building
)

var chainNames = [...]string{Piled: "piled", Looped: "looped"}

// String gives the word for it.
func (c ChainHung) String() string {
	if c == Piled || c == Looped {
		return chainNames[c]
	}
	return fmt.Sprintf("ChainHung(%d)", uint8(c))
}

// MarshalText writes "piled" or "looped"; zero, that of no chain, is empty, and any other value an error.
func (c ChainHung) MarshalText() ([]byte, error) {
	if c > Looped {
		return nil, fmt.Errorf("chain hung %v %w; want %s", c, units.ErrUnknown, wantHung)
	}
	return []byte(chainNames[c]), nil
}

// UnmarshalText reads what MarshalText writes. Where it fails, with a *units.FieldError, it is left as it was.
func (c *ChainHung) UnmarshalText(text []byte) error {
	for i, name := range chainNames {
		if string(text) == name {
			*c = ChainHung(i)
			return nil
		}
	}
	return &units.FieldError{Value: strconv.Quote(string(text)), Want: wantHung, Err: units.ErrUnknown}
}

const wantHung = `"piled" or "looped"`

// EvenChain is the mass per length with which the chain of a flight keeps the balance the same all through the
// travel; its Mass, Carried and Arbor are not looked at. With S the lift lines' drift for each unit the batten flies
// out, k the chain's share (1 piled, ½ looped) and N the ratio it is −S/(k·g) on the batten and −S·N²/(k·g) on the arbor: there the
// chain moves and pulls N times less than at the batten.
//
// The counterweight must be chosen anew with it, since the chain weighs on its body at every trim: see Drift.Even. The
// errors are those of [Reeved.Drift]; a chain that runs out between the trims, for which there is no such mass, is
// an error in its length.
func (r *Reeved) EvenChain(f Flight) (units.LineMass, error) {
	var p check.Problems
	low, high := r.reaches(&p, f)
	if low && high {
		r.hangs(&p, f)
	}
	if err := p.Err(); err != nil {
		return 0, err
	}
	if x, ok := r.turn(f.Chain); ok && x > f.Low && x < f.High {
		p.Add("chain.length", check.Show(f.Chain.Length), "a chain that does not run out between the trims, as this does at "+check.Show(x), units.ErrOutOfRange)
		return 0, p.Err()
	}
	share := f.Chain.share(r.chainEnd(f.Chain, (f.Low + f.High).Scale(0.5)))
	if share == 0 {
		p.Add("chain.length", check.Show(f.Chain.Length), "a chain long enough to reach the floor", units.ErrOutOfRange)
		return 0, p.Err()
	}
	// What hangs from above gets shorter as its body rises, on both sides: the ropes never drift the other way.
	wanted := max(-r.slope()/share, 0)
	if f.Chain.On == Arbor {
		wanted *= float64(r.ratio * r.ratio)
	}
	return units.LineMass(wanted / units.StandardGravity.In(units.MetrePerSecondSquared)), nil
}

// slope is how the ropes' imbalance changes over the trim, in N/m: the same everywhere.
func (r *Reeved) slope() float64 { return -r.ropes.Rate / r.ratio }

// chainEnd is the height of the end that is made off on the body, while the batten is at a trim.
func (r *Reeved) chainEnd(c Chain, trim units.Length) float64 {
	z := trim.In(units.Metre)
	if c.On == Arbor {
		z = r.top - (z-r.trim)/r.ratio
	}
	return z - c.Below.In(units.Metre)
}

// chained is what a chain does to the imbalance.
func (r *Reeved) chained(c Chain, trim units.Length) units.Force {
	weight := c.Mass.Over(units.Length(c.borne(r.chainEnd(c, trim)))).Weight(units.StandardGravity)
	if c.On == Arbor {
		return -weight.Scale(1 / r.ratio)
	}
	return weight
}

// turn is the trim at which a chain runs out.
func (r *Reeved) turn(c Chain) (units.Length, bool) {
	if c == (Chain{}) {
		return 0, false
	}
	z := c.runsOut() + c.Below.In(units.Metre)
	if c.On == Arbor {
		z = r.trim - float64(r.ratio*(z-r.top))
	}
	return units.Length(z), true
}

// runsOut is the height of the chain's end on the body at which its last link leaves the floor, or its bight.
func (c Chain) runsOut() float64 {
	floor, length := c.Floor.In(units.Metre), c.Length.In(units.Metre)
	if c.Hung == Looped {
		return float64(2*floor) + length - c.To.In(units.Metre)
	}
	return floor + length
}

// borne is the length of chain that the body bears with its end at a height. Half of a clear bight and half of the
// difference between its ends hang from the body.
func (c Chain) borne(z float64) float64 {
	length := c.Length.In(units.Metre)
	clear := length
	if c.Hung == Looped {
		clear = (length + z - c.To.In(units.Metre)) / 2
	}
	return math.Min(z-c.Floor.In(units.Metre), clear)
}

// share is how much more chain the body bears for each unit that it rises.
func (c Chain) share(z float64) float64 {
	switch {
	case z < c.runsOut():
		return 1
	case c.Hung == Looped:
		return 0.5
	}
	return 0
}

// hangs makes sure that a chain can hang so all the way between the flight's trims.
func (r *Reeved) hangs(p *check.Problems, f Flight) {
	c := f.Chain
	ok := true
	if c.On != Batten && c.On != Arbor {
		p.Add("chain.on", c.On.String(), "batten or arbor", units.ErrOutOfRange)
		ok = false
	}
	if c.Hung != Piled && c.Hung != Looped {
		kind, shown := units.ErrUnknown, c.Hung.String()
		if c.Hung == 0 {
			kind, shown = units.ErrMissing, ""
		}
		p.Add("chain.hung", shown, wantHung, kind)
		ok = false
	}
	ok = check.NotNegative(p, "chain.below", c.Below) && ok
	ok = check.Finite(p, "chain.floor", c.Floor) && ok
	ok = check.Finite(p, "chain.to", c.To) && ok
	ok = check.Positive(p, "chain.length", c.Length, "the length of the whole chain") && ok
	if !ok {
		return
	}
	if c.Hung == Looped && c.To < c.Floor {
		p.Add("chain.to", check.Show(c.To), "not below the floor, "+check.Show(c.Floor), units.ErrOutOfRange)
	}
	if c.Hung == Piled && c.To != 0 {
		p.Add("chain.to", check.Show(c.To), "none: a piled chain is not made off on the building", units.ErrOutOfRange)
	}
	low, high := units.Length(r.chainEnd(c, f.Low)), units.Length(r.chainEnd(c, f.High))
	if lowest := min(low, high); lowest < c.Floor {
		p.Add("chain.below", check.Show(c.Below), "an end that stays above the floor at "+check.Show(c.Floor)+"; this one comes down to "+check.Show(lowest), units.ErrOutOfRange)
	}
	if taut := max(units.Abs(low-c.To), units.Abs(high-c.To)); c.Hung == Looped && c.Length < taut {
		p.Add("chain.length", check.Show(c.Length), "at least "+check.Show(taut)+": a shorter one would come taut between its ends", units.ErrOutOfRange)
	}
}
