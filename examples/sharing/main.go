// Command sharing asks who carries the batten: how five lift lines share an electric with its cable and two legs, what the pipe
// suffers between them, and what becomes of it all when one line is made off a little too long.
package main

import (
	"flag"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/steelyard/examples/diagram"
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
			q = question{}
			f.IntVar(&q.line, "line", 2, "which `LINE` is too long, counted from the end nearer the arbor")
			f.Func("long", "by what `LENGTH` it is, such as 10 mm or 3/8 in; below zero it is too short (if not given: 3/8 in, or 10 mm)", func(text string) (err error) {
				q.long, err = units.Parse[units.Length](text)
				return err
			})
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
	long, says := q.of(p.Units)
	if units.Abs(long) > units.Foot {
		return fmt.Errorf("-long %s: want no more than 1 ft or 304.8 mm: what is further off is seen from the deck", p.Units.Format(long))
	}

	// Twice the same: first every line of the right length, then one of them too long.
	var places []units.Length // where the pipe is looked at
	for i := range 169 {
		places = append(places, batten.Length.Scale(float64(i)/168))
	}
	for _, line := range batten.Lines {
		places = append(places, line.At)
	}
	slices.Sort(places)
	places = slices.Compact(places)
	answer := func(name string) (l diagram.Loaded, err error) {
		rigged, err := rig()
		if err != nil {
			return l, err
		}
		l.Name = name
		if l.Share, err = rigged.Share(trim); err == nil {
			l.Cuts, err = rigged.Cuts(trim, places...)
		}
		return l, err
	}
	batten.Lines = slices.Clone(batten.Lines)
	for i := range batten.Lines {
		batten.Lines[i].Long = 0
	}
	even, err := answer("all lines even")
	if err != nil {
		return err
	}
	batten.Lines[q.line-1].Long = long
	off, err := answer(fmt.Sprintf("line %d, %s", q.line, says))
	if err != nil {
		return err
	}

	p.Title("WHO CARRIES THE BATTEN?")
	p.Say("%s at trim %s on a batten of %s and %d lift lines. First all lines are even; then line %d is made off %s, and nothing else is touched.",
		name, p.Units.Format(trim), p.Units.Format(batten.Length), len(batten.Lines), q.line, says)
	p.Gap()
	tables(p, even.Share, off.Share, q.line)
	p.Gap()
	p.Say("%s", inWords(p, even.Share, off.Share, q.line, says))
	hangs := append(load.Hang{{Name: "batten with fittings", Mass: batten.BareMass(), To: batten.Length}}, hang...)
	p.Draw(diagram.Beam(p.Units, batten.Length, hangs, even, off, q.line))
	return nil
}

func tables(p *lesson.Page, even, off load.Share, line int) {
	then, pull := fmt.Sprintf("line %d off", line), func(f units.Force) string { return lesson.Pull(p.Units, f) }
	var rows [][]string
	for i, l := range even.Lines {
		rows = append(rows, []string{fmt.Sprintf("line %d at %s", i+1, p.Units.Format(l.At)), pull(l.Tension), pull(off.Lines[i].Tension)})
	}
	rows = append(rows, []string{"all of them", pull(even.Weight), pull(off.Weight)})
	p.Table([]string{"tension in the lift lines", "lines even", then}, rows)
	p.Gap()
	at := func(l units.Length) string { return p.Units.FormatPlaces(l, 1) }
	bend := func(m load.MomentAt) string { return p.Units.FormatPlaces(units.Abs(m.Moment), 0) }
	p.Table([]string{"the most in the pipe", "lines even", "at", then, "at"}, [][]string{
		{"moment, sagging between lines", bend(even.Sagging), at(even.Sagging.At), bend(off.Sagging), at(off.Sagging.At)},
		{"moment, hogging over a line", bend(even.Hogging), at(even.Hogging.At), bend(off.Hogging), at(off.Hogging.At)},
		{"shear", pull(units.Abs(even.Shear.Force)), at(even.Shear.At), pull(units.Abs(off.Shear.Force)), at(off.Shear.At)},
		{"bending stress", p.Units.FormatPlaces(even.Stress, 1), "", p.Units.FormatPlaces(off.Stress, 1), ""},
	})
}

// inWords is what the tables say.
func inWords(p *lesson.Page, even, off load.Share, line int, says string) string {
	pull := func(f units.Force) string { return lesson.Pull(p.Units, f) }
	worst, most := even.Worst()
	var text strings.Builder
	text.WriteString(fmt.Sprintf("Shared out by counting lines, each would carry %s. With all lines even, line %d carries %s. ",
		pull(even.Weight.Scale(1/float64(len(even.Lines)))), worst+1, pull(most.Tension)))
	text.WriteString(fmt.Sprintf("Made off %s, line %d goes from %s to %s. ", says, line, pull(even.Lines[line-1].Tension), pull(off.Lines[line-1].Tension)))
	for _, i := range off.Slack() {
		text.WriteString(fmt.Sprintf("Line %d hangs slack. ", i+1))
	}
	now, then := off.Worst()
	return text.String() + fmt.Sprintf("The most that one line carries goes from %s to %s, in line %d, and nothing was hung.", pull(most.Tension), pull(then.Tension), now+1)
}

// question is what the flags ask.
type question struct {
	line int
	long units.Length // zero: what is round for the reader
	set  string
}

// of is how much too long the line is, and how that is said.
func (q question) of(sys units.System) (long units.Length, says string) {
	switch long = q.long; {
	case long == 0 && sys == units.US:
		long = units.Inch.Scale(3.0 / 8)
	case long == 0:
		long = 10 * units.Millimetre
	}
	says = strconv.FormatFloat(units.Abs(long).In(units.Millimetre), 'f', -1, 64) + " mm"
	if sys == units.US {
		says = strings.TrimPrefix(strings.TrimPrefix(sys.Format(units.Abs(long)), "0' "), "0 ")
	}
	if long < 0 {
		return long, says + " too short"
	}
	return long, says + " too long"
}
