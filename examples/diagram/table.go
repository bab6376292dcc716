package diagram

import (
	"strconv"
	"strings"

	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

const (
	columnWide = 55.0
	rowHigh    = 15.0
	mostRows   = 16 // of lift lines that are written one by one
)

// column is what is given of each lift line in one column of its table.
type column struct {
	head [2]string
	of   func(line purchase.RopeState) units.Force
}

// columns follow a line from the batten to its other end. Where the tension of a part changes along it, it is that at the arbor, or at
// the head block.
func (v view) columns() []column {
	atArbor := func(k int) func(purchase.RopeState) units.Force {
		return func(line purchase.RopeState) units.Force { return at(line, purchase.ArborTop)[k] }
	}
	out := []column{
		{[2]string{"at the", "batten"}, atBatten},
		{[2]string{"loft to", "head"}, func(line purchase.RopeState) units.Force { return at(line, purchase.HeadBlock)[0] }},
		{[2]string{"head to", "arbor"}, atArbor(0)},
	}
	switch v.rig.Purchase {
	case purchase.Double:
		out = append(out, column{[2]string{"arbor to", "dead end"}, atArbor(1)})
	case purchase.Triple:
		out = append(out, column{[2]string{"arbor to", "beam"}, atArbor(1)}, column{[2]string{"beam to", "arbor"}, atArbor(2)})
	}
	return out
}

func (v view) tableWidth() float64 { return 42 + columnWide*float64(len(v.columns())) }

// table writes what each lift line bears along its way.
func (p panel) table(x, y float64) {
	columns := p.columns()
	tight, number := small, small
	tight.Anchor, number.Anchor = svg.End, svg.End
	at := func(c int) float64 { return x + 30 + columnWide*float64(c+1) }
	p.pic.Text(svg.Point{X: x + 8, Y: y}, "Lift lines, "+p.sys.Symbol(p.carried), name)
	y += 18
	for c, col := range columns {
		head := svg.Letter{Size: 10, Anchor: svg.End, Colour: svg.Grey}
		p.pic.Text(svg.Point{X: at(c), Y: y}, col.head[0], head)
		p.pic.Text(svg.Point{X: at(c), Y: y + 12}, col.head[1], head)
	}
	y += 17
	rule := func() {
		p.pic.Line(svg.Point{X: x + 8, Y: y}, svg.Point{X: at(len(columns) - 1), Y: y}, svg.Pen{Width: 0.6})
		y += 13
	}
	rule()
	row := func(label string, value func(column) string) {
		p.pic.Text(svg.Point{X: x + 30, Y: y}, label, tight)
		for c, col := range columns {
			p.pic.Text(svg.Point{X: at(c), Y: y}, value(col), number)
		}
		y += rowHigh
	}
	shown := len(p.lift)
	if shown > mostRows {
		shown = mostRows - 1
	}
	for i, line := range p.lift[:shown] {
		row(strconv.Itoa(i+1), func(c column) string { return p.bare(c.of(line)) })
	}
	if rest := p.lift[shown:]; len(rest) > 0 {
		row("more", func(c column) string {
			var sum units.Force
			for _, line := range rest {
				sum += c.of(line)
			}
			return p.bare(sum)
		})
	}
	y -= 9
	rule()
	tight.Bold, number.Bold = true, true
	row("all", func(c column) string {
		var sum units.Force
		for _, line := range p.lift {
			sum += c.of(line)
		}
		return p.bare(sum)
	})
	p.notes(x+8, y+10, at(len(columns)-1)-x-8)
}

// notes writes under the table what the figures alone do not tell, and what mule blocks bear.
func (p panel) notes(x, y, wide float64) {
	say := func(note string, l svg.Letter) {
		for _, line := range fill(note, wide, l) {
			if y < elevationBottom {
				p.pic.Text(svg.Point{X: x, Y: y}, line, l)
			}
			y += 14
		}
		y += 4
	}
	for _, warning := range p.warnings() {
		say(warning, svg.Letter{Size: 11, Colour: svg.Red})
	}
	for _, m := range p.mules() {
		say("on the "+m.Name+": "+p.force(p.load(m.Name).Size()), small)
	}
}

// fill breaks a text into lines that are no wider than they may be.
func fill(text string, wide float64, l svg.Letter) (lines []string) {
	line := ""
	for word := range strings.FieldsSeq(text) {
		if longer := strings.TrimSpace(line + " " + word); line == "" || l.Width(longer) <= wide {
			line = longer
			continue
		}
		lines = append(lines, shorten(line, wide, l))
		line = word
	}
	return append(lines, shorten(line, wide, l))
}
