package wording

var webShellWords = Table{}
