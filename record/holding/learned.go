package holding

import (
	"context"
	"encoding/json"
	"math"
	"slices"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
)

// learnFrom is how many finished batches of a vessel or a recipe teach the next:
// the latest, since diffusers foul and compost changes (judged).
const learnFrom = 8

// learned is what the finished batches of a batch's vessel and recipe say.
func (h *Holding) learned(ctx context.Context, name string) (*forecast.Learned, error) {
	b, known := h.Batch(name)
	if !known || b.StartedAt == nil {
		return nil, nil
	}
	return h.Taught(ctx, b.Vessel, b.Recipe, *b.StartedAt)
}

// Taught is what finished batches of a vessel, and of a recipe, say of one that
// begins at a moment; nil where there are none that were read. Either may be "".
func (h *Holding) Taught(ctx context.Context, vessel, recipe string, before time.Time) (*forecast.Learned, error) {
	ofVessel, err := h.lessons(ctx, before, "vessel", vessel, func(o Batch) bool { return o.Vessel == vessel })
	if err != nil {
		return nil, err
	}
	ofRecipe, err := h.lessons(ctx, before, "recipe", recipe, func(o Batch) bool { return o.Recipe == recipe })
	if err != nil || len(ofVessel)+len(ofRecipe) == 0 {
		return nil, err
	}
	return forecast.Learn(ofVessel, ofRecipe), nil
}

// lessons are those of the latest batches that ended before a moment and began
// after somebody last said that the vessel or recipe is to be learned anew.
func (h *Holding) lessons(ctx context.Context, before time.Time, what, name string, alike func(Batch) bool) ([]forecast.Lesson, error) {
	since, err := h.learnedAnew(ctx, what, name)
	if err != nil || name == "" {
		return nil, err
	}
	var lessons []forecast.Lesson
	for _, b := range h.Batches() {
		if len(lessons) == learnFrom {
			break
		}
		if b.Ended == nil || b.StartedAt == nil || !alike(b) || !b.Ended.At.Before(before) || b.StartedAt.Before(since) {
			continue
		}
		l, taught, err := h.lessonOf(ctx, b)
		if err != nil {
			return nil, err
		}
		if taught {
			lessons = append(lessons, l)
		}
	}
	return lessons, nil
}

// learnedAnew is when somebody last said so of a vessel or recipe; zero where
// nobody did.
func (h *Holding) learnedAnew(ctx context.Context, what, name string) (time.Time, error) {
	var since time.Time
	notes, err := h.journal.List(ctx, journal.Wanted{Subject: what + ":" + name, Kinds: []string{journal.Note}})
	for _, k := range notes {
		var body struct {
			Learn string `json:"learn"`
		}
		if k.ReplacedBy == nil && json.Unmarshal(k.Body, &body) == nil && body.Learn == "anew" && k.Time().After(since) {
			since = k.Time()
		}
	}
	return since, err
}

// keptLesson is a lesson set aside: a finished batch says the same until somebody
// writes something more about it.
type keptLesson struct {
	Lesson forecast.Lesson `json:"lesson"`
	Taught bool            `json:"taught"`
}

// lessonForm is raised when lessons are drawn in another way.
const lessonForm = "lesson-1:"

func (h *Holding) lessonOf(ctx context.Context, b Batch) (forecast.Lesson, bool, error) {
	last, err := h.journal.LastAbout(ctx, "batch:"+b.Name)
	if err != nil {
		return forecast.Lesson{}, false, err
	}
	name := lessonForm + h.journal.Name() + ":" + b.Name
	arrival, text, err := h.journal.Checkpoint(ctx, name)
	if err != nil {
		return forecast.Lesson{}, false, err
	}
	var kept keptLesson
	if text != nil && arrival == last && json.Unmarshal(text, &kept) == nil {
		return kept.Lesson, kept.Taught, nil
	}
	kept.Lesson, kept.Taught, err = h.drawLesson(ctx, b)
	if err != nil {
		return forecast.Lesson{}, false, err
	}
	if text, err = json.Marshal(kept); err == nil {
		_ = h.journal.SetCheckpoint(ctx, name, last, text) // done without where it cannot be stored
	}
	return kept.Lesson, kept.Taught, nil
}

// drawLesson walks a finished batch through. One that can no longer be told (its
// vessel or recipe is gone) teaches nothing.
func (h *Holding) drawLesson(ctx context.Context, b Batch) (forecast.Lesson, bool, error) {
	file, err := h.withPast(b.Name)
	if err != nil {
		return forecast.Lesson{}, false, nil
	}
	subject, err := forecast.Of(file, b.Name)
	if err != nil {
		return forecast.Lesson{}, false, nil
	}
	log, err := h.BrewLog(ctx, b.Name, subject.Start)
	if err != nil {
		return forecast.Lesson{}, false, err
	}
	end := math.Min(b.Ended.At.Sub(subject.Start).Hours(), subject.Setup.Planned.Hours())
	if end <= 0 {
		return forecast.Lesson{}, false, nil
	}
	q := subject.Question(log, subject.Start.Add(time.Duration(end*float64(time.Hour))), 0, 0, 1)
	l, taught, err := forecast.LessonOf(q)
	if err != nil {
		return forecast.Lesson{}, false, nil
	}
	return l, taught, nil
}

// withPast is the set-up with one batch that is over.
func (h *Holding) withPast(name string) (*jobfile.File, error) {
	parts := h.Parts()
	if !slices.ContainsFunc(parts, func(p jobfile.Part) bool { return p.Table == "batch" && p.Name == name }) {
		h.mu.Lock()
		body := h.state.body("batch:" + name)
		h.mu.Unlock()
		parts = append(parts, jobfile.Part{Table: "batch", Name: name, Body: body})
	}
	file, err := read(parts, jobfile.Whole)
	if err == nil {
		h.withTests(file)
	}
	return file, err
}
