package lineset

import (
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Report is every answer about a set as plain data, to be written as JSON for
// another program. It is not read back: rig the set again.
type Report struct {
	Name          string        `json:"name"`
	Purchase      purchase.Kind `json:"purchase"`
	Hang          load.Hang     `json:"hang"`
	Batten        units.Mass    `json:"batten"` // with nothing on it
	Hung          units.Mass    `json:"hung"`   // all that hangs, whether carried or not
	Counterweight Counterweight `json:"counterweight"`
	Balance       Balance       `json:"balance"`
	Travel        Travel        `json:"travel"`
	Low           State         `json:"low"`       // at low trim, as far as it is reached
	High          State         `json:"high"`      // at high trim, as far as it is reached
	LowHand       Hand          `json:"low_hand"`  // what the hands feel at Low
	HighHand      Hand          `json:"high_hand"` // what they feel at High
	Checks        []Check       `json:"checks"`
	Exceeds       bool          `json:"exceeds"` // some check exceeds its limit
}

// HouseReport is every answer about a house as plain data, to be written as
// JSON. It is not read back: rig the house again.
type HouseReport struct {
	Name    string   `json:"name"`
	Sets    []Report `json:"sets"`
	Totals  Totals   `json:"totals"`
	Caution string   `json:"caution"` // see the constant Caution
}

// Caution stands on every printed or stored result.
const Caution = "Overhead lifting can kill. These figures are for planning and teaching, at rest, without shock, and with drag in the hand pulls only. " +
	"Local codes, the manufacturers' ratings and a licensed engineer or qualified rigger on site decide."

// Report gives every answer about the set.
func (r *Rigged) Report() Report {
	low, high := r.ends()
	return Report{
		Name: r.set.Name, Purchase: r.set.Rigging.Purchase, Hang: r.set.Hang, Batten: r.Bare(), Hung: r.Hung(),
		Counterweight: r.counter, Balance: r.Balance(), Travel: r.travel, Low: low.state, High: high.state,
		LowHand: low.hand, HighHand: high.hand,
		Checks: r.Checks(), Exceeds: r.Exceeds(),
	}
}

// Report gives every answer about the house.
func (r *RiggedHouse) Report() HouseReport {
	out := HouseReport{Name: r.house.Name, Sets: make([]Report, len(r.sets)), Caution: Caution}
	for i, s := range r.sets {
		out.Sets[i] = s.Report()
	}
	out.Totals = r.totals(func(set int) *State { return &out.Sets[set].High })
	return out
}

// Exceeds tells whether any set exceeds a limit, or all of them together take
// more pieces than are in stock.
func (r *RiggedHouse) Exceeds() bool {
	t := r.Totals()
	for _, c := range t.Pieces {
		if c.Short() > 0 {
			return true
		}
	}
	return t.Exceeding > 0
}
