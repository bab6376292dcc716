package purchase

import (
	"iter"
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/slab"
	"example.com/steelyard/units"
)

// validate looks at every rope by itself, and at the blocks that they share.
func (r Reeving) validate() (blocks, error) {
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
		return blocks{}, p.Err()
	}
	for i, rp := range r.ropes() {
		off, why := Idler, "a body other than the idler, which only the hand line keeps"
		if i == len(r.Lift) {
			off, why = Batten, "a body other than the batten, which only lift lines carry"
		}
		if err := rp.validate(off, why); err != nil {
			p.Within(ropeField(i, len(r.Lift)), strconv.Quote(rp.Name), err)
		}
	}
	found := r.findBlocks(&p)
	return found, p.Err()
}

// ropes are the lift lines and then the hand line, if there is one.
func (r Reeving) ropes() iter.Seq2[int, *Rope] {
	return func(yield func(int, *Rope) bool) {
		for i := range r.Lift {
			if !yield(i, &r.Lift[i]) {
				return
			}
		}
		if len(r.Hand.Path) > 0 {
			yield(len(r.Lift), &r.Hand)
		}
	}
}

// stops is how many all ropes have together.
func (r Reeving) stops() (n int) {
	for i := range r.Lift {
		n += len(r.Lift[i].Path)
	}
	return n + len(r.Hand.Path)
}

// copied is the same with slices of its own.
func (r Reeving) copied() Reeving {
	stops := make([]Stop, r.stops())
	own := func(path []Stop) []Stop {
		to := slab.Take(&stops, len(path))
		copy(to, path)
		return to
	}
	r.Lift = slices.Clone(r.Lift)
	for i := range r.Lift {
		r.Lift[i].Path = own(r.Lift[i].Path)
	}
	r.Hand.Path = own(r.Hand.Path)
	return r
}

// validate looks at one rope by itself. Off is the body that it must keep off, and
// why says so.
func (rp Rope) validate(off Body, why string) error {
	var p check.Problems
	check.NotNegative(&p, "mass", rp.Mass)
	rp.Diameter = checkDiameter(&p, "diameter", rp.Diameter)
	switch n := len(rp.Path); {
	case n < 2:
		p.Add("path", strconv.Itoa(n)+" stops", "at least its two ends", units.ErrMissing)
	case n > maxStops:
		p.Add("path", strconv.Itoa(n)+" stops", "at most "+strconv.Itoa(maxStops), units.ErrOutOfRange)
		return p.Err()
	}
	for i := range rp.Path {
		if plain(rp.Path, i, off) {
			continue
		}
		if err := rp.validateStop(i, off, why); err != nil {
			p.Within("path["+strconv.Itoa(i)+"]", "", err)
		}
	}
	return p.Err()
}

// farthest is the largest length that check.Finite takes.
const farthest = 1e12 * units.Metre

// placed tells whether a stop is anywhere.
func placed(s *Stop) bool {
	return units.Abs(s.Across) <= farthest && units.Abs(s.Height) <= farthest
}

// plain tells of most stops that nothing is wrong with them, without a word for it.
func plain(path []Stop, i int, off Body) bool {
	s := &path[i]
	switch {
	case s.On >= bodies || s.On == off || s.Name == "" || s.Offset != 0 || s.Tread != 0 || s.Rim != 0:
		return false
	case !placed(s):
		return false
	case i > 0 && s.On == path[i-1].On && s.Across == path[i-1].Across && s.Height == path[i-1].Height:
		return false
	}
	return s.Drag == 0 || i > 0 && i < len(path)-1 && s.Drag > 0 && s.Drag < mostDrag
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
	if checkOffset(&p, "offset", s.Offset) && s.On == Batten && s.Offset != 0 {
		p.Add("offset", check.Show(s.Offset), "none: the batten hangs plumb under its blocks", units.ErrOutOfRange)
	}
	if s.Drag.fault(&p, "drag") && end && s.Drag != 0 {
		p.Add("drag", plainText(float64(s.Drag)), "none: an end has no sheave", units.ErrOutOfRange)
	}
	if check.NotNegative(&p, "rim", s.Rim) && end && s.Rim != 0 {
		p.Add("rim", check.Show(s.Rim), "none: an end has no sheave", units.ErrOutOfRange)
	}
	switch {
	case !end:
		checkTread(&p, "tread", s.Tread, rp.Diameter)
	case s.Tread != 0 && check.Finite(&p, "tread", s.Tread):
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

func stopField(rope, at, lifts int) string {
	return ropeField(rope, lifts) + ".path[" + strconv.Itoa(at) + "]"
}
