package arbor_test

import (
	"errors"
	"math"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Worked by hand for 8 ft of arbor under a stop at 53 ft, trims from 5 to 45 ft in
// double purchase. Made off anew the arbor flies 20 ft: the lower stop may be at
// 25 ft. Made off at 4 ft it must fly 20.5 ft to come to high trim: 24.5 ft.
func TestHighestStop(t *testing.T) {
	got, err := overRail.HighestStop(carriage, doubled, 5*units.Foot, 45*units.Foot)
	want := arbor.Stops{
		Anew:  arbor.Stop{LowerStop: feet(25 * 48), Freed: feet(3 * 48), MadeOff: 5 * units.Foot},
		Today: arbor.Stop{LowerStop: feet(24.5 * 48), Freed: feet(2.5 * 48), MadeOff: 4 * units.Foot},
	}
	if diff := cmp.Diff(want, got); err != nil || diff != "" {
		t.Errorf("%v\n%s", err, diff)
	}
	// Low trim at 3 ft: made off at 4 ft the batten is 1 ft short, wherever the lower stop is.
	got, err = overRail.HighestStop(carriage, doubled, 3*units.Foot, 60*units.Foot)
	want = arbor.Stops{
		Anew:  arbor.Stop{LowerStop: feet(16.5 * 48), Freed: feet(-5.5 * 48), MadeOff: 3 * units.Foot},
		Today: arbor.Stop{LowerStop: feet(17 * 48), Freed: feet(-5 * 48), MadeOff: 4 * units.Foot, Short: feet(48)},
	}
	if diff := cmp.Diff(want, got); err != nil || diff != "" {
		t.Errorf("%v\n%s", err, diff)
	}
	// Both trims below what it reaches: the arbor need not leave its upper stop.
	got, err = overRail.HighestStop(carriage, doubled, 1*units.Foot, 2*units.Foot)
	if err != nil || got.Today.LowerStop != feet(45*48) || got.Today.Short != feet(3*48) {
		t.Errorf("%+v, %v", got.Today, err)
	}
}

// The same wall: over a lower stop at 22 ft there are 31 ft, less 20 or 20.5 ft of
// travel.
func TestLongestArbor(t *testing.T) {
	got, err := overRail.LongestArbor(carriage, doubled, 5*units.Foot, 45*units.Foot)
	want := arbor.Lengths{
		Anew:  arbor.Longest{Length: feet(11 * 48), Room: feet(9 * 48), Longer: feet(3 * 48), MadeOff: 5 * units.Foot},
		Today: arbor.Longest{Length: feet(10.5 * 48), Room: feet(8.5 * 48), Longer: feet(2.5 * 48), MadeOff: 4 * units.Foot},
	}
	if diff := cmp.Diff(want, got); err != nil || diff != "" {
		t.Errorf("%v\n%s", err, diff)
	}
	if f := got.Anew.Of(carriage); f.Length != feet(11*48) || f.Room != feet(9*48) || f.Capacity != carriage.Capacity || f.Validate() != nil {
		t.Errorf("%+v", f)
	}
	// In single purchase the same trims need 40 ft of the 31.
	none, err := overRail.LongestArbor(carriage, arbor.Ride{Ratio: 1, MadeOff: 4 * units.Foot}, 5*units.Foot, 45*units.Foot)
	if err != nil || none.Anew.Length != feet(-9*48) || none.Anew.Of(carriage).Validate() == nil {
		t.Errorf("%+v, %v", none, err)
	}
}

// inverse draws what the inverse questions are asked of.
func inverse(t *rapid.T) (run arbor.Run, f arbor.Frame, ride arbor.Ride, low, high units.Length) {
	run, f, ride = randomFlight(t)
	low = length(t, "low", 0, 6000)
	return run, f, ride, low, low + length(t, "wanted", 0, 20000)
}

// With the lower stop that is found, the trims are just reached, and from a
// nanometre higher they are not: the inverse of the inverse is the question.
func TestHighestStopIsTheInverseOfTrims(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, frame, ride, low, high := inverse(t)
		stops, err := run.HighestStop(frame, ride, low, high)
		if err != nil {
			t.Fatal(err)
		}
		for _, stop := range []arbor.Stop{stops.Anew, stops.Today} {
			run, ride := run, ride
			run.LowerStop, ride.MadeOff = stop.LowerStop, stop.MadeOff
			trims, err := mustFlyRapid(t, run, frame, ride).Trims(low, high)
			// Less than a nanometre of the arbor is less than the ratio of them at the batten.
			if err != nil || trims.Above < 0 || high >= stop.MadeOff && float64(trims.Above) > (ride.Ratio+1)*nanometre {
				t.Fatalf("%+v over %+v: %v", trims, stop, err)
			}
			if got := max(0, -trims.Below); got != stop.Short {
				t.Fatalf("%v short at low trim, want %v", got, stop.Short)
			}
			if high <= stop.MadeOff {
				continue
			}
			// A nanometre of the arbor is at least half of one at the batten here.
			run.LowerStop += 3 * nanometre
			if err := run.ValidateFor(frame); err != nil {
				continue // it would have to fly less than that
			}
			if trims, err = mustFlyRapid(t, run, frame, ride).Trims(low, high); err != nil || trims.Above >= 0 {
				t.Fatalf("a higher stop reaches too: %+v, %v", trims, err)
			}
		}
	})
}

// The longest arbor over the highest stop of an arbor is that arbor, and the
// highest stop of the longest arbor over a stop is that stop.
func TestInverseOfInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, frame, ride, low, high := inverse(t)
		stops, err := run.HighestStop(frame, ride, low, high)
		if err != nil {
			t.Fatal(err)
		}
		for name, stop := range map[string]arbor.Stop{"anew": stops.Anew, "today": stops.Today} {
			over := run
			over.LowerStop = stop.LowerStop
			lengths, err := over.LongestArbor(frame, ride, low, high)
			if err != nil {
				t.Fatal(err)
			}
			longest := lengths.Anew
			if name == "today" {
				longest = lengths.Today
			}
			// Lengths are whole nanometres, drawn shorter or not: to the last of them the same.
			if math.Abs(float64(longest.Longer)) > 0.5*nanometre || math.Abs(float64(longest.Length-frame.Length)) > nanometre {
				t.Fatalf("%s: %+v of %v", name, longest, frame.Length)
			}
		}
		lengths, err := run.LongestArbor(frame, ride, low, high)
		if err != nil {
			t.Fatal(err)
		}
		if f := lengths.Anew.Of(frame); f.Validate() == nil {
			again, err := run.HighestStop(f, ride, low, high)
			if err != nil || math.Abs(float64(again.Anew.Freed)) > 0.5*nanometre {
				t.Fatalf("%+v over %v: %v", again.Anew, run.LowerStop, err)
			}
		}
	})
}

func TestInverseRefuses(t *testing.T) {
	_, err := (arbor.Run{UpperStop: -3}).HighestStop(arbor.Frame{}, arbor.Ride{Ratio: -1}, 9, 8)
	want := []string{"upper_stop", "frame.length", "frame.room", "frame.capacity", "ride.ratio", "low_trim"}
	if diff := cmp.Diff(want, fields(t, err)); diff != "" {
		t.Errorf("all at once\n%s", diff)
	}
	_, again := (arbor.Run{UpperStop: -3}).LongestArbor(arbor.Frame{}, arbor.Ride{Ratio: -1}, 9, 8)
	if again == nil || again.Error() != err.Error() {
		t.Errorf("%v, and for the same %v", err, again)
	}
	_, err = overRail.LongestArbor(carriage, arbor.Ride{Ratio: 2, Bed: 3 * units.Foot}, 1, units.Length(math.Inf(1)))
	if diff := cmp.Diff([]string{"ride.bed", "high_trim"}, fields(t, err)); diff != "" || !errors.Is(err, units.ErrNotFinite) {
		t.Errorf("%v\n%s", err, diff)
	}
	// That the arbor does not fit over the run's own stop is no fault here.
	if _, err := (arbor.Run{LowerStop: 50 * units.Foot, UpperStop: 53 * units.Foot}).HighestStop(carriage, doubled, 1, 2); err != nil {
		t.Error(err)
	}
}
