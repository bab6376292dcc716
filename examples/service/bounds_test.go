package main

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"example.com/steelyard/examples/quillmoor"
)

// A house of just the size that is taken is read, and one byte more is not.
func TestLargest(t *testing.T) {
	house := string(quillmoor.JSON())
	s := opened(t, func(b *bounds) { b.body = int64(len(house)) })
	if w := answer(s, post("/sets", house)); w.Code != 200 {
		t.Errorf("status %d: %s", w.Code, w.Body)
	}
	w := answer(s, post("/sets", house+" "))
	if all := faults(t, w.Body.Bytes()); w.Code != 413 || all[0].Want != fmt.Sprintf("at most %d bytes, the JSON of one house", len(house)) {
		t.Errorf("status %d: %v", w.Code, all)
	}
}

// blanks is a text that does not end.
type blanks struct{}

func (blanks) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = ' '
	}
	return len(b), nil
}

// Over a connection too, what is too large is answered, and not read to its end.
func TestTooLargeOverAConnection(t *testing.T) {
	server := httptest.NewServer(opened(t, nil).handler())
	defer server.Close()
	r, err := http.Post(server.URL+"/checks", "application/json", blanks{})
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	if r.StatusCode != 413 {
		t.Errorf("status %d", r.StatusCode)
	}
}

// A house that is small enough to be read can be too much to be computed.
func TestTooMuch(t *testing.T) {
	s := opened(t, func(b *bounds) { b.sets, b.items, b.lines = 14, 24, 74 })
	w := answer(s, post("/sets", string(quillmoor.JSON())))
	all := faults(t, w.Body.Bytes())
	if w.Code != 422 || len(all) != 3 || all[0].Value != "15 sets" || all[1].Value != "25 items on all sets together" ||
		all[2].Value != "75 lift lines of all sets together" {
		t.Errorf("status %d: %v", w.Code, all)
	}
	s = opened(t, func(b *bounds) { b.sets, b.items, b.lines = 15, 25, 75 })
	if w := answer(s, post("/sets", string(quillmoor.JSON()))); w.Code != 200 {
		t.Errorf("as much as is allowed: status %d: %s", w.Code, w.Body)
	}
}

// When all turns are taken a request waits, and after a while it is told so. When one is given back the next is answered.
func TestBusy(t *testing.T) {
	s := opened(t, func(b *bounds) { b.atOnce, b.compute = 1, 20*time.Millisecond })
	s.turns <- struct{}{}
	w := answer(s, httptest.NewRequest("GET", "/sets", nil))
	if all := faults(t, w.Body.Bytes()); w.Code != 503 || w.Header().Get("Content-Type") != jsonType || !strings.Contains(all[0].Error, "busy") {
		t.Errorf("status %d: %v", w.Code, all)
	}
	<-s.turns
	s.compute = time.Minute
	if w := answer(s, httptest.NewRequest("GET", "/sets", nil)); w.Code != 200 {
		t.Errorf("then: status %d: %s", w.Code, w.Body)
	}
	if len(s.turns) != 0 {
		t.Error("a turn was not given back")
	}
}

// A house that does not come in time is answered with 408.
func TestSlowHouse(t *testing.T) {
	s := opened(t, func(b *bounds) { b.read = 50 * time.Millisecond })
	at, stop := serving(t, s)
	defer stop()
	body, end := io.Pipe()
	defer end.Close()
	go io.WriteString(end, `{"name":`)              // and no more
	asker := http.Client{Timeout: 30 * time.Second} // for a test that fails, and does not hang
	r, err := asker.Post(at+"/checks", "application/json", body)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	text, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	if all := faults(t, text); r.StatusCode != 408 || all[0].Error != "body: did not come in time; want all of it within 50ms" {
		t.Errorf("status %d: %v", r.StatusCode, all)
	}
}

// A house that breaks off is answered as one that cannot be read, where anybody is left to read it.
func TestBrokenOff(t *testing.T) {
	r := post("/checks", "")
	r.Body = io.NopCloser(io.MultiReader(strings.NewReader("{"), brokenReader{}))
	w := answer(opened(t, nil), r)
	if all := faults(t, w.Body.Bytes()); w.Code != 400 || all[0].Field != "body" {
		t.Errorf("status %d: %v", w.Code, all)
	}
}

type brokenReader struct{}

func (brokenReader) Read([]byte) (int, error) { return 0, io.ErrUnexpectedEOF }

// Every request is a line in the log, and what was sent cannot make it two.
func TestLog(t *testing.T) {
	var log strings.Builder
	s := opened(t, nil)
	s.log = slog.New(slog.NewTextHandler(&log, nil))
	for _, path := range []string{"/sets", "/a%0Amsg=answered%20status=200", "/freebody.svg?set=9+empty&trim=9ft"} {
		answer(s, httptest.NewRequest("GET", path, nil))
	}
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	answer(s, httptest.NewRequest("GET", "/sets", nil).WithContext(gone))
	lines := strings.Split(strings.TrimSpace(log.String()), "\n")
	if len(lines) != 4 || !strings.Contains(lines[3], `msg="gone before the answer" method=GET path=/sets`) || !strings.Contains(lines[0], `method=GET path=/sets status=200 bytes=`) ||
		!strings.Contains(lines[1], `path="/a\nmsg=answered status=200" status=404`) || !strings.Contains(lines[2], "path=/freebody.svg status=200") {
		t.Error(log.String())
	}
}
