package lineset

import (
	"slices"

	"example.com/steelyard/units"
)

// Balance is the out of balance over the travel between low and high trim, as
// far as the set reaches them, without drag, with the stack that was chosen in
// the arbor. Forces are referred to the batten: batten-heavy is positive,
// arbor-heavy negative. At the arbor they are the ratio times as much.
type Balance struct {
	Ratio float64     `json:"ratio"` // batten travel for each unit of arbor travel
	Arbor units.Mass  `json:"arbor"` // the arbor with its stack
	Ropes Ropes       `json:"ropes"`
	Low   units.Force `json:"low"`   // at low trim
	High  units.Force `json:"high"`  // at high trim
	Most  Point       `json:"most"`  // where it is the most batten-heavy
	Least Point       `json:"least"` // where it is the most arbor-heavy

	// Curve is the whole of it: the imbalance runs straight from each point to the
	// next. Two points at one trim are a jump, where a standing piece leaves the deck.
	Curve []Point `json:"curve"`
}

// Point is the imbalance at one trim, with the terms that make it up: the weight
// of what is carried, plus the ropes' own, less the arbor's divided by the ratio.
type Point struct {
	Trim      units.Length `json:"trim"`
	ArborTop  units.Length `json:"arbor_top"` // height of the arbor's top above the deck
	Carried   units.Mass   `json:"carried"`
	Ropes     units.Force  `json:"ropes"`     // the ropes' own weight, referred to the batten: batten-heavy positive
	Imbalance units.Force  `json:"imbalance"` // batten-heavy positive
}

// Ropes is what the ropes' own weight follows from.
type Ropes struct {
	Lift      units.LineMass `json:"lift"`       // of all lift lines together
	Hand      units.LineMass `json:"hand"`       // of the hand line
	Between   units.Length   `json:"between"`    // between the hand line's fastenings at the arbor's top and foot
	HandRatio float64        `json:"hand_ratio"` // hand line travel for each unit of batten travel
}

// Worst is the larger of the two extremes in size.
func (b Balance) Worst() Point {
	if units.Abs(b.Least.Imbalance) > units.Abs(b.Most.Imbalance) {
		return b.Least
	}
	return b.Most
}

// curve gives the imbalance where it may turn between two trims: at both of them
// and at every break of what is carried. Between those it is linear in the trim,
// because the ropes hang plumb and a heap grows evenly. Carried takes the trim and
// whether the value just above it is meant. Points are put into room, where it is large enough.
func (r *Rigged) curve(room []Point, low, high units.Length, arbor units.Mass, carried func(trim units.Length, above bool) units.Mass) ([]Point, error) {
	// More is carried the higher the batten flies, so that what can be told at the upper end can be told below it.
	top, err := r.point(high, carried(high, false), arbor)
	if err != nil {
		return nil, err
	}
	points := slices.Grow(room[:0], 2+2*len(r.breaks))
	add := func(trim units.Length, carried units.Mass) {
		p, _ := r.point(trim, carried, arbor)
		points = append(points, p)
	}
	add(low, carried(low, false))
	for _, trim := range r.breaks {
		if trim < low || trim >= high {
			continue
		}
		below, above := carried(trim, false), carried(trim, true)
		if trim > low {
			add(trim, below)
		}
		if above != below {
			add(trim, above)
		}
	}
	return append(points, top), nil
}

// point is the imbalance at one trim.
func (r *Rigged) point(trim units.Length, carried, arbor units.Mass) (p Point, err error) {
	p = Point{Trim: trim, Carried: carried}
	if p.Imbalance, err = r.ropes.Imbalance(trim, carried, arbor); err != nil {
		return Point{}, err
	}
	// To a trim of which the imbalance can be told the ropes run.
	p.ArborTop, _ = r.ropes.ArborTop(trim)
	p.Ropes, _ = r.ropes.RopeImbalance(trim)
	return p, nil
}

func (r *Rigged) hung(trim units.Length, above bool) units.Mass {
	if above {
		return r.load.CarriedAbove(trim)
	}
	return r.load.Carried(trim)
}

func (r *Rigged) bare(units.Length, bool) units.Mass { return r.load.Bare() }

// newBalance asks between trims that the set reaches, where the curve has no fault.
func (r *Rigged) newBalance() *Balance {
	low, high := r.travel.reached()
	curve, _ := r.curve(nil, low, high, r.counter.Arbor, r.hung)
	b := &Balance{
		Ratio: r.ropes.Ratio(), Arbor: r.counter.Arbor, Ropes: r.ropeMasses(), Curve: curve,
		Low: curve[0].Imbalance, High: curve[len(curve)-1].Imbalance,
	}
	b.Most, b.Least = extremes(curve)
	return b
}

func (r *Rigged) ropeMasses() Ropes {
	g := r.set.Rigging
	return Ropes{
		Lift: g.LiftLine.Scale(float64(len(g.Batten.Lines))), Hand: g.HandLine,
		Between: g.Arbor.Length, HandRatio: r.ropes.HandRatio(),
	}
}

func extremes(curve []Point) (most, least Point) {
	most, least = curve[0], curve[0]
	for _, p := range curve[1:] {
		if p.Imbalance > most.Imbalance {
			most = p
		}
		if p.Imbalance < least.Imbalance {
			least = p
		}
	}
	return most, least
}
