package main

import (
	"strconv"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// The set that is timed has lines, items on its batten and trims on its balance curve, as many as these.
const (
	lines = 7
	spans = lines - 1
	items = 10
	trims = 11
)

// stock is what arbors are filled from.
func stock() arbor.Stock {
	return arbor.Stock{
		{Name: "44", Mass: 44 * units.Pound, Thickness: 2 * units.Inch, Count: 60},
		{Name: "22", Mass: 22 * units.Pound, Thickness: 1 * units.Inch, Count: 20},
		{Name: "11", Mass: 11 * units.Pound, Thickness: 0.5 * units.Inch, Count: 20},
	}
}

// wholeSet is a double purchase set with a limit on everything. Half of what hangs is on the deck at some of its
// trims: four things pile and one stands. At no trim is a line slack, so that plain code need not look for one. Sets of
// different numbers differ by a little in all their masses.
func wholeSet(number int) lineset.Set {
	more := func(m units.Mass, k int) units.Mass { return m.Scale(1 + float64((number*(k+3))%17)/200) }
	given := func(f units.Force) lineset.ForceLimit {
		return lineset.ForceLimit{Max: f, Basis: "given for the benchmark"}
	}
	s := lineset.Set{
		Name: "set " + strconv.Itoa(number+1),
		Low:  5 * units.Foot, High: 44 * units.Foot, Balance: lineset.Even,
		Rigging: lineset.Rigging{
			Purchase: purchase.Double,
			Batten: load.Batten{
				Length: 64 * units.Foot,
				Pipe: load.Tube{
					Outer: 1.9 * units.Inch, Wall: 0.145 * units.Inch,
					Density: load.PipeSteelDensity, Modulus: load.SteelModulusUS,
				},
				Lines: load.Spaced(2*units.Foot, 10*units.Foot, lines),
			},
			Offset: 7 * units.Foot, LoftBlocks: 54 * units.Foot, HeadBlock: 55 * units.Foot, DeadEnds: 55.5 * units.Foot,
			Rail: 21 * units.Foot, Idler: lineset.Idler{Height: 19.5 * units.Foot, Mass: 90 * units.Pound},
			Run: arbor.Run{LowerStop: 22 * units.Foot, UpperStop: 53 * units.Foot},
			Arbor: arbor.Frame{
				Tare: 96 * units.Pound, Length: 8 * units.Foot, Room: 75 * units.Inch, Capacity: 2000 * units.Pound,
				Plate: arbor.Plate{Mass: 2.5 * units.Pound, Thickness: 0.125 * units.Inch, Every: 24 * units.Inch},
			},
			LiftLine: 11 * units.PoundPerHundredFeet, HandLine: 16.7 * units.PoundPerHundredFeet,
			Drag:    purchase.AntiFrictionBearings,
			MadeOff: 4 * units.Foot,
			Limits: lineset.Limits{
				LiftLine: given(700 * units.PoundForce), LoftBlock: given(900 * units.PoundForce), HeadBlock: given(5000 * units.PoundForce),
				DeadEnd: given(700 * units.PoundForce), OutOfBalance: given(150 * units.PoundForce), RopeLock: given(150 * units.PoundForce),
				HandPull: given(200 * units.PoundForce),
				Pipe:     lineset.StressLimit{Max: 21 * units.KipPerSquareInch, Basis: "given for the benchmark"},
			},
		},
		Hang: load.Hang{
			{Name: "border", Mass: 90 * units.Pound, From: 1 * units.Foot, To: 63 * units.Foot},
			{Name: "near leg", Mass: 40 * units.Pound, From: 3 * units.Foot, To: 9 * units.Foot, Height: 16 * units.Foot, OnDeck: load.Piles},
			{Name: "far leg", Mass: 40 * units.Pound, From: 55 * units.Foot, To: 61 * units.Foot, Height: 16 * units.Foot, OnDeck: load.Piles},
			{Name: "fixture one", Mass: 22 * units.Pound, From: 10.5 * units.Foot, To: 10.5 * units.Foot},
			{Name: "fixture two", Mass: 31 * units.Pound, From: 27 * units.Foot, To: 27 * units.Foot},
			{Name: "fixture three", Mass: 27 * units.Pound, From: 46.25 * units.Foot, To: 46.25 * units.Foot},
			{Name: "cable tail", Mass: 24 * units.Pound, From: 1 * units.Foot, To: 1 * units.Foot},
			{Name: "gauze", Mass: 55 * units.Pound, From: 14 * units.Foot, To: 51 * units.Foot, Below: 1 * units.Foot, Height: 20 * units.Foot, OnDeck: load.Piles},
			{Name: "cut cloth", Mass: 48 * units.Pound, From: 18 * units.Foot, To: 33 * units.Foot, Below: 2 * units.Foot, Height: 18 * units.Foot, OnDeck: load.Piles},
			{Name: "flat", Mass: 60 * units.Pound, From: 34 * units.Foot, To: 44 * units.Foot, Below: 1 * units.Foot, Height: 10 * units.Foot, OnDeck: load.Stands},
		},
	}
	for k := range s.Hang {
		s.Hang[k].Mass = more(s.Hang[k].Mass, k)
	}
	return s
}
