package purchase_test

import (
	"errors"
	"math"
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

func TestLayoutRefused(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*purchase.Layout)
		field  string
		kind   error
		reason string
	}{
		{"no kind", func(l *purchase.Layout) { l.Kind = 0 }, "kind", units.ErrMissing, "a choice that must be made"},
		{"unknown kind", func(l *purchase.Layout) { l.Kind = 4 }, "kind", units.ErrUnknown, "only three are laid"},
		{"unknown kind, and no dead end", func(l *purchase.Layout) { l.Kind, l.DeadEnd = 4, 0 }, "kind", units.ErrUnknown, "whether there is a dead end is not known"},
		{"unknown hand line, and no dead end", func(l *purchase.Layout) { l.Hand, l.DeadEnd = 4, 0 }, "hand", units.ErrUnknown, "whether there is a dead end is not known"},
		{"unknown hand line under single lift lines, and no dead end", func(l *purchase.Layout) { l.Kind, l.Hand, l.DeadEnd = purchase.Single, 4, 0 }, "hand", units.ErrUnknown, "whether there is a dead end is not known"},
		{"unknown kind over a double hand line, and no dead end", func(l *purchase.Layout) { l.Kind, l.Hand, l.DeadEnd = 4, purchase.Double, 0 }, "kind", units.ErrUnknown, "the lift lines come first"},
		{"unknown hand line", func(l *purchase.Layout) { l.Hand = 4 }, "hand", units.ErrUnknown, "only three are laid"},
		{"no dead end for a double hand line", func(l *purchase.Layout) { l.Kind, l.Hand, l.DeadEnd = purchase.Single, purchase.Double, 0 }, "dead_end", units.ErrMissing, "the hand line ends there"},
		{"no dead end for double lift lines", func(l *purchase.Layout) { l.Hand, l.DeadEnd = purchase.Single, 0 }, "dead_end", units.ErrMissing, "the lift lines end there"},
		{"no beam block in triple", func(l *purchase.Layout) { l.Kind, l.DeadEnd = purchase.Triple, 0 }, "dead_end", units.ErrMissing, "the lift lines turn there"},
		{"beam block under the arbor", func(l *purchase.Layout) { l.Kind, l.DeadEnd = purchase.Triple, 57*units.Foot }, "dead_end", units.ErrOutOfRange, "they run up to it"},
		{"rail block over the arbor's foot", func(l *purchase.Layout) { l.Kind, l.Rail = purchase.Triple, 53*units.Foot }, "rail", units.ErrOutOfRange, "the hand line's block must be below"},
		{"dead end of the hand line alone over the foot", func(l *purchase.Layout) { l.Kind, l.Hand, l.Rail = purchase.Single, purchase.Double, 53*units.Foot }, "rail", units.ErrOutOfRange, "its dead end must be below"},
		{"mule block of no name", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("", 3, 18)) }, "loft[1].mules[0].name", units.ErrMissing, "loads are asked for by name"},
		{"mule block of a name that is taken", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("loft block 5", 3, 19)) }, "loft[1].mules[0].name", units.ErrDuplicate, "loads would be mixed up"},
		{"mule block on the arbor", func(l *purchase.Layout) {
			l.Loft[1].Mules = mules(purchase.Mule{Name: "m", On: purchase.Arbor, Across: 3, Height: 19})
		}, "loft[1].mules[0].on", units.ErrOutOfRange, "it stands still"},
		{"mule block on nothing", func(l *purchase.Layout) {
			l.Loft[1].Mules = mules(purchase.Mule{Name: "m", On: 99, Across: 3, Height: 19})
		}, "loft[1].mules[0].on", units.ErrUnknown, "only the bodies of a set"},
		{"mule block nowhere", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", 3, units.Length(math.Inf(1)))) }, "loft[1].mules[0].height", units.ErrNotFinite, "no infinity goes in"},
		{"mule block not a number across", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", units.Length(math.NaN()), 19)) }, "loft[1].mules[0].across", units.ErrNotFinite, "no NaN goes in"},
		{"mule block on the loft block", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", l.Loft[1].Across, l.Loft[1].Height)) }, "loft[1].mules[0]", units.ErrDuplicate, "the part would have no direction"},
		{"mule block on another", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", 3, 19), mule("n", 3, 19)) }, "loft[1].mules[1]", units.ErrDuplicate, "the part would have no direction"},
		{"mule block on the head block", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", 3, 19), mule("n", 0, l.HeadBlock)) }, "loft[1].mules[1]", units.ErrDuplicate, "the part would have no direction"},
		{"mule block on a level run", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", 3, l.HeadBlock)) }, "loft[1].mules[0]", purchase.ErrNoTurn, "the line would run straight past it"},
		{"mule block straight over the loft block", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", l.Loft[1].Across, 22)) }, "loft[1]", purchase.ErrNoTurn, "the line would run straight past the loft block"},
		{"mule block straight over the head block", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", 0, 22)) }, "loft[1].mules[0]", purchase.ErrNoTurn, "the line would run straight past the head block"},
		{"loft block straight over the head block", func(l *purchase.Layout) { l.Loft[0] = purchase.Loft{Across: 2e-9, Height: 22} }, "loft[0]", purchase.ErrNoTurn, "the line would run straight past the head block"},
		{"too many mule blocks", func(l *purchase.Layout) { l.Loft[1].Mules = make([]purchase.Mule, 33) }, "loft[1].mules", units.ErrOutOfRange, "work is bounded"},
		{"no lines", func(l *purchase.Layout) { l.Loft = nil }, "loft", units.ErrMissing, "nothing would hold the batten"},
		{"NaN height", func(l *purchase.Layout) { l.Loft[1].Height = units.Length(math.NaN()) }, "loft[1].height", units.ErrNotFinite, "no NaN goes in"},
		{"infinite head", func(l *purchase.Layout) { l.HeadBlock = units.Length(math.Inf(1)) }, "head_block", units.ErrNotFinite, "no infinity goes in"},
		{"block over the arbor", func(l *purchase.Layout) { l.Loft[0].Across = 0 }, "loft[0].across", units.ErrMissing, "it would coincide with the head block"},
		{"loft below the trim", func(l *purchase.Layout) { l.Loft[2].Height = 1 }, "loft[2].height", units.ErrOutOfRange, "the batten hangs under it"},
		{"negative rope", func(l *purchase.Layout) { l.LiftMass = -1 }, "lift_line_mass", units.ErrNegative, "ropes weigh something or nothing"},
		{"arbor over the head block", func(l *purchase.Layout) { l.Kind, l.ArborTop = purchase.Single, 61*units.Foot }, "arbor_top", units.ErrOutOfRange, "the lines could not hold it"},
		{"arbor on the idler", func(l *purchase.Layout) { l.Kind, l.ArborLength = purchase.Single, 57*units.Foot }, "idler", units.ErrOutOfRange, "the hand line has no room"},
		{"no dead end", func(l *purchase.Layout) { l.DeadEnd = 0 }, "dead_end", units.ErrMissing, "double purchase has one"},
		{"rail over the arbor's foot", func(l *purchase.Layout) { l.Rail = 53 * units.Foot }, "rail", units.ErrOutOfRange, "its dead end must be below"},
		{"rail under the idler", func(l *purchase.Layout) { l.Rail = 1 * units.Foot }, "rail", units.ErrOutOfRange, "the lock sits above the idler"},
		{"loft at the trim", func(l *purchase.Layout) { l.Loft[0].Height = l.Trim }, "loft[0].height", units.ErrOutOfRange, "equal is not above"},
		{"idler at the arbor's foot", func(l *purchase.Layout) {
			l.Kind, l.Idler, l.Rail = purchase.Single, l.ArborTop-l.ArborLength, 55*units.Foot
		}, "idler", units.ErrOutOfRange, "equal is not below"},
		{"rail at the arbor's foot", func(l *purchase.Layout) { l.Rail = l.ArborTop - l.ArborLength }, "rail", units.ErrOutOfRange, "its dead end must be below: equal is not"},
		{"rail at the head block", func(l *purchase.Layout) { l.Kind, l.Rail = purchase.Single, 60*units.Foot }, "rail", units.ErrOutOfRange, "equal is not below"},
		{"arbor at the head block", func(l *purchase.Layout) { l.ArborTop = 60 * units.Foot }, "arbor_top", units.ErrOutOfRange, "equal is not below"},
		{"dead end at the arbor", func(l *purchase.Layout) { l.DeadEnd = 58 * units.Foot }, "dead_end", units.ErrOutOfRange, "equal is not above"},
		{"negative hand line", func(l *purchase.Layout) { l.HandMass = -1 }, "hand_line_mass", units.ErrNegative, "ropes weigh something or nothing"},
		{"NaN trim", func(l *purchase.Layout) { l.Trim = units.Length(math.NaN()) }, "trim", units.ErrNotFinite, "no NaN goes in"},
		{"too many lines", func(l *purchase.Layout) { l.Loft = make([]purchase.Loft, 65) }, "loft", units.ErrOutOfRange, "work is bounded"},
		{"one mule block in two places", func(l *purchase.Layout) {
			l.Loft[1].Mules, l.Loft[2].Mules = mules(mule("m", 3, 19)), mules(mule("m", 3, 20.1))
		}, "loft[2].mules[0]", units.ErrDuplicate, "loads of two blocks would be added up"},
		{"one mule block on two bodies", func(l *purchase.Layout) {
			l.Loft[1].Mules, l.Loft[2].Mules = mules(mule("m", 3, 19)), mules(purchase.Mule{Name: "m", On: purchase.Grid, Across: 3, Height: 19})
		}, "loft[2].mules[0]", units.ErrDuplicate, "one block hangs from one thing"},
		{"mule block off the plane", func(l *purchase.Layout) {
			l.Loft[1].Mules = mules(purchase.Mule{Name: "m", Across: 3, Height: 19, Offset: 1.01})
		}, "loft[1].mules[0].offset", units.ErrOutOfRange, "that is another set's plane"},
		{"loft block off the plane", func(l *purchase.Layout) { l.Loft[1].Offsets.Loft = -1.01 }, "loft[1].offsets.loft", units.ErrOutOfRange, "that is another set's plane"},
		{"NaN groove", func(l *purchase.Layout) { l.Loft[1].Offsets.Head = units.Length(math.NaN()) }, "loft[1].offsets.head", units.ErrNotFinite, "no NaN goes in"},
		{"arbor off the plane", func(l *purchase.Layout) { l.Loft[0].Offsets.Arbor = 2 }, "loft[0].offsets.arbor", units.ErrOutOfRange, "that is another set's plane"},
		{"infinite dead end", func(l *purchase.Layout) { l.Loft[0].Offsets.Beam = units.Length(math.Inf(-1)) }, "loft[0].offsets.beam", units.ErrNotFinite, "no infinity goes in"},
		{"negative sheave", func(l *purchase.Layout) { l.Sheaves.Loft = -0.2 }, "sheaves.loft", units.ErrNegative, "a diameter"},
		{"sheave smaller than the lift line", func(l *purchase.Layout) { l.LiftDiameter, l.Sheaves.Mule = 0.006, 0.005 }, "sheaves.mule", units.ErrOutOfRange, "a slip of the unit"},
		{"head sheave smaller than the lift line", func(l *purchase.Layout) { l.LiftDiameter, l.Sheaves.Head = 0.006, 0.005 }, "sheaves.head", units.ErrOutOfRange, "a slip of the unit"},
		{"NaN arbor sheave", func(l *purchase.Layout) { l.Sheaves.Arbor = units.Length(math.NaN()) }, "sheaves.arbor", units.ErrNotFinite, "no NaN goes in"},
		{"negative beam sheave", func(l *purchase.Layout) { l.Sheaves.Beam = -1 }, "sheaves.beam", units.ErrNegative, "a diameter"},
		{"sheave smaller than the hand line", func(l *purchase.Layout) { l.HandDiameter, l.Sheaves.Idler = 0.019, 0.01 }, "sheaves.idler", units.ErrOutOfRange, "a slip of the unit"},
		{"hand line's head sheave", func(l *purchase.Layout) { l.HandDiameter, l.Sheaves.HandHead = 0.019, 0.01 }, "sheaves.hand_head", units.ErrOutOfRange, "a slip of the unit"},
		{"hand line's arbor sheave", func(l *purchase.Layout) { l.Sheaves.HandArbor = -1 }, "sheaves.hand_arbor", units.ErrNegative, "a diameter"},
		{"hand line's beam sheave", func(l *purchase.Layout) { l.Sheaves.HandBeam = -1 }, "sheaves.hand_beam", units.ErrNegative, "a diameter"},
		{"negative lift line", func(l *purchase.Layout) { l.LiftDiameter = -0.006 }, "lift_line_diameter", units.ErrNegative, "a diameter"},
		{"infinite hand line", func(l *purchase.Layout) { l.HandDiameter = units.Length(math.Inf(1)) }, "hand_line_diameter", units.ErrNotFinite, "no infinity goes in"},
		{"rail at the idler", func(l *purchase.Layout) { l.Rail = l.Idler }, "rail", units.ErrOutOfRange, "equal is not above"},
		{"no head block", func(l *purchase.Layout) { l.HeadBlock = 0 }, "head_block", units.ErrMissing, "nothing is above or below it then"},
		{"head block under the deck", func(l *purchase.Layout) { l.HeadBlock = -1 }, "head_block", units.ErrNegative, "nothing is above or below it then"},
		{"arbor of less than no length", func(l *purchase.Layout) { l.Kind, l.ArborLength = purchase.Single, -100 }, "arbor_length", units.ErrNegative, "its foot is nowhere then"},
		{"mule block one metre and a hair from its other sheave", func(l *purchase.Layout) {
			l.Loft[1].Mules, l.Loft[2].Mules = mules(mule("m", 3, 19)), mules(mule("m", 3, 20.000001))
		}, "loft[2].mules[0]", units.ErrDuplicate, "no block is so large"},
		{"mule blocks of no name, far apart", func(l *purchase.Layout) {
			l.Loft[1].Mules, l.Loft[2].Mules = mules(mule("", 3, 17)), mules(mule("", 3, 19))
		}, "loft[1].mules[0].name, loft[2].mules[0].name", units.ErrMissing, "only their names are wrong"},
		{"mule block on the idler", func(l *purchase.Layout) {
			l.Loft[1].Mules = mules(purchase.Mule{Name: "m", On: purchase.Idler, Across: 3, Height: 19})
		}, "loft[1].mules[0].on", units.ErrOutOfRange, "it stands still"},
		{"mule block on the batten", func(l *purchase.Layout) {
			l.Loft[1].Mules = mules(purchase.Mule{Name: "m", On: purchase.Batten, Across: 3, Height: 19})
		}, "loft[1].mules[0].on", units.ErrOutOfRange, "it stands still"},
		{"rim below nothing", func(l *purchase.Layout) { l.Rim = -1 }, "rim", units.ErrNegative, "a mass"},
		{"drag beyond sense", func(l *purchase.Layout) { l.Drag = 1.04 }, "drag", units.ErrOutOfRange, "a factor per half turn is no drag"},
		{"no arbor length", func(l *purchase.Layout) { l.ArborLength = 0 }, "arbor_length", units.ErrMissing, "its two ends would coincide"},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := weightless(purchase.Double)
			c.change(&l)
			_, err := l.Rig()
			one(t, err, c.field, c.kind, c.reason)
			if fault := l.Validate(); fault == nil || fault.Error() != err.Error() {
				t.Errorf("Validate says %v, Rig %v", fault, err)
			}
		})
	}
}

func mules(m ...purchase.Mule) []purchase.Mule { return m }

func mule(name string, across, height units.Length) purchase.Mule {
	return purchase.Mule{Name: name, Across: across, Height: height}
}

func TestReevingRefused(t *testing.T) {
	stop := func(name string, on purchase.Body, across, height units.Length) purchase.Stop {
		return purchase.Stop{Name: name, On: on, Across: across, Height: height}
	}
	for _, c := range []struct {
		name   string
		change func(*purchase.Reeving)
		field  string
		kind   error
		reason string
	}{
		{"lift line on the idler", func(r *purchase.Reeving) {
			r.Lift[1].Path[4] = stop("idler", purchase.Idler, 0, 0)
		}, "lift[1].path[4].on", units.ErrOutOfRange, "free in its guides it holds no end"},
		{"hand line on the batten", func(r *purchase.Reeving) { r.Hand.Path[0] = stop("batten", purchase.Batten, 0, 0) }, "hand.path[0].on", units.ErrOutOfRange, "a hand line carries no batten"},
		{"hand line from the idler", func(r *purchase.Reeving) { r.Hand.Path = r.Hand.Path[2:] }, "hand", purchase.ErrOverConstrained, "nothing gives the rope that the arbor takes"},
		{"nothing", func(r *purchase.Reeving) { r.Lift = nil }, "lift", units.ErrMissing, "at least one line"},
		{"a path of one", func(r *purchase.Reeving) { r.Lift[0].Path = r.Lift[0].Path[:1] }, "lift[0].path", units.ErrMissing, "a rope has two ends"},
		{"off the batten", func(r *purchase.Reeving) { r.Lift[0].Path = r.Lift[0].Path[1:] }, "lift[0]", purchase.ErrNoTravel, "the batten would not move with it"},
		{"off the arbor", func(r *purchase.Reeving) { r.Lift[1].Path = r.Lift[1].Path[:3] }, "lift[1]", purchase.ErrNoTravel, "nothing would let the batten fly"},
		{"two purchases", func(r *purchase.Reeving) { r.Lift[2].Path = r.Lift[2].Path[:4] }, "lift[2]", purchase.ErrOverConstrained, "one line would pull the other slack"},
		{"slanting", func(r *purchase.Reeving) { r.Lift[0].Path[0].Across += 1 }, "lift[0].path[1].across", units.ErrOutOfRange, "parts that move hang plumb"},
		{"coincident", func(r *purchase.Reeving) { r.Lift[0].Path[1].Height = r.Trim }, "lift[0].path[1]", units.ErrDuplicate, "the part would have no direction"},
		{"coincident at its beginning", func(r *purchase.Reeving) {
			r.Hand.Path = append([]purchase.Stop{r.Hand.Path[0]}, r.Hand.Path...)
			r.Hand.Path[0].Name = "end"
		}, "hand.path[1]", units.ErrDuplicate, "the part would have no direction"},
		{"twice the same stop", func(r *purchase.Reeving) {
			r.Lift[0].Path = append(r.Lift[0].Path[:2:2], append([]purchase.Stop{r.Lift[0].Path[1]}, r.Lift[0].Path[2:]...)...)
		}, "lift[0].path[2]", units.ErrDuplicate, "the part would have no direction"},
		{"twice the same stop, and no lock", func(r *purchase.Reeving) {
			r.Lift[0].Path[2], r.Lock = r.Lift[0].Path[1], units.Length(math.NaN())
		}, "lock, lift[0].path[2]", units.ErrNotFinite, "both are told, before any rope is laid"},
		{"body unknown", func(r *purchase.Reeving) { r.Lift[0].Path[0].On = 99 }, "lift[0].path[0].on", units.ErrUnknown, "only the bodies of a set"},
		{"no idler", func(r *purchase.Reeving) { r.Hand.Path[2].On = purchase.Building }, "hand", units.ErrMissing, "nothing would keep it tight"},
		{"hand line ends at the foot", func(r *purchase.Reeving) {
			r.Hand.Path = []purchase.Stop{stop("foot", purchase.Arbor, 0, -2), stop("idler", purchase.Idler, 0, 0), stop("head block", purchase.HeadBeam, 0, 18)}
		}, "hand, hand", units.ErrOutOfRange, "it must come down to the arbor's top, and what the foot gives goes nowhere"},
		{"hand line pays out twice", func(r *purchase.Reeving) {
			r.Hand.Path = append(r.Hand.Path[:5:5], r.Hand.Path[5:6]...)[1:] // single at the foot, double at the top
		}, "hand", purchase.ErrOverConstrained, "two parts at the top take what one at the foot gives"},
		{"idler pulled down", func(r *purchase.Reeving) {
			r.Idler = 70 * units.Foot
			r.Hand.Path = []purchase.Stop{stop("top", purchase.Arbor, 0, 0), stop("idler", purchase.Idler, 0, 0), stop("low", purchase.Building, 0, 1), stop("foot", purchase.Arbor, 0, -1)}
		}, "hand, hand, lock", units.ErrOutOfRange, "nothing would keep it tight"},
		{"ends at the idler", func(r *purchase.Reeving) { r.Hand.Path = r.Hand.Path[:3] }, "hand", units.ErrMissing, "it must go on to the arbor's top"},
		{"lock above the head block", func(r *purchase.Reeving) { r.Lock = 60 * units.Foot }, "lock", units.ErrOutOfRange, "it grips the rope below it"},
		{"NaN lock", func(r *purchase.Reeving) { r.Lock = units.Length(math.NaN()) }, "lock", units.ErrNotFinite, "no NaN goes in"},
		{"infinite idler", func(r *purchase.Reeving) { r.Idler = units.Length(math.Inf(-1)) }, "idler", units.ErrNotFinite, "no infinity goes in"},
		{"negative rope", func(r *purchase.Reeving) { r.Lift[1].Mass = -1 }, "lift[1].mass", units.ErrNegative, "ropes weigh something or nothing"},
		{"negative hand line", func(r *purchase.Reeving) { r.Hand.Mass = -1 }, "hand.mass", units.ErrNegative, "ropes weigh something or nothing"},
		{"no name", func(r *purchase.Reeving) { r.Lift[1].Path[2].Name = "" }, "lift[1].path[2].name", units.ErrMissing, "loads are asked for by name"},
		{"first body unknown", func(r *purchase.Reeving) { r.Lift[0].Path[1].On = purchase.Idler + 1 }, "lift[0].path[1].on", units.ErrUnknown, "one beyond the last"},
		{"slanting at the arbor", func(r *purchase.Reeving) { r.Lift[0].Path[3].Across, r.Lift[0].Path[4].Across = 0.5, 0.5 }, "lift[0].path[3].across", units.ErrOutOfRange, "parts that move hang plumb, the second stop's too"},
		{"a little more than double", func(r *purchase.Reeving) {
			p := r.Lift[4].Path
			r.Lift[4].Path = append(p[:4:4], stop("beam", purchase.HeadBeam, 0, 19), stop("low", purchase.Arbor, 0, -1), stop("end", purchase.HeadBeam, 0, 19))
		}, "lift[4]", purchase.ErrOverConstrained, "four parts beside two"},
		{"batten and arbor rise together", func(r *purchase.Reeving) {
			r.Lift = r.Lift[:1]
			r.Lift[0].Path = []purchase.Stop{stop("batten", purchase.Batten, 3, 0), stop("above", purchase.Grid, 3, 18), stop("below", purchase.Building, 3, 0.1), stop("arbor", purchase.Arbor, 3, 0)}
		}, "lift[0]", purchase.ErrNoTravel, "counterweight goes down when the batten goes up"},
		{"too many stops", func(r *purchase.Reeving) { r.Lift[0].Path = make([]purchase.Stop, 65) }, "lift[0].path", units.ErrOutOfRange, "work is bounded"},
		{"too many lines", func(r *purchase.Reeving) { r.Lift = make([]purchase.Rope, 65) }, "lift", units.ErrOutOfRange, "work is bounded"},
		{"straight past a sheave", func(r *purchase.Reeving) {
			p := r.Lift[3].Path
			r.Lift[3].Path = append(p[:2:2], append([]purchase.Stop{stop("idle", purchase.Building, 1, 60*units.Foot)}, p[2:]...)...)
		}, "lift[3].path[2]", purchase.ErrNoTurn, "whoever gave it meant another place"},
		{"drag at an end", func(r *purchase.Reeving) { r.Lift[0].Path[0].Drag = 0.02 }, "lift[0].path[0].drag", units.ErrOutOfRange, "an end has no sheave"},
		{"an end with a rim", func(r *purchase.Reeving) { r.Lift[2].Path[0].Rim = 2 }, "lift[2].path[0].rim", units.ErrOutOfRange, "an end has no sheave"},
		{"an end with a tread", func(r *purchase.Reeving) { r.Lift[2].Path[0].Tread = 0.2 }, "lift[2].path[0].tread", units.ErrOutOfRange, "an end has no sheave"},
		{"straight past a loft block", func(r *purchase.Reeving) {
			p := r.Lift[0].Path
			r.Lift[0].Path = append(p[:2:2], append([]purchase.Stop{stop("over it", purchase.Building, p[1].Across, 70*units.Foot)}, p[2:]...)...)
		}, "lift[0].path[1]", purchase.ErrNoTurn, "the loft block would bear nothing"},
		{"straight past a sheave at the rail", func(r *purchase.Reeving) {
			p := r.Hand.Path
			r.Hand.Path = append(p[:3:3], append([]purchase.Stop{stop("guide", purchase.Rail, 0, 20*units.Foot)}, p[3:]...)...)
		}, "hand.path[3]", purchase.ErrNoTurn, "the hand line's too"},
		{"one name for two loft blocks", func(r *purchase.Reeving) { r.Lift[1].Path[1].Name = purchase.LoftBlock(1) }, "lift[1].path[1]", units.ErrDuplicate, "their loads would be added up"},
		{"one name for top and foot", func(r *purchase.Reeving) { r.Hand.Path[1].Name = purchase.ArborTop }, "hand.path[1]", units.ErrDuplicate, "6 ft apart they are two fastenings"},
		{"one name on two bodies", func(r *purchase.Reeving) { r.Lift[2].Path[1].Name = purchase.HeadBlock }, "lift[2].path[1]", units.ErrDuplicate, "one block hangs from one thing"},
		{"the rope lock's name", func(r *purchase.Reeving) { r.Lift[0].Path[1].Name = purchase.RopeLock }, "lift[0].path[1].name", units.ErrDuplicate, "the lock's load would be added to it"},
		{"off the plane", func(r *purchase.Reeving) { r.Lift[0].Path[1].Offset = 1.01 }, "lift[0].path[1].offset", units.ErrOutOfRange, "that is another set's plane"},
		{"NaN off the plane", func(r *purchase.Reeving) { r.Hand.Path[2].Offset = units.Length(math.NaN()) }, "hand.path[2].offset", units.ErrNotFinite, "no NaN goes in"},
		{"batten off the plane", func(r *purchase.Reeving) { r.Lift[0].Path[0].Offset = 0.1 }, "lift[0].path[0].offset", units.ErrOutOfRange, "it hangs plumb"},
		{"negative tread", func(r *purchase.Reeving) { r.Lift[0].Path[1].Tread = -0.1 }, "lift[0].path[1].tread", units.ErrNegative, "a diameter"},
		{"tread smaller than the rope", func(r *purchase.Reeving) { r.Hand.Diameter, r.Hand.Path[1].Tread = 0.02, 0.01 }, "hand.path[1].tread", units.ErrOutOfRange, "a slip of the unit"},
		{"negative diameter", func(r *purchase.Reeving) { r.Lift[4].Diameter = -0.006 }, "lift[4].diameter", units.ErrNegative, "ropes are round"},
		{"lock below the idler", func(r *purchase.Reeving) { r.Lock = 0 }, "lock", units.ErrOutOfRange, "it grips the rope above the idler"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := weightless(purchase.Double).Reeving()
			c.change(&r)
			_, err := r.Rig()
			one(t, err, c.field, c.kind, c.reason)
		})
	}
}

func TestQuestionsRefused(t *testing.T) {
	r, err := weightless(purchase.Single).Rig()
	if err != nil {
		t.Fatal(err)
	}
	nan := math.NaN()
	pulls := make([]units.Force, 5)
	for name, c := range map[string]struct {
		err  error
		kind error
	}{
		"trim above the loft blocks": {second(r.ArborTop(60 * units.Foot)), units.ErrOutOfRange},
		"trim that lifts the arbor":  {second(r.ArborTop(1 * units.Foot)), units.ErrOutOfRange},
		"NaN trim":                   {second(r.Imbalance(units.Length(nan), 1, 1)), units.ErrNotFinite},
		"NaN load":                   {second(r.Imbalance(10*units.Foot, units.Mass(nan), 1)), units.ErrNotFinite},
		"load of no possible size":   {second(r.Counterweight(10*units.Foot, 1e308)), units.ErrOutOfRange},
		"infinite arbor":             {second(r.Imbalance(10*units.Foot, 1, units.Mass(math.Inf(1)))), units.ErrNotFinite},
		"too few pulls":              {second(r.At(10*units.Foot, purchase.Bodies{})), units.ErrOutOfRange},
		"a line that pushes":         {second(r.At(10*units.Foot, purchase.Bodies{Pulls: []units.Force{0, 0, -1, 0, 0}})), units.ErrNegative},
		"negative idler":             {second(r.At(10*units.Foot, purchase.Bodies{Pulls: pulls, Idler: -1})), units.ErrNegative},
		"negative arbor":             {second(r.At(10*units.Foot, purchase.Bodies{Pulls: pulls, Arbor: -1})), units.ErrNegative},
	} {
		if !errors.Is(c.err, c.kind) {
			t.Errorf("%s: error %v, want %q", name, c.err, c.kind)
		}
	}
}

func second[T any](_ T, err error) error { return err }
