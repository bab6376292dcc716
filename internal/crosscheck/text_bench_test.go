package crosscheck

import (
	"strconv"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/steelyard/units"
)

// Text against the number alone in the standard library, and against a decimal that
// is read and multiplied by the factor of its unit.

func BenchmarkParse(b *testing.B) {
	b.Run("strconv 12.5", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if f, err := strconv.ParseFloat("12.5", 64); err != nil || f != 12.5 {
				b.Fatal(f, err)
			}
		}
	})
	b.Run("ours 12.5 lb", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := units.Parse[units.Mass]("12.5 lb"); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("decimal 12.5 lb", func(b *testing.B) {
		b.ReportAllocs()
		pound := decimal.RequireFromString("0.45359237")
		for b.Loop() {
			if d, err := decimal.NewFromString("12.5"); err != nil || d.Mul(pound).IsZero() {
				b.Fatal(err)
			}
		}
	})
	b.Run("ours feet and inches", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := units.Parse[units.Length](`24' 6 1/2"`); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkAppend(b *testing.B) {
	mass := 23.5 * units.Pound
	room := make([]byte, 0, 64)
	b.Run("strconv", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			room = strconv.AppendFloat(room[:0], mass.In(units.Kilogram), 'f', -1, 64)
		}
	})
	b.Run("ours", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			var err error
			if room, err = mass.AppendText(room[:0]); err != nil {
				b.Fatal(err)
			}
		}
	})
}
