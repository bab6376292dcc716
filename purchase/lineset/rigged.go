package lineset

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/lazy"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Rigged is a set that was checked and computed. It does not change and may be
// asked from many goroutines at once; slices in its answers are shared, so do
// not write to them.
type Rigged struct {
	computed
	balance lazy.Value[*Balance]
	checks  lazy.Value[[]Check]
}

// computed is what every question shares.
type computed struct {
	set    Set
	stock  arbor.Stock
	load   *load.Rigged
	ropes  *purchase.Reeved
	breaks []units.Length

	flight  arbor.Flight
	travel  Travel
	counter Counterweight

	lowest, highest units.Length // that it reaches, and a hair

	ample *arbor.Stack // what would be stacked were there enough pieces of every kind; nil: what is stacked
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
	var room installed
	on := &room
	if err := s.Rigging.install(on, s.Hang); err != nil {
		p.Within("rigging", "", err)
		on = nil
	}
	flown, err := s.validate(on)
	p.Within("", "", err)
	if err := p.Err(); err != nil {
		return nil, err
	}
	return s.compute(stock, on, flown)
}

// validateStock refuses a stock of no kinds too: with it no set could be answered,
// and the results would look as if none had to be.
func validateStock(stock arbor.Stock) error {
	if len(stock) == 0 {
		return &units.FieldError{Want: "at least one kind of counterweight piece", Err: units.ErrMissing}
	}
	return stock.Validate()
}

// flown is what a set makes of its rigging.
type flown struct {
	load   *load.Rigged
	travel Travel
}

// validate looks at what is the set's own, and gives what it found on the way. Whether its hang would tip the batten can only be told
// when the rigging is right.
func (s Set) validate(on *installed) (found flown, err error) {
	var p check.Problems
	if s.Name == "" {
		p.Add("name", "", "a name for the set", units.ErrMissing)
	}
	low := check.Positive(&p, "low_trim", s.Low, "the lowest trim that the show needs")
	high := check.Positive(&p, "high_trim", s.High, "the highest trim that the show needs")
	ordered := low && high && s.Low <= s.High
	if low && high && !ordered {
		p.Add("low_trim", check.Show(s.Low), "at most the high trim, "+check.Show(s.High), units.ErrOutOfRange)
	}
	switch {
	case s.Balance == 0:
		p.Add("balance", "", wantBalance, units.ErrMissing)
	case !s.Balance.known():
		p.Add("balance", s.Balance.String(), wantBalance, units.ErrUnknown)
	}
	var hang error
	if on == nil {
		_, hang = s.Rigging.stretched(nil).Rig(s.Hang)
	} else {
		if ordered {
			found.travel, err = s.travel(&on.flight)
			p.Within("", "", err)
		}
		if found.load, hang = on.hung(s.Hang); hang == nil {
			if tip := found.load.Tips(on.flight.Lowest, on.flight.Highest); tip != nil {
				p.Add("hang", "", "a load between the outermost lift lines", tip)
			}
		}
	}
	for _, e := range flatten(hang) {
		// Faults of the batten itself are the rigging's, and reported there.
		if fe := (*units.FieldError)(nil); errors.As(e, &fe) && strings.HasPrefix(fe.Field, "hang") {
			p.Within("", "", e)
		}
	}
	return found, p.Err()
}

// compute answers everything that all questions share, once, on its rigging. The set was validated.
func (s Set) compute(stock arbor.Stock, on *installed, found flown) (*Rigged, error) {
	// What is kept must not change with the caller's slices.
	s.Hang = slices.Clone(s.Hang)
	s.Rigging.Batten.Lines = slices.Clone(s.Rigging.Batten.Lines)
	s.Rigging.Loft = cloneLoft(s.Rigging.Loft)
	s.Rigging.Run.Bridges = slices.Clone(s.Rigging.Run.Bridges)
	s.Like = "" // the rigging itself stands in its place
	r := &Rigged{computed: computed{
		set: s, stock: slices.Clone(stock), ropes: on.ropes, flight: on.flight,
		load: found.load, travel: found.travel, breaks: found.load.Breaks(),
		lowest: found.travel.Lowest - hair, highest: found.travel.Highest + hair,
	}}
	if err := r.fillArbor(stock); err != nil {
		return nil, err
	}
	if field := r.beyondAll(); field != "" {
		if _, err := r.looks(); err != nil {
			return nil, massFault(field, " on a lift line", err)
		}
	}
	return r, nil
}

// beyondAll tells of a set that no house has, with a load that the ropes may refuse, and the field that it follows from. Only of such
// a set may a state be missing, and it is refused.
func (r *Rigged) beyondAll() (field string) {
	const heaviest = 1e6 * units.Tonne
	switch {
	case r.Bare() > heaviest:
		return "rigging"
	case r.Hung() > heaviest:
		return "hang"
	}
	return ""
}

// Set is the description that was rigged. Where it named a rigging of the house,
// that rigging stands in it, so that it can be rigged by itself.
func (r *Rigged) Set() Set { return r.set }

// Load is the batten with its hang, for questions of the load alone: what may still be hung, what a
// roving load does, how far a line may be off.
func (r *Rigged) Load() *load.Rigged { return r.load }

// Ratio is the batten's travel for each unit of the arbor's, from the paths of
// the ropes.
func (r *Rigged) Ratio() float64 { return r.ropes.Ratio() }

// Bare is the mass of the batten with nothing on it.
func (r *Rigged) Bare() units.Mass {
	if r.load == nil {
		return 0 // of a Rigged that Rig did not make
	}
	return r.load.Bare()
}

// Hung is the mass of all that hangs on the batten, whether carried or not.
func (r *Rigged) Hung() units.Mass {
	if r.load == nil {
		return 0
	}
	return r.load.Hung()
}

// Flight is the arbor in its run and the batten that answers it, for questions of
// the run alone: what a loading bridge reaches at a trim, whether a drop goes out
// of sight.
func (r *Rigged) Flight() arbor.Flight { return r.flight }

// Travel tells what the arbor's run gives the batten.
func (r *Rigged) Travel() Travel { return r.travel }

// Counterweight tells what answers the batten, and the pieces for it.
func (r *Rigged) Counterweight() Counterweight { return r.counter }

// Balance tells the out of balance over the travel. It is worked out when it is first asked.
func (r *Rigged) Balance() Balance {
	if r.load == nil {
		return Balance{} // of a Rigged that Rig did not make
	}
	return *r.balance.Get(r.newBalance)
}

// Low is the set's state at low trim, or at the trim nearest to it that the set
// reaches. It is worked out anew each time that it is asked, as by At.
func (r *Rigged) Low() State {
	low, _ := r.travel.reached()
	return r.state(low)
}

// High is the set's state at high trim, or at the trim nearest to it that the
// set reaches. It is worked out anew each time that it is asked, as by At.
func (r *Rigged) High() State {
	_, high := r.travel.reached()
	return r.state(high)
}

// state is At where there is no doubt that the set reaches the trim. A Rigged that Rig did not make has none.
func (r *Rigged) state(trim units.Length) State {
	s, _ := r.At(trim) // the empty state with an error
	return s
}

// Checks gives every check of the set, in a fixed order; those without a limit
// say so. That of the pieces in stock is there only where the stock falls short.
// It holds the set against its limits when it is first asked; the slice is the caller's.
func (r *Rigged) Checks() []Check {
	checks, _ := r.hold()
	return slices.Clone(checks)
}

// Exceeds tells whether any check exceeds its limit.
func (r *Rigged) Exceeds() bool {
	checks, _ := r.hold()
	return exceeds(checks)
}

// hold holds the set against its limits, once, and gives what it looked at if it was now that it did. There is nothing to look at of
// a Rigged that Rig did not make.
func (r *Rigged) hold() (checks []Check, looks []look) {
	checks = r.checks.Get(func() []Check {
		var err error
		looks, err = r.looks()
		return r.check(looks, err)
	})
	return checks, looks
}
