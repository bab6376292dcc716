package lineset_test

import (
	"strconv"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func BenchmarkSetRig(b *testing.B) {
	for name, s := range map[string]lineset.Set{"electric": electric(), "crowded": crowded(), "crowded with cloth": clothed()} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := s.Rig(stock); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkAsked is what a set answers once it is rigged, all of it.
func BenchmarkAsked(b *testing.B) {
	r := mustRig(b, crowded())
	b.ReportAllocs()
	for b.Loop() {
		r.Report()
	}
}

// crowded is a double purchase set on seven lines with ten items, all clear of the deck.
func crowded() lineset.Set {
	s := electric()
	s.Rigging.Drag = 0.02
	s.Rigging.Batten.Length = 62 * units.Foot
	s.Rigging.Batten.Lines = load.Spaced(1*units.Foot, 10*units.Foot, 7)
	s.Hang = nil
	for i := range 10 {
		at := units.Foot.Scale(4 + 6*float64(i))
		s.Hang = append(s.Hang, load.Item{Name: "fixture " + strconv.Itoa(i+1), Mass: 32 * units.Pound, From: at, To: at})
	}
	return s
}

// clothed has two cloths among them that pile on the deck.
func clothed() lineset.Set {
	s := crowded()
	for _, i := range [2]int{2, 7} {
		item := &s.Hang[i]
		item.From, item.To = item.From-3*units.Foot, item.To+3*units.Foot
		item.Height, item.OnDeck = units.Foot.Scale(10+float64(i)), load.Piles
	}
	return s
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
