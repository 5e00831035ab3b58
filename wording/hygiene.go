package wording

var hygieneWords = Table{}
