package main

import (
	"errors"
	"log/slog"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// service answers over HTTP. It keeps nothing from one request to the next.
type service struct {
	bounds
	demo  *lineset.RiggedHouse // the house where nothing is posted
	turns chan struct{}        // holds one for each house that is being computed
	log   *slog.Logger
}

// handler is the addresses that there are.
func (s *service) handler() http.Handler {
	mux := http.NewServeMux()
	mux.Handle("/{$}", only(part("page.html", "text/html"), http.MethodGet, http.MethodHead))
	mux.Handle("/page.css", only(part("page.css", "text/css"), http.MethodGet, http.MethodHead))
	mux.Handle("/page.js", only(part("page.js", "text/javascript"), http.MethodGet, http.MethodHead))
	for path, q := range questions {
		mux.Handle(path, only(s.answers(q), http.MethodGet, http.MethodHead, http.MethodPost))
	}
	mux.HandleFunc("/", func(w http.ResponseWriter, r *http.Request) {
		fail(w, refuse(http.StatusNotFound, "path", quote(r.URL.Path), "one of /, /sets, /checks, /freebody.svg", units.ErrUnknown))
	})
	return s.logged(guarded(mux))
}

// answers reads the question and the house whole, then works out the answer: as one of a few at a time, and not for ever.
func (s *service) answers(q question) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		asked, err := q.read(r.URL.RawQuery)
		if err != nil {
			fail(w, err)
			return
		}
		posted, err := s.posted(w, r)
		if err != nil {
			fail(w, err)
			return
		}
		work := func(w http.ResponseWriter, r *http.Request) {
			select {
			case s.turns <- struct{}{}:
				// Given back when the work is done, not when nobody waits for it any more: only so are there never more at once.
				defer func() { <-s.turns }()
			case <-r.Context().Done():
				return // nobody waits any more
			}
			house, err := s.rig(posted)
			if err == nil {
				err = q.answer(w, house, asked)
			}
			if err != nil {
				fail(w, err)
			}
		}
		w.Header().Set("Content-Type", jsonType) // of what the handler of the time limit says
		http.TimeoutHandler(http.HandlerFunc(work), s.compute, tooLong).ServeHTTP(w, r)
	})
}

// errMethod is a method that an address does not take.
var errMethod = errors.New("is not allowed here")

// only refuses all methods but those given.
func only(h http.Handler, methods ...string) http.Handler {
	allow := strings.Join(methods, ", ")
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !slices.Contains(methods, r.Method) {
			w.Header().Set("Allow", allow)
			fail(w, refuse(http.StatusMethodNotAllowed, "method", quote(r.Method), "one of "+allow, errMethod))
			return
		}
		h.ServeHTTP(w, r)
	})
}

// guarded tells the browser to run nothing but the page's own script, to ask nobody else, and to keep no answer: the next one may be
// about another house.
func guarded(h http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		header := w.Header()
		header.Set("Content-Security-Policy", "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src data:; "+
			"base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
		header.Set("X-Content-Type-Options", "nosniff")
		header.Set("Cross-Origin-Resource-Policy", "same-origin")
		header.Set("Referrer-Policy", "no-referrer")
		header.Set("Cache-Control", "no-store")
		h.ServeHTTP(w, r)
	})
}

// logged writes a line for each request, when it has been answered.
func (s *service) logged(h http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		start, seen := time.Now(), &seen{ResponseWriter: w, status: http.StatusOK}
		h.ServeHTTP(seen, r)
		what := "answered"
		if r.Context().Err() != nil {
			what = "gone before the answer" // as the page is from a question when the slider has moved on
		}
		s.log.Info(what, "method", r.Method, "path", r.URL.Path, "status", seen.status, "bytes", seen.bytes, "took", time.Since(start))
	})
}

// seen is an answer of which status and size are noted for the log.
type seen struct {
	http.ResponseWriter
	status, bytes int
}

func (s *seen) WriteHeader(status int) {
	s.status = status
	s.ResponseWriter.WriteHeader(status)
}

func (s *seen) Write(b []byte) (int, error) {
	n, err := s.ResponseWriter.Write(b)
	s.bytes += n
	return n, err
}

// Unwrap lets net/http reach the connection, which it closes under whoever sends too much.
func (s *seen) Unwrap() http.ResponseWriter { return s.ResponseWriter }

// quote writes what was sent, or the beginning of it where it is long.
func quote(text string) string {
	const most = 60
	if r := []rune(text); len(r) > most {
		text = string(r[:most]) + "…"
	}
	return strconv.Quote(text)
}
