package strictjson_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.com/steelyard/internal/strictjson"
)

// bigHouse writes a house of about a megabyte.
func bigHouse() []byte {
	var b strings.Builder
	b.WriteString(`{"name": "Q", "sets": [{}`)
	for i := 0; b.Len() < 1<<20; i++ {
		fmt.Fprintf(&b, `, {"name": "set %d", "kind": "double", "lines": 5, "hang": [`, i)
		for j := range 8 {
			fmt.Fprintf(&b, `{"name": "item %d", "mass": "%d.5 lb", "from": "1 lb", "to": "9 lb"}, `, j, 10*j)
		}
		b.WriteString(`{}]}`)
	}
	b.WriteString(`]}`)
	return []byte(b.String())
}

func BenchmarkDecode(b *testing.B) {
	data := bigHouse()
	b.Run("strict", func(b *testing.B) {
		b.ReportAllocs()
		b.SetBytes(int64(len(data)))
		for b.Loop() {
			if err := strictjson.Decode(data, new(house)); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("standard", func(b *testing.B) { // for comparison
		b.ReportAllocs()
		b.SetBytes(int64(len(data)))
		for b.Loop() {
			if err := json.Unmarshal(data, new(house)); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("faults", func(b *testing.B) { // a fault in every item must cost no more
		faulty := []byte(strings.ReplaceAll(string(data), `"mass"`, `"mess"`))
		b.ReportAllocs()
		b.SetBytes(int64(len(faulty)))
		for b.Loop() {
			if err := strictjson.Decode(faulty, new(house)); err == nil {
				b.Fatal("no fault")
			}
		}
	})
}
