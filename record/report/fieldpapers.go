package report

import (
	"context"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// application is the record of tea on one bed, with the weather it went out in.
func (d *Desk) application(ctx context.Context, id string) (*Paper, error) {
	k, err := d.entry(ctx, id, journal.Applied)
	if err != nil {
		return nil, err
	}
	_, bed := k.About()
	p := d.paper("application", id)
	p.Title = wording.Say("paper.title.application", wording.Places{"name": bed})
	d.about(p, k)
	d.bed(p, bed)
	body := bodyOf(k)
	for _, key := range []string{"method", "batch", "tea_l", "water_l", "applicator"} {
		p.fact(key, body.value(key))
	}
	for _, key := range []string{"wind_m_per_s", "wind_from", "air_temp_c", "text"} {
		p.known(key, body.value(key))
	}
	lots, err := d.lotsOf(ctx, body.text("batch"))
	if err != nil {
		return nil, err
	}
	p.fact("lot", listed(lots))
	d.gapsOfApplication(p, bed, body, lots)
	p.caution("application.label")
	p.caution("application.dry")
	p.caution("judge")
	return p, nil
}

func (d *Desk) gapsOfApplication(p *Paper, bed string, body said, lots []string) {
	places := wording.Places{"bed": bed, "batch": body.text("batch")}
	switch {
	case body.text("batch") == "":
		p.missing("application.batch", places)
	case len(lots) == 0:
		p.missing("application.lot", places)
	}
	if body.value("tea_l") == nil {
		p.missing("application.tea", places)
	}
	if body.text("method") == "foliar" && (body.value("wind_m_per_s") == nil || body.value("wind_from") == nil) {
		p.missing("application.wind", places)
	}
}

func listed(items []string) any {
	if len(items) == 0 {
		return nil
	}
	return strings.Join(items, ", ")
}

// visit is what a client gets: all that went on one day's beds, in neutral
// words. Its name is a day, or a day and a site: "2026-05-12 Home field".
func (d *Desk) visit(ctx context.Context, name string) (*Paper, error) {
	text, site, _ := strings.Cut(name, " ")
	day, err := time.ParseInLocation("2006-01-02", text, d.now.Location())
	if err != nil {
		return nil, fault.New("day", text, wording.Say("paper.visit.day"), wording.Say("paper.visit.day.allowed"), wording.Text{})
	}
	entries, err := d.standing(ctx, journal.Wanted{Kinds: []string{journal.Applied, journal.Note}, Since: day, Until: day.AddDate(0, 0, 1)})
	if err != nil {
		return nil, err
	}
	p := d.paper("visit", name)
	if place := d.place(site); place != nil {
		p.fact("place", place)
	}
	p.fact("day", day.Format("2006-01-02"))
	done := Table{Name: "went", Columns: []string{"at", "bed", "crop", "method", "batch", "tea_l", "water_l", "wind_m_per_s", "wind_from", "by", "record"}}
	var words []string
	for _, k := range entries {
		what, bed := k.About()
		if known, is := d.file.Bed(bed); site != "" && (what != "bed" || is && known.Site != "" && known.Site != site) {
			continue
		}
		body := bodyOf(k)
		words = append(words, body.text("text"))
		if k.Kind == journal.Applied {
			known, _ := d.file.Bed(bed)
			done.Rows = append(done.Rows, []any{d.when(k), bed, known.Crop, body.value("method"), body.value("batch"), body.value("tea_l"), body.value("water_l"), body.value("wind_m_per_s"), body.value("wind_from"), k.By, short(k.ID)})
		}
	}
	p.Tables = append(p.Tables, done)
	if len(done.Rows) == 0 {
		p.missing("visit")
	}
	for _, c := range Claims(strings.Join(words, "\n")) {
		p.missing("claim", wording.Places{"word": c.Word, "instead": c.Instead})
	}
	p.caution("visit.neutral")
	p.caution("application.dry")
	p.caution("judge")
	return p, nil
}

// incident is one page of what went wrong, for whoever has to be told.
func (d *Desk) incident(ctx context.Context, id string) (*Paper, error) {
	k, err := d.entry(ctx, id, journal.Incident)
	if err != nil {
		return nil, err
	}
	p := d.paper("incident", id)
	p.Title = wording.Say("paper.title.incident")
	d.about(p, k)
	body := bodyOf(k)
	p.fact("text", body.value("text"))
	switch what, name := k.About(); what {
	case "bed":
		d.bed(p, name)
	case "batch":
		p.fact("batch", name)
	}
	p.known("batch", body.value("batch"))
	for _, key := range []string{"volume_l", "place", "to_water_m", "done", "told"} {
		p.fact(key, body.value(key))
		if body.value(key) == nil {
			p.missing("incident." + key)
		}
	}
	p.caution("incident")
	return p, nil
}
