package application

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Strength ties a dose of tea to what must be delivered for it: per area
// (quantity.Dose) or per plant (quantity.Volume).
type Strength[Q quantity.Amount] struct {
	Tea, Mix Q
	Share    quantity.Share
}

// Settle works out tea, mix and share from two of them; nil is not given.
// Both rates and a share must agree within 1 %, and then the rates are used.
// The names are those of the flags, without dashes, for messages.
func Settle[Q quantity.Amount](tea, mix *Q, share *quantity.Share, teaName, mixName string) (Strength[Q], error) {
	switch {
	case tea != nil && mix != nil:
		return fromRates(*tea, *mix, share, teaName, mixName)
	case tea == nil && mix == nil:
		return Strength[Q]{}, missing(teaName, mixName)
	case share == nil:
		return Strength[Q]{}, missingDilution()
	case tea != nil:
		return Strength[Q]{Tea: *tea, Mix: *tea / Q(*share), Share: *share}, nil
	}
	return Strength[Q]{Tea: *mix * Q(*share), Mix: *mix, Share: *share}, nil
}

func fromRates[Q quantity.Amount](tea, mix Q, share *quantity.Share, teaName, mixName string) (Strength[Q], error) {
	if over(float64(tea), float64(mix)) {
		return Strength[Q]{}, fault.New(mixName, "", wording.Say("application.mix-under-tea", wording.Places{"mix": mix, "tea": tea, "mixflag": "--" + mixName, "teaflag": "--" + teaName}),
			wording.Say("application.mix-under-tea.allowed", wording.Places{"tea": tea}), wording.Say("application.mix-under-tea.advice"))
	}
	follows := min(1, quantity.Share(tea/mix))
	if share != nil && !Agree(follows.Fraction(), share.Fraction(), FiguresAgree) {
		return Strength[Q]{}, disagree("ratio", "--"+teaName+", --"+mixName, "--ratio / --percent-tea", follows, *share, FiguresAgree)
	}
	return Strength[Q]{Tea: tea, Mix: mix, Share: follows}, nil
}
