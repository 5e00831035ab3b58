package web

import (
	"crypto/rand"
	"net/http"
	"strings"
)

// initials are who holds the phone: typed once and remembered on the device.
func (s *Site) initials(w http.ResponseWriter, r *http.Request) string {
	by := strings.TrimSpace(r.PostForm.Get("by"))
	if by == "" {
		return kept(r, "by")
	}
	if len(by) > 12 {
		by = by[:12]
	}
	http.SetCookie(w, &http.Cookie{Name: "by", Value: by, Path: "/", MaxAge: 86400, SameSite: http.SameSiteLaxMode})
	return by
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
