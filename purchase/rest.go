package purchase

import (
	"slices"

	"example.com/steelyard/units"
)

// Rest is a set at rest at one trim, rope lock shut, with what drag may make of it. A sheave at rest holds a difference
// of tension up to its drag, either way, as the set came to rest: so each force is a band. Value is that of [State],
// without drag; Least and Most are the ends, each for itself, for they do not all go together.
//
// The ends are reached while all ropes stay taut whatever the sheaves hold. Where one may go slack, loads may lie further in than
// said. On a rope of a reeving of your own with more than eight sheaves, the load of several of its blocks on what carries them, or
// of several sheaves of one block, may lie a little further out.
type Rest struct {
	Trim     units.Length `json:"trim"`
	ArborTop units.Length `json:"arbor_top"` // height above the deck
	Lift     []RopeBand   `json:"lift"`
	Hand     RopeBand     `json:"hand"`
	Blocks   []BlockBand  `json:"blocks"`
	Bodies   []BlockBand  `json:"bodies"` // all the set's ropes on each body that stands still: its name is the body's
	// Lock is the difference of tension across the rope lock, positive when the rope below it is the tighter one.
	// It is never more than Most, nor less than Least.
	Lock ForceBand `json:"lock"`
}

// RopeBand is a rope with the bands of the tension along its path.
type RopeBand struct {
	Name  string     `json:"name"`
	Parts []PartBand `json:"parts"`
}

// PartBand is a straight piece of a rope between two stops.
type PartBand struct {
	From        string    `json:"from"`         // name of the stop it leaves
	To          string    `json:"to"`           // name of the stop it runs to
	TensionFrom ForceBand `json:"tension_from"` // at the end From; zero or more
	TensionTo   ForceBand `json:"tension_to"`   // at the end To; zero or more
}

// BlockBand is a block, a dead end or another fastening with the load of the ropes on it, as for [Block].
type BlockBand struct {
	Name   string    `json:"name"`
	On     Body      `json:"on"`
	Across ForceBand `json:"across"` // positive towards the far end of the batten
	Up     ForceBand `json:"up"`     // positive upward
}

// Greatest is the largest tension anywhere along the rope that drag can bring about.
func (r RopeBand) Greatest() units.Force {
	var t units.Force
	for _, p := range r.Parts {
		t = max(t, p.TensionFrom.Most, p.TensionTo.Most)
	}
	return t
}

// Load is the band of the load on the block or dead end of a name; the zero BlockBand where there is none of that name.
func (r Rest) Load(name string) BlockBand {
	for _, b := range r.Blocks {
		if b.Name == name {
			return b
		}
	}
	return BlockBand{}
}

// On is the band of the load of all the set's ropes on a body that stands still, as [State.On]; the zero BlockBand where there
// is none.
func (r Rest) On(body Body) BlockBand {
	for _, b := range r.Bodies {
		if b.On == body {
			return b
		}
	}
	return BlockBand{}
}

// Rest gives the bands at a trim. What hangs on the lift lines is known at the batten, the idler's weight or base tension
// at the idler; from there each sheave multiplies the tension by anything between 1/K and K (see [Drag.Factor]),
// and the rope above the lock holds what the arbor then still wants. With each sheave's factor, while the others stay, every
// force goes one way (straight, or as the quotient of two straight lines, as at the idler), so that the ends are among the
// corners, where each sheave holds all that it can. Errors as for [Reeved.At].
func (r *Reeved) Rest(trim units.Length, on Bodies) (Rest, error) {
	s, err := r.At(trim, on)
	if err != nil {
		return Rest{}, err
	}
	out := Rest{Trim: trim, ArborTop: s.ArborTop, Lift: make([]RopeBand, len(s.Lift)), Hand: banded(s.Hand), Lock: ForceBand{Value: s.Lock}}
	set := r.resting(on, r.movedTo(trim))
	for i, line := range set.lift {
		out.Lift[i] = banded(s.Lift[i])
		line.fill(out.Lift[i].Parts, func(*corner) ends { return line.sum })
	}
	set.fillHand(&out)
	for i, b := range s.Blocks {
		band := BlockBand{Name: b.Name, On: b.On, Across: ForceBand{Value: b.Load.Across}, Up: ForceBand{Value: b.Load.Up}}
		if i < r.named {
			set.load(&band, false, func(l *laid, stop int) bool { return l.stations[stop].block == i })
		} else {
			band.Up = set.held.band(b.Load.Up)
		}
		out.Blocks = append(out.Blocks, band)
	}
	for body := range bodies {
		load, lock := s.On(body), body == Rail && r.lock >= 0
		if body == Batten || body == Arbor || body == Idler || !lock && !slices.ContainsFunc(s.Blocks[:r.named], func(b Block) bool { return b.On == body }) {
			continue
		}
		band := BlockBand{Name: body.String(), On: body, Across: ForceBand{Value: load.Across}, Up: ForceBand{Value: load.Up}}
		set.load(&band, lock, func(l *laid, stop int) bool { return l.on(stop) == body })
		out.Bodies = append(out.Bodies, band)
	}
	return out, nil
}

// banded gives a rope's bands their names and values.
func banded(s RopeState) RopeBand {
	b := RopeBand{Name: s.Name, Parts: make([]PartBand, len(s.Parts))}
	for i, p := range s.Parts {
		b.Parts[i] = PartBand{From: p.From, To: p.To, TensionFrom: ForceBand{Value: p.TensionFrom}, TensionTo: ForceBand{Value: p.TensionTo}}
	}
	return b
}

// about puts the ends about the value, which only rounding can have left outside.
func (b ForceBand) about() ForceBand {
	return ForceBand{Value: b.Value, Least: min(b.Least, b.Value), Most: max(b.Most, b.Value)}
}
