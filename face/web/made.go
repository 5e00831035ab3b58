package web

import (
	"context"
	"sync"
	"sync/atomic"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/wording"
)

// made is what was worked out from the holding and stays true until something
// new is written down: its job file, and its plan for a while.
type made struct {
	mu      sync.Mutex
	version int64
	file    *jobfile.File
	read    bool
	plans   map[planKey]*keptPlan
}

type planKey struct {
	reader wording.Reader
	sky    int64 // when the forecast was kept
}

type keptPlan struct {
	plan     *plan.Plan
	slot     int64 // of time, that it was made in
	renewing atomic.Bool
}

// planFreshFor is how long a plan is shown before it is made anew.
const planFreshFor = 5 * time.Minute

// held is what the holding holds as a job file; nil where it is empty or
// cannot be read as one.
func (s *Site) held() *jobfile.File {
	if s.Holding == nil || s.Holding.Empty() {
		return nil
	}
	s.made.mu.Lock()
	defer s.made.mu.Unlock()
	s.renew()
	if !s.made.read {
		file, err := s.Holding.File(jobfile.Whole)
		if err != nil {
			s.log("holding as a job file", err)
		}
		s.made.file, s.made.read = file, true
	}
	return s.made.file
}

// renew forgets what was made before the latest entry.
func (s *Site) renew() {
	if v := s.Holding.Version(); v != s.made.version {
		s.made.version, s.made.file, s.made.read, s.made.plans = v, nil, false, nil
	}
}

// planOf is the plan of what the holding wants. One that has aged while nothing
// was written down is shown once more, and made anew meanwhile: nobody waits for
// it but the first.
func (s *Site) planOf(file *jobfile.File, reader wording.Reader, now time.Time) *plan.Plan {
	key := planKey{reader: reader}
	in := plan.Input{File: file, Now: now, Reader: reader}
	if sky := s.sky(); sky != nil {
		key.sky, in.Weather = sky.KeptAt.UnixNano(), sky.Forecast
	}
	s.made.mu.Lock()
	kept, version := s.made.plans[key], s.made.version
	s.made.mu.Unlock()
	if kept == nil {
		kept = &keptPlan{plan: plan.Make(in), slot: slotOf(now)}
		s.keepPlan(key, kept, version)
		return kept.plan
	}
	if kept.slot != slotOf(now) && kept.renewing.CompareAndSwap(false, true) {
		go func() { s.keepPlan(key, &keptPlan{plan: plan.Make(in), slot: slotOf(now)}, version) }()
	}
	return kept.plan
}

func slotOf(now time.Time) int64 { return now.UnixNano() / int64(planFreshFor) }

// keepPlan keeps a plan unless something was written down since it was begun.
func (s *Site) keepPlan(key planKey, made *keptPlan, version int64) {
	s.made.mu.Lock()
	defer s.made.mu.Unlock()
	if version != s.made.version {
		return
	}
	if len(s.made.plans) > 8 || s.made.plans == nil {
		s.made.plans = map[planKey]*keptPlan{}
	}
	s.made.plans[key] = made
}

// Warm makes what the first page would wait for: the plan, and the forecast of
// each living batch.
func (s *Site) Warm(ctx context.Context) {
	file := s.held()
	if file == nil {
		return
	}
	if len(file.Wants) > 0 {
		s.planOf(file, file.Holding.Reader, s.Now())
	}
	for _, b := range s.Holding.Batches() {
		if b.Living() && ctx.Err() == nil {
			_, _ = s.twin(ctx, b.Name, s.now()) // what is wrong with it, its page says
		}
	}
}
