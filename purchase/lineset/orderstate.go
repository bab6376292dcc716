package lineset

import "example.com/steelyard/units"

// OrderState is the set after one step of an order. Forces are referred to the batten, batten-heavy positive, without
// drag.
type OrderState struct {
	Step int       `json:"step"`         // counted from 1; 0 is how the order begins
	Did  OrderStep `json:"did,omitzero"` // the step, with the name and the place of its item; none for how it begins

	Trim      units.Length `json:"trim"`      // of the batten
	Hung      units.Mass   `json:"hung"`      // what hangs beside the batten, whether carried or not
	Carried   units.Mass   `json:"carried"`   // the batten and what it carries of that at this trim
	Pieces    int          `json:"pieces"`    // in the arbor, pipe weight and all
	Plates    int          `json:"plates"`    // spreader plates among them
	Arbor     units.Mass   `json:"arbor"`     // the arbor with all that is in it
	Imbalance units.Force  `json:"imbalance"` // where a standing piece just touches the deck: with it still standing; see Balance

	Locked bool        `json:"locked"`        // the rope lock is shut
	Held   units.Force `json:"held,omitzero"` // what a line that is set must hold: at the arbor the ratio times as much; the worse, as for Balance
	Hazard Hazard      `json:"hazard"`        // what the out of balance would do

	// Tips tells whether the batten tips: the centre of gravity of what it carries lies outside its outermost lift
	// lines, here or on the way. There is no limit for it that could be given.
	Tips bool `json:"tips,omitzero"`

	// Balance holds the out of balance against the limit for its side, or the held line against its own. After a
	// flight it is the worst of the way, and Trim of the check tells where. Where a standing piece leaves the deck within
	// half an inch of where the batten is halted, what is carried with it and without it counts there too: no rope holds
	// a batten nearer while hands work on it.
	Balance  Check `json:"balance"`
	Capacity Check `json:"capacity"` // of the arbor
	Room     Check `json:"room"`     // height of the stack on its rods
}

// Exceeds tells whether any of its checks exceeds its limit, or the batten tips.
func (s OrderState) Exceeds() bool {
	return s.Tips || s.Balance.Verdict == Exceeds || s.Capacity.Verdict == Exceeds || s.Room.Verdict == Exceeds
}

// OrderCheck is an order gone through.
type OrderCheck struct {
	States    []OrderState `json:"states"`     // how it begins, and after each step
	HandOvers int          `json:"hand_overs"` // changes between deck and bridge; lock, held lines and flights belong to neither
	Flights   int          `json:"flights"`    // each from one halt to the next
	Exceeds   bool         `json:"exceeds"`    // some state exceeds a limit
	Worst     int          `json:"worst"`      // which state: the first of those that exceed the most, or come nearest to a limit

	// What is left at the end: an order that loads leaves nothing to hang or add, one that strips nothing to strip or
	// take.
	ToHang  int `json:"to_hang"`  // items of the set's hang that do not hang
	ToStrip int `json:"to_strip"` // those that do
	ToAdd   int `json:"to_add"`   // pieces of the set's stack that are missing, kind by kind
	ToTake  int `json:"to_take"`  // pieces beyond the pipe weight, kind by kind

	// OnDeck is what hangs and still rests on the deck at the end: it comes onto the lines as the batten flies out, on a
	// way that the order did not go. Append a flight to have that looked at too.
	OnDeck units.Mass `json:"on_deck,omitzero"`

	// OffStop holds what rests on the stop at the end against the batten-heavy limit, as it will be once the batten leaves
	// the stop; none where nothing rests there. It is told of, and does not count in Exceeds: the order did not go there.
	OffStop Check `json:"off_stop,omitzero"`
}

// worse tells whether one check is worse than another: it exceeds and the other does not, or has used more of its
// limit.
func worse(a, b Check) bool {
	if (a.Verdict == Exceeds) != (b.Verdict == Exceeds) {
		return a.Verdict == Exceeds
	}
	if (a.Verdict == NoLimit) != (b.Verdict == NoLimit) {
		return b.Verdict == NoLimit
	}
	if a.Verdict == NoLimit {
		return false
	}
	return a.Ratio > b.Ratio+float64(tie*b.Ratio)
}
