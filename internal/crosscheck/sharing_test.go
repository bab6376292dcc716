package crosscheck

import (
	"errors"
	"flag"
	"math"
	"testing"
	"time"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

var sharingSeed = flag.Uint64("sharing.seed", 0, "draw battens from this seed alone, as a failure printed it")

// eachDrawn calls a function for so many battens of a seed that is always the same, so that
// all machines see the same, and for as many of a new one.
func eachDrawn(t *testing.T, count int, do func(t *testing.T, d drawn)) {
	t.Helper()
	seeds := []uint64{1, uint64(time.Now().UnixNano())}
	if *sharingSeed != 0 {
		seeds = []uint64{*sharingSeed}
	}
	for _, seed := range seeds {
		for number := range uint64(count) {
			do(t, draw(seed, number))
			if t.Failed() {
				t.Fatalf("batten %d; again with -sharing.seed=%d", number, seed)
			}
		}
	}
}

// agreement is how closely a share may be asked to agree with a reference.
type agreement struct {
	force float64 // of the whole weight: tensions and shear; and, times the batten's length, moments
	gap   float64 // of hung.sag
}

// drawnAgree: both sides work in float64. A tension is the sum of terms that are larger than the
// whole weight by the stiffness of the shortest span, some 1e5 without dimensions, times the
// deflections there, some 1e-3: a loss of two or three digits of sixteen on the whole, more where
// trim errors work against short spans. A gap far out multiplies the rounding of a slope between two
// tight lines that stand close by as many of their distances as it is away.
var drawnAgree = agreement{force: 1e-9, gap: 1e-8}

// compare says whether what package load gave is what the reference says.
func compare(t *testing.T, d hung, got load.Share, want sharing, a agreement) {
	t.Helper()
	weight, length := d.weight(), d.length
	near := func(what string, got, want, tolerance float64) {
		t.Helper()
		if !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%s: %v, want %v, off by %.2g of what is allowed", what, got, want, math.Abs(got-want)/tolerance)
		}
	}
	if len(got.Lines) != len(d.ropes) {
		t.Fatalf("%d lines share, want %d", len(got.Lines), len(d.ropes))
	}
	near("weight", got.Weight.In(units.Newton), weight, 1e-12*weight)
	for i, l := range got.Lines {
		r := d.ropes[i]
		tight := want.tight>>i&1 == 1
		if l.Slack == tight || l.Slack && l.Tension != 0 || l.Tension < 0 || l.Gap < 0 || tight && l.Gap != 0 {
			t.Errorf("line %d: %+v, want tight %v", i, l, tight)
		}
		near("tension", l.Tension.In(units.Newton), want.tension[i], a.force*weight)
		near("stretch", l.Stretch.In(units.Metre), want.tension[i]/r.spring, a.force*weight/r.spring)
		if !tight {
			// Far out on a batten that hangs by two close lines a gap is their tilt drawn out.
			near("gap", l.Gap.In(units.Metre), want.gap[i], a.gap*(d.sag()+want.gap[i]))
		}
	}
	sag, hog, shear := d.extremes(want.tension)
	near("sagging", got.Sagging.Moment.In(units.NewtonMetre), sag, a.force*weight*length)
	near("hogging", got.Hogging.Moment.In(units.NewtonMetre), hog, a.force*weight*length)
	near("shear", math.Abs(got.Shear.Force.In(units.Newton)), shear, a.force*weight)
	near("stress", got.Stress.In(units.Pascal), max(sag, -hog)/d.section, a.force*weight*length/d.section)
	// Where they stand: of several places with the same value, any will do.
	if sag > a.force*weight*length {
		near("moment where it sags most", d.moment(want.tension, got.Sagging.At.In(units.Metre)), sag, a.force*weight*length)
	}
	if hog < -a.force*weight*length {
		near("moment where it hogs most", d.moment(want.tension, got.Hogging.At.In(units.Metre)), hog, a.force*weight*length)
	}
	// A place a rounding beside a jump would show the other side of it.
	x, found := got.Shear.At.In(units.Metre), math.Inf(1)
	for _, by := range []float64{0, -1e-9, 1e-9} {
		for _, right := range []bool{false, true} {
			off := d.shear(want.tension, x+by, right) - got.Shear.Force.In(units.Newton)
			found = min(found, math.Abs(off))
		}
	}
	near("shear where it is largest", found, 0, (a.force+1e-7)*weight)
}

// Problem:   how the lines share what hangs, which of them are slack and what the pipe suffers.
// Source:    the displacement method (see beam) with gonum's dense Cholesky, for every set of
//            tight lines there is; sections cut through the pipe.
// Given:     battens by chance, see draw.
// Expected:  the one set with all signs right, and its figures.
// Tolerance: see drawnAgree.
//
// Left out are battens that are so close to a change of the set, or to tipping, that neither
// side can be sure: a tension of less than sharp of the whole weight or a gap as small. They
// must be few.

func TestSharingAgainstEnumeration(t *testing.T) {
	var shared, slack, tipped, undecided int
	eachDrawn(t, 5000, func(t *testing.T, d drawn) {
		h := hangUp(d.batten, d.hang, d.trim)
		got, err := d.batten.Share(d.hang, d.trim)
		if len(h.ropes) > 1 {
			out := max(h.ropes[0].at-h.centre(), h.centre()-h.ropes[len(h.ropes)-1].at) / h.span()
			if math.Abs(out) < sharp {
				undecided++
				return
			}
			if tip := new(load.TipError); out > 0 {
				if !errors.As(err, &tip) {
					t.Errorf("the centre of gravity is outside by %v spans: %v, want a TipError", out, err)
				}
				tipped++
				return
			}
		}
		if err != nil {
			t.Error(err)
			return
		}
		want := enumerate(h)
		if want.margin < sharp {
			undecided++
			return
		}
		if want.right != 1 {
			t.Errorf("%d sets with all signs right", want.right)
			return
		}
		shared++
		for _, l := range got.Lines {
			if l.Slack {
				slack++
				break
			}
		}
		compare(t, h, got, want, drawnAgree)
	})
	t.Logf("%d shared, %d of them with slack lines; %d tip; %d left out", shared, slack, tipped, undecided)
	if all := shared + tipped + undecided; undecided*200 > all || slack*10 < all || shared*2 < all {
		t.Error("what was drawn does not test much")
	}
}

// The reference of TestSharingAgainstEnumeration against the same in 300 bits, which is another
// mesh and other formulas for loads: so that a batten on which they and package load differ is
// known not to be one that the reference cannot do.
func TestStiffnessAgainstExact(t *testing.T) {
	const force, gap = 1e-10, 1e-9
	var worstForce, worstGap float64
	eachDrawn(t, 400, func(t *testing.T, d drawn) {
		h := hangUp(d.batten, d.hang, d.trim)
		n := len(h.ropes)
		if n == 1 || h.centre() < h.ropes[0].at || h.centre() > h.ropes[n-1].at {
			return
		}
		got := enumerate(h)
		if got.margin < sharp {
			return
		}
		want, ok := exactShare(h, got.set(n))
		if !ok {
			t.Error("no exact solution")
			return
		}
		for i := range n {
			worstForce = max(worstForce, math.Abs(got.tension[i]-want.tension[i])/h.weight())
			worstGap = max(worstGap, math.Abs(got.gap[i]-want.gap[i])/h.sag())
		}
		if worstForce > force || worstGap > gap {
			t.Errorf("%+v, exactly %+v", got, want)
		}
	})
	t.Logf("tensions within %.1g of the whole weight, gaps within %.1g", worstForce, worstGap)
}

// set gives the tight ones of n lines one by one.
func (s sharing) set(n int) []bool {
	tight := make([]bool, n)
	for i := range tight {
		tight[i] = s.tight>>i&1 == 1
	}
	return tight
}
