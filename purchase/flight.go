package purchase

import (
	"errors"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Flight is a load that stays the same while the batten flies between two trims. What grows or shrinks with the
// trim, a drape that piles on the deck, is not for this.
type Flight struct {
	Low     units.Length `json:"low"`     // trims, in their order; both inside Reach
	High    units.Length `json:"high"`    // not below Low
	Carried units.Mass   `json:"carried"` // what hangs on the lift lines, the batten included
	Arbor   units.Mass   `json:"arbor"`   // the arbor with all that is in it, without the chain
	Chain   Chain        `json:"chain,omitzero"`
}

// FlightPoint is the imbalance at one trim with what the ropes and a chain have in it; the rest is the weight carried
// less the arbor's over the ratio. All three are referred to the batten, batten-heavy positive.
type FlightPoint struct {
	Trim      units.Length `json:"trim"`
	ArborTop  units.Length `json:"arbor_top"` // height above the deck
	Ropes     units.Force  `json:"ropes"`
	Chain     units.Force  `json:"chain"`
	Imbalance units.Force  `json:"imbalance"`
}

// Drift is how the balance of a Flight changes over the travel, without drag.
//
// It runs straight from Low to Turn and from there to High. Ropes alone make it straight all the way, whatever
// their reeving: every part between batten, arbor and building hangs plumb, so the pull of a rope's weight on a body
// is a sum of heights, and heights change evenly with the trim. Only a chain can turn it, once: where it runs out. The
// extremes are therefore among the three.
type Drift struct {
	// What does not change over the travel, referred to the batten: the weight carried, and the arbor's over the ratio.
	Carried units.Force `json:"carried"`
	Arbor   units.Force `json:"arbor"`

	Low   FlightPoint `json:"low"`
	Turn  FlightPoint `json:"turn"` // where the chain leaves the deck or comes to it; the same as Low where it does neither
	High  FlightPoint `json:"high"`
	Most  FlightPoint `json:"most"`  // where it is the most batten-heavy; of equals the lowest
	Least FlightPoint `json:"least"` // where it is the most arbor-heavy; of equals the lowest

	// Even is the mass at the arbor, the arbor itself included and the chain not, with which the extremes would be
	// equal and opposite. It falls below zero where ropes and chain outweigh what is carried.
	Even units.Mass `json:"even"`
}

// Drift gives the balance over the travel. A mass at the arbor shifts the whole of it by its weight over the
// ratio, so that Even is what balances the mean of the extremes. The error joins a *units.FieldError for each
// field that is wrong: trims out of order or beyond Reach, masses below zero, a chain that cannot hang so.
func (r *Reeved) Drift(f Flight) (Drift, error) {
	if err := r.flies(f); err != nil {
		return Drift{}, err
	}
	loads := r.loads(&f)
	d := Drift{
		Carried: f.Carried.Weight(units.StandardGravity), Arbor: f.Arbor.Weight(units.StandardGravity).Scale(1 / r.ratio),
		Low: r.flown(&f, loads, f.Low), High: r.flown(&f, loads, f.High),
	}
	d.Turn = d.Low
	if x, ok := r.turn(f.Chain); ok && x > f.Low && x < f.High {
		d.Turn = r.flown(&f, loads, x)
	}
	d.Most, d.Least = d.Low, d.Low
	for _, p := range [...]FlightPoint{d.Turn, d.High} {
		if p.Imbalance > d.Most.Imbalance+d.none() {
			d.Most = p
		}
		if p.Imbalance < d.Least.Imbalance-d.none() {
			d.Least = p
		}
	}
	mean := (d.Most.Imbalance + d.Least.Imbalance).Scale(0.5)
	d.Even = f.Arbor + mean.Scale(r.ratio).Mass(units.StandardGravity)
	return d, nil
}

// Curve fills points with the imbalance at trims in even steps from Low to High, both included; a single point is
// Low. It allocates nothing. The errors are those of [Reeved.Drift]; points are then left alone.
func (r *Reeved) Curve(f Flight, points []FlightPoint) error {
	if err := r.flies(f); err != nil {
		return err
	}
	last := len(points) - 1
	loads := r.loads(&f)
	for i := range points {
		trim := f.Low
		if i == last && i > 0 {
			trim = f.High // to the last bit
		} else if i > 0 {
			trim += (f.High - f.Low).Scale(float64(i) / float64(last))
		}
		r.fly(&points[i], &f, loads, trim)
	}
	return nil
}

// Balanced gives the trims at which the set is in balance, the first and the last of them, or false where it is
// nowhere between Low and High: add or take out weight, until Most and Least have opposite signs. Without a chain there is
// one, first and last alike; a chain that runs out may bring a second; and a set that a chain keeps even is balanced
// from Low to High. Out of balance by less than one part in 10^12 of the forces at work is balance.
func (d Drift) Balanced() (first, last units.Length, ok bool) {
	none := d.none()
	note := func(x units.Length) {
		if !ok {
			first = x
		}
		last, ok = x, true
	}
	points := [...]FlightPoint{d.Low, d.Turn, d.High}
	for i, b := range points {
		if i > 0 {
			a := points[i-1]
			if (a.Imbalance > none && b.Imbalance < -none) || (a.Imbalance < -none && b.Imbalance > none) {
				note(a.Trim + (b.Trim - a.Trim).Scale(units.Ratio(a.Imbalance, a.Imbalance-b.Imbalance)))
			}
		}
		if units.Abs(b.Imbalance) <= none {
			note(b.Trim)
		}
	}
	return first, last, ok
}

// none is how far out of balance rounding alone may leave a set.
func (d Drift) none() units.Force {
	size := max(d.Carried, d.Arbor)
	for _, p := range [...]FlightPoint{d.Low, d.Turn, d.High} {
		size = max(size, units.Abs(p.Ropes), units.Abs(p.Chain))
	}
	return size.Scale(1e-12)
}

// flown is the point at a trim that is known to be inside Reach.
func (r *Reeved) flown(f *Flight, loads units.Force, trim units.Length) (p FlightPoint) {
	r.fly(&p, f, loads, trim)
	return p
}

func (r *Reeved) fly(p *FlightPoint, f *Flight, loads units.Force, trim units.Length) {
	moved := r.movedTo(trim)
	p.Trim, p.ArborTop, p.Ropes, p.Chain = trim, units.Length(r.top+moved), units.Force(r.ropes.At(moved)), 0
	p.Imbalance = p.Ropes + loads
	if f.Chain.Hung != 0 {
		p.Chain = r.chained(f.Chain, trim)
		p.Imbalance += p.Chain
	}
}

// loads is the part of the imbalance that does not change over the travel.
func (r *Reeved) loads(f *Flight) units.Force {
	return f.Carried.Weight(units.StandardGravity) - f.Arbor.Weight(units.StandardGravity).Scale(1/r.ratio)
}

func (r *Reeved) flies(f Flight) error {
	var p check.Problems
	low, high := r.reaches(&p, f)
	check.NotNegative(&p, "carried", f.Carried)
	check.NotNegative(&p, "arbor", f.Arbor)
	if low && high && f.Chain != (Chain{}) {
		check.NotNegative(&p, "chain.mass", f.Chain.Mass)
		r.hangs(&p, f)
	}
	return p.Err()
}

// reaches makes sure of the two trims.
func (r *Reeved) reaches(p *check.Problems, f Flight) (low, high bool) {
	low, high = r.trimmed(p, "low", f.Low), r.trimmed(p, "high", f.High)
	if low && high && f.High < f.Low {
		p.Add("high", check.Show(f.High), "not less than the low trim, "+check.Show(f.Low), units.ErrOutOfRange)
		high = false
	}
	return low, high
}

// trimmed reports whether a trim is inside Reach, and notes a fault of its field where it is not.
func (r *Reeved) trimmed(p *check.Problems, field string, trim units.Length) bool {
	_, err := r.moved(trim)
	var fe *units.FieldError
	if errors.As(err, &fe) {
		p.Add(field, fe.Value, fe.Want, fe.Err)
	}
	return err == nil
}
