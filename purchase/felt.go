package purchase

import (
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// Felt is what a set has to be set in motion: the mass that a hand feels, and the mass that moves. The one says how hard the
// set is to start and to stop, the other is what a hand on the batten may think of; do not take either for the other.
//
// A mass that moves at half the batten's speed is felt at the batten as a quarter of it: it takes half the force for half the
// acceleration. So a balanced double purchase set, with twice the counterweight at half the speed, has half as much again moving
// as a single one (500 lb and 1000 lb, against 500 and 500) and feels a quarter lighter (500 + 1000/4 lb against 500 + 500).
// That it is yet the stiffer to start and stop comes from elsewhere: from the drag in its extra sheaves, under twice the
// load, and from an idler that is often the heavier, and keeps the hand line tighter over all of them.
type Felt struct {
	Trim   units.Length `json:"trim"`   // of the batten
	Batten units.Mass   `json:"batten"` // felt at the batten: Σ m·(v/v_batten)²
	Moving units.Mass   `json:"moving"` // plain sum of all that moves; of a sheave what counts at its rim
	Rows   []FeltMass   `json:"rows"`   // of which both are the sums
}

// FeltMass is one thing that moves.
type FeltMass struct {
	Name  string     `json:"name"`
	Mass  units.Mass `json:"mass"`  // of it; of a rope, of the parts that run
	Speed float64    `json:"speed"` // for a unit of the batten's, zero or more; of a rope, of what of it runs the fastest
	Felt  units.Mass `json:"felt"`  // at the batten
}

// Felt tells what is felt at a trim: carried is what hangs on the lift lines, the batten included, arbor the arbor with
// all that is in it. A level run of rope moves as any other; a part to a dead end stands still, and so does the idler. Of
// sheaves count those whose Rim is given, at the speed of the rope past them. The errors are those of
// [Reeved.Imbalance], for masses below zero too.
//
// Source: conservation of energy, equal kinetic energies: Σ ½mv² = ½·felt·v_batten².
func (r *Reeved) Felt(trim units.Length, carried, arbor units.Mass) (Felt, error) {
	moved, err := r.moved(trim)
	if err != nil {
		return Felt{}, err
	}
	if err := notBelow(carried, arbor); err != nil {
		return Felt{}, err
	}
	f := Felt{Trim: trim}
	add := func(row FeltMass) {
		if row.Mass > 0 {
			f.Rows = append(f.Rows, row)
			f.Batten += row.Felt
			f.Moving += row.Mass
		}
	}
	add(FeltMass{Name: "batten and what hangs on it", Mass: carried, Speed: 1, Felt: carried})
	add(FeltMass{Name: "arbor and what is in it", Mass: arbor, Speed: 1 / r.ratio, Felt: arbor.Scale(1 / float64(r.ratio*r.ratio))})
	var rims FeltMass
	courses := r.motions().courses
	for k, l := range r.all() {
		row, course := FeltMass{Name: l.rope.Name}, &courses[k]
		for i, speed := range course.speed {
			if speed := abs(speed); speed > still {
				mass := l.rope.Mass.Over(units.Length(course.length[i].At(moved)))
				row.Mass += mass
				row.Speed = max(row.Speed, speed)
				row.Felt += mass.Scale(float64(speed * speed))
			}
		}
		add(row)
		for i, past := range course.past {
			if speed := abs(past); speed > still {
				rim := l.rope.Path[i].Rim
				rims.Mass += rim
				rims.Speed = max(rims.Speed, speed)
				rims.Felt += rim.Scale(float64(speed * speed))
			}
		}
	}
	rims.Name = "sheaves, at their rims"
	add(rims)
	return f, nil
}

// ropesFelt is what is felt of the ropes and the sheaves.
func (r *Reeved) ropesFelt(courses []course) (felt rope.Straight) {
	for k, l := range r.all() {
		course := &courses[k]
		for i, speed := range course.speed {
			square := float64(speed * speed)
			felt = felt.Plus(course.length[i].Times(float64(l.rope.Mass.In(units.KilogramPerMetre) * square)))
		}
		for i, past := range course.past {
			felt.Start += float64(l.rope.Path[i].Rim.In(units.Kilogram) * float64(past*past))
		}
	}
	return felt
}
