package wording

var forecastWords = Table{}
