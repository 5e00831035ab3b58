package wording

var groundWords = Table{}
