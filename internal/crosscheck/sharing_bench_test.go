package crosscheck

import (
	"fmt"
	"math"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// How the lines share the load, by package load and by what a good programmer would write with
// gonum, over and over at trims that change: see rival. Ours looks for slack lines, and gives
// moments, shear and stress too.
//
//	go test -run '^$' -bench Sharing -count 10 . | benchstat -row /lines,/items -col /by -
//
// What each by stands for, Sharing says.

func BenchmarkSharing(b *testing.B) {
	for _, lines := range benchLines {
		for _, items := range benchItems {
			all, err := Sharing(lines, items)
			if err != nil {
				b.Fatal(err)
			}
			for _, c := range all {
				b.Run(fmt.Sprintf("lines=%d/items=%d/by=%s", lines, items, c.By), func(b *testing.B) {
					b.ReportAllocs()
					var sum float64
					for i := 0; b.Loop(); i++ {
						sum += c.Once(i)
					}
					keep(b, sum)
				})
			}
		}
	}
}

// A race is worth nothing unless all arrive at the same place: every method of BenchmarkSharing at
// every trim, against ours. Besides, the tensions hold the whole weight, in force and in moment,
// to within rounding: a solution that kept neither would show it here.
func TestSharingRivalsAgree(t *testing.T) {
	const statics = 1e-12
	var worstForce, worstMoment float64
	for _, lines := range benchLines {
		for _, items := range benchItems {
			for _, k := range []kind{level, springs, slack, mistrimmed} {
				batten, hang := benchBatten(k, lines, items)
				r, err := batten.Rig(hang)
				if err != nil {
					t.Fatal(err)
				}
				rivals := map[string]func(float64) []float64{}
				switch v := newRival(batten, hang); k {
				case level:
					rivals["plain"], rivals["dense"] = v.plain, v.dense
					rivals["factorised"], rivals["tridiagonal"] = v.factorised, v.tridiagonal
				case springs:
					rivals["band"], rivals["band, factorised"] = v.band, v.bandFactorised
				}
				loose := 0
				var s load.Share
				for _, trim := range benchTrims() {
					if err := r.ShareInto(&s, trim); err != nil {
						t.Fatal(err)
					}
					d := hangUp(batten, hang, trim)
					weight := d.weight()
					force, moment := -weight, -weight*d.centre()
					for _, l := range s.Lines {
						force += l.Tension.In(units.Newton)
						moment += l.Tension.Moment(l.At).In(units.NewtonMetre)
						if l.Slack {
							loose++
						}
					}
					worstForce = max(worstForce, math.Abs(force)/weight)
					worstMoment = max(worstMoment, math.Abs(moment)/(weight*d.length))
					for name, solve := range rivals {
						for i, pull := range solve(trim.In(units.Metre)) {
							if got := s.Lines[i].Tension.In(units.Newton); !(math.Abs(got-pull) <= 1e-9*weight) {
								t.Errorf("%v, %d lines, %d items, trim %v, line %d: ours %v, gonum %s %v", k, lines, items, trim, i, got, name, pull)
							}
						}
					}
				}
				if (loose > 0) != (k == slack || k == mistrimmed) {
					t.Errorf("%v, %d lines, %d items: %d times a line is slack", k, lines, items, loose)
				}
			}
		}
	}
	t.Logf("the tensions hold the weight within %.1g of it, its moment within %.1g", worstForce, worstMoment)
	if !(worstForce <= statics) || !(worstMoment <= statics) {
		t.Errorf("statics are off by %.2g and %.2g, more than %v", worstForce, worstMoment, statics)
	}
}

// To share again into the same result allocates nothing.
func TestSharingDoesNotAllocate(t *testing.T) {
	trims := benchTrims()
	for _, k := range []kind{level, springs, slack, mistrimmed} {
		r, err := rig(k, 12, 100)
		if err != nil {
			t.Fatal(err)
		}
		var s load.Share
		i := 0
		if n := testing.AllocsPerRun(len(trims), func() {
			if err := r.ShareInto(&s, trims[i%len(trims)]); err != nil {
				t.Fatal(err)
			}
			i++
		}); n != 0 {
			t.Errorf("%v: %v allocations", k, n)
		}
	}
}
