package main

import (
	"errors"
	"io"
	"mime"
	"net/http"
	"os"
	"strconv"
	"strings"

	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// posted reads the house that was sent, without looking into it yet. It is nil where none was: of GET the body is no matter.
func (s *service) posted(w http.ResponseWriter, r *http.Request) ([]byte, error) {
	if r.Method != http.MethodPost {
		return nil, nil
	}
	if err := isJSON(r.Header); err != nil {
		return nil, err
	}
	text, err := io.ReadAll(http.MaxBytesReader(w, r.Body, s.body))
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		return nil, refuse(http.StatusRequestEntityTooLarge, "body", "", "at most "+strconv.FormatInt(s.body, 10)+" bytes, the JSON of one house", units.ErrOutOfRange)
	case errors.Is(err, os.ErrDeadlineExceeded):
		return nil, refuse(http.StatusRequestTimeout, "body", "", "all of it within "+s.read.String(), errLate)
	case err != nil:
		return nil, refuse(http.StatusBadRequest, "body", "", "all of it", err)
	}
	return text, nil
}

// errLate is a house that did not come in time.
var errLate = errors.New("did not come in time")

// isJSON refuses what says that it is anything else.
func isJSON(header http.Header) error {
	const want = "application/json, in UTF-8"
	kind := header.Get("Content-Type")
	media, params, err := mime.ParseMediaType(kind)
	switch charset, named := params["charset"]; {
	case kind == "":
		return refuse(http.StatusUnsupportedMediaType, "Content-Type", "", want, units.ErrMissing)
	case err != nil, media != "application/json", named && !strings.EqualFold(charset, "utf-8"):
		return refuse(http.StatusUnsupportedMediaType, "Content-Type", quote(kind), want, units.ErrWrongType)
	}
	if coding := header.Get("Content-Encoding"); coding != "" && coding != "identity" {
		return refuse(http.StatusUnsupportedMediaType, "Content-Encoding", quote(coding), "the JSON as it is", units.ErrWrongType)
	}
	return nil
}

// rig computes the house that was sent, or gives the demo house where none was. An empty text is a house that got lost on the way,
// and not answered with another one's figures.
func (s *service) rig(posted []byte) (*lineset.RiggedHouse, error) {
	if posted == nil {
		return s.demo, nil
	}
	var house lineset.House
	// Not json.Unmarshal: it would stop at a fault of syntax before the house could say where it is.
	if err := house.UnmarshalJSON(posted); err != nil {
		return nil, &refusal{http.StatusBadRequest, err}
	}
	if err := s.weigh(house); err != nil {
		return nil, &refusal{http.StatusUnprocessableEntity, err}
	}
	rigged, err := house.Rig()
	if err != nil {
		return nil, &refusal{http.StatusUnprocessableEntity, err}
	}
	return rigged, nil
}

// weigh refuses a house that would take too long, or have too long an answer: a short text can ask for much.
func (s *service) weigh(house lineset.House) error {
	items, lines := 0, 0
	for _, set := range house.Sets {
		items += len(set.Hang)
		lines += len(set.Rigging.Batten.Lines) + len(house.Riggings[set.Like].Batten.Lines)
	}
	var wrong []error
	for _, c := range []struct {
		n, most int
		what    string
	}{
		{len(house.Sets), s.sets, "sets"},
		{items, s.items, "items on all sets together"},
		{lines, s.lines, "lift lines of all sets together"},
	} {
		if c.n > c.most {
			wrong = append(wrong, &units.FieldError{Field: "sets", Value: strconv.Itoa(c.n) + " " + c.what, Want: "at most " + strconv.Itoa(c.most), Err: units.ErrOutOfRange})
		}
	}
	return errors.Join(wrong...)
}
