package crosscheck

import (
	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/gonum"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// rival is what a good programmer would write with gonum to share the load of a batten over
// and over at different trims: all that does not depend on the trim is done
// beforehand, the loads' fixed-end moments and forces for a unit of each weight too, and
// nothing is allocated. It has the tensions only, and every line pulls or pushes: no slack
// lines, no moments, no shear, no trim errors.
//
// On rigid lines the unknowns are the slopes over the lines (the slope-deflection
// method); on springs the deflections too.
type rival struct {
	items []item
	parts []part
	// of the bare batten
	barePush, bareTwist []float64

	elements []float64 // 6/h² of each span
	springs  []float64
	slopes   *mat.SymDense // the matrix on rigid lines
	factor   blas64.Triangular
	whole    blas64.SymmetricBand // the matrix on springs: deflection and slope of one line after the other
	banded   blas64.TriangularBand
	diagonal []float64 // of the factor of slopes as a matrix of three diagonals
	beside   []float64

	push, twist  []float64
	work, pull   []float64
	scratch      []float64
	factorInPlay blas64.Symmetric
	bandInPlay   blas64.SymmetricBand
}

// item is one that piles, and where in rival.parts its own end.
type item struct {
	weight, below, perMetre float64
	parts                   int
}

// part is what a unit of an item's weight puts on a line held fast.
type part struct {
	line        int
	push, twist float64
}

func newRival(d load.Batten, h load.Hang) *rival {
	bare := hangUp(d, nil, 0)
	b := newBeam(bare)
	n := len(b.at)
	r := &rival{
		springs: b.springs, slopes: b.tt,
		push: make([]float64, n), twist: make([]float64, n),
		work: make([]float64, 2*n), pull: make([]float64, n), scratch: make([]float64, n*n),
		diagonal: make([]float64, n), beside: make([]float64, n-1),
	}
	for i := range n {
		r.barePush = append(r.barePush, b.push[i]*bare.weight())
		r.bareTwist = append(r.bareTwist, b.twist[i]*bare.weight())
		if i > 0 {
			step := b.at[i] - b.at[i-1]
			r.elements = append(r.elements, 6/(step*step))
			r.beside[i-1] = b.tt.At(i-1, i)
		}
		r.diagonal[i] = b.tt.At(i, i)
	}
	first, span := bare.ropes[0].at, bare.span()
	for _, i := range h {
		push, twist := make([]float64, n), make([]float64, n)
		from, to := (i.From.In(units.Metre)-first)/span, (i.To.In(units.Metre)-first)/span
		b.share(stretch{from, to, 1, i.Taper}, push, twist)
		for line := range n {
			if push[line] != 0 || twist[line] != 0 {
				r.parts = append(r.parts, part{line, push[line], twist[line]})
			}
		}
		weight := i.Mass.In(units.Kilogram) * units.StandardGravity.In(units.MetrePerSecondSquared)
		r.items = append(r.items, item{weight, i.Below.In(units.Metre), weight / i.Height.In(units.Metre), len(r.parts)})
	}

	if !(gonum.Implementation{}).Dpttrf(n, r.diagonal, r.beside) {
		panic("not positive definite")
	}
	r.factorInPlay = blas64.Symmetric{N: n, Stride: n, Data: r.scratch, Uplo: blas.Upper}
	own := blas64.Symmetric{N: n, Stride: n, Data: append([]float64(nil), b.tt.RawSymmetric().Data...), Uplo: blas.Upper}
	var ok bool
	if r.factor, ok = lapack64.Potrf(own); !ok {
		panic("not positive definite")
	}

	const beyond = 3
	band := mat.NewSymBandDense(2*n, beyond, nil)
	for i := range n {
		for j := i; j < min(n, i+2); j++ {
			band.SetSymBand(2*i, 2*j, b.ww.At(i, j))
			band.SetSymBand(2*i, 2*j+1, b.tw.At(j, i))
			band.SetSymBand(2*i+1, 2*j+1, b.tt.At(i, j))
			if j > i {
				band.SetSymBand(2*i+1, 2*j, b.tw.At(i, j))
			}
		}
		if bare.elastic() {
			band.SetSymBand(2*i, 2*i, band.At(2*i, 2*i)+b.springs[i])
		}
	}
	r.whole = band.RawSymBand()
	r.bandInPlay = r.whole
	r.bandInPlay.Data = make([]float64, len(r.whole.Data))
	if bare.elastic() {
		own := r.whole
		own.Data = append([]float64(nil), r.whole.Data...)
		if r.banded, ok = lapack64.Pbtrf(own); !ok {
			panic("not positive definite")
		}
	}
	return r
}

// elastic tells whether all lines are springs.
func (d hung) elastic() bool {
	for _, r := range d.ropes {
		if r.spring > 1e300 {
			return false
		}
	}
	return true
}

// load puts on the lines what the batten carries at a trim. All items pile.
func (r *rival) load(trim float64) {
	copy(r.push, r.barePush)
	copy(r.twist, r.bareTwist)
	from := 0
	for k := range r.items {
		i := &r.items[k]
		weight := min(i.weight, max(0, (trim-i.below)*i.perMetre))
		for j := range r.parts[from:i.parts] {
			p := &r.parts[from+j]
			r.push[p.line] += weight * p.push
			r.twist[p.line] += weight * p.twist
		}
		from = i.parts
	}
}

// dense solves on rigid lines, with the matrix of the slopes factorised anew.
func (r *rival) dense(trim float64) []float64 {
	r.load(trim)
	copy(r.scratch, r.slopes.RawSymmetric().Data)
	factor, ok := lapack64.Potrf(r.factorInPlay)
	if !ok {
		panic("not positive definite")
	}
	lapack64.Potrs(factor, blas64.General{Rows: len(r.twist), Cols: 1, Stride: 1, Data: r.twist})
	return r.pulls()
}

// plain is the same as most would write it, with the solver that gonum's documentation begins with: the matrix
// assembled for the question and given to VecDense.SolveVec.
func (r *rival) plain(trim float64) []float64 {
	r.load(trim)
	n := len(r.twist)
	slopes := mat.NewDense(n, n, nil)
	for i := range n {
		for j := max(0, i-1); j < min(n, i+2); j++ {
			slopes.Set(i, j, r.slopes.At(i, j))
		}
	}
	var x mat.VecDense
	if err := x.SolveVec(slopes, mat.NewVecDense(n, r.twist)); err != nil {
		panic(err)
	}
	copy(r.twist, x.RawVector().Data)
	return r.pulls()
}

// factorised is dense with the factor kept from before.
func (r *rival) factorised(trim float64) []float64 {
	r.load(trim)
	lapack64.Potrs(r.factor, blas64.General{Rows: len(r.twist), Cols: 1, Stride: 1, Data: r.twist})
	return r.pulls()
}

// tridiagonal is the same again by one who knows that the matrix has but three diagonals.
func (r *rival) tridiagonal(trim float64) []float64 {
	r.load(trim)
	gonum.Implementation{}.Dpttrs(len(r.twist), 1, r.diagonal, r.beside, r.twist, 1)
	return r.pulls()
}

// pulls makes tensions of the slopes, which stand in twist.
func (r *rival) pulls() []float64 {
	copy(r.pull, r.push)
	for i, k := range r.elements {
		v := k * (r.twist[i] + r.twist[i+1])
		r.pull[i] -= v
		r.pull[i+1] += v
	}
	return r.pull
}

// band solves on springs, with the matrix, which has seven diagonals, factorised anew.
func (r *rival) band(trim float64) []float64 {
	copy(r.bandInPlay.Data, r.whole.Data)
	factor, ok := lapack64.Pbtrf(r.bandInPlay)
	if !ok {
		panic("not positive definite")
	}
	return r.onSprings(factor, trim)
}

// bandFactorised is the same with the factor kept from before.
func (r *rival) bandFactorised(trim float64) []float64 { return r.onSprings(r.banded, trim) }

func (r *rival) onSprings(factor blas64.TriangularBand, trim float64) []float64 {
	r.load(trim)
	for i := range r.push {
		r.work[2*i], r.work[2*i+1] = r.push[i], r.twist[i]
	}
	lapack64.Pbtrs(factor, blas64.General{Rows: len(r.work), Cols: 1, Stride: 1, Data: r.work})
	for i, k := range r.springs {
		r.pull[i] = k * r.work[2*i]
	}
	return r.pull
}
