package hygiene

import (
	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/wording"
)

// BedVerdict is what may be done with one batch on one bed.
type BedVerdict struct {
	Bed   string
	Batch *string
	hygiene.Verdict
	judge *hygiene.Judge
}

// BedRuling is a BedVerdict as every face's JSON shows it.
type BedRuling struct {
	Bed   string  `json:"bed"`
	Batch *string `json:"batch"`
	Ruling
}

// Judged decides every meeting of bed and batch.
func Judged(meetings []jobfile.Meeting) []BedVerdict {
	judge := hygiene.NewJudge()
	verdicts := make([]BedVerdict, len(meetings))
	for i, m := range meetings {
		verdicts[i] = BedVerdict{m.Bed, m.Batch, judge.Decide(m.Facts), judge}
		verdicts[i].Derived = m.Derived
	}
	return verdicts
}

// Ruling puts the verdict into the form that faces show.
func (v BedVerdict) Ruling() BedRuling {
	return BedRuling{v.Bed, v.Batch, rulingOf(v.Verdict, v.judge)}
}

// Title names bed and batch.
func (v BedVerdict) Title() wording.Text {
	if v.Batch == nil {
		return wording.Say("hygiene.bed", wording.Places{"bed": v.Bed})
	}
	return wording.Say("hygiene.bed-and-batch", wording.Places{"bed": v.Bed, "batch": *v.Batch})
}

// mostQuestioned is how many beds are weighed for the first question: beyond
// that many, more beds hardly change which fact settles most of them.
const mostQuestioned = 40

// FirstQuestion names the one missing fact whose answer settles most beds.
func FirstQuestion(verdicts []BedVerdict) (wording.Text, bool) {
	var open []hygiene.Facts
	for _, v := range verdicts {
		if v.Allowed == hygiene.Ask && len(open) < mostQuestioned {
			open = append(open, v.Facts)
		}
	}
	if len(open) == 0 {
		return wording.Text{}, false
	}
	first := hygiene.Questions(open)[:1]
	return wording.Say("hygiene.first-question", wording.Places{"fact": hygiene.FactNames(first), "name": first[0].String()}), true
}
