package units_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/steelyard/units"
)

func TestParse(t *testing.T) {
	for _, row := range []struct {
		text   string
		like   units.Value // a quantity of the wanted type
		exact  string      // the SI value as a definition, from left to right
		reason string
	}{
		{`24'-6"`, units.Foot, "24.5 * ft", "the draughtsman's way"},
		{`24' - 6"`, units.Foot, "24.5 * ft", "with air"},
		{`24' 6"`, units.Foot, "24.5 * ft", "a space for the dash"},
		{`24'6"`, units.Foot, "24.5 * ft", "nothing between"},
		{`24' 6 1/2"`, units.Foot, "294.5 * in", "a fraction of an inch"},
		{`24'-6-1/2"`, units.Foot, "294.5 * in", "a fraction with a dash"},
		{`24' 6  1/2"`, units.Foot, "294.5 * in", "two spaces by accident"},
		{`24' 1/2"`, units.Foot, "288.5 * in", "no whole inch"},
		{`24' 6.25"`, units.Foot, "294.25 * in", "decimal inches"},
		{`24' 0"`, units.Foot, "24 * ft", "no inches"},
		{`24'`, units.Foot, "24 * ft", "feet alone"},
		{`24 ft 6 1/2 in`, units.Foot, "294.5 * in", "in letters"},
		{`24ft 6in`, units.Foot, "24.5 * ft", "no spaces"},
		{`24ft6in`, units.Foot, "24.5 * ft", "none at all"},
		{`24 ft. 6 in.`, units.Foot, "24.5 * ft", "full stops"},
		{`24 feet 6 inches`, units.Foot, "24.5 * ft", "in full"},
		{`24 FT 6 IN`, units.Foot, "24.5 * ft", "as on drawings"},
		{"24′ 6″", units.Foot, "24.5 * ft", "primes"},
		{"24’ 6”", units.Foot, "24.5 * ft", "what a phone makes of quotation marks"},
		{`-0' 6"`, units.Foot, "-6 * in", "the sign is that of the whole"},
		{`-24' 6"`, units.Foot, "-24.5 * ft", "the sign is that of the whole"},
		{"6.5 ft", units.Foot, "6.5 * ft", "decimal feet"},
		{"1/2 in", units.Foot, "0.5 * in", "a fraction alone"},
		{`1 1/2"`, units.Foot, "1.5 * in", "a whole number and a fraction"},
		{`1-1/2"`, units.Foot, "1.5 * in", "with a dash"},
		{"½ in", units.Foot, "0.5 * in", "a fraction in one character"},
		{`24' 6½"`, units.Foot, "294.5 * in", "behind a whole number"},
		{"24′-6 ¾″", units.Foot, "294.75 * in", "with a space before it"},
		{"1-⅞ in", units.Foot, "1.875 * in", "with a dash"},
		{"24 ft ⅜ in", units.Foot, "288.375 * in", "no whole inch"},
		{"2⅓ yd", units.Foot, "7 * ft", "thirds too"},
		{"12¼ lb", units.Pound, "12.25 * lb", "not only for inches"},
		{"1/3 yd", units.Foot, "ft", "a fraction that does not end in decimals"},
		{"7.4676 m", units.Foot, "7.4676", "metres"},
		{"7.4676m", units.Foot, "7.4676", "no space"},
		{"\u2212" + "3 mm", units.Foot, "-0.003", "a typographic minus"},
		{"+3 mm", units.Foot, "0.003", "a plus"},
		{"3\u202fmm", units.Foot, "0.003", "a narrow no-break space"},
		{"3\u2009mm", units.Foot, "0.003", "a thin space"},
		{"\u00a03\u00a0mm\t\n", units.Foot, "0.003", "space around"},
		{".5 m", units.Foot, "0.5", "no digit before the point"},
		{"5. m", units.Foot, "5", "none after it"},
		{"12 metres", units.Foot, "12", "British"},
		{"12 meters", units.Foot, "12", "American"},
		{"0 m", units.Foot, "0", "zero has a unit"},
		{strings.Repeat("0", 349) + "5 m", units.Foot, "5", "350 digits"},
		{strings.Repeat("0", 349) + "1/2 m", units.Foot, "0.5", "350 digits above the stroke"},
		{"1/" + strings.Repeat("0", 349) + "2 m", units.Foot, "0.5", "350 digits below it"},
		{"147573952589676413 kN", units.PoundForce, "147573952589676413000", "125 times the digits is 2^64 and 9"},
		{"12.5 lb", units.Pound, "12.5 * lb", "a mass"},
		{"12.5 lbs", units.Pound, "12.5 * lb", "the plural"},
		{"12 1/2 lb", units.Pound, "12.5 * lb", "fractions are not only for inches"},
		{"500 LBS", units.Pound, "500 * lb", "as on labels"},
		{"8 oz", units.Pound, "0.5 * lb", "sixteenths"},
		{"2 short tons", units.Pound, "4000 * lb", "said which"},
		{"1.5 t", units.Pound, "1500", "a tonne"},
		{"90 lbf", units.PoundForce, "90 * lb * g", "a force"},
		{"1e3 N", units.PoundForce, "1000", "an exponent"},
		{"1E-3 kN", units.PoundForce, "1", "a negative one"},
		{"1e+0000000003 N", units.PoundForce, "1000", "zeros before it"},
		{"2.5 kips", units.PoundForce, "2500 * lb * g", "kips"},
		{"1 gₙ", units.StandardGravity, "g", "standard gravity"},
		{"0.11 lb/ft", units.PoundPerFoot, "0.11 * lb / ft", "rope"},
		{"11 lb/100 ft", units.PoundPerFoot, "0.11 * lb / ft", "rope by the hundred feet"},
		{"11 lb / 100ft", units.PoundPerFoot, "0.11 * lb / ft", "other gaps"},
		{"2.72 lbs. per ft.", units.PoundPerFoot, "2.72 * lb / ft", "in words"},
		{"30 plf", units.PoundForcePerFoot, "30 * lb * g / ft", "the engineer's short form"},
		{"15 oz/yd²", units.OuncePerSquareYard, "15 * lb / 16 / yd / yd", "a superscript"},
		{"15 oz/yd2", units.OuncePerSquareYard, "15 * lb / 16 / yd / yd", "none"},
		{"15 oz/yd^2", units.OuncePerSquareYard, "15 * lb / 16 / yd / yd", "a caret"},
		{"15 oz per sq. yd.", units.OuncePerSquareYard, "15 * lb / 16 / yd / yd", "in words"},
		{"509 gsm", units.OuncePerSquareYard, "0.509", "how cloth is sold"},
		{"29000 ksi", units.KipPerSquareInch, "29000000 * lb * g / in / in", "steel"},
		{"248 N/mm²", units.KipPerSquareInch, "248000000", "the same as MPa"},
		{"7850 kg/m³", units.PoundPerCubicInch, "7850", "steel"},
		{"7850 kg/m3", units.PoundPerCubicInch, "7850", "steel, plainly"},
		{"0.31 in⁴", units.InchToTheFourth, "0.31 * in * in * in * in", "a pipe"},
		{"0.31 in4", units.InchToTheFourth, "0.31 * in * in * in * in", "a pipe, plainly"},
		{"0.326 in³", units.CubicInch, "0.326 * in * in * in", "a pipe"},
		{"0.799 sq in", units.SquareInch, "0.799 * in * in", "a pipe"},
		{"5 N·m", units.NewtonMetre, "5", "a dot"},
		{"5 N m", units.NewtonMetre, "5", "a space"},
		{"5 N⋅m", units.NewtonMetre, "5", "the operator dot"},
		{"5 ft-lbf", units.NewtonMetre, "5 * lb * g * ft", "a hyphen, and the other order"},
	} {
		t.Run(row.text, func(t *testing.T) {
			got, err := parseLike(row.like, row.text)
			if err != nil {
				t.Fatalf("%v (%s)", err, row.reason)
			}
			if want, _ := define(t, row.exact).Float64(); number(got) != want {
				t.Errorf("got %v, want %v: %s", number(got), want, row.reason)
			}
		})
	}
}

func TestParseErrors(t *testing.T) {
	long := "1" + strings.Repeat("0", 1000) + " m"
	for _, row := range []struct {
		text   string
		like   units.Value
		kind   error
		says   string // part of the message
		rest   string
		reason string
	}{
		{"", units.Foot, units.ErrSyntax, `"" is empty`, "", "nothing"},
		{" \t ", units.Foot, units.ErrSyntax, "is empty", "", "only space"},
		{"500", units.Pound, units.ErrNoUnit, `"500" has no unit; want a mass such as 12.5 lb or 5.7 kg`, "", "500 what?"},
		{"0", units.Foot, units.ErrNoUnit, "has no unit", "", "zero too: one rule"},
		{"1e3", units.PoundForce, units.ErrNoUnit, "has no unit", "", "an exponent is no unit"},
		{"1/2", units.Foot, units.ErrNoUnit, "has no unit", "", "a fraction is no unit"},
		{`24' 6`, units.Foot, units.ErrNoUnit, "inches without a mark", "6", "inches, most likely, and not certainly"},
		{"lb", units.Pound, units.ErrSyntax, "does not begin with a number", "lb", "no number"},
		{"-", units.Pound, units.ErrSyntax, "does not begin with a number", "", "only a sign"},
		{"--3 lb", units.Pound, units.ErrSyntax, "does not begin with a number", "-3 lb", "two signs"},
		{". lb", units.Pound, units.ErrSyntax, "does not begin with a number", ". lb", "a point and no digit"},
		{"about 5 lb", units.Pound, units.ErrSyntax, "does not begin with a number", "about 5 lb", "a word first"},
		{"90 lb", units.PoundForce, units.ErrWrongQuantity, "is a mass, not a force (which is written lbf); want a force such as 90 lbf", "lb", "the likeliest slip"},
		{"90 lbf", units.Pound, units.ErrWrongQuantity, "is a force, not a mass (which is written lb)", "lbf", "its reverse"},
		{"30 lb/ft", units.PoundForcePerFoot, units.ErrWrongQuantity, "(which is written lbf/ft)", "lb/ft", "the same per foot"},
		{"30 lbf/ft", units.PoundPerFoot, units.ErrWrongQuantity, "(which is written lb/ft)", "lbf/ft", "its reverse"},
		{"5 m", units.Pound, units.ErrWrongQuantity, "is a length, not a mass; want", "m", "another dimension"},
		{"5 ft2", units.Foot, units.ErrWrongQuantity, "is an area, not a length", "ft2", "not 5 ft and 2 in"},
		{`24'-6"`, units.Pound, units.ErrWrongQuantity, "is a length, not a mass", `6"`, "feet and inches are seen too"},
		{"5 parsec", units.Foot, units.ErrUnknownUnit, `has the unit "parsec", which is not known; want`, "parsec", "not ours"},
		{"5 MM", units.Foot, units.ErrUnknownUnit, "(is mm meant?)", "MM", "case matters in SI: mPa is not MPa"},
		{"5 IN4", units.InchToTheFourth, units.ErrUnknownUnit, "(is in⁴ meant?)", "IN4", "a superscript is meant by a plain digit"},
		{"5 mx", units.Foot, units.ErrUnknownUnit, `has the unit "mx"`, "mx", "a unit ends with its word"},
		{"5 lbs_each", units.Pound, units.ErrUnknownUnit, `has the unit "lbs_each"`, "lbs_each", "a unit ends with its word"},
		{"5 m; 6 m", units.Foot, units.ErrSyntax, `goes on with "; 6 m"`, "; 6 m", "one at a time"},
		{"5² m", units.Foot, units.ErrUnknownUnit, "not known", "² m", "not 52 m"},
		{"0x10 m", units.Foot, units.ErrUnknownUnit, "not known", "x10 m", "no hexadecimal"},
		{"1_000 m", units.Foot, units.ErrUnknownUnit, "not known", "_000 m", "no marks between digits"},
		{"\x80\xff", units.Foot, units.ErrSyntax, `"\x80\xff" does not begin`, "", "not even text"},
		{"5 Nm", units.NewtonMetre, units.ErrAmbiguousUnit, "write N·m", "Nm", "the case of nm is easily lost"},
		{"2 ton", units.Pound, units.ErrAmbiguousUnit, "short ton for 2000 lb, t for 1000 kg", "ton", "three tons"},
		{"2 cwt", units.Pound, units.ErrAmbiguousUnit, "100 lb for a short one, 112 lb for a long one", "cwt", "two hundredweights"},
		{"12.5#", units.Pound, units.ErrAmbiguousUnit, "lb for a mass, lbf for a force", "#", "mass or force"},
		{"5 ft-lb", units.NewtonMetre, units.ErrAmbiguousUnit, "lbf·ft", "ft-lb", "no moment of a mass"},
		{"12,5 lb", units.Pound, units.ErrSyntax, "a decimal point is wanted", ",5 lb", "a decimal comma"},
		{"1,000 lb", units.Pound, units.ErrSyntax, "no mark between thousands", ",000 lb", "or was it a thousand"},
		{"1 000 lb", units.Pound, units.ErrSyntax, "two numbers", "000 lb", "thousands by a gap"},
		{"1 900 lb", units.Pound, units.ErrSyntax, "two numbers", "900 lb", "thousands by a gap"},
		{"5 lb each", units.Pound, units.ErrSyntax, `goes on with "each" after the unit lb`, "each", "a word behind"},
		{"5 lb. per sq. ft. of floor", units.OuncePerSquareYard, units.ErrSyntax, `goes on with "of floor" after the unit lb/ft²`, "of floor", "a long unit and words behind"},
		{"5 lb 3 oz", units.Pound, units.ErrSyntax, `goes on with "3 oz"`, "3 oz", "only feet and inches come in pairs"},
		{"5 m, 6 m", units.Foot, units.ErrSyntax, `goes on with ", 6 m"`, ", 6 m", "one at a time"},
		{`24' 6" high`, units.Foot, units.ErrSyntax, "where the inches should end", `" high`, "a word behind inches"},
		{`24' 6'`, units.Foot, units.ErrSyntax, "where the inches should end", "'", "feet twice"},
		{`24.5' 6"`, units.Foot, units.ErrSyntax, "not a whole number", `6"`, "half a foot and inches too"},
		{`24' 12"`, units.Foot, units.ErrSyntax, "12 or more inches", `12"`, "a slip of the finger"},
		{`24' 11 8/8"`, units.Foot, units.ErrSyntax, "12 or more inches", `11 8/8"`, "the same in eighths"},
		{"½2 in", units.Foot, units.ErrSyntax, "two numbers", "2 in", "a half, or 1/22"},
		{"½½ in", units.Foot, units.ErrSyntax, "two numbers", "1/2 in", "two of them"},
		{"½/3 in", units.Foot, units.ErrSyntax, `"/" after the number`, "/3 in", "a fraction of a fraction"},
		{"1.5½ in", units.Foot, units.ErrSyntax, "two numbers", "1/2 in", "a decimal and a fraction"},
		{`24½' 6"`, units.Foot, units.ErrSyntax, "not a whole number", `6"`, "half a foot and inches too"},
		{"1/0 in", units.Foot, units.ErrSyntax, "a fraction over zero", "1/0 in", "no number"},
		{"1/2/3 in", units.Foot, units.ErrSyntax, `"/" after the number`, "/3 in", "one stroke too many"},
		{"1.5/2 in", units.Foot, units.ErrSyntax, `"/" after the number`, "/2 in", "a decimal over a number"},
		{"1.5.2 in", units.Foot, units.ErrSyntax, `"." after the number`, ".2 in", "one point too many"},
		{"5-3 in", units.Foot, units.ErrSyntax, `"-" after the number`, "-3 in", "no sums"},
		{"NaN m", units.Foot, units.ErrNotFinite, "is not a finite number", "NaN m", "no number"},
		{"-inf", units.Foot, units.ErrNotFinite, "is not a finite number", "inf", "no number"},
		{"Infinity kg", units.Pound, units.ErrNotFinite, "is not a finite number", "Infinity kg", "no number"},
		{"1e309 m", units.Foot, units.ErrOutOfRange, "is too large", "", "past the largest float64"},
		{"1e308 ksi", units.KipPerSquareInch, units.ErrOutOfRange, "is too large", "", "past it once the unit is in"},
		{"1e-330 m", units.Foot, units.ErrOutOfRange, "is too small", "", "would silently be zero"},
		{"1e999999999999 m", units.Foot, units.ErrOutOfRange, "an exponent beyond 400", "1e999999999999 m", "a gigabyte if it were written out"},
		{"1e-401 m", units.Foot, units.ErrOutOfRange, "an exponent beyond 400", "1e-401 m", "either way"},
		{"1 " + strings.Repeat("0", 350) + "1/2 m", units.Foot, units.ErrOutOfRange, "more than 350 digits", "1 000", "too many digits above the stroke"},
		{strings.Repeat("9", 351) + " m", units.Foot, units.ErrOutOfRange, "more than 350 digits", "9999", "too many digits"},
		{"1/" + strings.Repeat("9", 351) + " m", units.Foot, units.ErrOutOfRange, "more than 350 digits", "1/9999", "too many digits below the stroke"},
		{long, units.Foot, units.ErrSyntax, "is longer than 400 bytes", "1000", "too long to look at"},
	} {
		t.Run(clip(row.text), func(t *testing.T) {
			got, err := parseLike(row.like, row.text)
			var parse *units.ParseError
			if !errors.As(err, &parse) || !errors.Is(err, row.kind) {
				t.Fatalf("got %v, %v; want kind %q: %s", got, err, row.kind, row.reason)
			}
			if number(got) != 0 {
				t.Errorf("got %v beside an error", got)
			}
			if !strings.Contains(err.Error(), row.says) {
				t.Errorf("message  %s\nlacks    %s", err, row.says)
			}
			if want := kindLike(row.like).name; parse.Quantity != want {
				t.Errorf("quantity %q, want %q", parse.Quantity, want)
			}
			if row.rest != "" && !strings.HasPrefix(parse.Rest, row.rest) || len(row.text) < 60 && row.rest != "" && parse.Rest != row.rest {
				t.Errorf("rest %q, want %q", parse.Rest, row.rest)
			}
			if n := len(parse.Text); n > 60+len("…") {
				t.Errorf("the error carries %d bytes of text", n)
			}
			if n := len(err.Error()); n > 600 || !utf8.ValidString(err.Error()) {
				t.Errorf("message of %d bytes: %s", n, err)
			}
		})
	}
}

// Every wrong unit for every quantity: the example that the message gives must
// itself be readable, in both of its forms.
func TestParseErrorExamplesCanBeRead(t *testing.T) {
	for _, k := range kinds {
		_, err := k.parse("?")
		_, examples, found := strings.Cut(err.Error(), " such as ")
		if !found {
			t.Errorf("no example in %v", err)
			continue
		}
		for example := range strings.SplitSeq(examples, " or ") {
			if q, err := k.parse(example); err != nil || number(q) <= 0 {
				t.Errorf("%s: the example %q gives %v, %v", k.name, example, q, err)
			}
		}
	}
}

// A text cut for a message is cut between two characters.
func TestParseErrorCutsBetweenRunes(t *testing.T) {
	for n := range 8 {
		text := strings.Repeat("x", n) + strings.Repeat("⁴", 40)
		_, err := units.Parse[units.Mass](text)
		var parse *units.ParseError
		if !errors.As(err, &parse) || !utf8.ValidString(parse.Text) || !strings.HasSuffix(parse.Text, "…") {
			t.Errorf("%d: %v", n, err)
		}
	}
}

// Each fraction in one character, alone and behind a whole number.
func TestParseFractions(t *testing.T) {
	for _, row := range []struct {
		character string
		value     units.Length
	}{
		{"½", units.Inch / 2},
		{"¼", units.Inch / 4},
		{"¾", 3 * units.Inch / 4},
		{"⅛", units.Inch / 8},
		{"⅜", 3 * units.Inch / 8},
		{"⅝", 5 * units.Inch / 8},
		{"⅞", 7 * units.Inch / 8},
		{"⅓", units.Inch / 3},
		{"⅔", 2 * units.Inch / 3},
	} {
		for whole, text := range []string{row.character + `"`, "1" + row.character + `"`, "2 " + row.character + " in"} {
			want := row.value + units.Inch.Scale(float64(whole))
			if got, err := units.Parse[units.Length](text); err != nil || !got.Within(want, 1e-15*units.Metre) {
				t.Errorf("%s: %v, %v, want %v", text, got, err, want)
			}
		}
	}
}

func TestParseNegativeZero(t *testing.T) {
	q, err := units.Parse[units.Length]("-0 m")
	if err != nil || q != 0 || !math.Signbit(float64(q)) {
		t.Errorf("got %v, %v; want the bits of String back", q, err)
	}
}

func clip(s string) string { return s[:min(len(s), 40)] }
