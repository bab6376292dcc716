package load_test

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

func drawDrape(t *rapid.T) load.Drape {
	return load.Drape{
		Width:    units.Length(rapid.Float64Range(0.1, 10).Draw(t, "width")),
		Drop:     units.Length(rapid.Float64Range(0.01, 10).Draw(t, "drop")),
		Below:    units.Length(rapid.Float64Range(0, 3).Draw(t, "below")),
		Cloth:    units.AreaMass(rapid.Float64Range(0.05, 1).Draw(t, "cloth")),
		Fullness: rapid.Float64Range(0, 2).Draw(t, "fullness"),
		Hem:      units.LineMass(rapid.Float64Range(0.01, 3).Draw(t, "hem")),
	}
}

func massOf(h load.Hang) units.Mass {
	var sum units.Mass
	for _, i := range h {
		sum += i.Mass
	}
	return sum
}

// centre is that of the masses along the batten. A mass per length that goes in a straight line
// from 1−k times its mean to 1+k times has its centre k/6 of the length beyond the middle.
func centre(h load.Hang) float64 {
	var mass, moment float64
	for _, i := range h {
		from, to := i.From.In(units.Metre), i.To.In(units.Metre)
		mass += float64(i.Mass)
		moment += float64(i.Mass) * (from + (to-from)*(0.5+i.Taper/6))
	}
	return moment / mass
}

// TestHungKeepsMass: however it hangs, a drape has one mass, hangs even about its middle, and
// its parts have their feet at one trim to the last bit, with the tops at zero or below.
func TestHungKeepsMass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDrape(t)
		g := load.Gather{
			Width: d.Width.Scale(rapid.Float64Range(0, 1).Draw(t, "gathered")),
			Lean:  rapid.Float64Range(-1, 1).Draw(t, "lean"),
			Lift:  d.Drop.Scale(rapid.Float64Range(0, 0.99).Draw(t, "lift")),
		}
		const from = 1
		for name, h := range map[string]load.Hang{"whole": d.Hang("x", from), "parted": d.Parted("x", from, g)} {
			if apart := units.Abs(massOf(h) - d.Mass()); apart > d.Mass().Scale(1e-12) {
				t.Fatalf("%s: %v of %v", name, massOf(h), d.Mass())
			}
			if want := float64(from + d.Width.Scale(0.5)); math.Abs(centre(h)-want) > 1e-9 {
				t.Fatalf("%s: centre %v, want %v", name, centre(h), want)
			}
			for _, i := range h {
				if i.Below+i.Height != h[0].Below+h[0].Height || i.Below < d.Below || i.From < from || i.To > from+d.Width+1e-12 {
					t.Fatalf("%s: %+v", name, h)
				}
			}
			rigged, err := fiveLines().Rig(h)
			if err != nil {
				t.Fatal(err)
			}
			if breaks := rigged.Breaks(); len(breaks) != 2 {
				t.Fatalf("%s: breaks at %v", name, breaks)
			}
		}
	})
}

// TestHemSooner: with the hem as an item of its own the batten never carries more of the drape
// than with the hem spread over the drop, while a part of it lies on the deck.
func TestHemSooner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDrape(t)
		trim := (d.Below + d.Drop).Scale(rapid.Float64Range(0, 2).Draw(t, "trim"))
		var parts units.Mass
		for _, i := range d.Hang("x", 0) {
			parts += i.Carried(trim)
		}
		whole := d.Item("x", 0).Carried(trim)
		if trim > d.Below+d.Drop {
			if units.Abs(parts-whole) > whole.Scale(1e-12) {
				t.Fatalf("clear of the deck: %v in parts, %v whole", parts, whole)
			}
		} else if parts > whole.Scale(1+1e-12) {
			t.Fatalf("at %v: %v in parts, %v whole", trim, parts, whole)
		}
	})
}

// TestThinnedKeepsWeight: a thinner wall is weaker and weighs the same.
func TestThinnedKeepsWeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outer := units.Length(rapid.Float64Range(0.01, 0.2).Draw(t, "outer"))
		tube := load.Tube{
			Outer:   outer,
			Wall:    outer.Scale(rapid.Float64Range(0.01, 0.5).Draw(t, "wall")),
			Density: units.Density(rapid.Float64Range(1000, 12000).Draw(t, "density")),
			Modulus: load.SteelModulusUS,
		}
		a, b := rapid.Float64Range(0.01, 1).Draw(t, "a"), rapid.Float64Range(0.01, 1).Draw(t, "b")
		thin, thick := tube.Thinned(min(a, b)), tube.Thinned(max(a, b))
		if r := units.Ratio(thin.LineMass(), tube.LineMass()); math.Abs(r-1) > 1e-9 {
			t.Fatalf("weight %v of what it was", r)
		}
		if thin.SecondMoment() > thick.SecondMoment().Scale(1+1e-12) || thick.SecondMoment() > tube.SecondMoment().Scale(1+1e-12) {
			t.Fatalf("second moments %v, %v, %v", thin.SecondMoment(), thick.SecondMoment(), tube.SecondMoment())
		}
	})
}

// TestImpactFactorBalances: the fall and the give do the work that the spring takes up: with W
// = 1 and the factor f, drop + f·stretch = ½·f·f·stretch. It is 2 or more, grows with the drop
// and falls as the give grows.
func TestImpactFactorBalances(t *testing.T) {
	size := func(t *rapid.T, low, high float64, name string) units.Length {
		return units.Length(math.Pow(10, rapid.Float64Range(low, high).Draw(t, name)))
	}
	rapid.Check(t, func(t *rapid.T) {
		drop, more := size(t, -30, 11, "drop"), rapid.Float64Range(1, 1e3).Draw(t, "more")
		stretch := size(t, -9, 8, "stretch")
		drop = drop.Scale(1 / more)
		f, err := load.ImpactFactor(drop, stretch)
		if err != nil {
			t.Fatal(err)
		}
		if f < 2 {
			t.Fatalf("factor %v", f)
		}
		if work, taken := units.Ratio(drop, stretch)+f, f*f/2; math.Abs(work-taken) > 1e-14*taken {
			t.Fatalf("factor %v of %v and %v: work %v, taken up %v", f, drop, stretch, work, taken)
		}
		higher, err := load.ImpactFactor(drop.Scale(more), stretch)
		if err != nil || higher < f {
			t.Fatalf("%v, from higher %v, %v", f, higher, err)
		}
		softer, err := load.ImpactFactor(drop, stretch.Scale(more))
		if err != nil || softer > f {
			t.Fatalf("%v, where it gives more %v, %v", f, softer, err)
		}
	})
}

// wild draws numbers that no caller should give, and some that one might.
func wild(t *rapid.T, name string) float64 {
	return rapid.OneOf(
		rapid.SampledFrom([]float64{0, math.Copysign(0, -1), 1, -1, 0.5, 5e-324, 1e-9, 1e12, -1e12, math.MaxFloat64, math.NaN(), math.Inf(1), math.Inf(-1)}),
		rapid.Float64Range(0, 10),
		rapid.Float64(),
	).Draw(t, name)
}

// TestWildDescriptions: whatever is described, no mass is below zero or not finite, and Rig
// refuses it or every figure is finite.
func TestWildDescriptions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := load.Drape{
			Width: units.Length(wild(t, "width")), Drop: units.Length(wild(t, "drop")), Below: units.Length(wild(t, "below")),
			Cloth: units.AreaMass(wild(t, "cloth")), Fullness: wild(t, "fullness"), Hem: units.LineMass(wild(t, "hem")),
		}
		g := load.Gather{Width: units.Length(wild(t, "gathered")), Lean: wild(t, "lean"), Lift: units.Length(wild(t, "lift"))}
		c := load.Cable{
			LineMass: units.LineMass(wild(t, "line mass")), Count: rapid.Int().Draw(t, "count"), Slack: wild(t, "slack"),
			From: units.Length(wild(t, "from")), To: units.Length(wild(t, "to")),
			Tail: units.Length(wild(t, "tail")), TailAt: units.Length(wild(t, "tail at")),
		}
		b := fiveLines()
		b.Pipe = load.Tube{
			Outer: units.Length(wild(t, "outer")), Wall: units.Length(wild(t, "wall")),
			Density: units.Density(wild(t, "density")), Modulus: units.Stress(wild(t, "modulus")),
		}.Thinned(wild(t, "share"))
		if rapid.Bool().Draw(t, "a real pipe") {
			b.Pipe = pipe.Thinned(rapid.Float64().Draw(t, "share of it"))
		}
		if rapid.Bool().Draw(t, "the whole wall") {
			b.Pipe = pipe
		}
		at := units.Length(wild(t, "at"))
		for _, h := range []load.Hang{d.Hang("x", at), d.Parted("x", at, g), c.Hang("x")} {
			if len(h) == 0 {
				t.Fatal("no item")
			}
			for _, i := range h {
				if m := float64(i.Mass); !(m >= 0) || math.IsInf(m, 0) {
					t.Fatalf("%+v", i)
				}
			}
			r, err := b.Rig(h)
			if err != nil {
				continue
			}
			finiteIn(t, b)
			finiteIn(t, h)
			for _, trim := range append(r.Breaks(), 0, 5) {
				if m := float64(r.Carried(trim)); !(m > 0) || math.IsInf(m, 0) {
					t.Fatalf("carried %v of %+v", m, h)
				}
			}
		}
		f, err := load.ImpactFactor(d.Drop, d.Width)
		if math.IsNaN(f) || math.IsInf(f, 0) || (err == nil) != (f >= 2) {
			t.Fatalf("factor %v, %v", f, err)
		}
	})
}

// finiteIn walks over every number in a description.
func finiteIn(t *rapid.T, v any) {
	var walk func(reflect.Value)
	walk = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64:
			if math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0) {
				t.Fatalf("%v", v)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i))
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(v.Index(i))
			}
		}
	}
	walk(reflect.ValueOf(v))
}
