package web

import (
	"slices"

	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	sheets "aerosteep/worksheet/hygiene"
)

// openFacts are the pairs that wait for an answer, and what is to be asked:
// the fact that settles most of them first, those left out of which somebody
// said that nobody here knows.
type openFacts struct {
	file    *jobfile.File
	pairs   []sheets.BedVerdict
	facts   []hygiene.Fact
	unknown []hygiene.Fact
}

// mostWeighed is how many pairs are weighed for the order of asking: more of
// them hardly change which fact settles most.
const mostWeighed = 24

func openQuestions(file *jobfile.File, batch string) openFacts {
	open := openFacts{file: file}
	var cases []hygiene.Facts
	for _, v := range judged(file, batch, "") {
		if v.Allowed == hygiene.Ask {
			open.pairs = append(open.pairs, v)
			if len(cases) < mostWeighed {
				cases = append(cases, v.Facts)
			}
		}
	}
	for _, fact := range hygiene.Questions(cases) {
		if len(open.waiting(fact)) > 0 {
			open.facts = append(open.facts, fact)
		} else {
			open.unknown = append(open.unknown, fact)
		}
	}
	return open
}

// waiting are the pairs that miss a fact and that nobody said is not known.
func (o openFacts) waiting(fact hygiene.Fact) []sheets.BedVerdict {
	var waiting []sheets.BedVerdict
	for i := range o.pairs {
		if slices.Contains(o.pairs[i].Missing, fact) && saidUnknown(o.file, &o.pairs[i], fact) == "" {
			waiting = append(waiting, o.pairs[i])
		}
	}
	return waiting
}

// saidUnknown is the nearest table that says of a fact that it is not known;
// "" where nobody was asked yet.
func saidUnknown(file *jobfile.File, v *sheets.BedVerdict, fact hygiene.Fact) string {
	name := fact.String()
	if bed, known := file.Bed(v.Bed); known && bed.Facts[name] != "" {
		return ifUnknown(bed.Facts[name], "bed:"+v.Bed)
	}
	if v.Batch != nil {
		if batch, known := file.Batch(*v.Batch); known && batch.Facts[name] != "" {
			return ifUnknown(batch.Facts[name], "batch:"+*v.Batch)
		}
	}
	return ifUnknown(file.Hygiene[name], "hygiene")
}

func ifUnknown(word, table string) string {
	if word == "unknown" {
		return table
	}
	return ""
}

// firstQuestion leads to the question that settles most pairs.
func (p *page) firstQuestion(file *jobfile.File, batch string) *askNext {
	open := openQuestions(file, batch)
	if len(open.facts) == 0 {
		return nil
	}
	fact := open.facts[0]
	return &askNext{questionLink(batch, ""), p.Text(hygiene.Asked(fact).Text), p.Say("web.question.serves", "n", len(open.waiting(fact)), "of", len(open.pairs))}
}

// unknownFacts are those that were asked and that nobody here knows.
func (p *page) unknownFacts(file *jobfile.File, batch string) []unknownFact {
	var all []unknownFact
	for _, fact := range openQuestions(file, batch).unknown {
		all = append(all, unknownFact{p.Text(hygiene.Asked(fact).Text), questionLink(batch, fact.String())})
	}
	return all
}
