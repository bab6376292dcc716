package stack

import "math"

const (
	// MaxKinds is the most kinds of piece that a Problem may have.
	MaxKinds = 32
	// Unlimited stands for no limit of mass, height or count.
	Unlimited = 1 << 60
	// maxMass bounds one piece and one plate, maxWanted the wish: with them no
	// sum in the search leaves int64.
	maxMass   = 1 << 50
	maxWanted = 1 << 57
)

// Kind is a kind of piece: its mass and thickness, both more than 0, and how
// many there are.
type Kind struct {
	Mass, Thickness int64
	Count           int64
}

// Plate is the spreader plate: one lies under the first piece and one more
// after each full Every of stacked piece thickness. The zero Plate is none.
type Plate struct {
	Mass, Thickness int64
	Every           int64
}

// Under is how many plates go with pieces of this thickness, 0 or more.
func (p Plate) Under(thickness int64) int64 {
	if p.Every == 0 || thickness <= 0 {
		return 0
	}
	return 1 + thickness/p.Every
}

// Problem asks for pieces and plates whose mass is as close to Wanted as can be
// without passing MaxMass and MaxHeight. Heavy allows a result above Wanted,
// Light one below; exactly Wanted is always allowed.
//
// Kinds stand in the caller's order of preference: of choices that are equal in
// all else, the one with more of an earlier kind wins. The search is fast when
// that order is by falling mass.
type Problem struct {
	Kinds              []Kind
	Wanted             int64
	MaxMass, MaxHeight int64
	Plate              Plate
	Heavy, Light       bool

	Room []int64 // for the Count of the Choice; where it is not enough, more is asked for
}

// Choice is what Best or Refill found. Count goes with Problem.Kinds; Mass and
// Height include the plates; Error is Mass less Wanted. Without Found nothing that
// is allowed was found, and the rest is zero. Proven says that the search ran to
// its end: no choice is better or, without Found, there is none. Gap bounds how
// much less than |Error| another choice's error could be; it is zero where Proven.
type Choice struct {
	Count        []int64
	Pieces       int64
	Plates       int64
	Mass, Height int64
	Error        int64
	Gap          int64
	Found        bool
	Proven       bool
	Nodes        int
}

// valid reports whether the numbers are such that no sum can overflow.
func (p *Problem) valid() bool {
	if len(p.Kinds) > MaxKinds || p.Wanted < -maxWanted || p.Wanted > maxWanted {
		return false
	}
	for _, k := range p.Kinds {
		if k.Mass < 1 || k.Mass > maxMass || k.Thickness < 1 || k.Thickness > maxMass || k.Count < 0 {
			return false
		}
	}
	pl := p.Plate
	return pl == Plate{} || pl.Mass >= 0 && pl.Mass <= maxMass && pl.Thickness >= 0 && pl.Thickness <= maxMass && pl.Every >= 1 && pl.Every <= Unlimited
}

// overshoot bounds by how much the best choice can be too heavy. If one is too
// heavy by more than a piece and the plates that go with it, then taking that
// piece out gives a lighter choice that still fits and is still not too light,
// so it was not the best.
func (p *Problem) overshoot() int64 {
	var most int64
	for _, k := range p.Kinds {
		o := k.Mass
		if p.Plate.Every > 0 {
			o = min(Unlimited, o+product(ceilDiv(k.Thickness, p.Plate.Every)+1, p.Plate.Mass))
		}
		most = max(most, o)
	}
	return most
}

// product is a·b for a, b ≥ 0, at most Unlimited.
func product(a, b int64) int64 {
	if b != 0 && a > Unlimited/b {
		return Unlimited
	}
	return a * b
}

// floorDiv and ceilDiv round to minus and plus infinity; b is positive.
func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

func ceilDiv(a, b int64) int64 {
	q := a / b
	if a%b > 0 {
		q++
	}
	return q
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func abs(a int64) int64 {
	if a < 0 {
		return -a
	}
	return a
}

const none = math.MaxInt64
