package hygiene

import "time"

// How long a record is kept, in years.
//
// Source: 21 CFR 112.164(a) (two years after it was made, studies of a process
// two years after their last use); 7 CFR 205.103(b)(3) (five years beyond its
// creation). Both from memory.
const (
	produceYears = 2
	organicYears = 5
)

// Keeping says until when a record is kept.
type Keeping struct {
	Produce, Organic, Until time.Time
	DaysLeft                *int
	MayBeDiscarded          *bool
}

// KeepRecord finds the days until which a record made on a day must be kept;
// 29 February goes to 1 March where there is none. A study that shows that a
// process works counts, for the produce rule, from its last use. Without today
// nothing is said of what is left.
func KeepRecord(made time.Time, lastUsed, today *time.Time) Keeping {
	from := made
	if lastUsed != nil && lastUsed.After(made) {
		from = *lastUsed
	}
	k := Keeping{Produce: from.AddDate(produceYears, 0, 0), Organic: made.AddDate(organicYears, 0, 0)}
	k.Until = k.Organic
	if k.Produce.After(k.Until) {
		k.Until = k.Produce
	}
	if today != nil {
		left, over := daysBetween(*today, k.Until), today.After(k.Until)
		k.DaysLeft, k.MayBeDiscarded = &left, &over
	}
	return k
}

// daysBetween counts calendar days between two midnights of one zone.
func daysBetween(from, to time.Time) int {
	return int((to.Unix() - from.Unix()) / 86400)
}
