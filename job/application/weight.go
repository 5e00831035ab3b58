package application

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Haul is what a trailer carries.
type Haul struct {
	Liquid               quantity.Volume
	Density              quantity.Density // of the liquid; tea is close to 1 g/mL
	Tank, Trailer, Other quantity.Mass
	Rated                *quantity.Mass   // what the plate allows for the same parts
	TankSize             *quantity.Volume // brimful
}

// Weight is what a haul weighs. Never call a load legal on the strength of it:
// axles, tyres, hitch and brakes have limits of their own, and the law is
// local.
type Weight struct {
	Liquid, Total quantity.Mass
	Margin        *quantity.Mass   // rated - total, negative when over
	Load          *float64         // total / rated, in percent
	Within        *bool            // total not over rated
	MostLiquid    *quantity.Volume // what the rating leaves for liquid
	Fill          *float64         // of the tank, in percent
}

// Weigh adds a haul up:
//
//	liquid = volume x density;  total = liquid + tank + trailer + other
//
// Volume and density over 0, masses 0 or more. A tank smaller than what is in
// it is refused.
func (h Haul) Weigh() (Weight, error) {
	liquid := h.Density.MassOf(h.Liquid)
	empty := h.Tank + h.Trailer + h.Other
	w := Weight{Liquid: liquid, Total: liquid + empty}
	if h.Rated != nil {
		margin, load := *h.Rated-w.Total, float64(w.Total / *h.Rated)*100
		within := !over(w.Total.Grams(), h.Rated.Grams())
		most := max(0, h.Density.VolumeOf(*h.Rated-empty))
		w.Margin, w.Load, w.Within, w.MostLiquid = &margin, &load, &within, &most
	}
	if h.TankSize != nil {
		if over(h.Liquid.Litres(), h.TankSize.Litres()) {
			return Weight{}, fault.New("tank-size", "", wording.Say("application.tank-size", wording.Places{"tank": *h.TankSize, "volume": h.Liquid}),
				wording.Say("application.tank-size.allowed", wording.Places{"volume": h.Liquid}), wording.Text{})
		}
		fill := float64(h.Liquid / *h.TankSize) * 100
		w.Fill = &fill
	}
	return w, nil
}

// Sloshes tells whether a tank is neither nearly empty nor nearly full: then
// its load moves when the vehicle brakes or turns (common practice: 10 to
// 90 %).
func (w Weight) Sloshes() bool {
	return w.Fill != nil && *w.Fill >= 10-slack && *w.Fill <= 90+slack
}
