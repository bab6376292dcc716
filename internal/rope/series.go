package rope

import "math"

// Sine, exponential, logarithm and arctangent as series. Those of package math are
// written in assembly on some platforms and fused on others, so that their last
// bit differs; these add and multiply in one order everywhere. Each is good to a
// few units in the last place over the range that it states.

// sin takes an angle of 0 to π/2. It is exactly 0 and 1 at the two ends.
func sin(x float64) float64 {
	if x > math.Pi/4 {
		r := math.Pi/2 - x
		return alternating(1, r*r, 0)
	}
	return alternating(x, x*x, 1)
}

// alternating is the Taylor series of the sine (from 1) or the cosine (from 0):
// each term is the one before times −x²/((n+1)(n+2)).
func alternating(term, square float64, n float64) float64 {
	sum := term
	for range 11 {
		term = -float64(term*square) / ((n + 1) * (n + 2))
		n += 2
		sum += term
	}
	return sum
}

// ln 2 in two pieces: the first has so few bits that it times a count of
// doublings is exact (the split of FreeBSD's e_exp.c).
const (
	ln2Hi = 6.93147180369123816490e-01
	ln2Lo = 1.90821492927058770002e-10
)

// exp takes 0 to 700.
func exp(x float64) float64 {
	k := math.Floor(float64(x/math.Ln2) + 0.5)
	r := (x - float64(k*ln2Hi)) - float64(k*ln2Lo) // at most ½ln 2 either way
	sum, term := 1.0, 1.0
	for n := 1; n <= 16; n++ {
		term = float64(term*r) / float64(n)
		sum += term
	}
	return math.Ldexp(sum, int(k))
}

// log takes any finite number above zero: 2·artanh((m−1)/(m+1)) of the part
// between √½ and √2.
func log(x float64) float64 {
	m, k := math.Frexp(x)
	if m < math.Sqrt2/2 {
		m *= 2
		k--
	}
	s := (m - 1) / (m + 1) // at most 0.172
	square, power, sum := s*s, s, s
	for n := 3; n <= 23; n += 2 {
		power *= square
		sum += power / float64(n)
	}
	return float64(float64(k)*ln2Hi) + (float64(2*sum) + float64(float64(k)*ln2Lo))
}

// arctan takes 0 to 1e150. Each halving, arctan x = 2·arctan(x/(1+√(1+x²))), makes
// the series shorter.
func arctan(x float64) float64 {
	const halvings = 4
	for range halvings {
		x /= 1 + math.Sqrt(1+float64(x*x))
	}
	square, power, sum := x*x, x, x
	for n := 3; n <= 19; n += 2 {
		power *= -square
		sum += power / float64(n)
	}
	return sum * (1 << halvings)
}
