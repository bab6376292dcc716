package purchase

import "testing"

// The names that are written out are those that would be put together.
func TestFewLinesAreNamedAsAny(t *testing.T) {
	for i, names := range knownNames {
		if want := newNames(i); names != want {
			t.Errorf("line %d: %+v, want %+v", i+1, names, want)
		}
	}
}

// A layout names as many lines as it may have, in the table and beyond.
func TestEveryLineHasNamesOfItsOwn(t *testing.T) {
	met := map[string]bool{}
	for i := range maxLines {
		n := namesOf(i)
		for _, name := range [...]string{n.lift, n.batten, n.loft, n.dead, n.beam} {
			if met[name] {
				t.Errorf("line %d: %q a second time", i+1, name)
			}
			met[name] = true
		}
		if n.loft != LoftBlock(i+1) || n.dead != DeadEnd(i+1) || n.beam != BeamBlock(i+1) {
			t.Errorf("line %d: %+v", i+1, n)
		}
	}
}

// As many lift lines as there may be are laid, and one more is not.
func TestMostLines(t *testing.T) {
	l := Layout{Kind: Double, HeadBlock: 20, DeadEnd: 21, ArborTop: 15, Rail: 2, Idler: 1, ArborLength: 3}
	for range maxLines {
		l.Loft = append(l.Loft, Loft{Across: 5, Height: 20})
	}
	if r, err := l.Rig(); err != nil || r.Ratio() != 2 {
		t.Errorf("%d lines: %v", maxLines, err)
	}
	r := l.Reeving()
	if _, err := r.Rig(); err != nil {
		t.Errorf("%d lines: %v", maxLines, err)
	}
	l.Loft = append(l.Loft, l.Loft[0])
	r.Lift = append(r.Lift, r.Lift[0])
	if _, err := l.Rig(); err == nil {
		t.Error("a layout with one line more")
	}
	if _, err := r.Rig(); err == nil {
		t.Error("a reeving with one line more")
	}
}
