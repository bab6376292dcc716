package crosscheck

import (
	"github.com/shopspring/decimal"
	"gonum.org/v1/gonum/unit"

	"example.com/steelyard/units"
)

// Two formulas of the trade, written the same way in five kinds of number:
//
//	tension of a lift line   (pipe × span + sum of what hangs) × g / lines
//	stress of the batten     tension × arm / section modulus
//
// Each is kept out of line, so that all kinds do the same work, and runs over a
// house of sets, so that the clock measures more than a call.

const (
	setsInHouse = 64
	hungOnSet   = 6
	liftLines   = 5
	gravity     = 9.80665
)

// bare is a set in plain numbers, in SI.
type bare struct {
	pipe, span   float64
	hung         [hungOnSet]float64
	arm, modulus float64
}

//go:noinline
func (s *bare) tension() float64 {
	sum := s.pipe * s.span
	for _, m := range s.hung[:] {
		sum += m
	}
	return sum * gravity / liftLines
}

// summed is bare with a function that sums, as package units has one.
//
//go:noinline
func (s *bare) summed() float64 {
	sum := s.pipe*s.span + total(s.hung[:]...)
	return sum * gravity / liftLines
}

func total(fs ...float64) float64 {
	var sum float64
	for _, f := range fs {
		sum += f
	}
	return sum
}

//go:noinline
func (s *bare) stress(tension float64) float64 { return tension * s.arm / s.modulus }

// typed is a set in the quantities of package units.
type typed struct {
	pipe    units.LineMass
	span    units.Length
	hung    [hungOnSet]units.Mass
	arm     units.Length
	modulus units.SectionModulus
}

//go:noinline
func (s *typed) tension() units.Force {
	sum := s.pipe.Over(s.span)
	for _, m := range s.hung[:] {
		sum += m
	}
	return sum.Weight(units.StandardGravity) / liftLines
}

//go:noinline
func (s *typed) stress(tension units.Force) units.Stress {
	return tension.Moment(s.arm).Stress(s.modulus)
}

// summed is typed with the generic sum of package units.
//
//go:noinline
func (s *typed) summed() units.Force {
	sum := s.pipe.Over(s.span) + units.Sum(s.hung[:]...)
	return sum.Weight(units.StandardGravity) / liftLines
}

// fixed is a set in the fixed types of gonum's package unit, which has none for a
// mass per length or a section modulus and no product of two of them but through
// plain numbers or dynamic ones.
type fixed struct {
	pipe    float64
	span    unit.Length
	hung    [hungOnSet]unit.Mass
	arm     unit.Length
	modulus unit.Volume
}

//go:noinline
func (s *fixed) tension() unit.Force {
	sum := unit.Mass(s.pipe * float64(s.span))
	for _, m := range s.hung[:] {
		sum += m
	}
	return unit.Force(float64(sum)*gravity) / liftLines
}

//go:noinline
func (s *fixed) stress(tension unit.Force) unit.Pressure {
	return unit.Pressure(float64(tension) * float64(s.arm) / float64(s.modulus))
}

// dynamic is a set in gonum's values that carry their dimensions along.
type dynamic struct {
	pipe    *unit.Unit
	span    unit.Length
	hung    [hungOnSet]unit.Mass
	arm     unit.Length
	modulus unit.Volume
}

var lineMassDimensions = unit.Dimensions{unit.MassDim: 1, unit.LengthDim: -1}

//go:noinline
func (s *dynamic) tension() *unit.Unit {
	sum := unit.New(s.pipe.Value(), lineMassDimensions).Mul(s.span)
	for _, m := range s.hung[:] {
		sum.Add(m)
	}
	return sum.Mul(unit.Acceleration(gravity)).Div(unit.Dimless(liftLines))
}

//go:noinline
func (s *dynamic) stress(tension *unit.Unit) *unit.Unit { return tension.Mul(s.arm).Div(s.modulus) }

// exact is a set in decimals, in SI.
type exact struct {
	pipe, span   decimal.Decimal
	hung         [hungOnSet]decimal.Decimal
	arm, modulus decimal.Decimal
}

var (
	decimalGravity = decimal.RequireFromString("9.80665")
	decimalLines   = decimal.NewFromInt(liftLines)
)

//go:noinline
func (s *exact) tension() decimal.Decimal {
	sum := s.pipe.Mul(s.span)
	for _, m := range s.hung[:] {
		sum = sum.Add(m)
	}
	return sum.Mul(decimalGravity).Div(decimalLines)
}

//go:noinline
func (s *exact) stress(tension decimal.Decimal) decimal.Decimal {
	return tension.Mul(s.arm).Div(s.modulus)
}

// houses gives the same house in each kind of number.
func houses() (b []bare, t []typed, f []fixed, d []dynamic, e []exact) {
	for i := range setsInHouse {
		k := float64(i)
		s := bare{pipe: 4.05 + k/128, span: 12.75 + k/8, arm: 1.25 + k/64, modulus: 5.346e-6}
		for j := range s.hung {
			s.hung[j] = 5.5 + 1.5*float64(j) + k/16
		}
		b = append(b, s)
		ts := typed{
			pipe: units.KilogramPerMetre.Scale(s.pipe), span: units.Metre.Scale(s.span),
			arm: units.Metre.Scale(s.arm), modulus: units.CubicMetre.Scale(s.modulus),
		}
		fs := fixed{pipe: s.pipe, span: unit.Length(s.span), arm: unit.Length(s.arm), modulus: unit.Volume(s.modulus)}
		ds := dynamic{pipe: unit.New(s.pipe, lineMassDimensions), span: fs.span, arm: fs.arm, modulus: fs.modulus}
		es := exact{
			pipe: decimal.NewFromFloat(s.pipe), span: decimal.NewFromFloat(s.span),
			arm: decimal.NewFromFloat(s.arm), modulus: decimal.NewFromFloat(s.modulus),
		}
		for j, m := range s.hung {
			ts.hung[j] = units.Kilogram.Scale(m)
			fs.hung[j] = unit.Mass(m)
			ds.hung[j] = unit.Mass(m)
			es.hung[j] = decimal.NewFromFloat(m)
		}
		t, f, d, e = append(t, ts), append(f, fs), append(d, ds), append(e, es)
	}
	return b, t, f, d, e
}

// Arithmetic gives the first formula, all over the house, in the three kinds that matter to a caller: "bare", "ours"
// and "decimal".
func Arithmetic() []Contender {
	bares, ours, _, _, exacts := houses()
	return []Contender{
		{"bare", func(int) (sum float64) {
			for i := range bares {
				sum += bares[i].tension()
			}
			return sum
		}},
		{"ours", func(int) float64 {
			var sum units.Force
			for i := range ours {
				sum += ours[i].tension()
			}
			return sum.In(units.Newton)
		}},
		{"decimal", func(int) float64 {
			var sum decimal.Decimal
			for i := range exacts {
				sum = sum.Add(exacts[i].tension())
			}
			return sum.InexactFloat64()
		}},
	}
}
