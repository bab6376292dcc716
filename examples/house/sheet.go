package main

import (
	"fmt"
	"slices"
	"strings"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func (s *sheet) title(name string) {
	s.line("%s%s", pad(strings.ToUpper(name), 50), right("counterweight line sets; drag in hand pulls only", 50))
	s.rule("=")
}

func (s *sheet) caution() {
	s.legend()
	s.rule("=")
	s.wrap("", 0, "Shares among lift lines are for lines of the right length: one that is a little short takes load from its neighbours.")
	s.wrap("", 0, lineset.Caution)
}

// house prints the list of all sets, each set, and the totals.
func (s *sheet) house(house *lineset.RiggedHouse) {
	s.title(house.House().Name)
	s.list(house)
	for set := range house.Sets() {
		s.set(set)
	}
	s.totals(house)
}

func (s *sheet) list(house *lineset.RiggedHouse) {
	s.line("  %s%s%s%s  %s%s", pad("set", 26), pad("purchase", 9), right("carried high", 13), right("arbor, stack", 13), pad("worst out of balance", 25), "checks")
	for set := range house.Sets() {
		mark, worst := " ", set.Balance().Worst().Imbalance
		if set.Exceeds() {
			mark = "!"
		}
		s.line("%s %s%s%s%s  %s%s", mark, pad(clip(set.Set().Name, 25), 26), pad(set.Set().Rigging.Purchase.String(), 9),
			right(s.mass(set.High().Carried), 13), right(s.mass(set.Counterweight().Arbor), 13),
			pad(s.heavy(worst), 25), count(set.Checks()))
	}
}

// count says in few words how many checks a set passes.
func count(checks []lineset.Check) string {
	n := map[lineset.Verdict]int{}
	for _, c := range checks {
		n[c.Verdict]++
	}
	var words []string
	if n[lineset.Exceeds] > 0 {
		words = append(words, fmt.Sprintf("%d exceed", n[lineset.Exceeds]))
	}
	if n[lineset.NoLimit] > 0 {
		words = append(words, fmt.Sprintf("%d no limit", n[lineset.NoLimit]))
	}
	if words == nil {
		return "all within"
	}
	return strings.Join(words, ", ")
}

// set prints one set.
func (s *sheet) set(set *lineset.Rigged) {
	d := set.Set()
	s.rule("-")
	s.line("%s%s", pad(strings.ToUpper(clip(d.Name, 48)), 50),
		right(fmt.Sprintf("%s purchase, locking rail at %s", d.Rigging.Purchase, s.format(d.Rigging.Rail)), 50))
	s.hangs(set)
	s.stack(set)
	s.states(set)
	s.travel(set.Travel())
	s.bridges(set)
	s.line("  CHECKS")
	for _, c := range set.Checks() {
		s.check(c)
	}
}

func (s *sheet) hangs(set *lineset.Rigged) {
	d := set.Set()
	s.row("HANGS", "batten with its fittings", s.mass(set.Bare()), "")
	for _, item := range d.Hang {
		s.row("", clip(item.Name, named-1), s.mass(item.Mass), s.span(item)+s.onDeck(item))
	}
	s.lines(d.Rigging.Batten.Lines)
	s.installed(d.Rigging)
	if len(d.Hang) > 0 {
		s.row("", "all together", s.mass(set.Bare()+set.Hung()), "")
	}
}

func (s *sheet) span(item load.Item) string {
	if item.From == item.To {
		return "at " + s.format(item.From)
	}
	span := s.format(item.From) + " to " + s.format(item.To)
	switch {
	case item.Taper > 0:
		span += ", far end heavier"
	case item.Taper < 0:
		span += ", near end heavier"
	}
	return span
}

func (s *sheet) onDeck(item load.Item) string {
	foot := s.format(item.Below + item.Height)
	switch item.OnDeck {
	case load.Piles:
		return ", piles below " + foot
	case load.Stands:
		return ", stands up to " + foot
	}
	return ""
}

func (s *sheet) stack(set *lineset.Rigged) {
	c := set.Counterweight()
	s.row("WANTED", "counterweight, with the arbor", s.mass(c.Loaded.Wanted), s.balanceAt(set))
	if c.Pieces.Pipe < 0 {
		s.row("", "of that, pipe weight", "none", "the arbor outweighs the batten by "+s.mass(-c.Pieces.Pipe))
	} else {
		s.row("", "of that, pipe weight", s.mass(c.Pieces.Pipe), "for the bare batten, less the arbor")
	}
	s.row("", "of that, show weight", s.mass(c.Pieces.Show), "for what hangs")
	s.row("STACK", "arbor, empty", s.mass(c.Tare), "from the bottom up")
	s.rows("pipe weight", c.Stack.Pipe)
	s.rows("show weight", c.Stack.Show)
	if c.Stack.Plates > 0 {
		s.row("", fmt.Sprintf("spreader plates  %d", c.Stack.Plates), s.mass(c.Stack.PlateMass),
			"below it, then every "+s.format(set.Set().Rigging.Arbor.Plate.Every))
	}
	left := "just as wanted"
	switch {
	case c.Stack.Error > 0:
		left = s.mass(c.Stack.Error) + " more than wanted"
	case c.Stack.Error < 0:
		left = s.mass(-c.Stack.Error) + " less than wanted"
	}
	s.row("", "arbor and stack", s.mass(c.Arbor), left)
	s.row("", "stack height "+s.format(c.Stack.Height)+" of "+s.format(set.Set().Rigging.Arbor.Room)+" room", "", "")
	if len(c.Short) > 0 {
		s.wrap("           ! ", entry, fmt.Sprintf("short of %s: all of it would be %s, %s tall (%s)",
			strings.Join(c.Short, " and "), s.mass(c.Ideal.Mass), s.format(c.Ideal.Height), c.Ideal.Call()))
	}
}

func (s *sheet) rows(role string, rows []arbor.Row) {
	if len(rows) == 0 {
		s.row("", role+"  none", "", "")
	}
	for _, r := range rows {
		s.row("", fmt.Sprintf("%s  %3d of the %s", role, r.Count, clip(r.Name, 12)), s.mass(r.Total()),
			s.mass(r.Mass)+" each, "+s.format(r.Height())+" tall")
		role = strings.Repeat(" ", len(role))
	}
}

func (s *sheet) balanceAt(set *lineset.Rigged) string {
	switch set.Set().Balance {
	case lineset.AtLow:
		return "to balance at low trim"
	case lineset.AtHigh:
		return "to balance at high trim"
	}
	return "to be even over the travel"
}

// states prints low and high trim side by side.
func (s *sheet) states(set *lineset.Rigged) {
	r := set.Report()
	t, low, high, b := r.Travel, r.Low, r.High, r.Balance
	both := func(name, l, h string) {
		s.line("             %s%s%s", pad(name, 27), right(l, 28), right(h, 28))
	}
	s.line("  AT TRIM    %s%s%s", pad("", 27), right(s.trim("low", t.Low, low.Trim), 28), right(s.trim("high", t.High, high.Trim), 28))
	both("carried", s.mass(low.Carried), s.mass(high.Carried))
	both("out of balance", s.heavy(b.Low), s.heavy(b.High))
	for i, line := range low.Ropes.Lift {
		both(fmt.Sprintf("lift line %d, at its most", i+1), s.tension(low.Share.Lines[i], line), s.tension(high.Share.Lines[i], high.Ropes.Lift[i]))
	}
	block := func(name string, of func(lineset.State) units.Force) { both(name, s.force(of(low)), s.force(of(high))) }
	block("heaviest loft block", func(st lineset.State) units.Force { return heaviest(st, purchase.LoftBlock) })
	block("head block", func(st lineset.State) units.Force { return st.Ropes.Load(purchase.HeadBlock).Size() })
	s.blocks(set.Set().Rigging, block)
	block("head beam, all together", func(st lineset.State) units.Force { return st.Ropes.On(purchase.HeadBeam).Size() })
	s.hands(set, &r, both)
	s.remarks(set, &r)
}

// remarks says what two columns cannot.
func (s *sheet) remarks(set *lineset.Rigged, r *lineset.Report) {
	t, low, high, b := r.Travel, r.Low, r.High, r.Balance
	for i, p := range b.Curve {
		switch {
		case i > 0 && b.Curve[i-1].Trim == p.Trim:
			s.wrap("", entry, fmt.Sprintf("as it leaves the deck at %s: %s, then %s", s.format(p.Trim),
				s.heavy(b.Curve[i-1].Imbalance), s.heavy(p.Imbalance)))
		case (p == b.Most || p == b.Least) && p.Trim != low.Trim && p.Trim != high.Trim && (i+1 == len(b.Curve) || b.Curve[i+1].Trim != p.Trim):
			s.wrap("", entry, fmt.Sprintf("on the way, at %s: %s", s.format(p.Trim), s.heavy(p.Imbalance)))
		}
	}
	if c := set.Counterweight(); !c.Stack.Proven || !c.Ideal.Proven {
		s.wrap("           ! ", entry, "the search for the best stack was cut short: a closer one may exist")
	}
	if left := set.Bare() + set.Hung() - high.Carried; left > units.Gram {
		s.wrap("           ! ", entry, s.mass(left)+" of what hangs is still on the deck at high trim, and not in these figures")
	}
	if t.Low > t.Highest || t.High < t.Lowest {
		s.wrap("           ! ", entry, "the trims wanted lie wholly beyond what the set reaches")
	}
	s.notes(r)
}

// trim says which trim a column is for, and which was wanted where it is not reached.
func (s *sheet) trim(which string, wanted, reached units.Length) string {
	if wanted == reached {
		return which + " " + s.format(reached)
	}
	return s.format(reached) + " (" + which + " " + s.format(wanted) + " wanted)"
}

func (s *sheet) tension(share load.LineShare, rope purchase.RopeState) string {
	if share.Slack {
		return "slack by " + s.format(share.Gap)
	}
	return s.force(rope.Greatest())
}

// heaviest is the largest load on a numbered family of blocks.
func heaviest(st lineset.State, name func(int) string) units.Force {
	_, load := st.Ropes.Heaviest(name)
	return load
}

func (s *sheet) travel(t lineset.Travel) {
	s.wrap("  TRAVEL", entry, fmt.Sprintf("arbor %s gives the batten %s; wanted %s, which takes %s of the arbor",
		s.format(t.Arbor), s.format(t.Batten), s.format(t.Wanted), s.format(t.ArborWanted)))
	s.wrap("", entry, fmt.Sprintf("trims wanted %s to %s, reached %s to %s", s.format(t.Low), s.format(t.High), s.format(t.Lowest), s.format(t.Highest)))
	s.wrap("", entry, s.spare(t.Below, "low")+", "+s.spare(t.Above, "high"))
	s.wrap("", entry, fmt.Sprintf("at the ends: arbor %s above the deck, batten %s below the loft blocks",
		s.format(t.UnderFoot), s.format(t.UnderLoft)))
}

func (s *sheet) spare(l units.Length, which string) string {
	if l < 0 {
		return s.format(-l) + " short of " + which + " trim"
	}
	return "overtravel " + s.format(l) + " beyond " + which + " trim"
}

func (s *sheet) check(c lineset.Check) {
	mark, ratio := " ", fmt.Sprintf("%.2f", c.Ratio)
	switch c.Verdict {
	case lineset.Exceeds:
		mark = "!"
	case lineset.NoLimit:
		ratio = ""
	}
	if c.Verdict != lineset.NoLimit && (c.Ratio <= 0 || c.Ratio >= 100) {
		ratio = "-" // nothing to divide by, or nothing that a ratio would tell
	}
	much := s.format(c.Demand)
	if c.Verdict != lineset.NoLimit {
		much += " of " + s.system.Format(c.Limit)
	}
	where := c.Where
	if c.Trim != 0 {
		where = strings.TrimSpace(where + " at " + s.format(c.Trim))
	}
	basis := ""
	if c.Basis != "" {
		basis = fmt.Sprintf("[%d]", s.basis(c.Basis))
	}
	s.wrapRow(fmt.Sprintf("%s %s %s %s %s", mark, pad(c.Verdict.String(), 22), right(ratio, 4), pad(basis, 4), pad(c.Name, 21)), 57,
		pad(much, 20)+" "+where)
}

// basis gives the number under which the list at the foot says what a limit or a
// step of the working rests on.
func (s *sheet) basis(text string) int {
	n := slices.Index(s.bases, text)
	if n < 0 {
		n = len(s.bases)
		s.bases = append(s.bases, text)
	}
	return n + 1
}

// legend says what limits and steps rest on.
func (s *sheet) legend() {
	if len(s.bases) == 0 {
		return
	}
	s.rule("-")
	s.line("WHAT IT RESTS ON")
	for i, b := range s.bases {
		s.wrap(right(fmt.Sprintf("[%d] ", i+1), 7), 7, b)
	}
}

func (s *sheet) totals(house *lineset.RiggedHouse) {
	t := house.Totals()
	s.rule("=")
	s.line("THE HOUSE")
	s.line("  %s%d, of which %d exceed a limit", pad("sets", 42), t.Sets, t.Exceeding)
	s.line("  %s%s", pad("battens and what they carry, at high trim", 42), s.mass(t.Carried))
	s.line("  %s%s", pad("arbors with their stacks", 42), s.mass(t.Arbors))
	s.line("  %s%s down, %s towards the arbors", pad("on the loft blocks, at high trim", 42), s.format(-t.Grid.Up), s.format(-t.Grid.Across))
	s.line("  %s%s down, %s towards the stage", pad("on the head beam, at high trim", 42), s.format(-t.HeadBeam.Up), s.format(t.HeadBeam.Across))
	for _, c := range t.Pieces {
		mark, verdict := " ", "within the stock"
		if c.Short() > 0 {
			mark, verdict = "!", fmt.Sprintf("exceeds the stock by %d", c.Short())
		}
		s.line("%s %s%d of %d: %s", mark, pad("pieces of the "+clip(c.Name, 20)+", wanted of stock", 42), c.Wanted, c.Stock, verdict)
	}
	s.allotted(house, t)
}

// working prints how the figures of a set were found.
func (s *sheet) working(set *lineset.Rigged) {
	s.rule("-")
	s.line("  WORKING")
	r := set.Report()
	low := r.LowHand.Working(s.system)
	for _, part := range []struct {
		name  string
		steps []lineset.Step
	}{
		{"counterweight", set.Counterweight().Working(s.system)},
		{"balance", set.Balance().Working(s.system)},
		{"travel", set.Travel().Working(s.system)},
		{"lines and blocks at low trim", set.Low().Working(s.system)},
		{"lines and blocks at high trim", set.High().Working(s.system)},
		{"hand line at low trim", low},
		// What has been said of drag is not said again.
		{"hand line at high trim", slices.DeleteFunc(r.HighHand.Working(s.system), func(step lineset.Step) bool {
			return slices.Contains(low, step)
		})},
	} {
		s.line("  %s", part.name)
		for _, step := range part.steps {
			s.wrap("    "+step.Name, 43, fmt.Sprintf("%s = %s [%d]", step.Formula, step.Result, s.basis(step.Basis)))
		}
	}
}

func (s *sheet) heavy(f units.Force) string {
	switch {
	case f > 0:
		return s.format(f) + " batten-heavy"
	case f < 0:
		return s.format(-f) + " arbor-heavy"
	}
	return "balanced"
}
