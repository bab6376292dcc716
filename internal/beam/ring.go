package beam

import "math"

// Ring gives the area, the second moment of area and the elastic section modulus of a
// circular tube:
//
//	A = π(D−t)t   I = A(D²+d²)/16   S = 2I/D
//
// with the outer diameter D, the wall t and the inner diameter d = D − 2t. A wall of half the
// diameter or more is a solid bar.
func Ring(outer, wall float64) (area, second, modulus float64) {
	if !(outer > 0 && wall > 0) {
		return 0, 0, 0
	}
	wall = min(wall, outer/2)
	inner := outer - 2*wall
	area = math.Pi * (outer - wall) * wall
	squares := float64(outer*outer) + float64(inner*inner)
	return area, area * squares / 16, area * squares / (8 * outer)
}
