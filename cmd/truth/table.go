package main

import (
	"fmt"
	"math"

	"aerosteep/job/forecast"
)

func printHead() {
	fmt.Println("brew       80 %    95 %    error  without  holding   CRPS  crashes  false  ready wrong  doubted wrong/ordinary  failures")
}

func (s score) print(name string) {
	fmt.Printf("%-8s %3d/%-3d %3d/%-3d  %6s  %6s  %6s  %6s  %3d/%-3d %3d/%-3d %6d     %5d/%-2d %5d/%-4d   %3d/%-3d\n",
		name, s.in80, s.bands, s.in95, s.bands, show(median(s.ours)), show(median(s.without)), show(median(s.holding)), show(mean(s.crps)),
		s.announced, s.crashes, s.falseAlarms, s.calmWatched, s.readyWrong, s.wrongFound, s.wrong, s.ordinaryDoubted, s.ordinary, s.failuresNear, s.failures)
}

func show(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return fmt.Sprintf("%.2f", v)
}

// verdict prints what was promised beside what was reached.
func (s score) verdict() {
	share := func(a, b int) float64 { return 100 * float64(a) / math.Max(1, float64(b)) }
	lines := []struct {
		what, promise string
		got           float64
	}{
		{"80 % band holds, in 100", "70 to 90", share(s.in80, s.bands)},
		{"95 % band holds, in 100", "90 or more", share(s.in95, s.bands)},
		{"error against no readings", "0.75 or less", median(s.ours) / median(s.without)},
		{"error against holding the last", "0.85 or less", median(s.ours) / median(s.holding)},
		{"crashes announced, in 100", "85 or more", share(s.announced, s.crashes)},
		{"false announcements, in 100", "7 or less", share(s.falseAlarms, s.calmWatched)},
		{"false ones in a calm brew", "none", float64(s.falseInCalm)},
		{"mean CRPS, mg/L", "0.65 or less", mean(s.crps)},
		{"ready while oxygen falls", "never", float64(s.readyWrong)},
		{"ready tells past from falling", "0.80 or more", auc(s.readyPast, s.readyFalling)},
		{"wrong readings doubted, in 100", "all", share(s.wrongFound, s.wrong)},
		{"ordinary readings doubted, in 100", "none", share(s.ordinaryDoubted, s.ordinary)},
		{"state near the truth in a failure", "all", share(s.failuresNear, s.failures)},
		{"full stops that show in the air", "all", share(s.stopsShown, s.stops)},
		{"meters off that are suspected", "all", share(s.meterOffFound, s.meterOff)},
		{"good meters suspected", "none", share(s.meterGoodBlamed, s.meterGood)},
	}
	fmt.Println()
	for _, l := range lines {
		fmt.Printf("%-36s %8.2f   promised %s\n", l.what, l.got, l.promise)
	}
}

// tell prints one forecast beside the truth.
func (b *brew) tell(f *forecast.Forecast, now float64, why string) {
	chance := math.NaN()
	if f.Chance != nil {
		chance = *f.Chance
	}
	fmt.Printf("   %5.1f h %-12s DO %.2f [%.2f %.2f] true %.2f  T %.1f  OUR %.1f  kLa %.1f  bias %.2f [%.2f %.2f]  chance %.0f  ready %.0f (peak %.1f)  used %d doubted %d\n",
		now, why, f.State.DO.Median, f.State.DO.Low80, f.State.DO.High80, b.oxygenAt(now), f.State.Water.Median, f.State.Uptake.Median, f.State.KLa20.Median,
		f.State.MeterBias.Median, f.State.MeterBias.Low80, f.State.MeterBias.High80, chance, f.Ready.Chance, b.Meta.Peak.Hour, f.Used, len(f.Doubted))
	for _, ahead := range []float64{1, 2, 4, 8, 12} {
		band, there := at(f, now+ahead)
		if there {
			fmt.Printf("        +%2.0f h  %.2f [%.2f %.2f] true %.2f crps %.2f\n", ahead, band.Median, band.Low80, band.High80, b.oxygenAt(now+ahead), crps(band, b.oxygenAt(now+ahead)))
		}
	}
}
