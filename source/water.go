package source

// Sources of what is said about water.
var (
	AWWAFieldGuide = cite("awwa-dechlorination", "AWWA, Disinfection of Pipelines and Storage Facilities Field Guide, table 7-2",
		"grams of agent per gram of chlorine at pH 7; table read in an online copy; it says to check on site")
	BasuDeSouza2011 = cite("basu-de-souza-2011", "Basu and De Souza 2011, J. Water Supply Res. Technol. 60(3) 167-177",
		"ascorbic acid found not to work on monochloramine in their tests; abstract read")
	MolarMasses    = cite("iupac-2021", "IUPAC 2021, conventional atomic weights", "stoichiometric doses and ammonia computed from them")
	HeatMixing     = cite("heat-balance", "Heat balance of mixed waters, equal density and heat capacity", "textbook; good to 0.3 °C from 10 to 60 °C")
	FillArithmetic = cite("volume-over-flow", "Time = volume / flow", "arithmetic")
)
