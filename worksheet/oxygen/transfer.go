package oxygen

import (
	"aerosteep/quantity"
	"aerosteep/science/oxygen"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/place"
)

var transfer = worksheet.Sheet{
	Name:  "transfer",
	Group: worksheet.Air,
	Inputs: withPlace(
		worksheet.Input{Flag: "volume", Kind: worksheet.Volume, Required: true, Low: "0.5 L", High: "100 m3"},
		worksheet.Input{Flag: "temp", Kind: worksheet.Temperature, Required: true, Low: "0 °C", High: "40 °C"},
		worksheet.Input{Flag: "airflow", Kind: worksheet.Airflow, Low: "0.01 L/min", High: "50000 L/min"},
		worksheet.Input{Flag: "depth", Kind: worksheet.Length, Low: "0.05 m", High: "5 m"},
		worksheet.Input{Flag: "sote-per-m", Kind: worksheet.Share, Low: "0.1 %", High: "12 %"},
		worksheet.Input{Flag: "bubbles", Kind: worksheet.Choice, Choices: []string{string(oxygen.Coarse), string(oxygen.Medium), string(oxygen.Fine)}},
		worksheet.Input{Flag: "kla20", Kind: worksheet.PerTime, Low: "0.01 /h", High: "1000 /h"},
		worksheet.Input{Flag: "alpha", Kind: worksheet.Bare, Low: "0.2", High: "1.2"},
		worksheet.Input{Flag: "beta", Kind: worksheet.Bare, Default: "0.98", Low: "0.8", High: "1"},
		worksheet.Input{Flag: "fouling", Kind: worksheet.Bare, Default: "1", Low: "0.3", High: "1"},
		worksheet.Input{Flag: "limit", Kind: worksheet.Oxygen, Default: "6 mg/L", Low: "0 mg/L", High: "20 mg/L"},
		worksheet.Input{Flag: "our", Kind: worksheet.Uptake, Low: "0 mg/L/h", High: "2000 mg/L/h"},
		worksheet.Input{Flag: "diameter", Kind: worksheet.Length, Low: "0.05 m", High: "5 m"},
	),
	Example: `--volume "100 L" --airflow "60 L/min" --depth "0.6 m" --bubbles medium --temp 22C --altitude "640 m" --our "20 mg/L/h" --diameter "50 cm"`,
	Sources: transferSources,
	Shape:   transferAnswer{},
	Run:     runTransfer,
}

var transferSources = []source.Source{source.ASCE2, source.EPA1989, source.HeijnenVantRiet1984, source.Deckwer1974, source.MassBalance, source.BensonKrause1984, place.Source}

type transferAnswer struct {
	SOTR       worksheet.Estimate `json:"sotr_g_per_h"`
	KLa20      worksheet.Estimate `json:"kla20_per_h"`
	MostUptake worksheet.Estimate `json:"max_our_mg_per_l_h"`
	AOTR       worksheet.Estimate `json:"aotr_g_per_h"`
	Saturation float64            `json:"saturation_mg_per_l"`
	place.Keys
	Alpha         float64             `json:"alpha"`
	Beta          float64             `json:"beta"`
	Fouling       float64             `json:"fouling"`
	Steady        *worksheet.Estimate `json:"steady_do_mg_per_l"`
	AirflowNeeded *worksheet.Estimate `json:"airflow_needed_l_per_min"`
	KLa20Needed   *float64            `json:"kla20_needed_per_h"`
	Verdict       *string             `json:"verdict"`
	GasVelocity   *float64            `json:"gas_velocity_mm_per_s"`
	HeijnenRiet   *float64            `json:"kla20_heijnen_vant_riet_per_h"`
	Deckwer       *float64            `json:"kla20_deckwer_per_h"`
}

func runTransfer(f *worksheet.Form) (*worksheet.Result, error) {
	if err := checkWays(f); err != nil {
		return nil, err
	}
	at, err := place.Read(f)
	if err != nil {
		return nil, err
	}
	a, err := aeration(f, at)
	if err != nil {
		return nil, err
	}
	volume, limit := f.Volume("volume"), f.Concentration("limit")
	most := a.MostUptake(limit)
	answer := transferAnswer{
		SOTR:       estimate(quantity.Map(a.KLa20, func(k quantity.PerTime) quantity.MassRate { return oxygen.SOTRFromKLa20(k, volume) })),
		KLa20:      estimate(a.KLa20),
		MostUptake: estimate(most),
		AOTR:       estimate(most.Scaled(volume.Litres() / 1000)),
		Saturation: float64(a.Saturation), Keys: at.Keys(), Alpha: a.Alpha, Beta: a.Beta, Fouling: a.Fouling,
	}
	r := &worksheet.Result{
		Answer: wording.Say("sheet.transfer.answer", wording.Places{"uptake": most.Value, "limit": limit}),
		Basis:  worksheet.Standard, Sources: transferSources,
	}
	if f.Has("bubbles") {
		r.Basis = worksheet.Habit
	}
	if f.Has("our") {
		answer.demand(f, a, limit, r)
	}
	if f.Has("diameter") {
		answer.secondOpinion(f, r)
	}
	cautionTransfer(f, a, limit, r)
	at.Tell(r)
	r.Data = answer
	return r, nil
}

// checkWays refuses two ways to say what the air does, none, or half of one.
func checkWays(f *worksheet.Form) error {
	way, err := f.OneOf("kla20", "sote-per-m", "bubbles")
	if err != nil {
		return err
	}
	if way == "kla20" {
		return f.OnlyWith("--kla20", nil, "airflow", "depth", "diameter")
	}
	for _, flag := range []string{"airflow", "depth"} {
		if !f.Has(flag) {
			return f.Refuse(flag, "oxygen.transfer.needs", wording.Places{"flag": "--" + flag, "way": "--" + way, "both": "--airflow, --depth"})
		}
	}
	return nil
}

// aeration is what the form says about the air.
func aeration(f *worksheet.Form, at place.Place) (oxygen.Aeration, error) {
	bubbles := oxygen.Bubbles(f.Text("bubbles"))
	a := oxygen.Aeration{Alpha: bubbles.Alpha(), Beta: f.Number("beta"), Fouling: f.Number("fouling"), Water: f.Temperature("temp")}
	if f.Has("alpha") {
		a.Alpha = f.Number("alpha")
	}
	var err error
	if a.Saturation, err = oxygen.Saturation(a.Water, at.Pressure, 0); err != nil {
		return a, err
	}
	if f.Has("kla20") {
		a.KLa20 = quantity.Alone(f.PerTime("kla20"))
		return a, nil
	}
	perMetre := f.Share("sote-per-m")
	if f.Has("bubbles") {
		perMetre = bubbles.SOTEPerMetre()
	}
	sotr, err := oxygen.SOTR(f.Flow("airflow"), perMetre, f.Length("depth"))
	if err != nil {
		return a, err
	}
	a.KLa20, err = oxygen.KLa20FromSOTR(sotr, f.Volume("volume"))
	return a, err
}

// demand fills in what an uptake makes of the air.
func (answer *transferAnswer) demand(f *worksheet.Form, a oxygen.Aeration, limit quantity.Concentration, r *worksheet.Result) {
	taken := f.Uptake("our")
	steady, verdict := a.SteadyOxygen(taken), a.Verdict(taken, limit)
	answer.Steady, answer.Verdict = worksheet.Some(estimate(steady)), worksheet.Some(string(verdict))
	if kla20, reachable := a.KLa20Needed(taken, limit); reachable {
		answer.KLa20Needed = number(kla20)
	}
	r.Answer = wording.Say("sheet.transfer."+string(verdict), wording.Places{"steady": steady.Value, "limit": limit, "ceiling": a.Ceiling(), "uptake": taken})
	if steady.Value == 0 {
		r.Caution("oxygen.transfer.empty")
	}
	if !f.Has("airflow") {
		return
	}
	needed, reachable := a.AirNeeded(f.Flow("airflow"), taken, limit)
	if !reachable {
		return
	}
	answer.AirflowNeeded = worksheet.Some(estimate(needed))
	if needed.Value > 2*quantity.Airflow(f.Flow("airflow")) {
		r.Caution("oxygen.transfer.much-more-air", wording.Places{"needed": needed.Value})
	}
}

// secondOpinion fills in what two correlations make of a round vessel.
func (answer *transferAnswer) secondOpinion(f *worksheet.Form, r *worksheet.Result) {
	v := oxygen.GasVelocity(f.Flow("airflow"), f.Length("diameter"))
	answer.GasVelocity = number(v * 1000)
	answer.HeijnenRiet, answer.Deckwer = number(oxygen.HeijnenVantRiet(v)), number(oxygen.Deckwer(v))
	if v < oxygen.SlowestCorrelated {
		r.Caution("oxygen.transfer.slow-gas", wording.Places{"velocity": float64(v) * 1000})
	}
}

func cautionTransfer(f *worksheet.Form, a oxygen.Aeration, limit quantity.Concentration, r *worksheet.Result) {
	if a.OutOfReach(limit) {
		r.Caution("oxygen.transfer.out-of-reach", wording.Places{"limit": limit, "ceiling": a.Ceiling()})
	}
	if !f.Has("alpha") {
		r.Caution("oxygen.transfer.alpha", wording.Places{"alpha": a.Alpha})
	}
	r.Caution("air.safety")
}
