package counting

import (
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// The size of a dilution series that can be read.
const (
	mostLevels = 20
	mostTubes  = 1000
)

// ParseTubes reads "3/3, 1/3, 0/3", positive of all at each level; the amounts
// are set by the caller. A fault carries the flag's name.
func ParseTubes(flag, text string) ([]Tubes, error) {
	mark := ","
	if strings.Contains(text, ";") {
		mark = ";"
	}
	items := strings.Split(text, mark)
	if len(items) > mostLevels {
		return nil, tubesFault(flag, text, "counting.tubes.levels", wording.Places{"levels": len(items)})
	}
	levels := make([]Tubes, len(items))
	for i, item := range items {
		above, below, both := strings.Cut(item, "/")
		positive, err1 := strconv.Atoi(strings.TrimSpace(above))
		total, err2 := strconv.Atoi(strings.TrimSpace(below))
		switch {
		case !both || err1 != nil || err2 != nil || positive < 0:
			return nil, tubesFault(flag, text, "counting.tubes.form", wording.Places{"item": strings.TrimSpace(item)})
		case total < 1 || total > mostTubes:
			return nil, tubesFault(flag, text, "counting.tubes.total", wording.Places{"total": total})
		case positive > total:
			return nil, tubesFault(flag, text, "counting.tubes.more-than", wording.Places{"positive": positive, "total": total})
		}
		levels[i] = Tubes{Positive: positive, Total: total}
	}
	return levels, nil
}

func tubesFault(flag, given, key string, places wording.Places) *fault.Fault {
	return fault.New(flag, given, wording.Say(key, places), wording.Say("counting.tubes.allowed"), wording.Text{})
}
