package crosscheck

import (
	"math"
	"testing"

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

// A benchmark of five kinds is worth nothing unless all of them compute the same.
func TestKindsAgree(t *testing.T) {
	b, ours, f, d, e := houses()
	for i := range b {
		want := b[i].tension()
		wantStress := b[i].stress(want)
		tension := ours[i].tension()
		if got := tension.In(units.Newton); got != want {
			t.Errorf("set %d: ours %v, bare %v", i, got, want)
		}
		if got := ours[i].stress(tension).In(units.Pascal); got != wantStress {
			t.Errorf("set %d: stress of ours %v, bare %v", i, got, wantStress)
		}
		if got, want := ours[i].summed().In(units.Newton), b[i].summed(); got != want {
			t.Errorf("set %d: with Sum %v, bare %v", i, got, want)
		}
		if got := float64(f[i].tension()); got != want {
			t.Errorf("set %d: gonum fixed %v, bare %v", i, got, want)
		}
		if got := float64(f[i].stress(f[i].tension())); got != wantStress {
			t.Errorf("set %d: stress of gonum fixed %v, bare %v", i, got, wantStress)
		}
		dynamicTension := d[i].tension()
		if got := dynamicTension.Value(); got != want || !unit.DimensionsMatch(dynamicTension, unit.Force(0)) {
			t.Errorf("set %d: gonum dynamic %v, bare %v", i, dynamicTension, want)
		}
		// The stress is made of the tension itself: Mul changes its receiver.
		if got := d[i].stress(dynamicTension); math.Abs(got.Value()-wantStress) > 1e-15*wantStress || !unit.DimensionsMatch(got, unit.Pressure(0)) {
			t.Errorf("set %d: stress of gonum dynamic %v, bare %v", i, got, wantStress)
		}
		if got, _ := e[i].tension().Float64(); math.Abs(got-want) > 1e-14*want {
			t.Errorf("set %d: decimal %v, bare %v", i, got, want)
		}
		if got, _ := e[i].stress(e[i].tension()).Float64(); math.Abs(got-wantStress) > 1e-14*wantStress {
			t.Errorf("set %d: stress of decimal %v, bare %v", i, got, wantStress)
		}
	}
}

// Typed arithmetic must cost nothing that bare arithmetic does not.
func TestArithmeticDoesNotAllocate(t *testing.T) {
	_, ours, _, _, _ := houses()
	var sum units.Stress
	if n := testing.AllocsPerRun(10, func() {
		for i := range ours {
			sum += ours[i].stress(ours[i].tension()) + ours[i].stress(ours[i].summed())
		}
	}); n != 0 {
		t.Errorf("%v allocations for %v", n, sum)
	}
}

func BenchmarkTension(b *testing.B) {
	bares, ours, fixeds, dynamics, exacts := houses()
	b.Run("bare", func(b *testing.B) {
		b.ReportAllocs()
		var sum float64
		for b.Loop() {
			for i := range bares {
				sum += bares[i].tension()
			}
		}
		keep(b, sum)
	})
	b.Run("ours", func(b *testing.B) {
		b.ReportAllocs()
		var sum units.Force
		for b.Loop() {
			for i := range ours {
				sum += ours[i].tension()
			}
		}
		keep(b, sum.In(units.Newton))
	})
	b.Run("bare with a sum", func(b *testing.B) {
		b.ReportAllocs()
		var sum float64
		for b.Loop() {
			for i := range bares {
				sum += bares[i].summed()
			}
		}
		keep(b, sum)
	})
	b.Run("ours with Sum", func(b *testing.B) {
		b.ReportAllocs()
		var sum units.Force
		for b.Loop() {
			for i := range ours {
				sum += ours[i].summed()
			}
		}
		keep(b, sum.In(units.Newton))
	})
	b.Run("gonum fixed", func(b *testing.B) {
		b.ReportAllocs()
		var sum unit.Force
		for b.Loop() {
			for i := range fixeds {
				sum += fixeds[i].tension()
			}
		}
		keep(b, float64(sum))
	})
	b.Run("gonum dynamic", func(b *testing.B) {
		b.ReportAllocs()
		var sum float64
		for b.Loop() {
			for i := range dynamics {
				sum += dynamics[i].tension().Value()
			}
		}
		keep(b, sum)
	})
	b.Run("decimal", func(b *testing.B) {
		b.ReportAllocs()
		var last decimal.Decimal
		for b.Loop() {
			for i := range exacts {
				last = exacts[i].tension()
			}
		}
		keep(b, last.InexactFloat64())
	})
}

func BenchmarkStress(b *testing.B) {
	bares, ours, fixeds, dynamics, exacts := houses()
	b.Run("bare", func(b *testing.B) {
		b.ReportAllocs()
		var sum float64
		for b.Loop() {
			for i := range bares {
				sum += bares[i].stress(700)
			}
		}
		keep(b, sum)
	})
	b.Run("ours", func(b *testing.B) {
		b.ReportAllocs()
		var sum units.Stress
		for b.Loop() {
			for i := range ours {
				sum += ours[i].stress(700)
			}
		}
		keep(b, sum.In(units.Pascal))
	})
	b.Run("gonum fixed", func(b *testing.B) {
		b.ReportAllocs()
		var sum unit.Pressure
		for b.Loop() {
			for i := range fixeds {
				sum += fixeds[i].stress(700)
			}
		}
		keep(b, float64(sum))
	})
	b.Run("gonum dynamic", func(b *testing.B) {
		b.ReportAllocs()
		var sum float64
		for b.Loop() {
			for i := range dynamics {
				sum += dynamics[i].stress(unit.Force(700).Unit()).Value()
			}
		}
		keep(b, sum)
	})
	b.Run("decimal", func(b *testing.B) {
		b.ReportAllocs()
		tension := decimal.NewFromInt(700)
		var last decimal.Decimal
		for b.Loop() {
			for i := range exacts {
				last = exacts[i].stress(tension)
			}
		}
		keep(b, last.InexactFloat64())
	})
}

// keep uses a result, so that no compiler can leave the work out.
func keep(b *testing.B, result float64) {
	if !(result > 0) {
		b.Errorf("result %v", result)
	}
}
