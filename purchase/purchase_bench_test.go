package purchase_test

import (
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

func BenchmarkImbalance(b *testing.B) {
	r, err := weightless(purchase.Double).Rig()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.Imbalance(20*units.Foot, 500, 1000); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAt(b *testing.B) {
	r, err := weightless(purchase.Double).Rig()
	if err != nil {
		b.Fatal(err)
	}
	on := purchase.Bodies{Pulls: make([]units.Force, 5), Arbor: 1000, Idler: 50}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.At(20*units.Foot, on); err != nil {
			b.Fatal(err)
		}
	}
}
