package crosscheck

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"
	"gonum.org/v1/gonum/unit"

	"example.com/steelyard/units"
)

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
