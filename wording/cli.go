package wording

var cliWords = Table{}
