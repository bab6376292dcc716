package arbor_test

import (
	"testing"

	"example.com/steelyard/units"
)

func BenchmarkFly(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := overRail.Fly(carriage, doubled); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReach(b *testing.B) {
	f := mustFly(b, overRail, carriage, doubled)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.Reach("rail", 49*units.Foot, thirty); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAccess(b *testing.B) {
	f := mustFly(b, overRail, carriage, doubled)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.Access("rail", thirty); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHides(b *testing.B) {
	f := mustFly(b, overRail, carriage, doubled)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.Hides(auditorium, 20*units.Foot, 10*units.Foot); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCompare(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := wall.Compare(1, 2); err != nil {
			b.Fatal(err)
		}
	}
}
