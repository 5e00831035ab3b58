package source

// MaximumResidual is what US public water may hold.
var MaximumResidual = cite("40-cfr-141-65", "40 CFR 141.65, maximum residual disinfectant levels",
	"4.0 mg/L as Cl2 for chlorine and for chloramines, running annual average; read in state and federal pages")
