// Package catalog lists every worksheet in the order of the work.
package catalog

import (
	"aerosteep/worksheet"
	"aerosteep/worksheet/application"
	"aerosteep/worksheet/brew"
	"aerosteep/worksheet/counting"
	"aerosteep/worksheet/ground"
	"aerosteep/worksheet/hygiene"
	"aerosteep/worksheet/oxygen"
	"aerosteep/worksheet/recipe"
	"aerosteep/worksheet/units"
)

// rooms are the topics that bring worksheets.
var rooms = [][]worksheet.Sheet{
	units.Sheets(),
	ground.Sheets(),
	recipe.Sheets(),
	oxygen.Sheets(),
	brew.Sheets(),
	counting.Sheets(),
	hygiene.Sheets(),
	application.Sheets(),
}

// order is the order of the work: how a person meets the groups.
var order = []worksheet.Group{
	worksheet.Units, worksheet.Ground, worksheet.Water, worksheet.Air, worksheet.Recipe,
	worksheet.Brew, worksheet.Counting, worksheet.Hygiene, worksheet.Weather, worksheet.Application,
}

var sheets = ordered()

func ordered() []*worksheet.Sheet {
	var all []*worksheet.Sheet
	for _, group := range order {
		for _, room := range rooms {
			for i := range room {
				if room[i].Group == group {
					all = append(all, &room[i])
				}
			}
		}
	}
	return all
}

// All lists the sheets.
func All() []*worksheet.Sheet { return sheets }

// Find looks a sheet up by name.
func Find(name string) (*worksheet.Sheet, bool) {
	for _, s := range sheets {
		if s.Name == name {
			return s, true
		}
	}
	return nil, false
}

// Names lists the names.
func Names() []string {
	names := make([]string, len(sheets))
	for i, s := range sheets {
		names[i] = s.Name
	}
	return names
}
