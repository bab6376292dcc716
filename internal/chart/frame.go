package chart

import (
	"math"
	"slices"
	"strconv"

	"example.com/steelyard/internal/svg"
)

// frame is the room in which the lines run.
type frame struct {
	x, y span
	box  svg.Box
}

// place is where a point of the chart stands in the picture: the same everywhere, for no product is fused with a sum.
func (f frame) place(at svg.Point) svg.Point {
	return svg.Point{
		X: f.box.X + float64((at.X-f.x.low)/(f.x.high-f.x.low)*f.box.W),
		Y: f.box.Y + f.box.H - float64((at.Y-f.y.low)/(f.y.high-f.y.low)*f.box.H),
	}
}

// marks lists the places of an axis that get a number.
func (s span) marks() (out []float64) {
	for k := math.Ceil(s.low/s.step - 1e-6); k*s.step <= s.high+1e-6*s.step; k++ {
		out = append(out, k*s.step)
	}
	return out
}

// label writes a number with as many places as the step needs.
func (s span) label(v float64) string {
	places := max(0, int(-math.Floor(math.Log10(s.step)+1e-9)))
	switch {
	case math.Abs(v) < s.step/2:
		return "0"
	case places > 5 || math.Abs(v) >= 1e7:
		return strconv.FormatFloat(v, 'g', 4, 64)
	}
	return strconv.FormatFloat(v, 'f', places, 64)
}

func (f frame) grid(p *svg.Picture) {
	faint := svg.Pen{Colour: svg.Faint}
	for _, v := range f.x.marks() {
		at := f.place(svg.Point{X: v, Y: f.y.low})
		p.Line(at, svg.Point{X: at.X, Y: f.box.Y}, faint)
		p.Text(svg.Point{X: at.X, Y: at.Y + 16}, f.x.label(v), svg.Letter{Size: small, Anchor: svg.Middle})
	}
	for _, v := range f.y.marks() {
		at := f.place(svg.Point{X: f.x.low, Y: v})
		p.Line(at, svg.Point{X: f.box.X + f.box.W, Y: at.Y}, faint)
		p.Text(svg.Point{X: at.X - 7, Y: at.Y + 4}, f.y.label(v), svg.Letter{Size: small, Anchor: svg.End})
	}
}

// frame draws the axes: to the left, and at zero where zero is among what is drawn.
func (f frame) frame(p *svg.Picture) {
	left, foot := f.box.X, f.box.Y+f.box.H
	p.Line(svg.Point{X: left, Y: f.box.Y}, svg.Point{X: left, Y: foot}, svg.Pen{})
	p.Line(svg.Point{X: left, Y: foot}, svg.Point{X: left + f.box.W, Y: foot}, svg.Pen{})
	if f.y.low < 0 && f.y.high > 0 {
		zero := f.place(svg.Point{X: f.x.low})
		p.Line(zero, svg.Point{X: left + f.box.W, Y: zero.Y}, svg.Pen{Colour: svg.Grey})
	}
}

func (f frame) band(p *svg.Picture, b Band) {
	var edge []svg.Point
	for i := range b.X {
		edge = append(edge, f.place(svg.Point{X: b.X[i], Y: b.High[i]}))
	}
	for i := range slices.Backward(b.X) {
		edge = append(edge, f.place(svg.Point{X: b.X[i], Y: b.Low[i]}))
	}
	fill := b.Fill
	if fill == "" {
		fill = svg.Sand
	}
	p.Area(edge, fill)
	if n := len(b.X) / 2; b.Name != "" && n > 0 {
		low, high := b.Low[n], b.High[n]
		switch { // beside the line of zero
		case low < 0 && high > -low:
			low = 0
		case low < 0 && high > 0:
			high = 0
		}
		at := f.place(svg.Point{X: b.X[n], Y: (low + high) / 2})
		p.Text(svg.Point{X: at.X, Y: at.Y + 4}, b.Name, svg.Letter{Size: small, Anchor: svg.Middle, Italic: true})
	}
}

func (f frame) series(p *svg.Picture, s Series) {
	var run []svg.Point
	flush := func() { p.Path(run, s.Pen); run = nil }
	for _, at := range s.Points {
		if v := at.X + at.Y; math.IsNaN(v) || math.IsInf(v, 0) {
			flush()
			continue
		}
		at = f.place(at)
		run = append(run, at)
		if s.Marked {
			p.Circle(at, 2.5, s.Pen.Colour, svg.Pen{Colour: s.Pen.Colour})
		}
	}
	flush()
}

// names writes each line's name to the right of the frame, at the height of the line's end, moved apart where they are closer than
// a line of words is high.
func (f frame) names(p *svg.Picture, all []Series) {
	type name struct {
		text string
		end  svg.Point
		y    float64
	}
	var names []name
	for _, s := range all {
		if s.Name == "" || len(s.Points) == 0 {
			continue
		}
		end := f.place(s.Points[len(s.Points)-1])
		names = append(names, name{s.Name, end, end.Y})
	}
	slices.SortStableFunc(names, func(a, b name) int {
		switch {
		case a.end.Y < b.end.Y:
			return -1
		case a.end.Y > b.end.Y:
			return 1
		}
		return 0
	})
	const apart = 1.35 * small
	for i := 1; i < len(names); i++ {
		names[i].y = max(names[i].y, names[i-1].y+apart)
	}
	if n := len(names); n > 0 {
		names[n-1].y = min(names[n-1].y, f.box.Y+f.box.H)
	}
	for i := len(names) - 2; i >= 0; i-- {
		names[i].y = min(names[i].y, names[i+1].y-apart)
	}
	for _, n := range names {
		at := svg.Point{X: f.box.X + f.box.W + gap + 4, Y: n.y + 4}
		if math.Abs(n.y-n.end.Y) > 2 || n.end.X < f.box.X+f.box.W-1 {
			p.Line(n.end, svg.Point{X: at.X - 3, Y: n.y}, svg.Pen{Width: 0.7, Colour: svg.Grey})
		}
		p.Text(at, n.text, svg.Letter{Size: small})
	}
}
