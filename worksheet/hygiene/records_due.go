package hygiene

import (
	"time"

	"aerosteep/job/hygiene"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var recordsDue = worksheet.Sheet{
	Name:  "records-due",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "made", Kind: worksheet.Date, Required: true},
		{Flag: "last-used", Kind: worksheet.Date},
		{Flag: "today", Kind: worksheet.Date},
	},
	Example: "--made 2026-06-15",
	Sources: []source.Source{source.CFR21Part112, source.CFR7Part205},
	Shape:   keeping{},
	Run:     runRecordsDue,
}

type keeping struct {
	Produce        *string `json:"fda_keep_until"`
	Organic        *string `json:"nop_keep_until"`
	Until          *string `json:"keep_until"`
	DaysLeft       *int    `json:"days_left"`
	MayBeDiscarded *bool   `json:"may_be_discarded"`
}

func runRecordsDue(f *worksheet.Form) (*worksheet.Result, error) {
	k := hygiene.KeepRecord(f.Day("made"), dayGiven(f, "last-used"), dayGiven(f, "today"))
	result := &worksheet.Result{
		Answer:  wording.Say("sheet.records-due.answer", wording.Places{"until": wording.Day(k.Until)}),
		Data:    keeping{date(&k.Produce), date(&k.Organic), date(&k.Until), k.DaysLeft, k.MayBeDiscarded},
		Basis:   worksheet.Standard,
		Sources: []source.Source{source.CFR21Part112, source.CFR7Part205},
	}
	result.Caution("laboratory.caution.records")
	result.Caution("hygiene.caution.law")
	return result, nil
}

// dayGiven is a date that may be left out.
func dayGiven(f *worksheet.Form, flag string) *time.Time {
	if !f.Has(flag) {
		return nil
	}
	day := f.Day(flag)
	return &day
}
