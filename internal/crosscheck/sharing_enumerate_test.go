package crosscheck

import (
	"math"
	"math/bits"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"
)

// sharing is how lines share a load, in SI.
type sharing struct {
	tight   uint      // the set of lines that pull
	tension []float64 // zero where slack
	gap     []float64 // how far the batten stands above the end of a line; for a tight line, not set
	// margin is by how much the least of the signs is right: a tension as a share of the whole
	// weight, a gap as a share of hung.sag. Negative: wrong.
	margin float64
	// right counts the sets with all signs right, by more than sharp. There is one, or the
	// batten is so close to a change that none is.
	right int
}

// sharp is what the signs of a set are trusted to. The solutions are good to about 1e-11
// of the whole weight on the battens that are drawn; see TestStiffnessAgainstExact.
const sharp = 1e-9

// enumerate tries every set of tight lines, two or more, and gives the one whose signs are
// all right: that the problem has just one such is not made use of, but found. With one
// line on the batten there is nothing to try. Where just one of several lines is tight, the
// centre of gravity stands exactly under it, and the batten may lean as it likes: a chance of
// nothing, which shows as a margin of nearly zero.
func enumerate(d hung) sharing {
	n := len(d.ropes)
	best := sharing{tension: make([]float64, n), gap: make([]float64, n), margin: math.Inf(-1)}
	if n == 1 {
		best.tight, best.tension[0], best.margin, best.right = 1, d.weight(), 1, 1
		return best
	}
	b := newBeam(d)
	stiff, push := b.condense()
	t := trial{b: b, stiff: stiff, push: push.RawVector().Data, deflection: make([]float64, n), pull: make([]float64, n)}
	for set := uint(1); set < 1<<n; set++ {
		if bits.OnesCount(set) < 2 {
			continue
		}
		margin := t.solve(set)
		if margin > sharp {
			best.right++
		}
		if !(margin > best.margin) {
			continue
		}
		best.tight, best.margin = set, margin
		for i := range n {
			best.tension[i], best.gap[i] = 0, 0
			if set>>i&1 == 1 {
				best.tension[i] = t.pull[i] * d.weight()
			} else {
				best.gap[i] = (b.long[i] - t.deflection[i]) * d.sag()
			}
		}
	}
	return best
}

// trial solves a condensed beam for one set of tight lines after the other.
type trial struct {
	b          *beam
	stiff      *mat.SymDense
	push       []float64
	deflection []float64 // of each node
	pull       []float64 // of each line; rounding where slack

	free   []int // nodes that a rigid line does not hold
	matrix []float64
	right  []float64
}

// solve takes the lines of the set as tight, whatever the signs, and gives the margin. A line that
// does not stretch holds its node where its end hangs: the node's equation is taken
// out, and gives the pull afterwards. A spring is added to the diagonal.
func (t *trial) solve(set uint) (margin float64) {
	n := len(t.push)
	t.free = t.free[:0]
	for i := range n {
		if set>>i&1 == 1 && math.IsInf(t.b.springs[i], 1) {
			t.deflection[i] = t.b.long[i]
		} else {
			t.free = append(t.free, i)
		}
	}
	m := len(t.free)
	t.matrix, t.right = append(t.matrix[:0], make([]float64, m*m)...), append(t.right[:0], make([]float64, m)...)
	for r, i := range t.free {
		t.right[r] = t.push[i]
		for j := range n {
			if set>>j&1 == 1 && math.IsInf(t.b.springs[j], 1) {
				t.right[r] -= t.stiff.At(i, j) * t.b.long[j]
			}
		}
		for c, j := range t.free {
			t.matrix[r*m+c] = t.stiff.At(i, j)
		}
		if set>>i&1 == 1 {
			t.matrix[r*m+r] += t.b.springs[i]
			t.right[r] += t.b.springs[i] * t.b.long[i]
		}
	}
	if m > 0 {
		// Straight to LAPACK: mat.Cholesky works out a condition number too, which takes as long again.
		factor, ok := lapack64.Potrf(blas64.Symmetric{N: m, Stride: m, Data: t.matrix, Uplo: blas.Upper})
		if !ok {
			return math.Inf(-1)
		}
		lapack64.Potrs(factor, blas64.General{Rows: m, Cols: 1, Stride: 1, Data: t.right})
		for r, i := range t.free {
			t.deflection[i] = t.right[r]
		}
	}
	// Every pull from the balance of its node and none from its spring's stretch, which may be a
	// difference of next to nothing. The straight part of the deflections bends nothing
	// and is taken off, so that its rounding is not multiplied by the stiffness.
	first, slope := t.deflection[0], t.deflection[n-1]-t.deflection[0]
	margin = math.Inf(1)
	for i := range n {
		t.pull[i] = t.push[i]
		for j := range n {
			t.pull[i] -= t.stiff.At(i, j) * (t.deflection[j] - first - slope*t.b.at[j])
		}
		if set>>i&1 == 1 {
			margin = min(margin, t.pull[i])
		} else {
			margin = min(margin, t.b.long[i]-t.deflection[i])
		}
	}
	return margin
}
