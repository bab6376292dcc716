package purchase

import (
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// Mule is a mule block: a fixed sheave that turns one lift line between loft block
// and head block. One block with a sheave for each of several lines stands with
// each of them under the same name, on one body, and within a metre of where it stands
// with the first: its loads are added up.
type Mule struct {
	Name   string       `json:"name"`        // not that of a block which the Layout itself names
	On     Body         `json:"on,omitzero"` // what carries it: the building (the zero value), grid, head beam or rail
	Across units.Length `json:"across"`      // from the arbor's centre line; negative beyond it
	Height units.Length `json:"height"`      // above the deck

	Offset units.Length `json:"offset,omitzero"` // of this line's sheave, off the plane of the set; zero: in it
}

// maxMules leaves room on a path for all its other stops.
const maxMules = maxStops / 2

func (l Layout) checkMules(p *check.Problems, line int, blocks *places) {
	b := &l.Loft[line]
	if n := len(b.Mules); n > maxMules {
		p.Add("mules", strconv.Itoa(n)+" mule blocks", "at most "+strconv.Itoa(maxMules), units.ErrOutOfRange)
		return
	}
	before := Mule{Across: b.Across, Height: b.Height}
	for k, m := range b.Mules {
		at := "mules[" + strconv.Itoa(k) + "]"
		switch {
		case m.Name == "":
			p.Add(at+".name", "", "a name for the mule block", units.ErrMissing)
		case l.names(m.Name):
			p.Add(at+".name", strconv.Quote(m.Name), "a name that no other block of the layout has", units.ErrDuplicate)
		}
		switch m.On {
		case Building, Grid, HeadBeam, Rail:
		case Batten, Arbor, Idler:
			p.Add(at+".on", m.On.String(), "what stands still: building, grid, head beam or rail", units.ErrOutOfRange)
		default:
			p.Add(at+".on", m.On.String(), "building, grid, head beam or rail", units.ErrUnknown)
		}
		check.Finite(p, at+".across", m.Across)
		check.Finite(p, at+".height", m.Height)
		here := place{line, k, &Stop{Name: m.Name, On: m.On, Across: m.Across, Height: m.Height}}
		if _, want := blocks.clash(here, -1, muleField); want != "" {
			p.Add(at, strconv.Quote(m.Name), want, units.ErrDuplicate)
		}
		checkOffset(p, at+".offset", m.Offset)
		if m.Across == before.Across && m.Height == before.Height {
			p.Add(at, strconv.Quote(m.Name), "a place apart from the block before it", units.ErrDuplicate)
		}
		if k == len(b.Mules)-1 && m.Across == 0 && m.Height == l.HeadBlock {
			p.Add(at, strconv.Quote(m.Name), "a place apart from the head block", units.ErrDuplicate)
		}
		before = m
	}
}

func muleField(line, k int) string {
	return "loft[" + strconv.Itoa(line) + "].mules[" + strconv.Itoa(k) + "]"
}

// names tells whether the layout itself may give a block that name.
func (l Layout) names(name string) bool {
	fixed := []string{HeadBlock, ArborTop, ArborFoot, IdlerBlock, HandDeadEnd, RailDeadEnd, HandBlock, RailBlock, RopeLock}
	for i := range l.Loft {
		fixed = append(fixed, LoftBlock(i+1), DeadEnd(i+1), BeamBlock(i+1))
	}
	return slices.Contains(fixed, name)
}

// checkTurns makes sure that a lift line turns at every sheave a Layout names: at
// one where it runs straight on, whoever gave it meant another place.
func (l Layout) checkTurns(lift []Rope) error {
	var p check.Problems
	var h rope.Heights
	h[Batten], h[Arbor] = l.Trim.In(units.Metre), l.ArborTop.In(units.Metre)
	var path rope.Path
	for i, rp := range lift {
		path = path[:0]
		for _, s := range rp.Path {
			path = append(path, rope.Stop{Body: int(s.On), X: s.Across.In(units.Metre), Z: s.Height.In(units.Metre)})
		}
		for k := 1; k <= len(l.Loft[i].Mules)+2; k++ {
			if path.Turn(k, &h) > noTurn {
				continue
			}
			at := "loft[" + strconv.Itoa(i) + "]"
			// Straight past the head block, it is the block before it that is out of place.
			if mule := min(k-2, len(l.Loft[i].Mules)-1); mule >= 0 {
				at += ".mules[" + strconv.Itoa(mule) + "]"
			}
			p.Add(at, strconv.Quote(rp.Path[k].Name), "places of the blocks at which the line turns: here it runs straight past", ErrNoTurn)
		}
	}
	return p.Err()
}

// noTurn is a turn, in radians, that no one can have meant.
const noTurn = 1e-9
