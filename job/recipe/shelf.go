package recipe

import (
	"encoding/json"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Shelf is the ingredients that a recipe may name: the built-in library, with
// what a holding or a file says otherwise.
type Shelf struct {
	ingredients []Ingredient
}

// Library is the shelf with the built-in ingredients.
func Library() Shelf { return Shelf{library} }

// All lists the shelf: foods first, then composts, then what was added.
func (s Shelf) All() []Ingredient { return append([]Ingredient(nil), s.ingredients...) }

// Only is a shelf with no more than the ingredients of these names.
func (s Shelf) Only(names []string) Shelf {
	only := Shelf{}
	for _, name := range names {
		if at := s.index(name); at >= 0 && only.index(name) < 0 {
			only.ingredients = append(only.ingredients, s.ingredients[at])
		}
	}
	return only
}

// MarshalJSON writes the ingredients, for a forecast that travels to a phone.
func (s Shelf) MarshalJSON() ([]byte, error) { return json.Marshal(s.ingredients) }

// UnmarshalJSON reads them back.
func (s *Shelf) UnmarshalJSON(text []byte) error { return json.Unmarshal(text, &s.ingredients) }

// Find looks an ingredient up by name. Nothing is guessed: an unknown name
// comes back as a fault that lists the names it may have meant.
func (s Shelf) Find(name string) (Ingredient, error) {
	if at := s.index(name); at >= 0 {
		return s.ingredients[at], nil
	}
	return Ingredient{}, s.unknown(name)
}

func (s Shelf) index(name string) int {
	key := Key(name)
	for i, ingredient := range s.ingredients {
		if Key(ingredient.Name) == key {
			return i
		}
		for _, alias := range ingredient.Aliases {
			if Key(alias) == key {
				return i
			}
		}
	}
	return -1
}

// unknown lists the names that share a word, else the nearest spelling.
func (s Shelf) unknown(name string) *fault.Fault {
	f := fault.New("ingredient", name,
		wording.Say("recipe.unknown", wording.Places{"name": strings.TrimSpace(name)}),
		wording.Say("recipe.unknown.allowed"), wording.Text{})
	names := s.Names()
	if near := sharingWord(name, names); len(near) > 0 {
		f.Nearest = near[0]
		f.Advice = wording.Say("recipe.unknown.sharing", wording.Places{"names": near})
		return f
	}
	if f.Nearest = fault.Nearest(name, names); f.Nearest != "" {
		f.Advice = wording.Say("recipe.unknown.nearest", wording.Places{"name": f.Nearest})
		return f
	}
	f.Advice = wording.Say("recipe.unknown.list", wording.Places{"names": names})
	return f
}

// Names lists the names of the shelf.
func (s Shelf) Names() []string {
	names := make([]string, len(s.ingredients))
	for i, ingredient := range s.ingredients {
		names[i] = ingredient.Name
	}
	return names
}

func sharingWord(name string, names []string) []string {
	var sharing []string
	wanted := words(name)
	for _, candidate := range names {
		if anyShared(wanted, words(candidate)) {
			sharing = append(sharing, candidate)
		}
	}
	return sharing
}

func words(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(c rune) bool {
		return c == ' ' || c == '-' || c == '_' || c == ','
	})
}

func anyShared(a, b []string) bool {
	for _, x := range a {
		for _, y := range b {
			if x == y {
				return true
			}
		}
	}
	return false
}

// put replaces the ingredient of that name, or adds it.
func (s Shelf) put(i Ingredient) Shelf {
	all := s.All()
	if at := s.index(i.Name); at >= 0 {
		all[at] = i
	} else {
		all = append(all, i)
	}
	return Shelf{all}
}
