package lineset

import (
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/strictjson"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// validate reports what is wrong with a step by itself.
func (s OrderStep) validate() error {
	var p check.Problems
	item, pieces := s.Act.crew() == deck, s.Act.crew() == bridge
	switch {
	case s.Act == 0:
		p.Add("act", "", wantAct, units.ErrMissing)
		return p.Err()
	case !s.Act.known():
		p.Add("act", s.Act.String(), wantAct, units.ErrUnknown)
		return p.Err()
	}
	unwanted := func(field string, given bool, value string) {
		if given {
			p.Add(field, value, "nothing: "+s.Act.String()+" has no "+field, ErrNotWanted)
		}
	}
	if item {
		if s.Item == "" && s.Place == 0 {
			p.Add("item", "", "the name of an item in the hang, or its place", units.ErrMissing)
		}
	} else {
		unwanted("item", s.Item != "", strconv.Quote(s.Item))
		unwanted("place", s.Place != 0, strconv.Itoa(s.Place))
	}
	if pieces {
		if s.Piece == "" {
			p.Add("piece", "", "what the kind of piece is called in the stock", units.ErrMissing)
		}
		if s.Count < 1 {
			p.Add("count", strconv.Itoa(s.Count), "how many, 1 or more", units.ErrOutOfRange)
		}
	} else {
		unwanted("piece", s.Piece != "", strconv.Quote(s.Piece))
		unwanted("count", s.Count != 0, strconv.Itoa(s.Count))
	}
	if s.Act == FlyTo {
		check.Finite(&p, "trim", s.Trim)
	} else if check.Finite(&p, "trim", s.Trim) {
		unwanted("trim", s.Trim != 0, check.Show(s.Trim))
	}
	switch on := s.On; {
	case s.Act == SetLine && on != purchase.Batten && on != purchase.Arbor:
		p.Add("on", on.String(), "batten or arbor", units.ErrUnknown)
	case s.Act != SetLine:
		unwanted("on", on != purchase.Building, on.String())
	}
	return p.Err()
}

// do does one step, completes the reference to its item, and gives the way on which its states are looked at.
func (w *walked) do(s *OrderStep) ([]spot, error) {
	here := w.way(w.trim, w.trim)
	if w.open && s.Act.crew() != nobody {
		return nil, &units.FieldError{Field: "act", Value: "the set", Want: "the rope lock to be shut first", Err: ErrUnlocked}
	}
	switch s.Act {
	case HangItem, StripItem:
		i, err := w.find(s)
		if err != nil {
			return nil, err
		}
		if hang := s.Act == HangItem; w.hung[i] == hang {
			kind, want := ErrHung, "an item that does not hang yet"
			if !hang {
				kind, want = ErrNotHung, "an item that hangs"
			}
			return nil, &units.FieldError{Field: "item", Value: w.title(i), Want: want, Err: kind}
		}
		w.hung[i] = !w.hung[i]
		s.Item, s.Place = w.set.Hang[i].Name, i+1
	case AddPieces:
		if err := w.in.add(PiecesOf{s.Piece, s.Count}); err != nil {
			return nil, err
		}
		return here, w.arms(w.in, s.Count)
	case TakePieces:
		full := w.in
		full.rows = slices.Clone(w.in.rows)
		if err := w.in.take(PiecesOf{s.Piece, s.Count}); err != nil {
			return nil, err
		}
		return here, w.arms(full, s.Count)
	case FlyTo:
		switch {
		case !w.open:
			return nil, &units.FieldError{Field: "act", Value: "the set", Want: "the rope lock to be opened first", Err: ErrLocked}
		case w.held != purchase.Building:
			return nil, &units.FieldError{Field: "act", Value: "the set", Want: "the line to be freed first", Err: ErrHeld}
		}
		if err := w.reaches(s.Trim); err != nil {
			return nil, err
		}
		way := w.way(min(w.trim, s.Trim), max(w.trim, s.Trim))
		w.trim = s.Trim
		return way, nil
	case LockRope, UnlockRope:
		if w.open == (s.Act == UnlockRope) {
			state, want := "shut", "open"
			if w.open {
				state, want = want, state
			}
			return nil, &units.FieldError{Field: "act", Value: "the rope lock, " + state + ",", Want: "a rope lock that is " + want, Err: ErrLockIsSo}
		}
		w.open = !w.open
	case SetLine:
		if w.held != purchase.Building {
			return nil, &units.FieldError{Field: "on", Value: "the " + w.held.String(), Want: "the line to be freed first", Err: ErrLineSet}
		}
		w.held = s.On
	case FreeLine:
		if w.held == purchase.Building {
			return nil, &units.FieldError{Field: "act", Value: "the set", Want: "a line to be set first", Err: ErrNoLine}
		}
		w.held = purchase.Building
	}
	return here, nil
}

// find looks an item up by its name, its place, or both.
func (w *walked) find(s *OrderStep) (int, error) {
	if s.Place != 0 {
		if s.Place < 1 || s.Place > len(w.hung) {
			return 0, &units.FieldError{Field: "place", Value: strconv.Itoa(s.Place), Want: w.places(), Err: units.ErrOutOfRange}
		}
		if name := w.set.Hang[s.Place-1].Name; s.Item != "" && s.Item != name {
			return 0, &units.FieldError{
				Field: "item", Value: strictjson.Name(s.Item),
				Want: w.title(s.Place-1) + ", which is at place " + strconv.Itoa(s.Place), Err: units.ErrUnknown,
			}
		}
		return s.Place - 1, nil
	}
	named := func(item load.Item) bool { return item.Name == s.Item }
	i := slices.IndexFunc(w.set.Hang, named)
	switch {
	case i < 0:
		return 0, &units.FieldError{Field: "item", Value: strictjson.Name(s.Item), Want: "the name of an item in the hang", Err: units.ErrUnknown}
	case slices.ContainsFunc(w.set.Hang[i+1:], named):
		return 0, &units.FieldError{
			Field: "item", Value: strictjson.Name(s.Item),
			Want: "its place too: there are several of that name in the hang", Err: units.ErrDuplicate,
		}
	}
	return i, nil
}

// title is what an item is called.
func (r *Rigged) title(i int) string {
	if name := strictjson.Name(r.set.Hang[i].Name); name != "" {
		return name
	}
	return "item " + strconv.Itoa(i+1)
}

// mirror is the order that undoes one that was planned and ends at the given trim: the same states in reverse.
func (o Order) mirror(end units.Length) Order {
	m := Order{From: FromLoaded, Trim: end}
	if o.From == FromLoaded {
		m.From = FromBare
	}
	trims := []units.Length{o.Trim}
	for _, s := range o.Steps {
		if s.Act == FlyTo {
			trims = append(trims, s.Trim)
		}
	}
	for _, s := range slices.Backward(o.Steps) {
		if s.Act == FlyTo {
			trims = trims[:len(trims)-1]
			s.Trim = trims[len(trims)-1]
		}
		s.Act = s.Act.mirror()
		m.Steps = append(m.Steps, s)
	}
	return m
}
