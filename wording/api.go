package wording

var apiWords = Table{}
