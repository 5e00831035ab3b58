// Package application holds the worksheets of the last hour: from a vessel of
// tea to ground that has had its dose.
//
// No flag and no key is called a plain rate: a tea rate is undiluted tea per
// area, the dose; a mix rate is tea plus water per area, what the applicator
// delivers.
package application

import (
	"aerosteep/fault"
	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// Sheets are the worksheets of this room, in the order of the day.
func Sheets() []worksheet.Sheet {
	return []worksheet.Sheet{
		doses, dilute, loads, trailerWeight, strainers, sprayer, course, calibrate, nozzles,
		hoseEnd, inject, treeRowVolume, reconcile, nutrients, cost, orders,
	}
}

// given reads an amount that may be left out.
func given[Q ~float64](f *worksheet.Form, flag string) *Q {
	if !f.Has(flag) {
		return nil
	}
	v := Q(f.Number(flag))
	return &v
}

// in turns an amount that may not be there into a number of some unit.
func in[Q any](q *Q, unit func(Q) float64) *float64 {
	if q == nil {
		return nil
	}
	v := unit(*q)
	return &v
}

// refused fills in what was typed for the flag that a calculation refuses.
func refused(f *worksheet.Form, err error) error {
	for _, wrong := range fault.Of(err) {
		if in, known := f.Sheet.Input(wrong.Field); known && wrong.Given == "" && f.Has(wrong.Field) {
			wrong.Given = f.Text(in.Flag)
		}
	}
	return err
}

// TeaRate is a dose of undiluted tea in both units.
type TeaRate struct {
	PerHectare *float64 `json:"tea_rate_l_per_ha"`
	PerAcre    *float64 `json:"tea_rate_gpa"`
}

func teaRate(d *quantity.Dose) TeaRate {
	return TeaRate{in(d, quantity.Dose.LitresPerHectare), in(d, quantity.Dose.USGallonsPerAcre)}
}

// MixRate is a delivery of tea and water in both units.
type MixRate struct {
	PerHectare *float64 `json:"mix_rate_l_per_ha"`
	PerAcre    *float64 `json:"mix_rate_gpa"`
}

func mixRate(d *quantity.Dose) MixRate {
	return MixRate{in(d, quantity.Dose.LitresPerHectare), in(d, quantity.Dose.USGallonsPerAcre)}
}

// Words is a share said in the ways people measure it out.
type Words struct {
	PercentTea *float64      `json:"percent_tea"`
	PartsWater *float64      `json:"parts_water_per_part_tea"`
	MixWords   *wording.Text `json:"mix_words"`
}

func words(share *quantity.Share) Words {
	if share == nil {
		return Words{}
	}
	said := mixText(*share)
	return Words{in(share, quantity.Share.Percent), in(share, application.WaterPerTea), &said}
}

// mixText is the mix as a sentence that every face puts into its language.
func mixText(share quantity.Share) wording.Text {
	return wording.Say("application.mix.words", wording.Places{"mix": application.MixWords(share)})
}

// spread is the volume that a dose takes on some ground.
func spread(d quantity.Dose, ground quantity.Area) quantity.Volume {
	return quantity.Litres(d.LitresPerSquareMetre() * ground.SquareMetres())
}

// numberList says whole numbers as a list.
type numberList []int

// Speak joins them: "1, 4 and 7".
func (n numberList) Speak(r wording.Reader) string {
	said := make([]string, len(n))
	for i, v := range n {
		said[i] = wording.Whole(v, r)
	}
	return wording.List(said, r)
}
