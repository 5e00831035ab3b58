package water

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Part is an amount of water at a temperature.
type Part struct {
	Volume      quantity.Volume
	Temperature quantity.Temperature
}

// ScaldsFrom is the temperature from which water burns skin within minutes
// (from memory, a usual limit of safety sheets: 120 °F).
const ScaldsFrom quantity.Temperature = 49

// Mix pours waters together.
//
//	T = sum(V T) / sum(V)
//
// Equal density and heat capacity; good to 0.3 °C between 10 and 60 °C.
func Mix(parts []Part) Part {
	var whole Part
	heat := 0.0
	for _, p := range parts {
		whole.Volume += p.Volume
		heat += p.Volume.Litres() * p.Temperature.Celsius()
	}
	whole.Temperature = quantity.Celsius(heat / whole.Volume.Litres())
	return whole
}

// AddToReach is how much of a further water brings a mix to a target.
//
//	add = V (target - T) / (further - target)
//
// Errors: a target that no amount of the further water reaches.
func AddToReach(mix Part, further, target quantity.Temperature) (quantity.Volume, error) {
	from, to := mix.Temperature, further
	if math.Abs(float64(target-from)) <= slack*100 {
		return 0, nil
	}
	low, high := min(from, to), max(from, to)
	if target < low || target > high || target == to {
		return 0, unreachable(target, low, high)
	}
	return mix.Volume * quantity.Volume((target-from)/(to-target)), nil
}

// TwoTaps fills a volume from a cold and a hot tap.
//
//	hot = V (target - cold) / (hot - cold)
//
// Errors: taps that are not cold below hot; a target outside them.
func TwoTaps(v quantity.Volume, cold, hot, target quantity.Temperature) (hotPart, coldPart quantity.Volume, err error) {
	if !(cold < hot) {
		return 0, 0, fault.New("hot", hot.Speak(wording.Reader{}), wording.Say("water.hot-not-hotter"), wording.Say("water.hot.allowed", wording.Places{"cold": cold}), wording.Text{})
	}
	if target < cold-slack*100 || target > hot+slack*100 {
		return 0, 0, unreachable(target, cold, hot)
	}
	share := min(1, max(0, float64((target-cold)/(hot-cold))))
	hotPart = v * quantity.Volume(share)
	return hotPart, v - hotPart, nil
}

func unreachable(target, low, high quantity.Temperature) error {
	return fault.New("target", target.Speak(wording.Reader{Units: wording.Metric}),
		wording.Say("water.unreachable", wording.Places{"target": target}),
		wording.Say("water.unreachable.allowed", wording.Places{"low": low, "high": high}),
		wording.Say("water.unreachable.advice"))
}

// FillTime is how long a flow takes to fill a volume.
//
//	t = V / flow
func FillTime(v quantity.Volume, flow quantity.Flow) quantity.Span {
	return quantity.Minutes(v.Litres() / flow.LitresPerMinute())
}

// PailFlow is the flow of a hose that filled a pail in a time.
func PailFlow(caught quantity.Volume, in quantity.Span) quantity.Flow {
	return quantity.LitresPerMinute(caught.Litres() / in.Minutes())
}
