package lineset_test

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// weightless is a double purchase set in which nothing weighs anything but what
// hangs: a batten of next to nothing, ropes and arbor of nothing.
func weightless() lineset.Set {
	s := electric()
	s.Rigging.Batten.Pipe.Density = 1e-6
	s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
	s.Rigging.Idler.Mass, s.Rigging.Arbor.Tare, s.Rigging.Arbor.Plate = 0, 0, arbor.Plate{}
	s.Hang = load.Hang{{Name: "load", Mass: 500 * units.Pound, From: 1 * units.Foot, To: 41 * units.Foot}}
	return s
}

// 500 lb on a double purchase set, weightless arbor, no rope weight: 500 in the
// line, two up-pulls of 500, 1000 lb of counterweight, 500 at the dead end
// (common practice, no source).
func TestVerifyWholeSetFreeBody(t *testing.T) {
	pieces := arbor.Stock{{Name: "50", Mass: 50 * units.Pound, Thickness: 2 * units.Inch, Count: 40}}
	r, err := weightless().Rig(pieces)
	if err != nil {
		t.Fatal(err)
	}
	var lines, upPulls, deadEnds units.Force
	st := r.High()
	for i, rope := range st.Ropes.Lift {
		lines += rope.Greatest()
		upPulls += st.Ropes.Lift[i].Parts[2].TensionTo + st.Ropes.Lift[i].Parts[3].TensionFrom
		deadEnds -= st.Ropes.Load(purchase.DeadEnd(i + 1)).Up
	}
	c := r.Counterweight()
	for _, row := range []struct {
		name      string
		got, want float64
	}{
		{"lbf in the lines", lines.In(units.PoundForce), 500},
		{"lbf of up-pulls on the arbor", upPulls.In(units.PoundForce), 2 * 500},
		{"lbf at the dead ends", deadEnds.In(units.PoundForce), 500},
		{"lb wanted at the arbor", c.Loaded.Wanted.In(units.Pound), 1000},
		{"lb stacked", c.Stack.Mass.In(units.Pound), 1000},
		{"pieces", float64(c.Stack.Pieces), 20},
		{"lbf out of balance", r.Balance().Worst().Imbalance.In(units.PoundForce), 0},
	} {
		_, what, of := strings.Cut(row.name, " ")
		if !of {
			what = row.name
		}
		unit := strings.TrimSuffix(strings.TrimSuffix(row.name, what), " ")
		verification.Row{
			Key: "free body/set", Source: "counterweight practice", Place: "free body of a double purchase set", What: "whole set with 500 lb on the batten",
			Why: "the batten weighs a little",
		}.Of(what, unit, row.want, 1e-5).Check(t, row.got)
	}
}

func TestVerdicts(t *testing.T) {
	verdict := func(r *lineset.Rigged, name string) lineset.Verdict {
		for _, c := range r.Checks() {
			if c.Name == name {
				return c.Verdict
			}
		}
		t.Fatalf("no check is called %q", name)
		return 0
	}
	for _, c := range []struct {
		name   string
		change func(*lineset.Set)
		check  string
		want   lineset.Verdict
		reason string
	}{
		{"as it stands", func(*lineset.Set) {}, "stack height", lineset.Within, "40 in of 75"},
		{"heavy wall", func(s *lineset.Set) { s.Hang[0].Mass = 1200 * units.Pound }, "stack height", lineset.Exceeds, "twice the mass in half the height"},
		{"heavy wall", func(s *lineset.Set) { s.Hang[0].Mass = 1200 * units.Pound }, "out of balance", lineset.Exceeds, "what does not fit is missing"},
		{"small arbor", func(s *lineset.Set) { s.Rigging.Arbor.Capacity = 500 * units.Pound }, "counterweight mass", lineset.Exceeds, "the arbor may not hold it"},
		{"just the capacity", func(s *lineset.Set) {
			s.Rigging.Arbor.Capacity = mustRig(t, *s).Counterweight().Stack.Mass
		}, "counterweight mass", lineset.Within, "limits are inclusive"},
		{"high trim too high", func(s *lineset.Set) { s.High = 51 * units.Foot }, "travel to high trim", lineset.Exceeds, "the arbor lands first"},
		{"high trim just reached", func(s *lineset.Set) { s.High = 50 * units.Foot }, "travel to high trim", lineset.Within, "46 ft of 46 ft: inclusive"},
		{"low trim too low", func(s *lineset.Set) { s.Low = 3 * units.Foot }, "travel to low trim", lineset.Exceeds, "the arbor meets its upper stop first"},
		{"chandelier", func(s *lineset.Set) {
			s.Hang = load.Hang{{Name: "chandelier", Mass: 720 * units.Pound, From: 21 * units.Foot, To: 21 * units.Foot}}
		}, "lift line tension", lineset.Exceeds, "the middle line takes nearly all of it"},
		{"low trim just at the highest", func(s *lineset.Set) { s.Low, s.High = 50*units.Foot, 50*units.Foot }, "travel to low trim", lineset.Within, "no travel at all, and none is asked"},
		{"high trim just at the lowest", func(s *lineset.Set) { s.Low, s.High = 4*units.Foot, 4*units.Foot }, "travel to high trim", lineset.Within, "no travel at all, and none is asked"},
		{"trims above the reach", func(s *lineset.Set) { s.Low, s.High = 51*units.Foot, 53*units.Foot }, "travel to low trim", lineset.Exceeds, "it cannot come so high, not even for low trim"},
		{"trims below the reach", func(s *lineset.Set) { s.Low, s.High = 1*units.Foot, 3*units.Foot }, "travel to high trim", lineset.Exceeds, "it cannot come so low, not even for high trim"},
		{"no limit", func(s *lineset.Set) { s.Rigging.Limits.LiftLine = lineset.ForceLimit{} }, "lift line tension", lineset.NoLimit, "an absent limit is not a pass"},
		{"no idler weight", func(s *lineset.Set) { s.Rigging.Idler.Mass = 0 }, "lift on the idler", lineset.NoLimit, "nothing was said about the idler"},
		{"standing flat", func(s *lineset.Set) {
			s.Low, s.Balance = 15*units.Foot, lineset.AtHigh
			s.Hang = load.Hang{{Name: "flat", Mass: 200 * units.Pound, From: 10 * units.Foot, To: 30 * units.Foot, Height: 16 * units.Foot, OnDeck: load.Stands}}
		}, "out of balance", lineset.Exceeds, "at low trim it stands, and the arbor is 200 lb too heavy"},
	} {
		t.Run(c.name+", "+c.check, func(t *testing.T) {
			s := electric()
			c.change(&s)
			r := mustRig(t, s)
			if got := verdict(r, c.check); got != c.want {
				t.Errorf("%s: %v, want %v: %s", c.check, got, c.want, c.reason)
			}
			if exceeds := c.want == lineset.Exceeds; exceeds && !r.Exceeds() {
				t.Errorf("the set as a whole does not exceed")
			}
		})
	}
}

// With a limit of its own for each check, each compares the demand that its name
// says. Figures by hand: a batten of 114.15 lb and 336 lb on it, weightless ropes.
func TestEachCheckHasItsLimit(t *testing.T) {
	s := electric()
	s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
	at := func(f units.Force, basis string) lineset.ForceLimit { return lineset.ForceLimit{Max: f, Basis: basis} }
	s.Rigging.Limits = lineset.Limits{
		LiftLine: at(1000*units.PoundForce, "line"), LoftBlock: at(2000*units.PoundForce, "loft"), HeadBlock: at(3000*units.PoundForce, "head"),
		DeadEnd: at(4000*units.PoundForce, "end"), OutOfBalance: at(50*units.PoundForce, "balance"),
		Pipe: lineset.StressLimit{Max: 21 * units.KipPerSquareInch, Basis: "pipe"},
	}
	r := mustRig(t, s)
	_, line := r.Low().WorstLine()
	share := r.Low().Share
	_, carrying := share.Worst()
	pull := carrying.Tension
	if !near.Rel(line.In(units.Newton), pull.In(units.Newton), 1e-12) {
		t.Errorf("worst line bears %v, the batten's heaviest %v", line, pull)
	}
	carried := 450.15 // lb
	// The loft blocks are a foot below the head block, so the lines run up to it at a slant.
	slant := func(across float64) float64 { return math.Hypot(1, across) }
	worstAcross := (7 + carrying.At.In(units.Foot))
	for _, c := range []struct {
		name, basis string
		want, tol   float64
	}{
		{name: "lift line tension", basis: "line", want: pull.In(units.PoundForce), tol: 1e-6},
		{name: "lift line dead end", basis: "end", want: pull.In(units.PoundForce), tol: 1e-6},
		{name: "loft block load", basis: "loft", want: pull.In(units.PoundForce) * math.Hypot(worstAcross/slant(worstAcross), 1-1/slant(worstAcross)), tol: 0.3},
		{name: "out of balance", basis: "balance", want: math.Abs(carried - r.Counterweight().Arbor.In(units.Pound)/2), tol: 0.01},
	} {
		i := slices.IndexFunc(r.Checks(), func(k lineset.Check) bool { return k.Name == c.name })
		if i < 0 {
			t.Errorf("no check is called %q", c.name)
			continue
		}
		k := r.Checks()[i]
		demand, ok := k.Demand.(units.Force)
		if !ok || !near.Abs(demand.In(units.PoundForce), c.want, c.tol) || k.Basis != c.basis {
			t.Errorf("%v; want %v lbf by %q", k, c.want, c.basis)
		}
		if limit, margin := k.Limit.(units.Force), k.Margin.(units.Force); !near.Rel((limit - demand).In(units.Newton), margin.In(units.Newton), 1e-12) {
			t.Errorf("%s: margin %v of limit %v and demand %v", k.Name, margin, limit, demand)
		}
	}
	for _, k := range r.Checks() {
		if k.Name == "pipe bending stress" {
			if stress, ok := k.Demand.(units.Stress); !ok || stress != share.Stress || k.Basis != "pipe" {
				t.Errorf("%v; want the stress of the share, %v, by %q", k, share.Stress, "pipe")
			}
		}
		if k.Name == "head block load" && k.Basis != "head" {
			t.Errorf("%v is by %q", k, k.Basis)
		}
	}
}

// The set is computed at the trims that it reaches, and says which were wanted.
func TestTrimsNotReached(t *testing.T) {
	s := electric()
	s.Low, s.High = 3*units.Foot, 51*units.Foot
	r := mustRig(t, s)
	if got, want := r.Low().Trim, 4*units.Foot; got != want {
		t.Errorf("low state at %v, want %v as made off", got, want)
	}
	if got := r.High().Trim.In(units.Foot); !near.Abs(got, 50, 1e-9) {
		t.Errorf("high state at %v ft, want 50: made off at 4, twice 23 ft of travel", got)
	}
	if t1 := r.Travel(); !near.Abs(t1.Below.In(units.Foot), -1, 1e-9) || !near.Abs(t1.Above.In(units.Foot), -1, 1e-9) {
		t.Errorf("overtravel %v ft and %v ft, want 1 ft short at both ends", t1.Below.In(units.Foot), t1.Above.In(units.Foot))
	}
	for _, trim := range []units.Length{3 * units.Foot, 51 * units.Foot} {
		if err := r.AtInto(new(lineset.State), trim); !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("trim %v was filled in: %v", trim, err)
		}
		if _, err := r.At(trim); !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("state at %v: error %v", trim, err)
		}
		if _, err := r.Imbalance(trim); !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("imbalance at %v: error %v", trim, err)
		}
	}
}

// When a stack falls short, the set says of what, and the house counts the pieces
// that would have been wanted.
func TestShort(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*lineset.Set, arbor.Stock)
		short  []string
		reason string
	}{
		{"nothing", func(*lineset.Set, arbor.Stock) {}, nil, "all of it fits"},
		{"room", func(s *lineset.Set, _ arbor.Stock) { s.Rigging.Arbor.Room = 20 * units.Inch }, []string{"room"}, "some 40 in in 20"},
		{"capacity", func(s *lineset.Set, _ arbor.Stock) { s.Rigging.Arbor.Capacity = 500 * units.Pound }, []string{"capacity"}, "some 840 lb"},
		{"stock", func(_ *lineset.Set, s arbor.Stock) { s[0].Count, s[1].Count, s[2].Count = 4, 0, 0 }, []string{"stock"}, "4 of some 19"},
		{"all", func(s *lineset.Set, p arbor.Stock) {
			s.Rigging.Arbor.Room, s.Rigging.Arbor.Capacity = 20*units.Inch, 500*units.Pound
			p[0].Count = 4
			p[1].Count, p[2].Count = 0, 0
		}, []string{"room", "capacity", "stock"}, "each of them"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, pieces := electric(), append(arbor.Stock{}, stock...)
			c.change(&s, pieces)
			house, err := lineset.House{Name: "test", Stock: pieces, Sets: []lineset.Set{s}}.Rig()
			if err != nil {
				t.Fatal(err)
			}
			set, _ := house.Set(s.Name)
			got := set.Counterweight()
			if diff := cmp.Diff(c.short, got.Short); diff != "" {
				t.Errorf("%s (-want +got):\n%s", c.reason, diff)
			}
			for _, p := range house.Totals().Pieces {
				if used := got.Stack.Used(p.Name); p.Used != used || p.Wanted < used {
					t.Errorf("%s: used %d, wanted %d, in the stack %d", p.Name, p.Used, p.Wanted, used)
				}
			}
			if wantShort := len(c.short) == 1 && c.short[0] == "stock"; wantShort && house.Totals().Pieces[0].Short() == 0 {
				t.Error("the house is short of nothing")
			}
		})
	}
}

// Pipe weight belongs to the rigging: neither the show's trims nor where it is to
// balance changes it.
func TestPipeWeightStays(t *testing.T) {
	want := mustRig(t, electric()).Counterweight().Stack.Pipe
	for _, change := range []func(*lineset.Set){
		func(s *lineset.Set) { s.Low, s.High = 20*units.Foot, 30*units.Foot },
		func(s *lineset.Set) { s.Balance = lineset.AtLow },
		func(s *lineset.Set) { s.Balance = lineset.AtHigh },
		func(s *lineset.Set) { s.Hang = nil },
	} {
		s := electric()
		change(&s)
		if diff := cmp.Diff(want, mustRig(t, s).Counterweight().Stack.Pipe); diff != "" {
			t.Errorf("pipe weight changed (-want +got):\n%s", diff)
		}
	}
}

// A standing piece makes a jump in the curve at the trim where it leaves the deck,
// as large as its weight, and even balance shares it.
func TestStandingPieceJumps(t *testing.T) {
	s := electric()
	s.Low = 15 * units.Foot
	s.Hang = load.Hang{{Name: "flat", Mass: 40 * units.Pound, From: 10 * units.Foot, To: 30 * units.Foot, Height: 16 * units.Foot, OnDeck: load.Stands}}
	b := mustRig(t, s).Balance()
	if len(b.Curve) != 4 {
		t.Fatalf("curve has %d points, want 4: low, two at the jump, high", len(b.Curve))
	}
	if b.Curve[1].Trim != 16*units.Foot || b.Curve[2].Trim != 16*units.Foot {
		t.Errorf("jump at %v and %v, want 16 ft", b.Curve[1].Trim, b.Curve[2].Trim)
	}
	if jump := (b.Curve[2].Imbalance - b.Curve[1].Imbalance).In(units.PoundForce); !near.Abs(jump, 40, 1e-9) {
		t.Errorf("jump of %v lbf, want 40", jump)
	}
}

func TestJSONRoundTrip(t *testing.T) {
	want := lineset.House{
		Name: "test", Stock: stock,
		Riggings: map[string]lineset.Rigging{"single": rigging(purchase.Single)},
		Sets:     []lineset.Set{electric(), {Name: "empty", Like: "single", Low: 5, High: 9, Balance: lineset.AtLow}},
	}
	text, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var got lineset.House
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("house changed on its way through JSON (-want +got):\n%s", diff)
	}
	if err := json.Unmarshal([]byte(`{"name": "x", "sets": [{"nmae": "y"}]}`), &got); err == nil {
		t.Error("an unknown field was accepted")
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("a failed decode changed the house (-want +got):\n%s", diff)
	}
}

// A set that is not finished can be stored and read back, and a set by itself is
// read as strictly as in a house.
func TestSetJSON(t *testing.T) {
	want := lineset.Set{Name: "draft"}
	text, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var got lineset.Set
	if err := json.Unmarshal(text, &got); err != nil || !cmp.Equal(want, got) {
		t.Errorf("%s was read back as %+v, %v", text, got, err)
	}
	if err := json.Unmarshal([]byte(`{"name":"a","low_trim":"5","Hang":[]}`), &got); !errors.Is(err, units.ErrNoUnit) || !errors.Is(err, units.ErrUnknown) {
		t.Errorf("error %v, want both faults", err)
	}
	if !cmp.Equal(want, got) {
		t.Errorf("a failed decode changed the set: %+v", got)
	}
}

// Every answer of a house can be stored as JSON.
func TestReportMarshals(t *testing.T) {
	house, err := lineset.House{Name: "test", Stock: stock, Sets: []lineset.Set{electric()}}.Rig()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := json.Marshal(house.Report()); err != nil {
		t.Error(err)
	}
}

func TestHouseTotals(t *testing.T) {
	a, b := electric(), electric()
	b.Name, b.Rigging.Purchase = "second electric", purchase.Double
	b.Hang[0].Mass = 400 * units.Pound
	// 25 are enough for either set, of some 20 and 23, but not for both.
	few := arbor.Stock{{Name: "44", Mass: 44 * units.Pound, Thickness: 2 * units.Inch, Count: 25}}
	house, err := lineset.House{Name: "test", Stock: few, Sets: []lineset.Set{a, b}}.Rig()
	if err != nil {
		t.Fatal(err)
	}
	totals := house.Totals()
	used := 0
	var carried units.Mass
	for s := range house.Sets() {
		used += s.Counterweight().Stack.Pieces
		carried += s.High().Carried
	}
	if totals.Sets != 2 || totals.Carried != carried || len(totals.Pieces) != 1 || totals.Pieces[0].Used != used {
		t.Errorf("totals %+v; want 2 sets, %v carried, %d pieces", totals, carried, used)
	}
	if short := totals.Pieces[0].Short(); short != used-25 || short <= 0 || !house.Exceeds() {
		t.Errorf("short of %d pieces, house exceeds: %v; want %d and true", short, house.Exceeds(), used-25)
	}
	if _, ok := house.Set("second electric"); !ok {
		t.Error("a set is not found by its name")
	}
	if s, ok := house.Set("third electric"); ok || s != nil {
		t.Error("a set that is not there was found")
	}
}
