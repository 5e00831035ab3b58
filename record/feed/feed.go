// Package feed fetches a weather forecast from an address that the user named,
// and from none other: a file of one of the forms that science/weather reads.
//
//	text, state, err := (&feed.Feed{Folder: folder}).Get(ctx, "https://…")
//
// What was fetched is kept. It is asked for again only once it has expired, with
// the validators of RFC 9110 (ETag, Last-Modified), so that a service is not
// asked for what has not changed. Without a network the kept forecast is
// answered, and State says so and how old it is.
package feed

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Feed keeps forecasts in a folder, by address.
type Feed struct {
	Folder string
	Client *http.Client     // nil: one with a time limit
	Now    func() time.Time // nil: the clock
	Agent  string           // who asks, as services want to know; "" is aerosteep
}

// State is how fresh an answer is.
type State struct {
	FetchedAt time.Time // when the service was last asked with success
	ExpiresAt time.Time
	Asked     bool  // the network was asked this time
	Changed   bool  // the text is another than the one kept before
	Offline   error // why the service could not be asked; nil where it could
}

const (
	longestAnswer = 8 << 20 // bytes
	patience      = 20 * time.Second
	usualKeep     = time.Hour        // where the service says nothing
	shortestKeep  = 10 * time.Minute // however short it says
)

// Get is the forecast at an address: the kept one while it has not expired, else
// a fresh one; without a network the kept one, however old.
//
// Errors: *fault.Fault for an address that is none; any other where nothing is
// kept and nothing could be fetched.
func (f *Feed) Get(ctx context.Context, address string) ([]byte, State, error) {
	if err := Check(address); err != nil {
		return nil, State{}, err
	}
	kept := f.kept(address)
	if kept.Text != nil && f.now().Before(kept.ExpiresAt) {
		return kept.Text, State{FetchedAt: kept.FetchedAt, ExpiresAt: kept.ExpiresAt}, nil
	}
	fresh, err := f.ask(ctx, address, kept)
	if err != nil {
		if kept.Text == nil {
			return nil, State{Asked: true, Offline: err}, fmt.Errorf("%s: %w", address, err)
		}
		return kept.Text, State{FetchedAt: kept.FetchedAt, ExpiresAt: kept.ExpiresAt, Asked: true, Offline: err}, nil
	}
	changed := string(fresh.Text) != string(kept.Text)
	state := State{FetchedAt: fresh.FetchedAt, ExpiresAt: fresh.ExpiresAt, Asked: true, Changed: changed}
	return fresh.Text, state, f.keep(address, fresh)
}

// Check tells whether an address is one that can be asked.
func Check(address string) error {
	u, err := url.Parse(address)
	if err != nil || u.Scheme != "http" && u.Scheme != "https" || u.Host == "" || u.User != nil {
		return fault.New("weather", address, wording.Say("feed.address"), wording.Say("feed.address.allowed"), wording.Text{})
	}
	return nil
}

// IsAddress tells an address from the name of a file.
func IsAddress(name string) bool {
	lower := strings.ToLower(name)
	return strings.HasPrefix(lower, "http://") || strings.HasPrefix(lower, "https://")
}

func (f *Feed) now() time.Time {
	if f.Now == nil {
		return time.Now()
	}
	return f.Now()
}

// ask fetches an address; what is kept is confirmed where the service says that
// it has not changed.
func (f *Feed) ask(ctx context.Context, address string, kept document) (document, error) {
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
	if err != nil {
		return document{}, err
	}
	f.introduce(request, kept)
	response, err := f.client().Do(request)
	if err != nil {
		return document{}, err
	}
	defer response.Body.Close()
	now := f.now()
	switch response.StatusCode {
	case http.StatusNotModified:
		kept.FetchedAt, kept.ExpiresAt = now, expiry(response.Header, now)
		return kept, nil
	case http.StatusOK:
	default:
		return document{}, fmt.Errorf("the service answers %s", response.Status)
	}
	text, err := whole(response)
	return document{
		Text: text, ETag: response.Header.Get("ETag"), LastModified: response.Header.Get("Last-Modified"),
		FetchedAt: now, ExpiresAt: expiry(response.Header, now),
	}, err
}

// client follows a redirect only within what was named.
func (f *Feed) client() *http.Client {
	client := http.Client{}
	if f.Client != nil {
		client = *f.Client
	}
	client.CheckRedirect = sameHost
	return &client
}

// mostRedirects is how often an answer may send on to another one.
const mostRedirects = 5

// sameHost refuses a redirect to a host that nobody named, and one from HTTPS
// down to HTTP.
func sameHost(next *http.Request, before []*http.Request) error {
	named := before[0].URL
	switch {
	case len(before) > mostRedirects:
		return fmt.Errorf("more than %d redirects", mostRedirects)
	case named.Scheme == "https" && next.URL.Scheme != "https":
		return fmt.Errorf("it sends on from https to %s", next.URL.Scheme)
	case next.URL.Host != named.Host && (next.URL.Hostname() != named.Hostname() || named.Port() != "" || next.URL.Port() != ""):
		return fmt.Errorf("it sends on to %s, which nobody named", next.URL.Host)
	}
	return nil
}

// introduce says who asks, what can be read, and what is here already.
func (f *Feed) introduce(r *http.Request, kept document) {
	agent := f.Agent
	if agent == "" {
		agent = "aerosteep"
	}
	r.Header.Set("User-Agent", agent)
	r.Header.Set("Accept", "application/geo+json, application/json, text/csv, text/plain;q=0.5")
	if kept.Text == nil {
		return
	}
	for name, value := range map[string]string{"If-None-Match": kept.ETag, "If-Modified-Since": kept.LastModified} {
		if value != "" {
			r.Header.Set(name, value)
		}
	}
}

// whole reads an answer to its end: one that is cut short or without end is an
// error, not a shorter forecast.
func whole(response *http.Response) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(response.Body, longestAnswer+1))
	if err != nil {
		return nil, err
	}
	if len(text) > longestAnswer {
		return nil, fmt.Errorf("the answer is longer than %d bytes", longestAnswer)
	}
	if len(text) == 0 {
		return nil, fmt.Errorf("the answer is empty")
	}
	return text, nil
}
