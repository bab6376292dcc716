package main

import (
	"embed"
	"net/http"
)

// The page asks the service as any other program would, and is the same for every house.
//
//go:embed page.html page.css page.js
var page embed.FS

// part serves a file of the page.
func part(name, kind string) http.Handler {
	text, err := page.ReadFile(name)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if err != nil {
			fail(w, err)
			return
		}
		w.Header().Set("Content-Type", kind+"; charset=utf-8")
		w.Write(text)
	})
}
