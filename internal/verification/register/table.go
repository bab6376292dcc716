package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"text/tabwriter"

	"example.com/steelyard/internal/verification"
)

// columns are the register's, in both forms.
var columns = [...]string{"key", "what is compared", "ours", "theirs", "±", "unit", "result", "standing", "source, place", "why so far apart and no further"}

// cells gives a row in the order of the columns.
func (row record) cells() [len(columns)]string {
	from, _ := verification.Lookup(row.Source)
	source, result := row.Source, "agrees"
	if row.Place != "" {
		source += ", " + row.Place
	}
	if row.Fail {
		result = "FAILS"
	}
	return [...]string{
		row.Key, row.What, rounded(row.Ours), figure(row.Theirs), tolerance(row.Tol), row.Unit, result, from.Standing.String(), source, row.Why,
	}
}

// rounded gives our value in seven figures, as many as conversion tables print, the same on every machine: what is left of the last bits is rounded off first, so
// that it decides nothing where the eighth figure is a 5, and a trace of rounding beside a zero is a zero.
func rounded(ours string) string {
	x, err := strconv.ParseFloat(ours, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		return ours
	}
	if math.Abs(x) < 1e-11 {
		return "0"
	}
	if x, err = strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64); err != nil {
		return ours
	}
	return strconv.FormatFloat(x, 'g', 7, 64)
}

// figure gives their value as they print it, and a fraction in nine figures.
func figure(x float64) string {
	s := strconv.FormatFloat(x, 'g', -1, 64)
	if len(s) > 15 {
		s = strconv.FormatFloat(x, 'g', 9, 64)
	}
	return s
}

// tolerance gives two figures: those that a test derives from a share of a value are known no better.
func tolerance(x float64) string {
	if x == 0 {
		return "exact"
	}
	return strconv.FormatFloat(x, 'g', 2, 64)
}

// plain prints the register in columns, and what it sums up to.
func (r register) plain(out io.Writer) error {
	w := tabwriter.NewWriter(out, 0, 1, 2, ' ', 0)
	fmt.Fprintln(w, strings.ToUpper(strings.Join(columns[:], "\t")))
	for _, row := range r.records {
		cells := row.cells()
		fmt.Fprintln(w, strings.Join(cells[:], "\t"))
	}
	fmt.Fprintln(w)
	fmt.Fprintln(w, "SOURCE\tSTANDING\tROWS\tTITLE\tEDITION, OR WHERE IT WAS READ")
	for _, s := range verification.Sources() {
		fmt.Fprintf(w, "%s\t%s\t%d\t%s\t%s\n", s.Key, s.Standing, r.rowsOf(s.Key), s.Title, s.Where)
	}
	if err := w.Flush(); err != nil {
		return err
	}
	_, err := fmt.Fprintf(out, "\n%s\n", r.sum())
	return err
}

// markdown is the register as it is committed: one table for each package, and the table of sources.
func (r register) markdown() string {
	var b strings.Builder
	b.WriteString("# Register of outside checks\n\nWritten by `go run ./internal/verification/register -update` from what the tests record; not by hand.\n\n" + r.sum() + "\n")
	room := ""
	for _, row := range r.records {
		if row.room != room {
			room = row.room
			b.WriteString("\n## " + room + "\n\n")
			line(&b, columns[:]...)
			b.WriteString(strings.Repeat("|---", len(columns)) + "|\n")
		}
		cells := row.cells()
		line(&b, cells[:]...)
	}
	b.WriteString("\n## Sources\n\nA source without rows is named by comments alone.\n\n| source | standing | rows | title | edition, or where it was read |\n|---|---|---|---|---|\n")
	for _, s := range verification.Sources() {
		line(&b, s.Key, s.Standing.String(), strconv.Itoa(r.rowsOf(s.Key)), s.Title, s.Where)
	}
	return b.String()
}

func line(b *strings.Builder, cells ...string) {
	for _, cell := range cells {
		b.WriteString("| " + strings.ReplaceAll(cell, "|", `\|`) + " ")
	}
	b.WriteString("|\n")
}

func (r register) rowsOf(key string) (n int) {
	for _, row := range r.records {
		if row.Source == key {
			n++
		}
	}
	return n
}

// sum is the foot of the register.
func (r register) sum() string {
	by, fails := map[verification.Standing]int{}, 0
	for _, row := range r.records {
		from, _ := verification.Lookup(row.Source)
		by[from.Standing]++
		if row.Fail {
			fails++
		}
	}
	var text strings.Builder
	text.WriteString(fmt.Sprintf("%d rows on %d sources", len(r.records), len(verification.Sources())))
	for _, s := range [...]verification.Standing{verification.Published, verification.SecondHand, verification.CommonPractice, verification.FromMemory, verification.Identity} {
		text.WriteString(fmt.Sprintf("; %s %d", s, by[s]))
	}
	return text.String() + fmt.Sprintf("; %d fail.", fails)
}
