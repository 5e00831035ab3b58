package hygiene

import (
	"strings"

	"aerosteep/quantity"
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var nondetect = worksheet.Sheet{
	Name:  "nondetect",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "amount", Kind: worksheet.Text, Required: true},
		{Flag: "samples", Kind: worksheet.Whole, Low: "1", High: "1000000", Default: "1"},
		{Flag: "confidence", Kind: worksheet.Share, Low: "50 %", High: "99.99 %", Default: "95 %"},
		{Flag: "against", Kind: worksheet.Text},
	},
	Example: "--amount '100 mL' --samples 5 --against '1 /100 mL'",
	Sources: []source.Source{source.Garwood1936},
	Shape:   notFound{},
	Run:     runNondetect,
}

type notFound struct {
	ExaminedML        *float64 `json:"examined_ml"`
	ExaminedG         *float64 `json:"examined_g"`
	UpperPerML        *float64 `json:"upper_limit_per_ml"`
	UpperPer100ML     *float64 `json:"upper_limit_per_100_ml"`
	UpperPerG         *float64 `json:"upper_limit_per_g"`
	ShareBatchesBelow float64  `json:"share_of_batches_below"`
	ChanceOfMissing   *float64 `json:"chance_of_missing"`
	SamplesNeeded     *int     `json:"samples_needed"`
}

func runNondetect(f *worksheet.Form) (*worksheet.Result, error) {
	amount, isMass, err := readAmount("amount", f.Text("amount"), f.Text("amount"))
	if err != nil {
		return nil, err
	}
	samples, confidence := f.Int("samples"), f.Share("confidence").Fraction()
	examined := amount * float64(samples)
	upper := counting.UpperLimitWhenClean(examined, confidence)
	data := notFound{ShareBatchesBelow: counting.ShareAboveAtMost(samples, confidence)}
	if isMass {
		data.ExaminedG, data.UpperPerG = &examined, &upper
	} else {
		data.ExaminedML, data.UpperPerML, data.UpperPer100ML = &examined, &upper, worksheet.Some(100*upper)
	}
	if f.Has("against") {
		c, err := readPer(f.Text("against"), isMass)
		if err != nil {
			return nil, err
		}
		data.ChanceOfMissing = worksheet.Some(counting.ChanceOfMissing(c, examined))
		needed := counting.SamplesNeeded(c, amount, confidence)
		if needed > 1e15 {
			return nil, wrong("against", f.Text("against"), "laboratory.against-small", "laboratory.against.allowed")
		}
		data.SamplesNeeded = worksheet.Some(int(needed))
	}
	return nondetectResult(f, data), nil
}

// readPer reads a count per amount into one per mL or per g.
func readPer(text string, isMass bool) (float64, error) {
	const flag, allowed = "against", "laboratory.against.allowed"
	count, amount, parted := strings.Cut(strings.Replace(text, " per ", "/", 1), "/")
	if !parted {
		return 0, wrong(flag, text, "laboratory.against.form", allowed)
	}
	n, err := quantity.Bare(count)
	if err != nil || !(n > 0) {
		return 0, wrong(flag, text, "laboratory.against.form", allowed)
	}
	amount = strings.TrimSpace(amount)
	if amount == "" {
		return 0, wrong(flag, text, "laboratory.against.form", allowed)
	}
	if c := amount[0]; c < '0' || c > '9' {
		amount = "1 " + amount
	}
	v, mass, err := readAmount(flag, text, amount)
	if err != nil {
		return 0, err
	}
	if mass != isMass {
		return 0, wrong(flag, text, "laboratory.against.kind", allowed)
	}
	return n / v, nil
}

func nondetectResult(f *worksheet.Form, data notFound) *worksheet.Result {
	places := wording.Places{"confidence": f.Share("confidence"), "samples": f.Int("samples")}
	key := "sheet.nondetect.answer.volume"
	if data.UpperPerG != nil {
		key, places["upper"] = "sheet.nondetect.answer.mass", *data.UpperPerG
	} else {
		places["upper"] = *data.UpperPer100ML
	}
	result := &worksheet.Result{Answer: wording.Say(key, places), Data: data, Basis: worksheet.Standard, Sources: []source.Source{source.Garwood1936}}
	if data.SamplesNeeded != nil {
		result.Notes = append(result.Notes, wording.Say("sheet.nondetect.missing", wording.Places{
			"chance": quantity.Share(*data.ChanceOfMissing), "against": f.Text("against"), "needed": *data.SamplesNeeded,
		}))
	}
	result.Caution("laboratory.caution.clean")
	result.Caution("hygiene.caution.test")
	return result
}
