package wording

import (
	"fmt"
	"strings"
	"sync"
)

// catalogue is every sentence of the house, by key: put together when the
// first sentence is asked for, since not every start says one.
var catalogue = sync.OnceValue(func() Table {
	return join(
		Table{
			verbatim:                 {"{text}", "{text}"},
			"wording.fewer-than-one": {"fewer than 1", "menos de 1"},
			"wording.more-than-99":   {"more than 99", "más de 99"},
		},
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
		webGroundWords,
		groundSheetWords,
		groundLabels,
		chlorineWords,
		skyWords,
		recipeWords,
		recipeSheetWords,
		countingWords,
		countingSheetWords,
		hygieneWords,
		hygieneQuestions,
		laboratoryWords,
		laboratoryLabels,
		sprayWords,
		applicationWords,
		ordersWords,
		formulaWords,
		schoolWords,
		intakeWords,
		attachWords,
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
		feedWords,
		mishapWords,
		webCardWords,
		webWriteWords,
		webSetupWords,
		journalWords,
		holdingWords,
		reportWords,
		paperWords,
		jobSheetWords,
		cliWords,
		cliRecordWords,
		cliJobWords,
		apiWords,
		webShellWords,
		webPagesWords,
		webGuidesWords,
		webRigTestWords,
		webMeterWords,
		webBenchWords,
		webRecipesWords,
		webHygieneWords,
		webRunWords,
		webPapersWords,
		labelsWords,
	)
})

// join puts the tables of all rooms together. A sentence that two rooms claim
// is a mistake that no build should survive. The name of an input or a figure
// is common property: the first table that has it names it for all.
func join(tables ...Table) Table {
	all := Table{}
	for _, t := range tables {
		for key, pair := range t {
			if _, twice := all[key]; !twice {
				all[key] = pair
			} else if !strings.HasPrefix(key, "key.") && !strings.HasPrefix(key, "input.") && !strings.HasPrefix(key, "value.") {
				panic(fmt.Sprintf("wording: key %q stands in two tables", key))
			}
		}
	}
	return all
}
