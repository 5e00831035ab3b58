package jobfile

import (
	"time"

	"aerosteep/job/ground"
	"aerosteep/job/recipe"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// File is a job file that has been read: nothing in it is wrong, defaults are
// filled in, and a pointer that is nil was not given.
type File struct {
	Holding     Holding
	Limits      Limits
	Sites       []ground.Site
	Beds        []Bed
	Pumps       []rig.Pump
	Vessels     []rig.Vessel
	Applicators []rig.Applicator
	Water       Water
	Hygiene     Facts // of the whole holding
	Costs       Costs
	Larder      recipe.Shelf
	Recipes     []recipe.Recipe // of the file, not the built-in ones
	People      []Person
	Loggers     []Logger
	Wants       []Want
	Batches     []Batch

	records map[string][]*record
}

// Holding is everything that one user looks after.
type Holding struct {
	Name         string
	Zone         *time.Location // UTC where no time needed one
	ZoneGiven    bool
	Reader       wording.Reader
	Currency     string
	OxygenMeter  bool   // false: no step or sheet may ask for one
	NoMolasses   bool   // built-in recipes are taken without it
	Emergency    string // the numbers to call, as the user has them
	MeterUnknown bool   // nothing was said of a meter
}

// Limits are what the grower accepts.
type Limits struct {
	DO            *quantity.Concentration // nil: 6 mg/L or 70 % of saturation, whichever is lower
	Chance        float64                 // in 100
	UseByDO       quantity.Concentration
	StrainMinutes float64
	Loss          quantity.Share
	Molasses      quantity.Share // the dose above which a reason is asked for
}

// Bed is a bed with what goes on it.
type Bed struct {
	ground.Bed
	Batches []string // that go here, for the hygiene decision
	Facts   Facts
}

// Water is the water tea is made with.
type Water struct {
	Source           string // "" where unknown
	FreeChlorine     *quantity.Concentration
	TotalChlorine    *quantity.Concentration
	Chloramine       *quantity.Concentration
	Temperature      quantity.Temperature
	TemperatureGiven bool
	Conductivity     *quantity.Conductivity
	OldTest          *time.Time // of the own water, too long ago to be taken at its word
}

// Costs are the prices of what is not an ingredient.
type Costs struct {
	Electricity     *Price
	Wage            *Price
	MinutesPerBatch *float64
}

// Person is one of the crew.
type Person struct {
	Initials string
	FullName string
	Role     string
	Training string           // what and when, as it was written down
	Language wording.Language // "" where nobody said
}

// Logger is how the files of a logger or meter are read.
type Logger struct {
	Name    string
	Columns []string // "DO (mg/L) = do mg/L"
	Order   string   // of day and month: "day", "month", "" where nobody said
}

// Want is a wish: tea on a bed, at an hour or in a window.
type Want struct {
	Index      int // in the file, from 0
	Line       int
	Bed        string
	Method     string // drench | foliar
	At         *time.Time
	From       *time.Time
	Until      *time.Time
	TeaRate    *quantity.Dose
	Tea        *quantity.Volume
	MixRate    *quantity.Dose
	Each       *quantity.Volume // of mix on each plant, tray or tree
	Cans       *float64         // of mix, by the tank of its applicator
	Can        *quantity.Volume // that tank
	Count      int              // of plants, trays, trees or beds; 0: the bed's trees, else one
	Dilution   float64          // parts of water to one part of tea
	Recipe     string           // "": chosen by stage and crop
	Applicator string
}

// Batch is a batch that runs or ran.
type Batch struct {
	Name        string
	Vessel      string
	Recipe      string
	Volume      *quantity.Volume
	StartedAt   *time.Time
	Temperature *quantity.Temperature
	Facts       Facts
}

// Site finds a site by name; with one site only, "" finds that one.
func (f *File) Site(name string) (ground.Site, bool) {
	for _, s := range f.Sites {
		if s.Name == name || name == "" && len(f.Sites) == 1 {
			return s, true
		}
	}
	return ground.Site{}, false
}

// Bed finds a bed by name.
func (f *File) Bed(name string) (Bed, bool) {
	for _, b := range f.Beds {
		if b.Name == name {
			return b, true
		}
	}
	return Bed{}, false
}

// Vessel finds a vessel by name.
func (f *File) Vessel(name string) (rig.Vessel, bool) {
	for _, v := range f.Vessels {
		if v.Name == name {
			return v, true
		}
	}
	return rig.Vessel{}, false
}

// Pump finds a pump by name.
func (f *File) Pump(name string) (rig.Pump, bool) {
	for _, p := range f.Pumps {
		if p.Name == name {
			return p, true
		}
	}
	return rig.Pump{}, false
}

// Applicator finds an applicator by name.
func (f *File) Applicator(name string) (rig.Applicator, bool) {
	for _, a := range f.Applicators {
		if a.Name == name {
			return a, true
		}
	}
	return rig.Applicator{}, false
}

// Batch finds a batch by name.
func (f *File) Batch(name string) (Batch, bool) {
	for _, b := range f.Batches {
		if b.Name == name {
			return b, true
		}
	}
	return Batch{}, false
}

// Recipe finds a recipe of the file, then a built-in one.
func (f *File) Recipe(name string) (recipe.Recipe, bool) {
	for _, r := range f.Recipes {
		if r.Name == name {
			return r, true
		}
	}
	r, known := recipe.Starter(name)
	if f.Holding.NoMolasses {
		r = r.Without("molasses")
	}
	return r.On(f.Larder), known
}

// HasTable tells whether the file has a table of that name.
func (f *File) HasTable(name string) bool { return len(f.records[name]) > 0 }
