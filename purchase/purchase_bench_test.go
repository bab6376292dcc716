package purchase_test

import (
	"math"
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// benchmarkLayout is a double purchase set with seven lines and ropes that weigh something.
func benchmarkLayout() purchase.Layout {
	l := weightless(purchase.Double)
	l.LiftMass, l.HandMass, l.Drag = 0.11*units.PoundPerFoot, 0.167*units.PoundPerFoot, purchase.AntiFrictionBearings
	for len(l.Loft) < 7 {
		last := l.Loft[len(l.Loft)-1]
		l.Loft = append(l.Loft, purchase.Loft{Across: last.Across + 10*units.Foot, Height: last.Height})
	}
	return l
}

func benchmarkSet(tb testing.TB) (*purchase.Reeved, purchase.Bodies) {
	r, err := benchmarkLayout().Rig()
	if err != nil {
		tb.Fatal(err)
	}
	return r, purchase.Bodies{Pulls: evenly(7, 80*units.PoundForce), Arbor: 1120 * units.Pound, Idler: 60 * units.Pound}
}

func BenchmarkRig(b *testing.B) {
	l := benchmarkLayout()
	b.Run("layout", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := l.Rig(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("reeving", func(b *testing.B) {
		r := l.Reeving()
		b.ReportAllocs()
		for b.Loop() {
			if _, err := r.Rig(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkImbalance(b *testing.B) {
	r, _ := benchmarkSet(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.Imbalance(20*units.Foot, 500, 1000); err != nil {
			b.Fatal(err)
		}
	}
}

// One state at one trim, all parts and blocks, beside straight-line code for this one reeving.
func BenchmarkState(b *testing.B) {
	r, on := benchmarkSet(b)
	b.Run("at", func(b *testing.B) {
		b.ReportAllocs()
		var s purchase.State
		for b.Loop() {
			if err := r.AtInto(&s, 20*units.Foot, on); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("run", func(b *testing.B) {
		b.ReportAllocs()
		var s purchase.Running
		for b.Loop() {
			if err := r.RunInto(&s, 20*units.Foot, on, purchase.Out); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("straight line", func(b *testing.B) {
		b.ReportAllocs()
		trim := (20 * units.Foot).In(units.Metre)
		var s straight
		for b.Loop() {
			s.double(trim, on)
		}
		if s.lock == 1 {
			b.Error("so that it is not left out")
		}
	})
}

// straight is the state of the benchmark's set as plain code would work it out that knows nothing else:
// the oracle for what the walk along paths costs.
type straight struct {
	imbalance, lock, grip float64
	lift                  [7][8]float64 // both ends of each of four parts
	hand                  [10]float64
	loft, dead            [7][2]float64
	head, top, foot       [2]float64
	idler, handDead, rail [2]float64
	lockUp                float64
}

func (s *straight) double(trim float64, on purchase.Bodies) {
	const (
		foot      = 0.3048
		g         = 9.80665
		liftMass  = 0.11 * 0.45359237 / foot
		handMass  = 0.167 * 0.45359237 / foot
		headZ     = 60 * foot
		deadZ     = 61 * foot
		railZ     = 14 * foot
		idlerZ    = 13 * foot
		length    = 6 * foot
		trim0     = 4 * foot
		arborTop0 = 58 * foot
	)
	*s = straight{}
	w, wh := liftMass*g, handMass*g
	top := arborTop0 - (trim-trim0)/2
	feet := top - length
	arbor := on.Arbor.In(units.Kilogram) * g
	up := -arbor
	for i, pull := range on.Pulls {
		c := pull.In(units.Newton) - w*trim
		a, b, d, e := c+w*trim, c+w*headZ, c+w*top, c+w*deadZ
		s.lift[i] = [8]float64{a, b, b, b, b, d, d, e}
		s.loft[i] = [2]float64{-b, -b}
		s.dead[i] = [2]float64{0, -e}
		s.head[0] += b
		s.head[1] -= b
		s.top[1] += 2 * d
		up += 2 * d
	}
	// the hand line's own weight at the arbor: two parts up from its top, two down from its foot
	up += 2*wh*top - 2*wh*feet
	s.imbalance = up / 2
	below := on.Idler.In(units.Kilogram)*g/2 - wh*idlerZ
	s.grip = below + wh*railZ
	s.lock = s.imbalance * 2 / 2
	held := math.Min(s.lock, s.grip)
	above := below - held
	s.hand = [10]float64{
		below + wh*railZ, below + wh*feet, below + wh*feet, below + wh*idlerZ, below + wh*idlerZ,
		above + wh*headZ, above + wh*headZ, above + wh*top, above + wh*top, above + wh*deadZ,
	}
	s.rail[1] = s.hand[0]
	s.foot[1] = -s.hand[1] - s.hand[2]
	s.idler[1] = s.hand[3] + s.hand[4]
	s.head[1] -= s.hand[5] + s.hand[6]
	s.top[1] += s.hand[7] + s.hand[8]
	s.handDead[1] = -s.hand[9]
	s.lockUp = -held
}

// A balance curve of 101 trims, beside straight-line code for this one reeving.
func BenchmarkCurve(b *testing.B) {
	r, _ := benchmarkSet(b)
	f := purchase.Flight{Low: 5 * units.Foot, High: 45 * units.Foot, Carried: 560 * units.Pound, Arbor: 1120 * units.Pound}
	points := make([]purchase.FlightPoint, 101)
	b.Run("ours", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if err := r.Curve(f, points); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("straight line", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			straightCurve(f, points)
		}
	})
	var s purchase.State
	on := purchase.Bodies{Pulls: evenly(7, 80*units.PoundForce), Arbor: 1120 * units.Pound, Idler: 60 * units.Pound}
	b.Run("whole states", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			for i := range points {
				if err := r.AtInto(&s, f.Low+(f.High-f.Low).Scale(float64(i)/100), on); err != nil {
					b.Fatal(err)
				}
			}
		}
	})
}

// straightCurve is the same as plain code would work it out that knows nothing but the benchmark's set.
func straightCurve(f purchase.Flight, points []purchase.FlightPoint) {
	const (
		foot = 0.3048
		g    = 9.80665
		w    = 7 * 0.11 * 0.45359237 / foot * g
		wh   = 0.167 * 0.45359237 / foot * g
	)
	low, high := f.Low.In(units.Metre), f.High.In(units.Metre)
	carried, arbor := f.Carried.In(units.Kilogram)*g, f.Arbor.In(units.Kilogram)*g
	for i := range points {
		x := low + (high-low)*float64(i)/float64(len(points)-1)
		y := 58*foot - (x-4*foot)/2
		ropes := w*(y-x) + wh*6*foot
		p := &points[i]
		p.Trim, p.ArborTop = units.Length(x), units.Length(y)
		p.Ropes, p.Chain, p.Imbalance = units.Force(ropes), 0, units.Force(carried-arbor/2+ropes)
	}
}

func TestCurveIsTheStraightLine(t *testing.T) {
	r, _ := benchmarkSet(t)
	f := purchase.Flight{Low: 5 * units.Foot, High: 45 * units.Foot, Carried: 560 * units.Pound, Arbor: 1100 * units.Pound}
	got, want := make([]purchase.FlightPoint, 101), make([]purchase.FlightPoint, 101)
	if err := r.Curve(f, got); err != nil {
		t.Fatal(err)
	}
	straightCurve(f, want)
	for i, p := range got {
		q := want[i]
		if !near.Abs(p.Trim.In(units.Metre), q.Trim.In(units.Metre), 1e-12) || !near.Abs(p.ArborTop.In(units.Metre), q.ArborTop.In(units.Metre), 1e-12) ||
			!near.Abs(p.Ropes.In(units.Newton), q.Ropes.In(units.Newton), 1e-9) || !near.Abs(p.Imbalance.In(units.Newton), q.Imbalance.In(units.Newton), 1e-9) {
			t.Fatalf("%+v, want %+v", p, q)
		}
	}
}

// The two agree, so that it is the same that is timed.
func TestStateIsTheStraightLine(t *testing.T) {
	r, on := benchmarkSet(t)
	for _, trim := range []units.Length{10 * units.Foot, 20 * units.Foot, 40 * units.Foot} {
		got, err := r.At(trim, on)
		if err != nil {
			t.Fatal(err)
		}
		var want straight
		want.double(trim.In(units.Metre), on)
		same := func(what string, got units.Force, want float64) {
			t.Helper()
			if !near.Abs(got.In(units.Newton), want, 1e-9) {
				t.Errorf("trim %v, %s: %v, want %v N", trim, what, got, want)
			}
		}
		same("imbalance", got.Imbalance, want.imbalance)
		same("lock", got.Lock, want.lock)
		same("grip", got.Grip, want.grip)
		for i, rope := range got.Lift {
			for k, p := range rope.Parts {
				same(rope.Name, p.TensionFrom, want.lift[i][2*k])
				same(rope.Name, p.TensionTo, want.lift[i][2*k+1])
			}
			same("loft block", got.Load(purchase.LoftBlock(i+1)).Across, want.loft[i][0])
			same("loft block", got.Load(purchase.LoftBlock(i+1)).Up, want.loft[i][1])
			same("dead end", got.Load(purchase.DeadEnd(i+1)).Up, want.dead[i][1])
		}
		for k, p := range got.Hand.Parts {
			same("hand line", p.TensionFrom, want.hand[2*k])
			same("hand line", p.TensionTo, want.hand[2*k+1])
		}
		same("head block", got.Load(purchase.HeadBlock).Up, want.head[1])
		same("head block", got.Load(purchase.HeadBlock).Across, want.head[0])
		same("arbor top", got.Load(purchase.ArborTop).Up, want.top[1])
	}
}

// States asked into the same memory give the same and allocate nothing.
func TestIntoTheSameMemory(t *testing.T) {
	r, on := benchmarkSet(t)
	var s purchase.State
	var run purchase.Running
	if n := testing.AllocsPerRun(10, func() {
		if r.AtInto(&s, 20*units.Foot, on) != nil || r.RunInto(&run, 20*units.Foot, on, purchase.In) != nil {
			t.Error("refused")
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
	single, err := weightless(purchase.Single).Rig()
	if err != nil {
		t.Fatal(err)
	}
	few := purchase.Bodies{Pulls: evenly(5, 100), Arbor: 50, Idler: 20}
	fresh, err := single.At(20*units.Foot, few)
	if err != nil {
		t.Fatal(err)
	}
	if err := single.AtInto(&s, 20*units.Foot, few); err != nil {
		t.Fatal(err)
	}
	same(t, fresh, s)
	freshRun, err := single.Run(20*units.Foot, few, purchase.Out)
	if err != nil {
		t.Fatal(err)
	}
	if err := single.RunInto(&run, 20*units.Foot, few, purchase.Out); err != nil {
		t.Fatal(err)
	}
	same(t, freshRun, run)
	// A copy begins a memory of its own, so that both may be filled at one time; and slices that a caller has cut are whole again.
	other := s
	done := make(chan error)
	go func() { done <- r.AtInto(&other, 20*units.Foot, on) }()
	s.Lift[2].Parts, s.Blocks = nil, nil
	if err := single.AtInto(&s, 20*units.Foot, few); err != nil {
		t.Fatal(err)
	}
	if err := <-done; err != nil {
		t.Fatal(err)
	}
	same(t, fresh, s)
	if r.AtInto(nil, 20*units.Foot, on) == nil || r.RunInto(nil, 20*units.Foot, on, purchase.In) == nil {
		t.Error("filled nothing")
	}
	if single.AtInto(&s, -1000, few) == nil || single.RunInto(&run, 5, few, 0) == nil {
		t.Fatal("taken")
	}
	same(t, fresh, s)
	same(t, freshRun, run)
}

func BenchmarkRest(b *testing.B) {
	r, on := benchmarkSet(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.Rest(20*units.Foot, on); err != nil {
			b.Fatal(err)
		}
	}
}
