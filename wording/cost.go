package wording

var costWords = Table{}
