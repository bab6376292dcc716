package purchase

import (
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Names of the blocks and dead ends in the ropes that a Layout lays. Loft blocks
// and the lift lines' dead ends are numbered from the line nearest the arbor:
// LoftBlock(1), DeadEnd(1).
const (
	HeadBlock   = "head block"
	ArborTop    = "arbor top"          // where the lift lines and the hand line hold the arbor's top, ends or sheaves
	ArborFoot   = "arbor foot"         // where the hand line holds its foot
	IdlerBlock  = "idler"              // the tension block
	HandDeadEnd = "hand line dead end" // double purchase, at the head beam
	RailDeadEnd = "rail dead end"      // double purchase, the rope at the rail that nobody pulls
	RopeLock    = "rope lock"          // at the rail, on the rope between idler and head block
)

// LoftBlock is the name of the loft block of lift line n, counted from 1.
func LoftBlock(n int) string { return "loft block " + strconv.Itoa(n) }

// DeadEnd is the name of the dead end of lift line n in double purchase.
func DeadEnd(n int) string { return "dead end " + strconv.Itoa(n) }

// Loft is where a loft block hangs: Across from the arbor's centre line, Height
// above the deck. Its lift line drops plumb to the batten.
type Loft struct {
	Across units.Length `json:"across"` // more than zero: at zero it would be the head block
	Height units.Length `json:"height"`
}

// Layout says where the blocks of a standard single or double purchase set are,
// and what its ropes weigh. All heights are above the deck; no field has a
// default.
//
// The ropes run so (common practice):
//
//	single, lift line   batten, loft block, head block, made off on the arbor's top
//	single, hand line   made off on the arbor's foot, idler, head block, made off on the arbor's top
//	double, lift line   batten, loft block, head block, under the sheave on the arbor's top, dead end at the head beam
//	double, hand line   dead end at the rail, over the sheave on the arbor's foot, idler, head block,
//	                    under the sheave on the arbor's top, dead end at the head beam
type Layout struct {
	Kind        Kind           `json:"kind"`
	Loft        []Loft         `json:"loft"`           // one for each lift line, nearest the arbor first
	HeadBlock   units.Length   `json:"head_block"`     // height of the head block
	DeadEnd     units.Length   `json:"dead_end"`       // double only: height of the dead ends at the head beam
	Rail        units.Length   `json:"rail"`           // height of the locking rail, with the rope lock
	Idler       units.Length   `json:"idler"`          // height of the idler
	ArborLength units.Length   `json:"arbor_length"`   // between the fastenings at its top and its foot
	LiftMass    units.LineMass `json:"lift_line_mass"` // of each lift line; zero: weightless
	HandMass    units.LineMass `json:"hand_line_mass"` // of the hand line; zero: weightless
	Drag        Drag           `json:"drag,omitzero"`  // of every sheave

	// The lines are made off so that the batten is at Trim while the arbor's top is at ArborTop.
	Trim     units.Length `json:"trim"`
	ArborTop units.Length `json:"arbor_top"`
}

// Validate reports everything that is wrong with the layout, as *units.FieldError
// joined.
func (l Layout) Validate() error {
	var p check.Problems
	if !l.Kind.known() {
		p.Add("kind", kindShown(l.Kind), wantKind, kindFault(l.Kind))
	}
	check.NotNegative(&p, "lift_line_mass", l.LiftMass)
	check.NotNegative(&p, "hand_line_mass", l.HandMass)

	// Heights are held against each other only where both can be.
	trim := check.Finite(&p, "trim", l.Trim)
	head := check.Positive(&p, "head_block", l.HeadBlock, "the height of the head block above the deck")
	top := check.Finite(&p, "arbor_top", l.ArborTop)
	if top && head && l.ArborTop >= l.HeadBlock {
		p.Add("arbor_top", check.Show(l.ArborTop), "less than the head block's height, "+check.Show(l.HeadBlock), units.ErrOutOfRange)
	}
	foot := l.ArborTop - l.ArborLength
	arbor := check.Positive(&p, "arbor_length", l.ArborLength, "the distance between the arbor's top and foot") && top
	idler := check.Finite(&p, "idler", l.Idler)
	if idler && arbor && l.Idler >= foot {
		p.Add("idler", check.Show(l.Idler), "less than the height of the arbor's foot, "+check.Show(foot), units.ErrOutOfRange)
	}
	rail := check.Finite(&p, "rail", l.Rail)
	if rail && idler && l.Rail <= l.Idler {
		p.Add("rail", check.Show(l.Rail), "more than the idler's height, "+check.Show(l.Idler), units.ErrOutOfRange)
	}
	if rail && head && l.Rail >= l.HeadBlock {
		p.Add("rail", check.Show(l.Rail), "less than the head block's height, "+check.Show(l.HeadBlock), units.ErrOutOfRange)
	}
	if l.Kind == Double {
		if rail && arbor && l.Rail >= foot {
			p.Add("rail", check.Show(l.Rail), "less than the height of the arbor's foot, "+check.Show(foot)+": the hand line's dead end is at the rail", units.ErrOutOfRange)
		}
		if check.Positive(&p, "dead_end", l.DeadEnd, "the height of the dead ends at the head beam") && top && l.DeadEnd <= l.ArborTop {
			p.Add("dead_end", check.Show(l.DeadEnd), "more than the height of the arbor's top, "+check.Show(l.ArborTop), units.ErrOutOfRange)
		}
	}
	switch n := len(l.Loft); {
	case n == 0:
		p.Add("loft", "", "a loft block for each lift line", units.ErrMissing)
	case n > maxLines:
		p.Add("loft", strconv.Itoa(n)+" loft blocks", "at most "+strconv.Itoa(maxLines), units.ErrOutOfRange)
		return p.Err()
	}
	for i, b := range l.Loft {
		field := "loft[" + strconv.Itoa(i) + "]."
		check.Positive(&p, field+"across", b.Across, "the distance from the arbor to the loft block")
		if check.Finite(&p, field+"height", b.Height) && trim && b.Height <= l.Trim {
			p.Add(field+"height", check.Show(b.Height), "more than the batten's trim, "+check.Show(l.Trim), units.ErrOutOfRange)
		}
	}
	return p.Err()
}

// Rig lays the standard ropes and makes them ready to be asked. The error joins
// a *units.FieldError for everything that is wrong.
func (l Layout) Rig() (*Reeved, error) {
	if err := l.Validate(); err != nil {
		return nil, err
	}
	return l.Reeving().Rig()
}

// Reeving gives the ropes of the layout as paths.
func (l Layout) Reeving() Reeving {
	r := Reeving{
		Lift: make([]Rope, len(l.Loft)),
		Trim: l.Trim, ArborTop: l.ArborTop, Idler: l.Idler, Lock: l.Rail,
	}
	head := Stop{Name: HeadBlock, On: HeadBeam, Height: l.HeadBlock}
	top := Stop{Name: ArborTop, On: Arbor}
	foot := Stop{Name: ArborFoot, On: Arbor, Height: -l.ArborLength}
	for i, b := range l.Loft {
		n := i + 1
		path := []Stop{
			{Name: "batten at line " + strconv.Itoa(n), On: Batten, Across: b.Across},
			{Name: LoftBlock(n), On: Grid, Across: b.Across, Height: b.Height},
			head, top,
		}
		if l.Kind == Double {
			path = append(path, Stop{Name: DeadEnd(n), On: HeadBeam, Height: l.DeadEnd})
		}
		r.Lift[i] = Rope{Name: "lift line " + strconv.Itoa(n), Mass: l.LiftMass, Path: path}
	}
	for _, rp := range r.Lift {
		dragged(rp.Path, l.Drag)
	}
	var hand []Stop
	if l.Kind == Double {
		hand = append(hand, Stop{Name: RailDeadEnd, On: Rail, Height: l.Rail})
	}
	hand = append(hand, foot, Stop{Name: IdlerBlock, On: Idler}, head, top)
	if l.Kind == Double {
		hand = append(hand, Stop{Name: HandDeadEnd, On: HeadBeam, Height: l.DeadEnd})
	}
	dragged(hand, l.Drag)
	r.Hand = Rope{Name: "hand line", Mass: l.HandMass, Path: hand}
	return r
}

// dragged gives every sheave of a path its drag.
func dragged(path []Stop, drag Drag) {
	for i := 1; i < len(path)-1; i++ {
		path[i].Drag = drag
	}
}

func kindShown(k Kind) string {
	if k == 0 {
		return ""
	}
	return k.String()
}

func kindFault(k Kind) error {
	if k == 0 {
		return units.ErrMissing
	}
	return units.ErrUnknown
}
