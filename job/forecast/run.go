package forecast

import (
	"math"
	"slices"
	"sort"

	"aerosteep/fault"
	"aerosteep/job/recipe"
	"aerosteep/numeric"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Question is what is asked of a forecast.
type Question struct {
	Setup   Setup
	Log     Log
	Larder  recipe.Shelf  // for the foods that events name
	Airflow quantity.Flow // that the belief about kLa rests on; 0 where not known
	Now     float64       // hours since the start
	Hours   float64       // to look ahead
	Members int           // 0 takes 2,000
	Seed    uint64
}

// The numbers of members that a forecast can be made with.
const (
	usualMembers  = 2000
	fewestMembers = 100
	mostMembers   = 20000
	longestRun    = 24 * 14.0 // hours from the start
)

// State is a batch now.
type State struct {
	Hour                     float64
	DO, Water, Uptake, KLa20 Band
	Saturation               float64 // mg/L at the surface, at the median temperature
	FoodLeft                 Band    // in 100, of all food that came in
	Bacteria, Fungi          Band    // mg COD/L
	MeterBias                Band    // mg/L
}

// Forecast is what a batch will do, as its readings leave it.
type Forecast struct {
	State    State
	Course   []Moment
	Used     int
	Doubted  []Doubted
	MinDO    *Band // nil once the recipe's end has passed
	MinHour  *Range
	Chance   *float64
	Limit    float64
	BelowAt  *float64 // hour; nil unless more likely than not
	Ready    Ready
	Lost     *Lost     // the last stretch in which the air stopped unseen
	Overflow *Overflow // of foam, by two distances to the rim
	started  *ensemble // the members now
	now      *ensemble // and where they went
	past     int       // rows of the course that are past
	question *Question
	changes  []change
	paths    *paths
}

// Ready is whether the highest uptake of the brew is past.
type Ready struct {
	Chance float64  // in 100, now
	Hour   *float64 // at which that reaches 80; nil if not before the end
	Range  Range    // of the members' hours
}

// Run makes a forecast.
//
// Errors: *fault.Fault of what is asked, given or written down.
func Run(q Question) (*Forecast, error) {
	if err := q.check(); err != nil {
		return nil, err
	}
	changes, err := q.changes()
	if err != nil {
		return nil, err
	}
	f := &follow{
		ensemble: newEnsemble(&q.Setup, q.Members, q.Seed),
		readings: q.readings(), bits: map[uint64]int{},
	}
	lost := q.lostAt()
	steps := timeline(&q.Setup, changes, q.Now, edgesOf(lost)...)
	markLost(steps, lost)
	f.walk(steps)
	f.settleAll()
	out := &Forecast{Used: f.used, Doubted: f.doubted, Course: f.course, Limit: f.limit, question: &q, changes: changes}
	out.State = f.stateNow(q.Now, &changes)
	out.Lost, out.Overflow = f.lastLost(lost), q.Overflow()
	f.drawAnew()
	out.past = len(out.Course)
	out.started = f.ensemble
	out.now = f.thinned(1)
	out.ahead()
	return out, nil
}

func (q *Question) check() error {
	if q.Members == 0 {
		q.Members = usualMembers
	}
	if q.Members < fewestMembers || q.Members > mostMembers {
		return askFault("members", float64(q.Members), fewestMembers, mostMembers)
	}
	if !(q.Now >= 0 && q.Now <= longestRun) {
		return fault.New("now", wording.Number(q.Now, 3, wording.Reader{})+" h", wording.Say("forecast.now.outside"),
			wording.Say("forecast.now.allowed", wording.Places{"most": longestRun}), wording.Say("forecast.now.advice"))
	}
	if !(q.Hours >= 0 && q.Hours <= 96) {
		return askFault("hours", q.Hours, 0, 96)
	}
	return q.Setup.check()
}

func askFault(field string, given, low, high float64) error {
	return fault.New(field, wording.Number(given, 6, wording.Reader{}), wording.Say("forecast.ask.outside"),
		wording.Say("forecast.ask.allowed", wording.Places{"low": low, "high": high}), wording.Text{})
}

// readings are those up to now, dense ones gathered.
func (q *Question) readings() []Reading {
	until := sort.Search(len(q.Log.Readings), func(i int) bool { return q.Log.Readings[i].Hour > q.Now+sameMoment })
	return q.Log.Readings[:until]
}

// changes are all that happens to the brew: what the recipe puts in and what
// was written down up to now. Food written down within an hour of an item of
// the recipe of that name is that item.
func (q *Question) changes() ([]change, error) {
	additions := slices.Clone(q.Setup.Additions)
	out := []change{}
	for i := range q.Log.Events {
		e := &q.Log.Events[i]
		if e.Hour > q.Now+sameMoment {
			continue
		}
		c, err := q.change(e, &additions)
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	out = append(out, changesOf(additions)...)
	slices.SortStableFunc(out, byHour)
	return out, nil
}

func (q *Question) change(e *Event, additions *[]Addition) (change, error) {
	c := change{hour: e.Hour}
	factor := func(v float64) { c.air, c.found = &v, v > 0 }
	switch e.What {
	case AirOff:
		factor(0)
	case FoundOff:
		factor(0)
		c.lost = true
	case AirOn:
		factor(1)
	case AirSet:
		share := 1.0
		if q.Airflow > 0 {
			share = numeric.Pow(float64(e.Airflow/q.Airflow), airExponent)
		}
		factor(share)
	case WaterIn:
		c.dilution = float64(q.Setup.Volume / (q.Setup.Volume + e.Water))
	case ProbeCleaned:
		c.probe = cleaned
	case Calibrated:
		c.probe = calibrated
	case FoodIn:
		a, err := q.fed(e)
		if err != nil {
			return c, err
		}
		*additions = slices.DeleteFunc(*additions, func(b Addition) bool {
			return b.Name == a.Name && math.Abs(b.Hour-a.Hour) <= 1
		})
		c.ready, c.slow, c.nitrogen = a.Ready.MilligramsPerLitre(), a.Slow.MilligramsPerLitre(), a.Nitrogen.MilligramsPerLitre()
	}
	return c, nil
}

// fed weighs out what an event put in.
func (q *Question) fed(e *Event) (Addition, error) {
	ingredient, err := q.Larder.Find(e.Ingredient)
	if err != nil {
		return Addition{}, err
	}
	r := recipe.Recipe{ForVolume: q.Setup.Volume, Items: []recipe.Item{{Ingredient: ingredient, Amount: e.Amount}}}
	b, err := recipe.Scale(r, q.Setup.Volume)
	if err != nil {
		return Addition{}, err
	}
	a := addition(b.Items[0], q.Setup.Volume, q.Setup.Planned.Hours())
	a.Hour = e.Hour
	return a, nil
}

// stateNow reads the members before any of them looks ahead.
func (f *follow) stateNow(now float64, changes *[]change) State {
	s := State{
		Hour:      now,
		DO:        f.band(func(m *member) float64 { return m.oxygen }),
		Water:     f.band(func(m *member) float64 { return m.water }),
		Uptake:    f.band(func(m *member) float64 { return m.uptake }),
		Bacteria:  f.band(func(m *member) float64 { return m.life.Bacteria }),
		Fungi:     f.band(func(m *member) float64 { return m.life.Fungi }),
		MeterBias: f.band(func(m *member) float64 { return m.bias + float64(m.drift*(now-m.since)) }),
		FoodLeft:  f.band(func(m *member) float64 { return 100 * m.foodLeft() }),
	}
	air := airAt(*changes, now)
	s.KLa20 = f.band(func(m *member) float64 { return m.kLa(&step{air: air}) })
	s.Saturation = f.climate.row(s.Water.Median).saturation
	return s
}

// airAt is the air as logged at an hour.
func airAt(changes []change, hour float64) float64 {
	air := 1.0
	for _, c := range changes {
		if c.hour <= hour && c.air != nil {
			air = *c.air
		}
	}
	return air
}

// foodLeft is the share of all food that came in which is still there.
func (m *member) foodLeft() float64 {
	if m.fed <= 0 {
		return 0
	}
	return math.Min(1, (m.life.Ready+m.life.Slow)/m.fed)
}

// MeterSuspect tells whether the meter is more likely off by more than it
// should be than not.
func (f *Forecast) MeterSuspect() bool {
	b := f.State.MeterBias
	return b.Low80 > 0.35 || b.High80 < -0.35 || math.Abs(b.Median) > 0.65
}
