package main

import (
	"errors"

	"example.com/steelyard/purchase/lineset"
)

// orders prints in which order the set is loaded from the bare batten, held against the limit on its out of balance: with
// the batten all the way in, or as far out as the bridges call for.
func (s *sheet) orders(set *lineset.Rigged) {
	limit := set.Set().Rigging.Limits.OutOfBalance
	if limit.Basis == "" {
		return
	}
	s.rule("-")
	s.line("  LOADING ORDER")
	lowest := set.Travel().Lowest
	limits := lineset.OrderLimits{ArborHeavy: limit, BattenHeavy: limit, RestsOnStop: true}
	plan, err := set.Order(lineset.Loading, limits, set.WorkTrims(lowest, lowest)...)
	if none := (*lineset.NoOrderError)(nil); errors.As(err, &none) {
		s.wrap("! ", 2, none.Error())
		return
	}
	if err != nil {
		s.wrap("! ", 2, "no order was looked for: "+err.Error())
		return
	}
	for _, line := range plan.Check.Lines(s.system) {
		s.wrap("  ", 4, line)
	}
}
