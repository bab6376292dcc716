package arbor_test

import (
	"encoding/json"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
	"github.com/google/go-cmp/cmp"
)

func TestRunJSON(t *testing.T) {
	// What stands around the run is left out of its text where it is not given.
	text, err := json.Marshal(arbor.Run{UpperStop: 9})
	if err != nil || string(text) != `{"upper_stop":"9 m"}` {
		t.Errorf("%s, %v", text, err)
	}
	var run arbor.Run
	err = json.Unmarshal([]byte(`{"lower_stop": "22 ft", "upper_stop": "53 ft", "head_block": "55 ft", "loft_blocks": "54 ft", "grid": "56 ft", "rail": "20 ft",
		"bridges": [{"name": "upper bridge", "floor": "40 ft", "low": "1 ft", "high": "6 ft"}, {"name": "rail", "floor": "21 ft", "high": "6 ft"}]}`), &run)
	near := cmp.Comparer(func(a, b units.Length) bool { return a.Within(b, 1e-12) })
	if diff := cmp.Diff(overRail, run, near); err != nil || diff != "" {
		t.Errorf("%v\n%s", err, diff)
	}
	type all struct {
		Flight  arbor.Flight
		Stops   arbor.Stops
		Lengths arbor.Lengths
		Access  arbor.Access
		Section arbor.Section
		Venue   arbor.Venue
	}
	f := mustFly(t, overRail, carriage, doubled)
	in := all{Flight: f, Section: auditorium, Venue: wall}
	if in.Access, err = f.Access("rail", thirty); err != nil {
		t.Fatal(err)
	}
	if in.Stops, err = overRail.HighestStop(carriage, doubled, 1, 2); err != nil {
		t.Fatal(err)
	}
	if in.Lengths, err = overRail.LongestArbor(carriage, doubled, 1, 2); err != nil {
		t.Fatal(err)
	}
	var out all
	if text, err = json.Marshal(in); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(in, out); diff != "" {
		t.Errorf("-in +out\n%s\n%s", diff, text)
	}
}
