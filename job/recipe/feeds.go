package recipe

import (
	"sort"

	"aerosteep/quantity"
)

// Feed is everything but compost that goes in at one moment, with what it asks
// of the air.
type Feed struct {
	When        When
	Items       []Weighed
	PercentWV   float64
	Demand      quantity.Concentration
	ReadyDemand quantity.Concentration
}

// Feeds are the feeds of a batch in order of time, the finish last.
func (b Batch) Feeds() []Feed {
	var feeds []Feed
	at := map[When]int{}
	for _, w := range b.Items {
		if w.Item.Ingredient.Compost {
			continue
		}
		n, known := at[w.Item.When]
		if !known {
			n = len(feeds)
			at[w.Item.When] = n
			feeds = append(feeds, Feed{When: w.Item.When})
		}
		feeds[n].add(w, b.Volume)
	}
	sort.SliceStable(feeds, func(i, j int) bool { return feeds[i].When.before(feeds[j].When) })
	return feeds
}

func (f *Feed) add(w Weighed, water quantity.Volume) {
	f.Items = append(f.Items, w)
	f.PercentWV += w.PercentWV()
	f.Demand += quantity.MilligramsPerLitre(w.Demand.Milligrams() / water.Litres())
	f.ReadyDemand += quantity.MilligramsPerLitre(w.ReadyDemand.Milligrams() / water.Litres())
}

func (w When) before(other When) bool {
	if w.Finish != other.Finish {
		return other.Finish
	}
	return w.Hours < other.Hours
}

// SkipFirst is the feed to leave out first when the air does not suffice: of
// those after the start the one with the most sugar, for sugar is what pulls
// oxygen down at once; with equal sugar the one with the larger demand. Without
// a feed after the start there is none to skip. Common practice.
func SkipFirst(feeds []Feed) (Feed, bool) {
	var worst Feed
	found := false
	for _, f := range feeds {
		if f.When == (When{}) {
			continue
		}
		more := f.ReadyDemand > worst.ReadyDemand || f.ReadyDemand == worst.ReadyDemand && f.Demand > worst.Demand
		if !found || more {
			worst, found = f, true
		}
	}
	return worst, found
}

// Compare scales several recipes to one volume, the least oxygen demand first,
// so that they can be read side by side.
func Compare(volume quantity.Volume, recipes ...Recipe) ([]Batch, error) {
	batches := make([]Batch, len(recipes))
	for i, r := range recipes {
		b, err := Scale(r, volume)
		if err != nil {
			return nil, err
		}
		batches[i] = b
	}
	sort.SliceStable(batches, func(i, j int) bool { return batches[i].Demand < batches[j].Demand })
	return batches, nil
}
