package quillmoor_test

import (
	"testing"

	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase/lineset"
)

// Both nights can be computed, and one can become the other.
func TestSeason(t *testing.T) {
	summer, err := quillmoor.SummerPlay()
	if err != nil {
		t.Fatal(err)
	}
	winter, err := quillmoor.WinterRevue()
	if err != nil {
		t.Fatal(err)
	}
	if len(summer.Sets) != len(winter.Sets) {
		t.Fatalf("%d sets in summer, %d in winter", len(summer.Sets), len(winter.Sets))
	}
	changed := 0
	for i, set := range summer.Sets {
		if set.Name != winter.Sets[i].Name {
			t.Errorf("set %d is called %q and then %q", i+1, set.Name, winter.Sets[i].Name)
		}
		if len(set.Hang) != len(winter.Sets[i].Hang) {
			changed++
		}
	}
	if changed == 0 {
		t.Error("nothing changes")
	}
	for _, night := range []lineset.House{summer, winter} {
		if _, err := night.Rig(); err != nil {
			t.Error(err)
		}
	}
}
