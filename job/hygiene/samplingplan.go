package hygiene

// Plan is a three-class sampling plan: of n samples at most c may lie between
// m and M, and none over M.
type Plan struct {
	Samples, Allowed int     // n, c
	Lower, Upper     float64 // m, M
}

// Salmonella is how many samples of those tested were positive; none may be.
type Salmonella struct{ Positive, Tested int }

// PlanVerdict is the word of a sampling plan.
type PlanVerdict string

// The words.
const (
	PlanAccept PlanVerdict = "accept"
	PlanReject PlanVerdict = "reject"
	PlanCannot PlanVerdict = "cannot-judge"
)

// PlanResult is what the counts come to under a plan.
type PlanResult struct {
	Verdict       PlanVerdict
	Between, Over int
	Why           string // the key of the sentence: over, between, salmonella, few, few-salmonella, all
}

// Judge compares counts, per g or mL, with the plan. What rejects a lot rejects
// it however few samples there are.
//
// Source: Regulation (EU) 2019/1009, Annex I (n = 5, c = 5, m = 0, M = 1000 for
// E. coli or Enterococcaceae; Salmonella absent in all of five).
func (p Plan) Judge(counts []float64, salmonella *Salmonella) PlanResult {
	var r PlanResult
	for _, c := range counts {
		switch {
		case c > p.Upper:
			r.Over++
		case c > p.Lower:
			r.Between++
		}
	}
	switch {
	case r.Over > 0:
		r.Verdict, r.Why = PlanReject, "over"
	case salmonella != nil && salmonella.Positive > 0:
		r.Verdict, r.Why = PlanReject, "salmonella"
	case r.Between > p.Allowed:
		r.Verdict, r.Why = PlanReject, "between"
	case len(counts) < p.Samples:
		r.Verdict, r.Why = PlanCannot, "few"
	case salmonella != nil && salmonella.Tested < p.Samples:
		r.Verdict, r.Why = PlanCannot, "few-salmonella"
	default:
		r.Verdict, r.Why = PlanAccept, "all"
	}
	return r
}
