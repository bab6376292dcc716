package main

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/steelyard/units"
)

// The sheet is width wide; its entries stand in the column entry, under a label,
// and are named there in so many characters, then an amount, then a remark.
const (
	width  = 100
	entry  = 13
	named  = 37
	amount = 11
)

// sheet is the printed page.
type sheet struct {
	strings.Builder
	system units.System
	bases  []string // what limits and steps rest on, in the order of their numbers
}

func (s *sheet) line(format string, args ...any) {
	s.WriteString(strings.TrimRight(printable(fmt.Sprintf(format, args...)), " "))
	s.WriteByte('\n')
}

// printable puts a mark in place of what would steer a terminal or turn the
// direction of text: names come from a file that anybody may have written.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || string(r) == nbsp || unicode.IsPrint(r) {
			return r
		}
		return '\uFFFD'
	}, text)
}

func (s *sheet) rule(of string) { s.line("%s", strings.Repeat(of, width)) }

// wrap writes text from a column on, in as many lines as it takes; the first of
// them follows head.
func (s *sheet) wrap(head string, column int, text string) {
	row := pad(head, column)
	room := width - column
	used := 0
	for _, word := range strings.FieldsFunc(glue(text), func(r rune) bool { return r == ' ' }) {
		n := utf8.RuneCountInString(word)
		if used > 0 && used+1+n > room {
			s.line("%s", row)
			row, used = strings.Repeat(" ", column), 0
		}
		if used > 0 {
			row += " "
			used++
		}
		row += word
		used += n
	}
	s.line("%s", row)
}

// pad fills text up to a width counted in characters.
func pad(text string, to int) string {
	return text + strings.Repeat(" ", max(0, to-utf8.RuneCountInString(text)))
}

// right sets text flush right in a width counted in characters.
func right(text string, to int) string {
	return strings.Repeat(" ", max(0, to-utf8.RuneCountInString(text))) + text
}

// row writes an entry: what, how much, and a remark that wraps below itself.
func (s *sheet) row(label, what, much, remark string) {
	s.wrapRow(pad("  "+label, entry)+pad(what, named)+right(much, amount), entry+named+amount+2, remark)
}

// nbsp keeps what stands on both sides of it on one line; String prints it as a space.
const nbsp = "\u00a0"

// String is the page.
func (s *sheet) String() string { return strings.ReplaceAll(s.Builder.String(), nbsp, " ") }

// glue keeps a number and its unit, feet and their inches, and inches and their
// fraction together.
func glue(text string) string {
	b := []byte(text)
	var out strings.Builder
	for i, c := range b {
		if c == ' ' && i > 0 && i+1 < len(b) && glued(b[i-1], b[i+1]) {
			out.WriteString(nbsp)
			continue
		}
		out.WriteByte(c)
	}
	return out.String()
}

func glued(before, after byte) bool {
	digit := func(c byte) bool { return '0' <= c && c <= '9' }
	letter := func(c byte) bool { return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' }
	return digit(before) && (letter(after) || digit(after)) || before == '\'' && digit(after)
}

// wrapRow writes head and text on one line where they fit, and the text below
// the head where they do not.
func (s *sheet) wrapRow(head string, column int, text string) {
	if column+utf8.RuneCountInString(text) <= width {
		s.line("%s%s", pad(head, column), text)
		return
	}
	s.wrap(head, column, text)
}

// mass is written with one place in pounds and two in kilograms, zeros too, so
// that a column of them adds up by eye.
func (s *sheet) mass(m units.Mass) string {
	if s.system == units.US {
		return s.system.FormatPlaces(m, 1)
	}
	return s.system.FormatPlaces(m, 2)
}

// force is written like mass, for the same reason.
func (s *sheet) force(f units.Force) string {
	if s.system == units.US {
		return s.system.FormatPlaces(f, 1)
	}
	return s.system.FormatPlaces(f, 3)
}

// speed is written with one place in ft/s and two in m/s.
func (s *sheet) speed(v units.Speed) string {
	if s.system == units.US {
		return s.system.FormatPlaces(v, 1)
	}
	return s.system.FormatPlaces(v, 2)
}

// weight is the force that a mass out of balance makes.
func (s *sheet) weight(m units.Mass) string { return s.force(m.Weight(units.StandardGravity)) }

// format writes what stands in text; forces and stresses with even places, as in
// the columns.
func (s *sheet) format(q units.Value) string {
	switch q := q.(type) {
	case units.Force:
		return s.force(q)
	case units.Stress:
		return s.system.FormatPlaces(q, 1)
	}
	return s.system.Format(q)
}

// clip shortens a name that would break the columns.
func clip(text string, to int) string {
	if utf8.RuneCountInString(text) <= to {
		return text
	}
	return string([]rune(text)[:to-1]) + "…"
}
