package lineset_test

import (
	"encoding/json"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/arbor"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// FuzzQuestions asks a valid set every question that there is, with arguments that make sense and with those that make none: none
// panics, what is answered can be stored, so that every number in it is finite, and what is refused says why.
func FuzzQuestions(f *testing.F) { f.Fuzz(rapid.MakeFuzz(askEverything)) }

// The same by chance, on every run of the tests.
func TestPropQuestions(t *testing.T) { rapid.Check(t, askEverything) }

func askEverything(t *rapid.T) {
	set := drawSet(t)
	set.Rigging.Drag = purchase.Drag(rapid.SampledFrom([]float64{0, 0.02, 0.3}).Draw(t, "drag"))
	r, err := set.Rig(stock)
	if err != nil {
		t.Skip(err)
	}
	travel := r.Travel()
	// Numbers that a caller may come by, most of them within reach.
	number := func(what string, low, high float64) float64 {
		switch rapid.IntRange(0, 9).Draw(t, what+": sort") {
		case 0:
			return rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1e-300, 1e300, math.MaxFloat64}).Draw(t, what)
		case 1:
			return rapid.Float64().Draw(t, what)
		case 2:
			return rapid.SampledFrom([]float64{low, high}).Draw(t, what)
		}
		return rapid.Float64Range(low, high).Draw(t, what)
	}
	trim := func(what string) units.Length {
		return units.Length(number(what, travel.Lowest.In(units.Metre), travel.Highest.In(units.Metre)))
	}
	ask := func(what string, answer any, err error) {
		if err != nil {
			if err.Error() == "" {
				t.Fatalf("%s: refused without a word", what)
			}
			return
		}
		if _, err := json.Marshal(answer); err != nil {
			t.Fatalf("%s: %v in %+v", what, err, answer)
		}
	}
	ask("report", r.Report(), nil)
	ask("checks", r.Checks(), nil)
	at := trim("trim")
	state, err := r.At(at)
	ask("at", state, err)
	imbalance, err := r.Imbalance(at)
	ask("imbalance", imbalance, err)
	hand, err := r.Hand(at)
	ask("hand", hand, err)
	if err == nil {
		hand.Notes()
		hand.Working(units.Metric)
	}
	run, err := r.Run(at, purchase.Way(rapid.IntRange(0, 3).Draw(t, "way")))
	ask("run", run, err)
	felt, err := r.Felt(at)
	ask("felt", felt, err)
	runaway, err := r.LetGo(at)
	ask("let go", runaway, err)
	if err == nil {
		jolt, err := r.Jolt(runaway)
		ask("jolt", jolt, err)
	}
	flown, err := r.Fly(at, trim("flown to"), units.Speed(number("top", 0, 2)), units.TimeSpan(number("start", 0.1, 5)), units.Length(number("stop", 0.1, 3)))
	ask("fly", flown, err)

	limit := func(what string) lineset.ForceLimit {
		return lineset.ForceLimit{Max: units.Force(number(what, 0, 2000)), Basis: rapid.SampledFrom([]string{"", "given in the test"}).Draw(t, what+": basis")}
	}
	limits := lineset.OrderLimits{ArborHeavy: limit("arbor-heavy"), BattenHeavy: limit("batten-heavy"), HeldLine: limit("held line"), RestsOnStop: rapid.Bool().Draw(t, "rests")}
	works := r.WorkTrims(trim("deck"), trim("bridge"))
	ask("work trims", works, nil)
	if rapid.Bool().Draw(t, "another halt") {
		works = append(works, lineset.WorkTrim{Trim: trim("halt"), Deck: rapid.Bool().Draw(t, "by the deck"), Bridge: true, End: rapid.Bool().Draw(t, "end")})
	}
	for _, job := range []lineset.Job{lineset.Loading, lineset.Stripping} {
		plan, err := r.Order(job, limits, works...)
		ask("order", plan, err)
		if err != nil {
			continue
		}
		plan.Check.Lines(units.US)
		estimates, err := r.Estimates(plan.Order, limits)
		ask("estimates", estimates, err)
		after, err := r.LetGoAfter(plan.Order)
		ask("let go after", after, err)
	}
	order := lineset.Order{From: lineset.From(rapid.IntRange(0, 3).Draw(t, "from")), Trim: trim("begin")}
	for range rapid.IntRange(0, 5).Draw(t, "steps") {
		step := lineset.OrderStep{Act: lineset.Act(rapid.IntRange(0, 10).Draw(t, "act"))}
		switch step.Act {
		case lineset.HangItem, lineset.StripItem:
			step.Place = rapid.IntRange(-1, len(set.Hang)+1).Draw(t, "place")
		case lineset.AddPieces, lineset.TakePieces:
			step.Piece = rapid.SampledFrom([]string{"44", "22", "11", "?"}).Draw(t, "piece")
			step.Count = rapid.IntRange(-1, 20).Draw(t, "count")
		case lineset.FlyTo:
			step.Trim = trim("fly to")
		case lineset.SetLine:
			step.On = purchase.Body(rapid.IntRange(0, 9).Draw(t, "on"))
		}
		order.Steps = append(order.Steps, step)
	}
	check, err := r.CheckOrder(order, limits)
	ask("check order", check, err)
	wrong, err := r.Estimates(order, limits)
	ask("estimates of it", wrong, err)
	after, err := r.LetGoAfter(order)
	ask("let go after it", after, err)

	flight, stack := r.Flight(), r.Counterweight().Stack
	trims, err := flight.Trims(trim("low"), trim("high"))
	ask("trims", trims, err)
	top, err := flight.Top(at)
	ask("top", top, err)
	access, err := flight.Access("", stack)
	ask("access", access, err)
	hides, err := flight.Hides(arbor.Section{}, units.Length(number("upstage", 0, 9)), units.Length(number("drop", 0, 9)))
	ask("hides", hides, err)
}
