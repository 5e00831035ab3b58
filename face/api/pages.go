package api

import (
	"net/http"
	"strings"
)

// refusalsOf says what the pages refuse as everything else here does: as an
// object, unless a person's browser asked and the page has words of its own.
func (a *API) refusalsOf(pages http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		heard := &heardRefusal{ResponseWriter: w, person: strings.Contains(r.Header.Get("Accept"), "text/html")}
		pages.ServeHTTP(heard, r)
		if heard.status == 0 {
			return
		}
		for _, name := range []string{"Content-Encoding", "Content-Length", "Vary"} {
			w.Header().Del(name) // they were the page's
		}
		a.refuse(w, r, heard.status, refusalOfPage(heard.status, r, w.Header().Get("Allow")))
	})
}

func refusalOfPage(status int, r *http.Request, allowed string) error {
	switch status {
	case http.StatusMethodNotAllowed:
		return wrongMethod(r.Method, allowed)
	case http.StatusRequestEntityTooLarge:
		return said("body", "", "api.too-long")
	}
	return noSuch("address", r.URL.Path, placesOfPages)
}

// placesOfPages are the addresses that every holding has.
var placesOfPages = []string{"/", "/ground", "/batches", "/plan", "/rig", "/records", "/worksheets"}

// heardRefusal holds back a refusal, so that it can be said in our form.
type heardRefusal struct {
	http.ResponseWriter
	person bool
	status int // of the refusal that was held back; 0: the answer went through
}

func (h *heardRefusal) WriteHeader(status int) {
	page := h.person && strings.HasPrefix(h.Header().Get("Content-Type"), "text/html")
	refused := status == http.StatusNotFound || status == http.StatusMethodNotAllowed || status == http.StatusRequestEntityTooLarge
	if refused && !page {
		h.status = status
		return
	}
	h.ResponseWriter.WriteHeader(status)
}

func (h *heardRefusal) Write(text []byte) (int, error) {
	if h.status != 0 {
		return len(text), nil
	}
	return h.ResponseWriter.Write(text)
}

// Unwrap lets the server reach what lies below.
func (h *heardRefusal) Unwrap() http.ResponseWriter { return h.ResponseWriter }
