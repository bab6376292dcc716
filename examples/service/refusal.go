package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"

	"example.com/steelyard/units"
)

// refused is an error with its status. Any other error is of the question.
type refused struct {
	status int
	err    error
}

func (e refused) Error() string { return e.err.Error() }

func notAllowed(h http.Header, methods string) error {
	h.Set("Allow", methods)
	return refused{http.StatusMethodNotAllowed, fmt.Errorf("want one of %s here", methods)}
}

// refuse says what is wrong, all of it, and what would be right.
func refuse(w http.ResponseWriter, err error) {
	status, cause := http.StatusBadRequest, err
	if r := (refused{}); errors.As(err, &r) {
		status, cause = r.status, r.err
	}
	type fault struct {
		Field string `json:"field,omitempty"`
		Value string `json:"value,omitempty"`
		Want  string `json:"want,omitempty"`
		Error string `json:"error"`
	}
	out := struct {
		Errors []fault `json:"errors"`
	}{}
	for _, e := range flat(cause) {
		f := fault{Error: e.Error()}
		if fe := (*units.FieldError)(nil); errors.As(e, &fe) {
			f.Field, f.Value, f.Want = fe.Field, fe.Value, fe.Want
		}
		out.Errors = append(out.Errors, f)
	}
	writeJSON(w, status, out)
}

// flat takes errors that were joined apart.
func flat(err error) (all []error) {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		for _, e := range joined.Unwrap() {
			all = append(all, flat(e)...)
		}
		return all
	}
	return []error{err}
}

func writeJSON(w http.ResponseWriter, status int, v any) {
	text, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		status, text = http.StatusInternalServerError, []byte(`{"errors":[{"error":"the answer could not be written"}]}`)
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	w.Write(append(text, '\n'))
}
