// Command runaway asks what forgotten counterweight does: a set is let go with pieces too few in its arbor, or too many, and runs
// to its stop.
package main

import (
	"errors"
	"flag"
	"fmt"
	"slices"

	"example.com/steelyard/arbor"
	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/internal/chart"
	"example.com/steelyard/internal/svg"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func main() { runaway().Main() }

func runaway() lesson.Lesson {
	var name string
	return lesson.Lesson{
		Name:  "runaway",
		About: "what one forgotten piece of counterweight does, and what ten do: how fast a set that nobody holds meets its stop.",
		Draws: true,
		Flags: func(f *flag.FlagSet) { f.StringVar(&name, "set", "4 first electric", "the `SET` that is let go") },
		Teach: func(p *lesson.Page) error { return teach(p, name) },
	}
}

// forgotten is how many pieces are forgotten, each time: no more than there are.
func forgotten(show []arbor.Row) []int {
	return slices.DeleteFunc([]int{0, 1, 2, 5, 10}, func(n int) bool { return n > show[0].Count })
}

func teach(p *lesson.Page, name string) error {
	hung, err := p.Set(name)
	if err != nil {
		return err
	}
	// Where the pieces were left out, or in, does not matter once it is let go: so all of the arbor is in reach.
	described := hung.Set()
	described.Rigging.Run.Bridges = nil
	set, err := described.Rig(p.House.House().Stock)
	if err != nil {
		return err
	}
	show := set.Counterweight().Stack.Show
	if len(show) == 0 {
		return fmt.Errorf("-set %q: want a set with show weight that can be forgotten", name)
	}
	p.Title("WHAT FORGOTTEN PIECES DO")
	p.Say("%s is balanced as well as it can be. But pieces of %s were forgotten: too few went into the arbor, or too many stayed in. Somebody opens the rope lock, and nobody holds the rope.", name, p.Units.Format(show[0].Mass))
	p.Gap()
	p.Say("Too few, let go at its high trim, %s; the batten's lower stop is at %s.", p.Units.Format(set.High().Trim), p.Units.Format(set.Travel().Lowest))
	few, err := table(p, set, set.High().Trim, "too few", "batten-heavy", 1, tooFew)
	if err != nil {
		return err
	}
	p.Gap()
	p.Say("Too many, let go at its low trim, %s; the batten's upper stop is at %s.", p.Units.Format(set.Low().Trim), p.Units.Format(set.Travel().Highest))
	if _, err := table(p, set, set.Low().Trim, "too many", "arbor-heavy", -1, tooMany); err != nil {
		return err
	}
	note := "Below zero the other side is the heavier. Speed and energy are those at the stop. Fall of: from how high a thing must fall to be as fast. Held by: the pull that would have kept it from starting, and the rope that it would be on"
	if one := set.Set().Rigging.Limits.HandPull; one.Max > 0 {
		note += "; the limit given for one person is " + lesson.Pull(p.Units, one.Max)
	}
	note += ". Once it runs, no hand holds it."
	if slices.ContainsFunc(set.Set().Hang, func(i load.Item) bool { return i.OnDeck != load.Hangs }) {
		note += " What is carried where the set is let go counts as carried all the way: with goods that pile or stand on the deck it runs less hard than this says, and may stop by itself."
	}
	p.Say("%s", note)
	p.Gap()
	p.Say("%s", inWords(p, set, few))
	return draw(p, set, few)
}

// tooFew is the order that takes so many of the heaviest pieces out: those on top of them first, which then go back.
func tooFew(show []arbor.Row, n int) (steps []lineset.OrderStep) {
	for _, row := range slices.Backward(show[1:]) {
		steps = append(steps, lineset.OrderStep{Act: lineset.TakePieces, Piece: row.Name, Count: row.Count})
	}
	steps = append(steps, lineset.OrderStep{Act: lineset.TakePieces, Piece: show[0].Name, Count: n})
	for _, row := range show[1:] {
		steps = append(steps, lineset.OrderStep{Act: lineset.AddPieces, Piece: row.Name, Count: row.Count})
	}
	return steps
}

func tooMany(show []arbor.Row, n int) []lineset.OrderStep {
	return []lineset.OrderStep{{Act: lineset.AddPieces, Piece: show[0].Name, Count: n}}
}

// mistake is what was done with so many pieces of a show weight.
type mistake func(show []arbor.Row, n int) []lineset.OrderStep

// letGo is the set at a trim, as it should be but for a mistake, and nobody holds it.
func letGo(set *lineset.Rigged, trim units.Length, made mistake, n int) (run purchase.Runaway, out units.Force, err error) {
	order := lineset.Order{From: lineset.FromLoaded, Trim: trim}
	if n > 0 {
		order.Steps = made(set.Counterweight().Stack.Show, n)
	}
	check, err := set.CheckOrder(order, lineset.OrderLimits{})
	if err != nil {
		return run, 0, err
	}
	run, err = set.LetGoAfter(order)
	return run, check.States[len(check.States)-1].Imbalance, err
}

// table counts the out of balance positive on the side that is named.
func table(p *lesson.Page, set *lineset.Rigged, trim units.Length, pieces, side string, sign float64, made mistake) (runs []purchase.Runaway, err error) {
	var rows [][]string
	for _, n := range forgotten(set.Counterweight().Stack.Show) {
		run, out, err := letGo(set, trim, made, n)
		if errors.Is(err, units.ErrOutOfRange) {
			rows = append(rows, []string{fmt.Sprint(n), "no room or pieces"})
			continue
		} else if err != nil {
			return nil, err
		}
		runs = append(runs, run)
		row := []string{fmt.Sprint(n), lesson.Pull(p.Units, out.Scale(sign)), "no"}
		if run.Way != 0 {
			row = append(row[:2], run.Way.String(), p.Units.FormatPlaces(run.Time, 1), "rests", "", "", lesson.Pull(p.Units, run.Held.Pull)+", "+run.Held.Rope.String())
		}
		if run.AtStop {
			row[4], row[5], row[6] = p.Units.FormatPlaces(run.Speed, 1), p.Units.FormatPlaces(run.Energy, 0), p.Units.FormatPlaces(run.Drop, 1)
		}
		rows = append(rows, row)
	}
	p.Table([]string{pieces, side, "runs", "time", "speed", "energy", "fall of", "held by"}, rows)
	return runs, nil
}

// inWords is what the tables say, and what drag has to do with it.
func inWords(p *lesson.Page, set *lineset.Rigged, few []purchase.Runaway) (text string) {
	counts, most := forgotten(set.Counterweight().Stack.Show), few[len(few)-1]
	if most.AtStop {
		text = fmt.Sprintf("With %d too few the set meets its stop after %s, as fast as something that fell %s, and all that moves then has %s in it, which nobody takes up with their hands. ",
			counts[len(counts)-1], p.Units.FormatPlaces(most.Time, 1), p.Units.FormatPlaces(most.Drop, 1), p.Units.FormatPlaces(most.Energy, 0))
	}
	if hand, err := set.Hand(set.High().Trim); err == nil && !hand.Loose {
		text += fmt.Sprintf("Drag alone holds this set while it is between %s arbor-heavy and %s batten-heavy: within that a mistake shows in nothing but the feel of the ropes. ",
			lesson.Pull(p.Units, -hand.Stays.ArborHeavy), lesson.Pull(p.Units, hand.Stays.BattenHeavy))
	}
	return text + "So feel for an odd tension before the lock is opened, and count the pieces. Nobody stops a set that runs: keep hands off the rope, and people out from under."
}

// draw shows speed and energy at the stop against how far the batten comes in, where it does.
func draw(p *lesson.Page, set *lineset.Rigged, few []purchase.Runaway) error {
	const steps = 48
	lowest, high, show := set.Travel().Lowest, set.High().Trim, set.Counterweight().Stack.Show
	speeds := chart.Chart{Title: "Speed at the stop", Y: chart.Axis{Label: "speed, " + p.Units.Symbol(few[0].Speed), Zero: true}}
	energies := chart.Chart{Title: "Energy of all that moves, at the stop", Y: chart.Axis{Label: "energy, " + p.Units.Symbol(few[0].Energy), Zero: true}}
	energies.X.Label = "how far the batten comes in, " + p.Units.Symbol(high)
	pens := []svg.Pen{{Width: 1.6}, {Width: 1.6, Dash: svg.Dotted}, {Width: 1.6, Dash: svg.DashDot}, {Width: 1.6, Dash: svg.Dashed, Colour: svg.Blue}, {Width: 2.2, Colour: svg.Red}}
	desc := fmt.Sprintf("Two charts over how far the batten of %s comes in when it is let go with pieces of counterweight too few. Speed and energy at the stop grow with both.", set.Set().Name)
	for i, n := range forgotten(show) {
		v := chart.Series{Name: fmt.Sprintf("%d too few", n), Pen: pens[i]}
		e := v
		for k := range steps + 1 {
			way := (high - lowest).Scale(float64(k*k) / (steps * steps)) // closer together where the speed rises the steepest
			run, _, err := letGo(set, lowest+way, tooFew, n)
			if err != nil {
				return err
			}
			if run.Way == purchase.In && run.AtStop {
				x := lesson.Number(p.Units, way)
				v.Points, e.Points = append(v.Points, svg.Point{X: x, Y: lesson.Number(p.Units, run.Speed)}), append(e.Points, svg.Point{X: x, Y: lesson.Number(p.Units, run.Energy)})
			}
		}
		if len(v.Points) < 2 {
			continue // drag holds it wherever it is let go
		}
		if end := len(v.Points) - 1; i >= len(few) || few[i].Way != purchase.In { // from its high trim it does not come in
			v.Name, e.Name = "", ""
			note := chart.Note{At: v.Points[end], Text: fmt.Sprintf("%d too few: higher up it stays", n)}
			if v.Points[end].X > 0.75*lesson.Number(p.Units, high-lowest) {
				note.Anchor = svg.End
			}
			speeds.Notes = append(speeds.Notes, note)
		} else {
			desc = fmt.Sprintf("%s With %d too few it comes in from %s to meet the stop at %s with %s.", desc, n, p.Units.Format(high), p.Units.FormatPlaces(few[i].Speed, 1), p.Units.FormatPlaces(few[i].Energy, 0))
		}
		speeds.Series, energies.Series = append(speeds.Series, v), append(energies.Series, e)
	}
	pic := lesson.Picture(760, 660, "What forgotten pieces do", desc)
	for i, c := range []chart.Chart{speeds, energies} {
		c.Left, c.Right, c.X.To = 76, 84, lesson.Number(p.Units, high-lowest)
		c.Draw(pic, svg.Box{X: 8, Y: 10 + 310*float64(i), W: 744, H: 310})
	}
	p.Draw(pic)
	return nil
}
