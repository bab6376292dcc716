package order_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/internal/order"
)

// even is a problem at one position: pieces of 10 each, so much either way allowed.
func even(pieces int, light, heavy int64, masses ...int64) *order.Problem {
	p := &order.Problem{Pieces: pieces, Positions: []order.Position{{Halt: true, End: true, Deck: true, Reach: all(pieces)}}}
	for _, m := range masses {
		p.Items = append(p.Items, order.Item{Count: 1, Carried: []int64{m}})
	}
	var low, high, even []int64
	for n := range int64(pieces + 1) {
		low, high, even = append(low, 10*n-light), append(high, 10*n+heavy), append(even, 10*n)
	}
	p.Low, p.High, p.Even = [][]int64{low}, [][]int64{high}, [][]int64{even}
	return p
}

// all is every piece in reach.
func all(pieces int) []bool { return slices.Repeat([]bool{true}, pieces) }

// Orders that can be told at a glance, as letters: A, B, … hang, a + is a piece.
func TestBestByHand(t *testing.T) {
	for _, c := range []struct {
		name      string
		p         *order.Problem
		want      string
		handOvers int
		reason    string
	}{
		{"nothing to do", even(0, 0, 0), "", 0, "the start is the end"},
		{"no limit on the batten", even(6, 0, 1000, 20, 30, 10), "ABC++++++", 1, "the batten first, then the arbor"},
		{"one thing at a time", even(6, 0, 30, 20, 30, 10), "AC+++B+++", 3, "30 may be out: A, passing over B, and C; or B"},
		{"the deck goes on", even(13, 0, 70, 60, 10, 60), "AB+++++++C++++++", 3, "B may hang at once or before C: at once, as the deck is at work"},
		{"arbor first", even(2, 20, 10, 20), "++A", 1, "20 may not hang unanswered, but 20 may stand in the arbor"},
		{"just the limit", even(3, 0, 30, 30), "A+++", 1, "limits are inclusive"},
		{"a hair over", even(3, 0, 29, 30), "no", 0, "30 is over at once, and no piece may go in before it"},
		{"start out of bounds", even(1, -1, 5, 10), "no", 0, "the first state counts"},
		{"end out of bounds", even(1, 5, 5, 20), "no", 0, "the last state counts: 10 batten-heavy"},
	} {
		t.Run(c.name, func(t *testing.T) {
			o, found := order.Best(c.p)
			got := ""
			for _, m := range o.Moves {
				if m.Kind == order.Hang {
					got += string(rune('A' + m.Item))
				} else {
					got += "+"
				}
			}
			if !found {
				got = "no"
			}
			if got != c.want || o.HandOvers != c.handOvers || found != order.Possible(c.p) {
				t.Errorf("%q with %d hand-overs, want %q with %d: %s", got, o.HandOvers, c.want, c.handOvers, c.reason)
			}
		})
	}
}

// A cloth that piles: at the deck a third of it is carried, all of it when it hangs clear. Its weight can only be
// answered in two stages, with a flight between.
func TestStages(t *testing.T) {
	p := &order.Problem{
		Items: []order.Item{{Count: 1, Carried: []int64{10, 20, 30}}}, Pieces: 3,
		Positions: []order.Position{{Halt: true, End: true, Deck: true, Reach: all(3)}, {}, {Halt: true, End: true, Reach: all(3)}},
	}
	for range p.Positions {
		p.Low, p.High, p.Even = append(p.Low, []int64{-10, 0, 10, 20}), append(p.High, []int64{10, 20, 30, 40}), append(p.Even, []int64{0, 10, 20, 30})
	}
	want := order.Order{HandOvers: 1, Flights: 1, Moves: []order.Move{
		{Kind: order.Hang}, {Kind: order.Add}, {Kind: order.Add}, {Kind: order.Fly, Position: 2}, {Kind: order.Add, Position: 2},
	}}
	o, found := order.Best(p)
	// After two pieces the batten is 10 light at the deck and 10 heavy aloft; with one it would be 20 heavy aloft.
	if diff := cmp.Diff(want, o); diff != "" || !found {
		t.Error(diff)
	}
	// Were the way between heavier by more than is allowed, nothing could be flown out.
	p.Items[0].Carried[1] = 31
	if _, found := order.Best(p); found || order.Possible(p) {
		t.Error("flown through a state that is not allowed")
	}
}

// More pieces than a word has bits, put in aloft, and the order ends at the deck: out and in again with all of them.
func TestFlownWithManyPieces(t *testing.T) {
	const pieces = 70
	p := &order.Problem{
		Items: []order.Item{{Count: 1, Carried: []int64{700, 700}}}, Pieces: pieces,
		Positions: []order.Position{{Halt: true, End: true, Deck: true}, {Halt: true, Reach: all(pieces)}},
	}
	for range p.Positions {
		var low, high, even []int64
		for n := range int64(pieces + 1) {
			low, high, even = append(low, 0), append(high, 700), append(even, 10*n)
		}
		p.Low, p.High, p.Even = append(p.Low, low), append(p.High, high), append(p.Even, even)
	}
	o, found := order.Best(p)
	if !found || o.HandOvers != 1 || o.Flights != 2 || len(o.Moves) != 1+1+pieces+1 {
		t.Errorf("found %v, %d hand-overs, %d flights, %d moves: want one, two and %d", found, o.HandOvers, o.Flights, len(o.Moves), 1+1+pieces+1)
	}
}

// Halted at either of two places the batten sways to the other: what is too much at one is too much at both.
func TestEachSwaysToTheOther(t *testing.T) {
	p := even(3, 0, 30, 30)
	p.Positions = append(p.Positions, order.Position{Halt: true})
	p.Items[0].Carried = []int64{30, 30}
	p.Low, p.High, p.Even = append(p.Low, p.Low[0]), append(p.High, []int64{29, 39, 49, 59}), append(p.Even, p.Even[0])
	if _, found := order.Best(p); !found {
		t.Error("30 batten-heavy is within the limit where it is hung")
	}
	p.Positions[0].Also, p.Positions[1].Also = []int{1}, []int{0}
	if _, found := order.Best(p); found || order.Possible(p) {
		t.Error("30 batten-heavy is past the limit of the other place")
	}
}

func TestFits(t *testing.T) {
	p := even(63, 0, 0)
	for range 20 {
		p.Items = append(p.Items, order.Item{Count: 1, Carried: []int64{1}})
	}
	if rows, ok := p.Fits(); rows != order.MaxRows || !ok {
		t.Errorf("20 items and 63 pieces: %d rows, fits %v", rows, ok)
	}
	p.Pieces = 64
	if rows, ok := p.Fits(); rows != 2*order.MaxRows || ok {
		t.Errorf("20 items and 64 pieces: %d rows, fits %v", rows, ok)
	}
	for range 80 {
		p.Items = append(p.Items, order.Item{Count: 1 << 30, Carried: []int64{1}})
	}
	if _, ok := p.Fits(); ok {
		t.Error("more choices than can be counted fit")
	}
}
