package load_test

import (
	"errors"
	"math"
	"testing"

	"example.com/steelyard/internal/verification"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// A simple span of L = 6 m under its own weight: 5wL⁴/384EI (any handbook). On lines that stretch alike it comes down
// with them, and a line that is too long at one end tilts it.
func TestVerifyDeflection(t *testing.T) {
	ei := pipe.Modulus.In(units.Pascal) * pipe.SecondMoment().In(units.MetreToTheFourth)
	b := load.Batten{Length: 6, Pipe: pipe, Lines: load.Spaced(0, 6, 2)}
	weight := b.BareMass().Weight(units.StandardGravity).In(units.Newton)
	sag := 5 * weight * 216 / (384 * ei)
	ask := func(b load.Batten) load.Deflection {
		r, err := b.Rig(nil)
		if err != nil {
			t.Fatal(err)
		}
		d, err := r.Deflection(3)
		if err != nil {
			t.Fatal(err)
		}
		if d.Trim != 3 {
			t.Errorf("trim %v", d.Trim)
		}
		return d
	}
	plain := ask(b)
	row := verification.Row{Key: "batten/simple span", Source: "beam formulas from memory", Place: "5wL⁴/384EI and PL³/48EI", What: "simple span of 6 m under its own weight", Why: "two roads to one number, but for rounding"}
	row.Of("sag", "m", sag, 1e-12).Check(t, plain.Lowest.Below.In(units.Metre))
	row.Of("its place", "m", 3, 1e-6).Because("the place of a flat maximum, by search").Check(t, plain.Lowest.At.In(units.Metre))
	near(t, "highest", plain.Highest.Below.In(units.Metre), 0, 1e-15)

	ropes := b
	ropes.Lines = load.Spaced(0, 6, 2)
	for i := range ropes.Lines {
		ropes.Lines[i].EA, ropes.Lines[i].Path = 1e6*units.Newton, 40
	}
	stretch := weight / 2 * 40 / 1e6
	near(t, "lowest on ropes", ask(ropes).Lowest.Below.In(units.Metre), sag+stretch, 1e-12)
	near(t, "highest on ropes", ask(ropes).Highest.Below.In(units.Metre), stretch, 1e-12)

	tilted := b
	tilted.Lines = load.Spaced(0, 6, 2)
	tilted.Lines[1].Long = 1
	near(t, "lowest when tilted", ask(tilted).Lowest.Below.In(units.Metre), 1, 1e-9)
	near(t, "its place", ask(tilted).Lowest.At.In(units.Metre), 6, 1e-9)
}

func TestDeflectionFaults(t *testing.T) {
	r, err := fiveLines().Rig(load.Hang{{Mass: 4000, From: 0, To: 0}})
	if err != nil {
		t.Fatal(err)
	}
	var tip *load.TipError
	if _, err := r.Deflection(1); !errors.As(err, &tip) {
		t.Errorf("%v, want that it tips", err)
	}
	var fault *units.FieldError
	if _, err := r.Deflection(units.Length(math.NaN())); !errors.As(err, &fault) || fault.Field != "trim" {
		t.Errorf("%v", err)
	}
}

// A point of 10 kg in the middle of a simple span gives PL³/48EI there, and the ropes' stretch on top: the beam problem of
// the impact tests the other way about.
func TestVerifyGive(t *testing.T) {
	ei := pipe.Modulus.In(units.Pascal) * pipe.SecondMoment().In(units.MetreToTheFourth)
	b := load.Batten{Length: 6, Pipe: pipe, Lines: load.Spaced(0, 6, 2)}
	for i := range b.Lines {
		b.Lines[i].EA, b.Lines[i].Path = 1e6*units.Newton, 40
	}
	r, err := b.Rig(load.Hang{{Mass: 50, From: 1, To: 4}})
	if err != nil {
		t.Fatal(err)
	}
	pull := (10 * units.Kilogram).Weight(units.StandardGravity).In(units.Newton)
	give, err := r.Give(3, 10, 3)
	if err != nil {
		t.Fatal(err)
	}
	row := verification.Row{Key: "batten/give", Source: "beam formulas from memory", Place: "PL³/48EI, and PL/EA of the ropes", What: "how a place gives", Why: "two roads to one number, but for rounding"}
	row.Of("10 kg in the middle", "m", pull*216/(48*ei)+pull/2*40/1e6, 1e-12).Check(t, give.In(units.Metre))
	if give, err = r.Give(3, 0, 3); err != nil || give != 0 {
		t.Errorf("under nothing %v %v", give, err)
	}
	// At a tip beyond two lines: Pa²(L+a)/3EI (beam diagrams).
	tip := load.Batten{Length: 6, Pipe: pipe, Lines: load.Spaced(0, 5, 2)}
	r, err = tip.Rig(nil)
	if err != nil {
		t.Fatal(err)
	}
	if give, err = r.Give(3, 1, 6); err != nil {
		t.Fatal(err)
	}
	row.From("beam diagrams", "Pa²(L+a)/3EI").Of("1 kg at the tip", "m", pull/10*6/(3*ei), 1e-12).Check(t, give.In(units.Metre))
	var tips *load.TipError
	if _, err := r.Give(3, 1e4, 6); !errors.As(err, &tips) {
		t.Errorf("%v, want that it tips", err)
	}
	for field, ask := range map[string]func() error{
		"trim": func() error { _, err := r.Give(units.Length(math.NaN()), 1, 1); return err },
		"mass": func() error { _, err := r.Give(1, -1, 1); return err },
		"at":   func() error { _, err := r.Give(1, 1, 7); return err },
	} {
		var fault *units.FieldError
		if err := ask(); !errors.As(err, &fault) || fault.Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
}
