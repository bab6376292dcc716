package arbor_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// loose are pieces on the bridge.
var loose = arbor.Stock{
	{Name: "44", Mass: 44 * units.Pound, Thickness: 2 * units.Inch, Count: 10},
	{Name: "22", Mass: 22 * units.Pound, Thickness: 1 * units.Inch, Count: 3},
	{Name: "11", Mass: 11 * units.Pound, Thickness: 0.5 * units.Inch, Count: 3},
}

func row(name string, count int, pounds, inches float64) arbor.Row {
	return arbor.Row{Name: name, Count: count, Mass: units.Pound.Scale(pounds), Thickness: units.Inch.Scale(inches)}
}

func TestRefill(t *testing.T) {
	today := arbor.Stack{
		Pipe: []arbor.Row{row("44", 2, 44, 2)},
		Show: []arbor.Row{row("44", 10, 44, 2), row("22", 1, 22, 1)},
	}
	lb := units.Pound
	for _, tt := range []struct {
		name, reason string
		frame        arbor.Frame
		today        arbor.Stack
		show         units.Mass // beside 88 of pipe weight
		within       units.Mass
		side         arbor.Side
		call         string
		moved        int
		error        units.Mass
	}{
		{"as it is", "462 are there and wanted", tall, today, 462 * lb, 0, arbor.EitherSide, "leave it as it is", 0, 0},
		{"less", "66 off: one of the 44 and the 22 are two pieces", tall, today, 396 * lb, 0, arbor.EitherSide, "take out 1 of the 44, 1 of the 22", 2, 0},
		{"exchange", "22 off, and the only 22 kept would cost more: it goes out", tall, today, 440 * lb, 0, arbor.EitherSide, "take out 1 of the 22", 1, 0},
		{"two for one", "66 off and 11 on, against 77 on top", tall, today, 407 * lb, 0, arbor.EitherSide, "take out 1 of the 44, 1 of the 22, add 1 of the 11", 3, 0},
		{"within the allowance", "55 off, 44 are near enough for 11", tall, today, 407 * lb, 11 * lb, arbor.EitherSide, "take out 1 of the 44", 1, exactPounds(44)},
		{"on the side", "the same, but nothing too heavy", tall, today, 407 * lb, 11 * lb, arbor.NeverArborHeavy, "take out 1 of the 44, 1 of the 22", 2, exactPounds(-44)},
		{"least error of as many", "one piece: 11 brings it to 473, 22 to 484", tall, today, 480 * lb, 15 * lb, arbor.EitherSide, "add 1 of the 22", 1, exactPounds(16)},
		{
			"a kind that is not on the bridge", "what is in the arbor may stay", tall,
			arbor.Stack{Pipe: today.Pipe, Show: []arbor.Row{row("30", 2, 30, 1.5)}},
			71 * lb, 0, arbor.EitherSide, "add 1 of the 11", 1, 0,
		},
		{
			"plates", "24 in of show weight bring the second plate", plated(), today, (440 + 88 + 6) * lb, 0, arbor.EitherSide,
			"add 1 of the 44, 1 of the 22, 1 spreader plate", 2, 0,
		},
		{
			"plates out", "one interval less", plated(),
			arbor.Stack{Pipe: today.Pipe, Show: []arbor.Row{row("44", 12, 44, 2)}},
			(440 + 3) * lb, 0, arbor.EitherSide,
			"take out 2 of the 44, 1 spreader plate", 2, 0,
		},
		{"all of it", "the set is stripped", tall, today, 0, 0, arbor.EitherSide, "take out 10 of the 44, 1 of the 22", 11, 0},
		{"from nothing", "an empty arbor is filled", tall, arbor.Stack{Pipe: today.Pipe}, 77 * lb, 0, arbor.EitherSide, "add 1 of the 44, 1 of the 22, 1 of the 11", 3, 0},
	} {
		w := arbor.Wanted{Pipe: 88 * lb, Show: tt.show}
		r, err := tt.frame.Refill(tt.today, w, loose, tt.side, tt.within)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		if r.Call() != tt.call || r.Moved != tt.moved || r.Stack.Error != tt.error || !r.Stack.Proven || r.Stack.Gap != 0 {
			t.Errorf("%s: %s:\n got %q, %d moved, error %v lb, %+v\nwant %q, %d moved, error %v lb", tt.name, tt.reason,
				r.Call(), r.Moved, r.Stack.Error.In(lb), r.Stack, tt.call, tt.moved, tt.error.In(lb))
		}
		if diff := cmp.Diff(tt.today.Pipe, r.Stack.Pipe); diff != "" {
			t.Errorf("%s: pipe weight stays (-today +then)\n%s", tt.name, diff)
		}
	}
}

func TestRefillFaults(t *testing.T) {
	today := arbor.Stack{
		Pipe: []arbor.Row{row("44", 100, 44, 2), row("x", 1, 44, 2), row("y", 1_000_000, 2000, 30)},
		Show: []arbor.Row{row("44", 2, 44, 2), row("22", 1, 23, 1), row("11", 1, 11, -1), row("44", 1, 44, 2), {Name: "z"}},
	}
	_, err := tall.Refill(today, arbor.Wanted{Show: 1}, loose, arbor.EitherSide, -1)
	want := []string{
		"within", "today.pipe", "today.pipe", "today.show[1].mass", "today.show[2].thickness", "today.show[2].thickness",
		"today.show[3].name", "today.show[4].mass", "today.show[4].thickness",
	}
	if diff := cmp.Diff(want, fields(t, err)); diff != "" {
		t.Errorf("-want +got\n%s\n%v", diff, err)
	}
	if _, err := tall.Refill(arbor.Stack{}, arbor.Wanted{}, loose, arbor.EitherSide, units.Mass(math.NaN())); !errors.Is(err, units.ErrNotFinite) {
		t.Errorf("an allowance that is no number: %v", err)
	}
	many := kinds(32)
	if _, err := tall.Refill(arbor.Stack{Show: []arbor.Row{row("more", 1, 44, 2)}}, arbor.Wanted{}, many, arbor.EitherSide, 0); !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("33 kinds: %v", err)
	}
	// Pipe weight that stays but is more than the arbor takes.
	over := arbor.Stack{Pipe: []arbor.Row{row("44", 60, 44, 2)}}
	var none *arbor.NoStackError
	if _, err := tall.Refill(over, arbor.Wanted{Pipe: 2640 * units.Pound}, loose, arbor.EitherSide, 0); !errors.As(err, &none) || !none.Proven {
		t.Errorf("60 of the 44 in 84 in: %v", err)
	}
}

// Against every change there is.
func TestPropRefillIsExhaustive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := smalls(t)
		stock := s.stock()
		var today arbor.Stack
		var in []int
		for i, p := range stock {
			in = append(in, rapid.IntRange(0, 4).Draw(t, "in"))
			if in[i] > 0 {
				today.Show = append(today.Show, arbor.Row{Name: p.Name, Count: in[i], Mass: p.Mass, Thickness: p.Thickness})
			}
		}
		// Pipe weight is of a kind of its own: it stays, whatever it is.
		pipe := rapid.IntRange(0, 3).Draw(t, "pipe pieces")
		if pipe > 0 {
			today.Pipe = []arbor.Row{{Name: "pipe", Count: pipe, Mass: pounds(30), Thickness: eighths(5)}}
		}
		within := rapid.SampledFrom([]int{0, 0, 2, 10, 50}).Draw(t, "within")

		// The least error first, then the fewest changes within the allowance.
		limit := within
		var best []int
		var bestCount []int
		search := func(key func(change, e, pieces, height int) []int) {
			best = nil
			n := make([]int, len(in))
			var try func(int)
			try = func(i int) {
				if i < len(n) {
					for n[i] = s.count[i] + in[i]; n[i] >= 0; n[i]-- {
						try(i + 1)
					}
					n[i] = 0
					return
				}
				change, pieces, mass, height := 0, 0, 0, 0
				for i, c := range n {
					change += max(c-in[i], in[i]-c)
					pieces += c
					mass += c * s.mass[i]
					height += c * s.thickness[i]
				}
				if s.each > 0 && pieces > 0 {
					p := 1 + height/s.each
					mass += p * s.plateMass
					height += p * s.plateThickness
				}
				mass += s.lockMass + pipe*30
				height += s.lockThickness + pipe*5
				e := mass - s.pipe - s.show
				if mass > s.capacity || height > s.room || e > 0 && s.side == arbor.NeverArborHeavy || e < 0 && s.side == arbor.NeverBattenHeavy {
					return
				}
				if k := key(change, max(e, -e), pieces, height); k != nil && (best == nil || slices.Compare(k, best) < 0) {
					best, bestCount = k, slices.Clone(n)
				}
			}
			try(0)
		}
		search(func(_, e, _, _ int) []int { return []int{e} })
		got, err := s.frame().Refill(today, s.wanted(), stock, s.side, pounds(within))
		if best == nil {
			var none *arbor.NoStackError
			if !asNoStack(err, &none) || !none.Proven {
				t.Fatalf("%+v: got %+v, %v; want a proven NoStackError", s, got, err)
			}
			return
		}
		limit = max(limit, best[0])
		search(func(change, e, pieces, height int) []int {
			if e > limit {
				return nil
			}
			return []int{change, e, pieces, height}
		})
		if err != nil {
			t.Fatalf("%+v: %v", s, err)
		}
		count := make([]int, len(in))
		for i, p := range stock {
			count[i] = got.Stack.Used(p.Name)
		}
		if !slices.Equal(count, bestCount) || got.Moved != best[0] || units.Abs(got.Stack.Error) != exactPounds(best[1]) || got.Stack.Height != exactEighths(best[3]) || !got.Stack.Proven {
			t.Fatalf("%+v, in %v, within %d\n got %v, %+v\nwant %v, %v", s, in, within, count, got, bestCount, best)
		}
		all := pipe
		for _, n := range count {
			all += n
		}
		if got.Stack.Pieces != all {
			t.Fatalf("%d pieces, not %d: %+v", got.Stack.Pieces, all, got.Stack)
		}
		// What goes out and in makes today's stack the new one.
		then := slices.Clone(in)
		for _, rows := range []struct {
			rows []arbor.Row
			sign int
		}{{got.Out, -1}, {got.In, 1}} {
			for _, r := range rows.rows {
				then[int(r.Name[0]-'a')] += rows.sign * r.Count
			}
		}
		if !slices.Equal(then, count) {
			t.Fatalf("%v with %+v is %v, not %v", in, got, then, count)
		}
	})
}
