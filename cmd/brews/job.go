package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/science/oxygen"
)

// place is a time zone with a point in it.
type place struct {
	zone                string
	latitude, longitude float64
}

var places = []place{
	{"Africa/Johannesburg", -29, 26}, {"Africa/Accra", 6.5, -0.5}, {"Africa/Nairobi", -1, 37}, {"America/Phoenix", 33.5, -112},
	{"America/Puerto_Rico", 18.2, -66.4}, {"America/Bogota", 5, -74}, {"Australia/Brisbane", -27.5, 152.5}, {"Asia/Kolkata", 20, 78},
	{"Asia/Tokyo", 36, 138}, {"America/Lima", -12, -76},
}

// plan is what the brewer chose and knows.
type plan struct {
	name            string // of the batch
	place           place
	start           time.Time
	us              bool
	limit           float64 // mg/L
	planned         float64 // h
	volume, depth   float64 // L, m
	altitude, water float64 // m, °C
	conductivity    float64 // µS/cm
	wellOrTap       string
	vessel          string
	knownBy         string  // plate, tested or bare
	aimed           float64 // kLa at 20 °C that the rig was bought for, 1/h
	items           []item
	curve           string
	bubbles         oxygen.Bubbles
	bore            float64 // mm
	kla             [3]float64
}

// item is a line of the recipe.
type item struct {
	name     string
	perLitre float64 // g/L, as said
	byVolume bool
}

// newPlan draws a brew as people make them: 15 to 600 L, 4 to 50 g/L of
// compost, up to 0.35 % w/v of molasses. A calm one has little in it. The
// shares are a judgement.
func newPlan(c chance, number int, calm bool) plan {
	p := plan{
		name: fmt.Sprintf("B-%03d", number), place: pick(c, places...), us: c.happens(0.5),
		limit: pick(c, 5.0, 5.5, 6.0), planned: pick(c, 24.0, 30, 30, 36, 36, 42, 48, 60),
		volume: c.wide(15, 600), altitude: math.Max(0, c.between(-100, 1200)), water: c.between(12, 28),
		conductivity: math.Round(c.between(80, 650)), wellOrTap: pick(c, "well", "municipal", "rain"),
		vessel: pick(c, "Drum", "Pail", "Cone", "Blue barrel", "Trailer tank"), aimed: c.wide(4, 35),
	}
	if c.happens(0.15) {
		p.altitude = c.between(1200, 2000)
	}
	if calm {
		p.aimed = c.wide(8, 35)
	}
	p.depth = 0.11 * math.Cbrt(p.volume) * c.between(0.65, 1.3)
	day := time.Date(2025, time.Month(1+c.IntN(12)), 1+c.IntN(28), 0, 0, 0, 0, zoneOf(p.place))
	p.start = day.Add(time.Duration(6*60+5*c.IntN(14*12)) * time.Minute)
	p.chooseAir(c)
	p.chooseItems(c, calm)
	return p
}

func zoneOf(p place) *time.Location {
	zone, err := time.LoadLocation(p.zone)
	if err != nil {
		panic(err) // the Go installation lacks its zones
	}
	return zone
}

// chooseAir draws the pump that gives the aimed kLa at the depth, or a test.
func (p *plan) chooseAir(c chance) {
	p.bubbles = pick(c, oxygen.Medium, oxygen.Fine, oxygen.Fine, oxygen.Medium, oxygen.Coarse)
	perMetre := p.bubbles.SOTEPerMetre().Fraction()
	wanted := float64(oxygen.SOTRFromKLa20(quantity.PerHour(p.aimed), quantity.Litres(p.volume)))
	flow := wanted / (60 * oxygen.OxygenInAir * perMetre * p.depth) // L/min
	open := flow / 0.55 * c.between(0.9, 1.2)
	meets := (9.79*p.depth + 2.4) * c.between(1.0, 1.3)
	p.curve = fmt.Sprintf("%s L/min@0 kPa, %s L/min@%s kPa, %s L/min@%s kPa",
		digits(open), digits(0.55*open), digits(meets), digits(0.2*open), digits(1.78*meets))
	p.bore = math.Min(150, math.Max(6, math.Round(2.5*math.Sqrt(open)+1)))
	spread := math.Exp(1.96 * 0.18)
	p.kla = [3]float64{p.aimed / spread, p.aimed, p.aimed * spread}
	p.knownBy = pick(c, "plate", "plate", "plate", "tested", "bare")
}

// chooseItems draws the recipe.
func (p *plan) chooseItems(c chance, calm bool) {
	add := func(name string, low, high float64) {
		p.items = append(p.items, item{name, c.wide(low, high), c.happens(0.5)})
	}
	compost := pick(c, "compost", "compost", "compost", "vermicompost")
	if calm {
		add(compost, 4, 17)
		if c.happens(0.3) {
			add("molasses", 0.1, 0.4)
		}
		return
	}
	add(compost, 5, 50)
	if c.happens(0.85) {
		add("molasses", 0.1, 3.5)
	}
	for _, food := range []string{"kelp meal", "fish hydrolysate"} {
		if c.happens(0.28) {
			add(food, 0.3, 2)
		}
	}
	if c.happens(0.2) {
		add(pick(c, "oat flour", "white sugar", "alfalfa meal", "soybean meal", "liquid seaweed", "liquid humic acid"), 0.2, 1)
	}
}

func digits(v float64) string {
	return strconv.FormatFloat(mustFloat(strconv.FormatFloat(v, 'g', 3, 64)), 'f', -1, 64)
}

func mustFloat(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(err)
	}
	return v
}

// liquid, metre and degree write an amount in the plan's units.
func (p *plan) liquid(litres float64) string {
	switch {
	case p.us && litres < 1.5:
		return digits(128*quantity.Litres(litres).USGallons()) + " fl oz"
	case p.us:
		return digits(quantity.Litres(litres).USGallons()) + " gal"
	case litres < 1:
		return digits(litres*1000) + " mL"
	}
	return digits(litres) + " L"
}

func (p *plan) metre(m float64) string {
	if p.us {
		return digits(quantity.Metres(m).Feet()) + " ft"
	}
	return digits(m) + " m"
}

func (p *plan) degree(celsius float64) string {
	if p.us {
		return fmt.Sprintf("%.0f °F", quantity.Celsius(celsius).Fahrenheit())
	}
	return fmt.Sprintf("%.1f °C", celsius)
}

// amount is what a line asks for in the whole brew.
func (p *plan) amount(name string, grams float64, byVolume bool) string {
	i, err := recipe.Library().Find(name)
	if err != nil {
		panic(err)
	}
	if byVolume {
		return p.liquid(grams / float64(i.Bulk) / 1000)
	}
	return digits(grams) + " g"
}

// text is the job file.
func (p *plan) text() string {
	var b strings.Builder
	units := "metric"
	if p.us {
		units = "us"
	}
	fmt.Fprintf(&b, "form = 1\n\n[holding]\nname = \"Upper plots\"\nzone = %q\nunits = %q\n\n[limits]\ndo = \"%g mg/L\"\n\n", p.place.zone, units, p.limit)
	fmt.Fprintf(&b, "[[site]]\nname = \"Yard\"\nlatitude = %.1f\nlongitude = %.1f\naltitude = %q\n\n", p.place.latitude, p.place.longitude, p.metre(p.altitude))
	fmt.Fprintf(&b, "[[pump]]\nname = \"Air pump\"\ncurve = %q\nbubbles = %q\ndiffuser_loss = \"2.4 kPa\"\ntube_bore = \"%g mm\"\ntube_length = \"2 m\"\n\n", p.curve, p.bubbles, p.bore)
	fmt.Fprintf(&b, "[[vessel]]\nname = %q\nfull = %q\nbrew = %q\ndepth = %q\npump = \"Air pump\"\nsite = \"Yard\"\n", p.vessel, p.liquid(p.volume*1.2), p.liquid(p.volume), p.metre(p.depth))
	p.writeTest(&b)
	fmt.Fprintf(&b, "\n[water]\nsource = %q\ntemperature = %q\nconductivity = \"%g uS/cm\"\n\n", p.wellOrTap, p.degree(p.water), p.conductivity)
	p.writeRecipe(&b)
	fmt.Fprintf(&b, "\n[[batch]]\nname = %q\nvessel = %q\nrecipe = \"Usual\"\nvolume = %q\nstarted_at = %s\ntemperature = %q\n", p.name, p.vessel, p.liquid(p.volume), p.start.Format(time.RFC3339), p.degree(p.water))
	return b.String()
}

func (p *plan) writeTest(b *strings.Builder) {
	two := func(v float64) string { return strconv.FormatFloat(v, 'g', 2, 64) }
	if p.knownBy != "plate" {
		fmt.Fprintf(b, "kla20 = \"%s /h\"\n", two(p.kla[1]))
	}
	if p.knownBy == "tested" {
		fmt.Fprintf(b, "kla20_low95 = \"%s /h\"\nkla20_high95 = \"%s /h\"\n", two(p.kla[0]), two(p.kla[2]))
	}
}

func (p *plan) writeRecipe(b *strings.Builder) {
	lean := "balanced"
	if p.gramsOf("molasses") > 1 {
		lean = "bacterial"
	}
	fmt.Fprintf(b, "[[recipe]]\nname = \"Usual\"\nlean = %q\nfor_volume = %q\nhours = %g\nitems = [\n", lean, p.liquid(p.volume), p.planned)
	for _, i := range p.items {
		fmt.Fprintf(b, "  { ingredient = %q, amount = %q },\n", i.name, p.amount(i.name, i.perLitre*p.volume, i.byVolume))
	}
	b.WriteString("]\n")
}

// gramsOf is what the recipe says of an ingredient, g/L.
func (p *plan) gramsOf(name string) float64 {
	for _, i := range p.items {
		if i.name == name {
			return i.perLitre
		}
	}
	return 0
}

// subject reads the job file as the forecast will.
func (p *plan) subject() (*forecast.Subject, error) {
	file, faults := jobfile.Read([]byte(p.text()), "job.toml", jobfile.Whole)
	if len(faults) > 0 {
		return nil, faults
	}
	return forecast.Of(file, p.name)
}
