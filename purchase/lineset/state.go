package lineset

import (
	"slices"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// State is the whole set at rest at one trim: what is carried, how the lift
// lines share it, and what ropes, blocks and dead ends then carry. Without drag,
// rope lock shut.
type State struct {
	Trim    units.Length   `json:"trim"`
	Carried units.Mass     `json:"carried"` // batten and what of the hang it carries here
	Share   load.Share     `json:"share"`
	Ropes   purchase.State `json:"ropes"`
}

// tie is the share by which a figure must be greater to be the worse of two: less is rounding,
// which must not choose between the two sides of a symmetrical load.
const tie = 1e-12

// WorstLine gives the lift line with the greatest tension anywhere along it,
// counted from 1 at the end nearer the arbor, and that tension. Of several with the same
// to within rounding it is the one nearest the arbor.
func (s State) WorstLine() (line int, tension units.Force) {
	for i := range s.Ropes.Lift {
		if t := s.Ropes.Lift[i].Greatest(); line == 0 || t > tension.Scale(1+tie) {
			line, tension = i+1, t
		}
	}
	return line, tension
}

// At gives the set's state at any trim that it reaches. The error, which wraps
// units.ErrOutOfRange, tells a trim that it does not.
func (r *Rigged) At(trim units.Length) (State, error) {
	if err := r.reaches(trim); err != nil {
		return State{}, err
	}
	share, err := r.load.Share(trim)
	if err != nil {
		return State{}, err
	}
	ropes, err := r.ropes.At(trim, r.bodies(share))
	if err != nil {
		return State{}, err
	}
	return State{Trim: trim, Carried: share.Carried, Share: share, Ropes: ropes}, nil
}

// AtInto is At for who asks often: it fills s, and once s was filled by this set it allocates nothing. A copy of s shares its
// slices until it is filled itself: to keep an answer, ask At for it. After an error s means nothing.
func (r *Rigged) AtInto(s *State, trim units.Length) error {
	if s == nil {
		return &units.FieldError{Field: "state", Want: "a place for the answer", Err: units.ErrMissing}
	}
	if err := r.reaches(trim); err != nil {
		return err
	}
	if err := r.load.ShareInto(&s.Share, trim); err != nil {
		return err
	}
	s.Trim, s.Carried = trim, s.Share.Carried
	var few [16]units.Force
	return r.ropes.AtInto(&s.Ropes, trim, r.bodiesIn(few[:0], s.Share.Lines))
}

// bodies is what hangs on the ropes.
func (r *Rigged) bodies(share load.Share) purchase.Bodies {
	return r.bodiesIn(nil, share.Lines)
}

// bodiesIn is bodies with the pulls of the lines put into room, where it is large enough.
func (r *Rigged) bodiesIn(room []units.Force, lines []load.LineShare) purchase.Bodies {
	room = slices.Grow(room, len(lines))[:len(lines)]
	for i := range lines {
		room[i] = lines[i].Tension
	}
	return purchase.Bodies{
		Pulls: room, Arbor: r.counter.Arbor,
		Idler: r.set.Rigging.Idler.Mass, Base: r.set.Rigging.Idler.Base,
	}
}

// Imbalance is the out of balance at any trim that the set reaches, referred to
// the batten, batten-heavy positive. Where a standing piece leaves the deck it
// gives the value with the piece still standing. Errors as for At.
func (r *Rigged) Imbalance(trim units.Length) (units.Force, error) {
	if !r.within(trim) {
		return 0, r.beyond(trim)
	}
	return r.ropes.Imbalance(trim, r.load.Carried(trim), r.counter.Arbor)
}

// within tells whether the set reaches a trim.
func (r *Rigged) within(trim units.Length) bool {
	return r.ropes != nil && trim >= r.lowest && trim <= r.highest
}

// reaches gives the fault of a trim that is out of reach.
func (r *Rigged) reaches(trim units.Length) error {
	if r.within(trim) {
		return nil
	}
	return r.beyond(trim)
}

func (r *Rigged) beyond(trim units.Length) error {
	if r.ropes == nil {
		return &units.FieldError{Value: "a Rigged that is none", Want: "one that Set.Rig or House.Rig made", Err: units.ErrMissing}
	}
	return &units.FieldError{
		Field: "trim", Value: check.Show(trim), Err: units.ErrOutOfRange,
		Want: "a trim that the set reaches, from " + check.Show(r.travel.Lowest) + " to " + check.Show(r.travel.Highest),
	}
}
