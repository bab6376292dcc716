package lineset

import (
	"slices"
	"strconv"
	"strings"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// What the steps at the hand line rest on.
const (
	basisDrag = "K = [a + √(a² − b²)] / b, a = 1 − c² cos θ, b = 1 − c²: a sheave, turned by θ, in balance with its drag, c times the resultant on its pin; " +
		"the tight side is the one that the rope runs to"
	basisWalk  = "T = T₀ + w·(z − z₀) along the path, × K at a sheave where the walk goes with the rope, / K where it goes against it"
	basisParts = "balance of the arbor: every part that holds it counts, one further round a sheave by its K"
	basisIdler = "balance of the idler: its two parts share its weight, the tight one K times the slack one"
	basisHeld  = "tension at the idler, as given, where it is held; with drag its two parts still make up twice that"
	basisArbor = "balance of the arbor: parts that go up hold it up, those at its foot pull it down"
	basisFelt  = "virtual work, no drag: the lock holds the imbalance on the hand line's parts at the arbor"
	basisLock  = "balance of the idler and T = T₀ + w·(z − z₀), no drag, rope lock shut"
	basisHands = "balance of the arbor: a hand adds its pull to every part beyond it on the rope"
)

// Working lists how the pulls at the rail, the band in which the set stays, and what the shut lock is
// asked to hold were found. A Hand that Hand of a Rigged did not make has none.
func (h Hand) Working(sys units.System) []Step {
	t := h.Terms
	if !t.whole() {
		return nil
	}
	w := worker{sys}
	b := h.Balance
	steps := []Step{{
		"out of balance, no drag",
		w.weight(b.Carried) + " carried " + w.signed(b.Ropes) + " ropes − " + w.weight(t.Arbor) + " arbor" + over(t.Ratio),
		w.heavy(b.Imbalance), basisPaths,
	}}
	steps = append(steps, w.own(t)...)
	steps = append(steps, w.locked(h)...)
	steps = append(steps, w.factors(t)...)
	out, in := w.flying(h, purchase.Out, ", out"), w.flying(h, purchase.In, ", in")
	if !t.drags() { // all but the pull itself would be the same again
		out, in = w.flying(h, purchase.Out, ""), in[len(in)-1:]
		out[len(out)-1].Name += ", out"
	}
	return append(append(steps, out...), in...)
}

// drags tells whether a sheave has any drag in it.
func (t HandTerms) drags() bool {
	return slices.ContainsFunc(append(slices.Clone(t.Lift), t.Hand), func(r RopeTerms) bool {
		return slices.ContainsFunc(r.Stops, func(s StopTerms) bool { return s.Factor != 1 })
	})
}

// locked lists what is felt while the lock is shut.
func (w worker) locked(h Hand) []Step {
	t, f := h.Terms, h.Feel
	asked := w.force(f.More) + ", " + f.Tight.String() + " the tighter"
	lock, sign := f.More, " − "
	if f.Tight == purchase.OuterRope {
		lock, sign = -f.More, " + "
	}
	if none := w.force(0); w.force(f.More) == none {
		asked = none + ", ropes alike"
	}
	idler, basis := w.idler(t)+" / 2", basisLock
	grip := t.Idler.Weight(units.StandardGravity).Scale(0.5)
	if t.Base > 0 {
		idler, basis = w.force(t.Base)+" at the held idler", basisHeld
		grip = t.Base
	}
	up := w.walk(idler, grip)
	up.add(t.upToLock())
	grip = up.force
	inner := Step{"inner rope at the lock", up.text, w.force(grip), basis}
	outer := Step{"outer rope above the lock", w.force(grip) + sign + w.force(f.More), w.plain(grip - lock), basisLock}
	switch {
	case lock > grip && t.Base > 0:
		outer.Result += ": slack, and what holds the idler bears so much more"
	case lock > grip:
		outer.Result += ": slack, the idler lifts and the lock does not hold the set"
	}
	return []Step{
		{"asked of the rope lock", times(t.Ratio) + w.force(units.Abs(h.Balance.Imbalance)) + " out of balance" + over(t.Parts), asked, basisFelt},
		inner, outer,
	}
}

// idler writes its weight.
func (w worker) idler(t HandTerms) string {
	if t.Idler == 0 {
		return w.force(0) + " idler, not given,"
	}
	return w.weight(t.Idler) + " idler"
}

// own lists what the ropes' own weight adds from stop to stop; lines that are alike in one line.
func (w worker) own(t HandTerms) []Step {
	step := func(name string, rope RopeTerms, line int) Step {
		var ways, weights []string
		for i, stop := range rope.Stops[1:] {
			if rise := units.Abs(stop.Rise); rise > 0 && rope.Mass > 0 {
				way := " up to "
				if stop.Rise < 0 {
					way = " down to "
				}
				ways = append(ways, w.length(rise)+way+anyLine(stop.At, line))
				weights = append(weights, w.force(units.Abs(rope.gains(i, i+1))))
			}
		}
		if line == 0 && rope.Mass > 0 {
			ways = append(ways, w.length(t.ToLock)+" from the idler up to the rope lock")
			weights = append(weights, w.force(t.upToLock()))
		}
		return Step{name, w.sys.Format(rope.Mass) + w.gravity() + " × " + strings.Join(ways, ", "), strings.Join(weights, ", "), basisWalk}
	}
	var steps []Step
	for i, rope := range t.Lift {
		one := step("own weight of each lift line", rope, i+1)
		if !slices.Contains(steps, one) {
			steps = append(steps, one)
		}
	}
	if len(steps) > 1 { // then each by its own name
		steps = nil
		for i, rope := range t.Lift {
			steps = append(steps, step("own weight of "+rope.Name, rope, i+1))
		}
	}
	steps = append(steps, step("own weight of the hand line", t.Hand, 0))
	return slices.DeleteFunc(steps, func(s Step) bool { return s.Result == "" })
}

// anyLine leaves out the number of the line in the name of its own block.
func anyLine(name string, line int) string {
	if line == 0 {
		return name
	}
	return strings.TrimSuffix(name, " "+strconv.Itoa(line))
}

// factors lists the drag factors of the sheaves.
func (w worker) factors(t HandTerms) []Step {
	var steps []Step
	for _, rope := range append(slices.Clone(t.Lift), t.Hand) {
		var turns, ks []string
		for _, stop := range rope.Stops {
			if stop.Factor != 1 {
				turns = append(turns, stop.At+" "+degrees(stop.Turn))
				ks = append(ks, factorText(max(stop.Factor, 1/stop.Factor)))
			}
		}
		if len(ks) > 0 {
			steps = append(steps, Step{"drag factors K, " + rope.Name, "drag " + number(float64(t.Drag)) + "; " + strings.Join(turns, ", "), strings.Join(ks, ", "), basisDrag})
		}
	}
	return steps
}
