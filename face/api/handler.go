package api

import (
	"net/http"
	"strings"
	"time"

	"aerosteep/record/holding"
	"aerosteep/wording"
)

// API answers the addresses under /api/v1 and what a machine asks a server.
type API struct {
	holding *holding.Holding
	now     func() time.Time
	zone    *time.Location                // where the holding names none
	report  func(where string, err error) // where a fault of our own is noted
	counts  *counts
}

// New makes the API on an open holding. The report may be nil.
func New(h *holding.Holding, now func() time.Time, zone *time.Location, report func(string, error)) *API {
	if report == nil {
		report = func(string, error) {}
	}
	return &API{holding: h, now: now, zone: zone, report: report, counts: newCounts(now())}
}

// longestBody is how much a client may send.
const longestBody = 8 << 20

// answer is what handles one method of one address.
type answer func(w http.ResponseWriter, r *http.Request)

// Handler answers the API's addresses, and nothing else.
func (a *API) Handler() http.Handler {
	mux := http.NewServeMux()
	for address, methods := range a.addresses() {
		mux.HandleFunc(address, a.byMethod(address, methods))
	}
	mux.HandleFunc("/api/", func(w http.ResponseWriter, r *http.Request) {
		a.refuse(w, r, http.StatusNotFound, noSuch("address", r.URL.Path, addressNames(a.addresses())))
	})
	return mux
}

// addresses are all addresses with what each method does there.
func (a *API) addresses() map[string]map[string]answer {
	return map[string]map[string]answer{
		"/api/v1/openapi.json":            {http.MethodGet: a.openAPI},
		"/api/v1/calc":                    {http.MethodGet: a.sheets},
		"/api/v1/calc/{name}":             {http.MethodPost: a.calc},
		"/api/v1/entries":                 {http.MethodGet: a.entries, http.MethodPost: a.store},
		"/api/v1/papers":                  {http.MethodPost: a.keepPaper},
		"/api/v1/papers/{sha256}":         {http.MethodGet: a.paper},
		"/api/v1/plan":                    {http.MethodPost: a.plan},
		"/api/v1/batches/{name}/forecast": {http.MethodGet: a.forecast},
		"/api/v1/batches":                 {http.MethodGet: a.batches},
		"/healthz":                        {http.MethodGet: a.healthy},
		"/readyz":                         {http.MethodGet: a.ready},
		"/metrics":                        {http.MethodGet: a.metrics},
	}
}

func addressNames(addresses map[string]map[string]answer) []string {
	var names []string
	for address := range addresses {
		names = append(names, address)
	}
	return names
}

// byMethod chooses by method, counts the answer, and limits what is read.
func (a *API) byMethod(address string, methods map[string]answer) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		began := time.Now()
		seen := &seenStatus{ResponseWriter: w, status: http.StatusOK}
		defer func() { a.counts.answered(address, seen.status, time.Since(began)) }()
		w.Header().Set("X-Content-Type-Options", "nosniff")
		w.Header().Set("Cache-Control", "no-store")
		r.Body = http.MaxBytesReader(seen, r.Body, longestBody)
		method := r.Method
		if method == http.MethodHead {
			method = http.MethodGet
		}
		do, known := methods[method]
		if !known {
			allowed := allowedMethods(methods)
			w.Header().Set("Allow", allowed)
			a.refuse(seen, r, http.StatusMethodNotAllowed, wrongMethod(r.Method, allowed))
			return
		}
		do(seen, r)
	}
}

func allowedMethods(methods map[string]answer) string {
	var names []string
	for _, m := range []string{http.MethodGet, http.MethodPost} {
		if methods[m] != nil {
			names = append(names, m)
		}
	}
	return strings.Join(names, ", ")
}

// reader is whoever reads the answer: ?lang= and ?units= of the address, else
// what the verb without flags would take.
func (a *API) reader(r *http.Request, fallback wording.Reader) wording.Reader {
	switch lang := wording.Language(r.URL.Query().Get("lang")); lang {
	case wording.English, wording.Spanish:
		fallback.Language = lang
	}
	switch units := wording.Units(r.URL.Query().Get("units")); units {
	case wording.US, wording.Metric:
		fallback.Units = units
	}
	return fallback
}

// typed is a reader to whom nothing was said: English, US customary.
var typed = wording.Reader{Language: wording.English, Units: wording.US}

// seenStatus remembers the status that was answered.
type seenStatus struct {
	http.ResponseWriter
	status int
}

func (s *seenStatus) WriteHeader(status int) {
	s.status = status
	s.ResponseWriter.WriteHeader(status)
}

// Unwrap lets the server reach what lies below.
func (s *seenStatus) Unwrap() http.ResponseWriter { return s.ResponseWriter }
