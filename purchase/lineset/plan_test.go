package lineset_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// calls is an order as one line of words.
func calls(o lineset.Order) string {
	var out []string
	for _, s := range o.Steps {
		out = append(out, s.Call(units.US))
	}
	return strings.Join(out, ", ")
}

func mustPlan(t testing.TB, r *lineset.Rigged, job lineset.Job, limits lineset.OrderLimits, at ...lineset.WorkTrim) lineset.Plan {
	t.Helper()
	p, err := r.Order(job, limits, at...)
	if err != nil {
		t.Fatal(err)
	}
	if p.Check.Exceeds {
		t.Fatalf("the plan exceeds its limits: %s", calls(p.Order))
	}
	return p
}

// Orders that can be reckoned by head: pieces of 10 lb answer 10 lb each.
func TestPlanByHand(t *testing.T) {
	resting := within(0, 0)
	resting.RestsOnStop = true
	for _, c := range []struct {
		name      string
		limits    lineset.OrderLimits
		want      string
		handOvers int
		reason    string
	}{
		{
			"resting on the stop", resting, "hang lamps, hang cloth, hang legs, add 13 of the 10", 1,
			"common practice: load the batten first, then the arbor",
		},
		{
			"half the hang", within(20, 70), "hang lamps, add 6 of the 10, hang cloth, hang legs, add 7 of the 10", 3,
			"60 and 40 are too much together, and so are 30 and both; the bridge stops at balance",
		},
		{
			"little for the batten", within(40, 60), "hang lamps, add 7 of the 10, hang cloth, hang legs, add 6 of the 10", 3,
			"40 and 30 together are 10 too much: one piece more than balance before them",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60), pounds("cloth", 40), pounds("legs", 30)))
			p := mustPlan(t, r, lineset.Loading, c.limits)
			if got := calls(p.Order); got != c.want || p.Check.HandOvers != c.handOvers {
				t.Errorf("%d hand-overs: %s\nwant %d: %s (%s)", p.Check.HandOvers, got, c.handOvers, c.want, c.reason)
			}
			if p.Check.ToHang != 0 || p.Check.ToAdd != 0 {
				t.Errorf("left at the end: %+v", p.Check)
			}
		})
	}
}

// The bridge goes on until the batten is not the heavier, be it by a tenth of a pound: lamps of 60.1 lb take a seventh piece.
func TestTheBridgeStopsAtBalance(t *testing.T) {
	for lb, want := range map[float64]string{
		60:   "hang lamps, add 6 of the 10, hang cloth, add 4 of the 10",
		60.1: "hang lamps, add 7 of the 10, hang cloth, add 3 of the 10",
	} {
		r := rigTens(t, plain(t, purchase.Single, pounds("lamps", lb), pounds("cloth", 40)))
		if got := calls(mustPlan(t, r, lineset.Loading, within(20, 65)).Order); got != want {
			t.Errorf("%v lb: %s, want %s", lb, got, want)
		}
	}
}

// Common practice: strip the arbor first, then the batten, in the reverse of the order of loading.
func TestStrippingByHand(t *testing.T) {
	resting := within(0, 0)
	resting.RestsOnStop = true
	r := rigTens(t, plain(t, purchase.Double, pounds("lamps", 60), pounds("cloth", 40)))
	p := mustPlan(t, r, lineset.Stripping, resting)
	if got, want := calls(p.Order), "take out 20 of the 10, strip cloth, strip lamps"; got != want || p.Check.HandOvers != 1 {
		t.Errorf("%s, want %s", got, want)
	}
	if p.Check.ToStrip != 0 || p.Check.ToTake != 0 {
		t.Errorf("left at the end: %+v", p.Check)
	}
}

// Where no order is possible, the limits that would allow one, by head: of 60 lb with n pieces of 10 lb
// in before it, 10·n is arbor-heavy before, 60 − 10·n batten-heavy after.
func TestNoOrderByHand(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60), pounds("cloth", 40)))
	for _, c := range []struct {
		name                       string
		limits                     lineset.OrderLimits
		either, arborHeavy, batten float64
	}{
		{"both a little", within(20, 39), 30, 30, 40}, // n is 3; with 39 below, n is 3; with 20 above, n is 2
		{"no arbor-heavy", within(0, 50), 30, 10, 60},
		{"no batten-heavy", within(50, 0), 30, 60, 10},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := r.Order(lineset.Loading, c.limits)
			var none *lineset.NoOrderError
			if !errors.As(err, &none) {
				t.Fatal(err)
			}
			for _, row := range []struct {
				name string
				got  units.Force
				want float64
				with func(*lineset.OrderLimits, units.Force)
			}{
				{"either", none.Either, c.either, func(l *lineset.OrderLimits, f units.Force) { l.ArborHeavy.Max, l.BattenHeavy.Max = f, f }},
				{"arbor-heavy", none.ArborHeavy, c.arborHeavy, func(l *lineset.OrderLimits, f units.Force) { l.ArborHeavy.Max = f }},
				{"batten-heavy", none.BattenHeavy, c.batten, func(l *lineset.OrderLimits, f units.Force) { l.BattenHeavy.Max = f }},
			} {
				if !near.Abs(row.got.In(units.PoundForce), row.want, 1e-9) {
					t.Errorf("%s: %v lbf, want %v", row.name, row.got.In(units.PoundForce), row.want)
				}
				limits := c.limits
				row.with(&limits, row.got)
				if _, err := r.Order(lineset.Loading, limits); err != nil {
					t.Errorf("%s: no order with the limit itself: %v", row.name, err)
				}
				row.with(&limits, units.Force(math.Nextafter(row.got.In(units.Newton), 0)))
				if _, err := r.Order(lineset.Loading, limits); !errors.As(err, &none) {
					t.Errorf("%s: an order with a hair less", row.name)
				}
			}
		})
	}
	// 100 lb unanswered at the end cannot be helped by the arbor's limit.
	s := plain(t, purchase.Single, pounds("lamps", 60))
	s.Rigging.Arbor.Capacity = 20 * units.Pound
	_, err := rigTens(t, s).Order(lineset.Stripping, within(60, 30))
	var none *lineset.NoOrderError
	if !errors.As(err, &none) || none.ArborHeavy != 0 || tidy(none.BattenHeavy) != 40 || tidy(none.Either) != 40 {
		t.Errorf("%v", err)
	}
}

// A tall cloth is carried by a third at the deck. In stages it is weighted as it leaves the deck.
func TestStagesByHand(t *testing.T) {
	cloth := pounds("cloth", 90)
	cloth.Height, cloth.OnDeck = 12*units.Foot, load.Piles // at 4 ft 30 lb are carried, at 8 ft 60, from 12 ft on 90
	s := plain(t, purchase.Single, cloth)
	r := rigTens(t, s)
	at := []lineset.WorkTrim{{Trim: 4 * units.Foot, Deck: true, Bridge: true}, {Trim: 8 * units.Foot, Bridge: true}, {Trim: 12 * units.Foot, Bridge: true}}
	for _, c := range []struct {
		name   string
		limits lineset.OrderLimits
		want   string
		end    units.Length
	}{
		{"wide", within(0, 90), "hang cloth, add 3 of the 10, open the rope lock, fly to 12' 0\", shut the rope lock, add 6 of the 10", 12 * units.Foot},
		{"narrow", within(0, 30), "hang cloth, add 3 of the 10, open the rope lock, fly to 8' 0\", shut the rope lock, add 3 of the 10, open the rope lock, fly to 12' 0\", shut the rope lock, add 3 of the 10", 12 * units.Foot},
		// The nearest halt at which all of it can stand: there 60 of the 90 are carried.
		{"both ways", within(30, 30), "hang cloth, add 3 of the 10, open the rope lock, fly to 8' 0\", shut the rope lock, add 6 of the 10", 8 * units.Foot},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := mustPlan(t, r, lineset.Loading, c.limits, at...)
			if got := calls(p.Order); got != c.want {
				t.Errorf("%s\nwant %s", got, c.want)
			}
			back := mustPlan(t, r, lineset.Stripping, c.limits, at...)
			if back.Check.HandOvers != p.Check.HandOvers || back.Check.Flights != p.Check.Flights || back.Order.Trim != c.end {
				t.Errorf("back: %s from %v", calls(back.Order), back.Order.Trim)
			}
		})
	}
	// The whole stack at the deck would be 60 arbor-heavy.
	if _, err := r.Order(lineset.Loading, within(59, 100)); err == nil {
		t.Error("loaded at the deck")
	}
}

func TestWorkTrims(t *testing.T) {
	cloth, flat := pounds("cloth", 90), pounds("flat", 40)
	cloth.Height, cloth.OnDeck = 12*units.Foot, load.Piles
	flat.Height, flat.OnDeck = 10*units.Foot, load.Stands
	r := rigTens(t, plain(t, purchase.Single, cloth, flat))
	want := []lineset.WorkTrim{
		{Trim: 4 * units.Foot, Deck: true, Bridge: true}, {Trim: 10*units.Foot + units.Inch, Bridge: true}, {Trim: 11 * units.Foot, Bridge: true}, {Trim: 12 * units.Foot, End: true},
	}
	if diff := cmp.Diff(want, r.WorkTrims(6*units.Foot, 11*units.Foot)); diff != "" {
		t.Error(diff)
	}
}

func TestPlanRefuses(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60)))
	low := r.Travel().Lowest
	resting := lineset.OrderLimits{ArborHeavy: within(10, 10).ArborHeavy, RestsOnStop: true}
	for _, c := range []struct {
		name   string
		job    lineset.Job
		limits lineset.OrderLimits
		at     []lineset.WorkTrim
		field  string
	}{
		{"no job", 0, within(10, 10), nil, "job"},
		{"no limits", lineset.Loading, lineset.OrderLimits{}, nil, "limits.arbor_heavy"},
		{"flying without a limit for the batten", lineset.Loading, resting, []lineset.WorkTrim{{Trim: low, Deck: true, Bridge: true}, {Trim: 5}}, "limits.batten_heavy"},
		{"nobody to hang", lineset.Loading, within(10, 10), []lineset.WorkTrim{{Trim: low, Bridge: true}}, "trims"},
		{"no bridge", lineset.Loading, within(10, 10), []lineset.WorkTrim{{Trim: low, Deck: true}}, "trims"},
		{"out of reach", lineset.Loading, within(10, 10), []lineset.WorkTrim{{Trim: 1000, Deck: true, Bridge: true}}, "trims[0].trim"},
		{"not a trim", lineset.Loading, within(10, 10), []lineset.WorkTrim{{Trim: units.Length(math.NaN()), Deck: true, Bridge: true}}, "trims[0].trim"},
		{"one trim twice", lineset.Loading, within(10, 10), []lineset.WorkTrim{{Trim: low, Deck: true, Bridge: true}, {Trim: low}}, "trims[1].trim"},
		{"too many trims", lineset.Loading, within(10, 10), make([]lineset.WorkTrim, 99), "trims"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := r.Order(c.job, c.limits, c.at...)
			var fe *units.FieldError
			if !errors.As(err, &fe) || fe.Field != c.field {
				t.Errorf("%v, want a fault of %s", err, c.field)
			}
		})
	}
	if _, err := r.Order(lineset.Loading, resting); err != nil {
		t.Errorf("resting on the stop the batten needs no limit: %v", err)
	}
	if _, err := new(lineset.Rigged).Order(lineset.Loading, within(1, 1)); err == nil {
		t.Error("a Rigged that Rig did not make was planned")
	}
	// Many items that differ are too many, many that are alike are not.
	var many, alike []load.Item
	for i := range 24 {
		many = append(many, pounds("item", 10+float64(i)))
		alike = append(alike, pounds("item", 20))
	}
	s := plain(t, purchase.Single, alike...)
	mustPlan(t, rigTens(t, s), lineset.Loading, within(20, 20))
	s.Hang = many
	_, err := rigTens(t, s).Order(lineset.Loading, within(20, 20))
	var fe *units.FieldError
	if !errors.As(err, &fe) || fe.Field != "hang" || !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("%v", err)
	}
}

// drawPlain is a set of up to 5 items in whole pounds, with its limits.
func drawPlain(t *rapid.T, tb testing.TB) (*lineset.Rigged, []float64, lineset.OrderLimits) {
	kind := rapid.SampledFrom([]purchase.Kind{purchase.Single, purchase.Double}).Draw(t, "purchase")
	var masses []float64
	var hang []load.Item
	for range rapid.IntRange(0, 5).Draw(t, "items") {
		lb := float64(rapid.IntRange(1, 60).Draw(t, "lb"))
		masses = append(masses, lb)
		hang = append(hang, pounds("item", lb))
	}
	r, err := plain(tb, kind, hang...).Rig(tens)
	if err != nil {
		t.Skip(err)
	}
	limits := within(float64(rapid.IntRange(0, 40).Draw(t, "arbor-heavy")), float64(rapid.IntRange(0, 80).Draw(t, "batten-heavy")))
	limits.RestsOnStop = rapid.IntRange(0, 4).Draw(t, "rests") == 0
	return r, masses, limits
}

// smallest finds by exhaustive search, in pounds, the least that the worst state of any order
// must be out of balance: arbor-heavy for certain, batten-heavy where that counts.
func smallest(masses []float64, each float64, pieces int, batten bool) float64 {
	type place struct {
		hung   uint
		pieces int
	}
	cost := func(p place) float64 {
		sum := -each * float64(p.pieces)
		for i, m := range masses {
			if p.hung>>i&1 != 0 {
				sum += m
			}
		}
		if sum > 0 && !batten {
			return 0
		}
		return math.Abs(sum)
	}
	best := map[place]float64{{}: 0}
	queue := []place{{}}
	for len(queue) > 0 {
		p := queue[0]
		queue = queue[1:]
		next := []place{{p.hung, p.pieces + 1}}
		for i := range masses {
			next = append(next, place{p.hung | 1<<i, p.pieces})
		}
		for _, n := range next {
			if n.pieces > pieces || n == p {
				continue
			}
			worst := max(best[p], cost(n))
			if old, ok := best[n]; !ok || worst < old {
				best[n] = worst
				queue = append(queue, n)
			}
		}
	}
	return best[place{1<<len(masses) - 1, pieces}]
}

// A plan keeps within its limits when it is gone through step by step, strips as it loads, and
// where there is none exhaustive search agrees on the smallest limit.
func TestPropPlan(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r, masses, limits := drawPlain(rt, t)
		pieces := r.Counterweight().Stack.Pieces
		least := smallest(masses, 10/r.Ratio(), pieces, !limits.RestsOnStop)
		p, err := r.Order(lineset.Loading, limits)
		back, backErr := r.Order(lineset.Stripping, limits)
		var none *lineset.NoOrderError
		switch {
		case errors.As(err, &none):
			if !near.Abs(none.Either.In(units.PoundForce), least, 1e-6) {
				rt.Fatalf("smallest limit %v lbf, by exhaustive search %v", none.Either.In(units.PoundForce), least)
			}
			if backErr == nil {
				rt.Fatal("stripped what cannot be loaded")
			}
			return
		case err != nil || backErr != nil:
			rt.Fatal(err, backErr)
		}
		if a, b := limits.ArborHeavy.Max.In(units.PoundForce), limits.BattenHeavy.Max.In(units.PoundForce); least > max(a, b)+1e-6 && !limits.RestsOnStop {
			rt.Fatalf("an order within %v and %v, and %v is the least that there is", a, b, least)
		}
		if p.Check.Exceeds || back.Check.Exceeds {
			rt.Fatal("a plan exceeds its limits")
		}
		if p.Check.ToHang+p.Check.ToAdd+back.Check.ToStrip+back.Check.ToTake != 0 {
			rt.Fatal("a plan leaves something undone")
		}
		n := len(p.Check.States)
		if p.Check.HandOvers != back.Check.HandOvers || len(back.Check.States) != n {
			rt.Fatalf("loading %s, stripping %s", calls(p.Order), calls(back.Order))
		}
		for i, s := range p.Check.States {
			if m := back.Check.States[n-1-i]; m.Imbalance != s.Imbalance || m.Pieces != s.Pieces || m.Hung != s.Hung {
				rt.Fatalf("state %d of loading is no mirror image", i)
			}
		}
		if end := p.Check.States[n-1]; end.Arbor != r.Counterweight().Arbor {
			rt.Fatalf("the arbor ends with %v, its stack makes %v", end.Arbor, r.Counterweight().Arbor)
		}
	})
}
