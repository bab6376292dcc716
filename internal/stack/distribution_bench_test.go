package stack_test

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.com/steelyard/internal/stack"
)

// stocks draws what may stand on a loading bridge: kinds with up to pieces in all,
// weighed and measured in one of the steps that people use.
func stocks(r *rand.Rand, kinds, pieces int) []stack.Kind {
	massStep := []int64{ngPerPound / 4, ngPerPound / 10, 500_000_000_000, 1_000_000_000, 1}[r.IntN(5)]
	thickStep := []int64{nmPerInch / 8, 1_000_000, 1}[r.IntN(3)]
	var out []stack.Kind
	for i := range kinds {
		mass := (1 + r.Int64N(20_000_000_000_000)/massStep) * massStep
		thickness := mass/400_000 + nmPerInch/8
		if r.IntN(2) == 0 {
			thickness = nmPerInch/4 + r.Int64N(2*nmPerInch)
		}
		n := pieces / (kinds - i)
		if i < kinds-1 {
			n = r.IntN(2*n + 1)
		}
		n = min(n, pieces)
		pieces -= n
		out = append(out, stack.Kind{Mass: mass, Thickness: max(1, thickness/thickStep) * thickStep, Count: int64(n)})
	}
	return byMass(out)
}

func byMass(kinds []stack.Kind) []stack.Kind {
	slices.SortFunc(kinds, func(a, b stack.Kind) int {
		return cmp.Or(cmp.Compare(b.Mass, a.Mass), cmp.Compare(b.Thickness, a.Thickness))
	})
	return kinds
}

func sums(kinds []stack.Kind) (mass, thickness int64) {
	for _, k := range kinds {
		mass += k.Count * k.Mass
		thickness += k.Count * k.Thickness
	}
	return mass, thickness
}

// arbors asks for some of a stock, in an arbor whose room and capacity may be short.
func arbors(r *rand.Rand, kinds []stack.Kind) stack.Problem {
	mass, thickness := sums(kinds)
	// Ten feet of rods are more than most arbors have.
	p := stack.Problem{Kinds: kinds, MaxMass: stack.Unlimited, MaxHeight: 120 * nmPerInch, Heavy: true, Light: true}
	p.Wanted = r.Int64N(mass + mass/10 + 1)
	if r.IntN(2) == 0 {
		p.Wanted = p.Wanted / (ngPerPound / 10) * (ngPerPound / 10)
	}
	if r.IntN(2) == 0 {
		p.MaxHeight = min(p.MaxHeight, 1+r.Int64N(thickness+1))
	}
	if r.IntN(2) == 0 {
		p.MaxMass = 1 + r.Int64N(mass+1)
	}
	if r.IntN(2) == 0 {
		p.Plate = stack.Plate{Mass: 3 * ngPerPound, Thickness: nmPerInch / 8, Every: int64(18+r.IntN(19)) * nmPerInch}
	}
	switch r.IntN(4) {
	case 0:
		p.Heavy = false
	case 1:
		p.Light = false
	}
	return p
}

// hostile draws what is hard to prove: six kinds of twenty each that hardly differ
// or tie in many ways, wishes that cannot be met, limits that bind.
func hostile(r *rand.Rand) stack.Problem {
	var kinds []stack.Kind
	base, thick := 10_000_000_000_000+r.Int64N(10_000_000_000_000), nmPerInch/2+r.Int64N(nmPerInch)
	spread := int64(1)
	for range r.IntN(12) {
		spread *= 10
	}
	family := r.IntN(7)
	for i := range int64(6) {
		k := stack.Kind{Mass: base, Thickness: thick, Count: 20}
		switch family {
		case 0: // nearly equal masses
			k.Mass += r.Int64N(spread + 1)
			k.Thickness += r.Int64N(1000)
		case 1: // equal masses, thicknesses that differ
			k.Thickness += r.Int64N(nmPerInch)
		case 2: // many ties: small multiples of one mass and of one thickness
			k.Mass = (1 + r.Int64N(40)) * ngPerPound
			k.Thickness = (1 + r.Int64N(16)) * nmPerInch / 8
		case 3: // a common step that is all but kept
			k.Mass = (8+r.Int64N(40))*ngPerPound + r.Int64N(3) - 1
			k.Thickness = k.Mass/400_000 + r.Int64N(3)
		case 4: // one density to the last digit or so: room tells nothing
			k.Mass = 2_000_000_000_000 + r.Int64N(18_000_000_000_000)
			k.Thickness = k.Mass/400_000 + r.Int64N(2)
		case 5: // no order in anything
			k.Mass = 2_000_000_000_000 + r.Int64N(18_000_000_000_000)
			k.Thickness = nmPerInch/4 + r.Int64N(2*nmPerInch)
		case 6: // arithmetic rows: every sum in very many ways
			k.Mass = (10 + i) * ngPerPound
			k.Thickness = (4 + i*r.Int64N(3)) * nmPerInch / 8
		}
		kinds = append(kinds, k)
	}
	p := arbors(r, byMass(kinds))
	mass, thickness := sums(kinds)
	p.Wanted = mass/4 + r.Int64N(mass/2)
	if r.IntN(2) == 0 { // between two whole numbers of pieces
		p.Wanted = (20+r.Int64N(80))*base + base/2
	}
	p.MaxHeight = min(p.MaxHeight, thickness/5+r.Int64N(thickness/2))
	if p.MaxMass != stack.Unlimited {
		p.MaxMass = p.Wanted + r.Int64N(base) - base/2
	}
	return p
}

// BenchmarkBestDistribution times each of many problems by itself, and reports
// how the times are distributed. A problem counts with the shortest of two runs, a
// slow one of ten: the rest of the time is what else the machine was doing.
//
//	go test -run '^$' -bench Distribution ./internal/stack
func BenchmarkBestDistribution(b *testing.B) {
	for _, bench := range []struct {
		name string
		n    int
		draw func(*rand.Rand) stack.Problem
	}{
		{"random-1-to-6-kinds", 10_000, func(r *rand.Rand) stack.Problem { return arbors(r, stocks(r, 1+r.IntN(6), 1+r.IntN(120))) }},
		{"random-6-kinds-120-pieces", 10_000, func(r *rand.Rand) stack.Problem { return arbors(r, stocks(r, 6, 120)) }},
		{"hostile-6-kinds-120-pieces", 2_000, hostile},
	} {
		b.Run(bench.name, func(b *testing.B) {
			times := make([]time.Duration, bench.n)
			unproven := 0
			for b.Loop() {
				r := rand.New(rand.NewPCG(1, 2))
				unproven = 0
				for i := range times {
					p := bench.draw(r)
					for n := 0; n < 2 || n < 10 && times[i] > time.Millisecond; n++ {
						start := time.Now()
						c := stack.Best(p, 4_000_000)
						d := time.Since(start)
						if times[i] == 0 || d < times[i] {
							times[i] = d
						}
						if !c.Proven {
							unproven++
						}
					}
				}
			}
			slices.Sort(times)
			at := func(share float64) float64 {
				return float64(times[min(int(share*float64(len(times))), len(times)-1)].Nanoseconds()) / 1000
			}
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(at(0.5), "median-µs")
			b.ReportMetric(at(0.99), "p99-µs")
			b.ReportMetric(at(0.999), "p99.9-µs")
			b.ReportMetric(at(1), "worst-µs")
			b.ReportMetric(float64(unproven), "unproven")
		})
	}
}
