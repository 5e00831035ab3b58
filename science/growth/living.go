package growth

// Brew is what lives and what is eaten in a brew: food and organisms in mg
// COD/L (oxygen demand), nitrogen that organisms can take up in mg N/L.
type Brew struct {
	Ready    float64 // food in solution
	Slow     float64 // food that must be taken apart first
	Bacteria float64
	Fungi    float64
	Grazers  float64 // protozoa
	Nitrogen float64 // ammonium and the like
	Bound    float64 // nitrogen in the organisms, mg N/L
}

// Kinetics are the constants of one brew at 20 °C. Rates are per hour; each
// constant's usual range and source stand with the forecast's priors.
type Kinetics struct {
	Growth        float64 // bacteria, 1/h
	HalfReady     float64 // mg COD/L
	Yield         float64 // g COD built per g COD eaten
	Endogenous    float64 // respiration of the living, 1/h (not death-regeneration)
	FungalGrowth  float64 // 1/h
	FungalYield   float64
	Hydrolysis    float64 // 1/h
	HalfSurface   float64 // slow food per organism at half the rate, g/g
	Repression    float64 // mg COD/L of ready food that halves hydrolysis
	Grazing       float64 // growth of grazers, 1/h
	HalfPrey      float64 // mg COD/L
	PreyFloor     float64 // mg COD/L below which nothing is grazed
	GrazerYield   float64
	GrazerLoss    float64 // 1/h
	HalfOxygen    float64 // mg/L
	HalfNitrogen  float64 // mg N/L
	SlimeShare    float64 // growth that goes on without nitrogen, as slime
	CellNitrogen  float64 // g N/g COD in organisms
	SlowNitrogen  float64 // g N/g COD in slow food
	InertFraction float64 // of what decays
}

// Climate is how fast each kind of process runs at the water's temperature
// against 20 °C.
type Climate struct{ Bacteria, Fungi, Decay float64 }

// Pace is the change of a Brew per hour with oxygen in plenty, and the oxygen
// that takes, mg/L/h. All of it is in proportion to the oxygen factor, for
// none of it goes on without oxygen.
type Pace struct {
	Brew
	Demand float64
}

// Pace writes the pace of the living model in state b. Over the next span of
// dt hours (> 0) no more food or nitrogen is taken than there is and comes
// free. It is written in place and with few divisions, for it is most of what
// a forecast computes.
func (k *Kinetics) Pace(into *Pace, b *Brew, c Climate, dt float64) {
	hydrolysis := k.hydrolysis(b, c)
	food := b.Ready / (k.HalfReady + b.Ready)
	bacteria := float64(float64(k.Growth*c.Bacteria)*food) * b.Bacteria
	fungi := float64(float64(k.FungalGrowth*c.Fungi)*food) * b.Fungi
	eaten := (float64(bacteria*k.FungalYield) + float64(fungi*k.Yield)) / float64(k.Yield*k.FungalYield)
	if float64((eaten-hydrolysis)*dt) > b.Ready {
		most := b.Ready/dt + hydrolysis
		share := most / eaten
		bacteria, fungi, eaten = float64(bacteria*share), float64(fungi*share), most
	}
	respired := float64(k.Endogenous*c.Decay) * b.Bacteria
	respiredFungi := float64(float64(0.5*k.Endogenous)*c.Decay) * b.Fungi
	grazed, grown := k.grazing(b, c)
	lost := float64(k.GrazerLoss*c.Decay) * b.Grazers
	decay := respired + respiredFungi + lost

	given := float64(b.nitrogenShare() * (decay + grazed - grown))
	freed := float64(k.SlowNitrogen*hydrolysis) + given
	need := float64(k.CellNitrogen * (bacteria + fungi))
	covered := b.Nitrogen / (k.HalfNitrogen + b.Nitrogen)
	if float64((float64(need*covered)-freed)*dt) > b.Nitrogen {
		covered = (b.Nitrogen/dt + freed) / need
	}
	// What nitrogen does not cover is built as slime, up to a share, and the
	// rest of the food waits.
	allowed := k.SlimeShare + float64((1-k.SlimeShare)*covered)
	bacteria, fungi, eaten = float64(bacteria*allowed), float64(fungi*allowed), float64(eaten*allowed)
	bound := float64(need*covered) * allowed

	into.Ready = hydrolysis - eaten
	into.Slow = -hydrolysis
	into.Bacteria = bacteria - respired - grazed
	into.Fungi = fungi - respiredFungi
	into.Grazers = grown - lost
	into.Nitrogen = freed - bound
	into.Bound = bound - given
	into.Demand = (eaten - bacteria - fungi) + float64((1-k.InertFraction)*decay) + (grazed - grown)
}

// nitrogenShare is the nitrogen in a gram COD of what lives; slime carries
// none, so it is less where food came without nitrogen.
func (b *Brew) nitrogenShare() float64 {
	living := b.Bacteria + b.Fungi + b.Grazers
	if living <= 0 {
		return 0
	}
	return b.Bound / living
}

// hydrolysis of slow food, mg COD/L/h: limited by the surface that organisms
// find (Henze et al. 1987), held back while ready food is there.
func (k *Kinetics) hydrolysis(b *Brew, c Climate) float64 {
	living := b.Bacteria + b.Fungi
	if living <= 0 || b.Slow <= 0 {
		return 0
	}
	most := float64(float64(float64(k.Hydrolysis*c.Decay)*b.Slow)*living) * k.Repression
	return most / float64((float64(k.HalfSurface*living)+b.Slow)*(k.Repression+b.Ready))
}

// grazing gives the bacteria eaten and the grazers grown, mg COD/L/h: Holling
// type II above a floor.
func (k *Kinetics) grazing(b *Brew, c Climate) (eaten, grown float64) {
	prey := b.Bacteria - k.PreyFloor
	if prey <= 0 || b.Grazers <= 0 {
		return 0, 0
	}
	grown = float64(float64(k.Grazing*c.Bacteria)*prey) / (k.HalfPrey + prey) * b.Grazers
	return grown / k.GrazerYield, grown
}

// Go moves the brew on by dt hours at the mean of two paces, slowed by the
// share of oxygen; nothing falls under zero.
func (b *Brew) Go(p, q *Pace, oxygen, dt float64) {
	h := float64(float64(0.5*oxygen) * dt)
	b.Ready = notUnderZero(b.Ready + float64(h*(p.Ready+q.Ready)))
	b.Slow = notUnderZero(b.Slow + float64(h*(p.Slow+q.Slow)))
	b.Bacteria = notUnderZero(b.Bacteria + float64(h*(p.Bacteria+q.Bacteria)))
	b.Fungi = notUnderZero(b.Fungi + float64(h*(p.Fungi+q.Fungi)))
	b.Grazers = notUnderZero(b.Grazers + float64(h*(p.Grazers+q.Grazers)))
	b.Nitrogen = notUnderZero(b.Nitrogen + float64(h*(p.Nitrogen+q.Nitrogen)))
	b.Bound = notUnderZero(b.Bound + float64(h*(p.Bound+q.Bound)))
}

func notUnderZero(x float64) float64 {
	if x < 0 {
		return 0
	}
	return x
}
