package verification

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Label is what a comment names its source behind.
const Label = "Source:"

// Lookup gives the source of a key.
func Lookup(key string) (Source, bool) {
	i := slices.IndexFunc(sources[:], func(s Source) bool { return s.Key == key })
	if i < 0 {
		return Source{}, false
	}
	return sources[i], true
}

// Sources lists the table of sources, in its own order.
func Sources() []Source { return slices.Clone(sources[:]) }

// Resolve gives the key of the table that a text begins with, the longest where there are several. A key ends where a word
// ends: "OSHA 29" is not the beginning of "OSHA 291".
func Resolve(text string) (key string, ok bool) {
	for _, s := range sources {
		rest, begins := strings.CutPrefix(text, s.Key)
		next, _ := utf8.DecodeRuneInString(rest)
		if begins && len(s.Key) > len(key) && (rest == "" || !unicode.IsLetter(next) && !unicode.IsDigit(next)) {
			key, ok = s.Key, true
		}
	}
	return key, ok
}

// Citation is what follows one "Source:" of a comment, on one line.
type Citation string

// Citations finds what a comment names as sources, one for each "Source:" in their order, given its text without comment
// marks. A citation goes as far as the next empty line, or the next line that begins with a label of its own ("Expected:").
func Citations(comment string) (list []Citation) {
	lines := strings.Split(comment, "\n")
	for i, line := range lines {
		for _, rest := range strings.Split(line, Label)[1:] {
			text := []string{rest}
			for _, next := range lines[i+1:] {
				first, _, _ := strings.Cut(strings.TrimSpace(next), " ")
				if first == "" || strings.HasSuffix(first, ":") && first != Label || strings.Contains(next, Label) {
					break
				}
				text = append(text, next)
			}
			list = append(list, Citation(strings.Join(strings.Fields(strings.Join(text, " ")), " ")))
		}
	}
	return list
}

// Unresolved tells of the parts of a citation, which semicolons divide, that begin with no key of the table, and gives
// the keys of the others. A semicolon within brackets divides nothing.
func (c Citation) Unresolved() (parts, keys []string) {
	depth, from := 0, 0
	text := string(c) + ";"
	for i, r := range text {
		switch {
		case r == '(':
			depth++
		case r == ')':
			depth--
		case r == ';' && (depth == 0 || i == len(c)):
			part := strings.TrimSpace(text[from:i])
			from = i + 1
			if key, ok := Resolve(part); ok {
				keys = append(keys, key)
			} else {
				parts = append(parts, part)
			}
		}
	}
	return parts, keys
}
