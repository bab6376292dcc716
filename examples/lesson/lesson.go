// Package lesson is what all lessons have in common: the flags, the house, the page that a lesson writes, and how a wrong flag or
// file is answered. A lesson itself is the question, the few calls that answer it, and the words around them.
package lesson

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// Lesson is one program under examples.
type Lesson struct {
	Name  string                 // as in go run ./examples/NAME
	About string                 // what it shows, in a sentence or two, for -h
	Draws bool                   // it draws a picture
	Flags func(f *flag.FlagSet)  // flags of its own; nil: none
	Teach func(page *Page) error // writes the page; an error is what is wrong with flags or house, in one line
}

// Main is the program: it teaches, and exits with 0; or with 2 and one line on standard error that says what would be right.
func (l Lesson) Main() { os.Exit(l.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// Run is Main with everything it touches handed in, but for the files that the flags name. It gives the exit status.
func (l Lesson) Run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	page, err := l.Lay(args, stdin)
	if errors.Is(err, flag.ErrHelp) {
		fmt.Fprint(stdout, l.help())
		return 0
	}
	if err == nil {
		err = page.write(stdout)
	}
	if err != nil {
		fmt.Fprintf(stderr, "%s: %s\n", l.Name, oneLine(err))
		return 2
	}
	return 0
}

// Lay makes the page without writing it. The error is flag.ErrHelp where help was asked for.
func (l Lesson) Lay(args []string, stdin io.Reader) (*Page, error) {
	page := &Page{Units: units.US, stdin: stdin}
	flags := flag.NewFlagSet(l.Name, flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	file := l.common(flags, page)
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return nil, err
		}
		return nil, fmt.Errorf("%w; -h explains the flags", err)
	}
	if flags.NArg() > 0 {
		return nil, fmt.Errorf("%q is not a flag; -h explains those that there are", flags.Arg(0))
	}
	house, err := open(*file, stdin)
	if err != nil {
		return nil, err
	}
	page.House = house
	return page, l.Teach(page)
}

// common sets up the flags that all lessons have, and those of this one.
func (l Lesson) common(flags *flag.FlagSet, page *Page) (file *string) {
	file = flags.String("file", "", "read the house from `FILE`, JSON as in examples/quillmoor/house.json; - reads standard input")
	flags.TextVar(&page.Units, "units", units.US, "write in `us` (feet and inches, lb, lbf: the default) or metric (m, kg, kN)")
	if l.Draws {
		flags.StringVar(&page.picture, "picture", l.Name+".svg", "write the picture to `FILE`; - writes it to standard output, and nothing else")
	}
	if l.Flags != nil {
		l.Flags(flags)
	}
	return file
}

func (l Lesson) help() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n\n  go run ./examples/%s [flags]\n\n", l.Name, l.About, l.Name)
	flags := flag.NewFlagSet(l.Name, flag.ContinueOnError)
	l.common(flags, &Page{})
	flags.VisitAll(func(f *flag.Flag) {
		name, usage := flag.UnquoteUsage(f)
		fmt.Fprintf(&b, "  -%-14s %s", strings.TrimSpace(f.Name+" "+name), usage)
		if f.DefValue != "" && f.Name != "units" {
			fmt.Fprintf(&b, " (if not given: %s)", f.DefValue)
		}
		b.WriteByte('\n')
	})
	fmt.Fprintf(&b, "\n%s\n", strings.Join(fill(caution, width), "\n"))
	return b.String()
}

// largest bounds what is read: a house of a thousand sets takes a few megabytes.
const largest = 32 << 20

// open reads, decodes and rigs the house.
func open(file string, stdin io.Reader) (*lineset.RiggedHouse, error) {
	if file == "" {
		house, err := quillmoor.SummerPlay()
		if err != nil {
			return nil, err
		}
		return house.Rig()
	}
	house, err := read(file, stdin)
	if err != nil {
		return nil, err
	}
	rigged, err := house.Rig()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name(file), err)
	}
	return rigged, nil
}

func name(file string) string {
	if file == "-" {
		return "standard input"
	}
	return file
}

// read reads and decodes a house.
func read(file string, stdin io.Reader) (house lineset.House, err error) {
	source, r := name(file), stdin
	if file != "-" {
		f, err := os.Open(file)
		if err != nil {
			return house, fmt.Errorf("%w; want a file with a house as JSON, as examples/quillmoor/house.json", err)
		}
		defer f.Close()
		r = f
	}
	text, err := io.ReadAll(io.LimitReader(r, largest+1))
	if err != nil {
		return house, fmt.Errorf("%s: %w", source, err)
	}
	if len(text) > largest {
		return house, fmt.Errorf("%s is larger than %d MiB; want the JSON of one house", source, largest>>20)
	}
	if err := house.UnmarshalJSON(text); err != nil {
		return house, fmt.Errorf("%s: %w", source, err)
	}
	return house, nil
}

// oneLine is the first problem, and how many there are besides.
func oneLine(err error) string {
	first, rest, more := strings.Cut(err.Error(), "\n")
	if more {
		first += fmt.Sprintf("; and %d more, which go run ./examples/house -file lists", 1+strings.Count(rest, "\n"))
	}
	return first
}
