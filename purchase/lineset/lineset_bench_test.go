package lineset_test

import (
	"testing"

	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func BenchmarkSetRig(b *testing.B) {
	s := electric()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Rig(stock); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAt(b *testing.B) {
	r := mustRig(b, electric())
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.At(20 * units.Foot); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAtInto(b *testing.B) {
	r := mustRig(b, electric())
	b.ReportAllocs()
	var s lineset.State
	for b.Loop() {
		if err := r.AtInto(&s, 20*units.Foot); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkImbalance(b *testing.B) {
	r := mustRig(b, electric())
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.Imbalance(20 * units.Foot); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHouseDecode(b *testing.B) {
	text := houseText(b)
	b.ReportAllocs()
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		var h lineset.House
		if err := h.UnmarshalJSON(text); err != nil {
			b.Fatal(err)
		}
	}
}
