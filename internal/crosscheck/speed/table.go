package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// row is one line of the table. What is not known or makes no sense stays empty.
type row struct {
	group                                  string // above the first of its rows
	what, ours, rival, than, ratio, allocs string
	asked                                  string
	met                                    verdict
}

// verdict is whether a figure is what was asked for.
type verdict int

const (
	nothingAsked verdict = iota
	met
	missed
)

func (v verdict) String() string { return [...]string{"", "yes", "NO"}[v] }

// verdictOf is yes where all of it is so.
func verdictOf(is ...bool) verdict {
	for _, is := range is {
		if !is {
			return missed
		}
	}
	return met
}

var columns = [...]string{"", "ours", "against", "which is", "ratio", "allocs", "asked", "met"}

// right tells which columns are numbers.
var right = [len(columns)]bool{1: true, 2: true, 4: true, 5: true}

func (r row) cells() [len(columns)]string {
	return [...]string{r.what, r.ours, r.rival, r.than, r.ratio, r.allocs, r.asked, r.met.String()}
}

// write writes the rows under their groups, aligned.
func write(w io.Writer, rows []row) error {
	lines := [][len(columns)]string{columns}
	for _, r := range rows {
		lines = append(lines, r.cells())
	}
	var width [len(columns)]int
	for _, cells := range lines {
		for c, text := range cells {
			if c == 0 && text != "" {
				text = "  " + text
			}
			width[c] = max(width[c], utf8.RuneCountInString(text))
		}
	}
	var out strings.Builder
	group := ""
	for i, cells := range lines {
		if i > 0 && rows[i-1].group != group {
			group = rows[i-1].group
			fmt.Fprintf(&out, "\n%s\n", group)
		}
		if i > 0 {
			cells[0] = "  " + cells[0]
		}
		var line strings.Builder
		for c, text := range cells {
			pad := strings.Repeat(" ", width[c]-utf8.RuneCountInString(text))
			if right[c] {
				text = pad + text
			} else {
				text += pad
			}
			line.WriteString(text + "  ")
		}
		out.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
	_, err := io.WriteString(w, out.String())
	return err
}

// ns writes a time with its unit and three digits.
func ns(t float64) string {
	for _, unit := range []struct {
		name string
		size float64
	}{{" ns", 1}, {" µs", 1e3}, {" ms", 1e6}, {" s", 1e9}} {
		if digits := three(t / unit.size); t < 999.5*unit.size || unit.size == 1e9 {
			return digits + unit.name
		}
	}
	return ""
}

// kib writes a size.
func kib(n float64) string { return strconv.FormatFloat(math.Round(n/1024), 'f', -1, 64) + " KiB" }

// times writes a ratio.
func times(ratio float64) string { return three(ratio) + "×" }

// three writes a number with three digits, or more where it has more before the point.
func three(x float64) string {
	switch {
	case x < 0.1:
		return strconv.FormatFloat(x, 'g', 2, 64)
	case x < 9.995:
		return strconv.FormatFloat(x, 'f', 2, 64)
	case x < 99.95:
		return strconv.FormatFloat(x, 'f', 1, 64)
	}
	return strconv.FormatFloat(x, 'f', 0, 64)
}

func count(n float64) string { return strconv.FormatFloat(n, 'f', -1, 64) }
