package source

// What the recipes rest on.
var (
	VanLierCOD       = cite("van-lier-2012", "van Lier 2012, Anaerobic Wastewater Treatment: Basic Calculations", "oxygen demand of CnHaObNd with nitrogen left as ammonia")
	FoodDataCentral  = cite("usda-fdc-sr-legacy", "USDA FoodData Central, SR Legacy", "food composition and mass of a US cup")
	CaldwellMolasses = cite("caldwell-molasses", "Caldwell, Molasses in Feeds", "11.75 lb per US gal at 79.5 Brix; sugars; the other columns from memory of feed tables")
	FeedTables       = cite("feed-tables", "Feed composition tables (NRC type)", "from memory, 10-30 % natural spread")
	TypicalLabels    = cite("typical-labels", "Typical analyses printed on labels of such materials", "from memory, 10-30 % natural spread: read your own label")
	GardenGuides     = cite("garden-npk-tables", "Extension tables of organic fertilizers, N-P2O5-K2O", "https://plantanswers.com/earthkind/ekgarden8.html; proximate parts from memory")
	KitchenMeasures  = cite("kitchen-measures", "Common kitchen measures", "200 g of white sugar in a US cup, from memory")
	CompostWeight    = cite("compost-weight", "Compost calculators and weights of a cubic yard of compost", "1000 lb/yd3 typical, 800-1200; leaf mould 3 lb/US gal; http://web.mst.edu/~gbert/CompostMixture.html")

	Duffy2004   = cite("duffy-2004", "Duffy et al. 2004, effect of molasses on regrowth of E. coli O157:H7 and Salmonella in compost teas", "Compost Sci. Util. 12:93-96; 72 h; 1 % against 0 to 0.2 % molasses")
	Palmer2010  = cite("palmer-2010", "Palmer et al. 2010, survival of E. coli in aerated compost extracts", "harmless E. coli M23; 0.8 % fish hydrolysate, 0.5-2 % liquid seaweed")
	Ingram2007  = cite("ingram-millner-2007", "Ingram and Millner 2007, factors affecting compost tea as a potential source of E. coli and Salmonella", "J. Food Prot. 70:828-834; mixed supplements, +1 to 4 log")
	Hegazy2015  = cite("hegazy-2015", "Hegazy et al. 2015, African Journal of Microbiology Research", "28 °C, no significant gain in chemistry after 48 h")
	Lanthier13  = cite("lanthier-peters-2013", "Lanthier and Peters 2013, Acta Horticulturae 1013", "25 aerated batches of 15 L at 51 g/L compost")
	CornellMix  = cite("cornell-compost-mix", "Cornell Waste Management Institute, compost mixture calculations", "moisture and C:N of a blend; 50-60 % moisture at the start")
	Scheuerell4 = cite("scheuerell-mahaffee-2004", "Scheuerell and Mahaffee 2004, Phytopathology 94:1156", "aerated and still teas with several foods")
)
