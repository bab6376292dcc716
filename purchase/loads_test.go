package purchase_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// loads adds up what the tensions along the ropes do to each block and each body, part by part.
func (d drawn) loads(trim, top units.Length, lift []purchase.RopeState, hand purchase.RopeState) (blocks map[string]purchase.Vector, bodies map[purchase.Body]purchase.Vector) {
	blocks, bodies = map[string]purchase.Vector{}, map[purchase.Body]purchase.Vector{}
	for i, rp := range d.ropes() {
		st := hand
		if i < len(lift) {
			st = lift[i]
		}
		k := 0
		d.parts(rp, trim.In(units.Metre), top.In(units.Metre), func(a, b purchase.Stop, za, zb, length float64) {
			across, up := (b.Across-a.Across).In(units.Metre)/length, (zb-za)/length
			part := st.Parts[k]
			for _, end := range []struct {
				at   purchase.Stop
				pull units.Force
			}{{a, part.TensionFrom}, {b, -part.TensionTo}} {
				v := purchase.Vector{Across: end.pull.Scale(across), Up: end.pull.Scale(up)}
				if end.at.On != purchase.Batten {
					blocks[end.at.Name] = blocks[end.at.Name].Add(v)
					bodies[end.at.On] = bodies[end.at.On].Add(v)
				}
			}
			k++
		})
	}
	return blocks, bodies
}

// What each block, and what carries it, bears is the vector sum of the tensions of the parts that meet there, at rest and while it runs
// either way; at rest the rope lock pulls at the rail too, by what it is asked for as long as it holds.
func TestPropLoadsAreTheTensions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, r, on := drawRun(t)
		trim := units.Length(rapid.Float64Range(7, 11).Draw(t, "trim"))
		check := func(what string, got []purchase.Block, load func(string) purchase.Vector, onBody func(purchase.Body) purchase.Vector, blocks map[string]purchase.Vector, bodies map[purchase.Body]purchase.Vector) {
			is := func(name string, got, want purchase.Vector) {
				if !near.Abs(got.Across.In(units.Newton), want.Across.In(units.Newton), 1e-6) || !near.Abs(got.Up.In(units.Newton), want.Up.In(units.Newton), 1e-6) {
					t.Fatalf("%s, %s: %+v, want %+v", what, name, got, want)
				}
			}
			if len(got) != len(blocks) {
				t.Fatalf("%s: %d blocks, want %d: %+v", what, len(got), len(blocks), got)
			}
			for _, b := range got {
				is(b.Name, b.Load, blocks[b.Name])
				is(b.Name, load(b.Name), blocks[b.Name])
			}
			for body := range purchase.Idler + 1 {
				is(body.String(), onBody(body), bodies[body])
			}
			if none := load("no such block"); none != (purchase.Vector{}) {
				t.Fatalf("%s: %+v of a block that is none", what, none)
			}
		}
		for _, way := range []purchase.Way{purchase.Out, purchase.In} {
			s, err := r.Run(trim, on, way)
			if err != nil {
				t.Fatal(err)
			}
			blocks, bodies := d.loads(trim, s.ArborTop, s.Lift, s.Hand)
			check(way.String(), s.Blocks, s.Load, s.On, blocks, bodies)
		}
		if rapid.Bool().Draw(t, "heavy on the batten") {
			on.Arbor = on.Arbor.Scale(0.7)
		}
		s, err := r.At(trim, on)
		if err != nil {
			t.Fatal(err)
		}
		blocks, bodies := d.loads(trim, s.ArborTop, s.Lift, s.Hand)
		lock := purchase.Vector{Up: units.Force(-math.Min(s.Lock.In(units.Newton), s.Grip.In(units.Newton)))}
		blocks[purchase.RopeLock], bodies[purchase.Rail] = lock, bodies[purchase.Rail].Add(lock)
		check("at rest", s.Blocks, s.Load, s.On, blocks, bodies)
	})
}

// The head block bears every line that comes to it, whatever blocks a line has met before: of 1000 N in each of two lines, one comes
// level and one from a mule block 3 ft away and 1 ft below.
func TestHeadBlockBehindAMule(t *testing.T) {
	l := weightless(purchase.Single)
	l.Loft = l.Loft[:2]
	l.Loft[1].Mules = []purchase.Mule{{Name: "mule", On: purchase.Building, Across: 3 * units.Foot, Height: 59 * units.Foot}}
	r := mustRig(t, l)
	s, err := r.At(9, purchase.Bodies{Pulls: evenly(2, 1000), Arbor: units.Force(2000).Mass(units.StandardGravity)})
	if err != nil {
		t.Fatal(err)
	}
	got := s.Load(purchase.HeadBlock)
	across, up := 1000+3000/math.Sqrt(10), -2000-1000/math.Sqrt(10)
	if !got.Across.Within(units.Force(across), 1e-9) || !got.Up.Within(units.Force(up), 1e-9) {
		t.Errorf("%+v on the head block, want %v across and %v up", got, across, up)
	}
}
