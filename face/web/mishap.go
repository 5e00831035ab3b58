package web

import (
	"net/http"

	"aerosteep/job/mishap"
)

// mishapsView is the list of what may go wrong.
type mishapsView struct {
	Query string
	Cards []mishapRow
	Call  string
}

type mishapRow struct {
	Link, Title, Signs string
	Danger             bool
}

// mishaps lists what may go wrong, or what was looked for.
func (s *Site) mishaps(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "records")
	p.Back, p.BackTo = "/", p.Say("web.place.today")
	p.Heading, p.Title = p.Say("web.cards.title"), p.Say("web.cards.title")
	view := &mishapsView{Query: r.URL.Query().Get("q"), Call: s.emergency(p)}
	for _, c := range mishap.Cards {
		if c.Matches(view.Query, p.Reader) {
			view.Cards = append(view.Cards, mishapRow{"/cards/" + c.ID, p.Text(c.Title()), p.Text(c.Signs()), c.Danger})
		}
	}
	p.View = view
	s.show(w, http.StatusOK, "mishaps", p)
}

// mishapView is one card, on the screen and on a wall.
type mishapView struct {
	Signs, After, Call string
	Steps              []string
	Danger             bool
}

// mishap shows what to do in the next ten minutes.
func (s *Site) mishap(w http.ResponseWriter, r *http.Request) {
	c, known := mishap.Find(r.PathValue("id"))
	if !known {
		s.nothingHere(w, r)
		return
	}
	p := s.page(w, r, "records")
	p.Back, p.BackTo = "/cards", p.Say("web.cards.title")
	p.Heading, p.Title = p.Text(c.Title()), p.Text(c.Title())
	view := &mishapView{Signs: p.Text(c.Signs()), After: p.Text(c.After()), Danger: c.Danger, Call: s.emergency(p)}
	for _, step := range c.Steps() {
		view.Steps = append(view.Steps, p.Text(step))
	}
	p.View = view
	s.show(w, http.StatusOK, "mishap", p)
}

// emergency is whom to call: the holding's own numbers, else where to find them.
func (s *Site) emergency(p *page) string {
	if file := s.held(); file != nil && file.Holding.Emergency != "" {
		return p.Say("web.cards.call", "numbers", file.Holding.Emergency)
	}
	return p.Say("web.cards.call.none")
}
