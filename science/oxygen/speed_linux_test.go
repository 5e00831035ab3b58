package oxygen_test

import (
	"runtime"
	"syscall"
	"testing"
	"time"

	"aerosteep/quantity"
	"aerosteep/science/oxygen"
)

// BenchmarkRiseOfTenThousand fits a long logger's file; it reports the best of
// the processor's own times.
func BenchmarkRiseOfTenThousand(b *testing.B) {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	readings := longRise(12)
	best := time.Hour
	for b.Loop() {
		start := processorTime(b)
		if _, err := oxygen.Reaeration(readings, 0, oxygen.Probe{Resolution: 0.01}); err != nil {
			b.Fatal(err)
		}
		best = min(best, processorTime(b)-start)
	}
	b.ReportMetric(float64(best.Microseconds())/1000, "best-ms")
}

// processorTime is what this thread has used: a busy machine does not fail
// the test.
func processorTime(t testing.TB) time.Duration {
	const thisThread = 1 // RUSAGE_THREAD
	var used syscall.Rusage
	if err := syscall.Getrusage(thisThread, &used); err != nil {
		t.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// BenchmarkSaturationMillion works a million values out, as bench/saturation.sh
// asks of GSW; it reports the best of the processor's own times, which a busy
// machine disturbs least.
func BenchmarkSaturationMillion(b *testing.B) {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	const million = 1_000_000
	water, salt, held := make([]quantity.Temperature, million), make([]quantity.Salinity, million), make([]quantity.Concentration, million)
	for i := range water {
		water[i] = quantity.Temperature(40 * float64(i) / million)
		salt[i] = quantity.Salinity(35 * float64(i%1000) / 1000)
	}
	best := time.Hour
	for b.Loop() {
		start := processorTime(b)
		for i := range held {
			held[i], _ = oxygen.Saturation(water[i], quantity.StandardAtmosphere, salt[i])
		}
		best = min(best, processorTime(b)-start)
	}
	b.ReportMetric(float64(best.Nanoseconds()), "best-ns")
}
