package weather

import (
	"math"
	"time"
)

// Window is an unbroken run of hours that can be used.
type Window struct {
	Start, End time.Time
	Hours      int
	Verdict    Verdict // of its worst hour
}

// Windows finds the runs of at least so many hours that suit; with care, also
// those that ask for care.
func Windows(hours []Scored, least int, withCare bool) []Window {
	var all []Window
	var run *Window
	for i, h := range hours {
		usable := h.Verdict == VerdictSuits || withCare && h.Verdict == VerdictCare
		if run != nil && (!usable || !h.At.Equal(run.End)) {
			all, run = keepLong(all, *run, least), nil
		}
		if !usable {
			continue
		}
		if run == nil {
			run = &Window{Start: hours[i].At, Verdict: VerdictSuits}
		}
		run.End, run.Hours = h.At.Add(time.Hour), run.Hours+1
		if h.Verdict == VerdictCare {
			run.Verdict = VerdictCare
		}
	}
	if run != nil {
		all = keepLong(all, *run, least)
	}
	return all
}

func keepLong(all []Window, w Window, least int) []Window {
	if w.Hours < least {
		return all
	}
	return append(all, w)
}

// Best is the hour with the highest score, then the lowest ultraviolet, then
// the earliest; nil where none can be used.
func Best(hours []Scored) *Scored {
	var best *Scored
	for i := range hours {
		h := &hours[i]
		if h.Score == nil || *h.Score == Stop {
			continue
		}
		if best == nil || *h.Score > *best.Score || *h.Score == *best.Score && h.ultraviolet() < best.ultraviolet() {
			best = h
		}
	}
	return best
}

// ultraviolet counts an unknown index as the worst.
func (s *Scored) ultraviolet() float64 {
	if s.UV == nil {
		return math.Inf(1)
	}
	return *s.UV
}

// Conflicts counts the hours in which low sun meets still air.
func Conflicts(hours []Scored) int {
	n := 0
	for _, h := range hours {
		if h.Conflict {
			n++
		}
	}
	return n
}
