package diagram

import (
	"fmt"
	"strings"

	"example.com/steelyard/purchase"
)

// says is how the set is rigged, where it is and what it does.
func (v view) says() string {
	does := "at rest, rope lock shut"
	switch v.way {
	case purchase.Out:
		does = "flown slowly out by hand"
	case purchase.In:
		does = "flown slowly in by hand"
	}
	kind := v.rig.Purchase.String() + " purchase"
	if hand := v.handKind(); hand != v.rig.Purchase {
		kind += ", " + hand.String() + " hand line"
	}
	return fmt.Sprintf("%s, batten at %s, %s", kind, v.sys.Format(v.trim), does)
}

// warnings says what the figures alone do not.
func (v view) warnings() (out []string) {
	switch {
	case v.way == 0 && !v.state.Ropes.Held():
		out = append(out, "Batten-heavy beyond what the idler answers: the lock alone does not hold this set, and these forces do not balance.")
	case v.way == 0 && v.state.Ropes.Taut() != nil, v.way != 0 && v.run.Slack:
		out = append(out, "Some rope is slack: the figures do not quite add up.")
	}
	if v.rig.Idler.Mass == 0 && v.rig.Idler.Base == 0 {
		out = append(out, "The idler's weight is not given: the tension that it keeps in the hand line is left out.")
	}
	if v.way != 0 && v.run.Runs {
		out = append(out, "The set runs "+v.way.String()+" by itself: the hand on the "+v.run.Rope.String()+" holds it back.")
	}
	return out
}

// describe tells the picture to those who do not see it.
func describe(views []view) string {
	var all []string
	for _, v := range views {
		lift := v.liftAtArbor()
		var text strings.Builder
		text.WriteString(fmt.Sprintf("%s: %s. The batten carries %s on %d lift lines. The head block bears %s.", v.title, v.says(),
			v.force(v.carried), len(v.lift), v.force(v.load(purchase.HeadBlock).Size())))
		text.WriteString(fmt.Sprintf(" The arbor weighs %s; the lift lines pull it up with %s", v.force(v.weight), v.force(lift[0])))
		for _, more := range lift[1:] {
			text.WriteString(" and " + v.force(more))
		}
		text.WriteString(".")
		if len(lift) > 1 {
			text.WriteString(fmt.Sprintf(" At the head beam their other parts pull with %s.", v.force(v.deadEnds())))
		}
		var ropes []string
		for _, r := range v.railRopes() {
			ropes = append(ropes, r.name+" "+v.force(r.under))
		}
		text.WriteString(" Ropes at the rail: " + strings.Join(ropes, ", ") + ".")
		if v.way == 0 {
			text.WriteString(fmt.Sprintf(" The lock holds %s.", v.force(max(v.state.Ropes.Lock, -v.state.Ropes.Lock))))
		} else {
			text.WriteString(fmt.Sprintf(" The hand pulls %s on the %s.", v.force(v.run.Pull), v.run.Rope))
		}
		all = append(all, text.String())
	}
	return strings.Join(all, " ")
}
