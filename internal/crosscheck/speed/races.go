package main

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"slices"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/crosscheck"
	"example.com/steelyard/units"
)

// failed holds the first fault that something met while it was timed, so that no failure is taken for speed.
type failed struct{ err error }

func (f *failed) note(what string, err error) {
	if err != nil && f.err == nil {
		f.err = fault(what, err)
	}
}

// against makes the row of two that were raced: no more than most times the rival was asked, and no allocations where none is true.
func against(group, what, than string, best []float64, allocs, most float64, none bool) row {
	ratio := best[0] / best[1]
	r := row{
		group: group, what: what, ours: ns(best[0]), rival: ns(best[1]), than: than, ratio: times(ratio), allocs: count(allocs),
		asked: fmt.Sprintf("at most %v×", most), met: verdictOf(ratio <= most, !none || allocs == 0),
	}
	if none {
		r.asked += ", no allocs"
	}
	return r
}

// within makes the row of a time that was asked to be no more than most.
func within(group, what string, took, most float64, asked string) row {
	return row{group: group, what: what, ours: ns(took), ratio: times(took / most), rival: ns(most), than: "what is asked", asked: asked, met: verdictOf(took <= most)}
}

// wholeRows are about the whole set.
func (e effort) wholeRows(ctx context.Context) ([]row, error) {
	const group = "THE WHOLE SET: double purchase, 7 lift lines, 10 items; all statics at one trim and a balance curve of 11"
	s := wholeSet(0)
	var users [3]*whole
	for i := range users {
		var err error
		if users[i], err = newWhole(s); err != nil {
			return nil, err
		}
	}
	again, other, kept := users[0], users[1], users[2]
	f, at := newFloor(s, again.arbor), rounds(s)
	var metres [len(at)]float64
	for i, trim := range at {
		metres[i] = trim.In(units.Metre)
	}
	var n numbers
	var trouble failed
	plain := func(i int) { f.statics(metres[i%len(at)], &n) }
	plainCurve := func(int) { f.balance(&n.curve) }
	statics := func(i int) { trouble.note("statics", again.statics(at[i%len(at)])) }
	fresh := func(i int) { trouble.note("statics", kept.fresh(at[i%len(at)])) }
	curve := func(int) { trouble.note("balance", again.balance()) }
	check := func(i int) {
		trouble.note("check", again.statics(at[i%len(at)]))
		again.exceeded += again.exceeds()
	}
	pieces := stock()
	rig := func(int) { _, err := s.Rig(pieces); trouble.note("rig", err) }
	list := func(int) {
		r, err := s.Rig(pieces)
		trouble.note("rig", err)
		again.exceeded += len(r.Checks())
	}

	// A moment in which one core is idle, or even both are, comes up seldom on a machine with other work.
	longer, often := e.longer(), e
	longer.rounds, often.rounds = 4*longer.rounds, 4*often.rounds
	best := often.race(statics, fresh, plain)
	curves := often.race(curve, plainCurve)
	alone := append(often.race(check), longer.race(rig, list)...)
	const line = "straight-line floor"
	rows := []row{
		against(group, "statics and curve, by Rigged.AtInto", line, []float64{best[0], best[2]}, allocations(statics), 2, true),
		against(group, "balance curve alone", line, curves, allocations(curve), 2, true),
	}
	rigRow := within(group, "Rig: validated and computed once", alone[1], 20e3, "under 20 µs")
	rigRow.allocs = count(allocations(rig))
	checkRow := within(group, "full check, all of it held against its limits", alone[0], 1e3, "a million a second and core")
	checkRow.allocs = count(allocations(check))
	listRow := row{group: group, what: "Rig and Checks: every limit over the whole travel, in words", ours: ns(alone[2]), allocs: count(allocations(list))}
	keepRow := row{group: group, what: "statics and curve, by Rigged.At: an answer to keep", ours: ns(best[1]), allocs: count(allocations(fresh))}
	rows = append(rows, keepRow, rigRow, checkRow, listRow)
	if runtime.GOMAXPROCS(0) < 2 {
		return append(rows, row{group: group, what: "two cores: this machine gives one", asked: "at least 1.6× on two cores"}), trouble.err
	}
	// Both goroutines ask the same set; each notes its own trouble, counts its own, and has memory of its own.
	var apart failed
	other.rigged = again.rigged
	second := func(i int) {
		apart.note("check", other.statics(at[i%len(at)]))
		other.exceeded += other.exceeds()
	}
	rigApart := func(int) { _, err := s.Rig(pieces); apart.note("rig", err) }
	often.slice *= 4
	longer.rounds *= 2
	var m numbers
	for _, c := range []struct {
		what       string
		one, other func(int)
		effort
		least float64 // as many; 0: nobody asked
	}{
		{"full checks on two cores", check, second, often, 1.6},
		{"Rig on two cores", rig, rigApart, longer, 1.6},
		// Nothing keeps these two apart but the machine.
		{"the floor on two cores: what the machine gives", plain, func(i int) { f.statics(metres[i%len(at)], &m) }, often, 0},
	} {
		a, b, scale := c.scale(c.one, c.other)
		r := row{group: group, what: c.what, ours: ns(b), rival: ns(a), than: "one core", ratio: times(scale) + " as many"}
		if c.least > 0 {
			r.asked, r.met = fmt.Sprintf("at least %v×", c.least), verdictOf(scale >= c.least)
		}
		rows = append(rows, r)
	}
	for _, c := range []struct{ what, work string }{
		{"the same checks in two processes: what the machine gives", "check"},
		{"the same Rig in two processes", "rig"},
	} {
		a, b, scale, err := often.apart(ctx, c.work)
		trouble.note("two processes", err)
		rows = append(rows, row{group: group, what: c.what, ours: ns(b), rival: ns(a), than: "one process", ratio: times(scale) + " as many"})
	}
	if trouble.err == nil {
		trouble.err = apart.err
	}
	return rows, trouble.err
}

// beamRows race the share among the lines against gonum.
func (e effort) beamRows() ([]row, error) {
	const group = "THE SHARE AMONG THE LINES: level batten, 10 items that pile"
	var rows []row
	for _, lines := range crosscheck.SharingLines() {
		all, err := crosscheck.Sharing(lines, items)
		if err != nil {
			return nil, err
		}
		var sum float64
		of := func(by string) func(int) {
			i := slices.IndexFunc(all, func(c crosscheck.Contender) bool { return c.By == by })
			return func(turn int) { sum += all[i].Once(turn) }
		}
		ours, tensions := of("ours"), of("ours-tensions")
		best := e.race(ours, of("gonum-plain"), tensions, of("gonum-dense"), of("gonum-tridiagonal-once"))
		if math.IsNaN(sum) {
			return nil, fmt.Errorf("the share among %d lines failed", lines)
		}
		rows = append(rows,
			against(group, fmt.Sprintf("%d lines, whole answer", lines), "gonum as documented", best[:2], allocations(ours), 1, false),
			against(group, fmt.Sprintf("%d lines, whole answer", lines), "gonum, no allocation", []float64{best[0], best[3]}, allocations(ours), 1, false),
			against(group, fmt.Sprintf("%d lines, tensions alone", lines), "gonum, factor kept", []float64{best[2], best[4]}, allocations(tensions), 1, false))
	}
	return rows, nil
}

// stackRows race the choice of pieces against trying every stack.
func (e effort) stackRows() ([]row, error) {
	const group = "THE STACK: the best of whole pieces, proved"
	var rows []row
	var trouble failed
	for _, f := range fillings() {
		frame, wanted, stock := f.arbor()
		fill := func(int) { _, err := frame.Fill(wanted, stock, arbor.EitherSide); trouble.note("fill", err) }
		tried := 0
		all := func(int) { tried += f.exhaustive().pieces }
		rows = append(rows, against(group, fmt.Sprintf("%d kinds, %d stacks", len(f.mass), f.stacks()),
			"exhaustive search", e.race(fill, all), allocations(fill), 1, false))
	}
	return rows, trouble.err
}

// arithmeticRows race a formula of the trade in typed quantities against the same in decimals.
func (e effort) arithmeticRows() ([]row, error) {
	const group = "ARITHMETIC: the tension of a lift line from what hangs, for 64 sets"
	all := crosscheck.Arithmetic()
	var sum float64
	var runs []func(int)
	for _, c := range all {
		runs = append(runs, func(i int) { sum += c.Once(i) })
	}
	best := map[string]float64{}
	for i, t := range e.race(runs...) {
		best[all[i].By] = t
	}
	if math.IsNaN(sum) {
		return nil, fmt.Errorf("the arithmetic came to no number")
	}
	ours := runs[slices.IndexFunc(all, func(c crosscheck.Contender) bool { return c.By == "ours" })]
	return []row{
		against(group, "typed quantities", "decimals alone", []float64{best["ours"], best["decimal"]}, allocations(ours), 1, true),
		against(group, "typed quantities", "plain float64", []float64{best["ours"], best["bare"]}, allocations(ours), 1.1, true),
	}, nil
}
