package lineset

import (
	"errors"
	"strings"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Validate reports everything that is wrong with what is installed, as
// *units.FieldError joined.
func (r Rigging) Validate() error {
	return r.install(new(installed), nil)
}

// installed is a rigging that nothing is wrong with.
type installed struct {
	batten load.Batten      // with the path of every line that stretches
	ropes  *purchase.Reeved // as they are laid
	flight arbor.Flight
	hang   load.Hang    // what load has on it
	load   *load.Rigged // nil where something is wrong with the hang
}

// hung is the batten with a hang.
func (on *installed) hung(h load.Hang) (*load.Rigged, error) {
	if on.load != nil && len(h) == len(on.hang) && (len(h) == 0 || &h[0] == &on.hang[0]) {
		return on.load, nil
	}
	return on.batten.Rig(h)
}

// fewLines is how many lines most battens have at most.
const fewLines = 8

// install is Validate, and fills in what was found on the way; after an error that means nothing. Of the hang it tells no faults.
func (r Rigging) install(on *installed, h load.Hang) error {
	var p check.Problems
	var few [fewLines]purchase.Loft // the layout is soon forgotten
	layout := r.layout(few[:])
	ropes, unlaid := layout.Rig()
	on.batten, on.ropes, on.hang = r.stretched(ropes), ropes, h
	var err error
	on.load, err = on.batten.Rig(h)
	for _, e := range flatten(err) {
		if fe := (*units.FieldError)(nil); errors.As(e, &fe) && strings.HasPrefix(fe.Field, "batten") {
			p.Within("", "", e)
		}
	}
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
	if unlaid != nil {
		p.Within("", "", r.rename(layout.Validate(), p.Err()))
	}
	if p.Err() != nil {
		return p.Err()
	}
	// With each field right by itself, the ropes must be able to run wherever the
	// stops let the arbor go.
	if on.flight, err = r.flight(r.Purchase.Ratio()); err != nil {
		return r.renameFlight(err)
	}
	t := &on.flight
	if line, height := r.lowestLoft(); t.Highest >= height {
		p.Add(r.loftField(line), check.Show(height), "more than "+check.Show(t.Highest)+
			", the trim that the batten reaches, made off as it is, before the arbor lands on its lower stop", units.ErrOutOfRange)
	}
	if r.Idler.Height >= r.Run.LowerStop {
		lower := check.Show(r.Run.LowerStop)
		p.Add("idler.height", check.Show(r.Idler.Height), "less than "+lower+", the height of the arbor's foot on its lower stop", units.ErrOutOfRange)
	}
	if r.hand() != purchase.Single && r.Rail >= r.Run.LowerStop {
		lower := check.Show(r.Run.LowerStop)
		p.Add("rail", check.Show(r.Rail), "less than "+lower+", the height of the arbor's foot on its lower stop: the hand line's end or block is at the rail", units.ErrOutOfRange)
	}
	if foot := r.Run.UpperStop - r.Arbor.Length; r.Rail >= foot {
		p.Add("rail", check.Show(r.Rail), "less than "+check.Show(foot)+", the height of the arbor's foot at its upper stop: the rope from the foot to the idler is to pass the rail", units.ErrOutOfRange)
	}
	if p.Err() != nil {
		return p.Err()
	}
	if unlaid != nil {
		return r.rename(unlaid, nil)
	}
	// At the upper stop the ropes were laid with their stops a nanometre apart. At the lower one less than that may be left.
	if _, highest := ropes.Reach(); t.Highest >= highest {
		p.Add("run", "", "stops that halt the arbor before two blocks meet", units.ErrOutOfRange)
	}
	if err := r.tips(on.batten, t.Lowest); err != nil {
		p.Add("batten.lines", "", "a lift line on each side of the bare batten's centre of gravity", err)
	}
	return p.Err()
}

// tips tells whether the batten tips with nothing on it.
func (r Rigging) tips(batten load.Batten, trim units.Length) error {
	lines := batten.Lines
	if middle := batten.Length.Scale(0.5); lines[0].At <= middle && lines[len(lines)-1].At >= middle {
		return nil
	}
	bare, err := batten.Rig(nil)
	if err != nil {
		return err
	}
	return bare.Tips(trim, trim)
}
