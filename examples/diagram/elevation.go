package diagram

import (
	"strconv"

	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Widths of the elevation. They are not to scale.
const (
	wallWide = 112.0 // left of the arbor, for words
	between  = 10.0  // between two parts that stand side by side over the arbor
	edgeWide = 10.0  // from the outermost of them to the arbor's edge
	headWide = 20.0  // radius of the head block under the lift lines
	handWide = 10.0  // the same under the hand line
)

// wall is where the parts of the ropes over the arbor stand, from left to right.
type wall struct {
	left, right float64   // edges of the arbor
	lift, hand  []float64 // the part from the head block first
	head        float64   // middle of the head block
	outer       float64   // the rope that goes up past the arbor
	foot        []float64 // of the hand line under the arbor: the one to the idler last
}

// lay lays the parts: the hand line's first part is the nearest to the stage, then those of the lift lines, then what else there is of
// the hand line. So the sheaves on the arbor's top lie within one another.
func (p panel) lay() wall {
	lift, line := int(p.rig.Purchase), int(p.handKind())
	w := wall{left: p.x + wallWide}
	w.right = w.left + 2*edgeWide + between*float64(lift+line-1)
	next := w.right - edgeWide
	put := func(to *[]float64) { *to, next = append(*to, next), next-between }
	put(&w.hand)
	for range lift {
		put(&w.lift)
	}
	for range line - 1 {
		put(&w.hand)
	}
	w.head = w.lift[0] + headWide
	w.outer = w.head + handWide
	for i := range line {
		w.foot = append(w.foot, w.hand[0]-2*between*float64(line-1-i))
	}
	return w
}

// elevation draws the set as it stands, and the loads on what holds it.
func (p panel) elevation() {
	w := p.lay()
	p.building(w)
	first := p.loft(w)
	p.handRope(w)
	p.atTop(w)
	box := svg.Box{X: w.left, Y: p.y(p.top), W: w.right - w.left, H: p.y(p.top-p.rig.Arbor.Length) - p.y(p.top)}
	p.pic.Rect(box, svg.Paper, edge)
	if bed := p.top - p.rig.Arbor.Length + p.rig.Bed; p.stack > 0 {
		p.pic.Rect(svg.Box{X: box.X + 4, Y: p.y(bed + p.stack), W: box.W - 8, H: p.y(bed) - p.y(bed+p.stack)}, svg.Sand, svg.Pen{Width: 0.7})
	}
	p.sheaves(w)
	p.loads(w)
	p.names(w, first)
}

// building draws the head beam, the locking rail, and what holds blocks and dead ends.
func (p panel) building(w wall) {
	beam := p.beam()
	p.pic.Rect(svg.Box{X: w.left - 6, Y: beam - 8, W: w.outer + 14 - w.left, H: 8}, svg.Sand, svg.Pen{Width: 1})
	p.pic.Line(svg.Point{X: w.head, Y: beam}, svg.Point{X: w.head, Y: p.y(p.rig.HeadBlock)}, svg.Pen{Width: 1})
	p.pic.Rect(svg.Box{X: w.left - 6, Y: p.y(p.rig.Rail) - 2, W: w.outer + 22 - w.left, H: 5}, svg.Sand, svg.Pen{Width: 0.8})
}

// beam is the height of the head beam in the picture.
func (p panel) beam() float64 { return min(p.y(p.rig.HeadBlock), p.y(p.high)) - headWide - 4 }

// across is where a distance from the arbor stands: between the first and the last lift line, or along the batten where there is
// but one, widths are as they are.
func (p panel) across(w wall, at units.Length) float64 {
	lines := p.rig.Batten.Lines
	first, last := p.rig.Offset+lines[0].At, p.rig.Offset+lines[len(lines)-1].At
	left, right := w.outer+112, p.x+elevationWide-30
	if first == last {
		first, last = p.rig.Offset, p.rig.Offset+p.rig.Batten.Length
	}
	x := left + units.Ratio(at-first, last-first)*(right-left)
	return min(max(x, w.outer+34), p.x+elevationWide-14)
}

// loft draws the batten and its lift lines up to the head block, and gives where the first stands.
func (p panel) loft(w wall) (first float64) {
	n := len(p.lift)
	radius := min(6, max(2, 60/float64(n)))
	top := svg.Point{X: w.head, Y: p.y(p.rig.HeadBlock) - headWide}
	var blocks []svg.Point
	for i, line := range p.lift {
		x, own := p.across(w, p.rig.Offset+p.rig.Batten.Lines[i].At), p.rig.LoftBlocks
		if i == 0 {
			first = x
		}
		path := []svg.Point{top}
		if i < len(p.rig.Loft) {
			if p.rig.Loft[i].Height != 0 {
				own = p.rig.Loft[i].Height
			}
			for k := len(p.rig.Loft[i].Mules) - 1; k >= 0; k-- {
				mule := p.rig.Loft[i].Mules[k]
				at := svg.Point{X: p.across(w, mule.Across), Y: p.y(mule.Height)}
				blocks = append(blocks, at)
				if p.load(mule.Name).Up < 0 {
					at.Y -= radius
				} else {
					at.Y += radius
				}
				path = append(path, at)
			}
		}
		block := svg.Point{X: x - radius, Y: p.y(own)}
		blocks = append(blocks, block)
		path = append(path, svg.Point{X: block.X, Y: block.Y - radius})
		p.pic.Path(path, rope)
		down := rope
		if atBatten(line) <= 0 {
			down.Dash = svg.Dotted
		}
		p.pic.Line(svg.Point{X: x, Y: block.Y}, svg.Point{X: x, Y: p.y(p.trim)}, down)
	}
	for _, at := range blocks {
		p.pic.Circle(at, radius, svg.Paper, edge)
	}
	y := p.y(p.trim)
	p.pic.Line(svg.Point{X: p.across(w, p.rig.Offset), Y: y}, svg.Point{X: p.across(w, p.rig.Offset+p.rig.Batten.Length), Y: y}, svg.Pen{Width: 4})
	return first
}

// handRope draws the hand line below the arbor, round the idler and up to the head block.
func (p panel) handRope(w wall) {
	foot, idler, rail := p.y(p.top-p.rig.Arbor.Length), p.y(p.rig.Idler.Height), p.y(p.rig.Rail)
	n := len(w.foot)
	for i, x := range w.foot {
		end := rail
		if i == n-1 {
			end = idler
		}
		p.pic.Line(svg.Point{X: x, Y: foot}, svg.Point{X: x, Y: end}, handLine)
	}
	p.pic.Line(svg.Point{X: w.outer, Y: idler}, svg.Point{X: w.outer, Y: p.y(p.rig.HeadBlock)}, handLine)
	if p.way == 0 {
		p.pic.Rect(svg.Box{X: w.outer - 4, Y: rail - 5, W: 8, H: 11}, svg.Ink, edge)
	}
	inner := w.foot[n-1]
	if p.way != 0 {
		held := inner
		if p.run.Rope == purchase.OuterRope {
			held = w.outer
		}
		p.pic.Circle(svg.Point{X: held, Y: rail - 9}, 3.5, svg.Ink, edge)
	}
	p.pic.Circle(svg.Point{X: (inner + w.outer) / 2, Y: idler}, (w.outer-inner)/2, svg.Paper, edge)
}

// atTop draws the parts over the arbor: from the head block, and to the dead ends or over the blocks at the head beam.
func (p panel) atTop(w wall) {
	top, dead, head := p.y(p.top), p.y(p.rig.DeadEnds), p.y(p.rig.HeadBlock)
	parts := func(xs []float64, pen svg.Pen) {
		for i, x := range xs {
			end := dead
			if i == 0 {
				end = head
			} else {
				p.pic.Line(svg.Point{X: x, Y: p.beam()}, svg.Point{X: x, Y: dead}, svg.Pen{Width: 0.8})
			}
			p.pic.Line(svg.Point{X: x, Y: end}, svg.Point{X: x, Y: top}, pen)
		}
	}
	parts(w.lift, bundle)
	parts(w.hand, handLine)
	p.pic.Circle(svg.Point{X: w.head, Y: head}, headWide, svg.Paper, edge)
	p.pic.Circle(svg.Point{X: w.head, Y: head}, handWide, "", svg.Pen{Width: 0.8})
}

// sheaves draws those on the arbor and at the head beam and rail, and dots where ropes are made off.
func (p panel) sheaves(w wall) {
	top, foot, dead, rail := p.y(p.top), p.y(p.top-p.rig.Arbor.Length), p.y(p.rig.DeadEnds), p.y(p.rig.Rail)
	sheave := func(from, to, y float64) {
		p.pic.Circle(svg.Point{X: (from + to) / 2, Y: y}, max(from-to, to-from)/2, svg.Paper, edge)
	}
	dot := func(x, y float64) { p.pic.Circle(svg.Point{X: x, Y: y}, 1.8, svg.Ink, svg.Pen{Width: 0.5}) }
	along := func(xs []float64, y, far float64) {
		if len(xs) > 1 {
			sheave(xs[0], xs[1], y)
		} else {
			dot(xs[0], y)
		}
		switch len(xs) {
		case 2:
			dot(xs[1], far)
		case 3:
			sheave(xs[1], xs[2], far)
			dot(xs[2], y)
		}
	}
	along(w.hand, top, dead)
	along(w.lift, top, dead)
	back := make([]float64, len(w.foot))
	for i, x := range w.foot {
		back[len(back)-1-i] = x
	}
	along(back, foot, rail)
}

// loads draws what blocks and dead ends at the top of the house bear.
func (p panel) loads(w wall) {
	p.on(purchase.HeadBlock, svg.Point{X: w.head, Y: p.y(p.rig.HeadBlock)})
	n := float64(len(p.lift))
	radius := min(6, max(2, 60/n))
	for i := range p.lift {
		own := p.rig.LoftBlocks
		if i < len(p.rig.Loft) && p.rig.Loft[i].Height != 0 {
			own = p.rig.Loft[i].Height
		}
		p.on(purchase.LoftBlock(i+1), svg.Point{X: p.across(w, p.rig.Offset+p.rig.Batten.Lines[i].At) - radius, Y: p.y(own)})
	}
	for _, m := range p.mules() {
		p.on(m.Name, svg.Point{X: p.across(w, m.Across), Y: p.y(m.Height)})
	}
	if len(w.lift) > 1 {
		p.push(svg.Point{X: w.lift[1], Y: p.y(p.rig.DeadEnds)}, -p.deadEnds(), pull)
	}
	if len(w.hand) > 1 {
		p.push(svg.Point{X: w.hand[1], Y: p.y(p.rig.DeadEnds)}, -p.load(p.handBeamStop()).Size(), pull)
	}
}

// on draws the load on a block.
func (p panel) on(block string, at svg.Point) {
	load := p.load(block)
	p.pic.Arrow(at, svg.Point{X: at.X + p.long(load.Across), Y: at.Y - p.long(load.Up)}, pull)
}

// mules are the mule blocks, each once.
func (p panel) mules() (out []purchase.Mule) {
	seen := map[string]bool{}
	for _, l := range p.rig.Loft {
		for _, m := range l.Mules {
			if !seen[m.Name] {
				seen[m.Name] = true
				out = append(out, m)
			}
		}
	}
	return out
}

// names says what is what in the elevation.
func (p panel) names(w wall, first float64) {
	head, rail := p.y(p.rig.HeadBlock), p.y(p.rig.Rail)
	left, right := small, small
	left.Anchor = svg.End
	ends := w.left - 10
	lines := func(l svg.Letter, x, y float64, words ...string) {
		for i, text := range words {
			p.write(text, l, svg.Point{X: x, Y: y + 13*float64(i)})
		}
	}
	size := func(block string) string { return p.force(p.load(block).Size()) }

	// The head block's, where its arrow leaves room; and that of each loft block over it.
	load, tip := p.load(purchase.HeadBlock), svg.Point{}
	tip.X, tip.Y = w.head+p.long(load.Across), head-p.long(load.Up)
	for _, at := range []svg.Point{{X: first - 18, Y: head + 26}, {X: first - 18, Y: tip.Y + 14}, {X: first - 18, Y: head + 100}} {
		l := small
		l.Anchor = svg.End
		if p.pic.Fits(at, "head block", l) && p.pic.Fits(svg.Point{X: at.X, Y: at.Y + 13}, size(purchase.HeadBlock), l) {
			lines(l, at.X, at.Y, "head block", size(purchase.HeadBlock))
			break
		}
	}
	p.loftNames(w, first)

	y := head + 14
	if len(w.lift) > 1 {
		lines(left, ends, y, p.beamName(), p.force(p.deadEnds()))
		y += 30
	}
	if len(w.hand) > 1 {
		lines(left, ends, y, "hand line's", size(p.handBeamStop()))
		y += 30
	}
	middle := (p.y(p.top)+p.y(p.top-p.rig.Arbor.Length))/2 - 2
	middle = min(max(middle, y+2), max(rail-40, y+2))
	lines(left, ends, middle, "arbor, top at", p.sys.Format(p.top))
	lines(left, ends, rail+5, "locking rail")
	lines(right, w.outer+12, p.y(p.rig.Idler.Height)+12, "idler")

	under := small
	under.Anchor = svg.Middle
	// Under the batten; where the blocks' loads come down to it, further under or nearer its far end.
	near, far := p.across(w, p.rig.Offset), p.across(w, p.rig.Offset+p.rig.Batten.Length)
	var places []svg.Point
	for _, y := range []float64{15, 29, 43, 57, 71} {
		for _, x := range []float64{0.5, 0.6, 0.7, 0.4, 0.8} {
			places = append(places, svg.Point{X: near + x*(far-near), Y: p.y(p.trim) + y})
		}
	}
	p.write("batten at "+p.sys.Format(p.trim), under, places...)
}

// beamName is what the lift lines have at the head beam.
func (p panel) beamName() string {
	what := "dead end"
	if p.rig.Purchase == purchase.Triple {
		what = "beam block"
	}
	if len(p.lift) == 1 {
		return what
	}
	return strconv.Itoa(len(p.lift)) + " " + what + "s"
}

// loftNames writes the load of each loft block over it; where they stand too close, upwards; and where there is no room even so,
// the greatest alone.
func (p panel) loftNames(w wall, first float64) {
	var most units.Force
	room, wide, last := elevationWide, 0.0, first
	at := func(i int) float64 { return p.across(w, p.rig.Offset+p.rig.Batten.Lines[i].At) }
	size := func(i int) units.Force { return p.load(purchase.LoftBlock(i + 1)).Size() }
	for i := range p.lift {
		most = max(most, size(i))
		wide = max(wide, small.Width(p.bare(size(i))))
		if i > 0 {
			room, last = min(room, at(i)-last), at(i)
		}
	}
	y := p.beam() - 14
	if room <= 12 {
		p.pic.Text(svg.Point{X: first - 22, Y: y}, "on loft blocks, up to "+p.force(most), small)
		return
	}
	p.pic.Text(svg.Point{X: first - 22, Y: y}, "on loft blocks, "+p.sys.Symbol(most)+":", svg.Letter{Size: 11, Anchor: svg.End})
	for i := range p.lift {
		if room > wide+3 {
			p.pic.Text(svg.Point{X: at(i) - 4, Y: y}, p.bare(size(i)), svg.Letter{Size: 11, Anchor: svg.Middle})
		} else {
			p.pic.Text(svg.Point{X: at(i), Y: p.beam() - 8}, p.bare(size(i)), svg.Letter{Size: 11, Up: true})
		}
	}
}
