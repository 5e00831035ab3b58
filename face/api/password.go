package api

import (
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"html/template"
	"net/http"
	"strings"
	"sync"
	"time"

	"github.com/alexedwards/argon2id"

	"aerosteep/wording"
)

const (
	loginPath     = "/login"
	sessionCookie = "aerosteep-session"
	sessionLasts  = 30 * 24 * time.Hour
)

// oneAtATime holds the check of passwords to one: each takes 64 MiB, and
// whoever guesses must stand in line.
var oneAtATime sync.Mutex

func matches(password, hash string) bool {
	oneAtATime.Lock()
	defer oneAtATime.Unlock()
	same, err := argon2id.ComparePasswordAndHash(password, hash)
	return err == nil && same
}

// known tells whether a request carries a session, or the password itself as
// programs send it.
func (d *Door) known(r *http.Request) bool {
	if cookie, err := r.Cookie(sessionCookie); err == nil && d.inSession(cookie.Value) {
		return true
	}
	_, password, given := r.BasicAuth()
	if !given {
		return false
	}
	if key := tokenHash("basic:" + password); d.inSessionHash(key) {
		return true // checked a moment ago: programs send it with every request
	} else if matches(password, d.Password) {
		d.begin(key, time.Minute)
		return true
	}
	return false
}

func tokenHash(token string) string {
	sum := sha256.Sum256([]byte(token))
	return hex.EncodeToString(sum[:])
}

func (d *Door) inSession(token string) bool { return d.inSessionHash(tokenHash(token)) }

func (d *Door) inSessionHash(hash string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	until, known := d.sessions[hash]
	if known && time.Now().After(until) {
		delete(d.sessions, hash)
		return false
	}
	return known
}

func (d *Door) begin(hash string, lasts time.Duration) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.sessions[hash] = time.Now().Add(lasts)
}

// askPassword sends a person to the page that asks for it, and a program away.
func (d *Door) askPassword(w http.ResponseWriter, r *http.Request) {
	if r.Method == http.MethodGet && strings.Contains(r.Header.Get("Accept"), "text/html") {
		http.Redirect(w, r, loginPath, http.StatusSeeOther)
		return
	}
	w.Header().Set("WWW-Authenticate", `Basic realm="aerosteep", charset="UTF-8"`)
	d.api.refuse(w, r, http.StatusUnauthorized, said("password", "", "api.password"))
}

// login shows the page that asks for the password, and begins a session for
// whoever knows it.
func (d *Door) login(w http.ResponseWriter, r *http.Request) {
	reader := d.api.reader(r, d.api.spoken())
	if r.Method != http.MethodPost {
		d.showLogin(w, reader, false)
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, 4096)
	if !matches(r.PostFormValue("password"), d.Password) {
		d.showLogin(w, reader, true)
		return
	}
	token := rand.Text()
	d.begin(tokenHash(token), sessionLasts)
	http.SetCookie(w, &http.Cookie{Name: sessionCookie, Value: token, Path: "/", MaxAge: int(sessionLasts.Seconds()),
		HttpOnly: true, Secure: d.Secure, SameSite: http.SameSiteLaxMode})
	http.Redirect(w, r, "/", http.StatusSeeOther)
}

// loginPage stands alone: before it nobody gets anything else.
var loginPage = template.Must(template.New("login").Option("missingkey=error").Parse(`<!doctype html>
<html lang="{{.Language}}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>{{.Title}}</title></head>
<body><main>
<h1>{{.Title}}</h1>
{{if .Wrong}}<p role="alert" id="wrong">{{.Wrong}}</p>{{end}}
<form method="post" action="/login">
<p><label for="password">{{.Label}}</label></p>
<p><input id="password" name="password" type="password" autocomplete="current-password" required autofocus{{if .Wrong}} aria-invalid="true" aria-describedby="wrong"{{end}}></p>
<p><button>{{.Enter}}</button></p>
</form>
</main></body></html>
`))

func (d *Door) showLogin(w http.ResponseWriter, r wording.Reader, wrong bool) {
	data := map[string]string{
		"Language": string(r.Language), "Title": wording.Say("api.login.title").For(r), "Wrong": "",
		"Label": wording.Say("api.login.label").For(r), "Enter": wording.Say("api.login.enter").For(r),
	}
	status := http.StatusOK
	if wrong {
		data["Wrong"], status = wording.Say("api.login.wrong").For(r), http.StatusForbidden
	}
	h := w.Header()
	h.Set("Content-Type", "text/html; charset=utf-8")
	h.Set("Content-Security-Policy", "default-src 'self'; frame-ancestors 'none'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "same-origin")
	h.Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	if err := loginPage.Execute(w, data); err != nil {
		d.api.report("login", err)
	}
}
