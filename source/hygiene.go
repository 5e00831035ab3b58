package source

// The laws, recommendations and methods of the hygiene room. Where a text was
// recalled and not yet compared, the place says so.
var (
	CFR21Part112 = cite("21-cfr-112", "FDA, Standards for the Growing, Harvesting, Packing, and Holding of Produce for Human Consumption, 21 CFR Part 112",
		"Subparts A, E, F and O; 80 FR 74353 (2015), Subpart E as of 89 FR 37448 (2024); 112.55 and 112.56 read 5 April 2026, 112.54 and 112.164 from memory")
	CFR7Part205 = cite("7-cfr-205", "USDA, National Organic Program, 7 CFR Part 205",
		"205.103, 205.105(g), 205.203(c)-(e); 205.103 from memory")
	NOP5021  = cite("nop-5021", "USDA, NOP 5021 Guidance: Compost and Vermicompost in Organic Crop Production, 22 July 2011", "section 4")
	NOSB2004 = cite("nosb-2004", "National Organic Standards Board, Compost Tea Task Force Report, 6 April 2004, and recommendation of 9 November 2006",
		"recommendations 1-9; numbers partly from memory; the certifier decides")
	CFR40Part503 = cite("40-cfr-503-32", "EPA, Standards for the Use or Disposal of Sewage Sludge, 40 CFR 503.32(a)(3)(ii)", "equations 2 and 3, regimes A to D")
	CFR21Part178 = cite("21-cfr-178-1010", "FDA, Sanitizing solutions, 21 CFR 178.1010", "200 mg/L of available chlorine without a rinse; from memory")
	EU20191009   = cite("eu-2019-1009", "Regulation (EU) 2019/1009 on EU fertilising products", "Annex I (microbes in PFC 1, 3 and 4), Annex II CMC 3 point 4; from memory")
	BAMChapter3  = cite("bam-3", "FDA, Bacteriological Analytical Manual, chapter 3, Aerobic Plate Count (Maturin and Peeler 2001)",
		"25-250 rule, worked example 537/0.022, rounding")
	ISO7218       = cite("iso-7218", "ISO 7218:2007, Microbiology of food and animal feeding stuffs, General requirements", "10.3; from memory")
	ISOTS19036    = cite("iso-ts-19036", "ISO/TS 19036:2006/Amd 1:2009, Estimation of measurement uncertainty for quantitative determinations", "8.2, examples 1-3")
	USGSField71   = cite("usgs-nfm-7-1", "USGS, National Field Manual, chapter A7.1, Fecal Indicator Bacteria", "7.1.4, calculating and reporting")
	EPARWQC2012   = cite("epa-rwqc-2012", "EPA, Recreational Water Quality Criteria, 820-F-12-058, 2012", "geometric mean and statistical threshold value; numbers from memory")
	BathingUK2013 = cite("bathing-uk-2013", "The Bathing Water Regulations 2013 (UK), schedule 5 paragraph 2", "90th and 95th percentile of a log-normal distribution")
	Bryant1986    = cite("bryant-1986", "Bryant 1986, Graph-based algorithms for Boolean function manipulation", "IEEE Transactions on Computers C-35(8):677-691")
	BAMAppendix2  = cite("bam-appendix-2", "FDA, Bacteriological Analytical Manual, appendix 2, Most Probable Number from Serial Dilutions (Blodgett 2010)", "tables 1 and 2; printed limits from another method")
	Ridout1994    = cite("ridout-1994", "Ridout 1994, a comparison of confidence interval methods for dilution series experiments", "Biometrics 50:289-296")
	Blodgett2002  = cite("blodgett-2002", "Blodgett 2002, measuring improbability of outcomes from a serial dilution test", "Communications in Statistics 31:2209-2223")
)
