package units

import "math"

// Near gives a comparison with a tolerance: whether a and b are at most tol apart,
// as the Within of each quantity does. It fits go-cmp, whose options for plain
// floats do nothing on a type of its own:
//
//	cmp.Diff(want, got, cmp.Comparer(units.Near(units.Millimetre)))
//
// One such option is wanted for each quantity that is compared.
func Near[Q Quantity](tol Q) func(a, b Q) bool {
	return func(a, b Q) bool { return near(a, b, tol) }
}

// near does the work of Within and Near. An infinite tol would let an infinity
// through as near to anything.
func near[Q Quantity](a, b, tol Q) bool {
	apart := math.Abs(float64(a) - float64(b))
	return apart <= float64(tol) && apart <= math.MaxFloat64
}
