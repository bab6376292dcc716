package main

import (
	"fmt"

	"example.com/steelyard/purchase/lineset"
)

// bridges tells what the loaders reach of the stack from each bridge: with the batten all the way in, as it is loaded, and over the
// whole travel.
func (s *sheet) bridges(set *lineset.Rigged) {
	flight, stack, low := set.Flight(), set.Counterweight().Stack, set.Travel().Lowest
	for i, bridge := range set.Set().Rigging.Run.Bridges {
		label := ""
		if i == 0 {
			label = "  LOADERS"
		}
		reach, err := flight.Reach(bridge.Name, low, stack)
		access, accessErr := flight.Access(bridge.Name, stack)
		if err != nil || accessErr != nil {
			continue // a set that was rigged has its bridges, and reaches its lowest trim
		}
		text := fmt.Sprintf("%s at %s: at trim %s ", bridge.Name, s.format(bridge.Floor), s.format(low))
		switch {
		case access.Pieces == 0:
			text += "no pieces to reach"
		case reach.First == 0:
			text += "no piece in reach"
		case reach.First == 1 && reach.Last == access.Pieces:
			text += fmt.Sprintf("all %d pieces in reach", access.Pieces)
		default:
			text += fmt.Sprintf("pieces %d to %d of %d in reach, from the bottom", reach.First, reach.Last, access.Pieces)
		}
		if access.Pieces > 0 {
			switch access.Reached {
			case access.Pieces:
				text += "; over the travel all of them"
			case 0:
				text += "; over the travel none"
			default:
				text += fmt.Sprintf("; over the travel %d of them", access.Reached)
			}
			if access.Passes() {
				text += fmt.Sprintf("; pieces stand above reach up to trim %s", s.format(access.OverAt.High))
			}
		}
		s.wrap(label, entry, text)
	}
}
