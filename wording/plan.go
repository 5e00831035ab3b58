package wording

var planWords = Table{}
