package main

import (
	"slices"
	"strconv"
	"strings"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/purchase/lineset"
)

// sheet lays working out as on a calculation sheet.
type sheet struct {
	*lesson.Page
	lines int      // written so far
	bases []string // what lines rest on, in the order of their letters
}

// Number, quantity, formula, result, and the letter of what it rests on.
var columns = []lesson.Column{{Width: 3, Right: true}, {Width: 25}, {Width: 43}, {Width: 18, Right: true}, {Width: 3}}

func (s *sheet) section(title string, steps []lineset.Step) {
	s.Gap()
	s.Say("%s", strings.ToUpper(title))
	s.Columns(columns, "", "quantity", "formula, with its numbers", "result", "")
	for _, step := range steps {
		s.lines++
		s.Columns(columns, strconv.Itoa(s.lines), step.Name, step.Formula, step.Result, "("+s.letter(step.Basis)+")")
	}
}

// letter finds what a line rests on among what others rest on.
func (s *sheet) letter(basis string) string {
	i := slices.Index(s.bases, basis)
	if i < 0 {
		i = len(s.bases)
		s.bases = append(s.bases, basis)
	}
	return mark(i)
}

func mark(i int) string { return strings.Repeat(string(rune('a'+i%26)), 1+i/26) }

// legend tells the letters.
func (s *sheet) legend() {
	s.Gap()
	s.Say("WHAT THE LINES REST ON")
	for i, basis := range s.bases {
		s.Columns([]lesson.Column{{Width: 5, Right: true}, {Width: 93}}, "("+mark(i)+")", basis)
	}
	s.Say("Heights are above the deck: x of the batten, y of the arbor's top, z of any place on a rope. T is the tension of a rope and w its " +
		"weight per length, in w·(y − x) that of all lift lines together; w_hand is that of the hand line, a the distance between its two " +
		"fastenings at the arbor.")
}
