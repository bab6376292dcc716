package units_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/steelyard/units"
)

func TestFieldErrorText(t *testing.T) {
	_, noUnit := units.Parse[units.Length]("500")
	for _, row := range []struct {
		name string
		err  units.FieldError
		want string
	}{
		{
			"whole",
			units.FieldError{Field: "lines[2].at", Of: `set "Border"`, Value: "43' 0\" (13.1064 m)", Want: "at most 42' 0\"", Err: units.ErrOutOfRange},
			`lines[2].at (set "Border"): 43' 0" (13.1064 m) is out of range; want at most 42' 0"`,
		},
		{"no value", units.FieldError{Field: "length", Want: "the length of the pipe", Err: units.ErrMissing}, "length: is missing; want the length of the pipe"},
		{"no remedy", units.FieldError{Field: "mass", Value: "-1 kg", Err: units.ErrNegative}, "mass: -1 kg is negative"},
		{"the value itself", units.FieldError{Value: "NaN m", Err: units.ErrNotFinite}, "NaN m is not a finite number"},
		{"owner alone", units.FieldError{Of: `set "Border"`, Err: units.ErrDuplicate}, `set "Border": stands twice`},
		{"text", units.FieldError{Field: "at", Value: "500", Want: "not said twice", Err: noUnit}, `at: "500" has no unit; want a length such as 24' 6 1/2" or 7.48 m`},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := row.err.Error(); got != row.want {
				t.Errorf("got  %s\nwant %s", got, row.want)
			}
		})
	}
}

func TestAt(t *testing.T) {
	at := &units.FieldError{Field: "at", Value: "-1 m", Err: units.ErrNegative}
	first := &units.FieldError{Field: "[0].at", Err: units.ErrMissing}
	itself := &units.FieldError{Err: units.ErrUnknown}
	owned := &units.FieldError{Field: "at", Of: `line "3"`, Err: units.ErrMissing}
	plain := errors.New("plain")
	for _, row := range []struct {
		name, field, of string
		err             error
		want            string
		reason          string
	}{
		{"one", "line", "", at, "line.at: -1 m is negative", "a dot between names"},
		{"element", "lines", "", first, "lines[0].at: is missing", "no dot before an index"},
		{"the value itself", "system", "", itself, "system: is not known", "no dot at the end"},
		{"owner", "line", `set "Border"`, at, `line.at (set "Border"): -1 m is negative`, "owner is taken on"},
		{"owner of an owner", "line", `set "Border"`, owned, `line.at (line "3" of set "Border"): is missing`, "inner first"},
		{"no field", "", `set "Border"`, at, `at (set "Border"): -1 m is negative`, "only the owner is new"},
		{"joined", "line", "", errors.Join(at, first), "line.at: -1 m is negative\nline[0].at: is missing", "each gets the path, in order"},
		{
			"joins of joins", "line", "", errors.Join(errors.Join(at), errors.Join(itself, owned)),
			"line.at: -1 m is negative\nline: is not known\nline.at (line \"3\"): is missing", "each gets the path, in order",
		},
		{"plain", "line", `set "Border"`, plain, `line (set "Border"): plain`, "becomes the fault at the outer field"},
		{"wrapped", "line", "", fmt.Errorf("reading: %w", at), "line: reading: at: -1 m is negative", "no word is lost"},
		{"several wrapped with words", "line", "", fmt.Errorf("both %w and %w", at, plain), "line: both at: -1 m is negative and plain", "no word is lost"},
	} {
		t.Run(row.name, func(t *testing.T) {
			before := row.err.Error()
			got := units.At(row.field, row.of, row.err)
			if got.Error() != row.want {
				t.Errorf("got  %s\nwant %s: %s", got, row.want, row.reason)
			}
			if row.err.Error() != before {
				t.Errorf("the inner error changed to %s", row.err)
			}
			for _, kind := range []error{units.ErrNegative, units.ErrMissing, units.ErrUnknown, plain} {
				if errors.Is(row.err, kind) && !errors.Is(got, kind) {
					t.Errorf("lost the kind %v", kind)
				}
			}
			var field *units.FieldError
			if !errors.As(got, &field) {
				t.Error("no FieldError in the result")
			}
			if _, alone := got.(*units.FieldError); alone == strings.Contains(row.want, "\n") { // the type itself, not what it wraps
				t.Errorf("got a %T: one fault is a *FieldError itself, several are joined", got)
			}
		})
	}
	if units.At("line", "", nil) != nil {
		t.Error("nil did not stay nil")
	}
	nested := units.At("sets", "", units.At("[1]", `set "Border"`, units.At("batten", "", at)))
	if want := `sets[1].batten.at (set "Border"): -1 m is negative`; nested.Error() != want {
		t.Errorf("got %s, want %s", nested, want)
	}
}

// A text that fails inside JSON keeps its ParseError under the path.
func TestAtText(t *testing.T) {
	var set struct{ At units.Length }
	err := units.At("batten.at", "", json.Unmarshal([]byte(`{"At":"5 lb"}`), &set))
	var field *units.FieldError
	var text *units.ParseError
	if !errors.As(err, &field) || field.Field != "batten.at" || !errors.As(err, &text) || !errors.Is(err, units.ErrWrongQuantity) {
		t.Errorf("got %#v", err)
	}
}
