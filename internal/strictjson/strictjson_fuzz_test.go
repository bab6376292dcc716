package strictjson_test

import (
	"bytes"
	"encoding/json"
	"io"
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/steelyard/internal/strictjson"
)

// FuzzDecode checks against the standard decoder, which shares only the lexing:
// no text panics; what we accept it accepts with the same result; and what it
// accepts, with names in their exact case, each once, and without null, we accept.
func FuzzDecode(f *testing.F) {
	for _, seed := range []string{
		`{"name": "Q", "sets": [{"name": "1", "hang": [{"mass": "12.5 lb", "from": "1 lb"}], "lines": 5}]}`, // usable
		`{"sets": [{"bare": {"mass": "3 lb"}, "stock": {"a": 1}, "kinds": {"single": true}}]}`,              // pointer and maps
		`{"sets": [{"wraps": 1e999, "lines": 4.5, "parts": -1, "inside": {"inside": {}}}]}`,                 // numbers that do not fit
		`{"sets": null, "sets": [null, 3, "x", {"hnag": []}], "Name": {}}`,                                  // one of each fault
		`{"sets": [[], {"hang": {"mass": 3}}]}`,                                                             // wrong types
		`{"name": "\ud800\u0000\u001b"}`,                                                                    // half a pair, control characters
		"\uFEFF{}",                                                                                          // a mark before the text
		"{\"name\": \"\xff\"}",                                                                              // not UTF-8
		`{"name": "A",}`, `{} {}`, `[1 2]`, `{"a" 1}`, `{"wraps": NaN}`, "", " ",                            // not JSON
		strings.Repeat(`{"x":[`, 40), // too deep
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var got house
		err := strictjson.Decode(data, &got)
		if err != nil {
			if !reflect.DeepEqual(got, house{}) {
				t.Fatalf("the target was touched: %+v", got)
			}
			if !utf8.ValidString(err.Error()) {
				t.Fatalf("the message is not UTF-8: %q", err)
			}
		}
		data = bytes.TrimPrefix(data, []byte("\uFEFF"))
		var standard house
		dec := json.NewDecoder(bytes.NewReader(data))
		dec.DisallowUnknownFields()
		standardErr := dec.Decode(&standard)
		if standardErr == nil {
			if _, err := dec.Token(); err != io.EOF {
				standardErr = errTrailing
			}
		}
		switch {
		case err == nil && standardErr != nil:
			t.Fatalf("accepted what the standard refuses: %v", standardErr)
		case err == nil && !reflect.DeepEqual(got, standard):
			t.Fatalf("got %+v, the standard %+v", got, standard)
		case err != nil && standardErr == nil && unambiguous(data):
			t.Fatalf("refused what the standard accepts as %+v: %v", standard, err)
		}
	})
}

var errTrailing = io.ErrUnexpectedEOF

// unambiguous reports whether a JSON text is UTF-8, not too deep, without null,
// and with keys that are each written once and as the fields are: in small
// ASCII letters, apart from Plain.
func unambiguous(data []byte) bool {
	if !utf8.Valid(data) {
		return false
	}
	dec := json.NewDecoder(bytes.NewReader(data))
	var keys []map[string]bool // nil for a list
	wantsKey := false
	for {
		tok, err := dec.Token()
		if err != nil {
			return err == io.EOF
		}
		switch tok := tok.(type) {
		case json.Delim:
			switch tok {
			case '{':
				keys = append(keys, map[string]bool{})
			case '[':
				keys = append(keys, nil)
			default:
				keys = keys[:len(keys)-1]
			}
			if len(keys) > 64 {
				return false
			}
			wantsKey = len(keys) > 0 && keys[len(keys)-1] != nil
			continue
		case nil:
			return false
		case string:
			if wantsKey {
				seen := keys[len(keys)-1]
				if seen[tok] || tok != "Plain" && strings.Trim(tok, "abcdefghijklmnopqrstuvwxyz") != "" {
					return false
				}
				seen[tok] = true
				wantsKey = false
				continue
			}
		}
		wantsKey = len(keys) > 0 && keys[len(keys)-1] != nil
	}
}
