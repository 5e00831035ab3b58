package report

import (
	"strings"
	"unicode"

	"aerosteep/wording"
)

// Claim is a word that promises more than tea may be sold on, with what to
// write instead.
type Claim struct {
	Word    string
	Instead wording.Text
}

// A product said to prevent, destroy, repel or mitigate a pest counts as a
// pesticide under 7 U.S.C. 136(u) and 40 CFR 152.15, whatever is in it; one
// said to feed needs a guaranteed analysis under most fertilizer laws. Beginnings
// of words in English and Spanish, folded to plain letters; one with a stop is
// the whole word.
var claims = []struct{ beginning, instead string }{
	{"cures.", "pest"}, {"kill", "pest"}, {"prevent", "pest"}, {"repel", "pest"}, {"fungicid", "pest"}, {"pesticid", "pest"},
	{"insecticid", "pest"}, {"herbicid", "pest"}, {"disease", "pest"}, {"suppress", "pest"}, {"mildew", "pest"}, {"blight", "pest"},
	{"cura.", "pest"}, {"matar", "pest"}, {"previen", "pest"}, {"repele", "pest"}, {"plaguicid", "pest"}, {"enfermedad", "pest"},
	{"suprim", "pest"}, {"oidio", "pest"}, {"tizon", "pest"}, {"plaga", "pest"},
	{"fertiliz", "feed"}, {"fertilis", "feed"}, {"nutrient", "feed"}, {"nutriente", "feed"}, {"abona", "feed"}, {"yield", "feed"}, {"rendimiento", "feed"},
	{"steril", "safe"}, {"pathogen-free", "safe"}, {"harmless", "safe"}, {"inocu", "safe"}, {"esteril", "safe"}, {"guarantee", "safe"}, {"garantiza", "safe"},
}

// Claims are the words of a text that claim, each once, in its order.
func Claims(text string) []Claim {
	var found []Claim
	met := map[string]bool{}
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && r != '-' }) {
		folded := fold(word)
		for _, c := range claims {
			if strings.HasPrefix(folded+".", c.beginning) && !met[folded] {
				met[folded] = true
				found = append(found, Claim{word, wording.Say("paper.claim." + c.instead)})
				break
			}
		}
	}
	return found
}

// fold writes a word in plain small letters.
func fold(word string) string {
	return strings.NewReplacer("á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u", "ü", "u", "ñ", "n").Replace(strings.ToLower(word))
}
