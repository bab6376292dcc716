package strictjson_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/internal/strictjson"
	"example.com/steelyard/units"
)

// pounds stands for a quantity: it reads itself from text with a unit.
type pounds float64

// refusal stands for the typed error of a quantity's own parser.
type refusal struct{ text string }

func (r *refusal) Error() string { return fmt.Sprintf("%q is not a mass such as \"12.5 lb\"", r.text) }

func (p *pounds) UnmarshalText(text []byte) error {
	var f float64
	var unit string
	if n, _ := fmt.Sscanf(string(text), "%f %s", &f, &unit); n != 2 || unit != "lb" {
		return &refusal{string(text)}
	}
	*p = pounds(f)
	return nil
}

// kind stands for a choice among words, whose refusal says what would be right.
type kind string

func (k *kind) UnmarshalText(text []byte) error {
	switch string(text) {
	case "single", "double":
		*k = kind(text)
		return nil
	}
	return &units.FieldError{Value: string(text), Want: `"single" or "double"`, Err: units.ErrUnknown}
}

// label takes any text, digits too.
type label string

func (l *label) UnmarshalText(text []byte) error { *l = label(text); return nil }

type ends struct {
	From pounds `json:"from"`
	To   pounds `json:"to"`
}

type item struct {
	Name string `json:"name,omitempty"`
	Mass pounds `json:"mass"`
	ends
}

type set struct {
	Name   string         `json:"name"`
	Kind   kind           `json:"kind"`
	Label  label          `json:"label"`
	Hang   []item         `json:"hang,omitempty"`
	Bare   *item          `json:"bare,omitempty"`
	Stock  map[string]int `json:"stock,omitempty"`
	Kinds  map[kind]bool  `json:"kinds,omitempty"`
	Wraps  float64        `json:"wraps,omitzero"`
	Lines  int8           `json:"lines"`
	Parts  uint8          `json:"parts"`
	Spare  bool           `json:"spare"`
	Inside *set           `json:"inside,omitempty"`
	Notes  []string       `json:"notes,omitempty"`
	Hidden string         `json:"-"`
	Plain  int
}

type house struct {
	Name string `json:"name"`
	Sets []set  `json:"sets"`
}

func TestDecode(t *testing.T) {
	const text = `{"name": "Q", "sets": [
		{"name": "1", "kind": "double", "label": "x", "hang": [{"mass": "12.5 lb", "from": "1 lb", "to": "2 lb"}, {}],
		 "bare": {"name": "pipe", "mass": "3 lb"}, "stock": {"23.5 lb": 30, "": -4}, "kinds": {"single": true},
		 "wraps": 2.5e0, "lines": -128, "parts": 255, "spare": true, "inside": {"notes": []}, "notes": ["\u00e9", "b"], "Plain": 7},
		{}
	]}`
	want := house{Name: "Q", Sets: []set{{
		Name: "1", Kind: "double", Label: "x", Hang: []item{{Mass: 12.5, ends: ends{From: 1, To: 2}}, {}},
		Bare: &item{Name: "pipe", Mass: 3}, Stock: map[string]int{"23.5 lb": 30, "": -4}, Kinds: map[kind]bool{"single": true},
		Wraps: 2.5, Lines: -128, Parts: 255, Spare: true, Inside: &set{Notes: []string{}}, Notes: []string{"é", "b"}, Plain: 7,
	}, {}}}
	got := house{Name: "before", Sets: make([]set, 3)} // replaced whole, not merged
	if err := strictjson.Decode([]byte(text), &got); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(item{})); diff != "" {
		t.Error(diff)
	}

	// The standard decoder, which is another road, must come to the same.
	var standard house
	if err := json.Unmarshal([]byte(text), &standard); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(standard, got, cmp.AllowUnexported(item{})); diff != "" {
		t.Errorf("encoding/json disagrees: %s", diff)
	}
}

// row is one text with one fault.
type row struct {
	name   string
	reason string
	text   string
	field  string
	of     string
	value  string
	want   string // a part of what would be right
	kind   error  // nil where the error is of a type of its own
}

func TestDecodeFaults(t *testing.T) {
	long := strings.Repeat("x", 500)
	tests := []row{
		{
			name: "unknown field", reason: "a slip of the pen must not be read as not given",
			text:  `{"sets": [{"name": "A", "hnag": [{"mass": 3}]}]}`,
			field: "sets[0].hnag", of: `"A"`, value: `"hnag"`, want: `perhaps "hang"; the fields here are "name", "kind"`, kind: units.ErrUnknown,
		},
		{
			name: "unknown field, nothing near", reason: "a guess far off would mislead",
			text:  `{"colour": "red"}`,
			field: "colour", value: `"colour"`, want: `one of "name", "sets"`, kind: units.ErrUnknown,
		},
		{
			name: "capitals differ", reason: "names are matched exactly, so that one text has one reading",
			text: `{"Sets": []}`, field: "Sets", value: `"Sets"`, want: `perhaps "sets"`, kind: units.ErrUnknown,
		},
		{
			name: "hidden field", reason: "a field tagged - is not part of the description",
			text: `{"sets": [{"Hidden": "x"}]}`, field: "sets[0].Hidden", value: `"Hidden"`, want: "one of ", kind: units.ErrUnknown,
		},
		{
			name: "hidden field by its tag", reason: "nor is the tag a name",
			text: `{"sets": [{"-": "x"}]}`, field: `sets[0]["-"]`, value: `"-"`, want: "one of ", kind: units.ErrUnknown,
		},
		{
			name: "small letters", reason: "the nearest name is found whatever its case",
			text: `{"sets": [{"PLAIN": 1}]}`, field: "sets[0].PLAIN", value: `"PLAIN"`, want: `perhaps "Plain"`, kind: units.ErrUnknown,
		},
		{
			name: "name twice", reason: "the first name is the one that the reader knows it by",
			text:  `{"sets": [{"name": "A", "name": "B"}]}`,
			field: "sets[0].name", of: `"A"`, value: `"B"`, want: "the field once", kind: units.ErrDuplicate,
		},
		{
			name: "key not plain", reason: "a path with dots in a key would be misread",
			text: `{"a.b": 1}`, field: `["a.b"]`, value: `"a.b"`, want: "one of ", kind: units.ErrUnknown,
		},
		{
			name: "long key", reason: "a message must stay readable",
			text: `{"` + long + `": 1}`, field: `["` + long[:59] + `…"]`, value: `"` + long[:59] + `…"`, want: "one of ", kind: units.ErrUnknown,
		},
		{
			name: "twice", reason: "which of two masses is meant cannot be known",
			text:  `{"sets": [{"hang": [{"mass": "1 lb", "mass": "2 lb"}]}]}`,
			field: "sets[0].hang[0].mass", value: `"2 lb"`, want: "the field once", kind: units.ErrDuplicate,
		},
		{
			name: "embedded twice", reason: "fields of an embedded struct are fields like others",
			text:  `{"sets": [{"hang": [{"from": "1 lb", "from": {"a": [1, 2]}}]}]}`,
			field: "sets[0].hang[0].from", value: `{"a": [1, 2]}`, want: "the field once", kind: units.ErrDuplicate,
		},
		{
			name: "key twice in a map", reason: "a stock listed twice is ambiguous",
			text:  `{"sets": [{"stock": {"23.5 lb": 1, "23.5 lb": 2}}]}`,
			field: `sets[0].stock["23.5 lb"]`, value: "2", want: "the key once", kind: units.ErrDuplicate,
		},
		{
			name: "key of a map refused", reason: "keys may read themselves from text, too",
			text:  `{"sets": [{"kinds": {"triple": true}}]}`,
			field: "sets[0].kinds.triple", value: "triple", want: `"single" or "double"`, kind: units.ErrUnknown,
		},
		{
			name: "text for a list", reason: "wrong JSON type",
			text: `{"sets": "A"}`, field: "sets", value: `"A"`, want: "a list", kind: units.ErrWrongType,
		},
		{
			name: "object for a list", reason: "one entry needs its brackets as well; the message shows it on one line",
			text: "{\"sets\": {\n\t\"name\":   \"A\"\n}}", field: "sets", value: `{ "name": "A" }`, want: "a list", kind: units.ErrWrongType,
		},
		{
			name: "list for an object", reason: "wrong JSON type",
			text: `{"sets": [["A"]]}`, field: "sets[0]", value: `["A"]`, want: "an object", kind: units.ErrWrongType,
		},
		{
			name: "long object for text", reason: "a value is shortened in a message",
			text:  `{"name": {"a": "` + long + `"}}`,
			field: "name", value: `{"a": "` + long[:52] + `…`, want: "text in quotes", kind: units.ErrWrongType,
		},
		{
			name: "object with a hole", reason: "what is cut off is marked, though the head be short",
			text: `{"name": {` + strings.Repeat(" ", 2000) + `"a": 1}}`, field: "name", value: "{…", want: "text in quotes", kind: units.ErrWrongType,
		},
		{
			name: "number for text", reason: "wrong JSON type",
			text: `{"name": 12}`, field: "name", value: "12", want: "text in quotes", kind: units.ErrWrongType,
		},
		{
			name: "text for true", reason: "wrong JSON type",
			text: `{"sets": [{"spare": "true"}]}`, field: "sets[0].spare", value: `"true"`, want: "true or false", kind: units.ErrWrongType,
		},
		{
			name: "text for a number", reason: "wrong JSON type",
			text: `{"sets": [{"wraps": "2.5"}]}`, field: "sets[0].wraps", value: `"2.5"`, want: "a number, without quotes", kind: units.ErrWrongType,
		},
		{
			name: "truth for a quantity", reason: "wrong JSON type",
			text: `{"sets": [{"hang": [{"mass": true}]}]}`, field: "sets[0].hang[0].mass", value: "true", want: "text in quotes", kind: units.ErrWrongType,
		},
		{
			name: "object for a pointer", reason: "the target of a pointer says what is wanted",
			text: `{"sets": [{"bare": []}]}`, field: "sets[0].bare", value: "[]", want: "an object", kind: units.ErrWrongType,
		},
		{
			name: "bare number", reason: "a quantity needs its unit; the name of the owner may stand after it",
			text:  `{"name": "Q", "sets": [{"hang": [{"mass": 500, "name": "border"}], "name": "Second electric"}]}`,
			field: "sets[0].hang[0].mass", of: `"border" of "Second electric"`, value: "500", kind: units.ErrWrongType,
		},
		{
			name: "bare number for a word", reason: "where the digits alone would do, only the quotes are missing",
			text: `{"sets": [{"label": 12}]}`, field: "sets[0].label", value: "12", want: `the same in quotes: "12"`, kind: units.ErrWrongType,
		},
		{
			name: "wrong word", reason: "a type that says what would be right keeps its words",
			text: `{"sets": [{"name": "A", "kind": "triple"}]}`, field: "sets[0].kind", of: `"A"`, value: "triple", want: `"single" or "double"`, kind: units.ErrUnknown,
		},
		{
			name: "refused text", reason: "the parser's own error stays within reach",
			text: `{"sets": [{"hang": [{"mass": "12  stone"}]}]}`, field: "sets[0].hang[0].mass", value: `"12  stone"`,
		},
		{
			name: "null", reason: "null could mean nothing, zero or not known",
			text: `{"sets": [{"hang": null}]}`, field: "sets[0].hang", value: "null", want: "the field left out", kind: units.ErrWrongType,
		},
		{
			name: "null for a pointer", reason: "no exception for pointers",
			text: `{"sets": [{"bare": null}]}`, field: "sets[0].bare", value: "null", want: "the field left out", kind: units.ErrWrongType,
		},
		{
			name: "null entry", reason: "an entry of a list cannot be left out as a field can",
			text: `{"sets": [{}, null]}`, field: "sets[1]", value: "null", want: "the entry left out", kind: units.ErrWrongType,
		},
		{
			name: "null document", reason: "a null would leave the target as it was",
			text: `null`, value: "null", want: "a value", kind: units.ErrWrongType,
		},
		{
			name: "half a line", reason: "a count is whole",
			text: `{"sets": [{"lines": 4.5}]}`, field: "sets[0].lines", value: "4.5", want: "a whole number", kind: units.ErrWrongType,
		},
		{
			name: "whole with exponent", reason: "the standard decoder refuses it as well",
			text: `{"sets": [{"lines": 1e1}]}`, field: "sets[0].lines", value: "1e1", want: "without point and exponent", kind: units.ErrWrongType,
		},
		{
			name: "too many lines", reason: "an overflow must not wrap round",
			text: `{"sets": [{"lines": 128}]}`, field: "sets[0].lines", value: "128", want: "from -128 to 127", kind: units.ErrOutOfRange,
		},
		{
			name: "far too many", reason: "longer than any integer",
			text: `{"sets": [{"parts": 99999999999999999999999}]}`, field: "sets[0].parts", value: "99999999999999999999999", want: "from 0 to 255", kind: units.ErrOutOfRange,
		},
		{
			name: "negative count", reason: "an unsigned field has no negative values",
			text: `{"sets": [{"parts": -1}]}`, field: "sets[0].parts", value: "-1", want: "from 0 to 255", kind: units.ErrNegative,
		},
		{
			name: "negative fraction", reason: "for a count the fraction is the greater fault",
			text: `{"sets": [{"parts": -1.5}]}`, field: "sets[0].parts", value: "-1.5", want: "a whole number", kind: units.ErrWrongType,
		},
		{
			name: "float overflow", reason: "an infinity must not come in",
			text: `{"sets": [{"wraps": 1e999}]}`, field: "sets[0].wraps", value: "1e999", want: "a smaller number", kind: units.ErrOutOfRange,
		},
		{
			name: "empty", reason: "an empty file is not an empty house",
			text: ``, want: "an object", kind: units.ErrMissing,
		},
		{
			name: "white space only", reason: "nor is a blank one",
			text: " \n\t ", want: "an object", kind: units.ErrMissing,
		},
		{
			name: "mark only", reason: "a byte order mark is nothing to read",
			text: "\uFEFF", want: "an object", kind: units.ErrMissing,
		},
		{
			name: "list at the root", reason: "wrong JSON type at the root",
			text: `[{"name": "A"}]`, value: `[{"name": "A"}]`, want: "an object", kind: units.ErrWrongType,
		},
		{
			name: "too deep", reason: "the call stack is finite",
			text: `{"sets": [` + strings.Repeat(`{"inside":`, 62) + `{"hang": []`, field: "sets[0]" + strings.Repeat(".inside", 62),
			want: "at most 64", kind: units.ErrOutOfRange,
		},
		{
			name: "too deep where passed over", reason: "what is passed over is counted too",
			text: `{"sets": {"x": ` + strings.Repeat("[", 100000), field: "sets", want: "at most 64", kind: units.ErrOutOfRange,
		},
	}
	names := map[string]bool{}
	for _, tt := range tests {
		if names[tt.name] || tt.reason == "" {
			t.Errorf("row %q: needs a name of its own and a reason", tt.name)
		}
		names[tt.name] = true
		t.Run(tt.name, func(t *testing.T) {
			got := house{Name: "before"}
			err := strictjson.Decode([]byte(tt.text), &got)
			if got.Name != "before" || got.Sets != nil {
				t.Errorf("the target was touched: %+v", got)
			}
			all := fieldErrors(t, err)
			if len(all) == 0 {
				t.Fatalf("no fault, error %v", err)
			}
			fe := all[len(all)-1]
			if len(all) != 1 || fe.Field != tt.field || fe.Of != tt.of || fe.Value != tt.value {
				t.Errorf("got  %d faults, %q of %q: %q\nwant 1 fault, %q of %q: %q", len(all), fe.Field, fe.Of, fe.Value, tt.field, tt.of, tt.value)
			}
			if !strings.Contains(fe.Want, tt.want) {
				t.Errorf("wants %q, should say %q", fe.Want, tt.want)
			}
			if tt.kind != nil && !errors.Is(err, tt.kind) {
				t.Errorf("%v is not %q", err, tt.kind)
			}
		})
	}
}

func TestDecodeSyntax(t *testing.T) {
	tests := []struct {
		name, reason, text string
		field, of          string
		line, column       int
		found, want        string
		notJSON            bool
	}{
		{
			name: "comma after the last", reason: "the commonest slip after an edit", text: "{\n \"name\": \"é\",}",
			line: 2, column: 14, found: `"}"`, want: "no comma after the last entry",
		},
		{
			name: "comma missing", reason: "the next commonest", text: "{\"name\": \"A\"\n\"sets\": []}",
			line: 2, column: 1, found: `"\""`, want: "a comma",
		},
		{
			name: "not a number", reason: "some programs write it; JSON has none; the set is named", text: `{"sets": [{"name": "A", "wraps": NaN}]}`,
			field: "sets[0].wraps", of: `"A"`, line: 1, column: 34, found: `"NaN"`, want: "a finite number",
		},
		{
			name: "infinity", reason: "the same with its sign", text: `{"sets": [{"wraps": -Infinity}]}`,
			field: "sets[0].wraps", line: 1, column: 22, found: `"Infinity"`, want: "a finite number",
		},
		{
			name: "single quotes", reason: "as in other languages", text: `{"name": 'A'}`,
			field: "name", line: 1, column: 10, found: `"'"`, want: "double quotes",
		},
		{
			name: "no quotes", reason: "as in other languages", text: `{name: "A"}`,
			line: 1, column: 2, found: `"name"`, want: "double quotes",
		},
		{
			name: "comment", reason: "as in other languages", text: "{ // the house\n}",
			line: 1, column: 3, found: `"/"`, want: "no comments",
		},
		{
			name: "line break in text", reason: "a quote left out", text: "{\"name\": \"A\n}",
			field: "name", line: 1, column: 12, found: `"\n"`, want: "closed with a quote",
		},
		{
			name: "point first", reason: "JSON wants the 0", text: `{"sets": [{"wraps": .5}]}`,
			field: "sets[0].wraps", line: 1, column: 21, found: `"."`, want: "0.5",
		},
		{
			name: "cut short", reason: "half a file", text: `{"sets": [{"name": "A"}`,
			field: "sets[1]", line: 1, column: 24, found: "the end of the text", want: "closing",
		},
		{
			name: "cut inside text", reason: "half a file", text: `{"sets": [{"name": "A`,
			field: "sets[0].name", line: 1, column: 22, found: "the end of the text", want: "closing",
		},
		{
			name: "wrong bracket", reason: "brackets pair", text: `{"sets": [}`,
			field: "sets[0]", line: 1, column: 11, found: `"}"`, want: "JSON",
		},
		{
			name: "two documents", reason: "only one of them could be meant", text: "{}\n{}",
			line: 2, column: 1, found: `"{"`, want: "a comma",
		},
		{
			name: "trailing word", reason: "data behind the value", text: "{} x",
			line: 1, column: 4, found: `"x"`, want: "double quotes",
		},
		{
			name: "trailing comma", reason: "a separator behind the value is data too", text: "{},",
			line: 1, column: 3, found: `","`, want: "nothing after it",
		},
		{
			name: "lone comma", reason: "a separator is not nothing", text: ",",
			line: 1, column: 1, found: `","`, want: "JSON",
		},
		{
			name: "junk", reason: "another kind of file", text: "%PDF-1.7",
			line: 1, column: 1, found: `"%"`, want: "JSON",
		},
		{
			name: "not UTF-8", reason: "an old code page; a replacement character would make names equal", text: "{\"name\":\n \"\xe9\"}",
			line: 2, column: 3, found: "the byte 0xE9", want: "UTF-8", notJSON: true,
		},
		{
			name: "two-byte text", reason: "some editors save so", text: "\xff\xfe{\x00}\x00",
			line: 1, column: 1, found: "the byte 0xFF", want: "UTF-8", notJSON: true,
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got house
			err := strictjson.Decode([]byte(tt.text), &got)
			all := fieldErrors(t, err)
			var syntax *strictjson.SyntaxError
			if len(all) != 1 || !errors.As(err, &syntax) {
				t.Fatalf("%d faults: %v", len(all), err)
			}
			fe := all[0]
			if fe.Field != tt.field || fe.Of != tt.of || !strings.Contains(fe.Want, tt.want) {
				t.Errorf("field %q of %q, wants %q; should be %q of %q, %q", fe.Field, fe.Of, fe.Want, tt.field, tt.of, tt.want)
			}
			if syntax.Line != tt.line || syntax.Column != tt.column || syntax.Found != tt.found {
				t.Errorf("line %d, column %d, found %s; should be %d, %d, %s", syntax.Line, syntax.Column, syntax.Found, tt.line, tt.column, tt.found)
			}
			var standard *json.SyntaxError
			if errors.As(err, &standard) == tt.notJSON {
				t.Errorf("the standard decoder's error: within reach %v", !tt.notJSON)
			}
		})
	}
}

func TestDecodeReportsTogetherInOrder(t *testing.T) {
	const text = `{
		"sets": [
			{"hang": [{"mass": 12}, {"mass": "1 stone", "name": "border"}], "lines": 4.5, "name": "First"},
			{"name": "Second", "knid": "single", "kind": "single", "kind": "double", "bare": null},
			{"name": "Third", "wraps": NaN, "lines": "not reached"}
		]
	}`
	err := strictjson.Decode([]byte(text), new(house))
	var got []string
	for _, fe := range fieldErrors(t, err) {
		got = append(got, fe.Field+" "+fe.Of)
	}
	want := []string{
		`sets[0].hang[0].mass "First"`,
		`sets[0].hang[1].mass "border" of "First"`,
		`sets[0].lines "First"`,
		`sets[1].knid "Second"`,
		`sets[1].kind "Second"`,
		`sets[1].bare "Second"`,
		`sets[2].wraps "Third"`,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	var refused *refusal
	if !errors.As(err, &refused) {
		t.Error("the parser's own error is out of reach")
	}
	for _, kind := range []error{units.ErrWrongType, units.ErrUnknown, units.ErrDuplicate} {
		if !errors.Is(err, kind) {
			t.Errorf("%q is out of reach", kind)
		}
	}
	if lines := strings.Count(err.Error(), "\n") + 1; lines != len(want) {
		t.Errorf("%d lines for %d faults:\n%v", lines, len(want), err)
	}
}

func TestDecodeCutsALongList(t *testing.T) {
	text := `{"sets": [` + strings.Repeat(`{"wrap": 1},`, 120) + `{}]`
	err := strictjson.Decode([]byte(text), new(house))
	lines := strings.Split(err.Error(), "\n")
	// Fifty faults, the end of the text that is missing, and the count of the rest.
	if len(lines) != 52 || lines[51] != "and 70 more" || !strings.Contains(lines[50], "the end of the text") {
		t.Errorf("%d lines, the last two:\n%s", len(lines), strings.Join(lines[max(0, len(lines)-2):], "\n"))
	}
}

func TestDecodeWideIsNotDeep(t *testing.T) {
	one := `{"hang": [{}], "stock": {"a": 1}, "bare": {}}`
	var got house
	if err := strictjson.Decode([]byte(`{"sets": [`+strings.Repeat(one+",", 99)+one+`]}`), &got); err != nil || len(got.Sets) != 100 {
		t.Errorf("%d sets of 100: %v", len(got.Sets), err)
	}
	// What is passed over is counted out again, too.
	over := `{"name": [[{}], {"a": []}]}`
	err := strictjson.Decode([]byte(`{"sets": [`+strings.Repeat(over+",", 39)+over+`]}`), &got)
	if all := fieldErrors(t, err); len(all) != 40 || errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("%d faults of 40: %v", len(all), err)
	}
}

func TestDecodeMessage(t *testing.T) {
	const text = `{"sets": [{"name": "Second electric", "hang": [{"name": "border", "mass": 500}]}]}`
	err := strictjson.Decode([]byte(text), new(house))
	const want = `sets[0].hang[0].mass ("border" of "Second electric"): 500 is a bare number, not text in quotes: ` +
		`"500" is not a mass such as "12.5 lb"`
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

// The quantities of units are what a description is made of: their errors must
// come through without saying anything twice.
func TestDecodeQuantities(t *testing.T) {
	type pipe struct {
		Length units.Length `json:"length"`
		Mass   units.Mass   `json:"mass"`
	}
	var got pipe
	if err := strictjson.Decode([]byte(`{"length": "25 m", "mass": "100 kg"}`), &got); err != nil {
		t.Fatal(err)
	}
	if want := (pipe{25 * units.Metre, 100 * units.Kilogram}); got != want {
		t.Errorf("got %v, want %v", got, want)
	}
	err := strictjson.Decode([]byte(`{"length": 24, "mass": "5 ft"}`), &got)
	var pe *units.ParseError
	if !errors.As(err, &pe) || !errors.Is(err, units.ErrNoUnit) || !errors.Is(err, units.ErrWrongQuantity) || !errors.Is(err, units.ErrWrongType) {
		t.Errorf("kinds out of reach: %v", err)
	}
	if strings.Count(err.Error(), "5 ft") != 1 {
		t.Errorf("says the text twice: %v", err)
	}
}

func TestDecodeHidesControlCharacters(t *testing.T) {
	err := strictjson.Decode([]byte("{\"name\": {\"a\": \"\u009b31m\"}, \"\u009b\": 1, \"\\u001b[2J\": 2}"), new(house))
	if strings.ContainsAny(err.Error(), "\u009b\u001b") {
		t.Errorf("a terminal would obey: %q", err)
	}
}

// itself decodes itself: the walk must not call back into it.
type itself struct {
	Mass pounds `json:"mass"`
}

func (i *itself) UnmarshalJSON(data []byte) error { return strictjson.Decode(data, i) }

func TestDecodeFromUnmarshalJSON(t *testing.T) {
	var got struct{ Inner itself }
	if err := json.Unmarshal([]byte(`{"Inner": {"mass": "3 lb"}}`), &got); err != nil || got.Inner.Mass != 3 {
		t.Errorf("got %v, %v", got, err)
	}
	err := json.Unmarshal([]byte(`{"Inner": {"mass": 3}}`), &got)
	var fe *units.FieldError
	if !errors.As(err, &fe) || fe.Field != "mass" {
		t.Errorf("the fault did not come through encoding/json: %v", err)
	}
}

func TestDecodeTargets(t *testing.T) {
	type clash struct {
		A int `json:"B"`
		B int
	}
	type quoted struct {
		A int `json:"a,string"`
	}
	type embedsPointer struct{ *set }
	tests := []struct {
		name, reason string
		into         any
		text         string
	}{
		{"nil", "there is nowhere to write", nil, `{}`},
		{"no pointer", "a copy would be filled and lost", house{}, `{}`},
		{"nil pointer", "there is nowhere to write", (*house)(nil), `{}`},
		{"channel", "not data", new(chan int), `{}`},
		{"any", "a description has a type", new(any), `{}`},
		{"bytes", "the standard reads them as base64, which nobody writes by hand", new([]byte), `"AAAA"`},
		{"array", "a list of fixed length would need rules of its own", new([2]int), `[1, 2]`},
		{"map by number", "JSON's keys are text", new(map[int]int), `{}`},
		{"two fields of one name", "one of them could never be given", new(clash), `{"B": 1}`},
		{"option string", "numbers in quotes would be a second way to write one", new(quoted), `{"a": "1"}`},
		{"embedded pointer", "whether to make one would depend on the text", new(embedsPointer), `{}`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			err := strictjson.Decode([]byte(tt.text), tt.into)
			if err == nil || !strings.HasPrefix(err.Error(), "strictjson: ") {
				t.Errorf("error %v, should be the program's fault", err)
			}
		})
	}
}

type inner struct {
	X string `json:"x"`
	Y int    `json:"y"`
}

type Same struct {
	Y2 int `json:"y2"`
}

// A field of an embedded struct gives way to one of the same name outside, as in Go.
func TestDecodeEmbedded(t *testing.T) {
	type shadow struct {
		inner
		X int `json:"x"`
		Same
	}
	var got, standard shadow
	const text = `{"x": 1, "y": 2, "y2": 3}`
	if err := strictjson.Decode([]byte(text), &got); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(text), &standard); err != nil {
		t.Fatal(err)
	}
	if got != standard || got.X != 1 || got.Y != 2 || got.Y2 != 3 {
		t.Errorf("got %+v, encoding/json %+v", got, standard)
	}
}

// fieldErrors takes the faults out of a joined error.
func fieldErrors(t *testing.T, err error) []*units.FieldError {
	t.Helper()
	many, ok := err.(interface{ Unwrap() []error })
	if !ok {
		var fe *units.FieldError
		if errors.As(err, &fe) {
			return []*units.FieldError{fe}
		}
		return nil
	}
	var out []*units.FieldError
	for _, e := range many.Unwrap() {
		var fe *units.FieldError
		if errors.As(e, &fe) {
			out = append(out, fe)
		}
	}
	return out
}
