package plan

import (
	"time"

	"aerosteep/job/forecast"
	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/source"
)

// Plan is the answer to every want of a job file. Its JSON is the contract of
// the program; keys end in their unit, and null is what does not exist.
type Plan struct {
	Now      time.Time       `json:"now"`
	Holding  *string         `json:"holding"`
	Needs    []Need          `json:"needs"`
	Batches  []Batch         `json:"batches"`
	Runs     []Run           `json:"runs"`
	Verdicts []Verdict       `json:"-"` // in the order of the wants' beds
	Hygiene  []any           `json:"hygiene"`
	Unmet    []Unmet         `json:"unmet"`
	Advice   []Advice        `json:"advice"`
	Missing  []MissingNumber `json:"missing_numbers"`
	Cautions []string        `json:"cautions"`
	Sources  []source.Source `json:"sources"`
}

// Need is what one want comes to.
type Need struct {
	Want       int     `json:"want"`
	Bed        string  `json:"bed"`
	Method     string  `json:"method"`
	TeaL       float64 `json:"tea_l"` // lands on the bed
	MixL       float64 `json:"mix_l"`
	Dilution   string  `json:"dilution"`
	PercentTea float64 `json:"percent_tea"`
	Why        string  `json:"why"`
}

// Batch is one filling of one vessel.
type Batch struct {
	ID         string       `json:"id"`
	Vessel     string       `json:"vessel"`
	Recipe     string       `json:"recipe"`
	WhyRecipe  string       `json:"why_recipe"`
	VolumeL    float64      `json:"volume_l"`
	StartAt    time.Time    `json:"start_at"`
	ReadyAt    time.Time    `json:"ready_at"`
	ReadyRange [2]time.Time `json:"ready_range"`
	UseBy      time.Time    `json:"use_by"`
	Serves     []Serving    `json:"serves"`
	Steps      []Step       `json:"steps"`
	Items      []Item       `json:"items"`
	Water      Water        `json:"water"`
	Air        Air          `json:"air"`
	Forecast   Outlook      `json:"forecast"`
	Cost       Cost         `json:"cost"`
	OverChance bool         `json:"over_chance"` // of going below the limit: more than is accepted
	Waiting    *Waiting     `json:"waiting"`     // null without weather
}

// Serving is the tea of a batch that lands on one bed.
type Serving struct {
	Want int     `json:"want"`
	Bed  string  `json:"bed"`
	TeaL float64 `json:"tea_l"`
}

// Step is one thing to do, at its hour.
type Step struct {
	At          time.Time `json:"at"`
	What        string    `json:"what"`
	Text        string    `json:"text"`
	Amounts     []Amount  `json:"amounts"`
	OutsideWork bool      `json:"outside_work_hours"`
}

// Amount is what a step puts in.
type Amount struct {
	Ingredient string   `json:"ingredient"`
	MassG      float64  `json:"mass_g"`
	VolumeML   *float64 `json:"volume_ml"`
	Household  *string  `json:"household"`
}

// Item is one line of the batch's recipe, weighed out.
type Item struct {
	Ingredient string   `json:"ingredient"`
	When       string   `json:"when"`
	MassG      float64  `json:"mass_g"`
	VolumeML   *float64 `json:"volume_ml"`
	Household  *string  `json:"household"`
	PercentWV  float64  `json:"percent_w_v"`
}

// Water is what is filled in and what is done about its chlorine.
type Water struct {
	FillL         float64     `json:"fill_l"`
	Chloramine    string      `json:"chloramine"`
	Agent         *string     `json:"agent"`
	AgentG        *float64    `json:"agent_g"`
	AerationHours *Hours      `json:"aeration_hours"`
	TemperatureC  float64     `json:"temperature_c"`
	Tempering     []Tempering `json:"tempering"` // ways to a fill that suits, where it is too cold or too warm
}

// Hours is a length of time with its range.
type Hours struct {
	Estimate *float64 `json:"estimate"`
	Low      float64  `json:"low"`
	High     float64  `json:"high"`
}

// Air is what bubbles through the batch.
type Air struct {
	Airflow  *float64 `json:"airflow_l_per_min"`
	Pressure *float64 `json:"pressure_kpa"`
	KLa20    Estimate `json:"kla20_per_h"`
	Basis    string   `json:"basis"` // measured | physics | habit
}

// Estimate is a number with its 95 % range.
type Estimate struct {
	Estimate float64 `json:"estimate"`
	Low95    float64 `json:"low95"`
	High95   float64 `json:"high95"`
}

// Outlook is the forecast of a batch without readings.
type Outlook struct {
	MinDO         forecast.Band  `json:"min_do_mg_per_l"`
	Chance        float64        `json:"chance_below_limit"`
	Limit         float64        `json:"limit_mg_per_l"`
	HourOfMinimum forecast.Range `json:"hour_of_minimum"`
	PeakOUR       float64        `json:"peak_our_mg_per_l_h"`
	Course        []CoursePoint  `json:"course"`
}

// CoursePoint is one hour of a forecast.
type CoursePoint struct {
	Hour  float64       `json:"hour"`
	DO    forecast.Band `json:"do_mg_per_l"`
	TempC float64       `json:"temp_c"`
}

// Cost is what a batch costs; a part whose price is missing is null.
type Cost struct {
	Ingredients *float64 `json:"ingredients"`
	Power       *float64 `json:"power"`
	Labour      *float64 `json:"labour"`
	PerL        *float64 `json:"per_l"`
	Currency    *string  `json:"currency"`
}

// Run is one outing with one applicator.
type Run struct {
	At          time.Time `json:"at"`
	Site        *string   `json:"site"`
	Beds        []string  `json:"beds"`
	Applicator  *string   `json:"applicator"`
	Prime       []Prime   `json:"prime"`
	Loads       []Load    `json:"loads"`
	EndsAt      time.Time `json:"ends_at"`
	BeforeUseBy bool      `json:"before_use_by"`
	Sky         *Sky      `json:"sky"` // null without weather that reaches it
}

// Prime fills the dead volume before the first load.
type Prime struct {
	Batch  string  `json:"batch"`
	TeaL   float64 `json:"tea_l"`
	WaterL float64 `json:"water_l"`
}

// Load is one filling of the applicator's tank.
type Load struct {
	Want   int      `json:"want"`
	Bed    string   `json:"bed"`
	Batch  string   `json:"batch"`
	TeaL   float64  `json:"tea_l"`
	WaterL float64  `json:"water_l"`
	Covers *float64 `json:"covers_m2"`
}

// Verdict is what hygiene says of one want's bed.
type Verdict struct {
	Bed   string
	Batch *string
	hygiene.Verdict
}

// Kind is the sort of reason that binds a want.
type Kind string

// What may bind a want.
const (
	ByVolume     Kind = "volume"
	ByTime       Kind = "time"
	ByHygiene    Kind = "hygiene"
	ByStock      Kind = "stock"
	ByApplicator Kind = "applicator"
	ByWeather    Kind = "weather"
)

// Unmet is a want that cannot be served, with the binding reason.
type Unmet struct {
	Want    int    `json:"want"`
	Bed     string `json:"bed"`
	Kind    Kind   `json:"kind"`
	Reason  string `json:"reason"`
	Nearest string `json:"nearest"` // what would work
}

// Advice is a change of the job file that lowers the chance of going under
// the limit.
type Advice struct {
	Batch  string           `json:"batch"`
	Text   string           `json:"text"`
	Change []jobfile.Change `json:"change"`
	Effect Effect           `json:"effect"`
}

// Effect is the chance in 100, before and after a change.
type Effect struct {
	Before float64 `json:"chance_before"`
	After  float64 `json:"chance_after"`
}

// MissingNumber is a number that nobody has given and that would narrow the
// plan, with how to get it.
type MissingNumber struct {
	Key  string `json:"key"`
	Text string `json:"text"`
}
