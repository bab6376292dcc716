package arbor

import (
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Section is the house cut open along its centre line: who looks up, and the edges
// of the masking that they look under. Distances are from one line across the
// stage, such as the plaster line; upstage is positive. Heights are above the deck.
// It is plane geometry: seats off the centre line, and what they see past the
// ends of a border, are not looked at.
type Section struct {
	Seats []Seat `json:"seats"` // those with the worst view upwards; at least one
	Edges []Edge `json:"edges"` // at least one
}

// Seat is the eye of somebody in the audience.
type Seat struct {
	Name     string       `json:"name"`         // such as "row A"
	Distance units.Length `json:"distance"`     // from the line out into the house
	Eye      units.Length `json:"eye,omitzero"` // height of the eye above the deck; negative: below it
}

// Edge is the lower edge of something that masks what is above it as far up as
// anybody sees: the proscenium or its header, or a border that overlaps with the
// masking before it.
type Edge struct {
	Name    string       `json:"name"`             // such as "proscenium"
	Upstage units.Length `json:"upstage,omitzero"` // from the line; negative: downstage of it
	Height  units.Length `json:"height"`           // of the lower edge, above the deck
}

// Hidden is the height above which nothing at one place upstage is seen from any
// of the seats.
type Hidden struct {
	Upstage units.Length `json:"upstage"` // from the line
	Height  units.Length `json:"height"`  // above the deck: what is all above this is out of sight
	Seat    string       `json:"seat"`    // the seat that sees highest there
	Edge    string       `json:"edge"`    // the edge that this seat looks under
}

// Trim is the lowest trim at which a drop is out of sight whose lower edge hangs so
// far below the batten.
func (h Hidden) Trim(drop units.Length) units.Length {
	return metres(nanometres(h.Height) + nanometres(drop))
}

const shortestSight = units.Centimetre

// Validate reports all that is wrong with the section, joined: *units.FieldError
// with paths from the section itself.
func (s Section) Validate() error {
	var p check.Problems
	front := highestRoom // the nearest seat
	for i, seat := range s.Seats {
		var one check.Problems
		within(&one, "distance", seat.Distance, shortestSight, highestRoom, "the distance from the line out into the house")
		height(&one, "eye", seat.Eye)
		front = min(front, seat.Distance)
		p.Within("seats["+strconv.Itoa(i)+"]", quoted(seat.Name), one.Err())
	}
	if len(s.Seats) == 0 {
		p.Add("seats", "", "at least one seat, that with the worst view upwards", units.ErrMissing)
	}
	if len(s.Edges) == 0 {
		p.Add("edges", "", "at least one lower edge of masking", units.ErrMissing)
	}
	seats := p.Err() == nil
	for i, e := range s.Edges {
		var one check.Problems
		if height(&one, "upstage", e.Upstage) && seats && nanometres(e.Upstage)+nanometres(front) < nanometres(shortestSight) {
			one.Add("upstage", check.Show(e.Upstage), "more than "+check.Show(-front)+": before every seat", units.ErrOutOfRange)
		}
		height(&one, "height", e.Height)
		p.Within("edges["+strconv.Itoa(i)+"]", quoted(e.Name), one.Err())
	}
	return p.Err()
}

// Hidden gives the height above which a drop at a place upstage is out of sight.
// Each seat looks past the edge, of those not upstage of the drop, that cuts off
// most for it; the seat that sees highest decides. Of equals the first decides.
//
// The error joins a *units.FieldError for everything that is wrong: a fault of the
// section, or under "upstage" a drop with no edge before it.
func (s Section) Hidden(upstage units.Length) (Hidden, error) {
	var p check.Problems
	p.Within("", "", s.Validate())
	if height(&p, "upstage", upstage) && p.Err() == nil && !s.masks(upstage) {
		p.Add("upstage", check.Show(upstage), "a place upstage of an edge, or under it", units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return Hidden{}, err
	}
	out, seen := Hidden{Upstage: upstage}, int64(math.MinInt64)
	for _, seat := range s.Seats {
		if cut, edge := s.cut(seat, upstage); cut > seen {
			seen, out.Seat, out.Edge = cut, seat.Name, edge.Name
		}
	}
	out.Height = metres(seen)
	return out, nil
}

func (s Section) masks(upstage units.Length) bool {
	for _, e := range s.Edges {
		if e.Upstage <= upstage {
			return true
		}
	}
	return false
}

// cut is how high a seat sees at a place upstage, and under which edge: by similar
// triangles eye + (edge − eye)·(seat to drop)/(seat to edge).
func (s Section) cut(seat Seat, upstage units.Length) (int64, Edge) {
	lowest, by := int64(math.MaxInt64), Edge{}
	for _, e := range s.Edges {
		if e.Upstage > upstage {
			continue
		}
		eye, out := nanometres(seat.Eye), nanometres(seat.Distance)
		rise := mulDiv(nanometres(e.Height)-eye, uint64(out+nanometres(upstage)), uint64(out+nanometres(e.Upstage)), nearest)
		if eye+rise < lowest {
			lowest, by = eye+rise, e
		}
	}
	return lowest, by
}

// Hiding tells whether a set takes a drop out of sight.
type Hiding struct {
	Hidden Hidden       `json:"hidden"`
	Drop   units.Length `json:"drop"`  // from the batten down to the drop's lower edge
	Trim   units.Length `json:"trim"`  // the lowest trim at which the drop is out of sight
	Spare  units.Length `json:"spare"` // the highest trim that the set reaches less that; negative: the drop stays in sight by so much
}

// Out tells whether the set takes the drop out of sight. One that just does so,
// with nothing to spare, does.
func (h Hiding) Out() bool { return h.Spare >= 0 }

// Hides tells whether the set takes a drop out of sight that hangs at a place
// upstage, its lower edge so far below the batten. Errors are those of
// Section.Hidden, with those of the drop under "drop".
func (f Flight) Hides(s Section, upstage, drop units.Length) (Hiding, error) {
	var p check.Problems
	hidden, err := s.Hidden(upstage)
	p.Within("", "", err)
	if check.NotNegative(&p, "drop", drop) && drop > highestRoom {
		p.Add("drop", check.Show(drop), "at most "+check.Show(highestRoom), units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return Hiding{}, err
	}
	trim := hidden.Trim(drop)
	return Hiding{Hidden: hidden, Drop: drop, Trim: trim, Spare: metres(nanometres(f.Highest) - nanometres(trim))}, nil
}
