package lineset_test

import (
	"errors"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
)

// twelve is a set with 12 items, no two alike, and 60 pieces of 10 lb.
func twelve(b *testing.B) *lineset.Rigged {
	var hang []load.Item
	left := 600.0
	for i := range 12 {
		lb := 17 + 6*float64(i)
		if i == 11 {
			lb = left
		}
		left -= lb
		hang = append(hang, pounds("item", lb))
	}
	r := rigTens(b, plain(b, purchase.Single, hang...))
	if n := r.Counterweight().Stack.Pieces; n != 60 {
		b.Fatalf("%d pieces", n)
	}
	return r
}

func BenchmarkOrder(b *testing.B) {
	r := twelve(b)
	resting := within(20, 0)
	resting.RestsOnStop = true
	for _, c := range []struct {
		name   string
		limits lineset.OrderLimits
	}{{"rests", resting}, {"wide", within(100, 300)}, {"narrow", within(50, 60)}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := r.Order(lineset.Loading, c.limits); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("none", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			var none *lineset.NoOrderError
			if _, err := r.Order(lineset.Loading, within(10, 10)); !errors.As(err, &none) {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkCheckOrder(b *testing.B) {
	r := twelve(b)
	p, err := r.Order(lineset.Loading, within(50, 60))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.CheckOrder(p.Order, within(50, 60)); err != nil {
			b.Fatal(err)
		}
	}
}
