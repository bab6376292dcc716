package lineset_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// fields lists the paths of all faults in the order in which they are told.
func fields(err error) (out []string) {
	if err == nil {
		return nil
	}
	for line := range strings.Lines(err.Error()) {
		path, _, _ := strings.Cut(line, ":")
		path, _, _ = strings.Cut(path, " (")
		out = append(out, path)
	}
	return out
}

// Each act has fields of its own. With none of them given it says which it needs, with all of them which it does not want; and what a
// field is told with is what stands in it.
func TestFieldsOfEachAct(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60)))
	for act, c := range map[lineset.Act]struct{ needs, refuses []string }{
		lineset.HangItem:   {[]string{"item"}, []string{"piece", "count", "trim", "on"}},
		lineset.StripItem:  {[]string{"item"}, []string{"piece", "count", "trim", "on"}},
		lineset.AddPieces:  {[]string{"piece", "count"}, []string{"item", "place", "trim", "on"}},
		lineset.TakePieces: {[]string{"piece", "count"}, []string{"item", "place", "trim", "on"}},
		lineset.FlyTo:      {nil, []string{"item", "place", "piece", "count", "on"}},
		lineset.LockRope:   {nil, []string{"item", "place", "piece", "count", "trim", "on"}},
		lineset.UnlockRope: {nil, []string{"item", "place", "piece", "count", "trim", "on"}},
		lineset.SetLine:    {[]string{"on"}, []string{"item", "place", "piece", "count", "trim"}},
		lineset.FreeLine:   {nil, []string{"item", "place", "piece", "count", "trim", "on"}},
	} {
		told := func(s lineset.OrderStep) []string {
			// A step that cannot be read, so that all faults are of values and none is of what can be done.
			_, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{{}, s}}, within(1, 1))
			paths := fields(err)
			for i, path := range paths {
				paths[i] = strings.TrimPrefix(path, "steps[1].")
			}
			return paths[1:]
		}
		if diff := cmp.Diff(c.needs, told(lineset.OrderStep{Act: act}), cmpEmpty); diff != "" {
			t.Errorf("%v alone: %s", act, diff)
		}
		all := lineset.OrderStep{Act: act, Item: "lamps", Place: 1, Piece: "10", Count: 2, Trim: 20 * units.Foot, On: purchase.Arbor}
		if diff := cmp.Diff(c.refuses, told(all)); diff != "" {
			t.Errorf("%v with everything: %s", act, diff)
		}
		// A trim that is no number is told once, whether it is wanted or not.
		all.Trim = units.Length(math.NaN())
		refuses := c.refuses
		if act == lineset.FlyTo {
			refuses = []string{"item", "place", "piece", "count", "trim", "on"}
		}
		if diff := cmp.Diff(refuses, told(all)); diff != "" {
			t.Errorf("%v to a trim that is no number: %s", act, diff)
		}
	}
}

// cmpEmpty takes no list for an empty one.
var cmpEmpty = cmp.Transformer("none", func(list []string) string { return strings.Join(list, ", ") })

// A slip in an order is told with the step, its field, what stands there, and what would be right.
func TestSlipsAreToldInFull(t *testing.T) {
	mixed := arbor.Stock{
		{Name: "10", Mass: 10 * units.Pound, Thickness: 1 * units.Inch, Count: 6},
		{Name: "5", Mass: 5 * units.Pound, Thickness: 0.5 * units.Inch, Count: 6},
	}
	s := plain(t, purchase.Single, pounds("lamps", 60), pounds("cloth", 40), pounds("cloth", 20), pounds("", 5))
	r, err := s.Rig(mixed)
	if err != nil {
		t.Fatal(err)
	}
	setLine := func(on purchase.Body) lineset.OrderStep { return lineset.OrderStep{Act: lineset.SetLine, On: on} }
	free := lineset.OrderStep{Act: lineset.FreeLine}
	for _, c := range []struct {
		name  string
		steps []lineset.OrderStep // the last is the slip
		field string
		of    string
		value string
		want  string
		kind  error
	}{
		{"no act", []lineset.OrderStep{{}}, "act", "", "", `"hang", "strip", "add", "take", "fly", "lock", "unlock", "set line" or "free line"`, units.ErrMissing},
		{"no such act", []lineset.OrderStep{{Act: 10, Trim: 1}}, "act", "", "Act(10)", `"hang", "strip", "add", "take", "fly", "lock", "unlock", "set line" or "free line"`, units.ErrUnknown},
		{"nothing to hang", []lineset.OrderStep{{Act: lineset.HangItem}}, "item", "", "", "the name of an item in the hang, or its place", units.ErrMissing},
		{"pieces of no kind", []lineset.OrderStep{{Act: lineset.AddPieces, Count: 1}}, "piece", "", "", "what the kind of piece is called in the stock", units.ErrMissing},
		{"no pieces", []lineset.OrderStep{add(0)}, "count", "", "0", "how many, 1 or more", units.ErrOutOfRange},
		{"a lock with an item", []lineset.OrderStep{{Act: lineset.LockRope, Item: "lamps"}}, "item", "", `"lamps"`, "nothing: lock has no item", lineset.ErrNotWanted},
		{"a lock with a place", []lineset.OrderStep{{Act: lineset.LockRope, Place: 2}}, "place", "", "2", "nothing: lock has no place", lineset.ErrNotWanted},
		{"a flight with pieces", []lineset.OrderStep{{Act: lineset.FlyTo, Trim: 6, Piece: "10"}}, "piece", "", `"10"`, "nothing: fly has no piece", lineset.ErrNotWanted},
		{"a flight with a count", []lineset.OrderStep{{Act: lineset.FlyTo, Trim: 6, Count: 3}}, "count", "", "3", "nothing: fly has no count", lineset.ErrNotWanted},
		{"hung at a trim", []lineset.OrderStep{{Act: lineset.HangItem, Place: 1, Trim: 20 * units.Foot}}, "trim", "", `20' 0" (6.096 m)`, "nothing: hang has no trim", lineset.ErrNotWanted},
		{"hung on the arbor", []lineset.OrderStep{{Act: lineset.HangItem, Place: 1, On: purchase.Arbor}}, "on", "", "arbor", "nothing: hang has no on", lineset.ErrNotWanted},
		{"a line on the grid", []lineset.OrderStep{setLine(purchase.Grid)}, "on", "", "grid", "batten or arbor", units.ErrUnknown},

		{"hung with the lock open", []lineset.OrderStep{unlock, hang("lamps")}, "act", "hang lamps", "the set", "the rope lock to be shut first", lineset.ErrUnlocked},
		{"hung twice", []lineset.OrderStep{hang("lamps"), hang("lamps")}, "item", "hang lamps", `"lamps"`, "an item that does not hang yet", lineset.ErrHung},
		{"stripped though it does not hang", []lineset.OrderStep{strip("lamps")}, "item", "strip lamps", `"lamps"`, "an item that hangs", lineset.ErrNotHung},
		{"one without a name, twice", []lineset.OrderStep{{Act: lineset.HangItem, Place: 4}, {Act: lineset.HangItem, Place: 4}}, "item", "hang item 4", "item 4", "an item that does not hang yet", lineset.ErrHung},
		{"place below the first", []lineset.OrderStep{{Act: lineset.HangItem, Place: -1}}, "place", "hang item -1", "-1", "a place in the hang, 1 to 4", units.ErrOutOfRange},
		{"place beyond the last", []lineset.OrderStep{{Act: lineset.HangItem, Place: 5}}, "place", "hang item 5", "5", "a place in the hang, 1 to 4", units.ErrOutOfRange},
		{"place of another", []lineset.OrderStep{{Act: lineset.HangItem, Item: "lamps", Place: 2}}, "item", "hang lamps", `"lamps"`, `"cloth", which is at place 2`, units.ErrUnknown},
		{"place of one without a name", []lineset.OrderStep{{Act: lineset.HangItem, Item: "lamps", Place: 4}}, "item", "hang lamps", `"lamps"`, `item 4, which is at place 4`, units.ErrUnknown},
		{"two of that name", []lineset.OrderStep{hang("cloth")}, "item", "hang cloth", `"cloth"`, "its place too: there are several of that name in the hang", units.ErrDuplicate},
		{"no such item", []lineset.OrderStep{hang("lamp")}, "item", "hang lamp", `"lamp"`, "the name of an item in the hang", units.ErrUnknown},
		{"flown with the lock shut", []lineset.OrderStep{fly(20)}, "act", "fly to 20' 0\"", "the set", "the rope lock to be opened first", lineset.ErrLocked},
		{"flown while a line holds it", []lineset.OrderStep{setLine(purchase.Batten), unlock, fly(20)}, "act", "fly to 20' 0\"", "the set", "the line to be freed first", lineset.ErrHeld},
		{"opened twice", []lineset.OrderStep{unlock, unlock}, "act", "open the rope lock", "the rope lock, open,", "a rope lock that is shut", lineset.ErrLockIsSo},
		{"shut twice", []lineset.OrderStep{lock}, "act", "shut the rope lock", "the rope lock, shut,", "a rope lock that is open", lineset.ErrLockIsSo},
		{"two lines", []lineset.OrderStep{setLine(purchase.Batten), setLine(purchase.Arbor)}, "on", "set a line on the arbor", "the batten", "the line to be freed first", lineset.ErrLineSet},
		{"the same line again", []lineset.OrderStep{setLine(purchase.Arbor), setLine(purchase.Arbor)}, "on", "set a line on the arbor", "the arbor", "the line to be freed first", lineset.ErrLineSet},
		{"no line to free", []lineset.OrderStep{free}, "act", "free the line", "the set", "a line to be set first", lineset.ErrNoLine},
		{"freed twice", []lineset.OrderStep{setLine(purchase.Arbor), free, free}, "act", "free the line", "the set", "a line to be set first", lineset.ErrNoLine},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: c.steps}, within(1000, 1000))
			step := "step " + string(rune('0'+len(c.steps)))
			if c.of != "" {
				step += ", " + c.of
			}
			field := "steps[" + string(rune('0'+len(c.steps)-1)) + "]." + c.field
			checkFault(t, err, units.FieldError{Field: field, Of: step, Value: c.value, Want: c.want, Err: c.kind})
		})
	}
}

// How an order begins is refused with what stands there, too; all such faults come together.
func TestBeginningsAreToldInFull(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60), pounds("cloth", 40)))
	bare := rigTens(t, plain(t, purchase.Single))
	for _, c := range []struct {
		name  string
		of    *lineset.Rigged
		order lineset.Order
		want  units.FieldError
	}{
		{"no word on what there is", r, lineset.Order{}, units.FieldError{Field: "from", Want: `"bare" or "loaded"`, Err: units.ErrMissing}},
		{"no such word", r, lineset.Order{From: 3}, units.FieldError{Field: "from", Value: "From(3)", Want: `"bare" or "loaded"`, Err: units.ErrUnknown}},
		{
			"loaded, and something hung", r,
			lineset.Order{From: lineset.FromLoaded, Hung: []int{1, 2}},
			units.FieldError{Field: "hung", Value: "2 items", Want: "none: all hangs where the order is from loaded", Err: lineset.ErrNotWanted},
		},
		{
			"loaded, and pieces", r,
			lineset.Order{From: lineset.FromLoaded, Pieces: []lineset.PiecesOf{{Piece: "10", Count: 3}}},
			units.FieldError{Field: "pieces", Value: "1 kinds", Want: "none: the whole stack is in where the order is from loaded", Err: lineset.ErrNotWanted},
		},
		{
			"place nought", r,
			lineset.Order{From: lineset.FromBare, Hung: []int{1, 0}},
			units.FieldError{Field: "hung[1]", Value: "0", Want: "a place in the hang, 1 to 2", Err: units.ErrOutOfRange},
		},
		{
			"place beyond the last", r,
			lineset.Order{From: lineset.FromBare, Hung: []int{3}},
			units.FieldError{Field: "hung[0]", Value: "3", Want: "a place in the hang, 1 to 2", Err: units.ErrOutOfRange},
		},
		{
			"a place where nothing is to hang", bare,
			lineset.Order{From: lineset.FromBare, Hung: []int{1}},
			units.FieldError{Field: "hung[0]", Value: "1", Want: "none: nothing is to hang on this set", Err: units.ErrOutOfRange},
		},
		{
			"one place twice", r,
			lineset.Order{From: lineset.FromBare, Hung: []int{2, 2}},
			units.FieldError{Field: "hung[1]", Value: "2", Want: "each item once", Err: units.ErrDuplicate},
		},
		{
			"no pieces", r,
			lineset.Order{From: lineset.FromBare, Pieces: []lineset.PiecesOf{{Piece: "10"}}},
			units.FieldError{Field: "pieces[0].count", Value: "0", Want: "1 or more", Err: units.ErrOutOfRange},
		},
		{
			"a kind that there is not", r,
			lineset.Order{From: lineset.FromBare, Pieces: []lineset.PiecesOf{{Piece: "10", Count: 1}, {Piece: "20", Count: 1}}},
			units.FieldError{Field: "pieces[1].piece", Value: `"20"`, Want: "a kind of piece in the stock", Err: units.ErrUnknown},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := c.of.CheckOrder(c.order, within(1, 1))
			checkFault(t, err, c.want)
		})
	}
	// The last place, one piece and an empty list are as good as any.
	for _, o := range []lineset.Order{
		{From: lineset.FromBare, Hung: []int{2, 1}, Pieces: []lineset.PiecesOf{{Piece: "10", Count: 1}, {Piece: "10", Count: 2}}},
		{From: lineset.FromLoaded, Hung: []int{}, Pieces: []lineset.PiecesOf{}},
	} {
		if _, err := r.CheckOrder(o, within(1, 1)); err != nil {
			t.Errorf("%+v: %v", o, err)
		}
	}
	_, err := r.CheckOrder(lineset.Order{
		From: lineset.FromBare, Trim: 300, Hung: []int{9, 1, 1}, Pieces: []lineset.PiecesOf{{Piece: "10"}, {Piece: "20", Count: 1}},
		Steps: []lineset.OrderStep{{}, hang("lamps"), add(0)},
	}, lineset.OrderLimits{HeldLine: lineset.ForceLimit{Max: -1}})
	want := []string{"limits.held_line.max", "trim", "hung[0]", "hung[2]", "pieces[0].count", "pieces[1].piece", "steps[0].act", "steps[2].count"}
	if diff := cmp.Diff(want, fields(err)); diff != "" {
		t.Errorf("%s\n%v", diff, err)
	}
}

// A limit is a number with a word on where it comes from; of nothing at all, it may be left out.
func TestLimitsOfAnOrder(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60)))
	sides := map[string]func(*lineset.OrderLimits) *lineset.ForceLimit{
		"arbor_heavy":  func(l *lineset.OrderLimits) *lineset.ForceLimit { return &l.ArborHeavy },
		"batten_heavy": func(l *lineset.OrderLimits) *lineset.ForceLimit { return &l.BattenHeavy },
		"held_line":    func(l *lineset.OrderLimits) *lineset.ForceLimit { return &l.HeldLine },
	}
	for side, of := range sides {
		for _, c := range []struct {
			limit lineset.ForceLimit
			want  units.FieldError
		}{
			{lineset.ForceLimit{}, units.FieldError{}},
			{lineset.ForceLimit{Basis: "house rule"}, units.FieldError{}},
			{lineset.ForceLimit{Max: 1, Basis: "house rule"}, units.FieldError{}},
			{lineset.ForceLimit{Max: 0.1}, units.FieldError{Field: ".basis", Want: `where the limit comes from, such as a house rule or "common practice"`, Err: units.ErrMissing}},
			{lineset.ForceLimit{Max: -1, Basis: "house rule"}, units.FieldError{Field: ".max", Value: "-0.2 lbf (-1 N)", Want: "0 or more", Err: units.ErrNegative}},
			{lineset.ForceLimit{Max: units.Force(math.NaN())}, units.FieldError{Field: ".max", Value: "NaN N", Want: "a finite number", Err: units.ErrNotFinite}},
		} {
			var limits lineset.OrderLimits
			*of(&limits) = c.limit
			_, err := r.CheckOrder(lineset.Order{From: lineset.FromBare}, limits)
			if c.want.Err == nil {
				if err != nil {
					t.Errorf("%s %+v: %v", side, c.limit, err)
				}
				continue
			}
			c.want.Field = "limits." + side + c.want.Field
			checkFault(t, err, c.want)
		}
	}
	bad := lineset.ForceLimit{Max: -1}
	_, err := r.CheckOrder(lineset.Order{From: lineset.FromBare}, lineset.OrderLimits{ArborHeavy: bad, BattenHeavy: bad, HeldLine: bad})
	if diff := cmp.Diff([]string{"limits.arbor_heavy.max", "limits.batten_heavy.max", "limits.held_line.max"}, fields(err)); diff != "" {
		t.Error(diff)
	}
}
