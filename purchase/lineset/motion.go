package lineset

import (
	"strconv"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Felt is what of the set a hand feels when it starts or stops it, and what moves, at any trim that the set reaches: with
// what is carried there. Errors as for At.
func (r *Rigged) Felt(trim units.Length) (purchase.Felt, error) {
	if err := r.reaches(trim); err != nil {
		return purchase.Felt{}, err
	}
	return r.ropes.Felt(trim, r.load.Carried(trim), r.counter.Arbor)
}

// Run is what every rope, block and dead end of the set bears while it is flown slowly one way by hand, the lock open, with
// drag at every sheave. Errors as for At, and those of [purchase.Reeved.Run].
func (r *Rigged) Run(trim units.Length, way purchase.Way) (purchase.Running, error) {
	state, err := r.At(trim)
	if err != nil {
		return purchase.Running{}, err
	}
	return r.ropes.Run(trim, r.bodies(state.Share), way)
}

// LetGo is what becomes of the set when it is let go at a trim with the lock open: it runs to one of the arbor's stops, or
// stays. What is carried at the trim counts as carried all the way. Goods that come to lie on the deck as it runs in no
// longer drive it, and those that leave the deck as it runs out hold it back: so with such goods it runs less hard than
// this says, and may stop by itself. Errors as for At.
func (r *Rigged) LetGo(trim units.Length) (purchase.Runaway, error) {
	state, err := r.At(trim)
	if err != nil {
		return purchase.Runaway{}, err
	}
	return r.letGo(trim, r.bodies(state.Share))
}

func (r *Rigged) letGo(trim units.Length, on purchase.Bodies) (purchase.Runaway, error) {
	// A trim that is meant to be an end of the reach may lie a hair beyond it.
	return r.ropes.LetGo(purchase.LetGo{Trim: trim, Low: min(r.travel.Lowest, trim), High: max(r.travel.Highest, trim), On: on})
}

// LetGoAfter is LetGo where an order has led: with what hangs and what is in the arbor then, at the trim that it is at,
// and whatever the rope lock or a line would hold left out. So an order from loaded that takes out one piece tells what one
// forgotten piece does. Errors are those of CheckOrder and of LetGo; where the batten tips, that of [load.Rigged.Share].
func (r *Rigged) LetGoAfter(o Order) (purchase.Runaway, error) {
	w, err := r.through(o, OrderLimits{}, func(*walked, int, OrderStep, []spot) {})
	if err != nil {
		return purchase.Runaway{}, err
	}
	var hang load.Hang
	for i, item := range r.set.Hang {
		if w.hung[i] {
			hang = append(hang, item)
		}
	}
	hung, err := r.set.Rigging.stretched(r.ropes).Rig(hang)
	if err != nil {
		return purchase.Runaway{}, err
	}
	share, err := hung.Share(w.trim)
	if err != nil {
		return purchase.Runaway{}, err
	}
	on := r.bodies(share)
	on.Arbor = w.arbor()
	return r.letGo(w.trim, on)
}

// Fly is what it takes to fly the batten by hand between two trims that the set reaches, with what is carried at the first:
// up to speed in a time, and to rest again within a way. Errors as for At, and those of [purchase.Reeved.Fly].
func (r *Rigged) Fly(from, to units.Length, top units.Speed, start units.TimeSpan, stop units.Length) (purchase.Flown, error) {
	state, err := r.At(from)
	if err != nil {
		return purchase.Flown{}, err
	}
	if err := r.reaches(to); err != nil {
		return purchase.Flown{}, err
	}
	return r.ropes.Fly(purchase.Fly{From: from, To: to, Top: top, Start: start, Stop: stop, On: r.bodies(state.Share)})
}

// Jolt is how many times what hangs on them the lift lines bear when a set that was let go runs into its stop: see
// [purchase.Jolt]. It takes the line that gives the least of those that pull where the set was let go. A set whose lines
// have no EA is a *units.FieldError: lines that do not give have no finite factor.
func (r *Rigged) Jolt(run purchase.Runaway) (float64, error) {
	state, err := r.At(run.From)
	if err != nil {
		return 0, err
	}
	stretch := units.Length(0)
	for i, line := range state.Share.Lines {
		switch {
		case line.Slack:
		case r.set.Rigging.Batten.Lines[i].EA == 0:
			return 0, &units.FieldError{Field: "batten.lines[" + strconv.Itoa(i) + "].ea", Want: "the EA of the lift line, that it may give", Err: units.ErrMissing}
		case stretch == 0 || line.Stretch < stretch:
			stretch = line.Stretch
		}
	}
	return purchase.Jolt(run.Speed, stretch)
}
