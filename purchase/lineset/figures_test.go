package lineset_test

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// Travel and headroom of the double purchase set of demo_test.go, by hand in feet:
// an arbor of 8 between stops at 22 and 53, blocks at 54 and 55, made off at 4.
func TestTravelFigures(t *testing.T) {
	travel := mustRig(t, electric()).Travel()
	for _, c := range []struct {
		name string
		got  units.Length
		want float64
	}{
		{"arbor", travel.Arbor, 53 - 22 - 8},
		{"batten", travel.Batten, 2 * 23},
		{"wanted", travel.Wanted, 28 - 5},
		{"arbor wanted", travel.ArborWanted, 11.5},
		{"lowest", travel.Lowest, 4},
		{"highest", travel.Highest, 50},
		{"below", travel.Below, 1},
		{"above", travel.Above, 22},
		{"under loft blocks", travel.UnderLoft, 54 - 50},
		{"under head block", travel.UnderHead, 55 - 53},
		{"under the arbor", travel.UnderFoot, 22},
	} {
		if !near.Abs(c.got.In(units.Foot), c.want, 1e-9) {
			t.Errorf("%s: %v ft, want %v", c.name, c.got.In(units.Foot), c.want)
		}
	}
}

func named(t *testing.T, r *lineset.Rigged, name string) lineset.Check {
	t.Helper()
	checks := r.Checks()
	i := slices.IndexFunc(checks, func(c lineset.Check) bool { return c.Name == name })
	if i < 0 {
		t.Fatalf("no check is called %q", name)
	}
	return checks[i]
}

// Limits are inclusive, up to rounding and no further: a travel that decimals say
// is just enough is within, one that a millimetre in a kilometre exceeds is not.
func TestJustEnough(t *testing.T) {
	s := electric()
	// 1.1 + 2·(16.3 − 6.7 − 2.1) is 16.1, but not in binary.
	s.Rigging.MadeOff, s.Rigging.Run.LowerStop, s.Rigging.Run.UpperStop, s.Rigging.Arbor.Length = 1.1, 6.7, 16.3, 2.1
	s.Rigging.Arbor.Room = 1.9
	for _, c := range []struct {
		high units.Length
		want lineset.Verdict
	}{{16.1, lineset.Within}, {16.1001, lineset.Exceeds}} {
		s.High = c.high
		if got := named(t, mustRig(t, s), "travel to high trim"); got.Verdict != c.want || got.Trim != c.high {
			t.Errorf("high trim %v: %v, want %v at that trim", c.high, got, c.want)
		}
	}
}

// Low and high trim may be one: a set that does not fly in the show.
func TestOneTrim(t *testing.T) {
	s := electric()
	s.Low = s.High
	r := mustRig(t, s)
	if b := r.Balance(); b.Low != b.High || r.Travel().Wanted != 0 {
		t.Errorf("balance %v, travel wanted %v", b, r.Travel().Wanted)
	}
}

// A heap bends the curve where it begins to leave the deck and where all of it has: two more points, and none stands twice.
func TestHeapBendsTheCurve(t *testing.T) {
	s := two(purchase.Single)
	s.Low, s.High = 4*units.Foot, 12*units.Foot
	s.Hang = load.Hang{{Name: "cloth", Mass: 40 * units.Pound, From: 21 * units.Foot, To: 21 * units.Foot, Below: 6 * units.Foot, Height: 4 * units.Foot, OnDeck: load.Piles}}
	var trims, carried []float64
	for _, p := range mustRig(t, s).Balance().Curve {
		trims, carried = append(trims, math.Round(p.Trim.In(units.Foot)*1e9)/1e9), append(carried, math.Round(p.Carried.In(units.Pound)))
	}
	if !slices.Equal(trims, []float64{4, 6, 10, 12}) || !slices.Equal(carried, []float64{0, 0, 40, 40}) {
		t.Errorf("%v lb at %v ft", carried, trims)
	}
}

// What an idler keeps the hand line tight with is told: its weight, what holds it, or that neither is known.
func TestWhatKeepsTheHandLineTight(t *testing.T) {
	for _, c := range []struct {
		name  string
		idler lineset.Idler
		check string
		basis string
	}{
		{
			"free",
			lineset.Idler{Mass: 60 * units.Pound},
			"lift on the idler",
			"hand line tension at the lock, from the idler's weight as given: a batten-heavy set that takes off more lifts the idler, and the lock alone does not hold it",
		},
		{
			"held",
			lineset.Idler{Mass: 60 * units.Pound, Base: 100 * units.PoundForce},
			"outer rope kept tight",
			"hand line tension at the lock, from that at the held idler as given: a batten-heavy set that takes off more leaves the rope above the lock slack, and pulls at what holds the idler",
		},
		{"of no known weight", lineset.Idler{}, "lift on the idler", ""},
	} {
		s := two(purchase.Double)
		c.idler.Height = s.Rigging.Idler.Height
		s.Rigging.Idler = c.idler
		if got := named(t, mustRig(t, s), c.check); got.Basis != c.basis || (got.Verdict == lineset.NoLimit) != (c.basis == "") {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// The lift on the idler is the batten-heavy side alone; out of balance is either.
func TestLiftOnTheIdler(t *testing.T) {
	s := electric()
	s.Balance, s.High = lineset.AtLow, 45*units.Foot // arbor-heavy all the way up
	r := mustRig(t, s)
	worst := r.Balance().Worst()
	if worst.Imbalance >= 0 {
		t.Fatalf("%v is not arbor-heavy", worst)
	}
	lift, balance := named(t, r, "lift on the idler"), named(t, r, "out of balance")
	low := max(r.Balance().Low, 0)
	if f, ok := lift.Demand.(units.Force); !ok || !near.Abs(f.In(units.Newton), low.In(units.Newton), 1e-6) {
		t.Errorf("%v; want the batten-heavy %v at low trim", lift, low)
	}
	if balance.Demand != units.Value(-worst.Imbalance) || balance.Trim != worst.Trim {
		t.Errorf("%v; want %v at %v", balance, -worst.Imbalance, worst.Trim)
	}
	// Batten-heavy at one end only: the check is at that end.
	s.Balance = lineset.AtHigh
	r = mustRig(t, s)
	if lift := named(t, r, "lift on the idler"); lift.Trim != s.Low {
		t.Errorf("%v; want it at low trim", lift)
	}
}

// Where a standing piece leaves the deck just at low or high trim: it stands at
// that trim, and the jump above low trim is on the way, that above high trim not.
func TestJumpAtTheEnds(t *testing.T) {
	s := electric()
	s.Hang = load.Hang{{Name: "flat", Mass: 40 * units.Pound, From: 10 * units.Foot, To: 30 * units.Foot, Height: 16 * units.Foot, OnDeck: load.Stands}}
	s.Low, s.High = 16*units.Foot, 30*units.Foot
	r := mustRig(t, s)
	b := r.Balance()
	if len(b.Curve) != 3 || b.Curve[0].Trim != b.Curve[1].Trim || !near.Abs((b.Curve[1].Imbalance-b.Curve[0].Imbalance).In(units.PoundForce), 40, 1e-9) {
		t.Errorf("curve %v; want the jump right at low trim", b.Curve)
	}
	if i, err := r.Imbalance(s.Low); err != nil || i != b.Low || !near.Abs(i.In(units.Newton), b.Curve[0].Imbalance.In(units.Newton), 1e-9) {
		t.Errorf("imbalance %v, %v; want it with the piece standing, %v", i, err, b.Curve[0].Imbalance)
	}
	s.Low, s.High = 10*units.Foot, 16*units.Foot
	if b := mustRig(t, s).Balance(); len(b.Curve) != 2 {
		t.Errorf("curve %v; want no jump before high trim", b.Curve)
	}
}

// A report holds what its fields say, and totals are the sums of the sets.
func TestReportAndTotals(t *testing.T) {
	a := electric()
	b := electric()
	b.Name, b.Rigging, b.Low = "curtain", rigging(purchase.Single), 5*units.Foot
	b.Hang = load.Hang{{Name: "cloth", Mass: 90 * units.Pound, From: 1 * units.Foot, To: 41 * units.Foot, Height: 20 * units.Foot, OnDeck: load.Piles}}
	house, err := lineset.House{Name: "test", Stock: stock, Sets: []lineset.Set{a, b}}.Rig()
	if err != nil {
		t.Fatal(err)
	}
	report, totals := house.Report(), house.Totals()
	var want lineset.Totals
	i := 0
	for s := range house.Sets() {
		r := report.Sets[i]
		i++
		if r.Name != s.Set().Name || r.Purchase != s.Set().Rigging.Purchase || !cmp.Equal(r.Hang, s.Set().Hang) || !cmp.Equal(r.Counterweight, s.Counterweight()) ||
			!cmp.Equal(r.Balance, s.Balance()) || r.Travel != s.Travel() || !cmp.Equal(r.Checks, s.Checks()) || r.Exceeds != s.Exceeds() {
			t.Errorf("%s: %+v is not what its questions answer", r.Name, r)
		}
		if r.Batten != s.Bare() || r.Hung != s.Hung() {
			t.Errorf("%s: batten %v and hung %v, want %v and %v", r.Name, r.Batten, r.Hung, s.Bare(), s.Hung())
		}
		if !cmp.Equal(r.Low, s.Low()) || !cmp.Equal(r.High, s.High()) || r.Low.Trim == r.High.Trim {
			t.Errorf("%s: states at %v and %v", r.Name, r.Low.Trim, r.High.Trim)
		}
		want.Carried += s.Bare() + s.Hung() // all is clear of the deck at high trim
		want.Arbors += s.Counterweight().Tare + s.Counterweight().Stack.Mass
		for _, block := range r.High.Ropes.Blocks {
			switch block.On {
			case purchase.Grid:
				want.Grid = want.Grid.Add(block.Load)
			case purchase.HeadBeam:
				want.HeadBeam = want.HeadBeam.Add(block.Load)
			}
		}
	}
	if !near.Rel(totals.Carried.In(units.Kilogram), want.Carried.In(units.Kilogram), 1e-12) || totals.Arbors != want.Arbors {
		t.Errorf("carried %v, arbors %v; want %v, %v", totals.Carried, totals.Arbors, want.Carried, want.Arbors)
	}
	for name, pair := range map[string][2]purchase.Vector{"grid": {totals.Grid, want.Grid}, "head beam": {totals.HeadBeam, want.HeadBeam}} {
		if !near.Rel(pair[0].Up.In(units.Newton), pair[1].Up.In(units.Newton), 1e-9) || !near.Rel(pair[0].Across.In(units.Newton), pair[1].Across.In(units.Newton), 1e-9) {
			t.Errorf("on the %s %v, want %v", name, pair[0], pair[1])
		}
	}
}

// Of extremes that are equal and opposite the worse is the batten-heavy one.
func TestWorstOfEqualExtremes(t *testing.T) {
	heavy, light := lineset.Point{Trim: 1, Imbalance: 50}, lineset.Point{Trim: 2, Imbalance: -50}
	for _, c := range []struct{ most, least, want lineset.Point }{
		{heavy, light, heavy},
		{heavy, lineset.Point{Trim: 3, Imbalance: -50.1}, lineset.Point{Trim: 3, Imbalance: -50.1}},
		{heavy, lineset.Point{Trim: 3, Imbalance: 20}, heavy},
		{lineset.Point{Trim: 3, Imbalance: -20}, light, light},
	} {
		if got := (lineset.Balance{Most: c.most, Least: c.least}).Worst(); got != c.want {
			t.Errorf("of %v and %v %v", c.most, c.least, got)
		}
	}
}
