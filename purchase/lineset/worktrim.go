package lineset

import (
	"slices"

	"example.com/steelyard/units"
)

// WorkTrim is a trim at which the batten may be halted while it is loaded, and who can work there. Where any of them is
// an End, loading ends at one of those (and stripping begins there); otherwise it may end at any of them.
type WorkTrim struct {
	Trim   units.Length `json:"trim"`
	Deck   bool         `json:"deck,omitempty"`   // things can be hung and stripped
	Bridge bool         `json:"bridge,omitempty"` // pieces can be put in and taken out: those that arms reach from the run's bridges; all where it has none
	End    bool         `json:"end,omitempty"`    // the batten may be left here, loaded
}

// clearOfDeck is how far above the deck a standing piece is to hang where the batten is halted to weight it. Where it
// just touches, both what is carried with it and what is carried without it would have to be within the limits.
const clearOfDeck = 1 * units.Inch

// WorkTrims suggests where to halt: at the lowest trim and, further out, wherever something leaves the deck (an inch
// above, where it is a standing piece), each with who can work there. Things can be hung up to the trim deck. Where the
// run has bridges, there are halts besides at which arms reach from them, one after the other, the pieces that they do
// not reach at the lowest trim, as few as will do. Where it has none, pieces can be put in while the batten is no higher
// than the trim bridge, which is a halt too. Trims beyond the reach of the set are taken as its highest or lowest.
//
// Where some of the hang rests on the deck at the lowest trim, the lowest trim at which all of it hangs clear is an End:
// a set is loaded when it has left the deck within the limits.
func (r *Rigged) WorkTrims(deck, bridge units.Length) []WorkTrim {
	if r.load == nil {
		return nil // of a Rigged that Rig did not make
	}
	lowest, highest := r.travel.Lowest, r.travel.Highest
	beyond := func(t units.Length) units.Length { // lowest where it is not a number, too
		if t > lowest {
			return t
		}
		return lowest
	}
	deck, bridge = beyond(deck), beyond(bridge)
	trims := r.reachTrims()
	for _, t := range r.load.Breaks() {
		if r.jumps(t) && t >= lowest-hair && t < highest {
			t = min(t+clearOfDeck, highest)
		}
		trims = append(trims, t)
	}
	bridges := len(r.set.Rigging.Run.Bridges) > 0
	if !bridges {
		trims = append(trims, min(bridge, highest))
	}
	trims = slices.DeleteFunc(trims, func(t units.Length) bool { return !(t > lowest+hair && t <= highest+hair) })
	trims = append(trims, lowest)
	slices.Sort(trims)
	var out []WorkTrim
	for i, t := range trims {
		if i+1 < len(trims) && trims[i+1].Within(t, hair) {
			continue // they are meant to be one; at the higher all is clear
		}
		out = append(out, WorkTrim{Trim: min(t, highest), Deck: t <= deck+hair, Bridge: bridges || t <= bridge+hair})
	}
	if r.rests(lowest) > 0 {
		if i := slices.IndexFunc(out, func(t WorkTrim) bool { return r.rests(t.Trim) == 0 }); i >= 0 {
			out[i].End = true
		}
	}
	return out
}

// reachTrims lists the trims at which pieces of show weight come into reach that are not in reach at the lowest. The
// higher a piece lies, the lower the arbor and the higher the batten that brings it into reach; each trim is the
// highest at which the lowest piece not reached before still is, so that the most of those above it are.
func (r *Rigged) reachTrims() (trims []units.Length) {
	stack := r.counter.Stack
	for _, b := range r.set.Rigging.Run.Bridges {
		reach, err := r.flight.Reach(b.Name, r.travel.Lowest, stack)
		if err != nil {
			return nil // of a stack that is taller than its rods: Fill makes none
		}
		// Those that lie too low never are in reach: the arbor is at its highest.
		for next := stack.Pieces - r.pieces() + 1; next <= stack.Pieces; next++ {
			if next <= reach.Last {
				continue
			}
			trim := r.lastNotBelow(b.Name, next)
			if at, err := r.flight.Reach(b.Name, trim, stack); err == nil && next <= at.Last {
				reach, trims = at, append(trims, trim)
			}
		}
	}
	return trims
}

// lastNotBelow is the highest trim at which a piece of the stack does not lie too low for arms, to the millimetre.
func (r *Rigged) lastNotBelow(bridge string, piece int) units.Length {
	low, high := r.travel.Lowest, r.travel.Highest
	for high-low > units.Millimetre {
		mid := low + (high-low)/2
		if reach, err := r.flight.Reach(bridge, mid, r.counter.Stack); err == nil && reach.Below < piece {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
