package lineset_test

import (
	"errors"
	"slices"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func of(act lineset.Act, piece string, count int) lineset.OrderStep {
	return lineset.OrderStep{Act: act, Piece: piece, Count: count}
}

// What is in an arbor, piece by piece. The first electric has a pipe weight of 3 of the 44 and 1 of the 22, 154 lb and 7 in; a plate
// of 2.5 lb and 1/8 in lies under the first piece of show weight and one more after each full 24 in of it.
func TestPiecesInTheArbor(t *testing.T) {
	s := electric()
	r := mustRig(t, s)
	for _, c := range []struct {
		name           string
		steps          []lineset.OrderStep
		pieces, plates int
		mass           float64 // lb of pieces and plates
		height         float64 // in
	}{
		{"pipe weight alone", nil, 4, 0, 154, 7},
		{"one on the first plate", []lineset.OrderStep{of(lineset.AddPieces, "44", 1)}, 5, 1, 154 + 44 + 2.5, 7 + 2 + 0.125},
		{"just short of the second plate", []lineset.OrderStep{of(lineset.AddPieces, "44", 11), of(lineset.AddPieces, "22", 1)}, 16, 1, 154 + 506 + 2.5, 7 + 23 + 0.125},
		{"just on the second plate", []lineset.OrderStep{of(lineset.AddPieces, "44", 12)}, 16, 2, 154 + 528 + 5, 7 + 24 + 0.25},
		{"of several kinds", []lineset.OrderStep{of(lineset.AddPieces, "11", 3), of(lineset.AddPieces, "22", 2), of(lineset.AddPieces, "11", 1)}, 10, 1, 154 + 44 + 44 + 2.5, 7 + 2 + 2 + 0.125},
		{"taken out again", []lineset.OrderStep{
			of(lineset.AddPieces, "44", 12), of(lineset.AddPieces, "44", 1), of(lineset.TakePieces, "44", 13),
		}, 4, 0, 154, 7},
		{"some of it taken out again", []lineset.OrderStep{
			of(lineset.AddPieces, "44", 12), of(lineset.AddPieces, "22", 1), of(lineset.TakePieces, "22", 1), of(lineset.TakePieces, "44", 1),
		}, 15, 1, 154 + 484 + 2.5, 7 + 22 + 0.125},
		{"pipe weight too", []lineset.OrderStep{of(lineset.TakePieces, "22", 1), of(lineset.TakePieces, "44", 2)}, 1, 0, 44, 2},
	} {
		check, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: c.steps}, within(5000, 5000))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		end := check.States[len(check.States)-1]
		mass, height := end.Capacity.Demand.(units.Mass).In(units.Pound), end.Room.Demand.(units.Length).In(units.Inch)
		if end.Pieces != c.pieces || end.Plates != c.plates || !near.Abs(mass, c.mass, 1e-9) || !near.Abs(height, c.height, 1e-7) ||
			!near.Abs(end.Arbor.In(units.Pound), 96+c.mass, 1e-9) {
			t.Errorf("%s: %d pieces, %d plates, %v lb, %v in, arbor %v; want %+v", c.name, end.Pieces, end.Plates, mass, height, end.Arbor, c)
		}
	}
	// An interval that is a nanometre longer is not yet full.
	longer := s
	longer.Rigging.Arbor.Plate.Every = 24*units.Inch + 1e-9
	check, err := mustRig(t, longer).CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{of(lineset.AddPieces, "44", 12)}}, within(5000, 5000))
	if err != nil || check.States[1].Plates != 1 {
		t.Errorf("%v: %+v", err, check.States)
	}
	// A lock plate weighs, and takes room, on the rods of an empty arbor too.
	s.Rigging.Arbor.Lock = arbor.Lock{Mass: 3 * units.Pound, Thickness: 1 * units.Inch}
	r = mustRig(t, s)
	var steps []lineset.OrderStep
	for _, row := range slices.Backward(r.Counterweight().Stack.Pipe) {
		steps = append(steps, of(lineset.TakePieces, row.Name, row.Count))
	}
	check, err = r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: steps}, within(5000, 5000))
	if err != nil {
		t.Fatal(err)
	}
	if end := check.States[len(steps)]; end.Pieces != 0 || !near.Abs(end.Arbor.In(units.Pound), 99, 1e-9) || !near.Abs(end.Room.Demand.(units.Length).In(units.Inch), 1, 1e-9) {
		t.Errorf("emptied: %+v", end)
	}
}

// How many pieces at most can be put in or taken out, to the piece: by the stock, by the room, by what lies on top.
func TestPiecesAtMost(t *testing.T) {
	locked := electric()
	locked.Rigging.Arbor.Lock = arbor.Lock{Mass: 3 * units.Pound, Thickness: 1 * units.Inch}
	full := []lineset.OrderStep{of(lineset.AddPieces, "44", 2), of(lineset.AddPieces, "22", 3), of(lineset.AddPieces, "44", 1)}
	for _, c := range []struct {
		name   string
		set    lineset.Set
		before []lineset.OrderStep
		step   lineset.OrderStep // the last one that goes; one more is refused
		kind   error
		want   string
	}{
		{"20 in stock, 1 of them pipe weight", electric(), nil, of(lineset.AddPieces, "22", 19), units.ErrOutOfRange, "at most 19, which the stock has left"},
		{"some of them in", electric(), []lineset.OrderStep{of(lineset.AddPieces, "22", 5)}, of(lineset.AddPieces, "22", 14), units.ErrOutOfRange, "at most 14, which the stock has left"},
		{"75 in less 7", electric(), nil, of(lineset.AddPieces, "44", 34), units.ErrOutOfRange, "no more than the room on the rods takes, 6' 3\" (1.905 m)"},
		{"75 in less 7 and 2.5", electric(), []lineset.OrderStep{of(lineset.AddPieces, "11", 5)}, of(lineset.AddPieces, "44", 32), units.ErrOutOfRange, "no more than the room on the rods takes, 6' 3\" (1.905 m)"},
		{"75 in less 7 and the lock plate", locked, nil, of(lineset.AddPieces, "44", 33), units.ErrOutOfRange, "no more than the room on the rods takes, 6' 3\" (1.905 m)"},
		{"what lies on top", electric(), full, of(lineset.TakePieces, "44", 1), lineset.ErrNotOnTop, "at most 1, which lie on top: the rest lies under the 22"},
		{"all that is in", electric(), []lineset.OrderStep{of(lineset.AddPieces, "11", 4)}, of(lineset.TakePieces, "11", 4), lineset.ErrNotIn, "at most 4, which are in"},
	} {
		r := mustRig(t, c.set)
		try := func(step lineset.OrderStep) error {
			steps := append(c.before[:len(c.before):len(c.before)], step)
			_, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: steps}, within(5000, 5000))
			return err
		}
		if err := try(c.step); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		c.step.Count++
		err := try(c.step)
		var fe *units.FieldError
		if !errors.As(err, &fe) || !errors.Is(err, c.kind) || fe.Want != c.want {
			t.Errorf("%s, one more: %v; want %s", c.name, err, c.want)
		}
	}
	// A thousand tonnes is more than any arbor holds, and no more can be counted.
	heavy, err := plain(t, purchase.Single, pounds("lamps", 60)).Rig(arbor.Stock{{Name: "block", Mass: units.Tonne, Thickness: units.Millimetre, Count: 2000}})
	if err != nil {
		t.Fatal(err)
	}
	for count, ok := range map[int]bool{1000: true, 1001: false} {
		for _, steps := range [][]lineset.OrderStep{{of(lineset.AddPieces, "block", count)}, {of(lineset.AddPieces, "block", 1), of(lineset.AddPieces, "block", count-1)}} {
			_, err := heavy.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: steps}, within(5000, 5000))
			var fe *units.FieldError
			if (err == nil) != ok || err != nil && (!errors.As(err, &fe) || fe.Want != "less than 2204622.62 lb (1000000 kg) in all") {
				t.Errorf("%d tonnes: %v", count, err)
			}
		}
	}
	for _, c := range []struct {
		name string
		step lineset.OrderStep
		kind error
		want string
	}{
		{"under another kind", of(lineset.TakePieces, "22", 1), lineset.ErrNotOnTop, "first to take out the 44 on top of it"},
		{"not in", of(lineset.TakePieces, "11", 1), lineset.ErrNotIn, "a kind that is in the arbor"},
		{"not in stock", of(lineset.AddPieces, "33", 1), units.ErrUnknown, "a kind of piece in the stock"},
	} {
		_, err := mustRig(t, electric()).CheckOrder(lineset.Order{From: lineset.FromBare, Steps: append(full[:3:3], c.step)}, within(5000, 5000))
		var fe *units.FieldError
		if !errors.As(err, &fe) || !errors.Is(err, c.kind) || fe.Field != "steps[3].piece" || fe.Value != `"`+c.step.Piece+`"` || fe.Want != c.want {
			t.Errorf("%s: %v; want %s", c.name, err, c.want)
		}
	}
}

// From a bridge that arms reach a foot from, level with the arbor's foot at a trim of 4 ft, 12 pieces of an inch are in reach; which
// piece is not is told, and where. Bridges that meet reach on from one another, whichever is named first; over a gap they do not.
func TestReachToThePiece(t *testing.T) {
	bridge := func(name string, floor, high float64) arbor.Bridge {
		return arbor.Bridge{Name: name, Floor: units.Foot.Scale(floor), High: units.Foot.Scale(high)}
	}
	for _, c := range []struct {
		name    string
		bridges []arbor.Bridge
		steps   []lineset.OrderStep
		piece   string // none: all are in reach
	}{
		{"all in reach", []arbor.Bridge{bridge("one", 45, 1)}, []lineset.OrderStep{add(12)}, ""},
		{"one above", []arbor.Bridge{bridge("one", 45, 1)}, []lineset.OrderStep{add(13)}, "piece 13 from the bottom"},
		{"many above", []arbor.Bridge{bridge("one", 45, 1)}, []lineset.OrderStep{add(20)}, "piece 13 from the bottom"},
		{"put on top", []arbor.Bridge{bridge("one", 45, 1)}, []lineset.OrderStep{add(12), add(1)}, "piece 13 from the bottom"},
		{"taken from within reach", []arbor.Bridge{bridge("one", 45, 1)}, []lineset.OrderStep{add(12), take(12)}, ""},
		{"one below", []arbor.Bridge{bridge("one", 45.05, 1)}, []lineset.OrderStep{add(1)}, "piece 1 from the bottom"},
		{"two that meet", []arbor.Bridge{bridge("low", 45, 0.5), bridge("high", 45.5, 0.5)}, []lineset.OrderStep{add(12)}, ""},
		{"two that meet, the upper first", []arbor.Bridge{bridge("high", 45.5, 0.5), bridge("low", 45, 0.5)}, []lineset.OrderStep{add(12)}, ""},
		{"two that meet, and one above", []arbor.Bridge{bridge("high", 45.5, 0.5), bridge("low", 45, 0.5)}, []lineset.OrderStep{add(13)}, "piece 13 from the bottom"},
		{"a gap between them", []arbor.Bridge{bridge("low", 45, 0.5), bridge("high", 45.6, 0.5)}, []lineset.OrderStep{add(12)}, "piece 7 from the bottom"},
		{"above the gap", []arbor.Bridge{bridge("low", 45, 0.5), bridge("high", 45.6, 0.5)}, []lineset.OrderStep{add(6), add(1)}, "piece 7 from the bottom"},
		{"no bridge", nil, []lineset.OrderStep{add(20)}, ""},
	} {
		s := plain(t, purchase.Single, pounds("lamps", 200))
		s.Rigging.Run.Bridges = c.bridges
		_, err := rigTens(t, s).CheckOrder(lineset.Order{From: lineset.FromBare, Steps: c.steps}, within(1000, 1000))
		var fe *units.FieldError
		switch {
		case c.piece == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.piece != "" && (!errors.As(err, &fe) || !errors.Is(err, lineset.ErrOutOfReach) || fe.Value != c.piece ||
			fe.Want != "pieces that arms reach from a bridge of the run with the batten at 4' 0\" (1.2192 m)"):
			t.Errorf("%s: %v; want %s", c.name, err, c.piece)
		}
	}
	var fe *units.FieldError
	if _, err := overBridge(t).Order(lineset.Loading, within(0, 200)); !errors.As(err, &fe) || fe.Value != "piece 13 from the bottom" || fe.Want != "a trim at which arms reach it from a bridge of the run" {
		t.Errorf("%v", err)
	}
}

// Pipe weight of two kinds lies below the show weight: 7 in of it, then a plate of 1/8 in. From a bridge that arms reach to 20 in above
// the bed the sixth piece of 2 in is the last whose underside they reach under; without the plate, which the fault would hide, it is the same.
func TestReachOverPipeWeightOfTwoKinds(t *testing.T) {
	s := electric()
	s.Rigging.Run.Bridges = []arbor.Bridge{{Name: "one", Floor: 45 * units.Foot, High: 20 * units.Inch}}
	r := mustRig(t, s)
	last := 0
	for n := 1; n <= 12; n++ {
		_, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{of(lineset.AddPieces, "44", n)}}, within(5000, 5000))
		if err == nil {
			last = n
		} else if !errors.Is(err, lineset.ErrOutOfReach) {
			t.Fatal(err)
		}
	}
	// The same pieces as package arbor has them: how many of the show weight lie in reach at the lowest trim.
	stack := r.Counterweight().Stack
	reach, err := r.Flight().Reach("one", r.Travel().Lowest, stack)
	if err != nil {
		t.Fatal(err)
	}
	if want := reach.Last - 4; last != want || want != 6 {
		t.Errorf("%d pieces of show weight in reach, want %d, by hand 6: 7 + 1/8 + 6 · 2 in", last, want)
	}
}

// Of a stack that is too tall for the rods nobody says what arms reach; one that just fills them is told of.
func TestReachOfAStackTooTall(t *testing.T) {
	for _, c := range []struct {
		name  string
		plate units.Length
		out   bool
	}{{"just the room", 0, true}, {"the plate on top of it", 0.5 * units.Inch, false}} {
		s := plain(t, purchase.Single, pounds("lamps", 150))
		s.Rigging.Arbor.Room = 20 * units.Inch
		if c.plate > 0 {
			s.Rigging.Arbor.Plate = arbor.Plate{Mass: 1 * units.Pound, Thickness: c.plate, Every: 60 * units.Inch}
		}
		s.Rigging.Run.Bridges = []arbor.Bridge{{Name: "one", Floor: 45 * units.Foot, High: 1 * units.Foot}}
		check, err := rigTens(t, s).CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{add(20)}}, within(1000, 1000))
		if out := errors.Is(err, lineset.ErrOutOfReach); out != c.out || !out && err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if !c.out && check.States[1].Room.Verdict != lineset.Exceeds {
			t.Errorf("%s: %v", c.name, check.States[1].Room)
		}
	}
}
