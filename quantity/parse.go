package quantity

import (
	"math"
	"sort"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Reading is what was understood of a typed amount: a value in the SI unit of
// its dimension, and how it was read.
type Reading struct {
	SI     float64 // in m, kg, s, K, S and their products
	Number float64 // of the first term, as typed
	Unit   Unit    // of the first term
	ReadAs string  // "2 US qt"
}

// Unit is a unit as it was typed: a factor to SI, a dimension and its name in
// full. Only temperatures have an offset.
type Unit struct {
	Name   string
	Dim    Dimension
	Factor float64
	Offset float64
	slash  bool // made with "/"
}

// Kind is the word for what the unit measures: "volume", "pressure" …
func (u Unit) Kind() string {
	if u.Dim == length && (u.slash || strings.Contains(u.Name, "/")) {
		return "volume-per-area"
	}
	if kind, known := kindNames[u.Dim]; known {
		return kind
	}
	return "other"
}

// Read reads a number with its unit, or a sum of such ("5 ft 6 in"), largest
// first.
func Read(text string) (Reading, error) {
	t := tidy(text)
	if t == "" {
		return Reading{}, fault.New("", text, wording.Say("quantity.empty"), wording.Text{}, wording.Text{})
	}
	reading, err := readTerms(t)
	if err != nil {
		err.Given = text
		return Reading{}, err
	}
	return reading, nil
}

func readTerms(t string) (Reading, *fault.Fault) {
	var sum Reading
	previous := math.Inf(1)
	for first := true; t != ""; first = false {
		number, rest, err := leadingNumber(t)
		if err != nil {
			return Reading{}, err
		}
		words, after := splitTerm(strings.TrimSpace(rest))
		u, err := readUnit(words, number)
		if err != nil {
			return Reading{}, err
		}
		if err := addTerm(&sum, number, u, first, previous); err != nil {
			return Reading{}, err
		}
		previous, t = u.Factor, after
	}
	return sum, nil
}

// addTerm adds one term of a sum; the first one sets the kind.
func addTerm(sum *Reading, number float64, u Unit, first bool, previous float64) *fault.Fault {
	if first {
		*sum = Reading{SI: number*u.Factor + u.Offset, Number: number, Unit: u, ReadAs: readAs(number, u)}
		return nil
	}
	if u.Dim != sum.Unit.Dim || u.Offset != 0 || sum.Unit.Offset != 0 {
		return fault.New("", "", wording.Say("quantity.sum-kinds", wording.Places{"first": sum.Unit.Name, "second": u.Name}), wording.Text{}, wording.Text{})
	}
	if u.Factor >= previous || number < 0 || sum.Number < 0 {
		return fault.New("", "", wording.Say("quantity.sum-order", wording.Places{"first": sum.Unit.Name, "second": u.Name}), wording.Text{}, wording.Say("quantity.sum-order.advice"))
	}
	sum.SI += number * u.Factor
	sum.ReadAs += " + " + readAs(number, u)
	return nil
}

func readAs(number float64, u Unit) string {
	return strings.TrimSpace(shortest(number) + " " + u.Name)
}

// splitTerm parts the unit of one term from the next term of a sum. A number
// directly after a slash belongs to the unit ("gal/1000 sq ft").
func splitTerm(rest string) (words, after string) {
	for i := 1; i < len(rest); i++ {
		if rest[i-1] != ' ' || !startsNumber(rest[i:]) {
			continue
		}
		before := strings.TrimSpace(rest[:i])
		if strings.HasSuffix(before, "/") || strings.HasSuffix(strings.ToLower(before), " per") {
			continue
		}
		return before, rest[i:]
	}
	return rest, ""
}

func startsNumber(s string) bool {
	return s[0] >= '0' && s[0] <= '9' || (s[0] == '.' || s[0] == '-' || s[0] == '+') && len(s) > 1 && s[1] >= '0' && s[1] <= '9'
}

// readUnit understands the unit after a number.
func readUnit(words string, number float64) (Unit, *fault.Fault) {
	if words == "" {
		return Unit{}, fault.New("", "", wording.Say("quantity.bare", wording.Places{"number": shortest(number)}), wording.Text{}, wording.Say("quantity.bare.advice"))
	}
	return ParseUnit(words)
}

// ParseUnit understands a unit alone: "mL", "gal/1000 sq ft", "mg/L/h", "1/h".
func ParseUnit(text string) (Unit, *fault.Fault) {
	t := tidy(text)
	t = strings.ReplaceAll(strings.ReplaceAll(t, " per ", "/"), "Per ", "/")
	parts := strings.Split(t, "/")
	if len(parts) == 1 {
		u, err := simple(parts[0])
		if err != nil {
			return Unit{}, err
		}
		return Unit{Name: u.name, Dim: u.dim, Factor: u.factor, Offset: u.offset}, nil
	}
	if len(parts) > 3 {
		return Unit{}, unknownUnit(text)
	}
	return compound(parts)
}

func compound(parts []string) (Unit, *fault.Fault) {
	whole := Unit{Factor: 1, slash: true}
	if head := strings.TrimSpace(parts[0]); head != "" && head != "1" {
		u, err := simple(head)
		if err != nil {
			return Unit{}, err
		}
		whole.Name, whole.Dim, whole.Factor = u.name, u.dim, u.factor
	}
	for _, part := range parts[1:] {
		number, words := 1.0, strings.TrimSpace(part)
		if words != "" && startsNumber(words) {
			n, rest, err := leadingNumber(words)
			if err != nil {
				return Unit{}, err
			}
			if n <= 0 {
				return Unit{}, unknownUnit(part)
			}
			number, words = n, strings.TrimSpace(rest)
		}
		u, err := simple(words)
		if err != nil {
			return Unit{}, err
		}
		whole.Dim = whole.Dim.plus(u.dim, -1)
		whole.Factor /= number * u.factor
		whole.Name += "/"
		if number != 1 {
			whole.Name += shortest(number) + " "
		}
		whole.Name += u.name
	}
	return whole, nil
}

// doubtful are units that mean two things; each names both readings.
var doubtful = map[string]string{
	"oz": "quantity.oz", "ounce": "quantity.oz", "ounces": "quantity.oz",
	"ton": "quantity.ton", "tons": "quantity.ton",
	"metric tbsp": "quantity.metric-spoon", "metric tsp": "quantity.metric-spoon",
	"metric tablespoon": "quantity.metric-spoon", "metric teaspoon": "quantity.metric-spoon",
}

func simple(words string) (unit, *fault.Fault) {
	key := strings.ToLower(strings.TrimSuffix(strings.TrimSpace(words), "."))
	if u, known := bySpelling()[key]; known {
		return u, nil
	}
	if sentence, two := doubtful[key]; two {
		return unit{}, fault.New("", "", wording.Say(sentence), wording.Text{}, wording.Say(sentence+".advice"))
	}
	return unit{}, unknownUnit(words)
}

func unknownUnit(words string) *fault.Fault {
	f := fault.New("", "", wording.Say("quantity.unknown-unit", wording.Places{"unit": strings.TrimSpace(words)}), wording.Text{}, wording.Text{})
	if f.Nearest = fault.Nearest(strings.TrimSpace(words), spellings()); f.Nearest != "" {
		if full := bySpelling()[f.Nearest].name; strings.EqualFold(full, f.Nearest) {
			f.Nearest = full
		}
		f.Advice = wording.Say("quantity.unknown-unit.advice", wording.Places{"nearest": f.Nearest})
	}
	return f
}

func spellings() []string {
	all := make([]string, 0, len(bySpelling()))
	for s := range bySpelling() {
		all = append(all, s)
	}
	sort.Strings(all)
	return all
}
