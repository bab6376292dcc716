package lineset

import (
	"strings"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// flying lists how the pull that flies the batten one way was found, and where the set begins to run that way by itself.
func (w worker) flying(h Hand, way purchase.Way, suffix string) []Step {
	t, pull, edge := h.Terms, h.Out, h.Stays.ArborHeavy
	if way == purchase.In {
		pull, edge = h.In, h.Stays.BattenHeavy
	}
	steps, lines := w.lifting(t, way, suffix)
	more, top, foot := w.handed(t, way, suffix)
	steps = append(steps, more...)

	// What the ropes hold up with no hand on them is the arbor that would just run by itself.
	held := lines + top.force - foot.force
	arbor := t.Arbor.Weight(units.StandardGravity)
	steps = append(steps, Step{
		"ropes hold the arbor up" + suffix,
		w.plain(lines) + " " + w.signed(top.force) + " " + w.signed(-foot.force), w.plain(held), basisArbor,
	})
	if t.drags() && !h.Loose { // without drag it stays in balance only
		steps = append(steps, Step{
			"stays, until it runs " + way.String(),
			w.weight(h.Balance.Carried) + " carried " + w.signed(h.Balance.Ropes) + " ropes " + w.signed(-held) + over(t.Ratio), w.heavy(edge), basisPaths,
		})
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
	if pull.Runs && w.force(pull.Pull) != w.force(0) {
		name = "pull back on the "
	}
	formula := w.force(left) + " at the arbor"
	if pull.Rope == purchase.OuterRope {
		// From the outer rope the pull goes over the head block.
		formula += factor(1/t.Hand.past(t.Hand.idler()+1, 1, way)) + top.over()
	} else {
		formula += foot.over()
	}
	last := Step{name + pull.Rope.String() + suffix, formula, w.force(pull.Pull), basisHands}
	if len(pull.Slack) > 0 {
		last.Result += "; slack on the way: " + strings.Join(pull.Slack, ", ")
	}
	return append(steps, last)
}

// lifting follows the lift lines, each from the batten to the arbor, and gives what all of them hold it up with.
func (w worker) lifting(t HandTerms, way purchase.Way, suffix string) (steps []Step, lines units.Force) {
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
	return append(steps, Step{"lift lines on the arbor" + suffix, sum + beyond.times(len(t.Lift)), w.plain(lines), basisParts}), lines
}

// pulled is one end of the hand line at the arbor, with no hand on it.
type pulled struct {
	parts
	force units.Force // of all its parts together
}

// handed follows the hand line from the idler up to the arbor's top and to its foot.
func (w worker) handed(t HandTerms, way purchase.Way, suffix string) (steps []Step, top, foot pulled) {
	idler := t.Hand.idler()
	inner, outer, formula := w.shared(t, t.Hand.past(idler, 1, way))
	basis := basisIdler
	if t.Base > 0 {
		basis = basisHeld
	}
	steps = append(steps, Step{"idler's parts" + suffix, formula, w.force(inner) + " inner, " + w.force(outer) + " outer", basis})
	end := func(x *walk, step int, one, all string) pulled {
		at := x.toArbor(t.Hand, idler, step, way)
		steps = append(steps, x.step(one+suffix))
		p := pulled{parts: w.beyond(t.Hand, at, step, way)}
		p.force = p.on(x.force)
		if len(p.terms) > 1 {
			steps = append(steps, Step{all + suffix, w.plain(x.force) + p.times(1), w.plain(p.force), basisParts})
		}
		return p
	}
	top = end(w.walk(w.plain(outer)+" outer rope", outer), 1, "hand line at the arbor's top", "hand line holds the arbor up")
	foot = end(w.walk(w.plain(inner)+" inner rope", inner), -1, "hand line at the arbor's foot", "hand line pulls it down")
	return steps, top, foot
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
