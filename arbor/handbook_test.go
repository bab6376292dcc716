package arbor_test

import (
	"math"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/units"
)

// One spreader plate for every 24 in of stack: common practice. So a stack
// of 60 in has two on the way up, at 24 and 48 in, beside the one under its
// first piece. Exact: the rule counts whole intervals.
func TestVerifySpreaderPlates(t *testing.T) {
	tests := []struct {
		name   string
		pieces int // of 1 in each
		plates int
	}{
		{"no show weight, no plate", 0, 0},
		{"one piece", 1, 1},
		{"just short of 24 in", 23, 1},
		{"a full interval", 24, 2},
		{"just short of 48 in", 47, 2},
		{"60 in", 60, 1 + 2},
	}
	stock := arbor.Stock{{Name: "20", Mass: 20 * units.Pound, Thickness: 1 * units.Inch, Count: 60}}
	for _, tt := range tests {
		f := arbor.Frame{
			Length: 8 * units.Foot, Room: 84 * units.Inch, Capacity: 2000 * units.Pound,
			Plate: arbor.Plate{Mass: 2 * units.Pound, Thickness: 0.125 * units.Inch, Every: 24 * units.Inch},
		}
		w := arbor.Wanted{Show: units.Pound.Scale(float64(20*tt.pieces + 2*tt.plates))}
		s, err := f.Fill(w, stock, arbor.EitherSide)
		if err != nil || s.Pieces != tt.pieces || s.Error != 0 {
			t.Errorf("%s: got %d pieces, error %v, %v; want %d", tt.name, s.Pieces, s.Error, err, tt.pieces)
		}
		verification.Row{Key: "plates", Source: "counterweight practice", Place: "a plate for every 24 in of stack", What: "spreader plates", Why: "whole intervals are counted"}.
			Of(tt.name, "", float64(tt.plates), 0).Check(t, float64(s.Plates))
	}
}

// Densities of rolled steel and lead as in the common density tables of
// engineering handbooks, 7850 and 11 340 kg/m³. A steel piece of 6 × 13 × 2 in
// is described as typical in the trade (common practice); its mass is worked out
// here from the exact inch and pound.
func TestVerifyBlock(t *testing.T) {
	const cubicInch = 0.0254 * 0.0254 * 0.0254
	tests := []struct {
		name    string
		density units.Density
		want    float64 // kilograms, worked out from the definitions
		pounds  float64 // and rounded to the hundredth
	}{
		{"steel", 7850 * units.KilogramPerCubicMetre, 6 * 13 * 2 * cubicInch * 7850, 44.24},
		{"lead", 11340 * units.KilogramPerCubicMetre, 6 * 13 * 2 * cubicInch * 11340, 63.91},
	}
	for _, tt := range tests {
		p := arbor.Block(tt.name, 13*units.Inch, 6*units.Inch, 2*units.Inch, tt.density, 7)
		block := verification.Row{Key: "piece", Source: "density tables", Place: "7850 and 11 340 kg/m³", What: "block of 6 × 13 × 2 in"}
		block.Of(tt.name, "kg", tt.want, 1e-14*tt.want).Because("four roundings of a product: a few parts in 10^16").Check(t, p.Mass.In(units.Kilogram))
		block.Of(tt.name+" in pounds", "lb", tt.pounds, 0.005).Because("half a unit in the last place").Check(t, p.Mass.In(units.Pound))
		if p.Name != tt.name || p.Thickness != 2*units.Inch || p.Count != 7 {
			t.Errorf("%s: %+v", tt.name, p)
		}
		if err := (arbor.Stock{p}).Validate(); err != nil {
			t.Error(err)
		}
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.MaxFloat64} {
		if p := arbor.Block("bad", units.Length(bad), 1e200, 1e200, 1e200, 1); p.Mass != 0 {
			t.Errorf("a block of %v m has a mass of %v, want none", bad, p.Mass)
		}
	}
}

// Half the travel, twice the weight: what double purchase costs and gives, common
// practice and the arithmetic of a rope in two parts. Exact: powers of two.
func TestVerifyDoublePurchase(t *testing.T) {
	run, frame := arbor.Run{UpperStop: 60 * units.Foot}, arbor.Frame{Length: 6 * units.Foot, Room: 5 * units.Foot, Capacity: 1000}
	for _, tt := range []struct {
		name   string
		ratio  float64
		travel units.Length // of the arbor, for 50 ft at the batten
		weight units.Mass   // at the arbor, for 500 lb at the batten
	}{
		{"single", 1, 50 * units.Foot, 500 * units.Pound},
		{"double", 2, 25 * units.Foot, 1000 * units.Pound},
	} {
		f, err := run.Fly(frame, arbor.Ride{Ratio: tt.ratio})
		if err != nil {
			t.Fatal(err)
		}
		trims, err := f.Trims(0, 50*units.Foot)
		if err != nil {
			t.Fatal(err)
		}
		practice := verification.Row{Key: "purchase/" + tt.name, Source: "counterweight practice", Place: "half the travel, twice the weight", What: "500 lb flown 50 ft, " + tt.name, Why: "powers of two, but for the conversion"}
		practice.Of("arbor's travel", "m", tt.travel.In(units.Metre), 1e-12).Check(t, trims.ArborWanted.In(units.Metre))
		v := arbor.Venue{Run: run, Frame: frame, Load: 500 * units.Pound, High: 50 * units.Foot}
		options, err := v.Compare(tt.ratio)
		if err != nil {
			t.Fatal(err)
		}
		practice.Of("counterweight", "kg", tt.weight.In(units.Kilogram), 1e-12).Check(t, options[0].Counterweight.In(units.Kilogram))
	}
}
