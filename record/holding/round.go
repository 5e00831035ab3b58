package holding

import (
	"context"
	"encoding/json"
	"slices"
	"time"

	"aerosteep/job/application"
	"aerosteep/job/jobfile"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/record/journal"
)

// Round is one outing with the tea of a living batch: its stops in order, each
// with its loads and its clock.
type Round struct {
	Batch    Batch
	Fit      quantity.Volume // tea that can be drawn: the batch less the loss
	Used     quantity.Volume // put on so far
	Need     quantity.Volume // tea of the loads to come
	At       time.Time       // start of what is still to do
	UseBy    time.Time       // zero where it is not known
	Stops    []Stop
	Dropped  []string // beds that cannot be reached by the use-by
	InOrder  []int    // the wants in the order that keeps the most stops
	Moved    bool     // that order is another one
	LeftOut  []string // beds that somebody passed by
	Released *Release // the latest look; nil before it
}

// Release is what was decided at the look before the first load.
type Release struct {
	At           time.Time
	Released     bool
	Why, Instead string
}

// Stop is one want on the round.
type Stop struct {
	application.Visit
	Want       jobfile.Want
	Bed        jobfile.Bed
	Applicator *rig.Applicator
	Mix        quantity.Volume
	Loads      []application.Load // still to do
	Of         int                // loads in all
	Done       []Applied
	First      *application.FirstLoad  // where somebody measured it
	Correction *application.Correction // what it says
	Calibrated *Calibrated             // nil where the applicator was not
}

// Applied is a load that was put on.
type Applied struct {
	At      time.Time
	Load    int
	Tea     quantity.Volume
	Covered *quantity.Area
	Gone    *quantity.Volume
}

// RoundAsked is what a round is laid out for.
type RoundAsked struct {
	Wants []int // in this order; nil takes those that are due
	At    time.Time
	UseBy time.Time
	Way   application.WayBack // from the first load back to the dose
}

// dueWithin is how far ahead a want may lie and still be offered for a round.
const dueWithin = 48 * time.Hour

// Round lays the outing out. What was put on already counts as done.
func (h *Holding) Round(ctx context.Context, file *jobfile.File, b Batch, asked RoundAsked) (*Round, error) {
	r := &Round{Batch: b, At: asked.At, UseBy: asked.UseBy}
	if b.Volume != nil {
		r.Fit = *b.Volume * quantity.Volume(1-file.Limits.Loss)
	}
	written, err := h.readRound(ctx, r)
	if err != nil {
		return nil, err
	}
	wants := asked.Wants
	if wants == nil {
		wants = DueWants(file, asked.At)
	}
	for _, i := range wants {
		if i < 0 || i >= len(file.Wants) || slices.Contains(r.LeftOut, file.Wants[i].Bed) {
			continue
		}
		if s, ok := layStop(file, file.Wants[i], written[file.Wants[i].Bed], len(r.Stops) == 0, asked.Way); ok {
			s.Calibrated = h.calibrated(&s, asked.At)
			r.Stops = append(r.Stops, s)
		}
	}
	r.clock(file)
	return r, nil
}

// Release is the latest look at a batch; nil before the first.
func (h *Holding) Release(ctx context.Context, b Batch) (*Release, error) {
	r := &Round{Batch: b}
	_, err := h.readRound(ctx, r)
	return r.Released, err
}

// DueWants are the wants of now: those whose hour or window comes near.
func DueWants(file *jobfile.File, now time.Time) []int {
	var due []int
	for i := range file.Wants {
		from, until := file.Wants[i].From, file.Wants[i].Until
		if at := file.Wants[i].At; at != nil {
			from, until = at, at
		}
		if from != nil && until != nil && from.Before(now.Add(dueWithin)) && until.After(now.Add(-dueWithin/4)) {
			due = append(due, i)
		}
	}
	return due
}

// readRound gathers what was written down about a batch's outing.
func (h *Holding) readRound(ctx context.Context, r *Round) (map[string][]Applied, error) {
	var since time.Time
	if r.Batch.StartedAt != nil {
		since = *r.Batch.StartedAt
	}
	entries, err := h.Entries(ctx, r.Batch.Name, since)
	if err != nil {
		return nil, err
	}
	if err := h.readLeftOut(ctx, r, since); err != nil {
		return nil, err
	}
	byBed := map[string][]Applied{}
	for _, k := range entries {
		_, about := k.About()
		switch {
		case k.ReplacedBy != nil:
		case k.Kind == journal.Applied:
			a := readApplied(k)
			byBed[about] = append(byBed[about], a)
			r.Used += a.Tea
		case k.Kind == journal.Test:
			r.readRelease(k)
		}
	}
	return byBed, nil
}

func (h *Holding) readLeftOut(ctx context.Context, r *Round, since time.Time) error {
	notes, err := h.journal.List(ctx, journal.Wanted{Kinds: []string{journal.Note}, Since: since})
	if err != nil {
		return err
	}
	for _, k := range notes {
		var body struct {
			Batch string `json:"left_out_of"`
		}
		_ = json.Unmarshal(k.Body, &body) // another note
		if what, bed := k.About(); what == "bed" && body.Batch == r.Batch.Name && k.ReplacedBy == nil {
			r.LeftOut = append(r.LeftOut, bed)
		}
	}
	return nil
}

func readApplied(k journal.Kept) Applied {
	var body struct {
		Load    float64  `json:"load"`
		Tea     float64  `json:"tea_l"`
		Covered *float64 `json:"covered_m2"`
		Gone    *float64 `json:"gone_l"`
	}
	_ = json.Unmarshal(k.Body, &body) // what is of another type is not known
	a := Applied{At: k.Time(), Load: int(body.Load), Tea: quantity.Litres(body.Tea)}
	if body.Covered != nil {
		a.Covered = new(quantity.SquareMetres(*body.Covered))
	}
	if body.Gone != nil {
		a.Gone = new(quantity.Litres(*body.Gone))
	}
	return a
}

func (r *Round) readRelease(k journal.Kept) {
	var body struct {
		Released string `json:"released"`
		Why      string `json:"why"`
		Instead  string `json:"instead"`
	}
	_ = json.Unmarshal(k.Body, &body) // another test
	if body.Released != "" {
		r.Released = &Release{At: k.Time(), Released: body.Released == "yes", Why: body.Why, Instead: body.Instead}
	}
}

// clock runs the day through the stops that are left, and looks for the order
// that keeps the most of them.
func (r *Round) clock(file *jobfile.File) {
	day := application.Day{Start: r.At, From: r.siteOf(file), UseBy: map[string]time.Time{}, Way: wayOf(file)}
	if !r.UseBy.IsZero() {
		day.UseBy[r.Batch.Name] = r.UseBy
	}
	for i := range r.Stops {
		s := &r.Stops[i]
		s.Batch = r.Batch.Name
		for _, l := range s.Loads {
			r.Need += l.Tea
		}
		day.Stops = append(day.Stops, s.Visit.Stop)
	}
	for i, v := range day.Visits() {
		r.Stops[i].Visit = v
	}
	rescue := day.Rescue()
	r.Moved = rescue.Moved
	for _, s := range rescue.Dropped {
		r.Dropped = append(r.Dropped, s.Name)
	}
	for _, s := range rescue.Day.Stops {
		i := slices.IndexFunc(r.Stops, func(o Stop) bool { return o.Name == s.Name })
		r.InOrder = append(r.InOrder, r.Stops[i].Want.Index)
	}
}

func (r *Round) siteOf(file *jobfile.File) string {
	if v, known := file.Vessel(r.Batch.Vessel); known {
		return v.Site
	}
	return ""
}

// wayOf is the drive to another site, as far as the file says.
func wayOf(file *jobfile.File) func(from, to string) quantity.Span {
	return func(from, to string) quantity.Span {
		site, known := file.Site(to)
		if from == to || !known || site.Drive == nil {
			return 0
		}
		return *site.Drive
	}
}
