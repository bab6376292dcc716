package arbor_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Worked by hand in pounds and inches.
func TestCompact(t *testing.T) {
	plate := arbor.Plate{Mass: 3 * units.Pound, Thickness: 0.25 * units.Inch, Every: 24 * units.Inch}
	for _, tt := range []struct {
		name, reason       string
		pipe, show         float64
		room               float64
		plate              arbor.Plate
		plates             int
		pieces, height, in float64 // pounds of pieces, inches of height, pounds per inch
	}{
		{"no plates", "600 lb in 60 in", 0, 600, 60, arbor.Plate{}, 0, 600, 60, 10},
		{"nothing", "an empty arbor needs no pieces", 0, 0, 60, plate, 0, 0, 60, 0},
		{"pipe weight alone", "has no plates", 300, 0, 60, plate, 0, 300, 60, 5},
		// Common practice, a plate for every 24 in: in 60 in, one underneath and two more at 24 and 48 in, 3/4 in in all.
		{"show weight", "three plates", 0, 602.5 - 1, 60, plate, 3, 592.5, 59.25, 10},
		// Half the height is pipe weight: of 59.5 in, 29.75 in are show weight, with two plates.
		{"half pipe", "two plates", 297.5, 303.5, 60, plate, 2, 595, 59.5, 10},
		// With one plate 24.1 in of pieces would have room, which call for a second; with two there are 23.85 in, which do
		// not. They stop just short of 24 in.
		{"at the interval", "no number of plates fills the room", 0, 243, 24.35, plate, 1, 240, 24, 10},
		// Plates of 50 lb and 1 in: of two, 58 in are left, of which 300 of 600 lb are 29 in, and call for no second; of one, 59 in
		// are left, of which 350 of 650 lb are 31.8, and do. The show pieces stop short of 30 in, the pipe weight is as compact.
		{"heavy plates", "weigh as much as they keep apart", 300, 400, 60, arbor.Plate{Mass: 50 * units.Pound, Thickness: units.Inch, Every: 30 * units.Inch}, 1, 650, 30 * 650 / 350.0, 350 / 30.0},
		{"heavy plates, two of them", "24 in are passed: of 58 in 29", 300, 400, 60, arbor.Plate{Mass: 50 * units.Pound, Thickness: units.Inch, Every: 24 * units.Inch}, 2, 600, 58, 600 / 58.0},
		{"a plate and no more", "the show weight is the plate's own", 300, 50, 60, arbor.Plate{Mass: 50 * units.Pound, Thickness: units.Inch, Every: 24 * units.Inch}, 0, 350, 60, 350 / 60.0},
		// Two plates are more than the 75 lb: only one has pieces on it, and its interval is high enough for them.
		{"plates that are all of it", "25 lb on one plate, in just less than its 24 in", 0, 75, 60, arbor.Plate{Mass: 50 * units.Pound, Thickness: units.Inch, Every: 24 * units.Inch}, 1, 25, 24, 25 / 24.0},
		{"tare over", "the arbor alone outweighs the batten by 50 lb", -50, 650, 60, arbor.Plate{}, 0, 600, 60, 10},
		{"tare is enough", "nothing is wanted", -700, 650, 60, plate, 0, 0, 60, 0},
	} {
		f := arbor.Frame{Length: 10 * units.Foot, Room: units.Inch.Scale(tt.room), Capacity: 700 * units.Pound, Plate: tt.plate}
		w := arbor.Wanted{Pipe: units.Pound.Scale(tt.pipe), Show: units.Pound.Scale(tt.show)}
		got, err := f.Compact(w)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		wanted := max(tt.pipe, 0) + max(0, tt.show+min(tt.pipe, 0))
		if got.Plates != tt.plates || !near.Rel(got.Pieces.In(units.Pound), tt.pieces, 1e-9) || !near.Rel(got.Height.In(units.Inch), tt.height, 1e-7) ||
			!near.Rel(got.PerHeight.In(units.PoundPerFoot), tt.in*12, 1e-7) || !near.Rel(got.Wanted.In(units.Pound), wanted, 1e-9) ||
			!near.Rel(got.PlateMass.In(units.Pound), tt.plate.Mass.In(units.Pound)*float64(tt.plates), 1e-9) || !near.Abs(got.Over.In(units.Pound), wanted-700, 1e-9) {
			t.Errorf("%s: %s: %+v", tt.name, tt.reason, got)
		}
	}
}

// Where nothing is wanted, or the tare is just enough, nothing at all has to be stacked.
func TestCompactOfATareThatIsEnough(t *testing.T) {
	f := arbor.Frame{Length: 3, Room: 2, Capacity: 500}
	for _, w := range []arbor.Wanted{{}, {Pipe: -50, Show: 50}, {Pipe: -60, Show: 50}} {
		if got, err := f.Compact(w); err != nil || got != (arbor.Compact{Height: 2, Over: -500}) {
			t.Errorf("%+v: %+v, %v", w, got, err)
		}
	}
}

// Two plates of a kilogram and a nanogram of pieces: cut as thin as one plate asks for they would fill the room, 1.98 m, and call
// for more; so there are two, and the pieces end just short of the third, at twice half a metre.
func TestCompactOfANanogram(t *testing.T) {
	f := arbor.Frame{Length: 3, Room: 2, Capacity: 500, Plate: arbor.Plate{Mass: 1, Thickness: 0.01, Every: 0.5}}
	got, err := f.Compact(arbor.Wanted{Show: 2.000000000001})
	if want := (arbor.Compact{Wanted: 2.000000000001, Plates: 2, PlateMass: 2, Pieces: 1e-12, Height: 1, PerHeight: 1e-12, Over: got.Over}); err != nil || got != want {
		t.Errorf("%+v, %v, want %+v", got, err, want)
	}
}

// 10 lb an inch: a piece of 25 lb may be 2 1/2 in thick. Cut 13 by 6 in, that is
// 10/78 lb/in³, or 3548.6 kg/m³: less than half of steel. Exact definitions of inch and
// pound: (10 × 0.45359237)/(78 × 0.0254³).
func TestCompactPieces(t *testing.T) {
	f := arbor.Frame{Length: 6 * units.Foot, Room: 60 * units.Inch, Capacity: 700 * units.Pound}
	c, err := f.Compact(arbor.Wanted{Show: 600 * units.Pound})
	if err != nil {
		t.Fatal(err)
	}
	if got := c.Thickness(25 * units.Pound).In(units.Inch); !near.Rel(got, 2.5, 1e-12) {
		t.Errorf("%v in, want 2.5", got)
	}
	d, err := c.Density(13*units.Inch, 6*units.Inch)
	if want := 10 * 0.45359237 / (78 * 0.0254 * 0.0254 * 0.0254); err != nil || !near.Rel(d.In(units.KilogramPerCubicMetre), want, 1e-12) {
		t.Errorf("%v, want %v, %v", d, want, err)
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1), 1e9} {
		if got := c.Thickness(units.Mass(bad)); got != 0 {
			t.Errorf("a piece of %v kg: %v, want none", bad, got)
		}
		if _, err := c.Density(units.Length(bad), 1); err == nil {
			t.Errorf("a piece %v m long is one", bad)
		}
	}
	if got := (arbor.Compact{}).Thickness(1); got != 0 {
		t.Errorf("nothing wanted: %v", got)
	}
}

func TestCompactRefuses(t *testing.T) {
	f := plated()
	f.Plate.Thickness = f.Room
	_, err := f.Compact(arbor.Wanted{Show: 1})
	if diff := cmp.Diff([]string{"plate.thickness"}, fields(t, err)); diff != "" || !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("%v\n%s", err, diff)
	}
	// With the lock plate there is none of the room left, to the nanometre, though neither takes it alone.
	for _, room := range []units.Length{0.3, 0.3 + 4e-10} {
		f = arbor.Frame{Length: 3, Room: room, Capacity: 500, Plate: arbor.Plate{Mass: 1, Thickness: 0.1, Every: 0.6}, Lock: arbor.Lock{Mass: 1, Thickness: 0.2}}
		if c, err := f.Compact(arbor.Wanted{Show: 100}); !slices.Equal(fields(t, err), []string{"plate.thickness"}) {
			t.Errorf("no room left: %+v, %v", c, err)
		}
	}
	f.Room = 0.3 + 2e-9
	if c, err := f.Compact(arbor.Wanted{Show: 100}); err != nil || c.Height != 2e-9 {
		t.Errorf("two nanometres left: %+v, %v", c, err)
	}
	_, err = arbor.Frame{}.Compact(arbor.Wanted{Show: -1})
	if diff := cmp.Diff([]string{"length", "room", "capacity", "wanted.show"}, fields(t, err)); diff != "" {
		t.Errorf("%v\n%s", err, diff)
	}
}

// No stack of one kind of piece holds more in the room than the least compactness
// says: where Fill finds one that holds all that is wanted, its pieces are at
// least so compact.
func TestNothingLessCompactFits(t *testing.T) {
	fits := 0
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, least, most int) float64 { return float64(rapid.IntRange(least, most).Draw(t, name)) }
		f := arbor.Frame{Length: 4, Room: units.Millimetre.Scale(draw("room", 100, 2000)), Capacity: 2000}
		if rapid.Bool().Draw(t, "plates") {
			f.Plate = arbor.Plate{Mass: units.Mass(draw("plate", 1, 3)), Thickness: units.Millimetre.Scale(draw("thin", 1, 9)), Every: units.Millimetre.Scale(draw("every", 50, 700))}
		}
		piece := arbor.Piece{Name: "a", Mass: units.Mass(draw("mass", 5, 25)), Thickness: units.Millimetre.Scale(draw("thickness", 10, 60)), Count: 100}
		w := arbor.Wanted{Pipe: units.Mass(draw("pipe", -20, 200)), Show: units.Mass(draw("show", 0, 500))}
		s, err := f.Fill(w, arbor.Stock{piece}, arbor.EitherSide)
		if err != nil {
			t.Fatal(err)
		}
		// The stack answers its own mass, whatever was wanted: of that it is an instance.
		c, err := f.Compact(arbor.Wanted{Pipe: s.PipeMass, Show: s.ShowMass + s.PlateMass})
		if err != nil {
			t.Fatal(err)
		}
		if s.Pieces == 0 {
			return
		}
		fits++
		each := float64(piece.Mass) / float64(piece.Thickness)
		if each < float64(c.PerHeight)*(1-1e-6) {
			t.Fatalf("%v kg/m fit, but %v is called for\n%+v\n%+v", each, c.PerHeight, c, s)
		}
	})
	if fits == 0 {
		t.Error("no stack with pieces: the test shows nothing")
	}
}

// A lock plate takes its height from the room and its mass from what is wanted, here and when a stack is laid in the frame.
func TestCompactUnderALockPlate(t *testing.T) {
	frame := arbor.Frame{Length: 3, Room: 2, Capacity: 1000}
	plain, err := frame.Compact(arbor.Wanted{Show: 390})
	if err != nil {
		t.Fatal(err)
	}
	frame.Lock = arbor.Lock{Mass: 10, Thickness: 0.5}
	locked, err := frame.Compact(arbor.Wanted{Show: 400})
	if err != nil {
		t.Fatal(err)
	}
	if plain.Height != 2 || locked.Height != 1.5 || locked.Pieces != plain.Pieces || locked.Over != -600 {
		t.Errorf("%+v without, %+v with", plain, locked)
	}
	flight, err := arbor.Run{UpperStop: 10}.Fly(frame, arbor.Ride{Ratio: 1})
	if err != nil {
		t.Fatal(err)
	}
	stack := arbor.Stack{Show: []arbor.Row{{Name: "a", Count: 16, Mass: 10, Thickness: 0.1}}}
	run := flight.Run
	run.Bridges = []arbor.Bridge{{Name: "b", Floor: 5, High: 2}}
	if flight, err = run.Fly(frame, arbor.Ride{Ratio: 1}); err != nil {
		t.Fatal(err)
	}
	if _, err := flight.Reach("b", 1, stack); err == nil {
		t.Error("a stack that leaves no room for the lock plate is taken")
	}
	stack.Show[0].Count = 15
	if _, err := flight.Reach("b", 1, stack); err != nil {
		t.Error(err)
	}
}
