package web

import (
	"net/http"
	"strings"

	"aerosteep/wording"
)

// visitor is whoever looks at a page: their language and units, how the page
// should look, and the mark that lets this response's own style block in.
type visitor struct {
	wording.Reader
	look  string // "", "light", "dark" or "night"; "" follows the system
	nonce string
	path  string

	request *http.Request
}

// visitor reads the choices that a browser remembers; an address with ?lang=
// or ?units= makes one.
func (s *Site) visitor(w http.ResponseWriter, r *http.Request) visitor {
	v := visitor{Reader: s.defaults(r), nonce: s.nonce(), path: r.URL.Path, request: r}
	if chosen := choice(w, r, "lang", "en", "es"); chosen != "" {
		v.Language = wording.Language(chosen)
	}
	if chosen := choice(w, r, "units", "us", "metric"); chosen != "" {
		v.Units = wording.Units(chosen)
	}
	v.look = choice(w, r, "look", "light", "dark", "night")
	return v
}

// choice is a value from a fixed list: from the address (and then kept), else
// what was kept before.
func choice(w http.ResponseWriter, r *http.Request, name string, allowed ...string) string {
	for _, a := range allowed {
		if r.URL.Query().Get(name) == a {
			http.SetCookie(w, &http.Cookie{Name: name, Value: a, Path: "/", MaxAge: 400 * 86400, SameSite: http.SameSiteLaxMode})
			return a
		}
	}
	kept, err := r.Cookie(name)
	if err != nil {
		return ""
	}
	for _, a := range allowed {
		if kept.Value == a {
			return a
		}
	}
	return ""
}

// browserLanguage is what the browser asks for, if we speak it.
func browserLanguage(r *http.Request) wording.Language {
	for _, part := range strings.Split(r.Header.Get("Accept-Language"), ",") {
		tag, _, _ := strings.Cut(strings.TrimSpace(part), ";")
		switch base, _, _ := strings.Cut(strings.ToLower(tag), "-"); base {
		case "es":
			return wording.Spanish
		case "en":
			return wording.English
		}
	}
	return wording.English
}
