package web

import (
	"crypto/rand"
	"net/http"
	"slices"
	"strings"

	"aerosteep/job/jobfile"
)

// initials are who holds the phone: asked once a day and remembered on the
// device.
func (s *Site) initials(w http.ResponseWriter, r *http.Request) string {
	by := strings.TrimSpace(r.PostForm.Get("by"))
	if by == "" {
		return kept(r, "by")
	}
	if len(by) > 12 {
		by = by[:12]
	}
	rememberBy(w, by)
	return by
}

// rememberBy keeps the initials for a day.
func rememberBy(w http.ResponseWriter, by string) {
	http.SetCookie(w, &http.Cookie{Name: "by", Value: by, Path: "/", MaxAge: 86400, SameSite: http.SameSiteLaxMode})
}

// askedOn are the pages on which somebody writes something down: there the phone
// asks who holds it.
var askedOn = []string{"/batches/", "/run"}

// whoAsked are the people of the set-up, where nobody said today who holds the
// phone.
func (s *Site) whoAsked(r *http.Request) []jobfile.Person {
	path := r.URL.Path
	if r.Method != http.MethodGet || kept(r, "by") != "" || path != "/" && !slices.ContainsFunc(askedOn, func(p string) bool { return strings.HasPrefix(path, p) }) {
		return nil
	}
	file := s.held()
	if file == nil {
		return nil
	}
	return file.People
}

// who remembers who holds the phone, and speaks their language.
func (s *Site) who(w http.ResponseWriter, r *http.Request) {
	r.Body = http.MaxBytesReader(w, r.Body, 1<<14)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return
	}
	by := s.initials(w, r)
	if file := s.held(); file != nil {
		for _, person := range file.People {
			if person.Initials == by && person.Language != "" {
				http.SetCookie(w, &http.Cookie{Name: "lang", Value: string(person.Language), Path: "/", MaxAge: 400 * 86400, SameSite: http.SameSiteLaxMode})
			}
		}
	}
	http.Redirect(w, r, ownAddress(r.PostForm.Get("back")), http.StatusSeeOther)
}

// ownAddress is an address of this site, and Today in the place of any other.
func ownAddress(address string) string {
	if !strings.HasPrefix(address, "/") || strings.HasPrefix(address, "//") || strings.ContainsAny(address, "\\\r\n") {
		return "/"
	}
	return address
}

// device is the name that a browser made for itself at its first visit.
func (s *Site) device(w http.ResponseWriter, r *http.Request) string {
	if name := kept(r, "device"); strings.HasPrefix(name, "phone-") && len(name) == 10 {
		return name
	}
	var b [4]byte
	_, _ = rand.Read(b[:])
	for i := range b {
		b[i] = 'a' + b[i]%26
	}
	name := "phone-" + string(b[:])
	http.SetCookie(w, &http.Cookie{Name: "device", Value: name, Path: "/", MaxAge: 400 * 86400, SameSite: http.SameSiteLaxMode})
	return name
}

func kept(r *http.Request, name string) string {
	if cookie, err := r.Cookie(name); err == nil {
		return cookie.Value
	}
	return ""
}
