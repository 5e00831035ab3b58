package source

// Sources of what is said about the sky.
var (
	HylandWexler1983 = cite("hyland-wexler-1983", "Hyland and Wexler 1983, saturation vapour pressure, as in ASHRAE Handbook Fundamentals 2017, chapter 1, equations 5 and 6",
		"coefficients read in copies")
	ASHRAE2017 = cite("ashrae-2017-psychrometrics", "ASHRAE Handbook Fundamentals 2017, chapter 1, equations 20, 33 and 35",
		"wet bulb solved from the equation, not by a sea-level formula")
	DeltaT        = cite("bom-delta-t", "Australian Bureau of Meteorology, spraying conditions", "depression ideally 2 to 8 °C and not over 10; wording read in copies")
	NOAASolar     = cite("noaa-solar", "NOAA Solar Calculator equations, after Meeus 1998, Astronomical Algorithms", "checked against US Naval Observatory tables and the NREL algorithm")
	Madronich2007 = cite("madronich-2007", "Madronich 2007, Photochem. Photobiol. 83, 1537-1540", "ultraviolet index of a clear sky near sea level")
	GRDCInversion = cite("grdc-module-10", "GRDC Spray Application Manual, module 10, weather monitoring", "inversions from 1 to 2 h before sunset to 1 h after sunrise")
	SprayWind     = cite("dpird-wind", "Department of Primary Industries and Regional Development, Western Australia, herbicides", "wind 3 to 15 km/h")
)
