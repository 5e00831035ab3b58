package wording

var waterWords = Table{}
