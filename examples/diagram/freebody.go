package diagram

import (
	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// Cut is a set at a trim, to be drawn: at rest with the rope lock shut, or flown slowly out or in by hand.
type Cut struct {
	Title string          // what stands over it; empty: the set's name
	Set   *lineset.Rigged // the set
	Trim  units.Length    // of the batten, above the deck
	Way   purchase.Way    // zero: at rest
}

// FreeBody draws sets side by side, to one scale of heights and one scale of forces. Each has its elevation, where heights are true
// and widths are not, with the loads on blocks and dead ends; a table of what each lift line bears; and under it the batten, the arbor
// and the ropes at the rail cut free. How large the picture is, and its scales of heights and of the larger forces, do not depend on the
// trims. It is in units.US unless sys is units.Metric.
//
// The error is the first that lineset.Rigged.At or Run gives: a trim that is not reached, or a hand line that would be slack. It is
// a *units.FieldError where nothing is to be drawn.
func FreeBody(sys units.System, title string, cuts ...Cut) (*svg.Picture, error) {
	if sys != units.Metric {
		sys = units.US
	}
	views, err := look(sys, cuts)
	if err != nil {
		return nil, err
	}
	wide := 0.0
	for _, v := range views {
		wide = max(wide, elevationWide+v.tableWidth())
	}
	wide = max(wide, bodiesWide) + panelGap
	pic := lesson.Picture(scaleWide+wide*float64(len(views)), pictureHigh, title, describe(views))
	h, f := scaleHeights(views), scaleForces(views)
	pic.Text(svg.Point{X: 16, Y: 27}, shorten(title, pic.Width-32, heading), heading)
	f.key(pic, sys)
	h.scale(pic, sys)
	for i, v := range views {
		p := panel{pic, v, h, f, scaleWide + wide*float64(i)}
		if i > 0 {
			pic.Line(svg.Point{X: p.x - panelGap/2, Y: 62}, svg.Point{X: p.x - panelGap/2, Y: pictureHigh - 30}, svg.Pen{Colour: svg.Faint})
		}
		p.draw()
	}
	return pic, nil
}

// How large everything is, and where it stands.
const (
	scaleWide     = 62.0  // the scale of heights at the left
	elevationWide = 452.0 // the elevation of a set
	bodiesWide    = 664.0 // batten, arbor and rail, cut free
	panelGap      = 24.0  // between two sets

	elevationTop    = 168.0 // where the highest block stands
	elevationBottom = 506.0 // where the deck is, or what lies lowest under it
	bodiesTop       = 540.0
	pictureHigh     = 872.0
)

// heading is how titles are written, name what a body is called, plain and small what is said of it.
var (
	heading = svg.Letter{Size: 16, Bold: true}
	name    = svg.Letter{Size: 12, Bold: true}
	plain   = svg.Letter{Size: 12}
	small   = svg.Letter{Size: 11}
)

// panel is one set in the picture.
type panel struct {
	pic *svg.Picture
	view
	heights
	forces
	x float64 // its left edge
}

func (p panel) draw() {
	p.pic.Text(svg.Point{X: p.x + 8, Y: 80}, shorten(p.title, bodiesWide-16, svg.Letter{Size: 14, Bold: true}), svg.Letter{Size: 14, Bold: true})
	p.pic.Text(svg.Point{X: p.x + 8, Y: 98}, p.says(), plain)
	p.grid()
	p.elevation()
	p.table(p.x+elevationWide, 130)
	p.batten(p.x + 8)
	p.arbor(p.x + 214)
	p.rail(p.x + 480)
}

// write writes words at the first of some places where they fit, or else at the last.
func (p panel) write(text string, l svg.Letter, places ...svg.Point) {
	for _, at := range places {
		if p.pic.Fits(at, text, l) {
			p.pic.Text(at, text, l)
			return
		}
	}
	p.pic.Text(places[len(places)-1], text, l)
}

// push draws a force that acts at a place, down or up by its sign, and gives where its arrow ends.
func (p panel) push(at svg.Point, up units.Force, pen svg.Pen) svg.Point {
	tip := svg.Point{X: at.X, Y: at.Y - p.long(up)}
	p.pic.Arrow(at, tip, pen)
	return tip
}
