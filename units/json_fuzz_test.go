package units_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.com/steelyard/units"
)

// FuzzUnmarshalJSON reads any JSON as a quantity. A string must give what Parse
// gives of its text, and every other value an error of a stated kind; only null
// changes nothing and is no fault.
func FuzzUnmarshalJSON(f *testing.F) {
	for _, seed := range []struct{ data, reason string }{
		{`"24'-6\""`, "an escaped mark"},
		{`"15 oz/yd\u00b2"`, "an escape beyond ASCII"},
		{`"3 \ud83d\ude00"`, "a surrogate pair"},
		{` "3 m" `, "space around, which encoding/json cuts off"},
		{`"\/"`, "an escape that Go does not have"},
		{"\"3 m\xff\"", "no UTF-8, which encoding/json mends"},
		{`-1.5e3`, "a number"},
		{`null`, "no value"},
		{`{"a":[true]}`, "a tree"},
		{`"`, "no JSON"},
	} {
		f.Add([]byte(seed.data))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		const before = 42 * units.Metre
		got := before
		err := json.Unmarshal(data, &got)
		var parse *units.ParseError
		var text *string
		switch {
		case !json.Valid(data):
			if err == nil || got != before {
				t.Fatalf("%q: %v, %v", data, got, err)
			}
		case json.Unmarshal(data, &text) != nil: // valid, and neither a string nor null
			if !errors.As(err, &parse) || !errors.Is(err, units.ErrNoUnit) && !errors.Is(err, units.ErrSyntax) || got != before {
				t.Fatalf("%q: %v, %v", data, got, err)
			}
		case text == nil:
			if err != nil || got != before {
				t.Fatalf("%q: %v, %v", data, got, err)
			}
		default:
			want, wantErr := units.Parse[units.Length](*text)
			if wantErr != nil {
				want = before
			}
			if got != want || (err == nil) != (wantErr == nil) || err != nil && err.Error() != wantErr.Error() {
				t.Fatalf("%q: %v, %v; want %v, %v", data, got, err, want, wantErr)
			}
		}
	})
}
