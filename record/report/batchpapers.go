package report

import (
	"context"
	"encoding/json"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/application"
	"aerosteep/job/recipe"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// batch finds a batch, or says which are known.
func (d *Desk) batch(name string) (holding.Batch, error) {
	if err := d.holding.KnowsBatch(name); err != nil {
		return holding.Batch{}, err
	}
	b, _ := d.holding.Batch(name)
	return b, nil
}

// brew is the record of one batch: what went in, what was read, what was done,
// and where it went.
func (d *Desk) brew(ctx context.Context, name string) (*Paper, error) {
	b, err := d.batch(name)
	if err != nil {
		return nil, err
	}
	entries, err := d.holding.Entries(ctx, name, time.Time{})
	if err != nil {
		return nil, err
	}
	p := d.paper("brew", name)
	d.headOf(p, b)
	lots := map[string][]string{}
	readings, steps := []measuredRow{}, Table{Name: "steps", Columns: []string{"at", "what", "by", "remark", "record"}}
	went := Table{Name: "went", Columns: []string{"at", "bed", "crop", "method", "tea_l", "water_l", "by", "record"}}
	for _, k := range entries {
		if k.ReplacedBy != nil {
			continue
		}
		switch k.Kind {
		case journal.Reading, journal.Series:
			readings = append(readings, d.measured(k)...)
		case journal.Applied:
			went.Rows = append(went.Rows, d.wentRow(k))
		case journal.Stock:
			noteLot(lots, k)
			steps.Rows = append(steps.Rows, d.stepRow(k))
		case journal.Setup:
		default:
			steps.Rows = append(steps.Rows, d.stepRow(k))
		}
	}
	p.Tables = append(p.Tables, d.ingredients(ctx, p, b, lots), readingTable(readings), steps, went)
	d.gapsOfBatch(ctx, p, b, readings)
	p.caution("records")
	return p, nil
}

func (d *Desk) headOf(p *Paper, b holding.Batch) {
	p.fact("batch", b.Name)
	p.fact("vessel", b.Vessel)
	p.fact("recipe", b.Recipe)
	if b.Volume != nil {
		p.fact("volume_l", b.Volume.Litres())
	}
	d.ceiling(p, b)
	if b.StartedAt != nil {
		p.fact("started_at", b.StartedAt.In(d.now.Location()))
	}
	if b.Ended != nil {
		p.fact("ended_at", b.Ended.At.In(d.now.Location()))
		p.known("outcome", b.Ended.Outcome)
		p.known("cause", b.Ended.Cause)
	}
}

// ceiling tells a dose of molasses over the ceiling, with the reason that it was
// kept for: that of the start, else that of the recipe.
func (d *Desk) ceiling(p *Paper, b holding.Batch) {
	if b.Volume == nil {
		return
	}
	dose, because, over := holding.OverCeiling(d.file, b.Recipe, *b.Volume)
	if !over {
		return
	}
	if b.Because != "" {
		because = b.Because
	}
	p.fact("molasses_percent_w_v", dose.Percent())
	p.known("because", because)
	if because == "" {
		p.missing("because", wording.Places{"batch": b.Name})
	}
}

// gapsOfBatch names what an inspector would ask for.
func (d *Desk) gapsOfBatch(ctx context.Context, p *Paper, b holding.Batch, readings []measuredRow) {
	if b.StartedAt == nil {
		p.missing("start", wording.Places{"batch": b.Name})
		return
	}
	if b.Ended != nil && b.Ended.Outcome == "" {
		p.missing("outcome", wording.Places{"batch": b.Name})
	}
	if len(readings) == 0 {
		p.missing("readings", wording.Places{"batch": b.Name})
	}
	for _, r := range readings {
		if r.by == "" {
			p.missing("reading-by", wording.Places{"batch": b.Name})
			break
		}
	}
	cleaned, err := d.standing(ctx, journal.Wanted{Subject: "vessel:" + b.Vessel, Kinds: []string{journal.Cleaned}, Until: *b.StartedAt})
	if err == nil && len(cleaned) == 0 {
		p.missing("cleaned", wording.Places{"vessel": b.Vessel})
	}
}

// noteLot remembers which lot of an ingredient a batch took.
func noteLot(lots map[string][]string, k journal.Kept) {
	what, name := k.About()
	if lot := bodyOf(k).text("lot"); what == "ingredient" && lot != "" {
		lots[name] = append(lots[name], lot)
	}
}

// approvals are the certifier's last word on each food and treatment, by name.
func (d *Desk) approvals(ctx context.Context) map[string]string {
	said := map[string]string{}
	entries, err := d.standing(ctx, journal.Wanted{Kinds: []string{journal.Stock}})
	if err != nil {
		return said // a journal that cannot be read gives no paper at all
	}
	for _, k := range entries {
		if what, name := k.About(); what == "ingredient" {
			if word := bodyOf(k).text("approved"); word != "" {
				said[name] = word
			}
		}
	}
	return said
}

// approvalOf is the certifier's word on a food; compost has its lot's facts.
func approvalOf(i recipe.Ingredient, said map[string]string) any {
	if i.Compost {
		return nil
	}
	return orAsk(said[i.Name])
}

// orAsk is a word of the certifier, or that it has to be asked for.
func orAsk(word string) any {
	if word == "" {
		return wording.Say("paper.ask-certifier")
	}
	return word
}

// ingredients are what the recipe asks for in this volume, with their lots.
func (d *Desk) ingredients(ctx context.Context, p *Paper, b holding.Batch, lots map[string][]string) Table {
	t := Table{Name: "ingredients", Columns: []string{"ingredient", "mass_g", "when", "lot", "approved"}}
	approved := d.approvals(ctx)
	asked, known := d.file.Recipe(b.Recipe)
	if !known || b.Volume == nil {
		p.missing("recipe", wording.Places{"batch": b.Name})
		return t
	}
	scaled, err := recipe.Scale(asked, *b.Volume)
	if err != nil {
		p.missing("recipe", wording.Places{"batch": b.Name})
		return t
	}
	for _, item := range scaled.Items {
		name := item.Item.Ingredient.Name
		var lot any
		if len(lots[name]) > 0 {
			lot = strings.Join(lots[name], ", ")
		} else {
			p.missing("lot", wording.Places{"ingredient": name, "batch": b.Name})
		}
		t.Rows = append(t.Rows, []any{name, item.Mass.Grams(), item.Item.When.String(), lot, approvalOf(item.Item.Ingredient, approved)})
	}
	return t
}

// stepRow tells of any entry in one line.
func (d *Desk) stepRow(k journal.Kept) []any {
	return []any{d.when(k), sentence{k.Kind, bodyOf(k)}, k.By, Remark(k.Time(), k.Recorded()), short(k.ID)}
}

func (d *Desk) wentRow(k journal.Kept) []any {
	body := bodyOf(k)
	_, name := k.About()
	bed, _ := d.file.Bed(name)
	return []any{d.when(k), name, bed.Crop, body.value("method"), body.value("tea_l"), body.value("water_l"), k.By, short(k.ID)}
}

// measuredRow is one reading with where it stands.
type measuredRow struct {
	at       time.Time
	body     said
	by       string
	recorded time.Time
	record   string
}

// measured are the readings of an entry: one, or the rows of a series.
func (d *Desk) measured(k journal.Kept) []measuredRow {
	if k.Kind == journal.Reading {
		return []measuredRow{{d.when(k), bodyOf(k), k.By, k.Recorded(), short(k.ID)}}
	}
	rows, err := journal.Rows(k.Body)
	if err != nil {
		return nil
	}
	var list []measuredRow
	for _, row := range rows {
		body := said{}
		if json.Unmarshal(row, &body) != nil {
			continue
		}
		if at, err := time.Parse(time.RFC3339, body.text("at")); err == nil {
			list = append(list, measuredRow{at.In(d.now.Location()), body, k.Device, at, short(k.ID)})
		}
	}
	return list
}

// mostReadings is how many rows of readings a paper shows.
const mostReadings = 24

// readingTable shows readings; of many it shows some, spread evenly, and the
// lowest oxygen always.
func readingTable(all []measuredRow) Table {
	t := Table{Name: "readings", Columns: []string{"at", "do_mg_per_l", "temp_c", "ph", "smell", "by", "remark", "record"}}
	lowest := lowestOf(all)
	step := (len(all) + mostReadings - 1) / mostReadings
	for i, r := range all {
		if len(all) > mostReadings && i%step != 0 && i != lowest && i != len(all)-1 {
			continue
		}
		t.Rows = append(t.Rows, []any{r.at, r.body.value("do_mg_per_l"), r.body.value("temp_c"), r.body.value("ph"), r.body.value("smell"), r.by, Remark(r.at, r.recorded), r.record})
	}
	if len(t.Rows) < len(all) {
		t.Note = wording.Say("paper.readings.some", wording.Places{"shown": len(t.Rows), "all": len(all)})
	}
	return t
}

func lowestOf(all []measuredRow) int {
	lowest, at := 0.0, -1
	for i, r := range all {
		if v, is := r.body["do_mg_per_l"].(float64); is && (at < 0 || v < lowest) {
			lowest, at = v, i
		}
	}
	return at
}

// useWithin is how long tea is taken to last once its air is off, where no
// forecast says less. Common practice.
const useWithin = application.OffAir

// label is what stands on a container of tea: what, how much, whose, and the
// clock after which it is not used.
func (d *Desk) label(ctx context.Context, name string) (*Paper, error) {
	b, err := d.batch(name)
	if err != nil {
		return nil, err
	}
	if b.StartedAt == nil {
		return nil, fault.New("batch", name, wording.Say("paper.label.not-started", wording.Places{"batch": name}), wording.Text{}, wording.Say("paper.label.not-started.advice"))
	}
	p := d.paper("label", name)
	p.Signed = false
	by := d.useBy(ctx, b)
	p.Lede = wording.Say("paper.label.lede", wording.Places{"clock": by.Format("15:04"), "day": by.Format("2006-01-02")})
	p.fact("batch", b.Name)
	if b.Volume != nil {
		p.fact("volume_l", b.Volume.Litres())
	}
	p.fact("recipe", b.Recipe)
	p.fact("started_at", b.StartedAt.In(d.now.Location()))
	p.fact("use_by", by)
	p.fact("maker", p.Holding)
	p.caution("label.edible")
	p.caution("label.wait")
	p.caution("label.not-drink")
	p.caution("label.cool")
	p.caution("selling")
	if b.Ended != nil && (b.Ended.Outcome == "failed" || b.Ended.Outcome == "discarded") {
		p.missing("label.failed", wording.Places{"batch": b.Name})
	}
	p.Code = strings.Join([]string{p.Holding, b.Name, by.Format(time.RFC3339)}, "\n")
	return p, nil
}

// useBy is the clock after which a batch's tea is not used: by the forecast
// while it lives (from now, its air off), else from its end.
func (d *Desk) useBy(ctx context.Context, b holding.Batch) time.Time {
	if b.Ended != nil {
		return b.Ended.At.In(d.now.Location()).Add(useWithin)
	}
	if twin, err := d.holding.Twin(ctx, b.Name, d.now); err == nil {
		within := time.Duration(twin.Answer.UseBy.Minutes.Low80 * float64(time.Minute))
		return d.now.Add(min(within, useWithin)).Truncate(time.Minute)
	}
	return d.now.Add(useWithin).Truncate(time.Minute)
}
