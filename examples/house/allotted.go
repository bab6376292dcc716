package main

import (
	"fmt"
	"slices"
	"strings"

	"example.com/steelyard/purchase/lineset"
)

// allotted says, where the sets want more pieces than there are, how far the stock goes if it is shared out, and what to
// hire.
func (s *sheet) allotted(house *lineset.RiggedHouse, t lineset.Totals) {
	if !slices.ContainsFunc(t.Pieces, func(c lineset.PieceCount) bool { return c.Short() > 0 }) {
		return
	}
	a, err := house.Allot()
	if err != nil {
		s.wrap("! ", 2, "the stock cannot be shared out: "+err.Error())
		return
	}
	much := fmt.Sprintf("shared out, the stock leaves the worst set %s out of balance at the batten", s.weight(a.Worst))
	switch {
	case a.Proven:
		much += ", and no other way to share it leaves less"
	case a.LeastWorst > 0:
		much += fmt.Sprintf("; no way to share it leaves less than %s", s.weight(a.LeastWorst))
	}
	s.wrap("  ", 2, much)
	if len(a.Hire) == 0 {
		s.wrap("  ", 2, "shared out so, every set is as near balance as with its own stack")
		return
	}
	var hire []string
	for _, h := range a.Hire {
		hire = append(hire, fmt.Sprintf("%d more of the %s", h.Count, clip(h.Name, 20)))
	}
	s.wrap("! ", 2, strings.Join(hire, " and ")+" would bring every set as near balance as with its own stack")
}
