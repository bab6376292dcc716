package units

import "encoding/json"

// decodeJSON reads a JSON value into q, and leaves q alone where it cannot. It
// stands beside decode because encoding/json refuses a number for a type that
// reads text in words that do not help: the number wants a unit.
//
// Null is no value and changes nothing, as encoding/json asks of every type.
func decodeJSON[Q Quantity](q *Q, data []byte) error {
	text := string(data)
	if text == "null" {
		return nil
	}
	fail := func(kind error, reason string) error {
		return &ParseError{Text: clip(text), Quantity: (*q).dimension().name, Reason: reason, Err: kind}
	}
	switch {
	case text == "":
		return fail(ErrSyntax, "is empty")
	case text[0] == '-' || '0' <= text[0] && text[0] <= '9':
		return fail(ErrNoUnit, "is a bare number: write it as text, with its unit")
	case text[0] != '"':
		return fail(ErrSyntax, "is no JSON text")
	}
	var s string
	if err := json.Unmarshal(data, &s); err != nil {
		return fail(ErrSyntax, "is no JSON text")
	}
	return decode(q, []byte(s))
}
