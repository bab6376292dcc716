package lineset

import (
	"math"
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// CheckOrder goes through an order step by step and gives the state after each, against the caller's limits. A bad
// order is no error; what cannot be done is, with the path of the step's field: see ErrHung and those beside it.
// Faults of the order's and the limits' own values come all together; of what cannot be done only the first, because
// what comes after it has no meaning. Hands work on a set with its rope lock shut; whether the deck reaches the batten at
// a trim, and arms the arbor where the run has no bridges, is for the caller to know.
//
// An empty arbor's tare, the bare batten and the ropes at each trim count as for Imbalance. Every state counts, the
// first and the last too; limits are inclusive.
func (r *Rigged) CheckOrder(o Order, limits OrderLimits) (OrderCheck, error) {
	out := OrderCheck{HandOvers: handOvers(o.Steps), States: make([]OrderState, 0, len(o.Steps)+1)}
	w, err := r.through(o, limits, func(w *walked, n int, did OrderStep, way []spot) {
		if did.Act == FlyTo {
			out.Flights++
		}
		out.States = append(out.States, w.state(n, did, way))
	})
	if err != nil {
		return OrderCheck{}, err
	}
	var worst Check
	for i, s := range out.States {
		out.Exceeds = out.Exceeds || s.Exceeds()
		if s.Tips && worst.Name != tipping {
			worst, out.Worst = Check{Name: tipping, Verdict: Exceeds, Ratio: math.MaxFloat64}, i
		}
		if worse(s.Balance, worst) {
			worst, out.Worst = s.Balance, i
		}
		// A full arbor is as it should be; it is told of only where it is over.
		for _, c := range [...]Check{s.Capacity, s.Room} {
			if c.Verdict == Exceeds && worse(c, worst) {
				worst, out.Worst = c, i
			}
		}
	}
	w.left(&out)
	return out, nil
}

// tipping is no check of ours; nothing is worse than a batten that tips.
const tipping = "tipping"

// through goes through an order and has every state looked at: how it begins, and what each step leads to, with where
// the states on its way are to be looked at.
func (r *Rigged) through(o Order, limits OrderLimits, look func(w *walked, n int, did OrderStep, way []spot)) (*walked, error) {
	w, err := r.begin(o, limits)
	if err != nil {
		return nil, err
	}
	look(w, 0, OrderStep{}, w.way(w.trim, w.trim))
	for i, step := range o.Steps {
		way, err := w.do(&step)
		if err != nil {
			return nil, units.At("steps["+strconv.Itoa(i)+"]", "step "+strconv.Itoa(i+1)+", "+step.Call(units.US), err)
		}
		look(w, i+1, step, way)
	}
	return w, nil
}

// walked is a set on its way through an order.
type walked struct {
	*Rigged
	limits OrderLimits
	trim   units.Length
	hung   []bool
	in     inArbor
	open   bool          // the rope lock
	over   bool          // something hangs outside the outermost lines
	held   purchase.Body // what a line holds; Building: no line is set
}

// begin looks at the values of an order and stands at its beginning.
func (r *Rigged) begin(o Order, limits OrderLimits) (*walked, error) {
	if r.load == nil {
		return nil, r.reaches(0) // a Rigged that Rig did not make
	}
	var p check.Problems
	p.Within("limits", "", limits.validate())
	w := &walked{
		Rigged: r, limits: limits, trim: o.Trim, hung: make([]bool, len(r.set.Hang)),
		in: inArbor{frame: r.set.Rigging.Arbor, stock: r.stock, rows: slices.Clone(r.counter.Stack.Pipe)},
	}
	w.in.pipe = w.in.count()
	w.over = r.overhangs()
	if w.trim == 0 {
		w.trim = r.travel.Lowest
	}
	p.Within("", "", r.reaches(w.trim))
	if mass := r.Hung() + r.Bare() + r.counter.Tare; mass > heaviestOrder {
		p.Add("", check.Show(mass), "less than "+check.Show(heaviestOrder)+" of batten, hang and empty arbor", units.ErrOutOfRange)
	}
	switch {
	case o.From == 0:
		p.Add("from", "", wantFrom, units.ErrMissing)
	case !o.From.known():
		p.Add("from", o.From.String(), wantFrom, units.ErrUnknown)
	case o.From == FromLoaded:
		for i := range w.hung {
			w.hung[i] = true
		}
		for _, row := range r.counter.Stack.Show {
			w.in.put(row)
		}
		if len(o.Hung) > 0 {
			p.Add("hung", strconv.Itoa(len(o.Hung))+" items", "none: all hangs where the order is from loaded", ErrNotWanted)
		}
		if len(o.Pieces) > 0 {
			p.Add("pieces", strconv.Itoa(len(o.Pieces))+" kinds", "none: the whole stack is in where the order is from loaded", ErrNotWanted)
		}
	default:
		w.stand(&p, o)
	}
	for i, step := range o.Steps {
		p.Within("steps["+strconv.Itoa(i)+"]", "step "+strconv.Itoa(i+1), step.validate())
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	return w, nil
}

// stand hangs and puts in what there is at first.
func (w *walked) stand(p *check.Problems, o Order) {
	for k, place := range o.Hung {
		field := "hung[" + strconv.Itoa(k) + "]"
		switch {
		case place < 1 || place > len(w.hung):
			p.Add(field, strconv.Itoa(place), w.places(), units.ErrOutOfRange)
		case w.hung[place-1]:
			p.Add(field, strconv.Itoa(place), "each item once", units.ErrDuplicate)
		default:
			w.hung[place-1] = true
		}
	}
	for k, pieces := range o.Pieces {
		field := "pieces[" + strconv.Itoa(k) + "]"
		if pieces.Count < 1 {
			p.Add(field+".count", strconv.Itoa(pieces.Count), "1 or more", units.ErrOutOfRange)
			continue
		}
		p.Within(field, "", w.in.add(pieces))
	}
}

// places says which places there are in the hang.
func (w *walked) places() string {
	if len(w.hung) == 0 {
		return "none: nothing is to hang on this set"
	}
	return "a place in the hang, 1 to " + strconv.Itoa(len(w.hung))
}

// left counts what is not done at the end.
func (w *walked) left(out *OrderCheck) {
	var resting int64
	for _, hangs := range w.hung {
		if hangs {
			out.ToStrip++
		} else {
			out.ToHang++
		}
	}
	for i, item := range w.set.Hang {
		if w.hung[i] {
			resting += nanograms(item.Mass) - carriedAt(item, spot{trim: w.trim})
		}
	}
	out.OnDeck = kilograms(resting)
	if end := out.States[len(out.States)-1]; end.Hazard == RestsOnStop {
		out.OffStop = w.limits.check(end.Imbalance, RunsIn, false)
		out.OffStop.Trim = end.Trim
	}
	stack := w.counter.Stack
	pipe := inArbor{rows: stack.Pipe}
	for _, kind := range w.stock {
		used := w.in.used(kind.Name)
		out.ToAdd += max(stack.Used(kind.Name)-used, 0)
		out.ToTake += max(used-pipe.used(kind.Name), 0)
	}
}

// carried is what is carried of what hangs, in nanograms.
func (w *walked) carried(s spot) (sum int64) {
	for i, item := range w.set.Hang {
		if w.hung[i] {
			sum += carriedAt(item, s)
		}
	}
	return sum
}

// arbor is the arbor and what is in it.
func (w *walked) arbor() units.Mass { return w.counter.Tare + kilograms(w.in.nanograms()) }

// state is how things stand after a step, which led over the given way.
func (w *walked) state(n int, did OrderStep, way []spot) OrderState {
	here := spot{trim: w.trim}
	carried, atArbor := w.carried(here), w.arbor()
	s := OrderState{
		Step: n, Did: did, Trim: w.trim, Locked: !w.open,
		Carried: w.load.Bare() + kilograms(carried), Arbor: atArbor, Pieces: w.in.count(), Plates: w.in.plates(),
		Imbalance: w.unbalanced(w.trim, carried, atArbor),
	}
	for i, item := range w.set.Hang {
		if w.hung[i] {
			s.Hung += item.Mass
		}
	}
	s.Hazard = w.hazard(s.Imbalance, here)
	if w.held != purchase.Building {
		for _, at := range way { // where a standing piece is about to leave the deck, off it too
			s.Held = max(s.Held, units.Abs(w.unbalanced(at.trim, w.carried(at), atArbor)).Scale(w.heldBy()))
		}
		s.Balance = compare("held line", "on the "+w.held.String(), s.Held, w.limits.HeldLine.Max, w.limits.HeldLine.Basis)
		s.Balance.Trim = w.trim
	} else {
		for k, at := range way {
			i := w.unbalanced(at.trim, w.carried(at), atArbor)
			c := w.limits.check(i, w.hazard(i, at), w.onStop(at))
			c.Trim = at.trim
			if k == 0 || worse(c, s.Balance) {
				s.Balance = c
			}
		}
	}
	for _, at := range way {
		s.Tips = s.Tips || w.over && w.tips(at, func(i int) bool { return w.hung[i] })
	}
	frame := w.set.Rigging.Arbor
	s.Capacity = compare("counterweight mass", "", kilograms(w.in.nanograms()), frame.Capacity, "capacity of the arbor, as given")
	s.Room = compare("stack height", "", w.in.height(), frame.Room, "room on the arbor's rods, as given")
	return s
}

// heldBy is how much of the imbalance the line that is set holds.
func (w *walked) heldBy() float64 {
	if w.held == purchase.Arbor {
		return w.ropes.Ratio()
	}
	return 1
}

// hazard names what an imbalance would do.
func (w *walked) hazard(i units.Force, at spot) Hazard {
	switch {
	case i == 0:
		return Balanced
	case w.held != purchase.Building:
		return HeldByLine
	case i < 0:
		return RunsOut
	case w.onStop(at):
		return RestsOnStop
	}
	return RunsIn
}
