package crosscheck

import (
	"bufio"
	"bytes"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// Problem:   every unit of package units in terms of its SI unit.
// Source:    the database of the program GNU units, asked through the program where
//            it is installed (Debian package units; seen with version 2.22). It is
//            not copied here.
// Given:     one of the unit, in the words of that program.
// Expected:  the same digits, all that the program can be trusted to print: fifteen,
//            for it reckons in float64 and rounds at each step of a definition.
// Tolerance: none beyond that; both figures are rounded to the same digits.

// gnuDigits is how many significant digits are compared.
const gnuDigits = 15

// gnuNames gives the words of GNU units for symbols that are not its own.
var gnuNames = map[string]string{
	"short ton": "shortton",
	"gₙ":        "gravity",
	"t":         "tonne",
	"h":         "hour",
	"rad":       "radian", // a rad is a dose there
	"deg":       "degree",
	"lb/100 ft": "lb/(100 ft)",
}

// gnuExpression puts a symbol into the words of GNU units.
func gnuExpression(symbol string) string {
	if name, ok := gnuNames[symbol]; ok {
		return name
	}
	return strings.NewReplacer("·", " ", "²", "^2", "³", "^3", "⁴", "^4").Replace(symbol)
}

func TestGNUUnits(t *testing.T) {
	program, err := exec.LookPath("units")
	if err != nil {
		t.Skip("GNU units is not installed (Debian: apt-get install units): our units are not compared with its database")
	}
	version, err := exec.Command(program, "--version").Output()
	if err != nil || !bytes.HasPrefix(version, []byte("GNU Units")) {
		t.Skipf("%s is not GNU units: our units are not compared with its database", program)
	}
	first, _, _ := bytes.Cut(version, []byte("\n"))
	t.Logf("compared with %s", first)

	list := sizes(t)
	// The program reads pairs of lines: what there is, and what is wanted.
	var questions strings.Builder
	for _, s := range list {
		questions.WriteString(gnuExpression(s.symbol) + "\n" + gnuExpression(s.si) + "\n")
	}
	ask := exec.Command(program, "--terse", "--quiet", "--digits", strconv.Itoa(gnuDigits))
	ask.Env = append(ask.Environ(), "LC_ALL=C.UTF-8", "UNITS_ENGLISH=US", "HOME=/nonexistent")
	ask.Stdin = strings.NewReader(questions.String())
	out, err := ask.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	answers := bufio.NewScanner(bytes.NewReader(out))
	for _, s := range list {
		if !answers.Scan() {
			t.Fatalf("no answer for %s", s.symbol)
		}
		answer := answers.Text()
		theirs, err := strconv.ParseFloat(answer, 64)
		if err != nil {
			t.Errorf("%s %s: the program does not know it: %s", s.quantity, s.symbol, answer)
			continue
		}
		if ours := digits(s.value); ours != digits(theirs) {
			t.Errorf("%s: 1 %s is %s %s, and in GNU units %s", s.quantity, s.symbol, ours, s.si, answer)
		}
	}
	if answers.Scan() {
		t.Errorf("an answer too many: %s", answers.Text())
	}
}

// digits writes a figure to the digits that are compared.
func digits(f float64) string { return strconv.FormatFloat(f, 'e', gnuDigits-1, 64) }
