package arbor

import "testing"

// Eight times what a stock can be chosen in, within room and capacity, twice as often for a kind that is out and once for each
// number of plates and two more, may be four million: just so many are walked to the end.
func TestChoicesThatAreSoonDone(t *testing.T) {
	thin := func(count int) Piece { return Piece{Name: "thin", Mass: 0.001, Thickness: 0.0001, Count: count} }
	flat := func(count int) Piece { return Piece{Name: "flat", Mass: 0.002, Thickness: 0.0002, Count: count} }
	frame := Frame{Length: 100, Room: 100, Capacity: 40_000}
	low, weak, plated := frame, frame, frame
	low.Room, weak.Capacity = 49.9999, 499.999
	plated.Plate = Plate{Mass: 1, Thickness: 0.003, Every: 12.5} // none to eight of them in all that is stacked, and two more
	for _, c := range []struct {
		name  string
		frame Frame
		stock Stock
		soon  bool
	}{
		{"500,000 choices", frame, Stock{thin(499_999)}, true},
		{"500,001 choices", frame, Stock{thin(500_000)}, false},
		{"1000 times 500", frame, Stock{thin(999), flat(499)}, true},
		{"1000 times 501", frame, Stock{thin(999), flat(500)}, false},
		{"a kind that is out, and 250,000", frame, Stock{flat(0), thin(249_999)}, true},
		{"a kind that is out, and 250,001", frame, Stock{flat(0), thin(250_000)}, false},
		{"one of a kind, and 250,000", frame, Stock{flat(1), thin(249_999)}, true},
		{"one of a kind, and 250,001", frame, Stock{flat(1), thin(250_000)}, false},
		{"room for 499,999", low, Stock{thin(600_000)}, true},
		{"room for as many, and one that is out", low, Stock{thin(600_000), flat(0)}, false},
		{"499,999 within the capacity", weak, Stock{thin(600_000)}, true},
		{"as many, and one that is out", weak, Stock{thin(600_000), flat(0)}, false},
		{"ten numbers of plates, and 50,000", plated, Stock{thin(49_999)}, true},
		{"ten numbers of plates, and 50,001", plated, Stock{thin(50_000)}, false},
		{"no kinds", frame, nil, true},
	} {
		var few sorted
		_, kinds := few.fromHeaviest(c.stock)
		if got := c.frame.soonDone(kinds); got != c.soon {
			t.Errorf("%s: %v, want %v", c.name, got, c.soon)
		}
	}
}
