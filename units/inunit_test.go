package units_test

import (
	"errors"
	"math"
	"math/big"
	"strings"
	"testing"

	"example.com/steelyard/units"
	"pgregory.net/rapid"
)

func TestFormatIn(t *testing.T) {
	for _, row := range []struct {
		text, symbol, want string
		like               units.Value
		reason             string
	}{
		{"12.35 lb", "lb", "12.35 lb", units.Pound, "as it was typed"},
		{"12.50 lb", "lb", "12.5 lb", units.Pound, "without zeros at the end"},
		{"12.35 lb", "kg", "5.6018657695 kg", units.Pound, "as String"},
		{"12 1/2 lb", "oz", "200 oz", units.Pound, "another unit"},
		{"1 lb", "pounds", "1 lb", units.Pound, "any spelling, and the symbol as it is printed"},
		{"1 short ton", "short ton", "1 short ton", units.Pound, "a symbol of two words"},
		{`24' 6 1/2"`, "ft", "24.541666666666666 ft", units.Foot, "half an inch has no end in feet, and 17 digits tell the nearest float64 from its neighbours"},
		{`24' 6 1/2"`, "in", "294.5 in", units.Foot, "inches are exact"},
		{"11 lb/100 ft", "lb/100 ft", "11 lb/100 ft", units.PoundPerFoot, "digits in the unit"},
		{"0.11 lb/ft", "lb/100 ft", "11 lb/100 ft", units.PoundPerFoot, "the same value"},
		{"15 oz/yd^2", "oz per sq. yd.", "15 oz/yd²", units.OuncePerSquareYard, "a spelling in words"},
		{"350.5 lbf·ft", "lbf·ft", "350.5 lbf·ft", units.NewtonMetre, "a long factor"},
		{"1.5°", "°", "1.5 deg", units.Degree, "a factor without end"},
		{"1e-7 lb", "lb", "1e-07 lb", units.Pound, "an exponent where String has one"},
		{"0.000001 lb", "lb", "0.000001 lb", units.Pound, "none where it has none"},
		{"123456789012 lb", "lb", "123456789012 lb", units.Pound, "twelve digits"},
		{"1e20 lb", "lb", "100000000000000000000 lb", units.Pound, "written out below 1e21"},
		{"1e21 lb", "lb", "1e+21 lb", units.Pound, "no long rows of zeros"},
		{"-0.25 lb", "lb", "-0.25 lb", units.Pound, "a sign"},
		{"-0 lb", "lb", "-0 lb", units.Pound, "the bits come back"},
		{"0 lb", "lb", "0 lb", units.Pound, "nothing"},
	} {
		t.Run(row.text+" in "+row.symbol, func(t *testing.T) {
			q, err := parseLike(row.like, row.text)
			if err != nil {
				t.Fatal(err)
			}
			if got, err := units.FormatIn(q, row.symbol); err != nil || got != row.want {
				t.Errorf("got %q, %v, want %q: %s", got, err, row.want, row.reason)
			}
		})
	}
}

func TestFormatInErrors(t *testing.T) {
	var none *units.Mass
	for _, row := range []struct {
		value  units.Value
		symbol string
		kind   error
		says   string
		reason string
	}{
		{units.Pound, "lbf", units.ErrWrongQuantity, `"lbf"`, "a unit of another quantity"},
		{units.Pound, "stone", units.ErrUnknown, "kg, g, t, lb, oz, short ton", "not ours, and what would be right"},
		{units.Pound, "ton", units.ErrAmbiguousUnit, "short ton", "more than one meaning"},
		{units.Pound, "", units.ErrUnknown, "a unit of mass", "no unit"},
		{units.Mass(math.NaN()), "lb", units.ErrNotFinite, "NaN kg", "could not be read back"},
		{units.Mass(math.Inf(1)), "kg", units.ErrNotFinite, "+Inf kg", "could not be read back"},
		{nil, "lb", units.ErrMissing, "a quantity", "no value"},
		{none, "lb", units.ErrMissing, "a quantity", "no value behind a pointer"},
	} {
		var field *units.FieldError
		got, err := units.AppendIn([]byte("kept"), row.value, row.symbol)
		if string(got) != "kept" || !errors.Is(err, row.kind) || !errors.As(err, &field) || !strings.Contains(err.Error(), row.says) {
			t.Errorf("%v in %q: got %q, %v; want kind %q and %q: %s", row.value, row.symbol, got, err, row.kind, row.says, row.reason)
		}
		if text, err := units.FormatIn(row.value, row.symbol); text != "" || err == nil {
			t.Errorf("%v in %q: got %q, %v", row.value, row.symbol, text, err)
		}
	}
}

// significant gives a decimal of 1 to 12 digits, as people write them: a point
// within them or none, zeros in front of them behind a point.
func significant() *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		digits := rapid.StringMatching(`[1-9][0-9]{0,10}[1-9]|[1-9]`).Draw(t, "digits")
		switch at := rapid.IntRange(-5, len(digits)).Draw(t, "point"); {
		case at == len(digits):
			return digits
		case at > 0:
			return digits[:at] + "." + digits[at:]
		default:
			return "0." + strings.Repeat("0", -at) + digits
		}
	})
}

// Text, value, text: up to twelve digits come back as they were written, in every
// unit of the table.
func TestPropTextComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		row := rapid.SampledFrom(unitRows).Draw(t, "unit")
		checkTextComesBack(t, row, rapid.SampledFrom([]string{"", "-"}).Draw(t, "sign")+significant().Draw(t, "number"))
	})
}

func checkTextComesBack(t fataler, row unitRow, number string) {
	text := number + " " + row.symbol
	q, err := parseLike(row.value, text)
	if err != nil {
		t.Fatalf("%v", err)
	}
	back, err := units.FormatIn(q, row.symbol)
	if exponent := strings.Contains(back, "e-"); exponent { // below 1e-6: the digits stand in another place
		a, _ := new(big.Rat).SetString(number)
		b, ok := new(big.Rat).SetString(strings.TrimSuffix(back, " "+row.symbol))
		if !ok || a.Cmp(b) != 0 {
			t.Fatalf("%s comes back as %s", text, back)
		}
		return
	}
	if err != nil || back != text {
		t.Fatalf("%s comes back as %s, %v", text, back, err)
	}
}

// Value, text, value: the bits come back through the text in every unit.
func TestPropValueComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		checkValueComesBack(t, rapid.SampledFrom(unitRows).Draw(t, "unit"), anyFinite().Draw(t, "value"))
	})
	for _, row := range unitRows {
		for _, f := range []float64{
			0, math.Copysign(0, -1), math.SmallestNonzeroFloat64, -math.MaxFloat64, math.MaxFloat64, 0x1p-1022, math.Nextafter(0x1p-1022, 0), 1, 1.0 / 3,
		} {
			checkValueComesBack(t, row, f)
		}
	}
}

func checkValueComesBack(t fataler, row unitRow, f float64) {
	k := kindLike(row.value)
	text, err := units.FormatIn(k.of(f), row.symbol)
	if err != nil {
		t.Fatalf("%v %s: %v", f, row.symbol, err)
	}
	if back, err := k.parse(text); err != nil || math.Float64bits(number(back)) != math.Float64bits(f) {
		t.Fatalf("%v is %s, which comes back as %v, %v", k.of(f), text, back, err)
	}
	if si, _ := units.FormatIn(k.of(f), kindSymbol(k)); si != k.of(f).String() {
		t.Fatalf("%v in its SI unit is %s", k.of(f), si)
	}
}

// kindSymbol gives the SI symbol, the last word of what String writes.
func kindSymbol(k kind) string {
	_, symbol, _ := strings.Cut(k.of(1).String(), " ")
	return symbol
}

// FuzzFormatIn goes both ways through any unit with any value.
func FuzzFormatIn(f *testing.F) {
	for _, seed := range []struct {
		bits   uint64
		digits uint64
		point  uint8
		unit   uint8
		reason string
	}{
		{math.Float64bits(1.0 / 3), 1235, 2, 13, "an ordinary value"},
		{1, 1, 0, 0, "the smallest"},
		{0x7fefffffffffffff, 999999999999, 12, 5, "the largest"},
		{0x3ff0000000000000, 100000000001, 3, 60, "a power of two, where the spacing changes"},
		{0x8000000000000000, 7, 20, 81, "a negative zero"},
	} {
		f.Add(seed.bits, seed.digits, seed.point, seed.unit)
	}
	f.Fuzz(func(t *testing.T, bits, digits uint64, point, unit uint8) {
		row := unitRows[int(unit)%len(unitRows)]
		if x := math.Float64frombits(bits); !math.IsNaN(x) && !math.IsInf(x, 0) {
			checkValueComesBack(t, row, x)
		}
		text := new(big.Int).SetUint64(digits % 1e12).String()
		if text = strings.TrimRight(text, "0"); text == "" {
			return
		}
		switch at := int(point)%18 - 5; {
		case at >= len(text):
		case at > 0:
			text = text[:at] + "." + text[at:]
		default:
			text = "0." + strings.Repeat("0", -at) + text
		}
		checkTextComesBack(t, row, text)
	})
}
