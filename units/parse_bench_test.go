package units_test

import (
	"testing"

	"example.com/steelyard/units"
)

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"7.4676 m", `24'-6"`, `24 ft 6 1/2 in`} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := units.Parse[units.Length](text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("15 oz/yd²", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := units.Parse[units.AreaMass]("15 oz/yd²"); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("error", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := units.Parse[units.Force]("90 lb"); err == nil {
				b.Fatal("no error")
			}
		}
	})
}

func BenchmarkString(b *testing.B) {
	l := 24*units.Foot + 6.5*units.Inch
	b.ReportAllocs()
	for b.Loop() {
		_ = l.String()
	}
}

func BenchmarkFormat(b *testing.B) {
	l, m := 24*units.Foot+6.5*units.Inch, 312*units.Pound
	b.Run("feet and inches", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_ = units.US.Format(l)
		}
	})
	b.Run("lb", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_ = units.US.Format(m)
		}
	})
}
