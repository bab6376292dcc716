package beam

import "slices"

// rover is a point that is laid on beside the weights, within a field and at a place from its
// left end; on a line it is not noted here.
type rover struct {
	field         int
	place, weight float64
}

// AddPoint lays one more point on the beam, beside Weights and until they are next laid on.
// Only one at a time may be there.
func (w *Work) AddPoint(weight, at float64) {
	l := w.layout
	w.total += weight
	n := len(l.x)
	k, on := slices.BinarySearch(l.x, at)
	switch {
	case on:
		w.point[k] += weight
		return
	case k == 0:
		w.tips[0].weight += weight
		w.tips[0].moment += float64(weight * (l.x[0] - at))
	case k == n:
		w.tips[1].weight += weight
		w.tips[1].moment += float64(weight * (at - l.x[n-1]))
	default:
		w.spans[k-1].add(weight, simplePiece(l.spans[k-1], at-l.x[k-1], 0, 0))
	}
	w.rover = rover{k, at - l.left(k), weight}
}

// Reach is how far a value goes while a point roves: the most and least, and the places
// of the point at which it does.
type Reach struct{ Most, Least Peak }

// Roving is what Rove finds.
type Roving struct {
	Pulls    []Reach // of each line
	Sag, Hog Peak    // the largest moments, with the places of the point; hogging is negative
}

// perField is at how many places of the point the largest sagging moment is looked at between
// two places where anything begins or ends.
const perField = 6

// Rove moves a point along the beam under the weights last put in Weights, from one place to another,
// and fills in how far everything goes. It reports false where the beam is not held with the point
// at one of the two ends, as in [Work.Hang]; held at both, it is held between.
//
// As long as the same lines are tight and the point is between the same two lines, every pull, every
// deflection at a line and every moment over one is a cubic of the point's place: it is the deflected
// line of a beam without load, by the reciprocal theorem (Betti 1872). Four places
// give the cubic. So a set of tight lines is proved for a whole stretch by its cubics' signs, the
// search goes as in turns, and the greatest of a cubic is exact. The largest sagging moment is
// not a cubic. If it is wanted, the moment under the point is a quartic between two marks, and its top exact; where the largest
// is elsewhere on the beam, it is looked for at some places of each stretch, and closed in on from every top among them.
func (w *Work) Rove(weight, from, to, reach float64, sagging bool, out *Roving) bool {
	out.Pulls = slices.Grow(out.Pulls[:0], len(w.layout.x))[:len(w.layout.x)]
	clear(out.Pulls)
	out.Sag, out.Hog = Peak{0, from}, Peak{0, from}
	r := roving{w: w, weight: weight, reach: reach, sagging: sagging, looks: mostLooks, out: out}
	for i := range r.nodes {
		n := len(w.layout.x)
		r.nodes[i] = supported{pull: make([]float64, n), drop: make([]float64, n), smallDrop: make([]float64, n)}
		r.moments[i] = make([]float64, n)
	}
	for i, at := range []float64{from, to} {
		r.lay(at)
		if !w.Hang(reach) {
			return false
		}
		for j, pull := range w.Reaction {
			if p := &out.Pulls[j]; i == 0 {
				*p = Reach{Peak{pull, at}, Peak{pull, at}}
			} else {
				p.take(pull, at)
			}
		}
		r.bend(at)
	}
	places := []float64{from}
	for _, x := range w.layout.x {
		if x > from && x < to {
			places = append(places, x)
		}
	}
	places = append(places, to)
	for i := 1; i < len(places); i++ {
		r.field(way{places[i-1], places[i]})
	}
	return true
}

func (r *Reach) take(v, at float64) {
	if v > r.Most.Value+float64(tie*r.Most.Value) {
		r.Most = Peak{v, at}
	}
	if v < r.Least.Value-float64(tie*r.Least.Value) {
		r.Least = Peak{v, at}
	}
}

// roving is what one call of Rove computes in.
type roving struct {
	w             *Work
	weight, reach float64
	sagging       bool
	looks         int // that are left
	out           *Roving
	nodes         [4]supported
	moments       [4][]float64 // over each tight line
}

func (r *roving) lay(at float64) {
	r.w.LoadWeights()
	r.w.AddPoint(r.weight, at)
}

// bend notes the largest moments of the last Hold or Hang, and gives the sagging one.
func (r *roving) bend(at float64) float64 {
	sag, hog, _ := r.w.Extremes()
	if sag.Value > r.out.Sag.Value*(1+tie) {
		r.out.Sag = Peak{sag.Value, at}
	}
	if hog.Value < r.out.Hog.Value*(1+tie) {
		r.out.Hog = Peak{hog.Value, at}
	}
	return sag.Value
}

// field goes along a stretch with no line within.
func (r *roving) field(whole way) {
	if !(whole.lo < whole.hi) {
		return
	}
	least := float64(shortest * (r.w.layout.end - r.w.layout.start))
	queue := []way{whole}
	// Every field gets a look, and one that rounding will not let be proved does not take all.
	for looks := 0; looks < len(queue) && (looks == 0 || r.looks > 0); looks++ {
		r.looks--
		s := queue[looks]
		middle := s.at(0.5)
		r.lay(middle)
		if !r.w.Hang(r.reach) {
			continue // it is held at both ends of the way, so only rounding can say that it is not here
		}
		for j, pull := range r.w.Reaction {
			r.out.Pulls[j].take(pull, middle)
		}
		set := r.w.set()
		proved := r.proved(s, set)
		if r.sagging {
			r.sag(proved, set)
		}
		for _, rest := range []way{{s.lo, proved.lo}, {proved.hi, s.hi}} {
			if rest.hi-rest.lo > least {
				queue = append(queue, rest)
			}
		}
	}
}

// proved is the part of the stretch, about its middle, for which the set of tight lines is the right
// one. It notes the extremes of all cubics there.
func (r *roving) proved(s way, set uint64) way {
	w := r.w
	for i := range r.nodes {
		r.lay(s.at(float64(i) / 3))
		w.Hold(set)
		w.Deflect()
		r.nodes[i].note(w)
		copy(r.moments[i], w.moment)
	}
	n := r.nodes[:]
	part := way{0, 1}
	for i := range w.layout.x {
		c, small := cubicOf(n[0].pull[i], n[1].pull[i], n[2].pull[i], n[3].pull[i]), n[0].smallPull
		if set&(1<<i) == 0 {
			c = cubicOf(-n[0].drop[i], -n[1].drop[i], -n[2].drop[i], -n[3].drop[i])
			small = max(n[0].smallDrop[i], n[1].smallDrop[i], n[2].smallDrop[i], n[3].smallDrop[i])
		}
		lo, hi := c.positive(small)
		part = part.and(way{lo, hi})
	}
	for j, i := range w.tight {
		pulls := cubicOf(n[0].pull[i], n[1].pull[i], n[2].pull[i], n[3].pull[i])
		over := cubicOf(r.moments[0][j], r.moments[1][j], r.moments[2][j], r.moments[3][j])
		at, count := pulls.stationary()
		for _, u := range append([]float64{part.lo, part.hi}, at[:count]...) {
			if u >= part.lo && u <= part.hi {
				r.out.Pulls[i].take(max(0, pulls.at(u)), s.at(u))
			}
		}
		at, count = over.stationary()
		for _, u := range append([]float64{part.lo, part.hi}, at[:count]...) {
			if m := over.at(u); u >= part.lo && u <= part.hi && m < r.out.Hog.Value*(1+tie) {
				r.out.Hog = Peak{m, s.at(u)}
			}
		}
	}
	return way{s.at(part.lo), s.at(part.hi)}
}

// sag looks for the largest sagging moment while the point is on a stretch for which the set is proved.
func (r *roving) sag(s way, set uint64) {
	w := r.w
	value := func(at float64) float64 {
		r.lay(at)
		w.Hold(set)
		return r.bend(at)
	}
	k, _ := slices.BinarySearch(w.layout.x, s.at(0.5))
	places := []float64{s.lo}
	look := func(to float64) {
		part := way{places[len(places)-1], to}
		for j := range perField {
			places = append(places, part.at(float64(j+1)/perField))
		}
	}
	for _, m := range w.layout.marks[w.layout.field[k]:w.layout.field[k+1]] {
		if at := w.layout.left(k) + m.place; at > places[len(places)-1] && at < s.hi {
			look(at)
		}
	}
	look(s.hi)
	for i := 0; i+perField < len(places); i += perField {
		r.underPoint(way{places[i], places[i+perField]}, k, value)
	}
	values := make([]float64, len(places))
	for i, at := range places {
		values[i] = value(at)
	}
	// The moment under the point and those that it brings about elsewhere have a top each, and any of them may be the
	// highest.
	for i, v := range values {
		if (i == 0 || v >= values[i-1]) && (i+1 == len(values) || v >= values[i+1]) && v > nearTop*r.out.Sag.Value {
			r.closeIn(way{places[max(0, i-1)], places[min(i+1, len(places)-1)]}, value)
		}
	}
}

// underPoint notes the greatest moment under the point while it is on a part of a field with no mark within. There
// the moment is a quartic of its place: that over the neighbouring tight lines is a cubic, the share of each goes straight, and
// the load between bends by a cubic. Five places give it, and its slope's zeros the top.
func (r *roving) underPoint(s way, field int, value func(at float64) float64) {
	if field == 0 || field == len(r.w.layout.x) {
		return // on a tip a point only hogs
	}
	var m [5]float64
	for i := range m {
		at := s.at(float64(i) / 4)
		value(at)
		m[i] = r.w.momentAt(field, at)
	}
	slope := slopeOfQuartic(m)
	cuts, n := slope.stationary()
	from := 0.0
	for _, to := range append(cuts[:n:n], 1) {
		if a, b := slope.at(from), slope.at(to); a > 0 && b < 0 {
			value(s.at(slope.zero(from, to)))
		}
		from = to
	}
}

// momentAt is the bending moment at a place within a field between two lines, for the last Hold or Hang.
func (w *Work) momentAt(field int, place float64) float64 {
	l := w.layout
	j := len(w.tight) - 1
	for j >= 0 && w.tight[j] >= field {
		j--
	}
	if j < 0 || j == len(w.tight)-1 {
		return 0 // beyond the outermost tight lines the beam only hogs
	}
	m, v := w.moment[j], w.held[j].left
	for i := w.tight[j]; i < field-1; i++ {
		m += float64(l.spans[i] * (v - w.spans[i].left))
		v -= w.spans[i].left + w.spans[i].right + w.point[i+1]
	}
	p := w.walk(field)
	for to := place - l.left(field); ; {
		next := to
		if p.more() {
			next = min(next, p.ahead())
		}
		if s := next - p.place; s > 0 {
			fall := p.fall(s)
			m += p.rise(v, s)
			v -= fall
			p.step(next)
		}
		if next == to {
			return m
		}
		v -= p.take()
	}
}

// nearTop is the share of the highest moment found yet above which a top among the places is worth closing in on.
const nearTop = 0.7

// closeIn is golden section for the top of a value. Its places end within the rounding of one that is flat there.
func (r *roving) closeIn(s way, value func(at float64) float64) {
	const golden = 0.6180339887498949
	a, b := s.at(1-golden), s.at(golden)
	va, vb := value(a), value(b)
	for s.hi-s.lo > float64(1e-8*(r.w.layout.end-r.w.layout.start)) {
		if va >= vb {
			s.hi, b, vb = b, a, va
			a = s.at(1 - golden)
			va = value(a)
		} else {
			s.lo, a, va = a, b, vb
			b = s.at(golden)
			vb = value(b)
		}
	}
}
