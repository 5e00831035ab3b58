package ground_test

import (
	"strings"
	"testing"

	"aerosteep/fault"
)

// Each call is refused under the flag that is at fault.
func TestRefusals(t *testing.T) {
	night := `--start-temp 22C --air-temp 15C`
	for call, flag := range map[string]string{
		`area`:                                  "shape",
		`area --shape rectangle --length "2 m"`: "width",
		`area --shape rectangle --length "2 m" --width 3`:                    "width",
		`area --shape rectangle --length "2 m" --width "3 kg"`:               "width",
		`area --shape rectangle --length "0 m" --width "3 m"`:                "length",
		`area --shape rectangle --length "2 m" --width "3 m" --height "1 m"`: "height",
		`area --shape circle`: "diameter",
		`area --shape circle --diameter "1 m" --radius "2 m"`:                                    "radius",
		`area --shape triangle --sides "1, 2, 3 m"`:                                              "sides",
		`area --shape triangle --sides "1, 2 m"`:                                                 "sides",
		`area --shape triangle --sides "3, 4, 5 m" --base "1 m"`:                                 "base",
		`area --shape ring --outer-diameter "2 m" --inner-diameter "2 m"`:                        "inner-diameter",
		`area --shape drip-line --canopy-diameter "2 m" --clear-diameter "3 m"`:                  "clear-diameter",
		`area --shape rows --rows 2.5 --row-length "2 m" --band-width "1 m"`:                     "rows",
		`area --shape rows --rows 2 --row-length "2 m" --band-width "1 m" --row-spacing "50 cm"`: "row-spacing",
		`area --shape polygon`:                                                                                    "corners",
		`area --shape polygon --corners "44,-123; 44,-122"`:                                                       "corners",
		`area --shape polygon --corners "-123,44; -122,44; -122,45"`:                                              "corners",
		`area --shape polygon --corners "44,-123; 45,-122; 44,-122; 45,-123"`:                                     "corners",
		`area --shape polygon --geojson june.csv`:                                                                 "geojson",
		`area --shape polygon --corners "44,-123; 44,-122.9; 44.1,-122.9" --gps-error "101 m"`:                    "gps-error",
		`area --shape circle --diameter "1e200 m"`:                                                                "diameter",
		`area --shape circle --diameter "1 m" --count 0`:                                                          "count",
		`soak --volume "20 L" --soil loam`:                                                                        "area",
		`soak --water-depth "1.1 m" --soil loam`:                                                                  "water-depth",
		`soak --water-depth "5 mm" --volume "2 L" --area "1 m2" --soil loam`:                                      "water-depth",
		`soak --water-depth "5 mm"`:                                                                               "soil",
		`soak --water-depth "5 mm" --intake "10 mm/h"`:                                                            "available-water",
		`soak --water-depth "5 mm" --soil chalk`:                                                                  "soil",
		`soak --water-depth "5 mm" --soil loam --slope 3`:                                                         "slope",
		`vessel-volume --shape cylinder --diameter "1 m"`:                                                         "height",
		`vessel-volume --shape cylinder --diameter "1 m" --height "101 m"`:                                        "height",
		`vessel-volume --shape cylinder --diameter "1 m" --height "1 m" --fill-depth "1.1 m"`:                     "fill-depth",
		`vessel-volume --shape cylinder --diameter "1 m" --height "1 m" --volume "800 L"`:                         "volume",
		`vessel-volume --shape cylinder --diameter "1 m" --height "1 m" --volume "100 L" --displaced "101 L"`:     "displaced",
		`vessel-volume --shape cylinder --diameter "1 m" --height "1 m" --volume "100 L" --headspace "1 cm"`:      "volume",
		`vessel-volume --shape box --diameter "1 m" --height "1 m"`:                                               "diameter",
		`fill-time --volume "5 L"`:                                                                                "flow",
		`fill-time --volume "5 L" --caught "5 L"`:                                                                 "seconds",
		`fill-time --volume "5 L" --flow "5 L/min" --seconds 5`:                                                   "seconds",
		`fill-time --volume "5 L" --seconds 5`:                                                                    "caught",
		`dechlorinate --volume "100 L"`:                                                                           "total-chlorine",
		`dechlorinate --volume "100 L" --free-chlorine "11 mg/L"`:                                                 "free-chlorine",
		`dechlorinate --volume "100 L" --free-chlorine "2 mg/L" --total-chlorine "1 mg/L"`:                        "free-chlorine",
		`dechlorinate --volume "100 L" --free-chlorine "2 mg/L" --agent sodium-bisulfite`:                         "agent",
		`dechlorinate --volume "100 L" --free-chlorine "2 mg/L" --agent sodium-thiosulfate`:                       "form",
		`dechlorinate --volume "100 L" --free-chlorine "2 mg/L" --form anhydrous`:                                 "form",
		`dechlorinate --volume "100 L" --total-chlorine "2 mg/L" --later "1 mg/L" --after "2 h"`:                  "free-chlorine",
		`dechlorinate --volume "100 L" --free-chlorine "2 mg/L" --later "2 mg/L" --after "2 h"`:                   "later",
		`dechlorinate --volume "100 L" --free-chlorine "2 mg/L" --later "1 mg/L"`:                                 "after",
		`dechlorinate --volume "100 L" --free-chlorine "2 mg/L" --later "1 mg/L" --after "1 h" --half-life "1 h"`: "half-life",
		`dechlorinate --volume "1001 m3" --free-chlorine "2 mg/L"`:                                                "volume",
		`mix-water`:                                                                                           "parts",
		`mix-water --parts "10 L at 12C"`:                                                                     "parts",
		`mix-water --parts "10 L@101C"`:                                                                       "parts",
		`mix-water --parts "0 L@10C"`:                                                                         "parts",
		`mix-water --parts "10 L@12C" --add-at 60C`:                                                           "target",
		`mix-water --parts "10 L@12C" --add-at 60C --target 61C`:                                              "target",
		`mix-water --parts "10 L@12C" --hot 60C`:                                                              "hot",
		`mix-water --volume "10 L" --cold 10C --hot 60C`:                                                      "target",
		`mix-water --volume "10 L" --cold 60C --hot 10C --target 20C`:                                         "hot",
		`cooling --volume "20 L" ` + night:                                                                    "hours",
		`cooling --volume "20 L" --hours 6 --airflow "5 L/min" ` + night:                                      "humidity",
		`cooling --volume "20 L" --hours 6 --humidity 50 ` + night:                                            "humidity",
		`cooling --volume "20 L" --hours 6 --wind "1 m/s" ` + night:                                           "wind",
		`cooling --volume "20 L" --hours 6 --later-temp 25C --after "2 h" ` + night:                           "later-temp",
		`cooling --volume "20 L" --hours 6 --later-temp 20C ` + night:                                         "after",
		`cooling --volume "20 L" --hours 6 --ua "2 W/K" --later-temp 20C --after "2 h" ` + night:              "later-temp",
		`cooling --volume "20 L" --hours 6 --heater "9 kW" ` + night:                                          "hours",
		`cooling --volume "20 L" --hours 6 --start-temp 61C --air-temp 15C --airflow "5 L/min" --humidity 50`: "start-temp",
		`cooling --volume "20 L" --hours 721 ` + night:                                                        "hours",
		`wet-bulb --air-temp 30C`:                                                                             "humidity",
		`wet-bulb --air-temp 61C --humidity 40`:                                                               "air-temp",
		`wet-bulb --air-temp 30C --humidity 0.5`:                                                              "humidity",
		`wet-bulb --air-temp 30C --dew-point 31C`:                                                             "dew-point",
		`wet-bulb --air-temp 30C --wet-bulb 5C`:                                                               "wet-bulb",
		`wet-bulb --air-temp 30C --humidity 40 --dew-point 20C`:                                               "dew-point",
		`wet-bulb --air-temp 30C --humidity 40 --pressure "499 hPa"`:                                          "pressure",
		`wet-bulb --air-temp 30C --humidity 40 --pressure "900 hPa" --altitude "600 m"`:                       "altitude",
		`sun --lat 91 --lon 0 --date 2026-06-10 --zone UTC`:                                                   "lat",
		`sun --lat 44N --lon 0 --date 2026-06-10 --zone UTC`:                                                  "lat",
		`sun --lat 44 --lon 0 --date 2026-02-30 --zone UTC`:                                                   "date",
		`sun --lat 44 --lon 0 --date 1900-06-10 --zone UTC`:                                                   "date",
		`sun --lat 44 --lon 0 --date 2026-06-10 --zone Mars/Olympus`:                                          "zone",
		`sun --lat 44 --lon 0 --date 2026-06-10 --zone +15:00`:                                                "zone",
		`sun --lat -13.8 --lon -171.8 --date 2011-12-30 --zone Pacific/Apia`:                                  "date",
		`sun --lat 44 --lon -123 --date 2026-03-08 --zone America/Los_Angeles --at 02:30`:                     "at",
		`sun --lat 44 --lon -123 --date 2026-11-01 --zone America/Los_Angeles --at 01:30`:                     "at",
		`sun --lat 44 --lon 0 --date 2026-06-10 --zone UTC --at 8am`:                                          "at",
		`sun --lat 44 --lon 0 --date 2026-06-10 --zone UTC --ozone 300`:                                       "ozone",
		`spray-hours june.csv --method foliar`:                                                                "lat",
		`spray-hours june.csv --method foliar --lat 44`:                                                       "lon",
		`spray-hours june.csv --method foliar --lat 44 --lon -123 --intake "5 mm/h"`:                          "intake",
		`spray-hours unclosed.geojson --method drench`:                                                        "unclosed.geojson",
	} {
		_, _, err := run(t, call)
		faults := fault.Of(err)
		if len(faults) == 0 {
			t.Errorf("%s\n  was answered (%v)", call, err)
			continue
		}
		if faults[0].Field != flag {
			t.Errorf("%s\n  refused under %q: %v, want %q", call, faults[0].Field, err, flag)
		}
		if said := faults[0].Error(); strings.ContainsAny(said, "«{") {
			t.Errorf("%s\n  is refused without a sentence: %s", call, said)
		}
	}
}

// A clock time that occurs twice is refused with both offsets.
func TestHourThatOccursTwice(t *testing.T) {
	_, _, err := run(t, `sun --lat 44 --lon -123 --date 2026-11-01 --zone America/Los_Angeles --at 01:30`)
	if err == nil || !strings.Contains(err.Error(), "-07:00") || !strings.Contains(err.Error(), "-08:00") {
		t.Errorf("%v", err)
	}
}
