package source

// Sources of the living model and of the forecast.
var (
	HenzeASM1 = cite("henze-asm1-1987",
		"Henze, Grady, Gujer, Marais & Matsuo 1987: Activated Sludge Model No. 1, IAWPRC Scientific and Technical Report 1",
		"rates, matrix and constants as reproduced in open implementations; values at 10 °C from memory")
	RossoCTMI = cite("rosso-1993",
		"Rosso, Lobry & Flandrois 1993: An unexpected correlation between cardinal temperatures of microbial growth, J. Theor. Biol. 162:447",
		"from memory")
	Pietikainen2005 = cite("pietikainen-2005",
		"Pietikäinen, Pettersson & Bååth 2005: Comparison of temperature effects on soil respiration and bacterial and fungal growth rates, FEMS Microbiol. Ecol. 52:49",
		"abstract")
	LasaridiStentiford2001 = cite("lasaridi-stentiford-2001",
		"Lasaridi & Stentiford 2001: oxygen uptake of compost suspensions, Acta Hortic. 549",
		"abstract, https://www.actahort.org/books/549/549_8.htm")
	CurdsCockburn1968 = cite("curds-cockburn-1968",
		"Curds & Cockburn 1968: growth of Tetrahymena on bacteria, J. Gen. Microbiol. 54:343",
		"https://www.microbiologyresearch.org/content/journal/micro/10.1099/00221287-54-3-343")
	LiuWest2001 = cite("liu-west-2001",
		"Liu & West 2001: Combined parameter and state estimation in simulation-based filtering, in Sequential Monte Carlo Methods in Practice, ch. 10",
		"from memory")
	Evensen1994 = cite("evensen-1994",
		"Evensen 1994: sequential data assimilation by Monte Carlo, J. Geophys. Res. 99:10143",
		"from memory")
)
