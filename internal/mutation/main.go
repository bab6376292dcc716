package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// options are what the command line says.
type options struct {
	dir       string
	explained string
	jobs      int
	sample    int
	seed      uint64
	checks    int
	only      *regexp.Regexp
}

func main() {
	o, err := parseFlags(os.Args[1:])
	if err != nil {
		os.Exit(2) // the flags have said what is wrong
	}
	found, err := run(o, os.Stdout)
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutation:", err)
		os.Exit(2)
	}
	if len(found.survived) > 0 {
		os.Exit(1)
	}
}

func parseFlags(args []string) (options, error) {
	var o options
	flags := flag.NewFlagSet("mutation", flag.ContinueOnError)
	flags.IntVar(&o.jobs, "jobs", 2, "mutants run at a time")
	flags.IntVar(&o.sample, "sample", 0, "run no more than so many mutants, drawn at random; 0 runs all")
	flags.Uint64Var(&o.seed, "seed", 1, "what the sample is drawn with")
	flags.IntVar(&o.checks, "checks", 100, "draws of each property, where the package uses rapid")
	flags.StringVar(&o.explained, "explained", "", "the `file` of survivors that are explained; otherwise explained.txt beside this program's source")
	only := flags.String("only", "", "run the mutants whose line in the report matches this `expression`")
	flags.Usage = func() {
		fmt.Fprintln(flags.Output(), "usage: go run ./internal/mutation [flags] ./package")
		flags.PrintDefaults()
	}
	if err := flags.Parse(args); err != nil {
		return o, err
	}
	if flags.NArg() != 1 {
		flags.Usage()
		return o, flag.ErrHelp
	}
	o.dir = flags.Arg(0)
	var err error
	if o.only, err = regexp.Compile(*only); err != nil {
		fmt.Fprintln(flags.Output(), "mutation: -only:", err)
	}
	return o, err
}

// tally is what became of the mutants.
type tally struct {
	made, unreached, uncompiled, killed, slow int
	survived, explained                       []mutant
}

// run breaks the package in all the ways asked for and writes the report.
func run(o options, w io.Writer) (tally, error) {
	p, err := readSource(o.dir)
	if err != nil {
		return tally{}, err
	}
	if o.explained == "" {
		o.explained = filepath.Join(p.root, "internal", "mutation", "explained.txt")
	}
	notes, err := readExplanations(o.explained, p.rel)
	if err != nil {
		return tally{}, err
	}
	work, err := os.MkdirTemp("", "mutation")
	if err != nil {
		return tally{}, err
	}
	defer os.RemoveAll(work)
	bench := workbench{source: p, dir: work, checks: o.checks, jobs: o.jobs}
	if err := bench.measure(); err != nil {
		return tally{}, err
	}
	all := p.mutants()
	found := tally{made: len(all)}
	var chosen []mutant
	for _, m := range all {
		switch {
		case !bench.reached(m):
			found.unreached++
		case o.only.MatchString(m.String()):
			chosen = append(chosen, m)
		}
	}
	reached := len(chosen)
	if o.sample > 0 && o.sample < reached {
		chosen = draw(chosen, o.sample, o.seed)
	}
	fates, err := bench.judge(chosen)
	if err != nil {
		return tally{}, err
	}
	for i, m := range chosen {
		note := notes.find(m)
		switch {
		case fates[i] == uncompiled:
			found.uncompiled++
		case fates[i] == slow:
			found.slow++
			found.killed++
		case fates[i] == killed:
			found.killed++
			if note != nil {
				note.killed = true
			}
		case note != nil:
			note.survived = true
			found.explained = append(found.explained, m)
		default:
			found.survived = append(found.survived, m)
		}
	}
	if len(bench.leftOut) > 0 {
		fmt.Fprintf(w, "left out, for they fail without any change: %s\n", strings.Join(bench.leftOut, ", "))
	}
	for _, m := range found.survived {
		fmt.Fprintln(w, m)
	}
	for _, note := range notes {
		switch {
		case !slices.ContainsFunc(all, note.covers):
			fmt.Fprintf(w, "%s:%d: explains what is no mutant: %s %s: %s: %s\n", o.explained, note.at, note.file, note.function, note.line, note.change)
		case note.killed && !note.survived: // one of two alike on a line may be
			fmt.Fprintf(w, "%s:%d: explains what is killed: %s\n", o.explained, note.at, note.change)
		}
	}
	if len(chosen) < reached {
		fmt.Fprintf(w, "a sample of %d out of %d, seed %d\n", len(chosen), reached, o.seed)
	}
	fmt.Fprintln(w, found.foot(p.rel))
	if len(chosen) == 0 {
		return found, errors.New("no mutant was run")
	}
	return found, nil
}

// foot is the last line of the report.
func (f tally) foot(name string) string {
	ran := f.killed + len(f.survived) + len(f.explained)
	score := 100.0
	if ran > 0 {
		score = 100 * float64(f.killed+len(f.explained)) / float64(ran)
	}
	return fmt.Sprintf("%s: %d mutants, %d not reached by a test, %d did not compile; of %d run %d killed (%d of them too slow), %d explained, %d survived: %.1f %%",
		name, f.made, f.unreached, f.uncompiled, ran, f.killed, f.slow, len(f.explained), len(f.survived), score)
}
