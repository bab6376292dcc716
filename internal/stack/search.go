package stack

import "example.com/steelyard/internal/slab"

// search is the state of one Best or Refill.
//
// Invariant: no allowed choice looked at so far has a smaller error than bound;
// best has that error where any is true. With walked, the walk itself came on
// best, so that every choice equal to it in all but the last preference stands
// later in the walk. A seed sets best without walked: ties are then not cut
// until the walk has met the first.
type search struct {
	problem Problem // but for its kinds
	limit   int
	nodes   int
	few     int     // what the walk gets before the halves are listed; 0: no short cut at all
	trial   bool    // the walk ends where the halves would soon be done
	begun   int     // the steps before it
	end     int     // the steps after which it ends; −1: not yet worked out
	today   []int64 // how many of each kind are in now; nil where that is no matter
	change  int64   // most pieces that may be put in or taken out, with today
	halves  *halves // with them the windows are met in the middle, not walked
	probe   bool    // only look whether the bounds leave anything: any says so

	kinds  []Kind // counts cut to what the mass allows
	n      int
	suffix []suffix // of the kinds from each on, and of none
	ladder ladder   // its room, of which rungs are in use
	rungs  int
	mass   int64 // most mass of pieces and plates together

	plates int64   // in the window that is being searched
	plateH int64   // their thickness
	count  []int64 // of the path to the present node

	bound  int64
	best   candidate
	any    bool
	walked bool
	cut    bool
	open   int64 // no choice in what a cut left out has a smaller error
}

// candidate is a choice within the search.
type candidate struct {
	count          []int64
	error          int64 // signed
	pieces, height int64
	plates         int64
}

// room is what a node has left: the mass still missing from the wish (negative
// once passed), the mass and thickness that may still be added, and the
// thickness that must be.
type room struct {
	short     int64
	mass      int64
	thickness int64
	needed    int64
	pieces    int64
	height    int64
	change    int64 // may still be put in or taken out
}

// space is room for a search among few kinds, as most are, which then asks for none.
type space struct {
	kinds, ladder [fewKinds]Kind
	suffix        [fewKinds + 1]suffix
	count, best   [fewKinds]int64
}

const fewKinds = 8

// search is one for a problem, in this room where it is enough.
func (few *space) search(p *Problem) search {
	n := len(p.Kinds)
	s := search{
		problem: Problem{Wanted: p.Wanted, MaxMass: p.MaxMass, MaxHeight: p.MaxHeight, Plate: p.Plate, Heavy: p.Heavy, Light: p.Light},
		n:       n,
	}
	s.kinds, s.suffix, s.ladder = slab.Enough(few.kinds[:], n), slab.Enough(few.suffix[:], n+1), slab.Enough(few.ladder[:], n)
	s.count, s.best.count = slab.Enough(few.count[:], n), slab.Enough(few.best[:], n)
	return s
}

// start prepares a search for the least error; false when nothing at all is allowed.
func (s *search) start(p *Problem) bool {
	over := p.overshoot()
	return s.within(p.Kinds, max(p.Wanted, 0)+over, max(over, abs(p.Wanted)))
}

// within prepares a search among the choices of at most this mass and at most
// this error; false when nothing at all is allowed.
func (s *search) within(kinds []Kind, mass, bound int64) bool {
	p := &s.problem
	s.mass, s.bound, s.open = min(p.MaxMass, mass), bound, none
	if s.mass < 0 || p.MaxHeight < 0 {
		return false
	}
	for i, k := range kinds {
		k.Count = min(k.Count, s.mass/k.Mass, p.MaxHeight/k.Thickness)
		s.kinds[i] = k
	}
	suffixes(s.kinds, s.today, s.suffix)
	s.rungs = s.ladder.fill(s.kinds)
	return true
}

// allPlates searches every number of plates that can occur, from the first that
// can reach the wish up and then down. Away from there the error that is left at
// best only grows, so each direction ends at the first that cannot do as well.
func (s *search) allPlates() {
	p := &s.problem
	pl := p.Plate
	if pl.Every == 0 {
		s.window(0, 0, p.MaxHeight)
		return
	}
	s.window(0, 0, 0)
	all := &s.suffix[0]
	if all.thickness == 0 {
		return
	}
	most := min(all.thickness/pl.Every+1, (p.MaxHeight+pl.Every)/(pl.Every+pl.Thickness))
	if pl.Mass > 0 {
		most = min(most, s.mass/pl.Mass)
	}
	l := s.ladder[:s.rungs]
	// Both bounds rise with n: up to most, n plates leave room for more pieces
	// than n-1 do.
	heaviest := func(n int64) int64 {
		return n*pl.Mass + min(s.mass-n*pl.Mass, l.most(s.thickest(n)))
	}
	lightest := func(n int64) int64 {
		return n*pl.Mass + l.least((n-1)*pl.Every)
	}
	first := most + 1
	for lo, hi := int64(1), most; lo <= hi; {
		if mid := lo + (hi-lo)/2; heaviest(mid) >= p.Wanted {
			first, hi = mid, mid-1
		} else {
			lo = mid + 1
		}
	}
	for n := first; n <= most && lightest(n)-p.Wanted <= s.bound; n++ {
		if !s.step() {
			s.open = min(s.open, max(0, lightest(n)-p.Wanted))
			break
		}
		s.window(n, (n-1)*pl.Every, s.thickest(n))
	}
	for n := first - 1; n >= 1 && p.Wanted-heaviest(n) <= s.bound; n-- {
		if !s.step() {
			s.open = min(s.open, p.Wanted-heaviest(n))
			break
		}
		s.window(n, (n-1)*pl.Every, s.thickest(n))
	}
}

// step takes one step of the limit, where there is one left.
func (s *search) step() bool {
	if !s.cut {
		s.nodes++
		s.cut = s.nodes > s.limit || s.tried()
	}
	return !s.cut
}

// thickest is the most piece thickness that goes with n plates.
func (s *search) thickest(n int64) int64 {
	p := &s.problem
	return min(product(n, p.Plate.Every)-1, p.MaxHeight-n*p.Plate.Thickness)
}

// window searches the choices with n plates and a thickness of pieces from least to most.
func (s *search) window(n, least, most int64) {
	pl := s.problem.Plate
	if n > 0 {
		least = max(least, 1)
	}
	s.plates, s.plateH = n, n*pl.Thickness
	r := room{
		short:     s.problem.Wanted - n*pl.Mass,
		mass:      s.mass - n*pl.Mass,
		thickness: most,
		needed:    least,
		height:    s.plateH,
		change:    s.change,
	}
	if r.mass < 0 || r.thickness < r.needed || s.bounds(r) > s.bound {
		return
	}
	switch {
	case s.probe:
		s.any = true
	case s.halves != nil:
		s.meetAll(r)
	default:
		if s.today == nil {
			s.seed(r)
		}
		s.node(0, r)
	}
	if s.cut {
		s.open = min(s.open, s.bounds(r))
	}
}

// bounds bounds from below the error of every choice in a window.
func (s *search) bounds(r room) int64 {
	l := s.ladder[:s.rungs]
	least, most := l.least(r.needed), min(r.mass, l.most(r.thickness))
	if least > most {
		return none
	}
	return max(s.nearest(0, r), least-r.short, r.short-most)
}

// seed takes as many of each kind in turn as the wish leaves room for: a first
// error for the walk to beat.
func (s *search) seed(r room) {
	for i, k := range s.kinds {
		c := min(k.Count, r.mass/k.Mass, r.thickness/k.Thickness, max(r.short, 0)/k.Mass)
		s.count[i] = c
		r = r.after(k, c)
	}
	if r.needed > 0 || r.short > 0 && !s.problem.Light || r.short < 0 && !s.problem.Heavy {
		return
	}
	if e := abs(r.short); e < s.bound || !s.any && e == s.bound {
		s.keep(r)
		s.walked = false
	}
}

// after is what is left once c pieces of a kind are taken.
func (r room) after(k Kind, c int64) room {
	m, t := c*k.Mass, c*k.Thickness
	r.short -= m
	r.mass -= m
	r.thickness -= t
	r.needed -= t
	r.pieces += c
	r.height += t
	return r
}

// keep makes the present path the best.
func (s *search) keep(r room) {
	s.bound = abs(r.short)
	b := &s.best
	copy(b.count, s.count)
	b.error, b.pieces, b.height, b.plates = -r.short, r.pieces, r.height, s.plates
	s.any = true
}

// node searches all choices of the kinds from i on.
func (s *search) node(i int, r room) {
	if !s.step() {
		return
	}
	nearest, hopeless := s.hopeless(i, r)
	if hopeless {
		return
	}
	if i >= s.n-1 {
		s.leaf(i, r)
		return
	}
	k, rest := s.kinds[i], &s.suffix[i+1]
	most := min(k.Count, r.mass/k.Mass, r.thickness/k.Thickness)
	least := max(0, ceilDiv(r.needed-rest.thickness, k.Thickness))
	if s.today != nil {
		least, most = max(least, s.today[i]-r.change), min(most, s.today[i]+r.change)
	}
	for c := most; c >= least && !s.cut; c-- {
		// The bound may have tightened since the last turn.
		over := int64(0)
		if s.problem.Heavy {
			over = s.bound
		}
		if top := floorDiv(r.short+over, k.Mass); c > top {
			c = top
		}
		if c < least || r.short-c*k.Mass-rest.mass > s.bound {
			return
		}
		if s.walked && nearest >= s.bound && s.onlyMore(i, c, r) {
			return
		}
		s.count[i] = c
		next := r.after(k, c)
		if s.today != nil {
			next.change -= abs(c - s.today[i])
		}
		s.node(i+1, next)
	}
}

// onlyMore reports that as many of kind i as c, or fewer, want more pieces than the best has, of lighter kinds, to come as near as
// it does: each piece less of kind i wants another one at the least.
func (s *search) onlyMore(i int, c int64, r room) bool {
	k, rest := &s.kinds[i], &s.suffix[i+1]
	if rest.heaviest == 0 || rest.heaviest > k.Mass {
		return false
	}
	mass := r.short - c*k.Mass - s.bound // that the others must have at the least
	return r.pieces+c+ceilDiv(mass, rest.heaviest) > s.best.pieces
}

// hopeless reports that no choice of the kinds from i on can beat the best. Where one can, it bounds their errors from below.
func (s *search) hopeless(i int, r room) (e int64, hopeless bool) {
	rest := &s.suffix[i]
	if r.needed > rest.thickness {
		return 0, true
	}
	e = s.nearest(i, r)
	if e > s.bound {
		return 0, true
	}
	if e < s.bound || !s.walked {
		return e, false
	}
	// No smaller error from here: only fewer pieces or a lower stack at the same
	// error would be better.
	mass := max(rest.lightest(r.needed), r.short-s.bound)
	if rest.divisor > 0 {
		mass = ceilDiv(mass, rest.divisor) * rest.divisor
	}
	n := rest.fewest(mass, r.needed)
	return e, !s.better(r.pieces+n, r.height+max(r.needed, rest.lowest(n, mass)))
}

// nearest bounds from below the error of every choice of the kinds from i on.
func (s *search) nearest(i int, r room) int64 {
	rest := &s.suffix[i]
	least, most := rest.lightest(r.needed), rest.reach(r.mass, r.thickness)
	if s.today != nil {
		moved := product(max(r.change, 0), rest.moved)
		least, most = max(least, rest.today-moved), min(most, rest.today+moved)
	}
	return rest.nearest(r.short, least, most, s.problem.Heavy, s.problem.Light)
}

// better reports whether a choice with the best's error, at least this many
// pieces and at least this height could be better than the best.
func (s *search) better(pieces, height int64) bool {
	b := &s.best
	if pieces != b.pieces {
		return pieces < b.pieces
	}
	return height < b.height
}

// leaf chooses the number of the last kind, which the wish gives at once.
func (s *search) leaf(i int, r room) {
	if i >= s.n { // there are no kinds, and so no plates that need any
		s.offer(r)
		return
	}
	k := s.kinds[i]
	most := min(k.Count, r.mass/k.Mass, r.thickness/k.Thickness)
	least := max(0, ceilDiv(r.needed, k.Thickness))
	if s.today != nil {
		least, most = max(least, s.today[i]-r.change), min(most, s.today[i]+r.change)
	}
	if least > most {
		return
	}
	q := floorDiv(r.short, k.Mass)
	for c := min(max(q, least), most); c <= min(max(q+1, least), most); c++ {
		s.count[i] = c
		s.offer(r.after(k, c))
	}
}

// offer keeps the present path where it is allowed and better than the best.
func (s *search) offer(r room) {
	if r.short > 0 && !s.problem.Light || r.short < 0 && !s.problem.Heavy {
		return
	}
	e := abs(r.short)
	if e > s.bound || e == s.bound && s.walked && !s.better(r.pieces, r.height) {
		return
	}
	s.keep(r)
	s.walked = true
}
