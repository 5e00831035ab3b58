package application

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// FirstLoad is what is known when the first load is out.
type FirstLoad struct {
	Ground, Done quantity.Area   // all of it, and covered so far
	Gone         quantity.Volume // mix gone from the tank
	Dead         quantity.Volume // what of it only filled the lines
	Planned      Strength[quantity.Dose]
}

// DoseVerdict is how a load compares with the plan.
type DoseVerdict string

const (
	OnDose    DoseVerdict = "on-dose"
	OverDose  DoseVerdict = "over"
	UnderDose DoseVerdict = "under"
)

// offDose is how far off the plan a load may be, in percent (common practice).
const offDose = 10

// Correction is what the first load says, and the ways back to the dose. One
// of the three is chosen: another speed, another pressure, or another mix.
type Correction struct {
	ExpectedGone, Difference quantity.Volume
	Percent                  float64 // actual / planned - 1
	Verdict                  DoseVerdict
	Actual                   Strength[quantity.Dose]
	Left                     quantity.Area
	TeaForRest, MixForRest   quantity.Volume
	MixUnchanged             quantity.Volume // if the sprayer goes on as it does
	WaysBack
}

// Reconcile compares the first load with the plan:
//
//	actual rate = (gone - dead) / done
//
// What is on the ground stays; the rest gets the planned dose, not one that
// averages out. Areas and volumes over 0, done not over all, dead under gone.
//
// Source: arithmetic; 10 % is common practice.
func (l FirstLoad) Reconcile() (Correction, error) {
	if err := l.check(); err != nil {
		return Correction{}, err
	}
	mix := quantity.LitresPerSquareMetre((l.Gone - l.Dead).Litres() / l.Done.SquareMetres())
	ratio := float64(mix / l.Planned.Mix)
	left := max(0, l.Ground-l.Done)
	c := Correction{
		ExpectedGone: spread(l.Planned.Mix, l.Done) + l.Dead, Percent: PercentOff(ratio, 1),
		Actual: Strength[quantity.Dose]{Tea: mix * quantity.Dose(l.Planned.Share), Mix: mix, Share: l.Planned.Share},
		Left:   left, TeaForRest: spread(l.Planned.Tea, left), MixForRest: spread(l.Planned.Mix, left),
		MixUnchanged: spread(mix, left), WaysBack: waysBack(mix, l.Planned),
		Verdict: doseVerdict(PercentOff(ratio, 1)),
	}
	c.Difference = l.Gone - c.ExpectedGone
	return c, nil
}

// spread is the volume that a dose takes on some ground.
func spread(d quantity.Dose, ground quantity.Area) quantity.Volume {
	return quantity.Litres(d.LitresPerSquareMetre() * ground.SquareMetres())
}

func doseVerdict(percent float64) DoseVerdict {
	switch {
	case over(percent, offDose):
		return OverDose
	case over(-percent, offDose):
		return UnderDose
	}
	return OnDose
}

func (l FirstLoad) check() error {
	if over(l.Done.SquareMetres(), l.Ground.SquareMetres()) {
		return fault.New("done-area", "", wording.Say("application.done-area", wording.Places{"done": l.Done, "area": l.Ground}),
			wording.Say("application.done-area.allowed", wording.Places{"area": l.Ground}), wording.Text{})
	}
	if l.Dead.Litres() >= l.Gone.Litres()*(1-slack) {
		return fault.New("dead-volume", "", wording.Say("application.dead-over-gone", wording.Places{"dead": l.Dead, "gone": l.Gone}),
			wording.Say("application.dead-over-gone.allowed", wording.Places{"gone": l.Gone}), wording.Text{})
	}
	return nil
}
