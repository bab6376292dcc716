package lesson_test

import (
	"strings"
	"testing"

	"example.com/steelyard/examples/lesson"
)

// Cells are broken at spaces, each in its own column.
func TestColumns(t *testing.T) {
	var p lesson.Page
	columns := []lesson.Column{{Width: 3, Right: true}, {Width: 8}, {Width: 5, Right: true}}
	p.Columns(columns, "1", "a batten on lines", "5 lb")
	p.Columns(columns, "12", "", "µ")
	p.Columns(columns, "unbroken")
	p.Columns(columns, "3", "beam of 24' 6 1/2\" or so")
	want := "  1  a batten   5 lb\n     on lines\n 12                µ\nunbroken\n  3  beam of\n     24' 6 1/2\"\n     or so\n"
	if got := p.Text(); !strings.HasPrefix(got, want) {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// A paragraph is broken at spaces, but not between a number and its unit.
func TestSay(t *testing.T) {
	var p lesson.Page
	p.Say("%s 0.218 kN and %s 25' 7\"", strings.Repeat("x", 93), strings.Repeat("y", 84))
	want := strings.Repeat("x", 93) + "\n0.218 kN and " + strings.Repeat("y", 84) + "\n25' 7\"\n"
	if got := p.Text(); !strings.HasPrefix(got, want) {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
