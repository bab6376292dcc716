package purchase_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// says makes sure of what single faults are worth: of one that is told alone, its value and part of its remedy.
func says(t *testing.T, err error, value, want string) {
	t.Helper()
	for _, fault := range faults(t, err) {
		if fault.Value != value || !strings.Contains(fault.Want, want) {
			t.Errorf("%v: of %s, want of %s and %q", fault, fault.Value, value, want)
		}
	}
}

// A lift line has to hold the batten up and to let it fly as the arbor sinks, at the ratio of the first; whatever else it does is told as
// what it is.
func TestLiftLinesThatAreNone(t *testing.T) {
	batten, loft, head, top := stop("batten", purchase.Batten, 3, 0), stop("loft", purchase.Grid, 3, 20), stop("head", purchase.HeadBeam, 0, 20), stop("top", purchase.Arbor, 0, 0)
	floor, under, foot := stop("floor", purchase.Building, 3, 0.2), stop("under", purchase.Building, 0, 0.2), stop("foot", purchase.Arbor, 0, -2)
	over, beam := stop("over", purchase.Grid, 3, 20.5), stop("beam", purchase.HeadBeam, 0, 20.5)
	single := []purchase.Stop{batten, loft, head, top}
	double := []purchase.Stop{batten, loft, head, top, beam}
	for _, c := range []struct {
		name        string
		first, path []purchase.Stop // none first: the path is alone
		kind        error
		value, want string
	}{
		{"from the grid up the arbor", nil, []purchase.Stop{loft, head, top}, purchase.ErrNoTravel, `"line"`, "changes with both"},
		{"from the floor down the arbor", nil, []purchase.Stop{floor, under, foot}, purchase.ErrNoTravel, `"line"`, "changes with both"},
		{"from the batten to the beam", nil, []purchase.Stop{batten, loft, head}, purchase.ErrNoTravel, `"line"`, "changes with both"},
		{"from the batten down to the floor", nil, []purchase.Stop{batten, floor, under}, purchase.ErrNoTravel, `"line"`, "changes with both"},
		{"both down to the floor", nil, []purchase.Stop{batten, floor, under, foot}, units.ErrOutOfRange, `"line"`, "holds the batten up"},
		{"the batten to the floor, the arbor to the beam", nil, []purchase.Stop{batten, floor, head, top}, units.ErrOutOfRange, `"line"`, "holds the batten up"},
		{"twice to the floor", nil, []purchase.Stop{floor, batten, stop("floor", purchase.Building, 3, 0.3), under, foot}, units.ErrOutOfRange, `"line"`, "holds the batten up"},
		{"the batten to the grid, the arbor to the floor", nil, []purchase.Stop{batten, loft, under, foot}, purchase.ErrNoTravel, `"line"`, "lets the batten rise while the arbor sinks"},
		{"double beside single", single, double, purchase.ErrOverConstrained, "2:1", "first lift line, 1:1"},
		{"single beside double", double, single, purchase.ErrOverConstrained, "1:1", "first lift line, 2:1"},
		{"two parts at the batten beside single", single, []purchase.Stop{over, batten, loft, head, top}, purchase.ErrOverConstrained, "0.5:1", "first lift line, 1:1"},
		{"three at the batten and two at the arbor beside double", double, []purchase.Stop{batten, over, batten, loft, head, top, beam}, purchase.ErrOverConstrained, "0.666667:1", "first lift line, 2:1"},
		{"the arbor to the floor beside single", single, []purchase.Stop{batten, loft, under, foot}, purchase.ErrNoTravel, `"line"`, "lets the batten rise while the arbor sinks"},
	} {
		r, field := reeved(c.path...), "lift[0]"
		if c.first != nil {
			r.Lift, field = append(reeved(c.first...).Lift, r.Lift...), "lift[1]"
		}
		_, err := r.Rig()
		one(t, err, field, c.kind, c.name)
		says(t, err, c.value, c.want)
	}
}

// A hand line whose idler is pulled aside, or that does not come to the arbor, is none.
func TestHandLinesThatAreNone(t *testing.T) {
	for _, c := range []struct {
		name string
		path []purchase.Stop
		lock units.Length
		want string
	}{
		{"idler between a rope from below and one from above", []purchase.Stop{
			stop("foot", purchase.Arbor, 0, -2), stop("floor", purchase.Building, 0, 0.25), stop("idler", purchase.Idler, 1, 0.5), stop("guide", purchase.Building, 0, 1.75),
			stop("head", purchase.HeadBeam, 0, 20), stop("top", purchase.Arbor, 0, 0),
		}, 1.4, "hold the idler up"},
		{"past the arbor", []purchase.Stop{
			stop("rail", purchase.Rail, 0, 3), stop("idler", purchase.Idler, 0, 0), stop("head", purchase.HeadBeam, 0, 20), stop("end", purchase.HeadBeam, 1, 20),
		}, 0.8, "down to the arbor's top"},
	} {
		_, err := handed(c.lock, c.path...).Rig()
		one(t, err, "hand", units.ErrOutOfRange, c.name)
		says(t, err, "", c.want)
	}
}

// What is wrong with where stops stand is told of the right one of the two: by its name where they meet, by both figures where a part that
// is to hang plumb does not. Of a part that is wrong, no more is told.
func TestPartsThatAreNone(t *testing.T) {
	end := []purchase.Stop{stop("loft", purchase.Grid, 3, 20), stop("head", purchase.HeadBeam, 0, 20), stop("top", purchase.Arbor, 0, 0)}
	path := func(first ...purchase.Stop) []purchase.Stop { return append(first, end...) }
	for _, c := range []struct {
		name        string
		path        []purchase.Stop
		field       string
		kind        error
		value, want string
	}{
		{"meets the batten", path(stop("batten", purchase.Batten, 3, 0), stop("block", purchase.Building, 3, 2)), "lift[0].path[1]", units.ErrDuplicate, `"block"`, "a place apart"},
		{"meets the batten but for a hair", path(stop("batten", purchase.Batten, 3, 0), stop("block", purchase.Building, 3, 2+5e-10)), "lift[0].path[1]", units.ErrDuplicate, `"block"`, "a place apart"},
		{"slants and runs on", path(stop("batten", purchase.Batten, 4, 0), stop("block", purchase.Building, 3.5, 11)), "lift[0].path[1].across", units.ErrOutOfRange, `11' 5 13/16" (3.5 m)`, "(4 m), plumb"},
		{"runs on", path(stop("batten", purchase.Batten, 3, 0), stop("block", purchase.Building, 3, 11)), "lift[0].path[1]", purchase.ErrNoTurn, `"block"`, "turns"},
	} {
		_, err := reeved(c.path...).Rig()
		one(t, err, c.field, c.kind, c.name)
		says(t, err, c.value, c.want)
	}
	hair := reeved(end...)
	hair.Lift[0].Path = path(stop("batten", purchase.Batten, 3, 0))
	hair.ArborTop = 20 - 5e-10
	_, err := hair.Rig()
	one(t, err, "lift[0].path[3]", units.ErrDuplicate, "the arbor meets the head block")
	says(t, err, `"top"`, "a place apart")
}

// Where a line runs straight past a block it is told of the block that is out of place, and named: past the head block it is the one
// before it. The line comes up to its loft block at 16 ft across and goes to the head block as high.
func TestLinesThatDoNotTurn(t *testing.T) {
	const across, height = 16 * units.Foot, 60 * units.Foot
	for _, c := range []struct {
		name         string
		mules        []purchase.Mule
		field, block string
	}{
		{"past the loft block", mules(mule("a", across, height+3)), "loft[1]", purchase.LoftBlock(2)},
		{"past the one mule block", mules(mule("a", across-1, height)), "loft[1].mules[0]", "a"},
		{"past the head block", mules(mule("a", 0, height+3)), "loft[1].mules[0]", purchase.HeadBlock},
		{"past the loft block of two", mules(mule("a", across, height+3), mule("b", 2, height+1)), "loft[1]", purchase.LoftBlock(2)},
		{"past the first of two", mules(mule("a", across-1, height+1), mule("b", across-2, height+2)), "loft[1].mules[0]", "a"},
		{"past the second of two", mules(mule("a", 2, height+2), mule("b", 1, height+1)), "loft[1].mules[1]", "b"},
		{"past the head block behind two", mules(mule("a", 2, height+1), mule("b", 0, height+3)), "loft[1].mules[1]", purchase.HeadBlock},
	} {
		l := weightless(purchase.Double)
		l.Loft[1].Mules = c.mules
		err := l.Validate()
		one(t, err, c.field, purchase.ErrNoTurn, c.name)
		says(t, err, strconv.Quote(c.block), "turns")
	}
	// In a pit too: the batten hangs under a loft block that is below the deck.
	l := weightless(purchase.Single)
	l.Trim = -5
	l.Loft[1].Height = -1
	l.Loft[1].Mules = mules(mule("a", l.Loft[1].Across, height))
	err := l.Validate()
	one(t, err, "loft[1]", purchase.ErrNoTurn, "up past the loft block")
	// And with the arbor in one.
	l = weightless(purchase.Single)
	l.Idler, l.Rail, l.ArborTop, l.HeadBlock = -20, -19, -5, 0.5
	l.Loft[1].Mules = mules(mule("a", 0, 3))
	err = l.Validate()
	one(t, err, "loft[1].mules[0]", purchase.ErrNoTurn, "down past the head block")
}

// A mule block may stand where a block was that the line has left, or where one is that it has yet to come to.
func TestMuleBlocksInPassing(t *testing.T) {
	for _, c := range [][]purchase.Mule{
		mules(mule("a", 3, 19), mule("b", 16*units.Foot, 60*units.Foot)),
		mules(mule("a", 0, 60*units.Foot), mule("b", 1, 19)),
		mules(mule("a", 3, 19), mule("b", 2, 17), mule("c", 3, 19)),
	} {
		l := weightless(purchase.Double)
		l.Loft[1].Mules = c
		if err := l.Validate(); err != nil {
			t.Error(err)
		}
	}
}

// Who gives one name to two blocks is told where the first of them is, and what is between them.
func TestWhereTheOtherBlockIs(t *testing.T) {
	l := weightless(purchase.Double)
	l.Loft[1].Mules = mules(mule("m", 3, 19))
	l.Loft[3].Mules = mules(mule("n", 9, 19), mule("m", 5, 19))
	err := l.Validate()
	one(t, err, "loft[3].mules[1]", units.ErrDuplicate, "two blocks")
	says(t, err, `"m"`, "as loft[1].mules[0] has it, is more than 3' 3 3/8\" (1 m) from here")
	l.Loft[3].Mules[1] = purchase.Mule{Name: "m", On: purchase.Rail, Across: 3, Height: 19}
	err = l.Validate()
	one(t, err, "loft[3].mules[1]", units.ErrDuplicate, "on two bodies")
	says(t, err, `"m"`, "as loft[1].mules[0] has it, is on the building")

	r := weightless(purchase.Double).Reeving()
	r.Hand.Path[3].Name = purchase.LoftBlock(2)
	_, err = r.Rig()
	one(t, err, "hand.path[3]", units.ErrDuplicate, "on two bodies")
	says(t, err, `"loft block 2"`, "as lift[1].path[1] has it, is on the grid")
	r = weightless(purchase.Double).Reeving()
	r.Lift[4].Path[1].Name = purchase.DeadEnd(2)
	r.Lift[4].Path[1].On = purchase.HeadBeam
	_, err = r.Rig()
	one(t, err, "lift[4].path[1]", units.ErrDuplicate, "far apart")
	says(t, err, `"dead end 2"`, "as lift[1].path[4] has it, is more than 3' 3 3/8\" (1 m) from here")
}

// Two ends are a path, if none that lets anything fly; one is not.
func TestShortPaths(t *testing.T) {
	_, err := reeved(stop("batten", purchase.Batten, 3, 0), stop("loft", purchase.Grid, 3, 20)).Rig()
	one(t, err, "lift[0]", purchase.ErrNoTravel, "the arbor has no part in it")
	r := weightless(purchase.Single).Reeving()
	r.Hand.Path = r.Hand.Path[:2]
	_, err = r.Rig()
	one(t, err, "hand", units.ErrMissing, "it ends at the idler")
	says(t, err, "", "on to the head block")
	for n := range 2 {
		r := weightless(purchase.Single).Reeving()
		r.Lift[1].Path = r.Lift[1].Path[:n]
		_, err := r.Rig()
		one(t, err, "lift[1].path", units.ErrMissing, "no two ends")
		says(t, err, strconv.Itoa(n)+" stops", "two ends")
	}
	if _, err := (purchase.Reeving{}).Rig(); !errors.Is(err, units.ErrMissing) {
		t.Errorf("%v", err)
	}
}
