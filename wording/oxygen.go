package wording

var oxygenWords = Table{}
