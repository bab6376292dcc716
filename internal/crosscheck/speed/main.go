// Command speed times the library and prints one table: how long each question takes, how long what it stands beside
// takes, what was asked for, and whether that is met. What is missed is printed as missed.
//
//	go run ./speed          a minute or two
//	go run ./speed -quick   a few rounds of everything, to see that it runs; its figures are worth little
//
// It stands beside plain float64 code for one set (see floor), gonum for the batten on its lines, a search through every
// stack for the arbor, and decimals for arithmetic. Each rival is checked by a test to arrive at the same figures.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"runtime"
	"time"
)

func main() {
	if text := os.Getenv(worker); text != "" {
		os.Exit(work(text))
	}
	quick := flag.Bool("quick", false, "a few rounds only: to see that everything runs")
	flag.Usage = func() {
		fmt.Fprintf(flag.CommandLine.Output(), "speed times the library against its rivals and prints a table.\n\n  go run ./speed [-quick]\n\n")
		flag.PrintDefaults()
	}
	flag.Parse()
	if flag.NArg() > 0 {
		fmt.Fprintf(os.Stderr, "speed: %q is not a flag\n", flag.Arg(0))
		os.Exit(2)
	}
	if err := run(context.Background(), os.Stdout, os.Stderr, effortOf(*quick)); err != nil {
		fmt.Fprintf(os.Stderr, "speed: %v\n", err)
		os.Exit(1)
	}
}

// work does what a copy of this program is told.
func work(text string) (status int) {
	o, err := parseOrder(text)
	if err == nil {
		var took float64
		if took, err = labour(o); err == nil {
			fmt.Print(took)
			return 0
		}
	}
	fmt.Fprintf(os.Stderr, "speed: %v\n", err)
	return 1
}

func effortOf(quick bool) effort {
	if quick {
		return effort{slice: 50 * time.Microsecond, rounds: 10, house: 1000, houses: 1, streamed: 1000, program: true}
	}
	return effort{slice: 200 * time.Microsecond, rounds: 500, house: 1000, houses: 7, streamed: 10_000, program: true}
}

// run times everything and prints the table; what it is at, it tells along the way.
func run(ctx context.Context, w, progress io.Writer, e effort) error {
	var rows []row
	var faults []error
	for _, part := range []struct {
		name string
		rows func() ([]row, error)
	}{
		{"the whole set", func() ([]row, error) { return e.wholeRows(ctx) }},
		{"the share among the lines", e.beamRows},
		{"the stack", e.stackRows},
		{"arithmetic", e.arithmeticRows},
		{"the stream", e.streamRows},
		{"the house", func() ([]row, error) { return e.houseRows(ctx) }},
	} {
		fmt.Fprintf(progress, "speed: %s ...\n", part.name)
		r, err := part.rows()
		rows = append(rows, r...)
		if err != nil {
			faults = append(faults, fmt.Errorf("%s: %w", part.name, err))
		}
	}
	fmt.Fprintf(w, "%s, %s/%s, %d CPUs, GOMAXPROCS %d\n\n", runtime.Version(), runtime.GOOS, runtime.GOARCH, runtime.NumCPU(), runtime.GOMAXPROCS(0))
	if err := write(w, rows); err != nil {
		return err
	}
	asked, unmet := 0, 0
	for _, r := range rows {
		switch r.met {
		case met:
			asked++
		case missed:
			asked, unmet = asked+1, unmet+1
		}
	}
	fmt.Fprintf(w, "\n%d of %d asked for are met.\n\n", asked-unmet, asked)
	fmt.Fprintf(w, foot, e.rounds, e.slice, e.houses)
	return errors.Join(faults...)
}

const foot = `Times are for one turn, and minima: those who are compared run by turns, %d rounds of a slice of %v each (four times as
many for the whole set; what makes garbage has fewer and longer ones, so that collecting it counts), and of each the best
slice counts; the house goes through %d times, and the best of each step counts. Other work on the machine only ever makes a
slice longer; for what two cores do it must be idle, and two processes, which share nothing, say what it gives for that work.
The ratio is ours over the other, below 1 where ours is quicker; on two cores it is how much more is done than on one, garbage
collected on as many. Allocations are those of one turn.

The straight-line floor is plain float64 code that knows this one set and no slack lines, drag, faults or names. The
library answers with Rigged.AtInto and Rigged.Imbalance, into the same memory. A full check is the answer, and every line,
block, dead end and point of the curve, the pipe and the lock held against a limit.
gonum as documented is mat.VecDense.SolveVec; without allocation the matrix is factorised anew by LAPACK; with the factor
kept it is LAPACK for three diagonals. gonum gives tensions and knows no slack lines; the whole answer has moments, shear and
stress too.
`
