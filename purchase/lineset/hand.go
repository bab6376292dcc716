package lineset

import (
	"errors"
	"strings"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Hand is what the hands at the rail feel at one trim: the pull that flies the batten slowly out and in, with drag at
// every sheave, how far out of balance the set may be and still stay by itself, and what the ropes tell
// before the lock is opened.
type Hand struct {
	Trim    units.Length  `json:"trim"`
	Balance Point         `json:"balance"` // the out of balance, without drag, with its terms
	Out     HandPull      `json:"out"`
	In      HandPull      `json:"in"`
	Stays   purchase.Band `json:"stays"` // lock open, no hand on a rope
	// Loose says that with no hand on a rope the hand line would have to push somewhere: Stays is then not known, and zero.
	Loose bool          `json:"loose,omitzero"`
	Feel  purchase.Feel `json:"feel"`  // lock shut, without drag
	Terms HandTerms     `json:"terms"` // what the figures follow from: see Working
}

// HandPull is a pull on one of the ropes at the rail.
type HandPull struct {
	Pull units.Force   `json:"pull"` // downwards, zero or more
	Rope purchase.Role `json:"rope"` // the one that is pulled
	Runs bool          `json:"runs"` // the set runs that way by itself, and the pull holds it back

	// Slack names the lift lines that would have to push somewhere on their way. They are slack there, and
	// the pull does not quite add up.
	Slack []string `json:"slack,omitempty"`
	// Loose says that the hand line itself would have to push: nobody can say then what the hand feels, and all else is zero.
	Loose bool `json:"loose,omitzero"`
}

// Hand gives what the hands feel at any trim that the set reaches. Errors as for At.
func (r *Rigged) Hand(trim units.Length) (Hand, error) {
	state, err := r.At(trim)
	if err != nil {
		return Hand{}, err
	}
	h, err := r.hand(state, &purchase.Running{})
	if err != nil {
		return Hand{}, err
	}
	h.Terms, err = r.terms(state)
	return h, err
}

// hand leaves out the terms, which none of the checks looks at. It works in run, which may serve again.
func (r *Rigged) hand(s State, run *purchase.Running) (Hand, error) {
	on := r.bodies(s.Share)
	h := Hand{Trim: s.Trim}
	var err error
	if h.Balance, err = r.point(s.Trim, s.Carried, r.counter.Arbor); err != nil {
		return Hand{}, err
	}
	if h.Out, err = r.pull(run, s.Trim, on, purchase.Out); err != nil {
		return Hand{}, err
	}
	if h.In, err = r.pull(run, s.Trim, on, purchase.In); err != nil {
		return Hand{}, err
	}
	if h.Stays, err = r.ropes.Stays(s.Trim, on); err != nil {
		if !errors.Is(err, purchase.ErrSlack) {
			return Hand{}, err
		}
		h.Loose = true
	}
	h.Feel, err = r.ropes.Feel(s.Trim, on)
	return h, err
}

func (r *Rigged) pull(run *purchase.Running, trim units.Length, on purchase.Bodies, way purchase.Way) (HandPull, error) {
	err := r.ropes.RunInto(run, trim, on, way)
	switch {
	case errors.Is(err, purchase.ErrSlack):
		return HandPull{Loose: true}, nil
	case err != nil:
		return HandPull{}, err
	}
	p := HandPull{Pull: run.Pull, Rope: run.Rope, Runs: run.Runs}
	for _, rope := range run.Lift {
		if rope.Slack {
			p.Slack = append(p.Slack, rope.Name)
		}
	}
	return p, nil
}

// Notes says in words what the figures alone do not: that the lock does not hold the set, that a rope is slack, that the
// set runs by itself when it is let go. There is none where nothing is to be said.
func (h Hand) Notes() []string {
	var notes []string
	switch f := h.Feel; {
	case h.Trim == 0: // of a Rigged that Rig did not make
	case h.Terms.Idler == 0 && h.Terms.Base == 0:
		notes = append(notes, "the idler's weight is not given: the tension that it keeps in the hand line is left out")
	case !f.Held:
		notes = append(notes, "batten-heavy beyond what the idler's weight answers: the idler lifts and the rope lock alone does "+
			"not hold the set; what is given for a set at rest does not hold there")
	case h.Terms.Base > 0 && f.Spare <= 0:
		notes = append(notes, "batten-heavy beyond the tension at the held idler: the outer rope is slack above the lock, and what "+
			"holds the idler bears the rest")
	}
	if h.Loose {
		notes = append(notes, "with no hand on a rope the hand line would be slack: how far the set stays by itself cannot be told")
	}
	for _, way := range []struct {
		name string
		pull HandPull
	}{{"out", h.Out}, {"in", h.In}} {
		if way.pull.Loose {
			notes = append(notes, "flying "+way.name+", the hand line would be slack: the pull cannot be told")
		}
		if way.pull.Runs && way.pull.Pull > h.rounding() {
			notes = append(notes, "lock open and no hand on a rope, the batten runs "+way.name+" by itself: the pull to fly "+way.name+" holds it back")
		}
		if len(way.pull.Slack) > 0 {
			notes = append(notes, "flying "+way.name+", slack somewhere on the way: "+strings.Join(way.pull.Slack, ", ")+
				"; the pull to fly "+way.name+" does not quite add up")
		}
	}
	return notes
}

// rounding is the least that a set is out of balance: sums of the same masses, added up another way, lie less apart.
func (h Hand) rounding() units.Force {
	return (h.Balance.Carried + h.Terms.Arbor).Weight(units.StandardGravity).Scale(tie)
}

// checkLockHolds holds the difference of tension that is asked of the shut lock against what it is given to hold.
func checkLockHolds(looks []look, lim ForceLimit) Check {
	tight := worst(looks, func(s *State) (purchase.Role, units.Force) {
		if s.Ropes.Lock < 0 {
			return purchase.OuterRope, -s.Ropes.Lock
		}
		return purchase.InnerRope, s.Ropes.Lock
	})
	return tight.compare("rope lock", tight.of.String(), lim)
}

// checkHands holds the pulls that fly the set out and in, or hold it back, against what the caller allows one person.
func (r *Rigged) checkHands(looks []look, lim ForceLimit) []Check {
	return []Check{
		r.checkPull(looks, "hand pull to fly out", lim, func(h *Hand) HandPull { return h.Out }),
		r.checkPull(looks, "hand pull to fly in", lim, func(h *Hand) HandPull { return h.In }),
	}
}

// checkPull takes a pull that cannot be told for one that exceeds; without the idler's weight, on which it hangs whether the
// hand line is slack, for one that is not checked.
func (r *Rigged) checkPull(looks []look, name string, lim ForceLimit, of func(*Hand) HandPull) Check {
	var g governing[purchase.Role]
	for i := range looks {
		h := &looks[i].hand
		p := of(h)
		if p.Loose {
			c := compare(name, "hand line slack", 0, lim.Max, lim.Basis)
			c.Trim = h.Trim
			switch idler := r.set.Rigging.Idler; {
			case idler.Mass == 0 && idler.Base == 0:
				c.Verdict, c.Basis = NoLimit, ""
			case c.Verdict != NoLimit:
				c.Verdict = Exceeds
			}
			return c
		}
		if i == 0 || p.Pull > g.force.Scale(1+tie) {
			g = governing[purchase.Role]{of: p.Rope, force: p.Pull, trim: h.Trim}
		}
	}
	return g.compare(name, g.of.String(), lim)
}
