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
// asked to hold were found.
func (h Hand) Working(sys units.System) []Step {
	t := h.Terms
	if len(t.Lift) == 0 || len(t.Lift) != len(t.Pulls) || len(t.Hand.Stops) == 0 {
		return nil
	}
	w := worker{sys}
	b := h.Balance
	steps := []Step{{"out of balance, no drag",
		w.weight(b.Carried) + " carried " + w.signed(b.Ropes) + " ropes − " + w.weight(t.Arbor) + " arbor" + over(t.Ratio),
		w.heavy(b.Imbalance), basisPaths}}
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
	if f.More == 0 {
		asked = w.force(0) + ", ropes alike"
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

// flying lists how the pull that flies the batten one way was found, and where the set begins to run that way by itself.
func (w worker) flying(h Hand, way purchase.Way, suffix string) []Step {
	t, pull, edge := h.Terms, h.Out, h.Stays.ArborHeavy
	if way == purchase.In {
		pull, edge = h.In, h.Stays.BattenHeavy
	}
	var steps []Step

	// The lift lines, each from the batten to the arbor.
	var lines units.Force
	var sum string
	var beyond parts
	for i, rope := range t.Lift {
		x := w.walk(w.force(t.Pulls[i])+" at the batten", t.Pulls[i])
		at := x.toArbor(rope, 0, 1, way)
		steps = append(steps, x.step(rope.Name+" at the arbor"+suffix))
		if i == 0 {
			sum = w.plain(x.force)
		} else {
			sum += " " + w.signed(x.force)
		}
		beyond = w.beyond(rope, at, 1, way)
		lines += beyond.on(x.force)
	}
	if len(beyond.terms) > 1 && len(t.Lift) > 1 {
		sum = "(" + sum + ")"
	}
	steps = append(steps, Step{"lift lines on the arbor" + suffix, sum + beyond.times(len(t.Lift)), w.plain(lines), basisParts})

	// The hand line, from the idler up and down, no hand on it.
	idler := slices.IndexFunc(t.Hand.Stops, func(s StopTerms) bool { return s.On == purchase.Idler })
	inner, outer, shared := w.shared(t, t.Hand.past(idler, 1, way))
	steps = append(steps, Step{"idler's parts" + suffix, shared, w.force(inner) + " inner, " + w.force(outer) + " outer", basisIdler})
	if t.Base > 0 {
		steps[len(steps)-1].Basis = basisHeld
	}
	up := w.walk(w.plain(outer)+" outer rope", outer)
	atTop := up.toArbor(t.Hand, idler, 1, way)
	steps = append(steps, up.step("hand line at the arbor's top"+suffix))
	atHead := t.Hand.past(idler+1, 1, way)
	top := w.beyond(t.Hand, atTop, 1, way)
	down := w.walk(w.plain(inner)+" inner rope", inner)
	atFoot := down.toArbor(t.Hand, idler, -1, way)
	steps = append(steps, down.step("hand line at the arbor's foot"+suffix))
	foot := w.beyond(t.Hand, atFoot, -1, way)

	if len(top.terms) > 1 {
		steps = append(steps, Step{"hand line holds the arbor up" + suffix, w.plain(up.force) + top.times(1), w.plain(top.on(up.force)), basisParts})
	}
	if len(foot.terms) > 1 {
		steps = append(steps, Step{"hand line pulls it down" + suffix, w.plain(down.force) + foot.times(1), w.plain(foot.on(down.force)), basisParts})
	}

	// What the ropes hold up so is the arbor that would just run by itself.
	held := lines + top.on(up.force) - foot.on(down.force)
	arbor := t.Arbor.Weight(units.StandardGravity)
	steps = append(steps, Step{"ropes hold the arbor up" + suffix,
		w.plain(lines) + " " + w.signed(top.on(up.force)) + " " + w.signed(-foot.on(down.force)), w.plain(held), basisArbor})
	if t.drags() && !h.Loose { // without drag it stays in balance only
		steps = append(steps, Step{"stays, until it runs " + way.String(),
			w.weight(h.Balance.Carried) + " carried " + w.signed(h.Balance.Ropes) + " ropes " + w.signed(-held) + over(t.Ratio), w.heavy(edge), basisPaths})
	}
	left := units.Abs(held - arbor)
	need := w.force(held) + " − " + w.force(arbor) + " arbor"
	if arbor > held {
		need = w.force(arbor) + " arbor " + w.signed(-held)
	}
	steps = append(steps, Step{"left to the hand at the arbor" + suffix, need, w.force(left), basisArbor})

	if pull.Loose {
		return append(steps, Step{"pull" + suffix, "the hand line would be slack on its way", "cannot be told", basisWalk})
	}
	name := "pull on the "
	if pull.Runs {
		name = "pull back on the "
	}
	formula := w.force(left) + " at the arbor"
	if pull.Rope == purchase.OuterRope {
		formula += factor(1/atHead) + top.over()
	} else {
		formula += foot.over()
	}
	last := Step{name + pull.Rope.String() + suffix, formula, w.force(pull.Pull), basisHands}
	if len(pull.Slack) > 0 {
		last.Result += "; slack on the way: " + strings.Join(pull.Slack, ", ")
	}
	return append(steps, last)
}

// shared gives the tensions of the idler's two parts: k is the outer one's over the inner one's.
func (w worker) shared(t HandTerms, k float64) (inner, outer units.Force, formula string) {
	both := t.Idler.Weight(units.StandardGravity)
	formula = w.idler(t)
	if t.Base > 0 {
		both = 2 * t.Base
		formula = "2 × " + w.force(t.Base) + " at the held idler"
	}
	inner = both.Scale(1 / (1 + k))
	outer = inner.Scale(k)
	switch {
	case k > 1:
		formula += " / (1 + " + factorText(k) + "); outer" + factor(k) + " of that"
	case k < 1:
		formula += " / (1 + " + factorText(1/k) + "); inner" + factor(1/k) + " of that"
	default:
		formula += " / 2"
	}
	return inner, outer, formula
}
