package quantity

import (
	"strings"
	"sync"
)

// Exact factors (NIST SP 811, appendix B; the inch, pound and US gallon by
// definition). Everything else in the table is derived from these.
const (
	metresPerInch       = 0.0254
	metresPerFoot       = 12 * metresPerInch
	metresPerMile       = 5280 * metresPerFoot
	gramsPerPound       = 453.59237
	litresPerUSGallon   = 231 * metresPerInch * metresPerInch * metresPerInch * 1000
	litresPerImpGallon  = 4.54609
	squareMetresPerAcre = 43560 * metresPerFoot * metresPerFoot
	standardGravity     = 9.80665
	joulesPerBtu        = 1055.05585262                    // International Table
	pascalsPerMmHg      = 13595.1 * standardGravity / 1000 // conventional mercury of 13 595.1 kg/m³
	pascalsPerInHg      = 25.4 * pascalsPerMmHg
)

// unit is one unit of the table: its factor to the SI unit of its dimension.
type unit struct {
	name   string // in full, as answers print it
	factor float64
	offset float64 // kelvin at zero, for temperatures
	dim    Dimension
	us     bool // a household measure that the answer calls US
}

// entry is a line of the table: a unit and its spellings. A plural s is
// understood wherever the singular is longer than two letters.
type entry struct {
	unit
	spellings string // parted by commas
}

func plain(name string, dim Dimension, factor float64, spellings string) entry {
	return entry{unit{name: name, factor: factor, dim: dim}, spellings}
}

func household(name string, gallons float64, spellings string) entry {
	return entry{unit{name: "US " + name, factor: gallons * litresPerUSGallon / 1000, dim: volume, us: true}, spellings}
}

func imperial(name string, gallons float64, spellings string) entry {
	return entry{unit{name: "imp " + name, factor: gallons * litresPerImpGallon / 1000, dim: volume}, spellings}
}

// table is every unit that can be typed.
var table = [][]entry{lengths, areas, volumes, masses, pressures, motions, times, heats, electrics}

var lengths = []entry{
	plain("nm", length, 1e-9, "nm"),
	plain("um", length, 1e-6, "um,micron,micrometre,micrometer"),
	plain("mm", length, 1e-3, "mm,millimetre,millimeter"),
	plain("cm", length, 1e-2, "cm,centimetre,centimeter"),
	plain("m", length, 1, "m,metre,meter"),
	plain("km", length, 1e3, "km,kilometre,kilometer"),
	plain("mil", length, metresPerInch/1000, "mil"),
	plain("in", length, metresPerInch, "in,inch,inches"),
	plain("ft", length, metresPerFoot, "ft,foot,feet"),
	plain("yd", length, 3*metresPerFoot, "yd,yard"),
	plain("mi", length, metresPerMile, "mi,mile"),
}

var areas = []entry{
	plain("um2", area, 1e-12, "um2,sq um"),
	plain("mm2", area, 1e-6, "mm2,sq mm"),
	plain("cm2", area, 1e-4, "cm2,sq cm"),
	plain("m2", area, 1, "m2,sq m"),
	plain("ha", area, 1e4, "ha,hectare"),
	plain("km2", area, 1e6, "km2,sq km"),
	plain("sq in", area, metresPerInch*metresPerInch, "sq in,in2"),
	plain("sq ft", area, metresPerFoot*metresPerFoot, "sq ft,ft2,sqft"),
	plain("sq yd", area, 9*metresPerFoot*metresPerFoot, "sq yd,yd2"),
	plain("acre", area, squareMetresPerAcre, "ac,acre"),
	plain("sq mi", area, metresPerMile*metresPerMile, "sq mi,mi2"),
}

var volumes = []entry{
	plain("um3", volume, 1e-18, "um3"),
	plain("mm3", volume, 1e-9, "mm3"),
	plain("uL", volume, 1e-9, "ul,microlitre,microliter"),
	plain("mL", volume, 1e-6, "ml,millilitre,milliliter,cm3,cc"),
	plain("cL", volume, 1e-5, "cl"),
	plain("dL", volume, 1e-4, "dl"),
	plain("L", volume, 1e-3, "l,litre,liter,dm3"),
	plain("m3", volume, 1, "m3,cu m"),
	plain("cu in", volume, metresPerInch*metresPerInch*metresPerInch, "cu in,in3"),
	plain("cu ft", volume, cubicFoot, "cu ft,ft3"),
	plain("cu yd", volume, 27*cubicFoot, "cu yd,yd3"),
	plain("bu", volume, 2150.42*metresPerInch*metresPerInch*metresPerInch, "bu,bushel,us bu"),
	plain("ac-in", volume, squareMetresPerAcre*metresPerInch, "ac-in,acre-inch,acre-inches,ac in"),
	plain("ac-ft", volume, squareMetresPerAcre*metresPerFoot, "ac-ft,acre-foot,acre-feet,ac ft"),
	plain("metric cup", volume, 250e-6, "metric cup"),
	household("gal", 1, "gal,gallon,us gal,us gallon"),
	household("qt", 1./4, "qt,quart,us qt,us quart"),
	household("pt", 1./8, "pt,pint,us pt,us pint"),
	household("cup", 1./16, "cup,us cup"),
	household("fl oz", 1./128, "fl oz,floz,fluid ounce,us fl oz"),
	household("tbsp", 1./256, "tbsp,tablespoon,us tbsp"),
	household("tsp", 1./768, "tsp,teaspoon,us tsp"),
	imperial("gal", 1, "imp gal,imperial gallon,imperial gal"),
	imperial("qt", 1./4, "imp qt,imperial quart"),
	imperial("pt", 1./8, "imp pt,imperial pint"),
	imperial("fl oz", 1./160, "imp fl oz,imperial fluid ounce"),
}

const cubicFoot = metresPerFoot * metresPerFoot * metresPerFoot

var masses = []entry{
	plain("fg", mass, 1e-18, "fg"),
	plain("pg", mass, 1e-15, "pg"),
	plain("ng", mass, 1e-12, "ng"),
	plain("ug", mass, 1e-9, "ug,microgram"),
	plain("mg", mass, 1e-6, "mg,milligram"),
	plain("g", mass, 1e-3, "g,gram,gm"),
	plain("kg", mass, 1, "kg,kilogram,kilo"),
	plain("t", mass, 1e3, "t,tonne,metric ton"),
	plain("gr", mass, gramsPerPound/7000/1000, "gr,grain"),
	plain("oz wt", mass, gramsPerPound/16/1000, "oz wt,oz av"),
	plain("lb", mass, gramsPerPound/1000, "lb,pound"),
	plain("short ton", mass, 2000*gramsPerPound/1000, "short ton"),
	plain("long ton", mass, 2240*gramsPerPound/1000, "long ton"),
}

var pressures = []entry{
	plain("Pa", pressure, 1, "pa,pascal"),
	plain("hPa", pressure, 100, "hpa"),
	plain("mbar", pressure, 100, "mbar,millibar"),
	plain("kPa", pressure, 1e3, "kpa"),
	plain("bar", pressure, 1e5, "bar"),
	plain("psi", pressure, gramsPerPound/1000*standardGravity/(metresPerInch*metresPerInch), "psi"),
	plain("atm", pressure, 101325, "atm,atmosphere"),
	plain("mmHg", pressure, pascalsPerMmHg, "mmhg"),
	plain("inHg", pressure, pascalsPerInHg, "inhg"),
	plain("inH2O", pressure, metresPerInch*1000*standardGravity, "inh2o"),
	plain("ftH2O", pressure, metresPerFoot*1000*standardGravity, "fth2o"),
	plain("mH2O", pressure, 1000*standardGravity, "mh2o"),
}

var motions = []entry{
	plain("mph", speed, metresPerMile/3600, "mph"),
	plain("kn", speed, 1852./3600, "kn,kt,knot"),
	plain("km/h", speed, 1/3.6, "kmh,kph"),
	plain("cfm", flow, cubicFoot/60, "cfm"),
	plain("US gpm", flow, litresPerUSGallon/60000, "gpm,us gpm"),
	plain("US gal/acre", length, litresPerUSGallon/1000/squareMetresPerAcre, "gpa,us gpa"),
	plain("ppm", massPerVolume, 1e-3, "ppm"),
	plain("%", none, 1e-2, "%,percent,per cent"),
}

var times = []entry{
	plain("s", span, 1, "s,sec,second"),
	plain("min", span, 60, "min,minute"),
	plain("h", span, 3600, "h,hr,hour"),
	plain("d", span, 86400, "d,day"),
}

var heats = []entry{
	plain("J", energy, 1, "j,joule"),
	plain("kJ", energy, 1e3, "kj"),
	plain("MJ", energy, 1e6, "mj"),
	plain("Wh", energy, 3600, "wh"),
	plain("kWh", energy, 3.6e6, "kwh"),
	plain("Btu", energy, joulesPerBtu, "btu"),
	plain("W", power, 1, "w,watt"),
	plain("kW", power, 1e3, "kw,kilowatt"),
	plain("hp", power, 550*metresPerFoot*gramsPerPound/1000*standardGravity, "hp,horsepower"),
	{unit{name: "°C", factor: 1, offset: kelvinAtZeroCelsius, dim: temperature}, "c,°c,degc,deg c,celsius"},
	{unit{name: "°F", factor: 5. / 9, offset: 459.67 * 5 / 9, dim: temperature}, "f,°f,degf,deg f,fahrenheit"},
	{unit{name: "K", factor: 1, dim: temperature}, "k,°k,kelvin"},
}

var electrics = []entry{
	plain("uS", conductance, 1e-6, "us"),
	plain("mS", conductance, 1e-3, "ms"),
	plain("dS", conductance, 1e-1, "ds"),
	plain("S", conductance, 1, "siemens"),
}

// bySpelling finds a unit by its lower-case spelling; the index is made when
// the first unit is read.
var bySpelling = sync.OnceValue(func() map[string]unit { return index(table) })

func index(table [][]entry) map[string]unit {
	all := map[string]unit{}
	for _, group := range table {
		for _, e := range group {
			for _, s := range strings.Split(e.spellings, ",") {
				all[s] = e.unit
				if plural := s + "s"; len(s) > 2 || s == "lb" || s == "qt" || s == "pt" || s == "yd" {
					if _, taken := all[plural]; !taken {
						all[plural] = e.unit
					}
				}
			}
		}
	}
	return all
}
