package purchase

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Feel is what the ropes at the rail tell before the lock is opened: the lock grips the outer rope, the set is at
// rest, and a hand on each of the two live ropes feels which is the tighter. There is no drag in it.
type Feel struct {
	Trim  units.Length `json:"trim"`  // of the batten
	Inner units.Force  `json:"inner"` // tension of the inner rope, at the lock's height
	Outer units.Force  `json:"outer"` // tension of the outer rope, just above the lock
	// Tight is the rope that is tighter by More: the inner one while the set is batten-heavy, the outer
	// one while it is arbor-heavy. With More zero it says nothing. More is what is asked of the lock; where that does
	// not hold the set, the two tensions cannot differ by so much.
	Tight Role        `json:"tight"`
	More  units.Force `json:"more"`
	// Spare is how much more the set may become batten-heavy, at the lock, until the outer rope is slack
	// above it, the idler is lifted and the lock alone does not hold the set. Below zero it is so already.
	Spare units.Force `json:"spare"`
	Held  bool        `json:"held"` // the lock and the idler hold the set
}

// Feel tells which rope is tight before the lock is opened, and by how much: at one height the inner rope less the
// outer one above the lock is the imbalance times the ratio over the hand line's parts at an end of the arbor. A lock
// is not a brake, and its maker says what difference it is to hold. The errors are those of [Reeved.At], and a
// *units.FieldError where there is no hand line.
func (r *Reeved) Feel(trim units.Length, on Bodies) (Feel, error) {
	if err := r.unrigged(); err != nil {
		return Feel{}, err
	}
	if r.lock < 0 {
		var p check.Problems
		p.Add("hand", "", "a hand line to feel", units.ErrMissing)
		return Feel{}, p.Err()
	}
	s, err := r.At(trim, on)
	if err != nil {
		return Feel{}, err
	}
	f := Feel{Trim: trim, Spare: s.Grip - s.Lock, Held: s.Held()}
	f.Inner = max(0, s.Grip)
	f.Outer = max(0, s.Grip-s.Lock)
	f.Tight, f.More = InnerRope, s.Lock
	if f.More < 0 {
		f.Tight, f.More = OuterRope, -f.More
	}
	return f, nil
}

// RaisedIdler is what comes of raising the idler by hand, as to take rope off the rail.
type RaisedIdler struct {
	Slack units.Length `json:"slack"` // rope gained
	// Force is what raising it takes once the rope is slack: the idler's whole weight. While the rope
	// still bears it, it takes none.
	Force units.Force `json:"force"`
}

// RaiseIdler tells what raising an idler of a given mass by a length gives and takes: on two plumb parts twice the
// length in rope. The weight is the same in single and double purchase, but a double set's idler is often
// the heavier (common practice). One that is held must be let go first.
//
// It goes up to the rope lock at most, or to the arbor's foot where that hangs lower; for its trim is not asked, only the
// lock is a limit here. The error is a *units.FieldError for a length beyond that, a length or mass that is negative or not
// finite, and where there is no hand line.
func (r *Reeved) RaiseIdler(by units.Length, idler units.Mass) (RaisedIdler, error) {
	if err := r.unrigged(); err != nil {
		return RaisedIdler{}, err
	}
	var p check.Problems
	ok := check.NotNegative(&p, "by", by)
	check.NotNegative(&p, "idler", idler)
	if r.lock < 0 {
		p.Add("hand", "", "a hand line round an idler", units.ErrMissing)
	} else if room := r.lockHeight - (r.idler + r.hand.rope.Path[r.lock].Height.In(units.Metre)); ok && by.In(units.Metre) > float64(room*(1+1e-12)) {
		p.Add("by", check.Show(by), "at most "+check.Show(units.Length(room))+", up to the rope lock", units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return RaisedIdler{}, err
	}
	raised := RaisedIdler{Slack: by.Scale(r.idlerParts)}
	if by > 0 {
		raised.Force = idler.Weight(units.StandardGravity)
	}
	return raised, nil
}
