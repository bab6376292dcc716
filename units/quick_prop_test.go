package units

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// draw takes one of a list by a number that rapid, a fuzzer or a fixed seed gives.
type draw func(n int) int

func pick(d draw, list ...string) string { return list[d(len(list))] }

// run gives 1 to most digits.
func run(d draw, most int) string {
	var b strings.Builder
	for range 1 + d(most) {
		b.WriteByte('0' + byte(d(10)))
	}
	return b.String()
}

// anyNumber gives a number in one of the ways that people write them, and now and
// then in one of the ways that they do not.
func anyNumber(d draw) string {
	switch d(12) {
	case 0:
		return run(d, 3) + "/" + pick(d, "2", "4", "8", "16", "3", "0", run(d, 12))
	case 1:
		return run(d, 4) + pick(d, " ", "-", "  ", " -", "- ") + run(d, 2) + "/" + pick(d, "2", "4", "8", "16", "7", run(d, 12))
	case 2:
		return pick(d, "", "1", run(d, 3)) + pick(d, "", " ", "-") + pick(d, "½", "¼", "¾", "⅛", "⅜", "⅝", "⅞", "⅓", "⅔") + pick(d, "", "", "", "2", "½", "/3")
	case 3:
		return run(d, 25) + pick(d, "", "."+run(d, 25))
	case 4:
		return run(d, 3) + pick(d, "", ".", "."+run(d, 3)) + pick(d, "e", "E") + pick(d, "", "-", "+") + pick(d, "0", "00000", run(d, 2), run(d, 4))
	case 5:
		return "." + run(d, 6)
	case 6:
		return pick(d, "0.", "0", "00", "000000000000000000000.") + pick(d, "0", "0000000000000000000000") + run(d, 17)
	case 7:
		return run(d, 3) + "," + run(d, 3)
	}
	return run(d, 4) + pick(d, "", "."+run(d, 4))
}

// anyText gives a text that is a quantity, or nearly one, and the dimension that it
// would be of.
func anyText(d draw) (string, *dimension) {
	sign := pick(d, "", "", "", "-", "+", "−", "–", "--")
	gap := func() string { return pick(d, "", " ", " ", " ", " ", "  ", "\u00a0", "\u2009", "\t", "-") }
	dim := dimensions[d(len(dimensions))]
	text := ""
	if d(3) == 0 {
		dim = &lengthDimension
		text = sign + pick(d, run(d, 3), run(d, 3), anyNumber(d)) + gap() + pick(d, "'", "'", "ft", "feet", "foot", "ft.", "Ft", "FT", "′", "’", "f", "ft2") +
			pick(d, "", "", " ", "-", " - ", "--") + pick(d, run(d, 1), run(d, 2), anyNumber(d)) + gap() + pick(d, `"`, `"`, "in", "inches", "in.", "IN", "″", "”", "", "'", "m", "in in")
	} else {
		u := &dim.units[d(len(dim.units))]
		spelling := pick(d, append([]string{u.symbol}, u.aliases...)...)
		switch d(8) {
		case 0:
			spelling = strings.NewReplacer("/", pick(d, " / ", " per ", "/ ", "."), "·", pick(d, " ", "-", "*", "⋅", ".", " per "), "²", pick(d, "^2", "2")).Replace(spelling) + pick(d, "", ".", " ")
		case 1:
			spelling = pick(d, strings.ToUpper(spelling), spelling+pick(d, " each", ".", "s", " lb", "2"))
		}
		text = pick(d, "", "", "", "", "", "", " ", "\n") + sign + anyNumber(d) + gap() + spelling + pick(d, "", "", "", "", "", " ", "\u00a0")
	}
	// A slip of the finger.
	if d(5) == 0 {
		const keys = "0123456789.,/-+'\" eEftinlbm²½·\u00a0\xff"
		at, key := d(len(text)+1), string([]rune(keys)[d(len([]rune(keys)))])
		text = text[:at] + pick(d, "", key) + text[min(len(text), at+d(2)):]
	}
	if d(8) == 0 {
		dim = dimensions[d(len(dimensions))]
	}
	return text, dim
}

// checkRead holds the quick way against the careful one: the same bits, or the same
// error, for the same text.
func checkRead(t fataler, text string, d *dimension) (quickly bool) {
	want, wantErr := parse(text, d)
	_, quickly = quick(fold(text), d)
	if f, ok := quick(text, d); ok {
		if wantErr != nil || math.Float64bits(f) != math.Float64bits(want) {
			t.Fatalf("%q as %s: quick gives %v, parse %v, %v", text, d.name, f, want, wantErr)
		}
	}
	got, err := read(text, d)
	if math.Float64bits(got) != math.Float64bits(want) || !reflect.DeepEqual(err, wantErr) {
		t.Fatalf("%q as %s: read gives %v, %v, parse %v, %v", text, d.name, got, err, want, wantErr)
	}
	return quickly
}

func TestPropQuick(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, d := anyText(func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "n") })
		checkRead(t, text, d)
	})
}

// Twenty thousand texts that can be read, the same in every run, and as many that
// cannot: not one may differ. The counts keep the generator honest.
func TestQuickTwentyThousand(t *testing.T) {
	r := rand.New(rand.NewPCG(20, 20))
	texts, good, quickly, kinds := 0, 0, 0, map[error]int{}
	for ; good < 20_000 && texts < 100_000; texts++ {
		text, d := anyText(r.IntN)
		if checkRead(t, text, d) {
			quickly++
		}
		_, err := parse(text, d)
		var fault *ParseError
		if !errors.As(err, &fault) {
			good++
			continue
		}
		kinds[fault.Err]++
	}
	if good < 20_000 || quickly < 17_000 {
		t.Errorf("%d of %d texts can be read, %d of them quickly", good, texts, quickly)
	}
	for _, kind := range []error{ErrSyntax, ErrNoUnit, ErrUnknownUnit, ErrWrongQuantity, ErrOutOfRange, ErrAmbiguousUnit} {
		if kinds[kind] < 10 {
			t.Errorf("%d texts: %v", kinds[kind], kind)
		}
	}
}

// Every spelling of every unit, as every quantity.
func TestQuickSpellings(t *testing.T) {
	for _, of := range everyUnit() {
		for _, spelling := range append([]string{of.u.symbol}, of.u.aliases...) {
			for _, d := range dimensions {
				for _, text := range []string{"12.5 " + spelling, "12" + spelling, "1/2 " + spelling, "3 " + spelling + ` 6"`, "3 ft 6 " + spelling, "5 -" + spelling} {
					checkRead(t, text, d)
				}
			}
			if spelling == of.u.symbol {
				if _, ok := quick("12.5 "+spelling, of.d); !ok {
					t.Errorf("12.5 %s is not read quickly", spelling)
				}
			}
		}
	}
}

// FuzzQuick holds both ways of reading against each other on any text, as every
// quantity.
func FuzzQuick(f *testing.F) {
	for _, seed := range []struct{ text, reason string }{
		{`24'-6 1/2"`, "feet and inches"},
		{`24ft. 6½in.`, "letters, full stops, a fraction in one character"},
		{"24.5' 6\"", "inches behind half a foot"},
		{"5. ft 6 in", "a point and no decimals is a whole number"},
		{"5e0 ft 6 in", "so is an exponent of zero"},
		{"50e-1 ft 6 in", "another is not"},
		{"12.5 lb", "a mass"},
		{"5-lb", "a dash before the unit"},
		{"5 *lb", "a star before it"},
		{"9007199254740993 m", "halfway between two float64"},
		{"0.00000000000000000000 arcmin", "nothing, with many digits"},
		{"1.5°", "a factor that does not end"},
		{"0." + strings.Repeat("0", 330) + "1e331 m", "zeros in front and an exponent that undoes them"},
		{"0." + strings.Repeat("0", 376) + "1e401 m", "the same with an exponent beyond the bound"},
		{"9999999999 1/9999999999 in", "over the stroke more than a word"},
		{"99999999999999999' 6 1/99999 in", "feet too many for a word"},
		{"0.000000000 in⁴", "nothing, in fine steps"},
		{"0 deg", "nothing, of a factor without end"},
		{"1" + strings.Repeat(" ", 400) + "m", "too long"},
		{"18446744073709551616 m", "a word and one"},
		{"99999999999999999999 m", "twenty digits"},
		{"1/3 in", "no end of decimals"},
		{"999999999 999999999/1000000000 in", "more digits than quick takes"},
	} {
		f.Add(seed.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, d := range dimensions {
			checkRead(t, text, d)
		}
	})
}

// What is read in one pass and what is left to the careful way, at the edges of what a word holds.
func TestQuickEdges(t *testing.T) {
	const nines = "9999999999999999999" // nineteen
	for _, row := range []struct {
		text    string
		quickly bool
		reason  string
	}{
		{nines + " m", true, "nineteen digits fit in a word"},
		{"9" + nines + " m", false, "twenty do not"},
		{"1" + nines + " m", false, "and some twenty wrap round to little"},
		{"0000" + nines + " m", true, "zeros in front take no room"},
		{"0.0000" + nines + " m", true, "nor behind the point"},
		{"0.0000" + nines + "0 m", false, "those behind the digits do"},
		{"1-1/2 in", true, "a fraction with a dash"},
		{"1  1/2 in", true, "two spaces by accident"},
		{strings.Repeat("0", 20), false, "zeros without end and no unit"},
		{"999999999/999999999 in", true, "nine digits on either side of the stroke"},
		{"9999999999/999999999 in", false, "ten above it"},
		{"1/9999999999 in", false, "ten below it"},
		{"1 999999999/999999999 in", true, "nine in each of three parts"},
		{"999999999 1/2 in", true, "nine before a fraction"},
		{"9999999999 1/2 in", false, "ten before it"},
		{"1 9999999999/2 in", false, "ten above the stroke behind a whole number"},
		{"1 18446744073709551619/3 in", false, "which wraps round to 3"},
		{"1/18446744073709551619 in", false, "the same below"},
		{"1/0 in", false, "nothing is over zero"},
		{"1/ in", false, "a stroke and no number"},
		{"1 / 2 in", false, "a stroke by itself"},
		{"1e9 mm", true, "an exponent of one digit"},
		{"1e-12 m", true, "of two"},
		{"1e+12 m", true, "with a plus"},
		{"1e001 m", false, "of three"},
		{"1e m", false, "of none: a unit, and not a known one"},
		{"0.000000001 in", true, "nine decimals"},
		{`24' 6.123456789"`, true, "nine decimals of an inch"},
		{`24' 6.1234567891"`, false, "ten of them"},
		{`24' 11.999999999"`, true, "just under a foot"},
		{`24' 12"`, false, "a foot"},
		{`24' 0"`, true, "no inch"},
		{`0' 6"`, true, "no foot"},
		{`24.5' 6"`, false, "half a foot"},
		{`24.' 6"`, true, "a point and nothing behind it"},
		{`24e0' 6"`, true, "an exponent of nothing"},
		{`24e1' 6"`, false, "one of ten"},
		{`24' 6e1"`, false, "inches with one"},
		{`24' 6`, false, "inches without a mark"},
		{`24' 6 ft`, false, "feet twice"},
		{"24 feet 6 in", true, "in full"},
		{"24 foot 6 in", true, "in full"},
		{"24 ft. 6 in", true, "with a full stop"},
		{"24 Ft 6 in", true, "a capital"},
		{"24 FT - 6 in", true, "capitals and a dash"},
		{"24 fT 6 in", false, "no spelling of a foot"},
		{"24 ft .5 in", true, "inches that begin with a point"},
		{"24 ft 9 in", true, "the last digit"},
		{"5 kg", false, "a mass"},
		{"5", false, "no unit"},
		{"5 ", false, "no unit, and a space"},
		{"", false, "nothing"},
		{"-", false, "a sign"},
		{"-5 m", true, "a sign"},
		{"+5 m", true, "a sign"},
		{". m", false, "no digit"},
		{"1" + strings.Repeat(" ", 398) + "m", true, "as long as a text may be"},
		{"1" + strings.Repeat(" ", 399) + "m", false, "longer"},
	} {
		if _, ok := quick(row.text, &lengthDimension); ok != row.quickly {
			t.Errorf("%s: read quickly %v, want %v: %s", row.text, ok, row.quickly, row.reason)
		}
		checkRead(t, row.text, &lengthDimension)
	}
}

// One byte put into, or in place of, every byte of a text: no sign is taken for a digit, a stroke or a mark that it only
// stands beside.
func TestQuickEveryByte(t *testing.T) {
	for _, text := range []string{`24' 6 1/2"`, "1.5e-3 m", "1-1/2 in", "9 ft 0.25 in", "7 FT-11 in.", "3/4 yd"} {
		for at := range len(text) + 1 {
			for c := range byte(0x80) {
				checkRead(t, text[:at]+string(rune(c))+text[at:], &lengthDimension)
				checkRead(t, text[:at]+string(rune(c))+text[min(at+1, len(text)):], &lengthDimension)
			}
		}
	}
}
