package diagram

import (
	"fmt"
	"math"
	"strings"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/internal/chart"
	"example.com/steelyard/internal/svg"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// Loaded is a batten as its lines share what hangs on it, to be drawn.
type Loaded struct {
	Name  string // told in the key
	Share load.Share
	Cuts  []load.Cut // along the pipe, from end to end
}

// Where things stand in the picture of a beam.
const (
	beamWide, beamLeft, beamRight = 900.0, 84.0, 60.0
	beamPipe                      = 206.0 // the height of the batten
	beamTallest                   = 112.0 // arrow
	beamRow                       = 21.0  // of what hangs
)

// Beam draws a batten freed from its lift lines twice in one picture: what hangs on it with the pipe itself, an arrow for the
// tension of each line, and under them shear and bending moment along the pipe. The first is drawn solid, the second dashed; one
// line, counted from 1, is set off.
func Beam(sys units.System, length units.Length, hang load.Hang, first, then Loaded, line int) *svg.Picture {
	foot := beamPipe + 26 + beamRow*float64(len(hang))
	pic := lesson.Picture(beamWide, foot+446, "How lift lines share a batten", beamDesc(sys, first, then))
	x := func(l units.Length) float64 { return beamLeft + (beamWide-beamLeft-beamRight)*units.Ratio(l, length) }
	pens := []svg.Pen{{Width: 1.6}, {Width: 1.6, Dash: "6 3", Colour: svg.Blue}}

	pic.Text(svg.Point{X: beamLeft, Y: 26}, "Tension in the lift lines", svg.Letter{Size: 13, Bold: true})
	pic.Line(svg.Point{X: 308, Y: 22}, svg.Point{X: 348, Y: 22}, pens[0])
	pic.Text(svg.Point{X: 356, Y: 26}, first.Name, svg.Letter{})
	pic.Line(svg.Point{X: 476, Y: 22}, svg.Point{X: 516, Y: 22}, pens[1])
	pic.Text(svg.Point{X: 524, Y: 26}, then.Name, svg.Letter{})

	// Arrows as long as the tensions, in pairs.
	_, a := first.Share.Worst()
	_, b := then.Share.Worst()
	most := max(a.Tension, b.Tension)
	scale := roundDown(lesson.Number(sys, most) / 2)
	key := beamTallest * scale / lesson.Number(sys, most)
	pic.Arrow(svg.Point{X: 720, Y: 22}, svg.Point{X: 720 + key, Y: 22}, svg.Pen{})
	pic.Text(svg.Point{X: 728 + key, Y: 26}, fmt.Sprintf("is %g %s", scale, sys.Symbol(most)), svg.Letter{})
	for i := range first.Share.Lines {
		at := x(first.Share.Lines[i].At)
		for k, tension := range []units.Force{first.Share.Lines[i].Tension, then.Share.Lines[i].Tension} {
			shift, anchor := -6.0, svg.End
			if k == 1 {
				shift, anchor = 6, svg.Start
			}
			tip := beamPipe - 3 - beamTallest*units.Ratio(tension, most)
			pic.Arrow(svg.Point{X: at + shift, Y: beamPipe - 3}, svg.Point{X: at + shift, Y: tip}, pens[k])
			pic.Text(svg.Point{X: at + 2*shift, Y: min(tip+11, beamPipe-8)}, lesson.Pull(sys, tension), svg.Letter{Size: 11, Anchor: anchor})
		}
		pic.Text(svg.Point{X: at, Y: 62}, fmt.Sprint("line ", i+1), svg.Letter{Anchor: svg.Middle, Bold: i == line-1})
	}
	pic.Line(svg.Point{X: x(0), Y: beamPipe}, svg.Point{X: x(length), Y: beamPipe}, svg.Pen{Width: 5})
	drawHang(pic, sys, hang, first.Share.Trim, x)

	shear := chart.Chart{Title: "Shear in the pipe", Y: chart.Axis{Label: "shear, " + sys.Symbol(most)}}
	moment := chart.Chart{Title: "Bending moment: above zero the pipe sags, below zero it hogs", Y: chart.Axis{Label: "moment, " + sys.Symbol(first.Share.Sagging.Moment)}}
	moment.X.Label = "from the end nearer the arbor, " + sys.Symbol(length)
	for k, l := range []Loaded{first, then} {
		v, m := chart.Series{Pen: pens[k]}, chart.Series{Pen: pens[k]}
		for _, c := range l.Cuts {
			at := lesson.Number(sys, c.At)
			v.Points = append(v.Points, svg.Point{X: at, Y: lesson.Number(sys, c.Before)}, svg.Point{X: at, Y: lesson.Number(sys, c.Past)})
			m.Points = append(m.Points, svg.Point{X: at, Y: lesson.Number(sys, c.Moment)})
		}
		shear.Series, moment.Series = append(shear.Series, v), append(moment.Series, m)
	}
	for i, c := range []chart.Chart{shear, moment} { // over the same places as the batten
		c.Left, c.Right, c.X.To = beamLeft-16, beamRight, lesson.Number(sys, length)
		c.Draw(pic, svg.Box{X: 16, Y: foot + 204*float64(i), W: beamWide - 16, H: 214})
	}
	return pic
}

// drawHang draws what hangs: a bar as long as it is spread, an arrow for what hangs at a point.
func drawHang(pic *svg.Picture, sys units.System, hang load.Hang, trim units.Length, x func(units.Length) float64) {
	for i, item := range hang {
		y := beamPipe + 10 + beamRow*float64(i)
		words := fmt.Sprintf("%s, %s", item.Name, sys.FormatPlaces(item.Carried(trim), 0))
		from, to, letter := x(item.From), x(item.To), svg.Letter{Size: 11}
		if item.From == item.To {
			pic.Arrow(svg.Point{X: from, Y: y}, svg.Point{X: from, Y: y + beamRow - 3}, svg.Pen{Width: 1.6})
		} else {
			pic.Rect(svg.Box{X: from, Y: y, W: to - from, H: beamRow - 4}, svg.Sand, svg.Pen{})
		}
		at := (from + to) / 2
		switch w := letter.Width(words); {
		case w+12 < to-from:
			letter.Anchor = svg.Middle
		case to+10+w < beamWide:
			at = to + 8
		default:
			letter.Anchor, at = svg.End, from-8
		}
		pic.Text(svg.Point{X: at, Y: y + 12.5}, words, letter)
	}
}

// roundDown is the largest 1, 2 or 5 with noughts that is no more.
func roundDown(v float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(v)))
	for _, n := range []float64{5, 2} {
		if v >= n*power {
			return n * power
		}
	}
	return power
}

// beamDesc tells the picture to those who do not see it.
func beamDesc(sys units.System, first, then Loaded) string {
	var text strings.Builder
	text.WriteString("A batten freed from its lift lines, with an arrow up for the tension in each and a bar under it for all that hangs, over diagrams of shear and bending moment along the pipe. Tensions with " + first.Name + ", and with " + then.Name + ":")
	for i, line := range first.Share.Lines {
		text.WriteString(fmt.Sprintf(" line %d %s, %s;", i+1, lesson.Pull(sys, line.Tension), lesson.Pull(sys, then.Share.Lines[i].Tension)))
	}
	bend := func(m units.Moment) string { return sys.FormatPlaces(units.Abs(m), 0) }
	a, b := first.Share, then.Share
	return text.String() + fmt.Sprintf(" the pipe sags with up to %s, then %s, and hogs with up to %s, then %s.",
		bend(a.Sagging.Moment), bend(b.Sagging.Moment), bend(a.Hogging.Moment), bend(b.Hogging.Moment))
}
