package arbor_test

import (
	"errors"
	"math"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

// FuzzFill takes any numbers at all: nothing panics, no NaN or infinity comes
// out, every refusal is typed, and what is filled keeps to its limits.
func FuzzFill(f *testing.F) {
	lb, in := float64(units.Pound), float64(units.Inch)
	// An ordinary arbor with plates.
	f.Add(94*lb, 561*lb, 23.5*lb, 1*in, 60, 11*lb, 0.5*in, 24, 84*in, 2000*lb, 3*lb, 0.125*in, 24*in, uint8(0))
	// Tare heavier than the pipe, one side forbidden, no plates.
	f.Add(-11*lb, 58*lb, 23.5*lb, 1*in, 60, 11*lb, 0.5*in, 24, 84*in, 2000*lb, 0.0, 0.0, 0.0, uint8(1))
	// The largest and smallest that are taken, where sums come nearest to overflow.
	f.Add(50_000.0, 50_000.0, 1000.0, 1.0, 1_000_000, 0.001, 0.0001, 1_000_000, 1000.0, 50_000.0, 1000.0, 1.0, 0.001, uint8(2))
	f.Add(-50_000.0, 0.0, 0.001, 1.0, 1_000_000, 1000.0, 0.0001, 1_000_000, 1000.0, 50_000.0, 0.001, 0.0001, 0.001, uint8(2))
	// What cannot be used.
	f.Add(math.NaN(), math.Inf(1), -1.0, 0.0, -1, math.MaxFloat64, 1e-320, 0, math.Inf(-1), 0.0, 1.0, 0.0, 0.0, uint8(77))
	f.Fuzz(func(t *testing.T, pipe, show, m1, t1 float64, c1 int, m2, t2 float64, c2 int, room, capacity, pm, pt, every float64, side uint8) {
		frame := arbor.Frame{
			Length: 1000, Room: units.Length(room), Capacity: units.Mass(capacity),
			Plate: arbor.Plate{Mass: units.Mass(pm), Thickness: units.Length(pt), Every: units.Length(every)},
		}
		stock := arbor.Stock{
			{Name: "one", Mass: units.Mass(m1), Thickness: units.Length(t1), Count: c1},
			{Name: "two", Mass: units.Mass(m2), Thickness: units.Length(t2), Count: c2},
		}
		w := arbor.Wanted{Pipe: units.Mass(pipe), Show: units.Mass(show)}
		for _, lifted := range []bool{false, true} {
			fill := frame.Fill
			if lifted {
				fill = frame.Ideal
			}
			s, err := fill(w, stock, arbor.Side(side))
			if err != nil {
				var fe *units.FieldError
				var none *arbor.NoStackError
				if !errors.As(err, &fe) && !errors.As(err, &none) {
					t.Fatalf("untyped error %v", err)
				}
				if err.Error() == "" || s.Pieces != 0 {
					t.Fatalf("%q with %+v", err, s)
				}
				continue
			}
			for _, q := range []float64{float64(s.PipeMass), float64(s.ShowMass), float64(s.PlateMass), float64(s.Mass), float64(s.Height), float64(s.Error)} {
				if !finite(q) {
					t.Fatalf("%+v", s)
				}
			}
			if s.PipeMass < 0 || s.ShowMass < 0 || s.PlateMass < 0 || s.Height < 0 || s.Pieces < 0 || s.Plates < 0 || s.Call() == "" {
				t.Fatalf("negative: %+v", s)
			}
			if arbor.Side(side) == arbor.NeverArborHeavy && s.Error > 0 || arbor.Side(side) == arbor.NeverBattenHeavy && s.Error < 0 {
				t.Fatalf("on the forbidden side: %+v", s)
			}
			// Limits enter the ledger rounded, by half a nanogram or nanometre at most.
			if !lifted && (s.Mass-frame.Capacity > 1e-12 || s.Height-frame.Room > 1e-9 || s.Used("one") > c1 || s.Used("two") > c2) {
				t.Fatalf("past its limits: %+v", s)
			}
		}
		// The same numbers as a lock plate, as pieces that are in, as a limit and as a ratio.
		frame.Lock = arbor.Lock{Mass: units.Mass(pm), Thickness: units.Length(pt)}
		typed := func(err error) {
			var fe *units.FieldError
			var none *arbor.NoStackError
			if err != nil && (!errors.As(err, &fe) && !errors.As(err, &none) || err.Error() == "") {
				t.Fatalf("untyped error %v", err)
			}
		}
		if s, err := frame.FillWithin(c1, w, stock, arbor.Side(side)); err == nil {
			if !finite(float64(s.Gap)) || s.Gap < 0 || s.Proven && s.Gap != 0 || s.Gap > units.Abs(s.Error) {
				t.Fatalf("gap: %+v", s)
			}
			if e, err := s.Referred(every); err == nil && !finite(float64(e)) {
				t.Fatalf("%v by %v is %v", s.Error, every, e)
			}
		} else {
			typed(err)
		}
		today := arbor.Stack{
			Pipe: []arbor.Row{{Name: "two", Count: c2, Mass: units.Mass(m2), Thickness: units.Length(t2)}},
			Show: []arbor.Row{{Name: "one", Count: c1, Mass: units.Mass(m1), Thickness: units.Length(t1)}, {Name: "three", Count: c2, Mass: units.Mass(m1), Thickness: units.Length(t2)}},
		}
		if r, err := frame.Refill(today, w, stock, arbor.Side(side), units.Mass(pm)); err != nil {
			typed(err)
		} else if r.Moved < 0 || r.Call() == "" || r.Stack.Mass-frame.Capacity > 1e-12 || r.Stack.Height-frame.Room > 1e-9 || r.Stack.Used("one") > 2*c1 || !finite(float64(r.Stack.Error)) {
			t.Fatalf("refilled past its limits: %+v", r)
		}
		if short, err := frame.Shortfall(w, stock, arbor.Side(side)); err != nil {
			typed(err)
		} else if short.Heaviest.Mass-frame.Capacity > 1e-12 || short.Room < 0 || short.Capacity < 0 {
			t.Fatalf("%+v", short)
		}
		layers, err := today.Layers(frame)
		typed(err)
		for i, l := range layers {
			if l.Count < 1 || !(l.Top > l.Bottom) || i > 0 && l.Bottom != layers[i-1].Top {
				t.Fatalf("layer %d: %+v", i, l)
			}
		}
	})
}
