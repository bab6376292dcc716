package lineset_test

import (
	"encoding/json"
	"errors"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// nights is a house on two nights: the first set changes one item of two, the second is
// stripped, the third stays.
func nights(t testing.TB) (tonight, tomorrow lineset.House) {
	t.Helper()
	named := func(name string, hang ...load.Item) lineset.Set {
		s := plain(t, purchase.Single, hang...)
		s.Name = name
		return s
	}
	tonight = lineset.House{Name: "Quillmoor Playhouse", Stock: tens, Sets: []lineset.Set{
		named("electric", pounds("lamps", 60), pounds("cable", 20)), named("border", pounds("border", 40)), named("traveller", pounds("legs", 50)),
	}}
	tomorrow = tonight
	tomorrow.Sets = []lineset.Set{
		named("electric", pounds("projector", 30), pounds("lamps", 60)), named("border"), named("traveller", pounds("legs", 50)),
	}
	return tonight, tomorrow
}

func mustRigHouse(t testing.TB, h lineset.House) *lineset.RiggedHouse {
	t.Helper()
	r, err := h.Rig()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The first set keeps its lamps and the 8 pieces that are the same on both nights; 20 lb come off and 30 go on.
func TestChangeOverByHand(t *testing.T) {
	tonight, tomorrow := nights(t)
	limits := within(20, 40)
	c, err := mustRigHouse(t, tonight).ChangeOver(mustRigHouse(t, tomorrow), limits, nil)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"electric: bridge handles 10 lb; stays: lamps",
		"  begin at 4' 0\" balanced",
		"  deck: strip cable, then 20 lbf arbor-heavy: would run out",
		"  deck: hang projector, then 10 lbf batten-heavy: rests on the stop",
		"  bridge: add 1 of the 10, then balanced",
		"border: bridge handles 40 lb",
		"  begin at 4' 0\" balanced",
		"  bridge: take out 4 of the 10, then 40 lbf batten-heavy: rests on the stop",
		"  deck: strip border, then balanced",
		"traveller: no change",
		"in all 4 of the 10 out, 1 in",
		"2 of 3 sets change; the bridge handles 50 lb in all, with 2 hand-overs",
	}
	if diff := cmp.Diff(want, c.Lines(units.US)); diff != "" {
		t.Error(diff)
	}
	text, err := json.Marshal(c)
	if err != nil {
		t.Fatalf("cannot be stored: %v", err)
	}
	var back lineset.ChangeOver
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatalf("cannot be read back: %v", err)
	}
	if diff := cmp.Diff(c, back); diff != "" {
		t.Errorf("read back otherwise: %s", diff)
	}
	if diff := cmp.Diff([]lineset.PieceChange{{Name: "10", Out: 4, In: 1, Most: 8 + 4 + 5 + 1, Stock: 60}}, c.Pieces); diff != "" {
		t.Error(diff)
	}
	// With 15 arbor-heavy allowed one piece must come out before the cable does, and with none, all
	// that stays is the lamps and the pieces for them.
	for _, row := range []struct {
		arborHeavy float64
		want       string
	}{
		{15, "take out 1 of the 10, strip cable | hang projector, add 2 of the 10"},
		{0, "take out 2 of the 10, strip cable | hang projector, add 3 of the 10"},
	} {
		c, err := mustRigHouse(t, tonight).ChangeOver(mustRigHouse(t, tomorrow), within(row.arborHeavy, 40), nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := calls(c.Sets[0].Strip.Order) + " | " + calls(c.Sets[0].Load.Order); got != row.want {
			t.Errorf("%v arbor-heavy: %s, want %s", row.arborHeavy, got, row.want)
		}
	}
	// There and back are mirror images, and hands are over as often.
	back, err = mustRigHouse(t, tomorrow).ChangeOver(mustRigHouse(t, tonight), limits, nil)
	if err != nil {
		t.Fatal(err)
	}
	if back.Handled != c.Handled || back.HandOvers != c.HandOvers || back.Pieces[0].In != c.Pieces[0].Out {
		t.Errorf("back: %+v", back)
	}
}

// What stays is told piece by piece and item by item: of two borders that are alike one stays where one is left, and of
// the pieces those up to the first that is not wanted any more. The new ones go on top of them.
func TestWhatStays(t *testing.T) {
	one := func(hang ...load.Item) *lineset.RiggedHouse {
		return mustRigHouse(t, lineset.House{Name: "Quillmoor Playhouse", Stock: stock, Sets: []lineset.Set{plain(t, purchase.Single, hang...)}})
	}
	limits := within(100, 100)
	for _, row := range []struct {
		name     string
		from, to []load.Item
		want     string
		in       []lineset.PiecesOf
		handled  float64 // pounds, out and in
	}{
		// 110 lb are 2 of the 44 and 1 of the 22, 154 lb are 3 of the 44 and 1 of the 22, 99 lb are 2 of the 44 and 1 of the 11.
		{
			"one more 44 goes on top of the 22",
			[]load.Item{pounds("border", 55), pounds("border", 55)},
			[]load.Item{pounds("border", 55), pounds("legs", 99)},
			"strip border | hang legs, add 1 of the 44",
			[]lineset.PiecesOf{{Piece: "44", Count: 1}},
			44,
		},
		{
			"a 22 for an 11",
			[]load.Item{pounds("border", 55), pounds("border", 55)},
			[]load.Item{pounds("border", 55), pounds("legs", 44)},
			"take out 1 of the 22, strip border | hang legs, add 1 of the 11",
			[]lineset.PiecesOf{{Piece: "11", Count: 1}},
			33,
		},
		{
			"a 44 too many below a 22 that is wanted again",
			[]load.Item{pounds("border", 55), pounds("legs", 99)},
			[]load.Item{pounds("border", 55), pounds("border", 55)},
			"take out 1 of the 22, take out 1 of the 44, strip legs | hang border, add 1 of the 22",
			[]lineset.PiecesOf{{Piece: "22", Count: 1}},
			88,
		},
	} {
		c, err := one(row.from...).ChangeOver(one(row.to...), limits, nil)
		if err != nil {
			t.Fatal(err)
		}
		s := c.Sets[0]
		if got := calls(s.Strip.Order) + " | " + calls(s.Load.Order); got != row.want || len(s.Stays) != 1 {
			t.Errorf("%s: %s; stays %v; want %s", row.name, got, s.Stays, row.want)
		}
		if diff := cmp.Diff(row.in, s.In); diff != "" || !near.Abs(s.Handled.In(units.Pound), row.handled, 1e-9) {
			t.Errorf("%s: %s, %v handled", row.name, diff, s.Handled)
		}
	}
	c, err := one(pounds("border", 55)).ChangeOver(one(pounds("border", 55), pounds("border", 55)), limits, nil)
	if err != nil {
		t.Fatal(err)
	}
	if s := c.Sets[0]; len(s.Stays) != 1 || s.Load.Check.ToHang != 0 {
		t.Errorf("one border and then two: %v stays", s.Stays)
	}
}

func TestChangeOverRefuses(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(tonight, tomorrow *lineset.House)
		field  string
	}{
		{"a set less", func(_, tomorrow *lineset.House) { tomorrow.Sets = tomorrow.Sets[:2] }, "sets[2].name"},
		{"a set more", func(tonight, _ *lineset.House) { tonight.Sets = tonight.Sets[:2] }, "sets[2].name"},
		{"another rigging", func(_, tomorrow *lineset.House) { tomorrow.Sets[1].Rigging.MadeOff = 5 * units.Foot }, "sets[1].rigging"},
		{"another stock", func(_, tomorrow *lineset.House) { tomorrow.Stock = stock }, "stock"},
		{"more than the limits", func(_, tomorrow *lineset.House) { tomorrow.Sets[2].Hang = load.Hang{pounds("wall", 300)} }, "sets[2]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tonight, tomorrow := nights(t)
			c.change(&tonight, &tomorrow)
			_, err := mustRigHouse(t, tonight).ChangeOver(mustRigHouse(t, tomorrow), within(20, 40), nil)
			var fe *units.FieldError
			if !errors.As(err, &fe) || fe.Field != c.field {
				t.Fatalf("%v", err)
			}
			if none := (*lineset.NoOrderError)(nil); c.field == "sets[2]" && (!errors.As(err, &none) || tidy(none.Either) != 150) {
				t.Errorf("300 lb at once and pieces of 10 lb: %v", err)
			}
		})
	}
	tonight, tomorrow := nights(t)
	tomorrow.Sets[0].Hang, tomorrow.Sets[2].Hang = load.Hang{pounds("wall", 300)}, load.Hang{pounds("wall", 300)}
	_, err := mustRigHouse(t, tonight).ChangeOver(mustRigHouse(t, tomorrow), within(20, 40), nil)
	if err == nil || !strings.HasPrefix(err.Error(), "sets[0]") || !strings.Contains(err.Error(), "\nsets[2]") {
		t.Errorf("two sets without an order: %v", err)
	}
	house := mustRigHouse(t, tonight)
	if _, err := house.ChangeOver(nil, within(1, 1), nil); err == nil {
		t.Error("changed over to nothing")
	}
	if _, err := house.ChangeOver(house, within(1, 1), map[string][]lineset.WorkTrim{"bordre": nil}); err == nil || !strings.Contains(err.Error(), "bordre") {
		t.Errorf("trims of a set that there is not: %v", err)
	}
	c, err := house.ChangeOver(house, within(0, 0), nil)
	if err != nil || c.Changed != 0 || c.Handled != 0 {
		t.Errorf("from a night to the same: %+v, %v", c, err)
	}
}

// Two battens of 60 lb each over 8 pieces of 10 lb: the second must give its 6 back before the first takes them. With a third that
// wants two more than there are, pieces are short whatever comes first.
func TestSetsThatGiveBackGoFirst(t *testing.T) {
	lamps := pounds("lamps", 60)
	night := func(count int, hangs ...load.Hang) *lineset.RiggedHouse {
		h := lineset.House{Name: "Quillmoor Playhouse", Stock: slices.Clone(tens)}
		h.Stock[0].Count = count
		for i, hang := range hangs {
			s := plain(t, purchase.Single, hang...)
			s.Name = strconv.Itoa(i + 1)
			h.Sets = append(h.Sets, s)
		}
		return mustRigHouse(t, h)
	}
	for _, row := range []struct {
		name   string
		stock  int
		sets   []string
		inTurn bool
		short  int
		first  string
	}{
		{"enough as the house stands", 12, []string{"1", "2", "3"}, false, 0, "1: bridge handles 60 lb"},
		{"not enough", 8, []string{"2", "1", "3"}, true, 0, "not in the order of the house, in which the stock would not do: sets that give pieces back go first"},
	} {
		c, err := night(row.stock, nil, load.Hang{lamps}, nil).ChangeOver(night(row.stock, load.Hang{lamps}, nil, nil), within(60, 60), nil)
		if err != nil {
			t.Fatal(err)
		}
		var sets []string
		for _, s := range c.Sets {
			sets = append(sets, s.Name)
		}
		if !slices.Equal(sets, row.sets) || c.InTurn != row.inTurn || c.Pieces[0].Short() != row.short || c.Lines(units.US)[0] != row.first {
			t.Errorf("%s: %v, %+v, %q", row.name, sets, c.Pieces, c.Lines(units.US))
		}
	}
	c, err := night(8, nil, load.Hang{lamps}, nil).ChangeOver(night(8, load.Hang{lamps}, nil, load.Hang{pounds("cable", 40)}), within(60, 60), nil)
	if err != nil {
		t.Fatal(err)
	}
	if lines := c.Lines(units.US); c.Pieces[0].Short() != 2 || lines[1] != "short at the worst moment: 2 of the 10" {
		t.Errorf("%+v, %q", c.Pieces, lines)
	}
}
