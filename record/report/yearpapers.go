package report

import (
	"context"
	"maps"
	"slices"
	"sort"
	"strconv"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/recipe"
	"aerosteep/job/rig"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// year reads the name of a paper about a year.
func (d *Desk) year(name string) (from, until time.Time, err error) {
	n, err := strconv.Atoi(name)
	if err != nil || n < 1900 || n > 2199 {
		return from, until, fault.New("year", name, wording.Say("paper.year"), wording.Say("paper.year.allowed"), wording.Text{})
	}
	from = time.Date(n, 1, 1, 0, 0, 0, 0, d.now.Location())
	return from, from.AddDate(1, 0, 0), nil
}

// cleaning is the log of what was cleaned in a year.
func (d *Desk) cleaning(ctx context.Context, name string) (*Paper, error) {
	from, until, err := d.year(name)
	if err != nil {
		return nil, err
	}
	entries, err := d.standing(ctx, journal.Wanted{Kinds: []string{journal.Cleaned}, Since: from, Until: until})
	if err != nil {
		return nil, err
	}
	p := d.paper("cleaning", name)
	t := Table{Name: "cleaned", Columns: []string{"at", "what", "agent", "strength_percent", "dilution", "dwell_minutes", "rinsed", "lot", "approved", "text", "by", "remark", "record"}}
	cleaned := map[string]bool{}
	for _, k := range entries {
		body := bodyOf(k)
		_, what := k.About()
		cleaned[what] = true
		t.Rows = append(t.Rows, []any{d.when(k), what, body.value("agent"), body.value("strength_percent"), body.value("dilution"), body.value("dwell_minutes"), body.value("rinsed"), body.value("lot"), orAsk(body.text("approved")), body.value("text"), k.By, Remark(k.Time(), k.Recorded()), short(k.ID)})
	}
	p.Tables = append(p.Tables, t)
	for _, v := range d.file.Vessels {
		if !cleaned[v.Name] {
			p.missing("never-cleaned", wording.Places{"vessel": v.Name, "year": name})
		}
	}
	p.caution("cleaning")
	return p, nil
}

// tallied is what a season comes to.
type tallied struct {
	batches, failed      int
	brewed, used, thrown float64 // litres
	cost                 float64
	currency             string
	unpriced             int
	causes               map[string]int
}

// season looks back on a year: litres, cost, and what failed by its cause.
func (d *Desk) season(ctx context.Context, name string) (*Paper, error) {
	from, until, err := d.year(name)
	if err != nil {
		return nil, err
	}
	applied, err := d.standing(ctx, journal.Wanted{Kinds: []string{journal.Applied}, Since: from, Until: until})
	if err != nil {
		return nil, err
	}
	sum := tallied{causes: map[string]int{}}
	p := d.paper("season", name)
	batches := Table{Name: "batches", Columns: []string{"batch", "recipe", "started_at", "volume_l", "outcome", "cost", "cost_per_l"}}
	all := d.holding.Batches()
	for i := len(all) - 1; i >= 0; i-- {
		if b := all[i]; b.StartedAt != nil && !b.StartedAt.Before(from) && b.StartedAt.Before(until) {
			batches.Rows = append(batches.Rows, d.tally(&sum, b))
		}
	}
	beds, used := d.onBeds(applied)
	sum.used = used
	d.sums(p, sum, used)
	p.Tables = append(p.Tables, failures(sum.causes), d.air(p, from, until), beds, d.visits(applied), batches)
	p.caution("season")
	return p, nil
}

// tally adds a batch to the season and makes its row.
func (d *Desk) tally(sum *tallied, b holding.Batch) []any {
	sum.batches++
	var volume, cost, perLitre, outcome any
	if b.Volume != nil {
		volume = b.Volume.Litres()
		sum.brewed += b.Volume.Litres()
	}
	if b.Ended != nil {
		outcome = b.Ended.Outcome
		if b.Ended.Outcome == "failed" || b.Ended.Outcome == "discarded" {
			sum.failed++
			sum.causes[b.Ended.Cause]++
			if b.Volume != nil {
				sum.thrown += b.Volume.Litres()
			}
		}
	}
	if c, currency, priced := d.ingredientCost(b); priced {
		sum.cost += c
		sum.currency = currency
		cost, perLitre = c, c/b.Volume.Litres()
	} else {
		sum.unpriced++
	}
	return []any{b.Name, b.Recipe, b.StartedAt.In(d.now.Location()), volume, outcome, money(cost, sum.currency), money(perLitre, sum.currency)}
}

// money is an amount in its currency; no currency is added to another's.
func money(amount any, currency string) any {
	v, known := amount.(float64)
	if !known {
		return nil
	}
	return wording.Say("paper.money", wording.Places{"amount": twoDecimals(v), "currency": currency})
}

type twoDecimals float64

// Speak writes two decimals in the reader's language.
func (m twoDecimals) Speak(r wording.Reader) string { return wording.Fixed(float64(m), 2, r) }

// ingredientCost is what went into a batch at the prices of its ingredients.
func (d *Desk) ingredientCost(b holding.Batch) (cost float64, currency string, priced bool) {
	asked, known := d.file.Recipe(b.Recipe)
	if !known || b.Volume == nil {
		return 0, "", false
	}
	scaled, err := recipe.Scale(asked, *b.Volume)
	if err != nil || scaled.Cost == nil {
		return 0, "", false
	}
	return *scaled.Cost, scaled.Currency, true
}

func (d *Desk) sums(p *Paper, sum tallied, used float64) {
	p.fact("batches_started", sum.batches)
	p.fact("brewed_l", sum.brewed)
	p.fact("used_l", used)
	p.fact("failed", sum.failed)
	p.fact("thrown_l", sum.thrown)
	if sum.batches > sum.unpriced {
		p.fact("ingredients_cost", money(sum.cost, sum.currency))
	}
	if sum.unpriced > 0 {
		p.missing("unpriced", wording.Places{"n": sum.unpriced})
	}
	if n := sum.causes[""]; n > 0 {
		p.missing("cause", wording.Places{"n": n})
	}
}

func failures(causes map[string]int) Table {
	t := Table{Name: "failures", Columns: []string{"cause", "number"}}
	var words []string
	for cause := range causes {
		words = append(words, cause)
	}
	sort.Slice(words, func(i, j int) bool {
		if causes[words[i]] != causes[words[j]] {
			return causes[words[i]] > causes[words[j]]
		}
		return words[i] < words[j]
	})
	for _, cause := range words {
		t.Rows = append(t.Rows, []any{cause, causes[cause]})
	}
	return t
}

// onBeds sums what went on each bed, with the cost of its ingredients, also by
// area.
func (d *Desk) onBeds(applied []journal.Kept) (Table, float64) {
	t := Table{Name: "beds", Columns: []string{"bed", "times", "tea_l", "cost", "cost_per_ha"}}
	sums := map[string]*spent{}
	total := 0.0
	for _, k := range applied {
		_, bed := k.About()
		total += d.add(sums, bed, bodyOf(k))
	}
	for _, bed := range sortedNames(sums) {
		s := sums[bed]
		var perArea any
		if known, set := d.file.Bed(bed); set && known.Area != nil && s.cost != nil {
			perArea = money(*s.cost/known.Area.Hectares(), s.currency)
		}
		t.Rows = append(t.Rows, []any{bed, s.times, s.tea, s.costs(), perArea})
	}
	return t, total
}

// visits sums what went out by day and place.
func (d *Desk) visits(applied []journal.Kept) Table {
	t := Table{Name: "visits", Columns: []string{"day", "times", "tea_l", "cost"}}
	sums := map[string]*spent{}
	for _, k := range applied {
		_, bed := k.About()
		known, _ := d.file.Bed(bed)
		d.add(sums, strings.TrimSpace(d.when(k).Format(time.DateOnly)+" "+known.Site), bodyOf(k))
	}
	names := sortedNames(sums)
	for _, name := range names[max(0, len(names)-mostVisits):] {
		t.Rows = append(t.Rows, []any{name, sums[name].times, sums[name].tea, sums[name].costs()})
	}
	if n := len(names) - mostVisits; n > 0 {
		t.Note = wording.Say("paper.visits.some", wording.Places{"n": n})
	}
	return t
}

// mostVisits are the days that a season's paper lists, the last ones.
const mostVisits = 40

// spent is tea that went somewhere, and what its ingredients cost; nil where a
// batch has no price.
type spent struct {
	times    int
	tea      float64
	cost     *float64
	currency string
}

func (s *spent) costs() any {
	if s.cost == nil {
		return nil
	}
	return money(*s.cost, s.currency)
}

// add adds an application to what it is summed by, and answers its litres.
func (d *Desk) add(sums map[string]*spent, name string, body said) float64 {
	s := sums[name]
	if s == nil {
		s = &spent{cost: new(0.0)}
		sums[name] = s
	}
	tea, _ := body["tea_l"].(float64)
	s.times++
	s.tea += tea
	b, _ := d.holding.Batch(body.text("batch"))
	cost, currency, priced := d.ingredientCost(b)
	if !priced || s.cost == nil || s.currency != "" && s.currency != currency {
		s.cost = nil
		return tea
	}
	*s.cost += cost / b.Volume.Litres() * tea
	s.currency = currency
	return tea
}

func sortedNames(sums map[string]*spent) []string { return slices.Sorted(maps.Keys(sums)) }

// air is how the transfer of each vessel went over the year; one that falls is
// said first on the paper.
func (d *Desk) air(p *Paper, from, until time.Time) Table {
	t := Table{Name: "air", Columns: []string{"vessel", "tests", "kla20_per_h", "per_month_percent", "state"}}
	for _, vessel := range d.file.Vessels {
		var found []rig.Measured
		for _, test := range d.holding.TestsOf("vessel", vessel.Name) { // the newest first
			if k := test.KLa20; k != nil && !test.At.Before(from) && test.At.Before(until) {
				found = append(found, rig.Measured{At: test.At, KLa20: *k})
			}
		}
		if len(found) == 0 {
			continue
		}
		row := []any{vessel.Name, len(found), found[0].KLa20, nil, "few"}
		if trend, err := rig.Fouling(found); err == nil {
			row[3], row[4] = trend.PerMonth*100, "steady"
			if trend.Falls {
				row[4] = "falls"
				p.missing("air.falls", wording.Places{"vessel": vessel.Name, "percent": wording.Fixed(-trend.PerMonth*100, 0, wording.Reader{}), "n": trend.Tests})
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
