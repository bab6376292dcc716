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

// RailRope is one of the ropes that a person at the rail sees side by side.
type RailRope struct {
	Role  Role    `json:"role"`
	From  string  `json:"from"`  // the stop that the part leaves, by the hand line's path
	To    string  `json:"to"`    // the stop that it runs to
	Moves Way     `json:"moves"` // which way the batten flies when it is pulled down; neither for the dead end
	Speed float64 `json:"speed"` // how fast it runs, for a unit of the batten's speed
	part  int
}

// RailRopes gives the parts of the hand line that pass or end at the rope lock's height, in the order of its
// path: two in single purchase, three in double. What each does follows from the path.
func (r *Reeved) RailRopes() []RailRope { return slices.Clone(r.rail) }

// findRail looks up the parts at the rail.
func (r *Reeved) findRail(h *rope.Heights) {
	path := r.hand.path
	part, past := make([]float64, len(path)), make([]float64, len(path))
	path.Run(r.speeds(Out), h, part, past)
	for i := range len(path) - 1 {
		a, b := path.Height(i, h), path.Height(i+1, h)
		_, uz, _ := path.Part(i, h)
		if min(a, b) > r.lockHeight || max(a, b) < r.lockHeight || uz == 0 {
			continue
		}
		one := RailRope{From: r.hand.rope.Path[i].Name, To: r.hand.rope.Path[i+1].Name, Speed: math.Abs(part[i]), part: i}
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
	On     Role        `json:"on"`
	Runs   bool        `json:"runs"`
	Lift   []RopeState `json:"lift"`
	Hand   RopeState   `json:"hand"`
	Blocks []Block     `json:"blocks"`
}

// Run gives the set running slowly one way at a trim: no inertia. The errors are those of [Reeved.At], and
// *units.FieldError for a way that is neither and a set without a hand line.
func (r *Reeved) Run(trim units.Length, on Bodies, way Way) (Running, error) {
	y, err := r.arborTop(trim)
	if err != nil {
		return Running{}, err
	}
	var p check.Problems
	if way != Out && way != In {
		p.Add("way", way.String(), "out or in", units.ErrMissing)
	}
	if r.lock < 0 {
		p.Add("hand", "", "a hand line to pull on", units.ErrMissing)
	}
	if err := p.Err(); err != nil {
		return Running{}, err
	}
	if err := on.validate(len(r.lift)); err != nil {
		return Running{}, err
	}
	h := r.heights(y)
	out := Running{Trim: trim, ArborTop: units.Length(y), Way: way, Lift: make([]RopeState, len(r.lift)), Blocks: slices.Clone(r.blocks)}
	d := r.drive(&h, way)
	var lifts float64
	for i := range r.lift {
		start := d.bear(&r.lift[i], on.Pulls[i].In(units.Newton))
		lifts += d.body(Arbor).At(start, 0)
		out.Lift[i] = d.state(start, 0, out.Blocks)
	}
	arbor := on.Arbor.Weight(units.StandardGravity).In(units.Newton) - lifts
	idler := on.onIdler(d.idlerParts())
	drives, holds := InnerRope, OuterRope
	if way == In {
		drives, holds = OuterRope, InnerRope
	}
	start, pull, ok := d.pull(r.partOf(drives), idler, arbor)
	out.On = drives
	if ok && pull < 0 {
		out.On, out.Runs = holds, true
		start, pull, ok = d.pull(r.partOf(holds), idler, arbor)
	}
	if !ok {
		p.Add("hand", "", "a "+drives.String()+" at the rail whose pull the arbor answers", ErrNoTravel)
		return Running{}, p.Err()
	}
	out.Pull = units.Force(max(0, pull))
	out.Hand = d.state(start, pull, out.Blocks)
	return out, nil
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
		d := r.drive(&h, way)
		var arbor float64
		for i := range r.lift {
			start := d.bear(&r.lift[i], on.Pulls[i].In(units.Newton))
			arbor += d.body(Arbor).At(start, 0)
		}
		if r.lock >= 0 {
			start := d.bearIdler(on.onIdler(d.idlerParts()))
			arbor += d.body(Arbor).At(start, 0)
		}
		return units.Force(r.imbalance(&h, carried, arbor))
	}
	return Band{ArborHeavy: edge(Out), BattenHeavy: edge(In)}, nil
}

func (r *Reeved) partOf(role Role) int {
	for _, one := range r.rail {
		if one.Role == role {
			return one.part
		}
	}
	return -1
}

// drive is scratch for tensions along ropes that run.
type drive struct {
	r      *Reeved
	h      *rope.Heights
	speeds *rope.Speeds
	laid   *laid // the rope at hand
	factor [maxStops]float64
	part   [maxStops]float64
	past   [maxStops]float64
	from   [maxStops]rope.Tension
	to     [maxStops]rope.Tension
}

func (r *Reeved) drive(h *rope.Heights, way Way) *drive {
	return &drive{r: r, h: h, speeds: r.speeds(way)}
}

// idlerParts is how many parts of the hand line hold the idler.
func (d *drive) idlerParts() float64 {
	path := d.r.hand.path
	n, _ := path.Pull(int(Idler), 0, len(path)-1, d.h)
	return n
}

// take works out the tensions of one rope, a hand on one of its parts or on none.
func (d *drive) take(l *laid, grip int) {
	d.laid = l
	l.path.Run(d.speeds, d.h, d.part[:], d.past[:])
	for i := 1; i < len(l.path)-1; i++ {
		d.factor[i] = l.factor(i, d.past[i], d.h)
	}
	l.path.Drive(l.weight, d.factor[:], grip, d.h, d.from[:], d.to[:])
}

// factor is how many times the tension up to stop i is that past it. The tight side is the one the rope runs
// to; a rope that does not run past a sheave has no side to be tight.
func (l *laid) factor(i int, past float64, h *rope.Heights) float64 {
	if l.drag[i] == 0 || math.Abs(past) < 1e-12 {
		return 1
	}
	ax, az, _ := l.path.Part(i-1, h)
	bx, bz, _ := l.path.Part(i, h)
	k := rope.DragRatio(l.drag[i], ax, az, bx, bz)
	if past < 0 {
		return 1 / k
	}
	return k
}

// body is the upward force of the rope at hand on a body.
func (d *drive) body(b Body) rope.Tension {
	return d.laid.path.Lift(int(b), d.h, d.from[:], d.to[:])
}

// bear takes a lift line that bears a pull at the batten and gives the tension at its beginning.
func (d *drive) bear(l *laid, pull float64) float64 {
	d.take(l, -1)
	t := d.body(Batten)
	return (pull - t.Plain) / t.PerStart
}

// bearIdler takes the hand line, with no hand on it, that bears the idler.
func (d *drive) bearIdler(weight float64) float64 {
	d.take(&d.r.hand, -1)
	t := d.body(Idler)
	return (weight - t.Plain) / t.PerStart
}

// pull takes the hand line with a hand on one of its parts and gives the tension at its beginning and the pull at
// which the idler is borne and the arbor held up by what is still wanted.
func (d *drive) pull(part int, idler, arbor float64) (start, pull float64, ok bool) {
	if part < 0 {
		return 0, 0, false
	}
	d.take(&d.r.hand, part)
	a, b := d.body(Idler), d.body(Arbor)
	det := float64(a.PerStart*b.PerPull) - float64(a.PerPull*b.PerStart)
	if math.Abs(det) < 1e-9 {
		return 0, 0, false
	}
	p, q := idler-a.Plain, arbor-b.Plain
	start = (float64(p*b.PerPull) - float64(q*a.PerPull)) / det
	pull = (float64(q*a.PerStart) - float64(p*b.PerStart)) / det
	return start, pull, true
}

// state gives the rope at hand with its tensions, and adds the loads to the blocks.
func (d *drive) state(start, pull float64, blocks []Block) RopeState {
	l := d.laid
	out := RopeState{Name: l.rope.Name, Parts: make([]Part, len(l.path)-1)}
	for i := range out.Parts {
		from, to := d.from[i].At(start, pull), d.to[i].At(start, pull)
		for _, t := range []*float64{&from, &to} {
			if *t < 0 {
				// Rounding may leave a rope that bears nothing a hair below zero; that is not slack.
				out.Slack = out.Slack || *t < -1e-6
				*t = 0
			}
		}
		out.Parts[i] = Part{
			From: l.rope.Path[i].Name, To: l.rope.Path[i+1].Name,
			TensionFrom: units.Force(from), TensionTo: units.Force(to),
		}
		ux, uz, _ := l.path.Part(i, d.h)
		load(blocks, l.block[i], float64(from*ux), float64(from*uz))
		load(blocks, l.block[i+1], float64(-to*ux), float64(-to*uz))
	}
	return out
}
