package wording

import (
	"fmt"
	"strings"
)

// catalogue is every sentence of the house, by key.
var catalogue = join(
	Table{verbatim: {"{text}", "{text}"}},
	quantityWords,
	tableWords,
	placeWords,
	worksheetWords,
	oxygenWords,
	oxygenSheetWords,
	oxygenCautionWords,
	groundWords,
	waterWords,
	weatherWords,
	groundSheetWords,
	groundLabels,
	chlorineWords,
	skyWords,
	recipeWords,
	recipeSheetWords,
	countingWords,
	countingSheetWords,
	hygieneWords,
	laboratoryWords,
	laboratoryLabels,
	sprayWords,
	applicationWords,
	applicationSheets,
	applicationInputs,
	applicationKeys,
	applicationValues,
	costWords,
	jobfileWords,
	jobfileKeyWords,
	rigWords,
	forecastWords,
	growthWords,
	planWords,
	journalWords,
	holdingWords,
	reportWords,
	cliWords,
	cliRecordWords,
	cliJobWords,
	apiWords,
	webShellWords,
	webPagesWords,
	webGuidesWords,
	labelsWords,
)

// join puts the tables of all rooms together; a sentence that two rooms claim
// is a mistake that no build should survive. The label of a JSON key ("key.")
// belongs to all rooms that have the key: the first to name it is heard.
func join(tables ...Table) Table {
	all := Table{}
	for _, t := range tables {
		for key, pair := range t {
			if _, twice := all[key]; twice && strings.HasPrefix(key, "key.") {
				continue
			} else if twice {
				panic(fmt.Sprintf("wording: key %q stands in two tables", key))
			}
			all[key] = pair
		}
	}
	return all
}
