package source

// What the counts rest on.
var (
	Garwood1936       = cite("garwood-1936", "Garwood 1936, fiducial limits for the Poisson distribution", "Biometrika 28:437-442")
	Elliott1977       = cite("elliott-1977", "Elliott 1977, Some methods for the statistical analysis of samples of benthic invertebrates", "Freshwater Biological Association Scientific Publication 25; from memory")
	BratbakDundas1984 = cite("bratbak-dundas-1984", "Bratbak and Dundas 1984, bacterial dry matter content and biomass estimations", "Appl. Environ. Microbiol. 48:755-757; 220 fg C/µm³ from memory, 100-400 in use")
	Newman1966        = cite("newman-1966", "Newman 1966, a method of estimating the total length of root in a sample", "J. Appl. Ecol. 3:139-145")
	Tennant1975       = cite("tennant-1975", "Tennant 1975, a test of a modified line intersect method", "J. Ecol. 63:995-1001; grid form of Newman's formula")
	VanVeenPaul1979   = cite("van-veen-paul-1979", "van Veen and Paul 1979, conversion of biovolume measurements of soil organisms", "https://journals.asm.org/doi/10.1128/aem.37.4.686-692.1979; 0.33 g/cm³, 0.11-0.41")
	FieldOfView       = cite("field-of-view", "Microscope geometry", "field number / objective magnification; drop x field area / slip area")
	StudentT          = cite("student-t", "Student 1908, the probable error of a mean", "Biometrika 6:1-25")
	Darbyshire1974    = cite("darbyshire-1974", "Darbyshire et al. 1974, rapid micromethod for estimating protozoa in soil", "Rev. Ecol. Biol. Sol 11:465-475; from memory")
	Jarvis2010        = cite("jarvis-2010", "Jarvis, Wilrich and Wilrich 2010, reconsideration of the derivation of most probable numbers", "J. Appl. Microbiol. 109:1660-1667")
	NISTHandbook      = cite("nist-sematech-6.3.2", "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2", "individuals and EWMA charts; Western Electric rules from memory")
	TeachingChart     = cite("soil-food-web-chart", "Teaching chart of fungal to bacterial biomass by succession", "for soil; copies disagree, no published data behind it: weak evidence")
	He2020            = cite("he-2020", "He et al. 2020, global topsoil fungal and bacterial biomass", "https://doi.org/10.5061/dryad.qrfj6q5db; measured topsoil runs from 1.8 to 8.6 only")
	Wang2019          = cite("wang-2019", "Wang et al. 2019, fungi to bacteria ratio: historical misinterpretations and potential implications", "Acta Oecologica 95:1")
	RatioOfLogNormals = cite("log-normal-ratio", "Ratio of two log-normal quantities", "Crow and Shimizu 1988, Lognormal Distributions; from memory")
)
