// Package counting holds the worksheets of the counting bench: from what is
// seen in a chamber, under a cover slip or in a well to how many there are in a
// millilitre, with an honest range.
package counting

import "aerosteep/worksheet"

// Sheets are the worksheets of this room, in the order of the work.
func Sheets() []worksheet.Sheet {
	return []worksheet.Sheet{cells, fieldCount, hyphae, fbRatio, fieldsNeeded, protozoa, controlChart}
}

// join puts groups of inputs behind each other.
func join(groups ...[]worksheet.Input) []worksheet.Input {
	var all []worksheet.Input
	for _, g := range groups {
		all = append(all, g...)
	}
	return all
}
