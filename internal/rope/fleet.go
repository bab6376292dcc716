package rope

import "math"

// FleetAngle is the angle, from 0 to π/2, between a rope and the plane of the sheave
// it runs to: its far end stands off that plane by offset at a distance of lead.
// Neither is negative, lead is not zero.
func FleetAngle(offset, lead float64) float64 { return arctan(offset / lead) }

// FleetOffset is the reverse, for an angle of 0 to π/4.
func FleetOffset(angle, lead float64) float64 {
	s := sin(angle)
	return lead * (s / math.Sqrt((1-s)*(1+s)))
}
