package recipe

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/wording"
	"aerosteep/worksheet"

	larder "aerosteep/job/recipe"
)

// recipeInputs ask for a recipe: a file, or a name.
var recipeInputs = []worksheet.Input{
	{Flag: "recipe", Kind: worksheet.FileOrName, Required: true},
	{Flag: "pick", Kind: worksheet.Text},
}

// openRecipe finds the recipe that is asked for: in the file, else among the
// built-in ones.
func openRecipe(f *worksheet.Form) (larder.Recipe, error) {
	text := f.Text("recipe")
	// A form on a page hands the file's text over as it is.
	if f.IsFile("recipe") || strings.Contains(text, "\n") {
		return pickRecipe(f, text)
	}
	if f.Has("pick") {
		return larder.Recipe{}, f.Refuse("pick", "recipe.pick-without-file")
	}
	if r, known := larder.Starter(text); known {
		return r, nil
	}
	return larder.Recipe{}, unknownRecipe("recipe", text, starterNames())
}

func pickRecipe(f *worksheet.Form, text string) (larder.Recipe, error) {
	file, faults := jobfile.Read([]byte(text), f.FileName("recipe"), jobfile.Whole)
	if len(faults) > 0 {
		return larder.Recipe{}, faults
	}
	names := make([]string, len(file.Recipes))
	for i, r := range file.Recipes {
		names[i] = r.Name
		if f.Has("pick") && larder.Key(r.Name) == larder.Key(f.Text("pick")) {
			return r, nil
		}
	}
	switch {
	case f.Has("pick"):
		if r, known := larder.Starter(f.Text("pick")); known {
			return r.On(file.Larder), nil
		}
		return larder.Recipe{}, unknownRecipe("pick", f.Text("pick"), names)
	case len(names) == 0:
		return larder.Recipe{}, f.Advise("recipe", "recipe.none-in-file", "recipe.none-in-file.advice")
	case len(names) > 1:
		return larder.Recipe{}, f.Advise("pick", "recipe.several-in-file", "recipe.several-in-file.advice", wording.Places{"names": names})
	}
	return file.Recipes[0], nil
}

func unknownRecipe(flag, name string, known []string) error {
	wrong := fault.New(flag, name, wording.Say("recipe.no-recipe", wording.Places{"name": name}), wording.Say("recipe.no-recipe.allowed", wording.Places{"names": known}), wording.Text{})
	if wrong.Nearest = fault.Nearest(name, known); wrong.Nearest != "" {
		wrong.Advice = wording.Say("worksheet.nearest", wording.Places{"nearest": wrong.Nearest})
	}
	return wrong
}

func starterNames() []string {
	var names []string
	for _, r := range larder.Starters() {
		names = append(names, r.Name)
	}
	return names
}
