package arbor_test

import (
	"errors"
	"slices"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Where nothing falls short both stacks are the same, but each is the caller's own.
func TestShortfallsStacksAreApart(t *testing.T) {
	f := arbor.Frame{Length: 8 * units.Foot, Room: 40 * units.Inch, Capacity: 1000 * units.Pound}
	stock := arbor.Stock{{Name: "20", Mass: 20 * units.Pound, Thickness: units.Inch, Count: 60}}
	s, err := f.Shortfall(arbor.Wanted{Pipe: 200 * units.Pound, Show: 100 * units.Pound}, stock, arbor.EitherSide)
	if err != nil || len(s.Fits.Pipe) != 1 || len(s.Fits.Show) != 1 {
		t.Fatalf("%+v, %v", s, err)
	}
	s.Fits.Pipe[0].Count, s.Fits.Show[0].Count = 0, 0
	if s.Ideal.Pipe[0].Count != 10 || s.Ideal.Show[0].Count != 5 {
		t.Errorf("who changes the one changes the other: %+v", s.Ideal)
	}
}

func TestShortfall(t *testing.T) {
	lb, in := units.Pound, units.Inch
	twenty := func(count int) arbor.Stock {
		return arbor.Stock{{Name: "20", Mass: 20 * lb, Thickness: 1 * in, Count: count}}
	}
	f := arbor.Frame{Length: 8 * units.Foot, Room: 40 * in, Capacity: 1000 * lb}
	for _, tt := range []struct {
		name, reason string
		wanted       arbor.Wanted
		stock        arbor.Stock
		side         arbor.Side
		binds        []string
		room         units.Length
		capacity     units.Mass
		missing      int
		heaviest     string
		nothing      bool
	}{
		{"nothing is short", "30 in, 600 lb", arbor.Wanted{Show: 600 * lb}, twenty(60), arbor.EitherSide, nil, 0, 0, 0, "nothing", false},
		{
			"room", "45 in wanted in 40: 900 lb are within the capacity",
			arbor.Wanted{Show: 900 * lb},
			twenty(60), arbor.EitherSide,
			[]string{"room"},
			exactEighths(40), 0, 0, "40 of the 20", false,
		},
		{"stock", "30 wanted, 24 there", arbor.Wanted{Show: 600 * lb}, twenty(24), arbor.EitherSide, []string{"stock"}, 0, 0, 6, "24 of the 20", false},
		{
			"all", "60 of 1 in, 1200 lb, 24 there",
			arbor.Wanted{Show: 1200 * lb},
			twenty(24), arbor.EitherSide,
			[]string{"room", "capacity", "stock"},
			exactEighths(160), exactPounds(800), 36, "24 of the 20", false,
		},
		{
			"no stack", "never too light, and only 40 fit",
			arbor.Wanted{Show: 900 * lb},
			twenty(60), arbor.NeverBattenHeavy,
			[]string{"room"},
			exactEighths(40), 0, 0, "40 of the 20", true,
		},
		{
			"with pipe weight", "10 stay for the pipe; 35 more would be 45 in",
			arbor.Wanted{Pipe: 200 * lb, Show: 700 * lb},
			twenty(60), arbor.EitherSide,
			[]string{"room"},
			exactEighths(40), 0, 0, "pipe weight 10 of the 20; show weight 30 of the 20", false,
		},
		{
			"no pipe weight", "never too light for a pipe of 900 lb, and only 40 fit: the most is the pipe weight that there can be",
			arbor.Wanted{Pipe: 900 * lb},
			twenty(60), arbor.NeverBattenHeavy,
			[]string{"room"},
			exactEighths(40), 0, 0, "pipe weight 40 of the 20", true,
		},
		{
			"one of two kinds", "the one 33 is there; of the 20 one is missing",
			arbor.Wanted{Show: 53 * lb},
			append(twenty(0), arbor.Piece{Name: "33", Mass: 33 * lb, Thickness: 1 * in, Count: 1}), arbor.EitherSide,
			[]string{"stock"},
			0, 0, 1, "1 of the 33", false,
		},
	} {
		s, err := f.Shortfall(tt.wanted, tt.stock, tt.side)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		missing := 0
		for _, r := range s.Missing {
			missing += r.Count
		}
		if slices.ContainsFunc(s.Missing, func(r arbor.Row) bool { return r.Count < 1 }) {
			t.Errorf("%s: none missing of a kind that is listed: %+v", tt.name, s.Missing)
		}
		if !slices.Equal(s.Binds(), tt.binds) || s.Room != tt.room || s.Capacity != tt.capacity || missing != tt.missing ||
			s.Heaviest.Call() != tt.heaviest || s.Nothing != tt.nothing {
			t.Errorf("%s: %s: got %q, %v, %v lb, %d missing, heaviest %q: %+v", tt.name, tt.reason, s.Binds(), s.Room, s.Capacity.In(lb), missing, s.Heaviest.Call(), s)
		}
	}
	// One of the 40 would do and is not there, but two of the 20 come as near: nothing falls short.
	forty := append(twenty(9), arbor.Piece{Name: "40", Mass: 40 * lb, Thickness: 1 * in})
	if s, err := f.Shortfall(arbor.Wanted{Show: 40 * lb}, forty, arbor.EitherSide); err != nil || s.Binds() != nil || s.Fits.Call() != "2 of the 20" || s.Ideal.Call() != "1 of the 40" {
		t.Errorf("as near with other pieces: %q binds, %+v, %v", s.Binds(), s, err)
	}
	var none *arbor.NoStackError
	if _, err := f.Shortfall(arbor.Wanted{Pipe: -50 * lb}, twenty(9), arbor.NeverArborHeavy); !errors.As(err, &none) {
		t.Errorf("an arbor that is too heavy as it is: %v", err)
	}
	if _, err := f.Shortfall(arbor.Wanted{}, arbor.Stock{{}}, arbor.Side(7)); len(fields(t, err)) != 4 {
		t.Errorf("faults: %v", err)
	}
	if _, err := f.Heaviest(1e9, twenty(9)); !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("pipe weight beyond all sense: %v", err)
	}
	// A piece past the capacity is no fault: it is not used.
	heavy := arbor.Stock{{Name: "slab", Mass: 1001 * lb, Thickness: 1 * in, Count: 1}, {Name: "20", Mass: 20 * lb, Thickness: 1 * in, Count: 1}}
	if s, err := f.Fill(arbor.Wanted{Show: 1001 * lb}, heavy, arbor.EitherSide); err != nil || s.Call() != "1 of the 20" || !s.Proven {
		t.Errorf("a piece heavier than the arbor may hold: %q, %v", s.Call(), err)
	}
}

// What falls short breaks a limit; what does not comes as near as can be. The
// heaviest is no lighter than anything that fits on the same pipe weight, and no
// stack of one piece more would fit.
func TestPropShortfall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := smalls(t)
		got, err := s.frame().Shortfall(s.wanted(), s.stock(), s.side)
		if err != nil {
			var none *arbor.NoStackError
			if !asNoStack(err, &none) {
				t.Fatal(err)
			}
			return
		}
		fits, err := s.frame().Fill(s.wanted(), s.stock(), s.side)
		if (err != nil) != got.Nothing {
			t.Fatalf("%+v: %v, %+v", s, err, got)
		}
		if diff := cmp.Diff(fits, got.Fits); diff != "" && !got.Nothing {
			t.Fatalf("-fill +fits\n%s", diff)
		}
		short := got.Nothing || units.Abs(fits.Error) > units.Abs(got.Ideal.Error)
		if short != (len(got.Binds()) > 0) {
			t.Fatalf("%+v: short %v, but %q binds: %+v", s, short, got.Binds(), got)
		}
		if !short {
			return
		}
		h := got.Heaviest
		// Limits enter the ledger rounded, by half a nanogram or nanometre at most.
		if h.Mass-s.frame().Capacity > 1e-12 || h.Height-s.frame().Room > 1e-9 || !got.Nothing && h.Mass < fits.Mass {
			t.Fatalf("%+v: heaviest %+v, fits %+v", s, h, fits)
		}
		all, err := s.frame().Heaviest(s.wanted().Pipe, s.stock())
		if err != nil || s.side == arbor.EitherSide && cmp.Diff(all, h) != "" {
			t.Fatalf("%+v: heaviest %+v, %v; in the shortfall %+v", s, all, err, h)
		}
	})
}
