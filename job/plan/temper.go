package plan

import (
	"math"

	"aerosteep/quantity"
	"aerosteep/science/heat"
	"aerosteep/science/water"
	"aerosteep/science/weather"
	"aerosteep/source"
	"aerosteep/wording"
)

// Tempering is one way to bring the water that is filled in to a temperature
// that suits the brew, beside brewing it for longer.
type Tempering struct {
	What    string   `json:"what"` // hot-water | heater | indoors | frozen-bottles | night | shade
	Text    string   `json:"text"`
	HotL    *float64 `json:"hot_l"`
	Hours   *float64 `json:"hours"`
	HeaterW *float64 `json:"heater_w"`
	IceKg   *float64 `json:"ice_kg"`
}

// Between which temperatures water is filled in without a word, and where it is
// brought to (common practice), with what is at hand in a house.
const (
	coldFill  quantity.Temperature = 15
	warmFill  quantity.Temperature = 26
	warmGoal  quantity.Temperature = 24
	hotTap    quantity.Temperature = 50
	room      quantity.Temperature = 22
	nightStep quantity.Temperature = 5 // by which the night's air is cooler than the water
	nightLong                      = 8 // hours of it
	mostHours                      = 48
	oneNight                       = 12 // hours that a heater may take
)

// heaters are the sizes that immersion heaters are sold in, W.
var heaters = []float64{50, 100, 200, 300, 500, 1000, 2000, 3000, 6000, 12000}

// tempering is how a fill that is too cold or too warm is cured.
func (p *planner) tempering(b *batch) []Tempering {
	list := []Tempering{}
	t := p.File.Water.Temperature
	switch {
	case t < coldFill:
		p.caution("plan.caution.tempering.cold")
		list = append(list, p.hotWater(b, t), p.heater(b, t), p.indoors(b, t))
	case t > warmFill:
		p.caution("plan.caution.tempering.warm")
		list = append(list, p.frozenBottles(b, t), p.night(b, t), p.shade(b))
	}
	if len(list) > 0 {
		p.cite(source.CommonPractice)
	}
	return list
}

// tempered are the words that every way needs.
func tempered(b *batch, from, to quantity.Temperature) wording.Places {
	return wording.Places{"vessel": b.vessel.Name, "volume": b.volume, "from": from, "to": to, "hours": b.brew.hours}
}

// hotWater takes the place of a part of the cold.
func (p *planner) hotWater(b *batch, cold quantity.Temperature) Tempering {
	hot, rest, err := water.TwoTaps(b.volume, cold, hotTap, meantFor)
	if err != nil { // water of a temperature that a file may not give
		return Tempering{What: "hot-water"}
	}
	places := tempered(b, cold, meantFor)
	places["hot"], places["cold"], places["tap"] = hot, rest, hotTap
	return Tempering{What: "hot-water", Text: p.say("plan.temper.hot-water", places), HotL: new(hot.Litres())}
}

// heater is the smallest that warms the filling within a night, its walls
// losing heat to air as cold as the water.
func (p *planner) heater(b *batch, cold quantity.Temperature) Tempering {
	for _, watts := range heaters {
		v := standing(b.volume, cold)
		v.Heater = quantity.Watts(watts)
		if hours, ok := v.Follow(cold, oneNight).Reach(meantFor); ok {
			places := tempered(b, cold, meantFor)
			places["watts"], places["wait"] = v.Heater, hours
			return Tempering{What: "heater", Text: p.say("plan.temper.heater", places), Hours: new(hours.Hours()), HeaterW: new(watts)}
		}
	}
	return Tempering{What: "heater", Text: p.say("plan.temper.no-heater", tempered(b, cold, meantFor))}
}

// indoors lets the filling stand in a warm room.
func (p *planner) indoors(b *batch, cold quantity.Temperature) Tempering {
	places := tempered(b, cold, meantFor)
	places["room"] = room
	hours, ok := standing(b.volume, room).Follow(cold, mostHours).Reach(meantFor)
	if !ok {
		places["most"], places["reached"] = mostHours, standing(b.volume, room).at(cold, mostHours)
		return Tempering{What: "indoors", Text: p.say("plan.temper.indoors-slow", places)}
	}
	places["wait"] = hours
	return Tempering{What: "indoors", Text: p.say("plan.temper.indoors", places), Hours: new(hours.Hours())}
}

// frozenBottles are closed and washed on the outside.
func (p *planner) frozenBottles(b *batch, warm quantity.Temperature) Tempering {
	ice := heat.IceToCool(b.volume, warm, warmGoal)
	places := tempered(b, warm, warmGoal)
	places["ice"] = ice
	return Tempering{What: "frozen-bottles", Text: p.say("plan.temper.frozen-bottles", places), IceKg: new(ice.Kilograms())}
}

// night lets the filling stand through a night.
func (p *planner) night(b *batch, warm quantity.Temperature) Tempering {
	places := tempered(b, warm, warmGoal)
	places["step"] = quantity.TemperatureStep(nightStep)
	places["reached"] = standing(b.volume, warm-nightStep).at(warm, nightLong)
	places["long"] = nightLong
	return Tempering{What: "night", Text: p.say("plan.temper.night", places), Hours: new(float64(nightLong))}
}

func (p *planner) shade(b *batch) Tempering {
	return Tempering{What: "shade", Text: p.say("plan.temper.shade", wording.Places{"vessel": b.vessel.Name})}
}

// still is a filling that stands in air, bare and not bubbled.
type still struct{ heat.Vessel }

func standing(v quantity.Volume, air quantity.Temperature) still {
	return still{heat.Vessel{Volume: v, Walls: heat.TypicalWalls(v), Air: weather.MoistAir{Temperature: air, Pressure: quantity.StandardAtmosphere}}}
}

func (s still) at(start quantity.Temperature, hours float64) quantity.Temperature {
	t, _ := s.Follow(start, hours).At(math.Max(hours, 0))
	return t
}
