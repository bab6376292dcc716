package purchase_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
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

// lowest is the lowest tension where it is below nothing, and the parts that have it but for rounding.
func lowest(tensions []float64) (parts []int, low float64) {
	if low = slices.Min(tensions); low > -1e-9 {
		return nil, 0
	}
	for i, t := range tensions {
		if t < low+1e-9*(1-low) {
			parts = append(parts, i/2)
		}
	}
	return parts, low
}

// Where a hand line would have to push, whoever asks what the hand feels or when the set stays is told of the part where it would
// push the most; and where it stays taut all along, of none. Both are worked out by a walk along the ropes.
func TestPropSlackIsToldWhereItIsTheMost(t *testing.T) {
	told := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		r, set := drawHeavyRopes(t, 15, 0.2, 0.4, 0.4)
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
		// is holds what is told against the parts that are slack the most: none where it is taut, and nothing is asked where that is a
		// matter of rounding.
		is := func(asked string, err error, parts []int) {
			if len(parts) == 0 {
				told[asked]++
				if err != nil {
					t.Fatalf("%s: %v, though it is taut all along", asked, err)
				}
				return
			}
			told[asked+" slack"]++
			path := set.r.Hand.Path
			var fe *units.FieldError
			if !errors.As(err, &fe) || !errors.Is(err, purchase.ErrSlack) || !slices.ContainsFunc(parts, func(part int) bool {
				return fe.Field == fmt.Sprintf("hand.path[%d]", part) && strings.HasPrefix(fe.Value, fmt.Sprintf("%q to %q at ", path[part].Name, path[part+1].Name))
			}) {
				t.Fatalf("%s: %v; want a slack part %v of the hand line", asked, err, parts)
			}
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
				switch parts, low := lowest(alone); {
				case low == 0:
					is("stays", nil, nil)
				case low > -2e-6:
					return
				case len(apart) == 0:
					t.Fatalf("stays: %v; want slack parts %v while it runs %v", stays, parts, way)
				default:
					is("stays", apart[0], parts)
					apart = apart[1:]
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
				if parts, low := lowest(tensions); low == 0 || low < -2e-6 {
					_, err := r.Run(trim, on, way)
					is("run", err, parts)
				}
			}
			if len(apart) != 0 {
				t.Fatalf("stays: %v, though it is taut all along", apart)
			}
		}
		for _, idler := range []units.Mass{0, 1, 10} {
			for _, off := range []units.Mass{-150, -60, 0, 60} {
				on.Idler, on.Arbor = idler, max(0, balanced+off)
				ask(on)
			}
		}
	})
	if told["run"] == 0 || told["stays"] == 0 || told["stays slack"] == 0 {
		t.Errorf("told of %v only", told)
	}
}
