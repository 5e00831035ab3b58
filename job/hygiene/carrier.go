package hygiene

// Carrier is what a fact is true of, and so where an answer is written down:
// once on the holding, on the batch or on the bed.
type Carrier string

// The carriers are the tables of a job file that take facts.
const (
	OfHolding Carrier = "hygiene"
	OfBatch   Carrier = "batch"
	OfBed     Carrier = "bed"
)

// carried are the facts that are not the same for the whole holding.
var carried = map[Fact]Carrier{
	Additives: OfBatch, Held: OfBatch, Sanitized: OfBatch, Pathogens: OfBatch,
	EdiblePart: OfBed, Method: OfBed, ContactDuring: OfBed, ContactAfter: OfBed, Applied: OfBed, Harvest: OfBed,
}

// Carrier is where an answer to a fact usually belongs.
func (f Fact) Carrier() Carrier {
	if c, named := carried[f]; named {
		return c
	}
	return OfHolding
}
