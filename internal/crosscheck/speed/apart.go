package main

import (
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"time"
)

// worker is the environment variable by which this program tells a copy of itself to do nothing but one kind of work, and
// between which two moments to count it.
const worker = "STEELYARD_SPEED_WORKER"

// order is what stands in it.
type order struct {
	work        string // "check" or "rig"
	from, until time.Time
}

func (o order) String() string {
	return fmt.Sprintf("%s %d %d", o.work, o.from.UnixNano(), o.until.UnixNano())
}

func parseOrder(text string) (o order, err error) {
	part := strings.Fields(text)
	if len(part) != 3 {
		return o, fmt.Errorf("%s=%q: three words wanted", worker, text)
	}
	o.work = part[0]
	for i, at := range []*time.Time{&o.from, &o.until} {
		n, err := strconv.ParseInt(part[i+1], 10, 64)
		if err != nil {
			return o, fmt.Errorf("%s: %w", worker, err)
		}
		*at = time.Unix(0, n)
	}
	return o, nil
}

// labour works to order from the first, and gives the nanoseconds of a turn between the two moments.
func labour(o order) (float64, error) {
	s, pieces := wholeSet(0), stock()
	w, err := newWhole(s)
	if err != nil {
		return 0, err
	}
	at := rounds(s)
	once := func(i int) error {
		if o.work == "rig" {
			_, err := s.Rig(pieces)
			return err
		}
		err := w.statics(at[i%len(at)])
		w.exceeded += w.exceeds()
		return err
	}
	const bunch = 64 // between two looks at the clock
	turns, start := 0, time.Time{}
	for {
		now := time.Now()
		switch {
		case start.IsZero() && !now.Before(o.from):
			turns, start = 0, now
		case !start.IsZero() && !now.Before(o.until):
			return float64(now.Sub(start).Nanoseconds()) / float64(turns), nil
		}
		for i := range bunch {
			if err := once(i); err != nil {
				return 0, err
			}
		}
		turns += bunch
	}
}

// apart is scale in processes of their own, which share nothing but the machine: what keeps those apart keeps two goroutines
// apart too, and is no fault of the library.
func (e effort) apart(ctx context.Context, work string) (alone, together, times float64, err error) {
	program, err := os.Executable()
	if err != nil {
		return 0, 0, 0, err
	}
	const ready = 300 * time.Millisecond // in which a process has begun
	window := 500 * e.slice
	measure := func(processes int) (float64, error) {
		from := time.Now().Add(ready)
		o := order{work, from, from.Add(window)}
		said := make([]strings.Builder, processes)
		commands := make([]*exec.Cmd, processes)
		for i := range commands {
			commands[i] = exec.CommandContext(ctx, program)
			commands[i].Env = append(os.Environ(), worker+"="+o.String(), "GOMAXPROCS=1") // a core each, as in scale
			commands[i].Stdout = &said[i]
			if err := commands[i].Start(); err != nil {
				return 0, err
			}
		}
		each := 0.0 // turns of all in a nanosecond
		for i, c := range commands {
			if err := c.Wait(); err != nil {
				return 0, err
			}
			took, err := strconv.ParseFloat(said[i].String(), 64)
			if err != nil {
				return 0, err
			}
			each += 1 / took
		}
		return 1 / each, nil
	}
	alone, together = math.Inf(1), math.Inf(1)
	for range max(e.rounds/200, 1) {
		for i, least := range []*float64{&alone, &together} {
			took, err := measure(i + 1)
			if err != nil {
				return 0, 0, 0, err
			}
			*least = min(*least, took)
		}
	}
	return alone, together, alone / together, nil
}
