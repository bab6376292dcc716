package strictjson_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/steelyard/internal/strictjson"
	"example.com/steelyard/units"
)

// Where a text breaks off inside a value that cannot be used, the walk ends there: that is told of the field it was in, and of
// nothing after it.
func TestDecodeBreaksOffInsideAValue(t *testing.T) {
	for _, c := range []struct{ name, text, field string }{
		{"text that reads itself", `"kind": [1, ?`, "kind"},
		{"text", `"name": {"a": ?`, "name"},
		{"truth", `"spare": [1, ?`, "spare"},
		{"number", `"lines": {"a": [?`, "lines"},
		{"list", `"hang": {"a": ?`, "hang"},
		{"entry of a list", `"notes": [[1, ?`, "notes[0]"},
		{"object", `"inside": [1, ?`, "inside"},
		{"object behind a pointer", `"bare": [1, ?`, "bare"},
		{"object by name", `"stock": [1, ?`, "stock"},
		{"entry by name", `"stock": {"a": [1, ?`, "stock.a"},
		{"entry under no key", `"kinds": {"triple": [1, ?`, "kinds.triple"},
		{"after a key", `"stock": {"a" ?`, "stock.a"},
		{"key", `"stock": {"a": 1, ?`, "stock"},
		{"a key again", `"stock": {"a": 1, "a": [1, ?`, "stock.a"},
		{"field that is none", `"stok": [1, ?`, "stok"},
		{"field again", `"lines": 1, "lines": [1, ?`, "lines"},
		{"after a field", `"lines" ?`, "lines"},
	} {
		var got house
		err := strictjson.Decode([]byte(`{"sets":[{`+c.text+`, "more": 1}]}`), &got)
		var broken []string
		for e := range strings.SplitSeq(err.Error(), "\n") {
			if strings.Contains(e, "where JSON breaks off") {
				broken = append(broken, e)
			}
		}
		var syntax *strictjson.SyntaxError
		if !errors.As(err, &syntax) || len(broken) != 1 || !strings.HasPrefix(broken[0], "sets[0]."+c.field+":") && !strings.HasPrefix(broken[0], "sets[0]."+c.field+" ") {
			t.Errorf("%s: %v; want one break, in %s", c.name, err, c.field)
		}
		if strings.Contains(err.Error(), "more") {
			t.Errorf("%s: %v; nothing of what follows is read", c.name, err)
		}
	}
}

// What is too deep ends the walk too, also inside a value that nobody wants.
func TestDecodeTooDeepInsideAValue(t *testing.T) {
	deep := strings.Repeat("[", 10_000)
	for _, field := range []string{"name", "none", "lines"} {
		err := strictjson.Decode([]byte(`{"sets":[{"`+field+`": `+deep+strings.Repeat("]", 10_000)+`, "more": 1}]}`), new(house))
		if !errors.Is(err, units.ErrOutOfRange) || strings.Count(err.Error(), "in one another") != 1 || strings.Contains(err.Error(), "more") {
			t.Errorf("%s: %.300v", field, err)
		}
	}
}

// Of faults of any sort fifty are told one by one, and of the rest how many they are.
func TestDecodeCountsFaultsOfEverySort(t *testing.T) {
	for _, c := range []struct {
		name, entry string
		into        any
	}{
		{"text that its type refuses", `"triple"`, new([]kind)},
		{"a bare number", `12`, new([]pounds)},
		{"no whole number", `1.5`, new([]int)},
		{"another type", `true`, new([]string)},
		{"null", `null`, new([]string)},
		{"an unknown field", `{"none": 1}`, new([]ends)},
	} {
		for _, more := range []int{0, 1, 7} {
			text := "[" + strings.Repeat(c.entry+", ", 49+more) + c.entry + "]"
			lines := strings.Split(strictjson.Decode([]byte(text), c.into).Error(), "\n")
			last := lines[len(lines)-1]
			if more == 0 && (len(lines) != 50 || strings.HasPrefix(last, "and ")) || more > 0 && (len(lines) != 51 || last != fmt.Sprintf("and %d more", more)) {
				t.Errorf("%s, %d: %d lines, the last %q", c.name, 50+more, len(lines), last)
			}
		}
	}
}

func TestDecodeIntoNoFields(t *testing.T) {
	if err := strictjson.Decode([]byte(`{"a": 1}`), new(struct{})); err == nil || !strings.Contains(err.Error(), "want no fields here") {
		t.Error(err)
	}
}
