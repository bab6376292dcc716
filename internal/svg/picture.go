package svg

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// Point is a place in a picture.
type Point struct{ X, Y float64 }

// Box is an upright rectangle: its upper left corner, and how wide and high it is.
type Box struct{ X, Y, W, H float64 }

// Colours. Ink is for what is drawn by default; Faint for grids and hatching, over which words may stand. The others are as
// far apart in lightness as in hue, for a print in grey.
const (
	Ink   = "#1c1c1c"
	Grey  = "#6b6b6b"
	Faint = "#d5d5d5"
	Paper = "#ffffff"
	Blue  = "#1b5e9b"
	Red   = "#b3261e"
	Sand  = "#e9dfc7"
)

// Dashes tell lines apart without colour. The empty one is solid.
const (
	Dashed  = "8 4"
	Dotted  = "1.5 3.5"
	DashDot = "9 3 1.5 3"
)

// Pen is how a line is drawn. The zero Pen is a thin solid line in ink.
type Pen struct {
	Width  float64 // zero: 1
	Dash   string  // lengths of dashes and gaps; empty: solid
	Colour string  // empty: Ink
}

// Picture is a drawing in the making. Make it with New.
type Picture struct {
	Width, Height float64
	Title         string // what it shows, in a few words
	Desc          string // what it tells, for those who do not see it
	body          strings.Builder
	words         []word
	strokes       []stroke
}

// New begins an empty picture.
func New(width, height float64, title, desc string) *Picture {
	return &Picture{Width: width, Height: height, Title: title, Desc: desc}
}

// Line draws a straight line.
func (p *Picture) Line(from, to Point, pen Pen) {
	p.element(`<line x1="` + num(from.X) + `" y1="` + num(from.Y) + `" x2="` + num(to.X) + `" y2="` + num(to.Y) + `"` + pen.attributes() + `/>`)
	p.stroke(pen, from, to)
}

// Path draws a line from point to point. Less than two points draw nothing.
func (p *Picture) Path(points []Point, pen Pen) {
	if len(points) < 2 {
		return
	}
	p.element(`<polyline points="` + list(points) + `" fill="none"` + pen.attributes() + `/>`)
	p.stroke(pen, points...)
}

// Area fills the inside of a line from point to point and back to the first, without an edge. Words may stand on it.
func (p *Picture) Area(points []Point, fill string) {
	if len(points) > 2 {
		p.element(`<polygon points="` + list(points) + `" fill="` + escape(fill) + `"/>`)
	}
}

// Rect draws an upright rectangle with an edge. An empty fill leaves it open.
func (p *Picture) Rect(b Box, fill string, pen Pen) {
	p.element(`<rect x="` + num(b.X) + `" y="` + num(b.Y) + `" width="` + num(b.W) + `" height="` + num(b.H) + `" fill="` + filled(fill) + `"` + pen.attributes() + `/>`)
	p.stroke(pen, Point{b.X, b.Y}, Point{b.X + b.W, b.Y}, Point{b.X + b.W, b.Y + b.H}, Point{b.X, b.Y + b.H}, Point{b.X, b.Y})
}

// Circle draws a circle with an edge. An empty fill leaves it open.
func (p *Picture) Circle(centre Point, radius float64, fill string, pen Pen) {
	p.element(`<circle cx="` + num(centre.X) + `" cy="` + num(centre.Y) + `" r="` + num(radius) + `" fill="` + filled(fill) + `"` + pen.attributes() + `/>`)
	const sides = 24
	var round [sides + 1]Point
	for i := range round {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
		round[i] = Point{centre.X + radius*cos, centre.Y + radius*sin}
	}
	p.stroke(pen, round[:]...)
}

// Arrow draws a line with a filled head whose tip is at the end. One that is shorter than a head would be is drawn as
// a head alone, smaller.
func (p *Picture) Arrow(from, to Point, pen Pen) {
	length := math.Hypot(to.X-from.X, to.Y-from.Y)
	if !(length > 0) {
		return
	}
	head := math.Min(6+3*pen.width(), length)
	x, y := (to.X-from.X)/length, (to.Y-from.Y)/length
	// Without the conversions a machine may fuse product and sum, and the last digit written be another there.
	neck := Point{to.X - float64(head*x), to.Y - float64(head*y)}
	half := head * 0.36
	if length > head {
		p.Line(from, Point{to.X - float64(0.8*head*x), to.Y - float64(0.8*head*y)}, pen)
	}
	acrossX, acrossY := float64(half*y), float64(half*x)
	corners := []Point{to, {neck.X - acrossX, neck.Y + acrossY}, {neck.X + acrossX, neck.Y - acrossY}}
	p.Area(corners, pen.colour())
	p.stroke(pen, append(corners, to)...)
}

// String is the picture as an SVG document.
func (p *Picture) String() string {
	var b strings.Builder
	w, h := num(p.Width), num(p.Height)
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" width="` + w + `" height="` + h + `" viewBox="0 0 ` + w + ` ` + h +
		`" role="img" aria-labelledby="picture-title picture-desc" font-family="'DejaVu Sans', Verdana, Arial, sans-serif">` + "\n")
	b.WriteString(`<title id="picture-title">` + escape(p.Title) + "</title>\n")
	b.WriteString(`<desc id="picture-desc">` + escape(p.Desc) + "</desc>\n")
	b.WriteString(`<rect width="` + w + `" height="` + h + `" fill="` + Paper + `"/>` + "\n")
	b.WriteString(p.body.String())
	b.WriteString("</svg>\n")
	return b.String()
}

func (p *Picture) element(text string) {
	p.body.WriteString(text)
	p.body.WriteByte('\n')
}

func (pen Pen) width() float64 {
	if pen.Width == 0 {
		return 1
	}
	return pen.Width
}

func (pen Pen) colour() string {
	if pen.Colour == "" {
		return Ink
	}
	return pen.Colour
}

func (pen Pen) attributes() string {
	out := ` stroke="` + escape(pen.colour()) + `" stroke-width="` + num(pen.width()) + `"`
	if pen.Dash != "" {
		out += ` stroke-dasharray="` + escape(pen.Dash) + `"`
	}
	return out
}

func filled(colour string) string {
	if colour == "" {
		return "none"
	}
	return escape(colour)
}

// num writes a number to a hundredth. What is no number, or beyond any paper, is written as the nearest edge: a picture
// stays a picture.
func num(v float64) string {
	const edge = 1e6
	if !(v >= -edge) {
		v = -edge
	}
	v = math.Round(math.Min(v, edge)*100) / 100
	if v == 0 {
		return "0" // and not -0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// list writes points, each that is not the one before it.
func list(points []Point) string {
	var out []string
	for _, at := range points {
		out = append(out, num(at.X)+","+num(at.Y))
	}
	return strings.Join(slices.Compact(out), " ")
}

// escape writes a text so that it stays text: names come from files of strangers. What XML has no place for is replaced.
func escape(text string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;").Replace(strings.Map(func(r rune) rune {
		switch {
		case r == '\t', r == '\n', r == '\r':
			return ' '
		case r < 0x20, r == 0xFFFE, r == 0xFFFF:
			return '\uFFFD'
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD")))
}
