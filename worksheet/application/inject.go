package application

import (
	"slices"

	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/science/spray"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var inject = worksheet.Sheet{
	Name: "inject", Group: worksheet.Application,
	Inputs: slices.Concat([]worksheet.Input{
		{Flag: "tea", Kind: worksheet.Volume, Required: true, Low: "0 L", Over: true},
		{Flag: "injector", Kind: worksheet.Text},
		{Flag: "over", Kind: worksheet.Span, Low: "0 s", Over: true},
		{Flag: "injector-convention", Kind: worksheet.Choice, Choices: []string{string(application.Total), string(application.Parts)}, Default: string(application.Total)},
		{Flag: "flow", Kind: worksheet.Flow, Low: "0 L/min", Over: true},
	}, dilutionInputs(), []worksheet.Input{
		{Flag: "line-length", Kind: worksheet.Length, Low: "0 m", Over: true},
		{Flag: "line-bore", Kind: worksheet.SmallLength, Low: "0 mm", Over: true},
		{Flag: "emitter-spacing", Kind: worksheet.Length, Low: "0 m", Over: true},
	}),
	Example: `--tea "5 gal" --injector 1:100 --ratio 1:200 --flow "4 gal/min" --line-length "100 ft" --line-bore "0.625 in" --emitter-spacing "1 ft"`,
	Sources: []source.Source{source.UMassInjectors, source.WSUFS035E, source.UCFlushing},
	Shape:   injectAnswer{},
	Run:     runInject,
}

type injectAnswer struct {
	Minutes    float64  `json:"minutes"`
	Mix        *float64 `json:"mix_l"`
	Stock      float64  `json:"stock_l"`
	StockTea   float64  `json:"stock_percent_tea"`
	StockWater float64  `json:"stock_water_l"`
	Carrier    *float64 `json:"carrier_l"`
	PerMinute  float64  `json:"injection_l_per_min"`
	PerHour    float64  `json:"injection_l_per_h"`
	Share      *float64 `json:"injector_share_percent"`
	Words
	Line   *float64 `json:"line_volume_l"`
	Travel *float64 `json:"travel_minutes"`
	Flush  *float64 `json:"flush_flow_l_per_min"`
}

func runInject(f *worksheet.Form) (*worksheet.Result, error) {
	injection, d, err := readInjection(f)
	if err != nil {
		return nil, err
	}
	run, err := injection.Run()
	if err != nil {
		return nil, refused(f, err)
	}
	answer := injectAnswer{
		Minutes: run.Time.Minutes(), Mix: in(run.Mix, quantity.Volume.Litres),
		Stock: run.Stock.Total.Litres(), StockTea: run.Stock.Share.Percent(), StockWater: run.Stock.Water.Litres(),
		Carrier: in(run.Carrier, quantity.Volume.Litres), PerMinute: run.Rate.LitresPerMinute(), PerHour: run.Rate.LitresPerMinute() * 60,
		Share: in(run.Share, quantity.Share.Percent), Words: words(run.Tea),
	}
	if err := readLine(f, &answer); err != nil {
		return nil, refused(f, err)
	}
	r := &worksheet.Result{Answer: injectSentence(run), Data: answer, Sources: f.Sheet.Sources}
	d.askTurned(r)
	r.Caution("application.backflow")
	return r, nil
}

func readInjection(f *worksheet.Form) (application.Injection, dilution, error) {
	injection := application.Injection{Tea: f.Volume("tea"), Over: given[quantity.Span](f, "over"), Flow: given[quantity.Flow](f, "flow")}
	mode, err := f.OneOf("injector", "over")
	if err != nil {
		return injection, dilution{}, err
	}
	if mode == "over" {
		return injection, dilution{}, f.OnlyWith("--over", nil, "injector-convention", "ratio", "convention", "percent-tea")
	}
	if !f.Has("flow") {
		return injection, dilution{}, f.Refuse("flow", "worksheet.together", wording.Places{"missing": "--flow", "given": "--injector"})
	}
	d, err := readDilution(f)
	if err != nil {
		return injection, d, err
	}
	_, share, err := readRatio(f, "injector", application.Convention(f.Text("injector-convention")))
	injection.Share, injection.Wanted = &share, d.share
	return injection, d, err
}

// readLine adds what a line needs: how long tea travels in it, and the flow
// that flushes it.
func readLine(f *worksheet.Form, answer *injectAnswer) error {
	if err := f.Together("line-length", "line-bore"); err != nil {
		return err
	}
	if !f.Has("line-length") {
		if f.Has("emitter-spacing") {
			return f.Refuse("line-length", "worksheet.together", wording.Places{"missing": "--line-length", "given": "--emitter-spacing"})
		}
		return nil
	}
	if !f.Has("flow") {
		return f.Refuse("flow", "worksheet.together", wording.Places{"missing": "--flow", "given": "--line-length"})
	}
	line := spray.Line{Length: f.Length("line-length"), Bore: f.Length("line-bore"), Emitters: given[quantity.Length](f, "emitter-spacing")}
	travel, err := line.Travel(f.Flow("flow"))
	if err != nil {
		return err
	}
	holds, err := line.Holds()
	if err != nil {
		return err
	}
	flush, err := line.Flush()
	answer.Line, answer.Travel, answer.Flush = worksheet.Some(holds.Litres()), worksheet.Some(travel.Minutes()), worksheet.Some(flush.LitresPerMinute())
	return err
}

func injectSentence(run application.Injected) wording.Text {
	places := wording.Places{"time": run.Time, "stock": run.Stock.Total, "rate": run.Rate}
	if run.Tea == nil {
		return wording.Say("sheet.inject.pump", places)
	}
	places["mix"], places["words"] = *run.Mix, mixText(*run.Tea)
	if run.Stock.Water > 0 {
		places["water"] = run.Stock.Water
		return wording.Say("sheet.inject.stock", places)
	}
	return wording.Say("sheet.inject.answer", places)
}
