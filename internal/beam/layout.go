package beam

import (
	"cmp"
	"slices"
	"sync"

	"example.com/steelyard/internal/slab"
)

// MaxLines is the greatest number of lines that a Layout takes: sets of lines
// are kept as the bits of one word.
const MaxLines = 64

// Beam describes a beam, its lines and where its loads lie. EI is its bending stiffness.
type Beam struct {
	Lines []float64 // where lines are made off, increasing and no more than MaxLines
	Give  []float64 // EI times how far each line stretches for a unit of pull; nil: none does
	Low   []float64 // EI times how far each line's end hangs below level, unstretched; nil: none does
	Loads []Stretch // where each load lies
	Taper []float64 // how each load leans, from −1 to 1: see Stretch; nil: none does
	Still []float64 // the weight of each load that always has the same, 0 for one that has not; nil: none has
}

func (b *Beam) still(load int) bool { return b.Still != nil && b.Still[load] > 0 }

// A Stretch is where a load lies. Where both ends are equal it is a point. Along it the
// weight per length, as a share of its mean, goes straight from 1 − taper to 1 + taper.
type Stretch struct{ From, To float64 }

// A Layout is what a beam's geometry comes to: what each load does, for a unit of its weight, to
// the spans between neighbouring lines and to the tips beyond the outermost ones. It does
// not change.
//
// Each load is cut at the lines, into points on lines, parts of a field, and covers of
// two whole spans or more. A load has two parts at most, so that laying on all weights costs time
// in proportion to the lines and the loads, not to their product.
type Layout struct {
	x          []float64 // places of the lines
	give       []float64 // as in Beam; nil where no line gives
	low        []float64 // as in Beam; one for each line
	start, end float64   // of all that hangs or carries
	cube       float64   // the mean span cubed: what give is measured by
	least      float64   // the shortest span
	loads      int
	works      sync.Pool

	all     []int   // every line
	factors factors // with all of them tight

	spans   []float64 // their lengths
	moving  acts      // of the loads that are not still
	base    borne     // what those that are come to
	still   []float64 // their weights, 0 for the others; nil: none is
	covered bool      // there is a cover, still or not

	// Fields are the tip before the first line, each span, and the tip after the last line. The
	// marks of field k are marks[field[k]:field[k+1]], in the order of their places.
	marks []mark
	field []int
	even  bool // no load leans
}

// mark is a place where a point stands, or where the weight per length makes a step and its
// gain per length another, each for a unit of a load's weight. The place is measured from the left
// end of the field.
type mark struct {
	load, field       int32
	place             float64
	point, step, gain float64
}

// NewLayout takes a beam of which each load's From is no greater than its To.
func NewLayout(b Beam) *Layout {
	n := len(b.Lines)
	if n == 0 {
		return &Layout{loads: len(b.Loads)}
	}
	few := new(quarters)
	l := &few.Layout
	l.loads = len(b.Loads)
	room := slab.Enough(few.room[:], 10*n+len(b.Still))
	l.x, l.low, l.spans = slab.Take(&room, n), slab.Take(&room, n), slab.Take(&room, n)[:n-1]
	copy(l.x, b.Lines)
	copy(l.low, b.Low)
	if slices.ContainsFunc(b.Give, func(g float64) bool { return g > 0 }) {
		l.give = slab.Take(&room, n)
		copy(l.give, b.Give)
	}
	l.all, l.field = numbers[:n:n], slab.Enough(few.field[:], n+2)
	l.measure(b.Loads, &room)
	l.even = !slices.ContainsFunc(b.Taper, func(t float64) bool { return t != 0 })
	if b.Still != nil {
		l.still = slab.Take(&room, len(b.Still))
		copy(l.still, b.Still)
	}
	l.base = borne{point: slab.Take(&room, n), begin: slab.Take(&room, n), gain: slab.Take(&room, n), spans: slab.Enough(few.spans[:], n)}
	l.makeRoom(&b)
	for k, s := range b.Loads {
		c := cutting{Layout: l, load: int32(k)}
		if b.still(k) {
			c.still = b.Still[k]
		}
		switch {
		case s.From == s.To:
			c.point(s.From)
		case b.Taper == nil:
			c.spread(s, 0)
		default:
			c.spread(s, b.Taper[k])
		}
	}
	l.sort()
	return l
}

// numbers are those of all lines that there can be.
var numbers = [MaxLines]int{
	0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31,
	32, 33, 34, 35, 36, 37, 38, 39, 40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 50, 51, 52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62, 63,
}

// quarters is a Layout with room for as many lines and loads as most beams have at most, which is then asked for at once.
type quarters struct {
	Layout
	field [fewLines + 2]int
	spans [fewLines]simple
	room  [10*fewLines + fewLoads]float64
}

const (
	fewLines = 8
	fewLoads = 16
)

// sort puts the marks of each field together, in the order of their places.
func (l *Layout) sort() {
	begins, last := l.field, len(l.field)-1
	for i := range l.marks {
		begins[l.marks[i].field+1]++
	}
	for k := range last {
		begins[k+1] += begins[k]
	}
	var room [MaxLines + 1]int // up to where each field holds its own
	own := room[:last]
	copy(own, begins)
	for k := range own {
		for own[k] < begins[k+1] {
			here := &l.marks[own[k]]
			there := &own[here.field]
			if *there != own[k] {
				*here, l.marks[*there] = l.marks[*there], *here
			}
			*there++
		}
		byPlace(l.marks[begins[k]:begins[k+1]])
	}
}

// byPlace sorts marks. A field has few, as a rule: those are put in one by one, without a call for each comparison.
func byPlace(marks []mark) {
	if len(marks) > 12 {
		slices.SortFunc(marks, func(a, b mark) int { return cmp.Compare(a.place, b.place) })
		return
	}
	for i := 1; i < len(marks); i++ {
		for k := i; k > 0 && marks[k].place < marks[k-1].place; k-- {
			marks[k], marks[k-1] = marks[k-1], marks[k]
		}
	}
}

// measure fills in the lengths.
func (l *Layout) measure(loads []Stretch, room *[]float64) {
	n := len(l.x)
	l.start, l.end = l.x[0], l.x[n-1]
	for _, s := range loads {
		l.start, l.end = min(l.start, s.From), max(l.end, s.To)
	}
	if n == 1 {
		return
	}
	for j := range l.spans {
		l.spans[j] = l.x[j+1] - l.x[j]
	}
	mean := (l.x[n-1] - l.x[0]) / float64(n-1)
	l.cube = float64(mean * mean * mean)
	l.factors = l.newFactors(room)
	l.factors.find(l, l.all, l.spans)
	l.least = slices.Min(l.spans)
}

// left and right are the ends of a field.
func (l *Layout) left(field int) float64 {
	if field == 0 {
		return l.start
	}
	return l.x[field-1]
}

func (l *Layout) right(field int) float64 {
	if field == len(l.x) {
		return l.end
	}
	return l.x[field]
}

// makeRoom makes room for what most loads come to: a point has one mark, any other two parts with two marks each, and some a
// cover.
func (l *Layout) makeRoom(b *Beam) {
	marks, moves := 0, 0
	for k, s := range b.Loads {
		marks++
		if s.From < s.To {
			marks += 3
		}
		if !b.still(k) {
			moves++
		}
	}
	l.marks = make([]mark, 0, marks)
	l.moving = acts{parts: make([]part, 0, 2*moves), covers: make([]cover, 0, moves)}
}

// cutting cuts a load at the lines. What it does is noted for a unit of its weight; or, where it is still, laid on with it.
type cutting struct {
	*Layout
	load  int32
	still float64 // its weight; 0: it is not
}

// find is the first line that is not before a place, and whether it is there. There are few lines.
func find(lines []float64, place float64) (line int, there bool) {
	for line < len(lines) && lines[line] < place {
		line++
	}
	return line, line < len(lines) && lines[line] == place
}

func (c *cutting) point(place float64) {
	i, on := find(c.x, place)
	switch {
	case !on:
		c.piece(i, place, place, 1, 0)
		c.note(mark{field: int32(i), place: place - c.left(i), point: 1})
	case c.still > 0:
		c.base.point[i] += c.still
	default:
		c.moving.onLine = append(c.moving.onLine, onLine{c.load, int32(i)})
	}
}

func (c *cutting) spread(s Stretch, taper float64) {
	length := s.To - s.From
	even := 1 / length
	per := func(place float64) float64 { // weight per length of a unit of weight
		if taper == 0 {
			return even
		}
		lean := float64(2*(place-s.From)/length) - 1
		return (1 + float64(taper*lean)) / length
	}
	gain := 2 * taper / length / length
	before, on := find(c.x, s.From)
	field := before
	if on {
		field++
	}
	after, on := find(c.x, s.To)
	if !on {
		after--
	}
	// Whole spans make a cover only where there are two or more: what rounding leaves where a
	// cover ends is small because it is long.
	if after-before > 1 {
		c.cover(cover{load: c.load, from: int32(before), to: int32(after), begin: per(c.x[before]), end: per(c.x[after]), gain: gain})
	}
	for from := s.From; from < s.To; field++ {
		to := min(s.To, c.right(field))
		if covered := after-before > 1 && field > before && field <= after; !covered {
			begin, end := per(from), per(to)
			if sum := begin + end; sum > 0 {
				share := float64(sum / 2 * (to - from))
				c.piece(field, from, to, share, (end-begin)/sum)
				c.mark(field, from, to, begin, end, share)
			}
		}
		from = to
	}
}

func (c *cutting) cover(on cover) {
	c.covered = true
	if c.still == 0 {
		c.moving.cover(on)
		return
	}
	q, gain := float64(c.still*on.begin), float64(c.still*on.gain)
	for j := on.from; j < on.to; j++ {
		next := q + float64(gain*c.spans[j])
		c.base.spans[j].add(1, simpleCover(c.spans[j], q, next))
		c.base.begin[j] += q
		c.base.gain[j] += gain
		q = next
	}
}

// mark notes where a load begins and ends within a field. What it gains between is taken from the places as
// rounded, so that it takes the load to just what ends there, however short it is.
func (c *cutting) mark(field int, from, to, begin, end, share float64) {
	from -= c.left(field)
	to -= c.left(field)
	if from == to {
		c.note(mark{field: int32(field), place: from, point: share})
		return
	}
	gain := (end - begin) / (to - from)
	c.note(mark{field: int32(field), place: from, step: begin, gain: gain})
	c.note(mark{field: int32(field), place: to, step: -end, gain: -gain})
}

func (c *cutting) note(m mark) {
	m.load = c.load
	c.marks = append(c.marks, m)
}

// piece notes a share of a load, from one place to another within a field and leaning by a taper
// of its own.
func (c *cutting) piece(field int, from, to, share, taper float64) {
	half := (to - from) / 2
	middle := from + half
	centre := middle + float64(taper*half/3)
	switch n := len(c.x); field {
	case 0:
		c.tip(0, share, float64(share*(c.x[0]-centre)))
	case n:
		c.tip(1, share, float64(share*(centre-c.x[n-1])))
	default:
		j := field - 1
		s := simplePiece(c.spans[j], middle-c.x[j], half, taper).scaled(share)
		if c.still > 0 {
			c.base.spans[j].add(c.still, s)
			return
		}
		c.moving.parts = append(c.moving.parts, part{c.load, int32(j), s})
	}
}

func (c *cutting) tip(side int, weight, moment float64) {
	if c.still > 0 {
		c.base.tips[side].add(c.still, tip{weight: weight, moment: moment})
		return
	}
	c.moving.tips[side] = append(c.moving.tips[side], tip{c.load, weight, moment})
}
