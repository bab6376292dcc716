package strictjson

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/steelyard/units"
)

// SyntaxError says where a text ceases to be JSON. Lines and columns count from
// 1, columns in characters.
type SyntaxError struct {
	Line, Column int
	Found        string // what stands there, in quotes, or a word for the end of the text

	cause error // the standard decoder's own error, where it has one
}

// Unwrap gives the *json.SyntaxError, for callers outside of this module.
func (e *SyntaxError) Unwrap() error { return e.cause }

func (e *SyntaxError) Error() string {
	return fmt.Sprintf("found %s at line %d, column %d, where JSON breaks off", e.Found, e.Line, e.Column)
}

// readable refuses bytes that are not UTF-8: the standard decoder would put
// replacement characters into names, and two names might then become one.
func readable(data []byte) error {
	if utf8.Valid(data) {
		return nil
	}
	i := 0
	for i < len(data) {
		r, n := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && n == 1 {
			break
		}
		i += n
	}
	e := &SyntaxError{Found: fmt.Sprintf("the byte 0x%02X", data[i])}
	e.Line, e.Column = position(data, i)
	return &units.FieldError{Want: "text in UTF-8", Err: e}
}

// syntaxFault reports the text at the place where it ceases to be JSON. The
// tokens tell in which field that is, but not always where: the grammar as a
// whole does, and fallback stands in where it has nothing to say.
func syntaxFault(data []byte, at spot, fallback int) error {
	where := fallback
	syntax := grammar(data)
	if syntax != nil {
		// Whether the offset counts the byte that is wrong depends on the release
		// of Go: a text that is wrong in its first byte tells.
		where = int(syntax.Offset - grammar([]byte("?")).Offset)
		if strings.HasPrefix(syntax.Error(), "unexpected end") {
			where = len(data)
		}
	}
	where = max(0, min(where, len(data)))
	e := &SyntaxError{Found: found(data[where:])}
	if syntax != nil {
		e.cause = syntax
	}
	e.Line, e.Column = position(data, where)
	return &units.FieldError{Field: at.path(), Of: at.of(), Want: hint(data, where), Err: e}
}

// grammar gives the standard decoder's error on the grammar of a text, or nil.
func grammar(data []byte) *json.SyntaxError {
	var whole json.RawMessage
	var syntax *json.SyntaxError
	if errors.As(json.Unmarshal(data, &whole), &syntax) {
		return syntax
	}
	return nil
}

// position turns an offset into a line and a column, in characters, from 1.
func position(data []byte, offset int) (line, column int) {
	before := data[:offset]
	line = 1 + bytes.Count(before, []byte("\n"))
	return line, 1 + utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:])
}

// found names what stands at the head of rest: a word, or one character.
func found(rest []byte) string {
	if len(rest) == 0 {
		return "the end of the text"
	}
	n := 0
	for n < len(rest) && n < maxShown && isWord(rest[n]) {
		n++
	}
	if n == 0 {
		_, n = utf8.DecodeRune(rest)
	}
	return strconv.Quote(string(rest[:n]))
}

func isWord(c byte) bool {
	return c == '_' || '0' <= c && c <= '9' || 'A' <= c && c <= 'Z' || 'a' <= c && c <= 'z'
}

// hint says what would be right, by the slips that people make most.
func hint(data []byte, where int) string {
	before := bytes.TrimRight(data[:where], " \t\r\n")
	if where == len(data) {
		return "the closing quote, } or ]"
	}
	var last byte
	if len(before) > 0 {
		last = before[len(before)-1]
	}
	word := strings.ToLower(strings.Trim(found(data[where:]), `"`))
	switch c := data[where]; {
	case (c == '}' || c == ']') && last == ',':
		return "no comma after the last entry"
	case c == '\'':
		return "double quotes"
	case c == '/' || c == '#':
		return "no comments: JSON has none"
	case strings.HasPrefix(word, "nan") || strings.HasPrefix(word, "inf"):
		return "a finite number"
	case c < ' ':
		return "text closed with a quote on the line where it begins"
	case c == '+' || c == '.':
		return "a number such as 0.5 or 12"
	case (c == '"' || c == '{' || c == '[') && last != 0 && last != ':' && last != ',':
		return "a comma between entries, or a colon after a name"
	case isWord(c) && !('0' <= c && c <= '9'):
		return "names and texts in double quotes"
	}
	return "JSON: one value, with nothing after it"
}
