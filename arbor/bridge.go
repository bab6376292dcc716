package arbor

import (
	"strconv"
	"strings"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Bridge is a floor from which people put pieces into arbors and take them out:
// a loading bridge, or the deck itself. The band that arms can reach is a
// matter of those who work there and of the rail and toe board they work over;
// nothing is assumed for it. That no piece is stacked on the bridge above its
// toe board is common practice, and not looked at here.
type Bridge struct {
	Name  string       `json:"name"`           // as it is called; each name once
	Floor units.Length `json:"floor,omitzero"` // height of its floor above the deck; zero: the deck itself
	Low   units.Length `json:"low,omitzero"`   // lowest that arms reach, above its floor; negative: below it; zero: down to it
	High  units.Length `json:"high"`           // highest that arms reach, above its floor
}

// check notes what is wrong with one bridge.
func (b Bridge) check(p *check.Problems) {
	if strings.TrimSpace(b.Name) == "" {
		p.Add("name", "", "what the bridge is called", units.ErrMissing)
	}
	height(p, "floor", b.Floor)
	low, high := height(p, "low", b.Low), height(p, "high", b.High)
	if !low || !high || b.High > b.Low {
		return
	}
	want := "the highest that arms reach above its floor, more than the lowest, " + check.Show(b.Low)
	if b.High == 0 {
		p.Add("high", "", want, units.ErrMissing)
	} else {
		p.Add("high", check.Show(b.High), want, units.ErrOutOfRange)
	}
}

// checkBridges notes what is wrong with the bridges of a run.
func checkBridges(p *check.Problems, bridges []Bridge) {
	for i, b := range bridges {
		var one check.Problems
		b.check(&one)
		for _, other := range bridges[:i] {
			if b.Name == other.Name && b.Name != "" {
				one.Add("name", strconv.Quote(b.Name), "a name of its own for each bridge", units.ErrDuplicate)
				break
			}
		}
		p.Within("bridges["+strconv.Itoa(i)+"]", quoted(b.Name), one.Err())
	}
}

// band gives the heights above the deck that arms reach, in whole nanometres.
func (b Bridge) band() (low, high int64) {
	floor := nanometres(b.Floor)
	return floor + nanometres(b.Low), floor + nanometres(b.High)
}

// bridge finds a bridge by its name.
func (r Run) bridge(name string) (Bridge, error) {
	var names []string
	for _, b := range r.Bridges {
		if b.Name == name {
			return b, nil
		}
		names = append(names, strconv.Quote(b.Name))
	}
	want := "a bridge of the run: " + strings.Join(names, ", ")
	if names == nil {
		want = "a run with bridges"
	}
	return Bridge{}, &units.FieldError{Field: "bridge", Value: strconv.Quote(name), Want: want, Err: units.ErrUnknown}
}
