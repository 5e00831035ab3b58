// Package web is the face in the browser: server-rendered pages that work on a
// phone with a wet thumb, one page per file. It asks the floors below and
// shows what they answer; it computes nothing.
package web

import (
	"crypto/rand"
	"encoding/base64"
	"html/template"
	"net/http"
	"time"

	"aerosteep/wording"
)

// Site is the pages and what they stand on.
type Site struct {
	Now    func() time.Time
	Report func(where string, err error) // where a fault of our own is noted

	assets    assets
	templates map[string]*template.Template
}

// New makes the site. Report may be nil.
func New(now func() time.Time, report func(string, error)) *Site {
	return &Site{Now: now, Report: report, assets: loadAssets(), templates: loadTemplates()}
}

// Handler answers every page's address.
func (s *Site) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /assets/", s.assets.serve)
	mux.HandleFunc("GET /worksheets", s.worksheets)
	mux.HandleFunc("GET /worksheets/{name}", s.worksheet)
	mux.HandleFunc("POST /worksheets/{name}", s.worksheet)
	mux.HandleFunc("/", s.nothingHere)
	return guarded(mux)
}

// guarded sets what every answer must carry.
func guarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("X-Frame-Options", "DENY")
		h.Set("Content-Security-Policy", policy("none"))
		next.ServeHTTP(w, r)
	})
}

func (s *Site) log(where string, err error) {
	if s.Report != nil {
		s.Report(where, err)
	}
}

// nonce is a mark that only this response knows.
func (s *Site) nonce() string {
	var b [12]byte
	_, _ = rand.Read(b[:])
	return base64.RawURLEncoding.EncodeToString(b[:])
}

// defaults is the reader where nothing was chosen on this device.
func (s *Site) defaults(r *http.Request) wording.Reader {
	return wording.Reader{Language: browserLanguage(r), Units: wording.US}
}

// nothingHere answers an address that no page has.
func (s *Site) nothingHere(w http.ResponseWriter, r *http.Request) {
	v := s.visitor(w, r)
	p := &page{visitor: v}
	p.Heading = p.Say("web.nothing.title")
	p.Title = p.Heading
	s.show(w, http.StatusNotFound, "nothing", p)
}
