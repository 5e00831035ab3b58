package plan

import (
	"time"

	"aerosteep/wording"
)

// Prospect is when a want is served, or why it is not and what would work.
type Prospect struct {
	At              time.Time // zero where it is not served
	Reason, Nearest string
}

// Prospect looks a want of the plan up; the zero value where the plan has
// neither, which is so of a want of another file.
func (p *Plan) Prospect(want int) Prospect {
	for i := range p.Runs {
		for _, load := range p.Runs[i].Loads {
			if load.Want == want {
				return Prospect{At: p.Runs[i].At}
			}
		}
	}
	for _, u := range p.Unmet {
		if u.Want == want {
			return Prospect{Reason: u.Reason, Nearest: u.Nearest}
		}
	}
	return Prospect{}
}

// Text says when the want of a bed is served after all.
func (p Prospect) Text(bed string) wording.Text {
	places := wording.Places{"bed": bed, "clock": Clock(p.At), "reason": p.Reason, "nearest": p.Nearest}
	if p.At.IsZero() {
		return wording.Say("plan.prospect.not", places)
	}
	return wording.Say("plan.prospect.at", places)
}
