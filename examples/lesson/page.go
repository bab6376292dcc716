package lesson

import (
	"fmt"
	"io"
	"maps"
	"os"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// width is how wide the page is, in characters.
const width = 100

// caution stands at the foot of every page.
const caution = "Overhead lifting can kill. These figures are for planning and teaching, from a model that leaves much out. " +
	"Local codes, the manufacturers' ratings and a licensed engineer or qualified rigger on site decide."

// Page is what a lesson writes: words, tables and at most one picture.
type Page struct {
	Units   units.System         // that the reader wants
	House   *lineset.RiggedHouse // the Quillmoor Playhouse, or the reader's own
	Drawn   *svg.Picture         // nil until Draw
	text    strings.Builder
	picture string // where the picture goes
	stdin   io.Reader
}

// Read reads one more house, not yet rigged, as -file does the first. The error is what is wrong with the file, which it names.
func (p *Page) Read(file string) (lineset.House, error) { return read(file, p.stdin) }

// Say writes a paragraph, in lines that fit. A number is not parted from its unit.
func (p *Page) Say(format string, args ...any) {
	for _, line := range fill(glue(fmt.Sprintf(format, args...)), width) {
		p.text.WriteString(strings.ReplaceAll(line, glued, " ") + "\n")
	}
}

// Title begins the page.
func (p *Page) Title(text string) { p.text.WriteString(text + "\n\n") }

// Gap leaves a line empty.
func (p *Page) Gap() { p.text.WriteByte('\n') }

// Table writes rows under a head. Columns are as wide as they must be; the first is flush left, the others right.
func (p *Page) Table(head []string, rows [][]string) {
	wide := make([]int, len(head))
	all := append([][]string{head}, rows...)
	for _, row := range all {
		for i := range min(len(row), len(head)) {
			wide[i] = max(wide[i], utf8.RuneCountInString(row[i]))
		}
	}
	for _, row := range all {
		var line strings.Builder
		for i := range min(len(row), len(head)) {
			blank := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(row[i]))
			switch i {
			case 0:
				line.WriteString("  " + row[i] + blank)
			default:
				line.WriteString("   " + blank + row[i])
			}
		}
		p.text.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
}

// Draw keeps the picture that the page is to have.
func (p *Page) Draw(picture *svg.Picture) { p.Drawn = picture }

// Picture begins a picture with the caution at its foot.
func Picture(w, h float64, title, desc string) *svg.Picture {
	pic := svg.New(w, h, title, desc)
	pic.Text(svg.Point{X: w / 2, Y: h - 8}, "For planning and teaching. Local codes, makers' ratings and a qualified person on site decide.",
		svg.Letter{Size: 10, Anchor: svg.Middle, Colour: svg.Grey})
	return pic
}

// Set is the set of that name.
func (p *Page) Set(name string) (*lineset.Rigged, error) {
	if s, ok := p.House.Set(name); ok {
		return s, nil
	}
	var names []string
	for s := range p.House.Sets() {
		names = append(names, fmt.Sprintf("%q", s.Set().Name))
	}
	return nil, fmt.Errorf("no set is called %q; want one of %s", name, strings.Join(names, ", "))
}

// Rigging is the rigging of that name, which must be of the purchase that its flag is called after: -single, -double, -triple.
func (p *Page) Rigging(flag, name string) (lineset.Rigging, error) {
	riggings := p.House.House().Riggings
	if r, ok := riggings[name]; ok && r.Purchase.String() == flag {
		return r, nil
	}
	var names []string
	for _, n := range slices.Sorted(maps.Keys(riggings)) {
		if riggings[n].Purchase.String() == flag {
			names = append(names, fmt.Sprintf("%q", n))
		}
	}
	if names == nil {
		return lineset.Rigging{}, fmt.Errorf("-%s %q: want a house with a rigging of %s purchase, and this one has none", flag, name, flag)
	}
	return lineset.Rigging{}, fmt.Errorf("-%s %q: want a rigging of %s purchase, one of %s", flag, name, flag, strings.Join(names, ", "))
}

// Text is the page as it is read.
func (p *Page) Text() string {
	var b strings.Builder
	b.WriteString(printable(p.text.String()))
	if p.Drawn != nil {
		fmt.Fprintf(&b, "\npicture: %s\n", p.picture)
	}
	b.WriteString("\n" + strings.Join(fill(caution, width), "\n") + "\n")
	return b.String()
}

// write puts the picture into its file and the page on the paper.
func (p *Page) write(w io.Writer) error {
	switch {
	case p.Drawn == nil:
	case p.picture == "-":
		_, err := io.WriteString(w, p.Drawn.String())
		return err
	default:
		if err := os.WriteFile(p.picture, []byte(p.Drawn.String()), 0o644); err != nil {
			return fmt.Errorf("%w; -picture wants a file that can be written, or -", err)
		}
	}
	_, err := io.WriteString(w, p.Text())
	return err
}

// printable puts a mark in place of what would steer a terminal or turn the direction of text: names come from a file that
// anybody may have written.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || r == '\n' || unicode.IsPrint(r) {
			return r
		}
		return '\uFFFD'
	}, text)
}

// fill breaks a text into lines of at most so many characters, where it has spaces.
func fill(text string, width int) (lines []string) {
	line, used := "", 0
	for word := range strings.FieldsSeq(text) {
		n := utf8.RuneCountInString(word)
		if used > 0 && used+1+n > width {
			lines = append(lines, line)
			line, used = "", 0
		}
		if used > 0 {
			line += " "
			used++
		}
		line += word
		used += n
	}
	return append(lines, line)
}

// Pull is a force as a person says it: to the pound, or to the newton in kilonewtons.
func Pull(sys units.System, f units.Force) string {
	if sys == units.US {
		return sys.FormatPlaces(f, 0)
	}
	return sys.FormatPlaces(f, 3)
}

// Number is a quantity as a number of the unit that the reader has for it: see [units.System.Symbol].
func Number[Q units.Quantity](sys units.System, q Q) float64 {
	unit, err := units.Unit[Q](sys.Symbol(q))
	if err != nil {
		unit = 1
	}
	return units.Ratio(q, unit)
}
