package main

import (
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// asked is a query that was read.
type asked struct {
	url.Values
	set   string
	trim  units.Length
	way   purchase.Way // zero: at rest
	units units.System // US where none is named
}

// read reads a query, and tells everything that is wrong with it.
func (q question) read(query string) (asked, error) {
	values, err := url.ParseQuery(query)
	if err != nil {
		return asked{}, refuse(http.StatusBadRequest, "query", quote(query), "name=value&name=value, with % before each two digits of what is not plain", err)
	}
	a := asked{Values: values, units: units.US}
	var wrong []error
	for name, all := range values {
		switch {
		case !slices.Contains(q.must, name) && !slices.Contains(q.may, name):
			wrong = append(wrong, &units.FieldError{Field: "query", Value: quote(name), Want: q.takes(), Err: units.ErrUnknown})
		case len(all) > 1:
			wrong = append(wrong, &units.FieldError{Field: name, Want: "it once", Err: units.ErrDuplicate})
		default:
			if err := a.take(name, all[0]); err != nil {
				wrong = append(wrong, units.At(name, "", err))
			}
		}
	}
	for _, name := range q.must {
		if !values.Has(name) {
			wrong = append(wrong, &units.FieldError{Field: name, Want: wants[name], Err: units.ErrMissing})
		}
	}
	if len(wrong) > 0 {
		slices.SortFunc(wrong, func(a, b error) int { return strings.Compare(a.Error(), b.Error()) }) // a map has no order
		return asked{}, &refusal{http.StatusBadRequest, errors.Join(wrong...)}
	}
	return a, nil
}

// wants says what each parameter is.
var wants = map[string]string{
	"set":   "the name of a set, as /sets lists them",
	"trim":  "the height of the batten above the deck, such as 12ft or 3.6m",
	"way":   "still, out or in",
	"units": "us or metric",
}

// take reads one parameter.
func (a *asked) take(name, text string) (err error) {
	switch name {
	case "set":
		a.set = text
	case "trim":
		a.trim, err = units.Parse[units.Length](text)
	case "units":
		err = a.units.UnmarshalText([]byte(text))
	case "way":
		switch text {
		case "still":
		case purchase.Out.String():
			a.way = purchase.Out
		case purchase.In.String():
			a.way = purchase.In
		default:
			err = &units.FieldError{Value: quote(text), Want: wants[name], Err: units.ErrUnknown}
		}
	}
	return err
}

// takes lists the parameters of a question.
func (q question) takes() string {
	all := slices.Concat(q.must, q.may)
	if len(all) == 0 {
		return "no parameters"
	}
	return "one of " + strings.Join(all, ", ")
}
