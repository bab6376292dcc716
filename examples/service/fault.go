package main

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"

	"example.com/steelyard/units"
)

// refusal is why a request is not answered, and with which status: 400 where something cannot be read, 422 where all was read and
// cannot be computed, 404 where there is no such thing.
type refusal struct {
	status int
	error
}

func (r *refusal) Unwrap() error { return r.error }

// refuse is a refusal for one value.
func refuse(status int, field, value, want string, kind error) error {
	return &refusal{status, &units.FieldError{Field: field, Value: value, Want: want, Err: kind}}
}

// fault is one thing that is wrong, as it is answered.
type fault struct {
	Field string `json:"field,omitempty"` // where it stands: a path in the house, a parameter, or a header
	Of    string `json:"of,omitempty"`    // the named thing that the field belongs to
	Value string `json:"value,omitempty"` // as it was sent
	Want  string `json:"want,omitempty"`  // what would be right, where the sentence does not say it alone
	Error string `json:"error"`           // all of it in a sentence
}

// tooLong is the answer, with status 503, where the turn did not come or the work did not end in time.
const tooLong = `{"errors":[{"error":"the answer took too long: the service is busy, or the house is large; want another try, or a smaller house"}]}`

// mostFaults bounds how many are listed: a house can be wrong in as many places as it has fields.
const mostFaults = 50

// fail answers with everything that is wrong.
func fail(w http.ResponseWriter, err error) {
	status := http.StatusInternalServerError
	var r *refusal
	if errors.As(err, &r) {
		status, err = r.status, r.error
	}
	var all struct {
		Errors []fault `json:"errors"`
	}
	list := flat(nil, err)
	for i, e := range list {
		if i == mostFaults {
			all.Errors = append(all.Errors, fault{Error: fmt.Sprintf("and %d more", len(list)-i)})
			break
		}
		one := fault{Error: e.Error()}
		if fe, ok := e.(*units.FieldError); ok {
			one.Field, one.Of, one.Value, one.Want = fe.Field, fe.Of, fe.Value, fe.Want
			var text *units.ParseError
			if errors.As(fe.Err, &text) {
				one.Value = cmp.Or(one.Value, quote(text.Text))
			}
		}
		all.Errors = append(all.Errors, one)
	}
	_ = write(w, status, all) // texts alone can always be written as JSON
}

// flat lists what was joined.
func flat(list []error, err error) []error {
	if _, whole := err.(*units.FieldError); whole {
		return append(list, err)
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		for _, e := range many.Unwrap() {
			list = flat(list, e)
		}
		return list
	}
	return append(list, err)
}

const jsonType = "application/json"

// write answers in JSON. The error is an answer of which there is none, and then nothing was sent. That the asker is gone is no error.
func write(w http.ResponseWriter, status int, answer any) error {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(answer); err != nil {
		return err
	}
	w.Header().Set("Content-Type", jsonType)
	w.WriteHeader(status)
	w.Write(b.Bytes())
	return nil
}
