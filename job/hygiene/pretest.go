package hygiene

import (
	"math"

	"aerosteep/science/counting"
)

// The most that the mean of a pre-test may be, per 100 mL of tea.
//
// Source: NOSB Compost Tea Task Force report 2004, recommendation 5 (126 is
// EPA's criterion for E. coli, 33 its 1986 value for enterococci).
const (
	mostEColi       = 126
	mostEnterococci = 33
)

// fewestBatches is how many batches a pre-test takes.
const fewestBatches = 2

// PretestVerdict is the word of a pre-test.
type PretestVerdict string

// The words.
const (
	PretestPassed    PretestVerdict = "passed"
	PretestFailed    PretestVerdict = "failed"
	PretestTooFew    PretestVerdict = "too-few"
	PretestUndecided PretestVerdict = "undecided"
)

// PretestResult is what the batches of a pre-test come to.
type PretestResult struct {
	Verdict                PretestVerdict
	Batches                int
	EColi, Enterococci     *float64 // means per 100 mL; nil where not tested
	EColiIs, EnterococciIs counting.Relation
}

// JudgePretest takes the arithmetic mean over batches made with the same
// compost batch, additives and equipment. Inputs: findings per 100 mL, one a
// batch, of one organism or of both; a result below detection counts as its
// limit, one above the range as its end, which makes the mean a lower bound.
func JudgePretest(ecoli, enterococci []counting.Finding) PretestResult {
	r := PretestResult{Batches: max(len(ecoli), len(enterococci))}
	words := []PretestVerdict{}
	if len(ecoli) > 0 {
		words = append(words, judgeMean(ecoli, mostEColi, &r.EColi, &r.EColiIs))
	}
	if len(enterococci) > 0 {
		words = append(words, judgeMean(enterococci, mostEnterococci, &r.Enterococci, &r.EnterococciIs))
	}
	r.Verdict = PretestPassed
	for _, strict := range []PretestVerdict{PretestUndecided, PretestFailed, PretestTooFew} {
		for _, w := range words {
			if w == strict {
				r.Verdict = strict
			}
		}
	}
	return r
}

func judgeMean(findings []counting.Finding, most float64, mean **float64, is *counting.Relation) PretestVerdict {
	sum := 0.0
	*is = counting.Equal
	for _, f := range findings {
		sum += f.Value
		if f.Is == counting.MoreThan {
			*is = counting.MoreThan
		}
	}
	m := sum / float64(len(findings))
	*mean = &m
	switch {
	case len(findings) < fewestBatches:
		return PretestTooFew
	case m > most+1e-9*math.Abs(most):
		return PretestFailed
	case *is == counting.MoreThan:
		return PretestUndecided
	}
	return PretestPassed
}
