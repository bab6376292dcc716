package load

import (
	"math"
	"slices"
	"strconv"

	"example.com/steelyard/internal/beam"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// TrimTolerance is how far one line may be off before a limit is passed.
type TrimTolerance struct {
	Short Off `json:"short"` // as the line is made shorter than it is
	Long  Off `json:"long"`  // as it is made longer
}

// Off is how far a line may be off to one side.
type Off struct {
	By    units.Length `json:"by"`    // from what it is, zero or more; it means nothing where nothing binds
	Bound Bound        `json:"bound"` // what is met there; nothing: no limit is, however far the line is off
	Line  int          `json:"line"`  // the place in the batten's lines of the line that binds, where one does
}

// TrimTolerance answers the rigger's question whether the batten is level enough: how far, at a trim,
// may one line be shorter or longer than it is, while the other lines stay as they are, before it or
// a neighbour carries more than the limit, or the pipe is bent too far. Line is a place in the batten's
// lines, counted from 0. Both sides are exact: on the way tensions are straight lines over the error
// between the errors at which a line goes slack, and those are found.
//
// The lengths follow from the pipe's stiffness and the lines' own, so they are only as good as the Modulus of the [Tube]
// and the EA of each [Line]. They are least on a stout pipe with lines close together that do not stretch: there a
// millimetre counts.
//
// The errors are those of [Rigged.Share], and *units.FieldError for line and limits.
func (r *Rigged) TrimTolerance(trim units.Length, line int, limits Limits) (TrimTolerance, error) {
	var p check.Problems
	check.Finite(&p, "trim", trim)
	if line < 0 || line >= len(r.lines) {
		p.Add("line", strconv.Itoa(line), "0 to "+strconv.Itoa(len(r.lines)-1), units.ErrOutOfRange)
	}
	p.Within("limits", "", r.limitFaults(limits))
	if err := p.Err(); err != nil {
		return TrimTolerance{}, err
	}
	w := r.layout.Borrow()
	defer w.Return()
	if _, _, err := r.solve(w, trim); err != nil {
		return TrimTolerance{}, err
	}
	far := r.furthest(w)
	return TrimTolerance{Short: r.off(w, line, -far, limits), Long: r.off(w, line, far, limits)}, nil
}

// furthest is an error beyond which nothing changes, times the bending stiffness: more than all that pipe and
// lines can give under the weight, tilted over the whole batten from the closest two lines.
func (r *Rigged) furthest(w *beam.Work) float64 {
	n := len(r.lines)
	weight, give, least := 0.0, 0.0, r.length
	for _, v := range w.Weights {
		weight += v
	}
	low, high := r.lines[0].low, r.lines[0].low
	for i := range n {
		give = max(give, r.bending*r.lines[i].give)
		low, high = min(low, r.lines[i].low), max(high, r.lines[i].low)
		if i > 0 {
			least = min(least, r.lines[i].at-r.lines[i-1].at)
		}
	}
	length := float64(r.length)
	bends := float64(length * length * length)
	return 4 * (float64(weight*(bends+give)) + (high - low)) * length / float64(least)
}

// off goes from the line as it is to one that is off by so much, in growing strides because the errors that
// matter are small, and finds where a limit is met. Between two turns tensions are straight and the
// stress, being the greatest of values that are, bows downwards: where the first of two
// neighbouring turns is within the limits and the second beyond, there is one place between.
func (r *Rigged) off(w *beam.Work, line int, furthest float64, limits Limits) Off {
	reach := r.kernelReach()
	made := make([]float64, len(r.lines))
	for i := range made {
		made[i] = r.lines[i].low
	}
	low := slices.Clone(made)
	at := func(off float64) (float64, Bound, int) {
		low[line] = made[line] + off
		w.SetLow(low)
		w.Hang(reach)
		return r.used(w, limits)
	}
	if used, bound, worst := at(0); used >= 1 {
		return Off{Bound: bound, Line: worst}
	}
	within := 0.0
	for _, stride := range []float64{1e-9, 1e-6, 1e-3, 1} {
		far := float64(furthest * stride)
		to := slices.Clone(made)
		to[line] += far
		for _, turn := range append(w.TurnsOfLow(made, to, reach), 1) {
			beyond := float64(turn * far)
			if math.Abs(beyond) <= math.Abs(within) {
				continue
			}
			used, bound, worst := at(beyond)
			if used <= 1 {
				within = beyond
				continue
			}
			within, bound, worst = meets(within, beyond, bound, worst, at)
			return Off{By: units.Length(math.Abs(within) / r.bending), Bound: bound, Line: worst}
		}
	}
	return Off{}
}
