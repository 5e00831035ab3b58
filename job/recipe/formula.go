package recipe

import (
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Formula is a substance C_n H_a O_b N_d; the counts may be decimal.
type Formula struct{ C, H, O, N float64 }

// Demand is the theoretical oxygen demand of a substance in g O2 per g, its
// nitrogen left as ammonia, with whole atomic masses:
//
//	8 (4n + a - 2b - 3d) / (12n + a + 16b + 14d)
//
// Error: a fault where the substance carries more oxygen than it can use.
//
// Source: van Lier 2012, Anaerobic Wastewater Treatment: Basic Calculations.
func (f Formula) Demand() (float64, error) {
	demand := 8 * (4*f.C + f.H - 2*f.O - 3*f.N) / (12*f.C + f.H + 16*f.O + 14*f.N)
	if demand < 0 {
		return 0, formulaFault("", "recipe.formula.negative")
	}
	return demand, nil
}

// subscripts are the digits that formulas are printed with.
var subscripts = strings.NewReplacer("₀", "0", "₁", "1", "₂", "2", "₃", "3", "₄", "4", "₅", "5", "₆", "6", "₇", "7", "₈", "8", "₉", "9", " ", "")

// ParseFormula reads "C6H12O6", also "CH3COOH" and "C4H6.1O1.2N".
func ParseFormula(text string) (Formula, error) {
	var f Formula
	rest := subscripts.Replace(text)
	for rest != "" {
		slot := f.slot(rest[0])
		if slot == nil {
			return Formula{}, formulaFault(text, "recipe.formula.element")
		}
		end := 1
		for end < len(rest) && (rest[end] >= '0' && rest[end] <= '9' || rest[end] == '.') {
			end++
		}
		count := 1.0
		if digits := rest[1:end]; digits != "" {
			n, err := strconv.ParseFloat(digits, 64)
			if err != nil || n > maxAtoms {
				return Formula{}, formulaFault(text, "recipe.formula.count")
			}
			count = n
		}
		*slot += count
		rest = rest[end:]
	}
	if f.C == 0 {
		return Formula{}, formulaFault(text, "recipe.formula.no-carbon")
	}
	return f, nil
}

// maxAtoms keeps a typing slip from passing for a polymer.
const maxAtoms = 1e6

func (f *Formula) slot(element byte) *float64 {
	switch element {
	case 'C':
		return &f.C
	case 'H':
		return &f.H
	case 'O':
		return &f.O
	case 'N':
		return &f.N
	}
	return nil
}

func formulaFault(given, key string) *fault.Fault {
	return fault.New("formula", given, wording.Say(key), wording.Say("recipe.formula.allowed"), wording.Text{})
}
