package lineset

import (
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Tolerance is how far a mass may be off to one side before a limit is passed, and where that is. Everything else is
// taken to be as it is written: the batten, the pieces, the ropes.
type Tolerance struct {
	Share float64      `json:"share"` // of the mass as written; below zero: the limit is passed already, and it must be off so far the other way
	Mass  units.Mass   `json:"mass"`  // the same as a mass
	Step  int          `json:"step"`  // after which step of the order the limit is met first; 0: as it begins
	Trim  units.Length `json:"trim"`  // and at which trim
	Free  bool         `json:"free"`  // no limit is passed however far it is off; the other fields are then zero
}

// Allowance is how far an estimate may be off to both sides.
type Allowance struct {
	Name    string    `json:"name,omitempty"` // of the item
	Place   int       `json:"place,omitzero"` // of the item in the hang, counted from 1
	Heavier Tolerance `json:"heavier"`
	Lighter Tolerance `json:"lighter"` // free where not even nothing at all would pass a limit
}

// Estimates tells how wrong the masses of the hang may be while an order is followed.
type Estimates struct {
	Steps []Allowance `json:"steps"` // for each state of the order, how it begins first: all items off by the same factor
	All   Allowance   `json:"all"`   // the same over the whole order
	Items []Allowance `json:"items"` // each item off by itself, the others as written, over the whole order, in the order of the hang

	// Matters is the place, counted from 1, of the item whose estimate matters the most: the one that may be off by
	// the smallest share of its mass, either way. 0: none matters.
	Matters int `json:"matters"`
}

// Estimates tells how much heavier or lighter the hang may be than it is written before a limit is passed, at each
// step and on every flight of an order. The stack stays as it is: it was chosen for the masses as written. A state at
// which an item is not carried says nothing of that item, even where a limit is passed there. Append a flight over
// the show's travel to the order to have that looked at too. Errors as for CheckOrder.
func (r *Rigged) Estimates(o Order, limits OrderLimits) (Estimates, error) {
	free := Tolerance{Free: true}
	out := Estimates{All: Allowance{Heavier: free, Lighter: free}}
	for i := range r.Set().Hang {
		out.Items = append(out.Items, Allowance{Name: r.set.Hang[i].Name, Place: i + 1, Heavier: free, Lighter: free})
	}
	_, err := r.through(o, limits, func(w *walked, n int, _ OrderStep, way []spot) {
		step := Allowance{Heavier: free, Lighter: free}
		for _, at := range way {
			w.tolerate(n, at, &step, out.Items)
		}
		out.Steps = append(out.Steps, step)
		tighten(&out.All.Heavier, step.Heavier)
		tighten(&out.All.Lighter, step.Lighter)
	})
	if err != nil {
		return Estimates{}, err
	}
	least := free
	for _, item := range out.Items {
		for _, t := range [2]Tolerance{item.Heavier, item.Lighter} {
			if tighten(&least, t) {
				out.Matters = item.Place
			}
		}
	}
	return out, nil
}

// tighten takes the other tolerance where it is the smaller, and tells whether it did.
func tighten(t *Tolerance, other Tolerance) bool {
	if other.Free || !t.Free && other.Share >= t.Share {
		return false
	}
	*t = other
	return true
}

// tolerate looks at one state.
func (w *walked) tolerate(n int, at spot, step *Allowance, items []Allowance) {
	arbor := w.arbor()
	now := w.unbalanced(at.trim, w.carried(at), arbor)
	light, heavy := w.limits.ArborHeavy, w.limits.heavy(w.onStop(at))
	if w.held != purchase.Building {
		line := w.limits.HeldLine
		line.Max = line.Max.Scale(1 / w.heldBy())
		light, heavy = line, line
	}
	var hung, carried int64
	note := func(to *Allowance, mass, carried int64) {
		if carried == 0 {
			return // it makes no difference here
		}
		weight := kilograms(carried).Weight(units.StandardGravity)
		at := Tolerance{Step: n, Trim: at.trim}
		if heavy.given() {
			at.Share = units.Ratio(heavy.Max-now, weight)
			at.Mass = kilograms(mass).Scale(at.Share)
			tighten(&to.Heavier, at)
		}
		if light.given() {
			at.Share = units.Ratio(light.Max+now, weight)
			at.Mass = kilograms(mass).Scale(at.Share)
			if at.Share < 1 {
				tighten(&to.Lighter, at)
			}
		}
	}
	for i, item := range w.set.Hang {
		if w.hung[i] {
			mass, of := nanograms(item.Mass), carriedAt(item, at)
			hung += mass
			carried += of
			note(&items[i], mass, of)
		}
	}
	note(step, hung, carried)
}
