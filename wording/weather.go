package wording

var weatherWords = Table{}
