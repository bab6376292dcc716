package purchase_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

func stock(t *testing.T, name string) purchase.RopeStock {
	t.Helper()
	r, err := purchase.StandardRope(name)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Every rope by name is one that can be used, says on what it stands, and is called
// by its own diameter.
func TestStandardRopes(t *testing.T) {
	names := purchase.StandardRopes()
	for i, name := range names {
		r := stock(t, name)
		if err := r.Validate(); err != nil || r.Name != name || r.Basis == "" {
			t.Errorf("%s: %v, named %q on %q", name, err, r.Name, r.Basis)
		}
		if slices.Contains(names[:i], name) {
			t.Errorf("%s stands twice", name)
		}
		inches, _, _ := strings.Cut(name, " in ")
		if d, err := units.Parse[units.Length](inches + " in"); err != nil || !near.Abs(d.In(units.Inch), r.Diameter.In(units.Inch), 1e-12) {
			t.Errorf("%s is %v across, %v", name, r.Diameter, err)
		}
		memory := strings.Contains(r.Basis, "from memory")
		if cable := strings.Contains(name, "7x19"); memory != cable || (r.Mass == 0) != strings.Contains(name, "7x7") {
			t.Errorf("%s: mass %v on the basis %q", name, r.Mass, r.Basis)
		}
	}
	names[0] = "changed"
	if purchase.StandardRopes()[0] == "changed" {
		t.Error("the list of names is not the caller's own")
	}
}

// Source: FAA AC 43.13-1B (9/8/98), Table 7-3, p. 7-28, printed in pounds: composition A and B. Exact.
func TestVerifyCableStrength(t *testing.T) {
	for _, row := range []struct {
		rope      string
		carbon    float64
		stainless float64
	}{
		{"1/16 in 7x7", 480, 480},
		{"3/32 in 7x7", 920, 920},
		{"3/32 in 7x19", 1000, 920},
		{"1/8 in 7x19", 2000, 1760},
		{"5/32 in 7x19", 2800, 2400},
		{"3/16 in 7x19", 4200, 3700},
		{"7/32 in 7x19", 5600, 5000},
		{"1/4 in 7x19", 7000, 6400},
		{"9/32 in 7x19", 8000, 7800},
		{"5/16 in 7x19", 9800, 9000},
		{"11/32 in 7x19", 12500, 0},
		{"3/8 in 7x19", 14400, 12000},
	} {
		table := verification.Row{Key: "rope/strength", Source: "FAA AC 43.13-1B", Place: "Table 7-3, p. 7-28", What: "least breaking strength", Why: "as printed, but for rounding"}
		table.Of(row.rope+" galvanised", "lbf", row.carbon, 1e-14*row.carbon).Check(t, stock(t, row.rope+" galvanised").Breaking.In(units.PoundForce))
		if row.stainless == 0 { // blank in the table
			continue
		}
		table.Of(row.rope+" stainless", "lbf", row.stainless, 1e-14*row.stainless).Check(t, stock(t, row.rope+" stainless").Breaking.In(units.PoundForce))
	}
}

// Masses of 7x19 in lb/100 ft, from memory of MIL-W-83420, the same for both steels; and as wire scales
// with the square of its diameter, none is far from 11.0 of 1/4 in: 13 per cent covers how nominal sizes are drawn.
func TestVerifyCableMass(t *testing.T) {
	for size, want := range map[string]float64{
		"3/32": 1.74, "1/8": 2.9, "5/32": 4.5, "3/16": 6.5, "7/32": 8.6, "1/4": 11.0, "9/32": 13.9, "5/16": 17.3, "11/32": 20.7, "3/8": 24.3,
	} {
		for _, steel := range []string{" galvanised", " stainless"} {
			if size+steel == "11/32 stainless" { // blank in the table of strengths
				continue
			}
			r := stock(t, size+" in 7x19"+steel)
			square := math.Pow(units.Ratio(r.Diameter, units.Inch)/0.25, 2)
			got := r.Mass.In(units.PoundPerHundredFeet)
			if math.Abs(got/(11*square)-1) > 0.13 {
				t.Errorf("%s: %v lb/100 ft, far from %v", r.Name, got, 11*square)
			}
			verification.Row{Key: "rope/mass", Source: "MIL-W-83420 from memory", What: "mass", Why: "as remembered, but for rounding"}.
				Of(r.Name, "lb/100 ft", want, 1e-14*want).Check(t, got)
		}
	}
}

// Source: OSHA 29 CFR 1910.184, Table N-184-16, vertical rating and mass; supplier's rope table (common practice), 4860 lb
// as the least tensile strength of 3/4 in.
// Tolerance: exact; 0.25 per cent, as 4860 is no round five times 970; 0.05 lb/100 ft, the last digit, or 8e-4 kg/m.
func TestVerifyManila(t *testing.T) {
	for _, row := range []struct {
		rope           string
		rating, weight float64
	}{
		{"1/2 in manila", 480, 7.5},
		{"9/16 in manila", 620, 10.4},
		{"5/8 in manila", 790, 13.3},
		{"3/4 in manila", 970, 16.7},
		{"13/16 in manila", 1170, 19.5},
		{"7/8 in manila", 1390, 22.5},
		{"1 in manila", 1620, 27.0},
	} {
		r := stock(t, row.rope)
		table := verification.Row{Key: "rope/manila", Source: "OSHA 29 CFR 1910.184", Place: "Table N-184-16", What: row.rope, Why: "as printed, but for rounding"}
		table.Of("rating of "+row.rope, "lbf", row.rating, 1e-14*row.rating).Check(t, r.Breaking.In(units.PoundForce)/5)
		table.Of("mass of "+row.rope, "lb/100 ft", row.weight, 1e-14*row.weight).Check(t, r.Mass.In(units.PoundPerHundredFeet))
	}
	hand := stock(t, "3/4 in manila")
	verification.Row{
		Key: "rope/manila/strength of 3/4 in manila", Source: "supplier's rope table", What: "least tensile strength of 3/4 in manila", Unit: "lbf",
		Theirs: 4860, Tol: 0.0025 * 4860, Why: "4860 is no round five times 970",
	}.Check(t, hand.Breaking.In(units.PoundForce))
	verification.Row{
		Key: "rope/manila/3/4 in in metric", Source: "OSHA 29 CFR 1910.184", Place: "Table N-184-16", What: "mass of 3/4 in manila by exact conversion", Unit: "kg/m",
		Theirs: 0.2485, Tol: 8e-4, Why: "0.05 lb/100 ft, half the last printed digit",
	}.Check(t, hand.Mass.In(units.KilogramPerMetre))
}

// Source: engineering reference page (common practice). Exact.
func TestVerifyOtherRope(t *testing.T) {
	for _, row := range []struct {
		rope              string
		strength, perFoot float64
	}{
		{"1/4 in 6x19 fibre core", 5480, 0.11},
		{"5/16 in 6x19 fibre core", 8520, 0.16},
		{"3/8 in 6x19 fibre core", 12200, 0.24},
		{"1/2 in 6x19 fibre core", 21400, 0.42},
		{"3/4 in polyester and polyolefin", 8400, 0.135},
	} {
		r := stock(t, row.rope)
		page := verification.Row{Key: "rope/other", Source: "engineering reference page", What: row.rope, Why: "as printed, but for rounding"}
		page.Of("mass of "+row.rope, "lb/ft", row.perFoot, 1e-14).Check(t, r.Mass.In(units.PoundPerFoot))
		page.Of("strength of "+row.rope, "lbf", row.strength, 1e-14*row.strength).Check(t, r.Breaking.In(units.PoundForce))
	}
}

// Problem:   stretch of 40 ft of 1/4 in 7x19 galvanised under 1000 lbf.
// Source:    stretch rule of a maker's page, G·W/D² per cent, with G 1.40e-5 and others (common practice)
// Expected:  0.224 per cent, 1.075 in, by the rule's arithmetic
// Tolerance: 1e-3 in; the constants exactly
func TestVerifyStretch(t *testing.T) {
	got, err := stock(t, "1/4 in 7x19 galvanised").Stretch(1000*units.PoundForce, 40*units.Foot)
	if err != nil {
		t.Fatal(err)
	}
	rule := verification.Row{Key: "rope/stretch", Source: "stretch rule", What: "1000 lbf", Why: "the rule's arithmetic to the last digit"}
	rule.Of("40 ft of 1/4 in 7x19 galvanised", "in", 1.075, 1e-3).Check(t, got.In(units.Inch))
	for _, row := range []struct {
		name    string
		modulus units.Stress
		g       float64
	}{
		{"7x7 galvanised", purchase.StretchModulus7x7Galvanised, 1.07e-5},
		{"7x19 galvanised", purchase.StretchModulus7x19Galvanised, 1.40e-5},
		{"7x19 stainless", purchase.StretchModulus7x19Stainless, 1.62e-5},
		{"6x19 steel core", purchase.StretchModulus6x19SteelCore, 1.36e-5},
		{"1x19 galvanised", purchase.StretchModulus1x19Galvanised, 6.98e-6},
	} {
		const pounds, inches = 1000, 0.25
		ea, err := purchase.RopeEA(inches*units.Inch, row.modulus)
		want := row.g * pounds / (inches * inches) / 100
		if err != nil {
			t.Fatal(err)
		}
		rule.Of("share of the length that 1/4 in "+row.name+" grows", "", want, 1e-12*want).Because("the printed constant, but for rounding").Check(t, pounds/ea.In(units.PoundForce))
	}
	for rope, modulus := range map[string]units.Stress{
		"3/32 in 7x7 galvanised": purchase.StretchModulus7x7Galvanised, "3/8 in 7x19 galvanised": purchase.StretchModulus7x19Galvanised,
		"1/8 in 7x19 stainless": purchase.StretchModulus7x19Stainless, "1/16 in 7x7 stainless": 0, "3/4 in manila": 0,
	} {
		r := stock(t, rope)
		if want := modulus.In(units.PoundForcePerSquareInch) * math.Pow(r.Diameter.In(units.Inch), 2); !near.Rel(r.EA.In(units.PoundForce), want, 1e-12) {
			t.Errorf("%s: EA %v lbf, want %v", rope, r.EA.In(units.PoundForce), want)
		}
	}
}

// Problem:   breaking strength of fibre rope by the length round it.
// Source:    US Navy Builder 3 & 2, vol. 1 (manila 900 C², nylon 2400 C²); licence study page (nylon 2.5 times manila)
// Tolerance: exact; half a pound where C has two decimals
func TestVerifyBreakingByRule(t *testing.T) {
	for _, row := range []struct {
		name, source string
		inches       float64
		rule         units.Stress
		pounds, tol  float64
		why          string
	}{
		{"manila, 3 in", "US Navy Builder 3 & 2", 3, purchase.ManilaRule, 8100, 1e-9, "exact arithmetic, but for rounding"},
		{"nylon, 2-1/2 in", "US Navy Builder 3 & 2", 2.5, purchase.NylonRule, 15000, 1e-9, "exact arithmetic, but for rounding"},
		{"manila, 1/2 in across", "licence study page", 1.57, purchase.ManilaRule, 2218, 0.5, "half a pound: C has two decimals"},
		{"nylon by manila", "licence study page", 1.57, purchase.ManilaRule.Scale(2.5), 5546, 0.5, "half a pound: C has two decimals"},
	} {
		got, err := purchase.BreakingByRule(units.Inch.Scale(row.inches), row.rule)
		if err != nil {
			t.Fatal(err)
		}
		verification.Row{Key: "rope/rule of thumb", Source: row.source, What: "breaking strength by the length round the rope", Why: row.why}.
			Of(row.name, "lbf", row.pounds, row.tol).Check(t, got.In(units.PoundForce))
	}
}

// Stretch grows with pull and length, and two lengths in a row stretch as one.
func TestPropStretch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := purchase.RopeStock{EA: units.Force(rapid.Float64Range(1e3, 1e7).Draw(t, "ea"))}
		pull := units.Force(rapid.Float64Range(0, 1e4).Draw(t, "pull"))
		one := units.Length(rapid.Float64Range(0, 50).Draw(t, "one"))
		other := units.Length(rapid.Float64Range(0, 50).Draw(t, "other"))
		a, errA := r.Stretch(pull, one)
		b, errB := r.Stretch(pull, other)
		both, err := r.Stretch(2*pull, one+other)
		if errA != nil || errB != nil || err != nil || !near.Rel(both.In(units.Metre), 2*(a+b).In(units.Metre), 1e-12) {
			t.Fatalf("%v and %v, together under twice the pull %v: %v %v %v", a, b, both, errA, errB, err)
		}
	})
}

// What a rope by name says that its figures are from is in the table of sources.
func TestBasisIsASource(t *testing.T) {
	for _, name := range purchase.StandardRopes() {
		r, err := purchase.StandardRope(name)
		if err != nil {
			t.Fatal(err)
		}
		unresolved, keys := verification.Citation(r.Basis).Unresolved()
		if len(unresolved) > 0 || len(keys) == 0 {
			t.Errorf("%s: %q is no source", name, unresolved)
		}
	}
}
