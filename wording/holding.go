package wording

var holdingWords = Table{}
