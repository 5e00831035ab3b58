package journal

import (
	"encoding/json"
	"testing"
)

// What is plain is good by the slow look as well; what is odd is left to it.
func TestPlainSeriesIsGood(t *testing.T) {
	for text, plain := range map[string]bool{
		`{"rows":[{"at":"2026-05-14T05:00:00Z","do_mg_per_l":7.4,"temp_c":-1.5}]}`:               true,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":7},{"at":"2026-05-14T05:01:00Z","ph":0.5}]}`: true,
		`{"rows":[{"at":"2026-05-14T05:00:00Z"}]}`:                                               true,
		`{"rows":[]}`: false,
		`{"rows": [{"at":"2026-05-14T05:00:00Z","ph":7}]}`:        false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":07}]}`:        false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":7.}]}`:        false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":.7}]}`:        false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":-}]}`:         false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":7,"ph":7}]}`:  false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":15}]}`:        false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":7}]`:          false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":7}]}x`:        false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":7},]}`:        false,
		`{"rows":[{"at":"yesterday","ph":7}]}`:                    false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","smell":"sour"}]}`: false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":1e1}]}`:       false,
		`{"rows":[{"at":"2026-05-14T05:00:00Z","ph":"7"}]}`:       false,
	} {
		if got := plainSeries(json.RawMessage(text)); got != plain {
			t.Errorf("%s: plain %v", text, got)
		}
	}
}

func FuzzPlainSeries(f *testing.F) {
	f.Add([]byte(`{"rows":[{"at":"2026-05-14T05:00:00Z","do_mg_per_l":7.4,"temp_c":-1.5}]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		if !plainSeries(text) {
			return
		}
		rows, err := Rows(text)
		if err != nil || len(rows) == 0 {
			t.Fatalf("%q is plain and cannot be read: %v", text, err)
		}
		for _, row := range rows {
			if err := checkReading("row", row); err != nil {
				t.Fatalf("%q: %v", text, err)
			}
		}
	})
}
