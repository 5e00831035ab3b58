package main

import "math"

// failure is air that fails: all of it, or what a cracked tube leaves.
type failure struct {
	start, end float64 // h
	left       float64 // share of the air
	logged     bool
}

// happening is what befalls a brew, at most one thing.
type happening struct {
	what     string // food, off-logged, off-unlogged, half-unlogged; "" for nothing
	failures []failure
	foodHour float64
	food     string // as it is logged
	grams    float64
	meal     meal // what it truly brings
}

// fates deals out what happens: one of four things in a third of the brews that
// are not calm, and each as often as the others.
func fates(c chance, kinds []string) []string {
	all := make([]string, len(kinds))
	deck := c.Perm(12) // four things in twelve brews
	for i, kind := range kinds {
		if kind == "calm" {
			continue
		}
		if deck[0] < 4 {
			all[i] = [4]string{"food", "off-logged", "off-unlogged", "half-unlogged"}[deck[0]]
		}
		if deck = deck[1:]; len(deck) == 0 {
			deck = c.Perm(12)
		}
	}
	return all
}

// befall makes ready what happens. When a failure comes is drawn once it is
// known how the brew goes without it.
func befall(c chance, p *plan, what string) happening {
	h := happening{what: what, foodHour: math.Inf(1)}
	if what == "food" {
		h.addFood(c, p)
	}
	return h
}

// addFood draws molasses put in on the way, with its COD: about 0.6 g ready and
// 0.15 g slow for each gram, as the larder has it, give or take a fifth.
func (h *happening) addFood(c chance, p *plan) {
	h.foodHour = c.between(6, p.planned*0.7)
	perLitre := c.wide(0.2, 1.5)
	h.grams = perLitre * p.volume
	amount := p.amount("molasses", h.grams, c.happens(0.5))
	h.food = "food molasses " + amount
	cod := 1000 * perLitre * c.normal(1, 0.1)
	h.meal = meal{ready: 0.58 * cod, slow: 0.15 * cod, nitrogen: 0.002 * cod}
}

// fail draws the failure, after an hour. It tells whether there is room for one.
func (h *happening) fail(c chance, from, planned float64) bool {
	f := failure{start: c.between(math.Max(8, from), planned*0.75)}
	switch h.what {
	case "off-logged":
		f.end, f.logged = f.start+c.between(0.3, 1), true
	case "off-unlogged":
		f.end = f.start + c.between(3, 8)
	case "half-unlogged":
		f.end, f.left = f.start+c.between(4, 10), c.between(0.22, 0.4)
	default:
		return true
	}
	h.failures = []failure{f}
	return f.end < planned-2 && f.start >= from
}

// left is the share of the air that arrives at an hour.
func (h *happening) left(hour float64) float64 {
	for _, f := range h.failures {
		if hour >= f.start && hour < f.end {
			return f.left
		}
	}
	return 1
}

// quiet is the same brew without the failure.
func (h happening) quiet() happening {
	h.failures = nil
	return h
}

// unforeseen are the hours of what nobody could know.
func (h *happening) unforeseen() []float64 {
	hours := []float64{}
	if h.what == "food" {
		hours = append(hours, h.foodHour)
	}
	for _, f := range h.failures {
		hours = append(hours, f.start, f.end)
	}
	return hours
}

// entry is a row of the log that is no reading.
type entry struct {
	hour        float64
	event, note string
}

// entries are what was written down of it.
func (h *happening) entries() []entry {
	var all []entry
	if h.what == "food" {
		all = append(all, entry{h.foodHour, h.food, ""})
	}
	for _, f := range h.failures {
		switch {
		case f.logged:
			all = append(all, entry{f.start, "air-off", "power cut"}, entry{f.end, "air-on", ""})
		case f.left == 0:
			all = append(all, entry{f.end, "air-on", "found it stopped"})
		}
	}
	return all
}
