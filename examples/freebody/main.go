// Command freebody cuts a line set free, in single purchase beside double: what every rope and block bears, still, moving out and
// moving in.
package main

import (
	"flag"
	"fmt"

	"example.com/steelyard/examples/diagram"
	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func main() { freebody().Main() }

// question is what the flags ask.
type question struct {
	set, single, double, state string
	trim                       units.Length // zero: the set's low trim
}

func freebody() lesson.Lesson {
	var q question
	return lesson.Lesson{
		Name:  "freebody",
		About: "the free-body diagram of a set, single beside double purchase: every rope's tension and every block's load.",
		Draws: true,
		Flags: func(f *flag.FlagSet) {
			q = question{}
			f.StringVar(&q.set, "set", "4 first electric", "the `SET` whose hang is flown on either rigging")
			f.StringVar(&q.single, "single", "single", "the house's `RIGGING` of single purchase")
			f.StringVar(&q.double, "double", "double", "that of double purchase")
			f.StringVar(&q.state, "state", "still", "`still`, out or in: at rest with the lock shut, or flown slowly by hand")
			f.Func("trim", "the `HEIGHT` of the batten above the deck (if not given: the set's low trim)", func(text string) (err error) {
				q.trim, err = units.Parse[units.Length](text)
				return err
			})
		},
		Teach: func(p *lesson.Page) error { return teach(p, q) },
	}
}

func teach(p *lesson.Page, q question) error {
	hung, err := p.Set(q.set)
	if err != nil {
		return err
	}
	way, ok := map[string]purchase.Way{"still": 0, "out": purchase.Out, "in": purchase.In}[q.state]
	if !ok {
		return fmt.Errorf("-state %q: want still, out or in", q.state)
	}
	if q.trim == 0 {
		q.trim = hung.Low().Trim
	}

	// The same hang on either rigging, each with the stack that answers it.
	rig := func(flag, name string) (*lineset.Rigged, error) {
		rigging, err := p.Rigging(flag, name)
		if err != nil {
			return nil, err
		}
		set := hung.Set()
		set.Rigging = rigging
		return set.Rig(p.House.House().Stock)
	}
	single, err := rig("single", q.single)
	if err != nil {
		return err
	}
	double, err := rig("double", q.double)
	if err != nil {
		return err
	}
	a, err := look(single, q.trim, way)
	if err != nil {
		return fmt.Errorf("in single purchase -%w", err)
	}
	b, err := look(double, q.trim, way)
	if err != nil {
		return fmt.Errorf("in double purchase -%w", err)
	}

	says := map[purchase.Way]string{0: "at rest, the rope lock shut", purchase.Out: "flown slowly out by hand", purchase.In: "flown slowly in by hand"}[way]
	p.Title("WHAT HOLDS WHAT UP")
	p.Say("%s, on a single purchase rigging and on a double one, its batten at %s, %s. Cut through every rope: what does each piece pull?", q.set, p.Units.Format(q.trim), says)
	p.Gap()
	rows := [][]string{}
	for i, row := range a {
		rows = append(rows, []string{row.what, lesson.Pull(p.Units, row.force), lesson.Pull(p.Units, b[i].force)})
	}
	p.Table([]string{"", "single", "double"}, rows)
	p.Gap()
	p.Say("The batten asks the same of its lift lines on either rigging, %s. In single purchase they end on the arbor and hold up %s; in double they pass under its sheave, so two parts of each "+
		"hold up %s, and the far parts hand %s to the dead ends at the head beam. So the arbor weighs %s times what it answers, and goes that much less far.",
		lesson.Pull(p.Units, a[0].force), lesson.Pull(p.Units, a[2].force), lesson.Pull(p.Units, b[2].force), lesson.Pull(p.Units, b[4].force), fmt.Sprintf("%.3g", double.Ratio()))

	picture, err := diagram.FreeBody(p.Units, "What holds what up: "+q.set,
		diagram.Cut{Title: "Single", Set: single, Trim: q.trim, Way: way}, diagram.Cut{Title: "Double", Set: double, Trim: q.trim, Way: way})
	if err != nil {
		return err
	}
	p.Draw(picture)
	return nil
}

// figure is one row of the table.
type figure struct {
	what  string
	force units.Force
}

// look adds up what the lift lines, the arbor and the beams bear.
func look(set *lineset.Rigged, trim units.Length, way purchase.Way) ([]figure, error) {
	state, err := set.At(trim)
	if err != nil {
		return nil, err
	}
	lift, load, on := state.Ropes.Lift, state.Ropes.Load, state.Ropes.On
	last := figure{"the rope lock holds", units.Abs(state.Ropes.Lock)}
	if way != 0 {
		run, err := set.Run(trim, way)
		if err != nil {
			return nil, err
		}
		lift, load, on = run.Lift, run.Load, run.On
		last = figure{"the hand pulls", run.Pull}
	}
	var batten, toArbor, dead units.Force
	for i, line := range lift {
		batten += line.Parts[0].TensionFrom
		dead -= load(purchase.DeadEnd(i + 1)).Up
		for k, part := range line.Parts {
			if k > 0 && line.Parts[k-1].To == part.From && part.From == purchase.HeadBlock {
				toArbor += part.TensionTo
			}
		}
	}
	return []figure{
		{"all lift lines, at the batten", batten},
		{"all lift lines, down to the arbor", toArbor},
		{"the arbor weighs", set.Counterweight().Arbor.Weight(units.StandardGravity)},
		{"load on the head block", load(purchase.HeadBlock).Size()},
		{"lift lines' dead ends, together", dead},
		{"head beam, downwards", -on(purchase.HeadBeam).Up},
		last,
	}, nil
}
