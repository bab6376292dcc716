package lineset

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/order"
	"example.com/steelyard/units"
)

// Job is what an order is to do.
type Job uint8

// The jobs, mirror images of each other.
const (
	Loading   Job = iota + 1 // from the bare batten with its pipe weight to all hung and stacked
	Stripping                // back again
)

// String names the job: "loading", "stripping".
func (j Job) String() string {
	switch j {
	case Loading:
		return "loading"
	case Stripping:
		return "stripping"
	}
	return fmt.Sprintf("Job(%d)", uint8(j))
}

// MarshalText writes the name of the job; for any other value it gives a *units.FieldError.
func (j Job) MarshalText() ([]byte, error) {
	if j != Loading && j != Stripping {
		return nil, &units.FieldError{Value: j.String(), Want: `"loading" or "stripping"`, Err: units.ErrUnknown}
	}
	return []byte(j.String()), nil
}

// UnmarshalText reads the name of a job. Where it fails, with a *units.FieldError, the value is left as it was.
func (j *Job) UnmarshalText(text []byte) error {
	for _, job := range [...]Job{Loading, Stripping} {
		if job.String() == string(text) {
			*j = job
			return nil
		}
	}
	return &units.FieldError{Value: strconv.Quote(string(text)), Want: `"loading" or "stripping"`, Err: units.ErrUnknown}
}

// Plan is an order that was found, gone through against the limits that it was planned for.
type Plan struct {
	Job   Job        `json:"job"`
	Order Order      `json:"order"`
	Check OrderCheck `json:"check"`
}

// Order plans the job: every state is within the limits, the first and the last too, and on the way of every flight,
// with the fewest hand-overs between deck and bridge and, of such orders, with the fewest flights. Pieces go in as
// the stack is called, from the bottom up, spreader plates with them, and come out from the top.
//
// Of orders that are as good it gives the one that a crew would find natural: the deck begins; it hangs in the order
// of the list whatever may still be hung, and hands over only when going on would cost a hand-over; the bridge hands
// over, or the batten is flown, as soon as the batten is not the heavier. So at the lowest trim, where batten-heavy
// rests on the stop, the batten is loaded first and then the arbor, which is common practice. Stripping is the mirror
// image of loading.
//
// Without trims it is done at the lowest trim that the set reaches, where deck and bridge both work. Otherwise
// loading begins at the lowest of them and may fly between them, in any order; it ends at one that is an End, or at any
// where none is. Flights are with the rope lock open and belong to neither side. What still rests on the deck where it
// ends comes onto the lines further out: no plan has looked at that way, and OnDeck of its check tells how much it is.
// Where a standing piece leaves the deck within half an inch of a halt, the halt is within the limits with it on the
// deck and off it.
//
// Nor does the batten tip on the way. The search is exact. Where there is no order the error is a *NoOrderError. It
// is a *units.FieldError for limits and trims that cannot be used, for a side that is not limited and does not rest
// on the stop, and for a hang that is too large for it: items that are alike count as one with a number, and with 60
// pieces and one trim there is room for 20 that are not. A plan of that size takes about a second, the proof that there
// is none, with its three smallest limits, some 20; with 12 items both take milliseconds.
func (r *Rigged) Order(job Job, limits OrderLimits, at ...WorkTrim) (Plan, error) {
	q, err := r.plan(job, limits, at, kept{})
	if err != nil {
		return Plan{}, err
	}
	return q.find(job)
}

// kept is what hangs and what is in at the bare end of the job beside batten and pipe weight.
type kept struct {
	hung   []int // places, from 0
	pieces int   // of show weight, from the bottom
}

// planning is a job laid out for the search.
type planning struct {
	*Rigged
	limits  OrderLimits
	kept    kept
	trims   []WorkTrim
	spots   []spot
	bridged []bool       // the spots at which pieces are put in
	groups  [][]int      // places of the items that are alike, in the order of the hang
	arbor   []units.Mass // with so many pieces more than are kept
	base    []int64      // what is carried of the items that are kept, at each spot
	all     []int64      // and how much more with everything hung
	problem order.Problem
}

func (r *Rigged) plan(job Job, limits OrderLimits, at []WorkTrim, keep kept) (*planning, error) {
	if r.load == nil {
		return nil, r.reaches(0) // a Rigged that Rig did not make
	}
	if len(at) == 0 {
		at = []WorkTrim{{Trim: r.travel.Lowest, Deck: true, Bridge: true}}
	}
	q := &planning{Rigged: r, limits: limits, kept: keep, trims: slices.Clone(at)}
	slices.SortFunc(q.trims, func(a, b WorkTrim) int { return cmp.Compare(a.Trim, b.Trim) })
	if err := q.validate(job, at); err != nil {
		return nil, err
	}
	halts := make([]units.Length, len(q.trims))
	for i, t := range q.trims {
		halts[i] = t.Trim
	}
	q.spots = r.way(halts[0], halts[len(halts)-1], halts...)
	q.layTrims()
	q.layItems()
	q.layPieces()
	if err := q.reach(); err != nil {
		return nil, err
	}
	if rows, ok := q.problem.Fits(); !ok {
		return nil, &units.FieldError{
			Field: "hang", Err: units.ErrOutOfRange,
			Value: fmt.Sprintf("%d items of %d sorts with %d pieces, over %d trims and breaks", len(r.set.Hang), len(q.groups), q.problem.Pieces, len(q.spots)),
			Want: fmt.Sprintf("at most %d rows of states, of which this has %d, and at most %d trims and breaks: fewer items that differ, or fewer trims",
				order.MaxRows, rows, order.MaxPositions),
		}
	}
	q.bound(limits)
	return q, nil
}

// mostWorkTrims bounds how many halts are taken.
const mostWorkTrims = 32

func (q *planning) validate(job Job, at []WorkTrim) error {
	var p check.Problems
	if job != Loading && job != Stripping {
		p.Add("job", job.String(), "loading or stripping", units.ErrUnknown)
	}
	p.Within("limits", "", q.limits.validate())
	if !q.limits.ArborHeavy.given() {
		p.Add("limits.arbor_heavy", "", "the most that the set may be arbor-heavy on the way, and where that comes from", units.ErrMissing)
	}
	if flown := len(at) > 1 || !q.onStop(spot{trim: at[0].Trim}); !q.limits.BattenHeavy.given() && (flown || !q.limits.RestsOnStop) {
		p.Add("limits.batten_heavy", "", "the most that the set may be batten-heavy on the way, and where that comes from", units.ErrMissing)
	}
	if mass := q.Hung() + q.Bare() + q.counter.Tare; mass > heaviestOrder {
		p.Add("hang", check.Show(mass), "less than "+check.Show(heaviestOrder)+" of batten, hang and empty arbor", units.ErrOutOfRange)
	}
	if n := q.pieces(); n > order.MaxPieces {
		p.Add("hang", strconv.Itoa(n)+" pieces of counterweight", "at most "+strconv.Itoa(order.MaxPieces), units.ErrOutOfRange)
	}
	deck, bridge := len(q.set.Hang) == len(q.kept.hung), q.pieces() == q.kept.pieces
	if len(at) > mostWorkTrims {
		p.Add("trims", strconv.Itoa(len(at)), "at most "+strconv.Itoa(mostWorkTrims), units.ErrOutOfRange)
		return p.Err()
	}
	for i, t := range at {
		field := "trims[" + strconv.Itoa(i) + "]"
		p.Within(field, "", q.reaches(t.Trim))
		if slices.ContainsFunc(at[:i], func(other WorkTrim) bool { return other.Trim == t.Trim }) {
			p.Add(field+".trim", check.Show(t.Trim), "each trim once", units.ErrDuplicate)
		}
		deck, bridge = deck || t.Deck, bridge || t.Bridge
	}
	if !deck {
		p.Add("trims", "", "one at which the deck can hang and strip", units.ErrMissing)
	}
	if !bridge {
		p.Add("trims", "", "one at which the bridge reaches the arbor", units.ErrMissing)
	}
	return p.Err()
}

// pieces is how many pieces of show weight the stack has.
func (r *Rigged) pieces() (n int) {
	for _, row := range r.counter.Stack.Show {
		n += row.Count
	}
	return n
}

// find searches, and gives the order as steps.
func (q *planning) find(job Job) (Plan, error) {
	found, ok := order.Best(&q.problem)
	if !ok {
		return Plan{}, q.none(job)
	}
	o := q.steps(found)
	if job == Stripping {
		end := o.Trim
		for _, s := range o.Steps {
			if s.Act == FlyTo {
				end = s.Trim
			}
		}
		o = o.mirror(end)
	}
	c, err := q.CheckOrder(o, q.limits)
	return Plan{Job: job, Order: o, Check: c}, err
}

// steps writes what was found as the steps of loading.
func (q *planning) steps(found order.Order) Order {
	o := Order{From: FromBare, Trim: q.trims[0].Trim}
	for _, place := range q.kept.hung {
		o.Hung = append(o.Hung, place+1)
	}
	pieces := q.kept.pieces
	o.Pieces = q.call(0, pieces)
	taken := make([]int, len(q.groups))
	for i := 0; i < len(found.Moves); i++ {
		switch m := found.Moves[i]; m.Kind {
		case order.Hang:
			place := q.groups[m.Item][taken[m.Item]]
			taken[m.Item]++
			o.Steps = append(o.Steps, OrderStep{Act: HangItem, Item: q.set.Hang[place].Name, Place: place + 1})
		case order.Add:
			first := pieces
			for pieces++; i+1 < len(found.Moves) && found.Moves[i+1].Kind == order.Add; i++ {
				pieces++
			}
			for _, p := range q.call(first, pieces) {
				o.Steps = append(o.Steps, OrderStep{Act: AddPieces, Piece: p.Piece, Count: p.Count})
			}
		case order.Fly:
			o.Steps = append(o.Steps, OrderStep{Act: UnlockRope}, OrderStep{Act: FlyTo, Trim: q.spots[m.Position].trim}, OrderStep{Act: LockRope})
		}
	}
	return o
}

// call lists the show weight from one piece to another, counted from the bottom.
func (q *planning) call(from, to int) (out []PiecesOf) {
	for _, row := range q.counter.Stack.Show {
		if n := min(to, row.Count) - max(from, 0); n > 0 {
			out = append(out, PiecesOf{row.Name, n})
		}
		from, to = from-row.Count, to-row.Count
	}
	return out
}
