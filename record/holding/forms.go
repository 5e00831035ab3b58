package holding

import (
	"aerosteep/record/journal"
	ws "aerosteep/worksheet"
)

// Form is what a person fills in to log one thing: the flags of the command
// line and the fields of the page are both made from it.
type Form struct {
	Word   string   // what is logged, as the verb says it: "reading"
	Kind   string   // of the entry
	About  []string // flags that name the subject: the first that is given
	Sheet  *ws.Sheet
	fields []field
	needs  string // the sentence for when nothing was said; "" where a flag is required
}

// field is one input and where its value goes in the entry's body.
type field struct {
	input ws.Input
	key   string  // in the body; "" where it names the subject
	times float64 // the body's unit in kept units; 0 is 1
}

// The names that a field may give; each must be one that the holding knows.
var nameFlags = []string{"batch", "bed", "vessel", "pump", "applicator", "ingredient", "recipe"}

func text(flag, key string) field { return field{input: ws.Input{Flag: flag, Kind: ws.Text}, key: key} }

func needed(f field) field { f.input.Required = true; return f }

func amountOf(flag string, kind *ws.Kind, low, high, key string, times float64) field {
	return field{input: ws.Input{Flag: flag, Kind: kind, Low: low, High: high}, key: key, times: times}
}

func choice(flag, key string, words ...string) field {
	return field{input: ws.Input{Flag: flag, Kind: ws.Choice, Choices: words}, key: key}
}

// Forms are the things that can be logged, in the order of the work.
var Forms = []*Form{
	form("reading", journal.Reading, "holding.log.reading.nothing", []string{"batch"},
		needed(text("batch", "")),
		// Wide ranges: a meter set to per cent is kept and doubted, not refused.
		amountOf("do", ws.Concentration, "0 mg/L", "200 mg/L", "do_mg_per_l", 1),
		amountOf("percent-saturation", ws.Share, "0 %", "1000 %", "percent_saturation", 100),
		amountOf("temp", ws.Temperature, "-5 °C", "100 °C", "temp_c", 1),
		amountOf("ph", ws.Bare, "0", "14", "ph", 1),
		amountOf("ec", ws.Conductivity, "0 uS/cm", "200000 uS/cm", "ec_us_per_cm", 1),
		choice("smell", "smell", "earthy", "none", "sweet", "sour", "rotten"),
		amountOf("to-rim", ws.SmallLength, "0 cm", "1000 cm", "to_rim_cm", 100),
		choice("in", "in", "vessel", "tank"), // tank: of what travels with air
		text("note", "note")),
	form("start", journal.Start, "", []string{"batch"},
		needed(text("batch", "")),
		needed(text("vessel", "vessel")),
		needed(text("recipe", "recipe")),
		needed(amountOf("volume", ws.Volume, "0.1 L", "1000000 L", "volume_l", 1)),
		amountOf("temp", ws.Temperature, "0 °C", "40 °C", "temp_c", 1),
		text("because", "because"), // of a dose over the ceiling
		text("note", "note")),
	form("event", journal.Event, "", []string{"batch"},
		needed(text("batch", "")),
		needed(text("event", "event")),
		text("note", "note")),
	form("end", journal.End, "", []string{"batch"},
		needed(text("batch", "")),
		choice("outcome", "outcome", "used", "part-used", "failed", "discarded"),
		text("cause", "cause"),
		amountOf("volume", ws.Volume, "0 L", "1000000 L", "volume_l", 1),
		text("place", "place"),
		text("note", "note")),
	form("note", journal.Note, "", []string{"batch", "bed", "vessel", "recipe"},
		needed(text("text", "text")),
		choice("learn", "learn", "anew"),      // of the vessel or recipe: its batches so far teach nothing more
		choice("handover", "handover", "yes"), // to the next person
		text("recipe", "recipe"),
		text("batch", "batch"),
		text("bed", "bed"),
		text("vessel", "vessel"),
		text("left-out-of", "left_out_of")), // the batch whose run passes the bed by
	form("count", journal.Count, "holding.log.count.nothing", []string{"batch"},
		text("batch", "batch"),
		amountOf("bacteria", ws.Bare, "0", "1000000000000000", "bacteria_per_ml", 1),
		amountOf("fungi", ws.Bare, "0", "1000000000", "fungi_per_ml", 1),
		amountOf("protozoa", ws.Bare, "0", "1000000000", "protozoa_per_ml", 1),
		amountOf("hyphae", ws.Bare, "0", "1000000", "hyphae_m_per_ml", 1),
		amountOf("flagellates", ws.Bare, "0", "1000000000", "flagellates_per_ml", 1),
		amountOf("amoebae", ws.Bare, "0", "1000000000", "amoebae_per_ml", 1),
		amountOf("ciliates", ws.Bare, "0", "1000000000", "ciliates_per_ml", 1),
		amountOf("nematodes", ws.Bare, "0", "1000000000", "nematodes_per_ml", 1),
		text("tally", "tally"), // the counts of each field, so that the numbers can be made again
		text("slide", "slide"),
		text("text", "text")),
	form("test", journal.Test, "holding.log.test.nothing", []string{"applicator", "batch", "vessel", "pump", "meter", "bed"},
		text("applicator", "applicator"),
		text("batch", "batch"),
		text("vessel", "vessel"),
		text("pump", "pump"),
		text("meter", "meter"),
		text("bed", "bed"),
		amountOf("flow", ws.Flow, "0.001 L/min", "50000 L/min", "flow_l_per_min", 1),
		amountOf("mix-rate", ws.Dose, "0.0001 L/m2", "100 L/m2", "mix_rate_l_per_m2", 1),
		amountOf("percent-tea", ws.Bare, "0.001", "100", "percent_tea", 1),
		amountOf("kla20", ws.PerTime, "0.01 /h", "1000 /h", "kla20_per_h", 1),
		amountOf("kla20-low95", ws.PerTime, "0 /h", "1000 /h", "kla20_low95_per_h", 1),
		amountOf("kla20-high95", ws.PerTime, "0.01 /h", "10000 /h", "kla20_high95_per_h", 1),
		choice("kla20-in", "kla20_in", "water", "brew"),
		amountOf("our", ws.Uptake, "0 mg/L/h", "2000 mg/L/h", "our_mg_per_l_h", 1),
		amountOf("our-low95", ws.Uptake, "0 mg/L/h", "10000 mg/L/h", "our_low95_mg_per_l_h", 1),
		amountOf("our-high95", ws.Uptake, "0 mg/L/h", "10000 mg/L/h", "our_high95_mg_per_l_h", 1),
		amountOf("temp", ws.Temperature, "0 °C", "40 °C", "temp_c", 1),
		amountOf("volume", ws.Volume, "0.1 L", "1000000 L", "volume_l", 1),
		amountOf("airflow", ws.Airflow, "0.01 L/min", "50000 L/min", "airflow_l_per_min", 1),
		amountOf("depth", ws.Length, "0 m", "10 m", "depth_m", 1),
		// What a meter showed in water full of air, and what that water holds.
		amountOf("shows", ws.Concentration, "0 mg/L", "200 mg/L", "shows_mg_per_l", 1),
		amountOf("holds", ws.Concentration, "0.1 mg/L", "50 mg/L", "holds_mg_per_l", 1),
		amountOf("drop", ws.Concentration, "0.01 mg/L", "5 mg/L", "drop_mg_per_l", 1),
		amountOf("ecoli", ws.Bare, "0", "1000000000", "ecoli_per_100_ml", 1),
		amountOf("chlorine", ws.Concentration, "0 mg/L", "10 mg/L", "total_chlorine_mg_per_l", 1),
		// A strip is read as "between 0.5 and 1": the higher end is acted on.
		amountOf("chlorine-from", ws.Concentration, "0 mg/L", "10 mg/L", "total_chlorine_from_mg_per_l", 1),
		amountOf("free-chlorine", ws.Concentration, "0 mg/L", "10 mg/L", "free_chlorine_mg_per_l", 1),
		choice("read-from", "read_from", "strip", "kit", "report", "laboratory"),
		text("place", "place"),
		text("text", "text")),
	form("release", journal.Test, "", []string{"batch"},
		needed(text("batch", "")),
		needed(choice("released", "released", "yes", "no")),
		choice("smell", "smell", "earthy", "none", "sweet", "sour", "rotten"),
		text("look", "look"),
		amountOf("do", ws.Concentration, "0 mg/L", "200 mg/L", "do_mg_per_l", 1),
		choice("no-meter", "no_meter", "yes"),
		text("why", "why"),
		text("instead", "instead")),
	form("applied", journal.Applied, "", []string{"bed"},
		needed(text("bed", "")),
		text("batch", "batch"),
		choice("method", "method", "foliar", "drench", "drip"),
		amountOf("tea", ws.Volume, "0 L", "1000000 L", "tea_l", 1),
		amountOf("water", ws.Volume, "0 L", "1000000 L", "water_l", 1),
		amountOf("load", ws.Bare, "1", "10000", "load", 1),
		amountOf("covered", ws.Area, "0.01 m2", "1000000000 m2", "covered_m2", 1),
		amountOf("gone", ws.Volume, "0.01 L", "1000000 L", "gone_l", 1),
		amountOf("wind", ws.Speed, "0 km/h", "200 km/h", "wind_m_per_s", 1),
		text("wind-from", "wind_from"),
		amountOf("temp", ws.Temperature, "-30 °C", "60 °C", "air_temp_c", 1),
		text("applicator", "applicator"),
		text("text", "text")),
	form("cleaned", journal.Cleaned, "holding.log.cleaned.nothing", []string{"vessel", "applicator"},
		text("vessel", "vessel"),
		text("applicator", "applicator"),
		text("agent", "agent"),
		amountOf("strength", ws.Share, "0.1 %", "100 %", "strength_percent", 100), // of the bottle
		text("dilution", "dilution"),
		amountOf("dwell", ws.Span, "0 min", "48 h", "dwell_minutes", 1./60),
		choice("rinsed", "rinsed", "yes", "no"),
		text("label", "label"),
		text("lot", "lot"),
		text("approved", "approved"), // by whom and when: the certifier's word
		text("text", "text")),
	form("stock", journal.Stock, "holding.log.stock.nothing", []string{"ingredient", "batch"},
		text("ingredient", "ingredient"),
		text("batch", "batch"),
		amountOf("received", ws.SmallMass, "0 g", "100000 kg", "received_g", 1),
		amountOf("used", ws.SmallMass, "0 g", "100000 kg", "used_g", 1),
		amountOf("left", ws.SmallMass, "0 g", "100000 kg", "left_g", 1),
		amountOf("volume", ws.Volume, "0 L", "1000000 L", "volume_l", 1),
		text("lot", "lot"),
		text("supplier", "supplier"),
		text("label", "label"),
		text("approved", "approved"),
		text("expires", "expires"),
		text("container", "container"),
		text("receiver", "receiver"),
		text("text", "text")),
	lotForm(),
	form("harvest", journal.Harvest, "", []string{"bed"},
		needed(text("bed", "")),
		text("text", "text")),
	form("incident", journal.Incident, "", []string{"bed", "batch"},
		needed(text("text", "text")),
		text("bed", "bed"),
		text("batch", "batch"),
		amountOf("volume", ws.Volume, "0 L", "1000000 L", "volume_l", 1),
		text("place", "place"),
		amountOf("to-water", ws.Length, "0 m", "100 km", "to_water_m", 1),
		text("done", "done"),
		text("told", "told")),
}

func form(word, kind, needs string, about []string, fields ...field) *Form {
	f := &Form{Word: word, Kind: kind, About: about, needs: needs, fields: fields, Sheet: &ws.Sheet{Name: "log-" + word}}
	for _, each := range fields {
		f.Sheet.Inputs = append(f.Sheet.Inputs, each.input)
	}
	return f
}

// FormOf finds a form by its word or by the kind of its entries.
func FormOf(word string) (*Form, bool) {
	for _, f := range Forms {
		if f.Word == word || f.Kind == word {
			return f, true
		}
	}
	return nil, false
}
