package main

import (
	"slices"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// answers is how the lines share the load, and shear and moment at places along the pipe.
type answers struct {
	load.Share
	hangs  load.Hang // the batten too
	at     []units.Length
	shear  []units.Force
	moment []units.Moment
}

func answer(rig func() (*load.Rigged, error), batten load.Batten, hang load.Hang, trim units.Length) (a answers, err error) {
	rigged, err := rig()
	if err != nil {
		return a, err
	}
	if a.Share, err = rigged.Share(trim); err != nil {
		return a, err
	}
	a.hangs = append(load.Hang{{Name: "batten with fittings", Mass: rigged.Bare(), To: batten.Length}}, hang...)
	a.diagrams(cuts(batten, hang))
	return a, nil
}

// diagrams walks along the pipe from the end nearer the arbor, as on paper: at any cut the shear is what the lines up to there
// pull, less the weight of what hangs up to there; and the moment grows by the shear over every step.
func (a *answers) diagrams(cuts []units.Length) {
	for _, x := range cuts {
		for _, past := range []bool{false, true} { // just before a place, and just past it
			var shear units.Force
			for _, line := range a.Lines {
				if line.At < x || past && line.At == x {
					shear += line.Tension
				}
			}
			for _, item := range a.hangs {
				shear -= item.Carried(a.Trim).Weight(units.StandardGravity).Scale(before(item, x, past))
			}
			var moment units.Moment
			n := len(a.at)
			if past && a.shear[n-1] == shear {
				continue // nothing hangs or pulls at just this place
			}
			if n > 0 {
				moment = a.moment[n-1] + (a.shear[n-1] + shear).Scale(0.5).Moment(x-a.at[n-1])
			}
			a.at, a.shear, a.moment = append(a.at, x), append(a.shear, shear), append(a.moment, moment)
		}
	}
}

// before is the share of an item that hangs before a place.
func before(item load.Item, x units.Length, past bool) float64 {
	switch {
	case item.From < x && x < item.To:
		f := units.Ratio(x-item.From, item.To-item.From)
		return f * (1 - item.Taper*(1-f))
	case item.To < x || past && item.To == x || item.From < item.To && item.To == x:
		return 1
	}
	return 0
}

// cuts are the places that are looked at: the lines, where items begin and end, and many between.
func cuts(batten load.Batten, hang load.Hang) (at []units.Length) {
	const steps = 210
	for i := range steps {
		at = append(at, batten.Length.Scale(float64(i)/steps))
	}
	at = append(at, batten.Length)
	for _, line := range batten.Lines {
		at = append(at, line.At)
	}
	for _, item := range hang {
		at = append(at, item.From, item.To)
	}
	slices.Sort(at)
	return slices.Compact(at)
}
