package crosscheck

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// beam is a batten by the displacement method, as a finite-element program has it:
// a node at every line, with a deflection (downwards) and a slope, elements of the cubic
// shape functions of Hermite between them, and loads put on the nodes so that they do
// the same work. In a straight beam of even stiffness the exact shape under a force at a
// node is made of these cubics, so that the deflections of the nodes are exact, wherever
// loads begin and end (P. Tong, Exact solution of certain problems by finite-element
// method, AIAA Journal 7, 1969, from memory). A tip beyond the outermost line takes no
// part in how the lines share: its load goes to that line as a force and a moment, which
// is what shape functions that go on straight outside say too.
//
// It is without dimensions: lengths in spans (outermost line to outermost line), weights
// in whole weights, EI = 1. So a stiffness means the same for every batten.
type beam struct {
	at      []float64 // places of the nodes, from 0 to 1
	springs []float64 // of the lines, +Inf where one does not stretch
	long    []float64 // how low their unstretched ends hang
	push    []float64 // what loads put on each node: forces
	twist   []float64 // and moments
	// Stiffness: forces for deflections, moments for deflections (slope by deflection) and moments
	// for slopes.
	ww, tt *mat.SymDense
	tw     *mat.Dense
}

func newBeam(d hung) *beam {
	n := len(d.ropes)
	b := &beam{
		push: make([]float64, n), twist: make([]float64, n),
		ww: mat.NewSymDense(n, nil), tt: mat.NewSymDense(n, nil), tw: mat.NewDense(n, n, nil),
	}
	first, span := d.ropes[0].at, d.span()
	for _, r := range d.ropes {
		b.at = append(b.at, (r.at-first)/span)
		b.long = append(b.long, r.long/d.sag())
		b.springs = append(b.springs, r.spring*math.Pow(span, 3)/d.bending)
	}
	for i := range n - 1 {
		b.element(i, b.at[i+1]-b.at[i])
	}
	for _, l := range d.loads {
		b.put(stretch{(l.from - first) / span, (l.to - first) / span, l.weight / d.weight(), l.taper})
	}
	return b
}

// element adds the stiffness of the piece from node i to the next (Przemieniecki, Theory
// of Matrix Structural Analysis, 1968, section 5.6, without shear; from memory).
func (b *beam) element(i int, h float64) {
	j := i + 1
	sym := func(m *mat.SymDense, r, c int, v float64) { m.SetSym(r, c, m.At(r, c)+v) }
	sym(b.ww, i, i, 12/(h*h*h))
	sym(b.ww, j, j, 12/(h*h*h))
	sym(b.ww, i, j, -12/(h*h*h))
	sym(b.tt, i, i, 4/h)
	sym(b.tt, j, j, 4/h)
	sym(b.tt, i, j, 2/h)
	for _, t := range []int{i, j} {
		b.tw.Set(t, i, b.tw.At(t, i)+6/(h*h))
		b.tw.Set(t, j, b.tw.At(t, j)-6/(h*h))
	}
}

// shape gives the node before x, or the first or last but one, and the four shape functions
// there: of its deflection and slope, and of the next node's.
func (b *beam) shape(x float64) (i int, w0, t0, w1, t1 float64) {
	last := len(b.at) - 1
	switch {
	case x <= 0:
		return 0, 1, x, 0, 0
	case x >= 1:
		return last - 1, 0, 0, 1, x - 1
	}
	for b.at[i+1] < x {
		i++
	}
	h := b.at[i+1] - b.at[i]
	s := (x - b.at[i]) / h
	return i, 1 - s*s*(3-2*s), h * s * (1 - s) * (1 - s), s * s * (3 - 2*s), -h * s * s * (1 - s)
}

func (b *beam) put(l stretch) { b.share(l, b.push, b.twist) }

// share adds a load to the forces and moments on the nodes.
func (b *beam) share(l stretch, push, twist []float64) {
	point := func(x, weight float64) {
		i, w0, t0, w1, t1 := b.shape(x)
		push[i] += weight * w0
		twist[i] += weight * t0
		push[i+1] += weight * w1
		twist[i+1] += weight * t1
	}
	if l.from == l.to {
		point(l.from, l.weight)
		return
	}
	for i := range len(b.at) + 1 { // piece by piece between the nodes, and the tips
		from, to := l.from, l.to
		if i > 0 {
			from = max(from, b.at[i-1])
		}
		if i < len(b.at) {
			to = min(to, b.at[i])
		}
		if from >= to {
			continue
		}
		// Gauss's three points are exact up to the fifth power; a cubic under a trapezoid has four.
		mid, half := (from+to)/2, (to-from)/2
		for _, p := range [...]struct{ at, weight float64 }{
			{-math.Sqrt(0.6), 5. / 9}, {0, 8. / 9}, {math.Sqrt(0.6), 5. / 9},
		} {
			x := mid + half*p.at
			point(x, half*p.weight*l.per(x))
		}
	}
}

// condense does away with the slopes (Guyan; exact here, for nothing is left out): what is
// left says which forces at the lines go with which deflections there.
func (b *beam) condense() (stiff *mat.SymDense, push *mat.VecDense) {
	n := len(b.at)
	var factor mat.Cholesky
	if !factor.Factorize(b.tt) {
		panic("a beam held at all its nodes has no slope free")
	}
	var slopes, back mat.Dense // slopes that unit deflections ask for, and the forces of these
	if err := factor.SolveTo(&slopes, b.tw); err != nil {
		panic(err)
	}
	back.Mul(b.tw.T(), &slopes)
	stiff = mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			stiff.SetSym(i, j, b.ww.At(i, j)-(back.At(i, j)+back.At(j, i))/2)
		}
	}
	push = mat.NewVecDense(n, nil)
	push.MulVec(slopes.T(), mat.NewVecDense(n, b.twist))
	push.SubVec(mat.NewVecDense(n, b.push), push)
	return stiff, push
}
