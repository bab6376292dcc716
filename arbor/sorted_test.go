package arbor

import (
	"cmp"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/stack"
	"example.com/steelyard/units"
)

// However many kinds there are, the heaviest come first, of equally heavy ones the thicker, and then by name; and the search
// takes the same.
func TestPropFromHeaviest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var stock Stock
		for i := range rapid.IntRange(0, 20).Draw(t, "kinds") {
			stock = append(stock, Piece{
				Name: strconv.Itoa(i), Mass: units.Mass(rapid.IntRange(1, 3).Draw(t, "mass")),
				Thickness: units.Length(rapid.IntRange(1, 3).Draw(t, "thickness")) / 100, Count: rapid.IntRange(0, 9).Draw(t, "count"),
			})
		}
		stock = rapid.Permutation(stock).Draw(t, "order")
		want := slices.Clone(stock)
		slices.SortFunc(want, func(a, b Piece) int {
			return cmp.Or(cmp.Compare(b.Mass, a.Mass), cmp.Compare(b.Thickness, a.Thickness), cmp.Compare(a.Name, b.Name))
		})
		var few sorted
		pieces, kinds := few.fromHeaviest(stock)
		if !slices.Equal(pieces, want) {
			t.Fatalf("%v, want %v", pieces, want)
		}
		for i, p := range want {
			if k := (stack.Kind{Mass: nanograms(p.Mass), Thickness: nanometres(p.Thickness), Count: int64(p.Count)}); kinds[i] != k {
				t.Fatalf("%d: %+v, want %+v", i, kinds[i], k)
			}
		}
	})
}

// What a stack that keeps to all limits fits is not the ideal's own: whoever changes the one must not change the other.
func TestFitsAndIdealAreApart(t *testing.T) {
	frame := Frame{Length: 2, Room: 1.5, Capacity: 1000}
	stock := Stock{{Name: "big", Mass: 10, Thickness: 0.05, Count: 20}, {Name: "small", Mass: 5, Thickness: 0.025, Count: 20}}
	s, err := frame.Shortfall(Wanted{Pipe: 25, Show: 35}, stock, EitherSide)
	if err != nil || len(s.Binds()) != 0 || len(s.Ideal.Pipe) != 2 || len(s.Ideal.Show) != 2 {
		t.Fatalf("%+v, %v", s, err)
	}
	s.Fits.Pipe[0].Count, s.Fits.Show[1].Count = 99, 99
	if s.Ideal.Pipe[0].Count != 2 || s.Ideal.Show[1].Count != 1 {
		t.Errorf("the ideal changed with it: %+v", s.Ideal)
	}
	// Nor does what is put on the pipe weight run into the show weight beside it.
	_ = append(s.Ideal.Pipe, Row{Name: "another"})
	if s.Ideal.Show[0].Name != "big" {
		t.Errorf("%+v", s.Ideal.Show)
	}
}
