package svg

import (
	"fmt"
	"math"
)

// word is a line of words with the room that it takes up.
type word struct {
	text string
	room Box
}

// stroke is a piece of a line that words must not stand on.
type stroke struct{ from, to Point }

func (p *Picture) stroke(pen Pen, points ...Point) {
	if pen.Colour == Faint {
		return // a grid
	}
	for i := 1; i < len(points); i++ {
		p.strokes = append(p.strokes, stroke{points[i-1], points[i]})
	}
}

// Clashes lists what cannot be read: words that run into one another, into a line that is not Faint, or off the picture. Words
// are taken as wide as they get in any of the typefaces.
func (p *Picture) Clashes() (out []string) {
	for i, w := range p.words {
		out = append(out, p.inTheWay(w, p.words[:i])...)
	}
	return out
}

// Fits tells whether words at a place would clash with nothing that is drawn so far.
func (p *Picture) Fits(at Point, text string, l Letter) bool {
	return len(p.inTheWay(word{text, l.box(at, text)}, p.words)) == 0
}

// inTheWay lists what words clash with: the edge, others, a line.
func (p *Picture) inTheWay(w word, others []word) (out []string) {
	r := w.room
	if r.X < 0 || r.Y < 0 || r.X+r.W > p.Width || r.Y+r.H > p.Height {
		out = append(out, fmt.Sprintf("%q runs off the picture", w.text))
	}
	for _, other := range others {
		if o := other.room; r.X < o.X+o.W && o.X < r.X+r.W && r.Y < o.Y+o.H && o.Y < r.Y+r.H {
			out = append(out, fmt.Sprintf("%q runs into %q", w.text, other.text))
		}
	}
	for _, s := range p.strokes {
		if s.crosses(r) {
			out = append(out, fmt.Sprintf("%q stands on the line from %.0f, %.0f to %.0f, %.0f", w.text, s.from.X, s.from.Y, s.to.X, s.to.Y))
			break
		}
	}
	return out
}

// crosses tells whether a piece of a line runs through a box: what is left of it, cut at each edge of the box in turn,
// has a length or lies inside.
func (s stroke) crosses(b Box) bool {
	first, last := 0.0, 1.0
	cut := func(at, by, low, high float64) bool {
		if by == 0 {
			return at > low && at < high
		}
		enter, leave := (low-at)/by, (high-at)/by
		first, last = math.Max(first, math.Min(enter, leave)), math.Min(last, math.Max(enter, leave))
		return first < last
	}
	return cut(s.from.X, s.to.X-s.from.X, b.X, b.X+b.W) && cut(s.from.Y, s.to.Y-s.from.Y, b.Y, b.Y+b.H)
}
