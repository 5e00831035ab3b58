package feed

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// document is an answer as it is kept.
type document struct {
	Text         []byte    `json:"text"`
	ETag         string    `json:"etag,omitempty"`
	LastModified string    `json:"last_modified,omitempty"`
	FetchedAt    time.Time `json:"fetched_at"`
	ExpiresAt    time.Time `json:"expires_at"`
}

// place is the file of an address. Its name gives away nothing of the address.
func (f *Feed) place(address string) string {
	sum := sha256.Sum256([]byte(address))
	return filepath.Join(f.Folder, "sky-"+hex.EncodeToString(sum[:8])+".json")
}

// kept is what is here of an address; what cannot be read counts as nothing.
func (f *Feed) kept(address string) document {
	var d document
	text, err := os.ReadFile(f.place(address))
	if err != nil || json.Unmarshal(text, &d) != nil {
		return document{}
	}
	return d
}

// keep writes an answer whole beside the old one, then puts it in its place.
func (f *Feed) keep(address string, d document) error {
	text, err := json.Marshal(d)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(f.Folder, 0o700); err != nil {
		return err
	}
	path := f.place(address)
	if err := os.WriteFile(path+".new", text, 0o600); err != nil {
		return err
	}
	return os.Rename(path+".new", path)
}

// expiry is until when an answer may be used without asking again: max-age of
// Cache-Control before Expires (RFC 9111, 4.2.1), else an hour.
func expiry(h http.Header, now time.Time) time.Time {
	keep := usualKeep
	if at, err := http.ParseTime(h.Get("Expires")); err == nil {
		keep = at.Sub(now)
	}
	for _, directive := range strings.Split(h.Get("Cache-Control"), ",") {
		if age, is := strings.CutPrefix(strings.TrimSpace(strings.ToLower(directive)), "max-age="); is {
			if seconds, err := strconv.Atoi(age); err == nil {
				keep = time.Duration(seconds) * time.Second
			}
		}
	}
	return now.Add(max(keep, shortestKeep))
}
