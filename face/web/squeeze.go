package web

import (
	"bytes"
	"compress/gzip"
	"net/http"
	"strings"
)

// takesGzip tells whether the browser reads gzip.
func takesGzip(r *http.Request) bool {
	return r != nil && strings.Contains(r.Header.Get("Accept-Encoding"), "gzip")
}

// squeeze makes text small for a slow line; nil where the kind is small
// already.
func squeeze(content []byte, kind string) []byte {
	if !strings.HasPrefix(kind, "text/") && !strings.Contains(kind, "svg") && !strings.Contains(kind, "wasm") && !strings.Contains(kind, "json") {
		return nil
	}
	var b bytes.Buffer
	w, _ := gzip.NewWriterLevel(&b, gzip.BestCompression)
	_, _ = w.Write(content)
	_ = w.Close()
	return b.Bytes()
}
