package handlers

import (
	"bytes"
	"encoding/json"
	"net/http"

	"github.com/a-h/templ"

	"strokeledger/static"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// wantsJSON reports whether a script asks: it asks for JSON, which a browser that
// loads a page never does.
func wantsJSON(r *http.Request) bool { return r.Header.Get("Accept") == "application/json" }

// savedHole tells a script that a hole is stored.
type savedHole struct {
	Next    string `json:"next"` // address to go on to
	Version int    `json:"version"`
	Score   string `json:"score"` // as the strip of holes shows it
}

// scriptAnswer tells a script why nothing was stored, or how a line reads.
type scriptAnswer struct {
	Error   string `json:"error,omitempty"`
	HTML    string `json:"html,omitempty"`  // what stands between the line and the pad
	Field   string `json:"field,omitempty"` // name of the input at fault
	Version *int   `json:"version,omitempty"`
}

func answerJSON(w http.ResponseWriter, status int, answer any) error {
	data, err := json.Marshal(answer)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.WriteHeader(status)
	_, err = w.Write(data)
	return err
}

// rendered is part of a page as text.
func rendered(r *http.Request, part templ.Component) (string, error) {
	var b bytes.Buffer
	err := part.Render(r.Context(), &b)
	return b.String(), err
}

// worker serves the service worker. Its address never changes, so browsers must ask
// for it again each time.
func (s *server) worker(w http.ResponseWriter, _ *http.Request) error {
	w.Header().Set("Cache-Control", "no-cache")
	w.Header().Set("Content-Type", static.ContentType("worker.js"))
	_, err := w.Write(static.Worker())
	return err
}

type manifestIcon struct {
	Src   string `json:"src"`
	Sizes string `json:"sizes"`
	Type  string `json:"type"`
}

// manifest lets a phone put the app on its home screen.
func (s *server) manifest(w http.ResponseWriter, _ *http.Request) error {
	data, err := json.Marshal(map[string]any{
		"name": "Strokeledger", "short_name": "Strokeledger", "start_url": paths.NewRound, "scope": paths.Front, "display": "standalone",
		"background_color": "#fcfdfb", "theme_color": "#141d33",
		"icons": []manifestIcon{
			{static.URL("icon.svg"), "any", "image/svg+xml"},
			{static.URL("icon-192.png"), "192x192", "image/png"},
			{static.URL("icon-512.png"), "512x512", "image/png"},
		},
	})
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/manifest+json")
	_, err = w.Write(data)
	return err
}

// offline serves the page that a phone shows without a connection; it is the same
// for everybody.
func (s *server) offline(w http.ResponseWriter, r *http.Request) error {
	return show(w, r, http.StatusOK, site.NewOfflinePage().View())
}
