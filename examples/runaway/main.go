// Command runaway asks what forgotten counterweight does: a set is let go with pieces too few in its arbor, or too many, and runs
// to its stop.
package main

import (
	"flag"
	"fmt"
	"slices"

	"example.com/steelyard/arbor"
	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/internal/chart"
	"example.com/steelyard/internal/svg"
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
func forgotten(show []arbor.Row) (counts []int) {
	for _, n := range []int{1, 2, 5, 10} {
		if len(show) > 0 && n <= show[0].Count {
			counts = append(counts, n)
		}
	}
	return counts
}

func teach(p *lesson.Page, name string) error {
	set, err := p.Set(name)
	if err != nil {
		return err
	}
	show := set.Counterweight().Stack.Show
	if len(show) == 0 {
		return fmt.Errorf("-set %q: want a set with show weight that can be forgotten", name)
	}
	high, low := set.High().Trim, set.Low().Trim
	p.Title("WHAT FORGOTTEN PIECES DO")
	p.Say("%s is in balance as it should be. But pieces of %s were forgotten: too few went into the arbor, or too many stayed in. "+
		"Somebody opens the rope lock, and nobody holds the rope.", name, p.Units.Format(show[0].Mass))

	p.Gap()
	p.Say("Too few, let go at its high trim, %s: the batten comes in, to the stop at %s.", p.Units.Format(high), p.Units.Format(set.Travel().Lowest))
	few, err := table(p, set, high, tooFew)
	if err != nil {
		return err
	}
	p.Gap()
	p.Say("Too many, let go at its low trim, %s: the batten goes out, to the stop at %s.", p.Units.Format(low), p.Units.Format(set.Travel().Highest))
	if _, err := table(p, set, low, tooMany); err != nil {
		return err
	}
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

// letGo is the set as it should be with a mistake made, where arms reach the arbor, then flown to a trim and let go.
func letGo(set *lineset.Rigged, trim units.Length, steps []lineset.OrderStep) (run purchase.Runaway, out units.Force, err error) {
	fly := []lineset.OrderStep{{Act: lineset.UnlockRope}, {Act: lineset.FlyTo, Trim: trim}}
	order := lineset.Order{From: lineset.FromLoaded, Trim: set.Travel().Lowest, Steps: append(steps, fly...)}
	check, err := set.CheckOrder(order, lineset.OrderLimits{})
	if err != nil {
		return run, 0, err
	}
	run, err = set.LetGoAfter(order)
	return run, check.States[len(check.States)-1].Imbalance, err
}

func table(p *lesson.Page, set *lineset.Rigged, trim units.Length, mistake func([]arbor.Row, int) []lineset.OrderStep) (runs []purchase.Runaway, err error) {
	var rows [][]string
	for _, n := range forgotten(set.Counterweight().Stack.Show) {
		run, out, err := letGo(set, trim, mistake(set.Counterweight().Stack.Show, n))
		if err != nil {
			return nil, err
		}
		runs = append(runs, run)
		row := []string{fmt.Sprint(n), lesson.Pull(p.Units, units.Abs(out)), "", "", "", "", "drag holds it"}
		if run.Way != 0 {
			row = []string{row[0], row[1], p.Units.FormatPlaces(run.Time, 1), p.Units.FormatPlaces(run.Speed, 1), p.Units.FormatPlaces(run.Energy, 0),
				p.Units.FormatPlaces(run.Drop, 1), lesson.Pull(p.Units, run.Held.Pull) + ", " + run.Held.Rope.String()}
		}
		rows = append(rows, row)
	}
	p.Table([]string{"pieces", "out of balance", "time", "speed", "energy", "as a fall of", "what would hold it"}, rows)
	return runs, nil
}

// inWords is what the tables say, and what drag has to do with it.
func inWords(p *lesson.Page, set *lineset.Rigged, few []purchase.Runaway) string {
	counts := forgotten(set.Counterweight().Stack.Show)
	most, text := few[len(few)-1], "Drag holds all of them. "
	if most.Way != 0 {
		text = fmt.Sprintf("With %d too few the set meets its stop after %s, as fast as something that fell %s, and all that moves then has %s in it: more than anybody's hands "+
			"can take up. ", counts[len(counts)-1], p.Units.FormatPlaces(most.Time, 1), p.Units.FormatPlaces(most.Drop, 1), p.Units.FormatPlaces(most.Energy, 0))
	}
	if hand, err := set.Hand(most.From); err == nil && !hand.Loose {
		text += fmt.Sprintf("Drag holds this set while it is between %s arbor-heavy and %s batten-heavy: within that a mistake shows in nothing but the feel of the ropes. ",
			lesson.Pull(p.Units, -hand.Stays.ArborHeavy), lesson.Pull(p.Units, hand.Stays.BattenHeavy))
	}
	return text + "So feel for an odd tension before the lock is opened, and count the pieces. Nobody stops a set that runs: keep hands off the rope, and people out from under."
}

// draw shows speed and energy at the stop against how far the batten comes in.
func draw(p *lesson.Page, set *lineset.Rigged, few []purchase.Runaway) error {
	const steps = 96
	lowest, high := set.Travel().Lowest, set.High().Trim
	speeds := chart.Chart{Title: "Speed at the stop", Y: chart.Axis{Label: "speed, " + p.Units.Symbol(few[0].Speed), Zero: true}}
	energies := chart.Chart{Title: "Energy of all that moves, at the stop", Y: chart.Axis{Label: "energy, " + p.Units.Symbol(few[0].Energy), Zero: true},
		X: chart.Axis{Label: "how far the batten comes in, " + p.Units.Symbol(high)}}
	pens := []svg.Pen{{Width: 1.6, Dash: svg.Dotted}, {Width: 1.6, Dash: svg.DashDot}, {Width: 1.6, Dash: svg.Dashed, Colour: svg.Blue}, {Width: 2.2, Colour: svg.Red}}
	for i, n := range forgotten(set.Counterweight().Stack.Show) {
		v := chart.Series{Name: fmt.Sprintf("%d too few", n), Pen: pens[i]}
		e, runs := v, false
		for k := range steps + 1 {
			way := (high - lowest).Scale(float64(k) / steps)
			run, _, err := letGo(set, lowest+way, tooFew(set.Counterweight().Stack.Show, n))
			if err != nil {
				return err
			}
			v.Points = append(v.Points, svg.Point{X: lesson.Number(p.Units, way), Y: lesson.Number(p.Units, run.Speed)})
			e.Points = append(e.Points, svg.Point{X: lesson.Number(p.Units, way), Y: lesson.Number(p.Units, run.Energy)})
			runs = runs || run.Way != 0
		}
		if !runs {
			continue // drag holds it wherever it is let go
		}
		speeds.Series, energies.Series = append(speeds.Series, v), append(energies.Series, e)
	}
	ten := few[len(few)-1]
	pic := lesson.Picture(760, 660, "What forgotten pieces do", fmt.Sprintf("Two charts over how far the batten of %s comes in when it is let go, with a few pieces of counterweight too few. "+
		"Speed and energy at the stop grow with both. From %s high, the most of them meet the stop at %s with %s.", set.Set().Name,
		p.Units.Format(high), p.Units.FormatPlaces(ten.Speed, 1), p.Units.FormatPlaces(ten.Energy, 0)))
	for i, c := range []chart.Chart{speeds, energies} {
		c.Left, c.Right, c.X.To = 76, 84, lesson.Number(p.Units, high-lowest)
		c.Draw(pic, svg.Box{X: 8, Y: 10 + 310*float64(i), W: 744, H: 310})
	}
	p.Draw(pic)
	return nil
}
