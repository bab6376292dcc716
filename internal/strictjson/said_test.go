package strictjson_test

import (
	"encoding/json"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/internal/strictjson"
	"example.com/steelyard/units"
)

// The whole of what is said of one fault.
func TestDecodeSays(t *testing.T) {
	for _, row := range []struct{ name, text, want string }{
		{"digits that would do in quotes", `{"sets": [{"label": 12}]}`, `sets[0].label: 12 is a bare number; want the same in quotes: "12"`},
		{
			"digits that would not", `{"sets": [{"bare": {"mass": 500}}]}`,
			`sets[0].bare.mass: 500 is a bare number, not text in quotes: "500" is not a mass such as "12.5 lb"`,
		},
		{"a letter too many", `{"sets": [{"sppare": true}]}`, `sets[0].sppare: "sppare" is not known; want perhaps "spare"; the fields here are`},
		{"a letter too few", `{"sets": [{"spre": true}]}`, `sets[0].spre: "spre" is not known; want perhaps "spare"; the fields here are`},
		{"a wrong letter", `{"sets": [{"spore": true}]}`, `sets[0].spore: "spore" is not known; want perhaps "spare"; the fields here are`},
		{"two letters swapped", `{"sets": [{"psare": true}]}`, `sets[0].psare: "psare" is not known; want perhaps "spare"; the fields here are`},
		{"two slips in five letters", `{"sets": [{"spoore": true}]}`, `sets[0].spoore: "spoore" is not known; want perhaps "spare"; the fields here are`},
		{"two slips in four letters", `{"sets": [{"spoe": true}]}`, `sets[0].spoe: "spoe" is not known; want one of `},
	} {
		var got house
		if err := strictjson.Decode([]byte(row.text), &got); err == nil || !strings.HasPrefix(err.Error(), row.want) {
			t.Errorf("%s: got %v, want %s", row.name, err, row.want)
		}
	}
}

// A word of up to forty letters is compared, a longer one is not.
func TestDecodeGuessesUpToForty(t *testing.T) {
	var got struct {
		Long string `json:"aaaaaaaaaabbbbbbbbbbccccccccccdddddddddd"`
	}
	word := "aaaaaaaaaabbbbbbbbbbccccccccccddddddddd"
	for _, row := range []struct {
		word    string
		guessed bool
	}{{word + "e", true}, {word + "de", false}} {
		err := strictjson.Decode([]byte(`{"`+row.word+`": ""}`), &got)
		if err == nil || strings.Contains(err.Error(), "perhaps") != row.guessed {
			t.Errorf("%d letters: %v; guessed should be %v", len(row.word), err, row.guessed)
		}
	}
}

// Which keys stand in a path as they are.
func TestMember(t *testing.T) {
	for _, key := range []string{"0", "9", "A", "Z", "a", "z", "_", "0_9AZaz", strings.Repeat("x", 60)} {
		if got, want := strictjson.Member("stock", key), "stock."+key; got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
	for _, key := range []string{"", "/", ":", "@", "[", "`", "{", "a b", "é"} {
		if got, want := strictjson.Member("stock", key), `stock["`+key+`"]`; got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
	if got, want := strictjson.Member("", "a"), "a"; got != want {
		t.Errorf("at the root: got %s, want %s", got, want)
	}
}

// Sixty characters are shown, of however many bytes each.
func TestNameIsShortened(t *testing.T) {
	for _, c := range []string{"x", "é", "🎭"} {
		if got, want := strictjson.Name(strings.Repeat(c, 60)), `"`+strings.Repeat(c, 60)+`"`; got != want {
			t.Errorf("got %s, want %s", got, want)
		}
		for _, n := range []int{61, 62, 70, 1000} {
			if got, want := strictjson.Name(strings.Repeat(c, n)), `"`+strings.Repeat(c, 59)+`…"`; got != want {
				t.Errorf("%d: got %s, want %s", n, got, want)
			}
		}
	}
}

// Where JSON breaks off a whole word is named, and the object or list that it stands in.
func TestDecodeSyntaxNamesTheWord(t *testing.T) {
	for _, row := range []struct{ name, text, field, found, want string }{
		{"from nought", `{"name" 0z9Z_a}`, "name", `"0z9Z_a"`, "JSON: one value, with nothing after it"},
		{"from nine", `{"name" 9z0A_Z}`, "name", `"9z0A_Z"`, "JSON: one value, with nothing after it"},
		{"from a letter", `{"name" z0}`, "name", `"z0"`, "names and texts in double quotes"},
		{"from a capital", `{"name" Z0}`, "name", `"Z0"`, "names and texts in double quotes"},
		{"a space within a word", `{"name": tru e}`, "name", `" "`, "JSON: one value, with nothing after it"},
		{"a number for a key", `{"sets": [{"name": "A", 5: 1}]}`, "sets[0]", `"5"`, "JSON: one value, with nothing after it"},
	} {
		var got house
		err := strictjson.Decode([]byte(row.text), &got)
		var field *units.FieldError
		var syntax *strictjson.SyntaxError
		if !errors.As(err, &field) || !errors.As(err, &syntax) || field.Field != row.field || syntax.Found != row.found || field.Want != row.want {
			t.Errorf("%s: got %v; want %s at %q, %s", row.name, err, row.found, row.field, row.want)
		}
	}
}

// A count of any width has its own bounds.
func TestDecodeCounts(t *testing.T) {
	var got struct {
		Some uint
		Few  uint8
		Any  int16
	}
	for _, row := range []struct{ text, want string }{
		{`{"Some": -1}`, "Some: -1 is negative; want a whole number from 0 to " + strconv.FormatUint(math.MaxUint, 10)},
		{`{"Few": 256}`, "Few: 256 is out of range; want a whole number from 0 to 255"},
		{`{"Any": -32769}`, "Any: -32769 is out of range; want a whole number from -32768 to 32767"},
	} {
		if err := strictjson.Decode([]byte(row.text), &got); err == nil || err.Error() != row.want {
			t.Errorf("got %v, want %s", err, row.want)
		}
	}
	if got := strictjson.Name(""); got != "" {
		t.Errorf("no name gives %s", got)
	}
}

// Span is two ends, which another struct may embed or hold.
type Span struct {
	From string `json:"from"`
	To   string `json:"to"`
}

// A struct that has a name of its own, by its field or by its tag, is an object; one that has none lies open.
func TestDecodeNamedAndEmbedded(t *testing.T) {
	type named struct {
		Inner Span
		Span  `json:"range"`
	}
	text := []byte(`{"Inner": {"from": "a"}, "range": {"to": "b"}}`)
	var got, standard named
	if err := strictjson.Decode(text, &got); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &standard); err != nil {
		t.Fatal(err)
	}
	want := named{Inner: Span{From: "a"}, Span: Span{To: "b"}}
	if diff := cmp.Diff(want, got) + cmp.Diff(want, standard); diff != "" {
		t.Error(diff)
	}
	type quoted struct {
		Count int `json:",string"`
	}
	var outer struct{ quoted }
	if err := strictjson.Decode([]byte(`{}`), &outer); err == nil || !strings.Contains(err.Error(), "is not supported") {
		t.Errorf("an option that is not supported, in an embedded struct: %v", err)
	}
}
