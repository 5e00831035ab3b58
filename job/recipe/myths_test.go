package recipe_test

import (
	"testing"

	"aerosteep/job/recipe"
	"aerosteep/wording"
)

func TestMythsShowInWords(t *testing.T) {
	for text, want := range map[string]string{
		"Left it to stand overnight so the chloramine is gone": "chloramine-stands",
		"Lots of foam, so it is ready":                         "foam",
		"más melaza, más vida":                                 "more-molasses",
		"Bought UNSULPHURED molasses":                          "sulphured",
	} {
		found := recipe.MythsIn(text)
		if len(found) != 1 || found[0].Key != want {
			t.Errorf("%q: %v, want %s", text, found, want)
		}
	}
	for _, text := range []string{"", "skimmed some foam", "tested total chlorine and chloramine: none", "fed 20 mL of molasses"} {
		if found := recipe.MythsIn(text); len(found) > 0 {
			t.Errorf("%q shows %v", text, found)
		}
	}
}

// Every myth has its note in both languages and a source; none states an
// effect on disease or yield.
func TestMythsHaveNotes(t *testing.T) {
	for _, m := range recipe.Myths {
		for _, language := range wording.Languages {
			if !wording.Known(m.Note().Key) || m.Note().For(wording.Reader{Language: language}) == "" || m.Source.Title == "" {
				t.Errorf("%s lacks a note or a source", m.Key)
			}
		}
	}
}
