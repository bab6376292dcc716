// Command changeover reads out the night's work from one show to the next: set by set and step by step, what the deck does, what
// the loading bridge does, and how far out of balance the set then is.
package main

import (
	"errors"
	"flag"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func main() { changeover().Main() }

func changeover() lesson.Lesson {
	var next string
	var limit units.Force
	setLimit := func(text string) (err error) {
		if limit, err = units.Parse[units.Force](text); err == nil && limit < 0 {
			err = errors.New("want a force that is not below zero, such as 50 lbf")
		}
		return err
	}
	return lesson.Lesson{
		Name:  "changeover",
		About: "from the summer play to the winter revue in one night: the steps for deck and bridge, and how far out of balance a set is on the way.",
		Flags: func(f *flag.FlagSet) {
			f.StringVar(&next, "next", "", "read the next night from `FILE`: a whole house, or only the sets that change as in examples/quillmoor/revue.json (if not given: that)")
			limit = 50 * units.PoundForce // common practice: no more on the rope lock
			f.Func("limit", "let no more than `FORCE` be out of balance with nothing but the rope lock to hold it (if not given: 50 lbf)", setLimit)
		},
		Teach: func(p *lesson.Page) error { return teach(p, next, limit) },
	}
}

func teach(p *lesson.Page, next string, limit units.Force) error {
	tonight := p.House.House()
	tomorrow, err := nextNight(p, next)
	if err != nil {
		return err
	}
	n := night{Page: p, limit: limit}
	if err := n.plan(tonight, tomorrow); err != nil {
		return err
	}
	p.Title("FROM ONE SHOW TO THE NEXT")
	p.Say("%s: what hangs tonight comes down, what hangs next goes up. In which order do deck and bridge work, so that no set is ever more than %s "+
		"out of balance with nothing but its rope lock to hold it? Every batten is worked on at its lowest trim, the arbor against its upper "+
		"stop: there a batten-heavy set rests on the stop, and an arbor-heavy one would run out. What piles or stands on the deck is not carried.", tonight.Name, lesson.Pull(n.Units, limit))
	if n.work.InTurn {
		p.Gap()
		p.Say("Pipe by pipe, as the house counts them, the counterweight that there is would not do. So the sets that give some back go first.")
	}
	step := 1
	for _, set := range n.work.Sets {
		if set.Changed {
			p.Gap()
			step = p.Work(set, step, n.remember)
		}
	}
	n.sumUp(step - 1)
	return nil
}

// plan finds the order of work. Only what hangs may differ: the two houses have the same sets, riggings and pieces.
func (n *night) plan(tonight, tomorrow lineset.House) error {
	from, err := tonight.Rig()
	if err != nil {
		return err
	}
	to, err := tomorrow.Rig()
	if err != nil {
		return fmt.Errorf("the next night: %w", err)
	}
	limit := lineset.ForceLimit{Max: n.limit, Basis: "-limit"}
	limits := lineset.OrderLimits{ArborHeavy: limit, BattenHeavy: limit, RestsOnStop: true}
	n.work, err = from.ChangeOver(to, limits, nil)
	var first *units.FieldError
	switch none := (*lineset.NoOrderError)(nil); {
	case err == nil:
		return nil
	case errors.As(err, &none) && errors.As(err, &first):
		return fmt.Errorf("-limit %s: %w", n.Units.Format(n.limit), first)
	case errors.As(err, &first):
		return fmt.Errorf("-next wants the same house with another hang: %w", first)
	}
	return err
}

// nextNight is the house as it hangs next.
func nextNight(p *lesson.Page, file string) (lineset.House, error) {
	if file == "" {
		return quillmoor.WinterRevue()
	}
	next, err := p.Read(file)
	if err != nil || len(next.Stock) > 0 {
		return next, err
	}
	house := p.House.House()
	house.Sets = slices.Clone(house.Sets)
	for _, set := range next.Sets {
		if _, err := p.Set(set.Name); err != nil {
			return house, fmt.Errorf("%s: %w", file, err)
		}
		i := slices.IndexFunc(house.Sets, func(s lineset.Set) bool { return s.Name == set.Name })
		house.Sets[i] = set
	}
	return house, nil
}

// short says which pieces are missing at the worst moment; nothing where none are.
func (n *night) short() string {
	var missing []string
	for _, p := range n.work.Pieces {
		if p.Short() > 0 {
			missing = append(missing, fmt.Sprintf("%d of the %s", p.Short(), p.Name))
		}
	}
	return strings.Join(missing, " and ")
}

// night is the work, and what is remembered of it while it is read out.
type night struct {
	*lesson.Page
	limit       units.Force
	work        lineset.ChangeOver
	loose, rest moment // the furthest out of balance with only the lock to hold it, and resting on the stop
}

type moment struct {
	by   units.Force
	says string // and when it was
}

// remember keeps the worst.
func (n *night) remember(when string, state lineset.OrderState) {
	worst := &n.loose
	if state.Hazard == lineset.RestsOnStop {
		worst = &n.rest
	}
	if by := units.Abs(state.Imbalance); by > worst.by {
		*worst = moment{by, fmt.Sprintf("%s (%s)", lesson.Pull(n.Units, by), when)}
	}
}

// sumUp is what the night comes to.
func (n *night) sumUp(steps int) {
	n.Gap()
	w := n.work
	if w.Changed == 0 {
		n.Say("Nothing changes: both nights hang alike.")
		return
	}
	var rows [][]string
	for _, p := range w.Pieces {
		rows = append(rows, []string{"of the " + p.Name, strconv.Itoa(p.Out), strconv.Itoa(p.In), strconv.Itoa(p.Most), strconv.Itoa(p.Stock), strconv.Itoa(p.Short())})
	}
	n.Table([]string{"pieces", "out", "in", "in use at most", "there are", "short"}, rows)
	n.Gap()
	text := fmt.Sprintf("%d of %d sets change in %d steps with %d hand-overs between deck and bridge, and the bridge handles %s.",
		w.Changed, len(w.Sets), steps, w.HandOvers, n.Units.FormatPlaces(w.Handled, 0))
	if n.loose.by > 0 {
		text += fmt.Sprintf(" The worst that only the lock holds is %s; the limit given is %s.", n.loose.says, lesson.Pull(n.Units, n.limit))
	}
	if n.rest.by > 0 {
		text += fmt.Sprintf(" The most that rests on the stop is %s: that batten stays where it is until its counterweight is in, or its load off.", n.rest.says)
	}
	if short := n.short(); short != "" {
		text += fmt.Sprintf(" Short at the worst moment are %s: hire them, or strip another set for as long.", short)
	} else {
		text += " The pieces that there are will do."
	}
	n.Say("%s", text)
}
