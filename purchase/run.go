package purchase

import (
	"math"
	"slices"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
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
	ropes := make([]RailRope, len(r.rail))
	for i, one := range r.rail {
		ropes[i] = one.RailRope
	}
	return ropes
}

// findRail looks up the parts at the rail.
func (r *Reeved) findRail(h *rope.Heights) {
	path := r.hand.path
	part, past := make([]float64, len(path)), make([]float64, len(path))
	path.Run(r.speeds(Out), h, part, past)
	for i := range len(path) - 1 {
		uz := r.hand.run[i].up
		if uz == 0 || !r.passesLock(i) {
			continue
		}
		one := railRope{part: i, RailRope: RailRope{From: r.hand.rope.Path[i].Name, To: r.hand.rope.Path[i+1].Name, Speed: math.Abs(part[i])}}
		rises := part[i] * uz // as the batten flies out
		switch {
		case one.Speed < 1e-9:
			one.Speed = 0
		case rises < 0:
			one.Role, one.Moves = InnerRope, Out
		default:
			one.Role, one.Moves = OuterRope, In
		}
		r.rail = append(r.rail, one)
	}
}

// passesLock reports whether a part of the hand line passes or ends at the lock's height, where the lines were made
// off or at either end of what the ropes can run.
func (r *Reeved) passesLock(part int) bool {
	for _, moved := range [3]float64{0, r.down, r.up} {
		if math.IsInf(moved, 0) {
			continue
		}
		h := r.heights(r.top + moved)
		a, b := r.hand.path.Height(part, &h), r.hand.path.Height(part+1, &h)
		if min(a, b) <= r.lockHeight && max(a, b) >= r.lockHeight {
			return true
		}
	}
	return false
}

// speeds is how fast batten and arbor rise while the batten flies at a unit of speed.
func (r *Reeved) speeds(way Way) *rope.Speeds {
	v := 1.0
	if way == In {
		v = -1
	}
	return &rope.Speeds{Batten: v, Arbor: -v / r.ratio}
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
	Slack  bool        `json:"slack,omitzero"` // some rope would have to push somewhere: that tension is given as zero, and the figures do not quite add up
	Lift   []RopeState `json:"lift"`
	Hand   RopeState   `json:"hand"`
	Blocks []Block     `json:"blocks"`
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
// *units.FieldError for a way that is neither and a set without a hand line.
func (r *Reeved) Run(trim units.Length, on Bodies, way Way) (Running, error) {
	var s Running
	if err := r.RunInto(&s, trim, on, way); err != nil {
		return Running{}, err
	}
	return s, nil
}

// RunInto is Run for who asks often: it fills s, whose slices it uses again where they have room, so that nothing
// is allocated. After an error s is as it was.
func (r *Reeved) RunInto(s *Running, trim units.Length, on Bodies, way Way) error {
	y, err := r.arborTop(trim)
	if err != nil {
		return err
	}
	if err := r.canRun(way); err != nil {
		return err
	}
	if err := on.validate(len(r.lift)); err != nil {
		return err
	}
	h := r.heights(y)
	out := Running{Trim: trim, ArborTop: units.Length(y), Way: way, Lift: s.Lift, Hand: RopeState{Parts: s.Hand.Parts}}
	arbor := on.Arbor.Weight(units.StandardGravity).In(units.Newton) - r.lifts(way, on, &h)
	drives, holds := InnerRope, OuterRope
	if way == In {
		drives, holds = OuterRope, InnerRope
	}
	grip := r.partOf(drives)
	start, pull, ok := r.handle(way, grip, on, arbor, &h)
	out.Rope = drives
	if ok && pull < 0 {
		out.Rope, out.Runs = holds, true
		grip = r.partOf(holds)
		start, pull, ok = r.handle(way, grip, on, arbor, &h)
	}
	if !ok {
		var p check.Problems
		p.Add("hand", "", "a rope at the rail whose pull moves the arbor each way", ErrNoTravel)
		return p.Err()
	}
	out.Lift = slices.Grow(out.Lift[:0], len(r.lift))[:len(r.lift)]
	out.Blocks = append(s.Blocks[:0], r.blocks...)
	for i := range r.lift {
		l := &r.lift[i]
		l.running(&out.Lift[i], way, l.start(way, on.Pulls[i].In(units.Newton), &h), -1, 0, &h, out.Blocks)
	}
	out.Pull = units.Force(max(0, pull))
	r.hand.running(&out.Hand, way, start, grip, pull, &h, out.Blocks)
	out.Slack = out.Hand.Slack
	for i := range out.Lift {
		out.Slack = out.Slack || out.Lift[i].Slack
	}
	*s = out
	return nil
}

func (r *Reeved) canRun(way Way) error {
	var p check.Problems
	if way != Out && way != In {
		p.Add("way", way.String(), "out or in", units.ErrMissing)
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
	y, err := r.arborTop(trim)
	if err != nil {
		return Band{}, err
	}
	if err := on.validate(len(r.lift)); err != nil {
		return Band{}, err
	}
	h := r.heights(y)
	var carried float64
	for _, pull := range on.Pulls {
		carried += pull.In(units.Newton)
	}
	edge := func(way Way) units.Force {
		arbor := r.lifts(way, on, &h)
		if r.lock >= 0 {
			onto := r.hand.forces(way, -1, &h)
			start := (on.onIdler(r.idlerParts()) - onto[Idler].Plain) / onto[Idler].PerStart
			arbor += onto[Arbor].At(start, 0)
		}
		return units.Force(r.imbalance(y, carried, arbor))
	}
	return Band{ArborHeavy: edge(Out), BattenHeavy: edge(In)}, nil
}

// partOf is the part of the hand line that has a role at the rail: of several, as in a hand line of three parts,
// the fastest, which is the one at hand's end of the tackle.
func (r *Reeved) partOf(role Role) int {
	part, fastest := -1, 0.0
	for i := range r.rail {
		if one := &r.rail[i]; one.Role == role && one.Speed > fastest+1e-9 {
			part, fastest = one.part, one.Speed
		}
	}
	return part
}

// idlerParts is how many parts of the hand line hold the idler.
func (r *Reeved) idlerParts() float64 {
	n, _ := r.hand.pull(Idler, 0, len(r.hand.path)-1, &rope.Heights{})
	return n
}

// lifts is what all lift lines pull the arbor up with.
func (r *Reeved) lifts(way Way, on Bodies, h *rope.Heights) (up float64) {
	for i := range r.lift {
		l := &r.lift[i]
		onto := l.forces(way, -1, h)
		up += onto[Arbor].At((on.Pulls[i].In(units.Newton)-onto[Batten].Plain)/onto[Batten].PerStart, 0)
	}
	return up
}

// handle gives the tension at the hand line's beginning and the pull at a part of it at which the idler is borne
// and the arbor is held up by as much as it still wants.
func (r *Reeved) handle(way Way, grip int, on Bodies, arbor float64, h *rope.Heights) (start, pull float64, ok bool) {
	if grip < 0 {
		return 0, 0, false
	}
	onto := r.hand.forces(way, grip, h)
	a, b := onto[Idler], onto[Arbor]
	det := float64(a.PerStart*b.PerPull) - float64(a.PerPull*b.PerStart)
	if math.Abs(det) < 1e-9 {
		return 0, 0, false
	}
	p, q := on.onIdler(r.idlerParts())-a.Plain, arbor-b.Plain
	start = (float64(p*b.PerPull) - float64(q*a.PerPull)) / det
	pull = (float64(q*a.PerStart) - float64(p*b.PerStart)) / det
	return start, pull, true
}

// start is the tension at the beginning of a lift line that bears a pull at the batten.
func (l *laid) start(way Way, pull float64, h *rope.Heights) float64 {
	t := l.forces(way, -1, h)[Batten]
	return (pull - t.Plain) / t.PerStart
}

// forces gives the upward force of the rope on each body that moves, while it runs and a hand pulls down on one of its
// parts, or on none.
func (l *laid) forces(way Way, grip int, h *rope.Heights) (onto [bodies]rope.Tension) {
	factor := l.factor[way-Out]
	t := rope.Tension{PerStart: 1}
	for i, d := range l.run {
		if i > 0 {
			t = t.Times(factor[i])
		}
		a, b := Body(l.path[i].Body), Body(l.path[i+1].Body)
		if a >= Batten {
			onto[a] = onto[a].Plus(t, d.up)
		}
		t.Plain += float64(l.weight * (l.path.Height(i+1, h) - l.path.Height(i, h)))
		if i == grip {
			t.PerPull += d.sense()
		}
		if b >= Batten {
			onto[b] = onto[b].Plus(t, -d.up)
		}
	}
	return onto
}

// sense is 1 where the part rises, else −1: above a hand that pulls down the rope bears the pull too.
func (d direction) sense() float64 { return math.Copysign(1, d.up) }

// running fills in the tensions along the rope while it runs, and adds the loads to the blocks.
func (l *laid) running(out *RopeState, way Way, start float64, grip int, pull float64, h *rope.Heights, blocks []Block) {
	l.ready(out)
	factor := l.factor[way-Out]
	t := start
	for i, d := range l.run {
		if i > 0 {
			t = float64(t * factor[i])
		}
		from := borne(t, out)
		t += float64(l.weight * (l.path.Height(i+1, h) - l.path.Height(i, h)))
		if i == grip {
			t += float64(pull * d.sense())
		}
		l.part(out, i, from, borne(t, out), blocks)
	}
}
