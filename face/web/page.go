package web

import (
	"bytes"
	"fmt"
	"html/template"
	"net/http"
	"strings"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/wording"
)

// page is what every page has; the body of a page lies in View.
type page struct {
	visitor
	Site    *Site
	Title   string           // begins with the thing
	Heading string           // the h1
	Under   string           // one line under it
	Back    string           // address of the way back, if there is one
	BackTo  string           // in words
	Place   string           // which of the five places is current
	Task    bool             // done with the hands: no bar of places
	Docked  bool             // the main action sits over the bar
	Needs   int              // how many batches need somebody
	Who     []jobfile.Person // to be asked who holds the phone; none where it is known
	View    any
	styles  strings.Builder
	classes map[string]string
}

// Lang and Look are for the root element.
func (p *page) Lang() string { return string(p.Language) }

// LookChoice is the look, if one was chosen.
func (p *page) LookChoice() string { return p.look }

// Path is the page's own address.
func (p *page) Path() string { return p.path }

// Nonce lets the page's own style block in.
func (p *page) Nonce() string { return p.nonce }

// Say puts a sentence into the visitor's language. Places come in pairs of
// name and value.
func (p *page) Say(key string, pairs ...any) string {
	places := wording.Places{}
	for i := 0; i+1 < len(pairs); i += 2 {
		places[pairs[i].(string)] = pairs[i+1]
	}
	return wording.Say(key, places).For(p.Reader)
}

// Text puts a text into the visitor's language.
func (p *page) Text(t wording.Text) string { return t.For(p.Reader) }

// Place gives a drawing's words their position: a class of the page's own
// style block, since the content policy lets no style attribute in.
func (p *page) At(style string) string {
	if class, known := p.classes[style]; known {
		return class
	}
	if p.classes == nil {
		p.classes = map[string]string{}
	}
	class := fmt.Sprintf("at%d", len(p.classes)+1)
	p.classes[style] = class
	fmt.Fprintf(&p.styles, ".%s{%s}", class, style)
	return class
}

// Styles is the page's own style block; it is asked for after the body.
func (p *page) Styles() template.CSS { return template.CSS(p.styles.String()) } //nolint:gosec // made here from numbers

// Asset is an asset's address.
func (p *page) Asset(address string) string { return p.Site.assets.link(address) }

// Engine is the address of the engine for the browser; "" where the program was
// built without one.
func (p *page) Engine() string {
	if _, built := p.Site.assets[engineAddress]; !built {
		return ""
	}
	return p.Asset(engineAddress)
}

// EnginePage is the script that the engine runs under.
func (p *page) EnginePage() string { return p.Asset("/assets/engine/wasm_exec.js") }

// Here is the page's own address with one choice changed.
func (p *page) Here(name, value string) string { return p.path + "?" + name + "=" + value }

// NextLook is the look that the moon button switches to: night and back.
func (p *page) NextLook() string {
	if p.look == "night" {
		return "light"
	}
	return "night"
}

// places are the five places in the order of the bar.
var places = []struct{ Name, Address string }{
	{"today", "/"}, {"ground", "/ground"}, {"batches", "/batches"}, {"rig", "/rig"}, {"records", "/records"},
}

// Ahead is by how many seconds the clock of the house is ahead of the machine's:
// 0 but in the demo, whose readings the phone must date by the demo's hour.
func (p *page) Ahead() int {
	if p.Site.Now == nil {
		return 0
	}
	return int(time.Until(p.Site.Now()).Round(time.Second).Seconds())
}

// Places lists them for the bar.
func (p *page) Places() []struct{ Name, Address string } { return places }

// functions are what templates may call beside the page's own methods.
var functions = template.FuncMap{
	"icon": icon,
	"list": func(items ...any) []any { return items },
}

// loadTemplates parses every page with the frame around it, once at start.
func loadTemplates() map[string]*template.Template {
	frame := template.Must(template.New("frame").Funcs(functions).Option("missingkey=error").ParseFS(files, "templates/frame.html", "templates/parts.html"))
	all := map[string]*template.Template{}
	for _, name := range names("templates") {
		base := strings.TrimSuffix(strings.TrimPrefix(name, "templates/"), ".html")
		if base == "frame" || base == "parts" {
			continue
		}
		all[base] = template.Must(template.Must(frame.Clone()).ParseFS(files, name))
	}
	return all
}

// show writes a page. The body is made first, so that the positions it asked
// for stand in the head's style block.
func (s *Site) show(w http.ResponseWriter, status int, name string, p *page) {
	p.Site = s
	var body, whole bytes.Buffer
	t := s.templates[name]
	if err := t.ExecuteTemplate(&body, "body", p); err != nil {
		s.broken(w, err)
		return
	}
	framed := struct {
		*page
		Body template.HTML
	}{p, template.HTML(body.String())} //nolint:gosec // made by the template just above
	if err := t.ExecuteTemplate(&whole, "frame", framed); err != nil {
		s.broken(w, err)
		return
	}
	h := w.Header()
	h.Set("Content-Type", "text/html; charset=utf-8")
	h.Set("Cache-Control", "no-cache")
	h.Set("Content-Security-Policy", policy(p.nonce))
	content := whole.Bytes()
	if takesGzip(p.request) {
		h.Set("Content-Encoding", "gzip")
		content = squeeze(content, "text/html")
	}
	h.Add("Vary", "Accept-Encoding, Cookie")
	w.WriteHeader(status)
	_, _ = w.Write(content)
}

// policy lets in what the house serves itself, the page's own style block,
// and the engine; nothing else.
func policy(nonce string) string {
	return "default-src 'self'; style-src 'self' 'nonce-" + nonce + "'; script-src 'self' 'wasm-unsafe-eval'; img-src 'self' data:; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
}

func (s *Site) broken(w http.ResponseWriter, err error) {
	s.log("page", err)
	http.Error(w, "The page could not be made; nothing was changed.", http.StatusInternalServerError)
}
