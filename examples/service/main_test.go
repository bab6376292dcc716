package main

import (
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase/lineset"
)

func demo(t testing.TB) *lineset.RiggedHouse {
	t.Helper()
	house, err := quillmoor.SummerPlay()
	if err != nil {
		t.Fatal(err)
	}
	rigged, err := house.Rig()
	if err != nil {
		t.Fatal(err)
	}
	return rigged
}

func TestAnswers(t *testing.T) {
	own := strings.Replace(string(quillmoor.JSON()), "Quillmoor Playhouse", "Other House", 1)
	server := newService(demo(t))
	for _, c := range []struct {
		name         string
		method, path string
		kind, body   string
		status       int
		says         []string
	}{
		{"the page", "GET", "/", "", "", 200, []string{"<title>Free body of a line set</title>", "Overhead lifting can kill."}},
		{"sets", "GET", "/sets", "", "", 200, []string{`"house": "Quillmoor Playhouse"`, `"name": "4 first electric"`, `"lowest_m": 1.2192`}},
		{"checks", "GET", "/checks", "", "", 200, []string{`"caution": "Overhead lifting can kill.`, `"verdict": "exceeds"`, `"basis"`}},
		{"one set", "GET", "/checks?set=11+moon", "", "", 200, []string{`"name": "11 moon"`, `"exceeds": true`}},
		{"a picture", "GET", "/freebody.svg?set=11+moon&trim=20+ft&way=in&units=metric", "", "", 200, []string{"<svg ", "11 moon"}},
		{"at its low trim", "GET", "/freebody.svg?set=11+moon", "", "", 200, []string{"<svg ", "6' 0"}},
		{"a house of one's own", "POST", "/sets", "application/json; charset=utf-8", own, 200, []string{`"house": "Other House"`}},
		{"its picture", "POST", "/freebody.svg?set=11+moon", "application/json", own, 200, []string{"Other House"}},
		{"no such path", "GET", "/check", "", "", 404, []string{`want /, /sets, /checks or /freebody.svg`}},
		{"no such set", "GET", "/checks?set=sun", "", "", 404, []string{`"field": "set"`, `"value": "\"sun\""`, `as /sets lists them`}},
		{"no set", "GET", "/freebody.svg", "", "", 404, []string{`the name of a set`}},
		{"another method", "PUT", "/checks", "", "", 405, []string{"want one of GET, HEAD, POST here"}},
		{"the page is not posted to", "POST", "/", "", "", 405, []string{"want one of GET, HEAD here"}},
		{"no JSON", "POST", "/sets", "text/plain", own, 415, []string{"want application/json"}},
		{"no kind", "POST", "/sets", "", own, 415, []string{"want application/json"}},
		{"no house", "POST", "/checks", "application/json", "{", 400, []string{`"error"`}},
		{"nothing", "POST", "/checks", "application/json", "", 400, []string{`"error"`}},
		{
			"a unit that is missing", "POST", "/checks", "application/json", strings.Replace(own, `"312 lb"`, `"312"`, 1), 400,
			[]string{`"field": "sets[3].hang[0].mass"`, `"value": "\"312\""`, "has no unit"},
		},
		{"a house that cannot be", "POST", "/checks", "application/json", `{"name":"x"}`, 422, []string{`"field": "stock"`, `"field": "sets"`, `"want": "at least one set"`}},
		{
			"too many sets", "POST", "/checks", "application/json", `{"name":"x","sets":[` + strings.Repeat(`{"name":"s"},`, mostSets) + `{"name":"s"}]}`, 422,
			[]string{`"value": "501 sets with 0 items"`, "at most 500 sets with 5000 items"},
		},
		{"too much", "POST", "/checks", "application/json", `{"name":"` + strings.Repeat("x", largest) + `"}`, 413, []string{"larger than 8 MiB"}},
		{"a trim without a unit", "GET", "/freebody.svg?set=11+moon&trim=20", "", "", 400, []string{`"field": "trim"`, "has no unit"}},
		{"a trim out of reach", "GET", "/freebody.svg?set=11+moon&trim=90+ft", "", "", 400, []string{`"field": "trim"`, "a trim that the set reaches"}},
		{"a way", "GET", "/freebody.svg?set=11+moon&way=up", "", "", 400, []string{`"field": "way"`, `\"still\", \"out\" or \"in\"`}},
		{"units", "GET", "/freebody.svg?set=11+moon&units=yards", "", "", 400, []string{`"field": "units"`, `\"us\" or \"metric\"`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := httptest.NewRequest(c.method, c.path, strings.NewReader(c.body))
			if c.kind != "" {
				r.Header.Set("Content-Type", c.kind)
			}
			w := httptest.NewRecorder()
			server.ServeHTTP(w, r)
			if w.Code != c.status {
				t.Fatalf("status %d, want %d: %.300s", w.Code, c.status, w.Body)
			}
			for _, want := range c.says {
				if !strings.Contains(w.Body.String(), want) {
					t.Errorf("no %s in %.600s", want, w.Body)
				}
			}
			switch kind := w.Header().Get("Content-Type"); kind {
			case "application/json":
				if !json.Valid(w.Body.Bytes()) {
					t.Errorf("no JSON: %s", w.Body)
				}
			case "image/svg+xml":
				if err := xml.Unmarshal(w.Body.Bytes(), new(struct{})); err != nil {
					t.Error(err)
				}
			case "text/html; charset=utf-8":
			default:
				t.Errorf("Content-Type %q", kind)
			}
			if c.status == 405 && w.Header().Get("Allow") == "" {
				t.Error("it does not say what is allowed")
			}
			if w.Header().Get("X-Content-Type-Options") != "nosniff" || !strings.Contains(w.Header().Get("Content-Security-Policy"), "default-src 'none'") {
				t.Errorf("headers %v", w.Header())
			}
		})
	}
}

// start runs the whole program on a free port, and gives its address and how to stop it.
func start(t *testing.T, stderr io.Writer) (address string, stop func() int) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	at, status := make(chan net.Addr, 1), make(chan int, 1)
	go func() {
		status <- run(ctx, []string{"-listen", "127.0.0.1:0"}, io.Discard, stderr, func(a net.Addr) { at <- a })
	}()
	select {
	case a := <-at:
		return "http://" + a.String(), func() int { cancel(); return <-status }
	case s := <-status:
		cancel()
		t.Fatalf("it ended with %d", s)
		return "", nil
	}
}

// Asked from many sides at once it gives everybody the same.
func TestManyAtOnce(t *testing.T) {
	var log bytes.Buffer
	address, stop := start(t, &log)
	var wg sync.WaitGroup
	var mu sync.Mutex
	seen := map[string]int{}
	for i := range 32 {
		wg.Go(func() {
			path := []string{"/checks?set=4+first+electric", "/freebody.svg?set=11+moon&way=out"}[i%2]
			answer, err := http.Get(address + path)
			if err != nil {
				t.Error(err)
				return
			}
			defer answer.Body.Close()
			text, err := io.ReadAll(answer.Body)
			if err != nil || answer.StatusCode != 200 {
				t.Errorf("%d %v", answer.StatusCode, err)
			}
			mu.Lock()
			seen[string(text)]++
			mu.Unlock()
		})
	}
	wg.Wait()
	if len(seen) != 2 {
		t.Errorf("%d answers to two questions", len(seen))
	}
	if status := stop(); status != 0 {
		t.Errorf("it ended with %d", status)
	}
	if n := strings.Count(log.String(), "\n"); n != 32 || !strings.Contains(log.String(), `200 GET "/checks"`) {
		t.Errorf("%d lines of log: %.300s", n, log.String())
	}
}

// A question that has begun to come in when the service is stopped is still answered.
func TestStopsGracefully(t *testing.T) {
	address, stop := start(t, io.Discard)
	body, feed := io.Pipe()
	request, err := http.NewRequest("POST", address+"/sets", body)
	if err != nil {
		t.Fatal(err)
	}
	request.Header.Set("Content-Type", "application/json")
	request.Header.Set("Expect", "100-continue") // the body waits until the service begins to read it
	client := &http.Client{Transport: &http.Transport{ExpectContinueTimeout: 20 * time.Second}}
	type result struct {
		status int
		err    error
	}
	done, ended := make(chan result, 1), make(chan int, 1)
	go func() {
		answer, err := client.Do(request)
		if err != nil {
			done <- result{0, err}
			return
		}
		answer.Body.Close()
		done <- result{answer.StatusCode, nil}
	}()
	text := quillmoor.JSON()
	if _, err := feed.Write(text[:100]); err != nil {
		t.Fatal(err)
	}
	go func() { ended <- stop() }()
	for range 200 { // until nobody new is let in
		conn, err := net.Dial("tcp", strings.TrimPrefix(address, "http://"))
		if err != nil {
			break
		}
		conn.Close()
		time.Sleep(10 * time.Millisecond)
	}
	if _, err := feed.Write(text[100:]); err != nil {
		t.Fatal(err)
	}
	feed.Close()
	if r := <-done; r.err != nil || r.status != 200 {
		t.Errorf("%d %v", r.status, r.err)
	}
	if status := <-ended; status != 0 {
		t.Errorf("it ended with %d", status)
	}
}

func TestFlags(t *testing.T) {
	busy, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer busy.Close()
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"-nonsense"}, "-h explains the flags"},
		{[]string{"8080"}, `"8080" is not a flag`},
		{[]string{"-listen", "nowhere"}, "-listen wants a free host and port"},
		{[]string{"-listen", busy.Addr().String()}, "-listen wants a free host and port"},
	} {
		var out, errs bytes.Buffer
		status := run(context.Background(), c.args, &out, &errs, func(net.Addr) {})
		if status != 2 || out.Len() > 0 || strings.Count(errs.String(), "\n") != 1 || !strings.Contains(errs.String(), c.says) {
			t.Errorf("%v: status %d, %q, %q", c.args, status, out.String(), errs.String())
		}
	}
	var out, errs bytes.Buffer
	if status := run(context.Background(), []string{"-h"}, &out, &errs, nil); status != 0 || errs.Len() > 0 || !strings.Contains(out.String(), "Overhead lifting can kill.") {
		t.Errorf("-h: status %d, %q, %q", status, out.String(), errs.String())
	}
}

// The page in a real browser, where there is one: it lists the sets, draws, and draws anew where the slider stands elsewhere.
func TestPageInABrowser(t *testing.T) {
	browser, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("no chromium here")
	}
	if testing.Short() {
		t.Skip("a browser takes seconds")
	}
	var mu sync.Mutex
	var asked []url.Values
	service := newService(demo(t))
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/freebody.svg" {
			mu.Lock()
			asked = append(asked, r.URL.Query())
			mu.Unlock()
		}
		service.ServeHTTP(w, r)
	}))
	defer server.Close()
	for _, c := range []struct{ place, trim, says, title string }{
		{"#set=4+first+electric&at=0", "1.2192 m", `4 first electric, batten at 4' 0"`, "Free-body diagrams of 4 first electric at 4' 0"},
		{"#set=4+first+electric&at=1000&way=out&units=metric", "14.0208 m", "4 first electric, batten at 14.02 m", "at 14.02 m"},
		{"#set=12+chandelier&at=500&way=in", "7.8486 m", `12 chandelier, batten at 25' 9"`, "12 chandelier at 25"},
	} {
		ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
		dom, err := exec.CommandContext(ctx, browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
			"--disable-component-update", "--disable-sync", "--user-data-dir="+t.TempDir(), "--virtual-time-budget=5000", "--dump-dom", server.URL+"/"+c.place).Output()
		cancel()
		if err != nil {
			t.Fatalf("%v\n%.500s", err, dom)
		}
		text := string(dom)
		for _, want := range []string{c.says, c.title, `src="blob:`, "<option>11 moon</option>", "Quillmoor Playhouse: free body of a line set"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in the page", c.place, want)
			}
		}
		mu.Lock()
		if n := len(asked); n == 0 || !near(asked[n-1].Get("trim"), c.trim) {
			t.Errorf("%s: asked %v, want trim %s last", c.place, asked, c.trim)
		}
		mu.Unlock()
	}
}

// near tells whether two lengths in metres are the same to a micrometre.
func near(a, b string) bool {
	var x, y float64
	_, errA := fmt.Sscanf(a, "%g m", &x)
	_, errB := fmt.Sscanf(b, "%g m", &y)
	return errA == nil && errB == nil && x-y < 1e-6 && y-x < 1e-6
}
