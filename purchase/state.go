package purchase

import (
	"math"
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// Bodies is what hangs on the ropes while the state of a set is asked for.
type Bodies struct {
	Pulls []units.Force // what each lift line bears at the batten, in the order of the lines
	Arbor units.Mass    // the arbor with all that is in it
	Idler units.Mass    // the tension block; it keeps the hand line tight
	// Base is the tension of each of the idler's parts where the idler is held in its guides or tied down; the
	// Idler's mass then means nothing. Zero: it is free, and its weight makes the tension.
	Base units.Force
}

// onIdler is what the hand line pulls the idler up with, in newtons; n is the number of its parts there.
func (b Bodies) onIdler(n float64) float64 {
	if b.Base > 0 {
		return float64(n * b.Base.In(units.Newton))
	}
	return b.Idler.Weight(units.StandardGravity).In(units.Newton)
}

// Part is a straight piece of a rope between two stops, with the tension at
// each end of it.
type Part struct {
	From        string      `json:"from"`         // name of the stop it leaves
	To          string      `json:"to"`           // name of the stop it runs to
	TensionFrom units.Force `json:"tension_from"` // at the end From; zero or more
	TensionTo   units.Force `json:"tension_to"`   // at the end To; zero or more
}

// RopeState is a rope with the tension along its path.
type RopeState struct {
	Name  string `json:"name"`
	Parts []Part `json:"parts"`
	Slack bool   `json:"slack,omitzero"` // some part would have had to push; its tension is given as zero
}

// Greatest is the largest tension anywhere along the rope.
func (r RopeState) Greatest() units.Force {
	var t units.Force
	for _, p := range r.Parts {
		t = max(t, p.TensionFrom, p.TensionTo)
	}
	return t
}

// Block is a block, a dead end or another fastening with the load that the
// ropes put on it: the vector sum of the tensions of the parts that meet there.
type Block struct {
	Name string `json:"name"`
	On   Body   `json:"on"`
	Load Vector `json:"load"`
}

// State is a set at one trim, without drag, rope lock shut: the lock, on the rope
// between idler and head block, holds whatever is out of balance; below it the
// idler hangs free in its guides and keeps both its parts at half its weight;
// above it the rope carries that less what the lock holds.
//
// An idler that is held ([Bodies].Base) keeps the base tension until the rope above the lock is slack; what is
// asked beyond that the rope below the lock takes.
//
// Where, with a free idler, more is asked of the lock than the rope above it can give up (Lock more
// than Grip) that rope hangs slack from the head block, the idler is about to be
// lifted, and the lock alone does not hold the set: Held is false. The figures
// are then those with the lock holding all that it can, and the arbor is not in
// balance.
type State struct {
	Trim      units.Length `json:"trim"`
	ArborTop  units.Length `json:"arbor_top"` // height above the deck
	Imbalance units.Force  `json:"imbalance"` // referred to the batten, batten-heavy positive
	Lift      []RopeState  `json:"lift"`
	Hand      RopeState    `json:"hand"`
	Blocks    []Block      `json:"blocks"`

	// Lock is the difference of tension that is asked of the rope lock: positive
	// when the rope below it is the tighter one (batten-heavy). Grip is the tension
	// just below the lock, all that the rope above can give up.
	Lock units.Force `json:"lock"`
	Grip units.Force `json:"grip"`
}

// Heaviest finds the most loaded of a family of blocks that are numbered by lift
// line, LoftBlock or DeadEnd: the line, counted from 1, and the size of the load. Of several
// with the same to within rounding it is the one nearest the arbor.
// Where there is none it gives 0 and no load.
func (s State) Heaviest(name func(line int) string) (line int, load units.Force) {
	for i := range s.Lift {
		if f := s.Load(name(i + 1)).Size(); f > load.Scale(1+1e-12) {
			line, load = i+1, f
		}
	}
	return line, load
}

// Held tells whether the rope lock and the idler's weight hold what is out of
// balance. It is true without a hand line, of which nothing is known then.
func (s State) Held() bool { return s.Lock <= s.Grip }

// Load is the load on the block or dead end of the given name; zero where there
// is none of that name.
func (s State) Load(name string) Vector {
	return sum(s.Blocks, func(b *Block) bool { return b.Name == name })
}

// sum is the load of all blocks that are meant.
func sum(blocks []Block, meant func(*Block) bool) Vector {
	var v Vector
	for i := range blocks {
		if meant(&blocks[i]) {
			v = v.Add(blocks[i].Load)
		}
	}
	return v
}

// On is the load of all the set's ropes on one body: on the head beam, of the
// head block and every dead end there; on the grid, of all loft blocks.
func (s State) On(body Body) Vector {
	return sum(s.Blocks, func(b *Block) bool { return b.On == body })
}

// At gives the set's state at a trim. Tension along a rope grows with height by
// its own weight, T(z) = T₀ + w·(z − z₀); a level run adds none, and its sag is left
// out of the block loads. The error tells a trim beyond Reach, or bodies that do
// not fit: a pull for each lift line, finite and not negative.
func (r *Reeved) At(trim units.Length, on Bodies) (State, error) {
	var s State
	if err := r.AtInto(&s, trim, on); err != nil {
		return State{}, err
	}
	return s, nil
}

// AtInto is At for who asks often: it fills s, whose slices it uses again where they have room, so that nothing is
// allocated. After an error s is as it was.
func (r *Reeved) AtInto(s *State, trim units.Length, on Bodies) error {
	y, err := r.arborTop(trim)
	if err != nil {
		return err
	}
	if err := on.validate(len(r.lift)); err != nil {
		return err
	}
	h := r.heights(y)
	st := State{Trim: trim, ArborTop: units.Length(y), Lift: s.Lift, Hand: RopeState{Parts: s.Hand.Parts}}
	st.Lift = slices.Grow(st.Lift[:0], len(r.lift))[:len(r.lift)]
	st.Blocks = append(s.Blocks[:0], r.blocks...)
	if r.lock >= 0 {
		st.Blocks = append(st.Blocks, Block{Name: RopeLock, On: Rail})
	}
	var carried float64
	for i := range r.lift {
		l := &r.lift[i]
		pull := on.Pulls[i].In(units.Newton)
		carried += pull
		l.still(&st.Lift[i], (pull-l.batten.at(y-r.top))/l.parts, 0, math.MaxInt, &h, st.Blocks)
	}
	imbalance := r.imbalance(y, carried, on.Arbor.Weight(units.StandardGravity).In(units.Newton))
	st.Imbalance = units.Force(imbalance)
	if r.lock >= 0 {
		hand, last := &r.hand, len(r.hand.path)-1
		n, w := hand.pull(Idler, 0, last, &h)
		below := (on.onIdler(n) - float64(hand.weight*w)) / n
		parts, _ := hand.pull(Arbor, r.lock+1, last, &h)
		asked := imbalance * r.ratio / parts
		grip := below + float64(hand.weight*r.lockHeight)
		if on.Base > 0 && asked > grip {
			// An idler that is held does not rise: the rope above the lock goes slack, and that below it takes the rest.
			below += asked - grip
			grip = asked
		}
		held := min(asked, grip) // the rope above the lock has no more to give up
		st.Lock, st.Grip = units.Force(asked), units.Force(grip)
		hand.still(&st.Hand, below, -held, r.lock, &h, st.Blocks)
		st.Hand.Slack = st.Hand.Slack || asked > grip
		st.Blocks[len(r.blocks)] = Block{Name: RopeLock, On: Rail, Load: Vector{Up: units.Force(-held)}}
	}
	*s = st
	return nil
}

// still fills in the tensions c + w·z along the path, with c raised by jump from the
// upper end of part lock onward, and adds the loads to the blocks.
func (l *laid) still(out *RopeState, c, jump float64, lock int, h *rope.Heights, blocks []Block) {
	l.ready(out)
	to := borne(c+float64(l.weight*l.path.Height(0, h)), out)
	for i := range out.Parts {
		from := to
		if i == lock {
			c += jump
		}
		to = borne(c+float64(l.weight*l.path.Height(i+1, h)), out)
		l.part(out, i, from, to, blocks)
	}
}

// ready gives a rope's state the names of the rope and of its parts' stops.
func (l *laid) ready(out *RopeState) {
	out.Name, out.Slack = l.rope.Name, false
	out.Parts = append(out.Parts[:0], l.parted...)
}

// part fills in one part and adds what it pulls with to the blocks at its ends.
func (l *laid) part(out *RopeState, i int, from, to float64, blocks []Block) {
	p := &out.Parts[i]
	p.TensionFrom, p.TensionTo = units.Force(from), units.Force(to)
	d := l.run[i]
	if b := l.block[i]; b >= 0 {
		v := &blocks[b].Load
		v.Across += units.Force(from * d.across)
		v.Up += units.Force(from * d.up)
	}
	if b := l.block[i+1]; b >= 0 {
		v := &blocks[b].Load
		v.Across -= units.Force(to * d.across)
		v.Up -= units.Force(to * d.up)
	}
}

// borne is what a rope bears of a tension that may be below zero: then it is slack, and out is told.
func borne(t float64, out *RopeState) float64 {
	if t < 0 {
		// Rounding may leave a rope that bears nothing a hair below zero; that is not slack.
		out.Slack = out.Slack || t < -1e-6
		return 0
	}
	return t
}

func (b Bodies) validate(lines int) error {
	var p check.Problems
	if len(b.Pulls) != lines {
		p.Add("pulls", strconv.Itoa(len(b.Pulls)), "one for each of the "+strconv.Itoa(lines)+" lift lines", units.ErrOutOfRange)
	}
	for i, f := range b.Pulls {
		if !(f >= 0 && f <= 1e6*units.Newton) { // only then is a name wanted
			check.NotNegative(&p, "pulls["+strconv.Itoa(i)+"]", f)
		}
	}
	check.NotNegative(&p, "arbor", b.Arbor)
	check.NotNegative(&p, "idler", b.Idler)
	check.NotNegative(&p, "base", b.Base)
	return p.Err()
}
