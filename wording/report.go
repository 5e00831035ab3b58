package wording

var reportWords = Table{}
