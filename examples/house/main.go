// Command house balances and checks every line set of a house and prints the
// sheet: what hangs, what answers it, whether it fits and reaches its trims, what
// lines, blocks and beam carry, and how each figure stands against its limit.
package main

import (
	"encoding/json"
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

// maxFile bounds what is read: a house of a thousand sets takes a few megabytes.
const maxFile = 32 << 20

const usage = `house: balance and check the line sets of a house.

  go run ./examples/house [-file FILE] [-units us|metric] [-set NAME] [-json] [-strict]

Without -file it computes the Quillmoor Playhouse, an invented venue. The file is
JSON; examples/quillmoor/house.json shows every field. Heights are above the deck,
positions along a batten are from its end nearer the arbor, quantities carry their
unit: "24'-6\"", "312 lb", "700 lbf", "11 lb/100 ft", "7.5 m".

  -file FILE   read the house from FILE; - reads standard input
  -units NAME  print in "us" (feet and inches, lb, lbf: the default) or "metric" (m, kg, kN)
  -set NAME    only the set of that name (or the one set whose name begins so), with its working
  -json        print the results as JSON, in SI units, instead of the sheet
  -strict      exit with status 1 when a set exceeds a limit or the stock is short

Exit status: 0 the house was computed; 1 with -strict, a limit is exceeded;
2 the input could not be used.

`

func main() {
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run is the program, with everything it touches handed in.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("house", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	file := flags.String("file", "", "")
	system := units.US
	flags.TextVar(&system, "units", units.US, "")
	name := flags.String("set", "", "")
	asJSON := flags.Bool("json", false, "")
	strict := flags.Bool("strict", false, "")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		var caution sheet
		caution.wrap("", 0, lineset.Caution)
		fmt.Fprint(stdout, usage, caution.String())
		return 0
	case err != nil:
		fmt.Fprintf(stderr, "house: %v; -h explains the flags\n", err)
		return 2
	case flags.NArg() > 0:
		fmt.Fprintf(stderr, "house: %q is not a flag; to read a house write -file %[1]s\n", flags.Arg(0))
		return 2
	}

	rigged, source, err := rig(*file, stdin)
	if err != nil {
		report(stderr, source, err)
		return 2
	}
	var one *lineset.Rigged
	if *name != "" {
		if one, err = find(rigged, *name); err != nil {
			fmt.Fprintf(stderr, "house: %v\n", err)
			return 2
		}
	}
	exceeds := rigged.Exceeds()
	if one != nil {
		exceeds = one.Exceeds()
	}
	if err := show(stdout, rigged, one, system, *asJSON); err != nil {
		fmt.Fprintf(stderr, "house: %v\n", err)
		return 2
	}
	if *strict && exceeds {
		return 1
	}
	return 0
}

func show(w io.Writer, house *lineset.RiggedHouse, one *lineset.Rigged, system units.System, asJSON bool) error {
	if asJSON {
		encoder := json.NewEncoder(w)
		encoder.SetIndent("", "  ")
		encoder.SetEscapeHTML(false)
		if one != nil {
			return encoder.Encode(one.Report())
		}
		return encoder.Encode(house.Report())
	}
	sheet := sheet{system: system}
	if one != nil {
		sheet.title(house.House().Name)
		sheet.set(one)
		sheet.working(one)
		sheet.orders(one)
	} else {
		sheet.house(house)
	}
	sheet.caution()
	_, err := io.WriteString(w, sheet.String())
	return err
}

// rig reads, decodes and rigs a house; source names it in messages.
func rig(file string, stdin io.Reader) (rigged *lineset.RiggedHouse, source string, err error) {
	text, source := quillmoor.JSON(), "house.json"
	switch file {
	case "":
	case "-":
		source = "standard input"
		text, err = read(stdin)
	default:
		source = file
		var f *os.File
		if f, err = os.Open(file); err == nil {
			defer f.Close()
			text, err = read(f)
		}
	}
	if err != nil {
		return nil, source, err
	}
	var house lineset.House
	// Not json.Unmarshal: it would stop at a fault of syntax before the house could say where it is.
	if err := house.UnmarshalJSON(text); err != nil {
		return nil, source, err
	}
	rigged, err = house.Rig()
	return rigged, source, err
}

func read(r io.Reader) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err == nil && len(text) > maxFile {
		err = fmt.Errorf("is larger than %d MiB; want the JSON of one house, a few MiB for a thousand sets", maxFile>>20)
	}
	return text, err
}

// report prints every problem on a line of its own, each with the name of the file.
func report(w io.Writer, source string, err error) {
	lines := strings.Split(err.Error(), "\n")
	for _, line := range lines {
		fmt.Fprintf(w, "house: %s: %s\n", source, line)
	}
	if len(lines) > 1 {
		fmt.Fprintf(w, "house: %s: %d problems; nothing was computed\n", source, len(lines))
	}
}

// find gives the set of that name, or the only one whose name begins with it.
func find(house *lineset.RiggedHouse, name string) (*lineset.Rigged, error) {
	if s, ok := house.Set(name); ok {
		return s, nil
	}
	var found []*lineset.Rigged
	var names []string
	for s := range house.Sets() {
		have := s.Set().Name
		names = append(names, fmt.Sprintf("%q", have))
		if rest, ok := strings.CutPrefix(strings.ToLower(have), strings.ToLower(name)); ok && (rest == "" || rest[0] == ' ') {
			found = append(found, s)
		}
	}
	if len(found) != 1 {
		return nil, fmt.Errorf("no one set is called %q; want one of %s", name, strings.Join(names, ", "))
	}
	return found[0], nil
}
