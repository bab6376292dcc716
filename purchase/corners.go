package purchase

import (
	"slices"

	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// stretch is a rope between two of its stops, as one of which or at whose sheaves something is known: what it pulls a body
// up with. Past its last stop the rope may go on, to where it is held otherwise, as it may come to its first.
type stretch struct {
	l        *laid
	d        *driven
	from, to int // stops
	known    Body
	sum      ends // what it pulls that body up with
	moved    float64
	corners  []corner
}

// corner is a stretch whose sheaves each hold all that they can, one way or the other: the tensions with which the rope
// comes to each stop and goes off, which go straight with the sum that is known.
type corner struct {
	in, off []rope.Straight
	arbor   rope.Straight // what the rope pulls the arbor up with
	load    rope.Straight // what it pulls the stops with that are asked for
}

// fullCorners is how many sheaves are tried every way.
const fullCorners = 8

// choices gives, for each corner, at which of n sheaves the tension grows along the path: every choice of few sheaves. Of many,
// those by which a tension at one place, or the load there, comes to its end: alike at all sheaves before it and the other way
// after, so that the place itself goes with either. With each choice there is its opposite.
func choices(n int) []uint64 {
	whole := uint64(1)<<n - 1
	var all []uint64
	if n <= fullCorners {
		for some := range whole + 1 {
			all = append(all, some)
		}
		return all
	}
	for i := range n {
		before := uint64(1)<<i - 1
		all = append(all, before, whole&^before)
	}
	return all
}

// try works out the corners.
func (s *stretch) try() {
	n := 0
	for i := s.from; i <= s.to; i++ {
		if s.d.at[i].tight > 1 { // at an end it is 1
			n++
		}
	}
	for _, grows := range choices(n) {
		c := s.corner(grows)
		_, c.arbor = s.pull(&c, func(l *laid, stop int) bool { return l.on(stop) == Arbor })
		s.corners = append(s.corners, c)
	}
}

func (s *stretch) corner(grows uint64) corner {
	last, size := s.l.last(), s.to-s.from+1
	c := corner{in: make([]rope.Straight, size), off: make([]rope.Straight, size)}
	var up rope.Straight // of the body that is known, with the tension that the rope begins with
	t := rope.Straight{Rate: 1}
	for i := s.from; i <= s.to; i++ {
		if i > s.from {
			t.Start += s.l.rises(i - 1).At(s.moved)
		}
		known := s.l.on(i) == s.known
		if i > 0 {
			c.in[i-s.from] = t
			if known {
				up = up.Plus(t.Times(-s.d.legs[i-1].up))
			}
		}
		if i == last {
			break
		}
		if k := s.d.at[i].tight; k > 1 {
			if grows&1 == 0 {
				k = 1 / k
			}
			grows >>= 1
			t = t.Times(k)
		}
		c.off[i-s.from] = t
		if known {
			up = up.Plus(t.Times(s.d.legs[i].up))
		}
	}
	// The sum is what it is with up.Start + up.Rate·begin, begin the tension at the beginning.
	begin := rope.Straight{Start: -up.Start / up.Rate, Rate: 1 / up.Rate}
	for i := range size {
		c.in[i], c.off[i] = begun(c.in[i], begin), begun(c.off[i], begin)
	}
	return c
}

func begun(t, begin rope.Straight) rope.Straight {
	return rope.Straight{Start: t.Start + float64(t.Rate*begin.Start), Rate: float64(t.Rate * begin.Rate)}
}

// pull is what the rope pulls the stops that are meant with.
func (s *stretch) pull(c *corner, meant func(l *laid, stop int) bool) (across, up rope.Straight) {
	last := s.l.last()
	for i := s.from; i <= s.to; i++ {
		if !meant(s.l, i) {
			continue
		}
		if i > 0 {
			d, t := s.d.legs[i-1], c.in[i-s.from]
			across, up = across.Less(t.Times(d.across)), up.Less(t.Times(d.up))
		}
		if i < last {
			d, t := s.d.legs[i], c.off[i-s.from]
			across, up = across.Plus(t.Times(d.across)), up.Plus(t.Times(d.up))
		}
	}
	return across, up
}

// meets tells whether any of its stops is meant.
func (s *stretch) meets(meant func(l *laid, stop int) bool) bool {
	for i := s.from; i <= s.to; i++ {
		if meant(s.l, i) {
			return true
		}
	}
	return false
}

// fill fills in the bands of the rope's parts, with the sum of each corner.
func (s *stretch) fill(parts []PartBand, sum func(*corner) ends) {
	last := s.l.last()
	for i := s.from; i <= s.to; i++ {
		in, off := none(), none()
		for k := range s.corners {
			c := &s.corners[k]
			e := sum(c)
			in, off = in.and(e.along(c.in[i-s.from])), off.and(e.along(c.off[i-s.from]))
		}
		if i > 0 {
			p := &parts[i-1].TensionTo
			*p = in.borne().band(p.Value)
		}
		if i < last {
			p := &parts[i].TensionFrom
			*p = off.borne().band(p.Value)
		}
	}
}

// atRest is a set at rest with the corners of all its ropes.
type atRest struct {
	r      *Reeved
	lift   []*stretch
	lower  *stretch // of the hand line, up to the lock; nil without one
	upper  *stretch // from the lock on; its sum is what the arbor wants of it
	drop   float64  // what the tension above the lock at its height is more than where the rope comes to the next stop
	weight float64  // of the arbor
	lifts  ends     // of all lift lines on the arbor
	held   ends     // what the lock pulls on the rail with
	slack  bool     // the rope above the lock may be
	base   bool     // the idler is held
}

func (r *Reeved) resting(on Bodies, moved float64) *atRest {
	drives := r.drives()
	set := &atRest{r: r, weight: on.Arbor.Weight(units.StandardGravity).In(units.Newton), base: on.Base > 0}
	for i := range r.lift {
		pull := on.Pulls[i].In(units.Newton)
		line := &stretch{l: &r.lift[i], d: &drives[i], to: r.lift[i].last(), known: Batten, sum: ends{pull, pull}, moved: moved}
		line.try()
		set.lift = append(set.lift, line)
		set.lifts = set.lifts.plus(line.extremes(func(c *corner) float64 { return c.arbor.At(pull) }))
	}
	if r.lock < 0 {
		return set
	}
	hand, driven := &r.hand, &drives[len(r.lift)]
	idler := on.onIdler(r.idlerParts)
	set.lower = &stretch{l: hand, d: driven, to: r.lock, known: Idler, sum: ends{idler, idler}, moved: moved}
	set.lower.try()
	set.upper = &stretch{l: hand, d: driven, from: r.lock + 1, to: hand.last(), known: Arbor, moved: moved}
	set.upper.try()
	set.drop = float64(hand.weight*r.lockHeight) - hand.stations[r.lock+1].hung.At(moved)
	foot := set.lower.extremes(func(c *corner) float64 { return c.arbor.At(idler) })
	set.upper.sum = ends{set.weight, set.weight}.less(set.lifts).less(foot)
	for k := range set.upper.corners {
		set.slack = set.slack || set.upper.sum.least < set.floor(&set.upper.corners[k])
	}
	return set
}

// extremes are those of a figure over the corners.
func (s *stretch) extremes(of func(*corner) float64) ends {
	e := none()
	for k := range s.corners {
		e = e.with(of(&s.corners[k]))
	}
	return e
}

// below is the tension just below the lock, above that just above it.
func (set *atRest) below(lower *corner) rope.Straight {
	hand := &set.r.hand
	t := lower.off[len(lower.off)-1]
	t.Start += float64(hand.weight*set.r.lockHeight) - hand.stations[set.r.lock].hung.At(set.lower.moved)
	return t
}

func (set *atRest) above(upper *corner) rope.Straight {
	t := upper.in[0]
	t.Start += set.drop
	return t
}

// floor is what the rope above the lock pulls the arbor up with when it just hangs slack from the next stop.
func (set *atRest) floor(upper *corner) float64 {
	comes := upper.in[0]
	return (-set.drop - comes.Start) / comes.Rate
}

// idler is what the idler's parts may pull with: its weight or base tension, or more, where it is held and the rope above the
// lock has gone slack, so that the rope below takes all that the arbor wants.
func (set *atRest) idler(lower *corner) ends {
	sum := set.lower.sum
	if !set.base || !set.slack {
		return sum
	}
	foot := lower.arbor
	wants := func(lifts, above float64) float64 {
		return max(sum.least, (set.weight-lifts-above-foot.Start)/foot.Rate)
	}
	floors := set.upper.extremes(set.floor)
	// The foot is pulled down: the more the arbor is to be held down, the more the idler's parts pull.
	return ends{wants(set.lifts.least, floors.least), wants(set.lifts.most, floors.most)}
}

// fillHand fills in the hand line's parts and what is asked of the lock.
func (set *atRest) fillHand(out *Rest) {
	if set.lower == nil {
		return
	}
	set.lower.fill(out.Hand.Parts, set.idler)
	set.upper.fill(out.Hand.Parts, func(c *corner) ends {
		floor := set.floor(c)
		return ends{max(set.upper.sum.least, floor), max(set.upper.sum.most, floor)}
	})
	asked, held := none(), none()
	for i := range set.lower.corners {
		lower := &set.lower.corners[i]
		grip, foot := set.below(lower), lower.arbor
		for k := range set.upper.corners {
			upper := &set.upper.corners[k]
			above, floor := set.above(upper), set.floor(upper)
			for _, lifts := range [2]float64{set.lifts.least, set.lifts.most} {
				idler := set.lower.sum.least
				wants := set.weight - lifts - foot.At(idler)
				if wants < floor && set.base {
					idler, wants = (set.weight-lifts-floor-foot.Start)/foot.Rate, floor
				}
				asked = asked.with(grip.At(idler) - above.At(wants))
				held = held.with(grip.At(idler) - above.At(max(wants, floor)))
			}
		}
	}
	out.Lock = asked.band(out.Lock.Value)
	set.held = ends{-held.most, -held.least}
}

// load fills in the band of a load: the sum over the ropes. What the rope above the lock pulls with answers what the lift lines
// and the rope below leave of the arbor's weight, so that each of these counts with what it makes of that. With the rope lock
// there is its pull too: down with the tension below it, up with that above.
func (set *atRest) load(out *BlockBand, lock bool, meant func(l *laid, stop int) bool) {
	all := set.all()
	var lines []*stretch
	for _, line := range set.lift {
		if line.meets(meant) {
			lines = append(lines, line)
		}
	}
	lower, upper := lock || set.lower != nil && set.lower.meets(meant), lock || set.upper != nil && set.upper.meets(meant)
	for _, component := range [...]struct {
		band *ForceBand
		of   func(across, up rope.Straight) rope.Straight
		lock bool
	}{
		{&out.Across, func(across, _ rope.Straight) rope.Straight { return across }, false},
		{&out.Up, func(_, up rope.Straight) rope.Straight { return up }, lock},
	} {
		for _, s := range all {
			met := s.meets(meant)
			for k := range s.corners {
				c := &s.corners[k]
				if c.load = (rope.Straight{}); met {
					c.load = component.of(s.pull(c, meant))
				}
				switch {
				case !component.lock:
				case s == set.lower:
					c.load = c.load.Less(set.below(c))
				case s == set.upper:
					c.load = c.load.Plus(set.above(c))
				}
			}
		}
		total := ends{}
		if upper {
			total = set.answered(lines, lower)
		} else {
			total = set.apart(lines, lower)
		}
		*component.band = total.band(component.band.Value)
	}
}

func (set *atRest) all() []*stretch {
	if set.lower == nil {
		return set.lift
	}
	return append(slices.Clone(set.lift), set.lower, set.upper)
}

// apart is the load of lift lines and of the rope below the lock.
func (set *atRest) apart(lines []*stretch, lower bool) (sum ends) {
	for _, line := range lines {
		sum = sum.plus(line.extremes(func(c *corner) float64 { return c.load.At(line.sum.least) }))
	}
	if lower {
		e := none()
		for k := range set.lower.corners {
			c := &set.lower.corners[k]
			e = e.and(set.idler(c).along(c.load))
		}
		sum = sum.plus(e)
	}
	return sum
}

// answered is the load where the rope above the lock is among those that make it.
func (set *atRest) answered(lines []*stretch, lower bool) ends {
	total, own := none(), none()
	others := set.apart(lines, lower)
	for k := range set.upper.corners {
		upper := &set.upper.corners[k]
		answer, floor := upper.load.Rate, set.floor(upper)
		sum := ends{upper.load.At(set.weight), upper.load.At(set.weight)}
		for _, line := range set.lift {
			sum = sum.plus(line.extremes(func(c *corner) float64 {
				return c.load.At(line.sum.least) - float64(answer*c.arbor.At(line.sum.least))
			}))
		}
		idler := set.lower.sum.least
		total = total.and(sum.plus(set.lower.extremes(func(c *corner) float64 {
			return c.load.At(idler) - float64(answer*c.arbor.At(idler))
		})))
		if set.slack {
			total = total.and(others.shifted(upper.load.At(floor)))
		}
		own = own.and(ends{max(set.upper.sum.least, floor), max(set.upper.sum.most, floor)}.along(upper.load))
	}
	if !set.slack {
		return total
	}
	// What answers goes no further than to where the rope is slack.
	apart := own.plus(others)
	return ends{max(total.least, apart.least), min(total.most, apart.most)}
}
