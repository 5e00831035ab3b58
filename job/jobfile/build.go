package jobfile

import (
	"time"

	"aerosteep/job/ground"
	"aerosteep/job/recipe"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/science/oxygen"
	"aerosteep/wording"
)

// build makes the typed file of records in which nothing is wrong. What is not
// there takes its default.
func build(c *checker) *File {
	f := &File{records: c.records}
	f.Holding = buildHolding(c)
	f.Limits = buildLimits(c.one("limits"))
	f.Water = buildWater(c.one("water"))
	f.Hygiene = buildFacts(c.one("hygiene"))
	f.Costs = buildCosts(c.one("costs"))
	f.Larder, f.Recipes = c.shelf, c.recipes
	for _, r := range c.records["site"] {
		f.Sites = append(f.Sites, buildSite(r))
	}
	for _, r := range c.records["bed"] {
		f.Beds = append(f.Beds, buildBed(r))
	}
	for _, r := range c.records["pump"] {
		f.Pumps = append(f.Pumps, buildPump(r))
	}
	for _, r := range c.records["vessel"] {
		f.Vessels = append(f.Vessels, buildVessel(r))
	}
	for _, r := range c.records["applicator"] {
		f.Applicators = append(f.Applicators, buildApplicator(r))
	}
	for _, r := range c.records["person"] {
		f.People = append(f.People, Person{
			Initials: r.name(), FullName: or(r, "full_name", ""), Role: or(r, "role", ""), Training: or(r, "training", ""),
			Language: wording.Language(or(r, "language", "")),
		})
	}
	for _, r := range c.records["logger"] {
		f.Loggers = append(f.Loggers, Logger{Name: r.name(), Columns: or(r, "columns", []string(nil)), Order: or(r, "order", "")})
	}
	for i, r := range c.records["want"] {
		w := buildWant(i, r)
		if a, known := f.Applicator(w.Applicator); known {
			w.Can = a.Tank
		}
		f.Wants = append(f.Wants, w)
	}
	for _, r := range c.records["batch"] {
		f.Batches = append(f.Batches, buildBatch(r))
	}
	return f
}

// one is the table of that name, or an empty one.
func (c *checker) one(name string) *record {
	if list := c.records[name]; len(list) > 0 {
		return list[0]
	}
	return &record{form: findTable(name), table: &table{}, values: map[string]any{}}
}

func buildHolding(c *checker) Holding {
	r := c.one("holding")
	h := Holding{
		Name:      r.name(),
		Zone:      time.UTC,
		ZoneGiven: c.zone != nil,
		Reader: wording.Reader{
			Language: wording.Language(or(r, "language", string(wording.English))),
			Units:    wording.Units(or(r, "units", string(wording.US))),
		},
		Currency:     or(r, "currency", ""),
		OxygenMeter:  or(r, "oxygen_meter", true),
		Emergency:    or(r, "emergency", ""),
		NoMolasses:   !or(r, "molasses", true),
		MeterUnknown: !r.has("oxygen_meter"),
	}
	if c.zone != nil {
		h.Zone = c.zone
	}
	return h
}

func buildLimits(r *record) Limits {
	return Limits{
		DO:            optional[quantity.Concentration](r, "do"),
		Chance:        or(r, "chance", 5.0),
		UseByDO:       or(r, "use_by_do", quantity.Concentration(2)),
		StrainMinutes: or(r, "strain_minutes", 30.0),
		Loss:          or(r, "loss", quantity.Percent(5)),
		Molasses:      or(r, "molasses", recipe.Ceiling),
	}
}

func buildWater(r *record) Water {
	return Water{
		Source:           or(r, "source", ""),
		FreeChlorine:     optional[quantity.Concentration](r, "free_chlorine"),
		TotalChlorine:    optional[quantity.Concentration](r, "total_chlorine"),
		Chloramine:       optional[quantity.Concentration](r, "chloramine"),
		Temperature:      or(r, "temperature", quantity.Celsius(15)),
		TemperatureGiven: r.has("temperature"),
		Conductivity:     optional[quantity.Conductivity](r, "conductivity"),
	}
}

// buildFacts is nil where the table says nothing of hygiene.
func buildFacts(r *record) Facts {
	var facts Facts
	for _, name := range factNames {
		if v, given := get[string](r, name); given {
			if facts == nil {
				facts = Facts{}
			}
			facts[name] = v
		}
	}
	return facts
}

func buildCosts(r *record) Costs {
	return Costs{
		Electricity:     optional[Price](r, "electricity"),
		Wage:            optional[Price](r, "wage"),
		MinutesPerBatch: optional[float64](r, "minutes_per_batch"),
	}
}

func buildSite(r *record) ground.Site {
	return ground.Site{
		Name:          r.name(),
		Latitude:      or(r, "latitude", 0.0),
		Longitude:     or(r, "longitude", 0.0),
		Altitude:      or(r, "altitude", quantity.Length(0)),
		AltitudeKnown: r.has("altitude"),
		WorkHours:     optional[ground.WorkHours](r, "work_hours"),
		NoWork:        or(r, "no_work", []time.Weekday(nil)),
		Drive:         optional[quantity.Span](r, "drive"),
	}
}

func buildBed(r *record) Bed {
	return Bed{
		Bed: ground.Bed{
			Name:     r.name(),
			Site:     or(r, "site", ""),
			Area:     optional[quantity.Area](r, areaKey),
			Crop:     or(r, "crop", ""),
			Stage:    ground.Stage(or(r, "stage", "")),
			Corners:  or(r, "corners", []ground.Corner(nil)),
			Trees:    or(r, "trees", 0),
			Landmark: or(r, "landmark", ""),
			Gate:     or(r, "gate", ""),
			KeepOff:  or(r, "keep_off", []string(nil)),
			Every:    optional[quantity.Span](r, "every"),
			First:    optional[time.Time](r, "first"),
			Last:     optional[time.Time](r, "last"),
		},
		Batches: or(r, "batch", []string(nil)),
		Facts:   buildFacts(r),
	}
}

func buildPump(r *record) rig.Pump {
	return rig.Pump{
		Name:         r.name(),
		Curve:        or(r, "curve", air.Curve(nil)),
		LabelFlow:    optional[quantity.Flow](r, "label_flow"),
		Power:        optional[quantity.Power](r, "power"),
		TubeBore:     optional[quantity.Length](r, "tube_bore"),
		TubeLength:   optional[quantity.Length](r, "tube_length"),
		Bubbles:      oxygen.Bubbles(or(r, "bubbles", "")),
		SOTEPerMetre: optional[quantity.Share](r, "sote_per_m"),
		DiffuserLoss: optional[quantity.Pressure](r, "diffuser_loss"),
	}
}

// mostFilled is the part of a vessel that is brewed in where nothing is said:
// foam needs the rest (common practice).
const mostFilled = 0.85

func buildVessel(r *record) rig.Vessel {
	full := or(r, fullKey, quantity.Volume(0))
	brew := or(r, "brew", mostFilled*full)
	return rig.Vessel{
		Name:       r.name(),
		Full:       full,
		Brew:       brew,
		Least:      or(r, "least", brew/2),
		Shape:      or(r, shapeKey, rig.Shape(nil)),
		Depth:      optional[quantity.Length](r, "depth"),
		Pump:       or(r, "pump", ""),
		KLa20:      buildKLa(r),
		Indoors:    optional[bool](r, "indoors"),
		Site:       or(r, "site", ""),
		Turnaround: or(r, "turnaround", quantity.Hours(3)),
	}
}

func buildKLa(r *record) *rig.MeasuredKLa {
	estimate, given := get[quantity.PerTime](r, "kla20")
	if !given {
		return nil
	}
	return &rig.MeasuredKLa{
		Estimate: estimate,
		Low95:    optional[quantity.PerTime](r, "kla20_low95"),
		High95:   optional[quantity.PerTime](r, "kla20_high95"),
		InBrew:   or(r, "kla20_in", "water") == "brew",
	}
}

func buildApplicator(r *record) rig.Applicator {
	return rig.Applicator{
		Name:            r.name(),
		Kind:            rig.ApplicatorKind(or(r, "kind", "")),
		Tank:            optional[quantity.Volume](r, "tank"),
		DeadVolume:      or(r, "dead_volume", quantity.Volume(0)),
		SmallestOpening: optional[quantity.Length](r, "smallest_opening"),
		MinutesPerLoad:  or(r, "minutes_per_load", 20.0),
		HeldBefore:      or(r, "held_before", ""),
		Borrowed:        or(r, "borrowed", false),
		EmptyMass:       optional[quantity.Mass](r, "empty_mass"),
		Plate:           optional[quantity.Mass](r, "plate"),
		Air:             or(r, "air", false),
	}
}

func buildWant(index int, r *record) Want {
	return Want{
		Index:      index,
		Line:       r.line,
		Bed:        or(r, "bed", ""),
		Method:     or(r, "method", ""),
		At:         optional[time.Time](r, "at"),
		From:       optional[time.Time](r, "from"),
		Until:      optional[time.Time](r, "until"),
		TeaRate:    optional[quantity.Dose](r, "tea_rate"),
		Tea:        optional[quantity.Volume](r, "tea"),
		MixRate:    optional[quantity.Dose](r, "mix_rate"),
		Each:       optional[quantity.Volume](r, "each"),
		Cans:       optional[float64](r, "cans"),
		Count:      or(r, "count", 0),
		Dilution:   or(r, "dilution", 0.0),
		Recipe:     or(r, "recipe", ""),
		Applicator: or(r, "applicator", ""),
	}
}

func buildBatch(r *record) Batch {
	return Batch{
		Name:        r.name(),
		Vessel:      or(r, "vessel", ""),
		Recipe:      or(r, "recipe", ""),
		Volume:      optional[quantity.Volume](r, "volume"),
		StartedAt:   optional[time.Time](r, "started_at"),
		Temperature: optional[quantity.Temperature](r, "temperature"),
		Facts:       buildFacts(r),
	}
}
