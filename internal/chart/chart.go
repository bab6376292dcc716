package chart

import (
	"math"

	"example.com/steelyard/internal/svg"
)

// Axis is one of the two axes. Where From and To are equal, it reaches over all that is drawn; then From and To are made round.
type Axis struct {
	Label    string // what it counts, with its unit
	From, To float64
	Zero     bool // reaches to zero at least
}

// Series is a line.
type Series struct {
	Name   string // written at its end; empty: none
	Points []svg.Point
	Pen    svg.Pen
	Marked bool // a dot at each point
}

// Band is an area between two lines over the same places.
type Band struct {
	Name string // written in its middle; empty: none
	X    []float64
	Low  []float64
	High []float64
	Fill string // empty: sand
}

// Note is something written at a place of the chart, above and to the right of it unless Anchor says otherwise, with a dot on the place.
type Note struct {
	At     svg.Point
	Text   string
	Anchor svg.Anchor
	Below  bool // under the place
}

// Chart is lines and bands over two axes.
type Chart struct {
	Title  string // over it; empty: none
	X, Y   Axis
	Series []Series
	Bands  []Band
	Notes  []Note

	// Left and Right are how far the lines keep from the sides of the box at least: charts of one width that stand over one
	// another then share their X axis. Zero: as far as numbers and names need.
	Left, Right float64
}

// Room is what is left of the box for axes and names: to the left, right, over and under the lines.
const (
	roomLeft  = 34 // beside the numbers
	roomOver  = 30
	roomUnder = 46
	small     = 11
	gap       = 6 // between a line's end and its name
)

// Draw draws the chart into a box of a picture. Points that are no numbers end a line.
func (c Chart) Draw(p *svg.Picture, box svg.Box) {
	x, y := c.spans()
	right := max(14, c.Right)
	for _, s := range c.Series {
		if s.Name != "" {
			right = max(right, svg.Letter{Size: small}.Width(s.Name)+2*gap+4)
		}
	}
	left := c.Left
	for _, v := range y.marks() {
		left = max(left, roomLeft+svg.Letter{Size: small}.Width(y.label(v)))
	}
	f := frame{x, y, svg.Box{X: box.X + left, Y: box.Y + roomOver, W: box.W - left - right, H: box.H - roomOver - roomUnder}}
	f.grid(p)
	if c.Title != "" {
		p.Text(svg.Point{X: f.box.X, Y: box.Y + roomOver - 12}, c.Title, svg.Letter{Size: 13, Bold: true})
	}
	p.Text(svg.Point{X: f.box.X + f.box.W/2, Y: box.Y + box.H - 8}, c.X.Label, svg.Letter{Size: 12, Anchor: svg.Middle})
	p.Text(svg.Point{X: box.X + 13, Y: f.box.Y + f.box.H/2}, c.Y.Label, svg.Letter{Size: 12, Anchor: svg.Middle, Up: true})
	for _, b := range c.Bands {
		f.band(p, b)
	}
	for _, s := range c.Series {
		f.series(p, s)
	}
	f.frame(p)
	f.names(p, c.Series)
	for _, n := range c.Notes {
		at, letter := f.place(n.At), svg.Letter{Size: small, Anchor: n.Anchor}
		p.Circle(at, 3, svg.Ink, svg.Pen{})
		shift := svg.Point{X: at.X + gap, Y: at.Y - gap}
		if n.Anchor == svg.End {
			shift.X = at.X - gap
		}
		if n.Anchor == svg.Middle {
			shift.X = at.X
		}
		if n.Below {
			shift.Y = at.Y + gap + 0.8*small
		}
		p.Text(shift, n.Text, letter)
	}
}

// spans finds how far each axis reaches.
func (c Chart) spans() (x, y span) {
	x, y = nothing(), nothing()
	for _, s := range c.Series {
		for _, at := range s.Points {
			x.include(at.X)
			y.include(at.Y)
		}
	}
	for _, b := range c.Bands {
		for i := range b.X {
			x.include(b.X[i])
			y.include(b.Low[i])
			y.include(b.High[i])
		}
	}
	for _, n := range c.Notes {
		x.include(n.At.X)
		y.include(n.At.Y)
	}
	return c.X.span(x), c.Y.span(y)
}

func (a Axis) span(s span) span {
	if a.From != a.To {
		s = span{low: a.From, high: a.To}
		s.step = step(s.high - s.low)
		return s
	}
	if a.Zero {
		s.include(0)
	}
	if !(s.low <= s.high) {
		s.low, s.high = 0, 1
	}
	if s.low == s.high {
		s.low, s.high = s.low-1, s.high+1
	}
	s.step = step(s.high - s.low)
	s.low, s.high = math.Floor(s.low/s.step)*s.step, math.Ceil(s.high/s.step)*s.step
	return s
}

// span is what an axis counts: from low to high, with a mark at each step.
type span struct{ low, high, step float64 }

func nothing() span { return span{low: math.Inf(1), high: math.Inf(-1)} }

func (s *span) include(v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return
	}
	s.low, s.high = min(s.low, v), max(s.high, v)
}

// step is 1, 2 or 5 times a power of ten, so that there are four to ten of them.
func step(length float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(length)))
	switch n := length / power; {
	case n <= 2:
		return power / 5
	case n <= 5:
		return power / 2
	}
	return power
}
