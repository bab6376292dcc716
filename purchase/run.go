package purchase

import (
	"errors"
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Way is which way the batten flies. The zero value is neither.
type Way uint8

// The two ways.
const (
	Out Way = 1 // up
	In  Way = 2 // down
)

// String gives the way: out or in.
func (w Way) String() string {
	switch w {
	case Out:
		return "out"
	case In:
		return "in"
	}
	return "neither way"
}

// MarshalText writes it as String does.
func (w Way) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// Role is what a rope at the rail is for.
type Role uint8

// The roles of the ropes at the rail (common practice).
const (
	DeadRope  Role = iota // stands still: made off at the rail; nobody pulls it
	InnerRope             // live, from the arbor's foot to the idler: pull it and the batten flies out
	OuterRope             // live, from the idler to the head block, through the rope lock: pull it and the batten flies in
)

// String gives the role in words.
func (r Role) String() string {
	return [...]string{"dead end", "inner rope", "outer rope"}[min(r, OuterRope)]
}

// MarshalText writes it as String does.
func (r Role) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// RailRope is one of the ropes that a person at the rail sees side by side.
type RailRope struct {
	Role  Role    `json:"role"`
	From  string  `json:"from"`  // the stop that the part leaves, by the hand line's path
	To    string  `json:"to"`    // the stop that it runs to
	Moves Way     `json:"moves"` // which way the batten flies when it is pulled down; neither for the dead end
	Speed float64 `json:"speed"` // how fast it runs, for a unit of the batten's speed
}

// railRope is one and the part of the hand line that it is.
type railRope struct {
	RailRope
	part int
}

// RailRopes gives the parts of the hand line that pass or end at the rope lock's height somewhere on the arbor's way, in
// the order of its path: two for a single hand line, three for a double, four for a triple one, where two of
// one role differ in speed and a hand takes the fastest. What each does follows from the path.
func (r *Reeved) RailRopes() []RailRope {
	if r.unrigged() != nil {
		return nil
	}
	rail := r.motions().rail
	ropes := make([]RailRope, len(rail))
	for i, one := range rail {
		ropes[i] = one.RailRope
	}
	return ropes
}

// findRail looks up the parts at the rail.
func (r *Reeved) findRail(hand *course) (rail []railRope) {
	for i, speed := range hand.speed {
		uz := hand.legs[i].up
		if uz == 0 || !r.passesLock(i) {
			continue
		}
		one := railRope{part: i, RailRope: RailRope{From: r.hand.rope.Path[i].Name, To: r.hand.rope.Path[i+1].Name, Speed: math.Abs(speed)}}
		rises := speed * uz // as the batten flies out
		switch {
		case one.Speed < 1e-9:
			one.Speed = 0
		case rises < 0:
			one.Role, one.Moves = InnerRope, Out
		default:
			one.Role, one.Moves = OuterRope, In
		}
		rail = append(rail, one)
	}
	return rail
}

// passesLock reports whether a part of the hand line passes or ends at the lock's height, at either end of what the ropes can
// run: there each part is at its longest.
func (r *Reeved) passesLock(part int) bool {
	for _, moved := range [...]float64{r.down, r.up} {
		h := r.heights(r.top + moved)
		a, b := r.hand.height(part, &h), r.hand.height(part+1, &h)
		if min(a, b) <= r.lockHeight && max(a, b) >= r.lockHeight {
			return true
		}
	}
	return false
}

// Running is a set at one trim while it runs slowly one way, the lock open and a hand on a rope: what the hands
// feel once it moves. Drag holds back at every sheave past which rope runs.
type Running struct {
	Trim     units.Length `json:"trim"`
	ArborTop units.Length `json:"arbor_top"` // height above the deck
	Way      Way          `json:"way"`
	// Pull is how hard the hand pulls down, zero or more, on the rope named. It is the one that drives the set that
	// way; or, where the set would run that way by itself, the other one, which holds it back, and
	// Runs is true.
	Pull   units.Force `json:"pull"`
	Rope   Role        `json:"rope"`
	Runs   bool        `json:"runs"`
	Slack  bool        `json:"slack,omitzero"` // some lift line would have to push somewhere: that tension is given as zero, and the figures do not quite add up
	Lift   []RopeState `json:"lift"`
	Hand   RopeState   `json:"hand"`
	Blocks []Block     `json:"blocks"`

	memory *memory
}

// Load is the load on the block or dead end of the given name; zero where there is none of that name.
func (s Running) Load(name string) Vector {
	return sum(s.Blocks, func(b *Block) bool { return b.Name == name })
}

// On is the load of all the set's ropes on one body: on the head beam, of the head block and every dead end
// there; on the grid, of all loft blocks.
func (s Running) On(body Body) Vector {
	return sum(s.Blocks, func(b *Block) bool { return b.On == body })
}

// Run gives the set running slowly one way at a trim: no inertia. The errors are those of [Reeved.At], and
// *units.FieldError for a way that is neither, a set without a hand line, and, wrapping ErrSlack, a part of the
// hand line that would have to push: nobody can say then what the hand feels.
func (r *Reeved) Run(trim units.Length, on Bodies, way Way) (Running, error) {
	var s Running
	if err := r.RunInto(&s, trim, on, way); err != nil {
		return Running{}, err
	}
	s.memory = nil
	return s, nil
}

// RunInto is Run for who asks often, as [Reeved.AtInto] is At. What drag makes of the ropes is worked out, and kept, when it is
// first asked of a Reeved.
func (r *Reeved) RunInto(s *Running, trim units.Length, on Bodies, way Way) error {
	if s == nil {
		return noPlace("running")
	}
	moved, err := r.moved(trim)
	if err != nil {
		return err
	}
	if err := r.canRun(way); err != nil {
		return err
	}
	if err := on.validate(len(r.lift)); err != nil {
		return err
	}
	drives := r.drives()
	handDriven := &drives[len(r.lift)]
	arbor := on.Arbor.Weight(units.StandardGravity).In(units.Newton) - r.lifts(drives, way, on, moved)
	hand, runs := InnerRope, false
	if way == In {
		hand = OuterRope
	}
	start, pull, ok := r.handle(handDriven, way, hand, on, arbor, moved)
	if ok && pull < 0 {
		hand, runs = InnerRope+OuterRope-hand, true
		start, pull, ok = r.handle(handDriven, way, hand, on, arbor, moved)
	}
	if !ok {
		var p check.Problems
		p.Add("hand", "", "a rope at the rail whose pull moves the arbor each way", ErrNoTravel)
		return p.Err()
	}
	if err := r.hand.slack(handDriven, "hand", way, int(hand), start, pull, moved); err != nil {
		return err
	}
	m := s.memory
	if !m.knows(r) || m.running != s {
		m = r.remember()
		m.running, s.memory = s, m
	}
	for i := range m.blocks {
		m.blocks[i].Load = Vector{}
	}
	s.Trim, s.ArborTop, s.Way = trim, units.Length(r.top+moved), way
	s.Pull, s.Rope, s.Runs, s.Slack = units.Force(max(0, pull)), hand, runs, false
	s.Lift, s.Blocks = m.lift(), m.blocks[:r.named:r.named]
	left := m.parts
	for i := range r.lift {
		l := &r.lift[i]
		n := l.last()
		low := l.running(&drives[i], left[:n], m.blocks, way, nowhere, drives[i].start(way, on.Pulls[i].In(units.Newton), moved), 0, moved)
		s.Lift[i].Parts, s.Lift[i].Slack = left[:n:n], low < -slackened
		s.Slack = s.Slack || s.Lift[i].Slack
		left = left[n:]
	}
	s.Hand = RopeState{Name: r.hand.rope.Name, Parts: m.hand()}
	r.hand.running(handDriven, s.Hand.Parts, m.blocks, way, int(hand), start, pull, moved)
	return nil
}

func (r *Reeved) canRun(way Way) error {
	var p check.Problems
	if way != Out && way != In {
		kind, shown := units.ErrUnknown, strconv.Itoa(int(way))
		if way == 0 {
			kind, shown = units.ErrMissing, ""
		}
		p.Add("way", shown, "out or in", kind)
	}
	if r.lock < 0 {
		p.Add("hand", "", "a hand line to pull on", units.ErrMissing)
	}
	return p.Err()
}

// Band is the band of imbalance, referred to the batten, in which a set stays by itself with the lock open and no hand
// on a rope: drag holds it. Imbalances are those without drag, as [Reeved.Imbalance] gives them.
type Band struct {
	ArborHeavy  units.Force `json:"arbor_heavy"`  // with less the batten begins to fly out: zero or negative
	BattenHeavy units.Force `json:"batten_heavy"` // with more it begins to fly in: zero or positive
}

// Stays gives the band for what hangs on the lift lines; the arbor's mass is not looked at, for it is what is asked.
// Errors as for [Reeved.Run].
func (r *Reeved) Stays(trim units.Length, on Bodies) (Band, error) {
	moved, err := r.moved(trim)
	if err != nil {
		return Band{}, err
	}
	if err := on.validate(len(r.lift)); err != nil {
		return Band{}, err
	}
	var carried float64
	for _, pull := range on.Pulls {
		carried += pull.In(units.Newton)
	}
	drives := r.drives()
	hand := &drives[len(r.lift)]
	var slack error
	edge := func(way Way) units.Force {
		arbor := r.lifts(drives, way, on, moved)
		if r.lock >= 0 {
			onto := &hand.onto[way-Out][nowhere]
			start := (on.onIdler(r.idlerParts) - onto.known.Plain.At(moved)) / onto.known.PerStart
			arbor += onto.arbor.Plain.At(moved) + float64(onto.arbor.PerStart*start)
			slack = errors.Join(slack, r.hand.slack(hand, "hand", way, nowhere, start, 0, moved))
		}
		return units.Force(r.imbalance(moved, carried, arbor))
	}
	b := Band{ArborHeavy: min(edge(Out), 0), BattenHeavy: max(edge(In), 0)} // rounding may leave a band of nothing a hair off
	if slack != nil {
		return Band{}, slack
	}
	return b, nil
}

// partOf is the part of the hand line that has a role at the rail: of several, as in a hand line of three parts,
// the fastest, which is the one at hand's end of the tackle.
func partOf(rail []railRope, role Role) int {
	part, fastest := -1, 0.0
	for i := range rail {
		if one := &rail[i]; one.Role == role && one.Speed > fastest+1e-9 {
			part, fastest = one.part, one.Speed
		}
	}
	return part
}

// lifts is what all lift lines pull the arbor up with.
func (r *Reeved) lifts(drives []driven, way Way, on Bodies, moved float64) (up float64) {
	for i := range r.lift {
		d := &drives[i]
		t := &d.onto[way-Out][nowhere].arbor
		up += t.Plain.At(moved) + float64(t.PerStart*d.start(way, on.Pulls[i].In(units.Newton), moved))
	}
	return up
}

// handle gives the tension at the hand line's beginning and the pull on one of the ropes at the rail at which the idler
// is borne and the arbor is held up by as much as it still wants.
func (r *Reeved) handle(d *driven, way Way, hand Role, on Bodies, arbor, moved float64) (start, pull float64, ok bool) {
	if d.grip[hand] < 0 {
		return 0, 0, false
	}
	onto := &d.onto[way-Out][hand]
	a, b := &onto.known, &onto.arbor
	det := float64(a.PerStart*b.PerPull) - float64(a.PerPull*b.PerStart)
	if math.Abs(det) < 1e-9 {
		return 0, 0, false
	}
	p, q := on.onIdler(r.idlerParts)-a.Plain.At(moved), arbor-b.Plain.At(moved)
	start = (float64(p*b.PerPull) - float64(q*a.PerPull)) / det
	pull = (float64(q*a.PerStart) - float64(p*b.PerStart)) / det
	return start, pull, true
}
