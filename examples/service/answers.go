package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"runtime"

	"example.com/steelyard/examples/diagram"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

//go:embed page.html
var page string

// What a posted house may be at the most, so that its answer takes a second or two.
const (
	largest   = 8 << 20 // bytes
	mostSets  = 500
	mostItems = 5000 // on all of them together
)

// service answers every address. Each question is asked of the demo house, or of the house that is posted with it.
type service struct {
	demo    *lineset.RiggedHouse
	answers map[string]answer // by path
	busy    chan struct{}     // holds one thing for every question that is being worked on
}

// answer asks a house. What it gives is written as JSON, or as it is where it is a picture.
type answer func(house *lineset.RiggedHouse, r *http.Request) (any, error)

type picture string

func newService(demo *lineset.RiggedHouse) service {
	return service{demo, map[string]answer{"/sets": sets, "/checks": checks, "/freebody.svg": freeBody}, make(chan struct{}, 2*runtime.GOMAXPROCS(0))}
}

func (s service) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Content-Security-Policy", "default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src 'self' blob:; connect-src 'self'; frame-ancestors 'none'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Cache-Control", "no-store")
	question, known := s.answers[r.URL.Path]
	switch {
	case r.URL.Path == "/" && (r.Method == http.MethodGet || r.Method == http.MethodHead):
		h.Set("Content-Type", "text/html; charset=utf-8")
		io.WriteString(w, page)
	case r.URL.Path == "/":
		refuse(w, notAllowed(h, "GET, HEAD"))
	case !known:
		refuse(w, refused{http.StatusNotFound, fmt.Errorf("%q is not answered here; want /, /sets, /checks or /freebody.svg", r.URL.Path)})
	case r.Method != http.MethodGet && r.Method != http.MethodHead && r.Method != http.MethodPost:
		refuse(w, notAllowed(h, "GET, HEAD, POST"))
	default:
		s.ask(w, r, question)
	}
}

func (s service) ask(w http.ResponseWriter, r *http.Request, question answer) {
	text, err := posted(w, r)
	if err != nil {
		refuse(w, err)
		return
	}
	select {
	case s.busy <- struct{}{}: // what comes slowly in has come in: now it is worked on
		defer func() { <-s.busy }()
	case <-r.Context().Done():
		return // nobody waits for it any more
	}
	house := s.demo
	if r.Method == http.MethodPost {
		house, err = rig(text)
	}
	var given any
	if err == nil {
		given, err = question(house, r)
	}
	svg, drawn := given.(picture)
	switch {
	case err != nil:
		refuse(w, err)
	case drawn:
		w.Header().Set("Content-Type", "image/svg+xml")
		io.WriteString(w, string(svg))
	default:
		writeJSON(w, http.StatusOK, given)
	}
}

// posted is the text of a house, where there is one.
func posted(w http.ResponseWriter, r *http.Request) ([]byte, error) {
	if r.Method != http.MethodPost {
		return nil, nil
	}
	if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || kind != "application/json" {
		return nil, refused{http.StatusUnsupportedMediaType, fmt.Errorf("Content-Type is %q; want application/json, with a house", r.Header.Get("Content-Type"))}
	}
	text, err := io.ReadAll(http.MaxBytesReader(w, r.Body, largest))
	if tooLarge := (*http.MaxBytesError)(nil); errors.As(err, &tooLarge) {
		return nil, refused{http.StatusRequestEntityTooLarge, fmt.Errorf("the house is larger than %d MiB; want the JSON of one house", largest>>20)}
	}
	if err != nil {
		return nil, refused{http.StatusBadRequest, errors.New("the house did not arrive whole; want the JSON of one house, within 15 seconds")}
	}
	return text, nil
}

// rig reads a house and computes it.
func rig(text []byte) (*lineset.RiggedHouse, error) {
	var house lineset.House
	if err := house.UnmarshalJSON(text); err != nil {
		return nil, refused{http.StatusBadRequest, err} // it is no house
	}
	items := 0
	for _, set := range house.Sets {
		items += len(set.Hang)
	}
	if len(house.Sets) > mostSets || items > mostItems {
		return nil, refused{http.StatusUnprocessableEntity, &units.FieldError{
			Field: "sets", Value: fmt.Sprintf("%d sets with %d items", len(house.Sets), items),
			Want: fmt.Sprintf("at most %d sets with %d items on all of them", mostSets, mostItems), Err: units.ErrOutOfRange,
		}}
	}
	rigged, err := house.Rig()
	if err != nil {
		return nil, refused{http.StatusUnprocessableEntity, err} // it is one that cannot be
	}
	return rigged, nil
}

func sets(house *lineset.RiggedHouse, _ *http.Request) (any, error) {
	type set struct {
		Name    string  `json:"name"`
		Lowest  float64 `json:"lowest_m"` // trims that it reaches
		Highest float64 `json:"highest_m"`
	}
	out := struct {
		House string `json:"house"`
		Sets  []set  `json:"sets"`
	}{House: house.House().Name}
	for s := range house.Sets() {
		travel := s.Travel()
		out.Sets = append(out.Sets, set{s.Set().Name, travel.Lowest.In(units.Metre), travel.Highest.In(units.Metre)})
	}
	return out, nil
}

func checks(house *lineset.RiggedHouse, r *http.Request) (any, error) {
	type set struct {
		Name    string          `json:"name"`
		Call    string          `json:"call"` // what goes into the arbor
		Exceeds bool            `json:"exceeds"`
		Checks  []lineset.Check `json:"checks"`
	}
	of := func(s *lineset.Rigged) set {
		return set{s.Set().Name, s.Counterweight().Stack.Call(), s.Exceeds(), s.Checks()}
	}
	if r.URL.Query().Has("set") {
		s, err := find(house, r)
		if err != nil {
			return nil, err
		}
		return of(s), nil
	}
	out := struct {
		House   string `json:"house"`
		Caution string `json:"caution"`
		Exceeds bool   `json:"exceeds"`
		Sets    []set  `json:"sets"`
	}{House: house.House().Name, Caution: lineset.Caution, Exceeds: house.Exceeds()}
	for s := range house.Sets() {
		out.Sets = append(out.Sets, of(s))
	}
	return out, nil
}

func find(house *lineset.RiggedHouse, r *http.Request) (*lineset.Rigged, error) {
	name := r.URL.Query().Get("set")
	set, ok := house.Set(name)
	if !ok {
		return nil, refused{http.StatusNotFound, &units.FieldError{Field: "set", Value: fmt.Sprintf("%q", name), Want: "the name of a set of the house, as /sets lists them", Err: units.ErrUnknown}}
	}
	return set, nil
}

func freeBody(house *lineset.RiggedHouse, r *http.Request) (any, error) {
	set, err := find(house, r)
	if err != nil {
		return nil, err
	}
	q := r.URL.Query()
	cut := diagram.Cut{Title: set.Set().Name, Set: set, Trim: set.Low().Trim}
	if q.Has("trim") {
		if cut.Trim, err = units.Parse[units.Length](q.Get("trim")); err != nil {
			return nil, units.At("trim", "", err)
		}
	}
	switch way := q.Get("way"); way {
	case "", "still":
	case "out":
		cut.Way = purchase.Out
	case "in":
		cut.Way = purchase.In
	default:
		return nil, &units.FieldError{Field: "way", Value: fmt.Sprintf("%q", way), Want: `"still", "out" or "in"`, Err: units.ErrUnknown}
	}
	sys := units.US
	if q.Has("units") {
		if err := sys.UnmarshalText([]byte(q.Get("units"))); err != nil {
			return nil, units.At("units", "", err)
		}
	}
	pic, err := diagram.FreeBody(sys, house.House().Name, cut)
	if err != nil {
		return nil, err
	}
	return picture(pic.String()), nil
}
