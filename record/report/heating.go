package report

import (
	"context"
	"encoding/json"
	"errors"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// heating is the compost heating record of a lot: its log of temperatures, kept
// as a paper, judged by the worksheet that judges any.
func (d *Desk) heating(ctx context.Context, lot string) (*Paper, error) {
	log, err := d.heatLog(ctx, lot)
	if err != nil {
		return nil, err
	}
	text, err := d.holding.Journal().Content(ctx, log.Hash)
	if err != nil {
		return nil, err
	}
	p := d.paper("heating", lot)
	d.about(p, log.Kept)
	p.fact("lot", lot)
	p.fact("file", log.File)
	p.fact("sha256", log.Hash[:16])
	if log.Method == "" {
		p.missing("heating.method", wording.Places{"lot": lot})
		return p, nil
	}
	p.fact("method", wording.Say("value."+log.Method))
	result, err := judgedHeat(log.File, string(text), log.Method)
	if err != nil {
		return nil, err
	}
	p.Lede = result.Answer
	if err := heatFigures(p, result); err != nil {
		return nil, err
	}
	p.Cautions = append(p.Cautions, result.Cautions...)
	p.caution("judge")
	return p, nil
}

// heatLog is the newest log of temperatures that was kept of a lot.
func (d *Desk) heatLog(ctx context.Context, lot string) (holding.Attached, error) {
	papers, err := d.holding.Attachments(ctx)
	if err != nil {
		return holding.Attached{}, err
	}
	for i := len(papers) - 1; i >= 0; i-- {
		if papers[i].Subject == "lot:"+lot && papers[i].What == "heating" {
			return papers[i], nil
		}
	}
	return holding.Attached{}, fault.New("lot", lot, wording.Say("paper.heating.none", wording.Places{"lot": lot}), wording.Text{}, wording.Say("paper.heating.none.advice"))
}

// heatFigures are what an inspector looks for in a heating record.
func heatFigures(p *Paper, result *worksheet.Result) error {
	text, err := result.JSON(wording.Reader{})
	if err != nil {
		return err
	}
	var data struct {
		Points []said `json:"points"`
		Gaps   []said `json:"gaps"`
	}
	var all said
	if err := errors.Join(json.Unmarshal(text, &data), json.Unmarshal(text, &all)); err != nil {
		return err
	}
	for _, key := range []string{"hours_at_temperature", "longest_run_h", "hours_needed", "turnings", "turnings_needed", "hours_above_limit"} {
		p.fact(key, all[key])
	}
	points := Table{Name: "points", Columns: []string{"point", "hours_at_temperature", "longest_run_h", "highest_c"}}
	for _, point := range data.Points {
		points.Rows = append(points.Rows, []any{point["point"], point["hours_at_temperature"], point["longest_run_h"], point["highest_c"]})
	}
	gaps := Table{Name: "gaps", Columns: []string{"from_hour", "to_hour"}}
	for _, gap := range data.Gaps {
		gaps.Rows = append(gaps.Rows, []any{gap["from_hour"], gap["to_hour"]})
	}
	p.Tables = append(p.Tables, points, gaps)
	return nil
}

func judgedHeat(name, text, method string) (*worksheet.Result, error) {
	sheet, _ := catalog.Find("compost-heat")
	form, err := worksheet.Read(sheet, worksheet.Values{"file": {text}, "method": {method}, "skip-bad": {"true"}}, map[string]string{"file": name})
	if err != nil {
		return nil, err
	}
	return sheet.Run(form)
}
