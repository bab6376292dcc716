package stack

import "sort"

// meeting is the room that the meetings of two lists work in, kept from one to
// the next.
type meeting struct {
	heaviest []int32 // for each of a: how many of b are no heavier than what is then wanted
	close    []int32 // those of a that come with one of b as near as the bound, by rising mass
	open     []bool  // those of a that may yet have a nearer one of b
	byA, byB []keyed // the lists by rising thickness
	spare    []keyed
	sorted   bool // byA and byB are of these lists
	blocks   []span
	spanned  bool  // blocks are of this list
	patience int   // neighbours that may yet be tried beyond the first
	left     int64 // least error of those that were given up
	near     set   // those of b whose thickness fits
}

// keyed is a place in a list and the thickness of what stands there.
type keyed struct {
	thickness int64
	place     int32
}

// meetAll searches one window in the halves.
func (s *search) meetAll(r room) {
	h := s.halves
	if s.nodes += len(h.a) + len(h.b); s.nodes > s.limit {
		s.nodes, s.cut = s.limit+1, true
		return
	}
	if s.today == nil {
		s.meet(h.a, h.b, r)
		return
	}
	// Fewer changes were looked for before, in vain: only just so many are left.
	for d := range len(h.changeA) - 1 {
		if rest := int(s.change) - d; rest >= 0 && rest < len(h.changeB)-1 {
			s.meet(h.a[h.changeA[d]:h.changeA[d+1]], h.b[h.changeB[rest]:h.changeB[rest+1]], r)
		}
	}
}

// meet searches the choices that are one of a and one of b.
func (s *search) meet(a, b []entry, r room) {
	if len(a) == 0 || len(b) == 0 {
		return
	}
	m := &s.halves.scratch
	if s.tighten(m, a, b, r) {
		s.tightenInRoom(m, a, b, r)
	}
	if s.problem.Light || s.bound == 0 {
		s.ties(m, a, b, r, r.short-s.bound)
	}
	if s.problem.Heavy && s.bound > 0 && r.short+s.bound <= r.mass {
		s.ties(m, a, b, r, r.short+s.bound)
	}
}

// miss is the error of a sum, none where it may not be.
func (s *search) miss(sum int64, r *room) int64 {
	switch {
	case sum > r.mass || sum > r.short && !s.problem.Heavy || sum < r.short && !s.problem.Light:
		return none
	}
	return abs(sum - r.short)
}

// tighten lowers the bound by neighbours: for each of a those of b just below and
// just above what is then wanted, the nearest first, until one fits the window or
// is no nearer than the bound. After a few that do not fit it gives up on that one
// of a and marks it open. It reports whether any is.
func (s *search) tighten(m *meeting, a, b []entry, r room) bool {
	if cap(m.heaviest) < len(a) {
		m.heaviest, m.open, m.close = make([]int32, len(a)), make([]bool, len(a)), make([]int32, 0, len(a))
	}
	m.heaviest, m.open, m.close = m.heaviest[:len(a)], m.open[:len(a)], m.close[:0]
	clear(m.open)
	m.patience, m.left = 0, none
	if s.few > 0 {
		m.patience = len(a) + len(b)
	}
	if !m.spanned {
		m.blocks = spans(b, m.blocks)
		m.spanned = s.today == nil // else each meeting has lists of its own
	}
	past := max(r.short-r.mass, 0) // of the wish, for want of capacity
	j := len(b)
	for i := range a {
		wish := r.short - a[i].mass
		for j > 0 && b[j-1].mass > wish-past {
			j--
		}
		m.heaviest[i] = int32(j)
		// Two comparisons settle nearly all: the rest is rare.
		light := j > 0 && wish-b[j-1].mass <= s.bound
		heavy := j < len(b) && b[j].mass-wish <= s.bound
		if (light || heavy) && s.neighbours(m, a, b, i, j, r) {
			m.close = append(m.close, int32(i))
		}
	}
	return m.left < s.bound
}

// neighbours tries those of b next to place j with one of a. It reports whether
// one is as near as the bound.
func (s *search) neighbours(m *meeting, a, b []entry, i, j int, r room) bool {
	near := false
	e := &a[i]
	least, most := r.needed-e.thickness, r.thickness-e.thickness
	for _, up := range [...]bool{false, true} {
		k, step, edge := j-1, -1, 0
		if up {
			k, step, edge = j, 1, block-1
		}
		for tries := fewTries; k >= 0 && k < len(b); {
			miss := s.miss(e.mass+b[k].mass, &r)
			if miss > s.bound {
				break
			}
			near = true
			if miss == s.bound {
				break
			}
			if t := b[k].thickness; t >= least && t <= most {
				s.lower(miss)
				break
			}
			if tries == 0 || m.patience == 0 {
				m.open[i], m.left = true, min(m.left, miss)
				break
			}
			tries--
			m.patience--
			if f := &m.blocks[k/block]; f.most < least || f.least > most {
				k = k/block*block + edge
			}
			k += step
		}
	}
	return near
}

// span holds the thinnest and the thickest of a block of entries.
type span struct{ least, most int64 }

// spans fills in the blocks of a list.
func spans(list []entry, out []span) []span {
	out = out[:0]
	for len(list) > 0 {
		n := min(block, len(list))
		f := span{list[0].thickness, list[0].thickness}
		for i := range list[:n] {
			f.least, f.most = min(f.least, list[i].thickness), max(f.most, list[i].thickness)
		}
		out, list = append(out, f), list[n:]
	}
	return out
}

const (
	block    = 16
	fewTries = 24 // neighbours or blocks of them for one entry, on either side
)

// lower notes that there is a choice with a smaller error; ties finds it.
func (s *search) lower(bound int64) {
	s.bound = bound
	s.any = false
}

// tightenInRoom lowers the bound to what it is within the window's thickness. It
// goes through a by rising thickness; those of b that go with it then are a
// stretch that only moves down.
func (s *search) tightenInRoom(m *meeting, a, b []entry, r room) {
	if !m.sorted {
		m.byA, m.spare = byThickness(a, m.byA, m.spare)
		m.byB, m.spare = byThickness(b, m.byB, m.spare)
		m.sorted = s.today == nil // else each meeting has lists of its own
	}
	m.near = newSet(len(b))
	from, to := len(b), len(b)
	for _, at := range m.byA {
		if !m.open[at.place] {
			continue
		}
		for from > 0 && m.byB[from-1].thickness+at.thickness >= r.needed {
			from--
			m.near.add(int(m.byB[from].place))
		}
		for to > from && m.byB[to-1].thickness+at.thickness > r.thickness {
			to--
			m.near.drop(int(m.byB[to].place))
		}
		mass, j := a[at.place].mass, int(m.heaviest[at.place])
		if j > 0 && r.short-mass-b[j-1].mass < s.bound {
			if k := m.near.before(j); k >= 0 {
				if miss := s.miss(mass+b[k].mass, &r); miss < s.bound {
					s.lower(miss)
				}
			}
		}
		if j < len(b) && mass+b[j].mass-r.short < s.bound {
			if k := m.near.from(j); k >= 0 {
				if miss := s.miss(mass+b[k].mass, &r); miss < s.bound {
					s.lower(miss)
				}
			}
		}
	}
}

// byThickness lists the places of the entries by rising thickness, by counting
// 11 bits at a time.
func byThickness(list []entry, out, spare []keyed) ([]keyed, []keyed) {
	const bits = 11
	if cap(out) < len(list) {
		out = make([]keyed, len(list))
	}
	if cap(spare) < len(list) {
		spare = make([]keyed, len(list))
	}
	out, spare = out[:len(list)], spare[:len(list)]
	var all int64
	for i := range list {
		out[i] = keyed{list[i].thickness, int32(i)}
		all |= list[i].thickness
	}
	for shift := 0; all>>shift != 0; shift += bits {
		var begin [1 << bits]int32
		for i := range out {
			begin[out[i].thickness>>shift&(1<<bits-1)]++
		}
		n := int32(0)
		for d, c := range begin {
			begin[d] = n
			n += c
		}
		for _, k := range out {
			d := k.thickness >> shift & (1<<bits - 1)
			spare[begin[d]] = k
			begin[d]++
		}
		out, spare = spare, out
	}
	return out, spare
}

// ties offers all pairs of just this sum, which has the error of the bound. Only
// those of a that are close can have one.
func (s *search) ties(m *meeting, a, b []entry, r room, sum int64) {
	j := len(b)
	for n := 0; n < len(m.close); {
		i := int(m.close[n])
		end := i
		for mass := a[i].mass; n < len(m.close) && a[m.close[n]].mass == mass; n++ {
			end++
		}
		wish := sum - a[i].mass
		if len(m.close) < len(b)/16 {
			j = sort.Search(j, func(k int) bool { return b[k].mass > wish })
		}
		for j > 0 && b[j-1].mass > wish {
			j--
		}
		begin := j
		for begin > 0 && b[begin-1].mass == wish {
			begin--
		}
		if begin < j {
			s.group(a[i:end], b[begin:j], r)
		}
		j = begin
	}
}

// group offers the best pairs of entries of a and b, which all have one sum of
// masses: of each number of pieces the thinnest that the window allows.
func (s *search) group(a, b []entry, r room) {
	for len(a) > 0 {
		endA := samePieces(a)
		for rest := b; len(rest) > 0; {
			endB := samePieces(rest)
			if s.any && int64(a[0].pieces+rest[0].pieces) > s.best.pieces {
				break
			}
			s.thinnest(a[:endA], rest[:endB], r)
			rest = rest[endB:]
		}
		a = a[endA:]
	}
}

// samePieces is where the entries with as many pieces as the first end.
func samePieces(list []entry) int {
	end := 1
	for end < len(list) && list[end].pieces == list[0].pieces {
		end++
	}
	return end
}

// thinnest offers the pair with the least thickness that the window allows, of
// entries that have one sum of masses and of pieces.
func (s *search) thinnest(a, b []entry, r room) {
	if t := a[0].thickness + b[0].thickness; t >= r.needed {
		if t <= r.thickness {
			s.offerPair(&a[0], &b[0], r)
		}
		return
	}
	j := len(b)
	for i := range a {
		for j > 0 && a[i].thickness+b[j-1].thickness >= r.needed {
			j--
		}
		if j < len(b) && a[i].thickness+b[j].thickness <= r.thickness {
			s.offerPair(&a[i], &b[j], r)
		}
	}
}

// offerPair keeps the choice of both entries where it is better than the best.
// Its error is that of the bound.
func (s *search) offerPair(a, b *entry, r room) {
	pieces, height, code := int64(a.pieces+b.pieces), a.thickness+b.thickness+s.plateH, a.code+b.code
	if s.any && !s.better(pieces, height) {
		if pieces > s.best.pieces || height > s.best.height || code <= s.code(&s.best) {
			return
		}
	}
	for i := range s.n {
		s.count[i] = s.digit(s.halves, code, i)
	}
	s.keep(room{short: r.short - a.mass - b.mass, pieces: pieces, height: height})
}

// code ranks a choice among those that are equal in all else.
func (s *search) code(c *candidate) int64 {
	code := int64(0)
	for i := range s.n {
		code += c.count[i] * s.halves.weight[i]
	}
	return code
}
