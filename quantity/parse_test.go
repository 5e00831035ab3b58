package quantity_test

import (
	"math"
	"testing"

	"aerosteep/quantity"
)

func TestReadsWhatPeopleType(t *testing.T) {
	for text, want := range map[string]struct {
		si     float64
		readAs string
	}{
		"2 qt":             {1.892705892e-3, "2 US qt"},
		"1/2 cup":          {0.5 * 236.5882365e-6, "0.5 US cup"},
		"1½ gal":           {1.5 * 3.785411784e-3, "1.5 US gal"},
		"1 1/2 gal":        {1.5 * 3.785411784e-3, "1.5 US gal"},
		"5 ft 6 in":        {1.6764, "5 ft + 6 in"},
		"7,4 mg/L":         {7.4e-3, "7.4 mg/L"},
		"67 °F":            {292.5944444444444, "67 °F"},
		"-3C":              {270.15, "-3 °C"},
		"20 gal/ac":        {20 * 3.785411784e-3 / 4046.8564224, "20 US gal/acre"},
		"1 gal/1000 sq ft": {3.785411784e-3 / 92.90304, "1 US gal/1000 sq ft"},
		"14 /h":            {14. / 3600, "14 /h"},
		"14 1/h":           {14. / 3600, "14 /h"},
		"900 µS/cm":        {0.09, "900 uS/cm"},
		"3 cfm":            {3 * 0.028316846592 / 60, "3 cfm"},
		".5 L":             {0.5e-3, "0.5 L"},
		"20 mg/L/h":        {20e-3 / 3600, "20 mg/L/h"},
		"0.1 ft²":          {0.009290304, "0.1 sq ft"},
	} {
		got, err := quantity.Read(text)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if math.Abs(got.SI-want.si) > 1e-12*math.Abs(want.si) || got.ReadAs != want.readAs {
			t.Errorf("%s: %.15g read as %q, want %.15g %q", text, got.SI, got.ReadAs, want.si, want.readAs)
		}
	}
}

func TestRefusesDoubt(t *testing.T) {
	for _, text := range []string{"", "gal", "1,200 gal", "3 oz", "3 oz/gal", "2 ton", "NaN L", "inf L", "5 gla", "1 metric tbsp", "2 qt 1 gal", "1 ft 2 L", "3/0 cup", "12", "1e999 L"} {
		if got, err := quantity.Read(text); err == nil {
			t.Errorf("%q was read as %s", text, got.ReadAs)
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{"2 qt", "1 1/2 gal", "5 ft 6 in", "-40 F", "7,4 mg/L", "½ cup", "1e3 L", "20 gal/1000 sq ft", "1/"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		reading, err := quantity.Read(text)
		if err == nil && (math.IsNaN(reading.SI) || math.IsInf(reading.SI, 0)) {
			t.Fatalf("%q was read as %v", text, reading.SI)
		}
	})
}
