package purchase

import (
	"strconv"

	"example.com/steelyard/internal/check"
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
	for i := range r.Parts {
		p := &r.Parts[i]
		if p.TensionFrom > t {
			t = p.TensionFrom
		}
		if p.TensionTo > t {
			t = p.TensionTo
		}
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

	memory *memory
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

// Taut tells of ropes that would have to push somewhere to do what is asked of them: that tension is given as zero, the
// rope is slack there, and the figures do not quite add up. The error joins a *units.FieldError that wraps ErrSlack
// for each part of such a rope that bears nothing, with the path of the part's first stop in the Reeving; it is
// nil where all ropes are taut.
func (s State) Taut() error {
	var p check.Problems
	slack := func(field string, rope RopeState) {
		for i, part := range rope.Parts {
			if rope.Slack && min(part.TensionFrom, part.TensionTo) <= 0 {
				p.Within("", "", slackFault(field, i, part, "no tension"))
			}
		}
	}
	for i, rope := range s.Lift {
		slack(ropeField(i, len(s.Lift)), rope)
	}
	slack(ropeField(len(s.Lift), len(s.Lift)), s.Hand)
	return p.Err()
}

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
	s.memory = nil
	return s, nil
}

// AtInto is At for who asks often: it fills s, and once s was filled by this reeving it writes over the numbers in it,
// takes the names to be as it left them, and allocates nothing. A copy of s shares its slices until it is filled itself: to
// keep an answer, ask At for it. After an error s is as it was.
func (r *Reeved) AtInto(s *State, trim units.Length, on Bodies) error {
	if s == nil {
		return noPlace("state")
	}
	moved, err := r.moved(trim)
	if err != nil {
		return err
	}
	if err := on.validate(len(r.lift)); err != nil {
		return err
	}
	m := s.memory
	if !m.knows(r) || m.state != s {
		m = r.remember()
		m.state, s.memory = s, m
	}
	s.Trim, s.ArborTop = trim, units.Length(r.top+moved)
	s.Lift, s.Blocks = m.lift(), m.blocks[:r.named:r.named]
	carried, known := 0.0, m.known[:len(on.Pulls)]
	for i, pull := range on.Pulls {
		known[i] = pull.In(units.Newton)
		carried += known[i]
	}
	imbalance := r.imbalance(moved, carried, on.Arbor.Weight(units.StandardGravity).In(units.Newton))
	s.Imbalance = units.Force(imbalance)
	if r.lock < 0 {
		r.rest(m, moved)
		s.Hand, s.Lock, s.Grip = RopeState{}, 0, 0
		return nil
	}
	below := (on.onIdler(r.idlerParts) - r.idlerHung.At(moved)) / r.idlerParts
	asked := imbalance * r.ratio / r.topParts
	grip := below + float64(r.hand.weight*r.lockHeight)
	if on.Base > 0 && asked > grip {
		// An idler that is held does not rise: the rope above the lock goes slack, and that below it takes the rest.
		below += asked - grip
		grip = asked
	}
	held := asked
	if held > grip { // the rope above the lock has no more to give up
		held = grip
	}
	s.Lock, s.Grip = units.Force(asked), units.Force(grip)
	handBelow, handAbove := len(r.lift), len(r.lift)+1
	m.known[handBelow], m.known[handAbove] = below, below-held
	r.rest(m, moved)
	hand, stops := m.hand(), r.hand.stations[r.lock:]
	gripped := &hand[r.lock]
	gripped.TensionFrom = units.Force(borne(below + stops[0].hung.At(moved)))
	gripped.TensionTo = units.Force(borne(below - held + stops[1].hung.At(moved)))
	s.Hand = RopeState{Name: r.hand.rope.Name, Parts: hand, Slack: m.ropes[handBelow].Slack || m.ropes[handAbove].Slack || asked > grip}
	s.Blocks = m.blocks[: r.named+1 : r.named+1]
	s.Blocks[r.named].Load.Up = units.Force(-held)
	return nil
}

// borne is what a rope bears of a tension: nothing of one below zero.
func borne(t float64) float64 {
	if t < 0 {
		return 0
	}
	return t
}

func (b Bodies) validate(lines int) error {
	ok := len(b.Pulls) == lines && fair(b.Arbor) && fair(b.Idler) && fair(b.Base)
	for _, f := range b.Pulls {
		if !fair(f) {
			ok = false
		}
	}
	if ok {
		return nil
	}
	var p check.Problems
	if len(b.Pulls) != lines {
		p.Add("pulls", strconv.Itoa(len(b.Pulls)), "one for each of the "+strconv.Itoa(lines)+" lift lines", units.ErrOutOfRange)
	}
	for i, f := range b.Pulls {
		check.NotNegative(&p, "pulls["+strconv.Itoa(i)+"]", f)
	}
	check.NotNegative(&p, "arbor", b.Arbor)
	check.NotNegative(&p, "idler", b.Idler)
	check.NotNegative(&p, "base", b.Base)
	return p.Err()
}

// fair tells of most values that nothing is wrong with them, without a name for them.
func fair[Q units.Force | units.Mass](q Q) bool { return q >= 0 && q <= 1e6 }
