package purchase

import (
	"math"
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// plumb is how far two stops may be apart across the plane, in metres, and still
// count as one above the other.
const plumb = 1e-9

// Bounds that keep the work on any input small: more lift lines than any batten
// has, more sheaves than any rope runs over.
const (
	maxLines = 64
	maxStops = 64
)

// Reeved is a reeving that was checked and is ready to be asked. It does not
// change and may be asked from many goroutines at once.
type Reeved struct {
	lift  []laid
	rests []rests   // of each lift line
	stops []station // of all lift lines, one after the other
	hand  laid
	lock  int // the part of the hand line that runs through the rope lock; -1 without a hand line

	ratio      float64 // −dx/dy
	handRatio  float64
	trim, top  float64 // where batten and arbor stood when the lines were made off
	lockHeight float64
	idler      float64
	down, up   float64 // how far the arbor may move from there before two stops of some part meet
	blocks     []Block // names and bodies; then the rope lock, then nobody's, for stops on the batten; loads zero
	named      int     // how many of them have a place in the ropes' paths
	rail       []railRope

	// With the arbor's top moved up from where it was when the lines were made off:
	ropes      rope.Straight // imbalance that the ropes' own weight makes, N
	felt       rope.Straight // mass of ropes and sheaves felt at the batten, kg
	idlerParts float64       // how many parts of the hand line hold the idler
	idlerHung  rope.Straight // what the hand line's own weight adds there to the tension at height 0 times the parts, N
	topParts   float64       // how many parts hold the arbor up on the far side of the lock
}

// Rig checks the reeving and makes it ready to be asked. Its ratio is worked out
// from the paths: a rope keeps its length, so −dx/dy = (∂L/∂y)/(∂L/∂x), with x the
// batten's trim and y the height of the arbor's top. The error joins a
// *units.FieldError for everything that is wrong: a path that does not move, one
// that would move the arbor otherwise than its neighbours do, stops that
// coincide, a sheave at which the rope does not turn, a block in two places, a part that is
// not plumb where it must be.
func (r Reeving) Rig() (*Reeved, error) {
	var p check.Problems
	check.Finite(&p, "trim", r.Trim)
	check.Finite(&p, "arbor_top", r.ArborTop)
	check.Finite(&p, "idler", r.Idler)
	check.Finite(&p, "lock", r.Lock)
	if len(r.Lift) == 0 {
		p.Add("lift", "", "at least one lift line", units.ErrMissing)
	}
	if n := len(r.Lift); n > maxLines {
		p.Add("lift", strconv.Itoa(n)+" lift lines", "at most "+strconv.Itoa(maxLines), units.ErrOutOfRange)
		return nil, p.Err()
	}
	ropes := slices.Clone(r.Lift)
	if len(r.Hand.Path) > 0 {
		ropes = append(ropes, r.Hand)
	}
	for i, rp := range ropes {
		off, why := Idler, "a body other than the idler, which only the hand line keeps"
		if i == len(r.Lift) {
			off, why = Batten, "a body other than the batten, which only lift lines carry"
		}
		if err := rp.validate(off, why); err != nil {
			p.Within(ropeField(i, len(r.Lift)), strconv.Quote(rp.Name), err)
		}
	}
	checkBlocks(&p, ropes, len(r.Lift))
	if err := p.Err(); err != nil {
		return nil, err
	}

	out := &Reeved{
		trim: r.Trim.In(units.Metre), top: r.ArborTop.In(units.Metre), idler: r.Idler.In(units.Metre),
		lockHeight: r.Lock.In(units.Metre),
		down:       math.Inf(-1), up: math.Inf(1), lock: -1,
	}
	h := out.heights(out.top)
	for _, rp := range r.Lift {
		out.lift = append(out.lift, out.lay(rp))
	}
	if len(r.Hand.Path) > 0 {
		out.hand = out.lay(r.Hand)
	}
	for i, l := range out.all() {
		l.checkParts(&p, ropeField(i, len(r.Lift)), &h)
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	out.findRatio(&p, &h)
	if err := p.Err(); err != nil {
		return nil, err
	}
	if len(r.Hand.Path) > 0 {
		out.checkHand(&p, &h)
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	out.ready(&h)
	return out, nil
}

// ready works out what does not depend on the trim or on what hangs on the ropes.
func (r *Reeved) ready(h *rope.Heights) {
	r.limitTravel(h)
	r.named = len(r.blocks)
	nobodys := r.named + 1
	r.blocks = append(r.blocks, Block{Name: RopeLock, On: Rail}, Block{})
	travel, flyOut := rope.Speeds{Batten: -r.ratio, Arbor: 1}, rope.Speeds{Batten: 1, Arbor: -1 / r.ratio}
	all := r.all()
	met := make([]bool, len(r.blocks))
	for _, l := range all {
		for i := range l.stations {
			s := &l.stations[i]
			if s.block < 0 {
				s.block = nobodys
			}
			s.first = !met[s.block]
			met[s.block] = true
		}
		l.settle(h, &travel, &flyOut)
	}
	if r.lock >= 0 {
		r.findRail()
		r.hand.grip = [grips]int{nowhere: -1, InnerRope: r.partOf(InnerRope), OuterRope: r.partOf(OuterRope)}
		r.idlerParts, r.idlerHung = r.hand.pull(Idler, 0)
		r.topParts, _ = r.hand.pull(Arbor, r.lock+1)
	}
	for _, l := range all {
		l.drive()
	}
	r.ropes = r.ropeImbalance()
	r.felt = r.ropesFelt()
	for i := range r.lift {
		r.rests = append(r.rests, r.lift[i].rests)
		r.stops = append(r.stops, r.lift[i].stations...)
	}
}

// findRatio works the ratio out from each lift line and makes sure that all of
// them agree.
func (r *Reeved) findRatio(p *check.Problems, h *rope.Heights) {
	for i := range r.lift {
		field := ropeField(i, len(r.lift))
		path := r.lift[i].path
		last := len(path) - 1
		byBatten, byArbor := path.Rate(int(Batten), last, h), path.Rate(int(Arbor), last, h)
		n := byArbor / byBatten
		switch {
		case byBatten == 0 || byArbor == 0:
			p.Add(field, strconv.Quote(r.lift[i].rope.Name), "a path whose length changes with both the batten's and the arbor's height", ErrNoTravel)
		case n < 0:
			p.Add(field, strconv.Quote(r.lift[i].rope.Name), "a path that lets the batten rise while the arbor sinks", ErrNoTravel)
		case r.ratio == 0:
			r.ratio = n
		case math.Abs(n-r.ratio) > 1e-9*r.ratio:
			p.Add(field, ratioText(n), "the ratio of the first lift line, "+ratioText(r.ratio), ErrOverConstrained)
		}
	}
}

// checkHand finds the part that runs through the lock and makes sure that the
// hand line lets the arbor move.
func (r *Reeved) checkHand(p *check.Problems, h *rope.Heights) {
	path := r.hand.path
	last := len(path) - 1
	idler := -1
	for i, s := range path {
		if Body(s.Body) == Idler {
			idler = i
		}
	}
	if idler < 0 || idler == last {
		p.Add("hand", "", "a path round the idler, on to the head block and the arbor's top", units.ErrMissing)
		return
	}
	if n, _ := path.Pull(int(Idler), 0, last, h); n <= 0 {
		p.Add("hand", "", "parts that hold the idler up, so that its weight keeps the hand line tight", units.ErrOutOfRange)
	}
	if n, _ := path.Pull(int(Arbor), idler, last, h); n <= 0 {
		p.Add("hand", "", "a part from the head block down to the arbor's top", units.ErrOutOfRange)
	}
	rate := path.Rate(int(Arbor), last, h) - float64(r.ratio*path.Rate(int(Batten), last, h))
	if math.Abs(rate) > 1e-9 {
		p.Add("hand", "", "as much rope paid out at one end of the arbor as is taken in at the other", ErrOverConstrained)
	}
	if z := path.Height(idler, h); r.lockHeight <= z || r.lockHeight >= path.Height(idler+1, h) {
		p.Add("lock", check.Show(units.Length(r.lockHeight)), "a height between the idler's and the head block's", units.ErrOutOfRange)
	}
	r.lock = idler
	flow := path.Rate(int(Arbor), idler, h) - float64(r.ratio*path.Rate(int(Batten), idler, h))
	r.handRatio = math.Abs(flow) / r.ratio
}

// checkParts makes sure that no two neighbouring stops coincide, that parts
// which change their length hang plumb: then the ratio is the same at every trim, and
// so are the turns; and that the rope turns at every sheave.
func (l *laid) checkParts(p *check.Problems, field string, h *rope.Heights) {
	apart := true
	for i := range len(l.path) - 1 {
		a, b := l.path[i], l.path[i+1]
		at := field + ".path[" + strconv.Itoa(i+1) + "]"
		if _, _, length := l.path.Part(i, h); length < plumb {
			p.Add(at, strconv.Quote(l.rope.Path[i+1].Name), "a place apart from the stop before it when the lines are made off", units.ErrDuplicate)
			apart = false
			continue
		}
		if a.Body != b.Body && (moves(a) || moves(b)) && math.Abs(a.X-b.X) > plumb {
			p.Add(at+".across", check.Show(units.Length(b.X)),
				check.Show(units.Length(a.X))+", plumb with the stop before it, as one of the two moves", units.ErrOutOfRange)
			apart = false
		}
	}
	for i := 1; apart && i < len(l.path)-1; i++ {
		if l.path.Turn(i, h) <= noTurn {
			p.Add(field+".path["+strconv.Itoa(i)+"]", strconv.Quote(l.rope.Path[i].Name),
				"a place at which the rope turns: here it runs straight past", ErrNoTurn)
		}
	}
}

func moves(s rope.Stop) bool { return Body(s.Body) == Batten || Body(s.Body) == Arbor }

// limitTravel finds how far the arbor may move before two stops of a part meet.
func (r *Reeved) limitTravel(h *rope.Heights) {
	speed := [bodies]float64{Batten: -r.ratio, Arbor: 1}
	for _, l := range r.all() {
		for i := range len(l.path) - 1 {
			v := speed[l.path[i+1].Body] - speed[l.path[i].Body]
			if v == 0 {
				continue
			}
			if meet := (l.path.Height(i, h) - l.path.Height(i+1, h)) / v; meet > 0 {
				r.up = min(r.up, meet)
			} else {
				r.down = max(r.down, meet)
			}
		}
	}
}

func (r *Reeved) lay(rp Rope) laid {
	n := len(rp.Path)
	l := laid{rope: rp, path: make(rope.Path, n), drag: make([]float64, n), rim: make([]float64, n), tight: make([]float64, n), gain: make([]float64, n), factor: [2][]float64{make([]float64, n), make([]float64, n)}, stations: make([]station, n), grip: [grips]int{-1, -1, -1}}
	l.rope.Path = slices.Clone(rp.Path)
	l.weight = rp.Mass.Weight(units.StandardGravity).In(units.NewtonPerMetre)
	for i, s := range rp.Path {
		l.path[i] = rope.Stop{Body: int(s.On), X: s.Across.In(units.Metre), Z: s.Height.In(units.Metre)}
		l.drag[i] = float64(s.Drag)
		l.rim[i] = s.Rim.In(units.Kilogram)
		l.stations[i].block = -1
		if s.On == Batten {
			continue
		}
		at := slices.IndexFunc(r.blocks, func(b Block) bool { return b.Name == s.Name && b.On == s.On })
		if at < 0 {
			at = len(r.blocks)
			r.blocks = append(r.blocks, Block{Name: s.Name, On: s.On})
		}
		l.stations[i].block = at
	}
	return l
}

// all gives the lift lines and then the hand line, if there is one.
func (r *Reeved) all() []*laid {
	all := make([]*laid, 0, len(r.lift)+1)
	for i := range r.lift {
		all = append(all, &r.lift[i])
	}
	if len(r.hand.path) > 0 {
		all = append(all, &r.hand)
	}
	return all
}

// heights gives the datum of every body while the arbor's top is at y.
func (r *Reeved) heights(y float64) rope.Heights {
	var h rope.Heights
	h[Batten] = r.trim - float64(r.ratio*(y-r.top))
	h[Arbor] = y
	h[Idler] = r.idler
	return h
}

// validate looks at one rope by itself. Off is the body that it must keep off, and
// why says so.
func (rp Rope) validate(off Body, why string) error {
	var p check.Problems
	check.NotNegative(&p, "mass", rp.Mass)
	checkDiameter(&p, "diameter", rp.Diameter)
	switch n := len(rp.Path); {
	case n < 2:
		p.Add("path", strconv.Itoa(n)+" stops", "at least its two ends", units.ErrMissing)
	case n > maxStops:
		p.Add("path", strconv.Itoa(n)+" stops", "at most "+strconv.Itoa(maxStops), units.ErrOutOfRange)
		return p.Err()
	}
	for i := range rp.Path {
		if err := rp.validateStop(i, off, why); err != nil {
			p.Within("path["+strconv.Itoa(i)+"]", "", err)
		}
	}
	return p.Err()
}

// validateStop looks at one stop of it.
func (rp Rope) validateStop(i int, off Body, why string) error {
	var p check.Problems
	s, end := &rp.Path[i], i == 0 || i == len(rp.Path)-1
	if s.On >= bodies {
		p.Add("on", strconv.Itoa(int(s.On)), "one of the bodies of a set", units.ErrUnknown)
	}
	if s.On == off {
		p.Add("on", s.On.String(), why, units.ErrOutOfRange)
	}
	if s.Name == "" {
		p.Add("name", "", "a name for the stop", units.ErrMissing)
	}
	check.Finite(&p, "across", s.Across)
	check.Finite(&p, "height", s.Height)
	checkOffset(&p, "offset", s.Offset)
	if s.On == Batten && s.Offset != 0 {
		p.Add("offset", check.Show(s.Offset), "none: the batten hangs plumb under its blocks", units.ErrOutOfRange)
	}
	if !end {
		checkTread(&p, "tread", s.Tread, rp.Diameter)
	}
	s.Drag.fault(&p, "drag")
	check.NotNegative(&p, "rim", s.Rim)
	switch {
	case !end:
	case s.Drag > 0:
		p.Add("drag", plainText(float64(s.Drag)), "none: an end has no sheave", units.ErrOutOfRange)
	case s.Rim > 0:
		p.Add("rim", check.Show(s.Rim), "none: an end has no sheave", units.ErrOutOfRange)
	case s.Tread > 0:
		p.Add("tread", check.Show(s.Tread), "none: an end has no sheave", units.ErrOutOfRange)
	}
	if i > 0 && s.On == rp.Path[i-1].On && s.Across == rp.Path[i-1].Across && s.Height == rp.Path[i-1].Height {
		p.Add("", strconv.Quote(s.Name), "a place of its own, apart from the stop before it", units.ErrDuplicate)
	}
	return p.Err()
}

func ropeField(i, lifts int) string {
	if i < lifts {
		return "lift[" + strconv.Itoa(i) + "]"
	}
	return "hand"
}

func ratioText(n float64) string { return strconv.FormatFloat(n, 'g', 6, 64) + ":1" }
