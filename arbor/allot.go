package arbor

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Job is an arbor that is to be filled from a stock which several share.
type Job struct {
	Name   string  `json:"name"`
	Frame  Frame   `json:"frame"`
	Wanted Wanted  `json:"wanted"`
	Side   Side    `json:"side,omitzero"`
	Ratio  float64 `json:"ratio,omitzero"` // errors are referred to the batten by it; zero: they count as they are at the arbor
}

// Allotment is what each job gets of a stock that they share.
type Allotment struct {
	Stacks []Stack `json:"stacks"` // in the order of the jobs

	Worst units.Mass `json:"worst"` // the greatest error of any stack either way, referred as its job asks
	Total units.Mass `json:"total"` // of all errors, each counted as heavier than nothing

	// Least are what no allotment can be better than: Worst and Total cannot fall below them. Proven says that there is none
	// better by a microgram; false where only so much was tried, and what Worst has above LeastWorst, and Total above
	// LeastTotal, is then the gap.
	LeastWorst units.Mass `json:"least_worst"`
	LeastTotal units.Mass `json:"least_total"`
	Proven     bool       `json:"proven"`

	// Hire is what the stock lacks for every job to come as near as it could with as many pieces of each kind as it takes: so many
	// more of each kind, heaviest first. With them, it was tried, they all do. None: the stock is enough for that.
	Hire []Hire `json:"hire,omitempty"`
}

// Hire is pieces of one kind that a stock lacks.
type Hire struct {
	Name  string `json:"name"`  // what the pieces are called
	Count int    `json:"count"` // how many more
}

// Bounds of the work on any house: a step takes some 50 ns.
const (
	maxJobs    = 2000
	overhead   = 200       // steps that a stack costs beside the search
	houseSteps = 1_000_000 // of all jobs, each filled once
	leastSteps = 1000      // of one stack, and the most
	mostSteps  = 50_000
	tradeSteps = 5_000_000 // of all stacks that trading looks at
	hireSteps  = 2_000_000 // of all that are looked at to hire less
	exactFills = 10_000    // stacks of all jobs from every share of the stock, for every way to be tried
	exactSteps = 400_000   // ways to put them together that are looked at
	mostPlates = 50        // of one arbor, each number of which is a stack of its own where pipe weight stands in the way
)

// Allot fills all jobs from one stock so that the worst error is as small as it can be, and the total then. Each job's stack is
// what [Frame.Fill] makes of its share, with pipe weight first.
//
// A stock that is enough for every job as if it were alone is proved so at once. Otherwise pieces are shared out and then
// traded between the worst off and each other job until that betters nothing more; and where the stock is small
// enough to try every share, that is tried as well, and the answer proved. What no allotment can better is known in any case: each
// job alone with the whole stock, and what is wanted of all together against what there is. The order of jobs decides between
// equals; nothing is left to chance.
//
// The errors join a *units.FieldError for everything that is wrong, "jobs[2].frame.room" or "stock[0].mass", and a
// *NoStackError, wrapped in one for its job, where a job finds no stack that keeps to the side that it allows.
func Allot(jobs []Job, stock Stock) (Allotment, error) {
	var p check.Problems
	p.Within("stock", "", stock.Validate())
	if len(jobs) > maxJobs {
		p.Add("jobs", strconv.Itoa(len(jobs))+" jobs", "at most "+strconv.Itoa(maxJobs), units.ErrOutOfRange)
		return Allotment{}, p.Err()
	}
	for i, job := range jobs {
		p.Within("jobs["+strconv.Itoa(i)+"]", strconv.Quote(job.Name), job.validate())
	}
	if err := p.Err(); err != nil {
		return Allotment{}, err
	}
	a := newAllotting(jobs, stock)
	for i := range jobs {
		alone, err := a.fill(i, a.stock)
		if err != nil {
			p.Within("jobs["+strconv.Itoa(i)+"]", strconv.Quote(jobs[i].Name), err)
			continue
		}
		a.alone = append(a.alone, alone)
	}
	if err := p.Err(); err != nil {
		return Allotment{}, err
	}
	a.settle()
	a.bound()
	a.scarce()
	a.spent = 0
	a.share()
	a.trade()
	proven := a.done() || a.everyWay()
	for i, f := range a.now {
		if math.IsInf(f.off, 1) {
			p.Within("jobs["+strconv.Itoa(i)+"]", strconv.Quote(jobs[i].Name), &NoStackError{Wanted: jobs[i].Wanted, Side: jobs[i].Side})
		}
	}
	if err := p.Err(); err != nil {
		return Allotment{}, err
	}
	out := a.allotment()
	if out.Proven = proven; proven {
		out.LeastWorst, out.LeastTotal = out.Worst, out.Total
	}
	out.Hire = a.hire()
	return out, nil
}

func (j Job) validate() error {
	var p check.Problems
	p.Within("frame", "", j.Frame.Validate())
	if _, err := (Stack{}).Referred(j.ratio()); err != nil {
		p.Add("ratio", strconv.FormatFloat(j.Ratio, 'g', -1, 64), "a ratio above zero, or none", units.ErrOutOfRange)
	}
	// The rest is told by Fill.
	return p.Err()
}

func (j Job) ratio() float64 {
	if j.Ratio == 0 {
		return 1
	}
	return j.Ratio
}

// allotting is a house on its way: counts follow the order of the stock.
type allotting struct {
	jobs  []Job
	kinds Stock
	stock []int
	alone []filledJob // each with the whole stock
	least []float64   // what each is off at the least
	now   []filledJob
	left  []int // of the stock

	leastWorst, leastTotal float64

	each        int  // steps that may be spent on one stack
	spent, most int  // steps that were spent, and that trading may spend
	cut         bool // some stack was not proved to be the nearest
}

// filledJob is one job with a stack in it.
type filledJob struct {
	stack Stack
	used  []int
	off   float64 // its error, referred, as a plain number of kilograms
}

// least is what no stack from the same share is nearer than.
func (f filledJob) least(ratio float64) float64 {
	return max(0, f.off-f.stack.Gap.In(units.Kilogram)/ratio)
}

func newAllotting(jobs []Job, stock Stock) *allotting {
	a := &allotting{jobs: slices.Clone(jobs), kinds: stock, stock: make([]int, len(stock)), most: tradeSteps, each: min(max(houseSteps/max(len(jobs), 1), leastSteps), mostSteps)}
	for k, piece := range stock {
		a.stock[k] = piece.Count
	}
	return a
}

// fill fills a job from a share of the stock.
func (a *allotting) fill(job int, share []int) (filledJob, error) {
	a.spent += overhead
	own := slices.Clone(a.kinds)
	for k := range own {
		own[k].Count = share[k]
	}
	j := &a.jobs[job]
	if err := validate(j.Frame, j.Wanted, own, j.Side); err != nil {
		return filledJob{}, err
	}
	stack, err := j.Frame.fill(filling{wanted: j.Wanted, stock: own, side: j.Side, pipeSide: j.Side, steps: a.each, spent: &a.spent})
	if err != nil {
		return filledJob{}, err
	}
	a.cut = a.cut || !stack.Proven
	f := filledJob{stack: stack, used: make([]int, len(own))}
	for k, piece := range own {
		f.used[k] = stack.Used(piece.Name)
	}
	off, err := stack.Referred(j.ratio())
	f.off = math.Abs(off.In(units.Kilogram))
	return f, err
}

// settle works out what each job is off at the least.
func (a *allotting) settle() {
	for i := range a.jobs {
		a.least = append(a.least, a.leastOff(i, a.stock))
	}
}

// leastOff is what a job is off at the least with a share or a part of it. Without pipe weight that is what it is off with the share.
// Pipe weight, which is chosen first and by itself, may take what the whole would be nearer without; but no stack is nearer
// than one of the same pieces with as many plates, wherever they lie. Of more plates than any arbor has nothing is known.
func (a *allotting) leastOff(job int, share []int) float64 {
	j := &a.jobs[job]
	if j.Wanted.Pipe <= 0 {
		return a.orNothing(job, share).least(j.ratio())
	}
	whole := *j
	defer func() { *j = whole }()
	plates := 0
	if every := whole.Frame.Plate.Every; every > 0 {
		plates = 1 + int(units.Ratio(whole.Frame.Room, every))
	}
	if plates > mostPlates {
		return 0
	}
	j.Frame.Plate = Plate{}
	least := math.Inf(1)
	for n := range plates + 1 {
		wanted := whole.Wanted.Pipe + whole.Wanted.Show - whole.Frame.Plate.Mass.Scale(float64(n))
		j.Wanted = Wanted{Show: max(wanted, 0)}
		over := max(-wanted, 0).In(units.Kilogram) / whole.ratio()
		least = min(least, a.orNothing(job, share).least(whole.ratio())+over)
	}
	return least
}

// bound works out what no allotment betters: what each job is off alone; and where all together want more than there is, what
// is missed if no job misses more than another, nor more than it wants.
func (a *allotting) bound() {
	wanted := make([]float64, len(a.jobs))
	var missed, most float64
	for i, least := range a.least {
		a.leastWorst = max(a.leastWorst, least)
		a.leastTotal += least
		j := &a.jobs[i]
		wanted[i] = max(0, (j.Wanted.Pipe + j.Wanted.Show).In(units.Kilogram))
		most = max(most, j.ratio())
		missed += wanted[i] - a.plates(i) // plates come from no stock: what of the mass they may be is not missed
	}
	for k, piece := range a.kinds {
		missed -= float64(a.stock[k]) * piece.Mass.In(units.Kilogram)
	}
	if missed <= 0 {
		return
	}
	a.leastTotal = max(a.leastTotal, missed/most)
	low, high := 0.0, missed
	for range 60 {
		mid, sum := (low+high)/2, 0.0
		for i, w := range wanted {
			sum += min(w, mid*a.jobs[i].ratio())
		}
		if sum < missed {
			low = mid
		} else {
			high = mid
		}
	}
	a.leastWorst = max(a.leastWorst, low)
}

// plates is the most that plates may weigh in a job.
func (a *allotting) plates(job int) float64 {
	f := a.jobs[job].Frame
	mass := f.Lock.Mass.In(units.Kilogram)
	if f.Plate.Every > 0 {
		mass += f.Plate.Mass.In(units.Kilogram) * (1 + math.Floor(units.Ratio(f.Room, f.Plate.Every)))
	}
	return mass
}

// share gives each job what it would take alone, as far as there is, those that want the most first. Where there is not
// enough for that, all are made to want less by as much, referred, and of several such measures the best is taken.
func (a *allotting) share() {
	a.shareLess(0)
	least := a.leastWorst
	if a.done() || least == 0 {
		return
	}
	best, left := a.now, a.left
	worst, total := a.off()
	for _, more := range [...]float64{1, 1.02, 1.05, 1.1, 1.2} {
		a.shareLess(least * more)
		if w, t := a.off(); w < worst-hair || (w <= worst+hair && t < total-hair) {
			best, left, worst, total = a.now, a.left, w, t
		}
	}
	a.now, a.left = best, left
}

func (a *allotting) shareLess(less float64) {
	a.left = slices.Clone(a.stock)
	a.now = make([]filledJob, len(a.jobs))
	for _, i := range a.byWish() {
		f := a.alone[i]
		if less > 0 {
			f = a.fillLess(i, less)
		} else if !among(f.used, a.left) {
			f = a.orNothing(i, a.left)
		}
		a.now[i] = f
		take(a.left, f.used)
	}
}

// fillLess fills a job from what is left as if it wanted less.
func (a *allotting) fillLess(i int, less float64) filledJob {
	j := &a.jobs[i]
	whole := j.Wanted
	j.Wanted.Show = max(0, whole.Show-units.Mass(less*j.ratio()))
	f := a.orNothing(i, a.left)
	j.Wanted = whole
	return a.orNothing(i, f.used)
}

// byWish is the jobs' places, those that want the most, referred, first.
func (a *allotting) byWish() []int {
	wish := make([]float64, len(a.jobs))
	order := make([]int, len(a.jobs))
	for i, j := range a.jobs {
		order[i] = i
		wish[i] = (j.Wanted.Pipe + j.Wanted.Show).In(units.Kilogram) / j.ratio()
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(wish[j], wish[i]) })
	return order
}

// orNothing fills a job from a share, or leaves it without a stack where its side forbids all that the share gives: that is
// further off than anything.
func (a *allotting) orNothing(job int, share []int) filledJob {
	f, err := a.fill(job, share)
	if err != nil {
		return filledJob{used: make([]int, len(share)), off: math.Inf(1)}
	}
	return f
}

func among(used, share []int) bool {
	for k := range used {
		if used[k] > share[k] {
			return false
		}
	}
	return true
}

func take(share, used []int) {
	for k := range used {
		share[k] -= used[k]
	}
}

func put(share, used []int) {
	for k := range used {
		share[k] += used[k]
	}
}

// off is the worst error and the total of all.
func (a *allotting) off() (worst, total float64) {
	for _, f := range a.now {
		worst = max(worst, f.off)
		total += f.off
	}
	return worst, total
}

// done tells whether nothing can be better. Bounds and totals are sums of rounded numbers: what is as near as a microgram is
// taken to be there.
func (a *allotting) done() bool {
	const microgram = 1e-9
	worst, total := a.off()
	return worst <= a.leastWorst+microgram && total <= a.leastTotal+microgram
}

func (a *allotting) allotment() Allotment {
	worst, total := a.off()
	out := Allotment{
		Worst: units.Mass(worst), Total: units.Mass(total), LeastWorst: units.Mass(min(a.leastWorst, worst)), LeastTotal: units.Mass(min(a.leastTotal, total)),
		Stacks: make([]Stack, len(a.now)),
	}
	for i, f := range a.now {
		out.Stacks[i] = f.stack
	}
	return out
}
