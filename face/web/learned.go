package web

import (
	"math"
	"net/http"
	"time"

	"aerosteep/job/forecast"
)

// learnedLine is what finished batches taught, beside what is usual, with the way
// to begin anew.
type learnedLine struct {
	Say, What, Name string // what is learned anew: "vessel" or "recipe", and its name
}

// taughtOf is what the batches of a vessel say of its air; nil where none do.
func (s *Site) taughtOf(p *page, r *http.Request, vessel string, now time.Time) *learnedLine {
	learned, err := s.Holding.Taught(r.Context(), vessel, "", now)
	if err != nil {
		s.log("what batches taught", err)
	}
	if learned == nil || learned.Transfer.Batches == 0 {
		return nil
	}
	return &learnedLine{p.Say("web.learned.air", "yours", factor(learned.Transfer), "n", learned.Transfer.Batches), "vessel", vessel}
}

// taughtOfRecipe likewise of what a recipe takes.
func (s *Site) taughtOfRecipe(p *page, r *http.Request, recipe string, now time.Time) *learnedLine {
	learned, err := s.Holding.Taught(r.Context(), "", recipe, now)
	if err != nil {
		s.log("what batches taught", err)
	}
	if learned == nil || learned.Uptake.Batches == 0 {
		return nil
	}
	return &learnedLine{p.Say("web.learned.uptake", "recipe", recipe, "yours", factor(learned.Uptake), "n", learned.Uptake.Batches), "recipe", recipe}
}

// factor is what was learned as a share of the usual.
func factor(l forecast.Pooled) string { return percent(math.Exp(l.Shift)) + " %" }
