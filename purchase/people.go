package purchase

import "example.com/steelyard/units"

// Pulls that people can be asked for, as examples with their sources: what a hand
// line asks can be held against one of them. None is a default or a rating, and none was
// measured on a hand line: people differ, footing, grip and fatigue count, and a
// hand line is pulled downward as well as toward oneself.
//
// The first four are guideline figures of HSE L23 (manual handling, the push and
// pull assessment) for moving a load along a floor, with the hands between knuckle and
// shoulder height and no further than about 20 m; printed as masses.
const (
	StartingPullMen   = 20 * units.KilogramForce // to start or stop it; printed beside it as about 200 N
	StartingPullWomen = 15 * units.KilogramForce // about 150 N
	SteadyPullMen     = 10 * units.KilogramForce // to keep it moving; about 100 N
	SteadyPullWomen   = 7 * units.KilogramForce  // about 70 N

	// Upper limits of a horizontal force. Source: Ergonomic Design for People at Work,
	// vol. 2 (1986), as quoted on a page of tables.
	StandingPullLimit = 225 * units.Newton // with the whole body; printed beside it as 50 lbf
	ArmPullLimit      = 110 * units.Newton // with arm and shoulder, arms out; 24 lbf

	// Two hands pulling straight down, mostly for sustained work. Source: car industry guidelines
	// on a page for learning ergonomics.
	DownwardPull = 24 * units.PoundForce

	// The most that was pulled without motion at an overhead reach, not what can be asked
	// for. Source: Int. J. Occupational Safety and Ergonomics 10(1), 2004.
	OverheadMostMen   = 400 * units.Newton
	OverheadMostWomen = 244 * units.Newton // standing
)
