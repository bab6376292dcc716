package purchase_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// unknown is a tension, or a load, that goes straight with one that is not known yet.
type unknown struct{ plain, per float64 }

func (u unknown) at(x float64) float64 { return u.plain + u.per*x }

// heavyRopes is a set at rest whose ropes weigh something, to be worked out by walking along each of them.
type heavyRopes struct {
	r         purchase.Reeving
	trim, top float64
	k         [][]float64 // of each rope, the lift lines and then the hand line, what each sheave between its ends can hold
	idler     int         // which stop of the hand line that is
}

// drawHeavyRopes draws a set with ropes up to some weight and some of its sheaves of some drag.
func drawHeavyRopes(t *rapid.T, heaviest float64, drags ...float64) (*purchase.Reeved, heavyRopes) {
	kinds := []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple}
	l := weightless(purchase.Double)
	l.Kind, l.Hand = rapid.SampledFrom(kinds).Draw(t, "kind"), rapid.SampledFrom(kinds).Draw(t, "hand line")
	l.Loft = l.Loft[:rapid.IntRange(1, 2).Draw(t, "lines")]
	l.LiftMass, l.HandMass = units.LineMass(rapid.Float64Range(0, 2).Draw(t, "lift lines")), units.LineMass(rapid.Float64Range(0, heaviest).Draw(t, "hand line's mass"))
	reeving := l.Reeving()
	stiff := 0 // few enough to try all of them every way
	for _, rope := range append(reeving.Lift[:len(reeving.Lift):len(reeving.Lift)], reeving.Hand) {
		for i := 1; i < len(rope.Path)-1; i++ {
			if drag := purchase.Drag(rapid.SampledFrom(append(drags, 0)).Draw(t, "drag")); drag > 0 && stiff < 7 {
				rope.Path[i].Drag = drag
				stiff++
			}
		}
	}
	return layHeavyRopes(t, reeving, rapid.Float64Range(0.1, 0.9).Draw(t, "trim"))
}

// layHeavyRopes rigs them, at a share of their reach.
func layHeavyRopes(t interface{ Fatal(...any) }, reeving purchase.Reeving, at float64) (*purchase.Reeved, heavyRopes) {
	set := heavyRopes{r: reeving}
	r, err := reeving.Rig()
	if err != nil {
		t.Fatal(err)
	}
	lowest, highest := r.Reach()
	trim := lowest + (highest - lowest).Scale(at)
	g, err := r.Geometry(trim)
	if err != nil {
		t.Fatal(err)
	}
	ropes := append(reeving.Lift[:len(reeving.Lift):len(reeving.Lift)], reeving.Hand)
	set.trim, set.top = trim.In(units.Metre), g.ArborTop.In(units.Metre)
	for i, rope := range append(g.Lift, g.Hand) {
		var k []float64
		for j, turn := range rope.Turns {
			one, err := ropes[i].Path[j+1].Drag.Factor(turn.Angle)
			if err != nil {
				t.Fatal(err)
			}
			k = append(k, one)
			if i == len(ropes)-1 && ropes[i].Path[j+1].On == purchase.Idler {
				set.idler = j + 1
			}
		}
		set.k = append(set.k, k)
	}
	return r, set
}

func (set heavyRopes) height(s purchase.Stop) float64 {
	return s.Height.In(units.Metre) + map[purchase.Body]float64{
		purchase.Batten: set.trim, purchase.Arbor: set.top, purchase.Idler: set.r.Idler.In(units.Metre),
	}[s.On]
}

// tug is what a rope pulls one of its stops with there, and at which part's which end it has that tension.
type tug struct {
	stop       purchase.Stop
	part, end  int
	across, up float64 // direction
	tension    unknown
}

// walk goes along a rope with what each of its sheaves happens to hold, from a stop on with the tension with which it comes there, or
// leaves it if that is its first, up to another stop.
func (set heavyRopes) walk(rope purchase.Rope, f []float64, from, to int, tension unknown) (pulls []tug) {
	weight := rope.Mass.In(units.KilogramPerMetre) * g
	way := func(part int) (across, up, rise float64) {
		a, b := rope.Path[part], rope.Path[part+1]
		rise = set.height(b) - set.height(a)
		across = (b.Across - a.Across).In(units.Metre)
		return across / math.Hypot(across, rise), rise / math.Hypot(across, rise), rise
	}
	for i := from; i <= to; i++ {
		if i > from {
			_, _, rise := way(i - 1)
			tension.plain += weight * rise
		}
		if i > 0 {
			across, up, _ := way(i - 1)
			pulls = append(pulls, tug{rope.Path[i], i - 1, 1, -across, -up, tension})
		}
		if i == len(rope.Path)-1 {
			return pulls
		}
		if i > 0 {
			tension = unknown{tension.plain * f[i-1], tension.per * f[i-1]}
		}
		across, up, _ := way(i)
		pulls = append(pulls, tug{rope.Path[i], i, 0, across, up, tension})
	}
	return pulls
}

func sumOn(body purchase.Body, pulls []tug) (sum unknown) {
	for _, p := range pulls {
		if p.stop.On == body {
			sum = unknown{sum.plain + p.up*p.tension.plain, sum.per + p.up*p.tension.per}
		}
	}
	return sum
}

// figures are those of a set at rest, each by its name.
type figures map[string]float64

func (f figures) add(pulls []tug, known float64) {
	for _, p := range pulls {
		tension := p.tension.at(known)
		f["across "+p.stop.Name] += p.across * tension
		f["up "+p.stop.Name] += p.up * tension
		f["across, all on "+p.stop.On.String()] += p.across * tension
		f["up, all on "+p.stop.On.String()] += p.up * tension
	}
}

func end(rope string, part, end int) string {
	return rope + string(rune('a'+part)) + string(rune('0'+end))
}

// at works everything out for what the sheaves happen to hold: of the lift lines from the batten on, of the hand line up to the lock from
// what the idler's parts hold, and beyond the lock from what the arbor still wants. Slack tells whether the rope above the lock is.
func (set heavyRopes) at(f [][]float64, on purchase.Bodies) (all figures, slack bool) {
	all = figures{}
	wants := on.Arbor.In(units.Kilogram) * g
	tensions := func(rope string, pulls []tug, known float64) {
		all.add(pulls, known)
		for _, p := range pulls {
			all[end(rope, p.part, p.end)] = p.tension.at(known)
		}
	}
	for i, rope := range set.r.Lift {
		pulls := set.walk(rope, f[i], 0, len(rope.Path)-1, unknown{plain: on.Pulls[i].In(units.Newton)})
		tensions(rope.Name, pulls, 0)
		wants -= sumOn(purchase.Arbor, pulls).plain
	}
	hand, n := set.r.Hand, len(set.r.Lift)
	weight, lock := hand.Mass.In(units.KilogramPerMetre)*g, set.r.Lock.In(units.Metre)
	lower := set.walk(hand, f[n], 0, set.idler, unknown{per: 1})
	upper := set.walk(hand, f[n], set.idler+1, len(hand.Path)-1, unknown{plain: weight * (set.height(hand.Path[set.idler+1]) - lock), per: 1})
	holds, idler := on.Idler.In(units.Kilogram)*g, sumOn(purchase.Idler, lower)
	if on.Base > 0 {
		holds = 2 * on.Base.In(units.Newton)
	}
	begins, foot, top := (holds-idler.plain)/idler.per, sumOn(purchase.Arbor, lower), sumOn(purchase.Arbor, upper)
	above := (wants - foot.at(begins) - top.plain) / top.per // by how much the lock leaves it tight
	slack = above < 0
	if slack && on.Base > 0 {
		above = 0
		begins = (wants - top.plain - foot.plain) / foot.per
	}
	below := lower[len(lower)-1].tension.at(begins) + weight*(lock-set.height(hand.Path[set.idler]))
	all["asked of the lock"] = below - above
	above = max(above, 0)
	tensions(hand.Name, lower, begins)
	tensions(hand.Name, upper, above)
	all["up "+purchase.RopeLock] = above - below
	all["across, all on rail"] += 0
	all["up, all on rail"] += above - below
	return all, slack
}

// The ends of every tension and every load, of all blocks and all that carries them, are those over all ways in which the sheaves
// may hold, found by trying each: while the rope above the lock stays taut, or is slack whatever they hold. Where it may be
// either a load need only be held by its band.
func TestPropRestOfHeavyRopes(t *testing.T) {
	tried := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		r, set := drawHeavyRopes(t, 2, 0.01, 0.03)
		on := purchase.Bodies{Idler: units.Mass(rapid.SampledFrom([]float64{40, 90}).Draw(t, "idler"))}
		on.Pulls = evenly(len(set.r.Lift), units.Force(rapid.Float64Range(1500, 2500).Draw(t, "pull")))
		held := rapid.Bool().Draw(t, "idler held")
		if held {
			on.Base = rapid.SampledFrom([]units.Force{0.3, 200, 450}).Draw(t, "base tension")
		}
		balanced, err := r.Counterweight(units.Length(set.trim), sumOf(on.Pulls).Mass(units.StandardGravity))
		if err != nil {
			t.Fatal(err)
		}
		on.Arbor = max(0, balanced+units.Mass(rapid.SampledFrom([]float64{-300, -60, -30, 0, 60}).Draw(t, "out of balance")))
		tried[set.tryEveryWay(t, r, on)]++
	})
	for _, regime := range []string{"taut", "slack", "either", "taut, idler held", "slack, idler held", "either, idler held"} {
		if tried[regime] == 0 {
			t.Errorf("never %s: %v", regime, tried)
		}
	}
}

// tryEveryWay holds the bands of a set at rest against all ways in which its sheaves may hold, and tells whether the rope above
// the lock is taut or slack in them.
func (set heavyRopes) tryEveryWay(t interface {
	Fatal(...any)
	Fatalf(string, ...any)
}, r *purchase.Reeved, on purchase.Bodies,
) string {
	got, err := r.Rest(units.Length(set.trim), on)
	if err != nil {
		t.Fatal(err)
	}
	least, most := figures{}, figures{}
	slacks, tauts, pushes := 0, 0, false
	var all func(rope, sheave int, f [][]float64)
	all = func(rope, sheave int, f [][]float64) {
		if rope == len(f) {
			one, slack := set.at(f, on)
			if slack {
				slacks++
			} else {
				tauts++
			}
			for what, x := range one {
				if low, ok := least[what]; !ok || x < low {
					least[what] = x
				}
				if high, ok := most[what]; !ok || x > high {
					most[what] = x
				}
			}
			return
		}
		if sheave == len(f[rope]) {
			all(rope+1, 0, f)
			return
		}
		k := set.k[rope][sheave]
		f[rope][sheave] = k
		all(rope, sheave+1, f)
		if k != 1 {
			f[rope][sheave] = 1 / k
			all(rope, sheave+1, f)
		}
	}
	f := make([][]float64, len(set.k))
	for i := range f {
		f[i] = make([]float64, len(set.k[i]))
	}
	all(0, 0, f)
	for _, rope := range append(got.Lift, got.Hand) {
		for i := range rope.Parts {
			pushes = pushes || least[end(rope.Name, i, 0)] < -1e-9 || least[end(rope.Name, i, 1)] < -1e-9
		}
	}
	if pushes {
		return "pushes" // elsewhere than above the lock: the figures do not add up then
	}
	regime := "taut"
	switch {
	case slacks > 0 && tauts > 0:
		regime = "either"
	case slacks > 0:
		regime = "slack"
	}
	if on.Base > 0 {
		regime += ", idler held"
	}
	is := func(what string, got purchase.ForceBand, exact bool) {
		low, high := got.Least.In(units.Newton), got.Most.In(units.Newton)
		if _, ok := least[what]; !ok {
			t.Fatalf("%s was not worked out", what)
		}
		tol := 1e-9 * (1000 + math.Abs(low) + math.Abs(high))
		if exact && !(near.Abs(low, least[what], tol) && near.Abs(high, most[what], tol)) || low > least[what]+tol || high < most[what]-tol {
			t.Fatalf("%s, %s: %v to %v N, want %v to %v", regime, what, low, high, least[what], most[what])
		}
	}
	for _, rope := range append(got.Lift, got.Hand) {
		for i, p := range rope.Parts {
			is(end(rope.Name, i, 0), p.TensionFrom, true)
			is(end(rope.Name, i, 1), p.TensionTo, true)
		}
	}
	is("asked of the lock", got.Lock, true)
	exact := regime[0] != 'e'
	for _, b := range got.Blocks {
		if b.Name != purchase.RopeLock {
			is("across "+b.Name, b.Across, exact)
		}
		is("up "+b.Name, b.Up, exact)
	}
	for _, b := range got.Bodies {
		is("across, all on "+b.Name, b.Across, exact)
		is("up, all on "+b.Name, b.Up, exact)
	}
	return regime
}

// Of a held idler the rope below the lock takes what the rope above cannot give up, with just what its own sheaves hold: over a triple hand
// line whose idler alone drags the least tension of it is not that with the base tension, for with so little below the rope above is slack.
func TestRestOfAHeldIdlerBelowASlackRope(t *testing.T) {
	l := oneLine(purchase.Double)
	l.Kind, l.Hand, l.LiftMass, l.HandMass = purchase.Single, purchase.Triple, 1, 0.5
	reeving := l.Reeving()
	reeving.Hand.Path[3].Drag = 0.01
	r, set := layHeavyRopes(t, reeving, 0.9)
	on := purchase.Bodies{Pulls: evenly(1, 1500), Base: 196.133}
	balanced, err := r.Counterweight(units.Length(set.trim), sumOf(on.Pulls).Mass(units.StandardGravity))
	if err != nil {
		t.Fatal(err)
	}
	on.Arbor = balanced - 60
	if regime := set.tryEveryWay(t, r, on); regime != "either, idler held" {
		t.Errorf("the rope above the lock is %s", regime)
	}
}
