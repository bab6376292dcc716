package arbor

import (
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Venue is a wall and what is to fly from it, for which a purchase is to be
// chosen. The arbor is described once; for each purchase it is made as tall as it
// has to be, everything but its room and length unchanged. Run's lower stop is the
// lowest that any arbor may come down to.
type Venue struct {
	Run     Run          `json:"run"`
	Frame   Frame        `json:"frame"`
	Stock   Stock        `json:"stock"`             // the kinds of piece; counts bound only Fit.Most
	Bare    units.Mass   `json:"bare"`              // of the batten with nothing on it
	Load    units.Mass   `json:"load,omitzero"`     // of what is to hang on it
	Low     units.Length `json:"low_trim"`          // wanted, above the deck
	High    units.Length `json:"high_trim"`         // wanted, above the deck
	MadeOff units.Length `json:"made_off,omitzero"` // as Ride.MadeOff, for the reading as made off today
	Side    Side         `json:"side,omitzero"`     // the side that stacks may not err on
}

// Option is what a venue gets with one ratio.
type Option struct {
	Ratio         float64      `json:"ratio"`         // batten travel for each unit of arbor travel
	Travel        units.Length `json:"travel"`        // the arbor travel for the trims wanted, lines made off anew, up to the next nanometre
	Counterweight units.Mass   `json:"counterweight"` // arbor and stack that would balance all of the load: the ratio times batten and load
	Stack         Stack        `json:"stack"`         // pieces for it, as Frame.Ideal gives them: whatever room, capacity and stock
	Frame         Frame        `json:"frame"`         // the arbor, just tall enough for that stack
	Over          units.Mass   `json:"over"`          // that stack less the frame's capacity; positive: the arbor may not hold it

	Anew  Fit `json:"anew"`  // lines made off so that the arbor stands against its upper stop at low trim
	Today Fit `json:"today"` // lines made off as the venue says
}

// Fit is how an option fits into the venue, for one way to make off the lines.
type Fit struct {
	Stop Stop `json:"stop"` // the highest lower stop for Option.Frame; Freed is the height that the wing gains, or negative what it lacks

	// Longest is the longest arbor over the venue's own lower stop, Most the heaviest stack that it holds of what is in
	// stock within its capacity, and Hangs what may then hang on the batten: less than Load where the load does not fit.
	// Most and Hangs are zero where no arbor is short enough to leave the batten its travel.
	Longest Longest    `json:"longest"`
	Most    Stack      `json:"most"`
	Hangs   units.Mass `json:"hangs"`
}

// Compare sets purchases side by side: single against double is
// Compare(1, 2). Options come in the order of the ratios.
//
// The error joins a *units.FieldError for everything that is wrong. Where no
// stack keeps to the side that is allowed it is a *NoStackError under the ratio.
func (v Venue) Compare(ratios ...float64) ([]Option, error) {
	if err := v.validate(ratios); err != nil {
		return nil, err
	}
	var p check.Problems
	options := make([]Option, len(ratios))
	for i, ratio := range ratios {
		option, err := v.option(ratio)
		p.Within("ratios["+strconv.Itoa(i)+"]", "", err)
		options[i] = option
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	return options, nil
}

func (v Venue) validate(ratios []float64) error {
	var p check.Problems
	p.Within("run", "", v.Run.Validate())
	p.Within("frame", "", v.Frame.Validate())
	p.Within("stock", "", v.Stock.Validate())
	if check.NotNegative(&p, "bare", v.Bare) && v.Bare > heaviestFill/mostRatio {
		p.Add("bare", check.Show(v.Bare), "at most "+check.Show(heaviestFill/mostRatio), units.ErrOutOfRange)
	}
	if check.NotNegative(&p, "load", v.Load) && v.Load > heaviestFill/mostRatio {
		p.Add("load", check.Show(v.Load), "at most "+check.Show(heaviestFill/mostRatio), units.ErrOutOfRange)
	}
	if v.Frame.Tare > heaviestFill {
		p.Add("frame.tare", check.Show(v.Frame.Tare), "at most "+check.Show(heaviestFill), units.ErrOutOfRange)
	}
	checkTrims(&p, v.Low, v.High)
	height(&p, "made_off", v.MadeOff)
	p.Within("", "", v.Side.fault())
	if len(ratios) == 0 {
		p.Add("ratios", "", "at least one ratio, such as 1 or 2", units.ErrMissing)
	}
	for i, ratio := range ratios {
		checkRatio(&p, "ratios["+strconv.Itoa(i)+"]", ratio)
	}
	return p.Err()
}

// option works out one ratio. The venue was found right.
func (v Venue) option(ratio float64) (Option, error) {
	times := func(m units.Mass) units.Mass { return kilograms(fractionOf(ratio).times(nanograms(m))) }
	w := Wanted{
		Pipe: kilograms(nanograms(times(v.Bare)) - nanograms(v.Frame.Tare)),
		Show: times(v.Load),
	}
	stack, err := v.Frame.Ideal(w, v.Stock, v.Side)
	if err != nil {
		return Option{}, err
	}
	frame := v.Frame
	taller := nanometres(stack.Height) - nanometres(frame.Room)
	frame.Room, frame.Length = stack.Height, metres(nanometres(frame.Length)+taller)
	ride := Ride{Ratio: ratio, MadeOff: v.MadeOff}
	out := Option{
		Ratio:         ratio,
		Travel:        metres(fractionOf(ratio).byUp(nanometres(v.High) - nanometres(v.Low))),
		Counterweight: kilograms(fractionOf(ratio).times(nanograms(v.Bare) + nanograms(v.Load))),
		Stack:         stack,
		Frame:         frame,
		Over:          kilograms(nanograms(stack.Mass) - nanograms(frame.Capacity)),
	}
	stops, lengths := v.Run.highestStop(frame, ride, v.Low, v.High), v.Run.longestArbor(v.Frame, ride, v.Low, v.High)
	if out.Anew, err = v.fit(ratio, w, stops.Anew, lengths.Anew); err != nil {
		return Option{}, err
	}
	out.Today, err = v.fit(ratio, w, stops.Today, lengths.Today)
	return out, err
}

// fit fills the longest arbor with as much as it may hold.
func (v Venue) fit(ratio float64, w Wanted, stop Stop, longest Longest) (Fit, error) {
	out := Fit{Stop: stop, Longest: longest}
	frame := longest.Of(v.Frame)
	if frame.Validate() != nil {
		return out, nil
	}
	// More show weight than the capacity allows is wanted, and never more than that put in: the most that fits. Where the tare
	// outweighs the batten, the surplus is wanted on top, and comes to more than may be asked for: the stack is that without either.
	capacity := nanograms(frame.Capacity)
	most, err := frame.Fill(Wanted{Pipe: max(w.Pipe, 0), Show: kilograms(capacity)}, v.Stock, NeverArborHeavy)
	if err != nil {
		return Fit{}, err
	}
	most.Wanted = Wanted{Pipe: w.Pipe, Show: kilograms(capacity - min(nanograms(w.Pipe), 0))}
	out.Most = most
	held := nanograms(frame.Tare) + nanograms(most.Mass)
	out.Hangs = kilograms(max(0, fractionOf(ratio).by(held)-nanograms(v.Bare)))
	return out, nil
}
