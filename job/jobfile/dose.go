package jobfile

import "aerosteep/quantity"

// TeaOn is how much undiluted tea a want lands on its bed, and whether that
// can be known:
//
//	as given, or area x tea rate, or area x mix rate / (1 + parts of water),
//	or count x each (or cans x tank) / (1 + parts of water)
//
// Source: arithmetic.
func (w *Want) TeaOn(bed Bed) (quantity.Volume, bool) {
	if w.Tea != nil {
		return *w.Tea, true
	}
	if mix, said := w.poured(bed); said {
		return mix * quantity.Volume(w.Share()), true
	}
	if bed.Area == nil {
		return 0, false
	}
	ground := bed.Area.SquareMetres()
	switch {
	case w.TeaRate != nil:
		return quantity.Litres(w.TeaRate.LitresPerSquareMetre() * ground), true
	case w.MixRate != nil:
		return quantity.Litres(w.MixRate.LitresPerSquareMetre() * ground / (1 + w.Dilution)), true
	}
	return 0, false
}

// poured is the mix of a dose as people say it: a cup a plant, two cans a bed.
func (w *Want) poured(bed Bed) (quantity.Volume, bool) {
	times := float64(max(w.Count, 1))
	if w.Count == 0 && bed.Trees > 0 && w.Each != nil {
		times = float64(bed.Trees)
	}
	switch {
	case w.Each != nil:
		return *w.Each * quantity.Volume(times), true
	case w.Cans != nil && w.Can != nil:
		return *w.Can * quantity.Volume(*w.Cans*times), true
	}
	return 0, false
}

// PerArea is a dose as people say it, over the bed's area: mix and tea.
func (w *Want) PerArea(bed Bed) (mix, tea quantity.Dose, ok bool) {
	poured, said := w.poured(bed)
	if !said || bed.Area == nil {
		return 0, 0, false
	}
	mix = quantity.Dose(poured.Litres() / bed.Area.SquareMetres())
	return mix, mix * quantity.Dose(w.Share()), true
}

// Share is the part of tea in the mix of a want.
func (w *Want) Share() quantity.Share { return quantity.Share(1 / (1 + w.Dilution)) }
