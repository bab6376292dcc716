package load_test

import (
	"errors"
	"math"
	"reflect"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// FuzzRig: whatever the numbers, Rig refuses or every figure that comes out is finite,
// and tensions and gaps are zero or more.
func FuzzRig(f *testing.F) {
	f.Add(12.0, 0.05, 0.003, 7850.0, 2e11, 0.0, 0.5, 2.5, uint8(5), 80.0, 1.0, 9.0, 0.5, 4.0, uint8(1), 3.0, 30.0, 6.0)
	f.Add(10.0, 0.05, 0.025, 7850.0, 2e11, 5.0, 5.0, 0.0, uint8(1), 80.0, 5.0, 5.0, 0.0, 0.0, uint8(0), -1.0, 1.0, 5.0)
	f.Add(1000.0, 1e-9, 5e-10, 1e12, 1e12, 1e12, 0.0, 0.01, uint8(64), 1e12, 0.2, 0.2, 1e12, 1e12, uint8(2), 1e12, 1e12, 0.3)
	f.Add(1e-9, 1e12, 1e-9, 1e-9, 1e-9, 0.0, 5e-10, 1.0, uint8(1), 1e-9, 0.0, 1e-9, 0.0, 1e-9, uint8(1), 1e-9, 1e12, 0.0)
	f.Add(math.Inf(1), math.NaN(), -1.0, 0.0, 1e300, math.Copysign(0, -1), math.NaN(), 1e308, uint8(255), -1.0, 9.0, 1.0, -1.0, 0.0, uint8(9), math.Inf(-1), 0.0, 1.0)
	f.Fuzz(func(t *testing.T, length, outer, wall, density, modulus, fittings, first, spacing float64, n uint8,
		mass, from, to, below, height float64, deck uint8, trim, mass2, at2 float64,
	) {
		b := load.Batten{
			Length:   units.Length(length),
			Pipe:     load.Tube{Outer: units.Length(outer), Wall: units.Length(wall), Density: units.Density(density), Modulus: units.Stress(modulus)},
			Fittings: units.Mass(fittings),
			Lines:    load.Spaced(units.Length(first), units.Length(spacing), int(n)),
		}
		h := load.Hang{
			{Name: "one", Mass: units.Mass(mass), From: units.Length(from), To: units.Length(to), Below: units.Length(below), Height: units.Length(height), OnDeck: load.OnDeck(deck)},
			{Name: "two", Mass: units.Mass(mass2), From: units.Length(at2), To: units.Length(at2)},
		}
		r, err := b.Rig(h)
		if err != nil {
			_ = err.Error()
			if r != nil {
				t.Fatal("rigged in spite of", err)
			}
			return
		}
		for _, v := range []float64{float64(r.Bare()), float64(r.Hung()), float64(r.Lowest()), float64(r.Carried(units.Length(trim))), float64(r.CarriedAbove(units.Length(trim))), float64(r.Centre(units.Length(trim)))} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%v from %+v %+v", v, b, h)
			}
		}
		turns := r.Turns(units.Length(trim), units.Length(height))
		finite(t, reflect.ValueOf(turns))
		_ = r.Tips(units.Length(trim), units.Length(height))
		for _, at := range append(append(r.Breaks(), turns...), units.Length(trim)) {
			s, err := r.Share(at)
			var tip *load.TipError
			if errors.As(err, &tip) {
				finite(t, reflect.ValueOf(*tip))
				if tips := r.Tips(at, at); tips == nil || tips.Error() != err.Error() {
					t.Fatalf("%v, yet asked whether it tips: %v", err, tips)
				}
				continue
			}
			if err != nil {
				if at == units.Length(trim) && !(math.Abs(trim) <= 1e12) {
					continue
				}
				t.Fatal(err)
			}
			finite(t, reflect.ValueOf(s))
			var sum units.Force
			for _, l := range s.Lines {
				if l.Tension < 0 || l.Gap < 0 {
					t.Fatalf("%+v of %+v %+v", l, b, h)
				}
				sum += l.Tension
			}
			if d := units.Abs(sum - s.Weight); d > s.Weight.Scale(1e-6) {
				t.Fatalf("tensions add up to %v of %v: %+v %+v", sum, s.Weight, b, h)
			}
		}
	})
}

// FuzzQuestions: lines that stretch and are off, an item that leans, and every question asked of what Rig takes:
// an error or finite figures, and tensions that hold the weight.
func FuzzQuestions(f *testing.F) {
	f.Add(12.0, 0.05, 2e11, uint8(5), 2e6, 30.0, 0.01, -0.005, 0.5, 80.0, 1.0, 9.0, 60.0, 2.0, 7.0, 2000.0, 1e8, uint8(2), 5.0)
	f.Add(6.0, 0.05, 2e11, uint8(3), 0.0, 0.0, 0.0, 0.05, -1.0, 1e-3, 0.0, 6.0, 0.0, 0.0, 6.0, 1e3, 0.0, uint8(1), 0.0)
	f.Add(1000.0, 1e-9, 1e12, uint8(24), 1e-9, 1e4, 10.0, -10.0, 1.0, 1e12, 0.2, 0.2, 1e12, 1e12, -1.0, 1e12, 1e12, uint8(23), 1e12)
	f.Add(2.0, 2.0, 1e-9, uint8(2), 1e12, 1e-9, 1e-9, 0.0, 0.0, 1.0, 1.0, 1.0, 5.0, 0.0, 2.0, 1e-9, 1e-9, uint8(0), 1.0)
	f.Add(9.0, 0.06, 2e11, uint8(9), 1e6, 40.0, 0.002, 0.1, -0.3, 300.0, 2.0, 2.1, 10.0, 8.0, 9.0, 1e4, 2e8, uint8(8), 3.0)
	f.Fuzz(func(t *testing.T, length, outer, modulus float64, n uint8, ea, path, long, step, taper, mass, from, to,
		rover, roverFrom, roverTo, lineLimit, stressLimit float64, line uint8, trim float64,
	) {
		if n > 24 { // sixty springy lines on a wire of a pipe take the better part of a second
			t.Skip("bounded: size is not what is looked for here")
		}
		b := load.Batten{
			Length: units.Length(length),
			Pipe:   load.Tube{Outer: units.Length(outer), Wall: units.Length(outer / 10), Density: load.SteelDensity, Modulus: units.Stress(modulus)},
			Lines:  load.Spaced(0, units.Length(length/max(1, float64(n)-1)), int(n)),
		}
		for i := range b.Lines {
			if i%3 != 1 {
				b.Lines[i].EA, b.Lines[i].Path = units.Force(ea), units.Length(path+float64(i))
			}
			b.Lines[i].Long = units.Length(long + step*float64(i%4))
		}
		r, err := b.Rig(load.Hang{{Mass: units.Mass(mass), From: units.Length(from), To: units.Length(to), Taper: taper}})
		if err != nil {
			_ = err.Error()
			return
		}
		at, limits := units.Length(trim), load.Limits{Line: units.Force(lineLimit), Stress: units.Stress(stressLimit)}
		check := func(v any, err error) bool {
			if err == nil {
				finite(t, reflect.ValueOf(v))
			} else {
				_ = err.Error()
			}
			return err == nil
		}
		s, err := r.Share(at)
		if check(s, err) {
			var sum units.Force
			for _, l := range s.Lines {
				if l.Tension < 0 || l.Gap < 0 || float64(l.Tension)*float64(l.Gap) != 0 {
					t.Fatalf("%+v of %+v", l, b)
				}
				sum += l.Tension
			}
			if d := units.Abs(sum - s.Weight); d > s.Weight.Scale(1e-6) {
				t.Fatalf("tensions add up to %v of %v: %+v", sum, s.Weight, b)
			}
			check(s.Use(limits), nil)
		}
		bend, err := r.Deflection(at)
		check(bend, err)
		envelope, err := r.Envelope(at, units.Mass(rover), units.Length(roverFrom), units.Length(roverTo))
		if check(envelope, err) {
			for _, l := range envelope.Lines {
				if l.Least.Tension < 0 || l.Most.Tension < l.Least.Tension {
					t.Fatalf("%+v of %+v", l, b)
				}
			}
		}
		allowed, err := r.PointAllowed(at, units.Length(roverFrom), units.Length(roverTo), limits)
		if check(allowed, err) && allowed.Mass < 0 {
			t.Fatalf("%+v", allowed)
		}
		tolerance, err := r.TrimTolerance(at, int(line), limits)
		if check(tolerance, err) && (tolerance.Short.By < 0 || tolerance.Long.By < 0) {
			t.Fatalf("%+v", tolerance)
		}
	})
}

// finite walks over every number in a result.
func finite(t *testing.T, v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		if math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0) {
			t.Fatalf("%v in a result", v)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, v.Field(i))
		}
	case reflect.Slice:
		for i := range v.Len() {
			finite(t, v.Index(i))
		}
	}
}
