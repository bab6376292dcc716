package lineset

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

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
	stock  arbor.Stock
	load   *load.Rigged
	ropes  *purchase.Reeved
	breaks []units.Length

	flight  arbor.Flight
	travel  Travel
	counter Counterweight
	balance Balance
	ample   arbor.Stack // what would be stacked were there enough pieces of every kind
	states  []State     // at low trim, where the load may turn between, and at high trim
	hands   []Hand      // at the same trims; the first and the last with their terms
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
	ropes, err := s.Rigging.reeve()
	p.Within("rigging", "", err)
	p.Within("", "", s.validate(ropes != nil))
	if err := p.Err(); err != nil {
		return nil, err
	}
	return s.compute(stock, ropes)
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
	_, err := r.reeve()
	return err
}

// reeve is Validate, and gives the ropes of a rigging that nothing is wrong with.
func (r Rigging) reeve() (*purchase.Reeved, error) {
	var p check.Problems
	batten, err := r.stretched().Rig(nil)
	p.Within("", "", err)
	check.NotNegative(&p, "idler.mass", r.Idler.Mass)
	check.NotNegative(&p, "idler.base", r.Idler.Base)
	r.checkLoft(&p)
	check.NotNegative(&p, "offset", r.Offset)
	check.NotNegative(&p, "bed", r.Bed)
	check.Positive(&p, "made_off", r.MadeOff, "the batten's trim while the arbor stands against its upper stop")
	p.Within("limits", "", r.Limits.validate())
	p.Within("arbor", "", r.Arbor.Validate())
	p.Within("run", "", r.Run.ValidateFor(r.Arbor))
	r.checkRun(&p)
	p.Within("", "", r.rename(r.layout().Validate(), p.Err()))
	if p.Err() != nil {
		return nil, p.Err()
	}
	// With each field right by itself, the ropes must be able to run wherever the
	// stops let the arbor go.
	t, err := r.flight(r.Purchase.Ratio())
	if err != nil {
		return nil, r.renameFlight(err)
	}
	lower := check.Show(r.Run.LowerStop)
	if line, height := r.lowestLoft(); t.Highest >= height {
		p.Add(r.loftField(line), check.Show(height), "more than "+check.Show(t.Highest)+
			", the trim that the batten reaches, made off as it is, before the arbor lands on its lower stop", units.ErrOutOfRange)
	}
	if r.Idler.Height >= r.Run.LowerStop {
		p.Add("idler.height", check.Show(r.Idler.Height), "less than "+lower+", the height of the arbor's foot on its lower stop", units.ErrOutOfRange)
	}
	if r.hand() != purchase.Single && r.Rail >= r.Run.LowerStop {
		p.Add("rail", check.Show(r.Rail), "less than "+lower+", the height of the arbor's foot on its lower stop: the hand line's end or block is at the rail", units.ErrOutOfRange)
	}
	if foot := r.Run.UpperStop - r.Arbor.Length; r.Rail >= foot {
		p.Add("rail", check.Show(r.Rail), "less than "+check.Show(foot)+", the height of the arbor's foot at its upper stop: the rope from the foot to the idler is to pass the rail", units.ErrOutOfRange)
	}
	if p.Err() != nil {
		return nil, p.Err()
	}
	ropes, err := r.layout().Rig()
	if err != nil {
		return nil, r.rename(err, nil)
	}
	if lowest, highest := ropes.Reach(); t.Lowest <= lowest || t.Highest >= highest {
		p.Add("run", "", "stops that halt the arbor before two blocks meet", units.ErrOutOfRange)
	}
	if err := batten.Tips(t.Lowest, t.Lowest); err != nil {
		p.Add("batten.lines", "", "a lift line on each side of the bare batten's centre of gravity", err)
	}
	if p.Err() != nil {
		return nil, p.Err()
	}
	return ropes, nil
}

// validate looks at what is the set's own. Whether its hang would tip the batten
// can only be told when the rigging is right.
func (s Set) validate(rigging bool) error {
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
	hang, err := s.Rigging.stretched().Rig(s.Hang)
	if t, flies := s.Rigging.flight(s.Rigging.Purchase.Ratio()); rigging && flies == nil {
		if _, trims := s.travel(t); ordered {
			p.Within("", "", trims)
		}
		if err == nil {
			if tip := hang.Tips(t.Lowest, t.Highest); tip != nil {
				p.Add("hang", "", "a load between the outermost lift lines", tip)
			}
		}
	}
	for _, e := range flatten(err) {
		// Faults of the batten itself are the rigging's, and reported there.
		if fe := (*units.FieldError)(nil); errors.As(e, &fe) && strings.HasPrefix(fe.Field, "hang") {
			p.Within("", "", e)
		}
	}
	return p.Err()
}

// compute answers everything once, with the ropes of its rigging. The set was validated.
func (s Set) compute(stock arbor.Stock, ropes *purchase.Reeved) (*Rigged, error) {
	// What is kept must not change with the caller's slices.
	s.Hang = slices.Clone(s.Hang)
	s.Rigging.Batten.Lines = slices.Clone(s.Rigging.Batten.Lines)
	s.Rigging.Loft = cloneLoft(s.Rigging.Loft)
	s.Rigging.Run.Bridges = slices.Clone(s.Rigging.Run.Bridges)
	s.Like = "" // the rigging itself stands in its place
	r := &Rigged{set: s, stock: slices.Clone(stock), ropes: ropes}
	var err error
	if r.load, err = s.Rigging.stretched().Rig(s.Hang); err != nil {
		return nil, err
	}
	r.breaks = r.load.Breaks()
	if r.flight, err = s.Rigging.flight(r.ropes.Ratio()); err != nil {
		return nil, err
	}
	if r.travel, err = s.travel(r.flight); err != nil {
		return nil, err
	}
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
		hands, err := r.hand(st)
		if err != nil {
			return nil, err
		}
		r.states, r.hands = append(r.states, st), append(r.hands, hands)
	}
	for _, i := range [2]int{0, len(r.states) - 1} { // those that are reported
		if r.hands[i].Terms, err = r.terms(r.states[i]); err != nil {
			return nil, err
		}
	}
	r.checks = r.check()
	return r, nil
}

// stations are the trims at which the set is looked at for its checks: low and
// high trim and, between them, every trim at which the load on the batten or its
// share among the lines bends or jumps (a hair above such a trim a standing piece
// is off the deck). Between two of them every tension runs straight, so the worst
// is at one of them.
func (r *Rigged) stations() []units.Length {
	low, high := r.travel.reached()
	trims := []units.Length{low}
	for _, b := range append([]units.Length{low}, r.load.Turns(low, high)...) {
		if b > low && b < high {
			trims = append(trims, b)
		}
		if above := units.Length(math.Nextafter(b.In(units.Metre), math.Inf(1))); above < high && r.load.CarriedAbove(b) != r.load.Carried(b) {
			trims = append(trims, above)
		}
	}
	return slices.Compact(append(trims, high))
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

// Balance tells the out of balance over the travel.
func (r *Rigged) Balance() Balance { return r.balance }

// Low is the set's state at low trim, or at the trim nearest to it that the set
// reaches.
func (r *Rigged) Low() State { return r.state(0) }

// High is the set's state at high trim, or at the trim nearest to it that the
// set reaches.
func (r *Rigged) High() State { return r.state(len(r.states) - 1) }

func (r *Rigged) state(i int) State {
	if i < 0 || i >= len(r.states) {
		return State{} // of a Rigged that Rig did not make
	}
	return r.states[i]
}

// Checks gives every check of the set, in a fixed order; those without a limit
// say so. That of the pieces in stock is there only where the stock falls short.
// The slice is the caller's.
func (r *Rigged) Checks() []Check { return slices.Clone(r.checks) }

// Exceeds tells whether any check exceeds its limit.
func (r *Rigged) Exceeds() bool {
	return slices.ContainsFunc(r.checks, func(c Check) bool { return c.Verdict == Exceeds })
}
