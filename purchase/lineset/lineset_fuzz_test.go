package lineset_test

import (
	"encoding/json"
	"testing"

	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// FuzzHouse decodes, rigs and reports whatever it is given: it never panics, and
// what it answers can be stored, so every number in it is finite.
func FuzzHouse(f *testing.F) {
	f.Add(houseText(f))                       // a whole house, for mutation
	f.Add([]byte(`{"sets":[{"name":"a"}]}`))  // nearly everything missing
	f.Add([]byte(`{"name":"a","sets":[{},{`)) // broken off
	if text, err := json.Marshal(lineset.House{Name: "mules", Stock: stock, Sets: []lineset.Set{muled()}}); err == nil {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 1<<16 {
			t.Skip("bounded: size is not what is looked for here")
		}
		var h lineset.House
		if h.UnmarshalJSON(text) != nil {
			return
		}
		rigged, err := h.Rig()
		if err != nil {
			return
		}
		if _, err := json.Marshal(rigged.Report()); err != nil {
			t.Fatal(err)
		}
		for set := range rigged.Sets() {
			set.Report().LowHand.Working(units.US)
		}
	})
}
