package web

import (
	"net/http"
	"net/url"
	"time"

	"aerosteep/job/hygiene"
	"aerosteep/record/holding"
	"aerosteep/wording"
)

// stakeView is the card at a bed, in both languages; without a bed, the beds
// that wait.
type stakeView struct {
	Bed     string
	Texts   []stakeText
	Open    string // why there is no card
	Planned bool   // not put on yet
	Beds    []letterLink
}

type stakeText struct{ Language, Text string }

// stake shows the card that stands at a bed.
func (s *Site) stake(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "ground")
	p.Back, p.BackTo = "/ground", p.Say("web.place.ground")
	p.Heading = p.Say("web.stakes.title")
	view := &stakeView{}
	p.View = view
	cards := s.cards(r)
	if bed := r.URL.Query().Get("bed"); bed != "" {
		file := s.held()
		if file == nil {
			s.nothingHere(w, r)
			return
		}
		if _, known := file.Bed(bed); !known {
			s.nothingHere(w, r)
			return
		}
		p.Back, p.BackTo, p.Heading = "/ground/stake", p.Heading, bed
		view.Bed, view.Open = bed, p.Say("web.stake.none", "bed", bed)
		view.write(cards)
	}
	p.Title = p.Heading
	for _, c := range cards {
		view.Beds = append(view.Beds, letterLink{stakeLink(c.bed), c.bed, p.Text(c.text)})
	}
	s.show(w, http.StatusOK, "stake", p)
}

func stakeLink(bed string) string { return "/ground/stake?" + url.Values{"bed": {bed}}.Encode() }

// write puts the bed's card into both languages.
func (v *stakeView) write(cards []card) {
	for _, c := range cards {
		if c.bed == v.Bed {
			v.Open, v.Planned = "", c.planned
			for _, language := range []wording.Language{wording.English, wording.Spanish} {
				v.Texts = append(v.Texts, stakeText{string(language), c.text.For(wording.Reader{Language: language, Units: wording.Metric})})
			}
		}
	}
}

// card is what a stake says at one bed.
type card struct {
	bed     string
	until   time.Time
	text    wording.Text
	planned bool
}

// cards are those of all beds that wait, one for each: of what was put on, the
// longest wait that is not over; else of what is planned.
func (s *Site) cards(r *http.Request) []card {
	byBed := map[string]card{}
	today := s.now().Format(time.DateOnly)
	for _, w := range s.waits(r) {
		until := w.Until()
		if until == nil || until.Format(time.DateOnly) <= today {
			continue
		}
		if old, known := byBed[w.Bed]; !known || until.After(old.until) {
			text := wording.Say("hygiene.stake", wording.Places{"applied": wording.Day(w.Applied), "until": wording.Day(*until)})
			byBed[w.Bed] = card{bed: w.Bed, until: *until, text: text}
		}
	}
	file := s.held()
	for _, v := range judged(file, "", "") {
		text := hygiene.Stake(v.Verdict)
		if old, known := byBed[v.Bed]; text.String() != "" && v.Until.Format(time.DateOnly) > today && (!known || old.planned && v.Until.After(old.until)) {
			byBed[v.Bed] = card{v.Bed, *v.Until, text, true}
		}
	}
	var all []card
	if file != nil {
		for _, bed := range file.Beds { // in the order of the ground
			if c, waits := byBed[bed.Name]; waits {
				all = append(all, c)
			}
		}
	}
	return all
}

// waits are all applications with what the rules say of picking after them.
func (s *Site) waits(r *http.Request) []holding.Wait {
	if s.Holding == nil {
		return nil
	}
	waits, err := s.Holding.Waits(r.Context())
	if err != nil {
		s.log("waits", err)
	}
	return waits
}

// early are the picks that came too soon.
func (s *Site) early(r *http.Request) []holding.Early {
	if s.Holding == nil {
		return nil
	}
	early, err := s.Holding.EarlyPicks(r.Context())
	if err != nil {
		s.log("early picks", err)
	}
	return early
}
