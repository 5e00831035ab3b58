// Package brew holds the worksheets of the living brew.
package brew

import "aerosteep/worksheet"

// Sheets are the worksheets of this room, in the order in which they are met.
func Sheets() []worksheet.Sheet { return []worksheet.Sheet{foodLimit} }
