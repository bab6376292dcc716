package units_test

import (
	"encoding/json"
	"testing"

	"example.com/steelyard/units"
)

func BenchmarkUnmarshalJSON(b *testing.B) {
	for _, row := range []struct{ name, data string }{
		{"plain", `"12.5 lb"`},
		{"escaped", `"12.5\u00a0lb"`},
	} {
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			data := []byte(row.data)
			for b.Loop() {
				var m units.Mass
				if err := m.UnmarshalJSON(data); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(row.name+" in encoding/json", func(b *testing.B) {
			b.ReportAllocs()
			data := []byte(row.data)
			for b.Loop() {
				var m units.Mass
				if err := json.Unmarshal(data, &m); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
