package jobfile

import (
	"time"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// agree checks what no key can tell alone: keys that need each other, exclude
// each other, or have to be in order.
func (c *checker) agree() {
	for _, r := range c.records["vessel"] {
		c.vesselAgrees(r)
	}
	for _, r := range c.records["pump"] {
		c.notBoth(r, "curve", "label_flow")
		c.notBoth(r, "bubbles", "sote_per_m")
	}
	for _, r := range c.records["bed"] {
		c.bedAgrees(r)
	}
	for _, r := range c.records["want"] {
		c.wantAgrees(r)
	}
	c.harvests()
}

// notBoth refuses two keys of which only one can hold.
func (c *checker) notBoth(r *record, first, second string) {
	if r.has(first) && r.has(second) {
		c.problem(r, second, wording.Say("jobfile.not-both", wording.Places{"first": first, "second": second}),
			wording.Say("jobfile.not-both.allowed", wording.Places{"first": first, "second": second}), wording.Say("jobfile.not-both.advice"), "")
	}
}

// goesWith refuses a key whose companion is missing.
func (c *checker) goesWith(r *record, key, companion string) {
	if r.has(key) && !r.has(companion) {
		c.missing(r, companion, wording.Say("jobfile.goes-with", wording.Places{"key": key, "companion": companion}))
	}
}

// notOver refuses a pair of amounts in the wrong order.
func notOver[T quantity.Amount](c *checker, r *record, small, large string) {
	s, ok1 := get[T](r, small)
	l, ok2 := get[T](r, large)
	if ok1 && ok2 && s > l {
		c.problem(r, small, wording.Say("jobfile.over-other", wording.Places{"other": large}),
			wording.Say("jobfile.up-to", wording.Places{"most": l}), wording.Text{}, "")
	}
}

func (c *checker) vesselAgrees(r *record) {
	notOver[quantity.Volume](c, r, "brew", "full")
	notOver[quantity.Volume](c, r, "least", "brew")
	if !r.has("brew") {
		notOver[quantity.Volume](c, r, "least", "full")
	}
	notOver[quantity.PerTime](c, r, "kla20_low95", "kla20")
	notOver[quantity.PerTime](c, r, "kla20", "kla20_high95")
	for _, k := range []string{"kla20_low95", "kla20_high95", "kla20_in"} {
		c.goesWith(r, k, "kla20")
	}
	c.vesselContents(r)
}

// dimensions are the keys that each shape of vessel needs.
var dimensions = map[string][]string{
	"cylinder":            {"diameter", "height"},
	"cone-bottom":         {"diameter", "height", "cone_height"},
	"horizontal-cylinder": {"diameter", "length"},
	"box":                 {"length", "width", "height"},
	"frustum":             {"top_diameter", "bottom_diameter", "height"},
}

// vesselContents asks for `full`, or a shape with its dimensions.
func (c *checker) vesselContents(r *record) {
	shape, given := get[string](r, "shape")
	switch {
	case given:
		for _, d := range dimensions[shape] {
			c.goesWith(r, "shape", d)
		}
	case !r.has("full") && !r.has("shape") && c.purpose == Whole:
		c.missing(r, "full", wording.Say("jobfile.vessel-contents"))
	}
}

func (c *checker) bedAgrees(r *record) {
	c.goesWith(r, "rows", "row_length")
	c.goesWith(r, "rows", "row_width")
	c.goesWith(r, "trees", "drip_radius")
	ways := []string{}
	for _, k := range []string{"area", "corners", "rows", "trees"} {
		if r.has(k) {
			ways = append(ways, k)
		}
	}
	if len(ways) > 1 {
		c.notBoth(r, ways[0], ways[1])
	}
	first, ok1 := get[time.Time](r, "first")
	last, ok2 := get[time.Time](r, "last")
	if ok1 && ok2 && last.Before(first) {
		c.problem(r, "last", wording.Say("jobfile.before-first"), wording.Say("jobfile.on-or-after", wording.Places{"day": first.Format(time.DateOnly)}), wording.Text{}, "")
	}
}

// wantAgrees asks for one hour or window, one amount, and an area for a rate.
func (c *checker) wantAgrees(r *record) {
	c.notBoth(r, "at", "from")
	c.notBoth(r, "at", "until")
	c.goesWith(r, "from", "until")
	c.goesWith(r, "until", "from")
	from, ok1 := get[time.Time](r, "from")
	until, ok2 := get[time.Time](r, "until")
	if ok1 && ok2 && !until.After(from) {
		c.problem(r, "until", wording.Say("jobfile.until-first"), wording.Say("jobfile.after", wording.Places{"time": from.Format(time.RFC3339)}), wording.Text{}, "")
	}
	c.rateMeans(r)
	c.notBoth(r, "tea_rate", "tea")
	c.notBoth(r, "tea", "mix_rate")
	c.notBoth(r, "tea_rate", "mix_rate")
	for _, other := range []string{"tea_rate", "tea", "mix_rate"} {
		c.notBoth(r, "each", other)
		c.notBoth(r, "cans", other)
	}
	c.notBoth(r, "each", "cans")
	c.canNeedsTank(r)
	c.goesWith(r, "mix_rate", "dilution")
	if c.purpose == FactsOnly {
		return
	}
	if !r.has("at") && !r.has("from") && !r.has("until") {
		c.missing(r, "at", wording.Say("jobfile.want-when"))
	}
	if !r.hasAny("tea_rate", "tea", "mix_rate", "rate", "each", "cans") {
		c.missing(r, "tea_rate", wording.Say("jobfile.want-amount"))
	}
	c.rateNeedsArea(r)
}

// canNeedsTank asks for the applicator whose tank a can is.
func (c *checker) canNeedsTank(r *record) {
	if !r.has("cans") {
		return
	}
	name, named := get[string](r, "applicator")
	if !named {
		c.missing(r, "applicator", wording.Say("jobfile.want-can"))
		return
	}
	for _, a := range c.records["applicator"] {
		if a.name() == name && !a.has("tank") {
			c.missing(a, "tank", wording.Say("jobfile.want-can"))
		}
	}
}

func (c *checker) rateNeedsArea(r *record) {
	if !r.hasAny("tea_rate", "mix_rate", "rate") {
		return
	}
	name, _ := get[string](r, "bed")
	for _, bed := range c.records["bed"] {
		if bed.name() != name || bed.has("area") || bed.has("corners") || bed.has("rows") || bed.has("trees") {
			continue
		}
		if !c.areaAsked[name] { // told once, however many wants ask for it
			c.missing(bed, "area", wording.Say("jobfile.bed-area"))
			c.areaAsked[name] = true
		}
	}
}

// harvests refuses a harvest before the application, as far as both are said:
// the nearest of bed, batch and holding wins.
func (c *checker) harvests() {
	for _, bed := range c.records["bed"] {
		harvest, where := c.fact(bed, "harvest")
		applied, _ := c.fact(bed, "applied")
		if harvest == "" || applied == "" || harvest == unknown || applied == unknown || harvest >= applied {
			continue
		}
		c.problem(where, "harvest", wording.Say("jobfile.harvest-first", wording.Places{"applied": applied}),
			wording.Say("jobfile.on-or-after", wording.Places{"day": applied}), wording.Text{}, "")
	}
}

// fact is what the file says for a bed: on it, on its batch, in [hygiene].
func (c *checker) fact(bed *record, name string) (string, *record) {
	places := []*record{bed}
	batches, _ := get[[]string](bed, "batch")
	for _, b := range c.records["batch"] {
		if contains(batches, b.name()) {
			places = append(places, b)
		}
	}
	for _, r := range append(places, c.records["hygiene"]...) {
		if v, given := get[string](r, name); given {
			return v, r
		}
	}
	return "", nil
}
