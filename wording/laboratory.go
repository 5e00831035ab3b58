package wording

// laboratoryWords are the sentences of the worksheets about proof, cleaning
// and laboratory results.
var laboratoryWords = Table{
	"counting.finding":         {"“{item}” is not a result", "«{item}» no es un resultado"},
	"counting.finding.allowed": {"bare numbers of 0 or more parted by commas; <1 below detection, >2400 above the range", "números sin unidad de 0 o más separados por comas; <1 bajo la detección, >2400 sobre el alcance"},
}
