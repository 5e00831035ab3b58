package worksheet

import (
	"math"
	"regexp"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// SplitList parts a list: by semicolons where there is one (commas are then
// decimal), else by commas.
func SplitList(text string) []string {
	mark := ","
	if strings.Contains(text, ";") {
		mark = ";"
	}
	items := strings.Split(text, mark)
	for i := range items {
		items[i] = strings.TrimSpace(items[i])
	}
	return items
}

// onlyNumber is an item of a list that leaves its unit to the last one.
var onlyNumber = regexp.MustCompile(`^[+-]?(\d+([.,]\d+)?|[.,]\d+|\d+ \d+/\d+|\d+/\d+)([eE][+-]?\d+)?$`)

// WithSharedUnit gives each bare item of a list the unit of the last one:
// "13, 14, 15 m".
func WithSharedUnit(items []string) []string {
	last := items[len(items)-1]
	cut := strings.LastIndexFunc(last, func(c rune) bool { return c >= '0' && c <= '9' || c == '½' || c == '¼' || c == '¾' })
	if first := firstLetter(last); first > 0 {
		cut = first - 1
	}
	unit := last[cut+1:]
	shared := make([]string, len(items))
	for i, item := range items {
		if shared[i] = item; onlyNumber.MatchString(item) && strings.TrimSpace(unit) != "" {
			shared[i] = item + unit
		}
	}
	return shared
}

// firstLetter finds where the unit of an item begins.
func firstLetter(item string) int {
	for i, c := range item {
		if c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '°' || c == 'µ' || c == '%' {
			if (c == 'e' || c == 'E') && i > 0 && i+1 < len(item) && item[i-1] >= '0' && item[i-1] <= '9' && (item[i+1] >= '0' && item[i+1] <= '9' || item[i+1] == '-') {
				continue
			}
			return i
		}
		if c == '/' && (i == 0 || item[i-1] == ' ') {
			return i
		}
	}
	return -1
}

// numbers reads a numeric list and checks each item's range.
func (in *Input) numbers(text string) ([]float64, error) {
	items := SplitList(text)
	for _, item := range items {
		if item == "" {
			return nil, fault.New(in.Flag, text, wording.Say("worksheet.empty-item"), in.Allowed(), wording.Text{})
		}
	}
	if in.Kind != Bare && in.Kind != Whole {
		items = WithSharedUnit(items)
	}
	values := make([]float64, len(items))
	for i, item := range items {
		v, err := in.Kind.parse(item)
		if err == nil {
			err = in.within(v, item)
		}
		if err != nil {
			return nil, err
		}
		values[i] = v
	}
	return values, nil
}

func parseWhole(text string) (float64, error) {
	v, err := quantity.Bare(text)
	if err == nil && (v != math.Trunc(v) || math.Abs(v) > 1e15) {
		err = fault.New("", text, wording.Say("worksheet.not-whole", wording.Places{"given": text}), wording.Text{}, wording.Text{})
	}
	return v, err
}
