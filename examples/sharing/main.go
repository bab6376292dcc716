// Command sharing asks who carries the batten: how five lift lines share an electric with its cable and two legs, what the pipe
// suffers between them, and what becomes of it all when one line is made off a little too long.
package main

import (
	"errors"
	"flag"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

func main() { sharing().Main() }

func sharing() lesson.Lesson {
	var q question
	return lesson.Lesson{
		Name:  "sharing",
		About: "who carries the batten? The tension in each lift line, and shear and bending moment along the pipe; then once more with one line that is too long.",
		Draws: true,
		Flags: func(f *flag.FlagSet) {
			q = question{line: 2}
			f.Func("line", "which `LINE` is too long, counted from the end nearer the arbor (if not given: 2)", q.setLine)
			f.Func("long", "by what `LENGTH` it is, such as 10 mm or 3/8 in; below zero it is too short (if not given: 3/8 in, or 10 mm)", q.setLong)
			f.StringVar(&q.set, "set", "", "take the `SET` of that name from the house, at its low trim, in place of the batten in the lesson")
		},
		Teach: func(p *lesson.Page) error { return teach(p, q) },
	}
}

// ours is the batten of the lesson: pipe of 1-1/2 in on five wire ropes of 1/4 in. Ropes give: the longer the way to the arbor, the more.
func ours() (load.Batten, load.Hang) {
	const wire = 440_000 * units.PoundForce // EA, the pull over the share by which the rope grows longer; take the maker's figure
	batten := load.Batten{
		Length:   42 * units.Foot,
		Pipe:     load.Tube{Outer: 1.900 * units.Inch, Wall: 0.145 * units.Inch, Density: load.PipeSteelDensity, Modulus: load.SteelModulusUS},
		Fittings: 9 * units.Pound,
		Lines: []load.Line{
			{At: 1 * units.Foot, EA: wire, Path: 60 * units.Foot},
			{At: 11 * units.Foot, EA: wire, Path: 70 * units.Foot},
			{At: 21 * units.Foot, EA: wire, Path: 80 * units.Foot},
			{At: 31 * units.Foot, EA: wire, Path: 90 * units.Foot},
			{At: 41 * units.Foot, EA: wire, Path: 100 * units.Foot},
		},
	}
	hang := load.Hang{
		{Name: "10 fixtures", Mass: 260 * units.Pound, From: 12 * units.Foot, To: 30 * units.Foot},
		{Name: "connector strip", Mass: 62 * units.Pound, From: 11 * units.Foot, To: 31 * units.Foot},
	}
	cable := load.Cable{LineMass: 0.4 * units.PoundPerFoot, Count: 3, From: 1 * units.Foot, To: 11 * units.Foot, Slack: 0.1, Tail: 16 * units.Foot, TailAt: 1 * units.Foot}
	leg := load.Drape{Width: 8 * units.Foot, Drop: 18 * units.Foot, Cloth: 16 * units.OuncePerSquareYard, Fullness: 0.5}
	hang = append(hang, cable.Hang("cable")...)
	return batten, append(hang, leg.Item("leg, near side", 1*units.Foot), leg.Item("leg, far side", 33*units.Foot))
}

func teach(p *lesson.Page, q question) error {
	batten, hang := ours()
	trim := 20 * units.Foot
	rig := func() (*load.Rigged, error) { return batten.Rig(hang) }
	name := "An electric with its cable and two legs hangs"
	if q.set != "" {
		set, err := p.Set(q.set)
		if err != nil {
			return err
		}
		d := set.Set()
		batten, hang, trim, name = d.Rigging.Batten, d.Hang, set.Low().Trim, "Set "+d.Name+" is"
		rig = func() (*load.Rigged, error) { // the set anew: it knows how long its ropes are
			d.Rigging.Batten = batten
			set, err := d.Rig(p.House.House().Stock)
			if err != nil {
				return nil, err
			}
			return set.Load(), nil
		}
	}
	if q.line < 1 || q.line > len(batten.Lines) {
		return fmt.Errorf("-line %d: want the number of a lift line of this batten, 1 to %d", q.line, len(batten.Lines))
	}
	long := q.of(p.Units)

	// Twice the same: first every line of the right length, then one of them too long.
	batten.Lines = slices.Clone(batten.Lines)
	for i := range batten.Lines {
		batten.Lines[i].Long = 0
	}
	even, err := answer(rig, batten, hang, trim)
	if err != nil {
		return err
	}
	batten.Lines[q.line-1].Long = long
	off, err := answer(rig, batten, hang, trim)
	if err != nil {
		return err
	}

	s := sheet{p, q.line, says(p.Units, long), even, off}
	p.Say("WHO CARRIES THE BATTEN?")
	p.Gap()
	p.Say("%s at trim %s on a batten of %s and %d lift lines. First all lines are even; then line %d is made off %s, and nothing else is touched.",
		name, p.Units.Format(trim), p.Units.Format(batten.Length), len(batten.Lines), q.line, s.long)
	p.Gap()
	s.tables()
	p.Gap()
	p.Say("%s", s.inWords())
	p.Draw(s.picture(batten))
	return nil
}

// question is what the flags ask.
type question struct {
	line int
	long *units.Length // nil: the lesson's own
	set  string
}

func (q *question) setLine(text string) (err error) {
	if q.line, err = strconv.Atoi(text); err != nil {
		return errors.New("want the number of a lift line, 1 for the one nearest the arbor")
	}
	return nil
}

func (q *question) setLong(text string) error {
	long, err := units.Parse[units.Length](text)
	if err == nil && units.Abs(long) > units.Foot {
		err = errors.New("want no more than 1 ft or 304.8 mm: what is further off is seen from the deck")
	}
	q.long = &long
	return err
}

// of is a figure that is round for the reader.
func (q question) of(sys units.System) units.Length {
	switch {
	case q.long != nil:
		return *q.long
	case sys == units.US:
		return units.Inch.Scale(3.0 / 8)
	}
	return 10 * units.Millimetre
}

// says is an error of length in words.
func says(sys units.System, long units.Length) string {
	way := " too long"
	if long < 0 {
		long, way = -long, " too short"
	}
	if sys == units.US {
		return strings.TrimPrefix(strings.TrimPrefix(sys.Format(long), "0' "), "0 ") + way
	}
	return strconv.FormatFloat(long.In(units.Millimetre), 'f', -1, 64) + " mm" + way
}
