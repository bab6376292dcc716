package units_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/units"
)

// Each symbol of the table of constants gives the constant, to the last bit.
func TestUnitEveryConstant(t *testing.T) {
	for _, row := range unitRows {
		k := kindLike(row.value)
		got, err := k.unit(row.symbol)
		if err != nil || got != row.value {
			t.Errorf("%s: %q gives %v, %v; want %v", row.name, row.symbol, got, err, row.value)
		}
		if !slices.Contains(k.symbols(), row.symbol) {
			t.Errorf("%s: %q is not among the symbols of %s", row.name, row.symbol, k.name)
		}
	}
}

// Each symbol that a list offers can be looked up and read, the SI unit first.
func TestSymbolsCanBeLookedUp(t *testing.T) {
	for _, k := range kinds {
		list := k.symbols()
		if want := strings.TrimPrefix(k.of(1).String(), "1 "); list[0] != want {
			t.Errorf("%s: the first symbol is %q, want %q", k.name, list[0], want)
		}
		rows := 0
		for _, row := range unitRows {
			if kindLike(row.value).name == k.name {
				rows++
			}
		}
		if len(list) != rows {
			t.Errorf("%s: %d symbols for %d constants", k.name, len(list), rows)
		}
		for _, symbol := range list {
			unit, err := k.unit(symbol)
			if read, readErr := k.parse("1 " + symbol); err != nil || readErr != nil || unit != read {
				t.Errorf("%s: %q is %v, %v and 1 of it %v, %v", k.name, symbol, unit, err, read, readErr)
			}
		}
	}
}

func TestUnit(t *testing.T) {
	for _, row := range []struct {
		symbol string
		want   units.Length // zero where it is refused
		kind   error
		says   string
		reason string
	}{
		{"ft", units.Foot, nil, "", "as printed"},
		{"feet", units.Foot, nil, "", "any spelling that Parse reads"},
		{"'", units.Foot, nil, "", "a mark"},
		{"′", units.Foot, nil, "", "a prime"},
		{" ft. ", units.Foot, nil, "", "space and a full stop"},
		{"furlong", 0, units.ErrUnknown, `"furlong" is not known; want a unit of length: m, mm, cm, in, ft, yd`, "not ours"},
		{"", 0, units.ErrUnknown, `"" is not known`, "nothing"},
		{"MM", 0, units.ErrUnknown, "not known", "case matters"},
		{"lb", 0, units.ErrWrongQuantity, `"lb" is another quantity; want a unit of length`, "a mass"},
		{"ton", 0, units.ErrAmbiguousUnit, "short ton", "more than one"},
		{"2 ft", 0, units.ErrUnknown, "not known", "a unit, not a length"},
		{"/2 in", 0, units.ErrUnknown, "not known", "1/2 in is no unit"},
		{`' 6"`, 0, units.ErrUnknown, "not known", `1' 6" is no unit`},
		{strings.Repeat("m", 1000), 0, units.ErrUnknown, "not known", "long"},
	} {
		t.Run(clip(row.symbol), func(t *testing.T) {
			got, err := units.Unit[units.Length](row.symbol)
			if got != row.want {
				t.Errorf("got %v, want %v: %s", got, row.want, row.reason)
			}
			if row.kind == nil {
				if err != nil {
					t.Errorf("%v: %s", err, row.reason)
				}
				return
			}
			var field *units.FieldError
			if !errors.Is(err, row.kind) || !errors.As(err, &field) || !strings.Contains(err.Error(), row.says) || len(err.Error()) > 300 {
				t.Errorf("got %v, want %v with %q: %s", err, row.kind, row.says, row.reason)
			}
		})
	}
}

// A range over the symbols may end early.
func TestSymbolsBreak(t *testing.T) {
	n := 0
	for range units.Symbols[units.Length]() {
		n++
		if n == 2 {
			break
		}
	}
	if n != 2 {
		t.Errorf("%d symbols", n)
	}
}
