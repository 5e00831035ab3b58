package application

import (
	money "aerosteep/job/cost"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// orders is the one-period rule: tea does not keep, so that brewing for orders
// which are not in yet weighs what is poured away against what is turned away.
var orders = worksheet.Sheet{
	Name: "orders", Group: worksheet.Application,
	Inputs: []worksheet.Input{
		{Flag: "orders", Kind: worksheet.Volume, List: true, Low: "0 L"},
		{Flag: "mean", Kind: worksheet.Volume, Low: "0 L", Over: true},
		{Flag: "spread", Kind: worksheet.Volume, Low: "0 L", Over: true},
		{Flag: "price", Kind: worksheet.Bare, Required: true, Low: "0", Over: true},
		{Flag: "cost", Kind: worksheet.Bare, Required: true, Low: "0"},
		{Flag: "leftover-worth", Kind: worksheet.Bare, Low: "-1000000", Default: "0"},
		{Flag: "turned-away-cost", Kind: worksheet.Bare, Low: "0", Default: "0"},
	},
	Example: `--orders "12 gal, 8 gal, 15 gal, 9 gal, 20 gal, 11 gal" --price 6 --cost 1.5`,
	Sources: []source.Source{source.OnePeriodRule},
	Shape:   ordersAnswer{},
	Run:     runOrders,
}

type ordersAnswer struct {
	Brew      float64 `json:"brew_l"`
	Critical  float64 `json:"critical_percent"`
	Served    float64 `json:"all_served_percent"`
	Left      float64 `json:"poured_away_l"`
	TurnedOff float64 `json:"turned_away_l"`
	Days      int     `json:"days"`
}

func runOrders(f *worksheet.Form) (*worksheet.Result, error) {
	rule := money.Tomorrow{Price: f.Number("price"), Cost: f.Number("cost"), Salvage: f.Number("leftover-worth"), Goodwill: f.Number("turned-away-cost")}
	if err := f.Together("mean", "spread"); err != nil {
		return nil, err
	}
	if f.Has("orders") == f.Has("mean") {
		return nil, f.Refuse("orders", "application.orders-or-mean")
	}
	var brewed money.Brewed
	var err error
	days := 0
	if f.Has("orders") {
		asked := f.Numbers("orders")
		past := make(money.Days, len(asked))
		for i, v := range asked {
			past[i] = quantity.Volume(v)
		}
		days = len(past)
		brewed, err = rule.Brew(past)
	} else {
		brewed, err = rule.BrewNormal(money.Normal{Mean: f.Volume("mean"), Spread: f.Volume("spread")})
	}
	if err != nil {
		return nil, refused(f, err)
	}
	r := &worksheet.Result{Sources: f.Sheet.Sources, Data: ordersAnswer{
		Brew: brewed.Volume.Litres(), Critical: brewed.Critical * 100, Served: brewed.AllServed * 100,
		Left: brewed.Left.Litres(), TurnedOff: brewed.TurnedOff.Litres(), Days: days,
	}}
	r.Answer = wording.Say("sheet.orders.answer", wording.Places{
		"volume": brewed.Volume, "chance": wording.Chance(brewed.AllServed * 100), "left": brewed.Left, "off": brewed.TurnedOff,
	})
	if days > 0 && days < fewDays {
		r.Caution("application.few-orders", wording.Places{"n": days})
	}
	r.Caution("application.sell-rules")
	return r, nil
}

// fewDays is below how many past days the answer rests on luck (judged: the
// critical share of ten days is known to a tenth at best).
const fewDays = 10
