// Package near compares numbers in tests, with a tolerance that each caller states.
package near

import "math"

// Abs tells whether a and b are at most tol apart. A number that is not finite is
// near nothing.
func Abs(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// Rel tells whether a and b are at most tol apart as a part of the larger of
// them, or of one where both are smaller. A number that is not finite is near
// nothing.
func Rel(a, b, tol float64) bool {
	larger := max(math.Abs(a), math.Abs(b), 1)
	return !math.IsInf(larger, 0) && math.Abs(a-b) <= tol*larger // an infinity would be within any part of itself
}
