package load

import (
	"math"

	"example.com/steelyard/internal/beam"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Bound is what stops a load from being greater, or a line from being further off. The zero value is
// BoundByNothing.
type Bound uint8

// What may bind.
const (
	BoundByNothing Bound = iota // no limit is met, however far one goes
	BoundByLine                 // a lift line meets its limit
	BoundByPipe                 // the bending stress in the pipe meets its limit
	BoundByTipping              // with more the batten tips
)

var boundNames = [...]string{"nothing", "line", "pipe", "tipping"}

// String gives the name: nothing, line, pipe or tipping.
func (b Bound) String() string { return boundNames[min(int(b), len(boundNames)-1)] }

// MarshalText gives the name.
func (b Bound) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// PointAllowed is the heaviest thing that may still be hung at one point.
type PointAllowed struct {
	Mass  units.Mass   `json:"mass"`  // zero or more; it means nothing where nothing binds
	Bound Bound        `json:"bound"` // what is met with it
	Line  int          `json:"line"`  // the place in the batten's lines of the line that binds, where one does
	At    units.Length `json:"at"`    // where along the stretch it is worst
}

// mostTimes is how many times what is carried a point may weigh before nothing is said to bind.
const mostTimes = 1e6

// PointAllowed tells the heaviest mass that may be hung at one point anywhere from one place on the batten to
// another, between two lines or at one place, beside what hangs there, such that at the trim no
// line and no part of the pipe exceeds its limit and the batten does not tip. A little more does, at
// the place named. It is 0 where a limit is exceeded, or used in full, as it is; nothing binds where not even a million times what is
// carried meets a limit.
//
// At one place it is exact, and the least mass that meets a limit, for a greater one may exceed it no more
// once lines have gone slack. Along a stretch the place where that is least is gone after from the worst place of one
// mass to that of the next: see [Rigged.Envelope].
//
// The errors are those of [Rigged.Share], and *units.FieldError for from, to and limits.
func (r *Rigged) PointAllowed(trim, from, to units.Length, limits Limits) (PointAllowed, error) {
	var p check.Problems
	check.Finite(&p, "trim", trim)
	from, to = r.stretch(&p, from, to)
	p.Within("limits", "", r.limitFaults(limits))
	if err := p.Err(); err != nil {
		return PointAllowed{}, err
	}
	w := r.layout.Borrow()
	defer w.Return()
	carried, centre, err := r.solve(w, trim)
	if err != nil {
		return PointAllowed{}, err
	}
	if used, bound, line := r.used(w, limits); used >= 1 {
		return PointAllowed{Bound: bound, Line: line, At: from}, nil
	}
	best := r.allowedAt(w, carried, centre, from, limits)
	if other := r.allowedAt(w, carried, centre, to, limits); other.Mass < best.Mass {
		best = other
	}
	for range mostWorst {
		// A hair less: with all of it the batten may be about to tip at one of the two ends.
		found, err := r.rove(trim, best.Mass.Scale(1-1e-9), from, to, limits.Stress > 0)
		if err != nil {
			break
		}
		used, at := r.worstOf(found, limits)
		if used <= 1+1e-12 {
			break
		}
		other := r.allowedAt(w, carried, centre, at, limits)
		if !(other.Mass < best.Mass) {
			break
		}
		best = other
	}
	if best.Bound == BoundByNothing {
		best = PointAllowed{}
	}
	return best, nil
}

// mostWorst bounds the search along a stretch. It closes in like Newton's, in a few steps.
const mostWorst = 60

// allowedAt is the least mass that meets a limit at one place, beside the weights that lie in w. Between two turns of the
// tight lines tensions are straight over the mass, and the stress bows downwards: where the first of two neighbouring
// turns is within the limits and the second beyond, there is one mass between.
func (r *Rigged) allowedAt(w *beam.Work, carried units.Mass, centre, at units.Length, limits Limits) PointAllowed {
	reach := r.kernelReach()
	most := PointAllowed{Mass: carried.Scale(mostTimes), At: at}
	first, last := r.lines[0].at, r.lines[len(r.lines)-1].at
	if outside := max(first-at, at-last); outside > 0 { // the centre of gravity moves out to an outermost line
		inside := centre - first
		if at > last {
			inside = last - centre
		}
		if tips := carried.Scale(max(0, units.Ratio(inside, outside))); tips < most.Mass {
			most = PointAllowed{Mass: tips, Bound: BoundByTipping, At: at}
		}
	}
	heaviest := float64(most.Mass.Weight(units.StandardGravity))
	hang := func(point float64) (float64, Bound, int) {
		w.LoadWeights()
		w.AddPoint(point, float64(at))
		if !w.Hang(reach) {
			return math.Inf(1), BoundByTipping, 0 // the mass at most balances, so only rounding can say so
		}
		return r.used(w, limits)
	}
	within := 0.0
	for _, share := range []float64{1e-7, 1e-5, 1e-3, 0.1, 1} {
		far := heaviest * share
		for _, turn := range append(w.TurnsOfPoint(far, float64(at), reach), 1) {
			beyond := float64(turn * far)
			if beyond <= within {
				continue
			}
			used, bound, line := hang(beyond)
			if used <= 1 {
				within = beyond
				continue
			}
			within, bound, line = meets(within, beyond, bound, line, hang)
			return PointAllowed{Mass: units.Force(within).Mass(units.StandardGravity), Bound: bound, Line: line, At: at}
		}
	}
	return most
}

// meets closes in, between a value that is within the limits and one that is beyond them by what is given, on where the
// limit is met: the last within, and what is met there.
func meets(within, beyond float64, bound Bound, line int, used func(float64) (float64, Bound, int)) (float64, Bound, int) {
	for {
		middle := within + float64((beyond-within)/2)
		if middle == within || middle == beyond {
			return within, bound, line
		}
		if u, b, l := used(middle); u > 1 {
			beyond, bound, line = middle, b, l
		} else {
			within = middle
		}
	}
}

// worstOf is how far the limits are used at worst while a point roves, and where it then is.
func (r *Rigged) worstOf(found beam.Roving, limits Limits) (used float64, at units.Length) {
	if limits.Stress > 0 {
		most := found.Sag
		if -found.Hog.Value > most.Value {
			most = beam.Peak{Value: -found.Hog.Value, At: found.Hog.At}
		}
		used, at = units.Ratio(units.Moment(most.Value).Stress(r.section), limits.Stress), units.Length(most.At)
	}
	for i, p := range found.Pulls {
		if limit := r.limit(i, limits); limit > 0 {
			if u := units.Ratio(units.Force(p.Most.Value), limit); u > used {
				used, at = u, units.Length(p.Most.At)
			}
		}
	}
	return used, at
}

// used is how far the limits are used after Hang, and by what.
func (r *Rigged) used(w *beam.Work, limits Limits) (used float64, bound Bound, line int) {
	if limits.Stress > 0 {
		sag, hog, _ := w.Extremes()
		used, bound = units.Ratio(units.Moment(max(sag.Value, -hog.Value)).Stress(r.section), limits.Stress), BoundByPipe
	}
	for i, pull := range w.Reaction {
		if limit := r.limit(i, limits); limit > 0 {
			if u := units.Ratio(units.Force(pull), limit); u > used {
				used, bound, line = u, BoundByLine, i
			}
		}
	}
	return used, bound, line
}
