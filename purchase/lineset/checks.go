package lineset

import (
	"slices"
	"strconv"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// check holds the set against its limits, each at the trim where it is worst.
func (r *Rigged) check(looks []look, err error) []Check {
	switch {
	case err != nil:
		// Rig has made sure that every state can be told, so that this cannot be; rather a check that exceeds than none.
		c := compare("state", err.Error(), units.Force(0), 0, "")
		c.Verdict = Exceeds
		return []Check{c}
	case len(looks) == 0:
		return nil
	}
	c, t, lim := r.counter, r.travel, r.set.Rigging.Limits
	frame := r.set.Rigging.Arbor

	// A stack that had to be cut short is held against what it would take.
	height, mass := c.Stack.Height, c.Stack.Mass
	if len(c.Short) > 0 {
		height, mass = max(height, c.Ideal.Height), max(mass, c.Ideal.Mass)
	}
	most := r.Balance().Worst()
	balance := compare("out of balance", heavy(most.Imbalance), units.Abs(most.Imbalance), lim.OutOfBalance.Max, lim.OutOfBalance.Basis)
	balance.Trim = most.Trim
	checks := []Check{
		compare("stack height", "", height, frame.Room, "room on the arbor's rods, as given"),
		compare("counterweight mass", "", mass, frame.Capacity, "capacity of the arbor, as given"),
		balance,
		reach("travel to low trim", t.Low, t.Highest-t.Low, t.Batten, "batten travel between the arbor's stops, counted down from the highest trim reached"),
		reach("travel to high trim", t.High, t.High-t.Lowest, t.Batten, "batten travel between the arbor's stops, counted up from the lowest trim reached"),
	}

	line := worst(looks, func(s *State) (int, units.Force) { return s.WorstLine() })
	loft := heaviest(looks, purchase.LoftBlock)
	head := worst(looks, func(s *State) (string, units.Force) {
		return "", s.Ropes.Load(purchase.HeadBlock).Size()
	})
	checks = append(checks,
		line.compare("lift line tension", lineName(line.of), lim.LiftLine),
		loft.compare("loft block load", lineName(loft.of), lim.LoftBlock))
	if names := r.set.Rigging.mules(); len(names) > 0 {
		mule := worst(looks, heaviestOf(names))
		checks = append(checks, mule.compare("mule block load", mule.of, lim.MuleBlock))
	}
	checks = append(checks,
		head.compare("head block load", head.of, lim.HeadBlock))
	switch r.set.Rigging.Purchase {
	case purchase.Double:
		end := heaviest(looks, purchase.DeadEnd)
		checks = append(checks, end.compare("lift line dead end", lineName(end.of), lim.DeadEnd))
	case purchase.Triple:
		block := heaviest(looks, purchase.BeamBlock)
		checks = append(checks, block.compare("lift line beam block", lineName(block.of), lim.BeamBlock))
	}
	checks = append(checks, checkPipe(looks, lim.Pipe), r.checkLock(looks))
	checks = append(checks, checkLockHolds(looks, lim.RopeLock))
	checks = append(checks, r.checkHands(looks, lim.HandPull)...)
	if slices.Contains(c.Short, "stock") {
		checks = append(checks, compare("pieces in stock", "", c.Ideal.Mass, c.Stack.Mass, "what the stock, as given, allows to be stacked"))
	}
	return checks
}

// exceeds tells whether any check exceeds its limit.
func exceeds(checks []Check) bool {
	return slices.ContainsFunc(checks, func(c Check) bool { return c.Verdict == Exceeds })
}

// reach holds the travel from one end of the reach to a trim against all of it. A
// trim beyond that very end, a travel below zero, is as far out of reach.
func reach(name string, trim, travel, most units.Length, basis string) Check {
	c := compare(name, "", travel, most, basis)
	c.Trim = trim
	if travel < -most.Scale(rounding) {
		c.Verdict = Exceeds
	}
	return c
}

func checkPipe(looks []look, lim StressLimit) Check {
	worst := &looks[0].state
	for i := range looks {
		if s := &looks[i].state; s.Share.Stress > worst.Share.Stress {
			worst = s
		}
	}
	c := compare("pipe bending stress", "", worst.Share.Stress, lim.Max, lim.Basis)
	c.Trim = worst.Trim
	return c
}

// checkLock looks at the batten-heavy side only: an arbor-heavy set tightens the
// rope above the lock. It holds what a batten-heavy set takes off that rope
// against the tension that the idler's weight keeps in it.
func (r *Rigged) checkLock(looks []look) Check {
	worst := &looks[0].state
	for i := range looks {
		if s := &looks[i].state; s.Ropes.Lock-s.Ropes.Grip > worst.Ropes.Lock-worst.Ropes.Grip {
			worst = s
		}
	}
	name, grip := "lift on the idler", worst.Ropes.Grip
	basis := "hand line tension at the lock, from the idler's weight as given: a batten-heavy set that takes off more lifts the idler, and the lock alone does not hold it"
	switch g := r.set.Rigging; {
	case g.Idler.Base > 0:
		// A held idler does not rise: the state then has the rope below the lock as tight as it must be.
		name, grip = "outer rope kept tight", g.Idler.Base+g.HandLine.Over(g.Rail-g.Idler.Height).Weight(units.StandardGravity)
		basis = "hand line tension at the lock, from that at the held idler as given: a batten-heavy set that takes off more leaves the rope above the lock slack, and pulls at what holds the idler"
	case g.Idler.Mass == 0:
		basis = ""
	}
	c := compare(name, "", max(worst.Ropes.Lock, 0), grip, basis)
	c.Trim = worst.Trim
	return c
}

// governing is the worst of a demand over the travel, and what it is a demand of: a line, a block, a rope.
type governing[Of any] struct {
	of    Of
	force units.Force
	trim  units.Length
}

func worst[Of any](looks []look, demand func(*State) (Of, units.Force)) governing[Of] {
	var g governing[Of]
	for i := range looks {
		s := &looks[i].state
		if of, f := demand(s); i == 0 || f > g.force.Scale(1+tie) {
			g = governing[Of]{of: of, force: f, trim: s.Trim}
		}
	}
	return g
}

func (g governing[Of]) compare(name, where string, lim ForceLimit) Check {
	c := compare(name, where, g.force, lim.Max, lim.Basis)
	c.Trim = g.trim
	return c
}

// heaviest is the worst of purchase.State.Heaviest over the travel. Where the blocks of the family stand is the same in every
// state, and is looked up once.
func heaviest(looks []look, name func(line int) string) governing[int] {
	first := &looks[0].state.Ropes
	places := make([]int, len(first.Lift))
	for i := range places {
		of := name(i + 1)
		places[i] = slices.IndexFunc(first.Blocks, func(b purchase.Block) bool { return b.Name == of })
	}
	return worst(looks, func(s *State) (line int, most units.Force) {
		for i, place := range places {
			if place < 0 {
				continue
			}
			if f := s.Ropes.Blocks[place].Load.Size(); f > most.Scale(1+tie) {
				line, most = i+1, f
			}
		}
		return line, most
	})
}

// heaviestOf finds the most loaded of blocks that are named.
func heaviestOf(names []string) func(*State) (string, units.Force) {
	return func(s *State) (where string, most units.Force) {
		for i, name := range names {
			if f := s.Ropes.Load(name).Size(); i == 0 || f > most.Scale(1+tie) {
				where, most = name, f
			}
		}
		return where, most
	}
}

func lineName(n int) string { return "line " + strconv.Itoa(n) }

// heavy says which way an imbalance goes.
func heavy(i units.Force) string {
	switch {
	case i > 0:
		return "batten-heavy"
	case i < 0:
		return "arbor-heavy"
	}
	return "balanced"
}
