package holding

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"aerosteep/record/feed"
)

// skyAddressFile holds the address that forecasts are fetched from, where the
// user named one. Without it the network is never asked.
const skyAddressFile = "weather-from.txt"

// SkyAddress is where forecasts are fetched from, "" for nowhere.
func (h *Holding) SkyAddress() (string, error) {
	text, err := os.ReadFile(filepath.Join(h.journal.Folder(), skyAddressFile))
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	return strings.TrimSpace(string(text)), err
}

// FetchSkyFrom names the address and fetches from it at once; one that answers
// no forecast is not kept. "" forgets it.
//
// Errors: a *fault.Fault of the address or of what it answers; others of the
// network.
func (h *Holding) FetchSkyFrom(ctx context.Context, address string) (feed.State, error) {
	path := filepath.Join(h.journal.Folder(), skyAddressFile)
	if address == "" {
		if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return feed.State{}, err
		}
		return feed.State{}, nil
	}
	state, err := h.fetchSky(ctx, address)
	if err != nil {
		return state, err
	}
	return state, os.WriteFile(path, []byte(address+"\n"), 0o600)
}

// RefreshSky asks the named address again where what is kept has expired.
func (h *Holding) RefreshSky(ctx context.Context) (feed.State, error) {
	address, err := h.SkyAddress()
	if err != nil || address == "" {
		return feed.State{}, err
	}
	return h.fetchSky(ctx, address)
}

func (h *Holding) fetchSky(ctx context.Context, address string) (feed.State, error) {
	text, state, err := h.feed().Get(ctx, address)
	if err != nil || !state.Asked || state.Offline != nil {
		return state, err
	}
	return state, h.KeepSky(address, text)
}

func (h *Holding) feed() *feed.Feed {
	return &feed.Feed{Folder: filepath.Join(h.journal.Folder(), "weather"), Now: h.journal.Now}
}

// FollowSky refreshes the sky every so often until the context ends. What goes
// wrong is reported once, until it goes right again.
func (h *Holding) FollowSky(ctx context.Context, every time.Duration, report func(error)) {
	tick := time.NewTicker(every)
	defer tick.Stop()
	silent := false
	for {
		state, err := h.RefreshSky(ctx)
		if err = errors.Join(err, state.Offline); err != nil && !silent && ctx.Err() == nil {
			report(err)
		}
		silent = err != nil
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
	}
}
