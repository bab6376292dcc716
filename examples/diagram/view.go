package diagram

import (
	"strconv"

	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// view is a set at a trim with everything asked of it that the picture shows.
type view struct {
	sys   units.System
	title string
	rig   lineset.Rigging
	trim  units.Length
	top   units.Length // the arbor's
	way   purchase.Way // zero: at rest

	lift []purchase.RopeState // one for each lift line
	hand purchase.RopeState
	load func(name string) purchase.Vector

	carried  units.Force // what the batten carries, and itself
	centre   units.Length
	weight   units.Force // of the arbor with its stack
	heaviest units.Force // of batten and arbor, whatever the trim
	stack    units.Length

	state lineset.State
	run   purchase.Running // zero at rest
	feel  purchase.Feel
}

// look asks the sets.
func look(sys units.System, cuts []Cut) ([]view, error) {
	if len(cuts) == 0 {
		return nil, &units.FieldError{Field: "cuts", Want: "at least one set to draw", Err: units.ErrMissing}
	}
	views := make([]view, len(cuts))
	for i, c := range cuts {
		if c.Set == nil {
			return nil, &units.FieldError{Field: "cuts[" + strconv.Itoa(i) + "].set", Want: "a set that was rigged", Err: units.ErrMissing}
		}
		v, err := c.look(sys)
		if err != nil {
			return nil, err
		}
		views[i] = v
	}
	return views, nil
}

func (c Cut) look(sys units.System) (view, error) {
	state, err := c.Set.At(c.Trim)
	if err != nil {
		return view{}, err
	}
	hand, err := c.Set.Hand(c.Trim)
	if err != nil {
		return view{}, err
	}
	set, answers := c.Set.Set(), c.Set.Counterweight()
	v := view{
		sys: sys, title: c.Title, rig: set.Rigging, trim: c.Trim, top: state.Ropes.ArborTop, way: c.Way,
		lift: state.Ropes.Lift, hand: state.Ropes.Hand, load: state.Ropes.Load,
		carried: state.Share.Weight, centre: state.Share.Centre,
		weight: answers.Arbor.Weight(units.StandardGravity), stack: answers.Stack.Height,
		state: state, feel: hand.Feel,
	}
	if v.title == "" {
		v.title = set.Name
	}
	v.heaviest = max(v.weight, (c.Set.Bare() + c.Set.Hung()).Weight(units.StandardGravity))
	if c.Way != 0 {
		if v.run, err = c.Set.Run(c.Trim, c.Way); err != nil {
			return view{}, err
		}
		v.lift, v.hand, v.load = v.run.Lift, v.run.Hand, v.run.Load
	}
	return v, nil
}

// handKind is the purchase of the hand line.
func (v view) handKind() purchase.Kind {
	if v.rig.HandPurchase == 0 {
		return v.rig.Purchase
	}
	return v.rig.HandPurchase
}

// at gives what the parts of a rope pull at a stop, in the order of its path.
func at(rope purchase.RopeState, stop string) (pulls []units.Force) {
	for _, part := range rope.Parts {
		switch stop {
		case part.From:
			pulls = append(pulls, part.TensionFrom)
		case part.To:
			pulls = append(pulls, part.TensionTo)
		}
	}
	return pulls
}

// liftAtArbor is what the parts of all lift lines together pull at the arbor's top: first those from the head block.
func (v view) liftAtArbor() []units.Force {
	sums := make([]units.Force, v.rig.Purchase)
	for _, line := range v.lift {
		for i, pull := range at(line, purchase.ArborTop) {
			sums[i] += pull
		}
	}
	return sums
}

// atBatten is what a line pulls at the batten.
func atBatten(line purchase.RopeState) units.Force { return line.Parts[0].TensionFrom }

// deadEnds is the pull on the building of the lift lines' dead ends, or of their blocks at the head beam, all together.
func (v view) deadEnds() (sum units.Force) {
	for i := range v.lift {
		sum += v.load(v.beamStop(i + 1)).Size()
	}
	return sum
}

// beamStop is what a lift line has at the head beam.
func (v view) beamStop(line int) string {
	if v.rig.Purchase == purchase.Triple {
		return purchase.BeamBlock(line)
	}
	return purchase.DeadEnd(line)
}

// handBeamStop is what the hand line has there.
func (v view) handBeamStop() string {
	if v.handKind() == purchase.Triple {
		return purchase.HandBlock
	}
	return purchase.HandDeadEnd
}

// railRope is a rope that a person at the rail sees.
type railRope struct {
	name       string
	top, under units.Force // tension at its upper end, and at its lower one
	role       purchase.Role
}

// railRopes are the parts of the hand line below the arbor and the one that goes up past it, from the wall outwards.
func (v view) railRopes() (ropes []railRope) {
	for _, part := range v.hand.Parts {
		switch {
		case part.From == purchase.RailDeadEnd:
			ropes = append(ropes, railRope{name: "dead end", top: part.TensionTo, under: part.TensionFrom})
		case part.From == purchase.RailBlock:
			ropes = append(ropes, railRope{name: "block", top: part.TensionTo, under: part.TensionFrom})
		case part.To == purchase.RailBlock:
			ropes = append(ropes, railRope{name: "block", top: part.TensionFrom, under: part.TensionTo})
		case part.To == purchase.IdlerBlock:
			ropes = append(ropes, railRope{"inner, live", part.TensionFrom, part.TensionTo, purchase.InnerRope})
		case part.From == purchase.IdlerBlock:
			ropes = append(ropes, railRope{"outer, live", part.TensionTo, part.TensionFrom, purchase.OuterRope})
		}
	}
	return ropes
}
