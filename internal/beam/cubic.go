package beam

import "math"

// cubic is a polynomial of the third degree over 0 to 1, from the constant up.
type cubic [4]float64

// cubicOf goes through four values at 0, 1/3, 2/3 and 1.
func cubicOf(a, b, c, d float64) cubic {
	return cubic{
		a,
		float64(-5.5*a) + float64(9*b) - float64(4.5*c) + d,
		float64(9*a) - float64(22.5*b) + float64(18*c) - float64(4.5*d),
		float64(-4.5*a) + float64(13.5*b) - float64(13.5*c) + float64(4.5*d),
	}
}

func (c cubic) at(u float64) float64 {
	return c[0] + float64(u*(c[1]+float64(u*(c[2]+float64(u*c[3])))))
}

// stationary gives where within 0 to 1 the slope is zero, increasing, and how many there are.
func (c cubic) stationary() (at [2]float64, count int) {
	// c1 + 2·c2·u + 3·c3·u², without the difference of nearly equal numbers.
	half, third := c[2], 3*c[3]
	square := float64(half*half) - float64(third*c[1])
	if !(square >= 0) {
		return at, 0
	}
	q := -(half + math.Copysign(math.Sqrt(square), half))
	for _, u := range [2]float64{q / third, c[1] / q} {
		if u > 0 && u < 1 { // and a number
			at[count] = u
			count++
		}
	}
	if count == 2 && at[0] > at[1] {
		at[0], at[1] = at[1], at[0]
	}
	return at, count
}

// slopeOfQuartic is the slope of the quartic through five values at 0, 1/4, 1/2, 3/4 and 1.
func slopeOfQuartic(f [5]float64) cubic {
	// Newton's form in t = 4u, by differences.
	d1 := f[1] - f[0]
	d2 := (f[2] - f[1]) - d1
	d3 := (f[3] - f[2]) - (f[2] - f[1]) - d2
	d4 := (f[4] - f[3]) - (f[3] - f[2]) - ((f[3] - f[2]) - (f[2] - f[1])) - d3
	// From t(t−1)/2, t(t−1)(t−2)/6 and t(t−1)(t−2)(t−3)/24, each differentiated.
	return cubic{
		4 * (d1 - d2/2 + d3/3 - d4/4),
		16 * (d2 - d3 + float64(11*d4/12)),
		64 * (d3/2 - float64(3*d4/4)),
		256 * d4 / 6,
	}
}

// positive gives the stretch about 1/2 on which the cubic is no less than −small. It
// ends where the cubic is zero.
func (c cubic) positive(small float64) (lo, hi float64) {
	at, count := c.stationary()
	marks := append(append([]float64{0}, at[:count]...), 1)
	lo, hi = 0, 1
	if c.at(0.5) < -small {
		return 0.5, 0.5
	}
	last := 0.5
	for _, u := range marks { // to the right
		if u <= 0.5 {
			continue
		}
		if c.at(u) < -small {
			hi = c.zero(last, u)
			break
		}
		last = u
	}
	last = 0.5
	for i := len(marks) - 1; i >= 0; i-- {
		u := marks[i]
		if u >= 0.5 {
			continue
		}
		if c.at(u) < -small {
			lo = c.zero(last, u)
			break
		}
		last = u
	}
	return lo, hi
}

// zero is where the cubic, which goes one way from good to bad, passes zero; where it is below zero at
// good already, that is good itself.
func (c cubic) zero(good, bad float64) float64 {
	for range 60 {
		middle := good + float64((bad-good)/2)
		if middle == good || middle == bad {
			break
		}
		if c.at(middle) >= 0 {
			good = middle
		} else {
			bad = middle
		}
	}
	return good
}
