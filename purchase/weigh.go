package purchase

import (
	"errors"
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// ErrUnexplained is the fault of pulls that no load on the batten and no drag of the sheaves bring about.
var ErrUnexplained = errors.New("is explained by no load and drag")

// Pulled is what a spring scale on the hand line read while the set ran slowly, pulled down at the rail.
type Pulled struct {
	Pull units.Force `json:"pull"`          // zero or more
	Runs bool        `json:"runs,omitzero"` // the set ran that way by itself, and the pull, on the other rope, held it back; see Running
}

// Weighing is a set weighed with the hand line: at one trim, the lock open, what it took to keep it running slowly
// out, and slowly in. Runs of some feet each way past the trim, read while the scale is steady, are common practice.
type Weighing struct {
	Trim  units.Length `json:"trim"`
	On    Bodies       `json:"on"`             // Arbor and Idler as they are; Pulls for how the lift lines share what they carry: only their proportions count
	Out   Pulled       `json:"out"`            // on the inner rope, or held back on the outer
	In    Pulled       `json:"in"`             // on the outer rope, or held back on the inner
	Scale units.Force  `json:"scale,omitzero"` // how far the scale may be off either way; zero: not at all
}

// Weighed is what the pulls say. Least and Most are the ends of what a scale as good as was said allows, each
// figure for itself: they do not all go together.
type Weighed struct {
	Carried   MassBand  `json:"carried"`   // what hangs on the lift lines, the batten included
	Imbalance ForceBand `json:"imbalance"` // without drag, referred to the batten, batten-heavy positive
	Drag      DragBand  `json:"drag"`      // the coefficient c, if it is the same for every sheave
}

// MassBand is a mass with the ends between which it lies.
type MassBand struct {
	Value units.Mass `json:"value"` // zero or more
	Least units.Mass `json:"least"` // not above Value
	Most  units.Mass `json:"most"`  // not below Value
}

// ForceBand is a force with the ends between which it lies.
type ForceBand struct {
	Value units.Force `json:"value"` // signed as is said where it stands
	Least units.Force `json:"least"` // not above Value
	Most  units.Force `json:"most"`  // not below Value
}

// DragBand is a drag coefficient with the ends between which it lies.
type DragBand struct {
	Value Drag `json:"value"` // from 0 to below 1
	Least Drag `json:"least"` // not above Value
	Most  Drag `json:"most"`  // not below Value
}

// Weigh works out the load, the out of balance and the drag from what it took to run the set both ways.
//
// It is [Reeved.Run] the other way about. With a trial coefficient at every sheave, whatever the layout says of
// them, each of the two pulls by itself tells what must hang on the batten: the pull out less of it, the more drag there
// is, and the pull in more. Where the two agree is the drag, and what they agree on the load. Both are found to the
// last bits. A scale that reads high on both ropes raises the drag, one that reads high on one and
// low on the other shifts the load; the bands are those two pairs of corners.
//
// The errors are those of Run; a *units.FieldError for pulls below zero and for a share that is nothing; and one
// that wraps ErrUnexplained, where it would take drag below zero, or of 0.9 and more, or a load below zero, even with
// the scale as far off as it may be.
func (r *Reeved) Weigh(w Weighing) (Weighed, error) {
	moved, err := r.moved(w.Trim)
	if err != nil {
		return Weighed{}, err
	}
	var p check.Problems
	if r.lock < 0 {
		p.Add("hand", "", "a hand line to pull on", units.ErrMissing)
	}
	p.Within("on", "", w.On.validate(len(r.lift)))
	check.NotNegative(&p, "out.pull", w.Out.Pull)
	check.NotNegative(&p, "in.pull", w.In.Pull)
	check.NotNegative(&p, "scale", w.Scale)
	if err := p.Err(); err != nil {
		return Weighed{}, err
	}
	var total units.Force
	for _, pull := range w.On.Pulls {
		total += pull
	}
	if total == 0 {
		p.Add("on.pulls", "", "how the lift lines share what they carry", units.ErrMissing)
		return Weighed{}, p.Err()
	}
	t := r.trial(moved, w.On, total)
	if !t.answers() {
		p.Add("hand", "", "inner and outer ropes at the rail whose pull the arbor answers", ErrNoTravel)
		return Weighed{}, p.Err()
	}

	// In signed pulls, below zero where they hold back, what follows only grows or only falls with each.
	out, in, off := w.Out.signed(), w.In.signed(), w.Scale.In(units.Newton)
	value, _ := t.agree(out, in)
	most, found := t.agree(out+off, in+off) // larger pulls take more drag: with these found the others are
	tooLittle := most.drag == 0 && most.excess < 0
	// What the pulls say could jump past each other at some drag, on a reeving of the caller's own.
	jump := value.drag > 0 && math.Abs(value.excess) > 1e-6*(1+max(t.arbor/r.ratio, t.idler, math.Abs(value.in)))
	if tooLittle || jump || !found {
		want := "pulls that a drag coefficient up to 0.9 explains"
		if tooLittle {
			want = "larger pulls: it takes more than these without any drag"
		}
		p.Add("out.pull", check.Show(w.Out.Pull)+" out and "+check.Show(w.In.Pull)+" in", want, ErrUnexplained)
		return Weighed{}, p.Err()
	}
	least, _ := t.agree(out-off, in-off)
	light, _ := t.agree(out-off, in+off)
	heavy, _ := t.agree(out+off, in-off)
	lightest, heaviest := max(light.out, light.in), min(heavy.out, heavy.in)
	carried := (value.out + value.in) / 2
	// Nothing on the batten is found to within rounding of what the arbor weighs.
	if heaviest < -1e-9*(1+w.On.Arbor.Weight(units.StandardGravity).In(units.Newton)) {
		p.Add("out.pull", check.Show(w.Out.Pull)+" out and "+check.Show(w.In.Pull)+" in", "pulls that leave something on the batten, with an arbor of "+check.Show(w.On.Arbor), ErrUnexplained)
		return Weighed{}, p.Err()
	}
	if err := t.slack(value.drag, out, in); err != nil {
		return Weighed{}, err
	}
	carried, lightest, heaviest = max(carried, 0), max(lightest, 0), max(heaviest, 0)
	lightest, heaviest = min(lightest, carried), max(heaviest, carried)
	arbor := w.On.Arbor.Weight(units.StandardGravity).In(units.Newton)
	mass := func(weight float64) units.Mass { return units.Force(weight).Mass(units.StandardGravity) }
	heavyBy := func(weight float64) units.Force { return units.Force(r.imbalance(moved, weight, arbor)) }
	return Weighed{
		Carried:   MassBand{mass(carried), mass(lightest), mass(heaviest)},
		Imbalance: ForceBand{heavyBy(carried), heavyBy(lightest), heavyBy(heaviest)},
		Drag:      DragBand{Drag(value.drag), Drag(least.drag), Drag(most.drag)},
	}, nil
}

// signed is the pull as one that drives, below zero where it holds back.
func (p Pulled) signed() float64 {
	if p.Runs {
		return -p.Pull.In(units.Newton)
	}
	return p.Pull.In(units.Newton)
}

// trial is a set whose drag is not known.
type trial struct {
	r            *Reeved
	drives       []driven // with a drag of its own
	hand         *driven  // of those, the hand line
	moved        float64
	on           Bodies
	share        []float64
	arbor, idler float64 // weight of the one, what the hand line bears of the other
}

func (r *Reeved) trial(moved float64, on Bodies, total units.Force) *trial {
	t := &trial{
		r: r, drives: r.newDrives(), moved: moved, on: on, share: make([]float64, len(on.Pulls)),
		arbor: on.Arbor.Weight(units.StandardGravity).In(units.Newton), idler: on.onIdler(r.idlerParts),
	}
	t.hand = &t.drives[len(r.lift)]
	for i, pull := range on.Pulls {
		t.share[i] = units.Ratio(pull, total)
	}
	return t
}

// answers tells whether there are two live ropes, and each moves the arbor.
func (t *trial) answers() bool {
	t.set(0)
	for _, way := range [...]Way{Out, In} {
		for _, role := range [...]Role{InnerRope, OuterRope} {
			if _, _, ok := t.r.handle(t.hand, way, role, t.on, t.arbor, t.moved); !ok {
				return false
			}
		}
	}
	return true
}

// set gives every sheave the same drag.
func (t *trial) set(drag float64) {
	t.r.drive(t.drives, func(*Stop) float64 { return drag })
}

// carried is the weight on the lift lines that a signed pull keeps running: what the hand line leaves of the arbor's
// weight for them to hold, and what they then bear at the batten. All of it is linear in the tensions at the
// ropes' beginnings.
func (t *trial) carried(way Way, pull float64, drives, holds Role) float64 {
	role, pull, start := t.pulled(way, pull, drives, holds)
	top := &t.hand.onto[way-Out][role].arbor
	held := t.arbor - top.Plain.At(t.moved) - float64(top.PerStart*start) - float64(top.PerPull*pull)
	var perWeight float64
	for i := range t.r.lift {
		lift := &t.drives[i].onto[way-Out][nowhere]
		top, foot := &lift.arbor, &lift.known
		held -= top.Plain.At(t.moved) - float64(top.PerStart*foot.Plain.At(t.moved))/foot.PerStart
		perWeight += float64(t.share[i]*top.PerStart) / foot.PerStart
	}
	return held / perWeight
}

// pulled is where a signed pull grips the hand line, how hard, and the tension at its beginning.
func (t *trial) pulled(way Way, signed float64, drives, holds Role) (role Role, pull, start float64) {
	role, pull = drives, signed
	if pull < 0 {
		role, pull = holds, -pull
	}
	idler := &t.hand.onto[way-Out][role].known
	return role, pull, (t.idler - idler.Plain.At(t.moved) - float64(idler.PerPull*pull)) / idler.PerStart
}

// slack tells of a hand line that would have to push, with a drag and either pull.
func (t *trial) slack(drag, out, in float64) error {
	t.set(drag)
	role, pull, start := t.pulled(Out, out, InnerRope, OuterRope)
	err := t.r.hand.slack(t.hand, "hand", Out, int(role), start, pull, t.moved)
	role, pull, start = t.pulled(In, in, OuterRope, InnerRope)
	return errors.Join(err, t.r.hand.slack(t.hand, "hand", In, int(role), start, pull, t.moved))
}

// agreed is what two pulls say with some drag: the weight carried by the one out and by the one in, and how much the
// first is above the second.
type agreed struct{ drag, out, in, excess float64 }

func (t *trial) with(drag, out, in float64) agreed {
	t.set(drag)
	a := agreed{drag: drag, out: t.carried(Out, out, InnerRope, OuterRope), in: t.carried(In, in, OuterRope, InnerRope)}
	a.excess = a.out - a.in
	// Two roads to one weight differ by rounding: a set without drag must not be refused for that.
	if rounding := 1e-12 * max(a.out, a.in, t.arbor/t.r.ratio, t.idler); drag == 0 && a.excess < 0 && a.excess > -rounding {
		a.excess = 0
	}
	return a
}

// agree finds the drag with which both pulls say the same. Where not even no drag makes them, it gives what they say
// without it; false where the most drag does not.
func (t *trial) agree(out, in float64) (agreed, bool) {
	low := t.with(0, out, in)
	if low.excess <= 0 {
		return low, true
	}
	high := low
	for _, drag := range [...]float64{0.02, 0.08, 0.3, mostDrag} {
		if high = t.with(drag, out, in); high.excess <= 0 {
			break
		}
		low = high
	}
	if high.excess > 0 {
		return high, false
	}
	// False position after Illinois: an end that stays counts for half each time, so that both close in; halving
	// takes over should it be slow.
	left, right, side := low.excess, high.excess, 0
	for i := 0; high.drag-low.drag > 1e-15*max(high.drag, 1e-4); i++ {
		drag := low.drag + float64((high.drag-low.drag)*left)/(left-right)
		if i > 30 {
			drag = (low.drag + high.drag) / 2
		}
		if !(drag > low.drag && drag < high.drag) {
			break
		}
		at := t.with(drag, out, in)
		if at.excess > 0 {
			low, left = at, at.excess
			if side == 1 {
				right /= 2
			}
			side = 1
			continue
		}
		high, right = at, at.excess
		if at.excess == 0 {
			break
		}
		if side == -1 {
			left /= 2
		}
		side = -1
	}
	if low.excess < -high.excess {
		return low, true
	}
	return high, true
}
