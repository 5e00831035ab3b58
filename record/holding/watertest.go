package holding

import (
	"encoding/json"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/journal"
)

// WaterServesFor is how long a test of water is taken at its word: supplies
// change with the season (common practice).
const WaterServesFor = 90 * 24 * time.Hour

// WaterTest is the last test of the water of one place.
type WaterTest struct {
	At       time.Time
	Place    string   `json:"place"` // "" is the own water
	Total    *float64 `json:"total_chlorine_mg_per_l"`
	From     *float64 `json:"total_chlorine_from_mg_per_l"` // lower end of a strip
	Free     *float64 `json:"free_chlorine_mg_per_l"`
	EColi    *float64 `json:"ecoli_per_100_ml"`
	ReadFrom string   `json:"read_from"` // strip | kit | report | laboratory
}

// WaterTests are the last test of each place, of all that say anything of water,
// in the order in which the places were first tested.
func (h *Holding) WaterTests() []WaterTest {
	h.mu.Lock()
	defer h.mu.Unlock()
	var order []string
	last := map[string]WaterTest{}
	for _, t := range h.state.standing("", journal.Test) {
		said := WaterTest{At: t.At}
		if json.Unmarshal(t.Body, &said) != nil || said.Total == nil && said.Free == nil && said.EColi == nil {
			continue
		}
		if _, seen := last[said.Place]; !seen {
			order = append(order, said.Place)
		}
		last[said.Place] = said
	}
	tests := make([]WaterTest, 0, len(order))
	for _, place := range order {
		tests = append(tests, last[place])
	}
	return tests
}

// withWater gives a file the chlorine of the own water as it was last tested: a
// test counts over what the file says. A strip's higher end is acted on; a
// yearly report says what was usual and is left to the file.
func (h *Holding) withWater(file *jobfile.File) {
	for _, t := range h.WaterTests() {
		old := h.journal.Now().Sub(t.At) > WaterServesFor
		if t.Place != "" || t.ReadFrom == "report" || t.Total == nil && t.Free == nil {
			continue
		}
		if old {
			file.Water.OldTest = &t.At
			continue
		}
		file.Water.Chloramine = nil
		file.Water.TotalChlorine, file.Water.FreeChlorine = concentration(t.Total), concentration(t.Free)
	}
}

func concentration(mg *float64) *quantity.Concentration {
	if mg == nil {
		return nil
	}
	return new(quantity.MilligramsPerLitre(*mg))
}
