package forecast

import (
	"math"
	"time"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/job/recipe"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/science/weather"
	"aerosteep/wording"
)

// Subject is one batch of a job file, ready to be forecast.
type Subject struct {
	Name   string
	Setup  Setup
	Air    Air
	Recipe recipe.Batch
	Start  time.Time
	Zone   *time.Location
	Larder recipe.Shelf
}

// usualHours are those of a recipe that gives none (common practice).
const usualHours = 24

// Of finds a batch of a job file and all that is known about it.
//
// Errors: *fault.Fault of batch where the file knows no such batch, or of what
// a forecast of it lacks.
func Of(file *jobfile.File, name string) (*Subject, error) {
	b, known := file.Batch(name)
	if !known {
		return nil, unknownBatch(file, name)
	}
	if err := complete(b); err != nil {
		return nil, err
	}
	vessel, _ := file.Vessel(b.Vessel)
	r, known := file.Recipe(b.Recipe)
	if !known {
		return nil, lacks("recipe", b.Recipe)
	}
	weighed, err := recipe.Scale(r, *b.Volume)
	if err != nil {
		return nil, err
	}
	site, _ := file.Site(vessel.Site)
	s := &Subject{Name: b.Name, Recipe: weighed, Start: *b.StartedAt, Zone: file.Holding.Zone, Larder: file.Larder}
	if err := s.equip(file, vessel, b, site.Altitude); err != nil {
		return nil, err
	}
	s.Setup.Compost, s.Setup.Additions = brought(weighed, *b.Volume, s.Setup.Planned.Hours())
	return s, nil
}

// equip fills in what the vessel, the pump and the place give.
func (s *Subject) equip(file *jobfile.File, v rig.Vessel, b jobfile.Batch, altitude quantity.Length) error {
	pressure, err := air.PressureAt(altitude)
	if err != nil {
		return err
	}
	start := file.Water.Temperature
	if b.Temperature != nil {
		start = *b.Temperature
	}
	var pump *rig.Pump
	if p, known := file.Pump(v.Pump); known && v.Pump != "" {
		pump = &p
	}
	s.Air, err = BelieveAir(v, pump, *b.Volume, pressure, start)
	if err != nil {
		return err
	}
	hours := float64(usualHours)
	if s.Recipe.Recipe.Hours != nil {
		hours = *s.Recipe.Recipe.Hours
	}
	s.Setup = Setup{
		Volume: *b.Volume, Depth: DepthOf(v, *b.Volume), Pressure: pressure, Transfer: s.Air.Transfer,
		Start: start, Indoors: v.Indoors, Planned: quantity.Hours(hours),
	}
	if file.Water.Conductivity != nil {
		s.Setup.Conductivity = *file.Water.Conductivity
	}
	if file.Limits.DO != nil {
		s.Setup.Limit = *file.Limits.DO
	}
	return nil
}

// Brought parts a weighed recipe into its composts and its foods by the litre.
// What goes in to finish goes in at the end.
func Brought(b recipe.Batch, planned quantity.Span) ([]Compost, []Addition) {
	return brought(b, b.Volume, planned.Hours())
}

func brought(b recipe.Batch, volume quantity.Volume, planned float64) (composts []Compost, additions []Addition) {
	for _, w := range b.Items {
		if w.Item.Ingredient.Compost {
			composts = append(composts, Compost{Kind: w.Item.Ingredient.Name, GramsPerLitre: w.PerLitre})
			continue
		}
		additions = append(additions, addition(w, volume, planned))
	}
	return composts, additions
}

func addition(w recipe.Weighed, volume quantity.Volume, planned float64) Addition {
	per := func(m quantity.Mass) quantity.Concentration {
		return quantity.MilligramsPerLitre(m.Milligrams() / volume.Litres())
	}
	a := Addition{
		Name: w.Item.Ingredient.Name, Hour: w.Item.When.Hours,
		Ready: per(w.ReadyDemand), Slow: per(w.SlowDemand()), Nitrogen: per(w.Nitrogen) * solubleNitrogen,
	}
	if w.Item.When.Finish {
		a.Finish, a.Hour = true, planned
	}
	return a
}

// solubleNitrogen is the share of a food's nitrogen that organisms find in
// solution at once; the rest comes with the slow food (judgement).
const solubleNitrogen = 0.3

func complete(b jobfile.Batch) error {
	switch {
	case b.Vessel == "":
		return lacks("vessel", b.Name)
	case b.Recipe == "":
		return lacks("recipe", b.Name)
	case b.Volume == nil:
		return lacks("volume", b.Name)
	case b.StartedAt == nil:
		return lacks("started_at", b.Name)
	}
	return nil
}

func lacks(key, batch string) *fault.Fault {
	return fault.New("batch."+key, "", wording.Say("forecast.lacks", wording.Places{"batch": batch, "key": key}),
		wording.Say("forecast.lacks.allowed"), wording.Say("forecast.lacks.advice", wording.Places{"key": key}))
}

func unknownBatch(file *jobfile.File, name string) *fault.Fault {
	names := make([]string, len(file.Batches))
	for i, b := range file.Batches {
		names[i] = b.Name
	}
	nearest := fault.Nearest(name, names)
	advice := wording.Text{}
	if nearest != "" {
		advice = wording.Say("forecast.batch.near", wording.Places{"nearest": nearest})
	}
	f := fault.New("batch", name, wording.Say("forecast.batch.unknown", wording.Places{"batch": name}),
		wording.Say("forecast.batch.allowed", wording.Places{"names": names}), advice)
	f.Nearest = nearest
	return f
}

// UnderSky gives a setup the outdoor air of a weather forecast.
func (s *Subject) UnderSky(f *weather.Forecast) {
	s.Setup.Outdoors = nil
	for _, h := range f.Hours {
		if h.Temperature != nil {
			s.Setup.Outdoors = append(s.Setup.Outdoors, AirAt{Hour: h.At.Sub(s.Start).Hours(), Temperature: *h.Temperature})
		}
	}
}

// Question asks about this batch at a moment; one before the start asks about
// the start.
func (s *Subject) Question(log Log, now time.Time, hours float64, members int, seed uint64) Question {
	return Question{
		Setup: s.Setup, Log: log, Larder: s.Larder, Airflow: s.Air.Airflow,
		Now: math.Max(0, now.Sub(s.Start).Hours()), Hours: hours, Members: members, Seed: seed,
	}
}

// Telling is what puts a forecast of this batch into words.
func (s *Subject) Telling(file *jobfile.File) Telling {
	return Telling{
		Batch: s.Name, Start: s.Start, Zone: s.Zone, UseByDO: file.Limits.UseByDO,
		SparePump: len(file.Pumps) > len(file.Vessels), NoMeter: !file.Holding.OxygenMeter && !file.Holding.MeterUnknown,
	}
}
