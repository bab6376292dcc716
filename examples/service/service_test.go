package main

import (
	"encoding/json"
	"io"
	"log/slog"
	"math"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"sync"
	"testing"

	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// opened is the service with the bounds changed.
func opened(t *testing.T, change func(*bounds)) *service {
	t.Helper()
	b := usual()
	if change != nil {
		change(&b)
	}
	s, err := open(b, slog.New(slog.DiscardHandler))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// post makes a request with a house.
func post(path, house string) *http.Request {
	r := httptest.NewRequest(http.MethodPost, path, strings.NewReader(house))
	r.Header.Set("Content-Type", "application/json")
	return r
}

func with(r *http.Request, header, value string) *http.Request {
	r.Header.Set(header, value)
	return r
}

func answer(s *service, r *http.Request) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	s.handler().ServeHTTP(w, r)
	return w
}

func TestStatus(t *testing.T) {
	get := func(path string) *http.Request { return httptest.NewRequest(http.MethodGet, path, nil) }
	method := func(method, path string) *http.Request { return httptest.NewRequest(method, path, nil) }
	house := string(quillmoor.JSON())
	edit := func(old, now string) string {
		if !strings.Contains(house, old) {
			t.Fatalf("house.json has no %s", old)
		}
		return strings.Replace(house, old, now, 1)
	}
	// What the batten carries, by hand: π/4 × (1.9² − 1.61²) in² of pipe, 504 in long, of 0.2833 lb/in³ make 114.2 lb; with 9 lb of
	// fittings and the moon's 92 lb, 215.2 lb.
	const moon = "/freebody.svg?set=11+moon"
	for _, c := range []struct {
		name   string
		r      *http.Request
		status int
		kind   string // of the content
		says   string // part of the answer
		reason string
	}{
		{"page", get("/"), 200, "text/html; charset=utf-8", "<title>Free body of a line set</title>", "who opens it in a browser"},
		{"page with a choice", get("/?set=11+moon&trim=12ft"), 200, "text/html; charset=utf-8", "<h1>", "the query is for the page's own script"},
		{"style", get("/page.css"), 200, "text/css; charset=utf-8", "body {", "nosniff wants the right type"},
		{"script", get("/page.js"), 200, "text/javascript; charset=utf-8", `"use strict"`, "nosniff wants the right type"},
		{"sets", get("/sets"), 200, jsonType, `"house": "Quillmoor Playhouse"`, "the demo house when nothing is posted"},
		{"sets of a house", post("/sets", edit("Quillmoor Playhouse", "Other House")), 200, jsonType, `"house": "Other House"`, "the one posted"},
		{"checks", get("/checks"), 200, jsonType, `"name": "14 sky cloth"`, "all sets"},
		{"checks of one set", get("/checks?set=11+moon"), 200, jsonType, `"exceeds": true`, "a limit that is exceeded is an answer, not an error"},
		{"checks of a house", post("/checks", house), 200, jsonType, `"caution": "Overhead lifting can kill.`, "the one posted"},
		{"JSON with its charset", with(post("/checks", house), "Content-Type", "application/json; charset=UTF-8"), 200, jsonType, `"checks"`, "the same thing said at length"},
		{"picture", get(moon + "&trim=12ft"), 200, "image/svg+xml", "batten at 12' 0&quot;, at rest, rope lock shut. The batten carries 215 lbf", "the defaults are still and us"},
		{"picture, flown", get(moon + "&trim=3.6m&way=out&units=metric"), 200, "image/svg+xml", "batten at 3.6 m, flown slowly out", "both ways"},
		{"picture, flown in", get(moon + "&trim=3.6m&way=in"), 200, "image/svg+xml", "flown slowly in", "both ways"},
		{"picture of a house", post(moon+"&trim=12ft", edit(`"92 lb"`, `"192 lb"`)), 200, "image/svg+xml", "The batten carries 315 lbf", "the one posted"},
		{"head", method(http.MethodHead, "/checks"), 200, jsonType, "", "as GET, and net/http leaves the body out"},

		{"not JSON at all", post("/checks", "<house/>"), 400, jsonType, "errors", "it cannot be read"},
		{"nothing in it", post("/checks", ""), 400, jsonType, "errors", "a house that got lost is not answered with another one"},
		{"a bare number", post("/sets", edit(`"92 lb"`, `92`)), 400, jsonType, `"field": "sets[10].hang[0].mass"`, "a quantity has a unit"},
		{"unknown field", post("/sets", edit(`"low_trim"`, `"lo_trim"`)), 400, jsonType, `perhaps \"low_trim\"`, "a slip of the pen"},
		{"negative mass", post("/sets", edit(`"92 lb"`, `"-92 lb"`)), 422, jsonType, `"of": "\"moon, 9 ft across\" of \"11 moon\""`, "it can be read, and cannot be computed"},
		{"no sets", post("/sets", `{"name":"x"}`), 422, jsonType, "want at least one set", "it can be read, and cannot be computed"},
		{"no trim", get(moon), 400, jsonType, "trim: is missing; want the height of the batten", "nothing is assumed"},
		{"no set", get("/freebody.svg?trim=12ft"), 400, jsonType, "set: is missing", "nothing is assumed"},
		{"trim without a unit", get(moon + "&trim=12"), 400, jsonType, `"value": "\"12\""`, "feet or metres?"},
		{"trim of no size", get(moon + "&trim=NaN"), 400, jsonType, `"field": "trim"`, "no NaN goes in"},
		{"no such way", get(moon + "&trim=12ft&way=up"), 400, jsonType, `\"up\" is not known; want still, out or in`, "the words are the trade's"},
		{"no such units", get(moon + "&trim=12ft&units=yards"), 400, jsonType, `want \"us\" or \"metric\"`, "two systems"},
		{"no such parameter", get("/checks?sets=11+moon"), 400, jsonType, `"value": "\"sets\""`, "else all sets would be answered for one"},
		{"parameter that is no matter here", get("/sets?set=11+moon"), 400, jsonType, "want no parameters", "else it would seem to matter"},
		{"parameter twice", get("/checks?set=11+moon&set=9+empty"), 400, jsonType, "set: stands twice", "which of them?"},
		{"broken query", get("/checks?set=%zz"), 400, jsonType, "query", "it cannot be read"},
		{"everything wrong", get("/freebody.svg?way=up&units=yards&x=1"), 400, jsonType, "trim: is missing", "all problems together"},
		{"trim not reached", get(moon + "&trim=99ft"), 422, jsonType, "want a trim that the set reaches, from 4' 0", "it can be read, and cannot be computed"},
		{"no such set", get("/checks?set=11+sun"), 404, jsonType, `\"11 sun\" is not known; want one of \"1 house curtain\"`, "nothing is there"},
		{"no such set, to be drawn", get("/freebody.svg?set=&trim=12ft"), 404, jsonType, `"field": "set"`, "nothing is there"},
		{"no such address", get("/check"), 404, jsonType, "one of /, /sets, /checks, /freebody.svg", "nothing is there"},
		{"address below the page", get("/page.js/"), 404, jsonType, `"field": "path"`, "nothing is there"},
		{"delete", method(http.MethodDelete, "/checks"), 405, jsonType, "one of GET, HEAD, POST", "it keeps nothing"},
		{"post to the page", post("/", house), 405, jsonType, "one of GET, HEAD", "the page asks nobody's house"},
		{"no type", with(post("/checks", house), "Content-Type", ""), 415, jsonType, "Content-Type: is missing", "it must be said"},
		{"form", with(post("/checks", house), "Content-Type", "application/x-www-form-urlencoded"), 415, jsonType, "want application/json", "what curl sends when it is not told"},
		{"type that is none", with(post("/checks", house), "Content-Type", ";;"), 415, jsonType, "want application/json", "it cannot be read"},
		{"other characters", with(post("/checks", house), "Content-Type", "application/json; charset=latin1"), 415, jsonType, "UTF-8", "JSON is UTF-8"},
		{"packed", with(post("/checks", house), "Content-Encoding", "gzip"), 415, jsonType, `\"gzip\" is of the wrong type`, "it is not unpacked"},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := answer(opened(t, nil), c.r)
			if w.Code != c.status || w.Header().Get("Content-Type") != c.kind || !strings.Contains(w.Body.String(), c.says) {
				t.Fatalf("%s: status %d, %s; want %d, %s, with %s (%s):\n%.2000s", c.r.URL, w.Code, w.Header().Get("Content-Type"), c.status, c.kind, c.says, c.reason, w.Body)
			}
			if c.status >= 400 {
				faults(t, w.Body.Bytes())
			}
			if allow := w.Header().Get("Allow"); (allow != "") != (c.status == http.StatusMethodNotAllowed) {
				t.Errorf("Allow is %q", allow)
			}
			for header, want := range map[string]string{"Cache-Control": "no-store", "X-Content-Type-Options": "nosniff", "Content-Security-Policy": "default-src 'none'; script-src 'self'"} {
				if !strings.HasPrefix(w.Header().Get(header), want) {
					t.Errorf("%s is %q; want %s", header, w.Header().Get(header), want)
				}
			}
		})
	}
}

// faults reads an answer that is an error: each says something.
func faults(t *testing.T, body []byte) []fault {
	t.Helper()
	var all struct{ Errors []fault }
	if err := json.Unmarshal(body, &all); err != nil || len(all.Errors) == 0 {
		t.Fatalf("no errors in %s: %v", body, err)
	}
	for _, f := range all.Errors {
		if f.Error == "" {
			t.Errorf("an error that says nothing in %s", body)
		}
	}
	return all.Errors
}

// Many faults are listed, and then counted: a house can be wrong in as many places as it has fields.
func TestManyFaults(t *testing.T) {
	house, err := quillmoor.SummerPlay()
	if err != nil {
		t.Fatal(err)
	}
	for len(house.Sets) < 100 {
		house.Sets = append(house.Sets, lineset.Set{Name: house.Sets[0].Name, Like: "single", Low: 5, High: 10, Balance: lineset.Even})
	}
	text, err := json.Marshal(house)
	if err != nil {
		t.Fatal(err)
	}
	w := answer(opened(t, nil), post("/checks", string(text)))
	all := faults(t, w.Body.Bytes())
	if w.Code != 422 || len(all) != mostFaults+1 || all[mostFaults].Error != "and 35 more" { // 85 sets of a name that is taken
		t.Errorf("status %d, %d faults, the last of them %q", w.Code, len(all), all[len(all)-1].Error)
	}
}

// The trims that are reached, by hand. Double: the stops leave the arbor 53 − 22 − 10 = 21 ft, the batten flies twice that, from the 4 ft
// at which it is made off to 46 ft. Single: 53 − 1.5 − 8 = 43.5 ft, to 47.5 ft.
func TestReachByHand(t *testing.T) {
	var all struct {
		Sets []struct {
			Name, Purchase  string
			Lowest, Highest units.Length
		}
	}
	if err := json.Unmarshal(answer(opened(t, nil), httptest.NewRequest("GET", "/sets", nil)).Body.Bytes(), &all); err != nil {
		t.Fatal(err)
	}
	highest := map[string]float64{"single": 47.5, "double": 46}
	for _, s := range all.Sets {
		if math.Abs(s.Lowest.In(units.Foot)-4) > 1e-9 || math.Abs(s.Highest.In(units.Foot)-highest[s.Purchase]) > 1e-9 {
			t.Errorf("%s, %s purchase, flies from %v to %v", s.Name, s.Purchase, s.Lowest, s.Highest)
		}
	}
	if len(all.Sets) != 15 {
		t.Errorf("%d sets", len(all.Sets))
	}
}

// Whoever asks gets the answer to their own house, many at a time.
func TestManyAtOnce(t *testing.T) {
	server := httptest.NewServer(opened(t, func(b *bounds) { b.atOnce = 2 }).handler())
	defer server.Close()
	var all sync.WaitGroup
	for i := range 24 {
		all.Go(func() {
			name := "house " + string(rune('a'+i))
			house := strings.Replace(string(quillmoor.JSON()), "Quillmoor Playhouse", name, 1)
			at := server.URL + "/freebody.svg?" + url.Values{"set": {"11 moon"}, "trim": {"12ft"}}.Encode()
			ask := func() (*http.Response, error) { return http.Post(at, "application/json", strings.NewReader(house)) }
			if i%3 == 0 {
				name, ask = "Quillmoor Playhouse", func() (*http.Response, error) { return http.Get(at) }
			}
			r, err := ask()
			if err != nil {
				t.Error(err)
				return
			}
			defer r.Body.Close()
			text, err := io.ReadAll(r.Body)
			if err != nil || r.StatusCode != 200 || !strings.Contains(string(text), `<title id="picture-title">`+name+`</title>`) {
				t.Errorf("%s: status %d, %v: %.200s", name, r.StatusCode, err, text)
			}
		})
	}
	all.Wait()
}
