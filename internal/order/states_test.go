package order_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/order"
)

// An order may begin at any halt, above others or below them, so that flights go in and out.
func TestPropFromAnyHalt(t *testing.T) {
	in := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, rapid.IntRange(2, 6).Draw(t, "positions"))
		var halts []int
		for at, position := range p.Positions {
			if position.Halt {
				halts = append(halts, at)
			}
		}
		p.Start = rapid.SampledFrom(halts).Draw(t, "start")
		wider := rapid.Int64Range(0, 60).Draw(t, "wider by")
		for at := range p.Positions {
			for n := range p.Low[at] {
				p.Low[at][n] -= wider
				p.High[at][n] += wider
			}
		}
		agrees(t, p)
		if o, _ := order.Best(p); p.Start > 0 {
			for _, m := range o.Moves {
				if m.Kind == order.Fly && m.Position < p.Start {
					in++
				}
			}
		}
	})
	if in == 0 {
		t.Error("never flown in from the start: the draw does not test what it should")
	}
}

// turnsAt is a problem of so many pieces of 10 at one position: before the one thing hangs no more may be in than just balance
// it, and it may only hang when no less are in.
func turnsAt(in, pieces int) *order.Problem {
	return even(pieces, int64(10*max(in, pieces-in)), 0, int64(10*in))
}

// The crew changes sides after every number of pieces, those that fill a word of bits among them.
func TestTurnsAtAnyNumber(t *testing.T) {
	for _, pieces := range []int{1, 63, 64, 65, 127, 128, 129, 200} {
		for _, in := range []int{0, 1, 62, 63, 64, 65, 126, 127, 128, 129, 199} {
			if in > pieces {
				continue
			}
			p := turnsAt(in, pieces)
			o, found := order.Best(p)
			if !found || !order.Possible(p) {
				t.Errorf("%d of %d pieces, then the rest: no order", in, pieces)
				continue
			}
			sum, n, hung := int64(0), 0, -1
			for _, m := range o.Moves {
				if m.Kind == order.Hang {
					sum, hung = int64(10*in), n
				} else {
					n++
				}
				if sum < p.Low[0][n] || sum > p.High[0][n] {
					t.Fatalf("%d of %d pieces: a state that is not allowed after %d", in, pieces, n)
				}
			}
			if n != pieces || hung < in {
				t.Errorf("%d of %d pieces: hung after %d, %d in at the end", in, pieces, hung, n)
			}
			// No more may go in first where that would be too much.
			if p.Low[0][pieces] > 0 && in > 0 && o.HandOvers != 2 {
				t.Errorf("%d of %d pieces: %d hand-overs, want 2", in, pieces, o.HandOvers)
			}
		}
	}
}

// Of orders with as few hand-overs the bridge puts in no more than evens the batten, and no less.
func TestBridgeStopsWhenEven(t *testing.T) {
	for _, c := range []struct {
		name         string
		light, heavy int64
		want         string
	}{
		{"as soon as the next may hang", 10, 30, "A+++B+++"},
		{"not while the batten is the heavier", 10, 40, "A+++B+++"},
	} {
		p := even(6, c.light, c.heavy, 30, 30)
		o, found := order.Best(p)
		var got strings.Builder
		for _, m := range o.Moves {
			if m.Kind == order.Hang {
				got.WriteString(string(rune('A' + m.Item)))
			} else {
				got.WriteString("+")
			}
		}
		if !found || got.String() != c.want {
			t.Errorf("%s: %q, want %q", c.name, got.String(), c.want)
		}
	}
}

// The bounds themselves still fit.
func TestFitsAtItsBounds(t *testing.T) {
	p := &order.Problem{Pieces: order.MaxPieces, Positions: make([]order.Position, order.MaxPositions)}
	if rows, ok := p.Fits(); !ok || rows != 64*157 {
		t.Errorf("%d rows, fits %t: want 64 positions of 157 words", rows, ok)
	}
	p.Pieces++
	if _, ok := p.Fits(); ok {
		t.Error("a piece too many fits")
	}
	p.Pieces, p.Positions = 1, make([]order.Position, order.MaxPositions+1)
	if _, ok := p.Fits(); ok {
		t.Error("a position too many fits")
	}
	// More than can be counted, where a product of whole numbers would come out at nought or below.
	for name, items := range map[string][]order.Item{
		"as many as there are numbers":  {{Count: math.MaxInt}},
		"the most of 32 bits, twice":    {{Count: math.MaxInt32}, {Count: math.MaxInt32}},
		"two to the hundred and twenty": {{Count: 1<<30 - 1}, {Count: 1<<30 - 1}, {Count: 1<<30 - 1}, {Count: 1<<30 - 1}},
	} {
		p := &order.Problem{Pieces: 1, Positions: make([]order.Position, 1), Items: items}
		if rows, ok := p.Fits(); rows != math.MaxInt64 || ok {
			t.Errorf("%s: %d rows, fits %t", name, rows, ok)
		}
	}
}

// The nearest halt at which the order may end is behind a place that must not be flown through: the batten goes the other way.
func TestFliesRoundWhatIsNotAllowed(t *testing.T) {
	for _, mirrored := range []bool{false, true} {
		p := &order.Problem{Pieces: 1, Start: 3, Positions: make([]order.Position, 7)}
		free, barred, in := []int64{-10, -10}, []int64{5, 5}, []bool{true}
		for range p.Positions {
			p.Low, p.High, p.Even = append(p.Low, free), append(p.High, []int64{10, 10}), append(p.Even, []int64{0, 0})
		}
		p.Positions[3].Halt = true
		far, near, between := 0, 5, 4
		if mirrored {
			far, near, between = 6, 1, 2
		}
		p.Positions[far] = order.Position{Halt: true, End: true, Reach: in}
		p.Positions[near] = order.Position{Halt: true, End: true, Reach: in}
		p.Low[between] = barred
		o, found := order.Best(p)
		if !found || len(o.Moves) != 2 || o.Moves[0] != (order.Move{Kind: order.Fly, Position: far}) || o.Moves[1].Kind != order.Add {
			t.Errorf("%+v, found %t: want a flight to %d and the piece put in there", o, found, far)
		}
		p.Low[between] = free
		if o, _ := order.Best(p); len(o.Moves) != 2 || o.Moves[0].Position != near {
			t.Errorf("%+v: want a flight to %d, which is nearer", o, near)
		}
	}
}
