package load

import (
	"strconv"

	"example.com/steelyard/internal/beam"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

const (
	// MaxLines is the greatest number of lift lines on a batten.
	MaxLines = beam.MaxLines
	// MaxItems is the greatest number of items in a hang; it bounds the work on any input.
	MaxItems = 1000

	// maxLength is the longest batten: far beyond any, it keeps the smallest distance
	// of two lines within what float64 tells apart along the whole.
	maxLength units.Length = 1000 * units.Metre
	// leastApart is the smallest distance of two lift lines. Closer ones are at one place: how
	// they share cannot be told.
	leastApart units.Length = 10 * units.Millimetre
	// maxPath is the longest path of a line, and maxLong the greatest trim error.
	maxPath units.Length = 10_000 * units.Metre
	maxLong units.Length = 10 * units.Metre
	// mostGive is how many times as much a line may give as a span of the pipe does. What holds less is not a
	// line: what it pulls is within the rounding of what the others do, and whether it is slack cannot be told.
	mostGive = 1e6
	// mostPull is how many times the batten's weight trim errors may come to in a pipe that bent to follow
	// them. Float64 rounds a length by some 10⁻¹⁶ of itself, and so many times more of the weight is
	// uncertain in a tension: eight digits are left.
	mostPull = 1e8
	// rounding is how far positions that ought to agree may differ, as after
	// adding feet and inches up.
	rounding units.Length = 0.001 * units.Millimetre
)

// Batten is a pipe on its lift lines. The zero value is refused by [Batten.Rig].
type Batten struct {
	Length   units.Length `json:"length"` // from end to end
	Pipe     Tube         `json:"pipe"`
	Fittings units.Mass   `json:"fittings,omitzero"` // clamps, joints, trim chain: spread evenly along the batten
	Lines    []Line       `json:"lines,omitempty"`   // the lift lines, from the end nearer the arbor: short line first
}

// Line is a lift line. With the place alone it is one that does not stretch and is of the right length.
//
// A line that stretches is a spring of EA / Path. Give both or neither. Path is the whole length under
// tension: from the batten over the blocks to the arbor, or in double purchase to the dead end.
// It does not change with the trim, for the rope does not: what it loses on one side of a block it
// gains on the other.
//
// EA of wire rope is far below that of a steel bar and spreads by a third among ropes of one
// construction: take the maker's figure.
type Line struct {
	At   units.Length `json:"at"`            // where it is made off, from the batten's end nearer the arbor
	EA   units.Force  `json:"ea,omitzero"`   // axial stiffness of the rope: the pull over the share by which it grows longer
	Path units.Length `json:"path,omitzero"` // the length of it that is under tension
	Long units.Length `json:"long,omitzero"` // trim error: how much lower than the others its end hangs, unstretched; negative: short

	Limit units.Force `json:"limit,omitzero"` // what this line is let carry, where it is not what [Limits] says
}

// give is how far the line stretches for a unit of pull.
func (l Line) give() float64 {
	if l.EA == 0 {
		return 0
	}
	return float64(l.Path) / float64(l.EA)
}

// Spaced gives n lines, the first one where told and each of the others one spacing
// further from the arbor. With n of zero or less there are none; beyond
// MaxLines there is one more than MaxLines, which [Batten.Rig] refuses.
func Spaced(first, spacing units.Length, n int) []Line {
	lines := make([]Line, 0, max(0, min(n, MaxLines+1)))
	for i := range cap(lines) {
		lines = append(lines, Line{At: first + spacing.Scale(float64(i))})
	}
	return lines
}

// BareMass is the mass of the batten with nothing on it: the pipe over its length,
// and the fittings. The pipe weight in the arbor balances it.
func (b Batten) BareMass() units.Mass { return b.Pipe.LineMass().Over(b.Length) + b.Fittings }

// Rig checks the batten and what hangs on it, and makes them ready to be asked. It
// reports all faults joined, each a *units.FieldError whose path begins with "batten."
// or "hang[i].". Whether the batten would tip is not looked at: it depends on the
// trim, and is asked with [Rigged.Tips].
//
// Rig copies what it needs: later changes to b and h do not touch the result.
func (b Batten) Rig(h Hang) (*Rigged, error) {
	var p check.Problems
	p.Within("batten", "", b.faults())
	length := b.Length
	if !(length > 0 && length <= maxLength) {
		length = 0
	}
	if len(h) > MaxItems {
		p.Add("hang", strconv.Itoa(len(h))+" items", "at most "+strconv.Itoa(MaxItems), units.ErrOutOfRange)
		return nil, p.Err()
	}
	for i := range h {
		if item := &h[i]; !plain(item, length) {
			if err := item.faults(length); err != nil {
				p.Within("hang["+strconv.Itoa(i)+"]", item.title(), err)
			}
		}
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	return newRigged(b, h), nil
}

// Share answers one question without keeping anything: how the lines share what
// is carried at the trim. The errors are those of [Batten.Rig] and [Rigged.Share].
func (b Batten) Share(h Hang, trim units.Length) (Share, error) {
	r, err := b.Rig(h)
	if err != nil {
		return Share{}, err
	}
	return r.Share(trim)
}

func (b Batten) faults() error {
	var p check.Problems
	length := b.Length
	if !check.Positive(&p, "length", length, "the length of the batten") {
		length = 0
	} else if length > maxLength {
		p.Add("length", check.Show(length), "at most "+check.Show(maxLength), units.ErrOutOfRange)
		length = 0
	}
	p.Within("pipe", "", b.Pipe.faults())
	check.NotNegative(&p, "fittings", b.Fittings)
	switch n := len(b.Lines); {
	case n == 0:
		p.Add("lines", "", "at least one lift line", units.ErrMissing)
	case n > MaxLines:
		p.Add("lines", strconv.Itoa(n)+" lines", "at most "+strconv.Itoa(MaxLines), units.ErrOutOfRange)
		return p.Err()
	}
	for i, l := range b.Lines {
		if b.plainlyPlaced(i, length) {
			continue
		}
		field := "lines[" + strconv.Itoa(i) + "].at"
		if !onBatten(&p, field, l.At, length) || i == 0 {
			continue
		}
		switch apart := l.At - b.Lines[i-1].At; {
		case units.Abs(apart) < rounding:
			p.Add(field, check.Show(l.At), "a place of its own, at least "+check.Show(leastApart)+" from the line before it", units.ErrDuplicate)
		case units.Abs(apart) < leastApart-rounding:
			p.Add(field, check.Show(l.At), "at least "+check.Show(leastApart)+" from the line before it", units.ErrOutOfRange)
		case apart < 0:
			before := check.Show(b.Lines[i-1].At)
			p.Add(field, check.Show(l.At), "more than the line before it ("+before+
				"): lines stand in order from the end nearer the arbor", units.ErrOutOfRange)
		}
	}
	for i, l := range b.Lines {
		if l == (Line{At: l.At}) {
			continue // it does not stretch, and nothing else is said of it
		}
		if err := l.faults(); err != nil {
			p.Within("lines["+strconv.Itoa(i)+"]", "", err)
		}
	}
	if p.Err() == nil {
		b.conditioned(&p)
	}
	return p.Err()
}

// plainlyPlaced tells of most lines that nothing is wrong with their place, without a name for it.
func (b Batten) plainlyPlaced(i int, length units.Length) bool {
	at := b.Lines[i].At
	return at >= -rounding && at <= length+rounding && (i == 0 || at-b.Lines[i-1].At >= leastApart-rounding)
}

// faults reports what is wrong with how the line stretches and is trimmed.
func (l Line) faults() error {
	var p check.Problems
	if l.EA != 0 || l.Path != 0 {
		ea := check.Positive(&p, "ea", l.EA, "how hard the line is to stretch, or no path for one that does not stretch")
		path := check.Positive(&p, "path", l.Path, "the length of the line that is under tension, or no ea for one that does not stretch")
		if ea && path && l.Path > maxPath {
			p.Add("path", check.Show(l.Path), "at most "+check.Show(maxPath), units.ErrOutOfRange)
		}
	}
	check.NotNegative(&p, "limit", l.Limit)
	if check.Finite(&p, "long", l.Long) && units.Abs(l.Long) > maxLong {
		p.Add("long", check.Show(l.Long), check.Show(-maxLong)+" to "+check.Show(maxLong), units.ErrOutOfRange)
	}
	return p.Err()
}

// conditioned refuses a batten whose tensions cannot be told from its description, for float64's own
// rounding of a length or of a stiffness would move them, and says how far it is from one that can.
func (b Batten) conditioned(p *check.Problems) {
	n := len(b.Lines)
	if n < 2 {
		return
	}
	bending := float64(b.Pipe.Modulus) * float64(b.Pipe.SecondMoment())
	cube := func(l units.Length) float64 { m := float64(l); return m * m * m }
	span := cube((b.Lines[n-1].At - b.Lines[0].At).Scale(1/float64(n-1))) / bending // how far a span of pipe gives
	least, low, high := b.Length, b.Lines[0].Long, b.Lines[0].Long
	for i, l := range b.Lines {
		if c := l.give() / span; c > mostGive {
			p.Add("lines["+strconv.Itoa(i)+"].ea", check.Show(l.EA), "a line that gives at most "+times(mostGive)+
				" as much as a span of the pipe, not "+times(c), units.ErrOutOfRange)
		}
		if i > 0 {
			least = min(least, l.At-b.Lines[i-1].At)
		}
		low, high = min(low, l.Long), max(high, l.Long)
	}
	pull := 12 * bending * float64(high-low) / cube(least)
	if c := pull / float64(b.BareMass().Weight(units.StandardGravity)); c > mostPull {
		p.Add("lines", "trim errors that the pipe would follow only under "+times(c)+" its weight",
			"at most "+times(mostPull)+": smaller errors, or lines further apart", units.ErrOutOfRange)
	}
}

func times(c float64) string { return strconv.FormatFloat(c, 'g', 2, 64) + " times" }

func (t Tube) faults() error {
	var p check.Problems
	outer := check.Positive(&p, "outer", t.Outer, "the outer diameter of the pipe")
	wall := check.Positive(&p, "wall", t.Wall, "the wall thickness of the pipe")
	// A solid bar's wall may come out a rounding over half its diameter.
	if half := t.Outer.Scale(0.5); outer && wall && t.Wall > half.Scale(1+1e-12) {
		p.Add("wall", check.Show(t.Wall), "at most half the outer diameter, "+check.Show(half), units.ErrOutOfRange)
	}
	check.Positive(&p, "density", t.Density, "the density of the pipe's material")
	check.Positive(&p, "modulus", t.Modulus, "the modulus of elasticity of the pipe's material")
	return p.Err()
}

// onBatten reports whether a position lies on the batten, and notes a fault where
// not. A batten length of 0 is not known.
func onBatten(p *check.Problems, field string, at, length units.Length) bool {
	if !check.Finite(p, field, at) {
		return false
	}
	if at >= -rounding && (length == 0 || at <= length+rounding) {
		return true
	}
	want := "0 or more"
	if length > 0 {
		want = "0 to " + check.Show(length) + ", on the batten"
	}
	p.Add(field, check.Show(at), want, units.ErrOutOfRange)
	return false
}
