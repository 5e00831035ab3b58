package api

import (
	"net"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"sync"
	"time"
)

// Door decides who comes in: by which name the server was called, from which
// site a change was sent, and with which password where one is set.
type Door struct {
	Address  string   // host:port that the server listens on
	Names    []string // further hosts that it answers to: those of its certificate
	Password string   // argon2id hash; "" lets everybody in
	Secure   bool     // HTTPS: the session's cookie is never sent without

	api      *API
	mu       sync.Mutex
	sessions map[string]time.Time // by hash of the cookie, until when
}

// Guard lets in what may come in, and answers everything else itself.
func (d *Door) Guard(a *API, next http.Handler) http.Handler {
	d.api, d.sessions = a, map[string]time.Time{}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch {
		case !d.ourName(r.Host):
			a.refuse(w, r, http.StatusForbidden, said("host", r.Host, "api.foreign-host"))
		case changes(r.Method) && fromElsewhere(r, d.Secure):
			a.refuse(w, r, http.StatusForbidden, said("origin", r.Header.Get("Origin"), "api.cross-site"))
		case d.Password != "" && r.URL.Path == loginPath:
			d.login(w, r)
		case d.Password != "" && r.URL.Path != "/healthz" && !d.known(r):
			d.askPassword(w, r)
		default:
			next.ServeHTTP(w, r)
		}
	})
}

// ourName tells whether a Host header names this server: the address it
// listens on, localhost, or a name of its certificate. Another name that leads
// here is how a foreign page would reach a server on this machine. A server on
// all addresses answers to each of them, but to no foreign name.
func (d *Door) ourName(host string) bool {
	own, ownPort, err := net.SplitHostPort(d.Address)
	if err != nil {
		return false
	}
	name, port := host, d.usualPort()
	if h, p, err := net.SplitHostPort(host); err == nil {
		name, port = h, p
	}
	name = strings.ToLower(strings.Trim(name, "[]"))
	if port != ownPort {
		return false
	}
	ip := net.ParseIP(name)
	switch {
	case name == strings.ToLower(own), name == "localhost", slices.Contains(d.Names, name):
		return true
	case ip == nil:
		return false
	}
	return ip.IsLoopback() || everyAddress(own)
}

func (d *Door) usualPort() string {
	if d.Secure {
		return "443"
	}
	return "80"
}

// everyAddress tells whether a host means all addresses of the machine.
func everyAddress(host string) bool {
	ip := net.ParseIP(host)
	return host == "" || ip != nil && ip.IsUnspecified()
}

func changes(method string) bool {
	return method != http.MethodGet && method != http.MethodHead && method != http.MethodOptions
}

// fromElsewhere tells whether a page of another origin sent the request, port
// included. Programs send neither header and pass.
func fromElsewhere(r *http.Request, secure bool) bool {
	if r.Header.Get("Sec-Fetch-Site") == "cross-site" {
		return true
	}
	given := r.Header.Get("Origin")
	if given == "" {
		return false
	}
	origin, err := url.Parse(given)
	scheme := "http"
	if secure {
		scheme = "https"
	}
	return err != nil || origin.Scheme != scheme || !strings.EqualFold(origin.Host, r.Host)
}
