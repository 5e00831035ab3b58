// Package cost adds up what a batch of tea, an area or a visit costs. Money is
// a bare number: it has no currency here and nothing converts it.
package cost

import (
	"math"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Money is an amount in whatever currency the prices are in.
type Money = float64

// Item is something bought for a batch. A nil price is not known.
type Item struct {
	Name string
	Cost *Money
}

// Electricity is the energy of a pump: power x time. Power and time over 0.
func Electricity(power quantity.Power, time quantity.Span) quantity.Energy {
	return quantity.Joules(power.Watts() * time.Seconds())
}

// Equipment is a thing bought once.
type Equipment struct {
	Price, Salvage Money
	Years          float64
	BatchesPerYear float64
	Interest       float64 // share a year; 0 is straight line
}

// PerYear is what equipment costs a year:
//
//	straight line:  (price - salvage) / years
//	with interest:  (price - salvage) x CRF + salvage x i
//	CRF = i / (1 - (1 + i)^-years)
//
// Years over 0, interest 0 or more, salvage not over the price.
//
// Source: Iowa State University Extension, Ag Decision Maker A3-29.
func (e Equipment) PerYear() (Money, error) {
	if e.Salvage > e.Price {
		return 0, fault.New("salvage", "", wording.Say("cost.salvage", wording.Places{"salvage": e.Salvage, "price": e.Price}),
			wording.Say("cost.salvage.allowed", wording.Places{"price": e.Price}), wording.Text{})
	}
	if !(e.Years > 0) {
		return 0, fault.New("years", "", wording.Say("cost.years"), wording.Say("cost.years.allowed"), wording.Text{})
	}
	loss := e.Price - e.Salvage
	if e.Interest == 0 {
		return loss / e.Years, nil
	}
	return loss*CapitalRecovery(e.Interest, e.Years) + e.Salvage*e.Interest, nil
}

// CapitalRecovery is the yearly payment for one unit borrowed:
// i / (1 - (1 + i)^-n), interest i over 0, n years over 0. Written with log1p
// and expm1, so that it stays right for very small interest.
//
// Source: Iowa State University Extension, Ag Decision Maker A3-29.
func CapitalRecovery(interest, years float64) float64 {
	return interest / -math.Expm1(-years*math.Log1p(interest))
}

// PerLitre is the cost of a usable litre, when a share of batches is poured
// away:
//
//	batch cost / (1 - rejected) / volume
//
// Volume over 0; rejected 0 to under 1.
func PerLitre(batch Money, volume quantity.Volume, rejected float64) Money {
	return batch / (1 - rejected) / volume.Litres()
}

// Batch is what a plan needs to know of one batch. A price that is not known
// makes its part nil and not zero.
type Batch struct {
	Items       []Item
	Energy      quantity.Energy
	EnergyPrice *Money // per kWh
	Work        quantity.Span
	Wage        *Money          // per hour
	Yields      quantity.Volume // usable tea
}

// Parts is a batch's cost. PerLitre is nil where any part is.
type Parts struct {
	Ingredients, Power, Labour, PerLitre *Money
}

// Add adds the batch up.
func (b Batch) Add() Parts {
	p := Parts{Ingredients: sum(b.Items)}
	if b.EnergyPrice != nil {
		power := b.Energy.KilowattHours() * *b.EnergyPrice
		p.Power = &power
	}
	if b.Wage != nil {
		labour := b.Work.Hours() * *b.Wage
		p.Labour = &labour
	}
	if p.Ingredients != nil && p.Power != nil && p.Labour != nil && b.Yields > 0 {
		each := PerLitre(*p.Ingredients+*p.Power+*p.Labour, b.Yields, 0)
		p.PerLitre = &each
	}
	return p
}

func sum(items []Item) *Money {
	var total Money
	for _, item := range items {
		if item.Cost == nil {
			return nil
		}
		total += *item.Cost
	}
	return &total
}

// Visit is a drive to somebody's ground with tea.
type Visit struct {
	Tea      quantity.Volume
	Time     quantity.Span
	Wage     Money // per hour
	Travel   Money
	Overhead Money
	Margin   float64 // share of the price that is to remain, 0 to under 1
}

// Cost is tea + time x wage + travel + overhead, Price is cost / (1 - margin).
func (v Visit) Cost(perLitre Money) (tea, cost, price Money) {
	tea = perLitre * v.Tea.Litres()
	cost = tea + v.Time.Hours()*v.Wage + v.Travel + v.Overhead
	return tea, cost, cost / (1 - v.Margin)
}

// ParseItem reads "compost: 12.50"; the last colon ends the name, so that a
// name may hold one.
func ParseItem(text string) (Item, error) {
	refuse := func(key string) (Item, error) {
		return Item{}, fault.New("item", text, wording.Say(key), wording.Say("cost.item.allowed"), wording.Text{})
	}
	colon := strings.LastIndexByte(text, ':')
	if colon < 0 {
		return refuse("cost.item.colon")
	}
	name := strings.TrimSpace(text[:colon])
	if name == "" {
		return refuse("cost.item.name")
	}
	price, err := quantity.Bare(text[colon+1:])
	if err != nil {
		return refuse("cost.item.price")
	}
	if price < 0 {
		return refuse("cost.item.negative")
	}
	return Item{Name: name, Cost: &price}, nil
}
