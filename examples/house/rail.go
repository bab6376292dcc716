package main

import (
	"fmt"
	"slices"
	"strings"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// lines says what the lift lines are beside plain: ropes that stretch, and ends that are off.
func (s *sheet) lines(lines []load.Line) {
	if slices.ContainsFunc(lines, func(l load.Line) bool { return l.EA > 0 }) {
		s.row("", "lift lines", "", "stretch as given")
	}
	for i, l := range lines {
		switch {
		case l.Long > 0:
			s.row("", fmt.Sprintf("lift line %d", i+1), "", s.format(l.Long)+" too long")
		case l.Long < 0:
			s.row("", fmt.Sprintf("lift line %d", i+1), "", s.format(-l.Long)+" too short")
		}
	}
}

// installed says what is laid otherwise than the purchase alone tells.
func (s *sheet) installed(r lineset.Rigging) {
	if r.HandPurchase != 0 && r.HandPurchase != r.Purchase {
		s.row("", "hand line", "", r.HandPurchase.String()+" purchase")
	}
	for i, loft := range r.Loft {
		name := fmt.Sprintf("lift line %d", i+1)
		if loft.Height != 0 {
			s.row("", name, "", "loft block at "+s.format(loft.Height))
		}
		for _, mule := range loft.Mules {
			s.row("", name, "", "over "+mule.Name+" at "+s.format(mule.Height))
		}
	}
	if r.Idler.Base > 0 {
		s.row("", "idler", "", "held, "+s.format(r.Idler.Base)+" in each of its parts")
	}
}

// handOf is the purchase of the hand line.
func handOf(r lineset.Rigging) purchase.Kind {
	if r.HandPurchase != 0 {
		return r.HandPurchase
	}
	return r.Purchase
}

// blocks says what the blocks and dead ends carry beside loft blocks and head block.
func (s *sheet) blocks(r lineset.Rigging, block func(name string, of func(lineset.State) units.Force)) {
	one := func(row, name string) {
		block(row, func(st lineset.State) units.Force { return st.Ropes.Load(name).Size() })
	}
	many := func(row string, name func(int) string) {
		block(row, func(st lineset.State) units.Force { return heaviest(st, name) })
	}
	var mules []string
	for _, loft := range r.Loft {
		for _, mule := range loft.Mules {
			if !slices.Contains(mules, mule.Name) {
				mules = append(mules, mule.Name)
				one(clip(mule.Name, 26), mule.Name)
			}
		}
	}
	switch r.Purchase {
	case purchase.Double:
		many("heaviest lift dead end", purchase.DeadEnd)
	case purchase.Triple:
		many("heaviest lift beam block", purchase.BeamBlock)
	}
	switch handOf(r) {
	case purchase.Double:
		one("hand line dead end, beam", purchase.HandDeadEnd)
		one("hand line dead end, rail", purchase.RailDeadEnd)
	case purchase.Triple:
		one("hand line block, beam", purchase.HandBlock)
		one("hand line block, rail", purchase.RailBlock)
	}
}

// hands says what is felt at the hand line.
func (s *sheet) hands(set *lineset.Rigged, r *lineset.Report, both func(name, low, high string)) {
	low, high := r.LowHand, r.HighHand
	tight := func(h lineset.Hand) string {
		switch {
		case !h.Feel.Held:
			return "not held"
		case h.Feel.More == 0:
			return "alike"
		}
		return h.Feel.Tight.String() + " by " + s.force(h.Feel.More)
	}
	both("lock shut, the tighter rope", tight(low), tight(high))
	pull := func(p lineset.HandPull) string {
		if p.Loose {
			return "hand line slack"
		}
		words := s.force(p.Pull)
		if p.Runs {
			words += " back"
		}
		if len(p.Slack) > 0 {
			words += ", slack"
		}
		return words + ", " + p.Rope.String()
	}
	both("pull to fly slowly out", pull(low.Out), pull(high.Out))
	both("pull to fly slowly in", pull(low.In), pull(high.In))
	stays := func(h lineset.Hand) string {
		if h.Loose {
			return "hand line slack"
		}
		return s.force(-h.Stays.ArborHeavy) + " / " + s.force(h.Stays.BattenHeavy)
	}
	both("stays if arbor-/batten-heavy", stays(low), stays(high))
	both("let go with the lock open", s.letGo(set, low.Trim), s.letGo(set, high.Trim))
	both("mass felt, of what moves", s.felt(set, low.Trim), s.felt(set, high.Trim))
}

// letGo says what becomes of a set that nobody holds.
func (s *sheet) letGo(set *lineset.Rigged, trim units.Length) string {
	run, err := set.LetGo(trim)
	switch {
	case err != nil:
		return "not known"
	case run.Way == 0:
		return "stays"
	case !run.AtStop:
		return fmt.Sprintf("runs %v, rests at %s", run.Way, s.format(run.Ends))
	case run.Speed == 0:
		return fmt.Sprintf("leans %v on its stop", run.Way)
	}
	return fmt.Sprintf("runs %v, %s at stop", run.Way, s.speed(run.Speed))
}

func (s *sheet) felt(set *lineset.Rigged, trim units.Length) string {
	felt, err := set.Felt(trim)
	if err != nil {
		return "not known"
	}
	return s.mass(felt.Batten) + " of " + s.mass(felt.Moving)
}

// slack says which lift lines would have to push somewhere at rest.
func slack(st lineset.State) []string {
	var names []string
	for _, rope := range st.Ropes.Lift {
		if rope.Slack {
			names = append(names, rope.Name)
		}
	}
	if names == nil {
		return nil
	}
	return []string{"at rest, slack somewhere on the way: " + strings.Join(names, ", ") + "; the figures do not quite add up"}
}

// notes says about the hand line what figures do not: once where it holds at both trims.
func (s *sheet) notes(r *lineset.Report) {
	low, high := r.LowHand.Notes(), r.HighHand.Notes()
	say := func(where, note string) { s.wrap("           ! ", entry, where+note) }
	low, high = append(low, slack(r.Low)...), append(high, slack(r.High)...)
	for _, note := range low {
		where := "at low trim: "
		if slices.Contains(high, note) {
			where = "at either trim: "
		}
		say(where, note)
	}
	for _, note := range high {
		if !slices.Contains(low, note) {
			say("at high trim: ", note)
		}
	}
}
