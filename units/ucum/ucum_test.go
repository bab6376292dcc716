package ucum_test

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/verification"
	"example.com/steelyard/units"
	"example.com/steelyard/units/ucum"
)

// Problem:   the size of each code's unit in SI.
// Source:    UCUM, the Unified Code for Units of Measure, file ucum-essence.xml: the value
//            and the unit that it gives for each atom, its prefixes, and its grammar
//            (a dot multiplies, a stroke divides, from left to right, digits behind
//            an atom are its power).
// Given:     the definitions below, as printed there.
// Expected:  the unit of the quantity in package units, to the last bit.

// atoms gives the published definition of each atom that the codes use; those
// without one are the base units and those that SI derives.
var atoms = map[string]struct{ value, unit string }{
	"m": {"1", ""}, "s": {"1", ""}, "rad": {"1", ""}, "g": {"0.001", ""}, // in SI units
	"N": {"1", "kg.m/s2"}, "Pa": {"1", "N/m2"}, "J": {"1", "N.m"}, "W": {"1", "J/s"},
	"[pi]": {"3.1415926535897932384626433832795028841971693993751058209749445923", ""},
	"deg":  {"2", "[pi].rad/360"},
	"'":    {"1", "deg/60"},
	"circ": {"2", "[pi].rad"},
	"min":  {"60", "s"}, "h": {"60", "min"},
	"t":   {"1e3", "kg"},
	"[g]": {"9.80665", "m/s2"}, "gf": {"1", "g.[g]"}, "[lbf_av]": {"1", "[lb_av].[g]"},
	"[in_i]": {"2.54", "cm"}, "[ft_i]": {"12", "[in_i]"}, "[yd_i]": {"3", "[ft_i]"},
	"[sin_i]": {"1", "[in_i]2"}, "[sft_i]": {"1", "[ft_i]2"}, "[syd_i]": {"1", "[yd_i]2"},
	"[cin_i]": {"1", "[in_i]3"}, "[cft_i]": {"1", "[ft_i]3"},
	"[gr]": {"64.79891", "mg"}, "[lb_av]": {"7000", "[gr]"}, "[oz_av]": {"1", "[lb_av]/16"},
	"[scwt_av]": {"100", "[lb_av]"}, "[ston_av]": {"20", "[scwt_av]"},
	"[HP]": {"550", "[ft_i].[lbf_av]/s"}, "[psi]": {"1", "[lbf_av]/[in_i]2"},
}

var prefixes = map[string]string{"G": "1e9", "M": "1e6", "k": "1e3", "c": "1e-2", "m": "1e-3"}

// metric lists the atoms that may have a prefix.
var metric = []string{"m", "s", "g", "N", "Pa", "J", "W", "gf", "t"}

func rat(t *testing.T, s string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		t.Fatalf("%q is no number", s)
	}
	return r
}

// evaluate gives the exact SI value of a term.
func evaluate(t *testing.T, term string) *big.Rat {
	t.Helper()
	value := big.NewRat(1, 1)
	divide := false
	for term != "" {
		end := strings.IndexAny(term, "./")
		part, next := term, ""
		if end >= 0 {
			part, next = term[:end], term[end:]
		}
		factor := component(t, part)
		if divide {
			factor.Inv(factor)
		}
		value.Mul(value, factor)
		divide = strings.HasPrefix(next, "/")
		term = strings.TrimLeft(next, "./")
	}
	return value
}

func component(t *testing.T, part string) *big.Rat {
	t.Helper()
	if strings.Trim(part, "0123456789") == "" {
		return rat(t, part)
	}
	symbol := strings.TrimRight(part, "0123456789")
	power := 1
	if digits := part[len(symbol):]; digits != "" {
		power = int(digits[0] - '0')
	}
	size := big.NewRat(1, 1)
	atom, known := atoms[symbol]
	if !known {
		prefix, ok := prefixes[symbol[:1]]
		if atom, known = atoms[symbol[1:]]; !ok || !known || !slices.Contains(metric, symbol[1:]) {
			t.Fatalf("%q is no atom, nor a metric one with a prefix", symbol)
		}
		size = rat(t, prefix)
	}
	size.Mul(size, rat(t, atom.value))
	size.Mul(size, evaluate(t, atom.unit))
	value := big.NewRat(1, 1)
	for range power {
		value.Mul(value, size)
	}
	return value
}

// kind lets a test treat all quantities alike.
type kind struct {
	name    string
	codes   []string
	symbols []string
	parse   func(string) (float64, error)
	format  func(float64, string) (string, error)
	unit    func(string) (float64, error)
}

func kindOf[Q units.Quantity](name string) kind {
	return kind{
		name:    name,
		codes:   slices.Collect(ucum.Codes[Q]()),
		symbols: slices.Collect(units.Symbols[Q]()),
		parse:   func(s string) (float64, error) { q, err := ucum.Parse[Q](s); return float64(q), err },
		format:  func(f float64, code string) (string, error) { return ucum.Format(Q(f), code) },
		unit:    func(s string) (float64, error) { q, err := units.Unit[Q](s); return float64(q), err },
	}
}

var kinds = []kind{
	kindOf[units.Length]("length"), kindOf[units.Area]("area"), kindOf[units.Mass]("mass"),
	kindOf[units.Force]("force"), kindOf[units.TimeSpan]("time"), kindOf[units.Speed]("speed"),
	kindOf[units.Acceleration]("acceleration"), kindOf[units.Angle]("angle"), kindOf[units.Moment]("moment"),
	kindOf[units.Energy]("energy"), kindOf[units.Power]("power"), kindOf[units.Stress]("stress"),
	kindOf[units.LineMass]("mass per length"), kindOf[units.LineLoad]("force per length"),
	kindOf[units.AreaMass]("mass per area"), kindOf[units.Density]("density"),
	kindOf[units.SecondMoment]("second moment of area"), kindOf[units.SectionModulus]("section modulus"),
	kindOf[units.Stiffness]("stiffness"), kindOf[units.Inertia]("mass moment of inertia"),
}

func TestVerifyCodesMeanWhatIsPublished(t *testing.T) {
	for _, k := range kinds {
		for i, code := range k.codes {
			want, _ := evaluate(t, code).Float64()
			got, err := k.parse("1 " + code)
			if err != nil {
				t.Errorf("%s: 1 %s: %v", k.name, code, err)
			}
			if strings.Contains(code, "[") {
				verification.Row{Key: "ucum/" + k.name, Source: "UCUM", Place: "its atoms and grammar", What: "SI value of a code, " + k.name, Why: "exact, and rounded once"}.
					Of(code, "", want, 0).Check(t, got)
			} else if got != want { // of the metric codes the prefixes are in question: those are no rows
				t.Errorf("%s: 1 %s is %v; the publication gives %v", k.name, code, got, want)
			}
			if i == 0 && want != 1 {
				t.Errorf("%s: the first code, %s, is not that of the SI unit", k.name, code)
			}
		}
	}
}

// The units without a code are known, so that a new unit of package units is given
// one, or a place here.
func TestUnitsWithoutACode(t *testing.T) {
	without := []string{"kip", "kip·ft", "ksi", "kip/ft", "lb/100 ft"}
	for _, k := range kinds {
		var sizes []float64
		for _, code := range k.codes {
			size, err := k.parse("1 " + code)
			if err != nil {
				t.Errorf("%s: %v", k.name, err)
			}
			sizes = append(sizes, size)
		}
		for _, symbol := range k.symbols {
			size, err := k.unit(symbol)
			if err != nil {
				t.Errorf("%s: %v", k.name, err)
			}
			if has := slices.Contains(sizes, size); has == slices.Contains(without, symbol) {
				t.Errorf("%s: that %s has a code is %v", k.name, symbol, has)
			}
		}
	}
}

// Other programs have more than one way to write some units, and all are read.
func TestOtherCodesOfAUnit(t *testing.T) {
	for _, row := range []struct{ quantity, code, same string }{
		{"area", "[in_i]2", "[sin_i]"},
		{"area", "[ft_i]2", "[sft_i]"},
		{"area", "[yd_i]2", "[syd_i]"},
		{"moment", "[ft_i].[lbf_av]", "[lbf_av].[ft_i]"},
		{"moment", "[in_i].[lbf_av]", "[lbf_av].[in_i]"},
		{"energy", "[lbf_av].[ft_i]", "[ft_i].[lbf_av]"},
		{"stress", "[lbf_av]/[in_i]2", "[psi]"},
		{"mass per area", "[oz_av]/[yd_i]2", "[oz_av]/[syd_i]"},
		{"mass per area", "[lb_av]/[ft_i]2", "[lb_av]/[sft_i]"},
		{"density", "[lb_av]/[ft_i]3", "[lb_av]/[cft_i]"},
		{"density", "[lb_av]/[in_i]3", "[lb_av]/[cin_i]"},
		{"section modulus", "[in_i]3", "[cin_i]"},
		{"mass moment of inertia", "[lb_av].[ft_i]2", "[lb_av].[sft_i]"},
		{"mass moment of inertia", "[lb_av].[in_i]2", "[lb_av].[sin_i]"},
	} {
		for _, k := range kinds {
			if k.name != row.quantity {
				continue
			}
			got, err := k.parse("3 " + row.code)
			want, wantErr := k.parse("3 " + row.same)
			if err != nil || wantErr != nil || got != want {
				t.Errorf("%s: %s is %v, %v, and %s %v, %v", k.name, row.code, got, err, row.same, want, wantErr)
			}
		}
	}
}

func TestParse(t *testing.T) {
	for _, row := range []struct {
		text   string
		want   units.Mass
		kind   error
		reason string
	}{
		{"12.5 [lb_av]", 12.5 * units.Pound, nil, "a pound"},
		{"-3 kg", -3, nil, "a sign"},
		{"+3 kg", 3, nil, "a sign"},
		{"1.5e3 g", 1.5, nil, "an exponent"},
		{"1E-3 t", 1, nil, "a capital one"},
		{".5 kg", 0.5, nil, "no digit before the point"},
		{"5. kg", 5, nil, "none after it"},
		{" 3  kg ", 3, nil, "air"},
		{"", 0, units.ErrSyntax, "nothing"},
		{"kg", 0, units.ErrSyntax, "no number"},
		{"- kg", 0, units.ErrSyntax, "a sign alone"},
		{". kg", 0, units.ErrSyntax, "a point alone"},
		{"1e kg", 0, units.ErrSyntax, "half an exponent"},
		{"1ee3 kg", 0, units.ErrSyntax, "one exponent too many"},
		{"1.2.3 kg", 0, units.ErrSyntax, "one point too many"},
		{"1/2 kg", 0, units.ErrSyntax, "fractions are for people"},
		{"1_000 kg", 0, units.ErrSyntax, "marks too"},
		{"12,5 kg", 0, units.ErrSyntax, "no comma"},
		{"NaN kg", 0, units.ErrSyntax, "no number"},
		{"\u22123 kg", 0, units.ErrSyntax, "a typographic minus is for people"},
		{"3kg", 0, units.ErrSyntax, "no space"},
		{"3", 0, units.ErrNoUnit, "500 what?"},
		{"3 lb", 0, units.ErrUnknownUnit, "a symbol of package units, and no code"},
		{"3 pound", 0, units.ErrUnknownUnit, "a word"},
		{"3 KG", 0, units.ErrUnknownUnit, "the case-insensitive code"},
		{"3 [LB_AV]", 0, units.ErrUnknownUnit, "the case-insensitive code"},
		{"3 kg{dry}", 0, units.ErrUnknownUnit, "an annotation"},
		{"3 kg kg", 0, units.ErrUnknownUnit, "twice"},
		{"3 [lbf_av]", 0, units.ErrWrongQuantity, "a force"},
		{"1e309 kg", 0, units.ErrOutOfRange, "past the largest float64"},
		{"1e999999999 kg", 0, units.ErrOutOfRange, "a gigabyte if it were written out"},
		{strings.Repeat("9", 1000) + " kg", 0, units.ErrSyntax, "longer than anybody writes"},
	} {
		t.Run(row.text[:min(len(row.text), 20)], func(t *testing.T) {
			got, err := ucum.Parse[units.Mass](row.text)
			if row.kind == nil {
				if err != nil || got != row.want {
					t.Errorf("got %v, %v; want %v: %s", got, err, row.want, row.reason)
				}
				return
			}
			var field *units.FieldError
			if got != 0 || !errors.Is(err, row.kind) || !errors.As(err, &field) || !strings.HasSuffix(err.Error(), "one of kg, g, t, [lb_av], [oz_av], [ston_av]") || len(err.Error()) > 300 {
				t.Errorf("got %v, %v; want kind %v: %s", got, err, row.kind, row.reason)
			}
		})
	}
}

func TestFormat(t *testing.T) {
	for _, row := range []struct {
		q      units.Mass
		code   string
		want   string
		kind   error
		reason string
	}{
		{12.5 * units.Pound, "[lb_av]", "12.5 [lb_av]", nil, "as it was written"},
		{units.ShortTon, "[ston_av]", "1 [ston_av]", nil, "a unit whose symbol has a space"},
		{-units.Ounce, "[oz_av]", "-1 [oz_av]", nil, "a sign"},
		{0, "kg", "0 kg", nil, "zero"},
		{1, "lb", "", units.ErrUnknownUnit, "a symbol, and no code"},
		{1, "", "", units.ErrUnknownUnit, "nothing"},
		{1, "[lbf_av]", "", units.ErrWrongQuantity, "a force"},
		{units.Mass(math.NaN()), "kg", "", units.ErrNotFinite, "no number"},
	} {
		got, err := ucum.Format(row.q, row.code)
		if got != row.want || !errors.Is(err, row.kind) {
			t.Errorf("%v in %q: got %q, %v; want %q, %v: %s", row.q, row.code, got, err, row.want, row.kind, row.reason)
		}
		b, err := ucum.Append([]byte("kept "), row.q, row.code)
		if string(b) != "kept "+row.want || !errors.Is(err, row.kind) {
			t.Errorf("%v in %q: Append gives %q, %v", row.q, row.code, b, err)
		}
	}
}

// The digits that a person would write come back as they were, and so do the bits
// of any value, in every code.
func TestPropThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(kinds).Draw(t, "quantity")
		code := rapid.SampledFrom(k.codes).Draw(t, "code")
		text := rapid.StringMatching(`-?[1-9][0-9]{0,7}(\.[0-9]{0,3}[1-9])?`).Draw(t, "number") + " " + code
		value, err := k.parse(text)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := k.format(value, code); err != nil || back != text {
			t.Fatalf("%s: %s comes back as %s, %v", k.name, text, back, err)
		}
		value = rapid.Float64Range(-1e12, 1e12).Draw(t, "value")
		text, err = k.format(value, code)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := k.parse(text); err != nil || math.Float64bits(back) != math.Float64bits(value) {
			t.Fatalf("%s: %v is %s, which comes back as %v, %v", k.name, value, text, back, err)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"12.5 [lb_av]", "-3 kg", "1e-3 [ft_i]/s2", "5 '", "1/2 [in_i]", "3", "NaN kg", "\xff"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, k := range kinds {
			value, err := k.parse(text)
			if err != nil {
				var field *units.FieldError
				if value != 0 || !errors.As(err, &field) {
					t.Errorf("%s: %q: %v, %v", k.name, text, value, err)
				}
				continue
			}
			code := strings.TrimSpace(text)
			code = code[strings.LastIndexByte(code, ' ')+1:]
			again, err := k.format(value, code)
			if err != nil {
				t.Fatalf("%s: %q: %v", k.name, text, err)
			}
			if back, err := k.parse(again); err != nil || math.Float64bits(back) != math.Float64bits(value) {
				t.Errorf("%s: %q is %s, and that %v, %v", k.name, text, again, back, err)
			}
		}
	})
}

// Who has found a code stops looking.
func TestCodesStop(t *testing.T) {
	var first string
	for code := range ucum.Codes[units.Mass]() {
		first = code
		break
	}
	if first != "kg" {
		t.Errorf("the first code of a mass is %s", first)
	}
}

// What is refused is repeated whole up to 60 bytes and cut behind them, and the codes are listed, whichever it is.
func TestRefused(t *testing.T) {
	for _, row := range []struct{ code, shown string }{
		{"[lbf_av]", "[lbf_av]"},
		{strings.Repeat("x", 60), strings.Repeat("x", 60)},
		{strings.Repeat("x", 61), strings.Repeat("x", 60) + "…"},
	} {
		_, err := ucum.Format(units.Pound, row.code)
		if want := `"` + row.shown + `"`; err == nil || !strings.HasPrefix(err.Error(), want) || !strings.HasSuffix(err.Error(), "one of kg, g, t, [lb_av], [oz_av], [ston_av]") {
			t.Errorf("%s: %v, want %s and the codes", row.code, err, want)
		}
	}
}

func Example() {
	mass, err := ucum.Parse[units.Mass]("23.5 [lb_av]")
	fmt.Println(units.US.Format(mass), err)

	text, err := ucum.Format(mass, "kg")
	fmt.Println(text, err)

	_, err = ucum.Parse[units.Mass]("23.5 lb")
	fmt.Println(err)
	// Output:
	// 23.5 lb <nil>
	// 10.659420695 kg <nil>
	// "23.5 lb" has an unknown unit; want a decimal number, a space and one of kg, g, t, [lb_av], [oz_av], [ston_av]
}
