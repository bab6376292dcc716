package main

import (
	"fmt"
	"slices"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase/lineset"
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

// hands says what is felt at the hand line.
func (s *sheet) hands(set *lineset.Rigged, both func(name, low, high string)) {
	low, errLow := set.Hand(set.Low().Trim)
	high, errHigh := set.Hand(set.High().Trim)
	if errLow != nil || errHigh != nil {
		return
	}
	pull := func(p lineset.HandPull) string {
		words := s.force(p.Pull) + " on the " + p.Rope.String()
		if p.Runs {
			words = s.force(p.Pull) + " back on the " + p.Rope.String()
		}
		return words
	}
	both("pull to fly slowly out", pull(low.Out), pull(high.Out))
	both("pull to fly slowly in", pull(low.In), pull(high.In))
	stays := func(h lineset.Hand) string {
		return s.force(-h.Stays.ArborHeavy) + " / " + s.force(h.Stays.BattenHeavy)
	}
	both("stays if arbor-/batten-heavy", stays(low), stays(high))
}
