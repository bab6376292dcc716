package stack_test

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/steelyard/internal/stack"
)

const (
	ngPerPound = 453_592_370_000
	nmPerInch  = 25_400_000
)

// house is a typical stock: steel pieces of one footprint, 100 in all, by falling mass.
func house(kinds int) []stack.Kind {
	all := []stack.Kind{
		{Mass: 47 * ngPerPound / 2, Thickness: 1 * nmPerInch},
		{Mass: 11 * ngPerPound, Thickness: nmPerInch / 2},
		{Mass: 21 * ngPerPound / 4, Thickness: nmPerInch / 4},
		{Mass: 5 * ngPerPound / 2, Thickness: nmPerInch / 8},
	}[:kinds]
	for i := range all {
		all[i].Count = int64(100 / kinds)
	}
	return all
}

// weighed is a stock of pieces that were weighed one by one: no common divisor.
func weighed(kinds int, count int64) []stack.Kind {
	r := rand.New(rand.NewPCG(7, uint64(kinds)))
	var out []stack.Kind
	mass := int64(20_000_000_000_000)
	for range kinds {
		out = append(out, stack.Kind{Mass: mass, Thickness: mass/400_000 + r.Int64N(1_000_000), Count: count})
		mass -= r.Int64N(2*mass/int64(kinds)) + 1
	}
	return out
}

// mixed is a stock gathered over years: masses in quarter pounds, thicknesses in
// eighths of an inch, the one not following from the other.
func mixed(kinds int, count int64) []stack.Kind {
	r := rand.New(rand.NewPCG(11, uint64(kinds)))
	var out []stack.Kind
	for range kinds {
		out = append(out, stack.Kind{Mass: (16 + r.Int64N(144)) * ngPerPound / 4, Thickness: (4 + r.Int64N(12)) * nmPerInch / 8, Count: count})
	}
	slices.SortFunc(out, func(a, b stack.Kind) int { return cmp.Compare(b.Mass, a.Mass) })
	return out
}

// lifted is the same stock without end.
func lifted(kinds []stack.Kind) []stack.Kind {
	out := slices.Clone(kinds)
	for i := range out {
		out[i].Count = stack.Unlimited
	}
	return out
}

func BenchmarkBest(b *testing.B) {
	plate := stack.Plate{Mass: 3 * ngPerPound, Thickness: nmPerInch / 8, Every: 24 * nmPerInch}
	// 623.45 lb in 72 in of room, either side.
	base := stack.Problem{
		Wanted: 62_345 * ngPerPound / 100, MaxMass: 1500 * ngPerPound,
		MaxHeight: 72 * nmPerInch, Plate: plate, Heavy: true, Light: true,
	}
	type row struct {
		name string
		p    stack.Problem
	}
	var rows []row
	add := func(name string, kinds []stack.Kind, change func(*stack.Problem)) {
		p := base
		p.Kinds = kinds
		if change != nil {
			change(&p)
		}
		rows = append(rows, row{name, p})
	}
	neverHeavy := func(p *stack.Problem) { p.Heavy = false }
	tooLow := func(p *stack.Problem) { p.Wanted = 1400 * ngPerPound; p.MaxHeight = 50 * nmPerInch }
	noLimits := func(p *stack.Problem) { p.MaxMass, p.MaxHeight = stack.Unlimited, stack.Unlimited }
	for kinds := 1; kinds <= 4; kinds++ {
		add(fmt.Sprintf("house-%d", kinds), house(kinds), nil)
		add(fmt.Sprintf("house-%d-never-heavy", kinds), house(kinds), neverHeavy)
		add(fmt.Sprintf("house-%d-too-low", kinds), house(kinds), tooLow)
		add(fmt.Sprintf("house-%d-lifted", kinds), lifted(house(kinds)), noLimits)
	}
	for _, kinds := range []int{4, 6, 10} {
		add(fmt.Sprintf("mixed-%d", kinds), mixed(kinds, 20), nil)
		add(fmt.Sprintf("mixed-%d-too-low", kinds), mixed(kinds, 20), tooLow)
		add(fmt.Sprintf("mixed-%d-lifted", kinds), lifted(mixed(kinds, 20)), noLimits)
	}
	add("weighed-4x20", weighed(4, 20), nil)
	add("weighed-6x20", weighed(6, 20), nil)
	add("weighed-10x50", weighed(10, 50), nil)
	for _, r := range rows {
		b.Run(r.name, func(b *testing.B) {
			b.ReportAllocs()
			var c stack.Choice
			for b.Loop() {
				c = stack.Best(r.p, 4_000_000)
			}
			b.ReportMetric(float64(c.Nodes), "nodes")
			if !c.Proven {
				b.ReportMetric(1, "unproven")
			}
		})
	}
}
