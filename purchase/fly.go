package purchase

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Fly is a batten that is flown from one trim to another by hand: brought up to speed evenly, kept at it, brought to rest
// evenly, so that its speed over time is a trapezoid.
type Fly struct {
	From  units.Length   `json:"from"`  // trim
	To    units.Length   `json:"to"`    // above From: it flies out
	Top   units.Speed    `json:"top"`   // of the batten, once it is up to speed
	Start units.TimeSpan `json:"start"` // in which it gets there
	Stop  units.Length   `json:"stop"`  // the way in which it is brought to rest at To
	On    Bodies         `json:"on"`
}

// Flown is what that takes.
type Flown struct {
	Way    Way            `json:"way"`
	Time   units.TimeSpan `json:"time"`   // all together
	Phases [3]Phase       `json:"phases"` // speeding up, at speed, slowing down
	Most   Pulling        `json:"most"`   // the hardest that the hand must pull; of equals the first
	Power  units.Power    `json:"power"`  // the most that it gives: its pull times the speed of the rope
}

// Phase is a part of it with one acceleration. Between its first and its last moment the pull goes evenly with the trim.
type Phase struct {
	From  units.Length       `json:"from"`  // trim
	To    units.Length       `json:"to"`    // trim
	Time  units.TimeSpan     `json:"time"`  // that it takes
	Gain  units.Acceleration `json:"gain"`  // of the batten, its way
	First Pulling            `json:"first"` // in the first moment
	Last  Pulling            `json:"last"`  // in the last
	// Lines is what the lift lines bear at the batten over what they bear at rest.
	Lines float64 `json:"lines"`
}

// Fly works out the pulls: the hand's at each moment is [Reeved.HandFor]. The errors are those of [Reeved.Run], and
// *units.FieldError for each field that is wrong; where the way is too short for so much speed, the field is "top".
func (r *Reeved) Fly(f Fly) (Flown, error) {
	if err := r.unrigged(); err != nil {
		return Flown{}, err
	}
	var p check.Problems
	r.trimmed(&p, "from", f.From)
	if r.trimmed(&p, "to", f.To) && f.To == f.From {
		p.Add("to", check.Show(f.To), "another trim than the one it is flown from", units.ErrOutOfRange)
	}
	check.Positive(&p, "top", f.Top, "the batten's speed once it is up to it")
	check.Positive(&p, "start", f.Start, "the time in which it is brought up to speed")
	check.Positive(&p, "stop", f.Stop, "the way in which it is brought to rest")
	p.Within("on", "", f.On.validate(len(r.lift)))
	if r.lock < 0 {
		p.Add("hand", "", "a hand line to pull on", units.ErrMissing)
	}
	if err := p.Err(); err != nil {
		return Flown{}, err
	}
	way, total := Out, f.To-f.From
	if total < 0 {
		way, total = In, -total
	}
	starting := f.Top.Over(f.Start).Scale(0.5)
	if starting+f.Stop > total {
		v := f.Top.Scale(units.Ratio(total-f.Stop, starting))
		p.Add("top", check.Show(f.Top), "at most "+check.Show(max(v, 0))+", at which there is way enough to start and to stop", units.ErrOutOfRange)
		return Flown{}, p.Err()
	}
	v, stop := f.Top.In(units.MetrePerSecond), f.Stop.In(units.Metre)
	steady := total - starting - f.Stop
	out := Flown{Way: way}
	out.Phases = [3]Phase{
		{Time: f.Start, Gain: f.Top.Per(f.Start)},
		{Time: units.TimeSpan(steady.In(units.Metre) / v)},
		{Time: units.TimeSpan(2 * stop / v), Gain: units.Acceleration(-v * v / (2 * stop))},
	}
	trim := f.From
	for i, length := range [3]units.Length{starting, steady, f.Stop} {
		phase := &out.Phases[i]
		phase.From = trim
		trim += length.Scale(way.sign())
		if i == 2 {
			trim = f.To // to the last bit
		}
		phase.To = trim
		phase.Lines = 1 + way.sign()*units.Ratio(phase.Gain, units.StandardGravity)
		out.Time += phase.Time
		before, after := f.Top, f.Top
		if i == 0 {
			before = 0
		}
		if i == 2 {
			after = 0
		}
		var err error
		if phase.First, err = r.HandFor(phase.From, f.On, Speeding{Way: way, Speed: before, Gain: phase.Gain}); err != nil {
			return Flown{}, err
		}
		if phase.Last, err = r.HandFor(phase.To, f.On, Speeding{Way: way, Speed: after, Gain: phase.Gain}); err != nil {
			return Flown{}, err
		}
		for _, one := range [...]struct {
			hand  Pulling
			speed units.Speed
		}{{phase.First, before}, {phase.Last, after}} {
			if one.hand.Pull > out.Most.Pull {
				out.Most = one.hand
			}
			out.Power = max(out.Power, r.gives(way, one.hand, one.speed))
		}
	}
	return out, nil
}

// gives is the power of a hand that drives: one that holds back takes power from the set.
func (r *Reeved) gives(way Way, hand Pulling, speed units.Speed) units.Power {
	drives := InnerRope
	if way == In {
		drives = OuterRope
	}
	if hand.Rope != drives {
		return 0
	}
	m := r.motions()
	rope := speed.Scale(math.Abs(m.courses[len(r.lift)].speed[m.grip[drives]]))
	return units.Power(hand.Pull.In(units.Newton) * rope.In(units.MetrePerSecond))
}
