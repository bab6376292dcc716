package main

import (
	"io"
	"os"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

func TestMain(m *testing.M) {
	if text := os.Getenv(worker); text != "" {
		os.Exit(work(text)) // a copy of the test, not of the program
	}
	os.Exit(m.Run())
}

// The whole table, on a small scale: everything runs, every row is as wide as the others, and what was asked for has its
// verdict. No figure is looked at.
func TestEverythingRuns(t *testing.T) {
	var out strings.Builder
	if err := run(t.Context(), &out, io.Discard, effort{slice: time.Microsecond, rounds: 1, house: 5, houses: 1, streamed: 20}); err != nil {
		t.Fatal(err)
	}
	text := out.String()
	for _, want := range []string{
		"go1.", "CPUs", "THE WHOLE SET", "straight-line floor", "Rig: validated", "full check", "two cores", "two processes", "THE SHARE", "50 lines",
		"gonum", "THE STACK", "exhaustive search", "ARITHMETIC", "decimals alone", "A STREAM of 20 sets", "A HOUSE of 5 sets", "printed as JSON", "minima",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the table has no %q:\n%s", want, text)
		}
	}
	rows, verdicts := 0, 0
	asked := 0
	for line := range strings.SplitSeq(text, "\n") {
		if strings.Contains(line, "asked") && asked == 0 {
			asked = utf8.RuneCountInString(line[:strings.Index(line, "asked")])
			continue
		}
		if !strings.HasPrefix(line, "  ") || utf8.RuneCountInString(line) <= asked {
			continue
		}
		rows++
		if before := []rune(line)[asked-1]; before != ' ' {
			t.Errorf("not aligned: %q", line)
		}
		if strings.HasSuffix(line, " yes") || strings.HasSuffix(line, " NO") {
			verdicts++
		}
	}
	if rows < 30 || verdicts < rows-1 { // on one core, two rows have no verdict but one line
		t.Errorf("%d verdicts in %d rows that were asked for something:\n%s", verdicts, rows, text)
	}
}

// Trying every stack and the library come to the same: as near the wanted mass, by as few pieces, as low.
func TestExhaustiveIsTheLibrary(t *testing.T) {
	for _, f := range fillings() {
		for _, wanted := range []int{0, 37, 600, 1000, f.wanted, 1500, 2590} {
			f.wanted = wanted
			frame, w, stock := f.arbor()
			got, err := frame.Fill(w, stock, arbor.EitherSide)
			if err != nil || !got.Proven {
				t.Fatalf("%+v: %+v, %v", f, got, err)
			}
			whole := func(x float64) int { return int(x + 0.5) }
			have := chosen{whole(units.Abs(got.Error).In(half)), got.Pieces, whole(got.Height.In(quarter))}
			if want := f.exhaustive(); have != want {
				t.Errorf("%d kinds, %d wanted: the library has %+v, trying all %+v", len(f.mass), wanted, have, want)
			}
		}
	}
	if small := (&filling{mass: []int{6, 5}, thick: []int{3, 1}, count: []int{1, 2}, wanted: 10, room: 20, capacity: 40, plateMass: 4, plateThick: 1, interval: 9}); small.exhaustive() != (chosen{0, 1, 4}) {
		t.Errorf("%+v, want the one of 6 with its plate of 4", small.exhaustive())
	}
}

// Figures as they are printed.
func TestFigures(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{ns(0.4), "0.40 ns"},
		{ns(149.6), "150 ns"},
		{ns(999.4), "999 ns"},
		{ns(999.6), "1.00 µs"},
		{ns(2233), "2.23 µs"},
		{ns(581_582), "582 µs"},
		{ns(1.8e9), "1.80 s"},
		{ns(123e9), "123 s"},
		{times(0.00209), "0.0021×"},
		{times(12.34), "12.3×"},
		{kib(95 << 10), "95 KiB"},
		{count(1306), "1306"},
		{against("", "", "", []float64{200, 100}, 0, 2, true).met.String(), "yes"},
		{against("", "", "", []float64{200.1, 100}, 0, 2, true).met.String(), "NO"},
		{against("", "", "", []float64{100, 100}, 1, 2, true).met.String(), "NO"},
		{against("", "", "", []float64{100, 100}, 1, 2, false).met.String(), "yes"},
		{within("", "", 20_001, 20_000, "").met.String(), "NO"},
		{row{}.met.String(), ""},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
