package lineset

import (
	"slices"
	"strconv"
	"strings"

	"example.com/steelyard/arbor"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Step is one line of working: what is found, from which numbers, and why it may
// be found so.
type Step struct {
	Name    string `json:"name"`    // the quantity's trade name
	Formula string `json:"formula"` // with its numbers, in the reader's units
	Result  string `json:"result"`  // with its unit
	Basis   string `json:"basis"`   // a published source, a law of mechanics, or common practice
}

// What the steps rest on.
const (
	basisPaths   = "constant length of each rope along its path: ratio −dx/dy; virtual work, no drag"
	basisRopes   = "T = T₀ + w·(z − z₀) along each path; w·(y − x) + w_hand·a·(hand line per batten travel) where parts hang plumb"
	basisCarried = "clear: all of it; piled: by the height off the deck; standing: nothing until it lifts"
	basisExact   = "whole pieces, added up exactly"
	basisBeam    = "continuous beam on lines that pull or are slack (three-moment equation)"
	basisVector  = "vector sum of the tensions of the parts that meet there, rope lock shut"
	basisStops   = "what is left between the stops after the arbor's own length, times the ratio"
	basisWeight  = "weight is mass at standard gravity, 9.80665 m/s² (exact, NIST SP 811)"
)

// Working lists how the counterweight was found.
func (c Counterweight) Working(sys units.System) []Step {
	w := worker{sys}
	steps := w.demand("with what hangs", c.Loaded, c)
	if c.Bare != c.Loaded {
		steps = append(steps, w.demand("bare batten", c.Bare, c)...)
	}
	show := c.Pieces.Show
	wanted := w.mass(c.Loaded.Wanted) + " − " + w.mass(c.Bare.Wanted)
	if c.Loaded.Wanted < c.Bare.Wanted {
		wanted += ", and pipe weight stays"
	}
	steps = append(steps,
		Step{"pipe weight wanted", w.mass(c.Bare.Wanted) + " for the bare batten − " + w.mass(c.Tare) + " arbor", w.mass(c.Pieces.Pipe), "common practice: it stays when the batten is stripped"},
		Step{"show weight wanted", wanted, w.mass(show), basisPaths},
		Step{"pipe weight", w.rows(c.Stack.Pipe), w.mass(c.Stack.PipeMass), basisExact},
		Step{"show weight", w.rows(c.Stack.Show), w.mass(c.Stack.ShowMass), basisExact + "; closest to what is wanted, then fewest"})
	if c.Stack.Plates > 0 {
		steps = append(steps, Step{"spreader plates", strconv.Itoa(c.Stack.Plates) + " under and between the show weight", w.mass(c.Stack.PlateMass), "common practice: under the first show piece and after each full interval"})
	}
	if c.Stack.LockMass > 0 {
		steps = append(steps, Step{"lock plate", "as given, on top of the stack", w.mass(c.Stack.LockMass), "as given for the arbor"})
	}
	return append(steps,
		Step{"left over", w.mass(c.Stack.Mass) + " stacked − " + w.mass(c.Pieces.Pipe+show) + " wanted", w.mass(c.Stack.Error), "positive: too heavy at the arbor"},
		Step{"arbor with stack", w.mass(c.Tare) + " + " + w.mass(c.Stack.Mass), w.mass(c.Arbor), basisExact})
}

// Working lists how the out of balance at low and high trim was found.
func (b Balance) Working(sys units.System) []Step {
	w := worker{sys}
	if len(b.Curve) == 0 {
		return nil
	}
	var steps []Step
	low, high := b.Curve[0], b.Curve[len(b.Curve)-1]
	for _, p := range []Point{low, high, b.Most, b.Least} {
		name := "out of balance at " + w.length(p.Trim)
		formula := w.weight(p.Carried) + " carried " + w.signed(p.Ropes) + " ropes − " + w.weight(b.Arbor) + " arbor" + over(b.Ratio)
		step := Step{name, formula, w.heavy(p.Imbalance), basisPaths}
		if !slices.Contains(steps, step) {
			steps = append(steps, step)
		}
	}
	return steps
}

// Working lists how travel and trims were found.
func (t Travel) Working(sys units.System) []Step {
	w := worker{sys}
	ratio := number(t.Ratio)
	return []Step{
		{"batten travel", ratio + " × " + w.length(t.Arbor) + " of the arbor", w.length(t.Batten), basisStops},
		{"highest trim reached", w.length(t.Lowest) + " as made off + " + w.length(t.Batten), w.length(t.Highest), basisStops},
		{"arbor travel wanted", "(" + w.length(t.High) + " − " + w.length(t.Low) + ") / " + ratio, w.length(t.ArborWanted), basisPaths},
		{"overtravel at low trim", w.length(t.Low) + " wanted − " + w.length(t.Lowest) + " reached", w.length(t.Below), "negative: so much short"},
		{"overtravel at high trim", w.length(t.Highest) + " reached − " + w.length(t.High) + " wanted", w.length(t.Above), "negative: so much short"},
	}
}

// Working lists how the load of the worst line and of the blocks was found.
func (s State) Working(sys units.System) []Step {
	w := worker{sys}
	at := " at " + w.length(s.Trim)
	steps := []Step{{"carried" + at, w.mass(s.Carried) + " at standard gravity", w.force(s.Share.Weight), basisWeight}}
	for i, rope := range s.Ropes.Lift[:min(len(s.Ropes.Lift), len(s.Share.Lines))] {
		share := s.Share.Lines[i].Tension
		steps = append(steps, Step{
			"lift line " + strconv.Itoa(i+1) + at,
			w.force(share) + " at the batten + " + w.force(rope.Greatest()-share) + " of its own up to the blocks", w.force(rope.Greatest()), basisBeam,
		})
	}
	// The hand line passes the head block plumb on both sides.
	var hand units.Force
	for _, part := range s.Ropes.Hand.Parts {
		if part.From == purchase.HeadBlock {
			hand += part.TensionFrom
		}
		if part.To == purchase.HeadBlock {
			hand += part.TensionTo
		}
	}
	for _, block := range []struct {
		name string
		load purchase.Vector
		of   string
	}{
		{"head block", s.Ropes.Load(purchase.HeadBlock), "; down: lift lines and " + w.force(hand) + " of the hand line"},
		{"head beam", s.Ropes.On(purchase.HeadBeam), "; head block and dead ends"},
	} {
		across, up := units.Abs(block.load.Across), units.Abs(block.load.Up)
		steps = append(steps, Step{block.name + at, "√(" + w.force(across) + "² across + " + w.force(up) + "² down)" + block.of, w.force(block.load.Size()), basisVector})
	}
	return steps
}

// ropes writes the closed form of the ropes' weight, which agrees with the walk
// along their paths because every part that moves hangs plumb.
func (w worker) ropes(r Ropes, p Point) string {
	lift := w.sys.Format(r.Lift) + " × (" + w.length(p.ArborTop) + " − " + w.length(p.Trim) + ")"
	hand := w.sys.Format(r.Hand) + " × " + w.length(r.Between)
	if r.HandRatio != 1 {
		hand += " × " + number(r.HandRatio)
	}
	text := "lift lines " + lift + " + hand line " + hand
	if g := w.gravity(); g != "" {
		text += "," + g
	}
	return text
}

// gravity is the factor behind a mass that is to be a weight. In US customary units a pound weighs a pound-force.
func (w worker) gravity() string {
	if w.sys == units.US {
		return ""
	}
	return " × 9.80665 m/s²"
}

// worker writes the working in one unit system.
type worker struct{ sys units.System }

func (w worker) demand(what string, d Demand, c Counterweight) []Step {
	var steps []Step
	points := []Point{d.Most}
	if d.Least.Trim != d.Most.Trim || d.Least != d.Most {
		points = append(points, d.Least)
	}
	mean := ""
	for i, p := range points {
		at := " at " + w.length(p.Trim)
		steps = append(steps,
			Step{"carried, " + what + at, w.mass(p.Carried) + " at standard gravity", w.weight(p.Carried), basisCarried},
			Step{"rope weight" + at, w.ropes(c.Ropes, p), w.heavy(p.Ropes), basisRopes})
		if i > 0 {
			mean += " and "
		}
		mean += w.force(p.Imbalance)
	}
	if len(points) > 1 {
		mean = "the mean of " + mean
	}
	return append(steps, Step{"wanted at the arbor, " + what, number(c.Ratio) + " × " + mean + ", as mass", w.mass(d.Wanted), basisPaths})
}

func (w worker) length(l units.Length) string { return w.sys.Format(l) }

// force is written with one place in lbf and three in kN, zeros too, for the same
// reason as mass.
func (w worker) force(f units.Force) string {
	if w.sys == units.US {
		return w.sys.FormatPlaces(f, 1)
	}
	return w.sys.FormatPlaces(f, 3)
}

// mass is written with one place in pounds and two in kilograms, zeros too, so
// that a column of them adds up by eye.
func (w worker) mass(m units.Mass) string {
	if w.sys == units.US {
		return w.sys.FormatPlaces(m, 1)
	}
	return w.sys.FormatPlaces(m, 2)
}

func (w worker) weight(m units.Mass) string { return w.force(m.Weight(units.StandardGravity)) }

// plain is a force with the minus of the formulas, where it is below zero.
func (w worker) plain(f units.Force) string {
	if f < 0 {
		return "−" + w.force(-f)
	}
	return w.force(f)
}

func (w worker) signed(f units.Force) string {
	if f < 0 {
		return "− " + w.force(-f)
	}
	return "+ " + w.force(f)
}

// heavy says which way an imbalance goes, but of one that is printed as nothing.
func (w worker) heavy(f units.Force) string {
	text := w.force(units.Abs(f))
	if text == w.force(0) {
		f = 0
	}
	return text + " " + heavy(f)
}

func (w worker) rows(rows []arbor.Row) string {
	if len(rows) == 0 {
		return "no pieces"
	}
	parts := make([]string, len(rows))
	for i, r := range rows {
		parts[i] = strconv.Itoa(r.Count) + " × " + w.mass(r.Mass)
	}
	return strings.Join(parts, " + ")
}

func number(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }
