package units_test

import (
	"errors"
	"math"
	"math/big"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/units"
)

// oracle reads the plain part of the grammar a second time, by regular
// expressions and math/big's own number parser, with the factors of the table of
// constants in this test. It gives the exact SI value and the names of the
// quantities that share the unit, or false where it cannot read the text.
type oracle struct {
	number, feetInches *regexp.Regexp
	units              map[string]oracleUnit
}

type oracleUnit struct {
	factor     *big.Rat
	quantities []string
}

func newOracle(t testing.TB) *oracle {
	const (
		decimal  = `[0-9]+\.?[0-9]*|\.[0-9]+`
		fraction = `[0-9]+/[0-9]+`
		mixed    = `[0-9]+(?: +|-)[0-9]+/[0-9]+`
	)
	o := &oracle{
		number:     regexp.MustCompile(`^([+-]?)(?:(` + fraction + `)|(` + mixed + `)|((?:` + decimal + `)(?:[eE][+-]?[0-9]+)?)) *([^ 0-9.,/eE+-].*|[^ 0-9.,/+-])$`),
		feetInches: regexp.MustCompile(`^([+-]?)([0-9]+) *(?:'|ft) *-? *(?:(` + fraction + `)|(` + mixed + `)|(` + decimal + `)) *(?:"|in)$`),
		units:      map[string]oracleUnit{},
	}
	for _, row := range unitRows {
		o.units[row.symbol] = oracleUnit{define(t, row.definition), append(o.units[row.symbol].quantities, kindLike(row.value).name)}
	}
	for _, symbol := range []string{"ft·lbf", "lbf·ft"} { // each order for each of them
		o.units[symbol] = oracleUnit{o.units[symbol].factor, []string{"moment", "energy"}}
	}
	o.units["'"], o.units[`"`] = o.units["ft"], o.units["in"]
	return o
}

// value gives the exact value of a fraction, a mixed number or a decimal.
func (o *oracle) value(fraction, mixed, decimal string) (*big.Rat, bool) {
	if mixed != "" {
		cut := strings.LastIndexAny(mixed, " -")
		whole, _ := new(big.Rat).SetString(strings.TrimRight(mixed[:cut], " "))
		part, ok := o.value(mixed[cut+1:], "", "")
		if !ok {
			return nil, false
		}
		return whole.Add(whole, part), true
	}
	if fraction != "" {
		// Rat.SetString takes 010/1 for an octal number, so the two halves are read apart.
		over, under, _ := strings.Cut(fraction, "/")
		a, _ := new(big.Int).SetString(over, 10)
		b, _ := new(big.Int).SetString(under, 10)
		if b.Sign() == 0 {
			return nil, false
		}
		return new(big.Rat).SetFrac(a, b), true
	}
	if decimal[0] == '.' {
		decimal = "0" + decimal
	}
	return new(big.Rat).SetString(decimal)
}

func (o *oracle) read(text string) (value *big.Rat, quantities []string, negative, ok bool) {
	if m := o.feetInches.FindStringSubmatch(text); m != nil {
		inches, ok := o.value(m[3], m[4], m[5])
		feet, _ := new(big.Rat).SetString(m[2])
		if !ok || inches.Cmp(big.NewRat(12, 1)) >= 0 {
			return nil, nil, false, false
		}
		inches.Mul(inches, o.units["in"].factor)
		feet.Mul(feet, o.units["ft"].factor)
		return feet.Add(feet, inches), []string{"length"}, m[1] == "-", true
	}
	m := o.number.FindStringSubmatch(text)
	if m == nil || len(text) > 60 {
		return nil, nil, false, false
	}
	// math/big would write a large exponent out, so the oracle leaves those alone.
	if _, exponent, found := strings.Cut(strings.ToLower(m[4]), "e"); found && len(strings.TrimLeft(exponent, "+-0")) > 2 {
		return nil, nil, false, false
	}
	unit, known := o.units[m[5]]
	if !known {
		return nil, nil, false, false
	}
	value, ok = o.value(m[2], m[3], m[4])
	if !ok {
		return nil, nil, false, false
	}
	return value.Mul(value, unit.factor), unit.quantities, m[1] == "-", true
}

// FuzzParse reads any text as every quantity. Whatever comes out must be finite
// and come back from its own text; whatever fails must say so in its type; and
// what the oracle can read must be the exact value rounded once.
func FuzzParse(f *testing.F) {
	for _, seed := range []struct{ text, reason string }{
		{`24'-6"`, "feet and inches"},
		{`-0' 6 1/2"`, "sign and fraction"},
		{"24 ft 6 1/2 in", "letters"},
		{"1-1/2 in", "dash in a mixed number"},
		{"12.5 lb", "a mass"},
		{"90 lbf", "a force"},
		{"11 lb/100 ft", "digits within the unit"},
		{"15 oz/yd²", "a superscript"},
		{"5 N m", "a product"},
		{"1e-7 m⁴", "an exponent"},
		{"1e999999999 m", "a huge one"},
		{"1/0 in", "over zero"},
		{"12,5 kg", "a comma"},
		{"\u22123\u202fmm", "typographic signs"},
		{"2 tons", "more than one meaning"},
		{"5e-324 m", "the smallest float64"},
		{"1.7976931348623157e308 N", "the largest"},
		{"9007199254740993 m", "halfway between two float64"},
		{"\xff", "no text at all"},
	} {
		f.Add(seed.text)
	}
	o := newOracle(f)
	f.Fuzz(func(t *testing.T, text string) { checkParse(t, o, text) })
}

// fataler is a *testing.T or a *rapid.T.
type fataler interface{ Fatalf(string, ...any) }

func checkParse(t fataler, o *oracle, text string) {
	exact, quantities, negative, readable := o.read(text)
	for _, k := range kinds {
		v, err := k.parse(text)
		if err != nil {
			var parse *units.ParseError
			if !errors.As(err, &parse) || parse.Quantity != k.name || parse.Err == nil || parse.Reason == "" {
				t.Fatalf("%s: %q: untyped error %#v", k.name, text, err)
			}
			if n := len(err.Error()); n > 1000 {
				t.Fatalf("%s: message of %d bytes", k.name, n)
			}
			if number(v) != 0 {
				t.Fatalf("%s: %q gives %v beside an error", k.name, text, v)
			}
			if readable && slices.Contains(quantities, k.name) {
				want, _ := exact.Float64()
				if !math.IsInf(want, 0) && (want != 0 || exact.Sign() == 0) {
					t.Fatalf("%s: %q refused: %v; want %v", k.name, text, err, want)
				}
			} else if readable && !errors.Is(err, units.ErrWrongQuantity) {
				t.Fatalf("%s: %q is one of %q: %v", k.name, text, quantities, err)
			}
			continue
		}
		got := number(v)
		if math.IsNaN(got) || math.IsInf(got, 0) {
			t.Fatalf("%s: %q gives %v", k.name, text, got)
		}
		if back, err := k.parse(v.String()); err != nil || math.Float64bits(number(back)) != math.Float64bits(got) {
			t.Fatalf("%s: %q is %v, which comes back as %v, %v", k.name, text, v, back, err)
		}
		if !readable {
			continue
		}
		want, _ := exact.Float64()
		if negative {
			want = -want
		}
		if !slices.Contains(quantities, k.name) || math.Float64bits(got) != math.Float64bits(want) {
			t.Fatalf("%s: %q gives %v; the oracle says %q of %v", k.name, text, got, quantities, want)
		}
	}
}
