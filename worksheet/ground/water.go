package ground

import (
	"strings"

	"aerosteep/quantity"
	"aerosteep/science/water"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var fillTime = worksheet.Sheet{
	Name:  "fill-time",
	Group: worksheet.Water,
	Inputs: []worksheet.Input{
		required(over0("volume", worksheet.Volume, "0 L")),
		over0("flow", worksheet.Flow, "0 L/min"),
		over0("caught", worksheet.Volume, "0 L"),
		{Flag: "seconds", Kind: worksheet.Bare, Low: "1", High: "86400"},
	},
	Example: `--volume "1200 gal" --caught "5 gal" --seconds 60`,
	Sources: []source.Source{source.FillArithmetic},
	Shape:   fillAnswer{},
	Run:     runFillTime,
}

type fillAnswer struct {
	Minutes float64 `json:"minutes"`
	Flow    float64 `json:"flow_l_per_min"`
}

func runFillTime(f *worksheet.Form) (*worksheet.Result, error) {
	how := "flow"
	if f.Has("seconds") && !f.Has("flow") {
		how = "caught"
	} else if _, err := f.OneOf("flow", "caught"); err != nil {
		return nil, err
	} else if f.Has("caught") {
		how = "caught"
	}
	flow := f.Flow("flow")
	if how == "caught" {
		if err := needs(f, "caught", "seconds"); err != nil {
			return nil, err
		}
		flow = water.PailFlow(f.Volume("caught"), quantity.Seconds(f.Number("seconds")))
	} else if err := f.OnlyWith("--flow", nil, "seconds"); err != nil {
		return nil, err
	}
	time := water.FillTime(f.Volume("volume"), flow)
	return &worksheet.Result{
		Answer:  wording.Say("sheet.fill-time.answer", wording.Places{"time": time, "flow": flow, "volume": f.Volume("volume")}),
		Data:    fillAnswer{time.Minutes(), flow.LitresPerMinute()},
		Sources: f.Sheet.Sources,
	}, finite(f, "volume", time.Minutes(), flow.LitresPerMinute())
}

var mixWater = worksheet.Sheet{
	Name:  "mix-water",
	Group: worksheet.Water,
	Inputs: []worksheet.Input{
		{Flag: "parts", Kind: worksheet.Text},
		{Flag: "add-at", Kind: worksheet.Temperature, Low: "0 C", High: "100 C"},
		over0("volume", worksheet.Volume, "0 L"),
		{Flag: "cold", Kind: worksheet.Temperature, Low: "0 C", High: "100 C"},
		{Flag: "hot", Kind: worksheet.Temperature, Low: "0 C", High: "100 C"},
		{Flag: "target", Kind: worksheet.Temperature, Low: "0 C", High: "100 C"},
	},
	Example: `--parts "50 L@10C" --add-at 60C --target 20C`,
	Sources: []source.Source{source.HeatMixing},
	Shape:   mixAnswer{},
	Run:     runMix,
}

type mixAnswer struct {
	VolumeL     float64  `json:"volume_l"`
	Temperature float64  `json:"temperature_c"`
	AddL        *float64 `json:"add_l"`
	HotL        *float64 `json:"hot_l"`
	ColdL       *float64 `json:"cold_l"`
}

var (
	byParts = mode{needs: []string{"parts"}, takes: []string{"add-at", "target"}}
	byTaps  = mode{needs: []string{"volume", "cold", "hot", "target"}}
)

func runMix(f *worksheet.Form) (*worksheet.Result, error) {
	all := f.Sheet.Flags()
	if !f.Has("parts") && len(f.Given("volume", "cold", "hot")) == 0 {
		_, err := f.OneOf("parts", "volume")
		return nil, err
	}
	r := &worksheet.Result{Sources: f.Sheet.Sources}
	if f.Has("parts") {
		if err := byParts.check(f, "--parts", all...); err != nil {
			return nil, err
		}
		return r, pourTogether(f, r)
	}
	if err := byTaps.check(f, wording.Say("sheet.mix-water.two-taps"), all...); err != nil {
		return nil, err
	}
	return r, fromTaps(f, r)
}

// pourTogether mixes what is there, and adds what brings it to a target.
func pourTogether(f *worksheet.Form, r *worksheet.Result) error {
	parts, err := parseParts(f)
	if err != nil {
		return err
	}
	mix := water.Mix(parts)
	hottest := mix.Temperature
	for _, p := range parts {
		hottest = max(hottest, p.Temperature)
	}
	a := mixAnswer{VolumeL: mix.Volume.Litres(), Temperature: mix.Temperature.Celsius()}
	r.Answer = wording.Say("sheet.mix-water.answer", wording.Places{"volume": mix.Volume, "temperature": mix.Temperature})
	if err := f.Together("add-at", "target"); err != nil {
		return err
	}
	if f.Has("add-at") {
		further, target := f.Temperature("add-at"), f.Temperature("target")
		add, err := water.AddToReach(mix, further, target)
		if err != nil {
			return err
		}
		hottest = max(hottest, further)
		a = mixAnswer{VolumeL: (mix.Volume + add).Litres(), Temperature: target.Celsius(), AddL: new(add.Litres())}
		r.Answer = wording.Say("sheet.mix-water.add", wording.Places{"add": add, "further": further, "volume": mix.Volume + add, "temperature": target})
	}
	scald(r, hottest)
	r.Data = a
	return finite(f, "parts", a.VolumeL, a.Temperature)
}

// parseParts reads "10 L@12C, 5 L@60C".
func parseParts(f *worksheet.Form) ([]water.Part, error) {
	var parts []water.Part
	for _, item := range worksheet.SplitList(f.Text("parts")) {
		amount, temperature, cut := strings.Cut(item, "@")
		if !cut {
			return nil, f.Advise("parts", "sheet.mix-water.no-at", "sheet.mix-water.no-at.advice", wording.Places{"item": item})
		}
		v, err := quantity.ParseVolume(amount)
		if err != nil {
			return nil, asFlag(err, "parts")
		}
		t, err := quantity.ParseTemperature(temperature)
		if err != nil {
			return nil, asFlag(err, "parts")
		}
		if v <= 0 || t < -slack || t > 100*(1+slack) {
			return nil, f.Refuse("parts", "sheet.mix-water.part", wording.Places{"item": item})
		}
		parts = append(parts, water.Part{Volume: v, Temperature: t})
	}
	return parts, nil
}

func fromTaps(f *worksheet.Form, r *worksheet.Result) error {
	volume, target := f.Volume("volume"), f.Temperature("target")
	hot, cold, err := water.TwoTaps(volume, f.Temperature("cold"), f.Temperature("hot"), target)
	if err != nil {
		return err
	}
	r.Data = mixAnswer{VolumeL: volume.Litres(), Temperature: target.Celsius(), HotL: new(hot.Litres()), ColdL: new(cold.Litres())}
	r.Answer = wording.Say("sheet.mix-water.taps", wording.Places{"hot": hot, "cold": cold, "temperature": target})
	scald(r, f.Temperature("hot"))
	return nil
}

// scald cautions wherever water is hot enough to burn.
func scald(r *worksheet.Result, hottest quantity.Temperature) {
	if hottest > water.ScaldsFrom {
		r.Caution("sheet.mix-water.scald")
	}
}
