package main

import (
	"cmp"
	"math"
	"slices"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// floor is the straight line that the library is held against: the statics of a double purchase set of seven rigid
// lines, as plain code would work them out that knows no other set. It shares nothing with the library but the
// description. What does not depend on the trim is worked out beforehand, as Rig does.
//
// It knows less: no line of it is ever slack, nothing leans, each lift line runs straight from its loft block to the head
// block and hangs plumb elsewhere, the idler is free, and it is asked for no trim that is out of reach. All is in SI.
type floor struct {
	still         [items]float64 // weights of what hangs clear; 0 for the others
	clear, about  float64        // weight of batten and of what hangs clear, and its moment about the batten's middle
	moving        []moving
	middle        float64
	section       float64 // modulus
	at            [lines]float64
	spans, per    [spans]float64 // their lengths, and one over each
	bare          [fields]field  // what batten and what hangs clear do
	perLength     float64        // weight per length of the batten
	parts         []part         // of what moves
	marks         [spans][]mark
	pivot, beside [lines]float64 // of the three-moment equations, eliminated

	lift, lifts, hand              float64 // weight per length: a lift line, all of them, the hand line
	loft, head, dead, rail, keeper float64 // heights; the last is the idler's
	across, up                     [lines]float64
	madeOff, upper, length         float64 // the arbor's highest top, the trim there, and its length
	arbor, idler                   float64 // weights
	curve                          [trims]float64
}

// Fields are the spans, then the tips before the first line and beyond the last.
const (
	nearTip = spans
	farTip  = spans + 1
	fields  = spans + 2
)

// field is what loads put on the ends of a span that rests on them, and their two terms of the three-moment equation:
// P·b·(L²−b²)/L for the left end and P·a·(L²−a²)/L for the right, with a point P at a from the left and b from
// the right. Of a tip, left is the weight and atLeft its moment about the line.
type field struct{ left, right, atLeft, atRight float64 }

// part is what a unit of an item's weight does to one field.
type part struct {
	item, field int
	does        field
}

// moving is an item that piles, or stands: then the whole of it is carried as soon as it is clear of the deck.
type moving struct {
	item               int
	weight, below, per float64
	arm                float64 // from the middle of the batten
}

// mark is a place in a span where a point hangs, or weight per length begins or ends.
type mark struct {
	item        int
	place       float64
	point, step float64
}

// numbers is all that is asked of a set at one trim, and its balance curve.
type numbers struct {
	carried, centre                        float64 // weight, and where it acts
	tension                                [lines]float64
	sag, sagAt, hog, hogAt, shear, shearAt float64
	stress                                 float64
	arborTop, imbalance, lock, grip        float64
	lift                                   [lines][8]float64 // both ends of each of four parts
	hand                                   [10]float64       // both ends of each of five parts
	loftAcross, loftUp, deadUp             [lines]float64
	headAcross, headUp, topUp, footUp      float64
	idlerUp, railUp, handEndUp, lockUp     float64
	curve                                  [trims]float64 // imbalance
}

// statics is the one function. Beam: the three-moment equation (Clapeyron), solved by elimination. Ropes: tension grows with
// height by the rope's own weight, and is the same on both sides of a sheave.
func (f *floor) statics(trim float64, n *numbers) {
	// What hangs, and on which field of the batten.
	weight, all, moment := f.still, f.clear, f.about
	for i := range f.moving {
		m := &f.moving[i]
		v := (trim - m.below) * m.per
		if v > m.weight {
			v = m.weight
		} else if v < 0 {
			v = 0
		}
		weight[m.item] = v
		all += v
		moment += v * m.arm
	}
	n.carried, n.centre = all, f.middle+moment/all
	on := f.bare
	for i := range f.parts {
		p := &f.parts[i]
		v, to := weight[p.item], &on[p.field]
		to.left += v * p.does.left
		to.right += v * p.does.right
		to.atLeft += v * p.does.atLeft
		to.atRight += v * p.does.atRight
	}

	// Moments over the lines, then shear beside them and the tensions.
	var over, right, left [lines]float64
	over[0], over[lines-1] = -on[nearTip].atLeft, -on[farTip].atLeft
	for i := 1; i < lines-1; i++ {
		term := -on[i-1].atRight - on[i].atLeft
		if i == lines-2 {
			term -= f.spans[i] * over[i+1]
		}
		over[i] = (term - f.spans[i-1]*over[i-1]) * f.pivot[i]
	}
	for i := lines - 3; i > 0; i-- {
		over[i] -= f.beside[i] * over[i+1]
	}
	left[0], right[lines-1] = on[nearTip].left, on[farTip].left
	for j := range spans {
		turn := (over[j+1] - over[j]) * f.per[j]
		right[j], left[j+1] = on[j].left+turn, on[j].right-turn
	}
	for i := range lines {
		n.tension[i] = left[i] + right[i]
	}

	// What the pipe suffers.
	var sag, sagAt, hog, hogAt, shear, shearAt float64
	for i := range lines {
		if over[i] < hog {
			hog, hogAt = over[i], f.at[i]
		}
		if left[i] > math.Abs(shear) {
			shear, shearAt = -left[i], f.at[i]
		}
		if right[i] > math.Abs(shear) {
			shear, shearAt = right[i], f.at[i]
		}
	}
	for j := range spans {
		m, v := over[j], right[j]
		// Over a line that pulls the moment is nowhere the greatest; and the tangents at both ends meet above the curve.
		if v <= 0 || left[j+1] <= 0 {
			continue
		}
		if beyond := left[j+1]; (m-sag)*(v+beyond) <= -v*(over[j+1]-m+beyond*f.spans[j]) {
			continue
		}
		q, place, turned := f.perLength, 0.0, false
		for i := range f.marks[j] {
			k := &f.marks[j][i]
			s := k.place - place
			if q*s >= v {
				break
			}
			m += s * (v - q*s/2)
			v -= q * s
			place = k.place
			q += weight[k.item] * k.step
			if v -= weight[k.item] * k.point; v <= 0 {
				turned = true
				break
			}
		}
		if !turned {
			m += v * v / q / 2
			place += v / q
		}
		if m > sag {
			sag, sagAt = m, f.at[j]+place
		}
	}
	n.sag, n.sagAt, n.hog, n.hogAt, n.shear, n.shearAt = sag, sagAt, hog, hogAt, shear, shearAt
	n.stress = max(sag, -hog) / f.section

	// Ropes and blocks.
	top := f.upper - (trim-f.madeOff)/2
	n.arborTop = top
	imbalance := all - f.arbor/2 + f.lifts*(top-trim) + f.hand*f.length
	n.imbalance, n.lock = imbalance, imbalance
	headAcross, headUp, topUp := 0.0, 0.0, 0.0
	toLoft, toHead, toTop, toDead := f.lift*(f.loft-trim), f.lift*(f.head-trim), f.lift*(top-trim), f.lift*(f.dead-trim)
	for i, t := range n.tension {
		a, b, d, e := t+toLoft, t+toHead, t+toTop, t+toDead
		ends := &n.lift[i]
		ends[0], ends[1], ends[2], ends[3], ends[4], ends[5], ends[6], ends[7] = t, a, a, b, b, d, d, e
		n.loftAcross[i], n.loftUp[i], n.deadUp[i] = a*f.across[i], a*(f.up[i]-1), -e
		headAcross -= b * f.across[i]
		headUp -= b * (f.up[i] + 1)
		topUp += 2 * d
	}
	c := f.idler/2 - f.hand*f.keeper
	grip := c + f.hand*f.rail
	held := min(imbalance, grip)
	foot := c + f.hand*(top-f.length)
	above := c - held
	h, t, e := above+f.hand*f.head, above+f.hand*top, above+f.hand*f.dead
	n.grip = grip
	n.hand = [10]float64{grip, foot, foot, f.idler / 2, f.idler / 2, h, h, t, t, e}
	n.railUp, n.footUp, n.idlerUp, n.handEndUp, n.lockUp = grip, -2*foot, f.idler, -e, -held
	n.headAcross, n.headUp, n.topUp = headAcross, headUp-2*h, topUp+2*t

	f.balance(&n.curve)
}

// balance is the imbalance at the trims of the curve.
func (f *floor) balance(curve *[trims]float64) {
	for i, trim := range f.curve {
		top := f.upper - (trim-f.madeOff)/2
		curve[i] = f.clear - f.arbor/2 + f.lifts*(top-trim) + f.hand*f.length
	}
	for k := range f.moving {
		m := &f.moving[k]
		for i, trim := range f.curve {
			v := (trim - m.below) * m.per
			if v > m.weight {
				v = m.weight
			} else if v < 0 {
				v = 0
			}
			curve[i] += v
		}
	}
}

// newFloor takes the description apart, with the mass that arbor and stack have together.
func newFloor(s lineset.Set, arbor units.Mass) *floor {
	const g = 9.80665
	m := func(l units.Length) float64 { return l.In(units.Metre) }
	r := s.Rigging
	outer := m(r.Batten.Pipe.Outer)
	inner := outer - 2*m(r.Batten.Pipe.Wall)
	second := math.Pi / 64 * (math.Pow(outer, 4) - math.Pow(inner, 4))
	long := m(r.Batten.Length)
	f := &floor{
		middle: long / 2, section: second / (outer / 2),
		perLength: r.Batten.Pipe.Density.In(units.KilogramPerCubicMetre) * math.Pi / 4 * (outer*outer - inner*inner) * g,
		lift:      r.LiftLine.In(units.KilogramPerMetre) * g, hand: r.HandLine.In(units.KilogramPerMetre) * g,
		loft: m(r.LoftBlocks), head: m(r.HeadBlock), dead: m(r.DeadEnds), rail: m(r.Rail), keeper: m(r.Idler.Height),
		madeOff: m(r.MadeOff), upper: m(r.Run.UpperStop), length: m(r.Arbor.Length),
		arbor: arbor.In(units.Kilogram) * g, idler: r.Idler.Mass.In(units.Kilogram) * g,
	}
	f.lifts = lines * f.lift
	for i, l := range r.Batten.Lines {
		f.at[i] = m(l.At)
		across, up := m(r.Offset)+f.at[i], f.head-f.loft
		f.across[i], f.up[i] = -across/math.Hypot(across, up), up/math.Hypot(across, up)
	}
	for j := range spans {
		f.spans[j] = f.at[j+1] - f.at[j]
		f.per[j] = 1 / f.spans[j]
	}
	for i := 1; i < lines-1; i++ {
		f.pivot[i] = 1 / (2*(f.spans[i-1]+f.spans[i]) - f.spans[i-1]*f.beside[i-1])
		f.beside[i] = f.spans[i] * f.pivot[i]
	}
	f.clear = f.perLength * long
	hang := func(w float64, parts []part) {
		for _, p := range parts {
			does, on := p.does, &f.bare[p.field]
			on.left += does.left * w
			on.right += does.right * w
			on.atLeft += does.atLeft * w
			on.atRight += does.atRight * w
		}
	}
	f.clear = f.perLength * long
	hang(f.clear, f.cut(0, 0, long, false))
	for k, item := range s.Hang {
		w, arm := item.Mass.In(units.Kilogram)*g, (m(item.From)+m(item.To))/2-f.middle
		parts := f.cut(k, m(item.From), m(item.To), true)
		switch item.OnDeck {
		case load.Hangs:
			f.still[k] = w
			f.clear += w
			f.about += w * arm
			hang(w, parts)
			continue
		case load.Piles:
			f.moving = append(f.moving, moving{k, w, m(item.Below), w / m(item.Height), arm})
		case load.Stands:
			f.moving = append(f.moving, moving{k, w, m(item.Below) + m(item.Height), 1e300, arm})
		}
		f.parts = append(f.parts, parts...)
	}
	for j := range f.marks {
		slices.SortStableFunc(f.marks[j], func(a, b mark) int { return cmp.Compare(a.place, b.place) })
	}
	low, high := s.Low, s.High
	for i := range f.curve {
		f.curve[i] = m(low + (high - low).Scale(float64(i)/(trims-1)))
	}
	return f
}

// cut cuts a load at the lines, and notes where it begins and ends in a span. A point on a line is the span's whose left end that is.
func (f *floor) cut(item int, from, to float64, marked bool) (parts []part) {
	within := func(left, right float64) (a, b, share float64) {
		if from == to {
			if from >= left && from < right {
				return from, from, 1
			}
			return 0, 0, 0
		}
		a, b = max(from, left), min(to, right)
		return a, b, max(0, b-a) / (to - from)
	}
	if a, b, share := within(math.Inf(-1), f.at[0]); share > 0 {
		parts = append(parts, part{item, nearTip, field{left: share, atLeft: share * (f.at[0] - (a+b)/2)}})
	}
	if a, b, share := within(f.at[lines-1], math.Inf(1)); share > 0 {
		parts = append(parts, part{item, farTip, field{left: share, atLeft: share * ((a+b)/2 - f.at[lines-1])}})
	}
	for j, l := range f.spans {
		a, b, share := within(f.at[j], f.at[j+1])
		if share == 0 {
			continue
		}
		c, half := (a+b)/2-f.at[j], (b-a)/2
		// The mean of a·(L²−a²)/L over the stretch; of a³ it is c³ + c·half².
		term := func(c float64) float64 { return share * (c*l*l - c*c*c - c*half*half) / l }
		parts = append(parts, part{item, j, field{left: share * (l - c) / l, right: share * c / l, atLeft: term(l - c), atRight: term(c)}})
		switch {
		case !marked:
		case from == to:
			f.marks[j] = append(f.marks[j], mark{item: item, place: c, point: 1})
		default:
			f.marks[j] = append(f.marks[j], mark{item: item, place: a - f.at[j], step: 1 / (to - from)}, mark{item: item, place: b - f.at[j], step: -1 / (to - from)})
		}
	}
	return parts
}
