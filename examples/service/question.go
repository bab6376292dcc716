package main

import (
	"io"
	"net/http"
	"strings"

	"example.com/steelyard/examples/diagram"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// question is what may be asked of a house at one address.
type question struct {
	must, may []string // parameters of the query
	answer    func(w http.ResponseWriter, house *lineset.RiggedHouse, a asked) error
}

// questions by their addresses.
var questions = map[string]question{
	"/sets":         {answer: sets},
	"/checks":       {answer: checks, may: []string{"set"}},
	"/freebody.svg": {answer: freebody, must: []string{"set", "trim"}, may: []string{"way", "units"}},
}

// sets says which sets there are and how far they fly.
func sets(w http.ResponseWriter, house *lineset.RiggedHouse, _ asked) error {
	type set struct {
		Name     string        `json:"name"`
		Purchase purchase.Kind `json:"purchase"`
		Lowest   units.Length  `json:"lowest"`    // trim that is reached
		Highest  units.Length  `json:"highest"`   // trim that is reached
		Low      units.Length  `json:"low_trim"`  // as the show wants it, as far as it is reached
		High     units.Length  `json:"high_trim"` // as the show wants it, as far as it is reached
		Exceeds  []string      `json:"exceeds"`   // checks that exceed their limits
	}
	all := struct {
		House   string `json:"house"`
		Sets    []set  `json:"sets"`
		Caution string `json:"caution"`
	}{house.House().Name, nil, lineset.Caution}
	for s := range house.Sets() {
		travel := s.Travel()
		one := set{s.Set().Name, s.Set().Rigging.Purchase, travel.Lowest, travel.Highest, s.Low().Trim, s.High().Trim, []string{}}
		for _, check := range s.Checks() {
			if check.Verdict == lineset.Exceeds {
				one.Exceeds = append(one.Exceeds, check.Name)
			}
		}
		all.Sets = append(all.Sets, one)
	}
	return write(w, http.StatusOK, all)
}

// checks gives every answer about the house, or about one set. That a limit is exceeded is an answer too, and no error.
func checks(w http.ResponseWriter, house *lineset.RiggedHouse, a asked) error {
	if !a.Has("set") {
		return write(w, http.StatusOK, house.Report())
	}
	set, err := find(house, a.set)
	if err != nil {
		return err
	}
	return write(w, http.StatusOK, struct {
		lineset.Report
		Caution string `json:"caution"`
	}{set.Report(), lineset.Caution})
}

// freebody draws a set at a trim.
func freebody(w http.ResponseWriter, house *lineset.RiggedHouse, a asked) error {
	set, err := find(house, a.set)
	if err != nil {
		return err
	}
	picture, err := diagram.FreeBody(a.units, house.House().Name, diagram.Cut{Set: set, Trim: a.trim, Way: a.way})
	if err != nil {
		return &refusal{http.StatusUnprocessableEntity, err} // the trim is not reached, or a rope would have to push
	}
	w.Header().Set("Content-Type", "image/svg+xml")
	io.WriteString(w, picture.String())
	return nil
}

// find gives the set of that name.
func find(house *lineset.RiggedHouse, name string) (*lineset.Rigged, error) {
	if set, ok := house.Set(name); ok {
		return set, nil
	}
	const most = 20
	var names []string
	for set := range house.Sets() {
		if len(names) == most {
			names = append(names, "another that /sets lists")
			break
		}
		names = append(names, quote(set.Set().Name))
	}
	return nil, refuse(http.StatusNotFound, "set", quote(name), "one of "+strings.Join(names, ", "), units.ErrUnknown)
}
