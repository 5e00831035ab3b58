package jobfile

import (
	"aerosteep/quantity"
	"aerosteep/wording"
)

// rateMeans takes a plain rate for what the people of the site mean by one,
// which they are asked once: undiluted tea, or tea with its water. Where nobody
// said, it is refused, because the two differ by the dilution.
func (c *checker) rateMeans(r *record) {
	for _, other := range []string{"tea_rate", "tea", "mix_rate", "each", "cans"} {
		c.notBoth(r, "rate", other)
	}
	rate, given := get[quantity.Dose](r, "rate")
	if !given {
		return
	}
	switch c.meantAt(r) {
	case "tea":
		r.values["tea_rate"] = rate
	case "mix":
		c.goesWith(r, "rate", "dilution")
		r.values["mix_rate"] = rate
	default:
		c.problem(r, "rate", wording.Say("jobfile.rate-of-what"), wording.Say("jobfile.rate-of-what.allowed"), wording.Say("jobfile.rate-of-what.advice"), "")
	}
}

// meantAt is what a rate means at the site of a want's bed; "" where nobody said.
func (c *checker) meantAt(want *record) string {
	name, _ := get[string](want, "bed")
	site := ""
	for _, bed := range c.records["bed"] {
		if bed.name() == name {
			site, _ = get[string](bed, "site")
		}
	}
	sites := c.records["site"]
	for _, s := range sites {
		if s.name() == site || site == "" && len(sites) == 1 {
			means, _ := get[string](s, "rate_means")
			return means
		}
	}
	return ""
}
