package load_test

import (
	"fmt"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// BenchmarkShare asks a rigged batten with a usual hang on it, and one with the load at one
// end, so that lines go slack and the search has to work.
func BenchmarkShare(b *testing.B) {
	for _, n := range []int{5, 7, 12} {
		batten := load.Batten{
			Length: units.Foot.Scale(10*float64(n-1) + 4),
			Pipe:   pipe,
			Lines:  load.Spaced(2*units.Foot, 10*units.Foot, n),
		}
		electric := load.Hang{
			load.Drape{Width: batten.Length - 2*units.Foot, Drop: 12 * units.Foot, Cloth: 15 * units.OuncePerSquareYard, Fullness: 0.5}.Item("border", 1*units.Foot),
		}
		for i := range 2 * n {
			at := units.Foot.Scale(3 + 5*float64(i)*float64(n-1)/float64(n))
			electric = append(electric, load.Item{Mass: 20 * units.Pound, From: at, To: at})
		}
		uneven := load.Hang{{Mass: 400 * units.Pound, From: 17 * units.Foot, To: 17 * units.Foot}}
		for name, hang := range map[string]load.Hang{"electric": electric, "uneven": uneven} {
			r, err := batten.Rig(hang)
			if err != nil {
				b.Fatal(err)
			}
			b.Run(fmt.Sprintf("%s/%d lines", name, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := r.Share(20 * units.Foot); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func BenchmarkRig(b *testing.B) {
	batten := load.Batten{Length: 62 * units.Foot, Pipe: pipe, Lines: load.Spaced(1*units.Foot, 10*units.Foot, 7)}
	var hang load.Hang
	for i := range 10 {
		at := units.Foot.Scale(4 + 6*float64(i))
		hang = append(hang, load.Item{Mass: 32 * units.Pound, From: at, To: at})
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := batten.Rig(hang); err != nil {
			b.Fatal(err)
		}
	}
}
