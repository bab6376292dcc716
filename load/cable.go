package load

import (
	"math"

	"example.com/steelyard/units"
)

// Cable runs along the batten, tied to it, and may leave it as a tail that hangs down
// to the deck: power and data for an electric, hose, or a bundle of them. The zero value
// is no cable, and [Batten.Rig] refuses its item.
type Cable struct {
	LineMass units.LineMass `json:"line_mass"`      // of one cable
	Count    int            `json:"count,omitzero"` // alike, side by side; 0 is one

	// The run along the batten, measured from its end nearer the arbor. Where From and To
	// are equal there is only the tail.
	From units.Length `json:"from"`
	To   units.Length `json:"to"` // no less than From

	// Slack is what each cable is longer than the run, as a share of it, for swags, loops
	// and turns round the pipe: 0 is none, 0.1 is 10 %.
	Slack float64 `json:"slack,omitzero"`

	// Tail is the length of each cable that hangs down from the batten at TailAt; 0 is no
	// tail, and TailAt then means nothing.
	Tail   units.Length `json:"tail,omitzero"`
	TailAt units.Length `json:"tail_at,omitzero"` // from the batten's end nearer the arbor
}

// Hang is the cable as it hangs on a batten: the run, which the batten always carries, and the
// tail, which piles on the deck:
//
//	run    line mass · count · (to − from) · (1 + slack)
//	tail   line mass · count · tail
//
// They join what else hangs with append(hang, cable.Hang("cable")...). Connectors and
// boxes are left out: hang them as items. Left out too is where a tail is made off above
// the deck: of a cable that goes to a gallery or to the grid the batten carries part of
// a loop, which changes with the trim. A tail made off on the deck and shorter than the
// trim is pulled tight, and pulls with more than its weight.
//
// A cable that makes no sense (no mass per length; a count, a slack or a tail below zero
// or not finite) gives an item with no mass, which [Batten.Rig] refuses.
func (c Cable) Hang(name string) Hang {
	run := Item{Name: name, From: c.From, To: c.To}
	if !(c.LineMass > 0 && c.Count >= 0 && c.Slack >= 0 && !math.IsInf(c.Slack, 0)) {
		return Hang{run}
	}
	all := c.LineMass.Scale(float64(max(c.Count, 1)))
	length := c.To - c.From
	run.Mass = sound(all.Over(length.Scale(1 + c.Slack)))
	tail := Item{
		Name:   part(name, "tail"),
		Mass:   sound(all.Over(c.Tail)),
		From:   c.TailAt,
		To:     c.TailAt,
		Height: c.Tail,
		OnDeck: Piles,
	}
	switch {
	case c.Tail == 0:
		return Hang{run}
	case length == 0:
		return Hang{tail}
	}
	return Hang{run, tail}
}

// part names a part of a thing that has a name or none.
func part(name, of string) string {
	if name == "" {
		return of
	}
	return name + ", " + of
}
