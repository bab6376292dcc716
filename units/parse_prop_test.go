package units_test

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"example.com/steelyard/units"
	"pgregory.net/rapid"
)

// anyFinite draws from all float64 that are numbers, by their bits, so that the
// smallest and the largest come as often as those between.
func anyFinite() *rapid.Generator[float64] {
	return rapid.Custom(func(t *rapid.T) float64 {
		for {
			f := math.Float64frombits(rapid.Uint64().Draw(t, "bits"))
			if !math.IsNaN(f) && !math.IsInf(f, 0) {
				return f
			}
		}
	})
}

// The text that String writes gives the same bits back, for every quantity: the
// extremes first, then any.
func TestPropParseString(t *testing.T) {
	check := func(t fataler, k kind, f float64) {
		v := k.of(f)
		back, err := k.parse(v.String())
		if err != nil || math.Float64bits(number(back)) != math.Float64bits(f) {
			t.Fatalf("%s: %v comes back as %v, %v", k.name, v, back, err)
		}
	}
	for _, k := range kinds {
		for _, f := range []float64{
			0, math.Copysign(0, -1), math.SmallestNonzeroFloat64, -math.SmallestNonzeroFloat64, math.MaxFloat64, -math.MaxFloat64,
			math.Nextafter(1e-6, 0), 1e-6, math.Nextafter(1e21, 0), 1e21, 0x1p-1022, math.Nextafter(0x1p-1022, 0), 1.0 / 3,
		} {
			check(t, k, f)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		check(t, rapid.SampledFrom(kinds).Draw(t, "kind"), anyFinite().Draw(t, "value"))
	})
}

// What a person writes comes back as it was written: within twelve significant
// digits, in the unit that it was written in.
func TestPropTextValueText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		row := rapid.SampledFrom(unitRows).Draw(t, "unit")
		digits := rapid.StringMatching(`[1-9][0-9]{0,11}`).Draw(t, "digits")
		point := rapid.IntRange(0, len(digits)-1).Draw(t, "decimals")
		text := digits[:len(digits)-point] + "." + digits[len(digits)-point:]
		value, err := parseLike(row.value, text+" "+row.symbol)
		if err != nil {
			t.Fatal(err)
		}
		back := strconv.FormatFloat(number(value)/number(row.value), 'f', point, 64)
		if strings.TrimSuffix(text, ".") != back {
			t.Fatalf("%s %s comes back as %s", text, row.symbol, back)
		}
	})
}

// Texts of the plain grammar against exact arithmetic.
func TestPropParseRoundsOnce(t *testing.T) {
	o := newOracle(t)
	number := rapid.OneOf(
		rapid.StringMatching(`[0-9]{1,20}(\.[0-9]{0,20})?`),
		rapid.StringMatching(`[0-9]{1,20}(\.[0-9]{1,5})?[eE][+-]?[0-9]{1,2}`),
		rapid.StringMatching(`\.[0-9]{1,20}`),
		rapid.StringMatching(`[0-9]{1,5}/[1-9][0-9]{0,4}`),
		rapid.StringMatching(`[0-9]{1,5}( {1,2}|-)[0-9]{1,5}/[1-9][0-9]{0,4}`),
	)
	rapid.Check(t, func(t *rapid.T) {
		var text string
		if rapid.Bool().Draw(t, "feet and inches") {
			text = rapid.StringMatching(`[+-]?[0-9]{1,6}(' ?-? ?| ft ?| feet )([0-9]|1[01])(\.[0-9]{1,4}|[ -][0-9]/(16|32|8|3))?( ?"| ?in)`).Draw(t, "text")
			text = strings.ReplaceAll(text, "feet", "ft")
		} else {
			sign := rapid.SampledFrom([]string{"", "", "-", "+"}).Draw(t, "sign")
			gap := rapid.SampledFrom([]string{"", " ", "  "}).Draw(t, "gap")
			text = sign + number.Draw(t, "number") + gap + rapid.SampledFrom(unitRows).Draw(t, "unit").symbol
		}
		if _, _, _, ok := o.read(text); !ok {
			t.Skip("twelve inches or more")
		}
		checkParse(t, o, text)
	})
}

// Feet and inches for a reader are the value to the nearest sixteenth, so never
// more than a thirty-second off, and they can be typed in again.
func TestPropFeetInches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := units.Length(rapid.Float64Range(-1e4, 1e4).Draw(t, "metres"))
		text := units.US.Format(l)
		back, err := units.Parse[units.Length](text)
		if err != nil {
			t.Fatal(err)
		}
		slack := 1e-11 * units.Metre // two float64 near 1e4 m, each rounded
		if units.Abs(back-l) > units.Inch/32+slack {
			t.Fatalf("%v is %s, which is %v", l, text, back)
		}
		if again := units.US.Format(back); again != text {
			t.Fatalf("%s comes back as %s", text, again)
		}
		if strings.HasPrefix(text, "-") && back == 0 {
			t.Fatalf("%v is %s: zero with a sign", l, text)
		}
	})
}

// A number with given places is the exact value rounded to the nearest step, and
// away from zero in a tie.
func TestPropFormatPlaces(t *testing.T) {
	factors := map[string]*big.Rat{}
	for _, row := range unitRows {
		factors[row.symbol] = define(t, row.definition)
	}
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(kinds).Draw(t, "kind")
		system := rapid.SampledFrom([]units.System{units.US, units.Metric}).Draw(t, "system")
		places := rapid.IntRange(0, 12).Draw(t, "places")
		v := k.of(rapid.Float64Range(-1e6, 1e6).Draw(t, "value"))
		text := system.FormatPlaces(v, places)
		digits, symbol, _ := strings.Cut(text, " ")
		if symbol != system.Symbol(v) {
			t.Fatalf("%s has another symbol than %s", text, system.Symbol(v))
		}
		if _, decimals, _ := strings.Cut(digits, "."); len(decimals) != places {
			t.Fatalf("%s has %d places, want %d", text, len(decimals), places)
		}
		shown, ok := new(big.Rat).SetString(digits)
		if !ok {
			t.Fatalf("%q is no number", digits)
		}
		if shown.Sign() == 0 && digits[0] == '-' {
			t.Fatalf("%s: zero with a sign", text)
		}
		exact := new(big.Rat).SetFloat64(number(v))
		exact.Quo(exact, factors[symbol])
		off := new(big.Rat).Sub(shown, exact)
		half := rat10(-places)
		half.Quo(half, big.NewRat(2, 1))
		switch new(big.Rat).Abs(off).Cmp(half) {
		case 1:
			t.Fatalf("%v is shown as %s, more than half a step away", v, text)
		case 0:
			if off.Sign() != exact.Sign() {
				t.Fatalf("%v, a tie, is shown as %s, toward zero", v, text)
			}
		}
	})
}

// rat10 gives ten to the n.
func rat10(n int) *big.Rat {
	r, _ := new(big.Rat).SetString(fmt.Sprintf("1e%d", n))
	return r
}
