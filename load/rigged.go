package load

import (
	"math"
	"slices"

	"example.com/steelyard/internal/beam"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/slab"
	"example.com/steelyard/units"
)

// Rigged is a batten with its hang, checked and ready to be asked. It does not change.
type Rigged struct {
	length  units.Length
	lines   []made
	bare    units.Mass
	hung    units.Mass   // all items
	lowest  units.Length // how far the lowest of them reaches under the batten
	still   units.Mass   // the bare batten and what hangs clear
	moment  float64      // of that about the middle, kg·m
	moving  []resting    // the items that pile or stand
	middle  units.Length // of the bare batten
	layout  *beam.Layout // its first load is the bare batten, then the items
	bending float64      // EI, the pipe's bending stiffness, N·m²
	section units.SectionModulus
	breaks  []units.Length
	clear   units.Length // above it nothing rests on the deck
	whole   units.Mass   // and this is carried
}

// made is a line made off on the batten.
type made struct {
	at    units.Length
	give  float64     // how far it stretches for a unit of pull, m/N
	low   float64     // bending stiffness times how far its end hangs low, N·m³
	limit units.Force // of its own; 0: none
}

// quarters is a Rigged with room for as many lines and breaks as most have at most, which is then asked for at once.
type quarters struct {
	Rigged
	lines  [8]made
	breaks [12]units.Length
}

// newRigged takes a batten and a hang without faults.
func newRigged(b Batten, h Hang) *Rigged {
	onto := func(at units.Length) units.Length { return max(0, min(at, b.Length)) }
	n, items := len(b.Lines), len(h)
	moving := 0
	for i := range h {
		if h[i].OnDeck != Hangs {
			moving++
		}
	}
	room := new(quarters)
	r := &room.Rigged
	*r = Rigged{
		length:  b.Length,
		lines:   slab.Enough(room.lines[:], n),
		moving:  make([]resting, 0, moving),
		breaks:  slab.Enough(room.breaks[:], 2*moving)[:0],
		bare:    b.BareMass(),
		middle:  b.Length.Scale(0.5),
		bending: float64(b.Pipe.Modulus) * float64(b.Pipe.SecondMoment()),
		section: b.Pipe.SectionModulus(),
	}
	// The beam keeps nothing of its description, for which few lines and items ask for no memory.
	var few sketch
	desc := few.beam(n, 1+items)
	for i, l := range b.Lines {
		line := made{at: onto(l.At), give: l.give(), low: r.bending * float64(l.Long), limit: l.Limit}
		r.lines[i] = line
		desc.Lines[i], desc.Give[i], desc.Low[i] = float64(line.at), r.bending*line.give, line.low
	}
	desc.Loads[0] = beam.Stretch{From: 0, To: float64(b.Length)}
	desc.Still[0] = float64(r.bare.Weight(units.StandardGravity))
	r.still = r.bare
	for i, item := range h {
		r.hung += item.Mass
		r.lowest = max(r.lowest, item.foot())
		item.From, item.To = onto(item.From), onto(item.To)
		from, to := item.From, item.To
		if to-from < rounding { // a point: weight over next to no length is beyond float64
			from, to = item.centre(), item.centre()
		}
		desc.Loads[1+i], desc.Taper[1+i] = beam.Stretch{From: float64(from), To: float64(to)}, item.Taper
		arm := float64(item.centre() - r.middle)
		switch item.OnDeck {
		case Piles:
			r.breaks = append(r.breaks, item.Below, item.foot())
		case Stands:
			r.breaks = append(r.breaks, item.foot())
		default:
			desc.Still[1+i] = float64(item.Mass.Weight(units.StandardGravity))
			r.still += item.Mass
			r.moment += float64(float64(item.Mass) * arm)
			continue
		}
		rests := item.resting()
		rests.arm, rests.load = arm, 1+i
		r.moving = append(r.moving, rests)
	}
	r.layout = beam.NewLayout(desc)
	slices.Sort(r.breaks)
	r.breaks = slices.Compact(r.breaks)
	r.whole = r.still
	for i := range r.moving {
		r.whole += r.moving[i].mass
	}
	r.clear = units.Length(math.Inf(-1))
	if n := len(r.breaks); n > 0 {
		r.clear = r.breaks[n-1] + rounding
	}
	return r
}

// sketch is room for the description of a beam of few lines and loads.
type sketch struct {
	loads   [24]beam.Stretch
	figures [72]float64
}

// beam describes one, all of it nought.
func (s *sketch) beam(lines, loads int) beam.Beam {
	figures := slab.Enough(s.figures[:], 3*lines+2*loads)
	return beam.Beam{
		Lines: slab.Take(&figures, lines), Give: slab.Take(&figures, lines), Low: slab.Take(&figures, lines),
		Loads: slab.Enough(s.loads[:], loads), Taper: slab.Take(&figures, loads), Still: slab.Take(&figures, loads),
	}
}

// Bare is the mass of the batten with nothing on it.
func (r *Rigged) Bare() units.Mass { return r.bare }

// Hung is the mass of all that hangs on the batten, whether it is carried or on the deck.
func (r *Rigged) Hung() units.Mass { return r.hung }

// Carried is the mass that the lines carry at the trim: the bare batten, and of each
// item the part that is not on the deck. See [Item.Carried].
func (r *Rigged) Carried(trim units.Length) units.Mass { return r.carried(trim, false) }

// CarriedAbove is what the lines carry just above the trim. It differs from Carried
// where a standing piece lifts off.
func (r *Rigged) CarriedAbove(trim units.Length) units.Mass { return r.carried(trim, true) }

func (r *Rigged) carried(trim units.Length, above bool) units.Mass {
	if trim > r.clear {
		return r.whole
	}
	sum := r.still
	for i := range r.moving {
		sum += r.moving[i].carried(trim, above)
	}
	return sum
}

// Centre is the centre of gravity, along the batten, of what is carried at the trim.
func (r *Rigged) Centre(trim units.Length) units.Length { return r.centre(trim, false) }

func (r *Rigged) centre(trim units.Length, above bool) units.Length {
	_, centre := r.weigh(nil, trim, above)
	return centre
}

// Breaks gives the trims, sorted, at which what is carried bends or jumps: between two
// of them it is a straight line over trim. How the lines share it may turn at more trims:
// see [Rigged.Turns]. The slice is the caller's.
func (r *Rigged) Breaks() []units.Length { return slices.Clone(r.breaks) }

// Lowest is how far the lowest thing on the batten reaches below it: below this trim
// something is on the deck. It is 0 for a bare batten.
func (r *Rigged) Lowest() units.Length { return r.lowest }

// Share gives how the lines share what is carried at the trim. The error is a
// *[TipError] where the batten tips at that trim, and a *units.FieldError for a trim that
// is not finite or of no possible size.
func (r *Rigged) Share(trim units.Length) (Share, error) {
	var s Share
	if err := r.ShareInto(&s, trim); err != nil {
		return Share{}, err
	}
	return s, nil
}

// ShareInto is Share for who asks often: it fills s, whose Lines it uses again where they have room, so
// that nothing is allocated. After an error s is as it was.
func (r *Rigged) ShareInto(s *Share, trim units.Length) error {
	w := r.layout.Borrow()
	carried, centre, err := r.solve(w, trim)
	if err == nil {
		r.share(s, w, trim, carried, centre)
	}
	w.Return()
	return err
}

// share is what was solved.
func (r *Rigged) share(s *Share, w *beam.Work, trim units.Length, carried units.Mass, centre units.Length) {
	n := len(r.lines)
	sag, hog, shear := w.Extremes()
	*s = Share{
		Trim:    trim,
		Carried: carried,
		Weight:  carried.Weight(units.StandardGravity),
		Centre:  centre,
		Lines:   slices.Grow(s.Lines[:0], n)[:n],
		Sagging: MomentAt{units.Moment(sag.Value), units.Length(sag.At)},
		Hogging: MomentAt{units.Moment(hog.Value), units.Length(hog.At)},
		Shear:   ShearAt{units.Force(shear.Value), units.Length(shear.At)},
		Stress:  units.Moment(max(sag.Value, -hog.Value)).Stress(r.section),
	}
	// All cut to one length, so that the loop need not ask whether each place is there.
	lines, made, pulls, above := s.Lines[:n], r.lines[:n], w.Reaction[:n], w.Deflection[:n]
	for i := range lines {
		pull, line, made := pulls[i], &lines[i], &made[i]
		line.At, line.Limit = made.at, made.limit
		line.Tension, line.Slack = units.Force(pull), pull == 0
		line.Stretch, line.Gap = units.Length(made.give*pull), 0
		if above[i] != 0 {
			line.Gap = units.Length(-above[i] / r.bending)
		}
	}
}

// solve hangs what is carried at the trim on the lines, and gives its mass and centre.
func (r *Rigged) solve(w *beam.Work, trim units.Length) (carried units.Mass, centre units.Length, err error) {
	var p check.Problems
	if !check.Finite(&p, "trim", trim) {
		return 0, 0, p.Err()
	}
	carried, centre = r.lay(w, trim, false)
	if out := max(r.lines[0].at-centre, centre-r.lines[len(r.lines)-1].at); out > r.reach() {
		return 0, 0, r.tip(trim, false, centre)
	}
	w.LoadWeights()
	if !w.Hang(r.kernelReach()) {
		// The centre of gravity is inside, so that this cannot be; rather an error than a
		// wrong figure.
		return 0, 0, r.tip(trim, false, centre)
	}
	return carried, centre, nil
}

// lay fills in the weights at the trim, or just above it, and gives the mass that is carried
// and its centre.
func (r *Rigged) lay(w *beam.Work, trim units.Length, above bool) (units.Mass, units.Length) {
	return r.weigh(w.Weights, trim, above)
}

// weigh is lay into a list of weights, where there is one: what is still stands in it already.
func (r *Rigged) weigh(weights []float64, trim units.Length, above bool) (units.Mass, units.Length) {
	// About the middle, so that a symmetrical load is centred to the last bit.
	mass, moment := r.still, r.moment
	for i := range r.moving {
		item := &r.moving[i]
		m := item.carried(trim, above)
		mass += m
		moment += float64(float64(m) * item.arm)
		if weights != nil {
			weights[item.load] = float64(m.Weight(units.StandardGravity))
		}
	}
	return mass, r.middle + units.Length(moment/float64(mass))
}
