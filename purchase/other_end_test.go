package purchase_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// turnedRound is a drawn set with drag and rims, and the same with the path of each lift line told from its other end.
func turnedRound(t *rapid.T) (d drawn, there, back *purchase.Reeved) {
	d = drawReeving(t)
	for _, rp := range d.ropes() {
		for i := 1; i < len(rp.Path)-1; i++ {
			rp.Path[i].Drag = purchase.Drag(rapid.SampledFrom([]float64{0, 0.01, 0.06}).Draw(t, "drag"))
			rp.Path[i].Rim = units.Mass(rapid.SampledFrom([]float64{0, 3}).Draw(t, "rim"))
		}
	}
	there, err := d.Rig()
	if err != nil {
		t.Fatal(err)
	}
	other := d.Reeving
	other.Lift = slices.Clone(d.Lift)
	for i := range other.Lift {
		other.Lift[i].Path = slices.Clone(d.Lift[i].Path)
		slices.Reverse(other.Lift[i].Path)
	}
	if back, err = other.Rig(); err != nil {
		t.Fatal(err)
	}
	return d, there, back
}

// It does not matter from which of its ends the path of a lift line is told: what it bears, at rest and while it runs, taut or not,
// what it does to the blocks, to batten and arbor and to the hand, and how the set moves and runs away, are the same.
func TestPropLiftLinesToldFromTheirOtherEnd(t *testing.T) {
	slack, ran := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d, there, back := turnedRound(t)
		lowest, highest := there.Reach()
		trim := lowest + (highest - lowest).Scale(rapid.Float64Range(0.05, 0.95).Draw(t, "trim"))
		on := purchase.Bodies{Idler: 300}
		for range d.lines {
			on.Pulls = append(on.Pulls, units.Force(rapid.SampledFrom([]float64{0, 3, 500}).Draw(t, "pull")))
		}
		balanced, err := there.Counterweight(trim, sumOf(on.Pulls).Mass(units.StandardGravity))
		if err != nil {
			t.Fatal(err)
		}
		on.Arbor = max(0, balanced.Scale(rapid.SampledFrom([]float64{0.5, 0.97, 1.03, 1.6}).Draw(t, "arbor over balance"))) + 1
		is := func(what string, a, b float64) {
			t.Helper()
			if !near.Abs(a, b, 1e-8*(1+max(a, -a))) {
				t.Fatalf("%s: %v, told from the other end %v", what, a, b)
			}
		}
		ropes := func(a, b purchase.RopeState, turned bool) {
			n := len(a.Parts)
			if a.Slack != b.Slack {
				t.Fatalf("%s: slack %v, told from the other end %v", a.Name, a.Slack, b.Slack)
			}
			if a.Slack {
				slack++
			}
			for i, p := range a.Parts {
				q := b.Parts[i]
				if turned {
					q = b.Parts[n-1-i]
					q.From, q.To, q.TensionFrom, q.TensionTo = q.To, q.From, q.TensionTo, q.TensionFrom
				}
				if p.From != q.From || p.To != q.To || p.TensionFrom < 0 || p.TensionTo < 0 {
					t.Fatalf("%s: %+v, told from the other end %+v", a.Name, p, q)
				}
				is(a.Name, p.TensionFrom.In(units.Newton), q.TensionFrom.In(units.Newton))
				is(a.Name, p.TensionTo.In(units.Newton), q.TensionTo.In(units.Newton))
			}
		}
		loads := func(a, b []purchase.Block) {
			for _, x := range a {
				for _, y := range b {
					if x.Name == y.Name {
						is(x.Name, x.Load.Up.In(units.Newton), y.Load.Up.In(units.Newton))
						is(x.Name, x.Load.Across.In(units.Newton), y.Load.Across.In(units.Newton))
					}
				}
			}
		}
		restThere, err := there.At(trim, on)
		restBack, also := back.At(trim, on)
		if err != nil || also != nil {
			t.Fatal(err, also)
		}
		for i := range restThere.Lift {
			ropes(restThere.Lift[i], restBack.Lift[i], true)
		}
		ropes(restThere.Hand, restBack.Hand, false)
		loads(restThere.Blocks, restBack.Blocks)
		bandsThere, err := there.Rest(trim, on)
		bandsBack, also := back.Rest(trim, on)
		if err != nil || also != nil {
			t.Fatal(err, also)
		}
		band := func(what string, a, b purchase.ForceBand) {
			t.Helper()
			is(what, a.Least.In(units.Newton), b.Least.In(units.Newton))
			is(what, a.Most.In(units.Newton), b.Most.In(units.Newton))
		}
		for i, a := range bandsThere.Lift {
			for k, p := range a.Parts {
				q := bandsBack.Lift[i].Parts[len(a.Parts)-1-k]
				band(a.Name, p.TensionFrom, q.TensionTo)
				band(a.Name, p.TensionTo, q.TensionFrom)
			}
		}
		for i, a := range bandsThere.Bodies {
			band(a.Name, a.Up, bandsBack.Bodies[i].Up)
			band(a.Name, a.Across, bandsBack.Bodies[i].Across)
		}
		for _, way := range []purchase.Way{purchase.Out, purchase.In} {
			a, err := there.Run(trim, on, way)
			b, also := back.Run(trim, on, way)
			if (err == nil) != (also == nil) || a.Rope != b.Rope || a.Slack != b.Slack {
				t.Fatalf("%v %v, told from the other end %v %v; %v, %v", a.Rope, a.Slack, b.Rope, b.Slack, err, also)
			}
			if err != nil {
				continue
			}
			is("pull", a.Pull.In(units.Newton), b.Pull.In(units.Newton))
			for i := range a.Lift {
				ropes(a.Lift[i], b.Lift[i], true)
			}
			loads(a.Blocks, b.Blocks)
			gain, err := there.Gain(trim, on, way, 1, purchase.Pulling{})
			gainBack, also := back.Gain(trim, on, way, 1, purchase.Pulling{})
			if err != nil || also != nil {
				t.Fatal(err, also)
			}
			is("gain", float64(gain), float64(gainBack))
		}
		let := purchase.LetGo{Trim: trim, Low: lowest + 0.01, High: highest - 0.01, On: on}
		a, err := there.LetGo(let)
		b, also := back.LetGo(let)
		if err != nil || also != nil || a.Way != b.Way || a.AtStop != b.AtStop {
			t.Fatalf("runs away %+v, told from the other end %+v; %v, %v", a, b, err, also)
		}
		if a.Way != 0 && a.AtStop && a.Gain > 1e-3 {
			ran++
			is("time", a.Time.In(units.Second), b.Time.In(units.Second))
			is("energy", a.Energy.In(units.Joule), b.Energy.In(units.Joule))
			is("most", float64(a.Most), float64(b.Most))
		}
	})
	if slack == 0 || ran == 0 {
		t.Errorf("%d slack lines, %d runaways: want both", slack, ran)
	}
}
