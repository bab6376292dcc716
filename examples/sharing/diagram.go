package main

import (
	"slices"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// answers is how the lines share the load, and shear and moment along the pipe.
type answers struct {
	load.Share
	hangs load.Hang // the batten too
	cuts  []load.Cut
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
	a.cuts, err = rigged.Cuts(trim, places(batten, hang)...)
	return a, err
}

// places are those that are looked at: the lines, where items begin and end, and many between.
func places(batten load.Batten, hang load.Hang) (at []units.Length) {
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
