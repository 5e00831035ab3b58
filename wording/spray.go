package wording

var sprayWords = Table{}
