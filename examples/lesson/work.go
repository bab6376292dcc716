package lesson

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// Work reads out what is done at one set between two shows, first stripped and then loaded: the deck to the left, the loading bridge
// beside it, and how the set then stands. Steps are numbered on from first; it gives the number that comes next. Each state is
// shown to see, with when it is.
func (p *Page) Work(set lineset.SetChange, first int, see func(when string, state lineset.OrderState)) (next int) {
	columns := []Column{{Width: 3, Right: true}, {Width: 29}, {Width: 34}, {Width: 28}} // number, deck, bridge, then
	title := strings.ToUpper(set.Name)
	if len(set.Stays) > 0 {
		title += ", where this stays: " + strings.Join(set.Stays, ", ")
	}
	p.Say("%s", title)
	p.Columns(columns, "", "deck", "bridge", "then, at the batten")
	next = first
	for _, job := range []lineset.Plan{set.Strip, set.Load} {
		for i, state := range job.Check.States {
			switch {
			case i > 0:
				number, deck, at := strconv.Itoa(next), p.does(state, state.Plates-job.Check.States[i-1].Plates), ""
				if act := state.Did.Act; act == lineset.AddPieces || act == lineset.TakePieces {
					deck, at = "", deck
				}
				p.Columns(columns, number, deck, at, p.stands(state))
				see("step "+number+", "+set.Name, state)
				next++
			case next == first && len(job.Order.Steps) > 0: // what has been stripped stands as it is when it is loaded
				p.Columns(columns, "", "as it hangs, at trim "+p.Units.Format(state.Trim), "", p.stands(state))
				see(set.Name+", as it hangs", state)
			}
		}
	}
	return next
}

// does is the step as it is called, with the spreader plates that move.
func (p *Page) does(state lineset.OrderState, plates int) string {
	call := state.Did.Call(p.Units)
	switch plates = max(plates, -plates); {
	case plates == 1:
		call += " and 1 plate"
	case plates > 1:
		call += fmt.Sprintf(" and %d plates", plates)
	}
	switch state.Did.Act {
	case lineset.HangItem, lineset.StripItem, lineset.AddPieces, lineset.TakePieces:
		return call
	}
	return "rail: " + call
}

// stands says how far out of balance the set is, and whether it rests on the stop.
func (p *Page) stands(state lineset.OrderState) string {
	by := Pull(p.Units, units.Abs(state.Imbalance))
	switch {
	case by == Pull(p.Units, 0):
		return "balanced"
	case state.Imbalance < 0:
		return by + " arbor-heavy"
	case state.Hazard == lineset.RestsOnStop:
		return by + " batten-heavy, rests"
	}
	return by + " batten-heavy"
}
