package beam

import (
	"fmt"
	"testing"
)

// benchmarkBeam is a batten with lines 3 m apart and overhangs of 0.6 m under its own weight and the given
// number of loads, half of them points and half spread over some metres.
func benchmarkBeam(lines, loads int) (Beam, []float64) {
	b := Beam{}
	for i := range lines {
		b.Lines = append(b.Lines, 0.6+3*float64(i))
	}
	end := b.Lines[lines-1] + 0.6
	b.Loads, b.Taper = append(b.Loads, Stretch{0, end}), append(b.Taper, 0)
	weights := []float64{100 * float64(lines)}
	for k := range loads {
		at := end * (float64(k) + 0.37) / float64(loads)
		s := Stretch{at, at}
		if k%2 == 1 {
			s.To = min(end, at+end/5)
		}
		b.Loads, b.Taper = append(b.Loads, s), append(b.Taper, 0)
		weights = append(weights, 100+float64(k*37%50))
	}
	return b, weights
}

func BenchmarkBeam(b *testing.B) {
	for _, lines := range []int{3, 5, 7, 12, 24, 50} {
		for _, loads := range []int{10, 100} {
			rigid, weights := benchmarkBeam(lines, loads)
			give := rigid
			for range lines {
				give.Give = append(give.Give, 0.4)
			}
			uneven := append([]float64(nil), weights...)
			uneven[0] /= 100
			for k := range uneven[1:] {
				if k%3 != 0 {
					uneven[k+1] = 1
				} else {
					uneven[k+1] = 3000
				}
			}
			for _, c := range []struct {
				name    string
				beam    Beam
				weights []float64
			}{{"rigid", rigid, weights}, {"sprung", give, weights}, {"uneven", rigid, uneven}} {
				w := NewLayout(c.beam).Work()
				b.Run(fmt.Sprintf("%d lines/%d loads/%s", lines, loads, c.name), func(b *testing.B) {
					b.ReportAllocs()
					for b.Loop() {
						w.Load(c.weights)
						w.Hang(0)
						w.Extremes()
					}
				})
			}
		}
	}
}
