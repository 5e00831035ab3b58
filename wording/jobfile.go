package wording

var jobfileWords = Table{}
