package crosscheck

import (
	"fmt"
	"math"
	"testing"

	kernel "example.com/steelyard/internal/beam"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// How the lines share the load, by package load and by what a good programmer would write with
// gonum, over and over at trims that change: see rival. Ours looks for slack lines, and gives
// moments, shear and stress too.
//
//	go test -run '^$' -bench Sharing -count 10 . | benchstat -row /lines,/items -col /by -
//
// by=ours is the whole question, by=ours-tensions what gonum is asked: the tensions alone, by our kernel. They stand
// beside by=gonum-plain (the matrix assembled and given to mat's own solver), by=gonum-dense (no allocation, the
// matrix kept and factorised anew), by=gonum-dense-once (its factor kept) and by=gonum-tridiagonal-once (its three
// diagonals only); by=ours-springs beside by=gonum-band and by=gonum-band-once. by=ours-slack and by=ours-mistrimmed, where lines go
// slack, have no rival.

var (
	benchLines = []int{3, 5, 7, 12, 24, 50}
	benchItems = []int{10, 100}
)

// kind is what makes the work harder or easier.
type kind int

const (
	level      kind = iota // rigid lines, none slack
	springs                // the same on ropes that stretch
	slack                  // rigid, heavy loads in every third span
	mistrimmed             // springs, made off wrong by up to a centimetre, every third far too long
)

func (k kind) String() string { return [...]string{"level", "springs", "slack", "mistrimmed"}[k] }

// benchBatten is a batten of lines ten feet apart. Half of what hangs is points and half is spread
// over several feet, much of it across a line. All of it piles, and at no trim of benchTrims is
// any of it all on the deck or all off it.
func benchBatten(k kind, lines, items int) (load.Batten, load.Hang) {
	b := load.Batten{
		Length: units.Foot.Scale(10*float64(lines-1) + 4),
		Pipe:   tubes[0],
		Lines:  load.Spaced(2*units.Foot, 10*units.Foot, lines),
	}
	for i := range b.Lines {
		l := &b.Lines[i]
		if k == springs || k == mistrimmed {
			l.EA, l.Path = 1500*units.Kilonewton, units.Foot.Scale(60+10*float64(i))
		}
		if k == mistrimmed {
			l.Long = units.Millimetre.Scale(10 * math.Sin(2.3*float64(i)))
			if i%3 == 1 {
				l.Long += 100 * units.Millimetre
			}
		}
	}
	var h load.Hang
	for i := range items {
		at := b.Length.Scale((float64(i) + 0.5) / float64(items))
		mass := units.Pound.Scale(min(15, 150*float64(lines)/float64(items)))
		if k == slack {
			span := 3 * (i % ((lines + 1) / 3))
			at = b.Lines[span].At + units.Foot.Scale(3+math.Mod(1.7*float64(i), 4))
			mass = units.Pound.Scale(10_000 / float64(items))
		}
		half := units.Foot.Scale(float64(i % 2 * (2 + i%5)))
		h = append(h, load.Item{
			Mass: mass, From: max(0, at-half), To: min(b.Length, at+half),
			Below: units.Metre.Scale(0.1 * float64(i%7)), Height: units.Metre.Scale(8 + 0.3*float64(i%5)),
			OnDeck: load.Piles,
		})
	}
	return b, h
}

// benchTrims are so many, and a power of two, that to go round them costs next to nothing.
func benchTrims() (trims [64]units.Length) {
	for i := range trims {
		trims[i] = units.Metre.Scale(2 + 5*math.Mod(0.618*float64(i), 1))
	}
	return trims
}

func BenchmarkSharing(b *testing.B) {
	trims := benchTrims()
	var metres [len(trims)]float64
	for i, trim := range trims {
		metres[i] = trim.In(units.Metre)
	}
	for _, lines := range benchLines {
		for _, items := range benchItems {
			run := func(by string, once func(i int) float64) {
				b.Run(fmt.Sprintf("lines=%d/items=%d/by=%s", lines, items, by), func(b *testing.B) {
					b.ReportAllocs()
					var sum float64
					for i := 0; b.Loop(); i++ {
						sum += once(i % len(trims))
					}
					keep(b, sum)
				})
			}
			ours := func(by string, k kind) {
				r, err := rig(k, lines, items)
				if err != nil {
					b.Fatal(err)
				}
				var s load.Share
				run(by, func(i int) float64 {
					if err := r.ShareInto(&s, trims[i]); err != nil {
						b.Fatal(err)
					}
					return s.Weight.In(units.Newton)
				})
			}
			theirs := func(by string, solve func(trim float64) []float64) {
				run(by, func(i int) float64 { return math.Abs(solve(metres[i])[0]) })
			}
			rigid, elastic := newRival(benchBatten(level, lines, items)), newRival(benchBatten(springs, lines, items))
			ours("ours", level)
			tensions("ours-tensions", lines, items, rigid, run)
			theirs("gonum-plain", rigid.plain)
			theirs("gonum-dense", rigid.dense)
			theirs("gonum-dense-once", rigid.factorised)
			theirs("gonum-tridiagonal-once", rigid.tridiagonal)
			ours("ours-springs", springs)
			theirs("gonum-band", elastic.band)
			theirs("gonum-band-once", elastic.bandFactorised)
			ours("ours-slack", slack)
			ours("ours-mistrimmed", mistrimmed)
		}
	}
}

// tensions asks our kernel for no more than gonum is asked for.
func tensions(by string, lines, items int, r *rival, run func(by string, once func(i int) float64)) {
	batten, hang := benchBatten(level, lines, items)
	b := kernel.Beam{Loads: []kernel.Stretch{{To: batten.Length.In(units.Metre)}}}
	for _, l := range batten.Lines {
		b.Lines = append(b.Lines, l.At.In(units.Metre))
	}
	for _, i := range hang {
		b.Loads = append(b.Loads, kernel.Stretch{From: i.From.In(units.Metre), To: i.To.In(units.Metre)})
	}
	w := kernel.NewLayout(b).Work()
	w.Weights[0] = batten.BareMass().Weight(units.StandardGravity).In(units.Newton)
	trims := benchTrims()
	run(by, func(i int) float64 {
		trim := trims[i].In(units.Metre)
		for k := range r.items {
			i := &r.items[k]
			w.Weights[1+k] = min(i.weight, max(0, (trim-i.below)*i.perMetre))
		}
		w.LoadWeights()
		if !w.Hang(1e-9) {
			return math.NaN()
		}
		return w.Reaction[0]
	})
}

func rig(k kind, lines, items int) (*load.Rigged, error) {
	b, h := benchBatten(k, lines, items)
	return b.Rig(h)
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
