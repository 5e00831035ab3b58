package growth

// PerDay is a rate constant of wastewater practice, 1/d. Brews run in hours
// (Kinetics), and the two do not mix by mistake.
type PerDay float64

// PerHour is the same rate in 1/h.
func (r PerDay) PerHour() float64 { return float64(r) / 24 }

// ASM1 are the constants of the Activated Sludge Model No. 1 (Henze et al.
// 1987). Its decay is death and regrowth: most of what dies comes back as
// slow food, so that Decay is not an endogenous rate (see Endogenous).
type ASM1 struct {
	YieldH, YieldA        float64 // g COD/g COD, g COD/g N
	InertShare            float64 // f_P
	NitrogenB, NitrogenP  float64 // i_XB, i_XP
	GrowthH, DecayH       PerDay
	HalfS, HalfOH, HalfNO float64 // mg/L
	AnoxicGrowth          float64 // η_g
	GrowthA, DecayA       PerDay
	HalfNH, HalfOA        float64
	Ammonification        PerDay // L/(mg COD d)
	Hydrolysis            PerDay
	HalfX                 float64 // g/g
	AnoxicHydrolysis      float64 // η_h
}

// BSM1 are the constants of the benchmark plant (15 °C).
var BSM1 = ASM1{
	YieldH: 0.67, YieldA: 0.24, InertShare: 0.08, NitrogenB: 0.08, NitrogenP: 0.06,
	GrowthH: 4, DecayH: 0.3, HalfS: 10, HalfOH: 0.2, HalfNO: 0.5, AnoxicGrowth: 0.8,
	GrowthA: 0.5, DecayA: 0.05, HalfNH: 1, HalfOA: 0.4,
	Ammonification: 0.05, Hydrolysis: 3, HalfX: 0.1, AnoxicHydrolysis: 0.8,
}

// Default20 are the constants of 1987 at 20 °C (from memory; those that differ
// from BSM1 as commented in its start file).
var Default20 = ASM1{
	YieldH: 0.67, YieldA: 0.24, InertShare: 0.08, NitrogenB: 0.086, NitrogenP: 0.06,
	GrowthH: 6, DecayH: 0.62, HalfS: 20, HalfOH: 0.2, HalfNO: 0.5, AnoxicGrowth: 0.8,
	GrowthA: 0.8, DecayA: 0.2, HalfNH: 1, HalfOA: 0.4,
	Ammonification: 0.08, Hydrolysis: 3, HalfX: 0.03, AnoxicHydrolysis: 0.4,
}

// Endogenous is the rate at which heterotrophs shrink once regrowth on what
// died is counted: b (1 - Y (1 - f)).
func (a ASM1) Endogenous() PerDay {
	return a.DecayH * PerDay(1-a.YieldH*(1-a.InertShare))
}

// Nitrate's and nitrogen gas's oxygen demand against ammonia, g O2/g N, as the
// model rounds 64/14 and 40/14.
const (
	nitrateCOD = -4.57
	anoxicLoss = 2.86 // what a gram of nitrate nitrogen spares of oxygen
	gasCOD     = nitrateCOD + anoxicLoss
)

// Components of ASM1, in its order: mg COD/L, oxygen and nitrogen in mg/L,
// alkalinity in mol/m³.
func (a ASM1) components() []Component {
	return []Component{
		{"S_I", 1, 0}, {"S_S", 1, 0}, {"X_I", 1, 0}, {"X_S", 1, 0},
		{"X_BH", 1, a.NitrogenB}, {"X_BA", 1, a.NitrogenB}, {"X_P", 1, a.NitrogenP},
		{"S_O", -1, 0}, {"S_NO", nitrateCOD, 1}, {"S_NH", 0, 1}, {"S_ND", 0, 1}, {"X_ND", 0, 1},
		{"S_ALK", 0, 0}, {"S_N2", gasCOD, 1},
	}
}

// Matrix is the table of ASM1: eight processes, rates per day.
func (a ASM1) Matrix() *Matrix {
	m, err := NewMatrix(a.components(), append(a.growths(), a.losses()...))
	if err != nil {
		panic(err) // the rows below are constants of this file
	}
	return m
}

func (a ASM1) growths() []Process {
	yh, ya := a.YieldH, a.YieldA
	anoxic := (1 - yh) / (anoxicLoss * yh)
	return []Process{
		{"aerobic growth of heterotrophs", map[string]float64{
			"S_S": -1 / yh, "X_BH": 1, "S_O": -(1 - yh) / yh, "S_NH": -a.NitrogenB, "S_ALK": -a.NitrogenB / 14,
		}, func(s State) float64 {
			return float64(a.GrowthH) * Monod(s.Of("S_S"), a.HalfS) * Monod(s.Of("S_O"), a.HalfOH) * s.Of("X_BH")
		}},
		{"anoxic growth of heterotrophs", map[string]float64{
			"S_S": -1 / yh, "X_BH": 1, "S_NO": -anoxic, "S_N2": anoxic, "S_NH": -a.NitrogenB,
			"S_ALK": anoxic/14 - a.NitrogenB/14,
		}, func(s State) float64 {
			return float64(a.GrowthH) * Monod(s.Of("S_S"), a.HalfS) * a.anoxic(s) * a.AnoxicGrowth * s.Of("X_BH")
		}},
		{"aerobic growth of autotrophs", map[string]float64{
			"X_BA": 1, "S_O": -(-nitrateCOD - ya) / ya, "S_NO": 1 / ya, "S_NH": -a.NitrogenB - 1/ya, "S_ALK": -a.NitrogenB/14 - 1/(7*ya),
		}, func(s State) float64 {
			return float64(a.GrowthA) * Monod(s.Of("S_NH"), a.HalfNH) * Monod(s.Of("S_O"), a.HalfOA) * s.Of("X_BA")
		}},
	}
}

// anoxic is how far nitrate stands in for oxygen.
func (a ASM1) anoxic(s State) float64 {
	return a.HalfOH / (a.HalfOH + s.Of("S_O")) * Monod(s.Of("S_NO"), a.HalfNO)
}

func (a ASM1) losses() []Process {
	death := func(what string) map[string]float64 {
		return map[string]float64{what: -1, "X_S": 1 - a.InertShare, "X_P": a.InertShare, "X_ND": a.NitrogenB - a.InertShare*a.NitrogenP}
	}
	return []Process{
		{"decay of heterotrophs", death("X_BH"), func(s State) float64 { return float64(a.DecayH) * s.Of("X_BH") }},
		{"decay of autotrophs", death("X_BA"), func(s State) float64 { return float64(a.DecayA) * s.Of("X_BA") }},
		{"ammonification", map[string]float64{"S_NH": 1, "S_ND": -1, "S_ALK": 1.0 / 14}, func(s State) float64 {
			return float64(a.Ammonification) * s.Of("S_ND") * s.Of("X_BH")
		}},
		{"hydrolysis", map[string]float64{"S_S": 1, "X_S": -1}, a.hydrolysed},
		{"hydrolysis of nitrogen", map[string]float64{"S_ND": 1, "X_ND": -1}, func(s State) float64 {
			if s.Of("X_S") <= 0 {
				return 0
			}
			return a.hydrolysed(s) * s.Of("X_ND") / s.Of("X_S")
		}},
	}
}

// hydrolysed is limited by the surface that organisms find; without organisms
// there is none.
func (a ASM1) hydrolysed(s State) float64 {
	living := s.Of("X_BH")
	if living <= 0 {
		return 0
	}
	surface := Monod(s.Of("X_S")/living, a.HalfX)
	with := Monod(s.Of("S_O"), a.HalfOH) + a.AnoxicHydrolysis*a.anoxic(s)
	return float64(a.Hydrolysis) * surface * with * living
}
