package purchase_test

import (
	"encoding/json"
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// FuzzReeving rigs whatever reeving its text describes: it never panics, and what
// it answers can be stored, so every number in it is finite.
func FuzzReeving(f *testing.F) {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple} {
		l := weightless(kind)
		l.DeadEnd = 61 * units.Foot
		text, err := json.Marshal(l.Reeving())
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text) // a standard reeving, for mutation
	}
	f.Add([]byte(`{"lift":[{"path":[{"on":"batten"},{"on":"arbor"}]}]}`)) // a rope with no block
	f.Fuzz(func(t *testing.T, text []byte) {
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
		lowest, highest := rigged.Reach()
		for _, trim := range []units.Length{r.Trim, lowest, highest, (lowest + highest) / 2} {
			st, err := rigged.At(trim, purchase.Bodies{Pulls: make([]units.Force, len(r.Lift)), Arbor: 100, Idler: 10})
			if err != nil {
				continue
			}
			if _, err := json.Marshal(st); err != nil {
				t.Fatal(err)
			}
			g, err := rigged.Geometry(trim)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := json.Marshal(g); err != nil {
				t.Fatal(err)
			}
		}
	})
}
