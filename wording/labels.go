package wording

var labelsWords = Table{}
