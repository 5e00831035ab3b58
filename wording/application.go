package wording

var applicationWords = Table{}
