package crosscheck

import (
	"math/big"
	"slices"
)

// exactBits is the precision of the exact solution. A batten a kilometre long with pieces of a
// micrometre and springs that differ by 1e12 uses up some 150.
const exactBits = 300

func exactly(f float64) *big.Float { return new(big.Float).SetPrec(exactBits).SetFloat64(f) }

func sum(a, b *big.Float) *big.Float {
	return new(big.Float).SetPrec(exactBits).Add(a, b)
}

func difference(a, b *big.Float) *big.Float {
	return new(big.Float).SetPrec(exactBits).Sub(a, b)
}

func product(a, b *big.Float) *big.Float {
	return new(big.Float).SetPrec(exactBits).Mul(a, b)
}

func quotient(a, b *big.Float) *big.Float {
	return new(big.Float).SetPrec(exactBits).Quo(a, b)
}

// mesh is the displacement method once more, in numbers of 300 bits and as plainly as can be:
// in SI, a node at every line, at both ends of every load and of the batten, and closed
// forms for the load of a piece. Nothing is condensed and nothing left out. Unknowns go
// in pairs, deflection and slope of one node after the other.
type mesh struct {
	at     []float64
	matrix [][]*big.Float // without lines
	right  []*big.Float
}

func newMesh(d hung) *mesh {
	m := &mesh{at: []float64{0, d.length}}
	for _, r := range d.ropes {
		m.at = append(m.at, r.at)
	}
	for _, l := range d.loads {
		m.at = append(m.at, l.from, l.to)
	}
	slices.Sort(m.at)
	m.at = slices.Compact(m.at)
	size := 2 * len(m.at)
	m.matrix, m.right = make([][]*big.Float, size), make([]*big.Float, size)
	for r := range m.matrix {
		m.right[r] = exactly(0)
		m.matrix[r] = make([]*big.Float, size)
		for c := range m.matrix[r] {
			m.matrix[r][c] = exactly(0)
		}
	}
	for k := range len(m.at) - 1 {
		m.element(k, d.bending)
	}
	for _, l := range d.loads {
		m.put(l)
	}
	return m
}

func (m *mesh) node(x float64) int {
	k, _ := slices.BinarySearch(m.at, x)
	return k
}

func (m *mesh) size(k int) *big.Float { return difference(exactly(m.at[k+1]), exactly(m.at[k])) }

func (m *mesh) element(k int, bending float64) {
	h := m.size(k)
	ei := quotient(exactly(bending), product(h, product(h, h)))
	coefficients := [4][4]float64{{12, 6, -12, 6}, {6, 4, -6, 2}, {-12, -6, 12, -6}, {6, 2, -6, 4}}
	for r := range 4 {
		for c := range 4 {
			v := product(ei, exactly(coefficients[r][c]))
			for range r%2 + c%2 { // a slope goes with a length
				v = product(v, h)
			}
			m.matrix[2*k+r][2*k+c] = sum(m.matrix[2*k+r][2*k+c], v)
		}
	}
}

// put lays a load on the nodes. For a piece of length h on which the weight per length
// goes straight from p to q, the forces are h(7p+3q)/20 and h(3p+7q)/20, the moments
// h²(3p+2q)/60 and −h²(2p+3q)/60.
func (m *mesh) put(l stretch) {
	first, last := m.node(l.from), m.node(l.to)
	if first == last {
		m.right[2*first] = sum(m.right[2*first], exactly(l.weight))
		return
	}
	length := difference(exactly(l.to), exactly(l.from))
	per := func(x float64) *big.Float {
		u := quotient(difference(exactly(x), exactly(l.from)), length)
		lean := difference(product(exactly(2), u), exactly(1))
		return product(quotient(exactly(l.weight), length), sum(exactly(1), product(exactly(l.taper), lean)))
	}
	for k := first; k < last; k++ {
		h, p, q := m.size(k), per(m.at[k]), per(m.at[k+1])
		add := func(row int, ofP, ofQ, over float64, h *big.Float) {
			v := sum(product(exactly(ofP), p), product(exactly(ofQ), q))
			m.right[row] = sum(m.right[row], quotient(product(h, v), exactly(over)))
		}
		add(2*k, 7, 3, 20, h)
		add(2*k+2, 3, 7, 20, h)
		add(2*k+1, 3, 2, 60, product(h, h))
		add(2*k+3, -2, -3, 60, product(h, h))
	}
}

// exactShare takes the lines of a set as tight and gives every pull and every gap, whatever their
// signs. Where all are right, it is the answer: there is only one. The second result
// is false where the equations have no single solution.
func exactShare(d hung, tight []bool) (s sharing, ok bool) {
	m := newMesh(d)
	a := make([][]*big.Float, len(m.right))
	for r := range a {
		a[r] = append(slices.Clone(m.matrix[r]), m.right[r])
	}
	end := len(a)
	for i, rope := range d.ropes {
		row := 2 * m.node(rope.at)
		if !tight[i] {
			continue
		}
		if exactly(rope.spring).IsInf() { // the node stands where the line's end hangs
			for c := range end {
				a[row][c] = exactly(0)
			}
			a[row][row], a[row][end] = exactly(1), exactly(rope.long)
			continue
		}
		k := exactly(rope.spring)
		a[row][row] = sum(a[row][row], k)
		a[row][end] = sum(a[row][end], product(k, exactly(rope.long)))
	}
	u, ok := eliminate(a)
	if !ok {
		return sharing{}, false
	}
	s = sharing{tension: make([]float64, len(d.ropes)), gap: make([]float64, len(d.ropes))}
	for i, rope := range d.ropes {
		row := 2 * m.node(rope.at)
		if !tight[i] {
			s.gap[i], _ = difference(exactly(rope.long), u[row]).Float64()
			continue
		}
		s.tight |= 1 << i
		pull := m.right[row]
		for c := range end {
			pull = difference(pull, product(m.matrix[row][c], u[c]))
		}
		s.tension[i], _ = pull.Float64()
	}
	return s, true
}

// eliminate solves the augmented system by Gauss with pivots from rows.
func eliminate(a [][]*big.Float) (u []*big.Float, ok bool) {
	n := len(a)
	step := exactly(0)
	larger := func(x, y *big.Float) bool {
		return new(big.Float).Abs(x).Cmp(new(big.Float).Abs(y)) > 0
	}
	for c := range n {
		for r := c + 1; r < n; r++ {
			if larger(a[r][c], a[c][c]) {
				a[r], a[c] = a[c], a[r]
			}
		}
		if a[c][c].Sign() == 0 {
			return nil, false
		}
		for r := c + 1; r < n; r++ {
			if a[r][c].Sign() == 0 {
				continue
			}
			f := quotient(a[r][c], a[c][c])
			row := a[r]
			for j := c; j <= n; j++ {
				if a[c][j].Sign() != 0 {
					row[j] = difference(row[j], step.Mul(f, a[c][j]))
				}
			}
			row[c] = exactly(0)
		}
	}
	u = make([]*big.Float, n)
	for r := n - 1; r >= 0; r-- {
		u[r] = a[r][n]
		for c := r + 1; c < n; c++ {
			u[r] = difference(u[r], product(a[r][c], u[c]))
		}
		u[r] = quotient(u[r], a[r][r])
	}
	return u, true
}
