package wording

var webPagesWords = Table{}
