package lineset_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

var printed = regexp.MustCompile(`\d+\.\d+`)

// first is the first number of a result, negative where it says so or is arbor-heavy.
func first(t rapid.TB, s lineset.Step) (value float64, text string) {
	t.Helper()
	text = printed.FindString(s.Result)
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatalf("no number in the result of %+v", s)
	}
	if strings.Contains(s.Result, "arbor-heavy") || strings.HasPrefix(s.Result, "−") {
		value = -value
	}
	return value, text
}

// checkSteps works every step out from what is printed, and finds what it takes among what was printed before.
func checkSteps(t rapid.TB, steps []lineset.Step, sys units.System) {
	t.Helper()
	before := ""
	for _, s := range steps {
		if s.Name == "" || s.Basis == "" || strings.Contains(s.Formula+s.Result, "NaN") {
			t.Fatalf("%+v", s)
		}
		formula := s.Formula
		switch {
		case strings.HasPrefix(s.Name, "own weight"):
			checkOwn(t, s, sys)
			before += s.Result
			continue
		case strings.HasPrefix(s.Name, "drag factors"):
			checkFactors(t, s)
			before += s.Result
			continue
		case strings.HasPrefix(s.Name, "idler's parts"):
			var share string
			formula, share, _ = strings.Cut(formula, "; ")
			parts := printed.FindAllString(s.Result, -1)
			inner, outer := number(t, parts[0]), number(t, parts[1])
			if k := printed.FindString(share); strings.HasPrefix(share, "inner") {
				inner, outer = outer, inner/number(t, k)
			} else if k != "" {
				outer /= number(t, k)
			}
			if !near.Abs(inner, outer, 1.1*lastPlace(parts[0])) {
				t.Fatalf("%+v: the parts do not share as said", s)
			}
			got, off := calculate(t, formula)
			if !near.Abs(got, inner, off+0.51*lastPlace(parts[0])) {
				t.Fatalf("%+v: by calculator %v", s, got)
			}
			before += s.Formula + s.Result
			continue
		case s.Result == "cannot be told":
			continue
		}
		got, off := calculate(t, formula)
		want, text := first(t, s)
		if strings.HasPrefix(s.Name, "asked") {
			want = math.Abs(want)
		}
		if !near.Abs(got, want, off+0.51*lastPlace(text)) {
			t.Fatalf("%+v: by calculator %v, off by %v at most", s, got, off)
		}
		given := strings.HasPrefix(s.Name, "out of balance") || strings.HasPrefix(s.Name, "lift line ")
		for _, n := range printed.FindAllString(formula, -1) {
			if !given && !strings.Contains(before, n) && !strings.Contains(formula, n+" lbf at the held") && !strings.Contains(formula, n+" lbf idler") &&
				!strings.Contains(formula, n+" kN at the held") && !strings.Contains(formula, n+" kN idler") && !strings.Contains(formula, "× ("+n) && !strings.Contains(formula, "(−"+n) && !strings.Contains(formula, "+ ("+n) {
				t.Fatalf("%+v: nobody has said where %s comes from", s, n)
			}
		}
		before += s.Formula + s.Result
	}
}

func number(t rapid.TB, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

var feet = regexp.MustCompile(`(\d+)' (\d+)(?: (\d+)/(\d+))?"`)

// lengths are those in a text, in feet or metres.
func lengths(text string, sys units.System) (out []float64) {
	if sys != units.US {
		for _, m := range regexp.MustCompile(`(\d+(?:\.\d+)?) m `).FindAllStringSubmatch(text+" ", -1) {
			x, _ := strconv.ParseFloat(m[1], 64)
			out = append(out, x)
		}
		return out
	}
	for _, m := range feet.FindAllStringSubmatch(text, -1) {
		var n [5]float64
		for i := 1; i < 5; i++ {
			n[i], _ = strconv.ParseFloat(m[i], 64)
		}
		x := n[1] + n[2]/12
		if n[4] > 0 {
			x += n[3] / n[4] / 12
		}
		out = append(out, x)
	}
	return out
}

// checkOwn multiplies the rope's mass with every length. Lengths are printed to a sixteenth of an inch or a millimetre, masses to
// three digits that count.
func checkOwn(t rapid.TB, s lineset.Step, sys units.System) {
	t.Helper()
	w := number(t, printed.FindString(s.Formula))
	if sys != units.US {
		w *= 9.80665 / 1000
	}
	ways, weights := lengths(s.Formula, sys), printed.FindAllString(s.Result, -1)
	if len(ways) != len(weights) || len(ways) == 0 {
		t.Fatalf("%+v: %d lengths", s, len(ways))
	}
	for i, text := range weights {
		if got := w * ways[i]; !near.Abs(got, number(t, text), 0.51*lastPlace(text)+0.005*got) {
			t.Fatalf("%+v: by calculator %v", s, got)
		}
	}
}

var turn = regexp.MustCompile(`([\d.]+)°`)

// checkFactors finds each K from the printed drag and turn, by halving the balance of the sheave itself: the difference of the
// tensions is c times the resultant on the pin.
func checkFactors(t rapid.TB, s lineset.Step) {
	t.Helper()
	c := number(t, printed.FindString(s.Formula))
	ks := printed.FindAllString(s.Result, -1)
	turns := turn.FindAllStringSubmatch(s.Formula, -1)
	if len(ks) != len(turns) {
		t.Fatalf("%+v", s)
	}
	for i, k := range ks {
		cos := math.Cos(number(t, turns[i][1]) * math.Pi / 180)
		low, high := 1.0, 100.0
		for range 100 {
			mid := (low + high) / 2
			if mid-1 < c*math.Sqrt(1+mid*mid-2*mid*cos) {
				low = mid
			} else {
				high = mid
			}
		}
		// A twentieth of a degree is 0.0009, and K grows by about c for each radian.
		if !near.Abs(low, number(t, k), 0.5e-4+0.0009*3*c*low) {
			t.Fatalf("%+v: by halving %v, not %s", s, low, k)
		}
	}
}

// varied changes a set in every way that the hand line may be laid.
func varied(t *rapid.T, s *lineset.Set) {
	r := &s.Rigging
	kinds := []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple}
	*r = rigging(purchase.Double)
	r.Purchase = rapid.SampledFrom(kinds).Draw(t, "lift")
	r.HandPurchase = rapid.SampledFrom(append(kinds, 0)).Draw(t, "hand")
	r.Run.LowerStop = 35 * units.Foot // little enough travel for three parts
	r.Drag = purchase.Drag(rapid.SampledFrom([]float64{0, 0.02, 0.043, 0.1}).Draw(t, "drag"))
	r.Idler.Mass = units.Mass(rapid.SampledFrom([]float64{0, 5, 27.2, 60}).Draw(t, "idler"))
	r.Idler.Base = units.Force(rapid.SampledFrom([]float64{0, 0, 30, 200}).Draw(t, "base"))
	if rapid.Bool().Draw(t, "weightless") {
		r.LiftLine, r.HandLine = 0, 0
	}
	if rapid.Bool().Draw(t, "mules") {
		r.Loft = make([]lineset.Loft, len(r.Batten.Lines))
		r.Loft[3] = lineset.Loft{Height: 50 * units.Foot, Mules: []purchase.Mule{{Name: "mule", On: purchase.Grid, Across: 33 * units.Foot, Height: 54 * units.Foot}}}
		r.Loft[1].Height = 53 * units.Foot
	}
}

// Whatever is rigged, the steps can be followed with a calculator from what is printed, and end at the pulls and the band that
// the ropes themselves give.
func TestPropHandWorking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSet(t)
		varied(t, &s)
		r, err := s.Rig(stock)
		if err != nil {
			t.Skip(err)
		}
		h := r.Report().LowHand
		if rapid.Bool().Draw(t, "high") {
			h = r.Report().HighHand
		}
		sys := rapid.SampledFrom([]units.System{units.US, units.Metric}).Draw(t, "system")
		steps := h.Working(sys)
		checkSteps(t, steps, sys)
		for _, c := range []struct {
			name string
			pull lineset.HandPull
		}{{", out", h.Out}, {", in", h.In}} {
			found := false
			for _, step := range steps {
				if !strings.HasPrefix(step.Name, "pull") || !strings.HasSuffix(step.Name, c.name) {
					continue
				}
				found = true
				if c.pull.Loose {
					if step.Result != "cannot be told" {
						t.Fatalf("%+v of a slack hand line", step)
					}
					continue
				}
				got, off := calculate(t, step.Formula)
				unit, place := units.PoundForce, 0.1
				if sys != units.US {
					unit, place = units.Kilonewton, 0.001
				}
				if want := c.pull.Pull.In(unit); !near.Abs(got, want, off+place) || !strings.HasPrefix(step.Name, "pull ") || !strings.Contains(step.Name, c.pull.Rope.String()) {
					t.Fatalf("%+v comes to %v, the ropes say %v", step, got, want)
				}
			}
			if !found {
				t.Fatalf("no pull%s in %+v", c.name, steps)
			}
		}
	})
}

// What a caller made up is worked out or not, and breaks nothing.
func TestHandWorkingOfAnything(t *testing.T) {
	h := mustRig(t, electric()).Report().LowHand
	for _, c := range []struct {
		name   string
		change func(*lineset.HandTerms)
		reason string
	}{
		{"no lift lines", func(t *lineset.HandTerms) { t.Lift, t.Pulls = nil, nil }, "nothing holds the batten"},
		{"fewer pulls than lines", func(t *lineset.HandTerms) { t.Pulls = t.Pulls[1:] }, "which line is without?"},
		{"a rope of no stops", func(t *lineset.HandTerms) { t.Lift = append([]lineset.RopeTerms{{}}, t.Lift[1:]...) }, "it has no ends"},
		{"no hand line", func(t *lineset.HandTerms) { t.Hand = lineset.RopeTerms{} }, "nothing to pull on"},
		{"no idler", func(t *lineset.HandTerms) { t.Hand.Stops = t.Hand.Stops[:2] }, "nothing keeps it tight"},
		{"idler at the end", func(t *lineset.HandTerms) { t.Hand.Stops = t.Hand.Stops[:3] }, "it does not come back from there"},
		{"a factor of less than nothing", func(t *lineset.HandTerms) {
			t.Hand.Stops = slices.Clone(t.Hand.Stops)
			t.Hand.Stops[1].Factor = -1
		}, "a tension below nothing"},
		{"a factor of nothing", func(t *lineset.HandTerms) {
			t.Hand.Stops = slices.Clone(t.Hand.Stops)
			t.Hand.Stops[1].Factor = 0
		}, "a tension without end on the other side"},
		{"a factor that is no number", func(t *lineset.HandTerms) {
			t.Lift = slices.Clone(t.Lift)
			t.Lift[2].Stops = slices.Clone(t.Lift[2].Stops)
			t.Lift[2].Stops[1].Factor = math.NaN()
		}, "a tension of no number"},
		{"a lift line of one end", func(t *lineset.HandTerms) {
			t.Lift = slices.Clone(t.Lift)
			t.Lift[4].Stops = t.Lift[4].Stops[:1]
		}, "it leads nowhere"},
		{"a hand line that begins at the idler", func(t *lineset.HandTerms) { t.Hand.Stops = t.Hand.Stops[2:] }, "nothing is on its other side"},
		{"no factor", func(t *lineset.HandTerms) { t.Hand.Stops = make([]lineset.StopTerms, 6) }, "a tension of nothing"},
	} {
		t.Run(c.name, func(t *testing.T) {
			made := h
			c.change(&made.Terms)
			if steps := made.Working(units.US); steps != nil {
				t.Errorf("%v: %s", steps, c.reason)
			}
		})
	}
	// The least that there is to work out: a line of two ends, and a hand line from the arbor round the idler and back.
	end := lineset.StopTerms{On: purchase.Arbor, Factor: 1}
	least := h
	least.Terms.Pulls, least.Terms.Lift = h.Terms.Pulls[:1], []lineset.RopeTerms{{Name: "line", Stops: []lineset.StopTerms{{On: purchase.Batten, Factor: 1}, end}}}
	least.Terms.Hand = lineset.RopeTerms{Name: "hand line", Stops: []lineset.StopTerms{end, {On: purchase.Idler, Factor: 1}, end}}
	if steps := least.Working(units.US); len(steps) == 0 {
		t.Error("a plain rope was not worked out")
	}
}

// The lines that an engineer would write for the pull that flies a set out.
func ExampleHand_Working() {
	set := electric()
	set.Rigging.Drag = purchase.AntiFrictionBearings
	rigged, err := set.Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	hand, err := rigged.Hand(5 * units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, step := range hand.Working(units.US) {
		if strings.HasSuffix(step.Name, ", out") && !strings.HasPrefix(step.Name, "lift line ") {
			fmt.Printf("%s: %s = %s\n", strings.TrimSuffix(step.Name, ", out"), step.Formula, step.Result)
		}
	}
	// Output:
	// lift lines on the arbor: (50.6 lbf + 141.4 lbf + 144.7 lbf + 141.4 lbf + 25.3 lbf) × (1 + 1.0400) = 1027.1 lbf
	// idler's parts: 60.0 lbf idler / (1 + 1.0400); outer × 1.0400 of that = 29.4 lbf inner, 30.6 lbf outer
	// hand line at the arbor's top: (30.6 lbf outer rope + 5.9 lbf) × 1.0400 − 0.4 lbf = 37.6 lbf
	// hand line holds the arbor up: 37.6 lbf × (1 + 1.0400) = 76.6 lbf
	// hand line at the arbor's foot: 29.4 lbf inner rope + 4.2 lbf = 33.6 lbf
	// hand line pulls it down: 33.6 lbf × (1 + 1 / 1.0400) = 65.9 lbf
	// ropes hold the arbor up: 1027.1 lbf + 76.6 lbf − 65.9 lbf = 1037.9 lbf
	// left to the hand at the arbor: 1037.9 lbf − 937.0 lbf arbor = 100.9 lbf
	// pull on the inner rope: 100.9 lbf at the arbor / (1 + 1 / 1.0400) = 51.4 lbf
}

// Nothing has no sign: of a balanced set whose hand line weighs nothing, and whose idler nobody weighed, every rope at the rail bears 0.
func TestNothingHasNoSign(t *testing.T) {
	s := plain(t, purchase.Single, pounds("lamps", 60))
	s.Rigging.Idler.Mass = 0
	for _, sys := range []units.System{units.US, units.Metric} {
		h, err := rigTens(t, s).Hand(6 * units.Foot)
		if err != nil {
			t.Fatal(err)
		}
		ropes := 0
		for _, step := range h.Working(sys) {
			if strings.Contains(step.Formula+step.Result, "−0") {
				t.Errorf("%s: %s = %s", step.Name, step.Formula, step.Result)
			}
			if strings.HasPrefix(step.Name, "hand line at the arbor's ") {
				ropes++
			}
		}
		if ropes != 2 {
			t.Errorf("%d ropes at the arbor", ropes)
		}
	}
}
