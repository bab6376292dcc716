package lineset_test

import (
	"math"
	"reflect"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// loads are the demands at a trim that a check may be held to, found from the state's parts and blocks one by one: of each the
// first line that bears the most, but for rounding.
func loads(t rapid.TB, r *lineset.Rigged, trim units.Length) map[string]demand {
	t.Helper()
	st, err := r.At(trim)
	if err != nil {
		t.Fatal(err)
	}
	h, err := r.Hand(trim)
	if err != nil {
		t.Fatal(err)
	}
	on := func(name string) float64 {
		var across, up float64
		for _, b := range st.Ropes.Blocks {
			if b.Name == name {
				across, up = across+b.Load.Across.In(units.Newton), up+b.Load.Up.In(units.Newton)
			}
		}
		return math.Hypot(across, up)
	}
	out := map[string]demand{}
	most := func(name, where string, load float64) {
		if now, ok := out[name]; !ok || load > now.load*(1+1e-9) {
			out[name] = demand{where, load}
		}
	}
	for i, rope := range st.Ropes.Lift {
		line := "line " + strconv.Itoa(i+1)
		for _, part := range rope.Parts {
			most("lift line tension", line, max(part.TensionFrom, part.TensionTo).In(units.Newton))
		}
		most("loft block load", line, on(purchase.LoftBlock(i+1)))
		most("lift line dead end", line, on(purchase.DeadEnd(i+1)))
		most("lift line beam block", line, on(purchase.BeamBlock(i+1)))
	}
	for _, loft := range r.Set().Rigging.Loft {
		for _, mule := range loft.Mules {
			most("mule block load", mule.Name, on(mule.Name))
		}
	}
	most("head block load", "", on(purchase.HeadBlock))
	most("pipe bending stress", "", st.Share.Stress.In(units.Pascal))
	rope := "inner rope"
	if st.Ropes.Lock < 0 {
		rope = "outer rope"
	}
	most("rope lock", rope, math.Abs(st.Ropes.Lock.In(units.Newton)))
	if !h.Out.Loose {
		most("hand pull to fly out", h.Out.Rope.String(), h.Out.Pull.In(units.Newton))
	}
	if !h.In.Loose {
		most("hand pull to fly in", h.In.Rope.String(), h.In.Pull.In(units.Newton))
	}
	return out
}

type demand struct {
	where string
	load  float64
}

// The worst over the travel is the worst, also where a line goes slack on the way and its neighbour's tension turns there, and a
// hair above where a standing piece leaves the deck: no state in between shows more, and at the trim that is named the block that
// is named bears just that.
func TestPropWorstIsTheWorst(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := drawSet(rt)
		if rapid.Bool().Draw(rt, "as it may be laid") {
			varied(rt, &s)
		}
		r, err := s.Rig(stock)
		if err != nil {
			rt.Skip(err)
		}
		checks := map[string]lineset.Check{}
		for _, c := range r.Checks() {
			checks[c.Name] = c
			if c.Where == "hand line slack" {
				continue
			}
			at := loads(rt, r, min(max(c.Trim, r.Travel().Lowest), r.Travel().Highest))
			if want, ok := at[c.Name]; ok && (!near.Abs(want.load, reflect.ValueOf(c.Demand).Float(), 1e-9*want.load+1e-6) || c.Where != want.where) {
				rt.Fatalf("%v; at that trim it is %+v", c, want)
			}
		}
		low, high := r.Low().Trim, r.High().Trim
		lift, held := checks["lift on the idler"], s.Rigging.Idler.Base > 0
		if held {
			lift = checks["outer rope kept tight"]
		}
		left := func(trim units.Length) (lock, grip units.Force) {
			st, err := r.At(trim)
			if err != nil {
				rt.Fatal(err)
			}
			return st.Ropes.Lock, st.Ropes.Grip
		}
		lock, grip := left(lift.Trim)
		worst, limit := lock-grip, grip
		if held {
			limit = s.Rigging.Idler.Base + s.Rigging.HandLine.Over(s.Rigging.Rail-s.Rigging.Idler.Height).Weight(units.StandardGravity)
		}
		if lift.Demand != units.Value(max(lock, 0)) || lift.Limit != units.Value(limit) || (lift.Verdict == lineset.NoLimit) != (s.Rigging.Idler.Mass == 0 && !held) {
			rt.Fatalf("%v; at that trim %v is asked, and the rope has %v", lift, lock, limit)
		}
		trims := []units.Length{low, high}
		for i := range 8 {
			trims = append(trims, low+(high-low).Scale(float64(i)/7))
		}
		for _, b := range r.Load().Turns(low, high) {
			for _, beside := range []units.Length{b, b + 1e-9, b + units.Millimetre} {
				if low <= beside && beside <= high {
					trims = append(trims, beside)
				}
			}
		}
		for _, trim := range trims {
			if lock, grip := left(trim); lock-grip > worst+1e-6*units.Newton {
				rt.Fatalf("%v; at %v it is %v less %v", lift, trim, lock, grip)
			}
			for name, now := range loads(rt, r, trim) {
				if c, ok := checks[name]; ok && c.Where != "hand line slack" && now.load > reflect.ValueOf(c.Demand).Float()*(1+1e-9)+1e-6 {
					rt.Fatalf("%s is %v at %v, more than in %v", name, now, trim, c)
				}
			}
		}
	})
}
