package main

import (
	"fmt"
	"math"
	"sort"

	"aerosteep/job/forecast"
)

// score is what one or all brews came to.
type score struct {
	in80, in95, bands          int
	ours, without, holding     []float64 // errors four hours ahead
	crps                       []float64
	crashes, announced         int
	calmWatched, falseAlarms   int
	falseInCalm                int
	readyWrong                 int
	readyPast, readyFalling    []float64
	wrong, wrongFound          int
	ordinary, ordinaryDoubted  int
	failures, failuresNear     int
	stops, stopsShown          int
	meterOff, meterOffFound    int
	meterGood, meterGoodBlamed int
}

func (s *score) add(o score) {
	s.in80 += o.in80
	s.in95 += o.in95
	s.bands += o.bands
	s.ours, s.without, s.holding = append(s.ours, o.ours...), append(s.without, o.without...), append(s.holding, o.holding...)
	s.crps = append(s.crps, o.crps...)
	s.crashes += o.crashes
	s.announced += o.announced
	s.calmWatched += o.calmWatched
	s.falseAlarms += o.falseAlarms
	s.falseInCalm += o.falseInCalm
	s.readyWrong += o.readyWrong
	s.readyPast, s.readyFalling = append(s.readyPast, o.readyPast...), append(s.readyFalling, o.readyFalling...)
	s.wrong += o.wrong
	s.wrongFound += o.wrongFound
	s.ordinary += o.ordinary
	s.ordinaryDoubted += o.ordinaryDoubted
	s.failures += o.failures
	s.failuresNear += o.failuresNear
	s.stops += o.stops
	s.stopsShown += o.stopsShown
	s.meterOff += o.meterOff
	s.meterOffFound += o.meterOffFound
	s.meterGood += o.meterGood
	s.meterGoodBlamed += o.meterGoodBlamed
}

func (b *brew) score(o options) (score, error) {
	var s score
	prior, err := b.ask(0, false, o)
	if err != nil {
		return s, err
	}
	kLaBefore := prior.State.KLa20.Median
	for _, a := range b.Meta.Ask {
		f, err := b.ask(a.Hour, true, o)
		if err != nil {
			return s, err
		}
		b.scoreBands(&s, f, prior, a.Hour)
		b.scoreAlarm(&s, f, a.Hour, a.Why)
		b.scoreReady(&s, f, a.Hour)
		b.scoreFailure(&s, f, a.Hour, a.Why, kLaBefore)
		if a.Why != "failure-1" && a.Why != "failure-2" {
			kLaBefore = f.State.KLa20.Median
		}
		if o.verbose {
			b.tell(f, a.Hour, a.Why)
		}
	}
	end, err := b.ask(b.Meta.Planned, true, o)
	if err != nil {
		return s, err
	}
	b.scoreDoubt(&s, end)
	if o.verbose {
		fmt.Printf("   end: bias %.2f [%.2f %.2f] true %.2f suspect %v doubted %+v\n", end.State.MeterBias.Median, end.State.MeterBias.Low80, end.State.MeterBias.High80, b.Meta.Meter.Bias+b.Meta.Meter.Drift*b.Meta.Planned, end.MeterSuspect(), end.Doubted)
	}
	return s, nil
}

// at is the forecast's oxygen at an hour, linear between the rows.
func at(f *forecast.Forecast, hour float64) (forecast.Band, bool) {
	for i := 1; i < len(f.Course); i++ {
		p, q := f.Course[i-1], f.Course[i]
		if q.Hour >= hour-1e-9 {
			share := (hour - p.Hour) / (q.Hour - p.Hour)
			mix := func(a, b float64) float64 { return a + share*(b-a) }
			return forecast.Band{
				Median: mix(p.DO.Median, q.DO.Median), Low50: mix(p.DO.Low50, q.DO.Low50), High50: mix(p.DO.High50, q.DO.High50),
				Low80: mix(p.DO.Low80, q.DO.Low80), High80: mix(p.DO.High80, q.DO.High80),
				Low95: mix(p.DO.Low95, q.DO.Low95), High95: mix(p.DO.High95, q.DO.High95),
			}, true
		}
	}
	return forecast.Band{}, false
}

// crps is the continuous ranked probability score in its quantile form
// (Gneiting & Raftery 2007, J. Am. Stat. Assoc. 102:359).
func crps(b forecast.Band, x float64) float64 {
	q := []float64{b.Low95, b.Low80, b.Low50, b.Median, b.High50, b.High80, b.High95}
	a := []float64{0.025, 0.10, 0.25, 0.50, 0.75, 0.90, 0.975}
	w := []float64{0.0625, 0.1125, 0.20, 0.25, 0.20, 0.1125, 0.0625}
	sum := 0.0
	for i := range q {
		below := 0.0
		if x < q[i] {
			below = 1
		}
		sum += 2 * w[i] * (x - q[i]) * (a[i] - below)
	}
	return sum
}

func (b *brew) scoreBands(s *score, f, prior *forecast.Forecast, now float64) {
	for _, ahead := range []float64{1, 2, 4, 8, 12} {
		x := b.oxygenAt(now + ahead)
		band, there := at(f, now+ahead)
		if !there || math.IsNaN(x) || now+ahead > b.Meta.Planned || b.unforeseen(now, now+ahead) {
			continue
		}
		s.crps = append(s.crps, crps(band, x))
		if ahead != 4 {
			continue
		}
		s.bands++
		if x >= band.Low80 && x <= band.High80 {
			s.in80++
		}
		if x >= band.Low95 && x <= band.High95 {
			s.in95++
		}
		b.scoreError(s, band, prior, now, x)
	}
}

// scoreError compares with no readings and with holding the last one.
func (b *brew) scoreError(s *score, band forecast.Band, prior *forecast.Forecast, now, x float64) {
	last, count := 0.0, 0
	for _, r := range b.Log.Readings {
		if r.Hour > now || !r.HasOxygen() {
			continue
		}
		count++
		if r.DO != nil {
			last = *r.DO
		} else {
			last = *r.Percent / 100 * prior.State.Saturation
		}
	}
	disturbed := b.unforeseen(0, now)
	without, there := at(prior, now+4)
	if count < 3 || disturbed || !there {
		return
	}
	s.ours = append(s.ours, math.Abs(band.Median-x))
	s.without = append(s.without, math.Abs(without.Median-x))
	s.holding = append(s.holding, math.Abs(last-x))
}

func (b *brew) scoreAlarm(s *score, f *forecast.Forecast, now float64, why string) {
	if f.Chance == nil {
		return
	}
	until := math.Min(now+24, b.Meta.Planned)
	alarm := *f.Chance > 50
	if why == "before-crash" {
		s.crashes++
		if alarm {
			s.announced++
		}
		return
	}
	if b.lowest(now, until) >= b.Meta.Limit+0.25 {
		s.calmWatched++
		if alarm {
			s.falseAlarms++
			if b.Meta.Kind == "calm" {
				s.falseInCalm++
			}
		}
	}
}

func (b *brew) scoreReady(s *score, f *forecast.Forecast, now float64) {
	before, after := b.oxygenAt(now-1)-b.oxygenAt(now), b.oxygenAt(now)-b.oxygenAt(now+1)
	falling := before > 0.15 && after > 0.15
	if falling && f.Ready.Chance >= 80 {
		s.readyWrong++
	}
	switch {
	case before > 0 && after > 0 && now < b.Meta.Peak.Hour:
		s.readyFalling = append(s.readyFalling, f.Ready.Chance)
	case now > b.Meta.Peak.Hour+6:
		s.readyPast = append(s.readyPast, f.Ready.Chance)
	}
}

func (b *brew) scoreFailure(s *score, f *forecast.Forecast, now float64, why string, before float64) {
	if why != "failure-1" && why != "failure-2" {
		return
	}
	s.failures++
	if math.Abs(f.State.DO.Median-b.oxygenAt(now)) <= 1.5 {
		s.failuresNear++
	}
	for _, x := range b.Meta.Failures {
		if !x.Logged && x.Left == 0 && now > x.Start && now < x.End {
			s.stops++
			if f.State.KLa20.Median <= 0.7*before || f.Why().Driver == forecast.ByAir {
				s.stopsShown++
			}
		}
	}
}

func (b *brew) scoreDoubt(s *score, f *forecast.Forecast) {
	doubted := map[int]bool{}
	for _, d := range f.Doubted {
		doubted[d.Reading] = true
	}
	for i, r := range b.Log.Readings {
		if !r.HasOxygen() || r.Hour > b.Meta.Planned {
			continue
		}
		wrong := false
		for _, w := range b.Meta.Wrong {
			wrong = wrong || math.Abs(w.Hour-r.Hour) < 0.02
		}
		switch {
		case wrong:
			s.wrong++
			if doubted[i] {
				s.wrongFound++
			}
		default:
			s.ordinary++
			if doubted[i] {
				s.ordinaryDoubted++
			}
		}
	}
	off := math.Abs(b.Meta.Meter.Bias)
	suspect := f.MeterSuspect()
	switch {
	case off >= 0.9:
		s.meterOff++
		if suspect {
			s.meterOffFound++
		}
	case off <= 0.35:
		s.meterGood++
		if suspect {
			s.meterGoodBlamed++
		}
	}
}

func median(v []float64) float64 {
	if len(v) == 0 {
		return math.NaN()
	}
	v = append([]float64(nil), v...)
	sort.Float64s(v)
	return v[len(v)/2]
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}

// auc is the share of pairs in which past is above falling; equal counts half.
func auc(past, falling []float64) float64 {
	above := 0.0
	for _, p := range past {
		for _, q := range falling {
			switch {
			case p > q:
				above++
			case p == q:
				above += 0.5
			}
		}
	}
	return above / float64(len(past)*len(falling))
}
