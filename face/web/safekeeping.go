package web

import (
	"bytes"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
)

// longestUpload is how much a page takes at once.
const longestUpload = 8 << 20

// backup makes a backup and hands it out.
func (s *Site) backup(w http.ResponseWriter, r *http.Request) {
	folder, err := os.MkdirTemp("", "aerosteep-backup-")
	if err != nil {
		s.broken(w, err)
		return
	}
	defer os.RemoveAll(folder)
	file := filepath.Join(folder, "journal")
	if err := s.Holding.Journal().Backup(r.Context(), file); err != nil {
		s.broken(w, err)
		return
	}
	content, err := os.Open(file)
	if err != nil {
		s.broken(w, err)
		return
	}
	defer content.Close()
	w.Header().Set("Content-Type", "application/octet-stream")
	w.Header().Set("Content-Disposition", `attachment; filename="aerosteep-`+s.now().Format("20060102-1504")+`.backup"`)
	w.Header().Set("Cache-Control", "no-store")
	_, _ = io.Copy(w, content)
}

// exportEntries hands out all entries, one a line.
func (s *Site) exportEntries(w http.ResponseWriter, r *http.Request) {
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	w.Header().Set("Content-Type", "application/x-ndjson")
	w.Header().Set("Content-Disposition", `attachment; filename="aerosteep-`+s.now().Format("20060102-1504")+`.jsonl"`)
	w.Header().Set("Cache-Control", "no-store")
	if err := s.Holding.Journal().Export(r.Context(), w, time.Time{}); err != nil {
		s.log("export", err)
	}
}

// takeIn takes an uploaded file: a backup, an export, or a job file, told apart
// by how they begin.
func (s *Site) takeIn(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "records")
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	if r.URL.Query().Get("do") == "backup" {
		s.backup(w, r)
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, longestUpload+1<<16)
	file, _, err := r.FormFile("file")
	if err != nil {
		s.showRecords(w, r, http.StatusUnprocessableEntity, p, "", p.Say("web.safe.no-file"))
		return
	}
	defer file.Close()
	content, err := io.ReadAll(file)
	if err != nil {
		s.showRecords(w, r, http.StatusRequestEntityTooLarge, p, "", p.Say("web.safe.too-long"))
		return
	}
	made := holding.Made{At: s.now(), By: s.initials(w, r), Device: s.device(w, r)}
	done, err := s.takeContent(p, r, content, made)
	if err != nil {
		s.showRecords(w, r, http.StatusUnprocessableEntity, p, "", s.reason(p, err))
		return
	}
	s.showRecords(w, r, http.StatusOK, p, done, "")
}

func (s *Site) takeContent(p *page, r *http.Request, content []byte, made holding.Made) (string, error) {
	switch text := bytes.TrimLeft(content, "\ufeff \t\r\n"); {
	case bytes.HasPrefix(content, []byte("SQLite format 3\x00")):
		return s.restore(p, r, content)
	case len(text) > 0 && text[0] == '{' && bytes.Contains(text[:min(len(text), 4096)], []byte(`"recorded_at"`)):
		return s.importLines(p, r, content)
	}
	file, problems := jobfile.Read(content, "job.toml", jobfile.Whole)
	if err := problems.OrNil(); err != nil {
		return "", err
	}
	n, err := s.Holding.Load(r.Context(), file, made)
	return p.Say("web.safe.loaded", "n", n), err
}

// restore puts a backup in the place of an empty journal. One that is not empty
// is not replaced from a page: a slip of the thumb must not cost a season.
func (s *Site) restore(p *page, r *http.Request, content []byte) (string, error) {
	folder, err := os.MkdirTemp("", "aerosteep-restore-")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(folder)
	from := filepath.Join(folder, "backup")
	if err := os.WriteFile(from, content, 0o600); err != nil {
		return "", err
	}
	if _, err := s.Holding.Journal().Restore(r.Context(), from, false); err != nil {
		return "", err
	}
	return p.Say("web.safe.restored"), s.Holding.Refresh(r.Context())
}

func (s *Site) importLines(p *page, r *http.Request, content []byte) (string, error) {
	stored, known, refused := 0, 0, 0
	err := s.Holding.Journal().Import(r.Context(), bytes.NewReader(content), func(l journal.Line) {
		switch l.Outcome {
		case journal.Stored:
			stored++
		case journal.AlreadyStored:
			known++
		default:
			refused++
		}
	})
	if err == nil {
		err = s.Holding.Refresh(r.Context())
	}
	return p.Say("web.safe.imported", "stored", stored, "already", known, "refused", refused), err
}

// keeping is how safe the records are.
type keeping struct {
	Backup string // how old the last backup is
	Old    bool   // older than a week, or none
	Empty  bool
	Done   string
	Wrong  string
}

// oldBackup is when a backup is called old.
const oldBackup = 7 * 24 * time.Hour

func (s *Site) keeping(p *page, r *http.Request) keeping {
	k := keeping{Empty: s.Holding.Empty(), Old: true, Backup: p.Say("web.safe.never")}
	last, err := s.Holding.Journal().LastBackup(r.Context())
	if err != nil {
		s.log("last backup", err)
	}
	if !last.IsZero() {
		age := s.now().Sub(last)
		k.Old = age > oldBackup
		k.Backup = p.Say("web.safe.days", "n", int(age.Hours()/24))
		if age < 24*time.Hour {
			k.Backup = p.Say("web.safe.today", "clock", p.When(last.In(s.now().Location()), s.now()))
		}
	}
	return k
}

// matching are the lines that hold all words that are looked for.
func matching(lines []logLine, query string) []logLine {
	words := strings.Fields(strings.ToLower(query))
	var found []logLine
	for _, line := range lines {
		text, all := strings.ToLower(line.When+" "+line.What+" "+line.By), true
		for _, word := range words {
			all = all && strings.Contains(text, word)
		}
		if all {
			found = append(found, line)
		}
	}
	return found
}
