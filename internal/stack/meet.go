package stack

// meeting is the room that one meeting of two lists works in, kept from one to
// the next.
type meeting struct {
	heaviest []int32 // for each of a: how many of b are no heavier than what is then wanted
	byA, byB []keyed // the lists by rising thickness
	spare    []keyed
	near     set // those of b whose thickness fits
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
	if s.tighten(a, b, r) {
		s.tightenInRoom(a, b, r)
	}
	if s.problem.Light || s.bound == 0 {
		s.ties(a, b, r, r.short-s.bound)
	}
	if s.problem.Heavy && s.bound > 0 && r.short+s.bound <= r.mass {
		s.ties(a, b, r, r.short+s.bound)
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

// tighten lowers the bound by pairs of neighbours: for each of a, the heaviest of
// b that does not pass the wish and the next. It reports whether the bound may
// still be too high, because such a pair is too thick or too thin.
func (s *search) tighten(a, b []entry, r room) bool {
	m := &s.halves.scratch
	if cap(m.heaviest) < len(a) {
		m.heaviest = make([]int32, len(a))
	}
	m.heaviest = m.heaviest[:len(a)]
	left := int64(none)
	j := len(b)
	for i := range a {
		e := &a[i]
		wish := min(r.short, r.mass) - e.mass
		for j > 0 && b[j-1].mass > wish {
			j--
		}
		m.heaviest[i] = int32(j)
		for k := max(j-1, 0); k < min(j+1, len(b)); k++ {
			if miss := s.miss(e.mass+b[k].mass, &r); miss < s.bound {
				if t := e.thickness + b[k].thickness; t >= r.needed && t <= r.thickness {
					s.lower(miss)
				} else {
					left = min(left, miss)
				}
			}
		}
	}
	return left < s.bound
}

// lower notes that there is a choice with a smaller error; ties finds it.
func (s *search) lower(bound int64) {
	s.bound = bound
	s.any = false
}

// tightenInRoom lowers the bound to what it is within the window's thickness. It
// goes through a by rising thickness; those of b that go with it then are a
// stretch that only moves down.
func (s *search) tightenInRoom(a, b []entry, r room) {
	m := &s.halves.scratch
	m.byA, m.spare = byThickness(a, m.byA, m.spare)
	m.byB, m.spare = byThickness(b, m.byB, m.spare)
	m.near = newSet(len(b))
	from, to := len(b), len(b)
	for _, at := range m.byA {
		for from > 0 && m.byB[from-1].thickness+at.thickness >= r.needed {
			from--
			m.near.add(int(m.byB[from].place))
		}
		for to > from && m.byB[to-1].thickness+at.thickness > r.thickness {
			to--
			m.near.drop(int(m.byB[to].place))
		}
		e, j := &a[at.place], int(m.heaviest[at.place])
		if j > 0 && s.miss(e.mass+b[j-1].mass, &r) < s.bound {
			if k := m.near.before(j); k >= 0 {
				if miss := s.miss(e.mass+b[k].mass, &r); miss < s.bound {
					s.lower(miss)
				}
			}
		}
		if j < len(b) && s.miss(e.mass+b[j].mass, &r) < s.bound {
			if k := m.near.from(j); k >= 0 {
				if miss := s.miss(e.mass+b[k].mass, &r); miss < s.bound {
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

// ties offers all pairs of just this sum, which has the error of the bound.
func (s *search) ties(a, b []entry, r room, sum int64) {
	i, j := 0, len(b)
	for i < len(a) && j > 0 {
		switch total := a[i].mass + b[j-1].mass; {
		case total < sum:
			i++
		case total > sum:
			j--
		default:
			endA, beginB := i+1, j-1
			for endA < len(a) && a[endA].mass == a[i].mass {
				endA++
			}
			for beginB > 0 && b[beginB-1].mass == b[j-1].mass {
				beginB--
			}
			s.group(a[i:endA], b[beginB:j], r)
			i, j = endA, beginB
		}
	}
}

// group offers the best pairs of entries of a and b, which all have one sum of
// masses: of each number of pieces the thinnest that the window allows.
func (s *search) group(a, b []entry, r room) {
	for i, endA := 0, 0; i < len(a); i = endA {
		endA = samePieces(a, i)
		for j, endB := 0, 0; j < len(b); j = endB {
			endB = samePieces(b, j)
			if s.any && int64(a[i].pieces+b[j].pieces) > s.best.pieces {
				break
			}
			s.thinnest(a[i:endA], b[j:endB], r)
		}
	}
}

// samePieces is where the entries with as many pieces as the one at i end.
func samePieces(list []entry, i int) int {
	end := i + 1
	for end < len(list) && list[end].pieces == list[i].pieces {
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
