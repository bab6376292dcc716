package lineset

import (
	"example.com/steelyard/units"
)

// Tolerance is how far a mass may be off to one side before a limit is passed or the batten tips, and where that is.
// Everything else is taken to be as it is written: the batten, the pieces, the ropes.
type Tolerance struct {
	Share  float64      `json:"share"`            // of the mass as written; 0 where there is no room left at all
	Mass   units.Mass   `json:"mass"`             // the same as a mass
	Step   int          `json:"step"`             // after which step of the order the limit is met first; 0: as it begins
	Trim   units.Length `json:"trim"`             // and at which trim
	Tips   bool         `json:"tips,omitempty"`   // it is no limit: with more than that the batten tips
	Passed bool         `json:"passed,omitempty"` // it is passed already with all as it is written
	Free   bool         `json:"free"`             // no limit is passed however far it is off; the other fields are then zero
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
	// the smallest share of its mass, either way. States that pass a limit as they are written have no say in it: they
	// tell of the order, not of an estimate. 0: none matters.
	Matters int `json:"matters"`
}

// Estimates tells how much heavier or lighter the hang may be than it is written before a limit is passed or the batten
// tips, at each step and on every flight of an order. The stack stays as it is: it was chosen for the masses as written.
// A state at which an item is not carried says nothing of that item, even where a limit is passed there. Append a flight
// over the show's travel to the order to have that looked at too. Errors as for CheckOrder.
func (r *Rigged) Estimates(o Order, limits OrderLimits) (Estimates, error) {
	free := Tolerance{Free: true}
	out := Estimates{All: Allowance{Heavier: free, Lighter: free}}
	for i := range r.Set().Hang {
		out.Items = append(out.Items, Allowance{Name: r.set.Hang[i].Name, Place: i + 1, Heavier: free, Lighter: free})
	}
	least := free
	_, err := r.through(o, limits, func(w *walked, n int, _ OrderStep, way []spot) {
		step := Allowance{Heavier: free, Lighter: free}
		for _, at := range way {
			left := w.leeway(n, at)
			var all part
			for i, item := range w.set.Hang {
				if !w.hung[i] {
					continue
				}
				one := w.part(item, at)
				all = all.and(one)
				off := left.off(one)
				out.Items[i] = out.Items[i].tightened(off)
				if left.passed() {
					continue
				}
				heavier, lighter := tighten(&least, off.Heavier), tighten(&least, off.Lighter)
				if heavier || lighter {
					out.Matters = i + 1
				}
			}
			step = step.tightened(left.off(all))
		}
		out.Steps = append(out.Steps, step)
		out.All = out.All.tightened(step)
	})
	if err != nil {
		return Estimates{}, err
	}
	return out, nil
}

// tightened is the allowance with the other's tolerances where those are the smaller.
func (a Allowance) tightened(other Allowance) Allowance {
	tighten(&a.Heavier, other.Heavier)
	tighten(&a.Lighter, other.Lighter)
	return a
}

// tighten takes the other tolerance where it is the smaller, and tells whether it did.
func tighten(t *Tolerance, other Tolerance) bool {
	switch {
	case other.Free || t.Passed:
		return false
	case !t.Free && !other.Passed && other.Share >= t.Share:
		return false
	}
	*t = other
	return true
}
