package wording

var worksheetWords = Table{}
