package beam

import (
	"math"
	"testing"
)

// oracle solves the same beam by another road, slowly and densely: the deflected
// line as Macaulay's brackets with the pulls and two constants unknown, one
// equation for each support and two of equilibrium, by Gaussian elimination.
// It shares no code and no formula with the package.
type oracle struct {
	lines     []float64
	give, low []float64 // nil: none
	loads     []Stretch
	taper     []float64 // nil: none
	weights   []float64
}

func at(list []float64, i int) float64 {
	if list == nil {
		return 0
	}
	return list[i]
}

// hold gives the pulls of the supports in the set, and EI times how far the beam stands below the
// ends of all lines, those of the set stretched by what they pull.
func (o oracle) hold(set uint64) (pulls, drops []float64, ok bool) {
	var on []int
	for i := range o.lines {
		if set&(1<<i) != 0 {
			on = append(on, i)
		}
	}
	n := len(on)
	// Unknowns: pulls, then C1 and C2 of EI·y = C1 + C2·x − Σ R<x−xi>³/6 + the loads' share
	a := make([][]float64, n+2)
	for row, i := range on {
		a[row] = make([]float64, n+3)
		for col, j := range on {
			a[row][col] = -cube(o.lines[i]-o.lines[j]) / 6
		}
		a[row][row] -= at(o.give, i) // EI·y = low + give·R
		a[row][n], a[row][n+1] = 1, o.lines[i]
		a[row][n+2] = at(o.low, i) - o.fromLoads(o.lines[i])
	}
	a[n], a[n+1] = make([]float64, n+3), make([]float64, n+3)
	for col, j := range on {
		a[n][col], a[n+1][col] = 1, o.lines[j]
	}
	for k, l := range o.loads {
		a[n][n+2] += o.weights[k]
		a[n+1][n+2] += o.weights[k] * o.centroid(k, l)
	}
	u, ok := eliminate(a)
	if !ok {
		return nil, nil, false
	}
	pulls, drops = make([]float64, len(o.lines)), make([]float64, len(o.lines))
	for col, j := range on {
		pulls[j] = u[col]
	}
	for i, x := range o.lines {
		y := u[n] + u[n+1]*x + o.fromLoads(x)
		for j, r := range pulls {
			y -= r * cube(x-o.lines[j]) / 6
		}
		drops[i] = y - at(o.low, i) - at(o.give, i)*pulls[i]
	}
	return pulls, drops, true
}

func (o oracle) centroid(k int, l Stretch) float64 {
	return (l.From+l.To)/2 + at(o.taper, k)*(l.To-l.From)/6
}

// laid is the part of a load from its beginning to a place a beyond, less than its length: its
// weight (n = 1) and the integrals of that, n−1 times.
func (o oracle) laid(k int, l Stretch, a float64, n int) float64 {
	length, t := l.To-l.From, at(o.taper, k)
	even, rising := 1.0, 1.0 // aⁿ/n! and aⁿ⁺¹/(n+1)!
	for i := 1; i <= n; i++ {
		even *= a / float64(i)
	}
	rising = even * a / float64(n+1)
	return o.weights[k] / length * ((1-t)*even + 2*t/length*rising)
}

// fromLoads is the loads' share of EI·y, downwards.
func (o oracle) fromLoads(x float64) (y float64) {
	for k, l := range o.loads {
		if x <= l.From {
			continue
		}
		if x >= l.To { // the mean of (d−u)³·(1+t·u/h) over u from −h to h
			d, h := x-(l.From+l.To)/2, (l.To-l.From)/2
			y += o.weights[k] * (d*d*d + d*h*h - at(o.taper, k)*h*(d*d+h*h/5)) / 6
			continue
		}
		y += o.laid(k, l, x-l.From, 4)
	}
	return y
}

// moment is the bending moment at x under the given pulls.
func (o oracle) moment(pulls []float64, x float64) (m float64) {
	for i, r := range pulls {
		m += r * max(0, x-o.lines[i])
	}
	for k, l := range o.loads {
		if x <= l.From {
			continue
		}
		if x >= l.To {
			m -= o.weights[k] * (x - o.centroid(k, l))
			continue
		}
		m -= o.laid(k, l, x-l.From, 2)
	}
	return m
}

// shear is the shear just left or right of x.
func (o oracle) shear(pulls []float64, x float64, right bool) (v float64) {
	past := func(p float64) bool { return p < x || right && p == x }
	for i, r := range pulls {
		if past(o.lines[i]) {
			v += r
		}
	}
	for k, l := range o.loads {
		switch {
		case l.From == l.To:
			if past(l.From) {
				v -= o.weights[k]
			}
		case x >= l.To:
			v -= o.weights[k]
		case x > l.From:
			v -= o.laid(k, l, x-l.From, 1)
		}
	}
	return v
}

// hang tries every set of two lines or more and gives the one whose pulls and gaps are all
// of the right sign, with the margin by which the worst of them is.
func (o oracle) hang() (pulls, drops []float64, miss float64) {
	weight, length := 0.0, o.lines[len(o.lines)-1]-o.lines[0]
	for _, w := range o.weights {
		weight += w
	}
	size := weight * length * length * length
	for i := range o.lines {
		size = max(size, math.Abs(at(o.low, i)))
	}
	miss = math.Inf(1)
	for set := uint64(1); set < 1<<len(o.lines); set++ {
		if set&(set-1) == 0 {
			continue
		}
		r, y, ok := o.hold(set)
		if !ok {
			continue
		}
		worst := 0.0
		for i := range r {
			worst = max(worst, -r[i]/weight, y[i]/size)
		}
		if worst < miss {
			pulls, drops, miss = r, y, worst
		}
	}
	return pulls, drops, miss
}

func cube(x float64) float64 { x = max(0, x); return x * x * x }

// eliminate solves the augmented system with full row pivoting on scaled rows.
func eliminate(a [][]float64) ([]float64, bool) {
	n := len(a)
	for _, row := range a {
		big := 0.0
		for _, v := range row[:n] {
			big = max(big, math.Abs(v))
		}
		if big == 0 {
			return nil, false
		}
		for j := range row {
			row[j] /= big
		}
	}
	for c := range n {
		p := c
		for r := c; r < n; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[p][c]) {
				p = r
			}
		}
		a[c], a[p] = a[p], a[c]
		if a[c][c] == 0 {
			return nil, false
		}
		for r := c + 1; r < n; r++ {
			f := a[r][c] / a[c][c]
			for j := c; j <= n; j++ {
				a[r][j] -= f * a[c][j]
			}
		}
	}
	u := make([]float64, n)
	for c := n - 1; c >= 0; c-- {
		u[c] = a[c][n]
		for j := c + 1; j < n; j++ {
			u[c] -= a[c][j] * u[j]
		}
		u[c] /= a[c][c]
	}
	return u, true
}

// TestOracle checks the oracle itself against closed forms.
func TestOracle(t *testing.T) {
	o := oracle{lines: []float64{0, 1, 2}, loads: []Stretch{{0, 2}}, weights: []float64{2}}
	r, _, _ := o.hold(7)
	nearAll(t, "pull", r, []float64{3. / 8, 10. / 8, 3. / 8}, 1e-12) // two equal spans, w = L = 1
	// 5wL⁴/384EI at the middle of a simple span of length 2 under w = 1.
	_, y, _ := o.hold(5)
	near(t, "deflection", y[1], 5.*16/384, 1e-12)
	near(t, "moment", o.moment([]float64{1, 0, 1}, 1), 0.5, 1e-12) // wL²/8

	// A spring in the middle takes (5/4)/(1+6g) and gives by g of that, as in TestSpringInTheMiddle.
	o.give = []float64{0, 0.5, 0}
	r, y, _ = o.hold(7)
	nearAll(t, "pull with a spring", r, []float64{27. / 32, 10. / 32, 27. / 32}, 1e-12)
	nearAll(t, "drop from a stretched end", y, []float64{0, 0, 0}, 1e-12)
	// A middle support sunk by d takes 6d less (two equal spans: −6EId/L³).
	o.give, o.low = nil, []float64{0, 0.1, 0}
	r, _, _ = o.hold(7)
	nearAll(t, "pull with a low end", r, []float64{3./8 + 0.3, 10./8 - 0.6, 3./8 + 0.3}, 1e-12)
	// Taken away, it is stood below by so much less: 5wL⁴/384 − d.
	_, y, _ = o.hold(5)
	near(t, "drop from a low end", y[1], 5.*16/384-0.1, 1e-12)
	if _, _, miss := (oracle{lines: o.lines, low: []float64{0, 1, 0}, loads: o.loads, weights: o.weights}).hang(); miss > 1e-12 {
		t.Errorf("long in the middle: missed by %v", miss)
	}

	// A load that rises from nothing to w = 1 along a simple span L = 1: pulls wL/6 and wL/3, moment
	// wL²/(9√3) at L/√3, slopes 7wL³/360 and 8wL³/360 at the ends; any handbook, from memory. Beyond
	// each end the beam is straight.
	o = oracle{lines: []float64{-1, 0, 1, 2}, loads: []Stretch{{0, 1}}, taper: []float64{1}, weights: []float64{0.5}}
	r, y, _ = o.hold(6)
	nearAll(t, "pull under a leaning load", r, []float64{0, 1. / 6, 1. / 3, 0}, 1e-12)
	near(t, "drop before it", y[0], -7./360, 1e-12)
	near(t, "drop after it", y[3], -8./360, 1e-12)
	root := math.Sqrt(3)
	near(t, "its moment", o.moment(r, 1/root), 1/(9*root), 1e-12)
	near(t, "its shear", o.shear(r, 1/root, false), 0, 1e-12)
	// In the middle of the span it bends the beam by half as much as an even load of the same peak.
	_, y, _ = oracle{lines: []float64{0, 0.5, 1}, loads: o.loads, taper: o.taper, weights: o.weights}.hold(5)
	near(t, "drop within it", y[1], 5./768, 1e-12)
}
