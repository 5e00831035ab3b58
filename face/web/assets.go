package web

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"sort"
	"strings"
)

//go:embed assets templates
var files embed.FS

// asset is one file the browser keeps: its bytes, its type, and a mark of its
// content, so that it can be kept for a year and still be renewed.
type asset struct {
	content []byte // nil where only the squeezed forms are carried
	gzip    []byte // nil where that gains nothing
	brotli  []byte // of the engine only, made when it was built
	kind    string
	mark    string
}

// assets are all files under assets by their address; the style sheets and
// the scripts of every page are one file each.
type assets map[string]asset

func loadAssets() assets {
	all := assets{}
	var styles bytes.Buffer
	for _, name := range names("assets/css") {
		styles.Write(mustRead(name))
	}
	all.add("/assets/aerosteep.css", styles.Bytes())
	for _, dir := range []string{"assets/js", "assets/font", "assets/icon"} {
		for _, name := range names(dir) {
			all.add("/"+name, mustRead(name))
		}
	}
	all.addEngine()
	return all
}

// engineAddress is where the engine for the browser lies. It is built before
// the program that carries it, and squeezed then: not at every start.
const engineAddress = "/assets/engine/aerosteep.wasm"

func (a assets) addEngine() {
	byGzip, err := files.ReadFile("assets/engine/aerosteep.wasm.gz")
	if err != nil {
		return // built without one: the pages ask the server
	}
	byBrotli, _ := files.ReadFile("assets/engine/aerosteep.wasm.br")
	sum := sha256.Sum256(byGzip)
	a[engineAddress] = asset{gzip: byGzip, brotli: byBrotli, kind: "application/wasm", mark: hex.EncodeToString(sum[:6])}
	a.add("/assets/engine/wasm_exec.js", mustRead("assets/engine/wasm_exec.js"))
}

func (a assets) add(address string, content []byte) {
	sum := sha256.Sum256(content)
	kind := mime.TypeByExtension(path.Ext(address))
	if path.Ext(address) == ".woff2" {
		kind = "font/woff2"
	}
	if path.Ext(address) == ".js" {
		kind = "text/javascript; charset=utf-8"
	}
	a[address] = asset{content: content, gzip: squeeze(content, kind), kind: kind, mark: hex.EncodeToString(sum[:6])}
}

// link is an asset's address with its mark.
func (a assets) link(address string) string {
	return address + "?" + a[address].mark
}

func (a assets) serve(w http.ResponseWriter, r *http.Request) {
	file, known := a[r.URL.Path]
	if !known {
		http.NotFound(w, r)
		return
	}
	h := w.Header()
	h.Set("Content-Type", file.kind)
	h.Set("ETag", `"`+file.mark+`"`)
	h.Set("Cache-Control", "no-cache")
	if r.URL.RawQuery == file.mark {
		h.Set("Cache-Control", "public, max-age=31536000, immutable")
	}
	if strings.Contains(r.Header.Get("If-None-Match"), file.mark) {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	h.Add("Vary", "Accept-Encoding")
	_, _ = w.Write(file.choose(h, r.Header.Get("Accept-Encoding")))
}

// choose takes the smallest form that the browser reads. Browsers ask for
// Brotli only over HTTPS and on the machine itself.
func (a asset) choose(h http.Header, reads string) []byte {
	switch {
	case a.brotli != nil && strings.Contains(reads, "br"):
		h.Set("Content-Encoding", "br")
		return a.brotli
	case a.gzip != nil && (strings.Contains(reads, "gzip") || a.content == nil):
		h.Set("Content-Encoding", "gzip")
		return a.gzip
	}
	return a.content
}

func names(dir string) []string {
	entries, err := fs.ReadDir(files, dir)
	if err != nil {
		return nil
	}
	var all []string
	for _, e := range entries {
		all = append(all, path.Join(dir, e.Name()))
	}
	sort.Strings(all)
	return all
}

func mustRead(name string) []byte {
	content, err := files.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return content
}
