package web

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"net/http"
	"sort"
	"strings"
)

// worker serves the offline worker from the root, so that it minds every page.
// What it must keep stands before it: with that it is another text as soon as
// any part changes, and the browser fetches it anew.
func (s *Site) worker(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/javascript; charset=utf-8")
	w.Header().Set("Cache-Control", "no-cache")
	parts, _ := json.Marshal(s.assets.parts())
	sum := sha256.Sum256(parts)
	for _, text := range []string{
		"const parts = " + string(parts) + ";\n",
		"const mark = \"" + hex.EncodeToString(sum[:6]) + "\";\n",
		string(s.assets["/assets/js/sw.js"].content),
	} {
		_, _ = w.Write([]byte(text))
	}
}

// parts are the addresses of what every page is made of: with the mark as the
// pages ask for them, and the scripts also without, as they import each other.
// The engine is not among them: it comes when a worksheet is first opened.
func (a assets) parts() []string {
	var all []string
	for address := range a {
		switch {
		case strings.HasPrefix(address, "/assets/engine/"), strings.HasSuffix(address, "/sw.js"):
			continue
		case strings.HasSuffix(address, ".woff2"):
			all = append(all, address) // the style sheet asks for it without
		case strings.HasSuffix(address, ".txt"):
		case strings.HasSuffix(address, ".js"):
			all = append(all, address+"?"+a[address].mark, address)
		default:
			all = append(all, a.link(address))
		}
	}
	sort.Strings(all)
	return all
}
