package main

import (
	"fmt"
	"math"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/internal/chart"
	"example.com/steelyard/internal/svg"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// Where things stand in the picture.
const (
	wide, left, right = 900.0, 84.0, 60.0
	pipe              = 206.0 // the height of the batten
	tallest           = 112.0 // arrow
	row               = 21.0  // of what hangs
)

// picture is the batten freed from its ropes, with what pulls on it, over the shear and the moment in it.
func (s sheet) picture(batten load.Batten) *svg.Picture {
	foot := pipe + 26 + row*float64(len(s.even.hangs))
	then := fmt.Sprintf("line %d, %s", s.line, s.long)
	pic := lesson.Picture(wide, foot+446, "How lift lines share a batten", s.desc(then))
	x := func(l units.Length) float64 { return left + (wide-left-right)*units.Ratio(l, batten.Length) }

	// The key: every line and arrow of the picture is one or the other.
	evenPen, offPen := svg.Pen{Width: 1.6}, svg.Pen{Width: 1.6, Dash: "6 3", Colour: svg.Blue}
	pic.Text(svg.Point{X: left, Y: 26}, "Tension in the lift lines", svg.Letter{Size: 13, Bold: true})
	pic.Line(svg.Point{X: 308, Y: 22}, svg.Point{X: 348, Y: 22}, evenPen)
	pic.Text(svg.Point{X: 356, Y: 26}, "all lines even", svg.Letter{})
	pic.Line(svg.Point{X: 476, Y: 22}, svg.Point{X: 516, Y: 22}, offPen)
	pic.Text(svg.Point{X: 524, Y: 26}, then, svg.Letter{})

	// Arrows as long as the tensions, in pairs: lines even, and one off.
	_, a := s.even.Worst()
	_, b := s.off.Worst()
	most := max(a.Tension, b.Tension)
	scale := round(number(s.Units, most) / 2)
	length := tallest * scale / number(s.Units, most)
	pic.Arrow(svg.Point{X: 720, Y: 22}, svg.Point{X: 720 + length, Y: 22}, svg.Pen{})
	pic.Text(svg.Point{X: 728 + length, Y: 26}, fmt.Sprintf("is %g %s", scale, s.Units.Symbol(most)), svg.Letter{})
	for i, line := range s.even.Lines {
		at := x(line.At)
		for _, a := range []struct {
			tension units.Force
			shift   float64
			anchor  svg.Anchor
			pen     svg.Pen
		}{{line.Tension, -6, svg.End, evenPen}, {s.off.Lines[i].Tension, 6, svg.Start, offPen}} {
			tip := pipe - 3 - tallest*units.Ratio(a.tension, most)
			pic.Arrow(svg.Point{X: at + a.shift, Y: pipe - 3}, svg.Point{X: at + a.shift, Y: tip}, a.pen)
			pic.Text(svg.Point{X: at + 2*a.shift, Y: min(tip+11, pipe-8)}, s.pull(a.tension), svg.Letter{Size: 11, Anchor: a.anchor})
		}
		pic.Text(svg.Point{X: at, Y: 62}, fmt.Sprint("line ", i+1), svg.Letter{Anchor: svg.Middle, Bold: i == s.line-1})
	}
	pic.Line(svg.Point{X: x(0), Y: pipe}, svg.Point{X: x(batten.Length), Y: pipe}, svg.Pen{Width: 5})
	s.hung(pic, x)

	// Shear and moment under it, over the same places.
	shear, moment, span := s.Units.Symbol(s.even.Weight), s.Units.Symbol(s.even.Sagging.Moment), s.Units.Symbol(batten.Length)
	for i, c := range []struct {
		title, label string
		values       func(c load.Cut) []float64 // as many as there are at the place
	}{
		{"Shear in the pipe", "shear, " + shear, func(c load.Cut) []float64 {
			return []float64{number(s.Units, c.Before), number(s.Units, c.Past)}
		}},
		{"Bending moment: above zero the pipe sags, below zero it hogs", "moment, " + moment, func(c load.Cut) []float64 {
			return []float64{number(s.Units, c.Moment)}
		}},
	} {
		draw := chart.Chart{Title: c.title, Left: left - 16, Right: right, Y: chart.Axis{Label: c.label}, X: chart.Axis{To: number(s.Units, batten.Length)}}
		if i == 1 {
			draw.X.Label = "from the end nearer the arbor, " + span
		}
		for j, a := range []answers{s.even, s.off} {
			line := chart.Series{Pen: []svg.Pen{evenPen, offPen}[j]}
			for _, cut := range a.cuts {
				for _, v := range c.values(cut) {
					line.Points = append(line.Points, svg.Point{X: number(s.Units, cut.At), Y: v})
				}
			}
			draw.Series = append(draw.Series, line)
		}
		draw.Draw(pic, svg.Box{X: 16, Y: foot + 204*float64(i), W: wide - 16, H: 214})
	}
	return pic
}

// hung draws what hangs: a bar as long as it is spread, an arrow for what hangs at a point.
func (s sheet) hung(pic *svg.Picture, x func(units.Length) float64) {
	for i, item := range s.even.hangs {
		y := pipe + 10 + row*float64(i)
		words := fmt.Sprintf("%s, %s", item.Name, s.Units.FormatPlaces(item.Carried(s.even.Trim), 0))
		from, to, letter := x(item.From), x(item.To), svg.Letter{Size: 11}
		if item.From == item.To {
			pic.Arrow(svg.Point{X: from, Y: y}, svg.Point{X: from, Y: y + row - 3}, svg.Pen{Width: 1.6})
		} else {
			pic.Rect(svg.Box{X: from, Y: y, W: to - from, H: row - 4}, svg.Sand, svg.Pen{})
		}
		switch w := letter.Width(words); {
		case w+12 < to-from:
			letter.Anchor = svg.Middle
			pic.Text(svg.Point{X: (from + to) / 2, Y: y + 12.5}, words, letter)
		case to+10+w < wide:
			pic.Text(svg.Point{X: to + 8, Y: y + 12.5}, words, letter)
		default:
			letter.Anchor = svg.End
			pic.Text(svg.Point{X: from - 8, Y: y + 12.5}, words, letter)
		}
	}
}

// number is a quantity as a number of the unit that the reader has for it.
func number[Q units.Quantity](sys units.System, q Q) float64 {
	unit, err := units.Unit[Q](sys.Symbol(q))
	if err != nil {
		unit = 1
	}
	return units.Ratio(q, unit)
}

// round is the largest 1, 2 or 5 with noughts that is no more.
func round(v float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(v)))
	for _, n := range []float64{5, 2} {
		if v >= n*power {
			return n * power
		}
	}
	return power
}

// desc tells the picture to those who do not see it.
func (s sheet) desc(then string) string {
	text := "A batten freed from its lift lines, with an arrow up for the tension in each and a bar under it for all that hangs, over diagrams of shear and bending moment along the pipe. Tensions with all lines even, and with " + then + ":"
	for i, line := range s.even.Lines {
		text += fmt.Sprintf(" line %d %s, %s;", i+1, s.pull(line.Tension), s.pull(s.off.Lines[i].Tension))
	}
	return text + fmt.Sprintf(" the pipe sags with up to %s, then %s, and hogs with up to %s, then %s.",
		s.bend(s.even.Sagging.Moment), s.bend(s.off.Sagging.Moment), s.bend(s.even.Hogging.Moment), s.bend(s.off.Hogging.Moment))
}
