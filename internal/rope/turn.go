package rope

import "math"

// Turn is the angle, from 0 to π, by which the path turns at stop i: that of the
// rope's contact with a sheave there. It is exactly 0 for a straight run and
// exactly π where the rope comes back beside itself. At an end there is none.
//
// With u and v the directions of the two parts it is 2·arctan(|v − u|/|v + u|),
// which loses no digits at small turns, as the arc cosine of u·v would.
func (p Path) Turn(i int, h *Heights) float64 {
	if i <= 0 || i >= len(p)-1 {
		return 0
	}
	ux, uz, _ := p.Part(i-1, h)
	vx, vz, _ := p.Part(i, h)
	norm := func(x, z float64) float64 { return math.Sqrt(float64(x*x) + float64(z*z)) }
	apart, along := norm(vx-ux, vz-uz), norm(vx+ux, vz+uz)
	switch {
	case apart == 0:
		return 0
	case along <= apart*1e-15:
		return math.Pi
	}
	return 2 * arctan(apart/along)
}
