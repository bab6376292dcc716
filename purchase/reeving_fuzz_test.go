package purchase_test

import (
	"encoding/json"
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// FuzzReeving rigs whatever reeving its text describes, hangs whatever its numbers say on it, and asks every question:
// it never panics, and what it answers can be stored, so every number in it is finite.
func FuzzReeving(f *testing.F) {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple} {
		l := weightless(kind)
		l.Loft, l.DeadEnd, l.LiftMass, l.HandMass, l.Drag = l.Loft[:1], 61*units.Foot, 0.2, 0.3, 0.02
		l.Loft[0].Offsets = purchase.LineOffsets{Loft: 0.02, Head: 0.01, Arbor: 0.03}
		l.LiftDiameter, l.Sheaves.Head = 0.006, 0.2
		text, err := json.Marshal(l.Reeving())
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text, 400.0, 200*kind.Ratio(), 30.0, 0.5) // a standard reeving, for mutation
	}
	f.Add([]byte(`{"lift":[{"path":[{"on":"batten"},{"on":"arbor"}]}]}`), 0.0, 0.0, 0.0, 0.0) // a rope with no block
	f.Fuzz(func(t *testing.T, text []byte, pull, arbor, idler, share float64) {
		if len(text) > 1<<14 {
			t.Skip("bounded: size is not what is looked for here")
		}
		var r purchase.Reeving
		if json.Unmarshal(text, &r) != nil {
			return
		}
		rigged, err := r.Rig()
		if err != nil {
			return
		}
		on := purchase.Bodies{Pulls: evenly(len(r.Lift), units.Force(pull)), Arbor: units.Mass(arbor), Idler: units.Mass(idler)}
		stored := func(what string, answer any, err error) {
			t.Helper()
			if err != nil {
				return
			}
			if _, err := json.Marshal(answer); err != nil {
				t.Fatalf("%s: %v", what, err)
			}
		}
		lowest, highest := rigged.Reach()
		for _, trim := range []units.Length{r.Trim, lowest, highest, lowest + (highest - lowest).Scale(share)} {
			at, err := rigged.At(trim, on)
			stored("at", at, err)
			rest, err := rigged.Rest(trim, on)
			stored("rest", rest, err)
			feel, err := rigged.Feel(trim, on)
			stored("feel", feel, err)
			stays, err := rigged.Stays(trim, on)
			stored("stays", stays, err)
			geometry, err := rigged.Geometry(trim)
			stored("geometry", geometry, err)
			use, err := rigged.GeometryUse(r.Trim, trim, purchase.GeometryLimits{Fleet: purchase.FleetLimit, LiftRatio: 24, HandRatio: 8})
			stored("use of geometry", use, err)
			for _, way := range []purchase.Way{purchase.Out, purchase.In} {
				run, err := rigged.Run(trim, on, way)
				stored("run", run, err)
				gain, err := rigged.Gain(trim, on, way, units.Speed(share), purchase.Pulling{Pull: 50, Rope: purchase.InnerRope})
				stored("gain", gain, err)
				hand, err := rigged.HandFor(trim, on, purchase.Speeding{Way: way, Speed: 1, Gain: units.Acceleration(share)})
				stored("hand for", hand, err)
			}
			weighed, err := rigged.Weigh(purchase.Weighing{Trim: trim, On: on, Out: purchase.Pulled{Pull: 200}, In: purchase.Pulled{Pull: units.Force(share)}, Scale: 5})
			stored("weigh", weighed, err)
			flight := purchase.Flight{Low: r.Trim, High: trim, Carried: units.Mass(arbor), Arbor: units.Mass(arbor)}
			felt, err := rigged.Felt(trim, flight.Carried, flight.Arbor)
			stored("felt", felt, err)
			runaway, err := rigged.LetGo(purchase.LetGo{Trim: r.Trim, Low: min(trim, r.Trim), High: max(trim, r.Trim), On: on})
			stored("let go", runaway, err)
			flown, err := rigged.Fly(purchase.Fly{From: r.Trim, To: trim, Top: units.Speed(share), Start: 1, Stop: 0.5, On: on})
			stored("fly", flown, err)
			drift, err := rigged.Drift(flight)
			stored("drift", drift, err)
			flight.Chain = purchase.Chain{On: purchase.Batten, Hung: purchase.Piled, Length: 50}
			chain, err := rigged.EvenChain(flight)
			stored("chain", chain, err)
		}
		raised, err := rigged.RaiseIdler(units.Length(share), on.Idler)
		stored("raised idler", raised, err)
	})
}
