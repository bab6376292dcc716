package purchase_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// drawZigzag draws a lift line over so many fixed sheaves, on grid and building in turn, no two of the same drag, and round
// the arbor's top to a dead end.
func drawZigzag(t *rapid.T, fixed int) purchase.Reeving {
	path := []purchase.Stop{stop("batten", purchase.Batten, 30, 0), stop("loft", purchase.Grid, 30, 20)}
	for k := range fixed - 2 {
		on := []purchase.Body{purchase.Building, purchase.Grid}[k%2]
		height := 19.5 + rapid.Float64Range(-1, 1).Draw(t, "height")
		path = append(path, stop(fmt.Sprint("mule ", k+1), on, units.Length(28-2*k), units.Length(height+float64(k%2))))
	}
	path = append(path, stop("head", purchase.HeadBeam, 0, 20), stop("top", purchase.Arbor, 0, 0), stop("end", purchase.HeadBeam, 0, 21))
	for k := 1; k < len(path)-1; k++ {
		path[k].Drag = purchase.Drag(rapid.Float64Range(0.01, 0.1).Draw(t, "drag"))
	}
	r := reeved(path...)
	r.Lift[0].Mass = units.LineMass(rapid.Float64Range(0, 0.5).Draw(t, "mass"))
	return r
}

// fixtures are what stands still and carries blocks of a zigzag.
var fixtures = []purchase.Body{purchase.Building, purchase.Grid, purchase.HeadBeam}

// The ends of each tension and of the load on each block are those of the worst of all ways in which the sheaves may hold, also
// on a line of more sheaves than are tried every way; so are those of what carries several blocks, on a line of up to eight.
func TestPropRestOfManySheaves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fixed := rapid.SampledFrom([]int{6, 7, 7, 7, 8, 9}).Draw(t, "fixed sheaves") // one more holds the arbor
		reeving := drawZigzag(t, fixed)
		r, err := reeving.Rig()
		if err != nil {
			t.Skip("a sheave that it runs straight past")
		}
		const pull, trim = 700.0, 4.0
		rest, err := r.Rest(trim, purchase.Bodies{Pulls: evenly(1, pull), Arbor: 150})
		if err != nil {
			t.Fatal(err)
		}
		g, err := r.Geometry(trim)
		if err != nil {
			t.Fatal(err)
		}
		path := reeving.Lift[0].Path
		height := func(s purchase.Stop) float64 {
			return s.Height.In(units.Metre) + map[purchase.Body]float64{purchase.Batten: trim, purchase.Arbor: g.ArborTop.In(units.Metre)}[s.On]
		}
		n := len(path) - 1 // parts
		k, rise, across, up := make([]float64, n-1), make([]float64, n), make([]float64, n), make([]float64, n)
		for i := range n {
			rise[i] = height(path[i+1]) - height(path[i])
			dx := (path[i+1].Across - path[i].Across).In(units.Metre)
			across[i], up[i] = dx/math.Hypot(dx, rise[i]), rise[i]/math.Hypot(dx, rise[i])
			if i < n-1 {
				if k[i], err = path[i+1].Drag.Factor(g.Lift[0].Turns[i].Angle); err != nil {
					t.Fatal(err)
				}
			}
		}
		w := reeving.Lift[0].Mass.Weight(units.StandardGravity).In(units.NewtonPerMetre)
		// Of each stop from 1 on the tension up to it, and what it bears across and up; then of each fixture what that bears.
		ends := make([][2]float64, 3*n+2*len(fixtures))
		for i := range ends {
			ends[i] = [2]float64{math.Inf(1), math.Inf(-1)}
		}
		note := func(what int, x float64) {
			ends[what] = [2]float64{min(ends[what][0], x), max(ends[what][1], x)}
		}
		corners(k, func(factor []float64) {
			tension := pull
			var acrossAll, upAll [purchase.Arbor]float64
			for i := range n {
				tension += w * rise[i]
				note(3*i, tension)
				past, loadAcross, loadUp := 0.0, -tension*across[i], -tension*up[i]
				if i < n-1 {
					past = tension * factor[i]
					loadAcross, loadUp = loadAcross+past*across[i+1], loadUp+past*up[i+1]
				}
				note(3*i+1, loadAcross)
				note(3*i+2, loadUp)
				if on := path[i+1].On; on < purchase.Arbor {
					acrossAll[on], upAll[on] = acrossAll[on]+loadAcross, upAll[on]+loadUp
				}
				tension = past
			}
			for i, on := range fixtures {
				note(3*n+2*i, acrossAll[on])
				note(3*n+2*i+1, upAll[on])
			}
		})
		is := func(what int, got purchase.ForceBand) {
			least, most, want := got.Least.In(units.Newton), got.Most.In(units.Newton), ends[what]
			if what >= 3*n && n-1 > 8 { // what several blocks bear is then a band that is reached, if not the widest
				if least < want[0]-1e-6 || most > want[1]+1e-6 {
					t.Fatalf("figure %d: %v to %v, no way of holding makes more than %v to %v N", what, got.Least, got.Most, want[0], want[1])
				}
				return
			}
			if !near.Abs(least, want[0], 1e-6) || !near.Abs(most, want[1], 1e-6) {
				t.Fatalf("figure %d: %v to %v, want %v to %v N", what, got.Least, got.Most, want[0], want[1])
			}
		}
		for i := range n {
			load := rest.Load(path[i+1].Name)
			is(3*i, rest.Lift[0].Parts[i].TensionTo)
			is(3*i+1, load.Across)
			is(3*i+2, load.Up)
		}
		for i, on := range fixtures {
			load := rest.On(on)
			is(3*n+2*i, load.Across)
			is(3*n+2*i+1, load.Up)
		}
	})
}

// Where a batten hangs on three parts it is their sum that is known, and what sheaves hold before a place counts as well as behind it: then
// too the ends of each tension are those of all ways in which ten sheaves may hold.
func TestPropRestOfManySheavesOnThreeParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path := []purchase.Stop{
			stop("batten", purchase.Batten, 30, 0), stop("over", purchase.Grid, 30, 20), stop("on", purchase.Grid, 29, 20),
			stop("under", purchase.Batten, 29, 0), stop("loft", purchase.Grid, 29, 20),
		}
		for k := range 4 {
			height := 19.5 + rapid.Float64Range(-1, 1).Draw(t, "height")
			path = append(path, stop(fmt.Sprint("mule ", k+1), purchase.Building, units.Length(28-2*k), units.Length(height+float64(k%2))))
		}
		path = append(path, stop("head", purchase.HeadBeam, 0, 20), stop("top", purchase.Arbor, 0, 0), stop("end", purchase.HeadBeam, 0, 21))
		for k := 1; k < len(path)-1; k++ {
			path[k].Drag = purchase.Drag(rapid.Float64Range(0.01, 0.1).Draw(t, "drag"))
		}
		r, err := reeved(path...).Rig()
		if err != nil {
			t.Skip("a sheave that it runs straight past")
		}
		const load = 900.0
		rest, err := r.Rest(4, purchase.Bodies{Pulls: evenly(1, load), Arbor: 100})
		if err != nil {
			t.Fatal(err)
		}
		g, err := r.Geometry(4)
		if err != nil {
			t.Fatal(err)
		}
		line := g.Lift[0]
		k := make([]float64, len(line.Turns))
		for i, turn := range line.Turns {
			if k[i], err = path[i+1].Drag.Factor(turn.Angle); err != nil {
				t.Fatal(err)
			}
		}
		least, most := make([]float64, len(line.Parts)), make([]float64, len(line.Parts))
		for i := range least {
			least[i] = math.Inf(1)
		}
		corners(k, func(factor []float64) {
			tension := load / (1 + factor[0]*factor[1] + factor[0]*factor[1]*factor[2])
			for i := range least {
				if i > 0 {
					tension *= factor[i-1]
				}
				least[i], most[i] = min(least[i], tension), max(most[i], tension)
			}
		})
		for i, p := range rest.Lift[0].Parts {
			for _, band := range []purchase.ForceBand{p.TensionFrom, p.TensionTo} {
				if !near.Rel(band.Least.In(units.Newton), least[i], 1e-9) || !near.Rel(band.Most.In(units.Newton), most[i], 1e-9) {
					t.Fatalf("%s to %s: %v to %v, want %v to %v N", p.From, p.To, band.Least, band.Most, least[i], most[i])
				}
			}
		}
	})
}
