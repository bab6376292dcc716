package main

import (
	"bytes"
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase/lineset"
)

// The page is the file as it stands, whatever is asked and whatever was posted before: what comes from a house reaches it only through
// its script, which puts it in as text.
func TestPageHoldsNoData(t *testing.T) {
	s := opened(t, nil)
	const evil = "<script>alert(1)</script>"
	answer(s, post("/sets", strings.Replace(string(quillmoor.JSON()), "Quillmoor Playhouse", evil, 1)))
	for _, name := range []string{"page.html", "page.css", "page.js"} {
		file, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		path := "/" + name
		if name == "page.html" {
			path = "/"
		}
		if w := answer(s, httptest.NewRequest("GET", path+"?set="+strings.NewReplacer("<", "%3C", ">", "%3E").Replace(evil), nil)); !bytes.Equal(w.Body.Bytes(), file) {
			t.Errorf("%s is not as the file: %s", path, w.Body)
		}
	}
	script, err := page.ReadFile("page.js")
	if err != nil {
		t.Fatal(err)
	}
	for _, way := range []string{"innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "eval(", "new Function"} {
		if bytes.Contains(script, []byte(way)) {
			t.Errorf("page.js uses %s: a name could become more than text", way)
		}
	}
}

// What stands twice is the same: the caution, and how large a house may be.
func TestPageAgreesWithTheService(t *testing.T) {
	for name, want := range map[string]string{"page.html": "<p>" + lineset.Caution + "</p>", "page.js": "const largest = 8 * 1024 * 1024;"} {
		text, err := page.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(text), want) {
			t.Errorf("%s has no %s", name, want)
		}
	}
	if usual().body != 8*1024*1024 {
		t.Errorf("the service takes %d bytes", usual().body)
	}
}

// Nothing is asked of anybody else.
func TestPageAsksNobodyElse(t *testing.T) {
	for _, name := range []string{"page.html", "page.css", "page.js"} {
		text, err := page.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, abroad := range []string{"http:", "https:", "//cdn", "url(", "@import"} {
			if strings.Contains(string(text), abroad) {
				t.Errorf("%s has %s", name, abroad)
			}
		}
	}
}
