// Command feel asks what the hand feels over the travel, in single and in double purchase, and where the stiffness of the double set
// comes from.
package main

import (
	"flag"
	"fmt"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/internal/chart"
	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func main() { feel().Main() }

func feel() lesson.Lesson {
	var name, single, double string
	return lesson.Lesson{
		Name:  "feel",
		About: "what the hand feels over the travel, single against double purchase: pulls, the band at rest, moving and felt mass.",
		Draws: true,
		Flags: func(f *flag.FlagSet) {
			f.StringVar(&name, "set", "4 first electric", "the `SET` whose hang is flown on either rigging")
			f.StringVar(&single, "single", "single", "the house's `RIGGING` of single purchase")
			f.StringVar(&double, "double", "double", "that of double purchase")
		},
		Teach: func(p *lesson.Page) error { return teach(p, name, single, double) },
	}
}

func teach(p *lesson.Page, name, single, double string) error {
	hung, err := p.Set(name)
	if err != nil {
		return err
	}
	house := p.House.House()
	// The same hang on any rigging, balanced by the same stock.
	rig := func(flag, name string, change func(r *lineset.Rigging)) (*lineset.Rigged, error) {
		set, ok := hung.Set(), false
		if set.Rigging, ok = house.Riggings[name]; !ok {
			return nil, fmt.Errorf("-%s %q: want the name of a rigging of the house, as in its file under riggings", flag, name)
		}
		change(&set.Rigging)
		return set.Rig(house.Stock)
	}
	one, err := rig("single", single, func(*lineset.Rigging) {})
	if err != nil {
		return err
	}
	two, err := rig("double", double, func(*lineset.Rigging) {})
	if err != nil {
		return err
	}
	light, err := rig("double", double, func(r *lineset.Rigging) { r.Idler.Mass = one.Set().Rigging.Idler.Mass })
	if err != nil {
		return err
	}
	p.Title("WHAT THE HAND FEELS")
	p.Say("%s hangs once in single and once in double purchase, each balanced as well as whole pieces can. How hard must one pull to fly it slowly out, and in? And why is the double set the stiffer?", name)
	p.Gap()
	if err := pulls(p, one, two); err != nil {
		return err
	}
	p.Gap()
	if err := masses(p, one, two); err != nil {
		return err
	}
	p.Gap()
	if err := why(p, one, two, light); err != nil {
		return err
	}
	return draw(p, one, two)
}

// trims are places over the travel that both sets reach, from low trim to high.
func trims(a, b *lineset.Rigged, n int) (at []units.Length) {
	low, high := max(a.Low().Trim, b.Low().Trim), min(a.High().Trim, b.High().Trim)
	for i := range n {
		at = append(at, low+(high-low).Scale(float64(i)/float64(n-1)))
	}
	return at
}

func pulls(p *lesson.Page, one, two *lineset.Rigged) error {
	var rows [][]string
	for _, trim := range trims(one, two, 5) {
		row := []string{p.Units.FormatPlaces(trim, 1)}
		for _, set := range []*lineset.Rigged{one, two} {
			hand, err := set.Hand(trim)
			if err != nil {
				return err
			}
			row = append(row, lesson.Pull(p.Units, signed(hand.Out)), lesson.Pull(p.Units, signed(hand.In)))
		}
		rows = append(rows, row)
	}
	p.Table([]string{"trim", "single, out", "single, in", "double, out", "double, in"}, rows)
	p.Say("A pull out is on the inner rope, a pull in on the outer one; one below zero holds the set back on the other rope, where it runs that way by itself.")
	return nil
}

func masses(p *lesson.Page, one, two *lineset.Rigged) error {
	var rows [][]string
	for _, set := range []*lineset.Rigged{one, two} {
		felt, err := set.Felt(set.Low().Trim)
		if err != nil {
			return err
		}
		rows = append(rows, []string{set.Set().Rigging.Purchase.String(), p.Units.FormatPlaces(set.Counterweight().Arbor, 0), p.Units.FormatPlaces(felt.Moving, 0),
			p.Units.FormatPlaces(felt.Batten, 0), p.Units.FormatPlaces(set.Set().Rigging.Idler.Mass, 0)})
	}
	p.Table([]string{"purchase", "arbor", "mass that moves", "mass felt at the batten", "idler"}, rows)
	return nil
}

// signed is a pull that drives the set; below zero it holds the set back, which runs that way by itself.
func signed(h lineset.HandPull) units.Force {
	if h.Runs {
		return -h.Pull
	}
	return h.Pull
}

func why(p *lesson.Page, one, two, light *lineset.Rigged) error {
	trim := trims(one, two, 3)[1]
	var rows [][]string
	var efforts []units.Force
	for _, c := range []struct {
		name string
		set  *lineset.Rigged
	}{{"single", one}, {"double", two}, {"double, with the idler of the single", light}} {
		hand, err := c.set.Hand(trim)
		if err != nil {
			return err
		}
		f := (signed(hand.Out) + signed(hand.In)).Scale(0.5) // the mean of both ways: what is out of balance helps the one and hinders the other
		efforts = append(efforts, f)
		rows = append(rows, []string{c.name, lesson.Pull(p.Units, f)})
	}
	p.Table([]string{"at " + p.Units.FormatPlaces(trim, 1), "drag takes of the hand"}, rows)
	p.Gap()
	a, err := one.Felt(trim)
	if err != nil {
		return err
	}
	b, err := two.Felt(trim)
	if err != nil {
		return err
	}
	text := fmt.Sprintf("In double %.0f %% of the single set's mass moves, and %.0f %% of it is felt at the batten, for the arbor goes slower. Drag takes %s of the hand in "+
		"double and %s in single: there are more sheaves, and more counterweight hangs on them. With the idler of the single set it would be %s. ",
		100*units.Ratio(b.Moving, a.Moving), 100*units.Ratio(b.Batten, a.Batten), lesson.Pull(p.Units, efforts[1]), lesson.Pull(p.Units, efforts[0]), lesson.Pull(p.Units, efforts[2]))
	if b.Batten < a.Batten && efforts[1] > efforts[0] {
		text += "So it is drag and not mass that makes the double set the stiffer to start and to stop."
	}
	p.Say("%s", text)
	return nil
}

func draw(p *lesson.Page, one, two *lineset.Rigged) error {
	hands := chart.Chart{Title: "Pull of the hand; below zero it holds back", Y: chart.Axis{Label: "pull, " + p.Units.Symbol(units.Newton), Zero: true}}
	bands := chart.Chart{Title: "Out of balance, and the band within which the set stays", Y: chart.Axis{Label: "batten-heavy, " + p.Units.Symbol(units.Newton), Zero: true},
		X: chart.Axis{Label: "trim, " + p.Units.Symbol(units.Metre)}}
	var last, ends = lineset.Hand{}, []lineset.Hand{}
	for i, set := range []*lineset.Rigged{one, two} {
		name := set.Set().Rigging.Purchase.String()
		pen := []svg.Pen{{Width: 1.2, Colour: svg.Blue}, {Width: 2.4}}[i]
		out, in, balance := chart.Series{Name: name + ", out", Pen: pen}, chart.Series{Name: name + ", in", Pen: pen}, chart.Series{Name: name + ", as it is", Pen: pen}
		in.Pen.Dash = svg.Dashed
		low, high := chart.Series{Name: name + ", runs out", Pen: in.Pen}, chart.Series{Name: name + ", runs in", Pen: in.Pen}
		for _, trim := range trims(one, two, 24) {
			hand, err := set.Hand(trim)
			if err != nil {
				return err
			}
			last = hand
			at := func(f units.Force) svg.Point {
				return svg.Point{X: lesson.Number(p.Units, trim), Y: lesson.Number(p.Units, f)}
			}
			out.Points, in.Points = append(out.Points, at(signed(hand.Out))), append(in.Points, at(signed(hand.In)))
			low.Points, high.Points = append(low.Points, at(hand.Stays.ArborHeavy)), append(high.Points, at(hand.Stays.BattenHeavy))
			balance.Points = append(balance.Points, at(hand.Balance.Imbalance))
		}
		ends = append(ends, last)
		hands.Series = append(hands.Series, out, in)
		bands.Series = append(bands.Series, low, balance, high)
	}
	pic := lesson.Picture(800, 680, "What the hand feels", fmt.Sprintf("Two charts over the trim for the same hang in single and in double purchase. Above: the pulls that fly the batten out and in. "+
		"Below: what is out of balance, and the band within which drag holds the set. At %s it reaches from %s arbor-heavy to %s batten-heavy in single, from %s to %s in double.", p.Units.Format(ends[0].Trim), lesson.Pull(p.Units, -ends[0].Stays.ArborHeavy),
		lesson.Pull(p.Units, ends[0].Stays.BattenHeavy), lesson.Pull(p.Units, -ends[1].Stays.ArborHeavy), lesson.Pull(p.Units, ends[1].Stays.BattenHeavy)))
	for i, c := range []chart.Chart{hands, bands} {
		c.Left, c.Right = 76, 116
		c.Draw(pic, svg.Box{X: 8, Y: 10 + 320*float64(i), W: 784, H: 320})
	}
	p.Draw(pic)
	return nil
}
