package hygiene

import (
	"slices"

	"aerosteep/wording"
)

// Recipient is somebody outside the holding who knows some of the facts.
type Recipient string

// The recipients, in the order in which letters are offered.
const (
	Supplier   Recipient = "compost-supplier"
	Laboratory Recipient = "water-laboratory"
	Certifier  Recipient = "certifier"
)

// knows is what each recipient can answer. What is not here is the grower's own
// to say.
var knows = []struct {
	to    Recipient
	facts []Fact
}{
	{Supplier, []Fact{Material, AnimalOrigin, HumanWaste, Treatment, ProcessRecord, Contaminated}},
	{Laboratory, []Fact{WaterEColi}},
	{Certifier, []Fact{NOPCompost, Pretest, Organic}},
}

// Letter is one page of open questions, with blanks and a line to sign.
type Letter struct {
	To        Recipient
	Opening   wording.Text
	Questions []Question
	Signature wording.Text
}

// Question asks for one fact in a grower's words, with the answers there are.
type Question struct {
	Fact    Fact
	Text    wording.Text
	Answers []string // nil: a blank to fill in
}

// Letters turns missing facts into a letter to each who can answer some of
// them; an answer typed once on the holding or the batch serves every bed.
func Letters(missing []Fact) []Letter {
	var letters []Letter
	for _, k := range knows {
		letter := Letter{To: k.to, Opening: wording.Say("hygiene.letter." + string(k.to)), Signature: wording.Say("hygiene.letter.sign")}
		for _, fact := range k.facts {
			if slices.Contains(missing, fact) {
				letter.Questions = append(letter.Questions, Asked(fact))
			}
		}
		if len(letter.Questions) > 0 {
			letters = append(letters, letter)
		}
	}
	return letters
}

// Asked is the question for one fact.
func Asked(fact Fact) Question {
	return Question{Fact: fact, Text: wording.Say("hygiene.question." + fact.String()), Answers: fact.Values()}
}

// Stake is what stands on the card at the bed: when tea was put on, and from
// when the crop may be picked. It is zero where there is nothing to wait for.
func Stake(v Verdict) wording.Text {
	if v.Facts.Applied == nil || v.Until == nil || v.IntervalDays == nil || *v.IntervalDays == 0 {
		return wording.Text{}
	}
	return wording.Say("hygiene.stake", wording.Places{"applied": wording.Day(*v.Facts.Applied), "until": wording.Day(*v.Until)})
}
