package lineset

import (
	"strconv"

	"example.com/steelyard/units"
)

// Lines is the order as it is read out, one line for each step: who does what, and how the set then stands.
//
//	deck: hang border, then 71 lbf batten-heavy: rests on the stop
//	bridge: add 3 of the 23.5 with 1 spreader plate, then balanced
//
// Last lines tell what still rests on the deck at the end, and what rests on the stop and would exceed off it, where
// anything does.
func (c OrderCheck) Lines(sys units.System) []string {
	var out []string
	for i, s := range c.States {
		line := "begin at " + sys.Format(s.Trim)
		if i > 0 {
			line = s.Did.Act.by() + ": " + s.Did.Call(sys) + callPlates(s.Plates-c.States[i-1].Plates) + ", then"
		}
		line += " " + standing(s, sys) + besides(s, sys)
		switch {
		case s.Tips:
			line += "; the batten tips"
		case s.Balance.Verdict == Exceeds:
			line += "; exceeds the limit given"
		}
		if s.Capacity.Verdict == Exceeds {
			line += "; " + sys.Format(s.Capacity.Demand) + " of counterweight exceeds the capacity of the arbor, " + sys.Format(s.Capacity.Limit)
		}
		if s.Room.Verdict == Exceeds {
			line += "; a stack of " + sys.Format(s.Room.Demand) + " exceeds the room on the rods, " + sys.Format(s.Room.Limit)
		}
		if s.Balance.Verdict == NoLimit && s.Balance.Basis == "" && s.Imbalance != 0 {
			line += "; no limit given"
		}
		out = append(out, line)
	}
	if c.OnDeck > 0 {
		out = append(out, sys.Format(c.OnDeck)+" still rests on the deck: it comes onto the lines as the batten flies out")
	}
	if c.OffStop.Verdict == Exceeds {
		out = append(out, "as it leaves the stop it is "+sys.Format(c.OffStop.Demand)+" "+RunsIn.String()+"; exceeds the limit given")
	}
	return out
}

// standing says how the set stands.
func standing(s OrderState, sys units.System) string {
	if s.Imbalance == 0 {
		return s.Hazard.String()
	}
	text := sys.Format(units.Abs(s.Imbalance)) + " "
	if s.Hazard == HeldByLine {
		return text + heavy(s.Imbalance) + ": " + s.Hazard.String() + " with " + sys.Format(s.Held)
	}
	return text + s.Hazard.String()
}

// besides says how the set stands where it is at its worst, if that is not as it stands: on the way of a flight, where that exceeds,
// and beside a halt, where a standing piece leaves the deck.
func besides(s OrderState, sys units.System) string {
	demand, ok := s.Balance.Demand.(units.Force)
	asItStands := s.Balance.Where == s.Hazard.String() && demand.Within(units.Abs(s.Imbalance), demand.Scale(1e-9))
	if !ok || s.Hazard == HeldByLine || asItStands {
		return ""
	}
	text := sys.Format(demand) + " " + s.Balance.Where
	switch at := s.Balance.Trim; {
	case at.Within(s.Trim, hair):
		return "; a hair higher " + text
	case at.Within(s.Trim, sway):
		return "; if it sways to " + sys.Format(at) + ", " + text
	case s.Balance.Verdict == Exceeds:
		return "; on the way, at " + sys.Format(at) + ", " + text
	}
	return ""
}

// by says who does it.
func (a Act) by() string {
	switch a.crew() {
	case deck:
		return "deck"
	case bridge:
		return "bridge"
	}
	return "rail"
}

// callPlates says how many spreader plates go in or come out with the pieces.
func callPlates(n int) string {
	switch n = max(n, -n); n {
	case 0:
		return ""
	case 1:
		return " with 1 spreader plate"
	}
	return " with " + strconv.Itoa(n) + " spreader plates"
}
