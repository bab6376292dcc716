package crosscheck

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

var motionSeed = flag.Uint64("motion.seed", 0, "draw runaway sets from this seed alone, as a failure printed it")

// runaways is how many sets are let go for each seed.
const runaways = 400

// dormandPrince is the embedded Runge-Kutta pair of orders 5 and 4.
// Source: J. R. Dormand and P. J. Prince, A family of embedded Runge-Kutta formulae, J. Comp. Appl. Math. 6 (1980), table 2,
// coefficients from memory, and held against the exponential below.
var dormandPrince = struct {
	a      [7][6]float64
	fourth [7]float64
}{
	a: [7][6]float64{
		{},
		{1. / 5},
		{3. / 40, 9. / 40},
		{44. / 45, -56. / 15, 32. / 9},
		{19372. / 6561, -25360. / 2187, 64448. / 6561, -212. / 729},
		{9017. / 3168, -355. / 33, 46732. / 5247, 49. / 176, -5103. / 18656},
		{35. / 384, 0, 500. / 1113, 125. / 192, -2187. / 6784, 11. / 84},
	},
	fourth: [7]float64{5179. / 57600, 0, 7571. / 16695, 393. / 640, -92097. / 339200, 187. / 2100, 1. / 40},
}

// step goes one step of h from place and speed, with what speeds it up there, and tells by how much the two orders differ.
func step(x, v, h float64, gain func(x, v float64) float64) (x1, v1, off float64) {
	var dx, dv [7]float64
	for i, row := range dormandPrince.a {
		x1, v1 = x, v
		for j, a := range row[:i] {
			x1 += h * a * dx[j]
			v1 += h * a * dv[j]
		}
		dx[i], dv[i] = v1, gain(x1, v1)
	}
	x4, v4 := x, v
	for i, b := range dormandPrince.fourth {
		x4 += h * b * dx[i]
		v4 += h * b * dv[i]
	}
	return x1, v1, math.Abs(x1-x4) + math.Abs(v1-v4)
}

// follow goes from rest over a way, and gives time and speed at its end; ok is false where it comes to rest before.
func follow(way float64, gain func(x, v float64) float64) (t, v float64, ok bool) {
	x, h := 0.0, 1e-3
	for range 1_000_000 {
		x1, v1, off := step(x, v, h, gain)
		switch {
		case off > 1e-11 && h > 1e-9:
			h *= max(0.2, 0.9*math.Pow(1e-11/off, 0.2))
			continue
		case v1 <= 0:
			return t, v1, false
		case x1 > way:
			// The last step ends at the stop: its length by Newton's method, the speed being the slope.
			for range 50 {
				x1, v1, _ = step(x, v, h, gain)
				h -= (x1 - way) / v1
			}
			return t + h, v1, true
		}
		x, v, t = x1, v1, t+h
		h *= min(5, 0.9*math.Pow(1e-11/max(off, 1e-16), 0.2))
	}
	return t, v, false
}

func TestStepIsOfItsOrder(t *testing.T) {
	// x″ = x from 1 and 1 is the exponential.
	x, v := 1.0, 1.0
	for range 100 {
		x, v, _ = step(x, v, 0.01, func(x, _ float64) float64 { return x })
	}
	if math.Abs(x-math.E) > 1e-12 || math.Abs(v-math.E) > 1e-12 {
		t.Errorf("%v and %v, want %v", x, v, math.E)
	}
}

// A set that is let go, by a method for any equation of motion, in time, from the gain of speed at each trim and speed; the
// library sums up speeds over the way from a power series, and the time from those.
func TestRunawayByRungeKutta(t *testing.T) {
	seeds := []uint64{1, uint64(time.Now().UnixNano())}
	if *motionSeed != 0 {
		seeds = []uint64{*motionSeed}
	}
	for _, seed := range seeds {
		ran := 0
		for number := range uint64(runaways) {
			if runaway(t, seed, number) {
				ran++
			}
			if t.Failed() {
				t.Fatalf("drawn by -motion.seed %d, number %d", seed, number)
			}
		}
		if ran < runaways/4 {
			t.Errorf("only %d sets of -motion.seed %d ran away", ran, seed)
		}
	}
}

// runaway draws a set, lets it go both ways, and tells whether it ran into its stop.
func runaway(t *testing.T, seed, number uint64) bool {
	rng := rand.New(rand.NewPCG(seed, number))
	between := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	kinds := []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple}
	l := purchase.Layout{
		Kind: kinds[rng.IntN(3)], Hand: kinds[rng.IntN(3)], HeadBlock: 20, DeadEnd: units.Length(between(20.5, 22)), Rail: 2, Idler: 1, ArborLength: 2,
		LiftMass: units.LineMass(between(0, 0.5)), HandMass: units.LineMass(between(0, 0.5)), Rim: units.Mass(between(0, 3)),
		Drag: purchase.Drag(between(0, 0.03)), Trim: 1, ArborTop: 19,
	}
	on := purchase.Bodies{Idler: units.Mass(between(10, 40))}
	var pulls units.Force
	for i := range 1 + rng.IntN(5) {
		l.Loft = append(l.Loft, purchase.Loft{Across: units.Length(3 + 2*i), Height: units.Length(between(17, 23))})
		pull := units.Force(between(100, 900))
		on.Pulls = append(on.Pulls, pull)
		pulls += pull
	}
	on.Arbor = pulls.Mass(units.StandardGravity).Scale(l.Kind.Ratio() * between(0.6, 1.4))
	r, err := l.Rig()
	if err != nil {
		t.Error(err)
		return false
	}
	lowest, highest := r.Reach()
	low, high := lowest+0.5, min(highest-0.5, 14)
	from := low + (high - low).Scale(between(0.05, 0.95))
	run, err := r.LetGo(purchase.LetGo{Trim: from, Low: low, High: high, On: on})
	if err != nil {
		t.Error(err)
		return false
	}
	if run.Way != purchase.Out && run.Way != purchase.In {
		return false // drag holds it
	}
	sign := 1.0
	if run.Way == purchase.In {
		sign = -1
	}
	gain := func(x, v float64) float64 {
		trim := min(max(from+units.Length(sign*x), lowest+0.01), highest-0.01) // a step tried past the stop is not taken
		a, err := r.Gain(trim, on, run.Way, units.Speed(max(v, 0)), purchase.Pulling{})
		if err != nil {
			t.Error(err)
		}
		return float64(a)
	}
	end := high
	if run.Way == purchase.In {
		end = low
	}
	took, speed, ok := follow(math.Abs(float64(end-from)), gain)
	if ok != run.AtStop {
		t.Errorf("%v: runs into the stop: %v", run, ok)
	}
	if !ok {
		return false
	}
	if math.Abs(speed-float64(run.Speed)) > 1e-8*speed || math.Abs(took-float64(run.Time)) > (1e-7+run.Error)*took {
		t.Errorf("%v m/s after %v s, by the library %v after %v", speed, took, run.Speed, run.Time)
	}
	return true
}
