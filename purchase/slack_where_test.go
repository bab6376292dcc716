package purchase_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// running walks along the hand line of a set that runs slowly, with a tension at its beginning and a pull down on one of its
// parts, −1 for none: the tension at both ends of each part, and what idler and arbor are pulled up with.
func (set heavyRopes) running(f []float64, part int, start, pull float64) (tensions []float64, idler, arbor float64) {
	hand := set.r.Hand
	tension := start
	for i := range len(hand.Path) - 1 {
		a, b := hand.Path[i], hand.Path[i+1]
		rise := set.height(b) - set.height(a)
		up := rise / math.Hypot((b.Across-a.Across).In(units.Metre), rise)
		if i > 0 {
			tension *= f[i-1]
		}
		onto := func(s purchase.Stop, up float64) {
			switch s.On {
			case purchase.Idler:
				idler += up * tension
			case purchase.Arbor:
				arbor += up * tension
			}
		}
		tensions = append(tensions, tension)
		onto(a, up)
		tension += hand.Mass.In(units.KilogramPerMetre) * g * rise
		if i == part {
			tension += math.Copysign(pull, up*pull) // above the hand the rope bears the pull too
		}
		tensions = append(tensions, tension)
		onto(b, -up)
	}
	return tensions, idler, arbor
}

// factors are what the sheaves of a rope make of its tension while the batten flies a way: past each of them it is the tighter side to
// which the rope runs.
func (set heavyRopes) factors(g purchase.Geometry, rope int, way purchase.Way) []float64 {
	turns := append(g.Lift[:len(g.Lift):len(g.Lift)], g.Hand)[rope].Turns
	f := make([]float64, len(turns))
	for i, k := range set.k[rope] {
		switch runs := turns[i].Speed; {
		case runs == 0:
			f[i] = 1
		case (runs > 0) == (way == purchase.Out):
			f[i] = k
		default:
			f[i] = 1 / k
		}
	}
	return f
}

// lowest is the part with the lowest tension, the first of equals, and that tension where it is below nothing.
func lowest(tensions []float64) (part int, low float64) {
	for i, t := range tensions {
		if t < low-1e-9 {
			part, low = i/2, t
		}
	}
	return part, low
}

// Where a hand line would have to push, whoever asks what the hand feels or when the set stays is told of the part where it would
// push the most; and where it stays taut all along, of none. Both are worked out by a walk along the ropes.
func TestPropSlackIsToldWhereItIsTheMost(t *testing.T) {
	told := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		r, set := drawHeavyRopes(t, 8, 0.1, 0.2)
		trim := units.Length(set.trim)
		on := purchase.Bodies{}
		on.Pulls = evenly(len(set.r.Lift), units.Force(rapid.Float64Range(500, 2500).Draw(t, "pull")))
		balanced, err := r.Counterweight(trim, sumOf(on.Pulls).Mass(units.StandardGravity))
		if err != nil {
			t.Fatal(err)
		}
		g, err := r.Geometry(trim)
		if err != nil {
			t.Fatal(err)
		}
		n := len(set.r.Lift)
		// fault is the field that is to be told of, with what is said of it; none where it is taut, and nothing is asked where that is
		// a matter of rounding.
		fault := func(tensions []float64) (field, says string, clear bool) {
			part, low := lowest(tensions)
			if low == 0 {
				return "", "", true
			}
			path := set.r.Hand.Path
			return fmt.Sprintf("hand.path[%d]", part), fmt.Sprintf("%q to %q at ", path[part].Name, path[part+1].Name), low < -2e-6
		}
		is := func(asked string, err error, field, says string) {
			var fe *units.FieldError
			if field == "" && err != nil {
				t.Fatalf("%s: %v, though it is taut all along", asked, err)
			}
			if field != "" && (!errors.As(err, &fe) || !errors.Is(err, purchase.ErrSlack) || fe.Field != field || !strings.HasPrefix(fe.Value, says)) {
				t.Fatalf("%s: %v; want a slack %s, %s", asked, err, field, says)
			}
			told[asked+" "+field]++
		}
		ask := func(on purchase.Bodies) {
			_, stays := r.Stays(trim, on)
			var apart []error
			if joined, ok := stays.(interface{ Unwrap() []error }); ok {
				apart = joined.Unwrap()
			}
			for _, way := range []purchase.Way{purchase.Out, purchase.In} {
				f := set.factors(g, n, way)
				lifts := 0.0
				for i, rope := range set.r.Lift {
					lifts += sumOn(purchase.Arbor, set.walk(rope, set.factors(g, i, way), 0, len(rope.Path)-1, unknown{plain: on.Pulls[i].In(units.Newton)})).plain
				}
				part := set.idler - 1 // the inner rope; the outer one comes next
				if way == purchase.In {
					part = set.idler
				}
				_, idler, arbor := set.running(f, part, 0, 0)
				_, idlerStart, arborStart := set.running(f, part, 1, 0)
				wanted := on.Idler.In(units.Kilogram)*9.80665 - idler
				alone, _, _ := set.running(f, -1, wanted/(idlerStart-idler), 0)
				if field, says, clear := fault(alone); clear && field == "" {
					is("stays", nil, "", "")
				} else if clear {
					if len(apart) == 0 {
						t.Fatalf("stays: %v; want a slack %s while it runs %v", stays, field, way)
					}
					is("stays", apart[0], field, says)
					apart = apart[1:]
				} else {
					return
				}
				var tensions []float64
				for range 2 {
					_, idlerPull, arborPull := set.running(f, part, 0, 1)
					q := on.Arbor.In(units.Kilogram)*9.80665 - lifts - arbor
					a, b, c, d := idlerStart-idler, idlerPull-idler, arborStart-arbor, arborPull-arbor
					start, pull := (wanted*d-q*b)/(a*d-b*c), (a*q-c*wanted)/(a*d-b*c)
					tensions, _, _ = set.running(f, part, start, pull)
					if pull >= 0 {
						break
					}
					part = 2*set.idler - 1 - part // the other one holds it back
				}
				if field, says, clear := fault(tensions); clear {
					_, err := r.Run(trim, on, way)
					is("run", err, field, says)
				}
			}
			if len(apart) != 0 {
				t.Fatalf("stays: %v, though it is taut all along", apart)
			}
		}
		for _, idler := range []units.Mass{0, 5, 30} {
			for _, off := range []units.Mass{-150, -60, 0, 60} {
				on.Idler, on.Arbor = idler, max(0, balanced+off)
				ask(on)
			}
		}
	})
	run, stays := len(told)-1, 0
	for asked := range told {
		if strings.HasPrefix(asked, "stays ") {
			run, stays = run-1, stays+1
		}
	}
	if told["run "] == 0 || told["stays "] == 0 || run < 1 || stays < 2 { // taut, and slack somewhere
		t.Errorf("told of %v only", told)
	}
}
