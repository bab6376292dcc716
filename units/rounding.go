package units

// Rounding says which of the two neighbouring steps is shown for a value between
// them. The zero Rounding is HalfAway, and one that is not listed here counts as it.
//
// What was typed with no more places than are shown keeps its digits under every
// Rounding: 12.5 lb to one place is 12.5 lb, and not 12.6 lb because the nearest
// float64 lies a hair above it. The test is whether [Parse] would read the shown
// number as the same value.
type Rounding uint8

const (
	HalfAway     Rounding = iota // the nearest step, and away from zero in a tie: as people round
	HalfEven                     // the nearest step, and the even one in a tie: no drift in long columns
	AwayFromZero                 // the larger in size: a load is never shown as less than it is
	TowardZero                   // the smaller in size: a limit is never shown as more than it is
)

// up reports whether a count of whole steps grows by one for what is left. What
// is exact is left alone, by a caller who knows it.
func (r Rounding) up(n uint64, left part) bool {
	switch r {
	case HalfEven:
		return left == overHalf || left == half && n%2 == 1
	case AwayFromZero:
		return left != nothing
	case TowardZero:
		return false
	}
	return left >= half
}

// directed reports whether r goes to one side, however near the other step is.
func (r Rounding) directed() bool { return r == AwayFromZero || r == TowardZero }
