package lineset

import (
	"math"
	"slices"
	"strconv"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Rigged is a set that was checked and computed. It does not change and may be
// asked from many goroutines at once; slices in its answers are shared, so do
// not write to them.
type Rigged struct {
	set    Set
	load   *load.Rigged
	ropes  *purchase.Reeved
	breaks []units.Length

	travel  Travel
	counter Counterweight
	balance Balance
	ample   arbor.Stack // what would be stacked were there enough pieces of every kind
	states  []State     // at low trim, where the load may turn between, and at high trim
	checks  []Check
}

// Rig checks the set and computes it, with the given pieces to fill its arbor
// from. The error joins a *units.FieldError for everything that is wrong, each
// with the path of its field in the set; nothing is computed from half a set.
// A set that exceeds its limits is no error: see Checks.
func (s Set) Rig(stock arbor.Stock) (*Rigged, error) {
	var p check.Problems
	p.Within("stock", "", validateStock(stock))
	if s.Like != "" {
		p.Add("like", strconv.Quote(s.Like), "the rigging itself: only a house can look one up by name", units.ErrUnknown)
	}
	rigging := s.Rigging.Validate()
	p.Within("rigging", "", rigging)
	p.Within("", "", s.validate(rigging == nil))
	if err := p.Err(); err != nil {
		return nil, err
	}
	return s.compute(stock)
}

// validateStock refuses a stock of no kinds too: with it no set could be answered,
// and the results would look as if none had to be.
func validateStock(stock arbor.Stock) error {
	if len(stock) == 0 {
		return &units.FieldError{Want: "at least one kind of counterweight piece", Err: units.ErrMissing}
	}
	return stock.Validate()
}

// Validate reports everything that is wrong with what is installed, as
// *units.FieldError joined.
func (r Rigging) Validate() error {
	var p check.Problems
	_, err := r.Batten.Rig(nil)
	p.Within("", "", err)
	check.NotNegative(&p, "idler.mass", r.Idler.Mass)
	check.NotNegative(&p, "offset", r.Offset)
	check.Positive(&p, "made_off", r.MadeOff, "the batten's trim while the arbor stands against its upper stop")
	p.Within("limits", "", r.Limits.validate())
	frame, run := r.Arbor.Validate(), r.Run.Validate()
	p.Within("arbor", "", frame)
	p.Within("run", "", run)
	if frame == nil && run == nil {
		p.Within("run", "", r.Run.ValidateFor(r.Arbor))
	}
	if err := p.Err(); err != nil {
		return err
	}
	ropes, err := r.layout().Rig()
	if err != nil {
		return rename(err)
	}
	// The ropes must be able to run wherever the stops let the arbor go.
	t := Set{Rigging: r}.travel(ropes.Ratio())
	lowest, highest := ropes.Reach()
	if t.Highest >= highest {
		p.Add("run.lower_stop", check.Show(r.Run.LowerStop),
			"a stop that halts the arbor before the batten meets the loft blocks or the arbor's foot the idler: the batten would reach "+
				check.Show(t.Highest)+", the ropes run to "+check.Show(highest), units.ErrOutOfRange)
	}
	if t.Lowest <= lowest {
		p.Add("run.upper_stop", check.Show(r.Run.UpperStop), "a stop that halts the arbor below the head block and the dead ends", units.ErrOutOfRange)
	}
	return p.Err()
}

// validate looks at what is the set's own. Whether an item sits on the batten
// can only be told when the batten itself is right.
func (s Set) validate(rigging bool) error {
	var p check.Problems
	if s.Name == "" {
		p.Add("name", "", "a name for the set", units.ErrMissing)
	}
	low := check.Positive(&p, "low_trim", s.Low, "the lowest trim that the show needs")
	if check.Positive(&p, "high_trim", s.High, "the highest trim that the show needs") && low && s.Low > s.High {
		p.Add("low_trim", check.Show(s.Low), "at most the high trim, "+check.Show(s.High), units.ErrOutOfRange)
	}
	switch {
	case s.Balance == 0:
		p.Add("balance", "", wantBalance, units.ErrMissing)
	case !s.Balance.known():
		p.Add("balance", s.Balance.String(), wantBalance, units.ErrUnknown)
	}
	if rigging {
		_, err := s.Rigging.Batten.Rig(s.Hang)
		p.Within("", "", err)
	}
	return p.Err()
}

// compute answers everything once. The set was validated.
func (s Set) compute(stock arbor.Stock) (*Rigged, error) {
	// What is kept must not change with the caller's slices.
	s.Hang = slices.Clone(s.Hang)
	s.Rigging.Batten.Lines = slices.Clone(s.Rigging.Batten.Lines)
	r := &Rigged{set: s}
	var err error
	if r.load, err = s.Rigging.Batten.Rig(s.Hang); err != nil {
		return nil, err
	}
	if r.ropes, err = s.Rigging.layout().Rig(); err != nil {
		return nil, err
	}
	r.breaks = r.load.Breaks()
	r.travel = s.travel(r.ropes.Ratio())
	if r.counter, err = r.counterweight(stock); err != nil {
		return nil, err
	}
	low, high := r.travel.reached()
	curve, err := r.curve(low, high, r.counter.Arbor, r.hung)
	if err != nil {
		return nil, err
	}
	r.balance = r.newBalance(curve)
	for _, trim := range r.stations() {
		st, err := r.At(trim)
		if err != nil {
			return nil, err
		}
		r.states = append(r.states, st)
	}
	r.checks = r.check()
	return r, nil
}

// stations are the trims at which the set is looked at for its checks: low and
// high trim and, between them, where the load on the batten bends or jumps (a
// hair above such a trim a standing piece is off the deck).
func (r *Rigged) stations() []units.Length {
	low, high := r.travel.reached()
	trims := []units.Length{low}
	for _, b := range r.breaks {
		if b > low && b < high {
			trims = append(trims, b)
		}
		above := units.Length(math.Nextafter(b.In(units.Metre), math.Inf(1)))
		if above > low && above < high {
			trims = append(trims, above)
		}
	}
	return slices.Compact(append(trims, high))
}

// Set is the description that was rigged.
func (r *Rigged) Set() Set { return r.set }

// Ratio is the batten's travel for each unit of the arbor's, from the paths of
// the ropes.
func (r *Rigged) Ratio() float64 { return r.ropes.Ratio() }

// Bare is the mass of the batten with nothing on it.
func (r *Rigged) Bare() units.Mass { return r.load.Bare() }

// Hung is the mass of all that hangs on the batten, whether carried or not.
func (r *Rigged) Hung() units.Mass { return r.load.Hung() }

// Travel tells what the arbor's run gives the batten.
func (r *Rigged) Travel() Travel { return r.travel }

// Counterweight tells what answers the batten, and the pieces for it.
func (r *Rigged) Counterweight() Counterweight { return r.counter }

// Balance tells the out of balance over the travel.
func (r *Rigged) Balance() Balance { return r.balance }

// Low is the set's state at low trim, or at the trim nearest to it that the set
// reaches.
func (r *Rigged) Low() State { return r.states[0] }

// High is the set's state at high trim, or at the trim nearest to it that the
// set reaches.
func (r *Rigged) High() State { return r.states[len(r.states)-1] }

// Checks gives every check of the set, in a fixed order; those without a limit
// say so.
func (r *Rigged) Checks() []Check { return r.checks }

// Exceeds tells whether any check exceeds its limit.
func (r *Rigged) Exceeds() bool {
	return slices.ContainsFunc(r.checks, func(c Check) bool { return c.Verdict == Exceeds })
}
