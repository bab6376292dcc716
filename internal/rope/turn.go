package rope

import "math"

// Turn is the angle, from 0 to π, by which the path turns at stop i: that of the
// rope's contact with a sheave there. It is exactly 0 for a straight run and
// exactly π where the rope comes back beside itself. At an end there is none.
func (p Path) Turn(i int, h *Heights) float64 {
	if i <= 0 || i >= len(p)-1 {
		return 0
	}
	ux, uz, _ := p.Part(i-1, h)
	vx, vz, _ := p.Part(i, h)
	return Turn(ux, uz, vx, vz)
}

// Turn is the angle between two directions u and v, 2·arctan(|v − u|/|v + u|), which loses no digits at small turns, as the arc
// cosine of u·v would.
func Turn(ux, uz, vx, vz float64) float64 {
	apart, along := between(ux, uz, vx, vz)
	switch {
	case apart == 0:
		return 0
	case along <= apart*1e-15:
		return math.Pi
	}
	return 2 * arctan(apart/along)
}

// Turns reports whether a path turns by more than an angle well below 1 from one direction to another. It is Turn without the
// arctangent, which falls short of its argument by a third of the cube at most: what is surely more is not worked out.
func Turns(ux, uz, vx, vz, least float64) bool {
	apart, along := between(ux, uz, vx, vz)
	switch {
	case apart == 0:
		return false
	case apart > float64(along*least):
		return true
	}
	return 2*arctan(apart/along) > least
}

// between gives |v − u| and |v + u|.
func between(ux, uz, vx, vz float64) (apart, along float64) {
	norm := func(x, z float64) float64 { return math.Sqrt(float64(x*x) + float64(z*z)) }
	return norm(vx-ux, vz-uz), norm(vx+ux, vz+uz)
}
