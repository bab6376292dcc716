package arbor

import (
	"sort"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// A pile is a Stack seen as heights: where its pieces lie, in whole nanometres
// above the underside of the lowest. Pieces are counted from 0 at the bottom.
type pile struct {
	courses []course
	plate   plateNm
	pieces  int
	height  int64
}

// course is the pieces of one row of a stack.
type course struct {
	row   Row
	show  bool
	first int   // number of its lowest piece
	each  int64 // thickness
	under int64 // thickness of pipe weight under it, and of show weight
	shown int64
}

type plateNm struct{ thickness, every int64 }

// height of the plates that lie under the top of so much show weight, where any
// show weight lies on it.
func (p plateNm) under(show int64) int64 {
	if p.every == 0 {
		return 0
	}
	return p.thickness * (1 + show/p.every)
}

// pileOf lays a stack in a frame that was found right. It refuses one that is
// taller than the room: then none of its heights would hold. So no sum here can
// overflow, and nothing takes longer the more pieces there are.
func pileOf(s Stack, f Frame) (pile, error) {
	var p check.Problems
	out := pile{plate: plateNm{nanometres(f.Plate.Thickness), nanometres(f.Plate.Every)}}
	room := nanometres(f.Room) - nanometres(f.Lock.Thickness)
	var pipe, show int64
	tall := false
	add := func(field string, rows []Row, height *int64, isShow bool) {
		for i, r := range rows {
			var one check.Problems
			if within(&one, "thickness", r.Thickness, thinnestPiece, thickestPiece, "the thickness of one piece") && r.Count < 0 {
				one.Add("count", strconv.Itoa(r.Count), "0 or more", units.ErrNegative)
			}
			if err := one.Err(); err != nil {
				p.Within(field+"["+strconv.Itoa(i)+"]", quoted(r.Name), err)
				continue
			}
			each := nanometres(r.Thickness)
			if int64(r.Count) > (room-pipe-show)/each {
				tall = true
				continue
			}
			if r.Count > 0 {
				out.courses = append(out.courses, course{r, isShow, out.pieces, each, pipe, show})
				out.pieces += r.Count
				*height += each * int64(r.Count)
			}
		}
	}
	add("stack.pipe", s.Pipe, &pipe, false)
	add("stack.show", s.Show, &show, true)
	out.height = pipe + show
	if show > 0 {
		out.height += out.plate.under(show)
	}
	if p.Err() == nil && (tall || out.height > room) {
		p.Add("stack", check.Show(s.Height), "a stack within the room on the rods, "+check.Show(f.Room), units.ErrOutOfRange)
	}
	return out, p.Err()
}

// of finds the course of piece i.
func (p pile) of(i int) course {
	c := sort.Search(len(p.courses), func(c int) bool { return p.courses[c].first > i })
	return p.courses[c-1]
}

// bottom is the height of the underside of piece i, plates under it counted.
func (p pile) bottom(i int) int64 {
	c := p.of(i)
	below := int64(i-c.first) * c.each
	if !c.show {
		return c.under + below
	}
	return c.under + c.shown + below + p.plate.under(c.shown+below)
}

// top is the height of the upper side of piece i.
func (p pile) top(i int) int64 { return p.bottom(i) + p.of(i).each }

// between gives the pieces that lie wholly from low to high, as the first of them
// and the first above them: bottoms and tops both rise from piece to piece.
func (p pile) between(low, high int64) (first, end int) {
	first = sort.Search(p.pieces, func(i int) bool { return p.bottom(i) >= low })
	end = sort.Search(p.pieces, func(i int) bool { return p.top(i) > high })
	return first, max(first, end)
}
