package order_test

import (
	"testing"

	"example.com/steelyard/internal/order"
)

// twelve is 12 things, no two alike, and 60 pieces that balance them just, within bounds of so much either way.
func twelve(bound int64) *order.Problem {
	p := &order.Problem{Pieces: 60, Positions: []order.Position{{Halt: true, End: true, Deck: true, Reach: all(60)}}}
	var all int64
	for i := range int64(12) {
		mass := 500 + 37*i*i%400
		all += mass
		p.Items = append(p.Items, order.Item{Count: 1, Carried: []int64{mass}})
	}
	var low, high, even []int64
	for n := range int64(61) {
		sum := all * n / 60
		low, high, even = append(low, sum-bound), append(high, sum+bound), append(even, sum)
	}
	p.Low, p.High, p.Even = [][]int64{low}, [][]int64{high}, [][]int64{even}
	return p
}

func BenchmarkBest(b *testing.B) {
	for _, c := range []struct {
		name  string
		bound int64
	}{{"wide", 1 << 40}, {"half the hang", 4000}, {"two things", 1200}, {"one thing", 480}} {
		p := twelve(c.bound)
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, found := order.Best(p); !found {
					b.Fatal("none found")
				}
			}
		})
	}
}

func BenchmarkPossible(b *testing.B) {
	p := twelve(480)
	b.ReportAllocs()
	for b.Loop() {
		if !order.Possible(p) {
			b.Fatal("none found")
		}
	}
}
