package api

import (
	"net/http"

	"aerosteep/fault"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// keepPaper keeps a paper of somebody else, as it was sent, and answers the hash
// by which an entry names it. It answers after the paper is on disk.
func (a *API) keepPaper(w http.ResponseWriter, r *http.Request) {
	content, ok := a.body(w, r)
	if !ok {
		return
	}
	hash, err := a.holding.Journal().Keep(r.Context(), content)
	switch {
	case len(fault.Of(err)) > 0:
		a.refuse(w, r, http.StatusUnprocessableEntity, err)
	case err != nil:
		a.refuse(w, r, http.StatusServiceUnavailable, err)
	default:
		a.write(w, http.StatusOK, map[string]any{"sha256": hash, "bytes": len(content)})
	}
}

// paper hands a kept paper out.
func (a *API) paper(w http.ResponseWriter, r *http.Request) {
	hash := r.PathValue("sha256")
	content, err := a.holding.Journal().Content(r.Context(), hash)
	switch {
	case err != nil:
		a.refuse(w, r, http.StatusServiceUnavailable, err)
	case content == nil:
		a.refuse(w, r, http.StatusNotFound, fault.New("sha256", hash, wording.Say("api.no-paper"), wording.Text{}, wording.Text{}))
	default:
		w.Header().Set("Content-Type", "application/octet-stream")
		w.Header().Set("Content-Disposition", `attachment; filename="paper"`)
		_, _ = w.Write(content) // a client that went away needs no answer
	}
}

var paperSchema = object{"type": "object", "required": []string{"sha256", "bytes"}, "properties": object{
	"sha256": object{"type": "string"}, "bytes": object{"type": "integer", "maximum": journal.LongestContent},
}}
