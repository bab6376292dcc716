package units_test

import (
	"strconv"
	"testing"

	"example.com/steelyard/units"
)

// BenchmarkAppend writes quantities into a buffer, and strconv a bare number of as
// many digits beside it in the same run.
func BenchmarkAppend(b *testing.B) {
	var room [64]byte
	var err error
	piece, trim, pull, moment := 23.5*units.Pound, 24*units.Foot+6.5*units.Inch, units.Force(412.7), 350.5*units.PoundForceFoot
	for _, row := range []struct {
		name string
		call func()
	}{
		{"strconv/shortest", func() { strconv.AppendFloat(room[:0], 10.659420695, 'f', -1, 64) }},
		{"strconv/2 places", func() { strconv.AppendFloat(room[:0], 23.5, 'f', 2, 64) }},
		{"strconv/17 digits", func() { strconv.AppendFloat(room[:0], 24.541666666666666, 'f', -1, 64) }},
		{"AppendText", func() { _, err = piece.AppendText(room[:0]) }},
		{"US/lb", func() { units.US.Append(room[:0], piece) }},
		{"US/feet and inches", func() { units.US.Append(room[:0], trim) }},
		{"US/lbf·ft", func() { units.US.Append(room[:0], moment) }},
		{"Metric/kN", func() { units.Metric.Append(room[:0], pull) }},
		{"AppendPlaces", func() { units.US.AppendPlaces(room[:0], piece, 2) }},
		{"AppendRounded", func() { units.US.AppendRounded(room[:0], pull, 1, units.AwayFromZero) }},
		{"AppendIn/lb", func() { _, err = units.AppendIn(room[:0], piece, "lb") }},
		{"AppendIn/ft, 17 digits", func() { _, err = units.AppendIn(room[:0], trim, "ft") }},
	} {
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				row.call()
			}
			if err != nil {
				b.Fatal(err)
			}
		})
	}
}

// BenchmarkFormat returns texts, each an allocation.
func BenchmarkFormat(b *testing.B) {
	piece, trim := 23.5*units.Pound, 24*units.Foot+6.5*units.Inch
	var text string
	for _, row := range []struct {
		name string
		call func()
	}{
		{"strconv/shortest", func() { text = strconv.FormatFloat(10.659420695, 'f', -1, 64) }},
		{"String", func() { text = piece.String() }},
		{"US/lb", func() { text = units.US.Format(piece) }},
		{"US/feet and inches", func() { text = units.US.Format(trim) }},
		{"FormatIn/lb", func() { text, _ = units.FormatIn(piece, "lb") }},
	} {
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				row.call()
			}
			if text == "" {
				b.Fatal("no text")
			}
		})
	}
}
