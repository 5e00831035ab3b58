package wording

var webGuidesWords = Table{}
