package main

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// night is the work, and what is remembered of it while it is read out.
type night struct {
	*lesson.Page
	limit    units.Force
	from, to *lineset.RiggedHouse
	work     lineset.ChangeOver

	steps       int    // read out so far
	loose, rest moment // the furthest out of balance with only the lock to hold it, and resting on the stop
}

// moment is when a set was out of balance, and by how much.
type moment struct {
	by   units.Force
	says string
}

var columns = []lesson.Column{{Width: 3, Right: true}, {Width: 29}, {Width: 34}, {Width: 28}} // number, deck, bridge, then

// readOut is one set: first stripped, then loaded.
func (n *night) readOut(set lineset.SetChange) {
	n.Gap()
	line := strings.ToUpper(set.Name)
	if len(set.Stays) > 0 {
		line += ", where this stays: " + strings.Join(set.Stays, ", ")
	}
	n.Say("%s", line)
	n.Columns(columns, "", "deck", "bridge", "then, at the batten")
	begun := false
	for _, job := range []lineset.Plan{set.Strip, set.Load} {
		for i, state := range job.Check.States {
			switch {
			case i > 0:
				n.step(set.Name, state, state.Plates-job.Check.States[i-1].Plates)
			case !begun && len(job.Order.Steps) > 0: // what has been stripped stands as it is when it is loaded
				n.Columns(columns, "", "as it hangs, at trim "+n.Units.Format(state.Trim), "", n.stands(state))
				n.remember(set.Name+", as it hangs", state)
				begun = true
			}
		}
	}
}

// step is one line of it: who does what.
func (n *night) step(set string, state lineset.OrderState, plates int) {
	n.steps++
	number, call := strconv.Itoa(n.steps), state.Did.Call(n.Units)
	if plates = max(plates, -plates); plates > 0 {
		call += fmt.Sprintf(" and %d plate", plates)
		if plates > 1 {
			call += "s"
		}
	}
	switch state.Did.Act {
	case lineset.HangItem, lineset.StripItem:
		n.Columns(columns, number, call, "", n.stands(state))
	case lineset.AddPieces, lineset.TakePieces:
		n.Columns(columns, number, "", call, n.stands(state))
	default:
		n.Columns(columns, number, "rail: "+call, "", n.stands(state))
	}
	n.remember("step "+number+", "+set, state)
}

// stands says how far out of balance the set is, and whether it rests on the stop.
func (n *night) stands(state lineset.OrderState) string {
	by := n.pull(units.Abs(state.Imbalance))
	if by == n.pull(0) {
		return "balanced"
	}
	heavy := "batten-heavy"
	switch {
	case state.Imbalance < 0:
		heavy = "arbor-heavy"
	case state.Hazard == lineset.RestsOnStop:
		heavy += ", rests"
	}
	return by + " " + heavy
}

// remember keeps the worst.
func (n *night) remember(when string, state lineset.OrderState) {
	worst := &n.loose
	if state.Hazard == lineset.RestsOnStop {
		worst = &n.rest
	}
	if by := units.Abs(state.Imbalance); by > worst.by {
		*worst = moment{by, fmt.Sprintf("%s (%s)", n.pull(by), when)}
	}
}

// sumUp is what the night comes to.
func (n *night) sumUp() {
	n.Gap()
	w := n.work
	if w.Changed == 0 {
		n.Say("Nothing changes: both nights hang alike.")
		return
	}
	var rows [][]string
	for _, p := range w.Pieces {
		rows = append(rows, []string{"of the " + p.Name, strconv.Itoa(p.Out), strconv.Itoa(p.In), strconv.Itoa(p.Most), strconv.Itoa(p.Stock), strconv.Itoa(p.Short())})
	}
	n.Table([]string{"pieces", "out", "in", "in use at most", "there are", "short"}, rows)
	n.Gap()
	text := fmt.Sprintf("%d of %d sets change in %d steps with %d hand-overs between deck and bridge, and the bridge handles %s.",
		w.Changed, len(w.Sets), n.steps, w.HandOvers, n.Units.FormatPlaces(w.Handled, 0))
	if n.loose.by > 0 {
		text += fmt.Sprintf(" The worst that only the lock holds is %s; the limit given is %s.", n.loose.says, n.pull(n.limit))
	}
	if n.rest.by > 0 {
		text += fmt.Sprintf(" The most that rests on the stop is %s: that batten stays where it is until its counterweight is in, or its load off.", n.rest.says)
	}
	if short := n.short(); short != "" {
		text += fmt.Sprintf(" Short at the worst moment are %s: hire them, or strip another set for as long.", short)
	} else {
		text += " The pieces that there are will do."
	}
	n.Say("%s", text)
}

// pull is to the pound, or to ten newtons.
func (n *night) pull(f units.Force) string {
	if n.Units == units.US {
		return n.Units.FormatPlaces(f, 0)
	}
	return n.Units.FormatPlaces(f, 2)
}
