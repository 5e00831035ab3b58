package recipe

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Batch is a recipe for one tank: what to weigh out and what it adds up to.
type Batch struct {
	Recipe        Recipe
	Volume        quantity.Volume
	Items         []Weighed
	CompostPerL   float64                // g of the three composts per L of water
	Demand        quantity.Concentration // oxygen demand, mg O2/L
	ReadyDemand   quantity.Concentration // of it sugars
	Nitrogen      quantity.Concentration // total N; not all of it dissolves
	Phosphate     quantity.Concentration // P2O5
	Potash        quantity.Concentration // K2O
	Regrowth      Regrowth
	Cost          *float64 // of the priced items; nil where none is
	Currency      string
	Unpriced      []string // names of the others
	LargerThanTwo bool     // over twice the volume the recipe was written for
}

// Weighed is one item for one tank.
type Weighed struct {
	Item        Item
	Mass        quantity.Mass
	Volume      *quantity.Volume // nil where no bulk density is known
	Bulk        quantity.Density // 0 where unknown
	BulkFrom    BulkFrom
	PerLitre    float64       // g per L of brew water
	Demand      quantity.Mass // oxygen it takes
	ReadyDemand quantity.Mass
	Nitrogen    quantity.Mass
	Phosphate   quantity.Mass
	Potash      quantity.Mass
	Cost        *float64
}

// PercentWV is g per 100 mL of brew water.
func (w Weighed) PercentWV() float64 { return w.PerLitre / 10 }

// SlowDemand is the oxygen demand beyond the sugars: what has to be broken up
// first.
func (w Weighed) SlowDemand() quantity.Mass { return w.Demand - w.ReadyDemand }

// The tanks that anybody brews in.
const (
	SmallestBatch quantity.Volume = 0.1
	LargestBatch  quantity.Volume = 50000
)

// Scale weighs a recipe out for a volume of water. Amounts grow with the
// volume, exactly; the food is not added to it. Air does not scale, which
// Batch.LargerThanTwo is there to say.
func Scale(r Recipe, volume quantity.Volume) (Batch, error) {
	if !(volume >= SmallestBatch && volume <= LargestBatch) {
		return Batch{}, fault.New("volume", number(volume.Litres())+" L", wording.Say("recipe.volume"), wording.Say("recipe.volume.allowed"), wording.Text{})
	}
	b := Batch{Recipe: r, Volume: volume, LargerThanTwo: r.ForVolume > 0 && volume > 2*r.ForVolume}
	for _, item := range r.Items {
		w, err := weigh(item, r.ForVolume, volume)
		if err != nil {
			return Batch{}, err
		}
		b.add(w)
	}
	for _, w := range b.Items {
		if w.Item.Ingredient.Compost {
			b.CompostPerL += w.PerLitre
		}
	}
	b.Regrowth = WholeRegrowth(b.Items)
	return b, b.pay()
}

func weigh(item Item, forVolume, volume quantity.Volume) (Weighed, error) {
	times := volume.Litres()
	if !item.Amount.PerLitre {
		if forVolume <= 0 {
			return Weighed{}, fault.New("for_volume", "", wording.Say("recipe.for-volume", wording.Places{"name": item.Ingredient.Name, "amount": item.Amount.Typed}), wording.Say("recipe.for-volume.allowed"), wording.Text{})
		}
		times = float64(volume / forVolume)
	}
	bulk, from := item.bulk()
	w := Weighed{Item: item, Bulk: bulk, BulkFrom: from}
	if item.Amount.Volume > 0 {
		if bulk <= 0 {
			return Weighed{}, noBulk(item.Ingredient.Name, item.Amount.Typed)
		}
		poured := item.Amount.Volume * quantity.Volume(times)
		w.Volume, w.Mass = &poured, bulk.MassOf(poured)
	} else {
		w.Mass = item.Amount.Mass * quantity.Mass(times)
		if bulk > 0 {
			filled := bulk.VolumeOf(w.Mass)
			w.Volume = &filled
		}
	}
	return w.analyse(volume), nil
}

// analyse works out what a mass of this ingredient brings.
func (w Weighed) analyse(volume quantity.Volume) Weighed {
	c := w.Item.Ingredient.Composition
	share := func(s float64) quantity.Mass { return w.Mass * quantity.Mass(s) }
	w.PerLitre = w.Mass.Grams() / volume.Litres()
	w.Demand, w.ReadyDemand = share(c.Demand()), share(c.ReadyDemand())
	w.Nitrogen, w.Phosphate, w.Potash = share(c.Nitrogen.Fraction()), share(c.Phosphate.Fraction()), share(c.Potash.Fraction())
	return w
}

func (b *Batch) add(w Weighed) {
	b.Items = append(b.Items, w)
	perLitre := func(m quantity.Mass) quantity.Concentration {
		return quantity.MilligramsPerLitre(m.Milligrams() / b.Volume.Litres())
	}
	b.Demand += perLitre(w.Demand)
	b.ReadyDemand += perLitre(w.ReadyDemand)
	b.Nitrogen += perLitre(w.Nitrogen)
	b.Phosphate += perLitre(w.Phosphate)
	b.Potash += perLitre(w.Potash)
}

// pay sums what is priced and names what is not.
func (b *Batch) pay() error {
	var total float64
	anyPriced := false
	for i := range b.Items {
		w := &b.Items[i]
		ingredient := w.Item.Ingredient
		if ingredient.Price == nil {
			b.Unpriced = append(b.Unpriced, ingredient.Name)
			continue
		}
		var v quantity.Volume
		if w.Volume != nil {
			v = *w.Volume
		}
		money, known := ingredient.Price.of(w.Mass, v)
		if !known {
			b.Unpriced = append(b.Unpriced, ingredient.Name)
			continue
		}
		w.Cost, anyPriced = &money, true
		total += money
	}
	word, _, err := currency(b.Recipe.Items)
	if err != nil {
		return err
	}
	if anyPriced {
		b.Cost, b.Currency = &total, word
	}
	return nil
}

// currency is the one currency of the items; two are refused, for sums of
// dollars and euros mean nothing.
func currency(items []Item) (word string, priced bool, err *fault.Fault) {
	for _, item := range items {
		p := item.Ingredient.Price
		if p == nil {
			continue
		}
		if priced && p.Currency != word {
			return "", true, fault.New("price", p.Currency, wording.Say("recipe.currencies", wording.Places{"first": word, "second": p.Currency}), wording.Say("recipe.currencies.allowed"), wording.Text{})
		}
		word, priced = p.Currency, true
	}
	return word, priced, nil
}
