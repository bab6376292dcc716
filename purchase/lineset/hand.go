package lineset

import (
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Hand is what the hands at the rail feel at one trim: the pull that flies the batten slowly out and in, with drag at
// every sheave, how far out of balance the set may be and still stay by itself, and what the ropes tell
// before the lock is opened.
type Hand struct {
	Trim  units.Length  `json:"trim"`
	Out   HandPull      `json:"out"`
	In    HandPull      `json:"in"`
	Stays purchase.Band `json:"stays"` // lock open, no hand on a rope
	Feel  purchase.Feel `json:"feel"`  // lock shut, without drag
}

// HandPull is a pull on one of the ropes at the rail.
type HandPull struct {
	Pull units.Force   `json:"pull"` // downwards, zero or more
	Rope purchase.Role `json:"rope"` // the one that is pulled
	Runs bool          `json:"runs"` // the set runs that way by itself, and the pull holds it back

	Slack bool `json:"slack,omitzero"` // some rope is slack, and the figure does not quite add up
}

// Hand gives what the hands feel at any trim that the set reaches. Errors as for At.
func (r *Rigged) Hand(trim units.Length) (Hand, error) {
	state, err := r.At(trim)
	if err != nil {
		return Hand{}, err
	}
	return r.hand(state)
}

// felt is what the hands feel at one of the trims of the checks. The zero Rigged has none.
func (r *Rigged) felt(i int) Hand {
	if i < 0 || i >= len(r.hands) {
		return Hand{}
	}
	return r.hands[i]
}

func (r *Rigged) hand(s State) (Hand, error) {
	on := r.bodies(s.Share)
	h := Hand{Trim: s.Trim}
	var err error
	if h.Out, err = r.pull(s.Trim, on, purchase.Out); err != nil {
		return Hand{}, err
	}
	if h.In, err = r.pull(s.Trim, on, purchase.In); err != nil {
		return Hand{}, err
	}
	if h.Stays, err = r.ropes.Stays(s.Trim, on); err != nil {
		return Hand{}, err
	}
	h.Feel, err = r.ropes.Feel(s.Trim, on)
	return h, err
}

func (r *Rigged) pull(trim units.Length, on purchase.Bodies, way purchase.Way) (HandPull, error) {
	run, err := r.ropes.Run(trim, on, way)
	return HandPull{Pull: run.Pull, Rope: run.Rope, Runs: run.Runs, Slack: run.Slack}, err
}

// checkLockHolds holds the difference of tension that is asked of the shut lock against what it is given to hold.
func (r *Rigged) checkLockHolds(lim ForceLimit) Check {
	return r.worst(func(s State) (string, units.Force) {
		if s.Ropes.Lock < 0 {
			return purchase.OuterRope.String(), -s.Ropes.Lock
		}
		return purchase.InnerRope.String(), s.Ropes.Lock
	}).compare("rope lock", lim)
}

// checkHands holds the pulls that fly the set out and in, or hold it back, against what the caller allows one person.
func (r *Rigged) checkHands(lim ForceLimit) []Check {
	worst := func(name string, of func(Hand) HandPull) Check {
		var g governing
		for i, h := range r.hands {
			if p := of(h); i == 0 || p.Pull > g.force.Scale(1+tie) {
				g = governing{where: p.Rope.String(), force: p.Pull, trim: h.Trim}
			}
		}
		return g.compare(name, lim)
	}
	return []Check{
		worst("hand pull to fly out", func(h Hand) HandPull { return h.Out }),
		worst("hand pull to fly in", func(h Hand) HandPull { return h.In }),
	}
}
