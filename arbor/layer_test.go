package arbor_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestLayers(t *testing.T) {
	in := units.Inch
	f := arbor.Frame{
		Length: 8 * units.Foot, Room: 84 * in, Capacity: 2000 * units.Pound,
		Plate: arbor.Plate{Mass: 3 * units.Pound, Thickness: 0.5 * in, Every: 24 * in},
		Lock:  arbor.Lock{Mass: 8 * units.Pound, Thickness: 1 * in},
	}
	s := arbor.Stack{
		Pipe: []arbor.Row{row("44", 2, 44, 2)},
		Show: []arbor.Row{row("50", 11, 50, 2.5), row("22", 21, 22, 1)},
	}
	got, err := s.Layers(f)
	if err != nil {
		t.Fatal(err)
	}
	type layer struct {
		Of          string
		Name        string
		Count       int
		Bottom, Top float64 // inches
	}
	var have []layer
	for _, l := range got {
		have = append(have, layer{l.Of.String(), l.Name, l.Count, l.Bottom.In(in), l.Top.In(in)})
	}
	want := []layer{
		{"pipe weight", "44", 2, 0, 4},
		{"spreader plate", "", 1, 4, 4.5},
		{"show weight", "50", 10, 4.5, 29.5}, // 24 in are passed within the tenth: the plate lies on it
		{"spreader plate", "", 1, 29.5, 30},
		{"show weight", "50", 1, 30, 32.5},
		{"show weight", "22", 21, 32.5, 53.5}, // 27.5 + 21 = 48.5 in: just past two intervals, on the last piece
		{"spreader plate", "", 1, 53.5, 54},
		{"lock plate", "", 1, 54, 55},
	}
	if diff := cmp.Diff(want, have, cmp.Comparer(func(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 })); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}

	// A piece that just fills the interval has the plate on it.
	s.Show = []arbor.Row{row("22", 25, 22, 1)}
	got, err = s.Layers(f)
	if err != nil || len(got) != 6 || got[2].Count != 24 || got[3].Of != arbor.OfSpreaderPlate || got[4].Count != 1 {
		t.Errorf("25 of 1 in: %+v, %v", got, err)
	}

	// Three of 0.1 m are a nanometre short of the interval: the plate lies on the fourth.
	short := f
	short.Plate.Every = 0.300000001
	five := arbor.Stack{Show: []arbor.Row{{Name: "a", Count: 5, Mass: 20, Thickness: 0.1}}}
	if l, err := five.Layers(short); err != nil || len(l) != 5 || l[1].Count != 4 || l[2].Of != arbor.OfSpreaderPlate || l[3].Count != 1 {
		t.Errorf("five of 0.1 m: %+v, %v", l, err)
	}
	// A row that is empty today is no layer.
	s.Pipe = append(s.Pipe, row("30", 0, 30, 1.5))
	if empty, err := s.Layers(f); err != nil || !cmp.Equal(empty, got) {
		t.Errorf("with none of the 30: %+v, %v", empty, err)
	}

	s.Show[0].Count, s.Pipe[0].Thickness, f.Lock.Mass = -1, 0, 0
	if _, err := s.Layers(f); !cmp.Equal(fields(t, err), []string{"lock.mass", "pipe[0].thickness", "show[0].count"}) {
		t.Errorf("faults: %v", err)
	}
}

// Layers stand one upon the other, and are all of the stack: its height, its
// pieces and its plates.
func TestPropLayers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := smalls(t)
		got, err := s.frame().Fill(s.wanted(), s.stock(), s.side)
		if err != nil {
			t.Skip("no stack")
		}
		layers, err := got.Layers(s.frame())
		if err != nil {
			t.Fatal(err)
		}
		count := map[arbor.LayerOf]int{}
		var top, show units.Length
		for i, l := range layers {
			if l.Bottom != top || l.Top <= l.Bottom || l.Count < 1 {
				t.Fatalf("layer %d of %+v: does not stand on %v", i, layers, top)
			}
			top = l.Top
			count[l.Of] += l.Count
			// No more than an interval and one piece without a plate.
			if l.Of == arbor.OfSpreaderPlate {
				show = 0
			}
			if l.Of == arbor.OfShowWeight && s.each > 0 {
				show += l.Top - l.Bottom
				if show > s.frame().Plate.Every+l.Thickness+units.Millimetre/1000 {
					t.Fatalf("%v without a plate: %+v", show, layers)
				}
			}
		}
		lock := 0
		if s.lockMass > 0 {
			lock = 1
		}
		if top != got.Height || count[arbor.OfSpreaderPlate] != got.Plates || count[arbor.OfLockPlate] != lock ||
			count[arbor.OfPipeWeight]+count[arbor.OfShowWeight] != got.Pieces {
			t.Fatalf("%+v\nare not all of %+v", layers, got)
		}
	})
}

func TestLayerOfText(t *testing.T) {
	for l := arbor.OfPipeWeight; l <= arbor.OfLockPlate; l++ {
		text, err := json.Marshal(l)
		var back arbor.LayerOf
		if err != nil || json.Unmarshal(text, &back) != nil || back != l {
			t.Errorf("%v: %s, %v, %v", l, text, back, err)
		}
	}
	l := arbor.OfLockPlate
	if err := l.UnmarshalText([]byte("crate")); !errors.Is(err, units.ErrUnknown) || l != arbor.OfLockPlate {
		t.Errorf("an unknown text: %v, %v", l, err)
	}
	if _, err := arbor.LayerOf(9).MarshalText(); !errors.Is(err, units.ErrUnknown) || arbor.LayerOf(9).String() != "LayerOf(9)" {
		t.Errorf("none of the constants: %v", err)
	}
}
