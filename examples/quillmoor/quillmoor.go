// Package quillmoor is the Quillmoor Playhouse, the invented venue of all the lessons, in its invented season: the summer play
// hangs tonight, the winter revue comes in next.
package quillmoor

import (
	_ "embed"

	"example.com/steelyard/purchase/lineset"
)

//go:embed house.json
var house string

//go:embed revue.json
var revue string

// JSON is the house as a file: its stock, its riggings, and its sets as they hang for the summer play.
func JSON() []byte { return []byte(house) }

// SummerPlay is the house tonight. The error is that of a file that does not decode.
func SummerPlay() (lineset.House, error) {
	var h lineset.House
	err := h.UnmarshalJSON(JSON())
	return h, err
}

// WinterRevue is the same house as it hangs next: the sets of revue.json in place of those of the same names. Errors as for
// SummerPlay.
func WinterRevue() (lineset.House, error) {
	h, err := SummerPlay()
	if err != nil {
		return h, err
	}
	var next lineset.House
	if err := next.UnmarshalJSON([]byte(revue)); err != nil {
		return h, err
	}
	for _, set := range next.Sets {
		for i := range h.Sets {
			if h.Sets[i].Name == set.Name {
				h.Sets[i] = set
			}
		}
	}
	return h, nil
}
