package crosscheck

import (
	"math"

	kernel "example.com/steelyard/internal/beam"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// SharingLines are the numbers of lift lines at which Sharing is raced.
func SharingLines() []int { return benchLines[:] }

// Sharing gives the ways in which a batten of so many lines, ten feet apart, and so many items that pile shares its
// load: by=ours is the whole question, by=ours-tensions what gonum is asked: the tensions alone, by our kernel. They stand
// beside by=gonum-plain (the matrix assembled and given to mat's own solver), by=gonum-dense (no allocation, the
// matrix kept and factorised anew), by=gonum-dense-once (its factor kept) and by=gonum-tridiagonal-once (its three
// diagonals only); by=ours-springs beside by=gonum-band and by=gonum-band-once. by=ours-slack and by=ours-mistrimmed,
// where lines go slack, have no rival.
func Sharing(lines, items int) ([]Contender, error) {
	trims := benchTrims()
	var metres [len(trims)]float64
	for i, trim := range trims {
		metres[i] = trim.In(units.Metre)
	}
	var all []Contender
	var fault error
	ours := func(by string, k kind) {
		r, err := rig(k, lines, items)
		if err != nil {
			fault = err
			return
		}
		var s load.Share
		all = append(all, Contender{by, func(i int) float64 {
			if err := r.ShareInto(&s, trims[i%len(trims)]); err != nil {
				return math.NaN()
			}
			return s.Weight.In(units.Newton)
		}})
	}
	theirs := func(by string, solve func(trim float64) []float64) {
		all = append(all, Contender{by, func(i int) float64 { return math.Abs(solve(metres[i%len(metres)])[0]) }})
	}
	rigid, elastic := newRival(benchBatten(level, lines, items)), newRival(benchBatten(springs, lines, items))
	ours("ours", level)
	all = append(all, Contender{"ours-tensions", tensions(lines, items, rigid)})
	theirs("gonum-plain", rigid.plain)
	theirs("gonum-dense", rigid.dense)
	theirs("gonum-dense-once", rigid.factorised)
	theirs("gonum-tridiagonal-once", rigid.tridiagonal)
	ours("ours-springs", springs)
	theirs("gonum-band", elastic.band)
	theirs("gonum-band-once", elastic.bandFactorised)
	ours("ours-slack", slack)
	ours("ours-mistrimmed", mistrimmed)
	return all, fault
}

// tensions asks our kernel for no more than gonum is asked for.
func tensions(lines, items int, r *rival) func(i int) float64 {
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
	return func(i int) float64 {
		trim := trims[i%len(trims)].In(units.Metre)
		for k := range r.items {
			i := &r.items[k]
			w.Weights[1+k] = min(i.weight, max(0, (trim-i.below)*i.perMetre))
		}
		w.LoadWeights()
		if !w.Hang(1e-9) {
			return math.NaN()
		}
		return w.Reaction[0]
	}
}

func rig(k kind, lines, items int) (*load.Rigged, error) {
	b, h := benchBatten(k, lines, items)
	return b.Rig(h)
}
