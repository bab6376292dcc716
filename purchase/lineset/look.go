package lineset

import (
	"math"
	"slices"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// look is the set at one of the trims at which it is held against its limits.
type look struct {
	state State
	hand  Hand // without its terms
}

// looks gives the set at all of its stations. A Rigged that Rig did not make has none.
func (r *Rigged) looks() ([]look, error) {
	if r.ropes == nil {
		return nil, nil
	}
	trims := r.stations()
	all := make([]look, len(trims))
	var run purchase.Running
	for i, trim := range trims {
		var err error
		if all[i], err = r.lookAt(trim, &run); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// lookAt gives the set at one trim that it reaches. A Rigged that Rig did not make has none.
func (r *Rigged) lookAt(trim units.Length, run *purchase.Running) (l look, err error) {
	if l.state, err = r.At(trim); err != nil {
		return look{}, err
	}
	l.hand, err = r.hand(l.state, run)
	return l, err
}

// ends gives the set at low and at high trim, with the terms of what the hands feel there.
func (r *Rigged) ends() (low, high look) {
	if r.ropes == nil {
		return low, high
	}
	if _, looks := r.hold(); len(looks) > 0 {
		return r.whole(looks[0]), r.whole(looks[len(looks)-1])
	}
	lowest, highest := r.travel.reached()
	var run purchase.Running
	low, _ = r.lookAt(lowest, &run) // Rig has made sure that both can be told
	high, _ = r.lookAt(highest, &run)
	return r.whole(low), r.whole(high)
}

// whole is a look with its terms.
func (r *Rigged) whole(l look) look {
	if terms, err := r.terms(l.state); err == nil { // it gave what the terms follow from
		l.hand.Terms = terms
	}
	return l
}

// stations are the trims at which the set is looked at for its checks: low and
// high trim and, between them, every trim at which the load on the batten or its
// share among the lines bends or jumps (a hair above such a trim a standing piece
// is off the deck). Between two of them every tension runs straight, so the worst
// is at one of them.
func (r *Rigged) stations() []units.Length {
	low, high := r.travel.reached()
	var trims []units.Length
	for _, b := range append([]units.Length{low}, r.load.Turns(low, high)...) {
		trims = append(trims, b)
		if above := units.Length(math.Nextafter(b.In(units.Metre), math.Inf(1))); above < high && r.load.CarriedAbove(b) != r.load.Carried(b) {
			trims = append(trims, above)
		}
	}
	return slices.Compact(append(trims, high))
}
