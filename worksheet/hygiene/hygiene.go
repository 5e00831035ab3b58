// Package hygiene holds the worksheets about what a batch may be used on and
// what a laboratory result is worth.
package hygiene

import "aerosteep/worksheet"

// Sheets are the worksheets of this room, in the order of the work: the
// verdict, the proof behind it, the clean-up, the laboratory.
func Sheets() []worksheet.Sheet {
	return []worksheet.Sheet{
		interval, compostProcess, pretest, recordsDue, sanitizer,
		mpn, plate, membraneFilter, geomean, nondetect, samplingPlan, classATime,
	}
}
