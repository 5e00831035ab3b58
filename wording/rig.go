package wording

var rigWords = Table{}
