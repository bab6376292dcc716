package lineset

import (
	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/slab"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Rigging is what is installed at a line set and stays from show to show. All
// heights are above the deck. Nothing has a default: a field that is left out is
// reported when the set is rigged, but for those whose zero is said to mean
// something.
type Rigging struct {
	Purchase purchase.Kind `json:"purchase,omitzero"` // of the lift lines: it alone makes the ratio

	// HandPurchase is that of the hand line. Zero: as the lift lines. With a single one under double lift lines the
	// hand line runs as fast as the arbor and there is no dead end at the rail.
	HandPurchase purchase.Kind `json:"hand_purchase,omitzero"`

	// Batten with its lift lines. A line that stretches needs its EA alone: where its
	// Path is left out, it is worked out from the ropes as they are laid, from the
	// batten over every block to the rope's other end. A Path that is given is taken
	// as it is.
	Batten load.Batten `json:"batten"`

	Offset     units.Length `json:"offset"`             // from the arbor's centre line to the batten's nearer end
	LoftBlocks units.Length `json:"loft_blocks"`        // height of the loft blocks, but those that have one of their own in Loft
	Loft       []Loft       `json:"loft,omitempty"`     // what is each line's own, for every lift line in their order; none: nothing is
	HeadBlock  units.Length `json:"head_block"`         // height of the head block
	DeadEnds   units.Length `json:"dead_ends,omitzero"` // double and triple purchase of lift lines or hand line: height of the dead ends, or blocks, at the head beam
	Rail       units.Length `json:"rail"`               // height of the locking rail
	Idler      Idler        `json:"idler"`

	// Run need not say again where head block and loft blocks are. Grid, rail underside and loading bridges are only
	// looked at by the questions of Rigged.Flight.
	Run   arbor.Run    `json:"run"`
	Arbor arbor.Frame  `json:"arbor"`
	Bed   units.Length `json:"bed,omitzero"` // from the arbor's foot up to the underside of its lowest piece; zero: they stand at its foot

	LiftLine units.LineMass `json:"lift_line"` // mass per length of each lift line; zero: its weight is left out
	HandLine units.LineMass `json:"hand_line"` // mass per length of the hand line; zero: its weight is left out

	// Drag is that of every sheave of the set. Zero: frictionless blocks, and hand pulls come out too small.
	Drag purchase.Drag `json:"drag,omitzero"`

	// MadeOff says how the lift lines are made off: the batten's trim while the
	// arbor stands against its upper stop. It is the lowest trim that the set reaches.
	MadeOff units.Length `json:"made_off"`

	Limits Limits `json:"limits,omitzero"`
}

// Idler is the tension block in its guides: how high it rests and what it
// weighs. Free in its guides it keeps each of its two parts of the hand line at
// half its weight.
type Idler struct {
	Height units.Length `json:"height"` // above the deck
	Mass   units.Mass   `json:"mass"`   // zero: not known; then the tension it keeps in the hand line is left out of all loads, and is not checked

	// Base is the tension that each of its parts has where it is held in its guides or tied down; its mass then makes
	// none. Zero: it is free.
	Base units.Force `json:"base,omitzero"`
}

// Limits are what a set is held against. The caller sets them; a limit that is
// left out is not checked, and the check says so.
type Limits struct {
	LiftLine     ForceLimit  `json:"lift_line,omitzero"`      // tension in a lift line
	LoftBlock    ForceLimit  `json:"loft_block,omitzero"`     // load on a loft block
	MuleBlock    ForceLimit  `json:"mule_block,omitzero"`     // load on a mule block, of all lines that run over it
	HeadBlock    ForceLimit  `json:"head_block,omitzero"`     // load on the head block
	DeadEnd      ForceLimit  `json:"dead_end,omitzero"`       // pull on a lift line's dead end, in double purchase
	BeamBlock    ForceLimit  `json:"beam_block,omitzero"`     // load on a lift line's block at the head beam, in triple purchase
	OutOfBalance ForceLimit  `json:"out_of_balance,omitzero"` // imbalance referred to the batten, either way
	RopeLock     ForceLimit  `json:"rope_lock,omitzero"`      // difference between the live ropes that the shut lock holds
	HandPull     ForceLimit  `json:"hand_pull,omitzero"`      // pull of one person on the hand line
	Pipe         StressLimit `json:"pipe,omitzero"`           // bending stress in the batten
}

// ForceLimit is the largest force that is allowed, and on whose word: "7000 lbf
// breaking strength, 8 to 1", or "common practice". Zero: no limit given.
type ForceLimit struct {
	Max   units.Force `json:"max"`   // inclusive
	Basis string      `json:"basis"` // where it comes from
}

// StressLimit is the largest stress that is allowed, and on whose word. Zero: no
// limit given.
type StressLimit struct {
	Max   units.Stress `json:"max"`   // inclusive
	Basis string       `json:"basis"` // where it comes from
}

func (l Limits) validate() error {
	var p check.Problems
	limit(&p, "lift_line", l.LiftLine.Max, l.LiftLine.Basis)
	limit(&p, "loft_block", l.LoftBlock.Max, l.LoftBlock.Basis)
	limit(&p, "mule_block", l.MuleBlock.Max, l.MuleBlock.Basis)
	limit(&p, "head_block", l.HeadBlock.Max, l.HeadBlock.Basis)
	limit(&p, "dead_end", l.DeadEnd.Max, l.DeadEnd.Basis)
	limit(&p, "beam_block", l.BeamBlock.Max, l.BeamBlock.Basis)
	limit(&p, "out_of_balance", l.OutOfBalance.Max, l.OutOfBalance.Basis)
	limit(&p, "rope_lock", l.RopeLock.Max, l.RopeLock.Basis)
	limit(&p, "hand_pull", l.HandPull.Max, l.HandPull.Basis)
	limit(&p, "pipe", l.Pipe.Max, l.Pipe.Basis)
	return p.Err()
}

func limit[Q units.Quantity](p *check.Problems, field string, most Q, basis string) {
	if most == 0 && basis == "" {
		return
	}
	if !check.IsPositive(most) {
		check.Positive(p, field+".max", most, "the most that is allowed, or no limit at all")
	}
	if basis == "" {
		p.Add(field+".basis", "", `where the limit comes from, such as a maker's rating or "common practice"`, units.ErrMissing)
	}
}

// layout lays the standard ropes of the rigging, with its loft blocks in the room of these where that is enough.
func (r Rigging) layout(loft []purchase.Loft) purchase.Layout {
	l := purchase.Layout{
		Kind:        r.Purchase,
		Hand:        r.HandPurchase,
		Loft:        slab.Enough(loft, len(r.Batten.Lines)),
		HeadBlock:   r.HeadBlock,
		DeadEnd:     r.DeadEnds,
		Rail:        r.Rail,
		Idler:       r.Idler.Height,
		ArborLength: r.Arbor.Length,
		LiftMass:    r.LiftLine,
		HandMass:    r.HandLine,
		Drag:        r.Drag,
		Trim:        r.MadeOff,
		ArborTop:    r.Run.UpperStop,
	}
	for i, line := range r.Batten.Lines {
		to := &l.Loft[i]
		to.Across, to.Height = r.Offset+line.At, r.LoftBlocks
		if i >= len(r.Loft) {
			continue
		}
		if own := r.Loft[i].Height; own != 0 {
			to.Height = own
		}
		to.Mules = r.Loft[i].Mules
	}
	return l
}

// hand is the purchase of the hand line.
func (r Rigging) hand() purchase.Kind {
	if r.HandPurchase == 0 {
		return r.Purchase
	}
	return r.HandPurchase
}
