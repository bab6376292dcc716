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

// Columns writes cells beside one another, each filled into lines as wide as its column, with two characters between columns.
// What has no space to break at is not broken: it stands out of its column.
func (p *Page) Columns(columns []Column, cells ...string) {
	cut, high := make([][]string, len(columns)), 0
	for i := range min(len(cells), len(columns)) {
		cut[i] = fill(cells[i], columns[i].Width)
		high = max(high, len(cut[i]))
	}
	for row := range high {
		var line strings.Builder
		for i, c := range columns {
			text := ""
			if row < len(cut[i]) {
				text = cut[i][row]
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
