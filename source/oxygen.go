package source

// Oxygen in water, air into water, air through tubes.
var (
	BensonKrause1984 = cite("benson-krause-1984",
		"Benson & Krause 1984, The concentration and isotopic fractionation of oxygen dissolved in freshwater and seawater in equilibrium with the atmosphere",
		"Limnol. Oceanogr. 29(3):620-632, eqs. 24 and 32, doi:10.4319/lo.1984.29.3.0620")
	USGS201103 = cite("usgs-owq-2011-03",
		"US Geological Survey, Office of Water Quality Technical Memorandum 2011.03, Change to solubility equations for oxygen in water",
		"vapour-pressure, non-ideality and conductivity terms; coefficients from memory of the memorandum, checked against IAPWS-IF97 and printed tables")
	StandardMethods4500O = cite("standard-methods-4500-o",
		"Standard Methods for the Examination of Water and Wastewater, 4500-O Oxygen (Dissolved)",
		"table 4500-O:I and section G, calibration in water-saturated air")
	ASHRAEAtmosphere = cite("ashrae-standard-atmosphere",
		"ASHRAE Handbook Fundamentals, chapter 1, standard atmosphere",
		"p = 101.325 (1 - 2.25577e-5 z)^5.2559 kPa, below 11 km")
	Kell1975 = cite("kell-1975",
		"Kell 1975, Density, thermal expansivity, and compressibility of liquid water from 0 to 150 °C",
		"J. Chem. Eng. Data 20(1):97-105; coefficients from memory, checked against IAPWS-IF97")
	ASCE2 = cite("asce-ewri-2",
		"ASCE/EWRI 2-06 (now 2-22), Measurement of Oxygen Transfer in Clean Water",
		"model, nonlinear regression of kLa, C∞ and C0, theta 1.024, SOTR and AOTR")
	GolubPereyra1973 = cite("golub-pereyra-1973",
		"Golub & Pereyra 1973, The differentiation of pseudo-inverses and nonlinear least squares problems whose variables separate",
		"SIAM J. Numer. Anal. 10(2):413-432")
	Badino2000 = cite("badino-2000",
		"Badino, Facciotti & Schmidell 2000, Improving kLa determination in fungal fermentation, taking into account electrode response time",
		"J. Chem. Technol. Biotechnol. 75:469-474")
	TaguchiHumphrey1966 = cite("taguchi-humphrey-1966",
		"Taguchi & Humphrey 1966, Dynamic measurement of the volumetric oxygen transfer coefficient in fermentation systems",
		"J. Ferment. Technol. 44:881-889; from memory of the method")
	EPA1989 = cite("epa-625-1-89-023",
		"US EPA 1989, Design Manual: Fine Pore Aeration Systems, EPA/625/1-89/023",
		"oxygen transfer efficiency of devices in clean water, from memory of its table")
	HeijnenVantRiet1984 = cite("heijnen-vant-riet-1984",
		"Heijnen & van 't Riet 1984, Mass transfer, mixing and heat transfer phenomena in low viscosity bubble column reactors",
		"Chem. Eng. J. 28:B21-B42; kLa = 0.32 v^0.7, coalescing water, about ±30 %, from memory")
	Deckwer1974 = cite("deckwer-shah-1982",
		"Deckwer's correlation as listed by Shah, Kelkar, Godbole & Deckwer 1982, Design parameters estimations for bubble column reactors",
		"AIChE J. 28(3):353-379; kLa = 0.467 v^0.82, from memory")
	ColeCaraco1998 = cite("cole-caraco-1998",
		"Cole & Caraco 1998, Atmospheric exchange of carbon dioxide in a low-wind oligotrophic lake measured by the addition of SF6",
		"Limnol. Oceanogr. 43(4):647-656; k600 = 2.07 + 0.215 U10^1.7 cm/h, from memory")
	Wanninkhof1992 = cite("wanninkhof-1992",
		"Wanninkhof 1992, Relationship between wind speed and gas exchange over the ocean",
		"J. Geophys. Res. 97(C5):7373-7382; Schmidt number of oxygen in fresh water, from memory")
	DarcyWeisbach = cite("darcy-weisbach",
		"Darcy-Weisbach pressure loss; 64/Re for laminar flow, Blasius 1913 for turbulent flow in smooth tubes",
		"White, Fluid Mechanics, chapter 6")
	StandardAtmosphere1976 = cite("us-standard-atmosphere-1976",
		"U.S. Standard Atmosphere 1976: Sutherland viscosity and gas constant of dry air",
		"NOAA-S/T 76-1562, equation 51")
	WMOMagnus = cite("wmo-8-magnus",
		"WMO-No. 8, Guide to Instruments and Methods of Observation: Magnus formula for vapour pressure over water",
		"annex 4.B; coefficients from memory, within 0.31 % of IAPWS-IF97 from 0 to 40 °C")
	IdealGas = cite("ideal-gas",
		"Ideal gas law and Dalton's law of partial pressures, gas collected over water",
		"any text of general chemistry")
	AdiabaticCompression = cite("adiabatic-compression",
		"Reversible adiabatic compression of an ideal gas with k = 1.4",
		"Moran & Shapiro, Fundamentals of Engineering Thermodynamics, chapter 6; check values of Debian python3-fluids")
	MassBalance = cite("oxygen-balance",
		"Oxygen balance of a well-mixed vessel, dC/dt = kLa (C* - C) - OUR",
		"Doran, Bioprocess Engineering Principles, chapter 10")
)
