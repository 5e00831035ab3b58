package jobfile

import "aerosteep/quantity"

// TeaOn is how much undiluted tea a want lands on its bed, and whether that
// can be known:
//
//	as given, or area x tea rate, or area x mix rate / (1 + parts of water)
//
// Source: arithmetic.
func (w *Want) TeaOn(bed Bed) (quantity.Volume, bool) {
	if w.Tea != nil {
		return *w.Tea, true
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

// Share is the part of tea in the mix of a want.
func (w *Want) Share() quantity.Share { return quantity.Share(1 / (1 + w.Dilution)) }
