package lesson

import (
	"strings"
	"unicode/utf8"
)

// Column is one column of what Columns writes.
type Column struct {
	Width int  // in characters
	Right bool // flush right
}

// Columns writes cells beside one another, each filled into lines as wide as its column, with two characters between columns. A
// number is not parted from its unit.
// What has no space to break at is not broken: it stands out of its column.
func (p *Page) Columns(columns []Column, cells ...string) {
	cut, high := make([][]string, len(columns)), 0
	for i := range min(len(cells), len(columns)) {
		cut[i] = fill(glue(cells[i]), columns[i].Width)
		high = max(high, len(cut[i]))
	}
	for row := range high {
		var line strings.Builder
		for i, c := range columns {
			text := ""
			if row < len(cut[i]) {
				text = strings.ReplaceAll(cut[i][row], glued, " ")
			}
			blank := strings.Repeat(" ", max(0, c.Width-utf8.RuneCountInString(text)))
			if i > 0 {
				line.WriteString("  ")
			}
			if c.Right {
				line.WriteString(blank + text)
			} else {
				line.WriteString(text + blank)
			}
		}
		p.text.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
}

// glued stands for a space at which no line is broken.
const glued = "\x00"

// glue keeps a number and its unit together, feet and their inches, and inches and their fraction.
func glue(text string) string {
	digit := func(c byte) bool { return '0' <= c && c <= '9' }
	letter := func(c byte) bool { return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' }
	var b strings.Builder
	for i := range len(text) {
		if text[i] == ' ' && i > 0 && i+1 < len(text) {
			before, after := text[i-1], text[i+1]
			if digit(before) && (letter(after) || digit(after)) || before == '\'' && digit(after) {
				b.WriteString(glued)
				continue
			}
		}
		b.WriteByte(text[i])
	}
	return b.String()
}
