package jobfile

import (
	"aerosteep/job/ground"
	"aerosteep/job/rig"
	"aerosteep/quantity"
)

// Ranges are those of the worksheet that asks the same thing.
var (
	oxygenKind       = amountOf("concentration", quantity.ParseConcentration, from[quantity.Concentration](0, 20))
	chlorineKind     = amountOf("concentration", quantity.ParseConcentration, from[quantity.Concentration](0, 10))
	temperatureKind  = amountOf("temperature", quantity.ParseTemperature, from[quantity.Temperature](0, 40))
	conductivityKind = amountOf("conductivity", quantity.ParseConductivity, from[quantity.Conductivity](0, 50000))
	volumeKind       = amountOf("volume", quantity.ParseVolume, over[quantity.Volume](0, 1e6))
	vesselVolumeKind = amountOf("volume", quantity.ParseVolume, from[quantity.Volume](0.5, 1e5))
	deadVolumeKind   = amountOf("volume", quantity.ParseVolume, from[quantity.Volume](0, 1e5))
	lengthKind       = amountOf("length", quantity.ParseLength, over[quantity.Length](0, 100))
	doseKind         = amountOf("volume-per-area", quantity.ParseDose, over[quantity.Dose](0, 100))
	klaKind          = amountOf("per-time", quantity.ParsePerTime, from[quantity.PerTime](0.01, 1000))
	percentKind      = numberFrom(0, 100)
)

var holdingForm = &form{name: "holding", keys: []key{
	plain("name", textKind),
	plain("zone", zoneKind),
	plain("language", choiceOf("en", "es")).or("en"),
	plain("units", choiceOf("us", "metric")).or("us"),
	plain("currency", currencyKind),
	plain("oxygen_meter", boolKind),
	plain("emergency", textKind),
	plain("molasses", boolKind).or("true"),
}}

var limitsForm = &form{name: "limits", keys: []key{
	plain("do", oxygenKind).or("6 mg/L or 70 % of saturation, whichever is lower"),
	plain("chance", percentKind).or("5"),
	plain("use_by_do", oxygenKind).or("2 mg/L"),
	plain("strain_minutes", numberFrom(0, 1440)).or("30"),
	plain("loss", amountOf("share", quantity.ParseShare, from[quantity.Share](0, 0.9))).or("5 %"),
	plain("molasses", amountOf("share", quantity.ParseShare, from[quantity.Share](0, 0.2))).or("0.2 %"),
}}

var siteForm = &form{name: "site", many: true, keys: []key{
	must(plain("name", textKind)),
	must(plain("latitude", numberFrom(-90, 90))),
	must(plain("longitude", numberFrom(-180, 180))),
	plain("altitude", amountOf("length", quantity.ParseLength, from[quantity.Length](-500, 5000))).or("0 m"),
	plain("work_hours", hoursKind),
	plain("no_work", daysKind),
	plain("drive", amountOf("time", quantity.ParseSpan, from[quantity.Span](0, 86400))),
	plain("rate_means", choiceOf("tea", "mix")),
}}

var bedForm = &form{name: "bed", many: true, keys: append([]key{
	must(plain("name", textKind)),
	plain("site", textKind).of("site"),
	plain("area", amountOf("area", quantity.ParseArea, over[quantity.Area](0, 1e9))),
	plain("corners", cornersKind),
	plain("rows", wholeFrom(1, 100000)),
	plain("row_length", amountOf("length", quantity.ParseLength, over[quantity.Length](0, 10000))),
	plain("row_width", lengthKind),
	plain("trees", wholeFrom(1, 1000000)),
	plain("drip_radius", lengthKind),
	plain("crop", textKind),
	plain("stage", choiceOf(ground.Stages...)),
	plain("landmark", textKind),
	plain("gate", textKind),
	plain("keep_off", namesKind),
	plain("every", amountOf("time", quantity.ParseSpan, from[quantity.Span](3600, 366*86400))),
	plain("first", dateKind),
	plain("last", dateKind),
	plain("batch", namesKind).of("batch"),
}, factKeys("bed")...)}

var pumpForm = &form{name: "pump", many: true, keys: []key{
	must(plain("name", textKind)),
	plain("curve", curveKind),
	plain("label_flow", amountOf("flow", quantity.ParseFlow, from[quantity.Flow](0.01, 50000))),
	plain("power", amountOf("power", quantity.ParsePower, from[quantity.Power](0, 100000))),
	plain("tube_bore", amountOf("length", quantity.ParseLength, from[quantity.Length](0.001, 0.2))),
	plain("tube_length", amountOf("length", quantity.ParseLength, from[quantity.Length](0, 200))),
	plain("bubbles", choiceOf("fine", "medium", "coarse")),
	plain("sote_per_m", amountOf("share", quantity.ParseShare, from[quantity.Share](0.001, 0.12))),
	plain("diffuser_loss", amountOf("pressure", quantity.ParsePressure, from[quantity.Pressure](0, 400))).or("0 kPa"),
}}

var vesselForm = &form{name: "vessel", many: true, keys: []key{
	must(plain("name", textKind)),
	plain("full", vesselVolumeKind),
	plain("shape", choiceOf("cylinder", "cone-bottom", "horizontal-cylinder", "box", "frustum")),
	plain("diameter", lengthKind),
	plain("height", lengthKind),
	plain("cone_height", lengthKind),
	plain("length", lengthKind),
	plain("width", lengthKind),
	plain("top_diameter", lengthKind),
	plain("bottom_diameter", lengthKind),
	plain("brew", vesselVolumeKind).or("85 % of full"),
	plain("least", amountOf("volume", quantity.ParseVolume, from[quantity.Volume](0, 1e5))).or("half of brew"),
	plain("depth", amountOf("length", quantity.ParseLength, from[quantity.Length](0.05, 5))),
	plain("pump", textKind).of("pump"),
	plain("kla20", klaKind),
	plain("kla20_low95", klaKind),
	plain("kla20_high95", klaKind),
	plain("kla20_in", choiceOf("water", "brew")).or("water"),
	plain("indoors", boolKind),
	plain("site", textKind).of("site"),
	plain("turnaround", amountOf("time", quantity.ParseSpan, from[quantity.Span](0, 14*86400))).or("3 h"),
}}

var applicatorForm = &form{name: "applicator", many: true, keys: []key{
	must(plain("name", textKind)),
	plain("kind", choiceOf(rig.ApplicatorKinds...)),
	plain("tank", amountOf("volume", quantity.ParseVolume, over[quantity.Volume](0, 1e5))),
	plain("dead_volume", deadVolumeKind).or("0 L"),
	plain("smallest_opening", amountOf("length", quantity.ParseLength, over[quantity.Length](0, 0.1))),
	plain("minutes_per_load", numberFrom(0, 1440)).or("20"),
	plain("held_before", choiceOf(rig.HeldBefore...)),
	plain("borrowed", boolKind),
	plain("empty_mass", amountOf("mass", quantity.ParseMass, from[quantity.Mass](0, 1e8))),
	plain("plate", amountOf("mass", quantity.ParseMass, over[quantity.Mass](0, 1e8))),
	plain("air", boolKind),
}}

var waterForm = &form{name: "water", keys: []key{
	plain("source", choiceOf("municipal", "well", "rain", "surface")),
	plain("free_chlorine", chlorineKind),
	plain("total_chlorine", chlorineKind),
	plain("chloramine", chlorineKind),
	plain("temperature", temperatureKind).or("15 °C"),
	plain("conductivity", conductivityKind),
}}

var hygieneForm = &form{name: "hygiene", keys: factKeys("hygiene")}

var costsForm = &form{name: "costs", keys: []key{
	plain("electricity", priceOf("energy")),
	plain("wage", priceOf("time")),
	plain("minutes_per_batch", numberFrom(0, 10080)),
}}

var ingredientForm = &form{name: "ingredient", many: true, keys: []key{
	must(plain("name", textKind)),
	plain("bulk_density", typedAs("density")),
	plain("sugars_percent", percentKind),
	plain("other_carbohydrate_percent", percentKind),
	plain("protein_percent", percentKind),
	plain("fat_percent", percentKind),
	plain("n_percent", percentKind),
	plain("p2o5_percent", percentKind),
	plain("k2o_percent", percentKind),
	plain("origin", choiceOf("plant", "animal")),
	plain("price", typedAs("price")),
	plain("stock", typedAs("stock")),
	plain("reorder_at", typedAs("stock")),
}}

// loggerForm is how the files of a logger are read: a column and what it is in
// each line.
var loggerForm = &form{name: "logger", many: true, keys: []key{
	must(plain("name", textKind)),
	must(plain("columns", namesKind)),
	plain("order", choiceOf("day", "month")),
}}

// personForm is one of the crew; name is the initials that stand on entries.
var personForm = &form{name: "person", many: true, keys: []key{
	must(plain("name", textKind)),
	plain("full_name", textKind),
	plain("role", textKind),
	plain("training", textKind),
	plain("language", choiceOf("en", "es")),
}}

var itemForm = &form{name: "items", many: true, keys: []key{
	must(plain("ingredient", textKind)),
	must(plain("amount", typedAs("item-amount"))),
	plain("when", typedAs("when")).or("start"),
	plain("bulk_density", typedAs("density")),
}}

var recipeForm = &form{name: "recipe", many: true, keys: []key{
	must(plain("name", textKind)),
	plain("lean", choiceOf("bacterial", "balanced", "fungal")),
	plain("for_volume", typedAs("volume")),
	plain("hours", numberFrom(0, 168)).or("24"),
	plain("note", textKind),
	plain("because", textKind),
	must(plain("items", tablesOf(itemForm))),
}}

var wantForm = &form{name: "want", many: true, keys: []key{
	must(plain("bed", textKind).of("bed")),
	must(plain("method", choiceOf("drench", "foliar"))),
	plain("at", momentKind),
	plain("from", momentKind),
	plain("until", momentKind),
	plain("tea_rate", doseKind),
	plain("tea", volumeKind),
	plain("mix_rate", doseKind),
	plain("rate", doseKind),
	plain("each", volumeKind),
	plain("cans", numberFrom(0.01, 10000)),
	plain("count", wholeFrom(1, 1000000)),
	plain("dilution", dilutionKind).or("1:0"),
	plain("recipe", textKind).of("recipe"),
	plain("applicator", textKind).of("applicator"),
}}

var batchForm = &form{name: "batch", many: true, keys: append([]key{
	must(plain("name", textKind)),
	plain("vessel", textKind).of("vessel"),
	plain("recipe", textKind).of("recipe"),
	plain("volume", vesselVolumeKind),
	plain("started_at", momentKind),
	plain("temperature", temperatureKind),
}, factKeys("batch")...)}
