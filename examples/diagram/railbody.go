package diagram

import (
	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// rail draws the ropes at the locking rail and the idler: the tension of each at its upper and its lower end, and what the lock or a
// hand does to them.
func (p panel) rail(x float64) {
	const topY, railY, idlerY = bodiesTop + 76, bodiesTop + 150, bodiesTop + 208
	ropes := p.railRopes()
	last := len(ropes) - 1
	apart := min(54, 120/float64(last))
	at := func(i int) float64 { return x + 20 + apart*float64(i) }
	middle := (at(last-1) + at(last)) / 2

	p.pic.Rect(svg.Box{X: x + 2, Y: railY - 2, W: at(last) + 16 - x, H: 5}, svg.Sand, svg.Pen{Width: 0.8})
	p.pic.Circle(svg.Point{X: middle, Y: idlerY}, apart/2, svg.Paper, edge)
	for i, r := range ropes {
		end := idlerY
		if r.role == purchase.DeadRope {
			end = railY
		}
		p.pic.Line(svg.Point{X: at(i), Y: topY}, svg.Point{X: at(i), Y: end}, handLine)
		p.longer(svg.Point{X: at(i), Y: end}, r.under, pull)
	}
	p.longer(svg.Point{X: middle, Y: idlerY}, -p.load(purchase.IdlerBlock).Up, weight)
	says := small
	if p.way == 0 && !p.state.Ropes.Held() {
		says = svg.Letter{Size: 11, Bold: true, Colour: svg.Red}
	}
	p.head(x, "At the rail", says, p.acts(at, ropes, railY)...)

	for i, r := range ropes {
		p.write(p.bare(r.top), svg.Letter{Size: 11, Anchor: svg.Middle}, svg.Point{X: at(i), Y: topY - 5}, svg.Point{X: at(i), Y: topY - 20}, svg.Point{X: at(i) - 20, Y: topY - 5})
		p.pic.Text(svg.Point{X: at(i) - 9, Y: railY - 7}, r.name, svg.Letter{Size: 11, Up: true, Colour: svg.Grey})
		if r.role == purchase.DeadRope {
			p.pic.Text(svg.Point{X: at(i), Y: railY + 18}, p.bare(r.under), svg.Letter{Size: 11, Anchor: svg.Middle})
		} else {
			// Beside the rope, clear of what the lock does.
			under, y := p.bare(r.under), railY+20
			p.write(under, small, svg.Point{X: at(i) + 8, Y: y}, svg.Point{X: at(i) + 20, Y: y}, svg.Point{X: at(i) - 8 - small.Width(under), Y: y})
		}
	}
	idler := "idler"
	if p.rig.Idler.Base > 0 {
		idler = "idler, held"
	}
	p.beside(at(last)+8, idlerY+16, svg.Start, "", idler, p.force(p.load(purchase.IdlerBlock).Up))
}

// longer draws a force at the rail, where arrows may be some times as long.
func (p panel) longer(at svg.Point, up units.Force, pen svg.Pen) {
	p.pic.Arrow(at, svg.Point{X: at.X, Y: at.Y - p.long(up)*p.atRail}, pen)
}

// acts draws the shut lock with what it holds, or the hand's pull, and says it.
func (p panel) acts(at func(int) float64, ropes []railRope, railY float64) []string {
	if p.way != 0 {
		does := "the hand pulls "
		if p.run.Runs {
			does = "the hand holds back "
		}
		for i, r := range ropes {
			if r.role == p.run.Rope {
				grip := svg.Point{X: at(i) + 9, Y: railY - 66}
				p.pic.Circle(svg.Point{X: at(i), Y: grip.Y}, 3.5, svg.Ink, edge)
				p.longer(grip, -p.run.Pull, hand)
			}
		}
		return []string{does + p.force(p.run.Pull), "on the " + p.run.Rope.String()}
	}
	outer := at(len(ropes) - 1)
	p.pic.Rect(svg.Box{X: outer - 5, Y: railY - 7, W: 10, H: 15}, svg.Ink, edge)
	p.longer(svg.Point{X: outer + 13, Y: railY}, p.load(purchase.RopeLock).Up, pull)
	holds := p.state.Ropes.Lock
	says := []string{"the lock holds " + p.force(max(holds, -holds))}
	switch {
	case !p.state.Ropes.Held():
		return []string{"the lock alone does", "not hold this set"}
	case p.bare(holds) != p.bare(0):
		says = append(says, p.feel.Tight.String()+" is the tighter")
	}
	return says
}
