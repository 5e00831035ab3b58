package wording

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// fill puts values into the places of a template. A place is {name}, or
// {name|one|other}, which chooses a word by whether the value is one.
func fill(template string, places Places, r Reader) string {
	if !strings.Contains(template, "{") {
		return template
	}
	var b strings.Builder
	for {
		open := strings.IndexByte(template, '{')
		if open < 0 {
			b.WriteString(template)
			return b.String()
		}
		b.WriteString(template[:open])
		template = template[open+1:]
		end := strings.IndexByte(template, '}')
		if end < 0 {
			b.WriteString("{" + template)
			return b.String()
		}
		b.WriteString(place(template[:end], places, r))
		template = template[end+1:]
	}
}

func place(spec string, places Places, r Reader) string {
	parts := strings.Split(spec, "|")
	value, given := places[parts[0]]
	if !given {
		return "{" + spec + "}"
	}
	if len(parts) == 3 {
		if isOne(value) {
			return parts[1]
		}
		return parts[2]
	}
	return speak(value, r)
}

func isOne(value any) bool {
	switch v := value.(type) {
	case int:
		return v == 1
	case float64:
		return v == 1
	}
	return false
}

func speak(value any, r Reader) string {
	switch v := value.(type) {
	case Speaker:
		return v.Speak(r)
	case string:
		return v
	case int:
		return Whole(v, r)
	case float64:
		return Number(v, 3, r)
	case []string:
		return List(v, r)
	case fmt.Stringer:
		return v.String()
	}
	return fmt.Sprint(value)
}

// Number writes a value with so many significant digits and no trailing
// zeros, with the reader's decimal mark.
func Number(v float64, digits int, r Reader) string {
	if v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return mark(strconv.FormatFloat(v, 'g', -1, 64), r)
	}
	decimals := digits - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	if decimals < 0 {
		decimals = 0
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return mark(s, r)
}

// Fixed writes a value with so many decimals, with the reader's decimal mark.
func Fixed(v float64, decimals int, r Reader) string {
	return mark(strconv.FormatFloat(v, 'f', decimals, 64), r)
}

// Whole writes a whole number; from 10 000 on the thousands are parted by a
// no-break space.
func Whole(n int, r Reader) string { return mark(strconv.Itoa(n), r) }

// mark gives a plain number its decimal mark, its thousands and a true minus.
func mark(s string, r Reader) string {
	negative := strings.HasPrefix(s, "-")
	s = strings.TrimPrefix(s, "-")
	whole, fraction, hasFraction := strings.Cut(s, ".")
	if len(whole) >= 5 && isDigits(whole) {
		whole = groupThousands(whole)
	}
	s = whole
	if hasFraction {
		if r.Language == Spanish {
			s += "," + fraction
		} else {
			s += "." + fraction
		}
	}
	if negative && strings.Trim(s, "0.,") != "" {
		s = "−" + s
	}
	return s
}

func isDigits(s string) bool {
	for _, c := range s {
		if c < '0' || c > '9' {
			return false
		}
	}
	return true
}

func groupThousands(whole string) string {
	var b strings.Builder
	for i, c := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteString("\u00a0")
		}
		b.WriteRune(c)
	}
	return b.String()
}

// InHundred is a chance as people are told it, before "in 100": whole, and
// never 0 or 100.
type InHundred float64

// Speak says "7", "fewer than 1" or "more than 99".
func (c InHundred) Speak(r Reader) string {
	switch {
	case c < 1:
		return Say("wording.fewer-than-one").For(r)
	case c > 99:
		return Say("wording.more-than-99").For(r)
	}
	return Whole(int(math.Round(float64(c))), r)
}

// Chance is a chance in a sentence of its own, "7 in 100": never 0, never 100.
func Chance(in100 float64) Text {
	switch {
	case in100 < 1:
		return Say("web.chance.under-one")
	case in100 > 99:
		return Say("web.chance.over-99")
	}
	return Say("web.chance", Places{"n": int(in100 + 0.5)})
}
