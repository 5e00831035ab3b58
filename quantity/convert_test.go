package quantity_test

import (
	"math"
	"strings"
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/quantity"
)

// TestEveryUnitMeetsGNUUnits: each spelling that a flag takes, against the
// definitions of GNU units; upper and lower case are alike.
func TestEveryUnitMeetsGNUUnits(t *testing.T) {
	for _, row := range published.Rows(t, "gnu_units.csv") {
		for _, typed := range []string{row.Text("typed"), strings.ToUpper(row.Text("typed")), "  " + row.Text("typed") + "  "} {
			got, err := quantity.Read("1 " + typed)
			if err != nil {
				t.Errorf("%s: %v", typed, err)
				continue
			}
			want := row.Float("expected")
			row.Near(got.SI, want, 1e-12*want)
			if kind := got.Unit.Kind(); kind != row.Text("kind") {
				t.Errorf("%s is a %s, want %s", typed, kind, row.Text("kind"))
			}
		}
	}
}

// asTyped turns the names of the published table into what people type.
var asTyped = strings.NewReplacer(
	"acre-foot (international)", "ac-ft", "acre-inch (international)", "ac-in", "mil (0.001 in)", "mil", "acre (international)", "acre",
	"1000 sq ft", "1000 sq ft", "oz (avoirdupois)", "oz wt", "inH2O (conventional)", "inH2O", "m H2O (conventional)", "mH2O",
	"knot", "kn", "cfm (cu ft/min)", "cfm", "hp (550 ft lbf/s)", "hp", "US fl oz/acre", "fl oz/acre", "mm of water", "mm", "in of water", "in",
	" difference", "",
)

// TestConversionsArePublished: NIST SP 811 and Handbook 44 figures.
func TestConversionsArePublished(t *testing.T) {
	for _, row := range published.Rows(t, "conversions.csv") {
		from, to := asTyped.Replace(row.Text("from_unit")), asTyped.Replace(row.Text("to_unit"))
		number := row.Text("from_value")
		switch {
		case from == "1000 sq ft":
			number, from = "1000", "sq ft"
		case row.Text("quantity") == "concentration" || row.Text("quantity") == "rate":
			if rest, isOunce := strings.CutPrefix(from, "oz/"); isOunce {
				from = "oz wt/" + rest
			}
		}
		got, err := quantity.Convert(number+" "+from, to, 0, row.Text("quantity") == "temperature difference")
		if err != nil {
			t.Errorf("%s %s to %s: %v", number, from, to, err)
			continue
		}
		row.Near(got.Value, row.Float("expected"), row.Float("tolerance"))
	}
}

// The worked conversions, and what is converted on which terms.
func TestConvert(t *testing.T) {
	for _, c := range []struct {
		amount, to string
		bulk       quantity.Density
		difference bool
		want       float64
		kind, read string
	}{
		{"2 qt", "mL", 0, false, 1892.705892, "volume", "2 US qt"},
		{"61 F", "C", 0, false, 16.1111111111111, "temperature", "61 °F"},
		{"20 gal/ac", "L/ha", 0, false, 187.0791245791246, "volume-per-area", "20 US gal/acre"},
		{"2 qt", "kg", 0.5, false, 0.946352946, "volume", "2 US qt"},
		{"1 kg", "L", 0.5, false, 2, "mass", "1 kg"},
		{"-40 F", "C", 0, false, -40, "temperature", "-40 °F"},
		{"32 °F", "°C", 0, false, 0, "temperature", "32 °F"},
		{"9 F", "C", 0, true, 5, "temperature-difference", "9 °F"},
		{"-9 F", "K", 0, true, -5, "temperature-difference", "-9 °F"},
		{"1 in", "gal/1000 sq ft", 0, false, 623.376623376623, "length", "1 in"},
		{"10 mm", "L/m2", 0, false, 10, "length", "10 mm"},
		{"2 qt 1 cup", "mL", 0, false, 2129.2941285, "volume", "2 US qt + 1 US cup"},
		{"1 1/2 gal", "qt", 0, false, 6, "volume", "1.5 US gal"},
		{"7,4 L", "mL", 0, false, 7400, "volume", "7.4 L"},
		{"0,200 L", "mL", 0, false, 200, "volume", "0.2 L"},
		{"1e3 mL", "L", 0, false, 1, "volume", "1000 mL"},
		{"5 ppm", "mg/L", 0, false, 5, "concentration", "5 ppm"},
	} {
		got, err := quantity.Convert(c.amount, c.to, c.bulk, c.difference)
		if err != nil {
			t.Errorf("%s to %s: %v", c.amount, c.to, err)
			continue
		}
		if math.Abs(got.Value-c.want) > 1e-12*math.Abs(c.want) || got.Kind != c.kind || got.Read.ReadAs != c.read {
			t.Errorf("%s to %s: %.15g %s %q", c.amount, c.to, got.Value, got.Kind, got.Read.ReadAs)
		}
	}
}

// Doubt is refused, and the message names what is in doubt.
func TestConvertRefuses(t *testing.T) {
	for _, c := range []struct{ amount, to, field, says string }{
		{"3 oz", "fl oz", "value", "oz wt"},
		{"3 oz/gal", "g/L", "value", "fl oz"},
		{"3 g/L", "oz/gal", "to", "fl oz"},
		{"2 L", "oz", "to", "oz wt"},
		{"1 ton", "kg", "value", "long ton"},
		{"1 metric tbsp", "mL", "value", "15 or 20 mL"},
		{"1 metric tsp", "mL", "value", "mL"},
		{"2 qt", "kg", "bulk-density", "--bulk-density"},
		{"1,200 gal", "L", "value", "1200"},
		{"-2 L", "mL", "value", "negative"},
		{"-500 F", "C", "value", "absolute zero"},
		{"2 qt", "C", "to", "temperature"},
		{"2 gla", "L", "value", "gal"},
		{"2 qt", "2 mL", "to", "not known"},
		{"12", "mL", "value", "unit"},
		{"", "mL", "value", "nothing"},
		{"NaN L", "mL", "value", "finite"},
		{"1 cup 2 qt", "mL", "value", "largest"},
		{"2 qt 1 kg", "mL", "value", "added"},
		{"1 C 2 C", "F", "value", "added"},
	} {
		_, err := quantity.Convert(c.amount, c.to, 0, false)
		faults := fault.Of(err)
		if len(faults) != 1 || faults[0].Field != c.field || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q to %q: %v, want %s and a word of %q", c.amount, c.to, err, c.field, c.says)
		}
	}
}

// What is printed is read back as the same amount.
func FuzzReadAsIsReadTheSame(f *testing.F) {
	for _, s := range []string{"2 qt", "1/3 cup", "-40 F", "7,4 mg/L", "20 gal/1000 sq ft", "900 µS/cm"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		first, err := quantity.Read(text)
		if err != nil || strings.Contains(first.ReadAs, " + ") {
			return
		}
		again, err := quantity.Read(first.ReadAs)
		if err != nil || math.Abs(again.SI-first.SI) > 1e-9*math.Abs(first.SI) {
			t.Fatalf("%q was read as %q, and that as %v (%v)", text, first.ReadAs, again.SI, err)
		}
	})
}
