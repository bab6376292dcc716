package units_test

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"example.com/steelyard/units"
	"pgregory.net/rapid"
)

// Whatever Format writes, Append appends, and leaves what was there.
func TestPropAppend(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(kinds).Draw(t, "kind")
		v := k.of(rapid.OneOf(anyFinite(), rapid.Float64Range(-1e6, 1e6), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1)})).Draw(t, "value"))
		places := rapid.IntRange(-1, 21).Draw(t, "places")
		r := units.Rounding(rapid.IntRange(0, 4).Draw(t, "rounding"))
		for _, s := range []units.System{0, units.US, units.Metric} {
			for _, row := range []struct {
				text string
				got  []byte
			}{
				{s.Format(v), s.Append([]byte("kept "), v)},
				{s.FormatPlaces(v, places), s.AppendPlaces([]byte("kept "), v, places)},
				{s.FormatRounded(v, places, r), s.AppendRounded([]byte("kept "), v, places, r)},
			} {
				if string(row.got) != "kept "+row.text {
					t.Fatalf("%v: %q is appended as %q", v, row.text, row.got)
				}
			}
			if s.FormatPlaces(v, places) != s.FormatRounded(v, places, units.HalfAway) {
				t.Fatalf("%v: FormatPlaces rounds in another way than HalfAway", v)
			}
		}
	})
}

func TestFormatRounded(t *testing.T) {
	for _, row := range []struct {
		value              units.Value
		places             int
		halfAway, halfEven string
		away, toward       string
		reason             string
	}{
		{units.Mass(0.125), 2, "0.13", "0.12", "0.13", "0.12", "a tie that a float64 holds"},
		{units.Mass(0.375), 2, "0.38", "0.38", "0.38", "0.37", "a tie with the even step above"},
		{units.Mass(-2.5), 0, "-3", "-2", "-3", "-2", "a tie below zero"},
		{units.Mass(0.5), 0, "1", "0", "1", "0", "zero is even"},
		{units.Mass(-0.5), 0, "-1", "0", "-1", "0", "and has no sign"},
		{units.Mass(1.0001), 2, "1.00", "1.00", "1.01", "1.00", "a hair above a step"},
		{units.Mass(-1.0001), 2, "-1.00", "-1.00", "-1.01", "-1.00", "the same below zero"},
		{units.Mass(1.9999), 2, "2.00", "2.00", "2.00", "1.99", "a hair below one"},
		{units.Mass(1e-9), 1, "0.0", "0.0", "0.1", "0.0", "there is something"},
		{units.Mass(-1e-9), 1, "0.0", "0.0", "-0.1", "0.0", "there is something, below zero"},
		{units.Mass(1e-300), 1, "0.0", "0.0", "0.1", "0.0", "however little it is"},
		{units.Mass(0), 1, "0.0", "0.0", "0.0", "0.0", "there is nothing"},
		{units.Mass(0.1), 1, "0.1", "0.1", "0.1", "0.1", "the float64 of 0.1 lies above 0.1, and is 0.1 as typed"},
		{units.Mass(0.3), 1, "0.3", "0.3", "0.3", "0.3", "that of 0.3 lies below"},
		{units.Mass(math.Nextafter(0.3, 1)), 1, "0.3", "0.3", "0.4", "0.3", "the next one is no longer 0.3"},
		{units.Mass(math.Nextafter(0.3, 0)), 1, "0.3", "0.3", "0.3", "0.2", "nor the one before"},
		{units.Mass(2.675), 2, "2.67", "2.67", "2.68", "2.67", "lies under the tie"},
		{units.Mass(1e22), 20, "1" + strings.Repeat("0", 22) + "." + strings.Repeat("0", 20), "", "", "", "beyond a word"},
	} {
		for r, want := range []string{row.halfAway, row.halfEven, row.away, row.toward} {
			if want == "" {
				want = row.halfAway
			}
			if got := units.Metric.FormatRounded(row.value, row.places, units.Rounding(r)); got != want+" kg" {
				t.Errorf("%v to %d places, rounding %d: got %s, want %s: %s", row.value, row.places, r, got, want, row.reason)
			}
		}
	}
	// Typed in pounds, the float64 may lie on either side.
	for tenths := range 2000 {
		q := (units.Pound / 10).Scale(float64(tenths))
		typed, err := units.Parse[units.Mass](units.US.FormatPlaces(q, 1))
		if err != nil {
			t.Fatal(err)
		}
		for r := units.HalfAway; r <= units.TowardZero; r++ {
			if got, want := units.US.FormatRounded(typed, 1, r), units.US.FormatPlaces(q, 1); got != want {
				t.Errorf("%s, typed in, is shown as %s under rounding %d", want, got, r)
			}
		}
	}
}

// A rounding to one side is on that side, by less than a step, or what it shows is
// what was typed.
func TestPropFormatRounded(t *testing.T) {
	factors := map[string]*big.Rat{}
	for _, row := range unitRows {
		factors[kindLike(row.value).name+row.symbol] = define(t, row.definition)
	}
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(kinds).Draw(t, "kind")
		system := rapid.SampledFrom([]units.System{units.US, units.Metric}).Draw(t, "system")
		places := rapid.IntRange(0, 12).Draw(t, "places")
		v := k.of(rapid.Float64Range(-1e6, 1e6).Draw(t, "value"))
		exact := new(big.Rat).SetFloat64(math.Abs(number(v)))
		exact.Quo(exact, factors[k.name+system.Symbol(v)])
		for _, row := range []struct {
			r    units.Rounding
			side int // of the shown size beside the exact one
		}{{units.AwayFromZero, 1}, {units.TowardZero, -1}} {
			text := system.FormatRounded(v, places, row.r)
			if back, err := k.parse(text); err == nil && back == v {
				continue
			}
			digits, _, _ := strings.Cut(strings.TrimPrefix(text, "-"), " ")
			off := new(big.Rat).Sub(rat2(digits), exact)
			if off.Sign() != row.side || off.Abs(off).Cmp(rat10(-places)) >= 0 {
				t.Fatalf("%v is shown as %s under rounding %d", v, text, row.r)
			}
		}
	})
}

func rat2(digits string) *big.Rat {
	r, _ := new(big.Rat).SetString(digits)
	return r
}

// holder has the methods of the quantity that it embeds, so that Go takes it for a
// Value.
type holder struct{ units.Length }

// Go gives a pointer the methods of what it points to. A nil one must not take the
// program down.
func TestFormatPointer(t *testing.T) {
	trim := 24*units.Foot + 6.5*units.Inch
	var noLength *units.Length
	var noInertia *units.Inertia
	pointer := &trim
	for _, row := range []struct {
		name   string
		value  units.Value
		want   string
		places string
		symbol string
	}{
		{"quantity", trim, `24' 6 1/2"`, "24.54 ft", "ft"},
		{"pointer", pointer, `24' 6 1/2"`, "24.54 ft", "ft"},
		{"nil pointer", noLength, "", "", ""},
		{"nil pointer of another type", noInertia, "", "", ""},
		{"nil", nil, "", "", ""},
		{"struct", holder{trim}, "", "", ""},
		{"pointer to a struct", &holder{trim}, "", "", ""},
		{"nil pointer to a struct", (*holder)(nil), "", "", ""},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := units.US.Format(row.value); got != row.want {
				t.Errorf("Format: %q, want %q", got, row.want)
			}
			if got := units.US.FormatPlaces(row.value, 2); got != row.places {
				t.Errorf("FormatPlaces: %q, want %q", got, row.places)
			}
			if got := units.US.Symbol(row.value); got != row.symbol {
				t.Errorf("Symbol: %q, want %q", got, row.symbol)
			}
			if got := units.System(0).Format(row.value); (got == "") != (row.want == "") {
				t.Errorf("no system: %q", got)
			}
			if _, err := units.FormatIn(row.value, "ft"); (err == nil) != (row.want != "") {
				t.Errorf("FormatIn: %v", err)
			}
		})
	}
}

// Every quantity is known to the printers, by value and by pointer.
func TestFormatKnowsEveryQuantity(t *testing.T) {
	for _, k := range kinds {
		if got, want := units.System(0).Format(k.of(12.5)), k.of(12.5).String(); got != want {
			t.Errorf("%s: %q, want %q", k.name, got, want)
		}
	}
}
