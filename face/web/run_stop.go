package web

import (
	"net/http"
	"slices"
	"strconv"
	"strings"
	"time"

	"aerosteep/job/application"
	"aerosteep/job/ground"
	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/holding"
)

// stopNotes are what to know on arriving: the place and the way in, what to keep
// off, the tap, what was in the tank, what the wheels carry.
func (s *Site) stopNotes(p *page, stop *holding.Stop) []string {
	var notes []string
	add := func(key string, pairs ...any) { notes = append(notes, p.Say(key, pairs...)) }
	if stop.Bed.Landmark != "" {
		add("web.stop.landmark", "landmark", stop.Bed.Landmark)
	}
	if stop.Bed.Gate != "" {
		add("web.stop.gate", "gate", stop.Bed.Gate)
	}
	if len(stop.Bed.KeepOff) > 0 {
		add("web.stop.keep-off", "what", strings.Join(stop.Bed.KeepOff, ", "))
	}
	notes = append(notes, s.tapOf(p, stop.Bed.Site)...)
	if a := stop.Applicator; a != nil && (a.Borrowed || a.HeldBefore != "") {
		advice, _ := application.HeldBefore(a.HeldBefore).Advice()
		notes = append(notes, p.Text(advice))
	}
	notes = append(notes, p.calibrated(stop, s.now())...)
	if a := stop.Applicator; a != nil && a.Air {
		add("web.stop.air")
	}
	return notes
}

// tapOf is the water of a site as it was last tested, with its age.
func (s *Site) tapOf(p *page, site string) []string {
	for _, t := range s.Holding.WaterTests() {
		if t.Place == "" || t.Place != site {
			continue
		}
		row := p.waterTest(t, s.now())
		return []string{p.Say("web.stop.tap", "line", row.Line, "age", row.Age)}
	}
	return nil
}

// cornersTyped are corners as a person types them.
func cornersTyped(corners []ground.Corner) string {
	var all []string
	for _, c := range corners {
		all = append(all, strconv.FormatFloat(c.Latitude, 'f', 7, 64)+","+strconv.FormatFloat(c.Longitude, 'f', 7, 64))
	}
	return strings.Join(all, "; ")
}

// unfit tells an applicator that must not be used for what was in it.
func unfit(stop *holding.Stop) bool {
	if stop.Applicator == nil || !stop.Applicator.Borrowed && stop.Applicator.HeldBefore == "" {
		return false
	}
	_, use := application.HeldBefore(stop.Applicator.HeldBefore).Advice()
	return !use
}

// overPlate says where a load is heavier than the plate of trailer or axle
// allows; "" where it is within, or no plate is known.
func (p *page) overPlate(stop *holding.Stop, load *application.Load) string {
	a := stop.Applicator
	if a == nil || a.Plate == nil {
		return ""
	}
	haul := application.Haul{Liquid: load.Total, Density: 1, Rated: a.Plate}
	if a.EmptyMass != nil {
		haul.Trailer = *a.EmptyMass
	}
	weight, err := haul.Weigh()
	if err != nil || *weight.Within {
		return ""
	}
	return p.Say("web.stop.over-plate", "total", weight.Total, "plate", *a.Plate, "most", max(quantity.Volume(0), *weight.MostLiquid))
}

// tankClock tells both clocks of a tank that travels with air side by side, and
// the shorter, which rules.
func (s *Site) tankClock(r *http.Request, p *page, file *jobfile.File, round *holding.Round, now time.Time) string {
	aired := slices.ContainsFunc(round.Stops, func(stop holding.Stop) bool { return stop.Applicator != nil && stop.Applicator.Air })
	if !aired || round.Batch.StartedAt == nil {
		return ""
	}
	readings, err := s.Holding.InTank(r.Context(), round.Batch.Name, *round.Batch.StartedAt)
	if err != nil || len(readings) == 0 {
		return p.Say("web.stop.tank.none")
	}
	planned := readings[0].At.Add(application.OffAir)
	last := readings[len(readings)-1]
	places := []any{"plan", p.When(planned.In(now.Location()), now), "do", quantity.DissolvedOxygen(last.Oxygen.MilligramsPerLitre()), "clock", p.When(last.At.In(now.Location()), now)}
	end, falls := application.TankClock(readings, file.Limits.UseByDO)
	if !falls {
		return p.Say("web.stop.tank.holds", places...)
	}
	rules := planned
	if end.Before(planned) {
		rules = end
	}
	return p.Say("web.stop.tank", append(places, "end", p.When(end.In(now.Location()), now), "rules", p.When(rules.In(now.Location()), now))...)
}

// calibrated says before the first load what the applicator was found to put on,
// and the ways back to this bed's dose.
func (p *page) calibrated(stop *holding.Stop, now time.Time) []string {
	a, c := stop.Applicator, stop.Calibrated
	switch {
	case a == nil || len(stop.Done) > 0 || !holding.NeedsCalibration(a.Kind) && c == nil:
		return nil
	case c == nil && a.Borrowed:
		return []string{p.Say("web.stop.cal.borrowed")}
	case c == nil:
		return []string{p.Say("web.stop.cal.none")}
	}
	when := p.When(c.At.In(now.Location()), now)
	notes := p.onDose(c.OnDose, when)
	switch {
	case c.ShareOff:
		notes = append(notes, p.Say("web.stop.cal.share-off", "when", when, "mix", application.MixWords(c.Share), "planned", application.MixWords(stop.Want.Share())))
	case c.Share > 0:
		notes = append(notes, p.Say("web.stop.cal.share", "when", when, "mix", application.MixWords(c.Share)))
	}
	if c.Aged {
		notes = append(notes, p.Say("web.stop.cal.aged"))
	}
	return notes
}

func (p *page) onDose(c *application.Calibration, when string) []string {
	switch {
	case c == nil:
		return nil
	case c.Verdict == application.OnDose:
		return []string{p.Say("web.stop.cal.on", "when", when, "actual", c.Actual)}
	}
	notes := []string{p.Say("web.stop.cal.off", "when", when, "actual", c.Actual, "planned", c.Planned, "speed", percent(c.SpeedFactor), "pressure", percent(c.PressureFactor))}
	if c.HoldDose != nil {
		notes = append(notes, p.Say("web.stop.cal.off.mix", "mix", application.MixWords(*c.HoldDose)))
	}
	return notes
}

// rinsing is how the applicator is rinsed where there is no other; nil where
// nothing harmful was in it.
func (p *page) rinsing(stop *holding.Stop) *rinsingView {
	a := stop.Applicator
	if a == nil || !a.Borrowed && a.HeldBefore == "" {
		return nil
	}
	tank := stop.Mix
	if a.Tank != nil {
		tank = *a.Tank
	}
	r := application.HeldBefore(a.HeldBefore).Rinse(tank, a.DeadVolume)
	if len(r.Steps) == 0 {
		return nil
	}
	view := &rinsingView{Doubt: p.Text(r.Doubt)}
	for _, step := range r.Steps {
		view.Steps = append(view.Steps, p.Text(step))
	}
	return view
}
