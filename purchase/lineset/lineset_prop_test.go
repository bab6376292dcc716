package lineset_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// drawSet is a random set that any house might have.
func drawSet(t *rapid.T) lineset.Set {
	kind := rapid.SampledFrom([]purchase.Kind{purchase.Single, purchase.Double}).Draw(t, "purchase")
	s := lineset.Set{
		Name: "drawn", Rigging: rigging(kind),
		Low:     units.Length(rapid.Float64Range(1, 9).Draw(t, "low trim")),
		Balance: rapid.SampledFrom([]lineset.BalanceAt{lineset.AtLow, lineset.AtHigh, lineset.Even}).Draw(t, "balance"),
	}
	s.High = s.Low + units.Length(rapid.Float64Range(0, 8).Draw(t, "travel"))
	for range rapid.IntRange(0, 6).Draw(t, "items") {
		from := rapid.Float64Range(0.5, 12).Draw(t, "from")
		s.Hang = append(s.Hang, load.Item{
			Name: "item", Mass: units.Mass(rapid.Float64Range(0.1, 150).Draw(t, "mass")),
			From: units.Length(from), To: units.Length(rapid.Float64Range(from, 12.5).Draw(t, "to")),
			Below:  units.Length(rapid.Float64Range(0, 3).Draw(t, "below")),
			Height: units.Length(rapid.Float64Range(0.1, 8).Draw(t, "height")),
			OnDeck: rapid.SampledFrom([]load.OnDeck{load.Hangs, load.Piles, load.Stands}).Draw(t, "on deck"),
		})
	}
	return s
}

// At any trim the lines bear what is carried, the imbalance is what the arbor's
// weight lacks, and lies between the extremes of the curve.
func TestPropStateAgreesWithItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, err := drawSet(t).Rig(stock)
		if err != nil {
			t.Skip(err) // a hang all outside the outer lines would tip the batten
		}
		lo, hi := r.Low().Trim.In(units.Metre), r.High().Trim.In(units.Metre)
		trim := units.Length(lo + (hi-lo)*rapid.Float64Range(0, 1).Draw(t, "where"))
		st, err := r.At(trim)
		if err != nil {
			t.Fatal(err)
		}
		var again lineset.State
		for _, at := range [...]units.Length{r.High().Trim, trim} { // written over with another trim's figures before
			if err := r.AtInto(&again, at); err != nil {
				t.Fatal(err)
			}
		}
		if diff := cmp.Diff(st, again); diff != "" {
			t.Fatalf("filled again: %s", diff)
		}
		var pulls units.Force
		for _, line := range st.Share.Lines {
			pulls += line.Tension
		}
		weight := st.Carried.Weight(units.StandardGravity)
		if !near.Rel(pulls.In(units.Newton), weight.In(units.Newton), 1e-9) {
			t.Fatalf("lines bear %v of %v carried", pulls, weight)
		}
		imbalance, err := r.Imbalance(trim)
		if err != nil {
			t.Fatal(err)
		}
		if !near.Rel(imbalance.In(units.Newton), st.Ropes.Imbalance.In(units.Newton), 1e-6) {
			t.Fatalf("imbalance %v, in the state of the ropes %v", imbalance, st.Ropes.Imbalance)
		}
		b := r.Balance()
		for _, p := range b.Curve {
			// The closed form that the working shows, against the walk along the paths.
			form := b.Ropes.Lift.Weight(units.StandardGravity).Over(p.ArborTop-p.Trim) +
				b.Ropes.Hand.Weight(units.StandardGravity).Over(b.Ropes.Between).Scale(b.Ropes.HandRatio)
			if !near.Rel(form.In(units.Newton), p.Ropes.In(units.Newton), 1e-9) {
				t.Fatalf("ropes at %v: %v, by the closed form %v", p.Trim, p.Ropes, form)
			}
		}
		if slack := units.Force(1e-6); imbalance > b.Most.Imbalance+slack || imbalance < b.Least.Imbalance-slack {
			t.Fatalf("imbalance %v at %v lies outside %v to %v", imbalance, trim, b.Least.Imbalance, b.Most.Imbalance)
		}
	})
}

// What is wanted at the arbor balances where it was asked to: with that mass, and
// not the whole pieces that come nearest, the imbalance there is nil, or the two
// extremes are equal and opposite.
func TestPropWantedBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSet(t)
		r, err := s.Rig(stock)
		if err != nil {
			t.Skip(err)
		}
		if len(s.Hang) == 0 {
			t.Skip("an empty set gets its pipe weight, whatever was asked")
		}
		c, b := r.Counterweight(), r.Balance()
		// Each kilogram at the arbor takes g/ratio off the imbalance, everywhere alike.
		shift := (c.Loaded.Wanted - c.Arbor).Weight(units.StandardGravity).Scale(1 / r.Ratio())
		var left units.Force
		switch s.Balance {
		case lineset.AtLow:
			left = b.Low - shift
		case lineset.AtHigh:
			left = b.High - shift
		default:
			left = b.Most.Imbalance - shift + b.Least.Imbalance - shift
		}
		if !near.Abs(left.In(units.Newton), 0, 1e-6) {
			t.Fatalf("out of balance by %v with the wanted mass at the arbor", left)
		}
	})
}

// The same hang wants the ratio times as much at the arbor, but for the ropes.
func TestPropDoubleWantsTwice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSet(t)
		s.Rigging = rigging(purchase.Single)
		s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
		single, err := s.Rig(stock)
		if err != nil {
			t.Skip(err)
		}
		s.Rigging = rigging(purchase.Double)
		s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
		double, err := s.Rig(stock)
		if err != nil {
			t.Fatal(err)
		}
		a, b := single.Counterweight().Loaded.Wanted, double.Counterweight().Loaded.Wanted
		if !near.Rel(2*a.In(units.Kilogram), b.In(units.Kilogram), 1e-9) {
			t.Fatalf("double wants %v, single %v", b, a)
		}
	})
}

// Whatever is written into a set, it is refused or answered in finite numbers;
// storing the answers as JSON fails on any that are not.
func TestPropAnythingGoesOrIsRefused(t *testing.T) {
	wild := rapid.OneOf(
		rapid.Float64(), rapid.Float64Range(0, 60),
		rapid.SampledFrom([]float64{0, -1, 1e-12, 1e-9, 1e6, 1e12, 1e300, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, math.SmallestNonzeroFloat64}))
	rapid.Check(t, func(t *rapid.T) {
		s := drawSet(t)
		for range rapid.IntRange(1, 3).Draw(t, "changes") {
			x := wild.Draw(t, "value")
			r := &s.Rigging
			fields := []func(){
				func() { s.Low = units.Length(x) }, func() { s.High = units.Length(x) },
				func() { r.MadeOff = units.Length(x) }, func() { r.Offset = units.Length(x) },
				func() { r.HeadBlock = units.Length(x) }, func() { r.LoftBlocks = units.Length(x) },
				func() { r.DeadEnds = units.Length(x) }, func() { r.Rail = units.Length(x) },
				func() { r.Idler.Height = units.Length(x) }, func() { r.Idler.Mass = units.Mass(x) },
				func() { r.Run.LowerStop = units.Length(x) }, func() { r.Run.UpperStop = units.Length(x) },
				func() { r.Run.HeadBlock = units.Length(x) }, func() { r.Run.Grid = units.Length(x) }, func() { r.Bed = units.Length(x) },
				func() { r.Run.Bridges = []arbor.Bridge{{Name: "bridge", Floor: units.Length(x), High: 2}} },
				func() { r.Arbor.Length = units.Length(x) }, func() { r.Arbor.Room = units.Length(x) },
				func() { r.Arbor.Tare = units.Mass(x) }, func() { r.Arbor.Capacity = units.Mass(x) },
				func() { r.LiftLine = units.LineMass(x) }, func() { r.HandLine = units.LineMass(x) },
				func() { r.Batten.Length = units.Length(x) }, func() { r.Batten.Pipe.Outer = units.Length(x) },
				func() { r.Batten.Pipe.Wall = units.Length(x) }, func() { r.Batten.Pipe.Density = units.Density(x) },
				func() { r.Batten.Lines[2].At = units.Length(x) }, func() { r.Limits.LiftLine.Max = units.Force(x) },
				func() { r.Idler.Base = units.Force(x) }, func() { r.HandLine = units.LineMass(x) }, func() { r.Drag = purchase.Drag(x) },
				func() { r.HandPurchase = purchase.Kind(math.Mod(math.Abs(x), 5)) },
				func() { r.Loft = make([]lineset.Loft, 5); r.Loft[1].Height = units.Length(x) },
				func() {
					r.Loft = make([]lineset.Loft, 5)
					r.Loft[4].Mules = []purchase.Mule{{Name: "mule", Across: units.Length(x), Height: 16}, {Name: "mule", Across: 3, Height: units.Length(x)}}
				},
			}
			fields[rapid.IntRange(0, len(fields)-1).Draw(t, "field")]()
		}
		r, err := s.Rig(stock)
		if err != nil {
			return
		}
		if _, err := json.Marshal(r.Report()); err != nil {
			t.Fatalf("an answer is not finite: %v", err)
		}
		for _, h := range []lineset.Hand{r.Report().LowHand, r.Report().HighHand} {
			h.Notes()
			for _, step := range h.Working(units.Metric) {
				if strings.Contains(step.Formula+step.Result, "NaN") || strings.Contains(step.Formula+step.Result, "Inf") {
					t.Fatalf("%+v", step)
				}
			}
		}
	})
}
