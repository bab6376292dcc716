package arbor_test

import (
	"math"
	"reflect"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

// allFinite looks for a number that is none, in every field of a result.
func allFinite(t *testing.T, v any) {
	t.Helper()
	var walk func(reflect.Value)
	walk = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64:
			if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
				t.Fatalf("%v in %+v", f, v)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i))
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(v.Index(i))
			}
		}
	}
	walk(reflect.ValueOf(v))
}

// Whatever is asked, nothing panics, and what comes without an error is finite.
func FuzzRun(f *testing.F) {
	f.Add(6.7, 16.2, 16.8, 2.4, 1.8, 2.0, 1.2, 0.1, 12.2, 0.3, 1.8, 1.5, 13.7, 0.05, 30, 9.0, 6.0, 0.3)
	f.Add(-3.0, 900.0, 1000.0, 1.0, 1.0, 16.0, -900.0, 0.0, 0.0, -1000.0, 1000.0, -1000.0, 1000.0, 0.0001, math.MaxInt, 0.01, 1000.0, -1000.0)
	f.Add(math.NaN(), math.Inf(1), 1e300, -1e300, 5e-324, math.Inf(-1), 1e18, 1e9, 1e12, -1e12, 0.0, 1e-9, 1e15, math.Copysign(0, -1), -1, 1e-300, 1e300, 7.0)
	f.Fuzz(func(t *testing.T, lower, upper, head, length, room, ratio, made, bed, floor, reachLow, reachHigh, low, high, thick float64, count int, seat, upstage, eye float64) {
		l := func(x float64) units.Length { return units.Length(x) }
		run := arbor.Run{
			LowerStop: l(lower), UpperStop: l(upper), HeadBlock: l(head), LoftBlocks: l(head), Grid: l(head), Rail: l(floor),
			Bridges: []arbor.Bridge{{Name: "b", Floor: l(floor), Low: l(reachLow), High: l(reachHigh)}},
		}
		frame := arbor.Frame{
			Length: l(length), Room: l(room), Capacity: units.Mass(room), Tare: units.Mass(bed),
			Plate: arbor.Plate{Mass: 1, Thickness: l(thick), Every: l(thick)},
		}
		if count%2 == 0 {
			frame.Plate = arbor.Plate{}
		}
		ride := arbor.Ride{Ratio: ratio, MadeOff: l(made), Bed: l(bed)}
		stack := arbor.Stack{Pipe: []arbor.Row{{Count: 3, Thickness: l(thick)}}, Show: []arbor.Row{{Count: count, Thickness: l(thick)}}}
		section := arbor.Section{
			Seats: []arbor.Seat{{Distance: l(seat), Eye: l(eye)}, {Distance: l(length), Eye: l(floor)}},
			Edges: []arbor.Edge{{Height: l(high)}, {Upstage: l(low), Height: l(upper)}},
		}
		keep := func(v any, err error) {
			if err == nil {
				allFinite(t, v)
			}
		}
		flight, err := run.Fly(frame, ride)
		keep(flight, err)
		if err != nil {
			flight = arbor.Flight{Run: run, Frame: frame, Ride: ride, Highest: l(high)} // as a caller might make one
		}
		top, err := flight.Top(l(low))
		keep(top, err)
		trim, err := flight.Trim(l(high))
		keep(trim, err)
		trims, err := flight.Trims(l(low), l(high))
		keep(trims, err)
		window, err := flight.Window("b", l(thick), l(room))
		keep(window, err)
		access, err := flight.Access("b", stack)
		keep(access, err)
		reach, err := flight.Reach("b", l(low), stack)
		keep(reach, err)
		hides, err := flight.Hides(section, l(upstage), l(room))
		keep(hides, err)
		stops, err := run.HighestStop(frame, ride, l(low), l(high))
		keep(stops, err)
		lengths, err := run.LongestArbor(frame, ride, l(low), l(high))
		keep(lengths, err)
		compact, err := frame.Compact(arbor.Wanted{Pipe: units.Mass(made), Show: units.Mass(high)})
		keep(compact, err)
		allFinite(t, compact.Thickness(units.Mass(thick)))
		density, err := compact.Density(l(thick), l(room))
		keep(density, err)
		venue := arbor.Venue{
			Run: run, Frame: frame, Bare: units.Mass(low), Load: units.Mass(high), Low: l(low), High: l(high), MadeOff: l(made),
			Stock: arbor.Stock{{Name: "a", Mass: 20, Thickness: l(thick), Count: 90}},
		}
		options, err := venue.Compare(ratio)
		keep(options, err)
	})
}
