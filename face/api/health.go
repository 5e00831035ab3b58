package api

import (
	"fmt"
	"net/http"
	"sort"
	"strings"
	"sync"
	"time"

	"aerosteep/record/journal"
)

// healthy answers that the program runs.
func (a *API) healthy(w http.ResponseWriter, _ *http.Request) {
	a.write(w, http.StatusOK, map[string]string{"status": "ok"})
}

// ready answers whether entries can be read and stored.
func (a *API) ready(w http.ResponseWriter, r *http.Request) {
	_, _, err := a.holding.Journal().Head(r.Context())
	if err == nil {
		err = a.holding.Journal().Writable()
	}
	if err != nil {
		a.refuse(w, r, http.StatusServiceUnavailable, err)
		return
	}
	a.write(w, http.StatusOK, map[string]string{"status": "ready"})
}

// counts is what the server has done since its start.
type counts struct {
	mu       sync.Mutex
	started  time.Time
	answers  map[answered]int
	seconds  map[string]float64 // by address
	outcomes map[journal.Outcome]int
}

type answered struct {
	address string
	status  int
}

func newCounts(now time.Time) *counts {
	return &counts{started: now, answers: map[answered]int{}, seconds: map[string]float64{}, outcomes: map[journal.Outcome]int{}}
}

func (c *counts) answered(address string, status int, took time.Duration) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.answers[answered{address, status}]++
	c.seconds[address] += took.Seconds()
}

func (c *counts) storedEntries(results []journal.Result) {
	c.mu.Lock()
	defer c.mu.Unlock()
	for _, r := range results {
		c.outcomes[r.Outcome]++
	}
}

// metrics answers in the OpenMetrics text form (version 1.0.0).
func (a *API) metrics(w http.ResponseWriter, r *http.Request) {
	size, err := a.holding.Journal().Size(r.Context())
	if err != nil {
		a.refuse(w, r, http.StatusServiceUnavailable, err)
		return
	}
	w.Header().Set("Content-Type", "application/openmetrics-text; version=1.0.0; charset=utf-8")
	fmt.Fprint(w, a.counts.text(size))
}

func (c *counts) text(entries int64) string {
	c.mu.Lock()
	defer c.mu.Unlock()
	var b strings.Builder
	b.WriteString("# TYPE aerosteep_start_time_seconds gauge\n# UNIT aerosteep_start_time_seconds seconds\n")
	fmt.Fprintf(&b, "aerosteep_start_time_seconds %d\n", c.started.Unix())
	b.WriteString("# TYPE aerosteep_journal_entries gauge\n")
	fmt.Fprintf(&b, "aerosteep_journal_entries %d\n", entries)
	b.WriteString("# TYPE aerosteep_entries_received counter\n")
	for _, o := range []journal.Outcome{journal.Stored, journal.AlreadyStored, journal.Refused} {
		fmt.Fprintf(&b, "aerosteep_entries_received_total{result=%q} %d\n", o, c.outcomes[o])
	}
	b.WriteString("# TYPE aerosteep_requests counter\n")
	for _, key := range c.sorted() {
		fmt.Fprintf(&b, "aerosteep_requests_total{address=%q,status=\"%d\"} %d\n", key.address, key.status, c.answers[key])
	}
	b.WriteString("# TYPE aerosteep_request_seconds counter\n# UNIT aerosteep_request_seconds seconds\n")
	for _, address := range c.addresses() {
		fmt.Fprintf(&b, "aerosteep_request_seconds_total{address=%q} %g\n", address, c.seconds[address])
	}
	b.WriteString("# EOF\n")
	return b.String()
}

func (c *counts) sorted() []answered {
	keys := make([]answered, 0, len(c.answers))
	for key := range c.answers {
		keys = append(keys, key)
	}
	sort.Slice(keys, func(i, j int) bool {
		if keys[i].address != keys[j].address {
			return keys[i].address < keys[j].address
		}
		return keys[i].status < keys[j].status
	})
	return keys
}

func (c *counts) addresses() []string {
	names := make([]string, 0, len(c.seconds))
	for name := range c.seconds {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}
