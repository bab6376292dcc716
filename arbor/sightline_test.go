package arbor_test

import (
	"errors"
	"math"
	"math/big"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// auditorium has a front row with its eyes 1 ft above the deck, 20 ft from the
// plaster line, and a balcony front; a proscenium of 20 ft and a border at 22 ft, 10 ft
// upstage.
var auditorium = arbor.Section{
	Seats: []arbor.Seat{
		{Name: "row A", Distance: 20 * units.Foot, Eye: 1 * units.Foot},
		{Name: "balcony", Distance: 60 * units.Foot, Eye: 26 * units.Foot},
	},
	Edges: []arbor.Edge{
		{Name: "proscenium", Height: 20 * units.Foot},
		{Name: "first border", Upstage: 10 * units.Foot, Height: 22 * units.Foot},
	},
}

// Worked by hand. From row A the line under the proscenium rises 19 ft in 20, and the
// line under the border 21 ft in 30. At 20 ft upstage that is 1 + 19·40/20 = 39 ft and
// 1 + 21·40/30 = 29 ft: the border cuts off more.
func TestHidden(t *testing.T) {
	for _, tt := range []struct {
		name    string
		upstage units.Length
		height  int
		edge    string
	}{
		{"behind the border", 20 * units.Foot, 29 * 48, "first border"},
		{"under the border", 10 * units.Foot, 22 * 48, "first border"},
		{"between", 5 * units.Foot, 1188, "proscenium"}, // 1 + 19·25/20 = 24.75 ft
		{"under the proscenium", 0, 20 * 48, "proscenium"},
	} {
		got, err := auditorium.Hidden(tt.upstage)
		want := arbor.Hidden{Upstage: tt.upstage, Height: feet(tt.height), Seat: "row A", Edge: tt.edge}
		if err != nil || got != want {
			t.Errorf("%s: %+v, want %+v, %v", tt.name, got, want, err)
		}
	}
	if got := (arbor.Hidden{Height: 29 * units.Foot}).Trim(18 * units.Foot); got != feet(47*48) {
		t.Errorf("trim %v, want 47 ft", got)
	}
	// Two edges in one line of sight, and two seats that see as high: the first of each is named.
	twice := arbor.Section{
		Seats: []arbor.Seat{{Name: "row A", Distance: 10, Eye: 1}, {Name: "row B", Distance: 20, Eye: 1}},
		Edges: []arbor.Edge{{Name: "near", Height: 1}, {Name: "far", Upstage: 10, Height: 1}},
	}
	if got, err := twice.Hidden(20); err != nil || got.Height != 1 || got.Seat != "row A" || got.Edge != "near" {
		t.Errorf("%+v, %v", got, err)
	}
	// From the balcony, 6 ft above the edge, the line falls: 26 − 6·80/60 = 18 ft.
	balcony := arbor.Section{Seats: auditorium.Seats[1:], Edges: auditorium.Edges[:1]}
	if got, err := balcony.Hidden(20 * units.Foot); err != nil || got.Height != feet(18*48) || got.Seat != "balcony" {
		t.Errorf("%+v, %v", got, err)
	}
}

// The drop of 10 ft at 20 ft upstage is hidden from a trim of 39 ft; the set reaches 50.
func TestHides(t *testing.T) {
	f := mustFly(t, overRail, carriage, doubled)
	got, err := f.Hides(auditorium, 20*units.Foot, 10*units.Foot)
	if err != nil || got.Trim != feet(39*48) || got.Spare != feet(11*48) || !got.Out() {
		t.Errorf("%+v, %v", got, err)
	}
	if got, err = f.Hides(auditorium, 20*units.Foot, 21*units.Foot); err != nil || got.Spare != 0 || !got.Out() {
		t.Errorf("just out of sight: %+v, %v", got, err)
	}
	if got, err = f.Hides(auditorium, 20*units.Foot, 24*units.Foot); err != nil || got.Spare != feet(-3*48) || got.Out() {
		t.Errorf("3 ft in sight: %+v, %v", got, err)
	}
	_, err = f.Hides(auditorium, -1, -1)
	if diff := cmp.Diff([]string{"upstage", "drop"}, fields(t, err)); diff != "" {
		t.Errorf("%v\n%s", err, diff)
	}
}

// A point above what Hidden says is seen from no seat, and one below it from the
// seat that it names: looked for along the sight lines, in exact fractions.
func TestHiddenIsWhatNobodySees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(n int) units.Length { return units.Length(float64(n) / 1000) }
		draw := func(name string, least, most int) int { return rapid.IntRange(least, most).Draw(t, name) }
		var s arbor.Section
		type point struct{ out, up int }
		var eyes, edges []point
		for range draw("seats", 1, 4) {
			eyes = append(eyes, point{draw("distance", 2500, 40_000), draw("eye", -2000, 15_000)})
			s.Seats = append(s.Seats, arbor.Seat{Name: string(rune('A' + len(eyes) - 1)), Distance: mm(eyes[len(eyes)-1].out), Eye: mm(eyes[len(eyes)-1].up)})
		}
		for range draw("edges", 1, 4) {
			edges = append(edges, point{draw("upstage", -2000, 9000), draw("height", 2000, 12_000)})
			s.Edges = append(s.Edges, arbor.Edge{Name: string(rune('a' + len(edges) - 1)), Upstage: mm(edges[len(edges)-1].out), Height: mm(edges[len(edges)-1].up)})
		}
		upstage := draw("at", edges[0].out, 15_000)
		got, err := s.Hidden(mm(upstage))
		if err != nil {
			t.Fatal(err)
		}
		// seen tells whether the line from an eye to a point in the drop's plane passes under every edge before it.
		seen := func(eye point, height *big.Rat) bool {
			for _, e := range edges {
				if e.out > upstage {
					continue
				}
				along := big.NewRat(int64(eye.out+e.out), int64(eye.out+upstage))
				at := new(big.Rat).Sub(height, big.NewRat(int64(eye.up), 1))
				at.Add(at.Mul(at, along), big.NewRat(int64(eye.up), 1))
				if at.Cmp(big.NewRat(int64(e.up), 1)) >= 0 {
					return false
				}
			}
			return true
		}
		nm := func(n float64) *big.Rat { // of the height found, in millimetres
			return new(big.Rat).SetFrac64(int64(math.Round(float64(got.Height)*1e9+n)), 1_000_000)
		}
		any := false
		for i, eye := range eyes {
			if seen(eye, nm(1)) {
				t.Fatalf("seat %d sees what is above %v", i, got.Height)
			}
			if seen(eye, nm(-1)) {
				any = any || s.Seats[i].Name == got.Seat
			}
		}
		if !any {
			t.Fatalf("%s does not see what is just below %v", got.Seat, got.Height)
		}
	})
}

func TestSectionRefuses(t *testing.T) {
	section := func(change func(*arbor.Section)) error {
		s := arbor.Section{Seats: append([]arbor.Seat(nil), auditorium.Seats...), Edges: append([]arbor.Edge(nil), auditorium.Edges...)}
		change(&s)
		_, err := s.Hidden(20 * units.Foot)
		return err
	}
	at := func(upstage units.Length) error { _, err := auditorium.Hidden(upstage); return err }
	nan := units.Length(math.NaN())
	for _, tt := range []struct {
		name, reason string
		err          error
		field        string
		kind         error
	}{
		{"nobody looks", "a seat decides", section(func(s *arbor.Section) { s.Seats = nil }), "seats", units.ErrMissing},
		{"nothing masks", "an edge decides", section(func(s *arbor.Section) { s.Edges = nil }), "edges", units.ErrMissing},
		{"seat nowhere", "must be given", section(func(s *arbor.Section) { s.Seats[1].Distance = 0 }), "seats[1].distance", units.ErrMissing},
		{"seat on the stage", "looks the other way", section(func(s *arbor.Section) { s.Seats[0].Distance = -1 }), "seats[0].distance", units.ErrNegative},
		{"eye that is no number", "no NaN goes in", section(func(s *arbor.Section) { s.Seats[0].Eye = nan }), "seats[0].eye", units.ErrNotFinite},
		{"edge behind a seat", "masks nothing for it", section(func(s *arbor.Section) { s.Edges[0].Upstage = -20 * units.Foot }), "edges[0].upstage", units.ErrOutOfRange},
		{"edge that is no number", "no NaN goes in", section(func(s *arbor.Section) { s.Edges[1].Height = nan }), "edges[1].height", units.ErrNotFinite},
		{"edge in millimetres", "a slip of the unit", section(func(s *arbor.Section) { s.Edges[1].Upstage = 3000 }), "edges[1].upstage", units.ErrOutOfRange},
		{"drop in the house", "no edge is before it", at(-1 * units.Foot), "upstage", units.ErrOutOfRange},
		{"drop that is no number", "no NaN goes in", at(nan), "upstage", units.ErrNotFinite},
	} {
		if diff := cmp.Diff([]string{tt.field}, fields(t, tt.err)); diff != "" || !errors.Is(tt.err, tt.kind) {
			t.Errorf("%s: %s: got %v\n%s", tt.name, tt.reason, tt.err, diff)
		}
	}
}
