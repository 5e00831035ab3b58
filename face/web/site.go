// Package web is the face in the browser: server-rendered pages that work on a
// phone with a wet thumb, one page per file. It asks the floors below and
// shows what they answer; it computes nothing.
package web

import (
	"context"
	"crypto/rand"
	"encoding/base64"
	"html/template"
	"net/http"
	"time"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/wording"
)

// Site is the pages and what they stand on.
type Site struct {
	Holding *holding.Holding // nil: nothing is kept, the worksheets still work
	Now     func() time.Time
	Report  func(where string, err error) // where a fault of our own is noted

	assets    assets
	templates map[string]*template.Template
	made      made
}

// New makes the site of a holding, which may be nil. Report may be nil.
func New(h *holding.Holding, now func() time.Time, report func(string, error)) *Site {
	return &Site{Holding: h, Now: now, Report: report, assets: loadAssets(), templates: loadTemplates()}
}

// Handler answers every page's address.
func (s *Site) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /assets/", s.assets.serve)
	mux.HandleFunc("GET /sw.js", s.worker)
	mux.HandleFunc("GET /offline", s.offline)
	mux.HandleFunc("GET /", s.today)
	mux.HandleFunc("GET /ground", s.ground)
	mux.HandleFunc("POST /ground", s.ground)
	mux.HandleFunc("GET /rig/marks", s.marks)
	mux.HandleFunc("GET /ground/walk", s.walk)
	mux.HandleFunc("POST /ground/walk", s.walk)
	mux.HandleFunc("GET /ground/hours", s.hours)
	mux.HandleFunc("POST /ground/hours", s.hours)
	mux.HandleFunc("GET /batches", s.batches)
	mux.HandleFunc("GET /batches/{name}", s.batch)
	mux.HandleFunc("GET /batches/{name}/carried", s.carried)
	mux.HandleFunc("GET /batches/{name}/log", s.logReading)
	mux.HandleFunc("POST /batches/{name}/log", s.logReading)
	mux.HandleFunc("GET /batches/{name}/logger", s.loggerFile)
	mux.HandleFunc("GET /batches/{name}/readings.csv", s.readingsFile)
	mux.HandleFunc("POST /batches/{name}/logger", s.loggerFile)
	mux.HandleFunc("GET /batches/{name}/bench", s.bench)
	mux.HandleFunc("POST /batches/{name}/bench", s.bench)
	mux.HandleFunc("GET /batches/{name}/allowed", s.allowed)
	mux.HandleFunc("GET /ground/allowed", s.allowed)
	mux.HandleFunc("GET /ground/question", s.question)
	mux.HandleFunc("POST /ground/question", s.question)
	mux.HandleFunc("GET /ground/stake", s.stake)
	mux.HandleFunc("GET /records/letter", s.letter)
	mux.HandleFunc("GET /records/attach", s.attach)
	mux.HandleFunc("POST /records/attach", s.attach)
	mux.HandleFunc("GET /records/attached/{hash}", s.attached)
	mux.HandleFunc("POST /who", s.who)
	mux.HandleFunc("GET /school", s.school)
	mux.HandleFunc("GET /school/pail", s.playSchool)
	mux.HandleFunc("GET /handover", s.handover)
	mux.HandleFunc("GET /run", s.runs)
	mux.HandleFunc("GET /run/{name}", s.run)
	mux.HandleFunc("POST /run/{name}", s.run)
	mux.HandleFunc("GET /run/{name}/release", s.release)
	mux.HandleFunc("POST /run/{name}/release", s.release)
	mux.HandleFunc("GET /begin", s.firstSetup)
	mux.HandleFunc("POST /begin", s.firstSetup)
	mux.HandleFunc("GET /setup", s.setup)
	mux.HandleFunc("GET /setup/{table}", s.setupTable)
	mux.HandleFunc("POST /setup/{table}", s.setupTable)
	mux.HandleFunc("GET /lots", s.lots)
	mux.HandleFunc("GET /lots/{name}", s.lot)
	mux.HandleFunc("GET /cards", s.mishaps)
	mux.HandleFunc("GET /cards/{id}", s.mishap)
	mux.HandleFunc("GET /write", s.writings)
	mux.HandleFunc("GET /write/{name}", s.write)
	mux.HandleFunc("POST /write/{name}", s.write)
	mux.HandleFunc("GET /plan", s.plan)
	mux.HandleFunc("GET /plan/wanted", s.wantedFile)
	mux.HandleFunc("POST /plan", s.plan)
	mux.HandleFunc("GET /rig", s.rig)
	mux.HandleFunc("GET /rig/pump-off", s.pumpOff)
	mux.HandleFunc("POST /rig/pump-off", s.pumpOff)
	mux.HandleFunc("GET /rig/meter", s.meter)
	mux.HandleFunc("POST /rig/meter", s.meter)
	mux.HandleFunc("GET /rig/calibrate", s.calibrate)
	mux.HandleFunc("POST /rig/calibrate", s.calibrate)
	mux.HandleFunc("GET /rig/jug", s.jug)
	mux.HandleFunc("POST /rig/jug", s.jug)
	mux.HandleFunc("GET /records", s.records)
	mux.HandleFunc("GET /records/counts", s.counts)
	mux.HandleFunc("GET /records/compost", s.compost)
	mux.HandleFunc("GET /recipes", s.recipes)
	mux.HandleFunc("GET /recipes/{name}", s.recipe)
	mux.HandleFunc("GET /recipes/{name}/dose-chart.pdf", s.doseChart)
	mux.HandleFunc("GET /records/{kind}/{name...}", s.paper)
	mux.HandleFunc("GET /records/export", s.exportEntries)
	mux.HandleFunc("POST /records", s.takeIn)
	mux.HandleFunc("GET /plan.ics", s.calendar)
	mux.HandleFunc("GET /plan.pdf", s.jobSheets)
	mux.HandleFunc("GET /worksheets", s.worksheets)
	mux.HandleFunc("GET /worksheets/{name}", s.worksheet)
	mux.HandleFunc("POST /worksheets/{name}", s.worksheet)
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

// defaults is the reader where nothing was chosen on this device: the
// holding's, else the browser's language and US units.
func (s *Site) defaults(r *http.Request) wording.Reader {
	if file := s.held(); file != nil {
		return file.Holding.Reader
	}
	return wording.Reader{Language: browserLanguage(r), Units: wording.US}
}

// page starts a page for whoever asks.
func (s *Site) page(w http.ResponseWriter, r *http.Request, place string) *page {
	if s.Holding != nil {
		if err := s.Holding.Refresh(r.Context()); err != nil {
			s.log("refresh", err)
		}
	}
	return &page{visitor: s.visitor(w, r), Site: s, Place: place, Who: s.whoAsked(r)}
}

// now is the time on the wall of the holding.
func (s *Site) now() time.Time {
	if s.Holding == nil {
		return s.Now()
	}
	return s.Now().In(s.Holding.Zone(time.Local))
}

// twin is the forecast of a batch from what is written down about it.
func (s *Site) twin(ctx context.Context, name string, now time.Time) (*holding.Twin, error) {
	return s.Holding.Twin(ctx, name, now)
}

// reason says why something could not be done, in the visitor's language.
func (s *Site) reason(p *page, err error) string {
	if faults := fault.Of(err); len(faults) > 0 {
		return faults[0].What.For(p.Reader)
	}
	return err.Error()
}

// nothingHere answers an address that no page has.
func (s *Site) nothingHere(w http.ResponseWriter, r *http.Request) {
	v := s.visitor(w, r)
	p := &page{visitor: v}
	p.Heading = p.Say("web.nothing.title")
	p.Title = p.Heading
	s.show(w, http.StatusNotFound, "nothing", p)
}

// offline is shown in place of a page that was never seen.
func (s *Site) offline(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "today")
	p.Heading = p.Say("web.offline.title")
	p.Title = p.Heading
	s.show(w, http.StatusOK, "offline", p)
}
