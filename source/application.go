package source

// Sources of application: calibration, doses, strainers, nutrients and cost.
var (
	MissouriG1270A     = cite("missouri-g1270a", "University of Missouri Extension, Guide G1270A, sprayer calibration", "GPM = GPA x mph x W / 5940")
	OhioAEX520         = cite("ohio-aex-520", "Ohio State University Extension, AEX-520 and Bulletin 817, calibrating sprayers", "table 1: distance for 1/128 acre by spacing")
	CornellBoom        = cite("cornell-boom", "Cornell University, calibration of boom sprayers", "speed over a measured course, both ways")
	AlbertaAgdex606    = cite("alberta-agdex-606-1", "Alberta Agriculture, Agdex 606-1, sprayer calibration", "page 11: nozzles within 5 % of the mean")
	NozzleWear         = cite("nozzle-wear-10", "Usual extension advice: a nozzle over 10 % above its new flow is worn", "from memory")
	ASTME11            = cite("astm-e11", "ASTM E11, woven wire test sieve cloth and test sieves", "table 1, nominal openings")
	OrificeLaw         = cite("orifice-law", "Orifice equation Q = Cd A sqrt(2 dP / rho), any hydraulics text", "Cd of a nozzle is an assumption")
	LandersTRV         = cite("landers-trv", "Landers, Cornell University, Tree Row Volume", "0.7 to 1.0 US gal per 1000 cu ft")
	UMassInjectors     = cite("umass-injectors", "University of Massachusetts Extension, ratios of injectors", "1:100 is 1 of concentrate in 100 of final solution")
	UCFlushing         = cite("uc-flushing", "University of California, maintenance of microirrigation, flushing", "at least 1 ft/s at lateral ends")
	WSUFS035E          = cite("wsu-fs035e", "Washington State University Extension FS035E, calculating chemigation injection rates", "injection rate = volume / time")
	UMassFertilizer    = cite("umass-fertilizer", "University of Massachusetts Extension, fertilizer calculations for greenhouse crops", "mass x percent / volume")
	IUPACMasses        = cite("iupac-masses", "IUPAC standard atomic masses", "P 30.973762, K 39.0983, O 15.999")
	IowaA329           = cite("iowa-a3-29", "Iowa State University Extension, Ag Decision Maker A3-29, estimating farm machinery costs", "straight line; capital recovery")
	BuildingSoils      = cite("nauta-building-soils", "Nauta, Building Soils Naturally", "1 US pint per 1000 sq ft for each 6 ft of canopy; year from memory")
	GreensTrial        = cite("greens-trial", "One year-long trial of compost tea on golf greens", "1 US gal per 1000 sq ft: longer roots, less microdochium patch; colour and density unchanged")
	OnePeriodRule      = cite("one-period-rule", "Arrow, Harris and Marschak 1951, Optimal inventory policy, Econometrica 19: 250", "critical share = (price - cost + goodwill) / (price - salvage + goodwill)")
	MixingArithmetic   = cite("c1v1", "C1 V1 = C2 V2", "arithmetic of mixing")
	HoseEndCalibration = cite("hose-end-calibration", "Pesticide Environmental Stewardship, hose-end sprayer calibration", "time the plant or the test area, catch for as long")
)
