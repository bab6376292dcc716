package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"flag"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase/lineset"
)

// What is wrong with the flags is answered with one line that says what would be right, and status 2.
func TestAnswers(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	for _, c := range []struct {
		name string
		args []string
		says string
	}{
		{"no such flag", []string{"-port", "80"}, "-h explains the flags"},
		{"no flag", []string{"8080"}, `"8080" is not a flag; -h explains`},
		{"a port alone", []string{"-listen", "8080"}, `-listen "8080" is no address; want HOST:PORT`},
		{"no port", []string{"-listen", "127.0.0.1:99999"}, "want HOST:PORT of this machine"},
		{"somebody else's address", []string{"-listen", "192.0.2.1:0"}, "want HOST:PORT of this machine"}, // TEST-NET-1, RFC 5737
		{"busy port", []string{"-listen", taken.Addr().String()}, "is in use by another program; want a free port, or 0 for any"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out, errs bytes.Buffer
			status := run(t.Context(), c.args, &out, &errs)
			if text := errs.String(); status != 2 || out.Len() > 0 || strings.Count(text, "\n") != 1 || !strings.HasPrefix(text, "service: ") || !strings.Contains(text, c.says) {
				t.Errorf("status %d, %q, and %q; want one line with %q", status, out.String(), text, c.says)
			}
		})
	}
}

func TestHelp(t *testing.T) {
	for _, arg := range []string{"-h", "-help"} {
		var out, errs bytes.Buffer
		if status := run(t.Context(), []string{arg}, &out, &errs); status != 0 || errs.Len() > 0 {
			t.Errorf("status %d: %s", status, errs.String())
		}
		for _, want := range []string{"go run ./examples/service", "-listen", "/freebody.svg", "422", lineset.Caution} {
			if !strings.Contains(out.String(), want) {
				t.Errorf("no %q in\n%s", want, out.String())
			}
		}
	}
	if _, err := read([]string{"-h"}); !errors.Is(err, flag.ErrHelp) {
		t.Error(err)
	}
}

// serving serves on a free port and gives its address, and what stops it and waits for its end.
func serving(t *testing.T, s *service) (at string, stop func() error) {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- s.serve(ctx, listener) }()
	return "http://" + listener.Addr().String(), func() error {
		cancel()
		return <-ended
	}
}

// Asked to stop while a house is on its way, the program takes no other request, answers that one, and ends with status 0.
func TestStopsWhenAllIsAnswered(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	said, out := io.Pipe()
	var log bytes.Buffer
	status := make(chan int, 1)
	go func() { status <- run(ctx, []string{"-listen", "127.0.0.1:0"}, out, &log) }()
	line, err := bufio.NewReader(said).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	at := strings.TrimPrefix(strings.TrimSpace(line), "service: ")

	house, rest := io.Pipe()
	type result struct {
		status int
		text   string
		err    error
	}
	answered := make(chan result, 1)
	go func() {
		r, err := send(at+"/sets", house)
		if err != nil {
			answered <- result{err: err}
			return
		}
		defer r.Body.Close()
		text, err := io.ReadAll(r.Body)
		answered <- result{r.StatusCode, string(text), err}
	}()
	text := quillmoor.JSON()
	if _, err := rest.Write(text[:1000]); err != nil { // the request is under way
		t.Fatal(err)
	}
	stop()
	for {
		conn, err := net.Dial("tcp", strings.TrimPrefix(at, "http://"))
		if err != nil {
			break // no more requests are taken
		}
		conn.Close()
	}
	select {
	case s := <-status:
		t.Fatalf("it ended, with status %d, before the request was answered", s)
	case r := <-answered:
		t.Fatalf("answered before all was sent: %+v", r)
	default:
	}
	if _, err := rest.Write(text[1000:]); err != nil {
		t.Fatal(err)
	}
	rest.Close()
	if r := <-answered; r.err != nil || r.status != 200 || !strings.Contains(r.text, "Quillmoor Playhouse") {
		t.Errorf("%+v, %v", r, r.err)
	}
	if s := <-status; s != 0 {
		t.Errorf("status %d", s)
	}
	if !strings.Contains(log.String(), "msg=stopping") || !strings.Contains(log.String(), "method=POST path=/sets status=200") {
		t.Error(log.String())
	}
}

// send posts a house that comes bit by bit. Nothing of it is taken before the service asks for it: then the request is under way.
func send(at string, house io.Reader) (*http.Response, error) {
	r, err := http.NewRequest(http.MethodPost, at, house)
	if err != nil {
		return nil, err
	}
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Expect", "100-continue")
	return (&http.Transport{ExpectContinueTimeout: time.Hour}).RoundTrip(r)
}

// A request that does not end is not waited for for ever.
func TestStopsInTime(t *testing.T) {
	at, stop := serving(t, opened(t, func(b *bounds) { b.stop = 50 * time.Millisecond }))
	house, rest := io.Pipe()
	failed := make(chan error, 1)
	go func() {
		r, err := send(at+"/sets", house)
		if err == nil {
			r.Body.Close()
		}
		failed <- err
	}()
	if _, err := io.WriteString(rest, "{"); err != nil {
		t.Fatal(err)
	}
	if err := stop(); err == nil || !strings.Contains(err.Error(), "requests that were not answered") {
		t.Error(err)
	}
	rest.Close()
	if err := <-failed; err == nil {
		t.Error("the request was answered")
	}
}

// A listener that breaks is an end with an error.
func TestBrokenListener(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	listener.Close()
	if err := opened(t, nil).serve(t.Context(), listener); err == nil {
		t.Error("no error")
	}
}
