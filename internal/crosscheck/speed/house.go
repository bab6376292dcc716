package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"time"

	"example.com/steelyard/purchase/lineset"
)

// streamRows rig sets one after the other, look at their checks and drop them. What is alive after many is what was alive
// after few.
func (e effort) streamRows() ([]row, error) {
	group := fmt.Sprintf("A STREAM of %d sets, each rigged, checked and dropped", e.streamed)
	pieces, few := stock(), e.streamed/10
	var heap, system [2]float64
	exceeding := 0
	start := time.Now()
	for i := range e.streamed {
		r, err := wholeSet(i).Rig(pieces)
		if err != nil {
			return nil, err
		}
		for _, c := range r.Checks() {
			if c.Verdict == lineset.Exceeds {
				exceeding++
			}
		}
		switch i + 1 {
		case few:
			heap[0], system[0] = alive()
		case e.streamed:
			heap[1], system[1] = alive()
		}
	}
	each := float64(time.Since(start).Nanoseconds()) / float64(e.streamed)
	memory := func(what string, of [2]float64) row {
		return row{group: group, what: what, ours: kib(of[1]), rival: kib(of[0]), than: fmt.Sprintf("after %d", few), ratio: times(of[1] / of[0])}
	}
	live, held := memory("heap alive at the end", heap), memory("held from the system at the end", system)
	live.asked, live.met = "constant, within 5 %", verdictOf(heap[1] <= 1.05*heap[0])
	return []row{live, held, {group: group, what: "each of them, on the way", ours: ns(each)}}, nil
}

// houseText is the JSON of a house of sets that all have a rigging of their own.
func houseText(sets int) ([]byte, error) {
	h := lineset.House{Name: "House of the benchmark", Stock: stock()}
	for i := range h.Stock {
		h.Stock[i].Count *= sets
	}
	for i := range sets {
		h.Sets = append(h.Sets, wholeSet(i))
	}
	return json.Marshal(h)
}

// houseRows take one house through all of it.
func (e effort) houseRows(ctx context.Context) ([]row, error) {
	text, err := houseText(e.house)
	if err != nil {
		return nil, err
	}
	group := fmt.Sprintf("A HOUSE of %d sets in one JSON of %.1f MB", e.house, float64(len(text))/1e6)
	least := [4]float64{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)} // decoded, rigged, printed, all
	note := func(which int, start time.Time) time.Time {
		now := time.Now()
		least[which] = min(least[which], float64(now.Sub(start).Nanoseconds()))
		return now
	}
	for range e.houses {
		begin := time.Now()
		var h lineset.House
		if err := h.UnmarshalJSON(text); err != nil {
			return nil, err
		}
		decoded := note(0, begin)
		r, err := h.Rig()
		if err != nil {
			return nil, err
		}
		rigged := note(1, decoded)
		if err := json.NewEncoder(io.Discard).Encode(r.Report()); err != nil {
			return nil, err
		}
		note(2, rigged)
		note(3, begin)
	}
	const asked = "under a second for 1,000"
	most := 1e9 * float64(e.house) / 1000
	rows := []row{
		{group: group, what: "decoded", ours: ns(least[0])},
		{group: group, what: "rigged and checked", ours: ns(least[1])},
		{group: group, what: "printed as JSON", ours: ns(least[2])},
		within(group, "decoded, checked and printed as JSON", least[3], most, asked),
	}
	if !e.program {
		return rows, nil
	}
	took, err := e.sheet(ctx, text)
	if err != nil {
		return append(rows, row{group: group, what: "the program examples/house: not timed, " + err.Error(), asked: asked}), nil
	}
	return append(rows, within(group, "the program examples/house, to its sheet", took, most, asked)), nil
}

// sheet builds the program that prints a house, and gives the time that its whole process takes.
func (e effort) sheet(ctx context.Context, text []byte) (took float64, err error) {
	dir, err := os.MkdirTemp("", "speed")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(dir)
	program, house := filepath.Join(dir, "house.exe"), filepath.Join(dir, "house.json")
	if err := os.WriteFile(house, text, 0o600); err != nil {
		return 0, err
	}
	if out, err := exec.CommandContext(ctx, "go", "build", "-o", program, "example.com/steelyard/examples/house").CombinedOutput(); err != nil {
		return 0, fmt.Errorf("go build: %w: %s", err, out)
	}
	took = math.Inf(1)
	for range e.houses {
		start := time.Now()
		if err := exec.CommandContext(ctx, program, "-file", house).Run(); err != nil {
			return 0, err
		}
		took = min(took, float64(time.Since(start).Nanoseconds()))
	}
	return took, nil
}
