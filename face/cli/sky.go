package cli

import (
	"context"
	"errors"
	"fmt"
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/record/feed"
	"aerosteep/wording"
)

// errNoFeed is a terminal that was given nothing to fetch with.
var errNoFeed = errors.New("no network")

// readSky is the text of a forecast: of a file, or of an address, which is asked
// only because the user named it. Without a network the kept one is used and its
// age said.
func (p *program) readSky(name string) ([]byte, error) {
	if !feed.IsAddress(name) {
		return p.readText("weather", name)
	}
	if p.Sky == nil {
		return nil, errNoFeed
	}
	text, state, err := p.Sky.Get(context.Background(), name)
	if err != nil {
		if len(fault.Of(err)) > 0 {
			return nil, err
		}
		return nil, errors.New(wording.Say("feed.nothing", wording.Places{"why": err.Error()}).String())
	}
	if state.Offline != nil {
		age := quantity.Seconds(p.Now().Sub(state.FetchedAt).Truncate(time.Minute).Seconds())
		fmt.Fprintln(p.Err, "aerosteep: "+wording.Say("feed.offline", wording.Places{"why": state.Offline.Error(), "age": age}).String())
	}
	return text, nil
}
