package purchase

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// What is summed up while a rope is laid is what the kernel has of its path by itself.
func TestPropLaidAsTheKernelHasIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layout := drawLayout(t)
		r, err := layout.Rig()
		if err != nil {
			t.Skip(err)
		}
		h := r.heights(r.top)
		geometry := r.geometry(layout.Trim)
		for i, l := range r.all() {
			path := make(rope.Path, len(l.rope.Path))
			for k, s := range l.rope.Path {
				path[k] = rope.Stop{Body: int(s.On), X: s.Across.In(units.Metre), Z: s.Height.In(units.Metre)}
			}
			last := len(path) - 1
			at := func(what string, got, want float64) {
				if !near.Abs(got, want, 1e-9) {
					t.Fatalf("%s: %s %v, want %v", l.rope.Name, what, got, want)
				}
			}
			for _, body := range [...]Body{Batten, Arbor, Idler} {
				parts, hung := l.pull(body, 0)
				n, s := path.Pull(int(body), 0, last, &h)
				at("parts at the "+body.String(), parts, n)
				at("own weight at the "+body.String(), hung.At(0), s*l.weight)
			}
			at("parts that hold the batten", -l.batten, path.Rate(int(Batten), last, &h))
			at("parts that hold the arbor", -l.arbor, path.Rate(int(Arbor), last, &h))
			length := geometry.Hand.Length
			if i < len(r.lift) {
				length = geometry.Lift[i].Length
			}
			at("length", length.In(units.Metre), path.Length(&h))
		}
	})
}

// Each stop is pulled along the part that leaves it, and against the one that comes to it. Where it is plain that nothing is wrong
// with a rope's parts, a closer look finds nothing either. Stops are drawn so that many coincide, stand nearly plumb or nearly in
// one line.
func TestPropPartsOfAnyRope(t *testing.T) {
	off := []float64{0, 0, 0.4e-9, 0.9e-9, 0.99e-9, 1.01e-9, 2e-9, 1e-7, 1e-6, 1}
	rapid.Check(t, func(t *rapid.T) {
		by := func(name string) units.Length {
			return units.Length(float64(rapid.SampledFrom([]int{0, 0, -1, 1}).Draw(t, name)) + rapid.SampledFrom([]float64{-1, 1}).Draw(t, name)*rapid.SampledFrom(off).Draw(t, name))
		}
		rp := Rope{Name: "drawn", Path: []Stop{{Name: "first"}}}
		for range rapid.IntRange(1, 4).Draw(t, "parts") {
			s := rp.Path[len(rp.Path)-1]
			s.Across, s.Height = s.Across+by("across"), s.Height+by("height")
			if rapid.Bool().Draw(t, "on another") {
				s.On = rapid.SampledFrom([]Body{Building, Grid, Batten, Arbor, Idler}).Draw(t, "on")
			}
			rp.Path = append(rp.Path, s)
		}
		n := len(rp.Path)
		var l laid
		var h rope.Heights
		var p check.Problems
		plain := l.lay(&rp, &h, make([]station, n), make([]blockNumber, n), 0)
		if l.checkParts(&p, &h, 0, 1); plain && p.Err() != nil {
			t.Fatalf("%+v: %v", rp.Path, p.Err())
		}
		for i, s := range l.stations {
			var want direction
			if i > 0 {
				across, up, _ := l.part(i-1, &h)
				want = direction{-across, -up}
			}
			if i < n-1 {
				across, up, _ := l.part(i, &h)
				want.across += across
				want.up += up
			}
			if !near.Abs(s.pulls.across, want.across, 1e-15) || !near.Abs(s.pulls.up, want.up, 1e-15) {
				t.Fatalf("%+v: stop %d is pulled %v, want %v", rp.Path, i, s.pulls, want)
			}
		}
	})
}
