package lineset_test

import (
	"encoding/json"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// FuzzOrder decodes, goes through and reads out whatever it is given: it never
// panics, and what it answers can be stored, so every number in it is finite.
func FuzzOrder(f *testing.F) {
	s := electric()
	s.Hang = append(s.Hang,
		load.Item{Name: "flat", Mass: 40 * units.Pound, From: 10 * units.Foot, To: 30 * units.Foot, Height: 16 * units.Foot, OnDeck: load.Stands},
		load.Item{Name: "cloth", Mass: 80 * units.Pound, From: 1 * units.Foot, To: 41 * units.Foot, Height: 20 * units.Foot, OnDeck: load.Piles})
	r := mustRig(f, s)
	for _, o := range []lineset.Order{
		{From: lineset.FromBare, Trim: 5 * units.Foot, Hung: []int{2, 4}, Pieces: []lineset.PiecesOf{{Piece: "44", Count: 3}}, Steps: []lineset.OrderStep{
			hang("12 fixtures"),
			{Act: lineset.AddPieces, Piece: "44", Count: 9},
			{Act: lineset.AddPieces, Piece: "11", Count: 2},
			{Act: lineset.TakePieces, Piece: "11", Count: 1},
			{Act: lineset.HangItem, Place: 3},
			unlock, fly(20), lock,
			{Act: lineset.SetLine, On: 5},
			{Act: lineset.TakePieces, Piece: "44", Count: 2},
			{Act: lineset.FreeLine},
			strip("cloth"), unlock, fly(4),
		}},
		{From: lineset.FromLoaded, Steps: []lineset.OrderStep{unlock, fly(28), fly(4)}},
	} {
		text, err := json.Marshal(o)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text, 50.0, 50.0, true)
	}
	f.Add([]byte(`{"from":"bare","steps":[{"act":"add","piece":"44","count":9000000000}]}`), 0.0, 1e300, false)
	f.Fuzz(func(t *testing.T, text []byte, arborHeavy, battenHeavy float64, rests bool) {
		if len(text) > 1<<14 {
			t.Skip("bounded: size is not what is looked for here")
		}
		var o lineset.Order
		if o.UnmarshalJSON(text) != nil {
			return
		}
		limits := within(arborHeavy, battenHeavy)
		limits.RestsOnStop = rests
		c, err := r.CheckOrder(o, limits)
		if err != nil {
			return
		}
		c.Lines(units.US)
		if _, err := json.Marshal(c); err != nil {
			t.Fatal(err)
		}
		e, err := r.Estimates(o, limits)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := json.Marshal(e); err != nil {
			t.Fatal(err)
		}
	})
}
