package verification_test

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/internal/beam"
	"example.com/steelyard/internal/order"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/internal/stack"
)

// derivationParts is what every derivation has beside its steps, each at the beginning of a line.
var derivationParts = []string{"**Assumed.** ", "**Holds for.** ", "**In code.** ", "**Checked by.** "}

var (
	namedInFile = regexp.MustCompile("`([^`]+)` in `([^`]+)`")
	citedTest   = regexp.MustCompile("`[a-z]+\\.(Test|Fuzz)[^`]*`")
)

// wrongDerivations tells of derivations that lack a part, name no kernel or no test, and names that another file declares.
func (g *goNames) wrongDerivations(text string) (faults []string) {
	for i, section := range strings.Split("\n"+text, "\n## ") {
		title, body, _ := strings.Cut(section, "\n")
		if i == 0 {
			continue // what stands before the first
		}
		for _, part := range derivationParts {
			_, rest, found := strings.Cut("\n"+body, "\n"+part)
			paragraph, _, _ := strings.Cut(rest, "\n\n")
			switch {
			case !found:
				faults = append(faults, title+": no "+strings.TrimSpace(part))
			case part == "**In code.** " && !namedInFile.MatchString(strings.ReplaceAll(paragraph, "\n", " ")):
				faults = append(faults, title+": no kernel, as `name` in `file`")
			case part == "**Checked by.** " && !citedTest.MatchString(paragraph):
				faults = append(faults, title+": no test")
			}
		}
	}
	for _, m := range namedInFile.FindAllStringSubmatch(strings.ReplaceAll(text, "\n", " "), -1) {
		if one, err := g.find(m[1]); err == nil && one.file != m[2] {
			faults = append(faults, fmt.Sprintf("%s is in %s, not in %s", m[1], one.file, m[2]))
		}
	}
	return faults
}

// Every name, file and test that the derivations cite is there, and none lacks its assumptions, its range, its kernel or its test.
func TestDerivations(t *testing.T) {
	g := theGoNames(t)
	text, err := os.ReadFile("DERIVATIONS.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, fault := range append(g.unresolved(string(text)), g.wrongDerivations(string(text))...) {
		t.Errorf("DERIVATIONS.md: %s", fault)
	}
}

func TestDerivationsAreHeldAgainstTheCode(t *testing.T) {
	g := theGoNames(t)
	whole := "## One\n\n**Assumed.** Nothing.\n\n**Holds for.** All.\n\n**In code.** `rope.DragRatio` in\n`internal/rope/drag.go`.\n\n**Checked by.** `rope.TestTurn`.\n"
	for _, c := range []struct{ name, text, want string }{
		{"right", whole, ""},
		{"no range", strings.Replace(whole, "**Holds for.**", "It holds for", 1), "One: no **Holds for.**"},
		{"no kernel", strings.Replace(whole, "`rope.DragRatio` in", "See", 1), "One: no kernel"},
		{"no test", strings.Replace(whole, "`rope.TestTurn`", "care", 1), "One: no test"},
		{"another file", strings.Replace(whole, "drag.go", "turn.go", 1), "rope.DragRatio is in internal/rope/drag.go"},
	} {
		if got := strings.Join(g.wrongDerivations(c.text), "; "); (c.want == "") != (got == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: reported %q, should be %q", c.name, got, c.want)
		}
	}
}

const (
	standardGravity = 9.80665    // m/s², exact
	footInMetres    = 0.3048     // exact
	poundInKg       = 0.45359237 // exact
)

// The worked lines are reckoned anew, each from the last step of its derivation with nothing but arithmetic; where there is
// a kernel for it, the kernel must agree. A line that is not among them, and one that is no longer on the page, is a fault.
func TestWorkedLines(t *testing.T) {
	text, err := os.ReadFile("DERIVATIONS.md")
	if err != nil {
		t.Fatal(err)
	}
	var written []string
	for line := range strings.SplitSeq(string(text), "\n") {
		if worked, ok := strings.CutPrefix(line, "**Worked.** "); ok {
			written = append(written, worked)
		}
	}
	worked := workedLines(t)
	for _, line := range worked {
		if !slices.Contains(written, line) {
			t.Errorf("DERIVATIONS.md has no line\n**Worked.** %s", line)
		}
	}
	for _, line := range written {
		if !slices.Contains(worked, line) {
			t.Errorf("nothing reckons the line\n**Worked.** %s", line)
		}
	}
}

// kernelAgrees holds a figure of the page against that of a kernel.
func kernelAgrees(t *testing.T, what string, page, kernel float64) {
	t.Helper()
	if !(math.Abs(page-kernel) <= 1e-9*max(math.Abs(page), math.Abs(kernel), 1)) {
		t.Errorf("%s: %v by the derivation, %v by the kernel", what, page, kernel)
	}
}

func workedLines(t *testing.T) []string {
	return slices.Concat(workedRopes(t), workedDrag(t), workedBattens(t), workedArbors(t), workedMotion(), workedOrders(t))
}

// Bodies of the paths below.
const (
	onBuilding = iota
	onBatten
	onArbor
)

// lineOver is a lift line of single or double purchase: batten, loft block, head block, arbor, dead end.
func lineOver(double bool) rope.Path {
	p := rope.Path{{Body: onBatten, X: 10}, {X: 10, Z: 100}, {Z: 100}, {Body: onArbor}}
	if double {
		p = append(p, rope.Stop{Z: 101})
	}
	return p
}

func workedRopes(t *testing.T) (lines []string) {
	for _, c := range []struct {
		double bool
		parts  float64
	}{{false, 1}, {true, 2}} {
		h := rope.Heights{onBatten: 3, onArbor: 18}
		p := lineOver(c.double)
		kernelAgrees(t, "∂L/∂x", -1, p.Rate(onBatten, len(p)-1, &h))
		kernelAgrees(t, "∂L/∂y", -c.parts, p.Rate(onArbor, len(p)-1, &h))
	}
	lines = append(lines, "a lift line in double purchase has ∂L/∂x = −1 and ∂L/∂y = −2, so that N = 2; in single purchase both are −1 and N = 1.")

	// w(y − x) at two trims 55 ft apart, the arbor at a half of it in double purchase.
	drift := func(ratio float64) float64 { return 5 * 0.11 * 55 * (1 + 1/ratio) }
	for _, double := range []bool{false, true} {
		p, n := lineOver(double), 1.0
		if double {
			n = 2
		}
		at := func(x, y float64) float64 {
			h := rope.Heights{onBatten: x, onArbor: y}
			_, b := p.Pull(onBatten, 0, len(p)-1, &h)
			_, a := p.Pull(onArbor, 0, len(p)-1, &h)
			return 5 * 0.11 * (a/n - b)
		}
		kernelAgrees(t, "drift", drift(n), at(1, 60)-at(56, 60-55/n))
	}
	lines = append(lines, fmt.Sprintf("five lines of 0.11 lb/ft over 55 ft of batten travel shift %.1f lbf in single and %.1f lbf in double purchase.", drift(1), drift(2)))

	load := func(turn float64) float64 { return 2 * 500 * math.Sin(turn/2) }
	lines = append(lines, fmt.Sprintf("with 500 lbf in the line a block turns it by a quarter and bears %.0f lbf, by half a turn %.0f lbf, by an eighth %.0f lbf.",
		load(math.Pi/2), load(math.Pi), load(math.Pi/4)))
	lines = append(lines, fmt.Sprintf("a set 40 lbf batten-heavy pulls the inner rope %.0f lbf tighter than the outer in double purchase with a double hand line, %.0f lbf with a single hand line, and %.0f lbf in single purchase.",
		40.0*2/2, 40.0*2/1, 40.0*1/1))

	holds := math.Exp(0.2 * 2 * math.Pi * 3)
	kernelAgrees(t, "wraps", holds, rope.WrapRatio(0.2, 3))
	kernelAgrees(t, "turns", 3, rope.WrapTurns(0.2, holds))
	lines = append(lines, fmt.Sprintf("three turns at μ = 0.2 hold %.1f times what the hand pulls: 500 lbf by %.1f lbf.", holds, 500/holds))

	angle := 1.5 * math.Pi / 180
	kernelAgrees(t, "fleet", angle, rope.FleetAngle(1, 1/math.Tan(angle)))
	lines = append(lines, fmt.Sprintf("a fleet angle of 1.5° is 1 in %.1f; a part is then longer than it is taken by %.0f in a million.", 1/math.Tan(angle), 1e6*(1/math.Cos(angle)-1)))

	slope := func(ratio float64) float64 { return 5 * 0.11 * (1 + 1/ratio) }
	lines = append(lines, fmt.Sprintf("under five lines of 0.11 lb/ft a chain that piles under the batten must weigh %.2f lb/ft in single and %.3f lb/ft in double purchase, and one under a double purchase arbor %.1f lb/ft.",
		slope(1), slope(2), 4*slope(2)))
	return lines
}

func workedDrag(t *testing.T) (lines []string) {
	c := (1.04 - 1) / (1.04 + 1)
	ratio := func(c, turn float64) float64 {
		g1, g2 := 1-c*c*math.Cos(turn), 1-c*c
		return (g1 + math.Sqrt(g1*g1-g2*g2)) / g2
	}
	for _, turn := range []float64{0.2, math.Pi / 2, 2, math.Pi} {
		kernelAgrees(t, "K", ratio(c, turn), rope.DragRatioTurning(c, turn))
	}
	lines = append(lines, fmt.Sprintf("K = 1.04 for half a turn is c = %.4f, and then K = %.4f for a quarter turn; 1 + 2c·sin(θ/2) would say %.4f.",
		c, ratio(c, math.Pi/2), 1+2*c*math.Sin(math.Pi/4)))

	// A quarter turn with a force that speeds the sheave up: the equation itself, solved by halves.
	const drag, slack, force = 0.05, 100.0, 10.0
	low, high := slack, 2*slack
	for range 200 {
		if mid := (low + high) / 2; mid-slack-force < drag*math.Sqrt(mid*mid+slack*slack) {
			low = mid
		} else {
			high = mid
		}
	}
	k := ratio(drag, math.Pi/2)
	r := math.Sqrt(1 + k*k)
	gain := r / (r - drag*k)
	kernelAgrees(t, "Γ", gain, rope.DragGain(drag, 1, 0, 0, -1))
	lines = append(lines, fmt.Sprintf("at a quarter turn with c = 0.05, T₁ = 100 N and a force of 10 N, K·T₁ + Γ·f is %.4f N and the equation itself gives %.4f N.", k*slack+gain*force, low))

	lines = append(lines, fmt.Sprintf("an idler of 100 lb, free, keeps 50 lbf in each part without drag; while it turns with K = 1.04 its parts bear %.2f lbf and %.2f lbf.",
		100/2.04, 100*1.04/2.04))

	lead := 0.0
	for i := range 4 {
		lead += math.Pow(1.09, float64(-i))
	}
	pull := 1.09 / lead
	kernelAgrees(t, "lead line", pull, rope.LeadLine(1.09, 4, 4))
	lines = append(lines, fmt.Sprintf("four parts over four sheaves of K = 1.09 want %.3f of the load on the lead line; the ten per cent rule says %.3f.", pull, (1+0.1*4)/4))
	return lines
}

func workedBattens(t *testing.T) (lines []string) {
	lines = append(lines, fmt.Sprintf("of a drape of 90 lb, 20 ft deep, whose top hangs 1 ft under the batten, %.0f lb are carried at a trim of 11 ft, and all of it from %d ft up.", 90*(11.0-1)/20, 20+1))

	// Two equal spans under an even load, W = qL each.
	l := beam.NewLayout(beam.Beam{Lines: []float64{0, 1, 2}, Loads: []beam.Stretch{{From: 0, To: 2}}})
	w := l.Work()
	w.Load([]float64{2})
	w.Hang(0)
	m := -1.0 / 8
	outer, middle := 0.5+m, 1-2*m
	kernelAgrees(t, "outer", outer, w.Reaction[0])
	kernelAgrees(t, "middle", middle, w.Reaction[1])
	_, _, over := w.Cut(1)
	kernelAgrees(t, "over the middle line", m, over)
	lines = append(lines, fmt.Sprintf("two equal spans under an even load: M = −qL²/%.0f over the middle line, which bears %.3f·qL, the outer ones %.3f·qL each.", -1/m, middle, outer))

	// A point of 100 lbf 4 ft along the first of two spans of 10 ft: the far line would have to push.
	l = beam.NewLayout(beam.Beam{Lines: []float64{0, 10, 20}, Loads: []beam.Stretch{{From: 4, To: 4}}})
	w = l.Work()
	w.Load([]float64{100})
	w.Hold(beam.All(3))
	m1 := -100.0 * 4 * (10*10 - 4*4) / 10 / 40
	kernelAgrees(t, "M₁", m1/10, w.Reaction[2])
	kernelAgrees(t, "R₀", 60+m1/10, w.Reaction[0])
	push := -m1 / 10
	w.Hang(0)
	kernelAgrees(t, "near", 60, w.Reaction[0])
	kernelAgrees(t, "next", 40, w.Reaction[1])
	kernelAgrees(t, "far", 0, w.Reaction[2])
	lines = append(lines, fmt.Sprintf("lines at 0, 10 and 20 ft and 100 lbf at 4 ft: supports would bear %.1f, %.1f and −%.1f lbf; a line cannot push, so that the lines bear 60, 40 and 0 lbf and the third is slack.",
		60-push, 40+2*push, push))

	// The middle one of three rigid lines short by e: R grows by 6EI·e/L³.
	_, second, _ := beam.Ring(1.9, 0.145)
	inertia := math.Pi * (math.Pow(1.9, 4) - math.Pow(1.9-2*0.145, 4)) / 64
	kernelAgrees(t, "I", inertia, second)
	per := 6 * 29e6 * inertia / math.Pow(120, 3)
	l = beam.NewLayout(beam.Beam{Lines: []float64{0, 120, 240}, Low: []float64{0, -29e6 * inertia * 0.25, 0}, Loads: []beam.Stretch{{From: 0, To: 240}}})
	w = l.Work()
	w.Load([]float64{200})
	w.Hang(0)
	kernelAgrees(t, "a short line", 125+0.25*per, w.Reaction[1])
	lines = append(lines, fmt.Sprintf("a pipe of 1.9 in by 0.145 in with E = 29 000 ksi on three lines 10 ft apart: each quarter inch that the middle one is short puts %.1f lbf on it.", 0.25*per))
	return lines
}

func workedArbors(t *testing.T) (lines []string) {
	plate := stack.Plate{Mass: 1, Thickness: 1, Every: 24}
	kernelAgrees(t, "plates", 3, float64(plate.Under(60)))
	kernelAgrees(t, "plates", 3, float64(plate.Under(48)))
	kernelAgrees(t, "plates", 2, float64(plate.Under(47)))
	lines = append(lines, "with a plate every 2 ft, 5 ft of show weight has 1 + ⌊2.5⌋ = 3 plates, and so has 4 ft, where the third lies on top; an inch less has 2.")

	problem := stack.Problem{
		Kinds: []stack.Kind{{Mass: 30, Thickness: 1, Count: 4}, {Mass: 23, Thickness: 1, Count: 4}}, Wanted: 99,
		MaxMass: stack.Unlimited, MaxHeight: stack.Unlimited, Heavy: true, Light: true,
	}
	best, least, ways := stack.Best(problem, 1e6), int64(math.MaxInt64), 0
	for a := range int64(5) {
		for b := range int64(5) {
			ways++
			off := 30*a + 23*b - 99
			least = min(least, max(off, -off))
		}
	}
	kernelAgrees(t, "error", float64(least), math.Abs(float64(best.Error)))
	if !best.Proven || !slices.Equal(best.Count, []int64{1, 3}) {
		t.Errorf("the best stack is %+v", best)
	}
	lines = append(lines, fmt.Sprintf("99 lb from four pieces of 30 lb and four of 23 lb: filling from the heaviest stops at 90 lb; of the %d stacks one of 30 lb and three of 23 lb is off by %d lb.", ways, least))

	travel := 58.0 - 14 - 10
	wanted := (60.0 - 4) / 2
	lines = append(lines, fmt.Sprintf("double purchase, upper stop at 58 ft, lower stop at 14 ft, an arbor of 10 ft: %.0f ft of arbor travel and %.0f ft of batten travel; trims from 4 ft to 60 ft want %.0f ft of the arbor, so that the lower stop may be at %.0f ft.",
		travel, 2*travel, wanted, 58-wanted-10))

	lines = append(lines, fmt.Sprintf("an eye 4 ft high, 40 ft out, under an edge 20 ft high at the line sees up to %.0f ft at a drop 20 ft upstage.", 4+(20.0-4)*(40+20)/40))
	return lines
}

func workedMotion() (lines []string) {
	felt := func(n float64) float64 { return 500 + n*500/(n*n) }
	moving := func(n float64) float64 { return 500 + n*500 }
	lines = append(lines, fmt.Sprintf("a balanced set of 500 lb has %.0f lb moving in single and %.0f lb in double purchase; felt at the batten are %.0f lb and %.0f lb.",
		moving(1), moving(2), felt(1), felt(2)))

	way, m := 30*footInMetres, 1010.0
	acceleration := standardGravity * 10 / m
	v := math.Sqrt(2 * acceleration * way)
	drop := way * 10 / m
	lines = append(lines, fmt.Sprintf("a single set, 510 lb against 500 lb, weightless ropes, no drag: it gains %.4f m/s², after 30 ft it runs in at %.3f m/s, as after a free fall of %.1f mm, with %.1f J.",
		acceleration, v, 1000*drop, 0.5*m*poundInKg*v*v))

	stretch := 0.020
	lines = append(lines, fmt.Sprintf("such a set meets its stop at %.3f m/s; lines that its batten stretches by 20 mm bear %.2f times what hangs on them.", v, 1+v/math.Sqrt(standardGravity*stretch)))
	lines = append(lines, fmt.Sprintf("a thing let go at once counts 2 times; fallen %.1f mm onto what gives 20 mm under it, %.2f times.", 1000*drop, 1+math.Sqrt(1+2*drop/stretch)))

	lines = append(lines, fmt.Sprintf("single purchase, 500 lb a side brought to 0.6 m/s in 2 s without drag: the hand pulls %.1f lbf; to stop it within 0.3 m it pulls %.1f lbf on the other rope.",
		1000*0.3/standardGravity, 1000*(0.6*0.6/(2*0.3))/standardGravity))
	return lines
}

func workedOrders(t *testing.T) (lines []string) {
	problem := func(limit int64) *order.Problem {
		p := &order.Problem{Items: []order.Item{{Count: 2, Carried: []int64{100}}}, Pieces: 4}
		p.Positions = []order.Position{{Halt: true, End: true, Deck: true, Reach: []bool{true, true, true, true}}}
		p.Low, p.High, p.Even = [][]int64{nil}, [][]int64{nil}, [][]int64{nil}
		for n := range int64(5) {
			p.Low[0], p.High[0], p.Even[0] = append(p.Low[0], 50*n-limit), append(p.High[0], 50*n+limit), append(p.Even[0], 50*n)
		}
		return p
	}
	hands := func(limit int64) int {
		o, found := order.Best(problem(limit))
		if !found {
			t.Errorf("no order within %d", limit)
		}
		return o.HandOvers
	}
	least := int64(0)
	for least < 400 && !order.Possible(problem(least)) { // all there is weighs 200 a side
		least++
	}
	if _, found := order.Best(problem(least - 1)); found {
		t.Errorf("an order within less than %d", least)
	}
	lines = append(lines, fmt.Sprintf("two items of 100 lb and four pieces of 50 lb, single purchase, both sides limited: %d hand-over within 200 lbf, %d within 100 lbf, %d within %d lbf, and no order within less.",
		hands(200), hands(100), hands(least), least))
	lines = append(lines, fmt.Sprintf("20 lbf batten-heavy with 600 lb carried and a limit of 50 lbf: the hang may be %.0f %% heavier than it is written, %.1f %% lighter where arbor-heavy has the same limit.",
		100*(50.0-20)/600, 100*(50.0+20)/600))
	return lines
}
