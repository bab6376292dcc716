package purchase

import (
	"iter"
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/lazy"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/internal/slab"
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
	of     Reeving // nobody else's
	lift   []laid
	moving lazy.Value[*motions]
	driven lazy.Value[[]driven] // of each lift line, then of the hand line; see drives

	rests []rests // of each lift line, then of the hand line below the rope lock and above it
	hand  laid
	lock  int // the part of the hand line that runs through the rope lock; -1 without a hand line

	ratio      float64 // −dx/dy
	perRatio   float64 // one over it: a division takes long
	handRatio  float64
	trim, top  float64 // where batten and arbor stood when the lines were made off
	lockHeight float64
	idler      float64
	down, up   float64 // how far the arbor may move from there before two stops of some part meet
	named      int     // how many blocks have a place in the ropes' paths: see newBlocks

	// With the arbor's top moved up from where it was when the lines were made off:
	ropes      rope.Straight // imbalance that the ropes' own weight makes, N
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
	blocks, err := r.validate()
	if err != nil {
		return nil, err
	}
	room := new(quarters)
	if err := r.copied().rig(room, blocks); err != nil {
		return nil, err
	}
	return &room.Reeved, nil
}

// quarters is a Reeved with room for as many lift lines as most battens have at most, which is then asked for at once.
type quarters struct {
	Reeved
	ropes [fewLines]Rope
	laid  [fewLines]laid
	rests [fewLines + 2]rests
}

const fewLines = 8

// rig makes the reeving, of which each rope was found right by itself, ready to be asked. It keeps the slices.
func (r Reeving) rig(room *quarters, found blocks) error {
	var p check.Problems
	out := &room.Reeved
	*out = Reeved{
		of: r, trim: r.Trim.In(units.Metre), top: r.ArborTop.In(units.Metre), idler: r.Idler.In(units.Metre),
		lockHeight: r.Lock.In(units.Metre),
		down:       math.Inf(-1), up: math.Inf(1), lock: -1,
	}
	out.lift, out.rests = slab.Enough(room.laid[:], len(r.Lift)), slab.Enough(room.rests[:], len(r.Lift)+2)[:0]
	h := out.heights(out.top)
	if !out.lay(&h, found) {
		for i, l := range out.all() {
			l.checkParts(&p, &h, i, len(r.Lift))
		}
		if err := p.Err(); err != nil {
			return err
		}
	}
	out.findRatio(&p)
	if len(r.Hand.Path) > 0 {
		out.checkHand(&p, &h)
	}
	if err := p.Err(); err != nil {
		return err
	}
	out.ready(&h)
	return nil
}

// ready works out what does not depend on the trim or on what hangs on the ropes.
func (r *Reeved) ready(h *rope.Heights) {
	r.perRatio = 1 / r.ratio
	travel := r.travel()
	// A lift line that bears R at the batten has t(z) = c + w·z along its path with n_b·c + w·s_b = R there (package rope), so it
	// pulls the arbor up with n_a·c + w·s_a, and n_a/n_b is the ratio. The hand line pays out at one end of the arbor what it takes
	// in at the other, so its n is zero: only its weight is left.
	var up rope.Straight
	first := 0
	for i := range r.lift {
		l := &r.lift[i]
		atBatten, atArbor := r.settle(l, h, &travel)
		up = up.Plus(atArbor.Less(atBatten.Times(r.ratio)))
		r.rests = append(r.rests, l.rests(atBatten, first))
		first += l.last()
	}
	if r.lock >= 0 {
		_, atArbor := r.settle(&r.hand, h, &travel)
		r.idlerParts, r.idlerHung = r.hand.pull(Idler, 0)
		r.topParts, _ = r.hand.pull(Arbor, r.lock+1)
		up = up.Plus(atArbor)
	}
	r.ropes = up.Times(r.perRatio)
	if r.lock >= 0 {
		below, above := r.hand.stations[:r.lock+1], r.hand.stations[r.lock+1:]
		r.rests = append(r.rests,
			rests{perPull: 1, begin: &below[0], stops: below[1:], first: first},
			rests{perPull: 1, begin: &above[0], stops: above[1:], first: first + len(below)})
	}
}

// findRatio works the ratio out from each lift line and makes sure that all of
// them agree.
func (r *Reeved) findRatio(p *check.Problems) {
	for i := range r.lift {
		l := &r.lift[i]
		byBatten, byArbor := -l.batten, -l.arbor // how much more rope it wants for a unit that each rises
		n := byArbor / byBatten
		if byBatten < 0 && byArbor != 0 && n >= 0 {
			if r.ratio == 0 {
				r.ratio = n
			}
			if math.Abs(n-r.ratio) <= 1e-9*r.ratio {
				continue
			}
		}
		field := ropeField(i, len(r.lift))
		switch {
		case byBatten == 0 || byArbor == 0:
			p.Add(field, strconv.Quote(r.lift[i].rope.Name), "a path whose length changes with both the batten's and the arbor's height", ErrNoTravel)
		case byBatten > 0:
			p.Add(field, strconv.Quote(r.lift[i].rope.Name), "a path that holds the batten up: a rope does not push", units.ErrOutOfRange)
		case n < 0:
			p.Add(field, strconv.Quote(r.lift[i].rope.Name), "a path that lets the batten rise while the arbor sinks", ErrNoTravel)
		default:
			p.Add(field, ratioText(n), "the ratio of the first lift line, "+ratioText(r.ratio), ErrOverConstrained)
		}
	}
}

// checkHand finds the part that runs through the lock and makes sure that the
// hand line lets the arbor move.
func (r *Reeved) checkHand(p *check.Problems, h *rope.Heights) {
	hand := &r.hand
	last := hand.last()
	idler := -1
	for i := range hand.stations {
		if hand.on(i) == Idler {
			idler = i
		}
	}
	if idler < 0 || idler == last {
		p.Add("hand", "", "a path round the idler, on to the head block and the arbor's top", units.ErrMissing)
		return
	}
	if n, _ := hand.pull(Idler, 0); n <= 0 {
		p.Add("hand", "", "parts that hold the idler up, so that its weight keeps the hand line tight", units.ErrOutOfRange)
	}
	top, _ := hand.pull(Arbor, idler)
	if top <= 0 {
		p.Add("hand", "", "a part from the head block down to the arbor's top", units.ErrOutOfRange)
	}
	if math.Abs(hand.arbor) > 1e-9 {
		p.Add("hand", "", "as much rope paid out at one end of the arbor as is taken in at the other", ErrOverConstrained)
	}
	if z := hand.height(idler, h); r.lockHeight <= z || r.lockHeight >= hand.height(idler+1, h) {
		p.Add("lock", check.Show(units.Length(r.lockHeight)), "a height between the idler's and the head block's", units.ErrOutOfRange)
	}
	r.lock = idler
	r.handRatio = top / r.ratio
}

// checkParts makes sure that no two neighbouring stops coincide, that parts
// which change their length hang plumb: then the ratio is the same at every trim, and
// so are the turns; and that the rope turns at every sheave.
func (l *laid) checkParts(p *check.Problems, h *rope.Heights, number, lifts int) {
	whole := true
	path := l.rope.Path
	for i := range path[1:] {
		a, b := &path[i], &path[i+1]
		across, up := apart(a, b, h)
		if _, _, length := rope.Part(across, up); length < plumb {
			at := stopField(number, i+1, lifts)
			p.Add(at, strconv.Quote(b.Name), "a place apart from the stop before it when the lines are made off", units.ErrDuplicate)
			whole = false
			continue
		}
		if a.On != b.On && (moves(a) || moves(b)) && math.Abs(across) > plumb {
			at := stopField(number, i+1, lifts)
			p.Add(at+".across", check.Show(b.Across),
				check.Show(a.Across)+", plumb with the stop before it, as one of the two moves", units.ErrOutOfRange)
			whole = false
		}
	}
	for i := 1; whole && i < l.last(); i++ {
		inX, inZ, _ := l.part(i-1, h)
		offX, offZ, _ := l.part(i, h)
		if !rope.Turns(inX, inZ, offX, offZ, noTurn) {
			field := ropeField(number, lifts)
			p.Add(field+".path["+strconv.Itoa(i)+"]", strconv.Quote(path[i].Name),
				"a place at which the rope turns: here it runs straight past", ErrNoTurn)
		}
	}
}

// lay lays all ropes while the bodies are at heights h, and tells whether it is plain that nothing is wrong with their parts. Their
// figures lie side by side, in one piece of memory of each sort.
func (r *Reeved) lay(h *rope.Heights, found blocks) (plain bool) {
	r.named = found.named
	stations, of := make([]station, len(found.of)), found.of
	lay := func(l *laid, rp *Rope) bool {
		n := len(rp.Path)
		here := of[:n]
		of = of[n:]
		return l.lay(rp, h, slab.Take(&stations, n), here, r.named+1)
	}
	plain = true
	for i := range r.lift {
		plain = lay(&r.lift[i], &r.of.Lift[i]) && plain
	}
	if len(r.of.Hand.Path) > 0 {
		plain = lay(&r.hand, &r.of.Hand) && plain
	}
	return plain
}

// all gives the lift lines and then the hand line, if there is one.
func (r *Reeved) all() iter.Seq2[int, *laid] {
	return func(yield func(int, *laid) bool) {
		for i := range r.lift {
			if !yield(i, &r.lift[i]) {
				return
			}
		}
		if r.hand.rope != nil {
			yield(len(r.lift), &r.hand)
		}
	}
}

// heights gives the datum of every body while the arbor's top is at y.
func (r *Reeved) heights(y float64) rope.Heights {
	var h rope.Heights
	h[Batten] = r.trim - float64(r.ratio*(y-r.top))
	h[Arbor] = y
	h[Idler] = r.idler
	return h
}

func ratioText(n float64) string { return strconv.FormatFloat(n, 'g', 6, 64) + ":1" }
