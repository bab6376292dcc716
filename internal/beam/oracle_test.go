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
	lines   []float64
	loads   []Stretch
	weights []float64
}

// hold gives the pulls of the supports in the set, and EI times the deflection at all.
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
		a[row][n], a[row][n+1] = 1, o.lines[i]
		a[row][n+2] = -o.fromLoads(o.lines[i])
	}
	a[n], a[n+1] = make([]float64, n+3), make([]float64, n+3)
	for col, j := range on {
		a[n][col], a[n+1][col] = 1, o.lines[j]
	}
	for k, l := range o.loads {
		a[n][n+2] += o.weights[k]
		a[n+1][n+2] += o.weights[k] * (l.From + l.To) / 2
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
		drops[i] = y
	}
	return pulls, drops, true
}

// fromLoads is the loads' share of EI·y, downwards.
func (o oracle) fromLoads(x float64) (y float64) {
	for k, l := range o.loads {
		if x <= l.From {
			continue
		}
		if x >= l.To { // the mean of (d+u)³ over u from −h to h is d³ + d·h²
			d, h := x-(l.From+l.To)/2, (l.To-l.From)/2
			y += o.weights[k] * (d*d*d + d*h*h) / 6
			continue
		}
		y += o.weights[k] / (l.To - l.From) * fourth(x-l.From) / 24
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
			m -= o.weights[k] * (x - (l.From+l.To)/2)
			continue
		}
		a := x - l.From
		m -= o.weights[k] / (l.To - l.From) * a * a / 2
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
		case x > l.From:
			v -= o.weights[k] * (min(x, l.To) - l.From) / (l.To - l.From)
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
			worst = max(worst, -r[i]/weight, y[i]/(weight*length*length*length))
		}
		if worst < miss {
			pulls, drops, miss = r, y, worst
		}
	}
	return pulls, drops, miss
}

func cube(x float64) float64   { x = max(0, x); return x * x * x }
func fourth(x float64) float64 { x = max(0, x); return x * x * x * x }

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
	for i, want := range []float64{3. / 8, 10. / 8, 3. / 8} { // two equal spans, w = L = 1
		if math.Abs(r[i]-want) > 1e-12 {
			t.Errorf("pull %d: %v, want %v", i, r[i], want)
		}
	}
	// 5wL⁴/384EI at the middle of a simple span of length 2 under w = 1.
	_, y, _ := o.hold(5)
	if want := 5. * 16 / 384; math.Abs(y[1]-want) > 1e-12 {
		t.Errorf("deflection %v, want %v", y[1], want)
	}
	if m := o.moment([]float64{1, 0, 1}, 1); math.Abs(m-0.5) > 1e-12 { // wL²/8
		t.Errorf("moment %v, want 0.5", m)
	}
}
