package units_test

import (
	"strconv"
	"testing"

	"example.com/steelyard/units"
)

// BenchmarkParse reads what people write. Beside it in the same run strconv reads
// bare numbers, with about as many characters as the text of the same place in the
// list, for that is the least that reading a quantity can cost.
func BenchmarkParse(b *testing.B) {
	for _, number := range []string{"12.5", "7.4676", "24.541", "24.5416667", "24.54166666667"} {
		b.Run("strconv/"+number, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := strconv.ParseFloat(number, 64); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	benchmarkParse[units.Mass](b, "12.5 lb")
	benchmarkParse[units.Mass](b, "12.5 lbs")
	benchmarkParse[units.Length](b, "7.4676 m")
	benchmarkParse[units.Length](b, `24'-6"`)
	benchmarkParse[units.Length](b, `24' 6 1/2"`)
	benchmarkParse[units.Length](b, `24 ft 6 1/2 in`)
	benchmarkParse[units.Length](b, `24′ 6½″`)
	benchmarkParse[units.AreaMass](b, "15 oz/yd²")
	benchmarkParse[units.LineMass](b, "0.11 lb/ft")
	benchmarkParse[units.Stress](b, "29000.125 psi")
	benchmarkParse[units.Angle](b, "1.5 deg")
	benchmarkParse[units.LineMass](b, "2.72 lbs. per ft.")
	benchmarkParse[units.Length](b, "7.46759999999999999999999999 m")
	b.Run("90 lb as a force", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := units.Parse[units.Force]("90 lb"); err == nil {
				b.Fatal("no error")
			}
		}
	})
}

func benchmarkParse[Q units.Quantity](b *testing.B, text string) {
	b.Run(text, func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := units.Parse[Q](text); err != nil {
				b.Fatal(err)
			}
		}
	})
}
