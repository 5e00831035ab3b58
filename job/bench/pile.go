package bench

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// ParsePart reads "grass: 10 kg, CN 19, N 2.4 %, moisture 77 %". The field of a
// fault is the flag.
func ParsePart(flag, text string) (Part, error) {
	r, err := readMaterial(flag, text, true)
	if err != nil {
		return Part{}, err
	}
	return Part{r.material, r.mass}, nil
}

// ParseMaterial reads the same without a mass.
func ParseMaterial(flag, text string) (Material, error) {
	r, err := readMaterial(flag, text, false)
	return r.material, err
}

// reading is a material as its words are taken in.
type reading struct {
	flag, text string
	material   Material
	mass       quantity.Mass
	ratio      float64
	given      map[string]bool
}

func readMaterial(flag, text string, weighed bool) (*reading, error) {
	r := &reading{flag: flag, text: text, given: map[string]bool{}}
	name, rest, both := strings.Cut(text, ":")
	r.material.Name = strings.TrimSpace(name)
	if !both || r.material.Name == "" {
		return r, r.wrong("bench.part.name", nil)
	}
	mark := ","
	if strings.Contains(rest, ";") {
		mark = ";"
	}
	for _, item := range strings.Split(rest, mark) {
		if err := r.take(strings.TrimSpace(item)); err != nil {
			return r, err
		}
	}
	return r, r.complete(weighed)
}

// take reads one item of the list.
func (r *reading) take(item string) error {
	word, amount, _ := strings.Cut(item, " ")
	key := strings.ToLower(strings.ReplaceAll(word, ":", ""))
	switch key {
	case "c", "n", "moisture":
	case "cn":
	default:
		key, amount = "mass", item
	}
	if r.given[key] {
		return r.wrong("bench.part.twice", wording.Places{"item": word})
	}
	r.given[key] = true
	return r.set(key, strings.TrimSpace(amount))
}

func (r *reading) set(key, amount string) error {
	var err error
	switch key {
	case "mass":
		r.mass, err = quantity.ParseMass(amount)
		if err == nil && r.mass <= 0 {
			return r.wrong("bench.part.mass", wording.Places{"given": amount})
		}
	case "cn":
		r.ratio, err = quantity.Bare(amount)
		if err == nil && r.ratio <= 0 {
			return r.wrong("bench.part.ratio", wording.Places{"given": amount})
		}
	case "c":
		r.material.Carbon, err = r.share("C", amount, 1)
	case "n":
		r.material.Nitrogen, err = r.share("N", amount, 1)
	case "moisture":
		r.material.Moisture, err = r.share("moisture", amount, 1-1e-12)
	}
	for _, f := range fault.Of(err) {
		f.Field, f.Given, f.Allowed = r.flag, r.text, allowedPart
	}
	return err
}

func (r *reading) share(word, amount string, most float64) (quantity.Share, error) {
	s, err := quantity.ParseShare(amount)
	if err == nil && (s < 0 || s.Fraction() > most) {
		err = r.wrong("bench.part.share", wording.Places{"item": word, "given": amount})
	}
	return s, err
}

// complete checks that nothing is missing and fills carbon in from C:N.
func (r *reading) complete(weighed bool) error {
	switch {
	case weighed && !r.given["mass"]:
		return r.wrong("bench.part.missing", wording.Places{"item": "MASS"})
	case !weighed && r.given["mass"]:
		return r.wrong("bench.part.no-mass", nil)
	case r.given["c"] && r.given["cn"]:
		return r.wrong("bench.part.twice", wording.Places{"item": "C, CN"})
	}
	for _, item := range [][2]string{{"n", "N"}, {"moisture", "moisture"}} {
		if !r.given[item[0]] {
			return r.wrong("bench.part.missing", wording.Places{"item": item[1]})
		}
	}
	switch {
	case r.given["cn"] && r.material.Nitrogen == 0:
		return r.wrong("bench.part.ratio-without-n", nil)
	case r.given["cn"]:
		r.material.Carbon = quantity.Share(r.ratio * r.material.Nitrogen.Fraction())
	case !r.given["c"]:
		return r.wrong("bench.part.missing", wording.Places{"item": "C"})
	}
	if sum := r.material.Carbon + r.material.Nitrogen; sum > 1+hair {
		return r.wrong("bench.part.sum", wording.Places{"sum": sum})
	}
	return nil
}

var allowedPart = wording.Say("bench.part.allowed")

func (r *reading) wrong(key string, places wording.Places) error {
	return fault.New(r.flag, r.text, wording.Say(key, places), allowedPart, wording.Say("bench.part.advice"))
}
