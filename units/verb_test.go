package units_test

import (
	"bytes"
	"fmt"
	"log/slog"
	"math"
	"strings"
	"testing"

	"example.com/steelyard/units"
)

func TestFormat(t *testing.T) {
	trim, low := 7.4676*units.Metre, -0.1524*units.Metre
	for _, row := range []struct {
		format string
		value  any
		want   string
		reason string
	}{
		{"%v", trim, "7.4676 m", "as String"},
		{"%s", trim, "7.4676 m", "as String"},
		{"%q", trim, `"7.4676 m"`, "as String, in quotes"},
		{"%v", 2 * units.SquareMetre, "2 m²", "beyond ASCII"},
		{"%v", units.Length(1e-7), "1e-07 m", "as String"},
		{"%v", 1.5 * units.Minute, "90 s", "seconds"},
		{"%v", 2 * units.FootPerSecond, "0.6096 m/s", "symbol"},
		{"%v", units.Turn / 4, "1.5707963267948966 rad", "shortest digits"},
		{"%v", units.FootPoundForce, "1.3558179483314003 J", "the nearest float64 to 1.3558179483314004"},
		{"%v", 0.25 * units.Kilowatt, "250 W", "symbol"},
		{"%v", 3 * units.KilonewtonPerMetreStretch, "3000 N/m", "symbol"},
		{"%v", 2.5 * units.KilogramMetreSquared, "2.5 kg·m²", "symbol"},
		{"%+v", trim, "7.4676 m", "no sign: fmt gives a plain float none either"},
		{"%#v", trim, "units.Length(7.4676)", "as Go writes a conversion"},
		{"%.2f", trim, "7.47 m", "a unit with every number"},
		{"%f", trim, "7.467600 m", "six places as fmt has it"},
		{"%.0f", trim, "7 m", "no places"},
		{"%+.1f", trim, "+7.5 m", "the sign"},
		{"%8.1f", trim, "   7.5 m", "the width is that of number and unit"},
		{"%-8.1f|", trim, "7.5 m   |", "to the left"},
		{"%08.1f", trim, "0007.5 m", "zeros before the number"},
		{"%08.1f", low, "-000.2 m", "behind its sign"},
		{"%08.1f", 2 * units.SquareMetre, "002.0 m²", "characters, not bytes"},
		{"%-08.1f|", trim, "7.5 m   |", "no zeros behind a number"},
		{"%2.1f", trim, "7.5 m", "wider than its width"},
		{"%01.1f", 2.5 * units.KilogramMetreSquared, "2.5 kg·m²", "the unit alone is wider: no zeros, and no gap"},
		{"%8.1f", 2 * units.SquareMetre, "  2.0 m²", "characters, not bytes"},
		{"%e", trim, "7.467600e+00 m", "an exponent"},
		{"%.2E", trim, "7.47E+00 m", "in capitals"},
		{"%g", trim, "7.4676 m", "the shortest"},
		{"%.3g", trim, "7.47 m", "three digits"},
		{"%G", units.Length(1e-7), "1E-07 m", "in capitals"},
		{"%.3v", trim, "7.47 m", "digits"},
		{"%.3s", trim, "7.47 m", "digits: a text cut short would be another length"},
		{"%+q", units.Area(2), `"2 m\u00b2"`, "ASCII alone"},
		{"% .1f", trim, " 7.5 m", "room for a sign"},
		{"%#.0f", trim, "7. m", "always a point"},
		{"%.3q", trim, `"7.47 m"`, "digits"},
		{"%10v|", trim, "  7.4676 m|", "to the right"},
		{"%-10s|", trim, "7.4676 m  |", "to the left"},
		{"%12q", trim, `  "7.4676 m"`, "to the right"},
		{"%*.*f", []any{9, 2, trim}, "   7.47 m", "width and precision as arguments"},
		{"%x", units.Length(1.5), "0x1.8p+00 m", "the bits"},
		{"%X", units.Length(1.5), "0X1.8P+00 m", "the bits"},
		{"%b", units.Length(1.5), "6755399441055744p-52 m", "the bits"},
		{"%v", units.Length(math.NaN()), "NaN m", "shown, as String does"},
		{"%08.1f", units.Force(math.Inf(-1)), "  -Inf N", "no zeros before no number"},
		{"%d", trim, "%!d(units.Length=7.4676 m)", "a wrong verb, as fmt says it"},
		{"%t", units.Pound, "%!t(units.Mass=0.45359237 kg)", "a wrong verb"},
		{"%z", trim, "%!z(units.Length=7.4676 m)", "no verb"},
		{"%ж", trim, "%!ж(units.Length=7.4676 m)", "no verb, and not ASCII"},
		{"%T", trim, "units.Length", "fmt's own"},
		{"%v", []units.Mass{1, 2}, "[1 kg 2 kg]", "each of a list"},
		{"%.1f", []units.Mass{1, 2}, "[1.0 kg 2.0 kg]", "each of a list"},
		{"%+v", struct{ At units.Length }{trim}, "{At:7.4676 m}", "in a struct"},
		{"%v", &struct{ At units.Length }{trim}, "&{7.4676 m}", "behind a pointer"},
	} {
		t.Run(row.format, func(t *testing.T) {
			args, ok := row.value.([]any)
			if !ok {
				args = []any{row.value}
			}
			if got := fmt.Sprintf(row.format, args...); got != row.want {
				t.Errorf("got %q, want %q: %s", got, row.want, row.reason)
			}
		})
	}
}

// No verb of any quantity may give a number without its unit.
func TestFormatEveryQuantityHasItsUnit(t *testing.T) {
	for _, k := range kinds {
		v := k.of(12.5)
		unit := strings.TrimPrefix(v.String(), "12.5")
		for _, format := range []string{"%v", "%s", "%f", "%.2f", "%8.1f", "%-20.3e", "%g", "%G", "%E", "%F", "%b", "%x", "%+v", "%.1s"} {
			if got := fmt.Sprintf(format, v); !strings.HasSuffix(strings.TrimRight(got, " "), unit) {
				t.Errorf("%s: %s gives %q, without%s", k.name, format, got, unit)
			}
		}
		if got, want := fmt.Sprint(v), v.String(); got != want {
			t.Errorf("%s: Print gives %q, String %q", k.name, got, want)
		}
	}
}

// Both handlers of log/slog write the text with its unit, as they would for any
// type that marshals itself; what is not finite they report, and do not hide.
func TestSlog(t *testing.T) {
	plain := &slog.HandlerOptions{ReplaceAttr: func(_ []string, a slog.Attr) slog.Attr {
		if a.Key == slog.TimeKey {
			return slog.Attr{}
		}
		return a
	}}
	for _, row := range []struct {
		name       string
		value      any
		text, json string
	}{
		{"length", 7.5 * units.Metre, `value="7.5 m"`, `"value":"7.5 m"`},
		{"area", 2 * units.SquareMetre, `value="2 m²"`, `"value":"2 m²"`},
		{"list", []units.Mass{1, 2}, `value="[1 kg 2 kg]"`, `"value":["1 kg","2 kg"]`},
		{"not finite", units.Force(math.NaN()), "value=\"!ERROR:NaN N is not a finite number; want a finite force\"", "NaN N is not a finite number"},
	} {
		t.Run(row.name, func(t *testing.T) {
			var b bytes.Buffer
			slog.New(slog.NewTextHandler(&b, plain)).Info("set", "value", row.value)
			if got := b.String(); !strings.Contains(got, row.text) {
				t.Errorf("text: got %s, want %s", got, row.text)
			}
			b.Reset()
			slog.New(slog.NewJSONHandler(&b, plain)).Info("set", "value", row.value)
			if got := b.String(); !strings.Contains(got, row.json) {
				t.Errorf("JSON: got %s, want %s", got, row.json)
			}
		})
	}
}
