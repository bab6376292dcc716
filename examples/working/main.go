// Command working shows how one answer was found: the counterweight of a set, line by line as an engineer would write it on paper,
// each line with its formula and numbers, its result, and what it rests on.
package main

import (
	"errors"
	"flag"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func main() { working().Main() }

func working() lesson.Lesson {
	var name, part string
	return lesson.Lesson{
		Name:  "working",
		About: "the counterweight of one set with its whole working: every line with its formula, its numbers, its result and its source.",
		Flags: func(f *flag.FlagSet) {
			part = parts[0]
			f.StringVar(&name, "set", "4 first electric", "of the `SET` of that name")
			f.Func("part", "work out the `PART`: "+choice(parts)+" (if not given: "+parts[0]+")", func(text string) error {
				if part = text; !slices.Contains(parts, text) {
					return errors.New("want " + choice(parts))
				}
				return nil
			})
		},
		Teach: func(p *lesson.Page) error { return teach(p, name, part) },
	}
}

// parts is what can be worked out.
var parts = []string{"counterweight", "lines", "hand", "all"}

func choice(of []string) string {
	last := len(of) - 1
	return strings.Join(of[:last], ", ") + " or " + of[last]
}

func teach(p *lesson.Page, name, part string) error {
	set, err := p.Set(name)
	if err != nil {
		return err
	}
	counter, balance, low := set.Counterweight(), set.Balance(), set.Low()
	hand, err := set.Hand(low.Trim)
	if err != nil {
		return err
	}

	p.Say("%s, WITH THE WORKING", strings.ToUpper(name))
	p.Gap()
	p.Say("%s How much, and how is each figure known?", purchase(set))
	p.Gap()
	p.Say("How to read it: each numbered line finds one quantity. Beside its name stands the formula with the numbers in it, then what comes "+
		"out, then a letter for what the line rests on; the letters are told at the foot. Lines use what lines before them found. Figures are "+
		"rounded where they are printed and nowhere else, so that a pencil comes out a few units of the last place off at most. %s", weighs(p.Units))

	// A line of working is plain data: Name, Formula, Result, Basis.
	s := sheet{Page: p}
	all := part == "all"
	if all || part == "counterweight" {
		s.section("What must go into the arbor", counter.Working(p.Units))
		s.section("What is out of balance with it", balance.Working(p.Units))
	}
	if all || part == "lines" {
		s.section("What the lift lines and the head beam bear at low trim", low.Working(p.Units))
	}
	if all || part == "hand" {
		s.section("What the hands feel at low trim, with drag in the blocks", hand.Working(p.Units))
		for _, note := range hand.Notes() {
			p.Say("Note: %s.", note)
		}
	}
	s.legend()

	p.Gap()
	p.Say("%s", answer(p, counter, balance, low, hand, part))
	return nil
}

// answer is what the sheet comes to.
func answer(p *lesson.Page, c lineset.Counterweight, b lineset.Balance, low lineset.State, h lineset.Hand, part string) string {
	var out []string
	if part == "counterweight" || part == "all" {
		text := fmt.Sprintf("The arbor is to weigh %s with what is in it: %s. The set is then out of balance by no more than %s.",
			p.Units.Format(c.Arbor), c.Stack.Call(), p.Units.Format(units.Abs(b.Worst().Imbalance)))
		if len(c.Short) > 0 {
			text += fmt.Sprintf(" More is wanted, and there is not enough %s.", strings.Join(c.Short, " and "))
		}
		out = append(out, text)
	}
	if part == "lines" || part == "all" {
		line, most := low.WorstLine()
		out = append(out, fmt.Sprintf("At %s lift line %d bears the most, %s.", p.Units.Format(low.Trim), line, p.Units.Format(most)))
	}
	if part == "hand" || part == "all" {
		out = append(out, fmt.Sprintf("At %s it takes %s to fly out and %s to fly in.", p.Units.Format(h.Trim), pulls(p, h.Out), pulls(p, h.In)))
	}
	return strings.Join(out, " ")
}

// pulls says a pull and its rope.
func pulls(p *lesson.Page, h lineset.HandPull) string {
	switch {
	case h.Loose:
		return "nobody knows what"
	case h.Runs:
		return fmt.Sprintf("%s on the %v, which holds it back,", p.Units.Format(h.Pull), h.Rope)
	}
	return fmt.Sprintf("%s on the %v", p.Units.Format(h.Pull), h.Rope)
}

// purchase says what the ropes make of it.
func purchase(set *lineset.Rigged) string {
	kind, ratio := set.Set().Rigging.Purchase.String(), strconv.FormatFloat(set.Ratio(), 'f', -1, 64)
	if set.Ratio() == 1 {
		return "In " + kind + " purchase the batten travels as far as the arbor, and the arbor weighs as much as what it answers."
	}
	return "In " + kind + " purchase the batten travels " + ratio + " times as far as the arbor, so the arbor weighs " + ratio + " times what it answers."
}

// weighs says what makes weight of mass.
func weighs(sys units.System) string {
	if sys == units.US {
		return "A pound (lb) weighs a pound-force (lbf)."
	}
	return "A kilogram weighs 9.80665 N, which is 0.00980665 kN."
}
