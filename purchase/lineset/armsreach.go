package lineset

import (
	"strconv"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// inReach lists what arms reach of a stack from each bridge of the run at a trim. Nothing is told of a stack that is
// too tall for its rods, nor of a run without bridges.
func (r *Rigged) inReach(trim units.Length, s arbor.Stack) []arbor.Reach {
	var out []arbor.Reach
	for _, b := range r.set.Rigging.Run.Bridges {
		if reach, err := r.flight.Reach(b.Name, trim, s); err == nil {
			out = append(out, reach)
		}
	}
	return out
}

// reached gives the last piece, counted from 1 at the bottom, of those from one piece up that are all in reach; less
// than that piece where it is not.
func reached(reach []arbor.Reach, from int) int {
	last := from - 1
	for more := true; more; {
		more = false
		for _, b := range reach {
			if b.First <= last+1 && last+1 <= b.Last {
				last, more = b.Last, true
			}
		}
	}
	return last
}

// stack is what is in as package arbor takes it, which finds the plates by its own rule.
func (a *inArbor) stack() (s arbor.Stack) {
	pipe := a.pipe
	for _, row := range a.rows {
		if under := min(row.Count, pipe); under > 0 {
			pipe -= under
			below := row
			below.Count = under
			s.Pipe = append(s.Pipe, below)
		}
	}
	a.show(func(row arbor.Row) { s.Show = append(s.Show, row) })
	return s
}

// arms tells a fault where some of the highest pieces, so many, are out of reach of an arbor with all of them in.
func (w *walked) arms(in inArbor, count int) error {
	if len(w.set.Rigging.Run.Bridges) == 0 || in.height() > w.set.Rigging.Arbor.Room {
		return nil
	}
	all := in.count()
	last := reached(w.inReach(w.trim, in.stack()), all-count+1)
	if last >= all {
		return nil
	}
	return &units.FieldError{
		Field: "count", Value: "piece " + strconv.Itoa(last+1) + " from the bottom",
		Want: "pieces that arms reach from a bridge of the run with the batten at " + check.Show(w.trim), Err: ErrOutOfReach,
	}
}

// reach marks which pieces can be put in at each halt, and reports those that can be at none.
func (q *planning) reach() error {
	from := q.kept.pieces // in when the job begins
	for _, row := range q.counter.Stack.Pipe {
		from += row.Count
	}
	ever := make([]bool, q.problem.Pieces)
	for k := range q.problem.Positions {
		position := &q.problem.Positions[k]
		if position.Reach = make([]bool, q.problem.Pieces); !q.bridged[k] {
			continue
		}
		seen := q.inReach(q.spots[k].trim, q.counter.Stack)
		for n := range position.Reach {
			at := from + n + 1
			position.Reach[n] = len(q.set.Rigging.Run.Bridges) == 0 || reached(seen, at) >= at
			ever[n] = ever[n] || position.Reach[n]
		}
	}
	for n, ok := range ever {
		if !ok {
			return &units.FieldError{
				Field: "trims", Value: "piece " + strconv.Itoa(from+n+1) + " from the bottom",
				Want: "a trim at which arms reach it from a bridge of the run", Err: ErrOutOfReach,
			}
		}
	}
	return nil
}
