package holding

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"time"

	"aerosteep/science/weather"
)

// skyFile is the latest weather forecast in a data folder. It lies beside the
// journal and not in it: a forecast is large, is replaced twice a day and
// nobody answers for it; the journal is for what happened.
const skyFile = "weather.txt"

// Sky is the latest weather forecast that was handed over.
type Sky struct {
	*weather.Forecast
	KeptAt time.Time
}

// skyKept is the sky as it was read last, so that a page need not read it again.
type skyKept struct {
	mu   sync.Mutex
	last *Sky
}

// Sky is the latest weather forecast, nil where none was handed over.
func (h *Holding) Sky() (*Sky, error) {
	h.sky.mu.Lock()
	defer h.sky.mu.Unlock()
	path := filepath.Join(h.journal.Folder(), skyFile)
	state, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if h.sky.last != nil && h.sky.last.KeptAt.Equal(state.ModTime()) {
		return h.sky.last, nil
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	read, err := h.readSky(skyFile, text)
	if err != nil {
		return nil, err
	}
	h.sky.last = &Sky{read.Forecast, state.ModTime()}
	return h.sky.last, nil
}

// KeepSky keeps the text of a forecast in place of the one before, if it can
// be read.
//
// Errors: a *fault.Fault that names the file and what is wrong in it.
func (h *Holding) KeepSky(name string, text []byte) error {
	if _, err := h.readSky(name, text); err != nil {
		return err
	}
	h.sky.mu.Lock()
	defer h.sky.mu.Unlock()
	path := filepath.Join(h.journal.Folder(), skyFile)
	// Written whole beside the old one, then put in its place: a page that
	// reads meanwhile sees the one or the other.
	if err := os.WriteFile(path+".new", text, 0o600); err != nil {
		return err
	}
	now := h.journal.Now()
	if err := os.Chtimes(path+".new", now, now); err != nil {
		return err
	}
	return os.Rename(path+".new", path)
}

// readSky takes any forecast with at least a temperature: what is missing is
// then not known, and the hours say so.
func (h *Holding) readSky(name string, text []byte) (weather.Reading, error) {
	return weather.Read(name, text, weather.CSVReading{Zone: h.Zone(time.UTC), OnlyAir: true})
}
