// Command feel asks what the hand feels over the travel, in single and in double purchase, and where the stiffness of the double set
// comes from.
package main

import (
	"flag"
	"fmt"
	"strings"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/internal/chart"
	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase"
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
	riggings := [2]lineset.Rigging{}
	for i, flag := range []struct{ kind, name string }{{"single", single}, {"double", double}} {
		if riggings[i], err = p.Rigging(flag.kind, flag.name); err != nil {
			return err
		}
	}
	// The same hang on any rigging, balanced from the same stock.
	rig := func(r lineset.Rigging) (*lineset.Rigged, error) {
		set := hung.Set()
		set.Rigging = r
		return set.Rig(p.House.House().Stock)
	}
	one, err := rig(riggings[0])
	if err != nil {
		return err
	}
	two, err := rig(riggings[1])
	if err != nil {
		return err
	}
	riggings[1].Idler = lineset.Idler{Height: riggings[1].Idler.Height, Mass: riggings[0].Idler.Mass, Base: riggings[0].Idler.Base}
	light, err := rig(riggings[1])
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

// hand is what the hands feel at a trim, while the hand line is tight.
func hand(set *lineset.Rigged, trim units.Length) (lineset.Hand, error) {
	h, err := set.Hand(trim)
	if err == nil && (h.Loose || h.Out.Loose || h.In.Loose) {
		err = fmt.Errorf("in %s purchase the hand line would go slack; want an idler that keeps it tight", set.Set().Rigging.Purchase)
	}
	return h, err
}

// signed is a pull that drives the set; below zero it holds the set back, which runs that way by itself.
func signed(h lineset.HandPull) units.Force {
	if h.Runs {
		return -h.Pull
	}
	return h.Pull
}

func pulls(p *lesson.Page, one, two *lineset.Rigged) error {
	var rows [][]string
	for _, trim := range trims(one, two, 5) {
		row := []string{p.Units.FormatPlaces(trim, 1)}
		for _, set := range []*lineset.Rigged{one, two} {
			h, err := hand(set, trim)
			if err != nil {
				return err
			}
			row = append(row, lesson.Pull(p.Units, signed(h.Out)), lesson.Pull(p.Units, signed(h.In)))
		}
		rows = append(rows, row)
	}
	p.Table([]string{"trim", "single, out", "single, in", "double, out", "double, in"}, rows)
	p.Say("A pull out is on the inner rope, a pull in on the outer one; one below zero holds the set back on the other rope, where it runs that way by itself.")
	return nil
}

// why holds mass against drag, halfway up. Of the pulls out and in it takes the mean: what is out of balance helps the one and
// hinders the other.
func why(p *lesson.Page, one, two, light *lineset.Rigged) error {
	trim := trims(one, two, 3)[1]
	var rows [][]string
	var drag [3]units.Force
	var felt [3]purchase.Felt
	for i, set := range []*lineset.Rigged{one, two, light} {
		h, err := hand(set, trim)
		if err != nil {
			return err
		}
		if felt[i], err = set.Felt(trim); err != nil {
			return err
		}
		drag[i] = (signed(h.Out) + signed(h.In)).Scale(0.5)
		row := []string{[]string{"single", "double", "double, idler of the single"}[i], p.Units.FormatPlaces(felt[i].Moving, 0), p.Units.FormatPlaces(felt[i].Batten, 0)}
		rows = append(rows, append(row, lesson.Pull(p.Units, drag[i]), lesson.Pull(p.Units, -h.Stays.ArborHeavy), lesson.Pull(p.Units, h.Stays.BattenHeavy)))
	}
	p.Table([]string{"at " + p.Units.FormatPlaces(trim, 1), "moves", "felt", "hand for drag", "stays arbor-heavy", "batten-heavy"}, rows)
	p.Say("Felt: at the batten. Hand for drag: the mean of the pulls out and in. Stays: how far out of balance it may be and yet rest by itself, lock open and no hand on a rope.")
	p.Gap()
	text := fmt.Sprintf("In double purchase %s move in place of %s; but the arbor goes slower than the batten, and what is felt at the batten is %s in place of %s. Drag takes %s of the hand in place of %s. "+
		"With the idler of the single set it would be %s. ", p.Units.FormatPlaces(felt[1].Moving, 0), p.Units.FormatPlaces(felt[0].Moving, 0), p.Units.FormatPlaces(felt[1].Batten, 0),
		p.Units.FormatPlaces(felt[0].Batten, 0), lesson.Pull(p.Units, drag[1]), lesson.Pull(p.Units, drag[0]), lesson.Pull(p.Units, drag[2]))
	if felt[1].Batten < felt[0].Batten && drag[1] > drag[0] {
		text += fmt.Sprintf("So it is not mass that makes the double set the stiffer to start and to stop, but drag: in its extra sheaves, under an arbor of %s in place of %s",
			p.Units.FormatPlaces(two.Counterweight().Arbor, 0), p.Units.FormatPlaces(one.Counterweight().Arbor, 0))
		if drag[2] < drag[1] {
			text += ", and in those over which its heavier idler keeps the hand line tighter"
		}
		text += "."
	}
	p.Say("%s", text)
	return nil
}

func draw(p *lesson.Page, one, two *lineset.Rigged) error {
	hands := chart.Chart{Title: "Pull of the hand; below zero it holds back", Y: chart.Axis{Label: "pull, " + p.Units.Symbol(units.Newton), Zero: true}}
	bands := chart.Chart{Title: "Out of balance, and the band within which the set stays", Y: chart.Axis{Label: "batten-heavy, " + p.Units.Symbol(units.Newton), Zero: true}}
	bands.X.Label = "trim, " + p.Units.Symbol(units.Metre)
	var desc strings.Builder
	desc.WriteString("Two charts over the trim for the same hang in single and in double purchase: the pulls that fly the batten out and in, and what is out of balance within the band in which drag holds the set.")
	for i, set := range []*lineset.Rigged{one, two} {
		name := set.Set().Rigging.Purchase.String()
		pen := []svg.Pen{{Width: 1.2, Colour: svg.Blue}, {Width: 2.4}}[i]
		out, in, balance := chart.Series{Name: name + ", out", Pen: pen}, chart.Series{Name: name + ", in", Pen: pen}, chart.Series{Name: name + ", as it is", Pen: pen}
		in.Pen.Dash = svg.Dashed
		low, high := chart.Series{Name: name + ", runs out", Pen: in.Pen}, chart.Series{Name: name + ", runs in", Pen: in.Pen}
		const last = 23
		for k, trim := range trims(one, two, last+1) {
			h, err := hand(set, trim)
			if err != nil {
				return err
			}
			at := func(f units.Force) svg.Point {
				return svg.Point{X: lesson.Number(p.Units, trim), Y: lesson.Number(p.Units, f)}
			}
			out.Points, in.Points = append(out.Points, at(signed(h.Out))), append(in.Points, at(signed(h.In)))
			low.Points, high.Points = append(low.Points, at(h.Stays.ArborHeavy)), append(high.Points, at(h.Stays.BattenHeavy))
			balance.Points = append(balance.Points, at(h.Balance.Imbalance))
			if k == 0 || k == last {
				desc.WriteString(fmt.Sprintf(" In %s purchase, at %s: out %s, in %s; it stays from %s arbor-heavy to %s batten-heavy.", name, p.Units.FormatPlaces(trim, 1), lesson.Pull(p.Units, signed(h.Out)),
					lesson.Pull(p.Units, signed(h.In)), lesson.Pull(p.Units, -h.Stays.ArborHeavy), lesson.Pull(p.Units, h.Stays.BattenHeavy)))
			}
		}
		hands.Series = append(hands.Series, out, in)
		bands.Series = append(bands.Series, low, balance, high)
	}
	pic := lesson.Picture(800, 680, "What the hand feels", desc.String())
	for i, c := range []chart.Chart{hands, bands} {
		c.Left, c.Right = 76, 116
		c.Draw(pic, svg.Box{X: 8, Y: 10 + 320*float64(i), W: 784, H: 320})
	}
	p.Draw(pic)
	return nil
}
