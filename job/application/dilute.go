package application

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Amounts is what goes into a vessel of mix.
type Amounts struct {
	Tea, Water, Total quantity.Volume
	Share             quantity.Share // of tea in Total
}

// MixOf shares a volume of mix out into tea and water (C1 V1 = C2 V2).
func MixOf(total quantity.Volume, share quantity.Share) Amounts {
	tea := total * quantity.Volume(share)
	return Amounts{Tea: tea, Water: total - tea, Total: total, Share: share}
}

// MixFromTea says how far so much tea goes at a share.
func MixFromTea(tea quantity.Volume, share quantity.Share) Amounts {
	total := tea / quantity.Volume(share)
	return Amounts{Tea: tea, Water: total - tea, Total: total, Share: share}
}

// MixFromWater says how much tea so much water takes at a share. Undiluted tea
// takes no water, so any answer would be a guess and it is refused.
func MixFromWater(water quantity.Volume, share quantity.Share) (Amounts, error) {
	if Undiluted(share) {
		return Amounts{}, fault.New("water", "", wording.Say("application.water-undiluted", wording.Places{"water": water}),
			wording.Say("application.water-undiluted.allowed"), wording.Say("application.water-undiluted.advice"))
	}
	total := water / quantity.Volume(1-share)
	return Amounts{Tea: total - water, Water: water, Total: total, Share: share}, nil
}

// Mixing is what is known of a mix: two of the volumes, or one and the share.
// A nil is not known.
type Mixing struct {
	Tea, Water, Tank *quantity.Volume
	Share            *quantity.Share
}

// Amounts works out the rest of a mix. What is stated twice must agree within
// 1 %; the first of tea, water, tank and share is then used.
func (m Mixing) Amounts() (Amounts, error) {
	if m.Tea != nil && m.Tank != nil && over(m.Tea.Litres(), m.Tank.Litres()) {
		return Amounts{}, fault.New("tea", "", wording.Say("application.tea-over-tank", wording.Places{"tea": *m.Tea, "tank": *m.Tank}),
			wording.Say("application.tea-over-tank.allowed", wording.Places{"tank": *m.Tank}), wording.Say("application.tea-over-tank.advice"))
	}
	mix, err := m.fromFirst()
	if err != nil {
		return Amounts{}, err
	}
	if m.Tank != nil && !Agree(mix.Total.Litres(), m.Tank.Litres(), FiguresAgree) {
		return Amounts{}, disagree("tank", "--tea + --water", "--tank", mix.Total, *m.Tank, FiguresAgree)
	}
	if m.Share != nil && !Agree(mix.Share.Fraction(), m.Share.Fraction(), FiguresAgree) {
		return Amounts{}, disagree("ratio", m.volumes(), "--ratio / --percent-tea", mix.Share, *m.Share, FiguresAgree)
	}
	return mix, nil
}

// fromFirst takes the first statements that are enough.
func (m Mixing) fromFirst() (Amounts, error) {
	switch {
	case m.Tea != nil && m.Water != nil:
		total := *m.Tea + *m.Water
		return Amounts{*m.Tea, *m.Water, total, quantity.Share(*m.Tea / total)}, nil
	case m.Tea != nil && m.Tank != nil:
		return Amounts{*m.Tea, max(0, *m.Tank-*m.Tea), *m.Tank, min(1, quantity.Share(*m.Tea / *m.Tank))}, nil
	case m.Water != nil && m.Tank != nil:
		return teaFromRest(*m.Water, *m.Tank)
	case m.Tea == nil && m.Water == nil && m.Tank == nil:
		return Amounts{}, missing("tea", "water", "tank")
	case m.Share == nil:
		return Amounts{}, missingDilution()
	case m.Tea != nil:
		return MixFromTea(*m.Tea, *m.Share), nil
	case m.Water != nil:
		return MixFromWater(*m.Water, *m.Share)
	}
	return MixOf(*m.Tank, *m.Share), nil
}

func teaFromRest(water, tank quantity.Volume) (Amounts, error) {
	if water.Litres() >= tank.Litres()*(1-slack) {
		return Amounts{}, fault.New("water", "", wording.Say("application.water-fills-tank", wording.Places{"water": water, "tank": tank}),
			wording.Say("application.water-fills-tank.allowed", wording.Places{"tank": tank}), wording.Text{})
	}
	return Amounts{tank - water, water, tank, quantity.Share((tank - water) / tank)}, nil
}

func (m Mixing) volumes() string {
	switch {
	case m.Tea != nil && m.Water != nil:
		return "--tea, --water"
	case m.Tea != nil:
		return "--tea, --tank"
	}
	return "--water, --tank"
}

// OtherReading is the same digits read by the other convention, with the same
// volume held. It is not there where that reading is impossible.
func (m Mixing) OtherReading(ratio Ratio, used Convention) (Amounts, bool) {
	share, err := ratio.Share(used.Other())
	if err != nil {
		return Amounts{}, false
	}
	held := Mixing{Share: &share}
	switch {
	case m.Tea != nil:
		held.Tea = m.Tea
	case m.Water != nil:
		held.Water = m.Water
	default:
		held.Tank = m.Tank
	}
	other, err := held.Amounts()
	return other, err == nil
}

// ChlorineInMix is the total chlorine that the water brings into a litre of
// mix: chlorine x water / total. The tea itself is taken to hold none.
func (a Amounts) ChlorineInMix(water quantity.Concentration) quantity.Concentration {
	return water * quantity.Concentration(a.Water/a.Total)
}
