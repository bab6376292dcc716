package purchase

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// LetGo is a set that nobody holds: the lock open, no hand on a rope, at rest at a trim.
type LetGo struct {
	Trim units.Length `json:"trim"` // where it is let go
	Low  units.Length `json:"low"`  // the trim at which a stop halts it on its way in
	High units.Length `json:"high"` // the same on its way out
	On   Bodies       `json:"on"`
}

// Runaway is what becomes of it.
type Runaway struct {
	Way  Way          `json:"way"`  // which way it runs; neither, where drag holds it or it is in balance: then all that follows is zero
	From units.Length `json:"from"` // trim
	Ends units.Length `json:"ends"` // trim at which it meets the stop; or, where AtStop is false, comes to rest by itself on the way
	// AtStop is true where it runs into the stop. Else the ropes that change sides, or drag, have taken its speed before.
	AtStop bool `json:"at_stop"`

	Gain   units.Acceleration `json:"gain"`   // of the batten, in the first moment
	Time   units.TimeSpan     `json:"time"`   // until it ends
	Speed  units.Speed        `json:"speed"`  // of the batten, as it meets the stop
	Energy units.Energy       `json:"energy"` // of all that moves then
	Drop   units.Length       `json:"drop"`   // how high something must fall freely to be as fast as the batten is then: v²/2g
	Most   units.Speed        `json:"most"`   // the greatest speed of the batten on the way

	Held  Pulling `json:"held"`  // the hand that would just have kept it from gaining speed, where it was let go and drag helps
	Error float64 `json:"error"` // how far Time may be off, as a share of it, by the estimate of the summation
}

// LetGo works out how a set runs away. The speed follows the motion's own law along the way, d(v²)/dz = 2·gain, with the
// ropes' weight and the mass felt changing with the trim and the drag that of the tensions as they then are; without
// drag it is the energy that ropes, batten and arbor give up. For that law speeds are exact, but for rounding; the time is summed
// up along the way, in steps that are halved until it changes no more. Where it comes to rest on the way, what happens then
// is not followed.
//
// The law leaves out two things. What a sheave's own rim asks for (its Rim, where given) adds to the sheave's drag to first
// order only, some ten-thousandths of the tension. And all ropes are taken to stay taut: behind an idler that is far
// too light the hand line of a fast set may not.
//
// The errors are *units.FieldError, joined: trims out of order or beyond Reach, bodies that do not fit.
//
// Nobody stops a runaway set with their hands. The figures are for teaching, and for what a stop must bear.
func (r *Reeved) LetGo(l LetGo) (Runaway, error) {
	if err := r.canLetGo(l); err != nil {
		return Runaway{}, err
	}
	out := Runaway{From: l.Trim, Ends: l.Trim}
	bodies := l.On.Arbor.In(units.Kilogram) / float64(r.ratio*r.ratio)
	for _, pull := range l.On.Pulls {
		bodies += pull.Mass(units.StandardGravity).In(units.Kilogram)
	}
	for _, way := range [...]Way{Out, In} {
		stop := l.High
		if way == In {
			stop = l.Low
		}
		m := r.motion(way, DeadRope, l.On)
		f := m.flight(way, r.movedTo(l.Trim), r.ratio, r.motions().felt.Plus(rope.Straight{Start: bodies}))
		first := f.gain(0, 0)
		if !(first > 1e-12*units.StandardGravity.In(units.MetrePerSecondSquared)) {
			continue
		}
		out.Way, out.Gain = way, units.Acceleration(first)
		out.Held = r.holds(l, way)
		length := abs((stop - l.Trim).In(units.Metre))
		if length == 0 {
			out.AtStop = true
			return out, nil
		}
		f.run(&out, length, l.Trim)
		if out.AtStop {
			out.Ends = stop // to the last bit
		}
		return out, nil
	}
	return out, nil
}

// holds is the pull that keeps a set just from gaining speed; none where no rope can.
func (r *Reeved) holds(l LetGo, way Way) Pulling {
	rope := OuterRope
	if way == In {
		rope = InnerRope
	}
	hold, _ := r.pullFor(r.movedTo(l.Trim), l.On, Speeding{Way: way}, rope)
	return hold
}

func (r *Reeved) canLetGo(l LetGo) error {
	if err := r.unrigged(); err != nil {
		return err
	}
	var p check.Problems
	ok := true
	for _, one := range [...]struct {
		field string
		trim  units.Length
	}{{"trim", l.Trim}, {"low", l.Low}, {"high", l.High}} {
		ok = r.trimmed(&p, one.field, one.trim) && ok
	}
	if ok && l.Low > l.Trim {
		p.Add("low", check.Show(l.Low), "not above the trim, "+check.Show(l.Trim), units.ErrOutOfRange)
	}
	if ok && l.High < l.Trim {
		p.Add("high", check.Show(l.High), "not below the trim, "+check.Show(l.Trim), units.ErrOutOfRange)
	}
	p.Within("on", "", l.On.validate(len(r.lift)))
	if p.Err() == nil && !r.weighs(l.On) {
		p.Within("on", "", nothingMoves())
	}
	return p.Err()
}

// flight is a motion followed from a place of the arbor one way.
//
// With z the way and u the square of the speed, u'·(m + m₁z) = 2(f + f₁z) + 2su: force and mass go straight with the way, so u
// is a power series, whose terms fall as fast as the mass changes over the way. Where it changes by more than half
// the series is begun anew.
type flight struct {
	mass, gives rope.Straight // by the way: what is felt, what drives it
	square      float64       // what the square of the speed adds to that
	felt        rope.Straight // mass at the batten without drag
}

// flight lays a motion along the way from a place of the arbor.
func (m *motion) flight(way Way, moved, ratio float64, felt rope.Straight) flight {
	along := func(s rope.Straight, k float64) rope.Straight {
		return rope.Straight{Start: float64(k * s.At(moved)), Rate: -float64(k*float64(way.sign()*s.Rate)) / ratio}
	}
	return flight{
		mass: along(m.mass, 1), gives: along(m.force, -way.sign()), square: -float64(way.sign() * m.square), felt: along(felt, 1),
	}
}

// gain is the acceleration its way.
func (f *flight) gain(z, square float64) float64 {
	return (f.gives.At(z) + float64(f.square*square)) / f.mass.At(z)
}

// series is the square of the speed from a place on: Σ c·(z − from)ᵏ up to the place to.
type series struct {
	from, to float64
	n        int // terms that count
	c        [terms]float64
}

// terms leaves out less than 2⁻⁵² where the mass changes by half from the first place to the last.
const terms = 54

func (f *flight) series(from, square, end float64) series {
	mass := f.mass.At(from)
	s := series{from: from, to: end}
	if reach := 0.5 * mass / abs(f.mass.Rate); reach < end-from { // an infinity without a rate
		s.to = from + reach
	}
	s.c[0] = square
	gives, power, size := 2*f.gives.At(from), 1.0, square
	for k := range terms - 1 {
		next := gives + float64((2*f.square-float64(f.mass.Rate*float64(k)))*s.c[k])
		s.c[k+1] = next / float64(mass*float64(k+1))
		gives = 0
		if k == 0 {
			gives = 2 * f.gives.Rate
		}
		power *= s.to - from
		term := abs(float64(s.c[k+1] * power))
		size = max(size, term)
		s.n = k + 2
		if k >= 2 && term <= 1e-17*size {
			break
		}
	}
	return s
}

func (s *series) at(z float64) float64 {
	h, sum := z-s.from, 0.0
	for k := s.n - 1; k >= 0; k-- {
		sum = float64(sum*h) + s.c[k]
	}
	return sum
}

// run follows it to the stop, or to where its speed is gone.
func (f *flight) run(out *Runaway, length float64, trim units.Length) {
	length, out.AtStop = f.reach(length)
	out.Ends = trim + units.Length(out.Way.sign()*length)
	time, off := f.time(length, out.AtStop)
	out.Time, out.Error = units.TimeSpan(time), off
	last := f.squareAt(length)
	out.Most = units.Speed(math.Sqrt(f.most(length, last)))
	if out.AtStop {
		out.Speed = units.Speed(math.Sqrt(last))
		out.Energy = units.Energy(0.5 * float64(f.felt.At(length)*last))
		out.Drop = units.Length(last / (2 * units.StandardGravity.In(units.MetrePerSecondSquared)))
	}
}

// squareAt is the square of the speed after a way.
func (f *flight) squareAt(z float64) float64 {
	s := f.series(0, 0, z)
	for s.to < z {
		s = f.series(s.to, s.at(s.to), z)
	}
	return s.at(z)
}

// most is the greatest square of the speed: at the end, or where it is driven no more.
func (f *flight) most(length, last float64) float64 {
	if f.gain(length, last) >= 0 {
		return last
	}
	low, high := 0.0, length
	for range 50 {
		if mid := (low + high) / 2; f.gain(mid, f.squareAt(mid)) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return f.squareAt(low)
}

// reach tells how far it runs: the whole length, or to where it comes to rest. What drives it goes straight with the way, so
// that it turns once at most: a speed that is left at the end was never gone before.
func (f *flight) reach(length float64) (z float64, atStop bool) {
	s := f.series(0, 0, length)
	for s.to < length && s.at(s.to) > 0 {
		s = f.series(s.to, s.at(s.to), length)
	}
	if s.at(s.to) > 0 {
		return length, true
	}
	low, high := s.from, s.to
	for range 60 {
		if mid := (low + high) / 2; s.at(mid) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return low, false
}

// time sums up dz/v over the way, and tells how far it may be off, as a share of it. The way is taken finer towards both
// ends, z = L(3s² − 2s³): so what is summed up is smooth in s where the speed begins and ends as a root. The trapezoidal
// rule is then bettered after Romberg.
func (f *flight) time(length float64, atStop bool) (time, off float64) {
	// dz/v at either end, where both are zero: v² is there 2·gain times the way from it.
	rest := func(gain float64) float64 { return 6 * length / math.Sqrt(6*float64(length*abs(gain))) }
	ends := rest(f.gain(0, 0))
	if !atStop {
		ends += rest(f.gain(length, 0))
	}
	const halvings = 14
	var row [halvings]float64
	row[0] = ends / 2
	n := 1
	for k := 1; k < halvings; k++ {
		var sum float64
		series := f.series(0, 0, length)
		for i := range n {
			s := (float64(i) + 0.5) / float64(n)
			z := float64(length * float64(float64(s*s)*(3-float64(2*s))))
			for z > series.to {
				series = f.series(series.to, series.at(series.to), length)
			}
			sum += float64(6*length*float64(s*(1-s))) / math.Sqrt(series.at(z))
		}
		better, before := (row[0]+sum/float64(n))/2, row[k-1]
		n *= 2
		factor := 4.0
		for j := range k {
			row[j], better = better, better+(better-row[j])/(factor-1)
			factor *= 4
		}
		row[k] = better
		time, off = better, abs(better-before)/better
		if k >= 4 && off < 1e-11 {
			break
		}
	}
	return time, off
}
