package recipe

import (
	"regexp"
	"unicode"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// InMass is a stock by mass; one by volume takes the bulk density, and is nil
// where that is not known.
func (s Stock) InMass(bulk quantity.Density) *quantity.Mass {
	mass := s.Mass
	if s.Volume > 0 {
		if !(bulk > 0) {
			return nil
		}
		mass = quantity.Grams(bulk.GramsPerMillilitre() * s.Volume.Millilitres())
	}
	return &mass
}

// Price is money for a mass or for a volume of an ingredient; one of PerGram
// and PerLitre is set.
type Price struct {
	PerGram  float64
	PerLitre float64
	Currency string // ISO 4217: USD, EUR …
}

// Stock is what lies in the shed, by mass or by volume.
type Stock struct {
	Mass   quantity.Mass
	Volume quantity.Volume
}

var priced = regexp.MustCompile(`^\s*(.*?)\s*([A-Z]{3})\s*(?:/|per )\s*(.+?)\s*$`)

// ParsePrice reads "18 USD / 5 kg" and "0.5 USD / L".
func ParsePrice(text string) (Price, error) {
	m := priced.FindStringSubmatch(text)
	if m == nil {
		return Price{}, priceFault(text)
	}
	money, err := quantity.Bare(m[1])
	if err != nil || money < 0 {
		return Price{}, priceFault(text)
	}
	per, err := readStock(m[3])
	if err != nil {
		return Price{}, priceFault(text)
	}
	p := Price{Currency: m[2]}
	if per.Mass > 0 {
		p.PerGram = money / per.Mass.Grams()
	} else {
		p.PerLitre = money / per.Volume.Litres()
	}
	return p, nil
}

// readStock reads a mass or a volume over zero; a unit alone is one of it.
func readStock(text string) (Stock, error) {
	if c := []rune(text)[0]; unicode.IsLetter(c) {
		text = "1 " + text
	}
	reading, err := quantity.Read(text)
	if err != nil {
		return Stock{}, err
	}
	switch {
	case reading.SI <= 0:
		return Stock{}, stockFault(text)
	case reading.Unit.Dim == massOnly:
		return Stock{Mass: quantity.Grams(reading.SI * 1000)}, nil
	case reading.Unit.Dim == volumeOnly:
		return Stock{Volume: quantity.Litres(reading.SI * 1000)}, nil
	}
	return Stock{}, stockFault(text)
}

// ParseStock reads what is in the shed: "3 kg", "2 gal", also 0.
func ParseStock(text string) (Stock, error) {
	reading, err := quantity.Read(text)
	if err != nil {
		f := err.(*fault.Fault)
		f.Field, f.Allowed = "stock", wording.Say("recipe.stock.allowed")
		return Stock{}, f
	}
	switch {
	case reading.SI < 0:
	case reading.Unit.Dim == massOnly:
		return Stock{Mass: quantity.Grams(reading.SI * 1000)}, nil
	case reading.Unit.Dim == volumeOnly:
		return Stock{Volume: quantity.Litres(reading.SI * 1000)}, nil
	}
	return Stock{}, stockFault(text)
}

// of is the money for a mass that fills a volume; it is not known where the
// price is by volume and the density is missing.
func (p Price) of(m quantity.Mass, v quantity.Volume) (float64, bool) {
	if p.PerLitre > 0 {
		return p.PerLitre * v.Litres(), v > 0
	}
	return p.PerGram * m.Grams(), true
}

func priceFault(given string) *fault.Fault {
	return fault.New("price", given, wording.Say("recipe.price"), wording.Say("recipe.price.allowed"), wording.Text{})
}

func stockFault(given string) *fault.Fault {
	return fault.New("stock", given, wording.Say("recipe.stock"), wording.Say("recipe.stock.allowed"), wording.Text{})
}
