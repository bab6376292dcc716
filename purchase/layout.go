package purchase

import (
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/slab"
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
	HandDeadEnd = "hand line dead end" // double hand line, at the head beam; a single or triple one ends on the arbor
	RailDeadEnd = "rail dead end"      // double hand line, the rope at the rail that nobody pulls
	HandBlock   = "hand line block"    // triple hand line, at the head beam
	RailBlock   = "rail block"         // triple hand line, at the rail
	RopeLock    = "rope lock"          // at the rail, on the rope between idler and head block
)

// LoftBlock is the name of the loft block of lift line n, counted from 1.
func LoftBlock(n int) string { return loftName + strconv.Itoa(n) }

// DeadEnd is the name of the dead end of lift line n in double purchase; single and triple lines end on
// the arbor.
func DeadEnd(n int) string { return deadName + strconv.Itoa(n) }

// BeamBlock is the name of the block at the head beam, of lift line n in triple
// purchase, that sends it back down to the arbor.
func BeamBlock(n int) string { return beamName + strconv.Itoa(n) }

// Loft is where a loft block hangs: Across from the arbor's centre line, Height
// above the deck, which need not be the head block's. Its lift line drops plumb to
// the batten.
type Loft struct {
	Across units.Length `json:"across"` // more than zero: at zero it would be the head block
	Height units.Length `json:"height"`
	Mules  []Mule       `json:"mules,omitempty"` // from the loft block to the head block; none: straight to it

	Offsets LineOffsets `json:"offsets,omitzero"` // of its line, off the plane of the set; zero: all in the plane
}

// Layout says where the blocks of a single, double or triple purchase set are,
// and what its ropes weigh. All heights are above the deck; no field has a default
// but Hand. What only serves sheave ratios and fleet angles need not be given: Offsets of
// the lines, Sheaves, LiftDiameter and HandDiameter.
//
// The ropes run so (common practice):
//
//	single, lift line   batten, loft block, head block, made off on the arbor's top
//	single, hand line   made off on the arbor's foot, idler, head block, made off on the arbor's top
//	double, lift line   batten, loft block, head block, under the sheave on the arbor's top, dead end at the head beam
//	double, hand line   dead end at the rail, over the sheave on the arbor's foot, idler, head block,
//	                    under the sheave on the arbor's top, dead end at the head beam
//	triple, lift line   batten, loft block, head block, under the sheave on the arbor's top, over a block at the
//	                    head beam, made off on the arbor's top
//	triple, hand line   made off on the arbor's foot, under a block at the rail, over the sheave on the arbor's foot,
//	                    idler, head block, under the sheave on the arbor's top, over a block at the head beam, made
//	                    off on the arbor's top
//
// Mule blocks may turn each lift line between loft block and head block. Lift lines
// and hand line may be of two kinds: with a single hand line under double lift
// lines, the hand line runs as fast as the arbor, half as fast as the batten.
type Layout struct {
	Kind        Kind           `json:"kind"`           // of the lift lines: it alone makes the ratio
	Hand        Kind           `json:"hand,omitzero"`  // of the hand line; zero: as the lift lines
	Loft        []Loft         `json:"loft"`           // one for each lift line, nearest the arbor first
	HeadBlock   units.Length   `json:"head_block"`     // height of the head block
	DeadEnd     units.Length   `json:"dead_end"`       // height of dead ends and blocks at the head beam; where lift lines and hand line are single it is not used
	Rail        units.Length   `json:"rail"`           // height of the locking rail, with the rope lock
	Idler       units.Length   `json:"idler"`          // height of the idler
	ArborLength units.Length   `json:"arbor_length"`   // between the fastenings at its top and its foot
	LiftMass    units.LineMass `json:"lift_line_mass"` // of each lift line; zero: weightless
	HandMass    units.LineMass `json:"hand_line_mass"` // of the hand line; zero: weightless
	Drag        Drag           `json:"drag,omitzero"`  // of every sheave
	Rim         units.Mass     `json:"rim,omitzero"`   // of every sheave, under each rope that runs over it: see Stop; zero: left out

	LiftDiameter units.Length `json:"lift_line_diameter,omitzero"` // of each lift line; zero: not given
	HandDiameter units.Length `json:"hand_line_diameter,omitzero"` // of the hand line; zero: not given
	Sheaves      Sheaves      `json:"sheaves,omitzero"`

	// The lines are made off so that the batten is at Trim while the arbor's top is at ArborTop.
	Trim     units.Length `json:"trim"`
	ArborTop units.Length `json:"arbor_top"`
}

// Validate reports everything that is wrong with the layout, as *units.FieldError
// joined.
func (l Layout) Validate() error {
	if err := l.validate(); err != nil {
		return err
	}
	return l.checkTurns(l.Reeving().Lift)
}

// validate is Validate but for the turns, which want the ropes laid.
func (l Layout) validate() error {
	var p check.Problems
	if !l.Kind.known() {
		p.Add("kind", kindShown(l.Kind), wantKind, kindFault(l.Kind))
	}
	if l.Hand != 0 && !l.Hand.known() {
		p.Add("hand", l.Hand.String(), wantKind+", or none for one as the lift lines are", units.ErrUnknown)
	}
	hand := l.handKind()
	check.NotNegative(&p, "lift_line_mass", l.LiftMass)
	check.NotNegative(&p, "hand_line_mass", l.HandMass)
	l.Drag.fault(&p, "drag")
	check.NotNegative(&p, "rim", l.Rim)
	lift := checkDiameter(&p, "lift_line_diameter", l.LiftDiameter)
	l.Sheaves.check(&p, lift, checkDiameter(&p, "hand_line_diameter", l.HandDiameter))

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
	if hand.known() && hand != Single && rail && arbor && l.Rail >= foot {
		p.Add("rail", check.Show(l.Rail), "less than the height of the arbor's foot, "+check.Show(foot)+": the hand line's "+hand.atRail()+" is at the rail", units.ErrOutOfRange)
	}
	if most := max(l.Kind, hand); l.Kind.known() && hand.known() && most != Single {
		if check.Positive(&p, "dead_end", l.DeadEnd, "the height of the dead ends and blocks at the head beam") && top && l.DeadEnd <= l.ArborTop {
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
	var blocks places
	for i := range l.Loft {
		b := &l.Loft[i]
		if trim && check.IsPositive(b.Across) && check.IsPositive(b.Height) && b.Height > l.Trim && b.Offsets == (LineOffsets{}) && len(b.Mules) == 0 {
			continue // as most are
		}
		if err := l.validateLoft(i, trim, &blocks); err != nil {
			p.Within("loft["+strconv.Itoa(i)+"]", "", err)
		}
	}
	return p.Err()
}

// validateLoft looks at one loft block and the mule blocks of its line.
func (l Layout) validateLoft(i int, trim bool, blocks *places) error {
	var p check.Problems
	b := &l.Loft[i]
	check.Positive(&p, "across", b.Across, "the distance from the arbor to the loft block")
	if check.Finite(&p, "height", b.Height) && trim && b.Height <= l.Trim {
		p.Add("height", check.Show(b.Height), "more than the batten's trim, "+check.Show(l.Trim), units.ErrOutOfRange)
	}
	checkOffset(&p, "offsets.loft", b.Offsets.Loft)
	checkOffset(&p, "offsets.head", b.Offsets.Head)
	checkOffset(&p, "offsets.arbor", b.Offsets.Arbor)
	checkOffset(&p, "offsets.beam", b.Offsets.Beam)
	l.checkMules(&p, i, blocks)
	return p.Err()
}

// handKind is the kind of the hand line.
func (l Layout) handKind() Kind {
	if l.Hand == 0 {
		return l.Kind
	}
	return l.Hand
}

// atRail says what a hand line of this kind has at the rail.
func (k Kind) atRail() string {
	if k == Double {
		return "dead end"
	}
	return "block"
}

// Rig lays the standard ropes and makes them ready to be asked. The error joins
// a *units.FieldError for everything that is wrong.
func (l Layout) Rig() (*Reeved, error) {
	if err := l.validate(); err != nil {
		return nil, err
	}
	room := new(quarters)
	var few [64]blockNumber
	r := l.reeving(room.ropes[:])
	found, err := l.found(&r, few[:])
	if err == nil {
		if err = r.rig(room, found); err == nil {
			return &room.Reeved, nil
		}
	}
	// Where a rope does not turn, the layout can say whose place it is.
	if turns := l.checkTurns(r.Lift); turns != nil {
		return nil, turns
	}
	return nil, err
}

// found is what the ropes of a valid layout meet, in the room that is given where that is enough. Only mule blocks, whose names
// are the caller's, may still be at odds with them.
func (l Layout) found(r *Reeving, room []blockNumber) (blocks, error) {
	if slices.ContainsFunc(l.Loft, func(b Loft) bool { return len(b.Mules) > 0 }) {
		return r.validate()
	}
	return l.blocks(room), nil
}

// Reeving gives the ropes of the layout as paths.
func (l Layout) Reeving() Reeving { return l.reeving(nil) }

// reeving is Reeving, with the lift lines in the room that is given where that is enough.
func (l Layout) reeving(lift []Rope) Reeving {
	r := Reeving{
		Lift: slab.Enough(lift, len(l.Loft)),
		Trim: l.Trim, ArborTop: l.ArborTop, Idler: l.Idler, Lock: l.Rail,
	}
	stops, each := make([]Stop, l.stops()), l.Kind.stops()
	for i := range l.Loft {
		b, names := &l.Loft[i], namesOf(i)
		path := slab.Take(&stops, each+len(b.Mules))
		batten, loft := &path[0], &path[1]
		batten.Name, batten.On, batten.Across = names.batten, Batten, b.Across
		loft.Name, loft.On, loft.Across, loft.Height, loft.Offset, loft.Tread = names.loft, Grid, b.Across, b.Height, b.Offsets.Loft, l.Sheaves.Loft
		for k, m := range b.Mules {
			path[2+k] = Stop{Name: m.Name, On: m.On, Across: m.Across, Height: m.Height, Offset: m.Offset, Tread: l.Sheaves.Mule}
		}
		rest := path[2+len(b.Mules):]
		head := &rest[0]
		head.Name, head.On, head.Height, head.Offset, head.Tread = HeadBlock, HeadBeam, l.HeadBlock, b.Offsets.Head, l.Sheaves.Head
		onTop(&rest[1], b.Offsets.Arbor)
		if len(rest) > 2 {
			rest[1].Tread = l.Sheaves.Arbor
			beam := &rest[2]
			beam.Name, beam.On, beam.Height, beam.Offset = names.dead, HeadBeam, l.DeadEnd, b.Offsets.Beam
		}
		if len(rest) > 3 {
			rest[2].Name, rest[2].Tread = names.beam, l.Sheaves.Beam
			onTop(&rest[3], b.Offsets.Arbor)
		}
		turning(path, l.Drag, l.Rim)
		r.Lift[i] = Rope{Name: names.lift, Mass: l.LiftMass, Diameter: l.LiftDiameter, Path: path}
	}
	r.Hand = Rope{Name: "hand line", Mass: l.HandMass, Diameter: l.HandDiameter, Path: l.handPath(stops[:0])}
	return r
}

// onTop puts a stop on the arbor's top.
func onTop(s *Stop, offset units.Length) { s.Name, s.On, s.Offset = ArborTop, Arbor, offset }

// stops is how many all ropes have together.
func (l Layout) stops() int {
	n, each := 2+2*int(l.handKind().orSingle()), l.Kind.stops()
	for i := range l.Loft {
		n += each + len(l.Loft[i].Mules)
	}
	return n
}

// stops is how many a lift line has without mule blocks.
func (k Kind) stops() int { return 3 + int(k.orSingle()) }

// orSingle is the kind that ropes are laid as: an unknown one as single purchase.
func (k Kind) orSingle() Kind {
	if k.known() {
		return k
	}
	return Single
}

// handPath lays the hand line over the head block, the arbor's top and its foot.
func (l Layout) handPath(path []Stop) []Stop {
	top, foot := Stop{Name: ArborTop, On: Arbor}, Stop{Name: ArborFoot, On: Arbor, Height: -l.ArborLength}
	over, under, round := Stop{Name: HeadBlock, On: HeadBeam, Height: l.HeadBlock}, top, foot
	over.Tread, under.Tread, round.Tread = l.Sheaves.HandHead, l.Sheaves.HandArbor, l.Sheaves.HandArbor
	idler := Stop{Name: IdlerBlock, On: Idler, Tread: l.Sheaves.Idler}
	switch l.handKind() {
	case Double:
		path = append(path,
			Stop{Name: RailDeadEnd, On: Rail, Height: l.Rail},
			round, idler, over, under,
			Stop{Name: HandDeadEnd, On: HeadBeam, Height: l.DeadEnd})
	case Triple:
		path = append(path,
			foot,
			Stop{Name: RailBlock, On: Rail, Height: l.Rail, Tread: l.Sheaves.HandBeam},
			round, idler, over, under,
			Stop{Name: HandBlock, On: HeadBeam, Height: l.DeadEnd, Tread: l.Sheaves.HandBeam},
			top)
	default:
		path = append(path, foot, idler, over, top)
	}
	turning(path, l.Drag, l.Rim)
	return path
}

// turning gives every sheave of a path its drag and its mass at the rim.
func turning(path []Stop, drag Drag, rim units.Mass) {
	for i := 1; i < len(path)-1; i++ {
		path[i].Drag, path[i].Rim = drag, rim
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
