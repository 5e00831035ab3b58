package web

import (
	"sync"
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
	plans   map[planKey]*plan.Plan
}

type planKey struct {
	reader wording.Reader
	slot   int64
	sky    int64 // when the forecast was kept
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

// planOf is the plan of what the holding wants.
func (s *Site) planOf(file *jobfile.File, reader wording.Reader, now time.Time) *plan.Plan {
	key := planKey{reader: reader, slot: now.UnixNano() / int64(planFreshFor)}
	in := plan.Input{File: file, Now: now, Reader: reader}
	if sky := s.sky(); sky != nil {
		key.sky, in.Weather = sky.KeptAt.UnixNano(), sky.Forecast
	}
	s.made.mu.Lock()
	defer s.made.mu.Unlock()
	if kept := s.made.plans[key]; kept != nil {
		return kept
	}
	result := plan.Make(in)
	if len(s.made.plans) > 8 || s.made.plans == nil {
		s.made.plans = map[planKey]*plan.Plan{}
	}
	s.made.plans[key] = result
	return result
}
