package holding

import (
	"strings"

	"aerosteep/job/jobfile"
	"aerosteep/job/recipe"
	ws "aerosteep/worksheet"
)

// HandIn lets a worksheet that asks for a recipe know the holding's own: where
// one is named, it is handed in as the text of a job file with the holding's
// ingredients, as if the grower had given that file. The worksheets keep
// nothing and read nothing by themselves.
func (h *Holding) HandIn(sheet *ws.Sheet, given ws.Values) {
	in, asks := sheet.Input("recipe")
	if !asks || in.Kind != ws.FileOrName || len(given["recipe"]) != 1 || len(given["pick"]) > 0 {
		return
	}
	asked := given["recipe"][0]
	if strings.Contains(asked, "\n") {
		return // a file's text
	}
	parts, name := h.larder(asked)
	if name == "" {
		return
	}
	text, problems := jobfile.Compose(parts)
	if len(problems) > 0 {
		return // the set-up cannot be written out: the name is looked for among the built-in ones
	}
	given["recipe"], given["pick"] = []string{string(text)}, []string{name}
}

// larder are the holding's ingredients and recipes, and the name that its
// recipe of that name is written with; "" where it has none.
func (h *Holding) larder(asked string) (parts []jobfile.Part, name string) {
	for _, part := range h.Parts() {
		if part.Table != "ingredient" && part.Table != "recipe" {
			continue
		}
		parts = append(parts, part)
		if part.Table == "recipe" && recipe.Key(part.Name) == recipe.Key(asked) {
			name = part.Name
		}
	}
	return parts, name
}
