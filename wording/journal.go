package wording

var journalWords = Table{}
