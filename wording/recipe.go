package wording

var recipeWords = Table{}
