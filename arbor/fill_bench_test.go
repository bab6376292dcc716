package arbor_test

import (
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

func BenchmarkFill(b *testing.B) {
	w := arbor.Wanted{Pipe: 187.3 * units.Pound, Show: 623.45 * units.Pound}
	four := append(arbor.Stock{
		{Name: "5.25", Mass: 5.25 * units.Pound, Thickness: 0.25 * units.Inch, Count: 10},
		{Name: "2.5", Mass: 2.5 * units.Pound, Thickness: 0.125 * units.Inch, Count: 6},
	}, house...)
	for _, bench := range []struct {
		name  string
		fill  func(arbor.Wanted, arbor.Stock, arbor.Side) (arbor.Stack, error)
		stock arbor.Stock
	}{
		{"fill-2-kinds", plated().Fill, house},
		{"fill-4-kinds", plated().Fill, four},
		{"ideal-4-kinds", plated().Ideal, four},
	} {
		b.Run(bench.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if s, err := bench.fill(w, bench.stock, arbor.NeverArborHeavy); err != nil || !s.Proven {
					b.Fatal(s, err)
				}
			}
		})
	}
}

func BenchmarkTravel(b *testing.B) {
	b.ReportAllocs()
	run := arbor.Run{LowerStop: 10.5 * units.Foot, UpperStop: 50 * units.Foot}
	for b.Loop() {
		run.Travel(tall)
	}
}
