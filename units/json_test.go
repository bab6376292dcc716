package units_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/steelyard/units"
)

// Every quantity from every kind of JSON value. A failure must leave the receiver
// alone and say what would be right.
func TestUnmarshalJSON(t *testing.T) {
	for _, row := range []struct {
		name   string
		data   string
		kind   error // nil where it is read
		says   string
		reason string
	}{
		{"text", `"TEXT"`, nil, "", "the way"},
		{"escaped text", `"\u0033 SI"`, nil, "", "an escape is part of JSON"},
		{"null", `null`, nil, "", "no value: nothing changes"},
		{"number", `12.5`, units.ErrNoUnit, `"12.5" is a bare number: write it as text, with its unit; want a`, "500 what?"},
		{"negative number", `-3`, units.ErrNoUnit, "bare number", "a sign"},
		{"zero", `0`, units.ErrNoUnit, "bare number", "zero too: one rule"},
		{"number in quotes", `"12.5"`, units.ErrNoUnit, "has no unit", "the same fault, in quotes"},
		{"wrong unit", `"12.5 parsec"`, units.ErrUnknownUnit, "not known", "as Parse"},
		{"boolean", `true`, units.ErrSyntax, `"true" is no JSON text; want a`, "no quantity"},
		{"list", `["3 SI"]`, units.ErrSyntax, "is no JSON text", "no quantity"},
		{"object", `{"value":3}`, units.ErrSyntax, "is no JSON text", "no quantity"},
	} {
		t.Run(row.name, func(t *testing.T) {
			for _, k := range kinds {
				data := strings.NewReplacer("TEXT", k.of(3).String(), "SI", strings.TrimPrefix(k.of(3).String(), "3 ")).Replace(row.data)
				got, err := k.unmarshalJSON(k.of(42), data)
				if row.kind == nil {
					if want := map[bool]float64{true: 42, false: 3}[row.data == "null"]; err != nil || number(got) != want {
						t.Errorf("%s: %v, %v; want %v: %s", k.name, got, err, want, row.reason)
					}
					continue
				}
				var parse *units.ParseError
				if !errors.Is(err, row.kind) || !errors.As(err, &parse) || !strings.Contains(err.Error(), row.says) {
					t.Errorf("%s: %v; want %v with %q: %s", k.name, err, row.kind, row.says, row.reason)
				} else if parse.Quantity != k.name {
					t.Errorf("%s: the error is of a %s", k.name, parse.Quantity)
				}
				if number(got) != 42 {
					t.Errorf("%s: the receiver is %v", k.name, got)
				}
			}
		})
	}
}

// UnmarshalJSON may be called by hand, with what is no JSON at all.
func TestUnmarshalJSONOfNoJSON(t *testing.T) {
	for _, data := range []string{"", `"`, `"3 m`, "\"\x00 m\"", `"3 m" "4 m"`, "3 m", "nul", `"24'-6""`, "\"3\tm\""} {
		l := 42 * units.Metre
		var parse *units.ParseError
		if err := l.UnmarshalJSON([]byte(data)); !errors.As(err, &parse) || l != 42 {
			t.Errorf("%q: %v, %v", data, l, err)
		}
	}
}

// A quote that is not closed is no text, however short.
func TestUnmarshalJSONOpenQuote(t *testing.T) {
	for _, data := range []string{`"`, `"3`, `"3 m`} {
		var l units.Length
		if err := l.UnmarshalJSON([]byte(data)); err == nil || !strings.Contains(err.Error(), "is no JSON text") {
			t.Errorf("%s: %v", data, err)
		}
	}
}

// A long JSON value is not repeated whole in the message.
func TestUnmarshalJSONCutsLongValues(t *testing.T) {
	var l units.Length
	err := json.Unmarshal([]byte("["+strings.Repeat("1,", 1000)+"1]"), &l)
	if err == nil || len(err.Error()) > 300 {
		t.Errorf("%d bytes: %v", len(err.Error()), err)
	}
}

// Lists, maps, pointers and keys.
func TestJSONInside(t *testing.T) {
	var got struct {
		List  []units.Force
		Map   map[units.Length]units.Force
		Maybe *units.Mass
		None  *units.Mass
	}
	data := `{"List":["1 kN","2 N"],"Map":{"1 ft":"3 N"},"Maybe":"1 lb","None":null}`
	if err := json.Unmarshal([]byte(data), &got); err != nil {
		t.Fatal(err)
	}
	if len(got.List) != 2 || got.List[0] != units.Kilonewton || got.Map[units.Foot] != 3 || *got.Maybe != units.Pound || got.None != nil {
		t.Errorf("got %+v", got)
	}
	if err := json.Unmarshal([]byte(`{"Map":{"1":"3 N"}}`), &got); !errors.Is(err, units.ErrNoUnit) {
		t.Errorf("a key without a unit: %v", err)
	}
}
