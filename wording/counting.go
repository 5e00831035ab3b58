package wording

var countingWords = Table{}
