package lineset

import (
	"math"
	"strconv"

	"example.com/steelyard/internal/order"
	"example.com/steelyard/units"
)

// NoOrderError says that no order of the job keeps every state within the limits. That is proved: the search goes
// through all of them. It also says what would allow one.
//
// Each of its limits is the smallest, exact to the last bit: with it there is an order, with less there is none. Where
// it is printed it is rounded up.
type NoOrderError struct {
	Job    Job
	Limits OrderLimits

	Either      units.Force // the smallest limit, one and the same for both sides; a side that is not limited stays so
	ArborHeavy  units.Force // the smallest arbor-heavy limit with the other as it is; 0: raising this one alone does not help
	Tips        bool        // whatever the limits: in every order the batten would tip on the way; the limits are then all 0
	BattenHeavy units.Force // the smallest batten-heavy limit with the other as it is; 0: raising this one alone does not help
}

// Error says it in one line.
func (e *NoOrderError) Error() string {
	if e.Tips {
		return "no order of " + e.Job.String() + " keeps the batten from tipping, whatever the limits"
	}
	s := "no order of " + e.Job.String() + " keeps within the limits given; there is one with a limit of " + roundedUp(e.Either) + " both ways"
	if e.ArborHeavy > 0 {
		s += ", or of " + roundedUp(e.ArborHeavy) + " arbor-heavy with the other as it is"
	}
	if e.BattenHeavy > 0 {
		s += ", or of " + roundedUp(e.BattenHeavy) + " batten-heavy with the other as it is"
	}
	return s
}

// roundedUp writes a limit so that what is read off it is enough: in tenths of a pound-force and in newtons.
func roundedUp(limit units.Force) string {
	up := func(step units.Force) units.Force {
		n := math.Floor(limit.In(step))
		for passes(limit, step.Scale(n)) {
			n++
		}
		return step.Scale(n)
	}
	newtons := up(0.1 * units.Newton).In(units.Newton)
	return units.US.Format(up(0.1*units.PoundForce)) + " (" + strconv.FormatFloat(newtons, 'f', 1, 64) + " N)"
}

// none works out what the smallest limits would be.
func (q *planning) none(job Job) error {
	e := &NoOrderError{Job: job, Limits: q.limits}
	var ok bool
	e.Either, ok = q.least(func(l OrderLimits, most units.Force) OrderLimits {
		if l.ArborHeavy.given() {
			l.ArborHeavy.Max = most
		}
		l.BattenHeavy.Max = most
		return l
	})
	if !ok {
		e.Tips = true
		return e
	}
	e.ArborHeavy, _ = q.least(func(l OrderLimits, most units.Force) OrderLimits {
		l.ArborHeavy.Max = most
		return l
	})
	if q.limits.BattenHeavy.given() {
		e.BattenHeavy, _ = q.least(func(l OrderLimits, most units.Force) OrderLimits {
			l.BattenHeavy.Max = most
			return l
		})
	}
	return e
}

// least finds the smallest limit for which there is an order, by halving the numbers that there are: a wider limit
// never forbids an order that a narrower one allows.
func (q *planning) least(with func(OrderLimits, units.Force) OrderLimits) (units.Force, bool) {
	possible := func(most units.Force) bool {
		q.bound(with(q.limits, most))
		return order.Possible(&q.problem)
	}
	// No imbalance is larger than all that there is, ropes and all.
	var all units.Force
	for k, s := range q.spots {
		for _, carried := range [...]int64{q.base[k], q.base[k] + q.all[k]} {
			for _, arbor := range [...]units.Mass{q.arbor[0], q.arbor[len(q.arbor)-1]} {
				all = max(all, units.Abs(q.unbalanced(s.trim, carried, arbor)))
			}
		}
	}
	if !possible(all) {
		return 0, false
	}
	low, high := uint64(0), math.Float64bits(all.In(units.Newton))
	for low < high {
		mid := low + (high-low)/2
		if possible(units.Force(math.Float64frombits(mid))) {
			high = mid
		} else {
			low = mid + 1
		}
	}
	return units.Force(math.Float64frombits(high)), true
}
