package main

import (
	"context"
	"encoding/json"
	"html"
	"net/http"
	"net/http/httptest"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/steelyard/examples/quillmoor"
)

// dumped is a page as it is in a browser after its script has run, and what the browser complained of.
func dumped(t *testing.T, address string, flags ...string) (dom, complaints string) {
	t.Helper()
	browser, err := exec.LookPath("chromium")
	if err != nil || testing.Short() {
		t.Skip("no chromium on the PATH, or no time for it")
	}
	// The time of the page runs as fast as it can, but stands while it waits for an answer.
	ctx, cancel := context.WithTimeout(t.Context(), 90*time.Second) // for a test that fails, and does not hang
	defer cancel()
	run := exec.CommandContext(ctx, browser, append([]string{
		"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--user-data-dir=" + t.TempDir(),
		"--enable-logging=stderr", "--virtual-time-budget=120000", "--dump-dom", address,
	}, flags...)...)
	var errs strings.Builder
	run.Stderr = &errs
	out, err := run.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, errs.String())
	}
	for line := range strings.Lines(errs.String()) {
		if strings.Contains(line, "CONSOLE") {
			complaints += line
		}
	}
	return string(out), complaints
}

// described is what the picture in the page tells.
var described = regexp.MustCompile(`(?s)<svg[^>]*>.*<desc[^>]*>(.*?)</desc>.*</svg>`)

// The page draws what its address asks for, and another trim is another picture.
func TestPageDraws(t *testing.T) {
	server := httptest.NewServer(opened(t, nil).handler())
	t.Cleanup(server.Close)
	for _, c := range []struct{ query, picture, shows string }{
		{"?set=4+first+electric&trim=12ft", `4 first electric: double purchase, batten at 12' 0", at rest`, `>12' 0"</output>`},
		{"?set=11+moon&trim=99m&way=out&units=metric", `11 moon: double purchase, batten at 14.021 m, flown slowly out`, `At 99m the set cannot be; it flies from 1.219 m to 14.021 m.`},
		{"?set=sun&way=up&trim=x", `1 house curtain`, `No set is called "sun".</li><li>way is "up"; want one of still, out, in.</li><li>"x" is no trim`},
	} {
		t.Run(c.query, func(t *testing.T) {
			t.Parallel() // a browser takes a second or two to start
			dom, complaints := dumped(t, server.URL+"/"+c.query)
			picture := described.FindStringSubmatch(dom)
			if picture == nil || !strings.Contains(html.UnescapeString(picture[1]), c.picture) || !strings.Contains(dom, c.shows) {
				t.Errorf("no picture of %q, or no %q, in\n%s", c.picture, c.shows, dom)
			}
			if complaints != "" {
				t.Error(complaints)
			}
		})
	}
}

// drive is a script in the page that uses it as a reader would, and writes down what it then shows.
const drive = `"use strict";
const seen = {};
const state = () => ({
	words: the("words").textContent, says: the("says").textContent, spoken: the("trim").getAttribute("aria-valuetext"), status: the("status").textContent,
	drawn: document.querySelectorAll("#picture svg").length, hidden: document.querySelector("figure").hidden,
	house: the("house").textContent, sets: the("set").options.length, limits: the("limits").textContent,
	errors: the("errors").textContent, address: location.search, demo: !the("demo").hidden, disabled: the("trim").disabled,
	window: innerWidth, wide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
});
const wait = ms => new Promise(done => setTimeout(done, ms));
async function until(name, ready) {
	let more = 5; // turns after it is ready: were there a later answer, it would be here
	for (let i = 0; i < 1000 && more > 0; i++) {
		if (ready()) more--;
		await wait(100);
		await fetch("page.css"); // the time of the page runs ahead of the service's, but not here
	}
	seen[name] = state();
	if (!ready()) throw name;
}
const has = (id, text) => () => the(id).textContent.includes(text);
function slide(value) {
	the("trim").value = value;
	the("trim").dispatchEvent(new Event("input", { bubbles: true }));
}
function open(name, content) {
	const files = new DataTransfer();
	files.items.add(new File([content], name, { type: "application/json" }));
	the("file").files = files.files;
	the("file").dispatchEvent(new Event("change", { bubbles: true }));
}
async function go() {
	await until("begin", has("words", "batten at"));
	the("set").value = "4 first electric";
	the("set").dispatchEvent(new Event("change", { bubbles: true }));
	await until("set", has("words", "4 first electric"));
	slide(144);
	await until("slid", has("words", "12' 0\""));
	for (let inches = 145; inches <= 200; inches++) slide(inches);
	await until("slid fast", has("words", "16' 8\""));
	await fetch("release");
	await until("late", has("words", "16' 8\""));
	the("high").click();
	await until("high", has("words", "28' 0\""));
	slide(the("trim").max);
	await until("highest", has("words", "46' 0\""));
	document.querySelector("[value=out]").click();
	await until("out", has("words", "flown slowly out"));
	document.querySelector("[value=metric]").click();
	await until("metric", has("words", " m, flown"));
	const house = await (await fetch("other.json")).text();
	open("other.json", house);
	await until("other", has("house", "Other"));
	document.querySelector("[value=us]").click();
	slide(the("trim").min);
	await until("lowest", has("words", "4' 0 3/8\""));
	open("wrong.json", house.replace('"192 lb"', '"-92 lb"'));
	await until("wrong", has("errors", "wrong.json"));
	open("nothing.json", "");
	await until("nothing", has("errors", "nothing.json"));
	open("large.json", new Uint8Array(largest + 1));
	await until("large", has("errors", "large.json"));
	open("largest.json", new Uint8Array(largest).fill(32));
	await until("largest", has("errors", "largest.json"));
	the("demo").click();
	await until("demo", () => document.querySelectorAll("#picture svg").length === 1);
}
go().catch(e => { seen.failed = String(e); }).finally(() => {
	const out = document.createElement("pre");
	out.id = "seen";
	out.textContent = JSON.stringify(seen);
	document.body.append(out);
});
`

// narrow shows the page as wide as a telephone: the browser makes no window as narrow as that. It hands on what the script saw.
const narrow = `<!doctype html><title>narrow</title><iframe id="frame" src="/" width="390" height="844" style="border: 0"></iframe><script>
const look = async () => {
	const seen = frame.contentDocument?.getElementById("seen");
	if (seen) return document.body.append(document.importNode(seen, true));
	await fetch("/page.css");
	setTimeout(look, 100);
};
look();
</script>`

// driven is the service with that script in its page, and a house to be posted.
func driven(s *service, other string) http.Handler {
	own, release := s.handler(), make(chan struct{}, 1)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch r.URL.Path {
		case "/":
			w = &appended{w}
		case "/drive.js":
			w.Header().Set("Content-Type", "text/javascript")
			w.Write([]byte(drive))
			return
		case "/narrow.html":
			w.Header().Set("Content-Type", "text/html")
			w.Write([]byte(narrow))
			return
		case "/other.json":
			w.Header().Set("Content-Type", jsonType)
			w.Write([]byte(other))
			return
		case "/freebody.svg":
			if r.URL.Query().Get("trim") == "150 in" {
				select { // an answer that comes later than those to later questions
				case <-release:
				case <-r.Context().Done():
				}
			}
		case "/release":
			release <- struct{}{}
			return
		}
		own.ServeHTTP(w, r)
	})
}

type appended struct{ http.ResponseWriter }

func (a *appended) Write(b []byte) (int, error) {
	a.Header().Set("Content-Security-Policy", strings.Replace(a.Header().Get("Content-Security-Policy"), "frame-ancestors 'none'", "frame-ancestors 'self'", 1))
	const script = `<script src="drive.js" defer></script></body>`
	_, err := a.ResponseWriter.Write([]byte(strings.Replace(string(b), "</body>", script, 1)))
	return len(b), err
}

// Slider, buttons, choices and files of the page do what they say; what is shown is always an answer to what is chosen.
func TestPageIsUsed(t *testing.T) {
	other := strings.NewReplacer("Quillmoor Playhouse", "Other <b>House</b>", `"92 lb"`, `"192 lb"`, `"made_off": "4 ft"`, `"made_off": "4'-0 3/8\""`, "1 house curtain", "1 <i>curtain</i>").Replace(string(quillmoor.JSON()))
	for path, window := range map[string]int{"/": 1280, "/narrow.html": 390} {
		t.Run(strconv.Itoa(window), func(t *testing.T) {
			t.Parallel()
			server := httptest.NewServer(driven(opened(t, nil), other))
			defer server.Close()
			dom, complaints := dumped(t, server.URL+path, "--window-size=1280,1000")
			_, text, _ := strings.Cut(dom, `<pre id="seen">`)
			text, _, _ = strings.Cut(text, "</pre>")
			var seen map[string]json.RawMessage
			if err := json.Unmarshal([]byte(html.UnescapeString(text)), &seen); err != nil {
				t.Fatalf("%v: the script did not end; %s\n%s", err, complaints, dom)
			}
			if failed := seen["failed"]; failed != nil {
				t.Errorf("waited in vain for %s", failed)
			}
			type state struct {
				Words, Says, Spoken, Status, House, Limits, Errors, Address string
				Drawn, Sets, Window, Wide                                   int
				Hidden, Demo, Disabled                                      bool
			}
			for _, c := range []struct {
				name  string
				holds func(s state) bool
			}{
				{"begin", func(s state) bool {
					return s.House == "Quillmoor Playhouse, the invented demo house" && s.Sets == 15 && s.Says == `24' 0"` && !s.Demo
				}},
				{"set", func(s state) bool {
					return strings.Contains(s.Words, `4 first electric: double purchase, batten at 24' 0"`) && strings.HasPrefix(s.Limits, "No check of this set exceeds")
				}},
				{"slid", func(s state) bool {
					return s.Says == `12' 0"` && s.Spoken == s.Says && s.Status == `Drawn: 4 first electric, batten at 12' 0".` &&
						s.Address == "?set=4+first+electric&trim=144+in&way=still&units=us"
				}},
				{"slid fast", func(s state) bool { return s.Says == `16' 8"` && strings.Contains(s.Words, `batten at 16' 8"`) }},
				{"late", func(s state) bool { return s.Says == `16' 8"` }}, // an answer to an earlier question is not shown any more
				{"high", func(s state) bool { return s.Says == `28' 0"` }},
				{"highest", func(s state) bool { return s.Says == `46' 0"` }}, // by hand: see TestReachByHand
				{"out", func(s state) bool { return strings.Contains(s.Address, "&way=out") }},
				{"metric", func(s state) bool { return s.Says == "14.021 m" && strings.Contains(s.Words, "kN") }},
				{"other", func(s state) bool {
					return s.House == "Other <b>House</b>, from other.json" && s.Address == "" && s.Demo && strings.HasPrefix(s.Words, "1 <i>curtain</i>: single")
				}},
				{"lowest", func(s state) bool { return s.Says == `4' 0 3/8"` }}, // between two steps of the slider, and the end of its reach
				{"wrong", func(s state) bool {
					return strings.HasPrefix(s.Errors, "wrong.json cannot be used:sets[10].hang[0].mass") && s.House == "" && s.Sets == 0 && s.Disabled && s.Demo
				}},
				{"nothing", func(s state) bool {
					return strings.HasSuffix(s.Errors, "It is empty, or cannot be read; want the JSON of one house.")
				}},
				{"large", func(s state) bool {
					return strings.HasSuffix(s.Errors, "larger than 8 MiB; want the JSON of one house.")
				}},
				{"largest", func(s state) bool { return s.Errors != "" && !strings.Contains(s.Errors, "8388608 bytes") && s.Demo }},
				{"demo", func(s state) bool {
					return s.House == "Quillmoor Playhouse, the invented demo house" && s.Sets == 15 && !s.Demo && !s.Disabled
				}},
			} {
				var s state
				if err := json.Unmarshal(seen[c.name], &s); err != nil {
					t.Errorf("%s: %v", c.name, err)
					continue
				}
				if !c.holds(s) {
					t.Errorf("%s: the page shows %+v", c.name, s)
				}
				if (s.Errors == "") != (s.Drawn == 1 && !s.Hidden && s.Words != "") {
					t.Errorf("%s: neither a picture without errors nor errors without a picture: %+v", c.name, s)
				}
				if s.Drawn == 1 && !strings.Contains(s.Words, "batten at "+s.Says+",") {
					t.Errorf("%s: the picture is of another trim: %+v", c.name, s)
				}
				if s.Wide > 0 || s.Window != window {
					t.Errorf("%s: the page is %d wider than its window, of %d", c.name, s.Wide, s.Window)
				}
			}
			for line := range strings.Lines(complaints) {
				if !strings.Contains(line, "Failed to load resource: the server responded with a status of 4") { // as it should
					t.Error(line)
				}
			}
		})
	}
}
