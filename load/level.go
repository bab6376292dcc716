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
	By   units.Length `json:"by"`   // from what it is, zero or more
	Line int          `json:"line"` // the place in Lines of the line that then meets its limit; −1: the pipe does, or nothing
	// Free is true where no limit is passed however far the line is off. By is then how far anything
	// still changes: beyond it the line is slack, or carries all that it ever can.
	Free bool `json:"free"`
}

// TrimTolerance answers the rigger's question whether the batten is level enough: how far, at a trim,
// may one line be shorter or longer than it is, while the other lines stay as they are, before it or
// a neighbour carries more than the limit, or the pipe is bent too far. Line is a place in the batten's
// lines, counted from 0. Both sides are exact: on the way tensions are straight lines over the error
// between the errors at which a line goes slack, and those are found.
//
// The lengths follow from the pipe's stiffness and the lines' own, so they are only as good as
// the Modulus of the [Tube] and the EA of each [Line]. They are least on a stout pipe with lines close together that do not stretch:
// there a millimetre counts.
//
// The errors are those of [Rigged.Share], and *units.FieldError for line and limits.
func (r *Rigged) TrimTolerance(trim units.Length, line int, limits Limits) (TrimTolerance, error) {
	var p check.Problems
	check.Finite(&p, "trim", trim)
	if line < 0 || line >= len(r.lines) {
		p.Add("line", strconv.Itoa(line), "0 to "+strconv.Itoa(len(r.lines)-1), units.ErrOutOfRange)
	}
	p.Within("limits", "", limits.faults())
	if err := p.Err(); err != nil {
		return TrimTolerance{}, err
	}
	if _, err := r.Share(trim); err != nil {
		return TrimTolerance{}, err
	}
	w := r.layout.Borrow()
	defer w.Return()
	r.lay(w, trim, false)
	w.LoadWeights()
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
	low, high := r.low[0], r.low[0]
	for i := range n {
		give = max(give, r.bending*r.give[i])
		low, high = min(low, r.low[i]), max(high, r.low[i])
		if i > 0 {
			least = min(least, r.lines[i]-r.lines[i-1])
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
	reach := 2 * float64(r.reach())
	low := slices.Clone(r.low)
	at := func(off float64) (float64, int) {
		low[line] = r.low[line] + off
		w.SetLow(low)
		w.Hang(reach)
		return r.used(w, limits)
	}
	length := func(off float64) units.Length { return units.Length(math.Abs(off) / r.bending) }
	if used, worst := at(0); used >= 1 {
		return Off{Line: worst}
	}
	within := 0.0
	var last float64
	for _, stride := range []float64{1e-9, 1e-6, 1e-3, 1} {
		far := float64(furthest * stride)
		to := slices.Clone(r.low)
		to[line] += far
		turns := w.TurnsOfLow(r.low, to, reach)
		for _, turn := range append(turns, 1) {
			beyond := float64(turn * far)
			if turn < 1 {
				last = beyond
			}
			if math.Abs(beyond) <= math.Abs(within) {
				continue
			}
			used, worst := at(beyond)
			if used <= 1 {
				within = beyond
				continue
			}
			for range 200 {
				middle := within + float64((beyond-within)/2)
				if middle == within || middle == beyond {
					break
				}
				if u, l := at(middle); u > 1 {
					beyond, worst = middle, l
				} else {
					within = middle
				}
			}
			return Off{By: length(within), Line: worst}
		}
	}
	return Off{By: length(last), Line: -1, Free: true}
}

// used is how far the limits are used after Hang, and the line that does; −1 for the pipe.
func (r *Rigged) used(w *beam.Work, limits Limits) (used float64, worst int) {
	worst = -1
	if limits.Stress > 0 {
		sag, hog, _ := w.Extremes()
		used = units.Ratio(units.Moment(max(sag.Value, -hog.Value)).Stress(r.section), limits.Stress)
	}
	for i, pull := range w.Reaction {
		if limits.Line > 0 && units.Ratio(units.Force(pull), limits.Line) > used {
			used, worst = units.Ratio(units.Force(pull), limits.Line), i
		}
	}
	return used, worst
}
