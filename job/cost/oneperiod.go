package cost

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mathext"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Tomorrow is what is known before somebody brews for orders that are not in
// yet: what a measure of tea brings, costs and is worth left over, and what was
// ordered on days like it. Tea does not keep: what is over is worth what the
// compost heap gives.
type Tomorrow struct {
	Price, Cost Money // of one measure
	Salvage     Money // what one that is left over is worth
	Goodwill    Money // what one that is turned away costs beside the sale
}

// Critical is the share of days on which all orders should be met:
//
//	(price - cost + goodwill) / (price - salvage + goodwill)
//
// Price over cost, cost over salvage, goodwill 0 or more: otherwise a fault.
//
// Source: the one-period ("newsvendor") rule; Arrow, Harris and Marschak 1951,
// Optimal inventory policy, Econometrica 19: 250.
func (t Tomorrow) Critical() (float64, error) {
	switch {
	case !(t.Price > t.Cost):
		return 0, fault.New("price", "", wording.Say("cost.price-under-cost"), wording.Say("cost.price-under-cost.allowed"), wording.Text{})
	case !(t.Cost > t.Salvage):
		return 0, fault.New("leftover-worth", "", wording.Say("cost.salvage-over-cost"), wording.Say("cost.salvage-over-cost.allowed"), wording.Text{})
	case !(t.Goodwill >= 0):
		return 0, fault.New("turned-away-cost", "", wording.Say("cost.goodwill"), wording.Say("cost.goodwill.allowed"), wording.Text{})
	}
	return (t.Price - t.Cost + t.Goodwill) / (t.Price - t.Salvage + t.Goodwill), nil
}

// Brewed is how much to brew, and what to expect of it.
type Brewed struct {
	Volume    quantity.Volume
	Critical  float64
	AllServed float64         // share of days on which it is enough
	Left      quantity.Volume // over, on average
	TurnedOff quantity.Volume // asked for and not there, on average
	Profit    Money           // on average, in money times litres
}

// Days are the orders of days like tomorrow, each as likely as the others.
type Days []quantity.Volume

// Normal are orders spread evenly about a mean by a standard deviation.
type Normal struct{ Mean, Spread quantity.Volume }

// Brew is the smallest of the past days' orders that met the critical share of
// them: none other of any size earns more on days like these. At least one day,
// none negative.
//
// Source: as Critical; the empirical distribution in the place of a fitted one.
func (t Tomorrow) Brew(days Days) (Brewed, error) {
	critical, err := t.Critical()
	if err != nil {
		return Brewed{}, err
	}
	sorted := slices.Sorted(slices.Values(days))
	if len(sorted) == 0 || !(sorted[0] >= 0) {
		return Brewed{}, fault.New("orders", "", wording.Say("cost.orders"), wording.Say("cost.orders.allowed"), wording.Text{})
	}
	n := int(math.Ceil(critical*float64(len(sorted))-1e-9)) - 1
	return t.outcome(days, sorted[min(max(n, 0), len(sorted)-1)], critical), nil
}

// Of is what a brew of some size comes to on days like these.
func (t Tomorrow) Of(days Days, volume quantity.Volume) (Brewed, error) {
	critical, err := t.Critical()
	if err != nil {
		return Brewed{}, err
	}
	return t.outcome(days, volume, critical), nil
}

func (t Tomorrow) outcome(days Days, volume quantity.Volume, critical float64) Brewed {
	b := Brewed{Volume: volume, Critical: critical}
	n := float64(len(days))
	for _, asked := range days {
		sold := min(asked, volume)
		if asked <= volume*(1+1e-9) {
			b.AllServed += 1 / n
		}
		b.Left += (volume - sold) / quantity.Volume(n)
		b.TurnedOff += (asked - sold) / quantity.Volume(n)
		b.Profit += (t.Price*sold.Litres() + t.Salvage*(volume-sold).Litres() - t.Cost*volume.Litres() - t.Goodwill*(asked-sold).Litres()) / n
	}
	return b
}

// BrewNormal is mean + z x spread, z the normal quantile of the critical share;
// never under 0. With the loss function L(z) = φ(z) - z (1 - Φ(z)) the average
// turned away is spread x L(z). Mean and spread over 0.
//
// Source: as Critical; Silver, Pyke and Peterson 1998, Inventory Management,
// section 10.2 (from memory).
func (t Tomorrow) BrewNormal(n Normal) (Brewed, error) {
	critical, err := t.Critical()
	if err != nil {
		return Brewed{}, err
	}
	if !(n.Mean > 0) || !(n.Spread > 0) {
		return Brewed{}, fault.New("mean", "", wording.Say("cost.orders"), wording.Say("cost.mean.allowed"), wording.Text{})
	}
	z := mathext.NormalQuantile(critical)
	volume := max(0, n.Mean+quantity.Volume(z)*n.Spread)
	z = float64((volume - n.Mean) / n.Spread)
	served := 0.5 * math.Erfc(-z/math.Sqrt2)
	loss := math.Exp(-z*z/2)/math.Sqrt(2*math.Pi) - z*(1-served)
	b := Brewed{Volume: volume, Critical: critical, AllServed: served, TurnedOff: n.Spread * quantity.Volume(loss)}
	sold := n.Mean - b.TurnedOff
	b.Left = volume - sold
	b.Profit = t.Price*sold.Litres() + t.Salvage*b.Left.Litres() - t.Cost*volume.Litres() - t.Goodwill*b.TurnedOff.Litres()
	return b, nil
}
