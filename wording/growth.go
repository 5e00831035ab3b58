package wording

var growthWords = Table{}
