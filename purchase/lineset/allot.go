package lineset

import "example.com/steelyard/arbor"

// Allot shares the house's stock out among all its sets, so that the worst error, referred to the batten, is as small as it can
// be, and the total then; and tells what to hire for every set to have its own stack, as if the whole stock were there for it
// alone. Stacks come in the order of the sets. It works anew each time that it is asked: see [arbor.Allot].
//
// Whatever else a set answers is with its own stack. The errors are those of arbor.Allot.
func (r *RiggedHouse) Allot() (arbor.Allotment, error) {
	jobs := make([]arbor.Job, len(r.sets))
	for i, s := range r.sets {
		jobs[i] = arbor.Job{Name: s.set.Name, Frame: s.set.Rigging.Arbor, Wanted: s.counter.Pieces, Ratio: s.counter.Ratio}
	}
	return arbor.Allot(jobs, r.house.Stock)
}
