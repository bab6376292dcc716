package lineset_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// changeOver is from one night to the next of a house of one set.
func changeOver(t *testing.T, from, to lineset.Set, limits lineset.OrderLimits, trims ...lineset.WorkTrim) (lineset.ChangeOver, error) {
	t.Helper()
	night := func(s lineset.Set) *lineset.RiggedHouse {
		return mustRigHouse(t, lineset.House{Name: "Quillmoor Playhouse", Stock: tens, Sets: []lineset.Set{s}})
	}
	at := map[string][]lineset.WorkTrim{}
	if trims != nil {
		at[from.Name] = trims
	}
	return night(from).ChangeOver(night(to), limits, at)
}

// Every figure of one set's change, reckoned by head. With a plate of 2 lb under the first piece of show weight and after every 3 in, 80 lb
// are best answered by 7 pieces of 10 on 3 plates, 60 lb by 5 on 2: the bridge handles 2 pieces and a plate. 100 lb are answered by 9 on 4,
// and again the crews change sides between the two jobs where the one ends as the other does not begin.
func TestFiguresOfAChange(t *testing.T) {
	of := func(hang ...load.Item) lineset.Set {
		s := plain(t, purchase.Single, hang...)
		s.Rigging.Arbor.Plate = arbor.Plate{Mass: 2 * units.Pound, Thickness: 0.125 * units.Inch, Every: 3 * units.Inch}
		return s
	}
	lamps, cable, tail, tag := pounds("lamps", 60), pounds("cable", 20), pounds("", 20), pounds("tag", 0.5)
	for _, c := range []struct {
		name        string
		from, to    lineset.Set
		strip, load string
		out, in     int // pieces
		handled     float64
		hands       int
		stays, last string
	}{
		{"cable comes off", of(lamps, cable), of(lamps), "take out 2 of the 10, strip cable", "", 2, 0, 22, 1, "lamps", "1 of 1 sets change; the bridge handles 22 lb in all, with 1 hand-over"},
		{"cable goes on", of(lamps), of(cable, lamps), "", "hang cable, add 2 of the 10", 0, 2, 22, 1, "lamps", "1 of 1 sets change; the bridge handles 22 lb in all, with 1 hand-over"},
		{"another cable goes on", of(lamps, tail), of(cable, tail, lamps), "", "hang cable, add 2 of the 10", 0, 2, 22, 1, "lamps, item 2", "1 of 1 sets change; the bridge handles 22 lb in all, with 1 hand-over"},
		{"all comes off", of(lamps, cable), of(), "take out 7 of the 10, strip cable, strip lamps", "", 7, 0, 76, 1, "", "1 of 1 sets change; the bridge handles 76 lb in all, with 1 hand-over"},
		{"one cable for another", of(lamps, cable), of(lamps, tail), "strip cable", "hang item 2", 0, 0, 0, 0, "lamps", "1 of 1 sets change; the bridge handles 0 lb in all, with 0 hand-overs"},
		{"a tag goes on that no piece is put in for", of(lamps, cable), of(lamps, cable, tag), "", "hang tag", 0, 0, 0, 0, "lamps, cable", "1 of 1 sets change; the bridge handles 0 lb in all, with 0 hand-overs"},
		{"and comes off", of(tag, lamps, cable), of(lamps, cable), "strip tag", "", 0, 0, 0, 0, "lamps, cable", "1 of 1 sets change; the bridge handles 0 lb in all, with 0 hand-overs"},
		{"the list in another order", of(lamps, cable), of(cable, lamps), "", "", 0, 0, 0, 0, "", "0 of 1 sets change; the bridge handles 0 lb in all, with 0 hand-overs"},
	} {
		t.Run(c.name, func(t *testing.T) {
			limits := within(100, 100)
			limits.RestsOnStop = true
			got, err := changeOver(t, c.from, c.to, limits)
			if err != nil {
				t.Fatal(err)
			}
			s := got.Sets[0]
			if strip, load := calls(s.Strip.Order), calls(s.Load.Order); strip != c.strip || load != c.load {
				t.Errorf("%s | %s", strip, load)
			}
			tens := func(n int) (out []lineset.PiecesOf) {
				if n > 0 {
					out = []lineset.PiecesOf{{Piece: "10", Count: n}}
				}
				return out
			}
			if !slices.Equal(s.Out, tens(c.out)) || !slices.Equal(s.In, tens(c.in)) || whole(s.Handled, units.Pound) != c.handled || s.HandOvers != c.hands {
				t.Errorf("%+v", s)
			}
			lines := got.Lines(units.US)
			if stays := strings.Join(s.Stays, ", "); stays != c.stays || lines[len(lines)-1] != c.last {
				t.Errorf("%s stays; %q", stays, lines)
			}
			changed := c.strip+c.load != ""
			head := "plain: no change"
			if changed {
				head = "plain: bridge handles " + units.US.Format(s.Handled)
			}
			if c.stays != "" {
				head += "; stays: " + c.stays
			}
			if s.Changed != changed || lines[0] != head {
				t.Errorf("changed %v: %q; want %q", s.Changed, lines, head)
			}
			if whole(got.Handled, units.Pound) != c.handled || got.HandOvers != c.hands || (got.Changed == 1) != changed || got.InTurn {
				t.Errorf("%+v", got)
			}
			moved := slices.ContainsFunc(lines, func(line string) bool { return strings.HasPrefix(line, "in all ") })
			if moved != (c.out+c.in > 0) {
				t.Errorf("%q", lines)
			}
		})
	}
}

// What hangs on both nights stays though no piece can: 44 lb are one of the 44, 22 lb are one of the 22.
func TestItemsStayWithoutPieces(t *testing.T) {
	night := func(hang ...load.Item) *lineset.RiggedHouse {
		return mustRigHouse(t, lineset.House{Name: "Quillmoor Playhouse", Stock: stock, Sets: []lineset.Set{plain(t, purchase.Single, hang...)}})
	}
	lamps, legs := pounds("lamps", 22), pounds("legs", 22)
	got, err := night(lamps, legs).ChangeOver(night(lamps), within(50, 50), nil)
	if err != nil {
		t.Fatal(err)
	}
	s := got.Sets[0]
	if strip, load := calls(s.Strip.Order), calls(s.Load.Order); strip != "take out 1 of the 44, strip legs" || load != "add 1 of the 22" || !slices.Equal(s.Stays, []string{"lamps"}) || s.HandOvers != 2 {
		t.Errorf("%s | %s; %v stays", strip, load, s.Stays)
	}
}

// 110 lb are two of the 44 and one of the 22, 132 lb are three of the 44. Both of the 44 would stay, but with one border off they are
// 33 lb too heavy: one comes out, and goes in again with the third in one hand-over, as one kind.
func TestPiecesThatMustComeOutGoInTogether(t *testing.T) {
	night := func(hang ...load.Item) *lineset.RiggedHouse {
		return mustRigHouse(t, lineset.House{Name: "Quillmoor Playhouse", Stock: stock, Sets: []lineset.Set{plain(t, purchase.Single, hang...)}})
	}
	border, legs := pounds("border", 55), pounds("legs", 77)
	got, err := night(border, border).ChangeOver(night(border, legs), within(20, 100), nil)
	if err != nil {
		t.Fatal(err)
	}
	s := got.Sets[0]
	if strip, load := calls(s.Strip.Order), calls(s.Load.Order); strip != "take out 1 of the 22, take out 1 of the 44, strip border" || load != "hang legs, add 2 of the 44" {
		t.Errorf("%s | %s", strip, load)
	}
	if !slices.Equal(s.In, []lineset.PiecesOf{{Piece: "44", Count: 2}}) || whole(s.Handled, units.Pound) != 22+44+88 || s.HandOvers != 2 {
		t.Errorf("%+v", s)
	}
}

// How many of each kind are out of the stock at once is followed from set to set, in the order in which they are worked on.
func TestPiecesThroughTheHouse(t *testing.T) {
	night := func(masses ...float64) *lineset.RiggedHouse {
		h := lineset.House{Name: "Quillmoor Playhouse", Stock: arbor.Stock{
			{Name: "10", Mass: 10 * units.Pound, Thickness: 1 * units.Inch, Count: 14}, {Name: "5", Mass: 5 * units.Pound, Thickness: 0.5 * units.Inch, Count: 2},
		}}
		for i, lb := range masses {
			s := plain(t, purchase.Single)
			if lb > 0 {
				s.Hang = load.Hang{pounds("item", lb)}
			}
			s.Name = string(rune('a' + i))
			h.Sets = append(h.Sets, s)
		}
		return mustRigHouse(t, h)
	}
	for _, c := range []struct {
		name     string
		from, to []float64
		order    string // of the sets
		inTurn   bool
		want     []lineset.PieceChange
	}{
		// 40, 0 and 25 lb, then 0, 65 and 30: 4 out, 6 in with one of the 5, 1 in for one of the 5.
		{"as the house stands", []float64{40, 0, 25}, []float64{0, 65, 30}, "abc", false, []lineset.PieceChange{
			{Name: "10", Out: 4, In: 7, Most: 9, Stock: 14}, {Name: "5", Out: 1, In: 1, Most: 2, Stock: 2},
		}},
		{"the one that gives goes first", []float64{0, 100, 50}, []float64{80, 0, 50}, "bac", true, []lineset.PieceChange{
			{Name: "10", Out: 10, In: 8, Most: 15, Stock: 14}, {Name: "5", Stock: 2},
		}},
		{"if it is for one piece alone", []float64{0, 90, 50}, []float64{10, 0, 50}, "bac", true, []lineset.PieceChange{
			{Name: "10", Out: 9, In: 1, Most: 14, Stock: 14}, {Name: "5", Stock: 2},
		}},
		{"those that stay come last", []float64{50, 20, 0}, []float64{50, 0, 30}, "bca", false, []lineset.PieceChange{
			{Name: "10", Out: 2, In: 3, Most: 8, Stock: 14}, {Name: "5", Stock: 2},
		}},
	} {
		got, err := night(c.from...).ChangeOver(night(c.to...), within(200, 200), nil)
		if err != nil {
			t.Fatal(err)
		}
		var order strings.Builder
		for _, s := range got.Sets {
			order.WriteString(s.Name)
		}
		if diff := cmp.Diff(c.want, got.Pieces); diff != "" || order.String() != c.order || got.InTurn != c.inTurn {
			t.Errorf("%s: %s, in turn %v: %s", c.name, order.String(), got.InTurn, diff)
		}
	}
}

// The houses that cannot be changed one into the other are told with the set and what would be right.
func TestChangeOversAreRefusedInFull(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(tonight, tomorrow *lineset.House)
		want   units.FieldError
	}{
		{"another stock", func(_, tomorrow *lineset.House) { tomorrow.Stock = stock }, units.FieldError{
			Field: "stock", Want: "the same stock of counterweight in both houses", Err: lineset.ErrDiffers,
		}},
		{"a set less", func(_, tomorrow *lineset.House) { tomorrow.Sets = tomorrow.Sets[:2] }, units.FieldError{
			Field: "sets[2].name", Value: `"traveller"`, Want: "a set of that name in the next house too; with no hang it is stripped", Err: units.ErrMissing,
		}},
		{"a set more", func(tonight, _ *lineset.House) { tonight.Sets = tonight.Sets[:2] }, units.FieldError{
			Field: "sets[2].name", Value: `"traveller"`, Want: "a set of the first house", Err: units.ErrUnknown,
		}},
		{"another rigging", func(_, tomorrow *lineset.House) { tomorrow.Sets[1].Rigging.MadeOff = 5 * units.Foot }, units.FieldError{
			Field: "sets[1].rigging", Of: `"border"`, Want: "the same rigging in both houses: a change-over alters the hang only", Err: lineset.ErrDiffers,
		}},
	} {
		tonight, tomorrow := nights(t)
		c.change(&tonight, &tomorrow)
		_, err := mustRigHouse(t, tonight).ChangeOver(mustRigHouse(t, tomorrow), within(20, 40), nil)
		checkFault(t, err, c.want)
	}
	tonight, tomorrow := nights(t)
	from, to := mustRigHouse(t, tonight), mustRigHouse(t, tomorrow)
	_, err := from.ChangeOver(nil, within(20, 40), nil)
	checkFault(t, err, units.FieldError{Field: "next", Want: "the house with the next hang", Err: units.ErrMissing})
	_, err = from.ChangeOver(to, within(20, 40), map[string][]lineset.WorkTrim{"border": nil, "bordre": nil})
	checkFault(t, err, units.FieldError{Field: "trims.bordre", Want: "the name of a set of the house", Err: units.ErrUnknown})
	// Limits that cannot be used are told for each set that changes, and nothing is planned.
	c, err := from.ChangeOver(to, lineset.OrderLimits{RestsOnStop: true}, nil)
	if diff := cmp.Diff([]string{"sets[0].limits.arbor_heavy", "sets[1].limits.arbor_heavy"}, fields(err)); diff != "" || c.Sets != nil {
		t.Errorf("%s: %+v", diff, c)
	}
	var fe *units.FieldError
	if !errors.As(err, &fe) || fe.Of != `"electric"` {
		t.Errorf("%v", err)
	}
	// So are trims at which nothing can be done.
	c, err = from.ChangeOver(to, within(20, 40), map[string][]lineset.WorkTrim{"border": {{Trim: 4 * units.Foot, Deck: true}}})
	checkFault(t, err, units.FieldError{Field: "sets[1].trims", Of: `"border"`, Want: "one at which the bridge reaches the arbor", Err: units.ErrMissing})
	if c.Sets != nil {
		t.Errorf("%+v", c)
	}
}

// A set is worked on at the trims that are given for it, and otherwise at its lowest: a cloth of which a third is carried there is weighted
// in stages only where it may be.
func TestChangeOverAtTrims(t *testing.T) {
	cloth := pounds("cloth", 90)
	cloth.Height, cloth.OnDeck = 12*units.Foot, load.Piles
	from, to := plain(t, purchase.Single), plain(t, purchase.Single, cloth)
	if _, err := changeOver(t, from, to, within(30, 30)); err == nil {
		t.Error("90 lb of counterweight within 30 of 30 lb")
	}
	got, err := changeOver(t, from, to, within(0, 60), lineset.WorkTrim{Trim: 4 * units.Foot, Deck: true, Bridge: true}, lineset.WorkTrim{Trim: 12 * units.Foot, Bridge: true, End: true})
	want := "hang cloth, add 3 of the 10, open the rope lock, fly to 12' 0\", shut the rope lock, add 6 of the 10"
	all := []lineset.PiecesOf{{Piece: "10", Count: 3 + 6}}
	if err != nil || calls(got.Sets[0].Load.Order) != want || got.Sets[0].HandOvers != 1 || !slices.Equal(got.Sets[0].In, all) || got.Pieces[0].In != 9 {
		t.Errorf("%v: %+v", err, got.Sets)
	}
	// What cannot be stripped is told of too, though nothing is to be loaded.
	var none *lineset.NoOrderError
	if _, err := changeOver(t, plain(t, purchase.Single, pounds("wall", 300)), from, within(20, 40)); !errors.As(err, &none) || none.Job != lineset.Stripping {
		t.Errorf("%v", err)
	}
	// What is too large for the search is told as it would have to be planned: all that changes, with what stays left out.
	many := func(name string) (hang load.Hang) {
		for i := range 22 {
			hang = append(hang, pounds(name, 2+float64(i)/8))
		}
		return hang
	}
	from.Hang, to.Hang = append(many("item"), pounds("stays", 100)), append(many("other"), pounds("stays", 100))
	_, err = changeOver(t, from, to, within(500, 500))
	var fe *units.FieldError
	if !errors.As(err, &fe) || fe.Field != "sets[0].hang" || !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("%v", err)
	}
	from.Hang = nil // where it is the loading alone
	if _, err = changeOver(t, from, to, within(500, 500)); !errors.As(err, &fe) || fe.Field != "sets[0].hang" || !strings.HasPrefix(fe.Value, "23 items of 23 sorts") {
		t.Errorf("%v", err)
	}
	// What stays is let go of where with it there is no order, and then it is too large again: 300 lb at once are more than the limits.
	from.Hang, to.Hang = many("item"), append(many("item"), pounds("wall", 300))
	if _, err = changeOver(t, from, to, within(20, 40)); !errors.As(err, &fe) || fe.Field != "sets[0].hang" {
		t.Errorf("%v", err)
	}
	from.Hang = append(many("item"), pounds("stays", 100))
	// With most of it the same on both nights it is not too large.
	to.Hang = append(many("item")[:20], pounds("stays", 100))
	if got, err = changeOver(t, from, to, within(500, 500)); err != nil || len(got.Sets[0].Stays) != 21 {
		t.Errorf("%v: %+v", err, got)
	}
}

// What is read out of a change: that pieces are short, if by one, and of a job with nothing to do nothing, not even what rests on the deck.
func TestWhatIsReadOutOfAChange(t *testing.T) {
	night := func(hangs ...load.Hang) *lineset.RiggedHouse {
		h := lineset.House{Name: "Quillmoor Playhouse", Stock: slices.Clone(tens)}
		h.Stock[0].Count = 8
		for i, hang := range hangs {
			s := plain(t, purchase.Single, hang...)
			s.Name = string(rune('a' + i))
			h.Sets = append(h.Sets, s)
		}
		return mustRigHouse(t, h)
	}
	for short, want := range map[float64]string{0: "a: bridge handles 60 lb", 1: "short at the worst moment: 1 of the 10", 2: "short at the worst moment: 2 of the 10"} {
		got, err := night(nil, nil).ChangeOver(night(load.Hang{pounds("lamps", 60)}, load.Hang{pounds("cable", 20+10*short)}), within(60, 60), nil)
		if err != nil {
			t.Fatal(err)
		}
		if first := got.Lines(units.US)[0]; first != want || got.Pieces[0].Short() != int(short) {
			t.Errorf("%q, want %q", first, want)
		}
	}
	got, err := night(load.Hang{standing(20)}).ChangeOver(night(load.Hang{standing(20), pounds("lamps", 10)}), within(60, 60), nil)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"a: bridge handles 10 lb; stays: flat",
		"  begin at 4' 0\" 40 lbf arbor-heavy: would run out",
		"  deck: hang lamps, then 30 lbf arbor-heavy: would run out",
		"  bridge: add 1 of the 10, then 40 lbf arbor-heavy: would run out",
		"  40 lb still rests on the deck: it comes onto the lines as the batten flies out",
		"in all 0 of the 10 out, 1 in",
		"1 of 1 sets change; the bridge handles 10 lb in all, with 1 hand-over",
	}
	if diff := cmp.Diff(want, got.Lines(units.US)); diff != "" {
		t.Error(diff)
	}
}
