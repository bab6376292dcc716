package load

import (
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Item is one thing on the batten. Its mass is spread from From to To; where they are equal it hangs at
// one point. It is spread evenly, or with a Taper so that the mass per length goes straight
// from 1 − Taper times its mean at From to 1 + Taper times at To: with 1 there is nothing at From and
// twice the mean at To, and with −1 the other way about.
//
// Below is how far under the batten its top hangs, and Height is how far it reaches
// from there to its foot. Height must be given for what piles or stands; for what hangs
// clear it may be left out and then only serves [Rigged.Lowest]. Neither is negative:
// for a piece that stands up past the batten, Below is 0 and Height what reaches under it.
type Item struct {
	Name   string       `json:"name,omitempty"`
	Mass   units.Mass   `json:"mass"`
	From   units.Length `json:"from"`           // from the batten's end nearer the arbor
	To     units.Length `json:"to"`             // the same; no less than From
	Taper  float64      `json:"taper,omitzero"` // −1 to 1: how the mass leans towards To; 0 is even
	Below  units.Length `json:"below,omitzero"`
	Height units.Length `json:"height,omitzero"`
	OnDeck OnDeck       `json:"on_deck,omitzero"`
}

// Hang is all that hangs on a batten, in any order. An empty hang is a bare batten.
type Hang []Item

// Carried is the part of the item's mass that the batten carries at the trim:
//
//	hangs    all of it
//	piles    mass · (trim − below) / height, no less than nothing and no more than all
//	stands   nothing while trim ≤ below + height, all of it above
//
// Where a standing piece lifts off, Carried is the value with its foot on the
// deck; see [Item.CarriedAbove].
func (i Item) Carried(trim units.Length) units.Mass { return i.carried(trim, false) }

// CarriedAbove is the part of the mass that is carried just above the trim: the limit of
// Carried from above. The two differ only for a standing piece, at the trim where it
// lifts off.
func (i Item) CarriedAbove(trim units.Length) units.Mass { return i.carried(trim, true) }

func (i Item) carried(trim units.Length, above bool) units.Mass {
	if i.OnDeck != Piles && i.OnDeck != Stands {
		return i.Mass
	}
	rests := i.resting()
	return rests.carried(trim, above)
}

// resting is what must be known of an item that piles or stands to tell how much of it is carried.
type resting struct {
	mass                units.Mass
	below, height, foot units.Length
	per                 units.LineMass // of a heap, for each metre of its height
	stands              bool

	arm  float64 // how far it acts from the batten's middle, m
	load int     // which of the beam's loads it is
}

func (i Item) resting() resting {
	return resting{
		mass: i.Mass, below: i.Below, height: i.Height, foot: i.foot(), per: i.Mass.Per(i.Height), stands: i.OnDeck == Stands,
	}
}

func (r *resting) carried(trim units.Length, above bool) units.Mass {
	if r.stands {
		if trim > r.foot || above && trim == r.foot {
			return r.mass
		}
		return 0
	}
	reach := trim - r.below
	if reach >= r.height {
		return r.mass
	}
	if !(reach > 0) {
		return 0
	}
	m := r.per.Over(reach)
	if m > r.mass { // by rounding
		return r.mass
	}
	return m
}

// foot is how far under the batten the item ends: the trim at which it reaches the deck.
func (i Item) foot() units.Length { return i.Below + i.Height }

// centre is where its mass acts.
func (i Item) centre() units.Length { return i.From + (i.To - i.From).Scale(0.5+i.Taper/6) }

// title is the name as it stands in an error, or nothing where there is none.
func (i Item) title() string {
	if i.Name == "" {
		return ""
	}
	return strconv.Quote(i.Name)
}

// plain tells of most items that nothing is wrong with them, without a name for each field.
func plain(i *Item, length units.Length) bool {
	if !(i.From >= 0 && i.From <= i.To && i.To <= length && i.Taper >= -1 && i.Taper <= 1) || !check.IsPositive(i.Mass) {
		return false
	}
	if i.OnDeck == Hangs && i.Height == 0 {
		return i.Below == 0
	}
	return i.OnDeck <= Stands && check.IsPositive(i.Height) && i.Below >= 0 && check.IsPositive(i.foot())
}

// faults reports what is wrong with the item on a batten of the given length;
// a length of 0 is not known.
func (i Item) faults(length units.Length) error {
	var p check.Problems
	check.Positive(&p, "mass", i.Mass, "the mass of the item")
	from := onBatten(&p, "from", i.From, length)
	to := onBatten(&p, "to", i.To, length)
	if from && to && i.From > i.To {
		p.Add("to", check.Show(i.To), "from ("+check.Show(i.From)+") or more", units.ErrOutOfRange)
	}
	if !(i.Taper >= -1 && i.Taper <= 1) {
		p.Add("taper", strconv.FormatFloat(i.Taper, 'g', -1, 64), "-1 to 1", units.ErrOutOfRange)
	}
	check.NotNegative(&p, "below", i.Below)
	switch i.OnDeck {
	case Hangs:
		check.NotNegative(&p, "height", i.Height)
	case Piles, Stands:
		if !check.IsPositive(i.Height) {
			check.Positive(&p, "height", i.Height, "how far an item that "+i.OnDeck.String()+" reaches from its top to its foot")
		}
		if p.Err() == nil {
			check.Finite(&p, "height", i.foot())
		}
	default:
		p.Add("on_deck", i.OnDeck.String(), "hangs, piles or stands", units.ErrUnknown)
	}
	return p.Err()
}
