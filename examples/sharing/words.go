package main

import (
	"fmt"
	"math"
	"strings"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/units"
)

// sheet is the two answers, and what is said of the line that is off.
type sheet struct {
	*lesson.Page
	line      int // counted from 1
	long      string
	even, off answers
}

func (s sheet) tables() {
	then := fmt.Sprintf("line %d off", s.line)
	rows := [][]string{}
	for i, line := range s.even.Lines {
		rows = append(rows, []string{fmt.Sprintf("line %d at %s", i+1, s.Units.Format(line.At)),
			s.pull(line.Tension), s.pull(s.off.Lines[i].Tension), s.signed(s.change(i))})
	}
	rows = append(rows, []string{"all of them", s.pull(s.even.Weight), s.pull(s.off.Weight), s.signed(0)})
	s.Table([]string{"tension in the lift lines", "lines even", then, "change"}, rows)
	s.Gap()
	a, b := s.even, s.off
	s.Table([]string{"the most in the pipe", "lines even", "at", then, "at"}, [][]string{
		{"moment, sagging between lines", s.bend(a.Sagging.Moment), s.place(a.Sagging.At), s.bend(b.Sagging.Moment), s.place(b.Sagging.At)},
		{"moment, hogging over a line", s.bend(a.Hogging.Moment), s.place(a.Hogging.At), s.bend(b.Hogging.Moment), s.place(b.Hogging.At)},
		{"shear", s.pull(units.Abs(a.Shear.Force)), s.place(a.Shear.At), s.pull(units.Abs(b.Shear.Force)), s.place(b.Shear.At)},
		{"bending stress", s.Units.FormatPlaces(a.Stress, 1), "", s.Units.FormatPlaces(b.Stress, 1), ""},
	})
}

// inWords is what the tables say.
func (s sheet) inWords() string {
	worst, most := s.even.Worst()
	each := s.even.Weight.Scale(1 / float64(len(s.even.Lines)))
	text := fmt.Sprintf("Shared out by counting lines, each would carry %s. With all lines even, line %d carries %s. ", s.pull(each), worst+1, s.pull(most.Tension))
	change := s.change(s.line - 1)
	if change == 0 {
		return text + fmt.Sprintf("Line %d made off %s shifts nothing that is worth telling.", s.line, s.long)
	}
	var others units.Force // the most that another line answers with
	var who []string
	for i := range s.even.Lines {
		if c := s.change(i); (c > 0) != (change > 0) && units.Abs(c) > 0 {
			if units.Abs(c) > others {
				others, who = units.Abs(c), nil
			}
			if units.Abs(c) == others {
				who = append(who, fmt.Sprint("line ", i+1))
			}
		}
	}
	did, more, has := "lets go of", "more", "has"
	if change > 0 {
		did, more = "takes up", "less"
	}
	if len(who) > 1 {
		has = "have"
	}
	text += fmt.Sprintf("Made off %s, line %d %s %s, and %s %s %s %s. ", s.long, s.line, did, s.pull(units.Abs(change)), strings.Join(who, " and "), has, s.pull(others), more)
	for _, i := range s.off.Slack() {
		text += fmt.Sprintf("Line %d hangs slack. ", i+1)
	}
	now, then := s.off.Worst()
	return text + fmt.Sprintf("The most that one line carries goes from %s to %s, in line %d, and nothing was hung.", s.pull(most.Tension), s.pull(then.Tension), now+1)
}

// whole is a force to the pound, or to the newton: as it is printed, so that what is printed adds up.
func (s sheet) whole(f units.Force) units.Force {
	unit := units.Newton
	if s.Units == units.US {
		unit = units.PoundForce
	}
	return unit.Scale(math.Round(f.In(unit)))
}

func (s sheet) change(i int) units.Force {
	return s.whole(s.off.Lines[i].Tension) - s.whole(s.even.Lines[i].Tension)
}

func (s sheet) pull(f units.Force) string {
	if s.Units == units.US {
		return s.Units.FormatPlaces(f, 0)
	}
	return s.Units.FormatPlaces(f, 3)
}

func (s sheet) signed(f units.Force) string {
	switch {
	case f < 0:
		return "−" + s.pull(-f)
	case f > 0:
		return "+" + s.pull(f)
	}
	return "none"
}

func (s sheet) bend(m units.Moment) string { return s.Units.FormatPlaces(units.Abs(m), 0) }

// place is to the inch, or to the centimetre.
func (s sheet) place(l units.Length) string {
	if s.Units == units.US {
		return s.Units.Format(units.Inch.Scale(math.Round(l.In(units.Inch))))
	}
	return s.Units.FormatPlaces(l, 2)
}
