package strictjson

import (
	"reflect"
	"strings"
	"unicode"
	"unicode/utf8"
)

// wanted says in JSON's words what a Go type is read from.
func wanted(t reflect.Type) string {
	if readsText(t) {
		return "text in quotes"
	}
	switch t.Kind() {
	case reflect.Pointer:
		return wanted(t.Elem())
	case reflect.Struct, reflect.Map:
		return "an object: { ... }"
	case reflect.Slice:
		return "a list: [ ... ]"
	case reflect.String:
		return "text in quotes"
	case reflect.Bool:
		return "true or false, without quotes"
	case reflect.Float32, reflect.Float64:
		return "a number, without quotes"
	}
	return "a whole number, without quotes"
}

// maxShown bounds how much of the text a message repeats.
const maxShown = 60

// raw is the text from an offset to the end of the token last read, as it
// stands but on one line, and shortened.
func (w *walker) raw(from int) string {
	// A character takes at most four bytes; white space is the rest.
	cut := min(w.end, from+16*maxShown)
	s := strings.ToValidUTF8(string(w.data[from:cut]), "")
	if s[0] == '{' || s[0] == '[' {
		s = strings.Join(strings.Fields(s), " ")
	}
	if cut < w.end {
		s += "…"
	}
	return shorten(s)
}

// shorten cuts a text that is too long for a message, between two characters,
// and hides control characters, which a terminal might obey.
func shorten(s string) string {
	// Of a very long text only so much is looked at as can be shown.
	s = s[:min(len(s), (maxShown+1)*utf8.UTFMax)]
	runes := []rune(s)
	for i, r := range runes {
		if unicode.IsControl(r) {
			runes[i] = utf8.RuneError
		}
	}
	if len(runes) > maxShown {
		runes = append(runes[:maxShown-1], '…')
	}
	return string(runes)
}
