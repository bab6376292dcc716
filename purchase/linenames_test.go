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
