package units

import (
	"encoding/json"
	"unicode/utf8"
)

// decodeJSON reads a JSON value into q, and leaves q alone where it cannot. It
// stands beside decode because encoding/json refuses a number for a type that
// reads text in words that do not help: the number wants a unit.
//
// Null is no value and changes nothing, as encoding/json asks of every type.
func decodeJSON[Q Quantity](q *Q, data []byte) error {
	if text, ok := plainString(data); ok {
		return decode(q, text)
	}
	if string(data) == "null" {
		return nil
	}
	var text string
	reason, kind := "is no JSON text", ErrSyntax
	switch {
	case len(data) > 0 && (data[0] == '-' || isDigit(data[0])):
		reason, kind = "is a bare number: write it as text, with its unit", ErrNoUnit
	case json.Unmarshal(data, &text) == nil:
		return decode(q, []byte(text))
	}
	return &ParseError{Text: clip(string(data)), Quantity: (*q).dimension().name, Reason: reason, Err: kind}
}

// plainString gives the text of a JSON string in which nothing is escaped.
func plainString(data []byte) (text []byte, ok bool) {
	if len(data) < 2 || data[0] != '"' || data[len(data)-1] != '"' {
		return nil, false
	}
	text = data[1 : len(data)-1]
	for _, c := range text {
		if c < ' ' || c == '"' || c == '\\' {
			return nil, false
		}
	}
	return text, utf8.Valid(text)
}
